// Does a stretch of a job's scope end within a panel that lies there? A panel comes off and goes in whole: one whose middle lies in
// the stretch does, another stays. 50 mm is what a joint may be measured off (judgement, as in TL499).

import { holdsMiddle } from '../../../domain/order/ground.js';
import { concerns, layoutOf } from '../../../domain/order/layout.js';
import { usualStart } from '../../../domain/model/run-layout.js';
import { panelsText, runsOf, type Run } from '../../../domain/model/runs.js';
import type { Job } from '../../../domain/model/job.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { PanelLayout } from '../../../domain/geometry/panel-layout.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

type Panel = PanelLayout['panels'][number];

/** mm. */
const joint = 50;

const jobOf = (scope: string): string => `
job J1 {
  conveyor DG1
  outage Spring27
  ${scope}
  crews Alpha
}`;

export const scopeWithinAPanel: Rule = {
  code: 'TL563',
  title: 'Scope that ends within a panel',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A panel comes off and goes in whole. What the job asks for is then not what its panels, sheets and hours are reckoned for: ' +
    'worn liner stays where somebody thought it renewed, or sound liner comes off.',
  todo: 'Say the panels, or a stretch that ends at their joints.',
  given: 'estate',
  example: jobOf('«reline from 7.7 m to 12 m|reline from 7.5 m to 12 m»'),
  cases: [
    { name: 'at a joint, as near as one can be off', text: jobOf('reline from 8.44 m to 12 m') },
    { name: 'within a panel that stays', text: jobOf('«reline from 8 m to 12 m»') },
    { name: 'beyond the ends of the run: it is relined whole', text: jobOf('reline from 7.2 m to 12 m') },
  ],
  *check({ estate }) {
    for (const job of estate.jobs)
      for (const { stretch, origin } of job.relines) {
        if (stretch.kind !== 'chainage') continue;
        const [from, to] = [stretch.from.value, stretch.to.value];
        const touched = runsOf(job.conveyor).filter((run) => concerns(job, stretch, run));
        for (const run of touched) {
          const panels = panelsLeft(job, run, estate);
          const cut = panels.filter((panel) => isWithin(from, panel) || isWithin(to, panel));
          const [first] = cut;
          if (!first) continue;
          const taken = panels.filter((panel) => holdsMiddle({ from, to }, panel));
          const all = panels.filter((panel) => taken.includes(panel) || cut.includes(panel));
          const ends = cut.map((panel) => {
            const at = isWithin(from, panel) ? from : to;
            const fate = taken.includes(panel) ? 'is renewed whole' : 'stays as it is';
            return (
              `${chainageOn(job.conveyor, at)} lies within panel ${panel.number} of run ${run.number} ` +
              `(${chainageOn(job.conveyor, panel.from)} to ${chainageOn(job.conveyor, panel.to)}), which ${fate}`
            );
          });
          yield {
            origin,
            message: `${ends.join(', and ')}: the job renews ${renewed(job, run, taken)}.`,
            fixes:
              touched.length > 1
                ? []
                : [...new Set([panelWords(run, all), panelWords(run, taken)])].flatMap((words) =>
                    words === undefined ? [] : [replace(stretch.origin, words, { title: `Reline ${words}` })],
                  ),
          };
        }
      }
  },
};

/** The panels whose joints stay where they are; none where the run is relined whole. */
function panelsLeft(job: Job, run: Run, estate: Estate): readonly Panel[] {
  const { kept, layout } = layoutOf(job, run, usualStart(run), estate);
  return kept ? layout.panels : [];
}

function isWithin(at: number, panel: Panel): boolean {
  return at > panel.from + joint && at < panel.to - joint;
}

function renewed({ conveyor }: Job, run: Run, taken: readonly Panel[]): string {
  const [first, last] = [taken[0], taken.at(-1)];
  return first && last
    ? `${panelsText(first.number, last.number, run.number)}, ${chainageOn(conveyor, first.from)} to ${chainageOn(conveyor, last.to)}`
    : `nothing in run ${run.number}`;
}

function panelWords(run: Run, panels: readonly Panel[]): string | undefined {
  const [first, last] = [panels[0], panels.at(-1)];
  return first && last && panelsText(first.number, last.number, run.number);
}
