// How much of the conveyor needs a new liner? The panel that governs; the panels that would reach a limit before the next but one
// outage, taken up one by one, the likeliest first, until the rest keeps both accepted risks that long; and the whole conveyor.
// Panels of one run that do not lie together are parts of their own, and what lies between stays where an order of work closes them
// so. To each is added what the order of work asks for so that the run can be closed. Panels that nobody has seen call for a
// look, not for a liner: they never widen a scope, but their chances stay with what is left in place (what-stays.ts).

import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { CalendarDay } from '../units/calendar.js';
import { workOf, type LinerAt, type RunPart, type StretchWork } from './trial-work.js';
import type { PanelOutlook, WearOutlook } from './wear-outlook.js';

export interface AcceptedRisk {
  readonly condemn: number;
  readonly contact: number;
}

export interface Scopes {
  /** The day the rest has to last to: the next outage but one, or the last that is declared. */
  readonly until: CalendarDay;
  /** Panels that would not last, likeliest first. */
  readonly governing: readonly PanelOutlook[];
  /** The smallest that renews what governs, the smallest after which the rest lasts, the whole; those that differ, smallest first. */
  readonly works: readonly ScopeWork[];
}

export interface ScopeWork {
  readonly work: StretchWork;
  /** Panels of the outlook that it renews. */
  readonly relined: readonly PanelOutlook[];
}

/** @param outlook with the panel that the report calls governing: first of those that are as good as certain */
export function scopesOf(
  conveyor: Conveyor,
  linerAt: LinerAt,
  outlook: WearOutlook & { readonly first?: PanelOutlook | undefined },
  accepted: AcceptedRisk,
  until: CalendarDay,
  estate: Estate,
): Scopes {
  const governing = governingPanels(outlook, accepted, until);
  const whole = workOf(conveyor, linerAt, 'whole', estate);
  const works: ScopeWork[] = [{ work: whole, relined: outlook.panels }];
  for (const panels of [governing, governing.slice(0, 1)]) {
    if (panels.length === 0) continue;
    const small = smallest(panels, whole.parts, (parts) => workOf(conveyor, linerAt, parts, estate));
    if (small.whole || works.some(({ work }) => work.scope === small.scope)) continue;
    works.unshift({ work: small, relined: within(outlook.panels, small.parts) });
  }
  return { until, governing, works };
}

/** Independent panels err on the safe side: what they share would make the first of several come later. */
function governingPanels(
  { panels, first: named }: Parameters<typeof scopesOf>[2],
  accepted: AcceptedRisk,
  until: CalendarDay,
): readonly PanelOutlook[] {
  const left = panels
    .filter(({ seen }) => seen)
    .map((panel) => ({
      panel,
      condemn: Math.min(panel.condemnBy(until), 1 - 1e-12),
      contact: Math.min(panel.contactBy(until), 1 - 1e-12),
    }))
    .sort(
      (a, b) =>
        chancesApart(b.condemn, a.condemn) ||
        Number(b.panel === named) - Number(a.panel === named) ||
        lifeLeft(a.panel) - lifeLeft(b.panel) ||
        a.panel.from - b.panel.from,
    );
  const chosen: PanelOutlook[] = [];
  const first = (of: (each: (typeof left)[number]) => number): number =>
    1 - left.slice(chosen.length).reduce((none, each) => none * (1 - of(each)), 1);
  while (
    chosen.length < left.length &&
    (first((each) => each.condemn) > accepted.condemn || first((each) => each.contact) > accepted.contact)
  ) {
    const next = left[chosen.length];
    if (!next) break;
    chosen.push(next.panel);
  }
  return chosen;
}

/** Chances nearer than a millionth of each other are no order. */
function chancesApart(a: number, b: number): number {
  return Math.abs(a - b) < 1e-6 ? 0 : a - b;
}

/** Middle exposure from today to the limit, below 0 where it is past: tells panels apart that are all as good as certain. */
function lifeLeft({ life }: PanelOutlook): number {
  return life.median - life.now;
}

/** Plans that are tried for one scope, the fewest panels first. */
const mostTries = 4;

/**
 * Each part by itself, as the planner closes it; where that takes more panels than going to the ends of the run does, and cutting the
 * last panel there to its gap, that: from the tail up to one of the chosen panels, and from the next one to the head.
 */
function smallest(
  panels: readonly PanelOutlook[],
  runs: readonly RunPart[],
  workFor: (parts: readonly RunPart[]) => StretchWork,
): StretchWork {
  const apart = workFor(partsOf(panels));
  let best = apart;
  for (const parts of toEnds(panels, runs).slice(0, mostTries)) {
    if (best.buildable && best.panels <= panelsIn(parts)) break;
    const work = workFor(parts);
    if (work.buildable && (!best.buildable || work.panels < best.panels)) best = work;
  }
  return best;
}

function panelsIn(parts: readonly RunPart[]): number {
  return parts.reduce((sum, { first, last }) => sum + last - first + 1, 0);
}

/** Every way to reach the chosen panels of all runs from the ends of their runs, the fewest panels first. */
function toEnds(panels: readonly PanelOutlook[], runs: readonly RunPart[]): (readonly RunPart[])[] {
  const ways = runs
    .map(({ run, last: n }) => {
      const own = panels.flatMap((panel) => (panel.run === run ? [panel.panel] : [])).sort((a, b) => a - b);
      if (own.length === 0) return [[]];
      const from = [...own.map((_, i) => i), own.length];
      return from.map((i): readonly RunPart[] => {
        const [tail = 0, head = n + 1] = [own[i - 1], own[i]];
        return joined([
          ...(tail > 0 ? [{ run, first: 1, last: tail }] : []),
          ...(head <= n ? [{ run, first: head, last: n }] : []),
        ]);
      });
    })
    // The best of each run, and those few panels more.
    .map((of) => of.sort((a, b) => panelsIn(a) - panelsIn(b)).slice(0, 2))
    .reduce<(readonly RunPart[])[]>(
      (all, of) => all.flatMap((before) => of.map((parts) => [...before, ...parts])).slice(0, 64),
      [[]],
    );
  return ways.sort((a, b) => panelsIn(a) - panelsIn(b));
}

/** Parts that touch or overlap are one. */
function joined(parts: readonly RunPart[]): readonly RunPart[] {
  const made: { run: number; first: number; last: number }[] = [];
  for (const { run, first, last } of [...parts].sort((a, b) => a.run - b.run || a.first - b.first)) {
    const before = made.at(-1);
    if (before?.run === run && first <= before.last + 1) before.last = Math.max(before.last, last);
    else made.push({ run, first, last });
  }
  return made;
}

/** Panels that lie side by side, part by part, from the tail. */
function partsOf(panels: readonly PanelOutlook[]): readonly RunPart[] {
  return joined(panels.map(({ run, panel }) => ({ run, first: panel, last: panel })));
}

export function within(panels: readonly PanelOutlook[], parts: readonly RunPart[]): readonly PanelOutlook[] {
  return panels.filter((panel) =>
    parts.some(({ run, first, last }) => run === panel.run && panel.panel >= first && panel.panel <= last),
  );
}
