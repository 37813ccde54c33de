// The plan's facts as the pack shows them: duration with its proven bound, what is critical, and the lifts.

import { capital } from '../../../domain/units/wording.js';
import type { HandLift, LiftTable, SpiralPieceLift } from '../../../domain/plan/lifts.js';
import { formatChainage } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../page/lengths.js';
import { lengthWords } from '../../page/lengths.js';
import type { LiftFacts, Obstacle, ScheduleFacts, Taking } from '../pack.js';
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

/** What stops the job: the order's own slips with their reasons, then what the plan lacks. */
export function obstaclesOf(plan: JobPlan): readonly Obstacle[] {
  const order = plan.violations
    .filter((violation) => violation.grade !== 'incomplete')
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

export function warningsOf(plan: JobPlan): readonly { readonly message: string; readonly todo: string }[] {
  return plan.problems
    .filter((problem) => !problem.stops)
    .map((problem) => ({ message: capital(problem.message), todo: problem.todo }));
}

export function liftFacts(lifts: LiftTable, unit: LengthUnit, takings: readonly Taking[]): LiftFacts {
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
      pieces: spiral.pieces.map((piece) => ({ ...piece, liftingPoint: hangsFrom(piece) })),
    },
    byHand: lifts.byHand.map((lift) => ({
      what: lift.what,
      // Covers that stay on are not lifted: the count is that of the table of what comes off.
      count: takings.find(({ part }) => part === lift.what)?.off ?? lift.count,
      mass: lift.mass,
      centre: centreWords(lift, unit),
      people: lift.people,
      teamLift: lift.teamLift,
    })),
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
function hangsFrom({ liftingPoint, crane }: SpiralPieceLift): string | undefined {
  return crane
    ? `${crane.place.use.name} at ${formatChainage(Math.round(crane.radius / 100) * 100)}`
    : liftingPoint?.name;
}
