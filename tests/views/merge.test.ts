// Two tabs of one form: whatever either of them typed is in the merged entries, or told as displaced.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { merged, type Plain } from '../../src/views/forms/merge.js';

describe('entries of two tabs', () => {
  test('of different fields are both kept', () => {
    const base = { by: '', points: { P1: '8.1' } };
    const made = merged(
      base,
      { by: 'day', points: { P1: '8.1' } },
      { by: '', points: { P1: '8.1', P2: '9' } },
    );
    expect(made).toEqual({ value: { by: 'day', points: { P1: '8.1', P2: '9' } }, displaced: [] });
  });

  test('of one field: what this tab says stands, what the other says is told', () => {
    expect(merged({ by: '' }, { by: 'day' }, { by: 'night' })).toEqual({
      value: { by: 'day' },
      displaced: [{ path: ['by'], typed: 'night' }],
    });
  });

  test('what one tab took back stays away, unless the other has changed it since', () => {
    expect(merged({ P1: '8', P2: '9' }, { P2: '9' }, { P1: '8', P2: '9' }).value).toEqual({ P2: '9' });
    expect(merged({ P1: '8' }, {}, { P1: '7' }).displaced).toEqual([{ path: ['P1'], typed: '7' }]);
  });

  test('an answer that is one whole is never mixed', () => {
    const whole = (path: readonly string[]): boolean => path.length === 2;
    const base = { points: { P1: { kind: 'colour', colour: 'teal' } } };
    const mine = { points: { P1: { kind: 'thickness', value: '5' } } };
    const theirs = { points: { P1: { kind: 'colour', colour: 'ivory' } } };
    expect(merged(base, mine, theirs, whole).value).toEqual(mine);
  });

  test('of lists: additions of both', () => {
    expect(merged(['a'], ['a', 'b'], ['a', 'c']).value).toEqual(['a', 'b', 'c']);
  });

  test('at random: nothing that either typed is lost', () => {
    const words = fc.constantFrom('', 'x', 'y', 'z');
    const named = fc.dictionary(fc.constantFrom('P1', 'P2', 'P3', 'P4'), words);
    const entries = fc.record({ by: words, points: named, list: fc.array(words, { maxLength: 3 }) });
    fc.assert(
      fc.property(entries, entries, entries, (base, mine, theirs) => {
        const { value, displaced } = merged(base, mine, theirs);
        const leaves = (of: Plain): string[] =>
          typeof of === 'string' ? [of] : Object.values(of ?? {}).flatMap((part) => leaves(part as Plain));
        const kept = [...leaves(value), ...displaced.flatMap(({ typed }) => leaves(typed))];
        const had = leaves(base as Plain);
        // Whatever is new in either tab is somewhere.
        for (const typed of [...leaves(mine as Plain), ...leaves(theirs as Plain)])
          if (!had.includes(typed)) expect(kept).toContain(typed);
        // With one tab idle the other's entries stand as they are.
        expect(merged(base, base, theirs).value).toEqual(theirs);
        expect(merged(base, mine, base).value).toEqual(mine);
      }),
    );
  });
});
