// The names that a row of points stands for: `point P every 2 m from 2 m to 20 m` is P1 to P10.

import * as ast from '../language/generated/ast.js';
import { parseQuantity } from '../domain/units/parse.js';
import type { Declaration } from './document-symbols.js';

const most = 1000;

/** The declared name, or all numbered names of a row, in order along the conveyor. */
export function pointNames(point: Declaration): readonly string[] {
  if (!point.row || !ast.isPoint(point.node)) return [point.name];
  const [step, from, to] = [point.node.step, point.node.from, point.node.to].map((text) => {
    const read = parseQuantity(text ?? '', 'length');
    return read.ok ? read.quantity.value : undefined;
  });
  if (step === undefined || from === undefined || to === undefined || step <= 0 || to < from)
    return [`${point.name}1`];
  const count = Math.min(most, Math.floor((to - from) / step + 1e-9) + 1);
  return Array.from({ length: count }, (_, index) => `${point.name}${index + 1}`);
}
