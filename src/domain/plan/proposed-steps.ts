// The steps of a job for which no order is written: what has to be done at each run of the scope, from which end it is
// fitted, and which panels beyond the scope must come off because a hole between two old panels cannot be closed. Every
// choice is tried against the order checker; the first that it has nothing against is taken. Where no break takes up the
// length errors the closing panel is cut to the gap as measured on site, as a written order would be mended.

import { unitOfMachine } from '../model/unit-of-machine.js';
import { chainageText } from '../units/length-words.js';
import type { Estate } from '../model/estate.js';
import type { Heat, Job, Step, StepAction } from '../model/job.js';
import type { Run } from '../model/runs.js';
import type { Stated } from '../model/stated.js';
import type { Stretch } from '../model/stretch.js';
import { gatesAbove, isLockedByIsolation } from '../order/gates-above.js';
import { groundOf, within, type Area, type Ground, type Piece, type RunGround } from '../order/ground.js';
import { usualFireWatch } from '../order/heat.js';
import { judge } from '../order/judge.js';
import { panelsStretch } from '../order/repairs.js';
import { usualStartOf, type End } from '../order/start.js';
import { isHeldUpByNothing } from './held-up.js';
import type { ClosingError, Violation } from '../order/violation.js';
import { liftsOf } from './lifts.js';

export interface Proposal {
  /** In an order that can be done one after another. */
  readonly steps: readonly Step[];
  readonly runs: readonly ProposedRun[];
}

export interface ProposedRun {
  readonly run: Run;
  readonly start: End;
  readonly first: number;
  readonly last: number;
  /** Panels that the scope does not name and that must come off too; undefined for none. */
  readonly beyond?: { readonly first: number; readonly last: number };
  /** Where no break takes up the length errors: what they may add up to, and the closing panel is cut to the gap as measured. */
  readonly cutToFit?: ClosingError;
}

export function proposeSteps(job: Job, estate: Estate): Proposal {
  const ground = groundOf({ ...job }, [], estate);
  const runs = ground.runs.flatMap((run) => {
    const wanted = within(run.panels, ground.scope).map(({ panel }) => panel);
    return inParts(job, estate, run, wanted);
  });
  return { steps: withGates(job, estate, stepsFor(job, ground, runs)), runs };
}

/**
 * Panels of one run that do not lie together are fitted in parts, and what lies between stays: good panels are not taken out because
 * those on both sides are. Where a part cannot be closed without them, what has to come off too is said.
 */
function inParts(
  job: Job,
  estate: Estate,
  run: RunGround,
  wanted: readonly number[],
): readonly ProposedRun[] {
  const parts: { first: number; last: number }[] = [];
  for (const panel of wanted) {
    const part = parts.at(-1);
    if (part && panel === part.last + 1) part.last = panel;
    else parts.push({ first: panel, last: panel });
  }
  const [tail] = parts;
  const head = parts.at(-1);
  if (!tail || !head) return [];
  const chosen = parts.map(({ first, last }) => choose(job, estate, run, first, last));
  if (chosen.every(({ first }, i) => first > (chosen[i - 1]?.last ?? 0))) return chosen;
  const together = choose(job, estate, run, tail.first, head.last);
  const between = { first: tail.last + 1, last: head.first - 1 };
  return [{ ...together, beyond: together.beyond ?? between }];
}

/** As asked from the usual end, as asked from the other, then with the panels beyond, fewest first. */
function choose(job: Job, estate: Estate, run: RunGround, first: number, last: number): ProposedRun {
  const usual = usualStartOf(run.run).start;
  const other = usual === 'head' ? 'tail' : 'head';
  const n = run.panels.length;
  const extended: [number, number, End][] = [
    [1, last, 'head'],
    [first, n, 'tail'],
    [1, n, usual],
    [1, n, other],
  ];
  extended.sort((a, b) => a[1] - a[0] - (b[1] - b[0]));
  const ways: [number, number, End][] = [[first, last, usual], [first, last, other], ...extended];
  const tried: { proposed: ProposedRun; against: ReturnType<typeof complaints> }[] = [];
  for (const [from, to, start] of ways) {
    const proposed = proposal(run, from, to, start, first, last);
    const against = complaints(job, estate, run, proposed);
    if (against.length === 0) return proposed;
    tried.push({ proposed, against });
  }
  // Only the length is against it: the whole run from the end that carries its panels is always among these.
  const cut = tried.find(({ against }) => against.every(({ kind }) => kind === 'closing error too large'));
  const closing = cut?.against.find((each) => each.closing)?.closing;
  return cut && closing
    ? { ...cut.proposed, cutToFit: closing }
    : proposal(run, first, last, usual, first, last);
}

function proposal(
  run: RunGround,
  from: number,
  to: number,
  start: End,
  first: number,
  last: number,
): ProposedRun {
  const beyond =
    from < first ? { first: from, last: first - 1 } : to > last ? { first: last + 1, last: to } : undefined;
  return { run: run.run, start, first: from, last: to, ...(beyond ? { beyond } : {}) };
}

/** What the checker has against fitting this way, once everything else is as it should be. */
function complaints(
  job: Job,
  estate: Estate,
  run: RunGround,
  proposed: ProposedRun,
): readonly Pick<Violation, 'kind' | 'closing'>[] {
  const steps = (['strip', 'clean', 'fit'] as const).map((action) =>
    newStep(job, action, stretchOf(job, run, proposed), action === 'fit' ? proposed.start : undefined),
  );
  return judge({ ...job, order: { steps, origin: job.origin } }, estate)
    .map(({ violation }) => violation)
    .filter(
      ({ kind }) =>
        kind === 'closing error too large' ||
        kind === 'closes inside the run' ||
        kind === 'panel would slide' ||
        kind === 'two fronts',
    );
}

function stepsFor(job: Job, ground: Ground, runs: readonly ProposedRun[]): Step[] {
  const { conveyor } = job;
  const whole: Stretch = { kind: 'all', origin: job.origin };
  const stretches = runs.flatMap((each) => {
    const run = ground.runs.find((one) => one.run === each.run);
    if (!run) return [];
    const area: Area = {
      from: run.panels[each.first - 1]?.from ?? run.run.from,
      to: run.panels[each.last - 1]?.to ?? run.run.to,
    };
    return [
      { stretch: stretchOf(job, run, each), start: each.start, area, cut: each.cutToFit !== undefined },
    ];
  });
  const opened = job.screwChange ? [whole] : stretches.map(({ stretch }) => stretch);
  const each = (action: StepAction, over: readonly Stretch[]): Step[] =>
    over.map((stretch) => newStep(job, action, stretch));
  // Where neighbouring runs share a cover, a step that would find nothing left to do is left out.
  const parts = (off: StepAction, pieces: readonly Piece[]): Step[] =>
    each(off, job.screwChange ? opened : needed(stretches, pieces).map(({ stretch }) => stretch));
  const one = (action: StepAction): Step => newStep(job, action);
  const screw = (...steps: Step[]): Step[] => (job.screwChange ? steps : []);
  if (opened.length === 0) return [];
  return [
    // A job that is part of another finds the machine isolated.
    ...(job.partOf ? [] : [one('empty')]),
    one('isolate'),
    one('prove dead'),
    ...(conveyor.confinedSpace
      ? each('gas test', gasStretch(opened, whole)).map((step) => ({
          ...step,
          ...(conveyor.plant.gasTestInterval ? { every: conveyor.plant.gasTestInterval } : {}),
        }))
      : []),
    ...(conveyor.covers.length > 0 ? parts('covers off', ground.covers) : each('covers off', opened)),
    ...(conveyor.braces.length > 0 ? parts('braces off', ground.braces) : []),
    ...(conveyor.holdDowns.length > 0 ? parts('hold-downs off', ground.holdDowns) : []),
    ...screw(one('restrain screw'), one('unbolt drive'), ...cutOut(job)),
    ...asking(
      job,
      stretches.flatMap(({ stretch }) => each('strip', [stretch])),
    ),
    ...stretches.flatMap(({ stretch }) => each('clean', [stretch])),
    ...stretches.map(({ stretch, start, cut }) => ({
      ...newStep(job, 'fit', stretch, start),
      ...(cut && { cutToFit: true }),
    })),
    ...screw(...putIn(job), one('bolt drive'), one('release screw')),
    ...(conveyor.holdDowns.length > 0 ? parts('hold-downs on', ground.holdDowns) : []),
    ...(conveyor.braces.length > 0 ? parts('braces on', ground.braces) : []),
    ...each('clear up', opened),
    ...(conveyor.covers.length > 0 ? parts('covers on', ground.covers) : each('covers on', opened)),
    one('remove isolation'),
    one('run empty'),
    one('run loaded'),
  ];
}

/**
 * With the slide gates that are shut while people are below them: first thing once the trough is empty, so that isolation locks
 * what moves them, and opened when nobody is in the trough, where a drive moves them once it has its energy again.
 */
function withGates(job: Job, estate: Estate, steps: readonly Step[]): Step[] {
  const { conveyor } = job;
  const { areas } = groundOf(job, steps, estate);
  const needed = new Set(steps.flatMap((step, i) => gatesAbove(conveyor, step, areas[i] ?? [])));
  const gates = conveyor.breaks.filter((gate) => needed.has(gate)).map(({ name }) => name);
  const moved = (action: StepAction, names: readonly string[]): Step[] =>
    names.map((name) => ({ ...newStep(job, action), gate: { name, origin: job.nameOrigin } }));
  const locked = gates.filter((name) => isLockedByIsolation(conveyor, name));
  const free = gates.filter((name) => !locked.includes(name));
  return steps.flatMap((step) => {
    if (step.action === 'isolate') return [...moved('gate shut', gates), step];
    if (step.action !== 'remove isolation') return [step];
    return [...moved('gate open', free), step, ...moved('gate open', locked)];
  });
}

/** The first that takes liner from under a spiral asks what nobody can propose. */
function asking(job: Job, strips: readonly Step[]): Step[] {
  const note = 'first: what holds the spiral up? Say it in the job.';
  return strips.map((step, k) => (k === 0 && isHeldUpByNothing(job) ? { ...step, note } : step));
}

/** What hot work over liner asks for; whether it is at hand, the crew says. */
function demanded(job: Job): Heat {
  return {
    kind: 'hot',
    shielded: true,
    wet: true,
    fireWatch: minutes(job, usualFireWatch),
    confirmed: false,
    origin: job.nameOrigin,
  };
}

function minutes(job: Job, hours: number): Stated<'duration'> {
  return {
    dimension: 'duration',
    value: hours,
    text: `${Math.round(hours * 60)} min`,
    origin: job.nameOrigin,
  };
}

function watch(job: Job): Step {
  return { ...newStep(job, 'fire watch'), takes: minutes(job, usualFireWatch) };
}

/** The old spiral; cut hot unless the job says otherwise. */
function cutOut(job: Job): Step[] {
  const out = newStep(job, 'remove screw');
  return job.screwChange?.cut === 'cold' ? [out] : [{ ...out, heat: demanded(job) }, watch(job)];
}

/** The new spiral: laid in, then joined one joint at a time, so that no weld is left half done. */
function putIn(job: Job): Step[] {
  const laid = newStep(job, 'insert screw');
  const bolted = job.screwChange?.joints === 'bolted';
  const pieces = liftsOf(job, []).spiral?.pieces;
  if (!pieces) return bolted ? [laid] : [{ ...laid, heat: demanded(job) }, watch(job)];
  const joints = pieces.slice(1).map((piece, k): Step => {
    const first = k === 0 ? 0 : (pieces[k]?.centre ?? 0);
    const last = k === pieces.length - 2 ? job.conveyor.length.value : piece.centre;
    const stretch: Stretch = {
      kind: 'chainage',
      from: chainage(job, first),
      to: chainage(job, last),
      origin: job.nameOrigin,
    };
    return { ...newStep(job, 'join screw', stretch), ...(bolted ? {} : { heat: demanded(job) }) };
  });
  if (joints.length === 0)
    return [bolted ? laid : { ...laid, heat: { kind: 'cold', origin: job.nameOrigin } }];
  return [laid, ...joints, ...(bolted ? [] : [watch(job)])];
}

function chainage(job: Job, at: number): Stated<'length'> {
  const value = Math.round(at);
  const text = unitOfMachine(job.conveyor) === 'in' ? chainageText(value, 'in') : `${value / 1000} m`;
  return { dimension: 'length', value, text, origin: job.nameOrigin };
}

/** The stretches whose parts are not all among the others' too. */
function needed<T extends { readonly area: Area }>(
  stretches: readonly T[],
  pieces: readonly Piece[],
): readonly T[] {
  let kept = [...stretches];
  for (const each of stretches) {
    const rest = kept.filter((other) => other !== each);
    const others = new Set(rest.flatMap((other) => within(pieces, [other.area])));
    if (within(pieces, [each.area]).every((piece) => others.has(piece))) kept = rest;
  }
  return kept;
}

/** One test of the air for all of it: the trough is one space. */
function gasStretch(opened: readonly Stretch[], whole: Stretch): readonly Stretch[] {
  return opened.length === 1 ? opened : [whole];
}

function stretchOf(job: Job, run: RunGround, { first, last }: ProposedRun): Stretch {
  return panelsStretch({ ground: { job } }, run, first, last);
}

/** Not in any text: its origin is the job's. */
export function newStep(job: Job, action: StepAction, stretch?: Stretch, start?: End): Step {
  return {
    action,
    crews: [],
    after: [],
    origin: job.nameOrigin,
    actionOrigin: job.nameOrigin,
    ...(stretch ? { stretch } : {}),
    ...(start ? { start } : {}),
  };
}
