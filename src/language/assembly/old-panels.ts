// `old panel 4 of run 2 thickness 4.2 mm`: a panel measured on the bench lay at its middle, in the layout that the reline found, or where
// a point lies on it, at that: its readings are of that panel. The records before it say which layout that is, so it is settled once
// all relines are known.

import { chainageText } from '../../domain/units/length-words.js';
import type { OldPanel, Reline } from '../../domain/model/records.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { middleOfPanel, panelThere, pointOn } from './panel-there.js';

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
  const lay = panelThere(conveyor, panel, relines, date.day);
  if (!lay) return old;
  const point = spot.clock ? undefined : pointOn(conveyor, lay);
  const value = point?.at.value ?? middleOfPanel(lay);
  const clock = spot.clock ?? point?.clock;
  const text = chainageText(value, unitOfMachine(conveyor));
  const at = { dimension: 'length' as const, value, text, origin: panel.origin };
  return { ...old, spot: { kind: 'chainage', at, ...(clock && { clock }) } };
}
