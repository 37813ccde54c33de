// What a sheet says is what the records say afterwards, however it was laid out: known readings, laid out at random, imported, read
// by the language, compared with the truth. A second run finds all of it there.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readCsv } from '../../src/exchange/read-csv.js';
import { expectTruth, mappingOf } from './imported.js';
import { csvBytes, laidOut, layouts, truths } from './truth.js';

test('readings in a text file come out of the language as they went into the sheet, in whatever form', () => {
  const drawn = layouts.chain((layout) => fc.tuple(fc.constant(layout), truths(layout.unit)));
  fc.assert(
    fc.property(drawn, ([layout, truth]) => {
      const { rows, mapping: text } = laidOut(truth, layout);
      const mapping = mappingOf(text);
      const read = readCsv(csvBytes(rows, layout), mapping);
      expect(read).toMatchObject({ ok: true });
      if (read.ok) expectTruth(read.book.tables, mapping, truth, layout.unit);
    }),
    { numRuns: 16 },
  );
});
