// Do two corrections of one day say different things of one reading?

import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const correctionsContradict: Rule = {
  code: 'TL367',
  title: 'Two corrections that contradict each other',
  severity: 'error',
  restsOn: [],
  why: 'Neither of them counts, so the reading that both call wrong goes on to set the rate.',
  todo: 'Keep the one that is right. Where the second corrects the first, give it the later day on which that was found.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"
«correction DG1 2024-09-20 P1 read on 2024-09-09 does not count by "shift" "wrong panel"|
correction DG1 2024-09-27 P1 read on 2024-09-09 does not count by "shift" "wrong panel"»`,
  *check({ estate }) {
    const told = new Set<number>();
    for (const { outcome, row, read, date, conveyor, origin } of estate.corrections) {
      if (outcome !== 'contradicted' || row === undefined) continue;
      if (!told.has(row)) {
        told.add(row);
        continue;
      }
      const first = estate.corrections.find(
        (other) => other.row === row && other.outcome === outcome && other.date.day === date.day,
      );
      yield {
        origin,
        message:
          `Another correction of ${formatDay(date.day)} says something else of what ${conveyor.name} showed there ` +
          `on ${formatDay(read.day)}; neither counts.`,
        ...(first && { related: [{ origin: first.origin, message: 'the other one' }] }),
      };
    }
  },
};
