// Values: the units that a number can have here, dates of the newest records, clock positions in use. Never today's date.

import { CompletionItemKind, InsertTextFormat, type CompletionItem } from 'vscode-languageserver';
import { unitsOf } from '../../domain/units/parse.js';
import { cursorAt } from '../cursor.js';
import { shortened, split, subjectOf, type Surroundings } from '../expected.js';
import { dimensionsAt } from '../dimensions-at.js';
import type { ConveyorName } from '../document-symbols.js';
import { newestRecord } from '../newest-record.js';
import { createDocument, type EstateDocument } from '../document.js';
import { conveyorsHere, type CompletionContext } from './completion-context.js';

/** Units for the number before the cursor. */
export function unitItems(
  document: EstateDocument,
  around: Surroundings,
  line: string,
  typed: string,
  offset: number,
): CompletionItem[] {
  const before = line.slice(0, line.length - typed.length);
  const dimensions = dimensionsOfValue(around, before);
  const blank = /\d$/.test(before) ? ' ' : '';
  return dimensions.flatMap((dimension) =>
    unitsOf(dimension)
      .filter((unit) => unit !== '"')
      .map((unit, index) => ({
        label: unit,
        kind: CompletionItemKind.Unit,
        detail: dimension,
        sortText: `0${String(index).padStart(3, '0')}`,
        filterText: `${blank}${unit}`,
        textEdit: { range: document.range(offset - typed.length, offset), newText: `${blank}${unit}` },
      })),
  );
}

/** Where a number is expected and none is typed: a number to fill in, with the usual units. */
export function valueItems(place: CompletionContext): CompletionItem[] {
  if (!place.snippets) return [];
  const before = place.line.slice(0, place.line.length - place.typed.length);
  return dimensionsOfValue(place.around, `${before}1`).flatMap((dimension) =>
    unitsOf(dimension)
      .slice(0, 3)
      .map((unit) => ({
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
  const probe = createDocument('probe:', `${head} mm`);
  const cursor = cursorAt(probe, head.length);
  if (!cursor?.property) return [];
  const { node } = cursor;
  return dimensionsAt(cursor.node.$type, cursor.property, {
    $type: node.$type,
    ...('key' in node && typeof node.key === 'string' ? { key: node.key } : {}),
    ...('item' in node && typeof node.item === 'string' ? { item: node.item } : {}),
  });
}

export function dateItems(place: CompletionContext): CompletionItem[] {
  const { conveyor } = subjectOf(place.document.text, place.around);
  const named = conveyor ?? conveyorBefore(place.line);
  const own = named ? newestRecord(place.session, named) : undefined;
  const newest = newestRecord(place.session);
  const dates = [
    ...(own ? [{ date: own.date, detail: `newest record of ${named?.name ?? ''}, meter ${own.meter}` }] : []),
    ...(newest ? [{ date: newest.date, detail: 'newest record of the estate' }] : []),
  ];
  return dates
    .filter(({ date }, index) => dates.findIndex((other) => other.date === date) === index)
    .map(({ date, detail }) => ({
      label: date,
      kind: CompletionItemKind.Constant,
      detail,
      textEdit: { range: place.range, newText: date },
    }));
}

function conveyorBefore(line: string): ConveyorName | undefined {
  const name = /(?:inspection|reline|screw change|meter change|duty)[ \t]+([\w.-]+)/.exec(line)?.[1];
  return name === undefined ? undefined : split(name);
}

export function clockItems(place: CompletionContext): CompletionItem[] {
  const conveyors = conveyorsHere(place);
  const used = place.session
    .symbols()
    .declared('point')
    .filter(({ owner }) => owner && conveyors.includes(owner))
    .flatMap(({ node }) =>
      'clock' in node && typeof node.clock === 'string' && /^\d{1,2}:\d{2}$/.test(node.clock)
        ? [node.clock]
        : [],
    );
  return [...new Set([...used, '6:00'])].map((clock) => ({
    label: clock,
    kind: CompletionItemKind.Value,
    detail: 'clock position, viewed in the direction of flow',
    textEdit: { range: place.range, newText: clock },
  }));
}
