// What is said of panels that nobody has looked at: they are as old as the liner that lies there, and wear as their neighbours do.

import { describe, expect, it } from 'vitest';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import type { ConveyorLife } from '../../../src/generators/remaining-life/parts/conveyor-life.js';
import type { RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { day, look, reportOf, works } from './story.js';

/** Six panels of 900 mm, some of them read. */
const machine = (text: string): string =>
  text
    .replace('panel length 1200 mm', 'panel length 900 mm')
    .replace(/ {2}point P2.*\n/, '  point P2 at 3.2 m clock 5:00\n  point P3 at 5 m clock 5:00\n');
const readings = (hours: number, rates: readonly number[]): string =>
  look(
    hours,
    rates.map((rate, i) => `P${i + 1} thickness ${(12 - (rate * hours) / 1000).toFixed(2)} mm`).join(';'),
  );

const asOf = day('2026-01-01');
const unseenOf = (report: RemainingLife, name = 'DG1') =>
  (lifeOf(report, name).decision?.setting?.outlook.panels ?? []).filter(({ seen }) => !seen);

function lifeOf({ conveyors }: RemainingLife, name: string): ConveyorLife {
  const life = conveyors.find(({ conveyor }) => conveyor.name === name);
  if (!life) throw new Error(`no conveyor ${name}`);
  return life;
}

describe('panels that nobody has seen', () => {
  const before = [2000, 4000, 6000, 8000].map((hours) => readings(hours, [0.9, 0.9, 0.9])).join('');

  it('are as old as what lies there: a strip that is new does not make its run new', () => {
    // The middle of the run is new; half a year later the other panels have run ten times as long.
    const reline = `reline DG1 2025-11-30 meter 8000 h { scope panels 3 to 4 of run 1 liner TwoLayer12 }\n`;
    const report = reportOf(before + reline, { asOf }, machine);
    const byAge = unseenOf(report).map(({ panel, life, condemnBy }) => [
      panel,
      Math.round(life.now),
      condemnBy(asOf) > 0.05,
    ]);
    const [old, fresh] = [8000 + 32 * 24, 32 * 24];
    expect(byAge).toEqual([
      [1, old, true],
      [2, old, true],
      [3, fresh, false],
      [4, fresh, false],
      [5, old, true],
    ]);
    const text = remainingLifeMarkdown(report);
    expect(text).toMatch(/Run 1: 3 panels of those fitted on 2025-01-01 never seen/);
    expect(text).toMatch(/Run 1: 2 panels of those fitted on 2025-11-30 never seen/);
  });

  it('wear as their neighbours do: what the other side of another conveyor does is not lent to them', () => {
    // DG2 is read on both sides, and wears less at 5 o'clock; DG1 at 5 o'clock alone.
    const other = works
      .slice(works.indexOf('conveyor DG1'))
      .replaceAll('DG1', 'DG2')
      .replace(/ {2}point P2.*\n/, '  point P2 at 1.8 m clock 7:00\n  point P3 at 4.2 m clock 7:00\n');
    const records = [2000, 4000, 6000, 8000]
      .map(
        (hours) => readings(hours, [0.9, 0.88, 0.92]) + readings(hours, [0.6, 1, 1.05]).replace('DG1', 'DG2'),
      )
      .join('');
    const report = reportOf(records, { asOf }, (text) => machine(text) + other);
    const unseen = unseenOf(report);
    expect(unseen).toHaveLength(3);
    for (const { life } of unseen) {
      // 8 mm to the limit by the fastest and the slowest neighbour, give or take 3 %.
      expect(life.median).toBeGreaterThan((0.97 * 8000) / 0.92);
      expect(life.median).toBeLessThan((1.03 * 8000) / 0.88);
    }
  });
});
