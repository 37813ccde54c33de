// What is a look worth before it is made? The chance that what is read brings both risks below the accepted ones, worked out
// from the model beforehand (preposterior analysis; Raiffa & Schlaifer 1961, from memory). For each panel: its life T is what
// the records leave of it; a reading at exposure x shows limit·x/T give or take the gauge; Bayes' rule gives the chance after
// each possible reading; the chances of all panels are then put together, panels taken as independent given the records so far.

import erfc from '@stdlib/math-base-special-erfc';
import type { CalendarDay } from '../units/calendar.js';
import type { AcceptedRisk } from './scope.js';
import type { PanelOutlook, WearOutlook } from './wear-outlook.js';

export interface LookValue {
  /** Chance that after the look both risks by the day are within the accepted ones. */
  readonly reassures: number;
  /** Panels that the look has to read for that: all whose chance is not negligible, likeliest first. */
  readonly panels: readonly PanelOutlook[];
  /** Chance before the look, of these panels by the same reckoning: beside the forecast it shows how good the reckoning is. */
  readonly before: { readonly condemn: number; readonly contact: number };
}

export interface LookInput {
  readonly outlook: WearOutlook;
  readonly accepted: AcceptedRisk;
  /** The day until which the liner would have to last. */
  readonly until: CalendarDay;
  /** Standard deviation of a reading, mm. */
  readonly gauge: number;
}

/** A panel whose chance is below this share of the accepted risk is not looked at: it cannot change the decision. */
const negligible = 0.01;

export function valueOfALook({ outlook, accepted, until, gauge }: LookInput): LookValue {
  const panels = outlook.panels
    .filter((panel) => panel.condemnBy(until) > negligible * accepted.condemn)
    .sort((a, b) => b.condemnBy(until) - a.condemnBy(until) || a.from - b.from);
  const coming = { mean: outlook.exposureBy(until), spread: outlook.dutySpread };
  const looked = panels.map((panel) => afterLook(panel, coming, gauge));
  const none = { condemn: 0, contact: 0 };
  const unread = outlook.panels
    .filter((panel) => !panels.includes(panel))
    .reduce(
      (sum, panel) => ({
        condemn: sum.condemn - Math.log1p(-panel.condemnBy(until)),
        contact: sum.contact - Math.log1p(-panel.contactBy(until)),
      }),
      none,
    );
  const chance = (of: 'condemn' | 'contact'): number =>
    sumWithin(
      looked.map((each) => ({ chance: each[of], weight: each.weight })),
      -Math.log1p(-accepted[of]) - unread[of],
    );
  const before = (of: 'condemn' | 'contact'): number =>
    1 -
    looked.reduce(
      (left, each) => left * (1 - each.weight.reduce((sum, w, i) => sum + w * (each[of][i] ?? 0), 0)),
      1,
    );
  // Both chances rise together with what is worn, so the stricter of the two decides.
  return {
    reassures: Math.min(chance('condemn'), chance('contact')),
    panels,
    before: { condemn: before('condemn'), contact: before('contact') },
  };
}

export interface ExposureAhead {
  /** Mean exposure until the day, and one standard deviation of it as a ratio. */
  readonly mean: number;
  readonly spread: number;
}

/** By possible reading: how likely it is, and what would then be the chance of the limit and of the steel by the day. */
interface AfterLook {
  readonly weight: Float64Array;
  readonly condemn: Float64Array;
  readonly contact: Float64Array;
}

const lives = 300;
/** Of the gauge's error; finer readings would not change a chance. */
const readingStep = 0.3;
const mostReadings = 500;

export function afterLook(panel: PanelOutlook, coming: ExposureAhead, gauge: number): AfterLook {
  const { now, limit, through } = panel.life;
  const nodes = lifeNodes(panel.life);
  const reached = nodes.life.map((life) => chanceSoon(life - now, coming));
  const touched = nodes.life.map((life) => chanceSoon((life * through) / limit - now, coming));
  const worn = nodes.life.map((life) => (limit * now) / life);
  const low = Math.min(...worn) - 4 * gauge;
  const high = Math.max(...worn) + 4 * gauge;
  const readings = Math.min(mostReadings, Math.max(30, Math.ceil((high - low) / (readingStep * gauge))));
  const weight = new Float64Array(readings);
  const condemn = new Float64Array(readings);
  const contact = new Float64Array(readings);
  let from = worn.length;
  for (let k = 0; k < readings; k++) {
    const reading = low + ((high - low) * (k + 0.5)) / readings;
    // What is worn falls from life to life, so those near enough to the reading lie in a row; beyond 6 errors nothing counts.
    while (from > 0 && (worn[from - 1] ?? 0) <= reading + 6 * gauge) from -= 1;
    for (let i = from; i < worn.length && (worn[i] ?? 0) >= reading - 6 * gauge; i++) {
      const p = (nodes.weight[i] ?? 0) * Math.exp(-0.5 * ((reading - (worn[i] ?? 0)) / gauge) ** 2);
      weight[k] = (weight[k] ?? 0) + p;
      condemn[k] = (condemn[k] ?? 0) + p * (reached[i] ?? 0);
      contact[k] = (contact[k] ?? 0) + p * (touched[i] ?? 0);
    }
  }
  const total = weight.reduce((sum, w) => sum + w, 0);
  for (let k = 0; k < readings; k++) {
    const w = weight[k] ?? 0;
    condemn[k] = w > 0 ? (condemn[k] ?? 0) / w : 0;
    contact[k] = w > 0 ? (contact[k] ?? 0) / w : 0;
    weight[k] = w / total;
  }
  return { weight, condemn, contact };
}

/** Chance that so much exposure comes by the day: lognormal with the coming duty's mean and spread. */
function chanceSoon(needed: number, { mean, spread }: ExposureAhead): number {
  if (needed <= 0) return 1;
  if (!(mean > 0)) return 0;
  const s = Math.sqrt(Math.log1p(spread * spread));
  if (s < 1e-9) return needed <= mean ? 1 : 0;
  return 0.5 * erfc((Math.log(needed / mean) + s ** 2 / 2) / s / Math.SQRT2);
}

/**
 * The distribution of a life as weights on a grid over its logarithm, from where it stirs to where it is all but done; each
 * node stands at the middle of its step, what is left at either end goes to the end nodes.
 */
export function lifeNodes({ reachedBy, median }: Pick<PanelOutlook['life'], 'reachedBy' | 'median'>): {
  readonly life: Float64Array;
  readonly weight: Float64Array;
} {
  const middle = Math.log(median);
  const low = whereItIs((log) => reachedBy(Math.exp(log)), 1e-6, middle - 3, middle + 3);
  const high = whereItIs((log) => reachedBy(Math.exp(log)), 1 - 1e-5, low, middle + 3);
  const step = Math.max(high - low, 1e-6) / lives;
  const life = Float64Array.from({ length: lives }, (_, i) => Math.exp(low + (i + 0.5) * step));
  const weight = new Float64Array(lives);
  let before = 0;
  for (let i = 0; i < lives; i++) {
    const chance = i === lives - 1 ? 1 : reachedBy(Math.exp(low + (i + 1) * step));
    weight[i] = Math.max(0, chance - before);
    before = Math.max(before, chance);
  }
  return { life, weight };
}

/** Where a rising chance passes a level, by halving; the end of the range where it does not within it. */
function whereItIs(chance: (log: number) => number, level: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (chance(middle) > level) high = middle;
    else low = middle;
  }
  return low;
}

const bins = 600;

/**
 * Chance that the sum of −ln(1 − chance) over the panels stays within a bound. Each panel's chance is one of a list with
 * weights; sums are kept on a grid up to the bound, a value between two grid points shared between them.
 */
function sumWithin(
  panels: readonly { readonly chance: Float64Array; readonly weight: Float64Array }[],
  bound: number,
): number {
  if (!(bound > 0)) return panels.length === 0 && bound === 0 ? 1 : 0;
  let held = new Float64Array(bins + 1);
  held[0] = 1;
  for (const { chance, weight } of panels) {
    const next = new Float64Array(bins + 1);
    chance.forEach((p, k) => {
      const w = weight[k] ?? 0;
      const at = (-Math.log1p(-Math.min(p, 1 - 1e-15)) / bound) * bins;
      if (w < 1e-12 || at > bins) return;
      const whole = Math.floor(at);
      const part = at - whole;
      for (let j = 0; j + whole <= bins; j++) {
        const mass = (held[j] ?? 0) * w;
        if (mass === 0) continue;
        next[j + whole] = (next[j + whole] ?? 0) + mass * (1 - part);
        if (j + whole + 1 <= bins) next[j + whole + 1] = (next[j + whole + 1] ?? 0) + mass * part;
      }
    });
    held = next;
  }
  return held.reduce((sum, mass) => sum + mass, 0);
}
