// What is open on a conveyor as cells: one row a condition.

import { sinceWords, type OpenCondition } from '../../../domain/conditions/rows.js';

export const conditionHeads = ['What', 'Where', 'Severity', 'Since', 'Notes'] as const;

/** In the order of the heads. */
export function conditionCells(row: OpenCondition): readonly string[] {
  return [row.what, row.place, row.severity ?? '', sinceWords(row), row.notes.join('; ')];
}
