// Every panel of the conveyor as the job will leave it: number, place, length, mass from geometry, whether it is renewed, cut
// to close the run, and its turn in the fitting.

import { linerSide } from '../../../domain/model/liner-side.js';
import {
  handlingGuideline,
  liftingIndex,
  panelPosture,
  peopleNeeded,
  recommendedWeightLimit,
} from '../../../domain/geometry/handling.js';
import { panelMassIfSound } from '../../../domain/geometry/trough.js';
import type { Step } from '../../../domain/model/job.js';
import { closingError } from '../../../domain/order/closing-error.js';
import type { Area, Ground, RunGround } from '../../../domain/order/ground.js';
import { fittedAreas, touches } from '../../../domain/order/ground.js';
import { boltsOf } from '../../../domain/plan/materials.js';
import type { PanelLift, PanelRow, RunRow } from '../pack.js';

export function runRows(ground: Ground, steps: readonly Step[]): readonly RunRow[] {
  const fitted = fittedAreas(ground);
  const inOrder = runsInOrderOfWork(ground, steps);
  return ground.runs.map((run) => {
    const renewed = run.panels.filter((panel) => isRenewed(fitted, panel)).length;
    const fitFrom = renewed > 0 ? run.start : undefined;
    const closing = closingOf(ground, run, fitted);
    return {
      number: run.run.number,
      label: run.run.label,
      from: run.run.from,
      to: run.run.to,
      liner: run.liner.name,
      gap: run.liner.joint.policy === 'gap' ? run.liner.joint.gap.value : 0,
      panels: run.panels.length,
      renewed,
      ...(fitFrom ? { fitFrom, turn: inOrder.indexOf(run) + 1 } : {}),
      ...(closing ? { closing } : {}),
    };
  });
}

export function panelRows(ground: Ground): readonly PanelRow[] {
  const fitted = fittedAreas(ground);
  return ground.runs.flatMap((run) => {
    const renewed = run.panels.filter((panel) => isRenewed(fitted, panel));
    const inTurn = run.start === 'tail' ? renewed : [...renewed].reverse();
    return run.panels.map((panel): PanelRow => {
      const { length } = panel;
      const mass = massOf(ground, run, length);
      const isNew = renewed.includes(panel);
      return {
        run: run.run.number,
        panel: panel.panel,
        from: panel.from,
        to: panel.to,
        length,
        mass,
        closing: isNew && panel === inTurn.at(-1),
        renewed: isNew,
        turn: isNew ? inTurn.indexOf(panel) + 1 : undefined,
        people: mass === undefined ? undefined : peopleNeeded(mass, handlingGuideline),
        bolts: boltsFor(run, length),
      };
    });
  });
}

/** How the heaviest new panel is lifted by hand; undefined where no new panel's mass is known. */
export function panelLift(ground: Ground, panels: readonly PanelRow[]): PanelLift | undefined {
  const heaviest = Math.max(...panels.map((panel) => (panel.renewed ? (panel.mass ?? 0) : 0)), 0);
  const { insideRadius, sideHeight } = ground.job.conveyor.trough;
  if (heaviest === 0 || !(insideRadius.value > 0) || !(sideHeight.value >= 0)) return undefined;
  const posture = panelPosture(insideRadius.value, sideHeight.value);
  const limit = recommendedWeightLimit(posture);
  const index = liftingIndex(heaviest, limit);
  return { posture, limit, heaviest, ...(index === undefined ? {} : { index }) };
}

/** Runs in the order in which fitting reaches them; of those that one step covers, from the end at which fitting starts. */
export function runsInOrderOfWork(ground: Ground, steps: readonly Step[]): readonly RunGround[] {
  const reached = (run: RunGround): number => {
    const first = steps.findIndex(
      (step, index) =>
        step.action === 'fit' &&
        ground.areas[index]?.some((area) => run.panels.some((panel) => touches(panel, area))),
    );
    return first < 0 ? steps.length : first;
  };
  return [...ground.runs].sort((a, b) => {
    const later = reached(a) - reached(b);
    return later === 0 && a.start === b.start
      ? (a.run.from - b.run.from) * (a.start === 'head' ? -1 : 1)
      : later;
  });
}

function isRenewed(fitted: readonly Area[], panel: RunGround['panels'][number]): boolean {
  return fitted.some((area) => touches(panel, area));
}

function massOf(ground: Ground, run: RunGround, length: number): number | undefined {
  const { trough } = ground.job.conveyor;
  const section = {
    insideRadius: trough.insideRadius.value,
    sideHeight: linerSide(ground.job.conveyor).value,
    thickness: run.liner.thickness.value,
  };
  return panelMassIfSound(section, length, run.liner.density.value);
}

/** The length error that adds up to the closing panel of a run, against the break at which it closes. */
function closingOf(ground: Ground, run: RunGround, fitted: readonly Area[]): RunRow['closing'] {
  const fresh = run.panels.filter((panel) => isRenewed(fitted, panel));
  const last = run.start === 'tail' ? fresh.at(-1) : fresh[0];
  const gap = run.start === 'tail' ? run.run.headBreak : run.run.tailBreak;
  const reached = last && (run.start === 'tail' ? last === run.panels.at(-1) : last === run.panels[0]);
  if (!last || !reached) return undefined;
  const length = fresh.reduce((sum, panel) => sum + panel.to - panel.from, 0);
  const error = closingError(ground.job, run.run, run.liner, last.panel, fresh.length, length, {
    allowance: gap.allowance.value,
    name: gap.name,
  });
  return {
    at: gap.name,
    worst: error.worst,
    rootSumSquare: error.rootSumSquare,
    allowance: gap.allowance.value,
  };
}

/** Undefined where the liner declares no bolts. */
function boltsFor(run: RunGround, length: number): number | undefined {
  const bolt = run.liner.bolt;
  return bolt?.rows && bolt.pitch && bolt.pitch.value > 0
    ? boltsOf(length, bolt.pitch.value, bolt.rows.count)
    : undefined;
}
