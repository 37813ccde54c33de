// From when does the wear of a panel that was turned or exchanged count where it lies now, and from what thickness? From the
// record of the move where it says what was left at a point of these panels; else from the first look that read a thickness
// there. Until then nothing is known of it, and the forecast goes on as if the panel lay as before.

import { lengthOn } from './unit-of-machine.js';
import { nothingSeen } from './other-facts.js';
import type { Estate } from './estate.js';
import { isAfter, type Moment } from './liner-sets.js';
import { installedPanelEnds } from './panels.js';
import {
  originOf,
  type DatedRecord,
  type Inspection,
  type PanelsMoved,
  type PanelUse,
  type Place,
  type Reline,
} from './records.js';
import { ReadingKind } from '../units/reading-kind.js';
import { intervalOf, type Interval } from './runs.js';

interface Refitted extends Reline {
  readonly moved: PanelsMoved;
}

/** Chainages of the panels that were moved, mm; those that are not there are left out. */
export function stretchesMoved(estate: Estate, { conveyor, date, moves }: PanelsMoved): readonly Interval[] {
  const ends = installedPanelEnds(estate, date.day);
  return moves
    .flatMap(({ panel, other }) => [panel, ...(other ? [other] : [])])
    .flatMap((panel) => intervalOf(conveyor, panel, ends) ?? []);
}

/**
 * The move as what it does to a liner: each panel fitted anew, as thick as it was measured; none of a panel before that. Worked
 * out once an estate, panel and look, so that the same refitting is the same object in whichever history it is asked for.
 */
export function refittedBy(
  estate: Estate,
  moved: PanelsMoved,
  inspections: readonly { readonly inspection: Inspection }[],
): readonly Refitted[] {
  const ends = installedPanelEnds(estate, moved.date.day);
  return moved.moves
    .flatMap(({ panel, other }) => [panel, ...(other ? [other] : [])])
    .flatMap((panel) => {
      const place = intervalOf(moved.conveyor, panel, ends);
      return place ? (refittedPanel(estate, moved, panel, place, inspections) ?? []) : [];
    });
}

const known = new WeakMap<Estate, Map<PanelUse, Refitted>>();

function refittedPanel(
  estate: Estate,
  moved: PanelsMoved,
  panel: PanelUse,
  { from, to }: Interval,
  inspections: readonly { readonly inspection: Inspection }[],
): Refitted | undefined {
  const isOn = (at: number): boolean => at >= from && at <= to;
  const own = moved.measured.filter(({ point, at: stated }) =>
    stated
      ? isOn(stated.value)
      : moved.conveyor.points.some(({ name, at }) => name === point.name && isOn(at.value)),
  );
  const look = own.length > 0 ? undefined : firstLook(estate, moved, inspections, isOn);
  const asFitted = look ? readIn(estate, look, isOn) : own;
  if (asFitted.length === 0) return undefined;
  const panels = known.get(estate) ?? new Map<PanelUse, Refitted>();
  known.set(estate, panels);
  const before = panels.get(panel);
  if (before && before.startLook === look) return before;
  const made = refitted(moved, panel, asFitted, look);
  panels.set(panel, made);
  return made;
}

function refitted(
  moved: PanelsMoved,
  panel: PanelUse,
  asFitted: Reline['asFitted'],
  look: Inspection | undefined,
): Refitted {
  const { conveyor, conveyorUse, origin } = moved;
  return {
    conveyor,
    conveyorUse,
    date: look?.date ?? moved.date,
    meter: look?.meter ?? moved.meter,
    liner: conveyor.liner,
    scope: [panel],
    asFitted,
    oldPanels: [],
    panelsFitted: [],
    panelThicknesses: [],
    plates: [],
    offcuts: [],
    ...nothingSeen(),
    origin,
    moved,
    ...(look && { startLook: look }),
  };
}

function firstLook(
  estate: Estate,
  moved: PanelsMoved,
  inspections: readonly { readonly inspection: Inspection }[],
  isOn: (at: number) => boolean,
): Inspection | undefined {
  return inspections
    .map(({ inspection }) => inspection)
    .find((look) => isAfterMove(look, moved) && readIn(estate, look, isOn).length > 0);
}

/** By the meters as they were read: histories are still to be built. */
export function isAfterMove(look: Pick<DatedRecord, 'date' | 'meter'>, moved: PanelsMoved): boolean {
  const read = ({ date, meter }: Pick<DatedRecord, 'date' | 'meter'>): Pick<Moment, 'day' | 'hours'> => ({
    day: date.day,
    hours: meter.hours?.value,
  });
  return isAfter(read(look), read(moved));
}

/** Thicknesses that a look read at points on these stretches. */
function readIn(
  { readings, places }: Estate,
  { firstRow, endRow }: Inspection,
  isOn: (at: number) => boolean,
): Reline['asFitted'] {
  const found: { row: number; place: Place }[] = [];
  for (let row = firstRow; row < endRow; row++) {
    const place = places[readings.place[row] ?? -1];
    if (place && isOn(place.at) && readings.kind[row] === ReadingKind.thickness) found.push({ row, place });
  }
  return found.map(({ row, place }) => {
    const value = readings.value[row] ?? NaN;
    const origin = originOf(readings, row);
    return {
      point: { name: place.name, origin },
      thickness: { value, dimension: 'length', text: lengthOn(place.conveyor, value), origin },
      origin,
    };
  });
}
