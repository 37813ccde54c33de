// What the crew gives back for the records: one reline block a liner and a screw-change block, with everything the plan knows
// filled in and blanks for what only the site can say.

import type { Ground } from '../../../domain/order/ground.js';
import type { AsFittedFacts, PanelRow } from '../pack.js';

export function asFittedFacts(ground: Ground, panels: readonly PanelRow[]): AsFittedFacts {
  const { job } = ground;
  const { conveyor } = job;
  const renewedRuns = ground.runs.filter((run) =>
    panels.some((panel) => panel.run === run.run.number && panel.renewed),
  );
  const liners = [...new Set(renewedRuns.map((run) => run.liner.name))];
  return {
    qualified: `${conveyor.plant.name}.${conveyor.name}`,
    tonnes: conveyor.wearBy === 'tonnes',
    relines: liners.map((liner) => {
      const runs = renewedRuns
        .filter((run) => run.liner.name === liner)
        .map((run) => {
          const own = panels.filter((panel) => panel.run === run.run.number);
          const fresh = own.filter((panel) => panel.renewed).sort((a, b) => a.panel - b.panel);
          return {
            run: run.run.number,
            whole: fresh.length === own.length,
            panels: fresh.map((panel) => ({ panel: panel.panel, length: panel.length })),
          };
        });
      const points = conveyor.points.filter((point) =>
        panels.some(
          (panel) =>
            panel.renewed &&
            runs.some((run) => run.run === panel.run) &&
            point.at.value >= panel.from &&
            point.at.value <= panel.to,
        ),
      );
      return {
        liner,
        thickness: renewedRuns.find((run) => run.liner.name === liner)?.liner.thickness.value ?? 0,
        runs,
        points: points.map((point) => ({ name: point.name, at: point.at.value, clock: point.clock.text })),
      };
    }),
    screw: job.screwChange?.screw.name,
  };
}

/** `scope run 3`, or `scope panels 2 to 4 of run 1`. */
export function scopeLine(run: AsFittedFacts['relines'][number]['runs'][number]): string {
  const [first, last] = [run.panels[0]?.panel, run.panels.at(-1)?.panel];
  if (run.whole || first === undefined || last === undefined) return `scope run ${run.run}`;
  return first === last
    ? `scope panel ${first} of run ${run.run}`
    : `scope panels ${first} to ${last} of run ${run.run}`;
}

/** The blocks with blanks, for paper. */
export function recordTemplate(facts: AsFittedFacts): string {
  const head = `${facts.qualified} ____-__-__ meter ________ h${facts.tonnes ? ' tonnes ________ t' : ''} {`;
  const relines = facts.relines.map((reline) =>
    [
      `reline ${head}`,
      `  liner ${reline.liner}`,
      ...reline.runs.map((run) => `  ${scopeLine(run)}`),
      '  fitting temperature ____ degC',
      '  by "________________"',
      ...reline.points.map((point) => `  ${point.name} thickness ______ mm`),
      ...reline.runs.map(
        (run) => `  fitted run ${run.run} panels ${run.panels.map(() => '______ mm').join(', ')}`,
      ),
      '  offcut ________ mm __',
      '}',
    ].join('\n'),
  );
  const screw =
    facts.screw === undefined
      ? []
      : [[`screw change ${head}`, `  screw ${facts.screw}`, '  by "________________"', '}'].join('\n')];
  return [...relines, ...screw].join('\n\n');
}
