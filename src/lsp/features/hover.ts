// What the thing under the cursor is: its facts with units, what follows from them and by which formula; the meaning of a
// keyword; a value in other units; the rule behind a code in a comment.

import { CstUtils } from 'langium';
import type { Hover, Position } from 'vscode-languageserver';
import { clockToAngle, formatClock, mirrorClock, parseClock } from '../../domain/units/clock.js';
import { parseDay, weekday } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { explainInMarkdown } from '../../validation/explain.js';
import { ruleOf } from '../../validation/catalogue.js';
import * as ast from '../../language/tree.js';
import { inspectionCard, readingCard } from '../cards/records.js';
import { unitHint, valueLine } from '../cards/value.js';
import { cursorAt, type Cursor } from '../cursor.js';
import type { Desk } from '../desk.js';
import { dimensionsAt } from '../facts.js';
import { inspectionAt, rowAt } from '../model-at.js';
import { describeName } from '../cards/name.js';
import type { Text } from '../texts.js';
import { wordOf } from '../vocabulary.js';

export function hover(desk: Desk, text: Text, position: Position): Hover | undefined {
  const offset = text.offsetAt(position);
  const code = codeInComment(text, offset);
  if (code) return answer(text, code.start, code.end, [explainInMarkdown(code.code) ?? '']);
  const why = reasons(desk, text, offset);
  const spoken = desk.names().at(text, offset);
  if (spoken) {
    const reading =
      spoken.use?.kind === 'point' || spoken.use?.kind === 'layer' ? rowCard(desk, text, offset) : undefined;
    return answer(text, spoken.start, spoken.end, [reading ?? describeName(desk, spoken), ...why]);
  }
  const cursor = cursorAt(text, offset);
  if (!cursor)
    return why.length > 0 ? { contents: { kind: 'markdown', value: why.join('\n\n---\n\n') } } : undefined;
  return answer(text, cursor.leaf.offset, cursor.leaf.end, [...about(desk, text, cursor, offset), ...why]);
}

function answer(text: Text, start: number, end: number, parts: readonly string[]): Hover | undefined {
  const value = parts.filter((part) => part !== '').join('\n\n---\n\n');
  return value === '' ? undefined : { contents: { kind: 'markdown', value }, range: text.range(start, end) };
}

function about(desk: Desk, text: Text, cursor: Cursor, offset: number): string[] {
  const { keyword, rule, node, leaf, property } = cursor;
  if (keyword) {
    const word = wordOf(rule, keyword);
    const block =
      ast.isInspection(node) && keyword === 'inspection' ? recordCard(desk, text, offset) : undefined;
    const row = ast.isReading(node) ? rowCard(desk, text, offset) : undefined;
    return [block ?? row ?? '', word ? `**${keyword}** ${word.meaning}` : ''];
  }
  if (!property) return [];
  switch (leaf.tokenType.name) {
    case 'QUANTITY':
    case 'NUMBER':
      return [ast.isReading(node) ? (rowCard(desk, text, offset) ?? '') : '', valueAbout(cursor)];
    case 'DATE':
      return [ast.isInspection(node) ? (recordCard(desk, text, offset) ?? '') : '', dayAbout(leaf.text)];
    case 'CLOCK':
      return [clockAbout(leaf.text)];
    default:
      return [];
  }
}

function valueAbout({ node, property = '', leaf, rule }: Cursor): string {
  if (property === 'clock' || (property === 'from' && rule === 'WornWidth')) return clockAbout(leaf.text);
  const keyed = {
    $type: node.$type,
    ...('key' in node && typeof node.key === 'string' ? { key: node.key } : {}),
    ...('item' in node && typeof node.item === 'string' ? { item: node.item } : {}),
  };
  const dimensions = dimensionsAt(node.$type, property, keyed);
  const name = keyed.key ?? keyed.item ?? words[`${node.$type}.${property}`] ?? property;
  const meaning = wordOf(rule, name)?.meaning;
  const line = valueLine(leaf.text, dimensions);
  const value =
    line ??
    (dimensions.length > 0
      ? `\`${leaf.text}\` is not readable here. Units that fit: ${unitHint(dimensions)}.`
      : '');
  return [value === '' ? '' : `**${name}** ${value}`, meaning ?? '']
    .filter((part) => part !== '')
    .join('\n\n');
}

/** Properties whose name in the tree is not the word in the text. */
const words: Readonly<Record<string, string>> = {
  'Trough.radius': 'inside radius',
  'Trough.side': 'side height',
  'Reading.chainage': 'chainage',
  'Reading.error': 'error',
  'Gauge.error': 'error',
  'MeterChange.old': 'from',
  'MeterChange.new': 'to',
  'DutyChange.value': 'duty',
  'Crew.rate': 'cost',
  'AccessUnit.limit': 'platform load',
  'LeadTime.value': 'lead time',
  'Flight.width': 'flight',
  'PanelLength.lengths': 'panel length',
  'PanelsFitted.lengths': 'panels',
  'Section.length': 'section',
  'Layer.thickness': 'layer',
  'ScrewKind.shaft': 'shaft',
};

function dayAbout(text: string): string {
  const day = parseDay(text);
  if (day === undefined) return '';
  return `${['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'][weekday(day) - 1] ?? ''}, ${text}`;
}

function clockAbout(text: string): string {
  const hours = parseClock(text);
  if (hours === undefined) return '';
  const angle = clockToAngle(hours);
  const side =
    angle === 0
      ? 'at the bottom'
      : angle === 180 || angle === -180
        ? 'at the top'
        : `${formatNumber(Math.abs(angle), 0)}° from the bottom towards ${angle > 0 ? '9' : '3'} o’clock, the ${angle > 0 ? 'left' : 'right'} looking in the direction of flow`;
  return `**${text}** ${side}. Seen from the other end it is ${formatClock(mirrorClock(hours))}.`;
}

function rowCard(desk: Desk, text: Text, offset: number): string | undefined {
  const row = rowAt(desk, text, offset);
  return row === undefined ? undefined : readingCard(desk.estate(), row);
}

function recordCard(desk: Desk, text: Text, offset: number): string | undefined {
  const inspection = inspectionAt(desk, text, offset);
  return inspection && inspectionCard(desk.estate(), inspection);
}

/** Why the findings at this spot matter; the editor itself shows what they say. */
function reasons(desk: Desk, text: Text, offset: number): string[] {
  const here = desk
    .findingsIn(text.uri)
    .filter(({ origin }) => origin.start <= offset && offset <= origin.end);
  const codes = [...new Set(here.map(({ code }) => code))];
  return codes.map(
    (code) =>
      `**${code}** ${ruleOf(code)?.title ?? ''}\n\n${here.find((finding) => finding.code === code)?.why ?? ''}`,
  );
}

function codeInComment(text: Text, offset: number): { code: string; start: number; end: number } | undefined {
  const lineStart = text.text.lastIndexOf('\n', offset - 1) + 1;
  const lineEnd = text.text.indexOf('\n', offset);
  const line = text.text.slice(lineStart, lineEnd < 0 ? undefined : lineEnd);
  for (const match of line.matchAll(/\bTL\d+\b/gi)) {
    const start = lineStart + match.index;
    const end = start + match[0].length;
    if (offset < start || offset > end) continue;
    const root = text.root().$cstNode;
    const leaf = root && CstUtils.findLeafNodeAtOffset(root, start);
    if ((!leaf || leaf.hidden) && ruleOf(match[0])) return { code: match[0].toUpperCase(), start, end };
  }
  return undefined;
}
