// What the thing under the cursor is: its facts with units, what follows from them and by which formula; the meaning of a
// keyword; a value in other units; the rule behind a code in a comment.

import { CstUtils } from 'langium';
import type { Hover, Position } from 'vscode-languageserver';
import { clockToAngle, formatClock, mirrorClock, parseClock } from '../../domain/units/clock.js';
import { parseDay, weekday } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { explainInMarkdown } from '../../validation/explain.js';
import { ruleOf } from '../../validation/catalogue.js';
import * as ast from '../../language/generated/ast.js';
import { conditionHover } from '../hover/condition.js';
import { inspectionHover, readingHover, wornWidthHover } from '../hover/records.js';
import { unitHint, valueLine } from '../hover/value.js';
import { cursorAt, type Cursor } from '../cursor.js';
import type { Session } from '../session.js';
import { dimensionsAt } from '../dimensions-at.js';
import { conditionAt, inspectionAt, rowAt } from '../model-at.js';
import { photoAddress } from '../photo-address.js';
import { symbolHover } from '../hover/symbol.js';
import type { EstateDocument } from '../document.js';
import { keywordDocOf } from '../../language/keyword-docs.js';

export function hover(session: Session, document: EstateDocument, position: Position): Hover | undefined {
  const offset = document.offsetAt(position);
  const code = codeInComment(document, offset);
  if (code) return answer(document, code.start, code.end, [explainInMarkdown(code.code) ?? '']);
  const why = reasons(session, document, offset);
  const symbol = session.symbols().at(document, offset);
  if (symbol) {
    const reading =
      symbol.reference?.kind === 'point' || symbol.reference?.kind === 'layer'
        ? rowHover(session, document, offset)
        : undefined;
    return answer(document, symbol.start, symbol.end, [reading ?? symbolHover(session, symbol), ...why]);
  }
  const cursor = cursorAt(document, offset);
  if (!cursor)
    return why.length > 0 ? { contents: { kind: 'markdown', value: why.join('\n\n---\n\n') } } : undefined;
  return answer(document, cursor.leaf.offset, cursor.leaf.end, [
    ...about(session, document, cursor, offset),
    ...why,
  ]);
}

function answer(
  document: EstateDocument,
  start: number,
  end: number,
  parts: readonly string[],
): Hover | undefined {
  const value = parts.filter((part) => part !== '').join('\n\n---\n\n');
  return value === ''
    ? undefined
    : { contents: { kind: 'markdown', value }, range: document.range(start, end) };
}

function about(session: Session, document: EstateDocument, cursor: Cursor, offset: number): string[] {
  const { keyword, rule, node, leaf, property } = cursor;
  if (keyword) {
    const word = keywordDocOf(rule, keyword);
    const block =
      ast.isInspection(node) && keyword === 'inspection' ? recordHover(session, document, offset) : undefined;
    const row = ast.isReading(node)
      ? rowHover(session, document, offset)
      : ast.isCondition(node) || ast.isFinding(node)
        ? conditionWordsAt(session, document, offset)
        : ast.isWornWidth(node)
          ? wornWordsAt(session, document, offset)
          : undefined;
    return [block ?? row ?? '', word ? `**${keyword}** ${word.meaning}` : ''];
  }
  if (!property) return [];
  if (ast.isThreshold(node) && property === 'code') return [explainInMarkdown(leaf.text) ?? ''];
  switch (leaf.tokenType.name) {
    case 'QUANTITY':
    case 'NUMBER':
      return [ast.isReading(node) ? (rowHover(session, document, offset) ?? '') : '', valueAbout(cursor)];
    case 'DATE':
      return [
        ast.isInspection(node) ? (recordHover(session, document, offset) ?? '') : '',
        dayAbout(leaf.text),
      ];
    case 'CLOCK':
      return [clockAbout(leaf.text)];
    case 'STRING':
      return [photoAbout(document, cursor)];
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
  const meaning = keywordDocOf(rule, name)?.meaning;
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
  'Step.watch': 'fire watch',
  'Step.rest': 'dries',
  'LeadTime.value': 'lead time',
  'ExpeditedLeadTime.value': 'expedited lead time',
  'Flight.width': 'flight',
  'PanelLength.lengths': 'panel length',
  'PanelsFitted.lengths': 'panels',
  'Section.length': 'section',
  'Layer.thickness': 'layer',
  'ScrewKind.shaft': 'shaft',
};

/** The picture itself; the editor shows it where it may. */
function photoAbout(document: EstateDocument, { leaf, rule, property }: Cursor): string {
  if (property !== 'photo' && !(rule === 'Photo' && property === 'path')) return '';
  const address = photoAddress(document.uri, leaf.text.slice(1, -1));
  return address === undefined ? '' : `![photo](${address})`;
}

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
        : `${formatNumber(Math.abs(angle), 0)}° from the bottom towards ${angle > 0 ? '9' : '3'} o’clock, ` +
          `the ${angle > 0 ? 'left' : 'right'} looking in the direction of flow`;
  return `**${text}** ${side}. Seen from the other end it is ${formatClock(mirrorClock(hours))}.`;
}

function rowHover(session: Session, document: EstateDocument, offset: number): string | undefined {
  const row = rowAt(session, document, offset);
  return row === undefined ? undefined : readingHover(session.estate(), row);
}

function conditionWordsAt(session: Session, document: EstateDocument, offset: number): string | undefined {
  const seen = conditionAt(session, document, offset);
  return seen && conditionHover(session.estate(), seen);
}

function wornWordsAt(session: Session, document: EstateDocument, offset: number): string | undefined {
  const inspection = inspectionAt(session, document, offset);
  const strip = inspection?.wornWidths.find(({ origin }) => origin.start <= offset && offset <= origin.end);
  return inspection && strip && wornWidthHover(session.estate(), inspection, strip);
}

function recordHover(session: Session, document: EstateDocument, offset: number): string | undefined {
  const inspection = inspectionAt(session, document, offset);
  return inspection && inspectionHover(session.estate(), inspection);
}

/** Why the findings at this spot matter; the editor itself shows what they say. */
function reasons(session: Session, document: EstateDocument, offset: number): string[] {
  const here = session
    .findingsIn(document.uri)
    .filter(({ origin }) => origin.start <= offset && offset <= origin.end);
  const codes = [...new Set(here.map(({ code }) => code))];
  return codes.map(
    (code) =>
      `**${code}** ${ruleOf(code)?.title ?? ''}\n\n${here.find((finding) => finding.code === code)?.why ?? ''}`,
  );
}

function codeInComment(
  document: EstateDocument,
  offset: number,
): { code: string; start: number; end: number } | undefined {
  const lineStart = document.text.lastIndexOf('\n', offset - 1) + 1;
  const lineEnd = document.text.indexOf('\n', offset);
  const line = document.text.slice(lineStart, lineEnd < 0 ? undefined : lineEnd);
  for (const match of line.matchAll(/\bTL\d+\b/gi)) {
    const start = lineStart + match.index;
    const end = start + match[0].length;
    if (offset < start || offset > end) continue;
    const root = document.root().$cstNode;
    const leaf = root && CstUtils.findLeafNodeAtOffset(root, start);
    if ((!leaf || leaf.hidden) && ruleOf(match[0])) return { code: match[0].toUpperCase(), start, end };
  }
  return undefined;
}
