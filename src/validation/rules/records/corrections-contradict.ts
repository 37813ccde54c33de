// Do two corrections of one day say different things of one reading?

import { amendedText } from '../../../domain/model/amended.js';
import { amendedWords } from '../../../domain/conditions/amended-words.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { JudgedAmendment, JudgedCorrection } from '../../../domain/model/records.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const correctionsContradict: Rule = {
  code: 'TL367',
  title: 'Two corrections that contradict each other',
  severity: 'warning',
  restsOn: [],
  why: 'Of one day the later line holds. Whoever wrote the other one may not know of it, and rates rest on one number only.',
  todo: 'Take out the one that is wrong. Where the second corrects the first, give it the later day on which that was found.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"»
‹correction DG1 2024-09-20 P1 read on 2024-09-09 does not count by "shift" "wrong panel"|
correction DG1 2024-09-27 P1 read on 2024-09-09 does not count by "shift" "wrong panel"›`,
  cases: [
    {
      name: 'taken back and read anew on one day',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-09 does not count by "shift" "wrong panel"»
correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "from the slip of paper"`,
    },
    {
      name: 'all of a look, and one point of it by its own number',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  P2 thickness 9.9 mm
}
correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.6 mm by "shift" "read again"
correction DG1 2024-09-20 all read on 2024-09-09 thickness 0.4 mm less by "shift" "set for steel"`,
    },
    {
      name: 'of the steel',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  plate at 4 m thickness 3.8 mm
}
«correction DG1 2024-09-20 plate at 4 m read on 2024-09-09 thickness 3.6 mm by "shift" "paint"»
correction DG1 2024-09-20 plate at 4 m read on 2024-09-09 thickness 3.5 mm by "shift" "paint, ground off"`,
    },
    {
      name: 'of a current, one loaded and one empty',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  current empty 4 A loaded 6 A
}
correction DG1 2024-09-20 current read on 2024-09-09 loaded 7 A by "shift" "other clamp"
correction DG1 2024-09-20 current read on 2024-09-09 empty 3 A by "shift" "other clamp"`,
    },
  ],
  *check({ estate }) {
    yield* ofReadings(estate);
    yield* ofOtherMeasures(estate);
  },
};

function* ofReadings({ corrections }: Estate): Iterable<Found> {
  const losing = corrections.filter(({ outcome }) => outcome === 'contradicted');
  for (const each of losing) {
    const others = corrections.filter(
      ({ row, date }) => row !== undefined && row === each.row && date.day === each.date.day,
    );
    const holds = others.findLast(
      ({ outcome, spot }) => outcome !== 'contradicted' && spot.kind === each.spot.kind,
    );
    yield foundOf(each, `what ${each.conveyor.name} showed there`, holds, others);
  }
}

function* ofOtherMeasures({ amendments }: Estate): Iterable<Found> {
  for (const each of amendments) {
    if (each.outcome !== 'contradicted') continue;
    const words = amendedWords(each);
    const others = amendments.filter(
      (other) =>
        other.conveyor === each.conveyor &&
        other.date.day === each.date.day &&
        other.read.day === each.read.day &&
        amendedWords(other) === words,
    );
    const holds = others.findLast(({ outcome }) => outcome !== 'contradicted');
    yield foundOf(each, `the ${words} of ${each.conveyor.name}`, holds, others);
  }
}

type Judged = JudgedCorrection | JudgedAmendment;

function foundOf(each: Judged, what: string, holds: Judged | undefined, others: readonly Judged[]): Found {
  const other = holds ?? others.find((one) => one !== each);
  const isOfMeter = 'of' in each && each.of.kind === 'meter';
  const says = holds && 'of' in holds ? ` (${amendedText(holds.says)})` : '';
  return {
    origin: each.origin,
    message:
      `Another correction of ${formatDay(each.date.day)} says something else of ${what} on ${formatDay(each.read.day)}; ` +
      (holds
        ? `that one is the later line and holds${says}, this one does not.`
        : `they stand in two files, so neither holds and ${isOfMeter ? 'the meter stands as it was written' : 'the reading counts for nothing'}.`),
    ...(other && {
      related: [{ origin: other.origin, message: holds ? 'the later line' : 'the other one' }],
    }),
  };
}
