// Merges two changes of one text by what they say: blocks and facts by identity, not by line. Two inspections added to one file
// meet nowhere; one fact changed on both sides is a conflict, shown between the usual markers around that fact alone. No
// reading is lost or doubled: whatever is not certain (a text that does not parse, a block that says a thing twice, a frame
// that others rest on) stands whole between markers, and the result is held against its own reckoning before it is given out.

import type { BlockKind } from '../domain/model/ledger.js';
import { blocksOf, type TextBlock, type TextFact } from './blocks.js';
import { hasConflict } from './conflict.js';

export interface MergedTexts {
  readonly text: string;
  /** How many conflicts stand in it. */
  readonly conflicts: number;
}

/** What the two sides and their common ancestor are called in the markers. */
export interface MergeLabels {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

const usualLabels: MergeLabels = { base: 'base', ours: 'ours', theirs: 'theirs' };

export function mergeTexts(
  base: string,
  ours: string,
  theirs: string,
  labels: MergeLabels = usualLabels,
): MergedTexts {
  if (ours === theirs || theirs === base) return { text: ours, conflicts: 0 };
  if (ours === base) return { text: theirs, conflicts: 0 };
  const eol = ours.includes('\r\n') ? '\r\n' : '\n';
  const [b, o, t] = [inLines(base, eol), inLines(ours, eol), inLines(theirs, eol)];
  const [baseTree, ourTree, theirTree] = [b, o, t].map((text) =>
    hasConflict(text) ? undefined : treeOf(text),
  );
  const whole = (): MergedTexts => ({ text: marked(b, o, t, labels, eol), conflicts: 1 });
  if (!baseTree || !ourTree || !theirTree) return whole();
  const merge: Merge = { labels, eol, conflicts: 0 };
  const merged = mergeTrees(baseTree, ourTree, theirTree, merge);
  if (merged === undefined) return whole();
  if (merge.conflicts === 0 && !isAsReckoned(merged, b, o, t)) return whole();
  return { text: merged, conflicts: merge.conflicts };
}

interface Merge {
  readonly labels: MergeLabels;
  readonly eol: string;
  conflicts: number;
}

/** A stretch of text that is one fact or one block with what leads it in; all of them in a row are the text. */
interface Unit {
  readonly key: string;
  /** Blank lines and comments before it. */
  readonly lead: string;
  readonly body: string;
  /** The rest of its last line: a comment behind it, the line break. */
  readonly trail: string;
  /** Facts that belong together in their order: one of them changed on each side is a conflict of all. */
  readonly group: string | undefined;
  /** Of a block with braces. */
  readonly inside?: Inside;
}

interface Inside {
  readonly kind: BlockKind;
  /** Up to the opening brace, with the rest of its line. */
  readonly head: string;
  readonly facts: readonly Unit[];
  /** From behind the last fact to the closing brace. */
  readonly foot: string;
}

interface Tree {
  readonly units: readonly Unit[];
  /** Comments and blank lines behind the last block. */
  readonly end: string;
}

function treeOf(text: string): Tree | undefined {
  const blocks = blocksOf(text);
  if (!blocks) return undefined;
  const units: Unit[] = [];
  let at = 0;
  for (const block of blocks) {
    const stop = endOfLine(text, block.end);
    units.push({
      key: block.identity,
      lead: text.slice(at, block.start),
      body: text.slice(block.start, block.end),
      trail: text.slice(block.end, stop),
      group: undefined,
      ...(block.open < block.end ? { inside: insideOf(text, block) } : {}),
    });
    at = stop;
  }
  return { units: numbered(units), end: text.slice(at) };
}

function insideOf(text: string, block: TextBlock): Inside {
  const opened = Math.min(endOfLine(text, block.open), block.facts[0]?.start ?? block.close);
  let at = opened;
  const facts = block.facts.map((fact): Unit => {
    const next = block.facts.find(({ start }) => start >= fact.end)?.start ?? block.close;
    const stop = Math.min(endOfLine(text, fact.end), next);
    const unit = {
      key: fact.identity,
      lead: text.slice(at, fact.start),
      body: text.slice(fact.start, fact.end),
      trail: text.slice(fact.end, stop),
      group: groupOf(fact),
    };
    at = stop;
    return unit;
  });
  return {
    kind: block.kind,
    head: text.slice(block.start, opened),
    facts: numbered(facts),
    foot: text.slice(at, block.end),
  };
}

/** Layers count from the screw side and sections from the tail: their order says something. */
function groupOf({ type }: TextFact): string | undefined {
  return type === 'Layer' || type === 'Section' ? type : undefined;
}

/** A second block or fact of one identity is told apart by its number, and all of them belong together. */
function numbered(units: readonly Unit[]): readonly Unit[] {
  const counts = new Map<string, number>();
  for (const { key } of units) counts.set(key, (counts.get(key) ?? 0) + 1);
  const seen = new Map<string, number>();
  return units.map((unit) => {
    if ((counts.get(unit.key) ?? 0) < 2) return unit;
    const count = (seen.get(unit.key) ?? 0) + 1;
    seen.set(unit.key, count);
    return { ...unit, key: `${unit.key}\n${count}`, group: unit.key };
  });
}

/** Behind the line break that ends the line, where only blanks and a comment stand in between; else where it is. */
function endOfLine(text: string, from: number): number {
  const rest = /^[ \t]*(\/\/[^\r\n]*|\/\*[^\r\n]*?\*\/[ \t]*)?(\r\n|\n|$)/.exec(
    text.slice(from, from + 2000),
  );
  return rest ? from + rest[0].length : from;
}

function mergeTrees(base: Tree, ours: Tree, theirs: Tree, merge: Merge): string | undefined {
  const units = mergeUnits(base.units, ours.units, theirs.units, merge);
  const end = oneOf(base.end, ours.end, theirs.end);
  // Two sides that wrote different remarks at the end keep both.
  const last = end ?? `${ours.end}${theirs.end}`;
  return units === undefined ? undefined : joined([...units, last], merge.eol);
}

/** The text of all units in their order; undefined where that cannot be said without doubt. */
function mergeUnits(
  base: readonly Unit[],
  ours: readonly Unit[],
  theirs: readonly Unit[],
  merge: Merge,
): readonly string[] | undefined {
  if (groupsClash(base, ours, theirs)) return undefined;
  const byKey = (units: readonly Unit[]): Units => new Map(units.map((unit) => [unit.key, unit]));
  const [b, o, t] = [byKey(base), byKey(ours), byKey(theirs)];
  const texts: string[] = [];
  for (const key of inOrder(b, ours, theirs)) {
    const text = mergeUnit(b.get(key), o.get(key), t.get(key), merge);
    if (text === undefined) return undefined;
    if (text !== '') texts.push(text);
  }
  return texts;
}

type Units = ReadonlyMap<string, Unit>;

/** Both sides changed what belongs together, and not alike. */
function groupsClash(base: readonly Unit[], ours: readonly Unit[], theirs: readonly Unit[]): boolean {
  const groups = new Set([...base, ...ours, ...theirs].flatMap(({ group }) => group ?? []));
  const of = (units: readonly Unit[], group: string): string =>
    units
      .filter((unit) => unit.group === group || unit.key === group)
      .map(({ body }) => bare(body))
      .join('\n');
  return [...groups].some(
    (group) => oneOf(of(base, group), of(ours, group), of(theirs, group)) === undefined,
  );
}

/** Our order; what only they have stands behind what stood before it with them. */
function inOrder(base: Units, ours: readonly Unit[], theirs: readonly Unit[]): readonly string[] {
  const order = ours.map(({ key }) => key);
  const there = new Set(order);
  let before: string | undefined;
  for (const { key } of theirs) {
    if (!there.has(key)) {
      order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, key);
      there.add(key);
    }
    before = key;
  }
  return [...order, ...[...base.keys()].filter((key) => !there.has(key))];
}

/** Its text, empty where it is gone; undefined where the block cannot be merged and no marker can be put. */
function mergeUnit(
  base: Unit | undefined,
  ours: Unit | undefined,
  theirs: Unit | undefined,
  merge: Merge,
): string | undefined {
  const [b, o, t] = [textOf(base), textOf(ours), textOf(theirs)];
  const plain = oneOf(b, o, t);
  if (plain !== undefined) return plain;
  if (ours?.inside && theirs?.inside) {
    const inside = mergeInside(base, ours, theirs, merge);
    if (inside !== undefined) return inside;
  } else if (ours && theirs) {
    const parts = [
      oneOf(base?.lead ?? '', ours.lead, theirs.lead),
      oneOf(base?.body ?? '', ours.body, theirs.body),
      oneOf(base?.trail ?? '', ours.trail, theirs.trail),
    ];
    if (parts.every((part) => part !== undefined)) return parts.join('');
  }
  merge.conflicts++;
  return marked(b, o, t, merge.labels, merge.eol);
}

function textOf(unit: Unit | undefined): string {
  return unit ? unit.lead + unit.body + unit.trail : '';
}

function mergeInside(base: Unit | undefined, ours: Unit, theirs: Unit, merge: Merge): string | undefined {
  const [b, o, t] = [base?.inside, ours.inside, theirs.inside];
  if (!o || !t) return undefined;
  const isFrame = ({ key }: { readonly key: string }): boolean =>
    key === 'view' || key === 'gauge' || key === 'measured from';
  const frame = (unit: Inside | undefined): readonly string[] =>
    (unit?.facts ?? []).filter(isFrame).map(({ body }) => bare(body));
  const readings = (unit: Inside | undefined): string =>
    (unit?.facts ?? [])
      .filter((fact) => !isFrame(fact))
      .map(({ body }) => bare(body))
      .sort()
      .join('\n');
  // A reading that one side wrote under a view, an end or a gauge that the other side changed would say something else.
  if (o.kind === 'inspection') {
    const [fb, fo, ft] = [b, o, t].map((unit) => frame(unit).join('\n'));
    const [rb, ro, rt] = [b, o, t].map(readings);
    if ((fo !== fb && rt !== rb && ft !== fo) || (ft !== fb && ro !== rb && ft !== fo)) return undefined;
  }
  const lead = oneOf(base?.lead ?? '', ours.lead, theirs.lead);
  const head = oneOf(b?.head ?? '', o.head, t.head);
  const foot = oneOf(b?.foot ?? '', o.foot, t.foot);
  const trail = oneOf(base?.trail ?? '', ours.trail, theirs.trail);
  if (lead === undefined || head === undefined || foot === undefined || trail === undefined) return undefined;
  const before = merge.conflicts;
  const facts = mergeUnits(b?.facts ?? [], o.facts, t.facts, merge);
  if (facts === undefined) {
    merge.conflicts = before;
    return undefined;
  }
  return joined([lead + head, ...facts, foot + trail], merge.eol);
}

/** The one that changed, or either where both changed alike, blanks aside; undefined where they differ. */
function oneOf(base: string, ours: string, theirs: string): string | undefined {
  if (ours === theirs || theirs === base) return ours;
  if (ours === base) return theirs;
  if (bare(ours) === bare(theirs)) return ours;
  if (bare(ours) === bare(base)) return theirs;
  return bare(theirs) === bare(base) ? ours : undefined;
}

/** Blanks aside; quoted texts stay as they are. */
function bare(text: string): string {
  return text.replace(/("[^"\r\n]*")|\s+/g, (_, quoted: string | undefined) => quoted ?? ' ').trim();
}

/** Pieces one behind the other; one that does not end its line is given a line break. */
function joined(pieces: readonly string[], eol: string): string {
  return pieces.reduce(
    (text, piece) => (text === '' || piece === '' || text.endsWith('\n') ? text + piece : text + eol + piece),
    '',
  );
}

function marked(base: string, ours: string, theirs: string, labels: MergeLabels, eol: string): string {
  const part = (text: string): string => (text === '' || text.endsWith('\n') ? text : text + eol);
  return (
    `<<<<<<< ${labels.ours}${eol}${part(ours)}` +
    `||||||| ${labels.base}${eol}${part(base)}` +
    `=======${eol}${part(theirs)}` +
    `>>>>>>> ${labels.theirs}${eol}`
  );
}

function inLines(text: string, eol: string): string {
  return text.replace(/\r\n|\n/g, eol);
}

/** A second road: what must stand there follows from the facts of the three texts alone, without any order or layout. */
function isAsReckoned(merged: string, base: string, ours: string, theirs: string): boolean {
  const [m, b, o, t] = [merged, base, ours, theirs].map(saidIn);
  if (!m || !b || !o || !t) return false;
  const keys = new Set([...m.keys(), ...b.keys(), ...o.keys(), ...t.keys()]);
  return [...keys].every((key) => {
    const [was, our, their, now] = [b, o, t, m].map((said) => said.get(key) ?? '');
    const expected = our === their || their === was ? our : our === was ? their : undefined;
    return expected === now;
  });
}

/** Every fact of every block with what it says, as often as it is said. */
function saidIn(text: string): ReadonlyMap<string, string> | undefined {
  const blocks = blocksOf(text);
  if (!blocks) return undefined;
  const said = new Map<string, string>();
  const add = (key: string, words: string): void =>
    void said.set(key, [...(said.has(key) ? [said.get(key) ?? ''] : []), words].sort().join('\n'));
  for (const { identity, head, facts } of blocks) {
    add(identity, 'is there');
    for (const fact of [...head, ...facts])
      add(`${identity}\n${fact.identity}`, `${fact.value} ${fact.remark}`);
  }
  return said;
}
