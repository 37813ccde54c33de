// Every keyword of the language with its meaning and a snippet, by the grammar rule it stands in.
// A test holds this against the grammar, so that no keyword is ever without an explanation.

import { conveyorKeywords } from './keywords/conveyor.js';
import { jobKeywords } from './keywords/job.js';
import { plantKeywords } from './keywords/plant.js';
import { recordKeywords } from './keywords/records.js';
import { specificationKeywords } from './keywords/specifications.js';
import { word, type KeywordDoc, type KeywordDocs } from './keywords/keyword-doc.js';

/** By what they speak of, in the order of an estate. */
export const keywordRooms: readonly { readonly title: string; readonly docs: KeywordDocs }[] = [
  { title: 'Plant', docs: plantKeywords },
  { title: 'Liners and screws', docs: specificationKeywords },
  { title: 'Conveyor', docs: conveyorKeywords },
  { title: 'Records', docs: recordKeywords },
  { title: 'Jobs', docs: jobKeywords },
];

const all: KeywordDocs = Object.assign({}, ...keywordRooms.map(({ docs }) => docs));

/** Words that only join two facts and mean the same everywhere. */
const joining: Readonly<Record<string, KeywordDoc>> = {
  to: word('Up to and including.'),
  '±': word('Plus or minus: a tolerance, or the spread of the value before it.'),
  '+/-': word('Plus or minus; the same as ±.'),
};

/** Signs that need no explanation. */
export const signs: ReadonlySet<string> = new Set(['{', '}', ',', '.']);

export function keywordDocOf(rule: string, keyword: string): KeywordDoc | undefined {
  return all[rule]?.[keyword] ?? joining[keyword];
}
