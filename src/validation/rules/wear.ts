import type { Rule } from '../rule.js';

export const wearRules: readonly Rule[] = [];
