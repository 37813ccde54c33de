// Everything that is wrong with an order, without repairs: the walk, what is left open at its end, pairs of steps that may
// overlap, access, and orders that go in circles.

import { unitOfMachine, lengthOn, chainageOn } from '../model/unit-of-machine.js';
import { formatHours, formatMass } from '../units/format.js';
import type { Estate } from '../model/estate.js';
import type { Job, Step, StepAction } from '../model/job.js';
import { reckonedWords } from '../model/panels.js';
import { panelsText } from '../model/runs.js';
import { accessSlips } from './access.js';
import { tellWhatIsOpen } from './finish.js';
import { areaOf, groundOf, overlaps, within, type Ground, type PieceKind } from './ground.js';
import { sequenceOf, stepAt } from './sequence.js';
import { aloneInside, nobodyOutside, overloads, type Overload } from './people.js';
import { dryingPairs } from './rest.js';
import { personMass, toolMass } from './platform.js';
import { fallingPairs, sharedPairs, unsettledPairs, type FallingPair, type Shared } from './side-by-side.js';
import { sayRole, wordsFor } from './tell.js';
import { sayPieces } from './telling/pieces.js';
import { walk } from './walk.js';
import { listing, sayStep, stretchText } from './words.js';
import type { Grade, Violation, ViolationKind } from './violation.js';
import type { OrderSlip, Walk } from './walk-state.js';

export interface JudgedViolation {
  readonly violation: Omit<Violation, 'repairs'>;
  /** The same for the same complaint about a changed order. */
  readonly key: string;
  /** Where it came from, for repairs. */
  readonly slip?: OrderSlip;
  /** Positions of the two steps of a pair. */
  readonly pair?: { readonly step: number; readonly other: number };
  readonly circle?: readonly number[];
  /** All pairs that are told as this one. */
  readonly pairs?: readonly { readonly step: number; readonly other: number }[];
  /** Slide gates between a pair that could stand as barriers. */
  readonly gates?: readonly string[];
  /** Position of the step, where no slip holds it. */
  readonly at?: number;
  /** Positions of the steps that leave nobody outside. */
  readonly inside?: readonly number[];
  /** How many people the platform takes. */
  readonly overload?: { readonly most: number };
  readonly walk: Walk;
}

export function judge(job: Job, estate: Estate): JudgedViolation[] {
  const steps = job.order?.steps ?? [];
  const sequence = sequenceOf(steps);
  const w = walk(groundOf(job, steps, estate), sequence);
  const found = [...circles(w), ...nowhere(w)];
  const pairs = openPairs(w);
  tellWhatIsOpen(w);
  found.push(...w.slips.map((slip) => fromSlip(w, slip)), ...pairs, ...access(w), ...people(w));
  const at = new Map(steps.map((step, i) => [step, i]));
  const rank = ({ violation }: JudgedViolation): number =>
    violation.step ? (at.get(violation.step) ?? 0) : steps.length;
  return found
    .map((each, i) => ({ each, i }))
    .sort((a, b) => rank(a.each) - rank(b.each) || a.i - b.i)
    .map(({ each }) => each);
}

function fromSlip(w: Walk, slip: OrderSlip): JudgedViolation {
  const step = slip.step === undefined ? undefined : stepAt(w.sequence, slip.step);
  const conflicts = [...slip.others].map(([i, role]) => ({
    step: stepAt(w.sequence, i),
    words: sayRole(slip.kind, role),
  }));
  const [piece] = slip.pieces;
  return {
    walk: w,
    slip,
    key: keyOf(slip.kind, step, piece?.kind, slip.missing, piece?.run?.run.number),
    violation: {
      kind: slip.kind,
      grade: slip.grade,
      ...wordsFor(w, slip),
      conflicts,
      ...place(w, step),
      ...(slip.closing ? { closing: slip.closing } : {}),
    },
  };
}

const sharedWords = {
  crew: { kind: 'crew in two places', reason: 'The same people cannot do both at once.' },
  'access unit': {
    kind: 'access unit in two places',
    reason: 'The platform can stand at only one of them.',
  },
  crane: {
    kind: 'crane in two places',
    reason: 'One hook holds one load; the other piece would be cut free with nothing to hang from.',
  },
} as const satisfies Readonly<Record<Shared, { readonly kind: ViolationKind; readonly reason: string }>>;

/** What it is where two steps leave a piece in different states, neither asking anything of it. */
function contested(kind: PieceKind | undefined): { readonly kind: ViolationKind; readonly grade: Grade } {
  switch (kind) {
    case 'restraint':
      return { kind: 'screw not restrained', grade: 'unsafe' };
    case 'air':
      return { kind: 'gas test missing', grade: 'unsafe' };
    case 'heat':
      return { kind: 'fire watch missing', grade: 'unsafe' };
    case 'litter':
      return { kind: 'not cleared up', grade: 'incomplete' };
    case 'panel':
      return { kind: 'liner not stripped', grade: 'cannot be built' };
    default:
      return { kind: 'closed up too early', grade: 'incomplete' };
  }
}

/** Pairs told at once: hundreds of steps left open towards one another are one slip, and the rest comes up as it is mended. */
const mostPairs = 200;

function openPairs(w: Walk): JudgedViolation[] {
  const { steps, before } = w.sequence;
  if (steps.every((step) => step.after.length === 0)) return []; // one line of steps: no two are open towards each other
  const known = new Set(
    w.slips.flatMap(({ step, others }) =>
      step === undefined ? [] : [...others.keys()].map((other) => pairKey(step, other)),
    ),
  );
  const all = unsettledPairs(w).slice(0, mostPairs);
  // One missing `after` leaves a step open towards a whole chain of others; only the nearest is told.
  const unsettled = all.filter(
    (pair) =>
      !all.some(
        (other) =>
          (other.step === pair.step && before(pair.other, other.other)) ||
          (other.other === pair.other && before(other.step, pair.step)),
      ),
  );
  const found: JudgedViolation[] = [];
  const missed = gatesMissed(w);
  for (const { step, other, touches } of unsettled) {
    if (known.has(pairKey(step, other))) continue;
    const [touch] = touches;
    if (!touch) continue;
    const a = stepAt(w.sequence, other);
    const b = stepAt(w.sequence, step);
    const touched = [...new Set(touches.flatMap((each) => w.ground.pieces[each.piece] ?? []))];
    const pieces = touched.filter((piece) => piece.kind === touched[0]?.kind);
    const { kind, grade } = touch.kind === 'done twice' ? contested(touched[0]?.kind) : touch;
    if (kind === 'gate above open' && pieces.every(({ name = '' }) => missed.has(name))) continue;
    const slip: OrderSlip = {
      kind,
      grade,
      step,
      pieces,
      found: 0,
      wanted: -1,
      others: new Map([[other, 'same time']]),
    };
    found.push({
      walk: w,
      slip,
      pair: { step, other },
      key: keyOf(kind, b, a.origin.start),
      violation: {
        kind,
        grade,
        ...place(w, b),
        message:
          `"${sayStep(b)}" and "${sayStep(a)}" may go on at the same time, but both concern ` +
          `${sayPieces(pieces, unitOfMachine(w.ground.job.conveyor))}, and only one order of the two works.`,
        reason: wordsFor(w, slip).reason,
        conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
      },
    });
  }
  const settled = new Set(all.map(({ step, other }) => pairKey(step, other)));
  for (const { step, other, what, name } of sharedPairs(w, mostPairs)) {
    if (settled.has(pairKey(step, other))) continue;
    settled.add(pairKey(step, other));
    const a = stepAt(w.sequence, other);
    const b = stepAt(w.sequence, step);
    const { kind, reason } = sharedWords[what];
    const who = name === '' ? 'the crew' : name;
    found.push({
      walk: w,
      pair: { step, other },
      key: keyOf(kind, b, a.origin.start),
      violation: {
        kind,
        grade: 'cannot be built',
        ...place(w, b),
        message: `"${sayStep(b)}" and "${sayStep(a)}" may go on at the same time, and both need ${who}.`,
        reason,
        conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
      },
    });
  }
  found.push(...drying(w, settled));
  const told = new Map<string, FallingPair[]>();
  for (const pair of fallingPairs(w, mostPairs)) {
    if (settled.has(pairKey(pair.step, pair.other))) continue;
    if (pair.gates.some((name) => missed.has(name))) continue;
    // A gate that nobody shuts is one matter, however many steps it would part.
    const same = pair.gates.length > 0 ? told.get(pair.gates.join()) : undefined;
    if (same) same.push(pair);
    else {
      const pairs = [pair];
      if (pair.gates.length > 0) told.set(pair.gates.join(), pairs);
      found.push(falling(w, pair, pairs));
    }
  }
  return found;
}

/** Gates that are told of already, as open above people. */
function gatesMissed({ slips }: Walk): ReadonlySet<string> {
  const above = slips.filter(({ kind }) => kind === 'gate above open' || kind === 'gate opened above people');
  return new Set(above.flatMap(({ pieces }) => pieces.flatMap(({ name }) => name ?? [])));
}

/** Work where a place has to dry or cool, with nothing said of which is first. */
function drying(w: Walk, settled: Set<string>): JudgedViolation[] {
  const found: JudgedViolation[] = [];
  for (const { step, other, rest } of dryingPairs(w)) {
    if (settled.has(pairKey(step, other))) continue;
    settled.add(pairKey(step, other));
    const a = stepAt(w.sequence, other);
    const b = stepAt(w.sequence, step);
    found.push({
      walk: w,
      pair: { step, other },
      key: keyOf('still drying', b, a.origin.start),
      violation: {
        kind: 'still drying',
        grade: 'incomplete',
        ...place(w, b),
        message:
          `"${sayStep(b)}" and "${sayStep(a)}" may go on at the same time in one place, ` +
          `which ${rest.kind} for ${formatHours(rest.hours)} once the one is done.`,
        reason:
          rest.kind === 'dries'
            ? 'What is wet under a panel stays wet: sealant does not hold, and rust starts behind the new liner.'
            : 'Polyethylene on hot steel softens and creeps, and hands are burnt.',
        conflicts: [{ step: a, words: sayRole('still drying', 'same time') }],
      },
    });
  }
  return found;
}

function falling(w: Walk, pair: FallingPair, pairs: readonly FallingPair[]): JudgedViolation {
  const { step, other, above, from, below, gates } = pair;
  const a = stepAt(w.sequence, other);
  const b = stepAt(w.sequence, step);
  const [upper, lower] = above === other ? [a, b] : [b, a];
  const { kind, grade, between } = barrier(gates);
  return {
    walk: w,
    pair: { step, other },
    pairs,
    gates,
    key: keyOf(kind, b, a.origin.start),
    violation: {
      kind,
      grade,
      ...place(w, b),
      message:
        `"${sayStep(lower)}" is at ${chainageOn(w.ground.job.conveyor, below)}, ` +
        `below "${sayStep(upper)}" at up to ${chainageOn(w.ground.job.conveyor, from)}, and both may go on at the same time.`,
      reason: `On ${Math.abs(w.ground.job.conveyor.incline.value)}° what gets away up there slides down the trough onto whoever works below. ${between}`,
      conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
    },
  };
}

/** What lies between the two: gates that nobody shuts, or nothing. */
function barrier(gates: readonly string[]): {
  readonly kind: ViolationKind;
  readonly grade: Grade;
  readonly between: string;
} {
  return gates.length > 0
    ? {
        kind: 'gate open between',
        grade: 'incomplete',
        between: `Nothing keeps ${listing(gates)} shut meanwhile.`,
      }
    : {
        kind: 'work below loose parts',
        grade: 'unsafe',
        between: 'No end plate and no slide gate lies between.',
      };
}

function people(w: Walk): JudgedViolation[] {
  const alone = aloneInside(w).map(({ step }): JudgedViolation => {
    const at = stepAt(w.sequence, step);
    return {
      walk: w,
      at: step,
      key: keyOf('lone worker', at),
      violation: {
        kind: 'lone worker',
        grade: 'unsafe',
        ...place(w, at),
        message: `"${sayStep(at)}" has one person inside an enclosed trough, and nobody stands by.`,
        reason:
          'Whoever is overcome by gas cannot call; somebody outside keeps in touch, calls for rescue and never goes in after them.',
        conflicts: [],
      },
    };
  });
  return [...alone, ...unattended(w), ...overloads(w).map((each) => tooHeavy(w, each))];
}

/** One matter, however many steps it takes. */
function unattended(w: Walk): JudgedViolation[] {
  const inside = nobodyOutside(w);
  const [first, ...others] = inside.map((i) => stepAt(w.sequence, i));
  if (!first) return [];
  const also =
    others.length > 0
      ? `; nor during ${listing(
          others.map((step) => `"${sayStep(step)}"`),
          4,
        )}`
      : '';
  return [
    {
      walk: w,
      inside,
      key: keyOf('nobody outside', undefined),
      violation: {
        kind: 'nobody outside',
        grade: 'unsafe',
        ...place(w, first),
        message: `"${sayStep(first)}" has everybody inside an enclosed trough, and the order leaves nobody outside${also}.`,
        reason:
          'Nobody goes into a confined space without a person outside who keeps in touch, calls for rescue and never goes in after them; ' +
          'gas takes everybody inside at the same time.',
        conflicts: others.map((step) => ({ step, words: 'nobody outside here either' })),
      },
    },
  ];
}

function tooHeavy(w: Walk, { step, unit, people: count, standingBy, load, most }: Overload): JudgedViolation {
  const at = stepAt(w.sequence, step);
  const plate = [
    ...(unit.limit ? [unit.limit.text] : []),
    ...(unit.people ? [sayPeople(unit.people.count)] : []),
  ].join(' and ');
  const watching = standingBy > 0 ? ` (${standingBy} standing by)` : '';
  const [part, more, beside] =
    load > 0
      ? [` and a part of ${formatMass(load)}`, ` and ${formatMass(load)}`, ' beside that part']
      : ['', '', ''];
  return {
    walk: w,
    at: step,
    overload: { most },
    key: keyOf('platform overloaded', at),
    violation: {
      kind: 'platform overloaded',
      grade: 'unsafe',
      ...place(w, at),
      message: `"${sayStep(at)}" puts ${sayPeople(count)}${watching} with tools${part} on ${unit.name}, which is rated for ${plate}.`,
      reason:
        `${count} × ${personMass} kg and ${toolMass} kg of tools${more} make ` +
        `${formatMass(count * personMass + toolMass + load)}; ` +
        `${most > 0 ? `it takes ${most} at a time` : `it takes nobody${beside}`}. ` +
        (standingBy > 0
          ? 'Whoever stands by outside the trough has to see the opening, and that is up there; `with 2 people` says how many are ' +
            'up there in all, where the opening is watched from elsewhere. '
          : '') +
        'An overloaded platform tips or fails under all of them.',
      conflicts: [],
    },
  };
}

function sayPeople(count: number): string {
  return `${count} ${count === 1 ? 'person' : 'people'}`;
}

function access(w: Walk): JudgedViolation[] {
  return accessSlips(w).map(({ step, gap, zone, unit }): JudgedViolation => {
    const at = stepAt(w.sequence, step);
    const where = `${chainageOn(w.ground.job.conveyor, gap.from)} to ${chainageOn(w.ground.job.conveyor, gap.to)}`;
    const kind: ViolationKind = zone ? 'no access unit' : 'no access';
    const message = !zone
      ? `"${sayStep(at)}" works where no access is declared: ${where}.`
      : unit
        ? `"${sayStep(at)}" works from ${zone.name ?? 'a mobile platform'} at ` +
          `${lengthOn(w.ground.job.conveyor, zone.height?.value ?? 0)}, ` +
          `and ${unit.name} reaches ${lengthOn(w.ground.job.conveyor, unit.reach?.value ?? 0)}.`
        : `"${sayStep(at)}" works from ${zone.name ?? 'a zone'} (mobile platform, ${where}), and the job has no access unit.`;
    return {
      walk: w,
      key: keyOf(kind, at, gap.from),
      violation: {
        kind,
        grade: 'unsafe',
        ...place(w, at),
        message,
        reason:
          'Nobody can work on a stretch that nobody can stand beside; say how it is reached, or hire what reaches it.',
        conflicts: [],
      },
    };
  });
}

function circles(w: Walk): JudgedViolation[] {
  return w.sequence.circles.flatMap((circle): JudgedViolation[] => {
    const steps = circle.map((i) => stepAt(w.sequence, i));
    const [first, ...rest] = steps;
    if (!first) return [];
    return [
      {
        walk: w,
        circle,
        key: keyOf('circular order', first),
        violation: {
          kind: 'circular order',
          grade: 'cannot be built',
          ...place(w, first),
          message:
            rest.length === 0
              ? `"${sayStep(first)}" waits for itself.`
              : `${listing(
                  steps.map((step) => `"${sayStep(step)}"`),
                  4,
                )} wait for one another, so none can start.`,
          reason:
            'A step without `after` waits for every step written above it, a step with `after` for those it names; here that leads back to where it began.',
          conflicts: rest.map((step) => ({ step, words: 'part of the circle' })),
        },
      },
    ];
  });
}

/** What is done to panels. */
const onLiner: readonly StepAction[] = ['strip', 'clean', 'fit'];

function nowhere(w: Walk): JudgedViolation[] {
  const { job, runs } = w.ground;
  return w.sequence.steps.flatMap((step, i): JudgedViolation[] => {
    const areas = w.ground.areas[i];
    const empty = areas === undefined;
    const bare =
      !empty && onLiner.includes(step.action) && runs.every((run) => within(run.panels, areas).length === 0);
    if (!empty && !bare) return [];
    const text = step.stretch ? stretchText(step.stretch) : 'the scope of the job';
    const at = step.stretch ? '' : 'in ';
    const has = runs.map(
      ({ run, panels }) => `${run.label} with ${panels.length} ${panels.length === 1 ? 'panel' : 'panels'}`,
    );
    return [
      {
        walk: w,
        key: keyOf('no such stretch', step),
        violation: {
          kind: 'no such stretch',
          grade: 'cannot be built',
          step,
          origin: step.stretch?.origin ?? step.actionOrigin,
          message: empty
            ? `${job.conveyor.name} has no ${text}.`
            : `${bareWords(w.ground, step, `${at}${text}`)}, so there is nothing to ${step.action}.`,
          reason: `${job.conveyor.name} has ${listing(has)}.`,
          conflicts: [],
        },
      },
    ];
  });
}

/** No panel counts as worked on; where one reaches into the stretch, which it is. */
function bareWords({ job, runs }: Ground, { stretch }: Step, where: string): string {
  const beside =
    stretch?.kind === 'chainage'
      ? runs.flatMap((ground) =>
          ground.panels
            .filter((panel) => overlaps(panel, areaOf(stretch)))
            .map((panel) => ({ ground, panel })),
        )
      : [];
  const [first] = beside;
  if (!first) return `No liner lies ${where}`;
  const lie = beside.map(
    ({ ground, panel }) =>
      `${panelsText(panel.panel, panel.panel, ground.run.number)} from ${chainageOn(job.conveyor, panel.from)} to ${chainageOn(job.conveyor, panel.to)}`,
  );
  return `No panel has its middle ${where} (${listing(lie)}${reckonedWords(first.ground.run, first.ground)})`;
}

function place(
  w: Walk,
  step: Step | undefined,
): { readonly step: Step; readonly origin: Step['origin'] } | { readonly origin: Step['origin'] } {
  const { job } = w.ground;
  return step ? { step, origin: step.actionOrigin } : { origin: job.order?.origin ?? job.origin };
}

function keyOf(kind: ViolationKind, step: Step | undefined, ...about: readonly unknown[]): string {
  return [kind, step?.origin.source, step?.origin.start, step?.action, ...about].join('|');
}

function pairKey(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}
