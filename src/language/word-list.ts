// The words of the language as a reference to read: each with the line it begins or belongs to and its meaning, and all of them
// room by room. What hovers say of a word and what stands here is one text (keyword-docs.ts).

import { keywordRooms } from './keyword-docs.js';
import type { KeywordDoc } from './keywords/keyword-doc.js';
import { plainLine } from './recovery/telling.js';

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
  return wordRooms()
    .map(({ title, entries }) => ({
      title,
      entries: entries.filter(({ word }) => word === wanted || word.startsWith(`${wanted} `)),
    }))
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
