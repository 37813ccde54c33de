// What the crew gives back for the records: one reline block a liner and a screw-change block, with everything the plan knows
// filled in and blanks for what only the site can say.

import { panelsText, sideBySide } from '../../../domain/model/runs.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { Estate } from '../../../domain/model/estate.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { installedPanels } from '../../../domain/model/panels.js';
import type { Ground, RunGround } from '../../../domain/order/ground.js';
import type { AsFittedFacts, PanelRow } from '../pack.js';

/** Joints this far apart (mm) still bound the panels of the same numbers [judgement: what a tape and a saw leave]. */
const sameJoint = 20;

/** `estate` as the job finds the panels, `records` as far as they go: the meter's last reading; `runs` in the order of the work. */
export function asFittedFacts(
  estate: Estate,
  records: Estate,
  ground: Ground,
  runs: readonly RunGround[],
  panels: readonly PanelRow[],
  unit: LengthUnit,
): AsFittedFacts {
  const { job } = ground;
  const { conveyor } = job;
  const renewedRuns = runs.filter((run) =>
    panels.some((panel) => panel.run === run.run.number && panel.renewed),
  );
  const liners = [...new Set(renewedRuns.map((run) => run.liner.name))];
  const last = historyOf(records, conveyor).hours.knots.at(-1);
  return {
    qualified: `${conveyor.plant.name}.${conveyor.name}`,
    tonnes: conveyor.wearBy === 'tonnes',
    unit,
    meter: last && { value: Math.round(last.reading.value), date: formatDay(last.day) },
    relines: liners.map((liner) => {
      const grounds = renewedRuns.filter((run) => run.liner.name === liner);
      return {
        liner,
        thickness: grounds[0]?.liner.thickness.value ?? 0,
        runs: grounds.map((run) => runFacts(estate, run, panels)),
        points: conveyor.points.flatMap((point) => {
          const on = panels.filter(
            (panel) =>
              panel.renewed &&
              grounds.some((run) => run.run.number === panel.run) &&
              point.at.value >= panel.from &&
              point.at.value <= panel.to,
          );
          const [first] = on;
          return first === undefined
            ? []
            : [
                {
                  name: point.name,
                  at: point.at.value,
                  clock: point.clock.text,
                  run: first.run,
                  panels: on.map(({ panel }) => panel),
                },
              ];
        }),
      };
    }),
    screw: job.screwChange?.screw.name,
  };
}

function runFacts(
  estate: Estate,
  ground: RunGround,
  panels: readonly PanelRow[],
): AsFittedFacts['relines'][number]['runs'][number] {
  const own = panels.filter((panel) => panel.run === ground.run.number);
  const fresh = own.filter((panel) => panel.renewed).sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
  return {
    run: ground.run.number,
    whole: fresh.length === own.length,
    // A record of a part is read by the joints that lie there, and checked by those of the conveyor's own liner.
    numbered: [installedPanels(estate, ground.run).layout.joints, panelEnds(ground.run)].every(
      (joints) =>
        joints.length === ground.ends.length &&
        joints.every((joint, i) => Math.abs(joint - (ground.ends[i] ?? 0)) <= sameJoint),
    ),
    panels: fresh.map(({ panel, length, from, to }) => ({ panel, length, from, to })),
  };
}

/** `scope run 3`, or `scope panels 2 to 4 of run 1`; a line for each stretch of panels that lie side by side. */
export function scopeLines(run: AsFittedFacts['relines'][number]['runs'][number]): readonly string[] {
  if (run.whole || run.panels.length === 0) return [`scope run ${run.run}`];
  const numbers = run.panels.map(({ panel }) => panel).sort((a, b) => a - b);
  return sideBySide(numbers).map(({ first, last }) => `scope ${panelsText(first, last, run.run)}`);
}

/** The blocks with blanks, for paper. */
export function recordTemplate(facts: AsFittedFacts): string {
  const head = `${facts.qualified} ____-__-__ meter ________ h${facts.tonnes ? ' tonnes ________ t' : ''} {`;
  const relines = facts.relines.map((reline) =>
    [
      `reline ${head}`,
      `  liner ${reline.liner}`,
      ...reline.runs.flatMap((run) => scopeLines(run).map((line) => `  ${line}`)),
      `  fitting temperature ____ ${facts.unit === 'in' ? 'degF' : 'degC'}`,
      '  by "________________"',
      ...reline.points.map((point) => `  ${point.name} thickness ______ ${facts.unit}`),
      ...reline.runs.map(
        (run) => `  fitted run ${run.run} panels ${run.panels.map(() => `______ ${facts.unit}`).join(', ')}`,
      ),
      `  fitted panel __ of run __ thickness ______ ${facts.unit}`,
      `  offcut ________ ${facts.unit} __`,
      '}',
    ].join('\n'),
  );
  const screw =
    facts.screw === undefined
      ? []
      : [[`screw change ${head}`, `  screw ${facts.screw}`, '  by "________________"', '}'].join('\n')];
  return [...relines, ...screw].join('\n\n');
}
