// Where something was seen or done → SeenPlace: a chainage, a name, a stretch (the lower end first) or a panel, and the clock position.
// Clock positions and sides seen against the flow are mirrored here, once. What a name or a panel lies at is found in assembly.

import type * as ast from '../generated/ast.js';
import type { PartName, SeenPlace } from '../../domain/model/records.js';
import type { StatedClock } from '../../domain/model/stated.js';
import { middleClock } from '../../domain/units/clock.js';
import { stated } from './block.js';
import { chainage } from './limits.js';
import { mirror, otherSide } from './mirror.js';
import { wordsOf, type Reader } from './reader.js';
import { lowerPanels } from './stretch.js';

export type MeasureNode =
  ast.NotLooked | ast.PlateReading | ast.HoldDownGap | ast.FlightReading | ast.WornWidth;
type PlacedNode = ast.Condition | ast.Finding | ast.Serviced | ast.WorkRow | ast.Correction | MeasureNode;

export function lowerSeenAt(reader: Reader, node: PlacedNode, mirrored: boolean): SeenPlace {
  const at = reader.quantity(node, 'at', 'length', 'chainage', chainage);
  const to = reader.quantity(node, 'to', 'length', 'chainage', chainage);
  const clock = middleOf(reader.clock(node, 'clock'), reader.clock(node, 'clockEnd'));
  const backwards = at && to && to.value < at.value;
  // The grammar takes these words only.
  const side = wordsOf(node, 'side') as SeenPlace['side'];
  return stated({
    point: reader.name(node, 'point'),
    end: reader.name(node, 'end'),
    panel: lowerPanels(reader, node.panel),
    at: backwards ? to : at,
    to: backwards ? at : to,
    clock: clock && mirrored ? mirror(clock) : clock,
    side: mirrored ? otherSide(side) : side,
  });
}

/** Of a sector its middle, with both ends as they were written. */
export function middleOf(
  from: StatedClock | undefined,
  to: StatedClock | undefined,
): StatedClock | undefined {
  return from && to
    ? { hours: middleClock(from.hours, to.hours), text: `${from.text} to ${to.text}`, origin: from.origin }
    : from;
}

/** `clock 3:30 to 4:30`, for the note of what lies all along it; undefined where one position is written or none. */
export function sectorWords(node: {
  readonly clock?: string;
  readonly clockEnd?: string;
}): string | undefined {
  return !('clockEnd' in node) || node.clockEnd === undefined
    ? undefined
    : `clock ${node.clock ?? ''} to ${node.clockEnd}`;
}

/** Bolts by either word, the bearing of a gearbox, an interlock and its switch are one part; the place of a drive is written behind `drive at`. */
export function partNamed(node: PlacedNode | ast.ShelfPart | ast.OrderedPart): PartName | undefined {
  const part = wordsOf(node, 'part');
  switch (part) {
    case 'bolt':
      return 'bolts';
    case 'drive at':
      return 'drive';
    case 'interlock switch':
      return 'interlock';
    case 'gearbox thrust bearing':
      return 'thrust bearing';
    default:
      return part as PartName | undefined; // the grammar takes these words only
  }
}
