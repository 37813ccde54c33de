// No two words of the liner map lie over one another: boxes around every label, by the widths that the maps are laid out with, over
// all examples and over drawn machines, with the flag that says that a conveyor wears faster or slower.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textWidth } from '../../../src/generators/page/text-width.js';
import type { ConveyorLife } from '../../../src/generators/remaining-life/parts/conveyor-life.js';
import { linerMap } from '../../../src/generators/remaining-life/print/liner-map.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, estateOf, works } from './story.js';

interface Label {
  readonly text: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

function labelsOf(markup: string): readonly Label[] {
  return [...markup.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].flatMap(([, attributes = '', text = '']) => {
    const of = (name: string): string | undefined =>
      new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    if (text.trim() === '' || of('transform') !== undefined) return []; // the one that is turned stands in the margin
    const [x, y, size] = [Number(of('x')), Number(of('y')), Number(of('font-size'))];
    const width = textWidth(text.replace(/&[a-z#\d]+;/g, 'x'), size);
    const from = of('text-anchor') === 'middle' ? x - width / 2 : of('text-anchor') === 'end' ? x - width : x;
    // Capitals and figures: nothing of these words hangs below the line by more than a fifth.
    return [{ text, x: [from, from + width], y: [y - 0.72 * size, y + 0.05 * size] }];
  });
}

function overlapping(life: ConveyorLife): readonly string[] {
  const labels = labelsOf(linerMap(life, 'map').html);
  expect(labels.length).toBeGreaterThan(4);
  return labels.flatMap((a, i) =>
    labels
      .slice(i + 1)
      .filter((b) => a.x[0] < b.x[1] && b.x[0] < a.x[1] && a.y[0] < b.y[1] && b.y[0] < a.y[1])
      .map((b) => `${life.conveyor.name}: "${a.text}" and "${b.text}"`),
  );
}

/** As a model that saw a change would have it; only its kind, day and factor are drawn. */
function changed(life: ConveyorLife): ConveyorLife {
  const pace = {
    kind: 'cannot yet be told',
    day: day('2026-03-04'),
    factor: { low: 1, middle: 1.5, high: 2 },
  };
  return { ...life, model: { ...life.model, pace } as unknown as ConveyorLife['model'] };
}

function livesOf(...texts: readonly string[]): readonly ConveyorLife[] {
  const { conveyors } = remainingLife(estateOf(...texts), { depth: 'hand', track: false });
  return conveyors.flatMap((life) => [life, changed(life)]);
}

const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));

describe('the liner map', () => {
  test('of every example', () => {
    const told = readdirSync(examples, { withFileTypes: true })
      .filter((each) => each.isDirectory() && !each.name.startsWith('5-'))
      .flatMap(({ name }) => {
        const folder = path.join(examples, name);
        const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' })
          .filter((file) => file.endsWith('.trough'))
          .map((file) => readFileSync(path.join(folder, file), 'utf8'));
        return livesOf(...texts).flatMap(overlapping);
      });
    expect(told).toEqual([]);
  });

  test('of machines drawn at random', () => {
    const clock = fc.tuple(fc.integer({ min: 3, max: 8 }), fc.constantFrom('00', '20', '45'));
    const seen = fc.constantFrom('thickness 8.4 mm', 'colour teal', 'trough showing', 'not seen');
    const point = fc.record({ at: fc.integer({ min: 0, max: 240 }), clock, seen });
    fc.assert(
      fc.property(
        fc.array(point, { maxLength: 8 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 11 }), { maxLength: 5 }),
        (points, breaks) => {
          const machine = works
            .replace('length 6 m', 'length 24 m')
            .replace(/ {2}break [^\n]*\n {2}point [^\n]*\n {2}point [^\n]*\n/, () =>
              [
                ...breaks.map((at) => `  break LongName${at} at ${2 * at} m to ${2 * at + 0.5} m inlet`),
                ...points.map(
                  (each, i) => `  point P${i + 1} at ${each.at / 10} m clock ${each.clock.join(':')}`,
                ),
                '',
              ].join('\n'),
            );
          const rows = points.map((each, i) => `  P${i + 1} ${each.seen}\n`).join('');
          const look = `inspection DG1 2025-06-02 meter 3600 h {\n  view downstream\n${rows}}\n`;
          expect(livesOf(machine, points.length > 0 ? look : '').flatMap(overlapping)).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});
