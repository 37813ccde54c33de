// Every panel of the conveyor as the job will leave it: number, place, length, mass from geometry, whether it is renewed, cut
// to close the run, and its turn in the fitting.

import { handlingGuideline, peopleNeeded } from '../../../domain/geometry/handling.js';
import { panelMass } from '../../../domain/geometry/trough.js';
import type { Step } from '../../../domain/model/job.js';
import type { Area, Ground, RunGround } from '../../../domain/order/ground.js';
import { touches } from '../../../domain/order/ground.js';
import { boltsOf } from '../../../domain/plan/materials.js';
import type { PanelRow, RunRow } from '../pack.js';

export function runRows(ground: Ground, steps: readonly Step[]): readonly RunRow[] {
  const fitted = fittedAreas(ground, steps);
  return ground.runs.map((run) => {
    const renewed = run.panels.filter((panel) => isRenewed(fitted, panel)).length;
    const fitFrom = renewed > 0 ? run.start : undefined;
    return {
      number: run.run.number, label: run.run.label, from: run.run.from, to: run.run.to, liner: run.liner.name,
      panels: run.panels.length, renewed, ...(fitFrom ? { fitFrom } : {}),
    };
  });
}

export function panelRows(ground: Ground, steps: readonly Step[]): readonly PanelRow[] {
  const fitted = fittedAreas(ground, steps);
  return ground.runs.flatMap((run) => {
    const renewed = run.panels.filter((panel) => isRenewed(fitted, panel));
    const inTurn = run.start === 'tail' ? renewed : [...renewed].reverse();
    return run.panels.map((panel): PanelRow => {
      const length = panel.to - panel.from;
      const mass = panelMass(section(ground, run), length, run.liner.density.value);
      const isNew = renewed.includes(panel);
      return {
        run: run.run.number, panel: panel.panel ?? 0, from: panel.from, to: panel.to, length, mass,
        closing: isNew && panel === inTurn.at(-1), renewed: isNew,
        turn: isNew ? inTurn.indexOf(panel) + 1 : undefined,
        people: peopleNeeded(mass, handlingGuideline),
        bolts: boltsFor(run, length),
      };
    });
  });
}

/** Where new panels go: what the order's `fit` steps cover, which can be more than the job asks for; its scope where there are none. */
export function fittedAreas(ground: Ground, steps: readonly Step[]): readonly Area[] {
  const areas = steps.flatMap((step, index) => (step.action === 'fit' ? (ground.areas[index] ?? []) : []));
  return areas.length > 0 ? areas : ground.scope;
}

function isRenewed(fitted: readonly Area[], panel: RunGround['panels'][number]): boolean {
  return fitted.some((area) => touches(panel, area));
}

function section(ground: Ground, run: RunGround): { insideRadius: number; sideHeight: number; thickness: number } {
  const { trough } = ground.job.conveyor;
  return { insideRadius: trough.insideRadius.value, sideHeight: trough.sideHeight.value, thickness: run.liner.thickness.value };
}

/** Undefined where the liner declares no bolts. */
function boltsFor(run: RunGround, length: number): number | undefined {
  const bolt = run.liner.bolt;
  return bolt?.rows && bolt.pitch && bolt.pitch.value > 0 ? boltsOf(length, bolt.pitch.value, bolt.rows.count) : undefined;
}
