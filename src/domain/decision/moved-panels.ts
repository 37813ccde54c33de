// What do turning a panel end for end and exchanging two panels bring? Wear is a straight line in exposure, so a panel that has
// used the share x/T of its life at one place uses the rest there at that place's pace: with T₁ the life where it lay and T₂ the
// life where it goes, (1 − x/T₁)·T₂ is left. T₁ and T₂ are taken as independent given the records.

import { lifeNodes } from './value-of-a-look.js';
import type { PanelOutlook, PlaceLife } from './wear-outlook.js';

/** Chance that a panel moved today from one place to another has reached its limit there after so much exposure. */
export function movedReachedBy(
  from: PlaceLife,
  to: PlaceLife,
  depth: 'limit' | 'through',
): (exposure: number) => number {
  const worn = lifeNodes(from);
  const scale = depth === 'limit' ? 1 : from.through / from.limit;
  const goes = lifeNodes(to);
  // Chance by life, rising, to read off below.
  const chance = new Float64Array(goes.weight.length);
  goes.weight.reduce((sum, w, i) => (chance[i] = sum + w), 0);
  const first = Math.log(goes.life[0] ?? 1);
  const step = Math.log((goes.life[1] ?? 1) / (goes.life[0] ?? 1));
  const shorter = (life: number): number => {
    const at = (Math.log(life) - first) / step;
    if (!(at > -0.5)) return 0;
    const i = Math.floor(at + 0.5);
    const before = i > 0 ? (chance[Math.min(i, chance.length) - 1] ?? 1) : 0;
    const here = chance[Math.min(i, chance.length - 1)] ?? 1;
    return before + (here - before) * (at + 0.5 - i);
  };
  return (exposure) => {
    let sum = 0;
    worn.life.forEach((life, i) => {
      const weight = worn.weight[i] ?? 0;
      if (weight === 0) return;
      const left = scale - from.now / life;
      sum += weight * (left <= 0 ? 1 : shorter(exposure / left));
    });
    return Math.min(1, sum);
  };
}

/** Two panels of one run, one liner and one length whose exchange would help most: the fastest-wearing with the slowest, unless that is past its limit too. */
export function exchangeFor(
  governing: PanelOutlook,
  panels: readonly PanelOutlook[],
): PanelOutlook | undefined {
  const length = governing.to - governing.from;
  return panels
    .filter(
      (panel) =>
        panel !== governing &&
        panel.seen &&
        panel.life.median > panel.life.now &&
        panel.run === governing.run &&
        panel.liner === governing.liner &&
        Math.abs(panel.to - panel.from - length) < 1,
    )
    .sort((a, b) => b.life.median - a.life.median || a.from - b.from)[0];
}
