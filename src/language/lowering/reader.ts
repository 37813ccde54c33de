// Reads single facts off the syntax tree: quantities, counts, dates, clock positions, names. After a slip of the author any
// part of the tree may be missing; then the answer is undefined and, unless the parser has said so already, a problem is kept.

import type { AstNode, CompositeCstNode, CstNode, Reference } from 'langium';
import { AstUtils, GrammarAST } from 'langium';
import type { Origin } from '../../domain/model/origin.js';
import type { Problem } from '../../domain/model/problem.js';
import type { PhotoUse } from '../../domain/model/records.js';
import type {
  NameUse,
  Range,
  Stated,
  StatedClock,
  StatedCount,
  StatedDay,
  Toleranced,
} from '../../domain/model/stated.js';
import { formatDay } from '../../domain/units/calendar.js';
import { parseClock, parseTimeOfDay, proposeClock, proposeTimeOfDay } from '../../domain/units/clock.js';
import type { Dimension } from '../../domain/units/dimension.js';
import { parseQuantity, type Misread } from '../../domain/units/parse.js';
import { readDay } from './days.js';
import { usual, type Limit } from './limits.js';

export interface Reader {
  readonly source: number;
  readonly problems: Problem[];
  /** The whole node, or the file's start where the parser kept no place. */
  origin(node: AstNode): Origin;
  /** Where a property is written; the whole node where it is not. */
  part(node: AstNode, property: string, index?: number): Origin;
  quantity<D extends Dimension>(
    node: AstNode,
    property: string,
    dimension: D,
    fact: string,
    limit?: Limit,
    index?: number,
  ): Stated<D> | undefined;
  /** The first of several dimensions that the unit fits; the first one is named where none does. */
  quantityOf<D extends Dimension>(
    node: AstNode,
    property: string,
    dimensions: readonly [D, ...D[]],
    fact: string,
  ): Stated<D> | undefined;
  quantities<D extends Dimension>(
    node: AstNode,
    property: string,
    dimension: D,
    fact: string,
    limit?: Limit,
  ): readonly (Stated<D> | undefined)[];
  /** `value` with the tolerance beside it, in the same dimension or as a ratio. */
  toleranced<D extends Dimension>(
    node: AstNode,
    dimension: D,
    fact: string,
    limit?: Limit,
  ): Toleranced<D> | undefined;
  range<D extends Dimension>(node: AstNode, dimension: D, fact: string, limit?: Limit): Range<D> | undefined;
  /** A whole number from `least` (1 where left out) up. */
  count(node: AstNode, property: string, fact: string, least?: 0 | 1): StatedCount | undefined;
  day(node: AstNode, property: string): StatedDay | undefined;
  /** `from` and `to`, the last day included, in the order written. */
  days(node: AstNode): { readonly from: StatedDay; readonly to: StatedDay } | undefined;
  clock(node: AstNode, property: string): StatedClock | undefined;
  timeOfDay(node: AstNode, property: string): StatedClock | undefined;
  name(node: AstNode, property: string): NameUse | undefined;
  /** `photo "…"` on the line of something else. */
  photo(node: AstNode): PhotoUse | undefined;
  /** A cross-reference, as the name written; it is resolved when the texts are put together. */
  use(node: AstNode, property: string): NameUse | undefined;
  uses(node: AstNode, property: string): readonly NameUse[];
}

export function createReader(source: number, problems: Problem[]): Reader {
  const places = {
    source,
    problems,
    origin: (node: AstNode): Origin => placeOf(source, node.$cstNode),
    part: (node: AstNode, property: string, index = 0): Origin =>
      placeOf(source, partOf(node, property, index) ?? node.$cstNode),
  };
  return { ...places, ...quantities(places), ...datesAndClocks(places), ...names(places) };
}

type Places = Pick<Reader, 'source' | 'problems' | 'origin' | 'part'>;

function quantities({
  problems,
  part,
}: Places): Pick<Reader, 'quantity' | 'quantityOf' | 'quantities' | 'toleranced' | 'range' | 'count'> {
  const quantity: Reader['quantity'] = (node, property, dimension, fact, limit = usual[dimension], index) => {
    const text = statedText(node, property, index);
    if (text === undefined) return undefined;
    const parsed = parseQuantity(text, dimension);
    const place = part(node, property, index);
    if (!parsed.ok) {
      problems.push(misread(parsed, text, dimension, fact, place));
      return undefined;
    }
    const { value } = parsed.quantity;
    if (value < limit.from || value > limit.to) {
      problems.push({ kind: 'out of range', origin: place, text, fact, range: limit.range });
      return undefined;
    }
    return { ...parsed.quantity, origin: place };
  };
  return {
    quantity,
    quantityOf(node, property, dimensions, fact) {
      const text = statedText(node, property);
      const fitting =
        text === undefined ? undefined : dimensions.find((dimension) => parseQuantity(text, dimension).ok);
      return quantity(node, property, fitting ?? dimensions[0], fact);
    },
    quantities(node, property, dimension, fact, limit) {
      return listOf(node, property).map((_, index) =>
        quantity(node, property, dimension, fact, limit, index),
      );
    },
    toleranced(node, dimension, fact, limit) {
      const nominal = quantity(node, 'value', dimension, fact, limit);
      if (!nominal) return undefined;
      const text = textOf(node, 'tolerance');
      if (text === undefined) return { nominal };
      const asRatio =
        parseQuantity(text, 'ratio').ok && !parseQuantity(text, dimension).ok && /%\s*$/.test(text);
      const tolerance = asRatio
        ? quantity(node, 'tolerance', 'ratio', `tolerance of ${fact}`)
        : quantity(node, 'tolerance', dimension, `tolerance of ${fact}`);
      return tolerance ? { nominal, tolerance } : { nominal };
    },
    range(node, dimension, fact, limit) {
      const from = quantity(node, 'from', dimension, fact, limit);
      const to = textOf(node, 'to') === undefined ? from : quantity(node, 'to', dimension, fact, limit);
      return from && to && { from, to };
    },
    count(node, property, fact, least = 1) {
      const text = textOf(node, property);
      if (text === undefined) return undefined;
      const origin = part(node, property);
      const count = Number(text);
      if (/^\d+$/.test(text.trim()) && count >= least && count <= 100_000) return { count, origin };
      const range = `a whole number from ${least} up`;
      problems.push({ kind: 'out of range', origin, text, fact, range });
      return undefined;
    },
  };
}

function datesAndClocks({ problems, part }: Places): Pick<Reader, 'day' | 'days' | 'clock' | 'timeOfDay'> {
  const day: Reader['day'] = (node, property) => {
    const text = textOf(node, property);
    if (text === undefined) return undefined;
    const origin = part(node, property);
    const read = readDay(text);
    if (read.ok) return { day: read.day, origin };
    if (read.why === 'no such date') problems.push({ kind: 'no such date', origin, text });
    else
      problems.push({
        kind: 'date form',
        origin,
        text,
        ...(read.certain === undefined ? {} : { corrected: formatDay(read.certain) }),
        ...(read.either ? { readings: [formatDay(read.either[0]), formatDay(read.either[1])] as const } : {}),
      });
    return undefined;
  };
  const clockFace =
    (parse: (text: string) => number | undefined, propose: (text: string) => string | undefined) =>
    (node: AstNode, property: string): StatedClock | undefined => {
      const text = textOf(node, property);
      if (text === undefined) return undefined;
      const origin = part(node, property);
      const hours = parse(text);
      if (hours !== undefined) return { hours, text, origin };
      const corrected = propose(text);
      problems.push({ kind: 'clock form', origin, text, ...(corrected === undefined ? {} : { corrected }) });
      return undefined;
    };
  return {
    day,
    days(node) {
      const from = day(node, 'from');
      const to = day(node, 'to');
      return from && to && { from, to };
    },
    clock: clockFace(parseClock, proposeClock),
    timeOfDay: clockFace(parseTimeOfDay, proposeTimeOfDay),
  };
}

function names({ source, part }: Places): Pick<Reader, 'name' | 'photo' | 'use' | 'uses'> {
  const asWritten = (reference: Reference, node: AstNode): NameUse => ({
    name: reference.$refText,
    origin: placeOf(source, reference.$refNode ?? node.$cstNode),
  });
  return {
    name(node, property) {
      const name = textOf(node, property);
      return name === undefined ? undefined : { name, origin: part(node, property) };
    },
    photo(node) {
      const path = textOf(node, 'photo');
      return path === undefined ? undefined : { path, origin: part(node, 'photo') };
    },
    use(node, property) {
      const reference = (node as unknown as Record<string, unknown>)[property];
      return isReference(reference) ? asWritten(reference, node) : undefined;
    },
    uses(node, property) {
      return listOf(node, property)
        .filter(isReference)
        .map((reference) => asWritten(reference, node));
    },
  };
}

/** A quantity that could not be read, as a problem. */
export function misread(
  parsed: Misread,
  text: string,
  expected: Dimension,
  fact: string,
  origin: Origin,
): Problem {
  switch (parsed.problem) {
    case 'missing unit':
      return { kind: 'missing unit', origin, text, expected, fact };
    case 'unknown unit':
      return { kind: 'unknown unit', origin, text, unit: parsed.unit ?? '', expected, fact };
    case 'wrong dimension':
      return parsed.found
        ? { kind: 'wrong dimension', origin, text, found: parsed.found, expected, fact }
        : { kind: 'not a number', origin, text, fact };
    case 'comma decimal':
      return {
        kind: 'comma decimal',
        origin,
        text,
        ...(parsed.corrected === undefined ? {} : { corrected: parsed.corrected }),
        ...(parsed.readings ? { readings: parsed.readings } : {}),
      };
    case 'not a number':
      return { kind: 'not a number', origin, text, fact };
  }
}

/** A keyword of several words, or any other word, with single blanks between. */
export function wordsOf(node: AstNode, property: string): string | undefined {
  return textOf(node, property)?.replace(/\s+/g, ' ');
}

export function textOf(node: AstNode, property: string, index?: number): string | undefined {
  // The tree is the parser's own; after a slip any property may be missing, so none is trusted to be there.
  const value = (node as unknown as Record<string, unknown>)[property];
  const item: unknown = index === undefined || !Array.isArray(value) ? value : value[index];
  return typeof item === 'string' ? item : undefined;
}

/** Said in one unit, behind the second: `from 8 to 10.5 m`, `flight 80 x 25 mm`. */
const shares: Readonly<Record<string, string>> = { from: 'to', at: 'to', old: 'new', width: 'thickness' };

/** As written; a bare number that shares its unit with the one behind it has that unit. */
export function statedText(node: AstNode, property: string, index?: number): string | undefined {
  const text = textOf(node, property, index);
  const other = shares[property];
  if (text === undefined || other === undefined || !/^[+-]?\d+([.,]\d+)?$/.test(text)) return text;
  const unit = /^[+-]?\d+(?:[.,]\d+)?\s*(\p{L}.*)$/u.exec(textOf(node, other) ?? '')?.[1];
  return unit === undefined ? text : `${text} ${unit}`;
}

function listOf(node: AstNode, property: string): readonly unknown[] {
  // As above: read without trust in the generated type.
  const value = (node as unknown as Record<string, unknown>)[property];
  return Array.isArray(value) ? value : [];
}

function isReference(value: unknown): value is Reference {
  return typeof value === 'object' && value !== null && '$refText' in value && value.$refText !== '';
}

export function placeOf(source: number, node: CstNode | undefined): Origin {
  return node ? { source, start: node.offset, end: node.end } : { source, start: 0, end: 0 };
}

const features = new WeakMap<object, string>();

/** The piece of text that a property was read from. Only direct children are looked at: a long block stays cheap. */
export function partOf(node: AstNode, property: string, index = 0): CstNode | undefined {
  let left = index;
  for (const child of childrenOf(node)) {
    if (child.grammarSource && featureOf(child.grammarSource) === property && left-- === 0) return child;
  }
  return undefined;
}

/** The first child that is this keyword. */
export function keywordOf(node: AstNode, keyword: string): CstNode | undefined {
  return childrenOf(node).find(
    (child) => GrammarAST.isKeyword(child.grammarSource) && child.grammarSource.value === keyword,
  );
}

function childrenOf(node: AstNode): readonly CstNode[] {
  let content = contentOf(node.$cstNode);
  // A rule that only hands on to another (Block to Plant) wraps its node once more.
  for (
    let [only] = content;
    content.length === 1 &&
    only?.grammarSource &&
    contentOf(only).length > 0 &&
    featureOf(only.grammarSource) === '';
    [only] = content
  ) {
    content = contentOf(only);
  }
  return content;
}

function contentOf(node: CstNode | undefined): readonly CstNode[] {
  return node && 'content' in node ? (node as CompositeCstNode).content : []; // only composites have content
}

function featureOf(source: AstNode): string {
  const known = features.get(source);
  if (known !== undefined) return known;
  const feature = AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature ?? '';
  features.set(source, feature);
  return feature;
}
