// Whose photo it is goes by its line: behind a row or further in below it, the row's; on a line of its own, the look's. A reading
// below a condition is no place of that. Both roads into the columns, and the text laid out, agree about it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../src/language/blocks.js';
import { formatText } from '../../src/language/format.js';
import { lower } from '../../src/language/lower.js';
import { parseText, prepare } from '../../src/language/parse.js';
import type { Sheet } from '../../src/language/sheet.js';
import { inspect } from './read.js';

const through = (text: string): Sheet => lower(parseText(text, prepare(text)), 0, 'a');

/** The look's own photos, and those of its rows: readings by number, then conditions and plate readings by their kind. */
function photos(text: string, sheet = through(text)): readonly string[] {
  expect(sheet.problems).toEqual([]);
  return sheet.inspections.flatMap(({ photos: own, conditions, plates }) => [
    ...own.map(({ path, note }) => `look ${path}${note === undefined ? '' : ` ${note}`}`),
    ...[...sheet.rows.photos].map(([row, { path }]) => `reading ${row} ${path}`),
    ...conditions.flatMap(({ kind, photo }) => (photo ? [`${kind} ${photo.path}`] : [])),
    ...plates.flatMap(({ photo }) => (photo ? [`plate ${photo.path}`] : [])),
  ]);
}

describe('a photo is', () => {
  test.each([
    ['the reading’s behind it', 'P1 thickness 8 mm photo "a.png"', ['reading 0 a.png']],
    ['the look’s directly below a reading', 'P1 thickness 8 mm\n  photo "a.png"', ['look a.png']],
    ['the reading’s further in', 'P1 thickness 8 mm\n    photo "a.png" "wet"', ['reading 0 a.png']],
    [
      'the look’s, with its note, below a condition',
      'gearbox noise\n  photo "a.png" "the drive"',
      ['look a.png the drive'],
    ],
    ['the condition’s further in', 'panel torn at 4 m serious\n\tphoto "a.png"', ['panel torn a.png']],
    ['the look’s below a plate reading', 'plate at 4 m thickness 3 mm\n  photo "a.png"', ['look a.png']],
    ['the plate’s further in', 'plate at 4 m thickness 3 mm\n     photo "a.png"', ['plate a.png']],
    ['the look’s below a remark', 'panel torn at 4 m // here\n  photo "a.png"', ['look a.png']],
    ['the look’s first of all', 'photo "a.png"\n  P1 thickness 8 mm', ['look a.png']],
    ['the look’s further in than a row that takes none', 'by "x"\n    photo "a.png"', ['look a.png']],
    [
      'by the row, where the row goes on below its line',
      'panel torn at 4 m\n      serious\n      photo "a.png"',
      ['panel torn a.png'],
    ],
    [
      'of each as it stands',
      'P1 thickness 8 mm\n  P2 thickness 7 mm photo "b.png"\n  photo "c.png"\n  P3 thickness 7 mm\n  photo "d.png"',
      ['look c.png', 'look d.png', 'reading 1 b.png'],
    ],
    [
      'by the line where rows stand in unequal columns',
      'by "x"\n      P1 thickness 8 mm\n      photo "a.png"\n    P2 thickness 8 mm\n      photo "b.png"',
      ['look a.png', 'reading 1 b.png'],
    ],
  ])('%s', (_, rows, expected) => {
    const text = inspect(rows);
    expect(photos(text)).toEqual(expected);
    expect(photos(text, lower(parseText(text), 0, 'a'))).toEqual(expected);
    expect(photos(formatText(text))).toEqual(expected);
    expect(photos(text.replaceAll('\n', '\r\n'))).toEqual(expected);
  });

  test('the row’s where a whole look stands on one line and the row can take it', () =>
    expect(photos('inspection A 2026-01-01 meter 1 h { P1 thickness 8 mm photo "a.png" }')).toEqual([
      'reading 0 a.png',
    ]));

  test('the weld’s below a patch, whose block ends with it', () => {
    const { patches, problems } = through(
      'patch DG1 2026-03-10 at 9 m to 9.6 m thickness 4 mm\nphoto "a.png"\n',
    );
    expect([problems, patches[0]?.photo?.path]).toEqual([[], 'a.png']);
  });
});

test('a line of its own stays one when the text is laid out, a line further in joins its row', () => {
  expect(formatText(inspect('P1 thickness 8 mm\nphoto "a.png"\ngearbox noise\n   photo "b.png"'))).toBe(
    inspect('P1 thickness 8 mm\nphoto "a.png"\ngearbox noise photo "b.png"'.replaceAll('\n', '\n  ')),
  );
});

test('to a comparison of texts it is a row of the look', () => {
  const rows = blocksOf(inspect('gearbox noise\n  photo "a.png"'));
  expect(JSON.stringify(rows)).not.toContain('gearbox noise photo');
});

test('a reading by its place below a condition is a reading, a place below its condition is that', () => {
  const { problems, rows, inspections } = through(
    inspect(
      'gearbox noise\n  at 3 m clock 7:30 thickness 8 mm\n  panel torn\n  at 4 m\n    clock 5:00 slight',
    ),
  );
  expect([problems, rows.count]).toEqual([[], 1]);
  expect(inspections[0]?.conditions.map(({ at }) => at?.value)).toEqual([undefined, 4000]);
});

test('a slip beside it changes nothing of it', () => {
  const rows = 'P1 thicknes 8 mm\n  panel torn at 4 m\n  photo "a.png"\n  gearbox noise\n    photo "b.png"';
  const sheet = through(inspect(rows));
  expect(sheet.problems).toHaveLength(1);
  expect(photos('', { ...sheet, problems: [] })).toEqual(['look a.png', 'gearbox b.png']);
});

test('whatever stands around it, both roads and the laid out text say the same', () => {
  const row = fc.constantFrom(
    'P1 thickness 8 mm',
    'P2 colour teal',
    'at 3 m clock 7:30 trough showing',
    'panel torn at 4 m',
    'gearbox noise',
    'plate at 4 m thickness 3 mm',
    'by "x"',
    'finding "y"',
    '// a remark',
    '',
    'photo "a.png"',
    'photo "b.png" "note"',
    'photo "c.png" // remark',
  );
  const line = fc.tuple(fc.constantFrom('', '  ', '    ', '\t'), row).map((parts) => parts.join(''));
  fc.assert(
    fc.property(fc.array(line, { maxLength: 9 }), fc.constantFrom('\n', '\r\n'), (lines, end) => {
      const text = ['inspection A 2026-01-01 meter 1 h {', ...lines, '}', ''].join(end);
      const by = lines.filter((one) => one.includes('by "x"')).length;
      fc.pre(by < 2);
      const expected = photos(text, lower(parseText(text), 0, 'a'));
      expect(photos(text)).toEqual(expected);
      expect(photos(formatText(text))).toEqual(expected);
    }),
    { numRuns: 300 },
  );
});
