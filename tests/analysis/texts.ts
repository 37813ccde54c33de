import { fileURLToPath } from 'node:url';
// The example estates as texts, and ways of spoiling them.

import fc from 'fast-check';
import { globSync, readFileSync } from 'node:fs';
import type { SourceText } from '../../src/analysis/analysis.js';

const folder = fileURLToPath(new URL('../../examples/', import.meta.url));

/** Every example file; names are their paths below examples/. */
export const examples: readonly SourceText[] = globSync('**/*.trough', { cwd: folder })
  .sort()
  .map((uri) => ({ uri, text: readFileSync(folder + uri, 'utf8') }));

/** The texts of one example estate. */
export const exampleEstate = (name: string): readonly SourceText[] =>
  examples.filter(({ uri }) => uri.startsWith(`${name}/`));

/** Words, marks and blanks of the language with some that are not, in any order. */
export const soup: fc.Arbitrary<string> = fc
  .array(
    fc.oneof(
      {
        weight: 8,
        arbitrary: fc.constantFrom(
          ...new Set(examples.flatMap(({ text }) => text.match(/[\w-]+|"[^"\n]*"|[^\s\w]/g) ?? [])),
        ),
      },
      {
        weight: 3,
        arbitrary: fc.constantFrom(
          '{',
          '}',
          ':',
          ',',
          '.',
          '±',
          '+/-',
          '"',
          '//',
          '/*',
          '*/',
          '/**',
          '\n',
          '\r\n',
          ' ',
        ),
      },
      {
        weight: 2,
        arbitrary: fc.constantFrom(
          '8.4 mm',
          '3/8 in',
          '14"',
          '8,4 mm',
          '1e400 mm',
          '-1 m',
          '2026-03-14',
          '14/03/2026',
          '7:30',
          '7.30',
          '0 h',
          '99999999999999 m',
          '5 %',
          '110 h/week',
        ),
      },
      { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 8 }) },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          '\0',
          '\uFEFF',
          '\uD800',
          '\uDC00',
          '§',
          'é',
          '“',
          '\u2028',
          '// allow TL101 because "so"',
          '// allow TL999',
        ),
      },
    ),
    { maxLength: 120 },
  )
  .map((parts) => parts.join(' '));

/** Cuts something out of a text and puts something else in. */
export const edit: fc.Arbitrary<(text: string) => string> = fc
  .record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.nat(40),
    put: fc.oneof(
      soup.map((one) => one.slice(0, 60)),
      fc.constant(''),
    ),
  })
  .map(({ at, cut, put }) => (text) => {
    const start = Math.floor(at * text.length);
    return text.slice(0, start) + put + text.slice(start + cut);
  });
