// What the tests of sheets share: import tables into a small estate, and hold what the language then reads against the truth.

import { expect } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { placeInspections, type PlacedReadings } from '../../src/cli/placed-inspections.js';
import { formatDay } from '../../src/domain/units/calendar.js';
import type { Mapping } from '../../src/exchange/mapping.js';
import { readMapping } from '../../src/exchange/read-mapping.js';
import { settleReadings, type Settled } from '../../src/exchange/settle-readings.js';
import type { Table } from '../../src/exchange/table.js';
import { takeReadings } from '../../src/exchange/take-readings.js';
import { formatText } from '../../src/language/format.js';
import { estateText, type TrueReading } from './truth.js';

export const estate = { path: 'plant.trough', text: estateText };

export function mappingOf(text: string): Mapping {
  const read = readMapping(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.mapping;
}

function imported(
  tables: readonly Table[],
  mapping: Mapping,
  texts: readonly { path: string; text: string }[],
): { settled: Settled; placement: PlacedReadings } {
  const analysis = analyse(texts.map(({ path: uri, text }) => ({ uri, text })));
  const taken = tables.map((table) => {
    const made = takeReadings(table, mapping);
    if (!made.ok) throw new Error(made.message);
    return made.taken;
  });
  const settled = settleReadings(analysis.estate, mapping, taken);
  const folder = { full: '/estate/inspections', path: 'inspections' };
  return { settled, placement: placeInspections(settled.inspections, { analysis, texts, mapping, folder }) };
}

/** Every reading of the records, in the words of the truth. */
function said({ estate: { inspections, readings, places } }: Analysis): string[] {
  return inspections
    .flatMap(({ conveyor, date, meter, firstRow, endRow }) =>
      Array.from({ length: endRow - firstRow }, (_, i) => firstRow + i).map((row) => {
        const place = places[readings.place[row] ?? -1]?.name ?? '?';
        const value = readings.value[row] ?? NaN;
        const what = readings.kind[row] === 0 ? value.toFixed(6) : `${readings.kind[row]} ${value}`;
        return `${conveyor.name} ${formatDay(date.day)} ${meter.hours?.value} h ${place} ${what} ${readings.notes.get(row) ?? ''}`.trim();
      }),
    )
    .sort();
}

function expected(truth: readonly TrueReading[], unit: 'mm' | 'in'): string[] {
  return truth
    .map(({ conveyor, day, meter, point, said: what }) => {
      const front = `${conveyor} ${day} ${meter} h ${point}`;
      if ('colour' in what) return `${front} 1 ${what.colour === 'grey' ? 0 : 1}`;
      if ('notSeen' in what) return `${front} 3 NaN ${what.notSeen}`;
      return `${front} ${(unit === 'mm' ? what.digits / 100 : (what.digits / 1000) * 25.4).toFixed(6)}`;
    })
    .sort();
}

/** All of the truth is new, reads back equal, is laid out, and is there when the sheet comes again. */
export function expectTruth(
  tables: readonly Table[],
  mapping: Mapping,
  truth: readonly TrueReading[],
  unit: 'mm' | 'in',
): void {
  const { settled, placement } = imported(tables, mapping, [estate]);
  expect(settled.conflicts).toEqual([]);
  expect([...settled.skipped, ...placement.skipped].filter(({ intended }) => !intended)).toEqual([]);
  const texts = [estate, ...placement.files];
  const after = analyse(texts.map(({ path: uri, text }) => ({ uri, text })));
  expect(said(after)).toEqual(expected(truth, unit));
  for (const { text } of placement.files) expect(formatText(text)).toBe(text);
  expect(after.findings.filter(({ severity }) => severity === 'error')).toEqual([]);

  const again = imported(tables, mapping, texts);
  expect([again.settled.there, again.placement.files]).toEqual([truth.length, []]);
}
