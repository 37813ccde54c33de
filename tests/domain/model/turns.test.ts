// A spiral slides turn by turn: hours at another speed count by their turns where wear goes by hours.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byTurns, runningHours } from '../../../src/domain/model/turns.js';
import type { ConveyorLife } from '../../../src/generators/remaining-life/parts/conveyor-life.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { readChange } from '../../../src/generators/remaining-life/what-if.js';
import { estateOf, look, only, works } from '../../generators/remaining-life/story.js';

describe('hours by turns', () => {
  const changes = fc
    .array(
      fc.record({
        after: fc.integer({ min: 1, max: 5000 }),
        factor: fc.double({ min: 0.2, max: 4, noNaN: true }),
      }),
    )
    .map((steps) => {
      let hours = 0;
      return steps.map(({ after, factor }) => ({ day: 0 as never, hours: (hours += after), factor }));
    });

  it('add up interval by interval, and back', () => {
    const known = [
      { day: 0 as never, hours: 1000, factor: 1.5 },
      { day: 0 as never, hours: 2000, factor: 0.5 },
    ];
    expect(byTurns(known, 900)).toBe(900);
    expect(byTurns(known, 1600)).toBe(1000 + 600 * 1.5);
    expect(byTurns(known, 2400)).toBe(1000 + 1500 + 200);
    fc.assert(
      fc.property(changes, fc.double({ min: 0, max: 30_000, noNaN: true }), (list, hours) => {
        // Against a sum hour by hour, up to the last broken hour.
        const whole = Math.floor(hours);
        let sum = 0;
        for (let h = 0; h < whole; h++) sum += list.findLast((c) => c.hours <= h)?.factor ?? 1;
        sum += (hours - whole) * (list.findLast((c) => c.hours <= whole)?.factor ?? 1);
        expect(byTurns(list, hours)).toBeCloseTo(sum, 6);
        expect(runningHours(list, byTurns(list, hours))).toBeCloseTo(hours, 6);
      }),
      { numRuns: 60 },
    );
  });
});

// A steady rate in turns: 0.5 mm in 1000 h at 18 rpm, 1 mm in 1000 h at 36 rpm from 2025-04-11 (2400 h) on.
const faster = 'duty DG1 from 2025-04-11 24 h/d speed 36 rpm\n';
const looks = (since: number): string =>
  look(1200, 'P1 thickness 11.4 mm;P2 thickness 11.4 mm') +
  look(2400, 'P1 thickness 10.8 mm;P2 thickness 10.8 mm') +
  look(4800, `P1 thickness ${10.8 - 2.4 * since} mm;P2 thickness ${10.8 - 2.4 * since} mm`);

function lifeOf(records: string, change = (text: string): string => text): ConveyorLife {
  return only(remainingLife(estateOf(change(works), records), { track: false }));
}

describe('a recorded speed', () => {
  it('counts in the exposure of readings, so that twice the speed with twice the wear is no change of rate', () => {
    const life = lifeOf(faster + looks(1));
    const [point] = life.points;
    expect(point?.readings.map(({ exposure }) => exposure)).toEqual([1200, 2400, 7200]);
    expect(point?.hand.kind === 'rate' && point.hand.longTerm).toBeCloseTo(5e-4, 12);
    expect(
      point?.hand.kind === 'rate' && point.hand.shortTerm.kind === 'rate' && point.hand.shortTerm.rate,
    ).toBeCloseTo(5e-4, 12);
    expect(life.history.remarks.join(' ')).toMatch(/counted at 18 rpm: 1 h from 2025-04-11 at 36 rpm as 2 h/);
  });

  it('brings the dates by hand and by the model nearer by as much', () => {
    // 8.4 mm left of 12 with 4 to stay: 4.4 mm at 0.5 mm/1000 h of turns are 8800 h, 4400 h of the meter, 183 days.
    const life = lifeOf(faster + looks(1));
    const condemn = life.points[0]?.milestones.find(({ kind }) => kind === 'condemn');
    const newest = life.history.hours.knots.at(-1)?.day ?? NaN;
    expect((condemn?.day ?? NaN) - newest).toBe(Math.floor(8800 / 2 / 24));
    const { forecast } = life.model ?? {};
    const days = forecast?.kind === 'dates' ? (forecast.days.q50 ?? NaN) - newest : NaN;
    expect(days).toBeGreaterThan(140);
    expect(days).toBeLessThan(230);
  });

  it('says nothing where wear goes by tonnes, or the drive states no speed', () => {
    const still = lifeOf(faster + looks(1), (text) =>
      text.replace('drive at head speed 18 rpm', 'drive at head'),
    );
    expect(still.points[0]?.readings.map(({ exposure }) => exposure)).toEqual([1200, 2400, 4800]);
  });

  it('what-if with a speed is what a duty record of that day with the same speed makes of it', () => {
    const plain = looks(0.5);
    const estate = estateOf(works, plain);
    const change = readChange('speed DG1 27 rpm', estate);
    if (!change.ok) throw new Error(change.message);
    const [tried] = remainingLife(estate, { track: false, changes: [change.change] }).whatIfs;
    // The last look, 200 days after 2025-01-01, is the day of the report.
    const edited = lifeOf(`${plain}duty DG1 from 2025-07-20 24 h/d ± 10 % speed 27 rpm\n`);
    if (tried?.kind !== 'dates' || tried.changed.forecast.kind !== 'dates') throw new Error('no dates');
    if (edited.model?.forecast.kind !== 'dates') throw new Error('no dates');
    expect(tried.changed.forecast.days).toEqual(edited.model.forecast.days);
  });
});
