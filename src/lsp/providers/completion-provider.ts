// What can be typed here: keywords that fit, with their meaning and a snippet; names of the estate; units for the number
// just typed; dates of the newest record. Never today's date: nothing here reads a clock.

import { GrammarAST } from 'langium';
import {
  CompletionItemKind,
  type CompletionItem,
  type CompletionList,
  type Position,
} from 'vscode-languageserver';
import { codesLike } from '../../validation/explain.js';
import { ruleOf } from '../../validation/catalogue.js';
import { keywordItem } from '../completion/keywords.js';
import { nameItems, wordItems } from '../completion/names.js';
import type { CompletionContext } from '../completion/completion-context.js';
import { starterItems } from '../completion/starters.js';
import { clockItems, dateItems, unitItems, valueItems } from '../completion/values.js';
import type { Session } from '../session.js';
import { expectedAfter, shortened, surroundingsAt, type Expected, type Surroundings } from '../expected.js';
import type { EstateDocument } from '../document.js';

export function completion(session: Session, document: EstateDocument, position: Position): CompletionList {
  const offset = document.offsetAt(position);
  const around = surroundingsAt(document.text, offset);
  if (around.inString) return list([]);
  if (around.inComment) return list(codesInComment(document, offset));
  const line = document.text.slice(around.lineStart, offset);
  const number = /(?:^|[\s±,])[+-]?\d+(?:[.,]\d+)?(?: \d+\/\d+|\/\d+)?[ \t]*([A-Za-z%°µ][\w/%°µ]*)?$/.exec(
    line,
  );
  const units = number ? unitItems(document, around, line, number[1] ?? '', offset) : [];
  if (units.length > 0 && (number?.[1] !== undefined || /\d$/.test(line))) return list(units);

  const items = [...units];
  for (const { typed, expected } of beginningsOfTyped(around, line)) {
    const range = document.range(offset - typed.length, offset);
    const place: CompletionContext = {
      session,
      document,
      around,
      line,
      range,
      typed,
      snippets: session.client.snippets,
    };
    const proposed = [...expected.flatMap((one) => itemsFor(one, place)), ...starterItems(place)];
    const fresh = proposed.filter((item) => !items.some((other) => other.label === item.label));
    items.push(...fresh);
  }
  return list(items.map((item, index) => ({ sortText: String(index).padStart(4, '0'), ...item })));
}

function list(items: CompletionItem[]): CompletionList {
  return { isIncomplete: false, items };
}

/**
 * The words being typed, shortest first. A keyword can have several words (`slide gate`), so the last two or three words
 * of the line are tried as the beginning of one, too.
 */
function beginningsOfTyped(
  around: Surroundings,
  line: string,
): { typed: string; expected: readonly Expected[] }[] {
  const word = /[A-Za-z_][\w-]*$/.exec(line)?.[0] ?? '';
  const found = [{ typed: word, expected: expectedAt(around, line.slice(0, line.length - word.length)) }];
  const several = /(?:^|[\s{])((?:[A-Za-z][\w-]*[ \t]+){1,3}[\w-]*)$/.exec(line)?.[1];
  for (let typed = several; typed; typed = /^\S+[ \t]+(.+)$/.exec(typed)?.[1]) {
    const low = typed.toLowerCase().replace(/[ \t]+/g, ' ');
    if (!low.includes(' ')) break;
    const expected = expectedAt(around, line.slice(0, line.length - typed.length)).filter(
      ({ feature }) =>
        GrammarAST.isKeyword(feature) && feature.value.startsWith(low) && feature.value !== low.trim(),
    );
    if (expected.length > 0) found.push({ typed, expected });
  }
  return found;
}

function expectedAt(around: Surroundings, line: string): readonly Expected[] {
  const all = expectedAfter(shortened(around.blocks, line));
  return line.trim() === '' ? all : all.filter(({ begins }) => !begins);
}

function itemsFor(expected: Expected, place: CompletionContext): CompletionItem[] {
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

function codesInComment(document: EstateDocument, offset: number): CompletionItem[] {
  const line = document.text.slice(document.text.lastIndexOf('\n', offset - 1) + 1, offset);
  const typed = /\ballow[ \t]+(?:[A-Za-z]+\d+[ \t]*,[ \t]*)*([A-Za-z]*\d*)$/.exec(line)?.[1];
  if (typed === undefined) return [];
  return codesLike(typed).map((code) => ({
    label: code,
    kind: CompletionItemKind.Constant,
    detail: ruleOf(code)?.title ?? '',
    textEdit: { range: document.range(offset - typed.length, offset), newText: code },
  }));
}
