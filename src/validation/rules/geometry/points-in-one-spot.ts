// Are two points on the same spot? Closer than 20 mm along and a quarter of an hour round, no gauge can tell them apart.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const pointsInOneSpot: Rule = {
  code: 'TL239',
  title: 'Two inspection points on one spot',
  severity: 'warning',
  restsOn: [],
  why: 'Readings of one spot under two names count as two witnesses, and the interval of the forecast comes out too narrow.',
  todo: 'Take one of the two out, or correct its place.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock 7:30
  point «P2» at 4 m clock ‹7:30|4:30›`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const points = [...conveyor.points].sort((a, b) => a.at.value - b.at.value);
      for (let i = 0; i < points.length; i++) {
        for (let j = i - 1; j >= 0; j--) {
          const [one, other] = [points[j]!, points[i]!]; // 0 ≤ j < i < points.length
          if (other.at.value - one.at.value >= 20) break;
          if (Math.abs(other.clock.hours - one.clock.hours) >= 0.25) continue;
          const [first, second] = one.origin.start <= other.origin.start ? [one, other] : [other, one];
          yield {
            origin: second.nameOrigin,
            message: `${second.name} at ${second.at.text} ${second.clock.text} is the same spot as ${first.name} at ${first.at.text} ${first.clock.text}.`,
            related: [{ origin: first.nameOrigin, message: `point ${first.name}` }],
          };
        }
      }
    },
  ),
};
