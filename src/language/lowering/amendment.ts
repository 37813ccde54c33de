// `correction DG1 2026-03-20 plate at 9.1 m read on 2026-03-14 thickness 3.6 mm` → draft, of a measure beside the readings of the liner.
// What it cannot say in full it does not say at all, as with a reading.

import type * as ast from '../generated/ast.js';
import type { Amendment } from '../../domain/model/records.js';
import type { Draft } from '../sheet.js';
import { stated, wordsSaid } from './block.js';
import { lowerCondition } from './condition.js';
import { chainage } from './limits.js';
import type { Reader } from './reader.js';

export function isAmendment(node: ast.Correction): boolean {
  return node.of !== undefined || node.seen !== undefined;
}

export function lowerAmendment(reader: Reader, node: ast.Correction): Draft<Amendment> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const read = reader.day(node, 'read');
  const of = ofWhat(reader, node);
  const says = saysOf(reader, node);
  if (!conveyorUse || !date || !read || !of || !says) return undefined;
  return {
    conveyorUse,
    date,
    read,
    of,
    says,
    origin: reader.origin(node),
    ...stated({ by: node.by, note: wordsSaid(node) }),
  };
}

function ofWhat(reader: Reader, node: ast.Correction): Amendment['of'] | undefined {
  switch (node.of) {
    case 'plate':
    case 'flight': {
      const at = reader.quantity(node, 'at', 'length', 'chainage', chainage);
      return at && { kind: node.of, at };
    }
    case 'current':
    case 'meter':
      return { kind: node.of };
    case undefined: {
      const [line] = node.seen ? lowerCondition(reader, node.seen, false) : [];
      return line && { kind: 'condition', line, gone: [] };
    }
  }
}

function saysOf(reader: Reader, node: ast.Correction): Amendment['says'] | undefined {
  if (node.withdrawn) return { kind: 'does not count' };
  const thickness = reader.quantity(node, 'thickness', 'length', 'thickness of the plate');
  if (thickness) return { kind: 'thickness', thickness };
  const depth = reader.quantity(node, 'depth', 'length', 'depth of the flight');
  if (depth) return { kind: 'depth', depth };
  const diameter = reader.quantity(node, 'diameter', 'length', 'outside diameter of the flight');
  if (diameter) return { kind: 'diameter', diameter };
  const hours = reader.quantity(node, 'hours', 'duration', 'meter reading');
  if (hours) return { kind: 'meter', hours };
  const empty = reader.quantity(node, 'empty', 'current', 'current running empty');
  const loaded = reader.quantity(node, 'loaded', 'current', 'current running loaded');
  return empty || loaded ? { kind: 'current', ...stated({ empty, loaded }) } : undefined;
}
