// `correction DG1 2026-03-20 plate at 9.1 m read on 2026-03-14 thickness 3.6 mm` → draft, of a measure beside the readings of the liner.
// What it cannot say in full it does not say at all, as with a reading.

import type * as ast from '../generated/ast.js';
import type { Amendment } from '../../domain/model/records.js';
import type { AmendmentDraft } from '../sheet.js';
import { stated, wordsSaid } from './block.js';
import { lowerCondition } from './condition.js';
import type { Reader } from './reader.js';
import { lowerSeenAt } from './seen-at.js';

export function isAmendment(node: ast.Correction): boolean {
  return node.of !== undefined || node.seen !== undefined;
}

export function lowerAmendment(reader: Reader, node: ast.Correction): AmendmentDraft | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const read = reader.day(node, 'read');
  const of = ofWhat(reader, node);
  const says = saysOf(reader, node);
  const was = writtenAs(reader, node);
  if (!conveyorUse || !date || !read || !of || !says || (node.was !== undefined && !was)) return undefined;
  return {
    conveyorUse,
    date,
    read,
    of,
    says,
    origin: reader.origin(node),
    ...stated({ by: node.by, note: wordsSaid(node), writtenAs: was }),
  };
}

function ofWhat(reader: Reader, node: ast.Correction): AmendmentDraft['of'] | undefined {
  switch (node.of) {
    case 'plate':
    case 'flight':
    case 'hold-down':
    case 'worn': {
      const place = lowerSeenAt(reader, node, false);
      return (place.point ?? place.end ?? place.panel ?? place.at) && { kind: node.of, place };
    }
    case 'current':
      return { kind: node.of, ...stated({ which: node.which }) };
    case 'speed':
    case 'meter':
      return { kind: node.of };
    case undefined: {
      const [line] = node.seen ? lowerCondition(reader, node.seen, false) : [];
      return line && { kind: 'condition', line, gone: [] };
    }
  }
}

/** What the wrong line says, in the unit of what it is of. */
function writtenAs(reader: Reader, node: ast.Correction): Amendment['writtenAs'] {
  const what = 'what was written';
  switch (node.of) {
    case 'current':
      return reader.quantity(node, 'was', 'current', what);
    case 'speed':
      return reader.quantity(node, 'was', 'rotation', what);
    case 'meter':
      return reader.quantity(node, 'was', 'duration', what);
    default:
      return reader.quantity(node, 'was', 'length', what);
  }
}

function saysOf(reader: Reader, node: ast.Correction): Amendment['says'] | undefined {
  if (node.withdrawn) return { kind: 'does not count' };
  const error = reader.quantity(node, 'error', 'length', 'error of the thickness');
  const thickness = reader.quantity(node, 'thickness', 'length', 'thickness of the plate');
  if (thickness) return { kind: 'thickness', thickness, ...stated({ error }) };
  const depth = reader.quantity(node, 'depth', 'length', 'depth of the flight');
  if (depth) return { kind: 'depth', depth };
  const diameter = reader.quantity(node, 'diameter', 'length', 'outside diameter of the flight');
  if (diameter) return { kind: 'diameter', diameter };
  const gap = reader.quantity(node, 'gap', 'length', 'gap of the hold-down');
  if (gap) return { kind: 'gap', gap };
  const from = reader.clock(node, 'sector');
  const to = reader.clock(node, 'sectorEnd');
  if (from && to) return { kind: 'worn', from, to };
  const speed = reader.quantity(node, 'speed', 'rotation', 'measured speed');
  if (speed) return { kind: 'speed', speed };
  const hours = reader.quantity(node, 'hours', 'duration', 'meter reading');
  if (hours) return { kind: 'meter', hours };
  return currentOf(reader, node);
}

/** `current loaded read on … 8.1 A` as `current read on … loaded 8.1 A`; alone, it was loaded. */
function currentOf(reader: Reader, node: ast.Correction): Amendment['says'] | undefined {
  const amps = reader.quantity(node, 'amps', 'current', 'motor current');
  if (amps) return { kind: 'current', [node.which ?? 'loaded']: amps };
  const empty = reader.quantity(node, 'empty', 'current', 'current running empty');
  const loaded = reader.quantity(node, 'loaded', 'current', 'current running loaded');
  return empty || loaded ? { kind: 'current', ...stated({ empty, loaded }) } : undefined;
}
