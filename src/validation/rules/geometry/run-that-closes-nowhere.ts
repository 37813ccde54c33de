// Does every run end at a break that can take up the length errors of its panels? Panels × tolerance, the worst case; a job
// adds the measuring tolerance and, with gaps, the growth.

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
      const panel = conveyor.liner.panelLengths.reduce((most, length) => Math.max(most, length.value), 0);
      if (panel <= 0) return;
      for (const run of runsOf(conveyor)) {
        const panels = Math.ceil(run.length / panel - 1e-9);
        const worst = panels * conveyor.liner.panelTolerance.value;
        const ends = [run.tailBreak, run.headBreak];
        const best = ends[0]!.allowance.value >= ends[1]!.allowance.value ? ends[0]! : ends[1]!; // both ends are there
        if (best.allowance.value >= worst) continue;
        const named = ends.find((end) => !end.implied) ?? best;
        yield {
          origin: named.implied ? conveyor.nameOrigin : (named.nameOrigin ?? named.origin),
          message:
            `The run from ${run.tailBreak.name} to ${run.headBreak.name} (${chainageOn(conveyor, run.from)} to ` +
            `${chainageOn(conveyor, run.to)}) has ${counted(panels, 'panel')} and may come out ` +
            `${lengthOn(conveyor, worst)} long or short; ` +
            `${run.tailBreak.name} takes up ${lengthOn(conveyor, run.tailBreak.allowance.value)}, ` +
            `${run.headBreak.name} ${lengthOn(conveyor, run.headBreak.allowance.value)}.`,
        };
      }
    },
  ),
};
