// Fixes that need no question, taken together: a table of texts and the findings in them. `a` and `b` are files.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits, fixesTogether } from '../../src/analysis/fixes-together.js';
import type { Edit, Finding, Fix } from '../../src/validation/finding.js';

const uris = ['a', 'b'];
const uriOf = ({ source }: { readonly source: number }): string => uris[source] ?? '';

const edit = (start: number, end: number, text: string, source = 0): Edit => ({
  origin: { source, start, end },
  text,
});
const fix = (edits: readonly Edit[], preferred = true): Fix => ({
  title: 'mend',
  edits,
  ...(preferred ? { preferred } : {}),
});
function finding(fixes?: readonly Fix[]): Finding {
  return {
    code: 'TL000',
    severity: 'error',
    origin: { source: 0, start: 0, end: 1 },
    message: '',
    why: '',
    todo: '',
    ...(fixes ? { fixes } : {}),
  };
}
/** Both files after the fixes of findings that have one preferred fix each. */
function after(text: string, ...fixes: readonly (readonly Edit[])[]): string {
  const edits = fixesTogether(
    fixes.map((edits) => finding([fix(edits)])),
    uriOf,
  ).flatMap((each) => each.edits);
  return applyEdits(
    text,
    edits.filter(({ origin }) => origin.source === 0),
  );
}

const text = '0123456789';
describe('fixes in one text', () => {
  test.each<[string, string, ...(readonly Edit[])[]]>([
    ['one', '0xx3456789', [edit(1, 3, 'xx')]],
    [
      'two, the earlier longer than what it replaces',
      '0xxxx345y789',
      [edit(1, 3, 'xxxx')],
      [edit(6, 7, 'y')],
    ],
    ['two, the earlier shorter', '0345y789', [edit(1, 3, '')], [edit(6, 7, 'y')]],
    ['two, the later one found first', '0xxxx345y789', [edit(6, 7, 'y')], [edit(1, 3, 'xxxx')]],
    ['three', 'A1B3C56789', [edit(4, 5, 'C')], [edit(0, 1, 'A')], [edit(2, 3, 'B')]],
    ['side by side', '0xxyy56789', [edit(1, 3, 'xx')], [edit(3, 5, 'yy')]],
    ['side by side, the later one first', '0xxyy56789', [edit(3, 5, 'yy')], [edit(1, 3, 'xx')]],
    ['put in right behind what is replaced', '0xx+3456789', [edit(1, 3, 'xx')], [edit(3, 3, '+')]],
    ['overlapping at the end of the first', '0xx3456789', [edit(1, 3, 'xx')], [edit(2, 5, 'y')]],
    ['overlapping at the start of the first', '012yyy6789', [edit(3, 6, 'yyy')], [edit(1, 4, 'x')]],
    ['one inside the other', '0xx56789', [edit(1, 5, 'xx')], [edit(2, 3, 'y')]],
    ['one around the other', '01y3456789', [edit(2, 3, 'y')], [edit(1, 5, 'xx')]],
    ['the same twice', '0xx3456789', [edit(1, 3, 'xx')], [edit(1, 3, 'xx')]],
    ['two put in at one place', '01234+56789', [edit(5, 5, '+')], [edit(5, 5, '-')]],
    ['put in where a replacement starts', '0xx3456789', [edit(1, 3, 'xx')], [edit(1, 1, '+')]],
    ['put in inside what is replaced', '0xx3456789', [edit(1, 3, 'xx')], [edit(2, 2, '+')]],
  ])('%s', (_, expected, ...fixes) => {
    expect(after(text, ...fixes)).toBe(expected);
  });

  test('one that meets the first is left, a third that meets only the second is taken', () => {
    expect(after(text, [edit(1, 3, 'x')], [edit(2, 6, 'y')], [edit(5, 7, 'z')])).toBe('0x34z789');
  });

  test('is taken whole or not at all: a step is not taken out where it cannot be put in again', () => {
    expect(after(text, [edit(5, 6, 'y')], [edit(1, 2, ''), edit(4, 8, '1')])).toBe('01234y6789');
    expect(after(text, [edit(5, 6, 'y')], [edit(4, 8, '1'), edit(1, 2, '')])).toBe('01234y6789');
    expect(after(text, [edit(5, 6, 'y')], [edit(1, 2, ''), edit(8, 8, '1')])).toBe('0234y671' + '89');
  });

  test('whose own edits meet is not taken', () => {
    expect(after(text, [edit(1, 4, 'x'), edit(3, 6, 'y')])).toBe(text);
    expect(after(text, [edit(1, 4, 'x'), edit(6, 7, 'y')])).toBe('0x45y789');
  });
});

test('the same places of two files do not meet', () => {
  const chosen = fixesTogether(
    [
      finding([fix([edit(1, 3, 'x')])]),
      finding([fix([edit(1, 3, 'y', 1)])]),
      finding([fix([edit(2, 4, 'z', 1)])]),
    ],
    uriOf,
  );
  expect(chosen.flatMap(({ edits }) => edits.map((each) => each.text))).toEqual(['x', 'y']);
  const both = [edit(1, 3, 'x'), edit(1, 3, 'y', 1)];
  expect(fixesTogether([finding([fix(both)])], uriOf)).toHaveLength(1);
});

test('only what is preferred is taken, one fix a finding', () => {
  expect(fixesTogether([finding(), finding([]), finding([fix([edit(1, 2, 'x')], false)])], uriOf)).toEqual(
    [],
  );
  const second = fix([edit(1, 2, 'second')]);
  expect(
    fixesTogether([finding([fix([edit(1, 2, 'first')], false), second, fix([edit(5, 6, 'third')])])], uriOf),
  ).toEqual([second]);
});

test('whatever the fixes, what they do not touch stays as it was and in order', () => {
  const one = fc
    .tuple(fc.nat(40), fc.nat(6), fc.string({ unit: fc.constantFrom('x', 'y'), maxLength: 5 }))
    .map(([start, length, put]) => edit(start, start + length, put));
  const letters = 'abcdefghijklmnopqrstuvwABCDEFGHIJKLMNOPQRSTUVW+'; // no x, no y
  fc.assert(
    fc.property(fc.array(fc.array(one, { minLength: 1, maxLength: 3 }), { maxLength: 8 }), (fixes) => {
      const chosen = fixesTogether(
        fixes.map((edits) => finding([fix(edits)])),
        uriOf,
      ).flatMap(({ edits }) => edits);
      // The second road: letter by letter.
      const gone = (at: number): boolean =>
        chosen.some(({ origin }) => at >= origin.start && at < origin.end);
      const kept = [...letters].filter((_, at) => !gone(at)).join('');
      const found = applyEdits(letters, chosen);
      expect(found.replace(/[xy]/g, '')).toBe(kept);
      expect(found.length - kept.length).toBe(chosen.reduce((sum, { text: put }) => sum + put.length, 0));
    }),
    { numRuns: 300 },
  );
});
