import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { addDays, formatDay } from '../../../src/domain/units/calendar.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import {
  remainingLife,
  type RemainingLife,
  type WhatIf,
} from '../../../src/generators/remaining-life/remaining-life.js';
import { riskDayOf } from '../../../src/generators/remaining-life/parts/risk-day.js';
import { readChange } from '../../../src/generators/remaining-life/what-if.js';
import { day, estateOf, look, works } from './story.js';

const expected = works
  .replace('condemn at 4 mm', 'condemn at 4 mm expected life 16000 h ± 30 %')
  .replace(
    'screw Spiral400 {',
    'liner TwoLayer16 { layer ivory 8 mm layer blue 8 mm panel length 1200 mm condemn at 4 mm }\nscrew Spiral400 {',
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

describe('the day on which the accepted risk is passed', () => {
  it('is one on the table of decisions, in the case as it is, and in the data', () => {
    const report = tried('duty DG1 20 h/d');
    const [life] = report.conveyors;
    const [whatIf] = report.whatIfs;
    const day = life?.decision?.passedSeen;
    if (day === undefined || whatIf?.kind !== 'dates') throw new Error('both have a day');
    expect(whatIf.base.riskDay).toBe(day);
    const data = JSON.parse(remainingLifeJson(report)) as {
      whatIf: { baseRiskDay: string }[];
      conveyors: { decision: { passedSeen: string } }[];
    };
    expect(data.whatIf[0]?.baseRiskDay).toBe(data.conveyors[0]?.decision.passedSeen);
    const [, told] = /as it is, [^.]*risk passed (\d{4}-\d\d-\d\d)/.exec(remainingLifeMarkdown(report)) ?? [];
    expect(told).toBe(formatDay(day));
  });
});

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
      ['speed DG1 -2 rpm', /above zero/],
      ['duty DG1 20 h/d ± 10 mm', /wrong dimension/],
      ['duty DG1 20 h/d ± 0 %', /above zero/],
      ['condemn DG1 12 mm', /TwoLayer12 is 12 mm thick when new/],
      ['condemn TwoLayer12 14 mm', /condemned before it is fitted/],
      ['condemn TwoLayer16 4 mm', /no conveyor of this report has the liner TwoLayer16/],
    ];
    for (const [text, message] of wrong) {
      const read = readChange(text, estate);
      expect(read.ok ? '' : read.message).toMatch(message);
    }
  });

  it('of a conveyor that is not printed is told, and how to print it', () => {
    const read = readChange('duty DG1 20 h/d', estate, []);
    expect(read.ok ? '' : read.message).toMatch(/DG1 is not in this report.*add --conveyor DG1/);
  });
});

describe('a what-if stands beside the base case', () => {
  const asOf = day('2025-09-08');

  it('half the duty takes twice the days', () => {
    const [base, changed] = middle(tried('duty DG1 12 h/d ± 10 %').whatIfs[0]);
    expect((changed - asOf) / (base - asOf)).toBeCloseTo(2, 1);
  });

  it('twice the speed takes half the days', () => {
    const [base, changed] = middle(tried('speed DG1 36 rpm').whatIfs[0]);
    expect((changed - asOf) / (base - asOf)).toBeCloseTo(0.5, 1);
  });

  it('a wider spread of the duty widens the dates', () => {
    const width = (text: string): number => {
      const [whatIf] = tried(text).whatIfs;
      if (whatIf?.kind !== 'dates' || whatIf.changed.forecast.kind !== 'dates') throw new Error('no dates');
      const { q10, q90 } = whatIf.changed.forecast.days;
      return (q90 ?? NaN) - (q10 ?? NaN);
    };
    expect(width('duty DG1 20 h/d ± 40 %')).toBeGreaterThan(1.1 * width('duty DG1 20 h/d ± 5 %'));
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
    // 12 mm may wear instead of 8, of a liner that nobody has read: the estate's rates and the expected life speak.
    const ratio = whatIf?.kind === 'liner life' ? whatIf.other.q50 / whatIf.present.q50 : NaN;
    expect(ratio).toBeGreaterThan(1.4);
    expect(ratio).toBeLessThan(1.6);
  });

  it('changes nothing else in the report', () => {
    const without = (report: RemainingLife): unknown => ({
      ...JSON.parse(remainingLifeJson(report)),
      whatIf: undefined,
    });
    expect(without(tried('duty DG1 12 h/d', 'condemn DG1 6 mm'))).toEqual(without(tried()));
  });
});

describe('a what-if gives what an edit of the file gives', () => {
  interface Pair {
    readonly change: string;
    /** What the editor writes for it. */
    readonly edit: (
      texts: readonly [string, string],
      asOf: string,
      meter: number,
    ) => readonly [string, string];
  }
  const more = (line: (asOf: string, meter: number) => string): Pair['edit'] => {
    return ([machine, seen], asOf, meter) => [machine, `${seen}\n${line(asOf, meter)}\n`];
  };
  const pair: fc.Arbitrary<Pair> = fc.oneof(
    fc
      .tuple(fc.integer({ min: 1, max: 24 }), fc.option(fc.integer({ min: 2, max: 40 })))
      .map(([hours, spread]) => {
        const duty = `${hours} h/d${spread === null ? '' : ` ± ${spread} %`}`;
        return { change: `duty DG1 ${duty}`, edit: more((asOf) => `duty DG1 from ${asOf} ${duty}`) };
      }),
    fc.integer({ min: 5, max: 40 }).map((rpm) => ({
      change: `speed DG1 ${rpm} rpm`,
      edit: more((asOf) => `duty DG1 from ${asOf} 24 h/d ± 10 % speed ${rpm} rpm`),
    })),
    fc
      .tuple(fc.integer({ min: 0, max: 110 }), fc.constantFrom('DG1', 'TwoLayer12'))
      .map(([tenths, name]) => ({
        change: `condemn ${name} ${tenths / 10} mm`,
        edit: ([machine, seen]: readonly [string, string]) =>
          [
            machine.replace('condemn at 4 mm expected', `condemn at ${tenths / 10} mm expected`),
            seen,
          ] as const,
      })),
    fc.constantFrom('TwoLayer12', 'TwoLayer16').map((name) => ({
      change: `liner DG1 ${name}`,
      edit: more((asOf, meter) => `reline DG1 ${asOf} meter ${meter} h {\n  liner ${name}\n}`),
    })),
  );
  const bases = [
    records,
    `${records}duty DG1 from 2025-06-02 24 h/d ± 10 % speed 22 rpm\n`,
    `${records}reline DG1 2025-09-08 meter 6000 h {\n  scope run 1\n}\n`,
  ];

  it('for every kind of change, on whatever day and whatever is recorded', () => {
    fc.assert(
      fc.property(pair, fc.constantFrom(...bases), fc.constantFrom(0, 30), ({ change, edit }, base, days) => {
        const asOfDay = addDays(day('2025-09-08'), days);
        const asOf = formatDay(asOfDay);
        const of = estateOf(expected, base);
        const read = readChange(change, of);
        if (!read.ok) throw new Error(read.message);
        const [whatIf] = remainingLife(of, { asOf: asOfDay, track: false, changes: [read.change] }).whatIfs;
        const [life] = remainingLife(estateOf(...edit([expected, base], asOf, 6000 + 24 * days)), {
          asOf: asOfDay,
          track: false,
        }).conveyors;
        const edited = life?.model;
        if (whatIf?.kind === 'dates') {
          expect(whatIf.changed.riskDay).toEqual(life && riskDayOf(life));
          expect(JSON.stringify(whatIf.changed.forecast)).toBe(JSON.stringify(edited?.forecast));
        } else if (whatIf?.kind === 'liner life')
          expect(whatIf.other).toEqual(
            edited?.forecast.kind === 'dates' ? edited.forecast.exposure : undefined,
          );
        else throw new Error(`${change}: ${whatIf?.why ?? 'nothing'}`);
      }),
      { numRuns: 10 },
    );
  }, 120_000);

  it('a speed keeps the hours of the last record that says any', () => {
    const base = `${records}duty DG1 from 2025-06-02 12 h/d ± 10 %\nduty DG1 from 2025-07-07 speed 20 rpm\n`;
    const asOf = day('2025-09-08');
    const of = estateOf(expected, base);
    const read = readChange('speed DG1 30 rpm', of);
    if (!read.ok) throw new Error(read.message);
    const [whatIf] = remainingLife(of, { asOf, track: false, changes: [read.change] }).whatIfs;
    if (whatIf?.kind !== 'dates') throw new Error('no dates');
    const edit = (line: string): unknown =>
      remainingLife(estateOf(expected, `${base}${line}\n`), { asOf, track: false }).conveyors[0]?.model
        ?.forecast;
    const written = JSON.stringify(edit('duty DG1 from 2025-09-08 12 h/d ± 10 % speed 30 rpm'));
    expect(JSON.stringify(whatIf.changed.forecast)).toBe(written);
    expect(JSON.stringify(edit('duty DG1 from 2025-09-08 speed 30 rpm'))).toBe(written);
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
    expect(Number(dg1?.now)).toBeLessThan(Number(dg1?.before));
  });

  it('nothing new is nothing new', () => {
    const report = remainingLife(estate, { track: false, since: day('2025-09-08') });
    expect(report.since?.conveyors[0]?.changes).toEqual([]);
    expect(formatDay(report.since?.day ?? day('1970-01-01'))).toBe('2025-09-08');
  });
});
