import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, estateOf, look, only, pointOf, works } from './story.js';

const newest = day('2025-09-08');
const records =
  look(2000, 'P1 thickness 10.4 mm; P2 thickness 11 mm') +
  look(4000, 'P1 thickness 9.1 mm; P2 thickness 10.2 mm') +
  look(6000, 'P1 thickness 7.6 mm; P2 thickness 9.1 mm');

/** Chance that the first point, and that P2, has reached the limit by a day. */
function chances(report: RemainingLife, by: CalendarDay): readonly number[] {
  const forecast = only(report).model?.forecast;
  const p2 = pointOf(report, 'P2').model?.condemn;
  const first = forecast?.kind === 'dates' ? forecast.chanceBy(by) : undefined;
  const second = p2?.kind === 'life' ? p2.chanceBy?.(by) : undefined;
  if (first === undefined || second === undefined) throw new Error('no dates');
  return [first, second];
}

describe('hours that nobody read', () => {
  it('not looking never lowers a risk', () => {
    const gap = fc.integer({ min: 0, max: 700 });
    const plus = fc.constantFrom('', ' ± 2 %', ' ± 10 %', ' ± 60 %');
    const later = fc.constantFrom(
      '',
      'duty DG1 from 2025-11-03 { duty 8 h/d ± 10 % }\n',
      'duty DG1 from 2026-02-02 { duty 22 h/d }\n',
    );
    fc.assert(
      fc.property(
        gap,
        gap,
        fc.integer({ min: 0, max: 1000 }),
        plus,
        later,
        (a, b, ahead, variation, change) => {
          const estate = estateOf(works.replace('24 h/d ± 10 %', `20 h/d${variation}`), records + change);
          const report = (blind: number): RemainingLife =>
            remainingLife(estate, { track: false, asOf: addDays(newest, blind) });
          const by = addDays(newest, ahead);
          const early = chances(report(Math.min(a, b)), by);
          const late = chances(report(Math.max(a, b)), by);
          early.forEach((chance, i) => expect(late[i]).toBeGreaterThanOrEqual(chance - 1e-9));
        },
      ),
      { numRuns: 6 },
    );
  }, 60_000);

  it('the longer nobody read the meter, the less sure is what has run', () => {
    const spread = (variation: string): number => {
      const estate = estateOf(
        works.replace('24 h/d ± 10 %', `20 h/d${variation}`),
        look(1000, 'P1 thickness 11 mm') + look(2000, 'P1 thickness 10.4 mm'),
      );
      const model = only(remainingLife(estate, { track: false, asOf: day('2025-04-01') })).model;
      const days = model?.forecast.kind === 'dates' ? model.forecast.days : undefined;
      return (days?.q95 ?? NaN) - (days?.q05 ?? NaN);
    };
    expect(spread(' ± 2 %')).toBeLessThan(spread(' ± 20 %'));
    expect(spread(' ± 20 %')).toBeLessThan(spread(' ± 50 %'));
  });
});
