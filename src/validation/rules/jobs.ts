import type { Rule } from '../rule.js';

export const jobRules: readonly Rule[] = [];
