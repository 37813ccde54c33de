// What a sheet says is what the records say afterwards, however it was laid out: known readings, laid out at random, imported, read
// by the language, compared with the truth. A second run finds all of it there.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { placeInspections, type PlacedReadings } from '../../src/cli/placed-inspections.js';
import { formatDay } from '../../src/domain/units/calendar.js';
import { formatText } from '../../src/language/format.js';
import { readCsv } from '../../src/exchange/read-csv.js';
import { readMapping } from '../../src/exchange/read-mapping.js';
import { settleReadings, type Settled } from '../../src/exchange/settle-readings.js';
import type { Table } from '../../src/exchange/table.js';
import { takeReadings } from '../../src/exchange/take-readings.js';
import type { Mapping } from '../../src/exchange/mapping.js';
import { csvBytes, estateText, laidOut, layouts, truths, type TrueReading } from './truth.js';

const estate = { path: 'plant.trough', text: estateText };

function mappingOf(text: string): Mapping {
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
        return `${conveyor.name} ${formatDay(date.day)} ${meter.hours.value} h ${place} ${what} ${readings.notes.get(row) ?? ''}`.trim();
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

describe('readings in a text file', () => {
  test('come out of the language as they went into the sheet, in whatever form', () => {
    const drawn = layouts.chain((layout) => fc.tuple(fc.constant(layout), truths(layout.unit)));
    fc.assert(
      fc.property(drawn, ([layout, truth]) => {
        const { rows, mapping: text } = laidOut(truth, layout);
        const mapping = mappingOf(text);
        const read = readCsv(csvBytes(rows, layout), mapping);
        if (!read.ok) throw new Error(read.message);
        const { settled, placement } = imported(read.book.tables, mapping, [estate]);
        expect(settled.conflicts).toEqual([]);
        expect([...settled.skipped, ...placement.skipped].filter(({ intended }) => !intended)).toEqual([]);
        const texts = [estate, ...placement.files];
        const after = analyse(texts.map(({ path: uri, text: content }) => ({ uri, text: content })));
        expect(said(after)).toEqual(expected(truth, layout.unit));
        for (const { text: content } of placement.files) expect(formatText(content)).toBe(content);
        expect(after.findings.filter(({ severity }) => severity === 'error')).toEqual([]);

        const again = imported(read.book.tables, mapping, texts);
        expect([again.settled.there, again.placement.files]).toEqual([truth.length, []]);
      }),
      { numRuns: 60 },
    );
  });
});
