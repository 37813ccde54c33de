// Does every run end at a break that can take up the length errors of its panels? Panels × tolerance, the worst case; a job
// adds the measuring tolerance and, with gaps, the growth.

import { firstLinerAt } from '../../../domain/model/first-liner.js';
import { firstPanels, firstPiecesOf } from '../../../domain/model/first-panels.js';
import { runsOf } from '../../../domain/model/runs.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';

export const runThatClosesNowhere: Rule = {
  code: 'TL233',
  title: 'Run that can be closed at neither end',
  severity: 'information',
  restsOn: ['block'],
  tags: ['advice'],
  why: 'The closing panel of a reline is cut to a hole that is never exactly one panel long; only a break with an allowance takes that up.',
  todo: 'State the allowance of the break or end plate at which the run is closed: the gap there that may be larger or smaller.',
  given: 'conveyor',
  example: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break «Gate» at 7 m to 7.5 m slide gate allowance ‹1|20› mm`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      for (const run of runsOf(conveyor)) {
        const liners = firstPiecesOf(run).map(({ liner }) => liner);
        if (!liners.every(({ panelLengths }) => panelLengths.some(({ value }) => value > 0))) continue;
        // Each as the first panels lie: of several liners each panel has its own tolerance.
        const panels = firstPanels(run).layout.panels.map(({ from, to }) =>
          firstLinerAt(conveyor, (from + to) / 2),
        );
        const worst = panels.reduce((sum, liner) => sum + liner.panelTolerance.value, 0);
        const ends = [run.tailBreak, run.headBreak];
        const best = ends[0]!.allowance.value >= ends[1]!.allowance.value ? ends[0]! : ends[1]!; // both ends are there
        if (best.allowance.value >= worst) continue;
        const named = ends.find((end) => !end.implied) ?? best;
        yield {
          origin: named.implied ? conveyor.nameOrigin : (named.nameOrigin ?? named.origin),
          message:
            `The run from ${run.tailBreak.name} to ${run.headBreak.name} (${chainageOn(conveyor, run.from)} to ` +
            `${chainageOn(conveyor, run.to)}) has ${counted(panels.length, 'panel')} and may come out ` +
            `${lengthOn(conveyor, worst)} long or short; ` +
            `${run.tailBreak.name} takes up ${lengthOn(conveyor, run.tailBreak.allowance.value)}, ` +
            `${run.headBreak.name} ${lengthOn(conveyor, run.headBreak.allowance.value)}.`,
        };
      }
    },
  ),
};
