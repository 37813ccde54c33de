// TL5xx: what the wear calls for.

import type { Rule } from '../rule.js';

export const wearRules: readonly Rule[] = [

];
