// Does a panel lie across a place where the conveyor says that the liner changes? Only panels whose lengths were written down can:
// where they are worked out, a joint lies at the change. A change that a later reline covered is none any more.

import { historyOf } from '../../../domain/model/history.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import { setsMeeting } from '../../../domain/model/lying-liner.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { installedPanels } from '../../../domain/model/panels.js';
import { jointReach as joint } from '../../../domain/geometry/mixed-layout.js';
import { intervalOf } from '../../../domain/model/runs.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

/** Run 1 ends at the gate; its panels are written down. */
const machine = (change: string, after = ''): string => `liner TwoLayer10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1200 mm ± 1 mm
  condemn at 3 mm
  bolt M8 rows 2 pitch 200 mm
  joint butted
}
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner ${change}
  liner TwoLayer12
  fitted run 1 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm, 1200 mm, 1000 mm
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
  isolation Feed material
}
${after}`;

export const panelAcrossLiners: Rule = {
  code: 'TL533',
  title: 'Panel across a change of liner',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A panel is of one liner. Readings on the wrong side of the change are held against the thickness, the layers and the limit ' +
    'of the other liner, so that a limit is passed unseen, and the list of what to buy is wrong by a panel.',
  todo: 'Find the joint on site and write the change there, or correct the lengths of the panels (`fitted run 1 panels …`).',
  given: 'specifications',
  example: machine('«TwoLayer10|TwoLayer10» from 0 m to ‹5 m|4.8 m›'),
  cases: [
    { name: 'as near to a joint as one can be off', text: machine('TwoLayer10 from 0 m to 4.82 m') },
    { name: 'farther than that', text: machine('«TwoLayer10» from 0 m to 4.83 m') },
    { name: 'at the end of the run', text: machine('TwoLayer10 from 0 m to 7.2 m') },
    {
      name: 'one side relined up to it since',
      text: machine(
        '«TwoLayer10» from 0 m to 5 m',
        'reline DG1 2024-10-07 meter 4800 h {\n  liner TwoLayer10\n  scope from 1 m to 5 m\n}',
      ),
    },
    {
      name: 'relined since',
      text: machine(
        'TwoLayer10 from 0 m to 5 m',
        'reline DG1 2024-10-07 meter 4800 h {\n  liner TwoLayer12\n  scope run 1\n}',
      ),
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      if (conveyor.linersAlong.length === 0) continue;
      for (const { run, at: change, lower, upper } of setsMeeting(historyOf(estate, conveyor))) {
        if (upper.liner === lower.liner || !isDeclared(conveyor, change, lower, upper)) continue;
        if (change <= run.from + joint || change >= run.to - joint) continue;
        const { joints } = installedPanels(estate, run).layout;
        const after = joints.findIndex((at) => at > change);
        const [from, to] = [joints[after - 1], joints[after]];
        if (from === undefined || to === undefined) continue;
        if (change - from <= joint || to - change <= joint) continue;
        const along = conveyor.linersAlong.findLast(
          ({ liner }) => liner === upper.liner || liner === lower.liner,
        );
        yield {
          origin: along?.use.origin ?? conveyor.linerUse.origin,
          message:
            `Panel ${after} of run ${run.number} of ${conveyor.name} lies from ${chainageOn(conveyor, from)} to ` +
            `${chainageOn(conveyor, to)}, and the liner changes within it, at ${chainageOn(conveyor, change)}: ` +
            `${lower.liner.name} below, ${upper.liner.name} above.`,
          related: [{ origin: conveyor.linerUse.origin, message: `liner of ${conveyor.name}` }],
        };
      }
    }
  },
};

/** Where the conveyor says that another liner begins, and no reline brought both sides. */
function isDeclared(conveyor: Conveyor, at: number, lower: LinerSet, upper: LinerSet): boolean {
  if (lower.reline && upper.reline) return false;
  return conveyor.linersAlong.some(({ stretch }) => {
    const place = intervalOf(conveyor, stretch, panelEnds);
    return place !== undefined && [place.from, place.to].some((end) => Math.abs(end - at) <= joint);
  });
}
