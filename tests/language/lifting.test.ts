// Rows that are read without the parser give what the parser would have given.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lower } from '../../src/language/lower.js';
import { parseText, prepare } from '../../src/language/parse.js';
import type { Sheet } from '../../src/language/sheet.js';
import { edit, examples } from '../analysis/texts.js';
import { inspect } from './read.js';

const through = (text: string): Sheet => lower(parseText(text, prepare(text)), 0, 'a');
const withParserAlone = (text: string): Sheet => lower(parseText(text), 0, 'a');
const taken = (text: string): number => prepare(text).lifted.rows.count;
const shown = ({ rows, inspections, problems }: Sheet): unknown =>
  structuredClone({
    problems,
    inspections: inspections.map(({ firstRow, endRow }) => [firstRow, endRow]),
    rows: {
      ...rows,
      spot: Array.from(rows.spot, (number) => rows.spots[number]),
      value: Array.from(rows.value, (value, row) => (rows.kind[row] === 1 ? rows.colours[value] : value)),
      spots: [],
      colours: [],
    },
  });

describe('taken out', () => {
  it('are the plain forms', () => {
    expect(
      taken(
        inspect(`P1 thickness 8.4 mm
  P2-a thickness 8.4mm ± 0.2 mm "wet" // dry by now
  Q_3   colour\tred
  P4 trough  showing
  P5 not seen "build-up"
  at 14.20 m clock 8:00 thickness 3/8 in
  at 14.20 m clock 8:00 color ivory`),
      ),
    ).toBe(7);
  });
  it('not what is wrong, nor what stands behind it', () => {
    expect(taken(inspect('P1 thickness 8,4 mm\n  P2 thickness 8 mm\n  P3 thickness 8 mm'))).toBe(0);
    expect(taken(inspect('P1 thickness 8.4\n  by "day"\n  P2 thickness 8 mm'))).toBe(1);
  });
  it('not words of the language in place of names', () =>
    expect(taken(inspect('flight thickness 3 mm'))).toBe(0));
  it('not what stands in a comment or in another block', () => {
    expect(taken(inspect('/*\n  P1 thickness 8.4 mm\n*/ P2 thickness 8 mm'))).toBe(0);
    expect(
      taken(
        `/*\n${inspect('P1 thickness 8.4 mm')}*/\nreline C 2026-01-01 meter 5 h {\n  P1 thickness 8.4 mm\n}`,
      ),
    ).toBe(0);
  });
});

describe('the sheet is the same as from the parser alone', () => {
  it('for every example', () => {
    for (const { text } of examples) expect(shown(through(text))).toEqual(shown(withParserAlone(text)));
  });

  it('for rows of every kind, right and wrong, seen from either side', () => {
    const row = fc
      .tuple(
        fc.constantFrom(
          'P1',
          'P2',
          'at 3 m clock 7:30',
          'at 3000 mm clock 4:30',
          'at 3 clock 7.30',
          'flight',
          'at 3 m clock 13:00',
        ),
        fc.constantFrom(
          'thickness 8.4 mm',
          'thickness 8,4 mm',
          'thickness 8.4',
          'thickness 9 mm ± 0.2 mm',
          'thickness 9 mm +/- 1 kg',
          'colour teal',
          'colour blue',
          'color fit',
          'trough showing',
          'not seen',
          'thickness 3/8 in',
          'thickness 5000 mm',
        ),
        fc.constantFrom('', ' "note"', ' // remark', ' "a // b"', ' "open', ' /* x */', '\n', '\r\n'),
      )
      .map((parts) => parts.join(' '));
    const line = fc.oneof(
      { weight: 8, arbitrary: row },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          'view upstream',
          'by "x"',
          'gauge ultrasonic ± 0.1 mm',
          'finding "x"',
          '',
          '// c',
          '/* c',
          '*/',
        ),
      },
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const text = inspect(lines.join('\n  ')) + inspect('P1 thickness 8.4 mm');
        expect(shown(through(text))).toEqual(shown(withParserAlone(text)));
      }),
      { numRuns: 200 },
    );
  });

  it('for examples after edits at random', () => {
    const inspections = examples.filter(({ text }) => text.includes('inspection'));
    fc.assert(
      fc.property(
        fc.nat(inspections.length - 1),
        fc.array(edit, { minLength: 1, maxLength: 3 }),
        (which, edits) => {
          const text = edits.reduce((now, change) => change(now), inspections[which]?.text ?? '');
          expect(shown(through(text))).toEqual(shown(withParserAlone(text)));
        },
      ),
      { numRuns: 200 },
    );
  });
});
