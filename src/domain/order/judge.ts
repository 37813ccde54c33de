// Everything that is wrong with an order, without repairs: the walk, what is left open at its end, pairs of steps that may
// overlap, access, and orders that go in circles.

import { formatChainage, formatHours, formatLength, formatMass } from '../units/format.js';
import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import { accessSlips } from './access.js';
import { tellWhatIsOpen } from './finish.js';
import { groundOf } from './ground.js';
import { sequenceOf } from './sequence.js';
import { aloneInside, overloads } from './people.js';
import { dryingPairs } from './rest.js';
import { personMass, toolMass } from './platform.js';
import { fallingPairs, sharedPairs, unsettledPairs, type FallingPair } from './side-by-side.js';
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
  const step = slip.step === undefined ? undefined : w.sequence.steps[slip.step];
  const conflicts = [...slip.others].flatMap(([i, role]) => {
    const other = w.sequence.steps[i];
    return other ? [{ step: other, words: sayRole(slip.kind, role) }] : [];
  });
  return {
    walk: w,
    slip,
    key: keyOf(
      slip.kind,
      step,
      `${slip.pieces[0]?.kind ?? ''}${slip.missing ? ' missing' : ''}`,
      slip.pieces[0]?.run?.run.number ?? 0,
    ),
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

const sharedKinds = {
  crew: 'crew in two places',
  'access unit': 'access unit in two places',
  crane: 'crane in two places',
} as const;

/** Pairs told at once: hundreds of steps left open towards one another are one slip, and the rest comes up as it is mended. */
const mostPairs = 200;

function openPairs(w: Walk): JudgedViolation[] {
  const { steps, before } = w.sequence;
  if (steps.every((step) => step.after.length === 0)) return []; // one line of steps: no two are open towards each other
  const known = new Set(
    w.slips.flatMap((slip) =>
      slip.step === undefined ? [] : [...slip.others.keys()].map((other) => pairKey(slip.step ?? 0, other)),
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
  for (const { step, other, touches } of unsettled) {
    if (known.has(pairKey(step, other))) continue;
    const touch = touches.find((each) => each.kind !== 'done twice') ?? touches[0];
    const a = steps[other];
    const b = steps[step];
    if (!touch || !a || !b) continue;
    const kind: ViolationKind = touch.kind === 'done twice' ? 'closed up too early' : touch.kind;
    const pieces = touches
      .flatMap((each) => w.ground.pieces[each.piece] ?? [])
      .filter((piece, i, list) => list.indexOf(piece) === i && piece.kind === list[0]?.kind);
    const slip: OrderSlip = {
      kind,
      grade: touch.grade,
      step,
      pieces,
      found: 0,
      wanted: -1,
      others: new Map([[other, 'same time']]),
      unsettled: true,
    };
    found.push({
      walk: w,
      slip,
      pair: { step, other },
      key: keyOf(kind, b, 'pair', a.origin.start),
      violation: {
        kind,
        grade: touch.grade,
        ...place(w, b),
        message: `"${sayStep(b)}" and "${sayStep(a)}" may go on at the same time, but both concern ${sayPieces(pieces)}, and only one order of the two works.`,
        reason: wordsFor(w, slip).reason,
        conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
      },
    });
  }
  const settled = new Set(all.map(({ step, other }) => pairKey(step, other)));
  for (const { step, other, what, name } of sharedPairs(w, mostPairs)) {
    const a = steps[other];
    const b = steps[step];
    if (!a || !b || settled.has(pairKey(step, other))) continue;
    settled.add(pairKey(step, other));
    const kind = sharedKinds[what];
    const who = name === '' ? 'the crew' : name;
    found.push({
      walk: w,
      pair: { step, other },
      key: keyOf(kind, b, 'pair', a.origin.start),
      violation: {
        kind,
        grade: 'cannot be built',
        ...place(w, b),
        message: `"${sayStep(b)}" and "${sayStep(a)}" may go on at the same time, and both need ${who}.`,
        reason:
          what === 'crew'
            ? 'The same people cannot do both at once.'
            : what === 'crane'
              ? 'One hook holds one load; the other piece would be cut free with nothing to hang from.'
              : 'The platform can stand at only one of them.',
        conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
      },
    });
  }
  found.push(...drying(w, settled));
  const told = new Map<string, FallingPair[]>();
  for (const pair of fallingPairs(w, mostPairs)) {
    if (settled.has(pairKey(pair.step, pair.other))) continue;
    // A gate that nobody shuts is one matter, however many steps it would part.
    const same = pair.gates.length > 0 ? told.get(pair.gates.join()) : undefined;
    if (same) same.push(pair);
    else {
      const pairs = [pair];
      if (pair.gates.length > 0) told.set(pair.gates.join(), pairs);
      found.push(...falling(w, pair, pairs));
    }
  }
  return found;
}

/** Work where a place has to dry or cool, with nothing said of which is first. */
function drying(w: Walk, settled: Set<string>): JudgedViolation[] {
  const { steps } = w.sequence;
  const found: JudgedViolation[] = [];
  for (const { step, other, rest } of dryingPairs(w)) {
    const a = steps[other];
    const b = steps[step];
    if (!a || !b || settled.has(pairKey(step, other))) continue;
    settled.add(pairKey(step, other));
    found.push({
      walk: w,
      pair: { step, other },
      key: keyOf('still drying', b, 'pair', a.origin.start),
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

function falling(w: Walk, pair: FallingPair, pairs: readonly FallingPair[]): JudgedViolation[] {
  const { step, other, above, from, below, gates } = pair;
  const a = w.sequence.steps[other];
  const b = w.sequence.steps[step];
  if (!a || !b) return [];
  const upper = above === other ? a : b;
  const lower = above === other ? b : a;
  const kind: ViolationKind = gates.length > 0 ? 'gate open between' : 'work below loose parts';
  const between =
    gates.length > 0
      ? `Nothing keeps ${listing(gates)} shut meanwhile.`
      : 'No end plate and no slide gate lies between.';
  return [
    {
      walk: w,
      pair: { step, other },
      pairs,
      gates,
      key: keyOf(kind, b, 'pair', a.origin.start),
      violation: {
        kind,
        grade: gates.length > 0 ? 'incomplete' : 'unsafe',
        ...place(w, b),
        message:
          `"${sayStep(lower)}" is at ${formatChainage(below)}, ` +
          `below "${sayStep(upper)}" at up to ${formatChainage(from)}, and both may go on at the same time.`,
        reason: `On ${Math.abs(w.ground.job.conveyor.incline.value)}° what gets away up there slides down the trough onto whoever works below. ${between}`,
        conflicts: [{ step: a, words: sayRole(kind, 'same time') }],
      },
    },
  ];
}

function people(w: Walk): JudgedViolation[] {
  const { steps } = w.sequence;
  const alone = aloneInside(w).flatMap(({ step }): JudgedViolation[] => {
    const at = steps[step];
    if (!at) return [];
    return [
      {
        walk: w,
        at: step,
        key: keyOf('lone worker', at, 'people', 0),
        violation: {
          kind: 'lone worker',
          grade: 'unsafe',
          ...place(w, at),
          message: `"${sayStep(at)}" has one person inside an enclosed trough, and nobody stands by.`,
          reason:
            'Whoever is overcome by gas cannot call; somebody outside keeps in touch, calls for rescue and never goes in after them.',
          conflicts: [],
        },
      },
    ];
  });
  const heavy = overloads(w).flatMap(({ step, unit, people: count, load, most }): JudgedViolation[] => {
    const at = steps[step];
    if (!at) return [];
    const plate = [
      ...(unit.limit ? [unit.limit.text] : []),
      ...(unit.people ? [`${unit.people.count} people`] : []),
    ].join(' and ');
    const part = load > 0 ? ` and a part of ${formatMass(load)}` : '';
    return [
      {
        walk: w,
        at: step,
        overload: { most },
        key: keyOf('platform overloaded', at, 'people', 0),
        violation: {
          kind: 'platform overloaded',
          grade: 'unsafe',
          ...place(w, at),
          message: `"${sayStep(at)}" puts ${count} ${count === 1 ? 'person' : 'people'} with tools${part} on ${unit.name}, which is rated for ${plate}.`,
          reason:
            `${count} × ${personMass} kg and ${toolMass} kg of ` +
            `tools${load > 0 ? ` and ${formatMass(load)}` : ''} make ` +
            `${formatMass(count * personMass + toolMass + load)}; ` +
            `${most > 0 ? `it takes ${most} at a time` : 'it takes nobody beside that part'}. ` +
            'An overloaded platform tips or fails under all of them.',
          conflicts: [],
        },
      },
    ];
  });
  return [...alone, ...heavy];
}

function access(w: Walk): JudgedViolation[] {
  return accessSlips(w).flatMap(({ step, gap, zone, unit }): JudgedViolation[] => {
    const at = w.sequence.steps[step];
    if (!at) return [];
    const where = `${formatChainage(gap.from)} to ${formatChainage(gap.to)}`;
    const kind: ViolationKind = zone ? 'no access unit' : 'no access';
    const grade: Grade = 'unsafe';
    const message = !zone
      ? `"${sayStep(at)}" works where no access is declared: ${where}.`
      : unit
        ? `"${sayStep(at)}" works from ${zone.name ?? 'a mobile platform'} at ` +
          `${zone.height ? formatLength(zone.height.value) : 'height'}, ` +
          `and ${unit.name} reaches ${unit.reach ? formatLength(unit.reach.value) : 'less'}.`
        : `"${sayStep(at)}" works from ${zone.name ?? 'a zone'} (mobile platform, ${where}), and the job has no access unit.`;
    return [
      {
        walk: w,
        key: keyOf(kind, at, 'access', gap.from),
        violation: {
          kind,
          grade,
          ...place(w, at),
          message,
          reason:
            'Nobody can work on a stretch that nobody can stand beside; say how it is reached, or hire what reaches it.',
          conflicts: [],
        },
      },
    ];
  });
}

function circles(w: Walk): JudgedViolation[] {
  return w.sequence.circles.flatMap((circle): JudgedViolation[] => {
    const steps = circle.flatMap((i) => w.sequence.steps[i] ?? []);
    const [first, ...rest] = steps;
    if (!first) return [];
    return [
      {
        walk: w,
        circle,
        key: keyOf('circular order', first, 'circle', 0),
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

function nowhere(w: Walk): JudgedViolation[] {
  const { job, runs } = w.ground;
  return w.sequence.steps.flatMap((step, i): JudgedViolation[] => {
    const areas = w.ground.areas[i];
    const empty = areas === undefined;
    const liner =
      step.action === 'strip' || step.action === 'clean' || step.action === 'fit' || step.action === 'patch';
    const bare =
      !empty &&
      liner &&
      !runs.some((run) =>
        run.panels.some((panel) =>
          areas.some(
            (area) => (panel.from + panel.to) / 2 > area.from && (panel.from + panel.to) / 2 < area.to,
          ),
        ),
      );
    if (!empty && !bare) return [];
    const text = step.stretch ? stretchText(step.stretch) : 'the scope of the job';
    const has = runs.map(
      ({ run, panels }) => `${run.label} with ${panels.length} ${panels.length === 1 ? 'panel' : 'panels'}`,
    );
    return [
      {
        walk: w,
        key: keyOf('no such stretch', step, 'stretch', 0),
        violation: {
          kind: 'no such stretch',
          grade: 'cannot be built',
          step,
          origin: step.stretch?.origin ?? step.actionOrigin,
          message: empty
            ? `${job.conveyor.name} has no ${text}.`
            : `No liner lies at ${text}, so there is nothing to ${step.action}.`,
          reason: `${job.conveyor.name} has ${listing(has)}.`,
          conflicts: [],
        },
      },
    ];
  });
}

function place(
  w: Walk,
  step: Step | undefined,
): { readonly step: Step; readonly origin: Step['origin'] } | { readonly origin: Step['origin'] } {
  const { job } = w.ground;
  return step ? { step, origin: step.actionOrigin } : { origin: job.order?.origin ?? job.origin };
}

function keyOf(kind: ViolationKind, step: Step | undefined, about: string, number: number): string {
  return `${kind}|${step ? `${step.origin.source}:${step.origin.start}:${step.action}` : ''}|${about}|${number}`;
}

function pairKey(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}
