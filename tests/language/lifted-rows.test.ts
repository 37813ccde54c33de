// Which rows are read straight off the text, what they say, and what is left for the parser: by hand, case by case. That both
// roads read the same is for lifting.test.ts; here stands what each road gets.

import { describe, expect, it, test } from 'vitest';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';
import { scanComments } from '../../src/language/comments.js';
import { liftRows, type Lifted } from '../../src/language/lifting.js';

const keywords = new Set(['flight', 'red-hot', 'by']);
const lift = (text: string): Lifted => liftRows(text, scanComments(text), (word) => keywords.has(word));
const head = 'inspection DG1 2026-03-14 meter 8120 h {\n';
const inspection = (lines: string): string => `${head}${lines}\n}\n`;

/** The texts of the rows that were taken out. */
const takenFrom = (text: string): readonly string[] =>
  lift(text)
    .rows.extents()
    .map(({ start, end }) => text.slice(start, end));

/** All that is known of the rows in a text, with names in place of numbers. */
function rowsOf(text: string): readonly unknown[] {
  const { rows } = lift(text).rows.finish([{ start: 0, end: text.length }]);
  return Array.from(rows.kind, (kind, row) => {
    const spot = rows.spots[rows.spot[row] ?? -1];
    const value = rows.value[row] ?? NaN;
    const colour = kind === ReadingKind.colour ? rows.colours[value] : undefined;
    const from = rows.colourStart[row] ?? -1;
    return {
      spot: spot?.kind === 'point' ? spot.name : spot?.kind === 'chainage' ? [spot.at, spot.clock] : spot,
      kind,
      value: colour ?? value,
      error: rows.error[row],
      note: rows.notes.get(row),
      colourAt: colour === undefined ? from : text.slice(from, from + colour.length),
    };
  });
}

describe('what a row says', () => {
  const bare = { error: NaN, note: undefined, colourAt: 0, value: NaN };
  test.each<[string, string, object]>([
    ['a thickness', 'P1 thickness 8.4 mm', { spot: 'P1', kind: ReadingKind.thickness, value: 8.4 }],
    ['in inches: 3/8 of 25.4', 'P1 thickness 3/8 in', { kind: ReadingKind.thickness, value: 9.525 }],
    ['in inches and parts', 'P1 thickness 1 1/2 in', { kind: ReadingKind.thickness, value: 38.1 }],
    ['its own error', 'P1 thickness 8 mm ± 0.2 mm', { kind: ReadingKind.thickness, value: 8, error: 0.2 }],
    [
      'its error in letters',
      'P1 thickness 8mm+/-0.2mm',
      { kind: ReadingKind.thickness, value: 8, error: 0.2 },
    ],
    ['a note', 'P1 thickness 8 mm "wet"', { kind: ReadingKind.thickness, value: 8, note: 'wet' }],
    ['an empty note', 'P1 not seen ""', { kind: ReadingKind.notSeen, note: '' }],
    ['a colour', 'P1 colour red', { kind: ReadingKind.colour, value: 'red', colourAt: 'red' }],
    [
      'a colour that is also its point’s name',
      'red colour red "not red"',
      { spot: 'red', kind: ReadingKind.colour, value: 'red', note: 'not red', colourAt: 'red' },
    ],
    ['steel', 'P1 trough showing', { kind: ReadingKind.trough }],
    ['nothing', 'P1 not seen "build-up"', { kind: ReadingKind.notSeen, note: 'build-up' }],
    [
      'a place by chainage and clock: 14.2 m and half past seven',
      'at 14.20 m clock 7:30 trough showing',
      { spot: [14_200, 7.5], kind: ReadingKind.trough },
    ],
    [
      'a place by millimetres',
      'at 900 mm clock 12:00 not seen',
      { spot: [900, 12], kind: ReadingKind.notSeen },
    ],
  ])('%s', (_, row, expected) => {
    expect(rowsOf(inspection(`  ${row}`))).toEqual([{ spot: 'P1', ...bare, ...expected }]);
  });

  it('where the name of the colour stands, not where the point or the note names it', () => {
    const text = inspection('  red colour red "red"');
    const { rows } = lift(text).rows.finish([{ start: 0, end: text.length }]);
    expect(rows.colourStart[0]).toBe(head.length + '  red colour '.length);
  });

  it('several, each its own place and colour, a place said twice being one', () => {
    const text = inspection(
      '  P1 colour red\n  P2 colour white\n  P1 colour white\n  at 1 m clock 6:00 not seen\n  at 1000 mm clock 6:00 trough showing',
    );
    const { rows } = lift(text).rows.finish([{ start: 0, end: text.length }]);
    expect(rows.spots).toEqual([
      { kind: 'point', name: 'P1' },
      { kind: 'point', name: 'P2' },
      { kind: 'chainage', at: 1000, clock: 6 },
    ]);
    expect(Array.from(rows.spot)).toEqual([0, 1, 0, 2, 2]);
    expect(rows.colours).toEqual(['red', 'white']);
    expect(Array.from(rows.value)).toEqual([0, 1, 1, NaN, NaN]);
  });
});

describe('which rows are left to the parser', () => {
  test.each([
    ['a word of the language for a point', 'flight thickness 8 mm'],
    ['a word of the language for a colour', 'P1 colour flight'],
    ['a clock there is none of', 'at 3 m clock 13:00 not seen'],
    ['a place that is no length', 'at 3 kg clock 6:00 not seen'],
    ['a place beyond any conveyor', 'at 90000 m clock 6:00 not seen'],
    ['a thickness in kilograms', 'P1 thickness 8 kg'],
    ['a thickness beyond any liner', 'P1 thickness 5000 mm'],
    ['an error in kilograms', 'P1 thickness 8 mm ± 1 kg'],
    ['a decimal comma', 'P1 thickness 8,4 mm'],
    ['no unit', 'P1 thickness 8.4'],
    ['a note that is not closed', 'P1 not seen "wet'],
    ['two on a line', 'P1 not seen P2 not seen'],
  ])('%s', (_, row) => {
    const text = inspection(`  ${row}`);
    expect(takenFrom(text)).toEqual([]);
    expect(lift(text)).toMatchObject({ rest: text, taken: 0 });
    // And where the same place or colour is right elsewhere, before it and after a finished line.
    const good = '  P1 thickness 8 mm';
    expect(takenFrom(inspection(`${good}\n  ${row}\n  by "x"\n${good}`))).toHaveLength(2);
  });

  const before = 'P1 not seen';
  test.each([
    ['a note on the next line', `  ${before}\n  "wet"`],
    ['a note after an empty line', `  ${before}\n\n\t\n  "wet"`],
    ['a note after a remark', `  ${before}\n  // a remark\n  "wet"`],
    ['a note after a comment of two lines', `  ${before}\n  /* a\n * remark */ "wet"`],
    ['a note after a comment that is empty', `  ${before}\n  /**/ "wet"`],
    ['an error on the next line', '  P1 thickness 8 mm\n  ± 0.2 mm'],
    ['an error on the next line, in letters', '  P1 thickness 8 mm\n  +/- 0.2 mm'],
  ])('one that goes on: %s', (_, lines) => {
    expect(takenFrom(inspection(lines))).toEqual([]);
  });

  test.each([
    ['a row', '  P2 not seen'],
    ['a remark with a quote', '  // "wet"'],
    ['a comment with a quote', '  /* "wet" */'],
    ['a remark, then a finished line', '  // a remark\n  by "x"'],
    ['a plus that is no error', '  + 3'],
  ])('not one that is only followed by %s', (_, next) => {
    expect(takenFrom(inspection(`  ${before}\n${next}`))).toContain(before);
  });
});

describe('what stands between rows', () => {
  const good = '  P9 not seen';
  const taken = (line: string): boolean => takenFrom(inspection(`${line}\n${good}`)).length === 1;
  test.each([
    '  by "x"',
    '  view upstream',
    '\tview \tdownstream',
    '  photo "a.jpg"',
    '  gauge ultrasonic',
    '  gauge depth gauge ± 0.5 mm',
    '  gauge calliper',
    '  gauge by eye',
    '  hold-down at 3 m gap 4 mm',
    '  hold-down at 3 m gap 4 mm "loose"',
    '  by "x" // as told',
    '  // a remark',
    '',
    '   ',
    '  // {',
    '  // so }',
    '  /* so } */',
    '  /* so */ by "x"',
    '  by "http://a"',
    '  by "{"',
  ])('a row is taken behind %j', (line) => expect(taken(line)).toBe(true));

  test.each([
    '  by',
    '  finding',
    // A photo may go on behind its words, on the next line too: the parser reads what stands there.
    '  finding "x"',
    '  finding F3 at 3 m "bolt loose"',
    '  gauge ultrasonic ± 0.5',
    '  hold-down at 3 m',
    '  P8 thickness 8,4 mm',
    '  so',
    '  by "x" so',
    '  so by "x"',
    '  /* opened',
    '  // a\n  so // b',
  ])('none behind %j', (line) => expect(taken(line)).toBe(false));

  it('an empty line or a remark tells nothing: what stood before them still does', () => {
    expect(takenFrom(inspection(`  so\n\n  // a remark\n${good}`))).toEqual([]);
    expect(takenFrom(inspection(`  so\n  by "x"\n\n${good}`))).toHaveLength(1);
  });

  it('a brace ends the block: rows behind it are none', () => {
    expect(takenFrom(`${head}${good}\n}\n${good}\n`)).toHaveLength(1);
    expect(takenFrom(`${head}  by "x" }\n${good}\n`)).toEqual([]);
    expect(takenFrom(`${head}  by {\n  by "x"\n${good}\n`)).toEqual([]);
    expect(takenFrom(`${head}  by "a" } "b"\n${good}\n`)).toEqual([]);
    // The strokes stand in a text and the quote is an inch mark: neither hides the brace.
    expect(takenFrom(`${head}  by "// a" }\n  by "x"\n${good}\n`)).toEqual([]);
    expect(takenFrom(`${head}  gap 3" } "b"\n  by "x"\n${good}\n`)).toEqual([]);
  });

  it('a comment of several lines says nothing, whatever stands in it', () => {
    expect(
      takenFrom(inspection(`  by "x"\n/* a\n  }\n${good}\n  so */\n${good}\n  by "y"\n${good}`)),
    ).toHaveLength(1);
    expect(takenFrom(inspection(`/* }\n*/\n  by "x"\n${good}`))).toHaveLength(0);
  });
});

describe('where an inspection begins', () => {
  const row = 'P1 not seen';
  const given = (start: string, end = '\n'): number =>
    takenFrom(`${start}${end}  ${row}${end}}${end}`).length;
  test.each([
    'inspection DG1 2026-03-14 meter 8120 h {',
    'inspection{',
    '  inspection DG1 {',
    '\t\tinspection DG1 {',
    'inspection DG1 {  \t',
    'inspection DG1 {// as told',
    'inspection DG1 { // as told {',
    'plant A { }\ninspection DG1 {',
    'plant A {\r\n}\r\ninspection DG1 {',
  ])('%j', (start) => {
    for (const end of ['\n', '\r\n', '\r']) expect(given(start, end), JSON.stringify(end)).toBe(1);
  });
  test.each([
    'inspections DG1 {',
    'inspection-plan DG1 {',
    'inspection_2 {',
    'reinspection DG1 {',
    'an inspection DG1 {',
    'Inspection DG1 {',
    'inspection DG1',
    'inspection DG1 }',
    'inspection DG1 } {',
    'inspection { {',
    'inspection "DG1" {',
    'inspection / {',
    'inspection // DG1 {',
    'inspection DG1 { by "x"',
    'inspection DG1 { /* as told */',
    '// inspection DG1 {',
  ])('not by %j', (start) => expect(given(start)).toBe(0));

  it('over two lines it is left to the parser', () => expect(given('inspection DG1\n  {')).toBe(0));

  it('one in a comment is none, one behind a comment is', () => {
    expect(takenFrom(`/* so\n${inspection(`  ${row}`)}*/\n`)).toEqual([]);
    expect(takenFrom(`/* so */\n// so\n${inspection(`  ${row}`)}`)).toEqual([row]);
    expect(takenFrom(`/* a */\n/* b\n${inspection(`  ${row}`)}*/\n${inspection('  P2 not seen')}`)).toEqual([
      'P2 not seen',
    ]);
  });
});

describe('what is left', () => {
  it('has blanks for the rows, so that all else stands where it stood', () => {
    const text = `plant A { }\n${inspection('  P1 not seen\n  P2 thickness 8 mm // dry\n  by "x"\n  P3 colour red')}// end\n`;
    const { rest, taken } = lift(text);
    const lines = rest.split('\n');
    expect(rest).toHaveLength(text.length);
    expect(lines.map((line) => line.trim()).filter((line) => line !== '')).toEqual([
      'plant A { }',
      head.trim(),
      'by "x"',
      '}',
      '// end',
    ]);
    for (const kept of ['by "x"', '}\n// end']) expect(rest.indexOf(kept)).toBe(text.indexOf(kept));
    const rows = ['  P1 not seen\n', '  P2 thickness 8 mm // dry\n', '  P3 colour red\n'];
    expect(taken).toBe(rows.join('').length);
  });

  it('of two inspections both, what stands between them included', () => {
    const text = `${inspection('  P1 not seen')}plant A { }\n${inspection('  P2 not seen')}`;
    expect(takenFrom(text)).toEqual(['P1 not seen', 'P2 not seen']);
    expect(lift(text).rest.replace(/ {4,}/g, ' ~')).toBe(`${head} ~\n}\nplant A { }\n${head} ~\n}\n`);
  });

  it('is the text itself where no row was taken', () => {
    const text = 'plant A { }\n';
    expect(lift(text)).toMatchObject({ rest: text, taken: 0 });
  });

  it('of an inspection that nobody closed the rows are taken, but not a last one without its end', () => {
    expect(takenFrom(`${head}  P1 not seen\n  P2 not seen\n  P3 not seen`)).toEqual([
      'P1 not seen',
      'P2 not seen',
    ]);
    const open = lift(`${head}  P1 not seen\n`);
    expect([open.rest, open.taken]).toEqual([`${head}${' '.repeat(13)}\n`, 14]);
    expect(lift(head).rest).toBe(head);
  });
});
