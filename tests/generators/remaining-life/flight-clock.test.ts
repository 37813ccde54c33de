import { expect, it } from 'vitest';
import { estateOf, look, only, works } from './story.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';

/** Three looks at four places of a flight 60 mm wide; the last interval wears `pace` times as fast. */
function middleLife(pace: number): number {
  const depth = (k: number, rate: number): string => (60 - rate * (k < 3 ? k : 2 + pace)).toFixed(1);
  const records = [1, 2, 3].map((k) =>
    look(
      2000 * k,
      [3.1, 2.8, 3.4, 3].map((rate, i) => `flight at ${1 + i} m depth ${depth(k, rate)} mm`).join(';'),
    ),
  );
  const screw = works.replace(
    'pitch 350 mm }',
    'pitch 350 mm flight 60 mm by 20 mm condemn flight at 30 mm }',
  );
  const flights = only(remainingLife(estateOf(screw, ...records), { track: false })).flights;
  const forecast = flights[0]?.forecast;
  if (forecast?.kind !== 'life') throw new Error('no forecast');
  return forecast.exposure.q50;
}

it('flights that all wear three times as fast since the last look are forecast by the new rate', () => {
  const [steady, faster] = [middleLife(1), middleLife(3)];
  // By one straight line: 30 mm at 3/2000 mm an hour is 20 000 h, at 5/6000 of that line 12 000 h; at three times the rate less.
  expect(steady).toBeGreaterThan(16_000);
  expect(faster).toBeLessThan(10_500);
});
