import { describe, expect, it } from 'vitest';
import type { Knot } from '../../../src/domain/model/counter.js';
import { origin } from '../../kit/estate.js';
import type { Duty } from '../../../src/domain/model/duty.js';
import { dutyVariation } from '../../../src/domain/model/duty-variation.js';
import type { CalendarDay } from '../../../src/domain/units/calendar.js';

/** A meter read on these days with these totals; nothing of a knot but day, total and bridge is looked at. */
function meter(...readings: readonly (readonly [day: number, total: number])[]): readonly Knot[] {
  return readings.map(([day, total]) => ({
    day: day as CalendarDay,
    total,
    bridged: false,
    reading: { day: day as CalendarDay, value: total, source: 'inspection', origin: origin() },
  }));
}
const duty = (perDay: number, spread?: number, from?: number): Duty => ({
  perDay,
  spread,
  basis: from === undefined ? 'conveyor' : 'duty record',
  text: '',
  ...(from !== undefined && { from: from as CalendarDay }),
});

describe('how uncertain the coming hours are', () => {
  it('nothing stated, nothing read: what is assumed, and said to be', () => {
    const { level, wander } = dutyVariation([], [], undefined);
    expect(level).toEqual({ ratio: 0.15, from: 'assumed' });
    expect(wander).toMatchObject({ ratio: 0.2, from: 'assumed' });
  });

  it('a stated ± is taken for level and wander while the meter shows nothing', () => {
    const even = dutyVariation(meter([0, 0], [100, 800]), [duty(8, 0.02)], duty(8, 0.02));
    expect(even.level).toEqual({ ratio: 0.02, from: 'declared' });
    expect(even.wander).toEqual({ ratio: 0.02, per: 100, from: 'declared' });
  });

  it('years that differed by more than the ± count instead of it', () => {
    // Years of 8.8 and 7.2 h/d: mean 8, standard deviation 0.8·√2, over the mean 0.1414.
    const knots = meter([0, 0], [365, 365 * 8.8], [730, 365 * 16]);
    const { level } = dutyVariation(knots, [duty(8, 0.02)], duty(8, 0.02));
    expect(level.from).toBe('observed');
    expect(level.ratio).toBeCloseTo(0.1 * Math.SQRT2, 12);
    expect(dutyVariation(knots, [duty(8, 0.3)], duty(8, 0.3)).level).toEqual({
      ratio: 0.3,
      from: 'declared',
    });
  });

  it('a change of duty that was declared is no variation', () => {
    const knots = meter([0, 0], [365, 365 * 8], [730, 365 * 24], [1095, 365 * 40]);
    const declared = [duty(8, 0.05), duty(16, 0.05, 365)];
    expect(dutyVariation(knots, declared, declared[1]).level).toEqual({ ratio: 0.05, from: 'declared' });
    expect(dutyVariation(knots, [], undefined).level.ratio).toBeGreaterThan(0.3);
  });

  it('what the intervals show is the wander: for equal ones the standard deviation of their means', () => {
    const { wander } = dutyVariation(
      meter([0, 0], [100, 600], [200, 1600], [300, 2400]),
      [duty(8, 0.02)],
      duty(8, 0.02),
    );
    // Means of 6, 10 and 8 h/d: standard deviation 2 about 8.
    expect(wander).toMatchObject({ per: 100, from: 'observed' });
    expect(wander.ratio).toBeCloseTo(0.25, 12);
  });

  it('records days apart do not make weeks look uneven', () => {
    const long = meter([0, 0], [200, 1600], [400, 3200], [600, 4800]);
    const short = meter([0, 0], [200, 1600], [201, 1600], [400, 3200], [600, 4800]);
    expect(dutyVariation(long, [duty(8)], duty(8)).wander.ratio).toBeCloseTo(0, 12);
    expect(dutyVariation(short, [duty(8)], duty(8)).wander.ratio).toBeLessThan(0.06);
  });
});
