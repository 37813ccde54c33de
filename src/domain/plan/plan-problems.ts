// What stands in the way of a plan, in words, and what would do. `stops`: the job is not buildable until it is settled.

import { unitOfMachine, lengthOn } from '../model/unit-of-machine.js';
import { type LengthUnit, lengthWords, chainageWords } from '../units/length-words.js';
import { formatNumber, formatHours, formatMass } from '../units/format.js';
import { formatDay } from '../units/calendar.js';
import type { Job, Step } from '../model/job.js';
import type { Origin } from '../model/origin.js';
import { panelsText } from '../model/runs.js';
import { reachesInside } from '../order/people.js';
import { sayStep } from '../order/words.js';
import type { ClosingError } from '../order/violation.js';
import { isHeldUpByNothing } from './held-up.js';
import { canDo, welds, type Team } from './teams.js';
import type { LiftProblem } from './lifts.js';
import type { WorkCalendar } from './work-calendar.js';
import type { JobPlan, PlanProblem } from './job-plan.js';

/** A plan whose problems are still to be told. */
type PlanSoFar = Omit<JobPlan, 'problems' | 'buildable' | 'shorten'>;

type Add = (
  kind: PlanProblem['kind'],
  stops: boolean,
  message: string,
  todo: string,
  origin?: Origin,
) => void;

export function planProblems(
  plan: PlanSoFar,
  calendar: WorkCalendar,
  teams: readonly Team[],
  tooMany: { readonly steps: number; readonly teams: number } | undefined,
): readonly PlanProblem[] {
  const problems: PlanProblem[] = [];
  const add: Add = (kind, stops, message, todo, origin = plan.job.nameOrigin) => {
    problems.push({ kind, stops, message, todo, origin });
  };
  if (plan.steps.length === 0) nothingToPlan(plan, add);
  runProblems(plan, add);
  orderProblems(plan, add);
  calendarProblems(plan, calendar, add);
  crewProblems(plan, teams, add);
  gasProblems(plan, add);
  heldUpProblem(plan, add);
  for (const problem of plan.lifts.problems) addLift(problem, plan, add);
  clockProblems(plan, calendar, add);
  watchProblem(plan, add);
  if (tooMany)
    add(
      'too many',
      true,
      `${formatNumber(plan.steps.length)} steps by ${formatNumber(teams.length)} crews and access units ` +
        `are more than a plan is made for: at most ${formatNumber(tooMany.steps)} steps ` +
        `and ${formatNumber(tooMany.teams)} crews and units.`,
      'Divide the job into several with windows of their own.',
    );
  return problems;
}

function nothingToPlan({ job }: PlanSoFar, add: Add): void {
  if (job.relines.length === 0 && !job.screwChange)
    add(
      'nothing to do',
      true,
      'the job has neither a reline nor a screw change.',
      'Say what is renewed: `reline all`, `reline run 2`, or `change screw`.',
    );
  else
    add(
      'no run',
      true,
      'no lined run lies in the scope of the job.',
      `Name a run that ${job.conveyor.name} has.`,
    );
}

function runProblems(plan: PlanSoFar, add: Add): void {
  for (const each of plan.runs) {
    const { label } = each.run;
    const { cutToFit } = each;
    if (cutToFit) cutProblem(plan, label, cutToFit, add);
    if (each.beyond) {
      const { first, last } = each.beyond;
      const which = first === last ? `panel ${first}` : `panels ${first} to ${last}`;
      add(
        'scope too small',
        true,
        `${which} of ${label} must come off too: ` +
          'a hole between panels that stay can be closed at a break only, or with a piece cut to it as measured.',
        `Reline ${scopeOf(plan, each)} instead; or write the order of work, with \`cut to fit\` at the step that fits.`,
      );
    }
  }
}

/** Where the gaps do not take the growth it is told apart: cutting to the gap of a cold day leaves no room for it. */
function cutProblem(
  { job }: PlanSoFar,
  label: string,
  { worst, growth = 0, allowance = 0, breakName }: ClosingError,
  add: Add,
): void {
  const mm = (value: number): string => lengthOn(job.conveyor, Math.round(value * 10) / 10);
  add(
    'cut to fit',
    false,
    `${label} closes only with its last panel cut to the gap as measured: lengths add up to ` +
      `±${mm(worst - growth)}${growth > 0 ? ` and grow by ${mm(growth)} more when warm` : ''}, ` +
      `and ${breakName ?? 'its end'} takes ${mm(allowance)}.`,
    `Measure the gap on site and cut the closing panel to fit${growth > 0 ? ', leaving room for the growth' : ''}; ` +
      'or state what the break takes, or declare a joint ring within the run.',
  );
}

function scopeOf(plan: PlanSoFar, { run, first, last }: PlanSoFar['runs'][number]): string {
  const panels = plan.ground.runs.find((each) => each.run === run)?.panels.length ?? 0;
  return first === 1 && last === panels ? `run ${run.number}` : panelsText(first, last, run.number);
}

function orderProblems(plan: PlanSoFar, add: Add): void {
  for (const { grade, message, origin, repairs, step } of plan.violations) {
    const todo = repairs[0]?.title ?? (step ? `Look at "${sayStep(step)}".` : 'Look at the order.');
    add('order', grade !== 'incomplete', lowerFirst(message), todo.endsWith('.') ? todo : `${todo}.`, origin);
  }
}

function crewProblems({ job, steps }: PlanSoFar, teams: readonly Team[], add: Add): void {
  const { plant } = job.conveyor;
  for (const team of teams) {
    if (team.kind !== 'crew') continue;
    if (team.assumed && job.crews.length === 0)
      add(
        'no crew',
        true,
        'the job names no crew.',
        `Add \`crews …\`; ${plant.name} has ` +
          `${plant.crews.map((crew) => crew.name).join(', ') || 'none declared'}.`,
      );
    else if (team.people < 1)
      add(
        'crew of nobody',
        true,
        `crew ${team.name} has nobody in it.`,
        'State how many people the crew has.',
        job.crews.find(({ use }) => use.name === team.name)?.use.origin,
      );
  }
  const unskilled = steps.find(
    ({ step }) =>
      welds(job, step.action) &&
      step.heat?.kind !== 'cold' &&
      step.crews.length > 0 &&
      !step.crews.some(({ use }) => canDo(job, use.name, step.action)),
  );
  if (unskilled)
    add(
      'no welder',
      false,
      withoutWelder(job, unskilled),
      welders(job, unskilled).length > 0
        ? 'Give the step to the crew that has the skill, or write the skill down where the crew has it.'
        : "Add a crew with the skill welding, or say so in the crew's skills.",
    );
}

/** Crews of the job that may do the step. */
function welders(job: Job, { step }: PlanSoFar['steps'][number]): readonly string[] {
  return job.crews.flatMap(({ use }) => (canDo(job, use.name, step.action) ? [use.name] : []));
}

function withoutWelder(job: Job, planned: PlanSoFar['steps'][number]): string {
  const able = welders(job, planned);
  const says = `"${sayStep(planned.step)}" needs a welder`;
  if (able.length === 0) return `${says}, and no crew of the job has the skill.`;
  const given = planned.step.crews.map(({ use }) => use.name).join(' and ');
  return `${says}, and ${given} has not the skill; ${able.join(' and ')} of this job has.`;
}

function clockProblems(plan: PlanSoFar, calendar: WorkCalendar, add: Add): void {
  for (const p of plan.longerThanShift) {
    const each = plan.steps[p];
    if (!each) continue;
    add(
      'longer than a shift',
      false,
      `"${sayStep(each.step)}" takes ${formatHours(each.finish - each.start)} and the longest shift is ` +
        `${formatHours(calendar.longestShift)}: it would be left half done when the shift ends.`,
      'Divide it into steps that each end within a shift, with nothing in the air and nothing hot, or declare a longer shift.',
      each.step.origin,
    );
  }
  if (plan.openTooLong > 0)
    add(
      'covers open too long',
      false,
      `covers come off ${formatHours(plan.openTooLong)} more than a shift before the work under them begins.`,
      'Take covers off stretch by stretch, shortly before the work there.',
    );
}

function watchProblem(plan: PlanSoFar, add: Add): void {
  if (plan.watchTooLate <= 0) return;
  add(
    'fire watch too late',
    true,
    `the fire watch begins ${formatHours(plan.watchTooLate)} after the hot work has ended: what glows in a gap is found by nobody.`,
    'Let the watch follow the hot work at once, by a crew that is free then and within the same shift.',
  );
}

function calendarProblems(plan: PlanSoFar, calendar: WorkCalendar, add: Add): void {
  const { job, duration, available } = plan;
  if (!calendar.works) {
    add(
      'no shift',
      true,
      'no shift of the plant falls on any day.',
      'State the days of the shift, or leave them out for every day.',
    );
    return;
  }
  if (!job.window || available === undefined || duration <= available + 1e-6) return;
  const window = `${formatDay(job.window.from.day)} to ${formatDay(job.window.to.day)}`;
  const shorter =
    plan.lowerBound > available + 1e-6
      ? `Even the shortest possible takes ${formatHours(plan.lowerBound)}: more crews, longer shifts, or a longer window.`
      : 'A longer window, longer shifts, or another crew.';
  add(
    'window too short',
    true,
    `the work takes ${formatHours(duration)} of shift time and the window ${window} has ${formatHours(available)}.`,
    shorter,
    job.window.origin,
  );
}

/** Whether the air is tested as often as the plant asks while people are inside, by the order's own steps and their times. */
function gasProblems(plan: PlanSoFar, add: Add): void {
  const { conveyor } = plan.job;
  const interval = conveyor.plant.gasTestInterval;
  if (!conveyor.confinedSpace || !interval || interval.value <= 0) return;
  const tests = plan.steps.filter(({ step }) => step.action === 'gas test');
  const stated = tests.filter(({ repeat }) => repeat === undefined);
  if (stated.length === 0) return; // told by the order checker
  const often = (step: Step): boolean =>
    step.every !== undefined && step.every.value <= interval.value + 1e-9;
  if (stated.every(({ step }) => often(step))) return;
  for (const { step, start, finish } of plan.steps) {
    if (!reachesInside(step)) continue;
    const last = tests.filter((test) => test.finish <= start + 1e-6).at(-1);
    const from = stated.filter((test) => test.finish <= start + 1e-6).at(-1);
    if (!last || !from || often(from.step)) continue;
    const within = tests.filter((test) => test.finish > start + 1e-6 && test.finish < finish);
    const moments = [last.finish, ...within.map((test) => test.finish), finish];
    const oldest = Math.max(...moments.slice(1).map((at, k) => at - (moments[k] ?? 0)));
    if (oldest <= interval.value + 1e-6) continue;
    add(
      'gas test not repeated',
      false,
      `"${sayStep(step)}" goes on until ${formatHours(oldest)} after the last gas test, ` +
        `and the air counts as tested for ${interval.text}.`,
      `Write \`every ${interval.text}\` on the gas test, or test again before that.`,
      from.step.actionOrigin,
    );
    return;
  }
}

/** Nobody can propose what holds a spiral up: whoever is on site says it. */
function heldUpProblem({ job, steps, order }: PlanSoFar, add: Add): void {
  if (!isHeldUpByNothing(job)) return;
  const under = steps.find(({ step }) => step.action === 'strip' || step.action === 'fit')?.step;
  if (!under) return;
  add(
    'spiral held by nothing',
    false,
    `"${sayStep(under)}" ${order === 'proposed' ? 'as proposed ' : ''}works under a spiral that stays in, ` +
      `and ${job.name} does not say what holds it up.`,
    'Say it: `spiral held up by "…" rated 500 kg every 3 m` in the job; a competent person chooses the gear.',
    under.actionOrigin,
  );
}

function addLift(problem: LiftProblem, { lifts, job }: Pick<PlanSoFar, 'lifts' | 'job'>, add: Add): void {
  const unit = unitOfMachine(job.conveyor);
  switch (problem.kind) {
    case 'piece over limit': {
      return add(
        'lift over limit',
        true,
        `${pieceOf(problem.piece, lifts, unit)} weighs ${formatMass(problem.mass)}, ` +
          `over the limit of ${formatMass(problem.limit)}, ` +
          (lifts.spiral?.written
            ? 'and the order lifts it in one.'
            : 'and no cut clear of hold-downs and access edges makes it lighter.'),
        'Cut it shorter, raise the lift limit, add a lifting point, or move what the cut must keep clear of.',
      );
    }
    case 'step over limit':
      return add(
        'lift over limit',
        true,
        `"${sayStep(problem.step)}" lifts ${formatMass(problem.mass)} in one, ` +
          `over the limit of ${formatMass(problem.limit)} there.`,
        'Divide it into pieces within the limit, or declare what lifts more.',
        problem.step.origin,
      );
    case 'side pull': {
      return add(
        'side pull',
        true,
        problem.point === undefined || problem.pull === undefined
          ? `no crane of the job reaches ${pieceOf(problem.piece, lifts, unit)}.`
          : `${pieceOf(problem.piece, lifts, unit)} hangs from ${problem.point}, ${lengthWords(problem.pull, unit)} beside its centre of gravity.`,
        'Lift it near its centre: declare a crane that reaches it, or a lifting point above it.',
      );
    }
    case 'over team lift':
      return add(
        'too heavy by hand',
        true,
        `a ${problem.what} weighs ${formatMass(problem.mass)}, over the team lift of ${formatMass(problem.limit)}.`,
        'Use shorter panels or a lifting aid, or raise the team lift.',
      );
    case 'too heavy by hand':
      return add(
        'too heavy by hand',
        false,
        `a ${problem.what} weighs ${formatMass(problem.mass)}, ` +
          `more than ${problem.people === 1 ? 'one person' : `${problem.people} people`} should lift by the ` +
          'usual guideline.',
        'Use a lifting aid, shorter panels, or more people; let a competent person assess the handling.',
      );
    case 'no lift limit':
      return add(
        'no lift limit',
        false,
        `no lift limit and no lifting point says how heavy a piece of the spiral may be; pieces of at most ${lengthWords(6000, unit)} are taken.`,
        'Add `lift limit … kg` to the job.',
      );
    case 'mass unknown':
      return add(
        'mass unknown',
        false,
        `the mass of ${problem.what} is not known: its flight is not described.`,
        'Add `flight … by …` to the screw.',
      );
  }
}

function pieceOf(number: number, lifts: JobPlan['lifts'], unit: LengthUnit): string {
  const piece = lifts.spiral?.pieces[number - 1];
  const where = piece ? ` (${chainageWords(piece.from, unit)} to ${chainageWords(piece.to, unit)})` : '';
  return `piece ${number} of the spiral${where}`;
}

function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
