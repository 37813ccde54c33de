// Does a job say which liner goes in where more than one lies?

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
  liner Other12 run above Gate
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 "local isolator" electrical
  isolation Feed material
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
      for (const { stretch, liner, linerUse, origin } of job.relines) {
        const interval = linerUse ? undefined : intervalOf(conveyor, stretch, panelEnds);
        if (!interval) continue;
        const lying = setsLying(historyOf(estate, conveyor), undefined).filter(
          ({ from, to }) => Math.min(to, interval.to) - Math.max(from, interval.from) > joint,
        );
        const names = [...new Set(lying.map((set) => set.liner.name))];
        if (names.length < 2) continue;
        yield {
          origin,
          message: `${job.name} relines a stretch in which ${list(names, 'and')} lie and names none; ${liner.name} is taken.`,
        };
      }
    }
  },
};
