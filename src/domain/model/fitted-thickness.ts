// How thick was a liner when it went in? As measured at the point or on its panel, else as the whole of it showed, else as bought.

import type { LinerSet } from './liner-sets.js';
import type { Place, Reline } from './records.js';
import { linersBrought } from './same-again.js';
import type { LinerSpecification } from './specifications.js';

/**
 * Thickness when fitted, mm: measured at the point at the reline, else on the panel it lies on (the thinner of two at their
 * joint), else the specification's.
 */
export function fittedThickness(
  set: LinerSet,
  place: Pick<Place, 'name' | 'at' | 'declared'>,
): { readonly value: number; readonly measured: boolean } {
  const atThePoint = set.reline?.asFitted.find(
    (row) => row.point.name === place.name && (place.declared || set.reline?.moved !== undefined),
  );
  if (atThePoint) return { value: atThePoint.thickness.value, measured: true };
  // Elsewhere a panel that was moved is taken to be as thin as its thinnest spot that was measured.
  const moved = set.reline?.moved && set.reline.asFitted.map(({ thickness }) => thickness.value);
  if (moved && moved.length > 0) return { value: Math.min(...moved), measured: false };
  const panels = set.measured.filter(({ from, to }) => place.at >= from && place.at <= to);
  return panels.length > 0
    ? { value: Math.min(...panels.map(({ thickness }) => thickness)), measured: true }
    : { value: thicknessOfAll(set), measured: wholeOf(set) !== undefined };
}

/** What the new liner showed as a whole, else what it was bought as, mm. */
function thicknessOfAll(set: LinerSet): number {
  return wholeOf(set)?.thickness.value ?? set.liner.thickness.value;
}

function wholeOf({ reline, liner }: LinerSet): Reline['newThickness'] {
  return reline && newThicknessOf(reline, liner);
}

/** What the gauge showed of a new liner as a whole; where a reline brought several, of the one whose thickness it is nearest to. */
export function newThicknessOf(
  reline: Pick<Reline, 'liner' | 'again' | 'newThickness'>,
  liner: LinerSpecification,
): Reline['newThickness'] {
  const { newThickness } = reline;
  if (!newThickness) return undefined;
  const off = (each: LinerSpecification): number =>
    Math.abs(each.thickness.value - newThickness.thickness.value);
  return linersBrought(reline).every((other) => off(liner) <= off(other)) ? newThickness : undefined;
}

/** The mean over a stretch of a set, mm: panels that nobody measured count as the whole, or as the specification says. */
export function meanFittedThickness(
  set: LinerSet,
  stretch: { readonly from: number; readonly to: number },
): number {
  const [from, to] = [Math.max(set.from, stretch.from), Math.min(set.to, stretch.to)];
  const nominal = thicknessOfAll(set);
  if (!(to > from)) return nominal;
  const off = set.measured.map(
    (panel) => (panel.thickness - nominal) * Math.max(0, Math.min(to, panel.to) - Math.max(from, panel.from)),
  );
  return nominal + off.reduce((a, b) => a + b, 0) / (to - from);
}
