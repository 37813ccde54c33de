// The plan's facts as the pack shows them: duration with its proven bound, what is critical, and the lifts.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { unreadText } from '../../../domain/model/unread.js';
import { capital } from '../../../domain/units/wording.js';
import type { HandLift, LiftTable, SpiralPieceLift } from '../../../domain/plan/lifts.js';
import { type LengthUnit, lengthWords, chainageWords } from '../../../domain/units/length-words.js';
import type { LiftFacts, Obstacle, PanelRow, RunRow, ScheduleFacts, Taking } from '../pack.js';
import { momentText } from './steps.js';
import type { JobPlan } from '../../../domain/plan/job-plan.js';

export function scheduleFacts(plan: JobPlan): ScheduleFacts {
  return {
    duration: plan.duration,
    lowerBound: plan.lowerBound,
    boundBecause: plan.boundBecause,
    optimal: plan.optimal,
    available: plan.available,
    finish: momentText(plan.finish),
    accessMoves: plan.accessMoves,
    criticalPath: plan.criticalPath.map((position) => position + 1),
    shorten: plan.shorten,
    defaults: plan.defaults,
    repeatGasTests: plan.repeatGasTests,
  };
}

/** What stops the job: the order's own slips with their reasons (a step done twice among them: a crew would ask which), then what the plan lacks. */
export function obstaclesOf(plan: JobPlan): readonly Obstacle[] {
  const order = plan.violations
    .filter(({ grade, kind }) => grade !== 'incomplete' || kind === 'done twice')
    .map((violation) => ({
      message: violation.message,
      reason: violation.reason,
      repairs: violation.repairs.map((repair) => repair.title),
    }));
  const others = plan.problems
    .filter((problem) => problem.stops && problem.kind !== 'order')
    .map((problem) => ({ message: capital(problem.message), reason: '', repairs: [problem.todo] }));
  return [...order, ...others];
}

/** Stands first: what the pack says of the machine rests on less than was written. */
export function unreadWarning(
  estate: Estate,
  conveyor: Conveyor,
): readonly { readonly message: string; readonly todo: string }[] {
  const message = unreadText(estate, [conveyor]);
  return message === undefined
    ? []
    : [{ message, todo: 'Mend the lines that a check names, then print the pack again.' }];
}

export function warningsOf(plan: JobPlan): readonly { readonly message: string; readonly todo: string }[] {
  return plan.problems
    .filter((problem) => !problem.stops)
    .map((problem) => ({ message: capital(problem.message), todo: problem.todo }));
}

export function liftFacts(
  lifts: LiftTable,
  unit: LengthUnit,
  counts: (lift: HandLift) => { readonly count: number; readonly mass: number },
): LiftFacts {
  const { spiral } = lifts;
  return {
    slingAngle: lifts.slingAngle.value,
    slingAngleAssumed: lifts.slingAngle.assumed,
    spiral: spiral && {
      out: spiral.out.screw.name,
      in: spiral.in.screw.name,
      massOut: spiral.out.massPerMetre,
      massIn: spiral.in.massPerMetre,
      downSlopeForce: spiral.downSlopeForce,
      springBack: spiral.springBack,
      springIndex: spiral.springIndex,
      pieces: spiral.pieces.map((piece) => ({ ...piece, liftingPoint: hangsFrom(piece, unit) })),
    },
    byHand: lifts.byHand.map((lift) => ({
      what: lift.what,
      ...counts(lift),
      centre: centreWords(lift, unit),
      people: lift.people,
      teamLift: lift.teamLift,
    })),
  };
}

/** What is lifted is what comes off and goes in by the order's own steps, which can be more than the job asks for. */
export function liftCounts(
  takings: readonly Taking[],
  panels: readonly PanelRow[],
  runs: readonly RunRow[],
): Parameters<typeof liftFacts>[2] {
  return ({ what, count, mass }) => {
    const taken = takings.find(({ part }) => part === what);
    if (taken) return { count: taken.off, mass };
    const own = panels.filter(
      ({ run, renewed }) =>
        renewed && runs.some(({ number, liner }) => number === run && what === `panel of ${liner}`),
    );
    return own.length === 0
      ? { count, mass }
      : { count: own.length, mass: Math.max(...own.map((panel) => panel.mass ?? 0)) };
  };
}

function centreWords({ centre }: HandLift, unit: LengthUnit): string {
  if (!centre) return '';
  return (
    `${lengthWords(centre.along, unit)} from an end, ` +
    `${lengthWords(Math.abs(centre.below), unit)} ${centre.below >= 0 ? 'below' : 'above'} the centre line`
  );
}

/** The lifting point, or the crane with the radius it then works at. */
function hangsFrom({ liftingPoint, crane }: SpiralPieceLift, unit: LengthUnit): string | undefined {
  return crane
    ? `${crane.place.use.name} at ${chainageWords(Math.round(crane.radius / 100) * 100, unit)}`
    : liftingPoint?.name;
}
