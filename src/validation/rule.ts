// A rule is one file in rules/: hover text, `explain CODE`, the rule pages and the tests all come from this object.
// A check is pure and cheap: it runs while someone types, over the whole estate.

import type { Estate } from '../domain/model/estate.js';
import type { Problem } from '../domain/model/problem.js';
import type { Found, Severity } from './finding.js';

export interface RuleInput {
  readonly estate: Estate;
  readonly problems: readonly Problem[];
}

/**
 * Where the lines of an example stand. `whole`: they are the whole estate. `estate`: blocks added to the sound estate of
 * example.ts; `specifications`: the same without its conveyor. Otherwise facts inside that block of the sound estate, in
 * place of its facts that start with the same word.
 */
export type Given =
  'whole' | 'estate' | 'specifications' | 'plant' | 'liner' | 'screw' | 'conveyor' | 'inspection' | 'job';

export interface Rule {
  /** TL1xx the text itself, TL2xx geometry, TL3xx records, TL4xx jobs and orders, TL5xx wear. Never reused. */
  readonly code: `TL${number}`;
  readonly title: string;
  readonly severity: Severity;
  /** What happens on site if this is left as it is. */
  readonly why: string;
  /** What to do, in general. */
  readonly todo: string;
  readonly given: Given;
  /** The spot of the finding stands between « and ». */
  readonly bad: string;
  /** The same, right. */
  readonly good: string;
  check(input: RuleInput): Iterable<Found>;
}
