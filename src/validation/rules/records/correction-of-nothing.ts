// Is the reading there that a correction speaks of, and only one?

import { amendedWords } from '../../../domain/conditions/amended-words.js';
import { panelWords } from '../../../domain/conditions/kinds.js';
import type { JudgedAmendment, JudgedCorrection } from '../../../domain/model/records.js';
import type { Estate } from '../../../domain/model/estate.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const correctionOfNothing: Rule = {
  code: 'TL366',
  title: 'Correction of a reading that is not there',
  severity: 'error',
  restsOn: ['looks', 'conditions', 'history'],
  why: 'The wrong reading goes on to set the rate and the date of the reline, though somebody has written down that it is wrong.',
  todo:
    'Name the spot and the day as the inspection has them, chainages from the end it was measured from; ' +
    'where a spot was read twice on one day, put the wrong line right by its own point.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-10 thickness 9.4 mm by "shift" "set for steel"|
correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"»`,
  cases: [
    {
      name: 'a plate that was not measured there',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  plate at 4.2 m thickness 3.6 mm
  current loaded 7 A
}
correction DG1 2024-09-20 plate at 4.2 m read on 2024-09-09 thickness 3.8 mm by "shift" "rust under the probe"
«correction DG1 2024-09-20 plate at 4.9 m read on 2024-09-09 thickness 3.8 mm by "shift" "rust under the probe"»`,
    },
    {
      name: 'a condition that nobody told of',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  panel torn at 4.2 m
}
«correction DG1 2024-09-20 panel torn at 5.2 m read on 2024-09-09 does not count by "shift" "a shadow"»`,
    },
    {
      name: 'a point that was not read in that look',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 P2 read on 2024-09-09 does not count by "day shift" "read on the wrong panel"»`,
    },
    {
      name: 'dated before the look',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-02 P1 read on 2024-09-09 does not count by "day shift" "read on the wrong panel"»`,
    },
    {
      name: 'by the chainage from the tail, in a look that was measured from the head',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  measured from head
  view downstream
  at 8 m clock 7:00 thickness 9.8 mm
}
correction DG1 2024-09-20 at 8 m clock 7:00 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"
«correction DG1 2024-09-20 at 4 m clock 7:00 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"»`,
    },
    {
      name: 'by chainage and clock as the inspector saw it, against the flow',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view upstream
  gauge ultrasonic ± 0.2 mm
  at 4.2 m clock 7:00 thickness 9.8 mm
}
correction DG1 2024-09-20 at 4.2 m clock 7:00 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"`,
    },
  ],
  *check({ estate }) {
    for (const correction of estate.corrections) {
      const message = messageOf(estate, correction);
      if (message !== undefined) yield { origin: correction.origin, message };
    }
    for (const amendment of estate.amendments) {
      const message = messageOf(estate, amendment);
      if (message !== undefined) yield { origin: amendment.origin, message };
    }
  },
};

function messageOf(estate: Estate, correction: JudgedCorrection | JudgedAmendment): string | undefined {
  const { conveyor, date, read, outcome } = correction;
  const day = formatDay(read.day);
  switch (outcome) {
    case 'no such look': {
      const [nearest] = estate.inspections
        .filter((look) => look.conveyor === conveyor)
        .sort((a, b) => Math.abs(a.date.day - read.day) - Math.abs(b.date.day - read.day));
      return `${conveyor.name} was not inspected on ${day}${
        nearest ? `; the nearest look is of ${formatDay(nearest.date.day)}` : ''
      }.`;
    }
    case 'not read there':
      return `${spotWords(correction)} was not read in the look of ${day}.${fromHeadWords(estate, correction)}`;
    case 'read twice':
      return (
        `${spotWords(correction)} was read more than once on ${day}, with different results: which of them is wrong is not said. ` +
        `Behind the day stands what the wrong line says${writtenWords(correction)}.`
      );
    case 'before the reading':
      return `This correction is of ${formatDay(date.day)}, and the reading it corrects was made later, on ${day}.`;
    case 'counts':
    case 'replaced':
    case 'contradicted':
    case 'changes nothing':
    case 'unreadable':
      return undefined;
  }
}

/** Where that look counts from the other end: how its place stands there. */
function fromHeadWords({ inspections }: Estate, correction: JudgedCorrection | JudgedAmendment): string {
  const { conveyor, read } = correction;
  const fromHead = inspections.some(
    (look) => look.conveyor === conveyor && look.date.day === read.day && look.measuredFrom === 'head',
  );
  const at = fromHead ? chainageWritten(correction) : undefined;
  if (at === undefined) return '';
  const turned = conveyor.length.value - at;
  return (
    ` That look was measured from the head, and a correction names its place as the look has it: ` +
    `what lies at ${chainageOn(conveyor, at)} from the tail stands there at ${chainageOn(conveyor, turned)}.`
  );
}

/** mm; undefined where no chainage is written. */
function chainageWritten(correction: JudgedCorrection | JudgedAmendment): number | undefined {
  if ('spot' in correction) {
    const { spot } = correction;
    return spot.kind === 'chainage' ? spot.at.value : spot.kind === 'stretch' ? spot.from.value : undefined;
  }
  const { of } = correction;
  if (of.kind !== 'condition') return 'at' in of && of.byName !== true ? of.at.value : undefined;
  const { at, point, panel, end } = of.line;
  return point || panel || end ? undefined : at?.value;
}

function spotWords(correction: JudgedCorrection | JudgedAmendment): string {
  const { conveyor } = correction;
  if ('of' in correction) return `${capitalised(amendedWords(correction))} of ${conveyor.name}`;
  const { spot } = correction;
  switch (spot.kind) {
    case 'all':
      return `A thickness of ${conveyor.name}`;
    case 'point':
      return `${spot.point.name} of ${conveyor.name}`;
    case 'panel':
      return `${capitalised(panelWords(spot.panel))} of ${conveyor.name}`;
    case 'stretch':
      return `The stretch from ${spot.from.text} to ${spot.to.text} of ${conveyor.name}`;
    case 'chainage':
      return `The spot at ${chainageOn(conveyor, spot.at.value)}, ${spot.clock.text}, of ${conveyor.name}`;
  }
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `: written as 2.9 mm, or written as 3.4 mm`. */
function writtenWords(correction: JudgedCorrection | JudgedAmendment): string {
  const read = 'readTwice' in correction ? correction.readTwice : undefined;
  if (!read?.length) return ', as `written as 9.4 mm`';
  return `: ${read.map((each) => `\`written as ${each}\``).join(', or ')}`;
}
