// Whatever an author has half typed, mistyped or exaggerated: the rules answer, with whole sentences, about places that exist.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { rules } from '../../src/validation/catalogue.js';
import { exampleOf } from '../../src/validation/example.js';

const texts = [
  ...new Set(rules.flatMap((rule) => [exampleOf(rule, 'bad').text, exampleOf(rule, 'good').text])),
];

/** One slip in a text: a line lost, doubled or cut short, two lines swapped, a number changed, a unit or name replaced. */
type Slip = (lines: string[]) => string[];
const line = fc.nat();
const slip: fc.Arbitrary<Slip> = fc.oneof(
  line.map(
    (n): Slip =>
      (lines) =>
        lines.filter((_, i) => i !== n % lines.length),
  ),
  line.map(
    (n): Slip =>
      (lines) =>
        lines.flatMap((text, i) => (i === n % lines.length ? [text, text] : [text])),
  ),
  fc.tuple(line, fc.nat(40)).map(
    ([n, at]): Slip =>
      (lines) =>
        lines.map((text, i) => (i === n % lines.length ? text.slice(0, at) : text)),
  ),
  fc.tuple(line, line).map(([a, b]): Slip => (lines) => {
    const swapped = [...lines];
    const [i, j] = [a % lines.length, b % lines.length];
    [swapped[i], swapped[j]] = [lines[j]!, lines[i]!]; // both are below lines.length
    return swapped;
  }),
  fc
    .tuple(line, fc.nat(3), fc.constantFrom('0', '-7', '0.001', '1', '7', '90', '400', '12000', '1e9', '1/3'))
    .map(
      ([n, k, value]): Slip =>
        (lines) =>
          lines.map((text, i) => {
            let seen = 0;
            return i === n % lines.length
              ? text.replace(/\b\d+(?:\.\d+)?\b/g, (number) => (seen++ === k ? value : number))
              : text;
          }),
    ),
  fc
    .tuple(
      line,
      fc.constantFrom(
        ['mm', 'm'],
        ['m', 'mm'],
        ['mm', 'in'],
        ['h', 'week'],
        ['kg', 't'],
        ['deg', 'mm'],
        ['head', 'tail'],
        ['ivory', 'teal'],
        ['P1', 'P2'],
        ['Gate', 'Inlet'],
      ),
    )
    .map(
      ([n, [from, to]]): Slip =>
        (lines) =>
          lines.map((text, i) =>
            i === n % lines.length ? text.replace(new RegExp(`\\b${from}\\b`, 'g'), to ?? '') : text,
          ),
    ),
);

test('no slip makes a rule fail, speak in blanks, or point outside the text', () => {
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.array(slip, { minLength: 1, maxLength: 4 }), (sound, slips) => {
      const text = slips.reduce((lines, apply) => apply(lines), sound.split('\n')).join('\n');
      const { findings } = analyse([{ uri: 'a.trough', text }]);
      for (const finding of findings) {
        for (const said of [
          finding.message,
          finding.why,
          finding.todo,
          ...(finding.related ?? []).map((one) => one.message),
        ]) {
          expect(said, text).not.toMatch(/NaN|undefined|\bnull\b|Infinity|\[object/);
          expect(said.length).toBeGreaterThan(0);
        }
        const edits = (finding.fixes ?? []).flatMap((fix) => fix.edits.map((edit) => edit.origin));
        for (const { start, end } of [
          finding.origin,
          ...(finding.related ?? []).map((one) => one.origin),
          ...edits,
        ]) {
          expect(start >= 0 && start <= end && end <= text.length, `${finding.code} ${start} ${end}`).toBe(
            true,
          );
        }
        for (const fix of finding.fixes ?? []) {
          const places = [...fix.edits].sort(
            (a, b) => a.origin.start - b.origin.start || a.origin.end - b.origin.end,
          );
          for (let i = 1; i < places.length; i++)
            expect(places[i]!.origin.start, fix.title).toBeGreaterThanOrEqual(places[i - 1]!.origin.end); // i − 1 and i exist
        }
      }
    }),
    { numRuns: 500 },
  );
}, 120_000);
