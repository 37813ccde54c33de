// Every keyword of the language with its meaning and a snippet, by the grammar rule it stands in.
// A test holds this against the grammar, so that no keyword is ever without an explanation.

import { conveyorWords } from './words/conveyor.js';
import { jobWords } from './words/job.js';
import { plantWords } from './words/plant.js';
import { recordWords } from './words/records.js';
import { specificationWords } from './words/specifications.js';
import { word, type Word, type Words } from './words/word.js';

const all: Words = { ...plantWords, ...specificationWords, ...conveyorWords, ...recordWords, ...jobWords };

/** Words that only join two facts and mean the same everywhere. */
const joining: Readonly<Record<string, Word>> = {
  to: word('Up to and including.'),
  '±': word('Plus or minus: a tolerance, or the spread of the value before it.'),
  '+/-': word('Plus or minus; the same as ±.'),
};

/** Signs that need no explanation. */
export const signs: ReadonlySet<string> = new Set(['{', '}', ',', '.']);

export function wordOf(rule: string, keyword: string): Word | undefined {
  return all[rule]?.[keyword] ?? joining[keyword];
}
