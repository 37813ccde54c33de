// How much of the conveyor needs a new liner? The panel that governs; the panels that would reach a limit before the next but one
// outage, taken up one by one, the likeliest first, until the rest keeps both accepted risks that long; and the whole conveyor.
// To each is added what the order of work asks for so that the run can be closed. Panels that nobody has seen call for a look,
// not for a liner: they never widen a scope, but their chances stay with what is left in place.

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

export function scopesOf(
  conveyor: Conveyor,
  linerAt: LinerAt,
  outlook: WearOutlook,
  accepted: AcceptedRisk,
  until: CalendarDay,
  estate: Estate,
): Scopes {
  const governing = governingPanels(outlook, accepted, until);
  const whole = workOf(conveyor, linerAt, 'whole', estate);
  const works: ScopeWork[] = [{ work: whole, relined: outlook.panels }];
  for (const panels of [governing, governing.slice(0, 1)]) {
    if (panels.length === 0) continue;
    const small = workOf(conveyor, linerAt, partsOf(panels), estate);
    if (small.whole || works.some(({ work }) => work.scope === small.scope)) continue;
    works.unshift({ work: small, relined: within(outlook.panels, small.parts) });
  }
  return { until, governing, works };
}

/** Independent panels err on the safe side: what they share would make the first of several come later. */
function governingPanels(
  { panels }: WearOutlook,
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

/** One stretch a run, from its first chosen panel to its last. */
function partsOf(panels: readonly PanelOutlook[]): readonly RunPart[] {
  const runs = [...new Set(panels.map(({ run }) => run))].sort((a, b) => a - b);
  return runs.map((run) => {
    const own = panels.filter((panel) => panel.run === run).map(({ panel }) => panel);
    return { run, first: Math.min(...own), last: Math.max(...own) };
  });
}

export function within(panels: readonly PanelOutlook[], parts: readonly RunPart[]): readonly PanelOutlook[] {
  return panels.filter((panel) =>
    parts.some(({ run, first, last }) => run === panel.run && panel.panel >= first && panel.panel <= last),
  );
}
