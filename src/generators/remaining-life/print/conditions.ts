// What is open on a conveyor as cells: one row a condition.

import { formatClock } from '../../../domain/units/clock.js';
import { sinceWords, type OpenCondition } from '../../../domain/conditions/rows.js';

export const conditionHeads = ['What', 'Where', 'Severity', 'Since', 'Notes'] as const;

/** In the order of the heads. */
export function conditionCells(row: OpenCondition): readonly string[] {
  const place = [row.place, row.clock === undefined ? '' : formatClock(row.clock)].filter(Boolean).join(', ');
  return [row.what, place, row.severity ?? '', sinceWords(row), row.notes.join('; ')];
}
