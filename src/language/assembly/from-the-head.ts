// A look or work that was measured from the head: every chainage of it is as far from the other end of the conveyor. What goes by the
// name of a point or a part, by a panel or by an end lies where it lies.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { SeenPlace, Service } from '../../domain/model/records.js';
import type { Stated } from '../../domain/model/stated.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { chainageText } from '../../domain/units/length-words.js';
import { parseQuantity } from '../../domain/units/parse.js';
import type { LookFrame } from '../../domain/model/as-in-look.js';
import { mirror, otherSide } from '../lowering/mirror.js';
import type { Draft, InspectionDraft, ReadingSpot } from '../sheet.js';

/** The draft itself where it was measured from the tail, as all others are. */
export function lookFromTail(draft: InspectionDraft, conveyor: Conveyor): InspectionDraft {
  if (draft.measuredFrom !== 'head') return draft;
  const placed = <T extends { readonly place: SeenPlace; readonly note?: string }>(
    all: readonly T[],
  ): readonly T[] =>
    all.map((each) => ({
      ...each,
      place: placeFromTail(each.place, conveyor),
      ...(each.note !== undefined && { note: noteFromTail(each.note, conveyor) }),
    }));
  return {
    ...draft,
    remarks: draft.remarks.map((each) => placeFromTail(each, conveyor)),
    conditions: draft.conditions.map((each) => placeFromTail(each, conveyor)),
    holdDownGaps: placed(draft.holdDownGaps),
    flights: placed(draft.flights),
    flightDiameters: placed(draft.flightDiameters),
    wornWidths: placed(draft.wornWidths),
    plates: placed(draft.plates),
    notLooked: placed(draft.notLooked),
  };
}

export function workFromTail(draft: Draft<Service>, conveyor: Conveyor): Draft<Service> {
  if (draft.measuredFrom !== 'head') return draft;
  const { place, ended } = draft;
  return {
    ...draft,
    place: placeFromTail(place, conveyor),
    ...(ended && { ended: placeFromTail(ended, conveyor) }),
  };
}

interface Ends {
  readonly from: number;
  readonly to: number;
}

/** Where a row of such a look was read. */
export function spotFromTail(spot: ReadingSpot, conveyor: Conveyor): ReadingSpot {
  const { value: length } = conveyor.length;
  const turned = ({ from, to }: Ends): Ends => ({ from: length - to, to: length - from });
  switch (spot.kind) {
    case 'chainage':
      return { ...spot, at: length - spot.at, ...(spot.along && { along: turned(spot.along) }) };
    case 'stretch':
      return { kind: 'stretch', ...turned(spot) };
    default:
      return spot;
  }
}

/** A note that begins with the stretch of its row, `from 1 m to 2 m: scored`, begins with it as it counts. */
export function noteFromTail(note: string, conveyor: Conveyor): string {
  return note.replace(
    /^from ([\d.,]+) ?([a-z]*) to ([\d.,]+ ?([a-z]+))/,
    (all, lower: string, unit: string, upper: string, other: string) => {
      const [from, to] = [`${lower} ${unit || other}`, upper].map((text) => parseQuantity(text, 'length'));
      if (!from?.ok || !to?.ok) return all;
      const ends = [to, from].map(({ quantity }) =>
        chainageText(conveyor.length.value - quantity.value, unitOfMachine(conveyor)),
      );
      return `from ${ends.join(' to ')}`;
    },
  );
}

/** A place that is named as a look has it: as it would stand in one that was measured and seen as pages are. */
export function placeInLook<T extends SeenPlace>(seen: T, look: LookFrame): T {
  const { clock, side, ...rest } = look.measuredFrom === 'head' ? placeFromTail(seen, look.conveyor) : seen;
  const mirrored = look.view.direction === 'upstream';
  return {
    ...rest,
    ...(clock && { clock: mirrored ? mirror(clock) : clock }),
    ...(side && { side: mirrored ? otherSide(side) : side }),
  } as T;
}

function placeFromTail<T extends SeenPlace>(seen: T, conveyor: Conveyor): T {
  const { at, to, point, panel, end } = seen;
  if (!at || point || panel || end) return seen;
  const turned = (stated: Stated<'length'>): Stated<'length'> => {
    const value = conveyor.length.value - stated.value;
    return { ...stated, value, text: chainageText(value, unitOfMachine(conveyor)) };
  };
  // The lower end of a stretch comes first.
  return to ? { ...seen, at: turned(to), to: turned(at) } : { ...seen, at: turned(at) };
}
