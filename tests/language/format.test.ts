import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import type { AstNode } from 'langium';
import { describe, expect, test } from 'vitest';
import { formatText, formattingEdits } from '../../src/language/format.js';
import { piecesOf } from '../../src/language/formatting/pieces.js';
import { parseText } from '../../src/language/parse.js';
import { readSheet } from '../../src/language/read.js';

describe('layout', () => {
  const cases: [name: string, before: string, after: string][] = [
    [
      'a short block becomes one fact a line',
      'screw change DG1 2025-06-02 meter 12000 h { screw Spiral400 }',
      'screw change DG1 2025-06-02 meter 12000 h {\n  screw Spiral400\n}\n',
    ],
    [
      'facts on one line are parted',
      'screw S { shaftless outside diameter 400mm pitch 14in }',
      'screw S {\n  shaftless\n  outside diameter 400 mm\n  pitch 14 in\n}\n',
    ],
    [
      'a fact on several lines is joined',
      'conveyor A {\n  point P1\n    at 6 m\n    clock 7:30\n}\n',
      'conveyor A {\n  point P1 at 6 m clock 7:30\n}\n',
    ],
    ['an empty block', 'screw S {}', 'screw S {\n}\n'],
    [
      'steps of an order',
      'job J { order { a :strip   all\nhold-downs    off\tall after a,b } }',
      'job J {\n  order {\n    a: strip all\n    hold-downs off all after a, b\n  }\n}\n',
    ],
    [
      'columns are not kept',
      'liner L {\n  layer ivory  6 mm\n  layer teal   6 mm\n}\n',
      'liner L {\n  layer ivory 6 mm\n  layer teal 6 mm\n}\n',
    ],
    [
      'one space before a unit, none before inch and degree signs',
      'screw S { pitch 1 3/8   in density 7850kg/m3 flight 3/8 " by 2" }',
      'screw S {\n  pitch 1 3/8 in\n  density 7850 kg/m3\n  flight 3/8" by 2"\n}\n',
    ],
    [
      'blanks inside a fraction',
      'screw S { pitch 1\t3/8   in flight 2\t3/4e by 2 in }',
      'screw S {\n  pitch 1 3/8 in\n  flight 2 3/4 e by 2 in\n}\n',
    ],
    [
      'a note on the line below its reading joins it',
      'inspection A 2026-01-01 meter 1 h {\n  P1 thickness 8 mm\n  "wet"\n  P2 thickness 8 mm // c\n  ± 0.2 mm\n}\n',
      'inspection A 2026-01-01 meter 1 h {\n  P1 thickness 8 mm "wet"\n  P2 thickness 8 mm // c\n      ± 0.2 mm\n}\n',
    ],
    [
      'quantities stay as spelled',
      'liner L { condemn at 3.00 mm thickness 1,5mm }',
      'liner L {\n  condemn at 3.00 mm\n  thickness 1,5 mm\n}\n',
    ],
    [
      'tolerances, commas and dots',
      'liner L { panel length 1200mm,3000 mm±1mm }\ninspection P . A 2026-03-14 meter 1h {}',
      'liner L {\n  panel length 1200 mm, 3000 mm ± 1 mm\n}\ninspection P.A 2026-03-14 meter 1 h {\n}\n',
    ],
    [
      'blank lines: at most one, none at the edges',
      '\n\nscrew S {\n\n  shaftless\n\n\n  hand right\n\n}\n\n\n\nscrew T {\n}\n\n',
      'screw S {\n  shaftless\n\n  hand right\n}\n\nscrew T {\n}\n',
    ],
    ['nothing stays nothing', ' \n\n', ''],
    [
      'a text is kept to the letter',
      'plant P { outage O 2027-04-12 to 2027-04-23 "two  spaces, {braces} // and all" }',
      'plant P {\n  outage O 2027-04-12 to 2027-04-23 "two  spaces, {braces} // and all"\n}\n',
    ],
  ];
  test.each(cases)('%s', (_, before, after) => expect(formatText(before)).toBe(after));
});

describe('comments', () => {
  const cases: [name: string, before: string, after: string][] = [
    [
      'on their own line, at the level of what follows',
      '// head\nscrew S {\n      // kind\n  shaftless\n // end\n}\n',
      '// head\nscrew S {\n  // kind\n  shaftless\n  // end\n}\n',
    ],
    [
      'behind a fact, after one space',
      'liner L {\n  layer ivory 6 mm       // wears first\n}',
      'liner L {\n  layer ivory 6 mm // wears first\n}\n',
    ],
    ['behind a brace', 'screw S { // a\n  shaftless\n} // b\n', 'screw S { // a\n  shaftless\n} // b\n'],
    [
      'inside a fact',
      'screw S {\n  pitch /* as measured */ 14 in\n}\n',
      'screw S {\n  pitch /* as measured */ 14 in\n}\n',
    ],
    [
      'that cut a fact in two',
      'screw S {\n  pitch // in between\n  14 in\n}\n',
      'screw S {\n  pitch // in between\n      14 in\n}\n',
    ],
    [
      'before a fact on its line',
      'screw S {\n/* old */ pitch 14 in\n}\n',
      'screw S {\n  /* old */ pitch 14 in\n}\n',
    ],
    [
      'between two facts on one line stay with the first',
      'screw S { shaftless /* none */ pitch 14 in }',
      'screw S {\n  shaftless /* none */\n  pitch 14 in\n}\n',
    ],
    [
      'of several lines move with their level',
      'conveyor A {\n/**\n   * The lift.\n      * Two lines.\n */\nlength 5 m\n}\n',
      'conveyor A {\n  /**\n   * The lift.\n   * Two lines.\n   */\n  length 5 m\n}\n',
    ],
    [
      'drawn by hand keep their shape',
      '/* +--+\n   |  |\n   +--+ */\nscrew S {\n}\n',
      '/* +--+\n   |  |\n   +--+ */\nscrew S {\n}\n',
    ],
    [
      'with blanks behind them lose those',
      'screw S {   \n  shaftless // why   \n}\n',
      'screw S {\n  shaftless // why\n}\n',
    ],
    [
      'after a size in inches',
      'screw S {\n  pitch 14" // "nominal"\n}\n',
      'screw S {\n  pitch 14" // "nominal"\n}\n',
    ],
    ['alone', '  // nothing yet', '// nothing yet\n'],
  ];
  test.each(cases)('%s', (_, before, after) => expect(formatText(before)).toBe(after));
});

describe('line ends', () => {
  test('stay CRLF where they were', () => {
    expect(formatText('screw S {\r\nshaftless\r\n\r\n\r\nhand right }')).toBe(
      'screw S {\r\n  shaftless\r\n\r\n  hand right\r\n}\r\n',
    );
  });
  test('a byte order mark stays at the start', () =>
    expect(formatText('\uFEFF  screw S {\n}')).toBe('\uFEFFscrew S {\n}\n'));
});

describe('text that does not parse', () => {
  test('keeps its line breaks, and gets levels and single spaces', () => {
    expect(formatText('screw S {\nshaftless hand\n   pitch   14in\n')).toBe(
      'screw S {\n  shaftless hand\n  pitch 14 in\n',
    );
  });
  test('keeps what stands on a line with something unreadable', () => {
    expect(formatText('screw S {\nphoto   "half   a  text\n  pitch   14in\n}')).toBe(
      'screw S {\n  photo   "half   a  text\n  pitch 14 in\n}\n',
    );
  });
  test('is left alone from a comment that is never closed', () => {
    expect(formatText('screw   S {\n shaftless\n  /* and so   on\n   {   \n')).toBe(
      'screw S {\n  shaftless\n  /* and so   on\n   {   \n',
    );
  });
  test('closing braces too many do no harm', () =>
    expect(formatText('}}\n  screw S {\n}')).toBe('} }\nscrew S {\n}\n'));
});

test('a change of one fact is a change of one line', () => {
  const text = formatText(example('4-tarnholt/conveyors/DG1.trough'));
  const changed = formatText(text.replace(/length (\d)/, 'length 100$1'));
  const [before, after] = [text.split('\n'), changed.split('\n')];
  expect(after).toHaveLength(before.length);
  expect(after.filter((line, i) => line !== before[i])).toHaveLength(1);
});

test('only the edits that touch a range are given for it', () => {
  const text = 'screw S {\nshaftless\npitch   14in\n}\nscrew T {\nshaftless\n}\n';
  const edits = formattingEdits(text, { start: text.indexOf('pitch'), end: text.indexOf('14in') + 4 });
  let out = text;
  for (const { start, end, text: white } of [...edits].reverse())
    out = out.slice(0, start) + white + out.slice(end);
  expect(out).toBe('screw S {\nshaftless\n  pitch 14 in\n}\nscrew T {\nshaftless\n}\n');
  expect(formattingEdits(out, { start: out.indexOf('pitch'), end: out.indexOf('14 in') })).toEqual([]);
});

describe('for any text', () => {
  const words = [
    'plant',
    'liner',
    'screw',
    'conveyor',
    'job',
    'order',
    'inspection',
    'reline',
    'layer',
    'pitch',
    'at',
    'to',
    'run',
    'above',
    'hold-downs',
    'hold-down',
    'off',
    'on',
    'gas test',
    'not',
    'seen',
    'trough',
    'showing',
    'A',
    'DG1',
    'x-1',
    '{',
    '}',
    '{',
    '}',
    '\n',
    '\n',
    '\r\n',
    ' ',
    '  ',
    '\t',
    ',',
    ':',
    '.',
    '±',
    '+/-',
    '"text  x"',
    '"open',
    '"',
    '// c  d',
    '/* e */',
    '/* f\n g */',
    '/**\n * h\n */',
    '/*',
    '*/',
    '/',
    '3',
    '1/2',
    '3 1/2',
    '7.30',
    '7:30',
    '14/03/2026',
    '2026-03-14',
    '8.4 mm',
    '8,4',
    'mm',
    '6mm',
    '18 rpm',
    '200 um/m/K',
    '5 %',
    '%',
    '"',
    'in',
    '14"',
    'é',
    '°',
    '\uFEFF',
    '\u00A0',
    '€',
    '1e3',
    '-',
    '+5',
  ];
  const soup = fc.array(fc.constantFrom(...words), { maxLength: 40 }).map((parts) => parts.join(''));
  const spaced = fc.array(fc.constantFrom(...words), { maxLength: 40 }).map((parts) => parts.join(' '));
  const mangled = fc
    .tuple(
      fc.constantFrom(...examples()),
      fc.nat(),
      fc.nat(60),
      fc.constantFrom('', '{', '}', '"', '/*', '\n', ' '),
    )
    .map(([text, at, length, put]) => {
      const start = at % (text.length + 1);
      return (
        text.slice(Math.max(0, start - 300), start) + put + text.slice(start + length, start + length + 300)
      );
    });

  test('formatting twice changes nothing more, and nothing but white space is ever changed', () => {
    fc.assert(
      fc.property(fc.oneof(soup, spaced, mangled, fc.string({ unit: 'binary', maxLength: 60 })), (text) => {
        const once = formatText(text);
        expect(formatText(once)).toBe(once);
        expect(once.replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
        const [before, after] = [piecesOf(text), piecesOf(once)];
        expect(after.map((piece) => piece.type)).toEqual(before.map((piece) => piece.type));
        expect(after.filter((piece) => piece.type === 'STRING')).toHaveLength(
          before.filter((piece) => piece.type === 'STRING').length,
        );
      }),
      { numRuns: 3000 },
    );
  });

  test('that parses, the tree stays the same, however its white space is shuffled', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...examples()),
        fc.array(fc.constantFrom(' ', '\n', '  ', '\n\n\n', ' \t'), { minLength: 5, maxLength: 30 }),
        (text, blanks) => {
          const shuffled = shuffle(text, blanks);
          const once = formatText(shuffled);
          expect(tree(once)).toEqual(tree(shuffled));
          expect(formatText(once)).toBe(once);
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('a text with slips in it says the same after formatting', () => {
  const slips = [
    '"',
    '\t',
    '\n',
    ' ',
    '//',
    '/*',
    '*/',
    '{',
    '}',
    '±',
    '3/4',
    'e',
    ',',
    '"x"',
    '\t3/4e',
    '// c\n',
    '"n"\n',
  ];
  const slip = fc.record({ at: fc.nat(), lost: fc.nat(10), put: fc.constantFrom('', ...slips) });
  fc.assert(
    fc.property(
      fc.constantFrom(...examples()),
      fc.array(slip, { minLength: 1, maxLength: 3 }),
      (text, all) => {
        const slipped = all.reduce(
          (t, { at, lost, put }) => t.slice(0, at % t.length) + put + t.slice((at % t.length) + lost),
          text,
        );
        const once = formatText(slipped);
        expect(formatText(once)).toBe(once);
        expect(said(once)).toBe(said(slipped));
      },
    ),
    { numRuns: 250 },
  );
});

/** All that a text says, without where it says it and in what blanks. */
function said(text: string): string {
  const { comments: _, problems: __, ...sheet } = readSheet(text, 0, 'a');
  const places = /^(origin|\w+Origin|start|end|colourStart|fact)$/;
  return JSON.stringify(sheet, (key, value: unknown) => {
    if (places.test(key)) return undefined;
    if (value instanceof Map) return [...(value as Map<unknown, unknown>)];
    return typeof value === 'string' ? value.replace(/\s+/g, '') : value;
  });
}

test('every example is written as the formatter would write it, and parses the same', () => {
  for (const file of exampleFiles()) {
    const text = example(file);
    const once = formatText(text);
    expect(formatText(once), file).toBe(once);
    expect(tree(once), file).toEqual(tree(text));
    expect(once, `${file}: run the formatter`).toBe(text);
  }
});

/** Other blanks between pieces, on lines where a line comment does not need its end. */
function shuffle(text: string, blanks: readonly string[]): string {
  const pieces = piecesOf(text);
  return pieces
    .map((piece, i) => {
      const white = text.slice(piece.end, pieces[i + 1]?.start ?? text.length);
      if (piece.kind === 'line comment' || white === '' || pieces[i + 1]?.kind === 'line comment')
        return piece.text + white;
      return piece.text + (blanks[i % blanks.length] ?? ' ');
    })
    .join('');
}

function tree(text: string): unknown {
  const { root, slips } = parseText(text);
  return { root: plain(root), slips: slips.length };
}

function plain(node: AstNode): unknown {
  return JSON.parse(
    JSON.stringify(node, (key, value: unknown) => {
      if (key.startsWith('$') && key !== '$type') return undefined;
      if (typeof value === 'object' && value !== null && '$refText' in value) return value.$refText;
      return typeof value === 'string' ? value.replace(/[ \t]+/g, '') : value;
    }),
  );
}

function exampleFiles(): string[] {
  const root = fileURLToPath(new URL('../../examples', import.meta.url));
  return readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.trough') && !file.includes('every-mistake'),
  );
}

function example(file: string): string {
  return readFileSync(path.join(fileURLToPath(new URL('../../examples', import.meta.url)), file), 'utf8');
}

function examples(): string[] {
  return exampleFiles()
    .map(example)
    .filter((text) => text.length < 6000);
}
