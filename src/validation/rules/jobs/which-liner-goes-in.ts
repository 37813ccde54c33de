// Does a job say which liner goes in where several lie in a run, and not each where it came with the machine?

import { setsLying } from '../../../domain/model/exposure.js';
import { historyOf } from '../../../domain/model/history.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { intervalOf } from '../../../domain/model/runs.js';
import { list } from '../../telling/wording.js';
import type { Rule } from '../../rule.js';

/** A shorter overlap is a matter of how a joint was measured, mm. */
const joint = 50;

export const whichLinerGoesIn: Rule = {
  code: 'TL499',
  title: 'Reline that does not say which of several liners goes in',
  severity: 'warning',
  restsOn: ['block'],
  why: 'Panels of the wrong make or thickness are ordered, cut and fitted, and its colours then tell another wear.',
  todo: 'Name the liner behind the stretch, as in `reline all with TwoLayer12`, or write a line for each stretch.',
  given: 'specifications',
  example: `
liner Other12 {
  layer green 6 mm
  layer black 6 mm
  panel length 1200 mm
  condemn at 3 mm
  joint butted
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
}
reline DG1 2024-06-03 meter 1500 h {
  liner Other12
  scope from 2 m to 3 m
}
job DG1_All {
  conveyor DG1
  outage Spring27
  crews Alpha
  «reline all|reline all with TwoLayer12»
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { conveyor } = job;
      const unsure = job.relines.filter((each) => each.unsure);
      for (const origin of new Set(unsure.map((each) => each.origin))) {
        const parts = unsure.filter((each) => each.origin === origin);
        const lying = setsLying(historyOf(estate, conveyor), undefined).filter(({ from, to }) =>
          parts.some(({ stretch }) => {
            const part = intervalOf(conveyor, stretch, panelEnds);
            return part && Math.min(to, part.to) - Math.max(from, part.from) > joint;
          }),
        );
        const names = [...new Set(lying.map((set) => set.liner.name))];
        if (names.length < 2) continue;
        const taken = parts.length > 1 ? 'each is taken where it lies' : `${parts[0]?.liner.name} is taken`;
        yield {
          origin,
          message: `${job.name} relines a stretch in which ${list(names, 'and')} lie and names none; ${taken}.`,
        };
      }
    }
  },
};
