// The plan by the hour as rows of the pack: who is where, what is off, what is fitted, how the machine stands at the end.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { Ground } from '../../../domain/order/ground.js';
import { hourByHour, type MachineState } from '../../../domain/plan/hour-by-hour.js';
import type { JobPlan } from '../../../domain/plan/job-plan.js';
import type { HourRow, StepRow } from '../pack.js';
import { momentText } from './steps.js';

/** `ground` and `steps` must be those of the plan's own rows, in their order. */
export function hourRows(plan: JobPlan, ground: Ground, steps: readonly StepRow[]): readonly HourRow[] {
  return hourByHour(plan, ground).map(({ from, to, begins, ends, doing, everybodyOut, stands }): HourRow => ({
    from,
    to,
    startText: momentText(begins),
    finishText: momentText(ends),
    doing: doing.map(({ step, crews, standBy, people, unit, hours }) => ({
      step: step + 1,
      action: steps[step]?.action ?? 'pause',
      where: steps[step]?.where ?? '',
      who: crews.join(', '),
      ...(standBy.length > 0 ? { standBy: standBy.join(', ') } : {}),
      people,
      ...(unit === undefined ? {} : { unit }),
      hours,
    })),
    everybodyOut,
    off: offOf(stands, ground.job.conveyor),
    runs: stands.runs.map(({ run, ...counts }) => ({ run: run.number, ...counts })),
    machine: machineWords(stands, steps),
  }));
}

/** What is not declared is not counted: the list of what comes off asks for a count on site. */
function offOf(
  { covers, braces, holdDowns }: MachineState,
  declared: Pick<Conveyor, 'covers' | 'braces' | 'holdDowns'>,
): HourRow['off'] {
  return {
    ...(declared.covers.length === 0 && covers > 0 ? {} : { covers }),
    ...(declared.braces.length === 0 && braces > 0 ? {} : { braces }),
    ...(declared.holdDowns.length === 0 && holdDowns.places > 0 ? {} : { holdDowns }),
  };
}

function machineWords(stands: MachineState, steps: readonly StepRow[]): string[] {
  return [
    stands.power,
    ...(stands.airTested === undefined || stands.power !== 'proved dead'
      ? []
      : [stands.airTested ? 'air tested' : 'air not tested']),
    ...stands.gates.map(({ name, is }) => `${name} ${is}`),
    ...(stands.drive === 'bolted'
      ? []
      : [stands.drive === 'unbolted' ? 'drive unbolted' : 'spiral restrained']),
    ...(stands.spiral === 'in'
      ? []
      : [stands.spiral === 'new' ? 'new spiral in' : `spiral ${stands.spiral}`]),
    ...stands.resting.map(
      (step) => `place of step ${formatNumber(steps[step]?.number ?? 0)} to be left alone`,
    ),
    ...(stands.run === 'not yet' ? [] : [`run ${stands.run}`]),
  ];
}
