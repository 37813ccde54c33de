// What the saw is told: each sheet with its cuts, what is left of it, and whether that goes to store or to scrap. The sheets of
// the lift conveyor: panels of 1000 mm and a closing one of 500 mm above the gate.

import { describe, expect, test } from 'vitest';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, theJob } from '../estate.js';

/** Rows of the cut list in the pack, cells trimmed. */
function cutRows(job: string): readonly (readonly string[])[] {
  const analysis = read(liftConveyor({ job }));
  const text = workPackMarkdown(workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') }));
  const part = text.slice(text.indexOf('Cut list'));
  return part
    .slice(0, part.indexOf('\n#'))
    .split('\n')
    .filter((line) => /^\| [SO]\d/.test(line))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

describe('what is left of a sheet', () => {
  // 12.0 m − 7.5 m: four panels of 1000 mm and 500 mm; two to a sheet of 2100 mm with 3 mm of saw leave 97 mm.
  test('goes to store from the least closing piece on, and to scrap below it', () => {
    const at = (least: number): string[] =>
      cutRows(`stock 2100 mm\n  minimum closing piece ${least} mm`).map((row) => `${row[3]} ${row[4]}`);
    expect(at(97)).toEqual(['97 mm to store', '1.60 m to store']);
    expect(at(98)).toEqual(['97 mm to scrap', '1.60 m to store']);
  });
  test('is not spoken of where nothing is left', () => {
    const rows = cutRows('stock 2003 mm');
    expect(rows[0]?.slice(3, 5)).toEqual(['', '']);
  });
  test('an offcut is marked as one, and the closing piece is cut last', () => {
    const rows = cutRows('stock 2003 mm\n  offcut 600 mm');
    expect(rows.map((row) => row[0])).toEqual(['O1 (offcut)', 'S1, S2']);
    // Sticks that are cut alike share a row, each with its own panels.
    expect(rows[1]?.[2]?.split('<br>')).toHaveLength(2);
    const closing = rows.find((row) => row[0] === 'O1 (offcut)');
    expect(closing?.[2]).toContain('500 mm C');
  });
});
