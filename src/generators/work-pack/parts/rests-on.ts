// On which earlier jobs does this pack rest? What they renew on the same conveyor, and what they take from the shelf of what this job
// would have taken. They are planned and not done: if one is put off or done in another way, the pack is to be made again.

import type { Job } from '../../../domain/model/job.js';
import { panelsText } from '../../../domain/model/runs.js';
import type { CutList } from '../../../domain/plan/cut-list.js';
import type { JobBefore, WorkBefore, RenewedPart, TakenFromShelf } from '../../../domain/plan/jobs-before.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { lengthWords } from '../../../domain/units/length-words.js';
import { counted, list } from '../../../domain/units/wording.js';
import type { RestsOn } from '../pack.js';

export function restsOn(
  { jobs }: WorkBefore,
  cuts: readonly CutList[],
  job: Job,
  unit: LengthUnit,
): readonly RestsOn[] {
  return jobs.flatMap((before): readonly RestsOn[] => {
    const changes = [...renewedWords(before), ...takenWords(before.takes, cuts, job, unit)];
    const { window, conveyor, name, nameOrigin } = before.job;
    return changes.length === 0 || !window
      ? []
      : [
          {
            origin: nameOrigin,
            job: name,
            conveyor: conveyor.name,
            window: `${formatDay(window.from.day)} to ${formatDay(window.to.day)}`,
            changes,
          },
        ];
  });
}

function renewedWords({ renewed, screw }: JobBefore): readonly string[] {
  return [
    ...(renewed.length > 0 ? [`renews ${list(renewed.map(partWords))}`] : []),
    ...(screw ? [`puts in the screw ${screw.name}`] : []),
  ];
}

function partWords({ run, first, last, whole, liner }: RenewedPart): string {
  return `${whole ? `run ${run}` : panelsText(first, last, run)} with ${liner.name}`;
}

/** Of what this job needs too. */
function takenWords(
  takes: readonly TakenFromShelf[],
  cuts: readonly CutList[],
  { screwChange }: Job,
  unit: LengthUnit,
): readonly string[] {
  const liners = new Set(cuts.map(({ liner }) => liner.name));
  const words = takes.flatMap((each): readonly string[] => {
    switch (each.kind) {
      case 'liner':
        return liners.has(each.liner.name)
          ? [`${counted(each.count, 'piece')} of ${each.liner.name}, ${lengthWords(each.length, unit)}`]
          : [];
      case 'fixings':
        return liners.has(each.liner.name) ? [`${each.count} fixings of ${each.liner.name}`] : [];
      case 'spiral':
        return screwChange?.screw.name === each.screw.name ? [`the spare spiral ${each.screw.name}`] : [];
    }
  });
  return words.length === 0 ? [] : [`takes ${list(words)} from the shelf`];
}
