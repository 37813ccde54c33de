// A record at which nobody read the hour meter: its hours are reckoned from the readings around it, as sure as the weeks are alike.
// Second roads: the same look with the meter written that was reckoned, and drawn weeks between two readings.

import { describe, expect, test } from 'vitest';
import { hoursErrorOf } from '../../../src/domain/model/hours-error.js';
import { historyOf, momentOf } from '../../../src/domain/model/history.js';
import { estateOf, look, pointOf, reportOf, works } from '../../generators/remaining-life/story.js';

const thin = 'gauge ultrasonic ± 0.05 mm; P1 thickness 9.1 mm; P2 thickness 10.2 mm';
const before = look(2400, 'gauge ultrasonic ± 0.05 mm; P1 thickness 10.4 mm; P2 thickness 11 mm');
const after = look(7200, 'gauge ultrasonic ± 0.05 mm; P1 thickness 7.6 mm; P2 thickness 9.1 mm');
const read = look(4800, thin);
const unread = read.replace(' meter 4800 h', '');

/** Hours and their error of the look of 4800 h, or of the last. */
function reckoned(text: string, index = 1) {
  const estate = estateOf(works + text);
  const [dg1] = estate.conveyors;
  const inspection = estate.inspections[index];
  if (!dg1 || !inspection) throw new Error('not read');
  const history = historyOf(estate, dg1);
  return { hours: momentOf(history, inspection).hours, error: hoursErrorOf(history, inspection) };
}

/** By how much the limit moves, h, where this look read P1 half a millimetre thinner: what its reading counts for. */
function moves(middle: string): number {
  const [as, thinner] = [middle, middle.replace('9.1 mm', '8.6 mm')].map((look) => {
    const condemn = pointOf(reportOf(before + look + after), 'P1').model?.condemn;
    if (condemn?.kind !== 'life') throw new Error('no forecast');
    return condemn.exposure.q50;
  });
  return Math.abs(as! - thinner!);
}

describe('a look without a meter reading', () => {
  test('has the hours of the straight line between its neighbours', () => {
    expect(reckoned(before + unread + after).hours).toBeCloseTo(4800, 6);
    expect(reckoned(before + unread.replace(' {', ' meter not read {') + after)).toEqual(
      reckoned(before + unread + after),
    );
  });

  test('is as sure as weeks drawn between two readings are', () => {
    const { error } = reckoned(before + unread + after);
    // The declared ± 10 % is of a mean over the usual interval between readings: here 100 days (commissioning to 2400 h), 200 days.
    const [perDay, ratio, interval, days, at] = [24, 0.1, 200, 200, 100];
    const daily = perDay * ratio * Math.sqrt(interval);
    let state = 20261127;
    const uniform = () => ((state = (state * 48271) % 2147483647) - 0.5) / 2147483646;
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const strays = Array.from({ length: 4000 }, () => {
      let [walked, there] = [0, 0];
      for (let day = 1; day <= days; day++) {
        walked += daily * normal();
        if (day === at) there = walked;
      }
      return there - (walked * at) / days; // from the line between the two readings
    });
    const drawn = Math.sqrt(strays.reduce((sum, each) => sum + each ** 2, 0) / strays.length);
    expect(error! / drawn).toBeGreaterThan(0.95);
    expect(error! / drawn).toBeLessThan(1.05);
  });

  test('beyond the last reading is reckoned by duty, less sure the longer it is', () => {
    const near = reckoned(before + after + look(7440, thin).replace(' meter 7440 h', ''), 2);
    const far = reckoned(before + after + look(9600, thin).replace(' meter 9600 h', ''), 2);
    expect(near.hours).toBeCloseTo(7440, 6);
    expect(far.hours).toBeCloseTo(9600, 6);
    expect(far.error).toBeGreaterThan(2 * near.error!);
  });

  test('counts in the report as the look with the reckoned hours does, and no surer', () => {
    const points = [read, unread].map((middle) => pointOf(reportOf(before + middle + after), 'P1'));
    const [known, guessed] = points.map(({ model }) => model?.condemn);
    if (known?.kind !== 'life' || guessed?.kind !== 'life') throw new Error('no forecast');
    expect(points[1]!.readings.map(({ exposure }) => exposure)).toEqual(
      points[0]!.readings.map(({ exposure }) => exposure),
    );
    expect(guessed.exposure.q50 / known.exposure.q50).toBeGreaterThan(0.97);
    expect(guessed.exposure.q50 / known.exposure.q50).toBeLessThan(1.03);
    expect(moves(unread)).toBeLessThan(moves(read));
  });

  test('on the day of a reline saw the liner that came out', () => {
    const reline = 'reline DG1 2025-07-20 meter 4800 h { liner TwoLayer12 }\n';
    const { readings, former } = pointOf(reportOf(before + reline + unread + after), 'P1');
    expect(former).toHaveLength(2);
    expect(readings.map(({ exposure }) => exposure)).toEqual([2400]);
  });
});

test('a meter read with doubt is as sure as was written', () => {
  expect(reckoned(before + read.replace('4800 h', '4800 h ± 300 h') + after)).toEqual({
    hours: 4800,
    error: 300,
  });
  expect(moves(read.replace('4800 h', '4800 h ± 600 h'))).toBeLessThan(0.5 * moves(read));
});

test('a reline without a meter reading starts its liner at the hours of its day', () => {
  const reline = (meter: string): string => `reline DG1 2025-07-20${meter} { liner TwoLayer12 }\n`;
  const [known, guessed] = [' meter 4800 h', ''].map((meter) => {
    const { readings } = pointOf(reportOf(before + reline(meter) + after), 'P1');
    return readings.map(({ exposure }) => exposure);
  });
  expect(guessed).toEqual(known);
  expect(guessed).toEqual([2400]);
});
