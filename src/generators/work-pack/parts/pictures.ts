// The drawings of a pack, in the order a crew reads them.

import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { screwAfter } from '../../../domain/model/lying-screw.js';
import type { Ground } from '../../../domain/order/ground.js';
import { alongTheTrough } from '../../drawing/along.js';
import { crossSection } from '../../drawing/cross-section.js';
import type { Drawing } from '../../drawing/drawing-sheet.js';
import { elevation } from '../../drawing/elevation.js';
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
            length: panel.length,
            closing: panel.closing,
            renewed: panel.renewed,
          })),
        ...(fitFrom ? { fitFrom } : {}),
      };
    }),
  };
  const liner: LinerSpecification = ground.job.relines[0]?.liner ?? conveyor.liner;
  const screw = screwAfter(ground.job);
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
    ],
    issue,
  );
}
