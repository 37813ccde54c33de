// Cuts a text into its blocks and their facts, each with an identity that stays while its value is edited: a reading goes by
// its point, a measure by its keyword, a record by its conveyor and day. What tells two facts apart is read off the syntax
// tree; a text that does not parse has no blocks, because half of them would look like facts that somebody took out.

import type { AstNode } from 'langium';
import type { BlockKind } from '../domain/model/ledger.js';
import { parseClock } from '../domain/units/clock.js';
import { parseQuantity } from '../domain/units/parse.js';
import { findUnit } from '../domain/units/unit-table.js';
import { piecesOf, type TextPiece } from './formatting/pieces.js';
import { parseText } from './parse.js';

export interface TextFact {
  readonly identity: string;
  /** Name of the grammar's rule: `Reading`, `Layer`. */
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly words: string;
  readonly value: string;
  readonly remark: string;
}

export interface TextBlock {
  readonly kind: BlockKind;
  readonly identity: string;
  readonly name: string;
  /** As written; only records have one. */
  readonly date?: string;
  readonly start: number;
  readonly end: number;
  /** Where the opening brace ends, and where the closing one stands; equal to `end` for a record of one line. */
  readonly open: number;
  readonly close: number;
  /** Up to the brace, or the whole record of one line, as facts of their own: meter, tonnes, title. */
  readonly head: readonly TextFact[];
  readonly facts: readonly TextFact[];
}

const kinds: Readonly<Record<string, BlockKind>> = {
  Plant: 'plant',
  Liner: 'liner',
  Screw: 'screw',
  Conveyor: 'conveyor',
  Inspection: 'inspection',
  Correction: 'correction',
  Reline: 'reline',
  PanelsMoved: 'panels moved',
  ScrewChange: 'screw change',
  MeterChange: 'meter change',
  DutyChange: 'duty',
  DriveChange: 'drive change',
  Patch: 'patch',
  Serviced: 'serviced',
  Job: 'job',
};

/** The blocks of a text in order; undefined where it does not parse. */
export function blocksOf(text: string): readonly TextBlock[] | undefined {
  const { root, slips } = parseText(text);
  if (slips.length > 0) return undefined;
  const tokens = piecesOf(text).filter(({ kind }) => kind === 'token');
  const within = walker(tokens);
  const blocks = root.blocks.flatMap((node) => blockOf(node, within) ?? []);
  // A kind that is not known here must not look like one that is gone.
  return blocks.length === root.blocks.length ? blocks : undefined;
}

/** The same of words by themselves, as `TextFact.value` has it. */
export function valueOfWords(words: string): string {
  return valueOf(piecesOf(words));
}

type Within = (start: number, end: number) => readonly TextPiece[];

/** Tokens between two offsets, found by halving. */
function walker(tokens: readonly TextPiece[]): Within {
  const first = (offset: number): number => {
    let low = 0;
    let high = tokens.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((tokens[middle]?.start ?? Infinity) < offset) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return (start, end) => tokens.slice(first(start), first(end));
}

function blockOf(node: AstNode, within: Within): TextBlock | undefined {
  const kind = kinds[node.$type];
  const place = node.$cstNode;
  if (!kind || !place) return undefined;
  const tokens = within(place.offset, place.end);
  const brace = tokens.findIndex(({ text }) => text === '{');
  const open = brace < 0 ? place.end : (tokens[brace]?.end ?? place.end);
  const close = brace < 0 ? place.end : (tokens.at(-1)?.start ?? place.end);
  const date = textOf(node, 'date');
  const name = textOf(node, 'name') ?? nameUsed(node, 'conveyor') ?? '';
  const headTokens = tokens.slice(0, brace < 0 ? tokens.length : brace);
  return {
    kind,
    // Two patches of one day go by where they lie, two corrections by what they correct.
    identity: [
      kind,
      name,
      ...(date === undefined ? [] : [date]),
      ...(kind === 'patch' ? [canonical(textOf(node, 'from'))] : []),
      ...(kind === 'serviced'
        ? ['part', 'work', 'ended', 'point', 'panel', 'end', 'at'].flatMap((key) => valueAt(node, key) ?? [])
        : []),
      ...(kind === 'correction' ? [spotIdentity(node), textOf(node, 'read') ?? ''] : []),
    ].join(' '),
    name,
    ...(date === undefined ? {} : { date }),
    start: place.offset,
    end: place.end,
    open,
    close,
    head: headFacts(kind, headTokens),
    facts: listOf(node, 'facts', 'rows').flatMap((fact) => {
      const at = fact.$cstNode;
      return at ? [factOf(fact, within(at.offset, at.end))] : [];
    }),
  };
}

const inOneLine: ReadonlySet<BlockKind> = new Set([
  'meter change',
  'duty',
  'drive change',
  'patch',
  'correction',
  'serviced',
]);

/** What stands in the head behind the names: `meter`, `tonnes`, `title`; of a record of one line all that it says. */
function headFacts(kind: BlockKind, tokens: readonly TextPiece[]): readonly TextFact[] {
  if (inOneLine.has(kind)) {
    const date = tokens.findIndex(({ type }) => type === 'DATE');
    const rest = tokens.slice(date + 1);
    return rest.length === 0 ? [] : [madeOf(kind === 'meter change' ? 'meters' : kind, 'Head', rest)];
  }
  const facts: TextFact[] = [];
  for (const [i, token] of tokens.entries()) {
    if (token.type === 'STRING') facts.push(madeOf('title', 'Head', [token]));
    if (token.text === 'meter' || token.text === 'tonnes')
      facts.push(madeOf(token.text, 'Head', tokens.slice(i, i + (isDoubt(tokens[i + 2]) ? 4 : 2))));
  }
  return facts;
}

/** `meter 19900 h ± 60 h`: how far a reading may be off is of the reading. */
function isDoubt(token: TextPiece | undefined): boolean {
  return token?.text === '±' || token?.text === '+/-';
}

function factOf(node: AstNode, tokens: readonly TextPiece[]): TextFact {
  return madeOf(identityOf(node, tokens), node.$type, tokens);
}

function madeOf(identity: string, type: string, tokens: readonly TextPiece[]): TextFact {
  return {
    identity,
    type,
    start: tokens[0]?.start ?? 0,
    end: tokens.at(-1)?.end ?? 0,
    words: wordsOf(tokens),
    value: valueOf(tokens),
    remark: tokens
      .filter(({ type: kind }) => kind === 'STRING')
      .map(({ text }) => text)
      .join(' '),
  };
}

/** Facts of which a block may hold many without a name: they are what they say. */
const saidInFull = new Set([
  'Finding',
  'WorkRow',
  'Photo',
  'Tool',
  'Scope',
  'JobScope',
  'Shift',
  'JobStock',
  'JobOffcut',
  'Offcut',
]);

const seenAt = ['point', 'panel', 'end', 'at'];

/** Facts that go by a measure in them, behind their keyword: where on the conveyor, or which of what. */
const goesBy: Readonly<Record<string, readonly string[]>> = {
  HoldDownGap: seenAt,
  FlightReading: seenAt,
  PlateReading: [...seenAt, 'clock'],
  WornWidth: seenAt,
  Rest: ['at'],
  JobCrane: ['crane', 'at'],
  ConveyorLiner: ['from', 'run'],
  Condition: ['answer', 'kind', 'aspect', ...seenAt, 'clock', 'side'],
  NotLooked: seenAt,
  OldPanel: ['point', 'panel', 'chainage', 'clock'],
  MovedThickness: ['chainage', 'clock'],
  PanelMove: ['panel'],
  PanelsFitted: ['run'],
  PanelThickness: ['stretch'],
  ScrewPitch: ['from'],
  ShelfStock: ['liner', 'item', 'length', 'date'],
  ShelfPart: ['part', 'what', 'conveyor', 'date'],
  OrderedStock: ['liner', 'item', 'length', 'arrives'],
  OrderedPart: ['part', 'what', 'conveyor', 'arrives'],
  LeadTime: ['item'],
  ExpeditedLeadTime: ['item'],
  Cost: ['item'],
  Threshold: ['code'],
  Spare: ['item'],
  UnitTime: ['item'],
};

/** Parts that may go without a name and then go by their place. */
const placed = new Set(['HoldDown', 'Brace', 'Cover']);

function identityOf(node: AstNode, tokens: readonly TextPiece[]): string {
  const keyword = tokens[0]?.text.replace(/\s+/g, ' ') ?? '';
  if (saidInFull.has(node.$type)) return `${valueOf(tokens)} ${quoted(tokens)}`.trim();
  if (node.$type === 'Reading' || node.$type === 'AsFitted') return spotIdentity(node);
  const by = goesBy[node.$type];
  if (by)
    return [
      ...(node.$type === 'Condition' ? [] : [keyword]),
      ...by.flatMap((key) => valueAt(node, key) ?? []),
    ].join(' ');
  const name = textOf(node, 'name');
  if (name !== undefined && node.$type !== 'Access') return `${keyword} ${name}`;
  if (name !== undefined) return `${keyword} ${name} ${canonical(textOf(node, 'from'))}`;
  if (placed.has(node.$type))
    return [keyword, ...['step', 'from', 'to'].flatMap((key) => valueAt(node, key) ?? [])].join(' ');
  if (node.$type === 'ScrewKind') return 'kind';
  if (node.$type === 'JobWindow') return 'window';
  return textOf(node, 'key') ?? keyword;
}

/** A spot that a reading is of: its point, else chainage and clock. */
function spotIdentity(node: AstNode): string {
  const of = textOf(node, 'of');
  if (of !== undefined) {
    const where = [...seenAt, 'clock'].flatMap((key) => valueAt(node, key) ?? []).join(' ');
    return [[of, textOf(node, 'which')].filter(Boolean).join(' '), where].filter(Boolean).join(' at ');
  }
  const panel = valueAt(node, 'panel');
  if (panel !== undefined) return `${panel} ${clock(textOf(node, 'clock'))}`;
  const seen = valueAt(node, 'seen');
  if (seen !== undefined) return seen;
  return (
    textOf(node, 'point') ??
    `at ${canonical(textOf(node, 'chainage') ?? textOf(node, 'from'))} clock ${clock(textOf(node, 'clock'))}`
  );
}

function valueAt(node: AstNode, key: string): string | undefined {
  const value: unknown = Reflect.get(node, key);
  if (typeof value === 'string') return canonical(value);
  if (typeof value !== 'object' || value === null) return undefined;
  if ('$refText' in value) return String(value.$refText);
  return '$cstNode' in value ? wordsOfNode(value as AstNode) : undefined; // a node of the tree carries its place
}

function wordsOfNode(node: AstNode): string {
  return (node.$cstNode?.text ?? '').replace(/\s+/g, ' ');
}

function textOf(node: AstNode, key: string): string | undefined {
  const value: unknown = Reflect.get(node, key);
  return typeof value === 'string' ? value : undefined;
}

function nameUsed(node: AstNode, key: string): string | undefined {
  const value: unknown = Reflect.get(node, key);
  return typeof value === 'object' && value !== null && '$refText' in value
    ? String(value.$refText)
    : undefined;
}

function listOf(node: AstNode, ...keys: readonly string[]): readonly AstNode[] {
  return keys.flatMap((key) => {
    const value: unknown = Reflect.get(node, key);
    return Array.isArray(value) ? (value as AstNode[]) : []; // lists of these names hold nodes, by the grammar
  });
}

function wordsOf(tokens: readonly TextPiece[]): string {
  return tokens
    .map(({ text, type }) => (type === 'STRING' ? text : text.replace(/\s+/g, ' ')))
    .join(' ')
    .replace(/ ([,:])/g, '$1');
}

function quoted(tokens: readonly TextPiece[]): string {
  return tokens
    .filter(({ type }) => type === 'STRING')
    .map(({ text }) => text)
    .join(' ');
}

const spellings: Readonly<Record<string, string>> = { color: 'colour', '+/-': '±' };

function valueOf(tokens: readonly TextPiece[]): string {
  return (
    tokens
      .filter(({ type, kind }) => kind === 'token' && type !== 'STRING')
      // A photograph is named in a quoted text, and changes no number.
      .filter(({ text }) => text !== 'photo')
      .map(({ text, type }) => {
        if (type === 'QUANTITY' || type === 'NUMBER') return canonical(text);
        if (type === 'CLOCK') return clock(text);
        const word = text.replace(/\s+/g, ' ');
        return spellings[word] ?? word;
      })
      .join(' ')
  );
}

const quantity = /^([+-]?(?:\d+[ \t]+)?\d[\d./,eE+-]*?)[ \t]*([A-Za-z%°µμ£$€"].*|1?\/[A-Za-z°].*)$/;

/** A quantity in its base unit, to twelve digits; money and what cannot be read stay as they are. */
function canonical(text: string | undefined): string {
  const plain = (text ?? '').replace(/\s+/g, ' ').trim();
  const [, , unit] = quantity.exec(plain) ?? [];
  const dimension = unit === undefined ? undefined : findUnit(unit)?.unit.dimension;
  if (dimension === undefined || dimension.startsWith('money'))
    return /^[+-]?\d+(\.\d+)?$/.test(plain) ? String(Number(plain)) : plain;
  const read = parseQuantity(plain, dimension);
  return read.ok ? `${Number(read.quantity.value.toPrecision(12))} ${dimension}` : plain;
}

function clock(text: string | undefined): string {
  const hours = parseClock(text ?? '');
  return hours === undefined ? (text ?? '') : `${Number(hours.toPrecision(12))} o'clock`;
}
