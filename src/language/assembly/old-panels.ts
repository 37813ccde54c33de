// `old panel 4 of run 2 thickness 4.2 mm`: a panel measured on the bench lay at its middle, in the layout that the reline found, or where
// a point lies on it, at that: its readings are of that panel. The records before it say which layout that is, so it is settled once
// all relines are known.

import { chainageText } from '../../domain/units/length-words.js';
import { installedPanels } from '../../domain/model/panels.js';
import type { Conveyor, Point } from '../../domain/model/conveyor.js';
import type { OldPanel, Reline } from '../../domain/model/records.js';
import { findRun } from '../../domain/model/runs.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';

/** In the order of the records; a reline that names no panel so is the same object. One that is not there stays, for a rule to tell. */
export function withOldPanelsPlaced(relines: readonly Reline[]): readonly Reline[] {
  return relines.map((reline, index) => {
    if (!reline.oldPanels.some(({ spot }) => spot.kind === 'panel')) return reline;
    const earlier = relines.slice(0, index);
    return { ...reline, oldPanels: reline.oldPanels.map((old) => placed(old, reline, earlier)) };
  });
}

function placed(old: OldPanel, { conveyor, date }: Reline, relines: readonly Reline[]): OldPanel {
  const { spot } = old;
  if (spot.kind !== 'panel') return old;
  const { panel } = spot;
  const run = findRun(conveyor, panel.run);
  const lay = run && installedPanels({ relines }, run, date.day).layout.panels[panel.first.count - 1];
  if (!lay) return old;
  const middle = (lay.from + lay.to) / 2;
  const point = spot.clock ? undefined : nearestPoint(conveyor, lay, middle);
  const value = point?.at.value ?? middle;
  const clock = spot.clock ?? point?.clock;
  const text = chainageText(value, unitOfMachine(conveyor));
  const at = { dimension: 'length' as const, value, text, origin: panel.origin };
  return { ...old, spot: { kind: 'chainage', at, ...(clock && { clock }) } };
}

function nearestPoint(
  { points }: Conveyor,
  { from, to }: { readonly from: number; readonly to: number },
  middle: number,
): Point | undefined {
  const on = points.filter(({ at }) => at.value >= from && at.value <= to);
  return on.sort((a, b) => Math.abs(a.at.value - middle) - Math.abs(b.at.value - middle))[0];
}
