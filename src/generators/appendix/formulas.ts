// Every formula that a report, a pack or a hover cites, with its symbols, units and source, said once.

import type { Formula } from './formula.js';
import { machineFormulas } from './texts/machine.js';
import { wearFormulas } from './texts/wear.js';
import { workFormulas } from './texts/work.js';

const all = [...wearFormulas, ...machineFormulas, ...workFormulas] as const;

export type FormulaId = (typeof all)[number]['id'];

/** In the order in which an appendix prints them: wear and decisions, the machine, the work. */
export const formulas: readonly Formula[] = all;

/** For one kind of document: the report needs wear, the pack the machine and the work. */
export const formulasOf = {
  wear: wearFormulas,
  machine: machineFormulas,
  work: workFormulas,
} as const satisfies Record<string, readonly Formula[]>;

const byId = new Map<string, Formula>(all.map((formula) => [formula.id, formula]));

export function formulaOf(id: FormulaId): Formula {
  const formula = byId.get(id);
  // FormulaId lists exactly the ids of `all`, so a miss is a fault of ours.
  if (!formula) throw new Error(`There is no formula "${id}".`);
  return formula;
}
