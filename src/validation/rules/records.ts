import type { Rule } from '../rule.js';

export const recordRules: readonly Rule[] = [];
