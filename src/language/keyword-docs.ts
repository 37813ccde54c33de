// Every keyword of the language with its meaning and a snippet, by the grammar rule it stands in.
// A test holds this against the grammar, so that no keyword is ever without an explanation.

import { conveyorKeywords } from './keywords/conveyor.js';
import { jobKeywords } from './keywords/job.js';
import { plantKeywords } from './keywords/plant.js';
import { recordKeywords } from './keywords/records.js';
import { specificationKeywords } from './keywords/specifications.js';
import { word, type KeywordDoc, type KeywordDocs } from './keywords/keyword-doc.js';

const all: KeywordDocs = {
  ...plantKeywords,
  ...specificationKeywords,
  ...conveyorKeywords,
  ...recordKeywords,
  ...jobKeywords,
};

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
