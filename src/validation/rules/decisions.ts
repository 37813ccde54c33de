// TL54x: what a decision rests on: stock, lead times, money, jobs.

import type { Rule } from '../rule.js';
import { costsInTwoCurrencies } from './decisions/costs-in-two-currencies.js';
import { expeditedNotSooner } from './decisions/expedited-not-sooner.js';
import { jobMissesWhatGoverns } from './decisions/job-misses-what-governs.js';
import { shelfCountedBeforeAReline } from './decisions/shelf-counted-before-a-reline.js';
import { shelfOfAnotherLength } from './decisions/shelf-of-another-length.js';

export const decisionRules: readonly Rule[] = [
  shelfOfAnotherLength,
  costsInTwoCurrencies,
  expeditedNotSooner,
  shelfCountedBeforeAReline,
  jobMissesWhatGoverns,
];
