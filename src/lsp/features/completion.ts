// What can be typed here: keywords that fit, with their meaning and a snippet; names of the estate; units for the number
// just typed; dates of the newest record. Never today's date: nothing here reads a clock.

import { GrammarAST } from 'langium';
import { CompletionItemKind, InsertTextFormat, type CompletionItem, type CompletionList, type Position, type Range } from 'vscode-languageserver';
import { unitsOf } from '../../domain/units/parse.js';
import { codesLike } from '../../validation/explain.js';
import { ruleOf } from '../../validation/catalogue.js';
import { cursorAt } from '../cursor.js';
import type { Desk } from '../desk.js';
import { dimensionsAt } from '../facts.js';
import { expectedAfter, shortened, subjectOf, surroundingsAt, type Expected, type Surroundings } from '../expected.js';
import type { Declaration, NameKind } from '../names.js';
import { newestRecord } from '../newest-record.js';
import { pointNames } from '../rows.js';
import { makeText, type Text } from '../texts.js';
import { signs, wordOf } from '../vocabulary.js';

export function completion(desk: Desk, text: Text, position: Position): CompletionList {
  const offset = text.offsetAt(position);
  const around = surroundingsAt(text.text, offset);
  if (around.inString) return list([]);
  if (around.inComment) return list(codesInComment(text, offset));
  const line = text.text.slice(around.lineStart, offset);
  const number = /(?:^|[\s±,])[+-]?\d+(?:[.,]\d+)?(?: \d+\/\d+|\/\d+)?[ \t]*([A-Za-z%°µ][\w/%°µ]*)?$/.exec(line);
  const units = number ? unitItems(text, around, line, number[1] ?? '', offset) : [];
  if (units.length > 0 && (number?.[1] !== undefined || /\d$/.test(line))) return list(units);

  const items = [...units];
  for (const { typed, expected } of beginningsOfTyped(around, line)) {
    const range = text.range(offset - typed.length, offset);
    const place: Place = { desk, text, around, line, range, typed, snippets: desk.client.snippets };
    const proposed = expected.flatMap((one) => itemsFor(one, place));
    const fresh = proposed.filter((item) => !items.some((other) => other.label === item.label));
    items.push(...fresh);
  }
  return list(items.map((item, index) => ({ sortText: String(index).padStart(4, '0'), ...item })));
}

interface Place {
  readonly desk: Desk;
  readonly text: Text;
  readonly around: Surroundings;
  readonly line: string;
  readonly range: Range;
  readonly typed: string;
  readonly snippets: boolean;
}

function list(items: CompletionItem[]): CompletionList {
  return { isIncomplete: false, items };
}

/**
 * The words being typed, shortest first. A keyword can have several words (`slide gate`), so the last two or three words
 * of the line are tried as the beginning of one, too.
 */
function beginningsOfTyped(around: Surroundings, line: string): { typed: string; expected: readonly Expected[] }[] {
  const word = /[A-Za-z_][\w-]*$/.exec(line)?.[0] ?? '';
  const found = [{ typed: word, expected: expectedAt(around, line.slice(0, line.length - word.length)) }];
  const several = /(?:^|[\s{])((?:[A-Za-z][\w-]*[ \t]+){1,3}[\w-]*)$/.exec(line)?.[1];
  for (let typed = several; typed; typed = /^\S+[ \t]+(.+)$/.exec(typed)?.[1]) {
    const low = typed.toLowerCase().replace(/[ \t]+/g, ' ');
    if (!low.includes(' ')) break;
    const expected = expectedAt(around, line.slice(0, line.length - typed.length)).filter(
      ({ feature }) => GrammarAST.isKeyword(feature) && feature.value.startsWith(low) && feature.value !== low.trim(),
    );
    if (expected.length > 0) found.push({ typed, expected });
  }
  return found;
}

function expectedAt(around: Surroundings, line: string): readonly Expected[] {
  const all = expectedAfter(shortened(around.blocks, line));
  return line.trim() === '' ? all : all.filter(({ begins }) => !begins);
}

function itemsFor(expected: Expected, place: Place): CompletionItem[] {
  const { feature } = expected;
  if (GrammarAST.isKeyword(feature)) return keywordItem(feature.value, expected, place);
  if (GrammarAST.isCrossReference(feature)) return nameItems(expected, place);
  if (!GrammarAST.isRuleCall(feature)) return [];
  switch (feature.rule.$refText) {
    case 'ID':
      return wordItems(expected, place);
    case 'QUANTITY':
      return expected.rule === 'Quantity' ? valueItems(place) : [];
    case 'DATE':
      return dateItems(place);
    case 'CLOCK':
      return clockItems(place);
    default:
      return [];
  }
}

// ------------------------------------------------------------------------------------------------ keywords

/** Facts that can stand in a block more than once; all others are offered only until they are there. */
const repeatable = new Set([
  'Outage', 'Crew', 'AccessUnit', 'Shift', 'LeadTime', 'Cost', 'UnitTime', 'Layer', 'Section', 'Break', 'HoldDown', 'Brace', 'Cover', 'Access',
  'Isolation', 'Hatch', 'LiftingPoint', 'Point', 'HoldDownGap', 'FlightReading', 'WornWidth', 'MotorCurrent', 'Remark', 'Photo', 'Reading',
  'Scope', 'PanelsFitted', 'Offcut', 'JobScope', 'JobStock', 'JobOffcut', 'Step', 'StepAction',
]);

function keywordItem(keyword: string, expected: Expected, place: Place): CompletionItem[] {
  if (signs.has(keyword) || keyword === ':' || keyword === '+/-' || keyword === 'color') return [];
  if (expected.begins && place.around.blocks.length > 0 && !repeatable.has(expected.rule) && isStated(keyword, place)) return [];
  const word = wordOf(expected.rule, keyword);
  const snippet = place.snippets ? word?.snippet : undefined;
  return [
    {
      label: keyword,
      kind: snippet ? CompletionItemKind.Snippet : CompletionItemKind.Keyword,
      ...(keyword === '±' ? { filterText: '±+-' } : {}),
      ...(word ? { documentation: { kind: 'markdown', value: word.meaning } } : {}),
      ...(snippet ? { detail: preview(snippet), insertTextFormat: InsertTextFormat.Snippet } : {}),
      textEdit: { range: place.range, newText: snippet ?? keyword },
    },
  ];
}

/** True where the block has the fact already, on another line than this one. */
function isStated(keyword: string, { text, around, line }: Place): boolean {
  const block = around.blocks.at(-1);
  if (!block) return false;
  const open = text.text.indexOf('{', block.start);
  const close = text.text.indexOf('\n}', open);
  const here = around.lineStart + line.length;
  const restOfLine = text.text.indexOf('\n', here);
  const others = `${text.text.slice(open + 1, around.lineStart)}\n${restOfLine < 0 ? '' : text.text.slice(restOfLine, close < 0 ? undefined : close)}`;
  return new RegExp(String.raw`^[ \t]*${keyword.split(' ').join('[ \\t]+')}(?![\w-])`, 'm').test(others);
}

function preview(snippet: string): string {
  const plain = snippet.replace(/\$\{\d+\|([^,|}]+)[^}]*\}/g, '$1').replace(/\$\{\d+:?([^}]*)\}/g, '$1').replace(/\$\d/g, '');
  return plain.split('\n')[0] ?? plain;
}

// ------------------------------------------------------------------------------------------------ names

const referred: Readonly<Record<string, NameKind>> = {
  Plant: 'plant', Liner: 'liner', Screw: 'screw', Conveyor: 'conveyor', Outage: 'outage', Crew: 'crew', AccessUnit: 'access unit', Break: 'break', Step: 'step',
};

const icons: Readonly<Partial<Record<NameKind, CompletionItemKind>>> = {
  plant: CompletionItemKind.Module, liner: CompletionItemKind.Class, screw: CompletionItemKind.Class, conveyor: CompletionItemKind.Unit,
  outage: CompletionItemKind.Event, step: CompletionItemKind.Method, layer: CompletionItemKind.Color, point: CompletionItemKind.Property,
};

function nameItems(expected: Expected, place: Place): CompletionItem[] {
  const kind = referred[expected.refersTo ?? ''];
  if (!kind) return [];
  const { desk, text, around } = place;
  const names = desk.names();
  const conveyors = conveyorsHere(place);
  const all = names.declared(kind);
  let fitting: readonly Declaration[] = all;
  if (kind === 'break') fitting = all.filter(({ owner }) => owner && conveyors.includes(owner));
  if (kind === 'outage' || kind === 'crew' || kind === 'access unit') {
    const plants = conveyors.map((conveyor) => names.plantOf(conveyor));
    if (conveyors.length > 0) fitting = all.filter(({ owner }) => plants.includes(owner));
  }
  if (kind === 'step') {
    const start = around.blocks.at(-1)?.start ?? 0;
    const here = text.offsetAt(place.range.start);
    fitting = all.filter((step) => step.text === text && step.start >= start && text.text.slice(start, step.start).split('}').length === 1 && step.start !== here);
  }
  return fitting.map((declaration) => ({
    label: kind === 'conveyor' ? shortestName(desk, declaration) : declaration.name,
    kind: icons[kind] ?? CompletionItemKind.Variable,
    detail: `${kind}${titleOf(declaration)}`,
    textEdit: { range: place.range, newText: kind === 'conveyor' ? shortestName(desk, declaration) : declaration.name },
  }));
}

/** The plant is named only where two plants have a conveyor of this name. */
export function shortestName(desk: Desk, conveyor: Declaration): string {
  const twins = desk.names().declared('conveyor').filter((other) => other.name === conveyor.name);
  const plant = desk.names().plantOf(conveyor);
  return twins.length > 1 && plant ? `${plant.name}.${conveyor.name}` : conveyor.name;
}

function titleOf(declaration: Declaration): string {
  const title = 'title' in declaration.node ? declaration.node.title : undefined;
  return typeof title === 'string' && title !== '' ? `: ${title.replace(/^"|"$/g, '')}` : '';
}

/** Places for a plain word that means something: points, colours, weekdays, materials. */
function wordItems(expected: Expected, place: Place): CompletionItem[] {
  const item = (label: string, kind: CompletionItemKind, detail?: string): CompletionItem => ({
    label, kind, ...(detail ? { detail } : {}), textEdit: { range: place.range, newText: label },
  });
  const names = place.desk.names();
  if (expected.property === 'point' && (expected.rule === 'Reading' || expected.rule === 'AsFitted')) {
    const conveyors = conveyorsHere(place);
    return names
      .declared('point')
      .filter(({ owner }) => owner && conveyors.includes(owner))
      .flatMap((point) => pointNames(point).map((name) => item(name, CompletionItemKind.Property, `point of ${point.owner?.name ?? ''}`)));
  }
  if (expected.property === 'colour') {
    const { date } = subjectOf(place.text.text, place.around);
    const [liner] = conveyorsHere(place).flatMap((conveyor) => names.linersOf(conveyor, date));
    return names
      .declared('layer')
      .filter(({ owner }) => owner === liner)
      .map((layer, index) => item(layer.name, CompletionItemKind.Color, `layer ${index + 1} of ${liner?.name ?? ''}`));
  }
  if (expected.property === 'days') return ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((day) => item(day, CompletionItemKind.EnumMember));
  if (expected.rule === 'Material') return ['PE1000'].map((material) => item(material, CompletionItemKind.Value));
  if (expected.rule === 'Bolt' || expected.rule === 'DrivePlate') return ['M8', 'M10', 'M12', 'M16', 'M20', 'M24'].map((size) => item(size, CompletionItemKind.Value));
  return [];
}

function conveyorsHere({ desk, text, around }: Place): readonly Declaration[] {
  const { conveyor } = subjectOf(text.text, around);
  return conveyor ? desk.names().conveyorOf(conveyor) : [];
}

// ------------------------------------------------------------------------------------------------ values

/** Units for the number before the cursor. */
function unitItems(text: Text, around: Surroundings, line: string, typed: string, offset: number): CompletionItem[] {
  const before = line.slice(0, line.length - typed.length);
  const dimensions = dimensionsOfValue(around, before);
  const blank = /\d$/.test(before) ? ' ' : '';
  return dimensions.flatMap((dimension) =>
    unitsOf(dimension).filter((unit) => unit !== '"').map((unit, index) => ({
      label: unit,
      kind: CompletionItemKind.Unit,
      detail: dimension,
      sortText: `0${String(index).padStart(3, '0')}`,
      filterText: `${blank}${unit}`,
      textEdit: { range: text.range(offset - typed.length, offset), newText: `${blank}${unit}` },
    })),
  );
}

/** Where a number is expected and none is typed: a number to fill in, with the usual units. */
function valueItems(place: Place): CompletionItem[] {
  if (!place.snippets) return [];
  const before = place.line.slice(0, place.line.length - place.typed.length);
  return dimensionsOfValue(place.around, `${before}1`).flatMap((dimension) =>
    unitsOf(dimension).slice(0, 3).map((unit) => ({
      label: `… ${unit}`,
      kind: CompletionItemKind.Value,
      detail: dimension,
      insertTextFormat: InsertTextFormat.Snippet,
      textEdit: { range: place.range, newText: `\${1:0} ${unit}` },
    })),
  );
}

function dimensionsOfValue(around: Surroundings, lineWithNumber: string): ReturnType<typeof dimensionsAt> {
  const head = shortened(around.blocks, lineWithNumber.trimEnd());
  const probe = makeText('probe:', `${head} mm`);
  const cursor = cursorAt(probe, head.length);
  if (!cursor?.property) return [];
  const { node } = cursor;
  return dimensionsAt(cursor.node.$type, cursor.property, {
    $type: node.$type,
    ...('key' in node && typeof node.key === 'string' ? { key: node.key } : {}),
    ...('item' in node && typeof node.item === 'string' ? { item: node.item } : {}),
  });
}

function dateItems(place: Place): CompletionItem[] {
  const { conveyor } = subjectOf(place.text.text, place.around);
  const named = conveyor ?? conveyorBefore(place.line);
  const own = named ? newestRecord(place.desk, named) : undefined;
  const newest = newestRecord(place.desk);
  const dates = [
    ...(own ? [{ date: own.date, detail: `newest record of ${named?.name ?? ''}, meter ${own.meter}` }] : []),
    ...(newest ? [{ date: newest.date, detail: 'newest record of the estate' }] : []),
  ];
  return dates
    .filter(({ date }, index) => dates.findIndex((other) => other.date === date) === index)
    .map(({ date, detail }) => ({ label: date, kind: CompletionItemKind.Constant, detail, textEdit: { range: place.range, newText: date } }));
}

function conveyorBefore(line: string): { plant?: string; name: string } | undefined {
  const name = /(?:inspection|reline|screw change|meter change|duty)[ \t]+([\w.-]+)/.exec(line)?.[1];
  const [first = '', second] = name?.split('.') ?? [];
  return name ? (second ? { plant: first, name: second } : { name: first }) : undefined;
}

function clockItems(place: Place): CompletionItem[] {
  const conveyors = conveyorsHere(place);
  const used = place.desk
    .names()
    .declared('point')
    .filter(({ owner }) => owner && conveyors.includes(owner))
    .flatMap(({ node }) => ('clock' in node && typeof node.clock === 'string' && /^\d{1,2}:\d{2}$/.test(node.clock) ? [node.clock] : []));
  return [...new Set([...used, '6:00'])].map((clock) => ({
    label: clock, kind: CompletionItemKind.Value, detail: 'clock position, viewed in the direction of flow', textEdit: { range: place.range, newText: clock },
  }));
}

// ------------------------------------------------------------------------------------------------ suppressions

function codesInComment(text: Text, offset: number): CompletionItem[] {
  const line = text.text.slice(text.text.lastIndexOf('\n', offset - 1) + 1, offset);
  const typed = /\ballow[ \t]+(?:[A-Za-z]+\d+[ \t]*,[ \t]*)*([A-Za-z]*\d*)$/.exec(line)?.[1];
  if (typed === undefined) return [];
  return codesLike(typed).map((code) => ({
    label: code,
    kind: CompletionItemKind.Constant,
    detail: ruleOf(code)?.title ?? '',
    textEdit: { range: text.range(offset - typed.length, offset), newText: code },
  }));
}
