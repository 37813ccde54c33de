// The drawings of a pack, in the order a crew reads them.

import type { LinerSpecification, ScrewSpecification } from '../../../domain/model/specifications.js';
import type { Ground } from '../../../domain/order/ground.js';
import { workCalendar } from '../../../domain/plan/work-calendar.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { alongTheTrough } from '../../drawing/along.js';
import { crossSection } from '../../drawing/cross-section.js';
import type { Drawing } from '../../drawing/drawing-sheet.js';
import { elevation } from '../../drawing/elevation.js';
import type { GanttFacts } from '../../drawing/gantt.js';
import { gantt } from '../../drawing/gantt.js';
import { panelMap } from '../../drawing/panel-map.js';
import type { Issue, Pictured } from '../../drawing/picture.js';
import { issueDrawings } from '../../drawing/picture.js';
import { spiralLift } from '../../drawing/spiral-lift.js';
import type { PanelRow, RunRow, StepRow } from '../pack.js';
import type { JobPlan } from '../../../domain/plan/job-plan.js';

export function packDrawings(
  ground: Ground,
  plan: JobPlan,
  runs: readonly RunRow[],
  panels: readonly PanelRow[],
  steps: readonly StepRow[],
  issue: Issue,
): readonly Drawing[] {
  const { conveyor } = ground.job;
  const pictured: Pictured = {
    conveyor,
    scope: ground.scope,
    ...(ground.job.screwChange ? { opened: [{ from: 0, to: conveyor.length.value }] } : {}),
    runs: ground.runs.map(({ run }) => {
      const fitFrom = runs.find((row) => row.number === run.number)?.fitFrom;
      return {
        run,
        panels: panels
          .filter((panel) => panel.run === run.number)
          .map((panel) => ({
            number: panel.panel,
            from: panel.from,
            to: panel.to,
            closing: panel.closing,
            renewed: panel.renewed,
          })),
        ...(fitFrom ? { fitFrom } : {}),
      };
    }),
  };
  const liner: LinerSpecification = ground.job.relines[0]?.liner ?? conveyor.liner;
  const screw: ScrewSpecification = ground.job.screwChange?.screw ?? conveyor.screw;
  const lifts = (plan.lifts.spiral?.pieces ?? []).map((piece) => ({
    ...piece,
    liftingPoint: piece.liftingPoint?.name,
  }));
  return issueDrawings(
    [
      elevation(pictured),
      ...alongTheTrough(pictured),
      crossSection(conveyor, { look: 'downstream', liner, screw }),
      ...panelMap(pictured, liner).map((picture) => ({ ...picture, chart: true })),
      ...spiralLift(conveyor, screw, lifts),
      ...gantt(ganttFacts(ground, steps)),
    ],
    issue,
  );
}

function ganttFacts(ground: Ground, steps: readonly StepRow[]): GanttFacts {
  const { job } = ground;
  const duration = Math.max(0, ...steps.map((step) => step.finish));
  const calendar = workCalendar(job);
  const days: { at: number; name: string }[] = [];
  let before: number | undefined;
  // A quarter of an hour is finer than any shift begins.
  for (let quarter = 0; quarter / 4 < duration; quarter++) {
    const day = calendar.startAt(quarter / 4)?.day;
    if (day !== undefined && day !== before) days.push({ at: quarter / 4, name: formatDay(day) });
    before = day;
  }
  return {
    conveyor: job.conveyor.name,
    duration,
    days,
    rows: steps.map((step) => ({
      number: step.number,
      label: `${step.action} ${shortWhere(step)}`.trim(),
      who: step.who,
      start: step.start,
      finish: step.finish,
      float: step.float,
      critical: step.critical,
    })),
  };
}

function shortWhere(step: StepRow): string {
  return step.where
    .replace(/^(all isolation points|whole conveyor|drive plate|whole length)$/, '')
    .replace(/, [\d.]+ m to [\d.]+ m/, '')
    .replace(/spiral, both.*/, '');
}
