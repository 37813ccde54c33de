// Any text at all: never an exception, findings in order and inside their text, numbers that are numbers.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { edit, exampleEstate, examples, soup } from './texts.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';
import type { Analysis, SourceText } from '../../src/analysis/analysis.js';

function isSound(analysis: Analysis, texts: readonly SourceText[]): void {
  const lengths = new Map(texts.map(({ uri, text }) => [uri, text.length]));
  let before: readonly (string | number)[] = [];
  for (const { origin, code, message, related = [], fixes = [] } of analysis.findings) {
    for (const place of [
      origin,
      ...related.map((one) => one.origin),
      ...fixes.flatMap((fix) => fix.edits.map((one) => one.origin)),
    ]) {
      const { uri, line, column, endLine, endColumn } = analysis.locate(place);
      const length = lengths.get(uri) ?? -1;
      expect(place.start).toBeGreaterThanOrEqual(0);
      expect(place.end).toBeGreaterThanOrEqual(place.start);
      expect(place.end).toBeLessThanOrEqual(length);
      expect(line < endLine || (line === endLine && column <= endColumn)).toBe(true);
    }
    expect(message).not.toMatch(/undefined|NaN|\[object|Infinity/);
    const { uri, line, column } = analysis.locate(origin);
    const here = [uri, line, column, code];
    expect(before.length === 0 || compare(before, here) <= 0).toBe(true);
    before = here;
  }
  const { readings, places, inspections, conveyors } = analysis.estate;
  for (let row = 0; row < readings.count; row++) {
    expect(readings.place[row]).toBeLessThan(places.length);
    expect(readings.inspection[row]).toBeLessThan(inspections.length);
    if (readings.kind[row] === ReadingKind.thickness || readings.kind[row] === ReadingKind.colour)
      expect(Number.isFinite(readings.value[row])).toBe(true);
  }
  for (const conveyor of conveyors) expect(Number.isFinite(conveyor.length.value)).toBe(true);
}

function compare(a: readonly (string | number)[], b: readonly (string | number)[]): number {
  for (const [i, left] of a.entries()) {
    const right = b[i] ?? 0;
    if (left !== right) return left < right ? -1 : 1;
  }
  return 0;
}

describe('nothing brings it down', () => {
  it('words of the language in any order', () => {
    fc.assert(
      fc.property(soup, (text) => {
        const texts = [{ uri: 'a', text }];
        isSound(analyse(texts), texts);
      }),
      { numRuns: 200 },
    );
  });

  it('any characters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const texts = [{ uri: 'a', text }];
        isSound(analyse(texts), texts);
      }),
      { numRuns: 150 },
    );
  });

  it('every example cut off at any place', () => {
    for (const { uri, text } of examples) {
      // Every position of short files; of long ones so many that the whole stays quick, another set in each file.
      const step = Math.max(1, Math.floor(text.length / 30));
      for (let end = uri.length % step; end < text.length; end += step) {
        const texts = [{ uri, text: text.slice(0, end) }];
        isSound(analyse(texts), texts);
      }
    }
  });

  it('the demo estate after edits at random', () => {
    const estate = exampleEstate('4-tarnholt');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(estate.length - 1), edit), { minLength: 1, maxLength: 6 }),
        (edits) => {
          const texts = estate.map(({ uri, text }, index) => ({
            uri,
            text: edits.filter(([which]) => which === index).reduce((now, [, change]) => change(now), text),
          }));
          isSound(analyse(texts), texts);
        },
      ),
      { numRuns: 25 },
    );
  });
});
