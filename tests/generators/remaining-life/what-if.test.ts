import { describe, expect, it } from 'vitest';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import {
  remainingLife,
  type RemainingLife,
  type WhatIf,
} from '../../../src/generators/remaining-life/remaining-life.js';
import { readChange } from '../../../src/generators/remaining-life/what-if.js';
import { day, estateOf, look, works } from './story.js';

const expected = works
  .replace('condemn at 4 mm', 'condemn at 4 mm expected life 16000 h ± 30 %')
  .replace(
    'screw Spiral400 {',
    'liner TwoLayer16 { layer white 8 mm layer blue 8 mm panel length 1200 mm condemn at 4 mm }\nscrew Spiral400 {',
  );
const records =
  look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
  look(6000, 'P1 thickness 9 mm; P2 thickness 9.2 mm');
const estate = estateOf(expected, records);

function tried(...texts: readonly string[]): RemainingLife {
  const changes = texts.map((text) => {
    const read = readChange(text, estate);
    if (!read.ok) throw new Error(read.message);
    return read.change;
  });
  return remainingLife(estate, { track: false, changes });
}

const middle = (whatIf: WhatIf | undefined): [number, number] => {
  if (
    whatIf?.kind !== 'dates' ||
    whatIf.base.forecast.kind !== 'dates' ||
    whatIf.changed.forecast.kind !== 'dates'
  )
    throw new Error('no dates');
  return [whatIf.base.forecast.days.q50 ?? NaN, whatIf.changed.forecast.days.q50 ?? NaN];
};

describe('reading a change', () => {
  it('says what it cannot read', () => {
    const wrong: readonly (readonly [string, RegExp])[] = [
      ['duty', /it reads/],
      ['duty XX1 20 h/d', /no conveyor XX1; there is DG1/],
      ['duty DG1 20', /missing unit/],
      ['duty DG1 20 mm', /wrong dimension/],
      ['duty DG1 30 h/d', /24 hours/],
      ['hurry DG1 20 h', /cannot be tried/],
      ['liner DG1 Nothing', /no liner Nothing/],
      ['speed DG1 -2 rpm', /below zero/],
    ];
    for (const [text, message] of wrong) {
      const read = readChange(text, estate);
      expect(read.ok ? '' : read.message).toMatch(message);
    }
  });
});

describe('a what-if stands beside the base case', () => {
  const asOf = day('2025-09-08');

  it('half the duty takes twice the days', () => {
    const [base, changed] = middle(tried('duty DG1 12 h/d').whatIfs[0]);
    expect((changed - asOf) / (base - asOf)).toBeCloseTo(2, 1);
  });

  it('twice the speed takes half the days', () => {
    const [base, changed] = middle(tried('speed DG1 36 rpm').whatIfs[0]);
    expect((changed - asOf) / (base - asOf)).toBeCloseTo(0.5, 1);
  });

  it('a higher limit is reached sooner', () => {
    const [base, changed] = middle(tried('condemn DG1 6 mm').whatIfs[0]);
    expect(changed).toBeLessThan(base);
  });

  it('a limit may be tried for a liner, on every conveyor that has it', () => {
    expect(middle(tried('condemn TwoLayer12 6 mm').whatIfs[0])).toEqual(
      middle(tried('condemn DG1 6 mm').whatIfs[0]),
    );
  });

  it('a thicker liner lasts in proportion to what may wear', () => {
    const [whatIf] = tried('liner DG1 TwoLayer16').whatIfs;
    // 12 mm may wear instead of 8.
    expect(whatIf?.kind === 'liner life' && whatIf.other.q50 / whatIf.present.q50).toBeCloseTo(1.5, 9);
  });

  it('changes nothing else in the report', () => {
    const without = (report: RemainingLife): unknown => ({
      ...JSON.parse(remainingLifeJson(report)),
      whatIf: undefined,
    });
    expect(without(tried('duty DG1 12 h/d', 'condemn DG1 6 mm'))).toEqual(without(tried()));
  });
});

describe('what changed since an earlier day', () => {
  it('tells the inspections and how the forecast moved', () => {
    const report = remainingLife(
      estateOf(expected, records + look(8000, 'P1 thickness 7 mm; P2 thickness 8.2 mm')),
      { track: false, since: day('2025-10-01') },
    );
    const [dg1] = report.since?.conveyors ?? [];
    expect(dg1?.changes[0]).toBe('1 inspection (2025-11-30)');
    expect(dg1?.changes.join()).toMatch(/limit forecast \d+ weeks? earlier/);
    expect(dg1?.now).toBeLessThan(dg1?.before ?? 0);
  });

  it('nothing new is nothing new', () => {
    const report = remainingLife(estate, { track: false, since: day('2025-09-08') });
    expect(report.since?.conveyors[0]?.changes).toEqual([]);
    expect(formatDay(report.since?.day ?? day('1970-01-01'))).toBe('2025-09-08');
  });
});
