import { expect, it } from 'vitest';
import { estateOf, look, only, works } from './story.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
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

it('an outside diameter tells the depth where none was read, and stands beside it where one was', () => {
  const screw = works.replace(
    'pitch 350 mm }',
    'pitch 350 mm flight 60 mm by 20 mm condemn flight at 30 mm }',
  );
  const outside = Number(/outside diameter (\d+) mm/.exec(works)?.[1]);
  const report = remainingLife(
    estateOf(
      screw,
      look(2000, `flight at 2 m outside diameter ${outside - 8} mm`),
      look(4000, `flight at 2 m depth 53 mm;flight at 2 m outside diameter ${outside - 14} mm`),
    ),
    { depth: 'hand' },
  );
  const [flight] = only(report).flights;
  // Half of what the diameter lost is off the flight: 60 − 8 / 2.
  expect(flight?.readings.map(({ depth, diameter }) => [depth, diameter])).toEqual([
    [56, outside - 8],
    [53, outside - 14],
  ]);
  expect(remainingLifeHtml(report)).toContain(`${outside - 8}.0 across`);
});

it('a counted speed stands beside the recorded one of its day, and on the next sheet', () => {
  const estate = estateOf(
    works,
    'duty DG1 from 2025-02-01 90 h/week speed 16 rpm\n',
    look(2000, 'speed 16.4 rpm "by the watch"'),
  );
  const life = only(remainingLife(estate, { depth: 'hand' }));
  expect(life.beside.speeds).toMatchObject([{ speed: 16.4, recorded: 16, note: 'by the watch' }]);
  const page = remainingLifeHtml(remainingLife(estate, { depth: 'hand' }));
  expect(page).toContain('Speed of the screw, rpm');
  expect(inspectionSheet(estate, life.conveyor).lastRead.speed).toMatch(/^16\.4 rpm on /);
});
