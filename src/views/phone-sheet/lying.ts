// Which liner lies at a place that is added on the page? Its colours are the only ones that can show there.

import type { PhoneLiner, PhoneSheetData } from '../../protocol/offline-forms.js';

/**
 * @param at mm from the tail; on a joint what lies towards the head. The first liner where nothing tells, also for no number.
 */
export function linerLyingAt(
  { liners, lying }: Pick<PhoneSheetData, 'liners' | 'lying'>,
  at: number,
): PhoneLiner | undefined {
  const name = lying.findLast(({ from, to }) => at >= from && at <= to)?.liner;
  return liners.find((liner) => liner.name === name) ?? liners[0];
}
