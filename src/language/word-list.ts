// The words of the language as a reference to read: each with the line it begins or belongs to and its meaning, and all of them
// room by room. What hovers say of a word and what stands here is one text (keyword-docs.ts).

import { conditionKinds } from '../domain/conditions/kinds.js';
import { keywordRooms } from './keyword-docs.js';
import type { KeywordDoc } from './keywords/keyword-doc.js';
import { properName } from './recovery/joined.js';
import { isSaidOf } from './recovery/senses.js';
import { plainLine } from './recovery/telling.js';
import { tradeSenses } from './recovery/trade-words.js';

export interface WordEntry {
  readonly word: string;
  /** As somebody would type it; undefined for a word that only stands inside of lines. */
  readonly line: string | undefined;
  readonly meaning: string;
}

export interface WordRoom {
  readonly title: string;
  readonly entries: readonly WordEntry[];
}

/** In the order of an estate: plant, specifications, conveyor, records, jobs. */
export function wordRooms(): readonly WordRoom[] {
  return keywordRooms.map(({ title, docs }) => {
    const entries = Object.values(docs).flatMap((words) =>
      Object.entries(words).map(([word, doc]) => entryOf(word, doc)),
    );
    return { title, entries: distinct(entries) };
  });
}

/** All that a word means, in the rooms in which it means it, with the words of several parts that begin with it. */
export function wordsCalled(text: string): readonly WordRoom[] {
  const wanted = text.trim().toLowerCase().replace(/\s+/g, ' ');
  return roomsWhere(({ word }) => word === wanted || word.startsWith(`${wanted} `));
}

/**
 * What somebody may mean who asks with words that the language does not begin with: entries that hold all of these words, and those
 * that the trade calls so (`seized` a stuck cover, `amps` the current, `speed switch` a zero-speed sensor); where there are none, those whose meaning speaks of them.
 */
export function wordsLike(text: string): readonly WordRoom[] {
  const proper = properName(text.trim().toLowerCase().replace(/\s+/g, ' '));
  if (proper !== undefined) return wordsCalled(proper);
  const asked = text.trim().toLowerCase().split(/\s+/);
  const meant = new Set(conditionKinds.filter((kind) => isSaidOf(kind, asked)) as readonly string[]);
  const trade = new Set(asked.flatMap((each) => tradeSenses(each)));
  const named = roomsWhere(
    ({ word, line }) =>
      meant.has(word) ||
      (asked.length === 1 && trade.has(word)) ||
      asked.every((each) => holds(`${word} ${line ?? ''}`, each)),
  );
  return named.length > 0 ? named : roomsWhere(({ meaning }) => asked.every((each) => holds(meaning, each)));
}

/** Whole words, one or many of them; what begins so counts from four letters on (`bear` of a bearing). */
function holds(text: string, asked: string): boolean {
  const stem = asked.length > 3 ? asked.replace(/s$/, '') : asked;
  return text
    .toLowerCase()
    .split(/[^a-z-]+/)
    .flatMap((each) => [each, ...each.split('-')]) // `zero speed` of a zero-speed sensor
    .some((each) => each === asked || (stem.length > 3 ? each.startsWith(stem) : each === stem));
}

function roomsWhere(isMeant: (entry: WordEntry) => boolean): readonly WordRoom[] {
  return wordRooms()
    .map(({ title, entries }) => ({ title, entries: entries.filter(isMeant) }))
    .filter(({ entries }) => entries.length > 0);
}

function entryOf(word: string, { meaning, snippet }: KeywordDoc): WordEntry {
  return { word, line: snippet === undefined ? undefined : plainLine(snippet), meaning };
}

/** A word may stand in several places of a room and mean the same there. */
function distinct(entries: readonly WordEntry[]): readonly WordEntry[] {
  const byText = new Map(entries.map((each) => [`${each.word}\n${each.meaning}`, each]));
  return [...byText.values()];
}
