// What a change of the machine or of a liner does: to the runs and panels that lie there, and to the cut lists and the length of
// the jobs that are still open. Worked out on both sides and compared, not read off the text.

import { unitOfMachine, lengthOn, type Machine } from '../../../domain/model/unit-of-machine.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Job } from '../../../domain/model/job.js';
import { cutsOf } from '../../../domain/plan/job-needs.js';
import { newestDay } from '../../../domain/model/newest.js';
import { asFoundThen } from '../../../domain/plan/jobs-before.js';
import { planJob } from '../../../domain/plan/plan-job.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { formatHours } from '../../../domain/units/format.js';
import { counted } from '../../../domain/units/wording.js';
import type { ConveyorLife, RemainingLife } from '../../remaining-life/remaining-life.js';

/** What something was and is, in words; undefined where it is not there. */
export interface MachineEffect {
  readonly on: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** Runs and their panels, of the conveyors named. */
export function runEffects(
  before: RemainingLife,
  after: RemainingLife,
  conveyors: ReadonlySet<string>,
): readonly MachineEffect[] {
  return [...conveyors].flatMap((name) => {
    const [old, now] = [before, after].map(({ conveyors: lives }) =>
      runsOf(lives.find(({ conveyor }) => conveyor.name === name)),
    );
    const numbers = [...new Set([...(old?.keys() ?? []), ...(now?.keys() ?? [])])].sort((a, b) => a - b);
    return numbers.flatMap((number) => effect(`${name}, run ${number}`, old?.get(number), now?.get(number)));
  });
}

function runsOf(life: ConveyorLife | undefined): ReadonlyMap<number, string> {
  return new Map(
    (life?.runs ?? []).map(({ run, panels }) => {
      const lengths = panels.map((panel) => Math.round(panel.to - panel.from));
      return [
        run.number,
        `${lengthOn(run.conveyor, run.length)} long, ${counted(panels.length, 'panel')} (${lengthsText(run.conveyor, lengths)})`,
      ];
    }),
  );
}

/** `6 × 1200 mm, 900 mm`, from the tail. */
function lengthsText(conveyor: Machine, lengths: readonly number[]): string {
  const groups: { length: number; count: number }[] = [];
  for (const length of lengths) {
    const last = groups.at(-1);
    if (last?.length === length) last.count++;
    else groups.push({ length, count: 1 });
  }
  return groups
    .map(({ length, count }) => `${count > 1 ? `${count} × ` : ''}${panelLength(conveyor, length)}`)
    .join(', ');
}

function panelLength(machine: Machine, mm: number): string {
  return unitOfMachine(machine) === 'mm' ? `${mm} mm` : lengthOn(machine, mm);
}

/** Open jobs on the conveyors named, or themselves named: what to buy, how long it takes, what stands in the way. */
export function jobEffects(
  before: Estate,
  after: Estate,
  concerns: (job: Job) => boolean,
  asOf: CalendarDay | undefined,
): readonly MachineEffect[] {
  const open = (job: Job): boolean =>
    concerns(job) && (asOf === undefined || job.window === undefined || job.window.to.day >= asOf);
  const names = new Set([...before.jobs, ...after.jobs].filter(open).map(({ name }) => name));
  return [...names].sort().flatMap((name) => {
    const [old, now] = [before, after].map((estate) => jobFacts(name, estate, asOf));
    const labels = new Set([...(old?.keys() ?? []), ...(now?.keys() ?? [])]);
    return [...labels].flatMap((label) => effect(`job ${name}, ${label}`, old?.get(label), now?.get(label)));
  });
}

/** After the jobs before it, as its pack has it. */
function jobFacts(name: string, records: Estate, asOf: CalendarDay | undefined): ReadonlyMap<string, string> {
  const facts = new Map<string, string>();
  const asked = records.jobs.find((each) => each.name === name);
  if (!asked) return facts;
  const { job, estate, before } = asFoundThen(asked, records, asOf ?? newestDay(records));
  const plan = planJob(job, estate);
  for (const { liner, toBuy, pieces } of cutsOf(job, estate, plan.ground, before.store)) {
    const cuts = pieces.map(({ length }) => Math.round(length)).sort((a, b) => b - a);
    facts.set(`panels of ${liner.name}`, lengthsText({ liner }, cuts));
    facts.set(
      `to buy of ${liner.name}`,
      toBuy.map(({ length, count }) => `${count} × ${lengthOn({ liner }, length)}`).join(', ') || 'nothing',
    );
  }
  facts.set('working time', formatHours(plan.duration));
  const stops = plan.problems.filter((problem) => problem.stops).map(({ message }) => message);
  facts.set('can be built', stops.length === 0 ? 'yes' : `no: ${stops.join('; ')}`);
  return facts;
}

function effect(on: string, before: string | undefined, after: string | undefined): readonly MachineEffect[] {
  return before === after ? [] : [{ on, before, after }];
}
