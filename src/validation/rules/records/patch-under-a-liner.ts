// Could anybody weld there on that day? A patch lies on steel that was bare: the liner was out, a panel was gone, or it was worn
// through. And it lies within a run, not across a gate or an inlet.

import { followUp } from '../../../domain/conditions/follow-up.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { setLying } from '../../../domain/model/exposure.js';
import { historyOf } from '../../../domain/model/history.js';
import { setsAt } from '../../../domain/model/liner-sets.js';
import type { Patch } from '../../../domain/model/records.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import type { Rule } from '../../rule.js';

const patched = 'patch DG1 2024-10-07 at 3 m to 3.6 m thickness 4 mm welded by "coded welder"';

/** Days between a patch and the reline that it was welded for: one stop, and a day written down late (judgement). */
const days = 14;

export const patchUnderALiner: Rule = {
  code: 'TL527',
  title: 'Patch where nobody could weld',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'The steel that was mended is somewhere else or was mended on another day: its minimum is reckoned from new plate at a place that is still thin.',
  todo: 'Correct the chainages or the day; where it was welded from outside, on a liner that stayed in, allow this with that reason.',
  given: 'estate',
  example: `‹|reline DG1 2024-10-09 meter 3900 h {
  liner TwoLayer12
}
›patch DG1 2024-10-07 at «3 m» to 3.6 m thickness 4 mm welded by "coded welder"`,
  cases: [
    {
      name: 'where a panel was missing',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  panel missing at 3.4 m
  plate at 3.4 m thickness 3.4 mm
}
${patched}`,
    },
    {
      name: 'where it was worn through',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  at 3.3 m clock 6:00 trough showing
  plate at 3.3 m thickness 3.4 mm
}
${patched}`,
    },
    {
      name: 'across the gate',
      text: `
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
}
patch DG1 2024-10-07 at «6.8 m» to 7.8 m thickness 4 mm welded by "coded welder"`,
    },
    {
      name: 'up to the gate',
      text: `
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
}
patch DG1 2024-10-07 at 6.4 m to 7 m thickness 4 mm welded by "coded welder"`,
    },
  ],
  *check({ estate }) {
    for (const patch of estate.patches) {
      const { conveyor, from, to, date } = patch;
      const across = conveyor.breaks.find(
        (each) => from.value < each.from.value - 1 && to.value > each.to.value + 1,
      );
      if (across) {
        yield {
          origin: from.origin,
          message:
            `This patch from ${from.text} to ${to.text} lies across ${across.name} ` +
            `(${chainageOn(conveyor, across.from.value)} to ${chainageOn(conveyor, across.to.value)}), its ${across.kind}.`,
        };
        continue;
      }
      if (wasBare(estate, patch)) continue;
      const set = setLying(historyOf(estate, conveyor), middleOf(patch), date.day);
      if (!set) continue;
      yield {
        origin: from.origin,
        message:
          `This patch is dated ${formatDay(date.day)}, and by the records ${set.liner.name} lay from ${from.text} to ${to.text} of ` +
          `${conveyor.name} that day: no reline, no missing panel and no bare steel is recorded there.`,
      };
    }
  },
};

function middleOf({ from, to }: Patch): number {
  return (from.value + to.value) / 2;
}

function wasBare(estate: Estate, patch: Patch): boolean {
  const { conveyor, from, to, date } = patch;
  const near = reach(conveyor);
  const within = (at: number): boolean => at >= from.value - near && at <= to.value + near;
  const history = historyOf(estate, conveyor);
  const opened = [from.value, middleOf(patch), to.value]
    .flatMap((at) => setsAt(history.linerSets, at))
    .some(({ removed, fitted, reline }) =>
      [removed?.day, reline && fitted?.day].some(
        (day) => day !== undefined && Math.abs(day - date.day) <= days,
      ),
    );
  if (opened) return true;
  const torn = followUp(estate, conveyor).conditions.some(
    ({ first, last, closed }) =>
      (last.line.kind === 'panel missing' || last.line.kind === 'panel torn' || last.line.wornThrough) &&
      last.line.at !== undefined &&
      within(last.line.at.value) &&
      first.record.date.day <= date.day + days &&
      (closed === undefined || closed.day >= date.day - days),
  );
  if (torn) return true;
  const { readings, places } = estate;
  return history.inspections.some(({ inspection }) => {
    if (inspection.date.day > date.day + days) return false;
    // Steel that was measured was bare, or its place is at least known to whoever welded.
    if (inspection.plates.some(({ at }) => within(at.value))) return true;
    for (let row = inspection.firstRow; row < inspection.endRow; row++)
      if (readings.kind[row] === ReadingKind.trough && within(places[readings.place[row] ?? -1]?.at ?? NaN))
        return true;
    return false;
  });
}

/** mm beside a patch at which what made it necessary may have been seen: half the longest panel (judgement). */
function reach({ liner }: Conveyor): number {
  return Math.max(...liner.panelLengths.map(({ value }) => value), 600) / 2;
}
