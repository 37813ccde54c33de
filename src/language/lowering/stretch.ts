// A stretch of a conveyor as the author names it; it is turned into chainages by the model (runs.ts).

import type * as ast from '../generated/ast.js';
import type { PanelsFitted } from '../../domain/model/conveyor.js';
import type { PanelUse } from '../../domain/model/records.js';
import type { RunUse, Stretch } from '../../domain/model/stretch.js';
import { chainage, someLength } from './limits.js';
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

/** Undefined where a length cannot be read: the joints behind it would lie elsewhere. */
export function lowerPanelsFitted(reader: Reader, node: ast.PanelsFitted): PanelsFitted | undefined {
  const origin = reader.origin(node);
  const run = lowerRun(reader, node.run);
  const lengths = reader.quantities(node, 'lengths', 'length', 'panel length', someLength);
  const known = lengths.flatMap((length) => length ?? []);
  return run && known.length > 0 && known.length === lengths.length
    ? { run: { kind: 'run', run, origin }, lengths: known, origin }
    : undefined;
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

/**
 * A place that is all in one piece, as one step works along: `panels 1, 2 and 3 to 5 of run 2` are panels 1 to 5; told where some
 * between them are left out.
 */
export function lowerUnbroken(
  reader: Reader,
  node: ast.Stretch | undefined,
  what: string,
): Stretch | undefined {
  const stretches = lowerStretches(reader, node);
  const [stretch] = stretches;
  if (!node || stretches.length < 2 || stretches.includes(undefined)) return stretch;
  const panels = stretches.flatMap((each) => (each?.kind === 'panels' ? [each] : []));
  const sides = panels.toSorted((a, b) => a.first.count - b.first.count);
  const [lowest] = sides;
  const apart = sides.find((each, i) => i > 0 && each.first.count > highest(sides.slice(0, i)).count + 1);
  if (!lowest) return stretch;
  if (!apart) return { ...lowest, last: highest(sides), origin: reader.origin(node) };
  reader.problems.push({
    kind: 'out of range',
    origin: apart.origin,
    text: node.$cstNode?.text ?? '',
    fact: `place of ${what}`,
    range: `panels that lie side by side: ${spanText(apart)} has to have a step of its own`,
  });
  return undefined;
}

type Panels = Extract<Stretch, { kind: 'panels' }>;

function highest(panels: readonly Panels[]): Panels['last'] {
  return panels.map(({ last }) => last).reduce((a, b) => (b.count > a.count ? b : a));
}

function spanText({ first, last }: Panels): string {
  return first.count === last.count ? `panel ${first.count}` : `panels ${first.count} to ${last.count}`;
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
