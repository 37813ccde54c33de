// Does the flight wear alike along the screw?

import { screwSeen } from '../../../domain/model/lying-screw.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '25 %',
  dimension: 'ratio',
  what: 'Share of the new flight by which two places of one look may differ.',
  basis: 'judgement',
};

export const unevenFlightWear: Rule = {
  code: 'TL358',
  title: 'Flight worn unevenly',
  severity: 'warning',
  restsOn: [],
  why:
    'A spiral that is worn at one place only lies hollow there, knocks on the liner at the next turns, and breaks ' +
    'where it is thin; one mean depth hides that.',
  todo:
    'Look what is different there: an inlet that drops onto it, a hold-down that rubs, a step in the liner; read ' +
    'the flight at more places next time.',
  threshold,
  given: 'inspection',
  example: `
  flight at 2 m depth 78 mm
  flight at 9 m depth «56 mm|62 mm»`,
  cases: [{ name: 'at the limit', text: '  flight at 2 m depth 78 mm\n  flight at 9 m depth 58 mm' }],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const { conveyor, flights } = inspection;
      const width = screwSeen(estate, inspection).flight?.width.value;
      if (width === undefined || flights.length < 2) continue;
      const sorted = [...flights].sort((a, b) => a.depth.value - b.depth.value);
      const [thin] = sorted;
      const thick = sorted.at(-1);
      if (
        !thin ||
        !thick ||
        thick.depth.value - thin.depth.value <= settled(conveyor.plant, 'TL358', threshold) * width
      )
        continue;
      yield {
        origin: thin.depth.origin,
        message:
          `The flight of ${conveyor.name} has ${thin.depth.text} left at ${thin.at.text} and ${thick.depth.text} at ` +
          `${thick.at.text}; new it had ${lengthOn(conveyor, width)}.`,
        related: [{ origin: thick.depth.origin, message: 'the deeper place' }],
      };
    }
  },
};
