// The plan by the hour: who is where, what is off, what is fitted, how the machine stands. Replayed from the plan's rows with the
// checker's own notes of what each step leaves behind; of a step under way, as many parts count as its share of time.

import { countHoldDowns, type HoldDownCount } from '../model/hold-down-count.js';
import type { Run } from '../model/runs.js';
import { demandsOf } from '../order/demands.js';
import { within, type Ground, type Piece } from '../order/ground.js';
import { restAfter } from '../order/rest.js';
import {
  cleaned,
  dead,
  gateOff,
  gateShut,
  isolated,
  laidScrew,
  newPanel,
  newScrew,
  noScrew,
  off,
  restrained,
  runEmpty,
  runLoaded,
  stripped,
  tested,
  unbolted,
} from '../order/states.js';
import type { JobPlan, PlannedStep } from './job-plan.js';
import { workCalendar, type CalendarMoment } from './work-calendar.js';

export interface PlanHour {
  /** Working hours since the first shift began. */
  readonly from: number;
  readonly to: number;
  readonly begins: CalendarMoment | undefined;
  readonly ends: CalendarMoment | undefined;
  /** What goes on, as positions in the plan's steps, with who does it and from what. */
  readonly doing: readonly {
    readonly step: number;
    readonly crews: readonly string[];
    /** Crews that stand by. */
    readonly standBy: readonly string[];
    readonly people: number;
    readonly unit: string | undefined;
    /** The rest of the hour, or a part of it: hours. */
    readonly hours: number;
  }[];
  /** True where the air would have to be tested again before the shift ends, and nobody may be inside any more. */
  readonly everybodyOut: boolean;
  /** At the end of the hour. */
  readonly stands: MachineState;
}

export interface MachineState {
  readonly power: 'live' | 'isolated' | 'proved dead';
  /** Undefined for a trough that is not enclosed. */
  readonly airTested: boolean | undefined;
  readonly covers: number;
  readonly braces: number;
  readonly holdDowns: HoldDownCount;
  /** Slide gates that do not stand open. */
  readonly gates: readonly { readonly name: string; readonly is: 'shut' | 'stripped' }[];
  readonly drive: 'bolted' | 'restrained' | 'unbolted';
  readonly spiral: 'in' | 'out' | 'partly out' | 'laid in' | 'new';
  /** Runs that the job strips, tail first. */
  readonly runs: readonly {
    readonly run: Run;
    readonly panels: number;
    /** Bare, whether cleaned or not. */
    readonly bare: number;
    readonly clean: number;
    readonly fitted: number;
  }[];
  readonly run: 'not yet' | 'empty' | 'loaded';
  /** Places that still dry or cool, as positions of the steps that left them. */
  readonly resting: readonly number[];
}

/** `ground` must be that of the plan's own rows, in their order. Hours of working time; the last may be a part of one. */
export function hourByHour(plan: JobPlan, ground: Ground): readonly PlanHour[] {
  const calendar = workCalendar(plan.job);
  const ends = calendar.shiftEnds(plan.duration + 24).map(({ at }) => at);
  const hours: PlanHour[] = [];
  for (let from = 0; from < plan.duration - 1e-6;) {
    const night = ends.find((at) => at > from + 1e-6) ?? Infinity;
    const to = Math.min(from + 1, night, plan.duration);
    hours.push({
      from,
      to,
      begins: calendar.startAt(from),
      ends: calendar.finishAt(to),
      doing: plan.steps.flatMap((each, step) => {
        const share = worked(plan, each, from, to);
        if (share < 1e-6) return [];
        const standBy = (each.step.attendants ?? [])
          .map(({ use }) => use.name)
          .filter((name) => !each.crews.includes(name));
        return [{ step, crews: each.crews, standBy, people: each.people, unit: each.unit, hours: share }];
      }),
      everybodyOut: plan.everybodyOut.some((out) => out.from < to - 1e-6 && out.to > from + 1e-6),
      stands: stateAt(plan, ground, to),
    });
    from = to;
  }
  return hours;
}

/** Hours that the step is worked on between two moments: while the air is tested again everything else stands still. */
export function worked(plan: JobPlan, step: PlannedStep, from: number, to: number): number {
  const pauses = [
    ...plan.steps
      .filter(({ repeat }) => repeat !== undefined)
      .map(({ start, finish }) => [start, finish] as const),
    ...plan.everybodyOut.map((out) => [out.from, out.to] as const),
  ];
  const span = (a: number, b: number): number =>
    Math.max(0, Math.min(b, to, step.finish) - Math.max(a, from, step.start));
  // Whoever watches for fire watches on.
  if (step.repeat !== undefined || step.step.action === 'fire watch') return span(from, to);
  return span(from, to) - pauses.reduce((sum, [a, b]) => sum + span(a, b), 0);
}

/** How the machine stands after so many working hours. */
export function stateAt(plan: JobPlan, ground: Ground, at: number): MachineState {
  const state = new Int8Array(ground.pieces.length);
  const byFinish = plan.steps
    .map((step, i) => ({ step, i }))
    .sort((a, b) => a.step.finish - b.step.finish || a.i - b.i);
  const resting: number[] = [];
  for (const { step, i } of byFinish) {
    if (step.start >= at - 1e-9) continue;
    const whole = worked(plan, step, 0, Infinity);
    const share = step.finish <= at + 1e-9 ? 1 : whole > 0 ? worked(plan, step, 0, at) / whole : 0;
    for (const { piece, to } of effectsOf(ground, step, i, share)) state[piece.number] = to;
    if (share === 1 && isResting(plan, ground, step, at)) resting.push(i);
  }
  const count = (pieces: readonly Piece[], ...of: readonly number[]): number =>
    pieces.filter((piece) => of.includes(state[piece.number] ?? 0)).length;
  const is = (piece: Piece, of: number): boolean => state[piece.number] === of;
  return {
    power: is(ground.isolation, dead) ? 'proved dead' : is(ground.isolation, isolated) ? 'isolated' : 'live',
    airTested: ground.job.conveyor.confinedSpace ? count(ground.air, tested) > 0 : undefined,
    covers: count(ground.covers, off),
    braces: count(ground.braces, off),
    holdDowns: countHoldDowns(ground.holdDowns.filter((piece) => is(piece, off))),
    gates: ground.gates.flatMap((gate) =>
      is(gate, gateShut) || is(gate, gateOff)
        ? [{ name: gate.name ?? '', is: is(gate, gateShut) ? ('shut' as const) : ('stripped' as const) }]
        : [],
    ),
    drive: is(ground.drive, unbolted)
      ? 'unbolted'
      : is(ground.restraint, restrained)
        ? 'restrained'
        : 'bolted',
    spiral: spiralOf(ground.screw.map((cell) => state[cell.number] ?? 0)),
    runs: ground.runs.flatMap(({ run, panels }) => {
      const touched = panels.some((panel) => state[panel.number] !== 0);
      if (!touched) return [];
      return [
        {
          run,
          panels: panels.length,
          bare: count(panels, stripped, cleaned),
          clean: count(panels, cleaned),
          fitted: count(panels, newPanel),
        },
      ];
    }),
    run: is(ground.running, runLoaded) ? 'loaded' : is(ground.running, runEmpty) ? 'empty' : 'not yet',
    resting,
  };
}

/** What a share of the step leaves behind: part by part in the order of the work; what has no parts, when it is done. */
function effectsOf(
  ground: Ground,
  { step }: PlannedStep,
  i: number,
  share: number,
): readonly { readonly piece: Piece; readonly to: number }[] {
  const areas = ground.areas[i] ?? [];
  const all = [
    ...demandsOf(ground, step, areas).effects,
    ...(step.action === 'fit' ? fitted(ground, i).map((piece) => ({ piece, to: newPanel })) : []),
  ];
  if (share >= 1) return all;
  const parts = all.filter(({ piece }) => ['panel', 'cover', 'brace', 'hold-down'].includes(piece.kind));
  return parts.slice(0, Math.floor(parts.length * share + 1e-9));
}

/** Panels of a `fit` step; how many are in is told, not which. */
function fitted(ground: Ground, i: number): readonly Piece[] {
  return ground.runs.flatMap((run) => within(run.panels, ground.areas[i] ?? []));
}

function isResting(plan: JobPlan, ground: Ground, step: PlannedStep, at: number): boolean {
  const rest = restAfter(ground, step.step);
  if (!rest) return false;
  const slept = workCalendar(plan.job)
    .shiftEnds(at)
    .filter((end) => end.at >= step.finish - 1e-6 && end.at < at - 1e-6)
    .reduce((sum, { off }) => sum + off, 0);
  return at - step.finish + slept < rest.hours - 1e-6;
}

function spiralOf(cells: readonly number[]): MachineState['spiral'] {
  const every = (of: number): boolean => cells.length > 0 && cells.every((cell) => cell === of);
  if (every(newScrew)) return 'new';
  if (every(noScrew)) return 'out';
  if (cells.some((cell) => cell === laidScrew)) return 'laid in';
  return cells.some((cell) => cell !== 0) ? 'partly out' : 'in';
}
