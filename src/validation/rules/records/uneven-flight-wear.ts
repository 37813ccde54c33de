// Does the flight wear alike along the screw?

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { historyOf } from '../../../domain/model/history.js';
import { screwSetSeen } from '../../../domain/model/lying-screw.js';
import type { Inspection } from '../../../domain/model/records.js';
import type { ScrewSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Found } from '../../finding.js';
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
  cases: [
    { name: 'at the limit', text: '  flight at 2 m depth 78 mm\n  flight at 9 m depth 58 mm' },
    {
      name: 'a length that was renewed beside an old one',
      text: '  flight at 2 m depth 78 mm\n  flight at 9 m depth 56 mm\n}\nscrew change DG1 2024-01-15 meter 2 h {\n  scope from 0 m to 6 m',
    },
  ],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const { conveyor, flights } = inspection;
      if (flights.length < 2) continue;
      const history = historyOf(estate, conveyor);
      // Lengths that were renewed on different days differ for that reason.
      const seen = flights.map((flight) => ({
        flight,
        set: screwSetSeen(history, inspection, flight.at.value),
      }));
      for (const set of new Set(seen.map((each) => each.set)))
        yield* judge(
          conveyor,
          set?.screw ?? conveyor.screw,
          seen.flatMap((each) => (each.set === set ? each.flight : [])),
        );
    }
  },
};

function* judge(
  conveyor: Conveyor,
  screw: ScrewSpecification,
  flights: Inspection['flights'],
): Iterable<Found> {
  const width = screw.flight?.width.value;
  const sorted = [...flights].sort((a, b) => a.depth.value - b.depth.value);
  const [thin] = sorted;
  const thick = sorted.at(-1);
  if (width === undefined || !thin || !thick) return;
  if (thick.depth.value - thin.depth.value <= settled(conveyor.plant, 'TL358', threshold) * width) return;
  yield {
    origin: thin.depth.origin,
    message:
      `The flight of ${conveyor.name} has ${thin.depth.text} left at ${thin.at.text} and ${thick.depth.text} at ` +
      `${thick.at.text}; new it had ${lengthOn(conveyor, width)}.`,
    related: [{ origin: thick.depth.origin, message: 'the deeper place' }],
  };
}
