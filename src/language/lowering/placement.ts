// Where a part of a conveyor is: at a chainage, between two, or repeated `every … from … to …`, which is spelled out here.

import { chainageText } from '../../domain/units/length-words.js';
import type { AstNode } from 'langium';
import type { Stated } from '../../domain/model/stated.js';
import { present } from './block.js';
import { chainage, step as stepLimit } from './limits.js';
import { textOf, type Reader } from './reader.js';

export interface Placement {
  readonly from: Stated<'length'>;
  readonly to: Stated<'length'>;
  /** 1, 2, … where the parts are repeated. */
  readonly number?: number;
}

const mostParts = 2000;

/**
 * The spots of a part, tail first; undefined where its place cannot be read. `tile`: repeated parts lie end to end, the last
 * one cut at `to` (covers); otherwise each is at one chainage, both ends included.
 */
export function lowerPlacement(
  reader: Reader,
  node: AstNode,
  fact: string,
  tile = false,
): readonly Placement[] | undefined {
  if (textOf(node, 'step') === undefined) {
    const span = reader.range(node, 'length', `chainage of ${fact}`, chainage);
    const more = reader.quantities(node, 'more', 'length', `chainage of ${fact}`, chainage);
    if (!span || more.length === 0) return span && [span];
    return present([span.from, ...more]).map((from, index) => ({ from, to: from, number: index + 1 }));
  }
  const step = reader.quantity(node, 'step', 'length', `spacing of ${fact}`, stepLimit);
  const span =
    textOf(node, 'to') === undefined
      ? undefined
      : reader.range(node, 'length', `chainage of ${fact}`, chainage);
  if (!step || !span) return undefined;
  const room = span.to.value - span.from.value;
  if (room < 0) {
    reader.problems.push({
      kind: 'out of range',
      origin: span.to.origin,
      text: span.to.text,
      fact: `last chainage of ${fact}`,
      range: `${span.from.text} or more`,
    });
    return undefined;
  }
  // A hundredth of a millimetre takes up decimal dust: 1.5 m fits 13 times into 19.5 m.
  const count = tile ? Math.ceil((room - 0.01) / step.value) : Math.floor((room + 0.01) / step.value) + 1;
  if (count > mostParts) {
    reader.problems.push({
      kind: 'out of range',
      origin: step.origin,
      text: step.text,
      fact: `spacing of ${fact}`,
      range: `a spacing that gives at most ${mostParts} parts`,
    });
    return undefined;
  }
  return Array.from({ length: Math.max(count, 1) }, (_, index) => {
    const from = at(span.from, index * step.value);
    const to = tile ? (index === count - 1 ? span.to : at(span.from, (index + 1) * step.value)) : from;
    return { from, to, number: index + 1 };
  });
}

function at(start: Stated<'length'>, offset: number): Stated<'length'> {
  if (offset === 0) return start;
  const value = Math.round((start.value + offset) * 1000) / 1000;
  return {
    ...start,
    value,
    text: chainageText(value, /\b(ft|foot|feet|in|inch|inches)$|["']$/.test(start.text) ? 'in' : 'mm'),
  };
}
