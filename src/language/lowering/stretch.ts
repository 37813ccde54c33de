// A stretch of a conveyor as the author names it; it is turned into chainages by the model (runs.ts).

import type * as ast from '../generated/ast.js';
import type { PanelUse } from '../../domain/model/records.js';
import type { RunUse, Stretch } from '../../domain/model/stretch.js';
import { chainage } from './limits.js';
import type { Reader } from './reader.js';

export function lowerStretch(reader: Reader, node: ast.Stretch | undefined): Stretch | undefined {
  if (!node) return undefined;
  const origin = reader.origin(node);
  if (node.whole) return { kind: 'all', origin };
  if (node.first !== undefined) {
    const first = reader.count(node, 'first', 'panel number');
    const last = node.last === undefined ? first : reader.count(node, 'last', 'panel number');
    const run = lowerRun(reader, node.run);
    return first && last && run && { kind: 'panels', first, last, run, origin };
  }
  if (node.run) {
    const run = lowerRun(reader, node.run);
    return run && { kind: 'run', run, origin };
  }
  const span = reader.range(node, 'length', 'stretch', chainage);
  return span && { kind: 'chainage', ...span, origin };
}

/** Panels that do not lie side by side are a stretch each: `panels 1, 9 and 10 of run 3`. */
export function lowerStretches(
  reader: Reader,
  node: ast.Stretch | undefined,
): readonly (Stretch | undefined)[] {
  const stretch = lowerStretch(reader, node);
  if (!node || !stretch || stretch.kind !== 'panels') return [stretch];
  const more = node.more.map((span): Stretch | undefined => {
    const first = reader.count(span, 'first', 'panel number');
    const last = span.last === undefined ? first : reader.count(span, 'last', 'panel number');
    return first && last && { ...stretch, first, last, origin: reader.origin(span) };
  });
  return [stretch, ...more];
}

/** Panels of one run; undefined where anything else is named. */
export function lowerPanels(reader: Reader, node: ast.Stretch | undefined): PanelUse | undefined {
  const stretch = lowerStretch(reader, node);
  return stretch?.kind === 'panels' ? stretch : undefined;
}

export function lowerRun(reader: Reader, node: ast.RunName | undefined): RunUse | undefined {
  if (!node) return undefined;
  if (node.number !== undefined) {
    const number = reader.count(node, 'number', 'run number');
    return number && { by: 'number', number };
  }
  const use = reader.use(node, 'break');
  const other = reader.use(node, 'other');
  if (node.other) return use && other && { by: 'breaks', break: use, other };
  return use && { by: 'break', side: node.side === 'below' ? 'below' : 'above', break: use };
}
