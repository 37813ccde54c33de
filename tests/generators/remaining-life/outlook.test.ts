// Hours a meter counts and hours that wear follows are two things where a duty names another speed than the drive's: money is lost
// by the meter's hours, life is used up by the turns.

import { expect, it } from 'vitest';
import { optionRows, scopeText } from '../../../src/generators/remaining-life/print/option-table.js';
import { percent } from '../../../src/domain/decision/option-setting.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { day, look, only, reportOf } from './story.js';

const asOf = day('2025-12-01');
const records = [2000, 4000, 6000, 8000]
  .map((h) =>
    look(h, ['P1', 'P2'].map((p, i) => `${p} thickness ${12 - ((0.84 + i / 20) * h) / 1000} mm`).join(';')),
  )
  .join('');

const manned = (text: string): string =>
  text
    .replace('point P1', 'access Floor at 0 m to 6 m ground\n  point P1')
    .replace('cost reline', 'crew Alpha 4 people\n  cost downtime 100 EUR/h\n  cost reline');

it('a duty at twice the speed of the drive runs as long, and wears twice as much', () => {
  const faster = 'duty DG1 from 2025-12-01 84 h/week speed 36 rpm\n';
  const { decision } = only(reportOf(records + faster, { asOf }, manned));
  const outlook = decision?.setting?.outlook;
  expect(outlook?.hoursBy(addDays(asOf, 7))).toBeCloseTo(84, 9);
  expect(outlook?.turnedBy(addDays(asOf, 7))).toBeCloseTo(168, 9);
  expect(outlook?.exposureBy(addDays(asOf, 7))).toBeCloseTo(168, 9);
  const less = decision?.options.find(({ kind }) => kind === 'lower duty')?.what;
  expect(less).toMatch(/instead of 84 until/);
});

it('each scope is named with the cost of its own option, also where one is a part of the other', () => {
  const { decision } = only(reportOf(records, { asOf }, manned));
  if (!decision) throw new Error('no decision');
  const [work] = decision.scopes?.works ?? [];
  const part = decision.options.find(({ kind }) => kind === 'planned reline');
  if (!work || !part) throw new Error('no option');
  // Two scopes whose names begin alike, the larger first in the table.
  const of = (scope: string, cost: number) => ({
    ...part,
    kind: 'part at an outage' as const,
    what: `Reline ${scope}`,
    scope,
    cost,
  });
  const [large, small] = ['panel 1 of run 1 and panel 2 of run 2', 'panel 1 of run 1'];
  const works = [small, large].map((scope) => ({
    ...work,
    work: { ...work.work, scope, whole: false, buildable: true },
  }));
  const options = [of(large, 24_230), of(small, 9850), part];
  const text = scopeText({ ...decision, options, scopes: decision.scopes && { ...decision.scopes, works } });
  expect(text).toMatch(
    /close panel 1 of run 1 \([^)]*, 9850 EUR\), or panel 1 of run 1 and [^)]*, 24230 EUR\)/,
  );
  expect(optionRows(decision)).toHaveLength(decision.options.length);
});

it('what cannot be done because no duty is low enough has no price', () => {
  const passed = records
    .replaceAll('0.84', '1')
    .replace(/thickness [\d.]+ mm\n}\n$/, 'thickness 3.2 mm\n}\n');
  const { decision } = only(reportOf(passed, { asOf }, manned));
  const less = decision?.options.find(({ kind }) => kind === 'lower duty');
  expect(less?.obstacle).toMatch(/no duty is low enough/);
  expect([less?.cost, less?.expected]).toEqual([undefined, undefined]);
});

it('a chance worked out as nothing reads as any other too small to print', () => {
  expect([0, 1e-9, 0.0009, 0.0012, 0.0994, 0.0996, 1].map(percent)).toEqual([
    '< 0.1 %',
    '< 0.1 %',
    '< 0.1 %',
    '0.1 %',
    '9.9 %',
    '10 %',
    '100 %',
  ]);
});
