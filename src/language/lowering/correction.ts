// A correction of a reading → draft. What it cannot say in full (which reading, what instead) it does not say at all: a reading
// must not change by half a line.

import type * as ast from '../generated/ast.js';
import type { Correction } from '../../domain/model/records.js';
import type { Draft } from '../sheet.js';
import { stated, wordsSaid } from './block.js';
import { chainage, offset as offsetLimit, thickness as thicknessLimit } from './limits.js';
import type { Reader } from './reader.js';
import { middleOf } from './seen-at.js';
import { lowerPanels } from './stretch.js';

export function lowerCorrection(reader: Reader, node: ast.Correction): Draft<Correction> | undefined {
  const conveyorUse = reader.use(node, 'conveyor');
  const date = reader.day(node, 'date');
  const read = reader.day(node, 'read');
  const spot = spotOf(reader, node);
  const says = saysOf(reader, node);
  const writtenAs =
    reader.quantity(node, 'was', 'length', 'what was written', thicknessLimit) ??
    reader.name(node, 'wasColour');
  const isNamed = (node.was ?? node.wasColour) === undefined || writtenAs !== undefined;
  if (!conveyorUse || !date || !read || !spot || !says || !isNamed) return undefined;
  return {
    conveyorUse,
    date,
    spot,
    read,
    says,
    origin: reader.origin(node),
    ...stated({ by: node.by, note: wordsSaid(node), writtenAs }),
  };
}

function spotOf(reader: Reader, node: ast.Correction): Correction['spot'] | undefined {
  if (node.all) return { kind: 'all' };
  const point = reader.name(node, 'point');
  if (point) return { kind: 'point', point };
  const clock = middleOf(reader.clock(node, 'clock'), reader.clock(node, 'clockEnd'));
  if (node.clock !== undefined && !clock) return undefined;
  const panel = lowerPanels(reader, node.panel);
  if (panel) return { kind: 'panel', panel, ...stated({ clock }) };
  const span = node.from === undefined ? undefined : reader.range(node, 'length', 'stretch', chainage);
  if (span) {
    const [from, to] = span.from.value <= span.to.value ? [span.from, span.to] : [span.to, span.from];
    return { kind: 'stretch', from, to, ...stated({ clock }) };
  }
  const at = reader.quantity(node, 'chainage', 'length', 'chainage', chainage);
  return at && clock && { kind: 'chainage', at, clock };
}

function saysOf(reader: Reader, node: ast.Correction): Correction['says'] | undefined {
  if (node.thickness !== undefined) {
    const thickness = reader.quantity(node, 'thickness', 'length', 'thickness', thicknessLimit);
    const error = reader.quantity(node, 'error', 'length', 'error of the thickness', thicknessLimit);
    return thickness && { kind: 'thickness', thickness, ...stated({ error }) };
  }
  if (node.all) return node.withdrawn ? { kind: 'does not count' } : offsetOf(reader, node);
  const colour = reader.name(node, 'colour');
  if (colour) return { kind: 'colour', colour };
  if (node.trough) return { kind: 'trough showing' };
  if (node.notSeen) return { kind: 'not seen' };
  return node.withdrawn ? { kind: 'does not count' } : undefined;
}

/** `0.4 mm less`, or with a sign, `-0.4 mm`; a number alone says neither. */
function offsetOf(reader: Reader, node: ast.Correction): Correction['says'] | undefined {
  const offset = reader.quantity(node, 'offset', 'length', 'difference to what was read', offsetLimit);
  if (!offset) return undefined;
  if (node.direction === undefined && !/^[+-]/.test(offset.text)) {
    reader.problems.push({
      kind: 'out of range',
      origin: offset.origin,
      text: offset.text,
      fact: 'difference to what was read',
      range: `\`${offset.text} less\` or \`${offset.text} more\``,
    });
    return undefined;
  }
  if (node.direction === undefined) return { kind: 'offset', offset };
  const value = node.direction === 'less' ? -Math.abs(offset.value) : Math.abs(offset.value);
  return { kind: 'offset', offset: { ...offset, value, text: `${offset.text} ${node.direction}` } };
}
