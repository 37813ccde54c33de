// The parts of a conveyor that carry no run of their own: hold-downs, braces, covers, access, isolation, hatches, lifting
// points and inspection points. A part that cannot be placed is left out; a point keeps its name, so that its readings are not
// called unknown on top.

import type * as ast from '../generated/ast.js';
import type {
  Access,
  Cover,
  Hatch,
  HoldDown,
  Hopper,
  Isolation,
  LiftingPoint,
  Point,
  Span,
} from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import { stated } from './block.js';
import { chainage, someLength } from './limits.js';
import { lowerPlacement, type Placement } from './placement.js';
import type { onceByName } from './plant.js';
import { textOf, wordsOf, type Reader } from './reader.js';

export interface Parts {
  readonly holdDowns: HoldDown[];
  readonly braces: Span[];
  readonly covers: Cover[];
  readonly access: Access[];
  readonly isolations: Isolation[];
  readonly hatches: Hatch[];
  readonly liftingPoints: LiftingPoint[];
  readonly rests: Span[];
  readonly hoppers: Hopper[];
  readonly drains: Span[];
  readonly points: Point[];
  readonly unplaced: string[];
  readonly named: Map<string, Origin>;
}

type PartNode =
  | ast.HoldDown
  | ast.Brace
  | ast.Cover
  | ast.Access
  | ast.Isolation
  | ast.Hatch
  | ast.LiftingPoint
  | ast.Rest
  | ast.Hopper
  | ast.Drain
  | ast.Point;

export function partsList(): Parts {
  return {
    holdDowns: [],
    braces: [],
    covers: [],
    access: [],
    isolations: [],
    hatches: [],
    liftingPoints: [],
    rests: [],
    hoppers: [],
    drains: [],
    points: [],
    unplaced: [],
    named: new Map(),
  };
}

export function lowerPart(
  reader: Reader,
  node: PartNode,
  parts: Parts,
  once: ReturnType<typeof onceByName>,
): void {
  const origin = reader.origin(node);
  switch (node.$type) {
    case 'HoldDown':
      for (const spot of spots(reader, node, 'hold-down')) {
        const side = wordsOf(node, 'side') as HoldDown['side'] | undefined; // the grammar takes these words only
        parts.holdDowns.push({ ...spot, origin, side: side ?? 'both sides' });
      }
      return;
    case 'Brace':
      for (const spot of spots(reader, node, 'brace')) parts.braces.push({ ...spot, origin });
      return;
    case 'Cover': {
      const mass = reader.quantity(node, 'mass', 'mass', 'mass of the cover');
      for (const spot of spots(reader, node, 'cover', true))
        parts.covers.push({ ...spot, origin, ...stated({ mass }) });
      return;
    }
    case 'Hatch': {
      const width = reader.quantity(node, 'width', 'length', 'width of the hatch', someLength);
      for (const spot of spots(reader, node, 'hatch'))
        parts.hatches.push({ ...spot, origin, ...stated({ width }) });
      return;
    }
    case 'Rest': {
      const at = reader.quantity(node, 'at', 'length', 'chainage of the rest', chainage);
      if (at) parts.rests.push({ from: at, to: at, origin, ...stated({ note: node.note }) });
      return;
    }
    case 'Hopper': {
      const volume = reader.quantity(node, 'volume', 'volume', 'volume of the hopper');
      for (const spot of spots(reader, node, 'hopper'))
        parts.hoppers.push({ ...spot, origin, ...stated({ volume }) });
      return;
    }
    case 'Drain':
      for (const spot of spots(reader, node, 'drain')) parts.drains.push({ ...spot, origin });
      return;
    case 'Access': {
      if (!once('access', node)) return;
      const height = reader.quantity(node, 'height', 'length', 'height of the access');
      const kind = wordsOf(node, 'kind') as Access['kind'] | undefined; // the grammar takes these words only
      if (kind)
        for (const spot of spots(reader, node, 'access'))
          parts.access.push({ ...spot, kind, origin, ...stated({ height }) });
      return;
    }
    case 'Isolation': {
      if (!once('isolation', node)) return;
      const at = reader.quantity(node, 'at', 'length', 'chainage of the isolation', chainage);
      if (node.name !== undefined && node.kind !== undefined)
        parts.isolations.push({
          name: node.name,
          kind: node.kind,
          origin,
          ...stated({ title: node.title, at }),
        });
      return;
    }
    case 'LiftingPoint': {
      if (!once('lifting point', node)) return;
      const at = reader.quantity(node, 'at', 'length', 'chainage of the lifting point', chainage);
      const limit = reader.quantity(node, 'limit', 'mass', 'limit of the lifting point');
      if (node.name !== undefined && at && limit)
        parts.liftingPoints.push({ name: node.name, at, limit, origin, ...stated({ note: node.note }) });
      return;
    }
    case 'Point':
      return lowerPoint(reader, node, parts);
  }
}

function lowerPoint(reader: Reader, node: ast.Point, parts: Parts): void {
  const name = reader.name(node, 'name');
  if (!name) return;
  const placed = lowerPlacement(reader, node, `point ${name.name}`);
  const clock = reader.clock(node, 'clock');
  if (!placed || !clock) {
    parts.unplaced.push(name.name);
    return;
  }
  const origin = reader.origin(node);
  for (const spot of placed) {
    const pointName = name.name + (spot.number ?? '');
    const first = parts.named.get(pointName);
    if (first) {
      reader.problems.push({
        kind: 'repeated name',
        origin: name.origin,
        what: 'point',
        name: pointName,
        first,
      });
      return;
    }
    parts.named.set(pointName, name.origin);
    parts.points.push({
      name: pointName,
      at: spot.from,
      clock,
      origin,
      nameOrigin: name.origin,
      ...stated({ note: node.note }),
    });
  }
}

/** Spots with the part's name, numbered where the part is repeated. */
function spots(
  reader: Reader,
  node: Exclude<PartNode, ast.Point | ast.Isolation | ast.LiftingPoint | ast.Rest>,
  what: string,
  tile = false,
): readonly Omit<Span, 'origin'>[] {
  const name = textOf(node, 'name');
  const placed = lowerPlacement(reader, node, name === undefined ? what : `${what} ${name}`, tile) ?? [];
  return placed.map(({ from, to, number }: Placement) => ({
    from,
    to,
    ...stated({ name: name === undefined ? undefined : name + (number ?? ''), note: node.note }),
  }));
}
