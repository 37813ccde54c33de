// Panels measured on the bench when a reline took them out: the last reading of the former liner at that place, a real one,
// and no word about the new liner.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { exposedReadings } from '../../../src/domain/model/exposure.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { readingsTable } from '../../../src/generators/tables/readings.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const looks = `
inspection DG1 2024-06-03 meter 2400 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.6 mm
  P2 thickness 9.8 mm
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.2 mm
}`;
const reline = (...facts: readonly string[]): string =>
  `reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  ${facts.join('\n  ')}\n}`;

function read(...blocks: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', [looks, ...blocks].join('\n')) }]);
}

const life = ({ estate }: Analysis, depth: 'hand' | 'model' = 'hand'): RemainingLife =>
  remainingLife(estate, { track: false, depth, asOf: parseDay('2025-06-02')! }); // a day of the test's own
const bench = ({ estate }: Analysis): unknown =>
  [...exposedReadings(estate)].flatMap(([place, rows]) =>
    rows
      .filter(({ row }) => estate.readings.bench.has(row))
      .map(({ set, exposure }) => [place.name, set?.removed?.hours, exposure.known && exposure.value]),
  );

describe('an old panel on the bench', () => {
  test('is a reading of the liner that came out, at the hours it came out', () => {
    expect(bench(read(reline('old panel at P1 thickness 8.1 mm')))).toEqual([['P1', 3900, 3900]]);
  });

  test('by chainage it is of the point there, else of the middle of the worn sector or the bottom', () => {
    const places = (fact: string): unknown => (bench(read(reline(fact))) as string[][]).map(([name]) => name);
    const at = read().estate.conveyors[0]?.points[0]?.at.text ?? '';
    expect(places(`old panel at ${at} thickness 8.1 mm`)).toEqual(['P1']);
    expect(places('old panel at panel 3 of run 2 thickness 8.1 mm')).toEqual(
      places('old panel 3 of run 2 thickness 8.1 mm'),
    );
    expect(places('old panel at 5.1 m thickness 8.1 mm')).toEqual(['5.10 m 6:00']);
    expect(places('old panel at 5.1 m clock 5:00 worn through')).toEqual(['5.10 m 5:00']);
  });

  test('gives the former liner its wear, and the new one no reading and no point', () => {
    const plain = life(read(reline()));
    const measured = life(
      read(reline('old panel at P1 thickness 8.1 mm', 'old panel at 5.1 m thickness 7.4 mm')),
    );
    const points = ({ conveyors }: RemainingLife): unknown =>
      conveyors.map((each) =>
        each.points.map(({ place, readings, hand }) => [place.name, readings.length, hand.kind]),
      );
    expect(points(measured)).toEqual(points(plain));
    const [former] = measured.conveyors[0]!.former;
    expect(former?.least?.thickness).toBe(7.4);
    expect(former?.onTheBench.map(({ place, thickness }) => [place, thickness])).toEqual([
      ['5.10 m', 7.4],
      ['P1', 8.1],
    ]);
    const sheet = inspectionSheet(measured.estate, measured.estate.conveyors[0]!);
    expect(sheet.points.map(({ name }) => name)).not.toContain(undefined);
  });

  test('moves the forecast of the new liner by what the old one taught', () => {
    const limit = (of: RemainingLife): unknown => {
      const model = of.conveyors[0]?.points[0]?.model?.condemn;
      return model?.kind === 'life' && model.exposure.q50;
    };
    const fast = limit(life(read(reline('old panel at P1 thickness 5.2 mm')), 'model'));
    const slow = limit(life(read(reline('old panel at P1 thickness 9.4 mm')), 'model'));
    expect(fast).toBeLessThan(slow as number);
  });

  test('stands in the page, in JSON and in the table of readings', () => {
    const report = life(read(reline('old panel at P1 thickness 8.1 mm "lower end"')));
    expect(remainingLifeHtml(report)).toContain('On the bench, mm');
    const json = JSON.parse(remainingLifeJson(report)) as {
      conveyors: { formerSets: { onTheBench: unknown }[] }[];
    };
    expect(json.conveyors[0]?.formerSets[0]?.onTheBench).toEqual([{ place: 'P1', thickness: 8.1 }]);
    const rows = JSON.stringify(readingsTable(report));
    expect(rows).toContain('measured when it was taken out; lower end');
  });

  test('is not known before the reline', () => {
    const { estate } = read(reline('old panel at P1 thickness 8.1 mm'));
    const then = knownOn(estate, parseDay('2024-09-01')!);
    expect([then.readings.count, then.readings.bench.size]).toEqual([2, 0]);
    const now = knownOn(estate, parseDay('2025-06-02')!);
    expect([...now.readings.inspection]).toEqual([...estate.readings.inspection]);
    expect(bench({ ...read(), estate: now })).toEqual([['P1', 3900, 3900]]);
    expect(
      [...exposedReadings(estate, { asOf: parseDay('2024-09-01')! }).values()].flat().map(({ row }) => row),
    ).toEqual([0, 1]);
  });

  test('bad lines are refused, and the reline stands', () => {
    for (const fact of [
      'old panel at P9 thickness 8.1 mm',
      'old panel at P1 thickness 8.1',
      'old panel at P1 thickness -2 mm',
      'old panel at 40 m thickness 8.1 mm',
      'old panel at P1 clock 5:00 thickness 8.1 mm',
    ]) {
      const { findings, estate } = read(reline(fact));
      expect(findings.length, fact).toBeGreaterThan(0);
      if (!fact.includes('clock')) expect(estate.relines.length, fact).toBe(1);
    }
  });
});

test('a spot without a name that only the former liner was read at is no point, nor one first read later', () => {
  const spot = looks.replace('P2 thickness 9.8 mm', 'at 5.1 m clock 5:30 thickness 9.4 mm');
  const names = (text: string, asOf: string): unknown => {
    const { estate } = analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', text) }]);
    return remainingLife(estate, { depth: 'hand', asOf: parseDay(asOf)! }).conveyors[0]?.points.map(
      ({ place }) => place.name,
    );
  };
  const declared = names(looks, '2025-06-02') as string[];
  expect(names(spot, '2025-06-02')).toEqual([...declared, '5.10 m 5:30']);
  expect(names(spot, '2024-06-01')).toEqual(declared);
  expect(names(`${spot}\n${reline()}`, '2024-09-01')).toEqual([...declared, '5.10 m 5:30']);
  expect(names(`${spot}\n${reline()}`, '2025-06-02')).toEqual(declared);
});
