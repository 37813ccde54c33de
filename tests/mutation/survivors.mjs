// Faults that no test can see, each with its reason: most change nothing that could be seen. A fault is known by its file, the
// trimmed line it stands in and, where the line has several, what it becomes. Kept by room.

import { inLanguage } from './survivors/language.mjs';
import { inOrder } from './survivors/order.mjs';
import { inPlan } from './survivors/plan.mjs';

/** @typedef {{ readonly file: string, readonly line: string, readonly becomes?: string, readonly why: string }} Survivor */

/** @type {readonly Survivor[]} */
export const survivors = [...inLanguage, ...inOrder, ...inPlan];
