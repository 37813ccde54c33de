// TL4xx: can the job be done, in the order written?

import type { Rule } from '../rule.js';

export const jobRules: readonly Rule[] = [

];
