// Have several spots of one conveyor worn faster together since the look before the last? One stone wears one spot; what speeds
// all of them up is common to them. Told from so much more wear on as the threshold says, beyond 2.2 errors of the pooled miss.

import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { toldBeyond } from '../../../domain/wear/pooled-miss.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { pacesOf, type ConveyorPace, type Pace } from '../../evidence/pace.js';
import { dayOfRow } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '25 %',
  dimension: 'ratio',
  what: 'Least share of extra wear at the spots together that is worth a warning.',
  basis: 'judgement; it also has to be beyond 2.2 errors of the pooled miss',
};

export const pointsSpeedingUpTogether: Rule = {
  code: 'TL510',
  title: 'Several spots of one conveyor wearing faster together',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'What speeds up everywhere has one cause: another product, more grit or less moisture, ' +
    'a higher speed, a worn or stretched spiral; ' +
    'the average rate so far then promises more life than is left.',
  todo: 'Find out what changed since that look, say so in the records, and look again before half of the time that the faster rate leaves.',
  threshold,
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.1 mm
  P2 thickness 11.3 mm
}
inspection DG1 «2025-03-10» meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹9.2|10.4› mm
  P2 thickness ‹9.6|10.8› mm
}`,
  *check({ estate }) {
    for (const [conveyor, pace] of pacesOf(estate)) {
      const { together } = pace;
      if (!together || !spedUpTogether(conveyor, pace)) continue;
      const { last, spots, pooled } = together;
      const factor = (excess: number): string => formatNumber(Math.max(0, 1 + excess), 1);
      const since = usualLookBefore(estate, spots);
      yield {
        origin: last.date.origin,
        message:
          `${conveyor.name} has worn about ${factor(pooled.excess)} times as fast (90 %: ${factor(pooled.low)} to ${factor(pooled.high)}) ` +
          `from ${since} to ${formatDay(last.date.day)} as until then, at ${pooled.more} of ${pooled.points} spots.`,
      };
    }
  },
};

/** Day of the look before the last at most of the spots; the later one where as many were read at another. */
function usualLookBefore(estate: Estate, spots: readonly Pace[]): string {
  const days = spots.map(({ before }) => dayOfRow(estate, before)).sort();
  const count = (day: string): number => days.filter((d) => d === day).length;
  return days.reduce((a, b) => (count(b) >= count(a) ? b : a), days[0] ?? 'the look before');
}

/** Whether the spots of a conveyor sped up together, not one of them alone: then one finding tells it for all of them. */
export function spedUpTogether({ plant }: Conveyor, { together }: ConveyorPace): boolean {
  const least = settled(plant, 'TL510', threshold);
  return (
    together !== undefined &&
    together.pooled.z > toldBeyond &&
    together.pooled.excess >= least &&
    together.others.excess >= least
  );
}
