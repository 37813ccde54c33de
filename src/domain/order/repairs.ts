// Repairs for what is wrong with an order. Each idea is tried: the order is changed, checked again, and offered only if
// the complaint is gone and no more complaints are left than before; the one that leaves the fewest comes first.

import type { Estate } from '../model/estate.js';
import type { Heat, Job, Step, StepAction } from '../model/job.js';
import { stepActions } from '../model/job.js';
import type { Stated } from '../model/stated.js';
import type { Stretch } from '../model/stretch.js';
import { changeJob } from './change-steps.js';
import { areasOf, touches, type PieceKind, type RunGround } from './ground.js';
import { usualFireWatch, watchAfter } from './heat.js';
import { judge, type JudgedViolation } from './judge.js';
import { canStartAt, startOf, type End } from './start.js';
import { broughtBy, cleaned, oldPanel } from './states.js';
import { listing, sayStep, stepText, stretchText } from './words.js';
import { violationKinds, type Repair, type StepChange } from './violation.js';
import type { OrderSlip, Walk } from './walk-state.js';

export function repairsFor(
  job: Job,
  estate: Estate,
  judged: JudgedViolation,
  all: readonly JudgedViolation[],
): Repair[] {
  const ideas = ideasFor(judged);
  const before = burdenOf(all);
  const orders = new Set<string>();
  const tried = ideas.flatMap((repair) => {
    if (repair.changes.length === 0) return [];
    const changed = changeJob(job, repair.changes);
    // Two roads to one order (this before that, that after this) are offered once.
    const text = changed.order?.steps.map(stepText).join('\n') ?? '';
    if (orders.has(text)) return [];
    orders.add(text);
    const left = judge(changed, estate);
    return [{ repair, left: burdenOf(left), gone: !left.some((each) => each.key === judged.key) }];
  });
  const good = tried
    .filter(({ gone, left }) => gone && left < before)
    .map((each, i) => ({ ...each, i }))
    .sort((a, b) => a.left - b.left || a.i - b.i);
  return [...good.map(({ repair }) => repair), ...ideas.filter((idea) => idea.changes.length === 0)];
}

/**
 * How much is wrong with an order: the number of complaints, and among equal numbers how early in the work they are. Every
 * repair lowers it, so taking repairs one after another comes to an end, whichever are taken.
 */
export function burdenOf(all: readonly JudgedViolation[]): number {
  const kinds = Object.keys(violationKinds);
  const most = kinds.length + 1;
  const early = all.reduce((sum, { violation }) => sum + most - kinds.indexOf(violation.kind), 0);
  return all.length * 1e6 + early;
}

function ideasFor(judged: JudgedViolation): Repair[] {
  const { walk: w, slip, pair, circle, violation } = judged;
  if (circle) return circle.flatMap((i) => dropForward(w, i));
  if (violation.kind === 'no access')
    return [
      {
        title: 'Declare the access there on the conveyor (ground, platform, mobile platform, scaffold)',
        changes: [],
      },
    ];
  if (violation.kind === 'no access unit')
    return [
      { title: 'Add an access unit to the job that reaches, or a scaffold to the conveyor', changes: [] },
    ];
  if (violation.kind === 'gate open between' && pair)
    return [
      ...shutGates(w, judged.pairs ?? [], judged.gates ?? []),
      ...makeBefore(w, pair.other, pair.step),
      ...makeBefore(w, pair.step, pair.other),
    ];
  if (violation.kind === 'lone worker') return standBy(w, judged.at);
  if (violation.kind === 'platform overloaded') return fewerAboard(w, judged);
  if (pair) return [...makeBefore(w, pair.other, pair.step), ...makeBefore(w, pair.step, pair.other)];
  return slip ? ideasForSlip(w, slip) : [];
}

function ideasForSlip(w: Walk, slip: OrderSlip): Repair[] {
  switch (slip.kind) {
    case 'two fronts':
      return oneFront(w, slip);
    case 'closes inside the run':
      return [...bringForward(w, slip), ...turn(w, slip), ...openToBreak(w, slip)];
    case 'closing error too large':
      return closesElsewhere(w, slip) ? turn(w, slip) : cutToFit(w, slip);
    case 'panel would slide':
      return [
        ...turn(w, slip),
        { title: 'Declare the stop that the panels rest on (`rest at …` on the conveyor)', changes: [] },
      ];
    case 'not contiguous':
      return [...bringForward(w, slip), ...turn(w, slip)];
    case 'gate out of turn':
      return [...putCauseAfter(w, slip), ...removeStep(w, slip)];
    case 'emptied too late':
      return [...slip.others.keys()].flatMap((cause) => makeBefore(w, slip.step ?? 0, cause));
    case 'done twice':
      return removeStep(w, slip);
    case 'not put back':
    case 'scope not done':
    case 'no trial run':
      return addAtEnd(w, slip);
    case 'hot work over liner':
      return [...bringForward(w, slip), ...insertMissing(w, slip), ...demandProtection(w, slip)];
    case 'fire watch missing':
      return [...bringForward(w, slip), ...addFireWatch(w, slip)];
    case 'fire watch too short':
      return watchLonger(w, slip);
    case 'spiral from the middle':
      return afterItsNeighbours(w, slip);
    case 'handed back too early':
      return [
        ...bringForward(w, slip),
        ...toItsPlace(w, slip),
        ...(slip.missing ? addAtEnd(w, slip) : []),
        ...putCauseAfter(w, slip),
        ...insertMissing(w, slip),
      ];
    case 'run too early':
      return [
        ...bringForward(w, slip),
        ...toItsPlace(w, slip),
        ...insertMissing(w, slip),
        ...(slip.missing ? addAtEnd(w, slip) : []),
        ...putCauseAfter(w, slip),
      ];
    case 'gas test missing':
      return [
        ...bringForward(w, slip),
        ...putCauseAfter(w, slip),
        ...insertMissing(w, slip, true),
        ...insertMissing(w, slip),
      ];
    default:
      return [
        ...bringForward(w, slip),
        ...toItsPlace(w, slip),
        ...putCauseAfter(w, slip),
        ...insertMissing(w, slip),
      ];
  }
}

/** Writes what has to be true, for the crew to confirm: nobody here knows whether shields and water are at hand. */
function demandProtection(w: Walk, slip: OrderSlip): Repair[] {
  const step = stepOf(w, slip);
  if (!step) return [];
  const stated = step.heat?.kind === 'hot' ? step.heat.fireWatch : undefined;
  const heat: Heat = {
    kind: 'hot',
    shielded: true,
    wet: true,
    fireWatch: stated ?? hoursOf(usualFireWatch, step),
    confirmed: false,
    origin: step.origin,
  };
  return [
    {
      title: 'Demand shields, water and a fire watch, to be confirmed by the crew',
      asks: true,
      changes: [{ change: 'set heat', step, heat }],
    },
    {
      title: 'Do it cold: sawn, sheared, bolted or bonded',
      asks: true,
      changes: [{ change: 'set heat', step, heat: { kind: 'cold', origin: step.origin } }],
    },
  ];
}

/** A watch over the place of each step that threw sparks, straight after it. */
function addFireWatch(w: Walk, slip: OrderSlip): Repair[] {
  const causes = [...slip.others].flatMap(([i, role]) =>
    role === 'made it so' ? (w.sequence.steps[i] ?? []) : [],
  );
  if (causes.length === 0) return [];
  const here = stepOf(w, slip);
  const changes = causes.flatMap((cause): StepChange[] => {
    const watch: Step = {
      ...newStep('fire watch', cause, placeOf(cause)),
      crews: cause.crews,
      takes: hoursOf(watchAfter(cause), cause),
    };
    return [
      { change: 'insert', step: watch, place: 'after', other: cause },
      ...(cause.after.length > 0 ? [{ change: 'add after', step: watch, after: cause } as const] : []),
      ...(here && here.after.length > 0 ? [{ change: 'add after', step: here, after: watch } as const] : []),
    ];
  });
  return [
    { title: `Add a fire watch after ${listing(causes.map((step) => `"${sayStep(step)}"`))}`, changes },
  ];
}

/** A drive and a gate are not in the scope that a step without a stretch means. */
function placeOf(step: Step): Stretch | undefined {
  return needsStretch(step.action) ? step.stretch : { kind: 'all', origin: step.origin };
}

function watchLonger(w: Walk, slip: OrderSlip): Repair[] {
  const here = stepOf(w, slip);
  if (!here) return [];
  const asked = Math.max(
    ...[...slip.others.keys()].map((i) => {
      const cause = w.sequence.steps[i];
      return cause ? watchAfter(cause) : 0;
    }),
  );
  const takes = hoursOf(asked, here);
  return [{ title: `Watch for ${takes.text}`, changes: [{ change: 'set takes', step: here, takes }] }];
}

function afterItsNeighbours(w: Walk, slip: OrderSlip): Repair[] {
  const here = slip.step;
  if (here === undefined) return [];
  return w.sequence.steps.flatMap((step, i) =>
    i > here && step.action === 'remove screw' ? makeAfter(w, here, i) : [],
  );
}

/** True where the end that the front starts from would take up the error. */
function closesElsewhere(w: Walk, slip: OrderSlip): boolean {
  const step = stepOf(w, slip);
  const run = slip.pieces[0]?.run?.run;
  if (!step || !run || !slip.closing) return false;
  const other = startOf(step, run).start === 'tail' ? run.tailBreak : run.headBreak;
  return other.allowance.value >= slip.closing.worst - 1e-9;
}

/** Cut, for the last gap, on site: what is left to do where no break takes up the error. */
function cutToFit(w: Walk, slip: OrderSlip): Repair[] {
  const step = stepOf(w, slip);
  return step
    ? [
        {
          title: `Measure the last gap of "${sayStep(step)}" on site and cut the closing panel to fit`,
          changes: [{ change: 'cut to fit', step }],
        },
        { title: 'Declare a joint ring in the run, with an allowance for the error', changes: [] },
      ]
    : [];
}

/** The gate is shut before the earlier of the two, and opened again before the machine is handed back. */
function shutGates(
  w: Walk,
  pairs: readonly { readonly step: number; readonly other: number }[],
  gates: readonly string[],
): Repair[] {
  const { steps } = w.sequence;
  const all = new Set(pairs.flatMap(({ step, other }) => [other, step]));
  const pair = steps.filter((_, i) => all.has(i));
  const first = pair[0];
  const handBack = steps.find((each) => each.action === 'remove isolation');
  if (!first || gates.length === 0) return [];
  const at = (action: StepAction, name: string): Step => ({
    ...newStep(action, first, undefined),
    gate: { name, origin: first.origin },
  });
  const changes = gates.flatMap((name): StepChange[] => {
    const shut = at('gate shut', name);
    return [
      { change: 'insert', step: shut, place: 'before', other: first },
      ...pair.flatMap((each): StepChange[] =>
        each.after.length > 0 ? [{ change: 'add after', step: each, after: shut }] : [],
      ),
      ...(handBack
        ? [{ change: 'insert', step: at('gate open', name), place: 'before', other: handBack } as const]
        : []),
    ];
  });
  return [{ title: `Shut ${listing(gates)} as a barrier first`, changes }];
}

function standBy(w: Walk, at: number | undefined): Repair[] {
  const here = at === undefined ? undefined : w.sequence.steps[at];
  if (!here) return [];
  const mine = here.crews.length > 0 ? here.crews : w.ground.job.crews.slice(0, 1);
  const others = w.ground.job.crews.filter(({ use }) => !mine.some((crew) => crew.use.name === use.name));
  return [
    ...others.map((crew): Repair => ({
      title: `Let ${crew.use.name} stand by`,
      changes: [
        ...(here.crews.length === 0 ? [{ change: 'set crews', step: here, crews: mine } as const] : []),
        { change: 'set attendants', step: here, attendants: [crew] },
      ],
    })),
    { title: 'Add a crew to the job that can stand by', changes: [] },
  ];
}

function fewerAboard(w: Walk, { at, overload, violation }: JudgedViolation): Repair[] {
  const here = at === undefined ? undefined : w.sequence.steps[at];
  const most = overload?.most ?? 0;
  if (!here || most < 1) return [{ title: 'Take a platform that is rated for it', changes: [] }];
  return [
    {
      title: `Let ${most} ${most === 1 ? 'person' : 'people'} be on the platform at a time`,
      changes: [{ change: 'set aboard', step: here, aboard: { count: most, origin: violation.origin } }],
    },
  ];
}

function hoursOf(hours: number, like: Pick<Step, 'origin'>): Stated<'duration'> {
  const text = hours < 2 ? `${Math.round(hours * 60)} min` : `${hours} h`;
  return { dimension: 'duration', value: hours, text, origin: like.origin };
}

/** What comes too late is done first, or this step waits for it. */
function bringForward(w: Walk, slip: OrderSlip): Repair[] {
  if (slip.step === undefined) return [];
  const here = slip.step;
  return [...slip.others]
    .filter(([, role]) => role === 'comes too late')
    .flatMap(([late]) => [...makeBefore(w, late, here), ...makeAfter(w, here, late)]);
}

/** Steps that close up go in front of the first later kind of work, once what they close up after is done. */
function toItsPlace(w: Walk, slip: OrderSlip): Repair[] {
  const here = stepOf(w, slip);
  if (!here || slip.step === undefined) return [];
  const last = Math.max(
    -1,
    ...[...slip.others].flatMap(([i, role]) => (role === 'comes too late' ? [i] : [])),
  );
  const rank = stepActions.indexOf(here.action);
  const next =
    last < 0
      ? undefined
      : w.sequence.steps.find(
          (other, i) => i > last && i !== slip.step && stepActions.indexOf(other.action) > rank,
        );
  return next
    ? [
        {
          title: `Move "${sayStep(here)}" before "${sayStep(next)}"`,
          changes: [{ change: 'move', step: here, place: 'before', other: next }],
        },
      ]
    : [];
}

function putCauseAfter(w: Walk, slip: OrderSlip): Repair[] {
  if (slip.step === undefined) return [];
  const here = slip.step;
  return [...slip.others]
    .filter(([, role]) => role === 'made it so')
    .flatMap(([cause]) => makeAfter(w, cause, here));
}

/** Changes after which step a is sure to be done before step b, by moving or naming a. */
function makeBefore(w: Walk, a: number, b: number): Repair[] {
  const first = w.sequence.steps[a];
  const then = w.sequence.steps[b];
  if (!first || !then) return [];
  const wait: StepChange[] = then.after.length > 0 ? [{ change: 'add after', step: then, after: first }] : [];
  if (a < b)
    return wait.length > 0
      ? [{ title: `Let "${sayStep(then)}" wait for "${sayStep(first)}"`, changes: wait }]
      : [];
  return [
    {
      title: `Move "${sayStep(first)}" before "${sayStep(then)}"`,
      changes: [{ change: 'move', step: first, place: 'before', other: then }, ...wait],
    },
  ];
}

/** Changes after which step b comes after step a, by moving b. */
function makeAfter(w: Walk, b: number, a: number): Repair[] {
  const moved = w.sequence.steps[b];
  const first = w.sequence.steps[a];
  if (!moved || !first) return [];
  const wait: StepChange[] =
    moved.after.length > 0 ? [{ change: 'add after', step: moved, after: first }] : [];
  return [
    {
      title: `Move "${sayStep(moved)}" after "${sayStep(first)}"`,
      changes: [{ change: 'move', step: moved, place: 'after', other: first }, ...wait],
    },
  ];
}

/** `everywhere`: for the whole scope and not only for the step's stretch. */
function insertMissing(w: Walk, slip: OrderSlip, everywhere = false): Repair[] {
  const here = stepOf(w, slip);
  const kind = slip.pieces[0]?.kind;
  if (!here || !kind || slip.wanted < 0) return [];
  const added = broughtBy(kind, slip.found, slip.wanted).map((action) =>
    newStep(action, here, needsStretch(action) && !everywhere ? here.stretch : undefined),
  );
  if (added.length === 0) return [];
  return [
    {
      title: `Add ${listing(added.map((step) => `"${sayStep(step)}"`))} before "${sayStep(here)}"`,
      changes: [
        ...added.map((step): StepChange => ({ change: 'insert', step, place: 'before', other: here })),
        ...(here.after.length > 0
          ? added.map((step): StepChange => ({ change: 'add after', step: here, after: step }))
          : []),
      ],
    },
  ];
}

/** Puts what was left out in front of the first later kind of work. */
function addAtEnd(w: Walk, slip: OrderSlip): Repair[] {
  const kind = slip.pieces[0]?.kind;
  const order = w.ground.job.order;
  if (!kind || !order) return [];
  const causes = [...slip.others].flatMap(([i]) => w.sequence.steps[i] ?? []);
  const actions = missingActions(w, slip, kind);
  const stretches: readonly (Stretch | undefined)[] =
    kind === 'panel'
      ? panelStretches(w, slip)
      : causes.length > 0
        ? causes.map((step) => step.stretch)
        : [undefined];
  const changes: StepChange[] = [];
  const added: Step[] = [];
  for (const stretch of stretches) {
    for (const action of actions) {
      const step = newStep(
        action,
        causes[0] ?? { origin: order.origin, actionOrigin: order.origin, crews: [] },
        needsStretch(action) ? stretch : undefined,
        slip.pieces[0]?.name,
      );
      added.push(step);
      const rank = stepActions.indexOf(action);
      const last = Math.max(-1, ...[...slip.others.keys()]);
      const next = w.sequence.steps.find(
        (other, i) =>
          i > last &&
          (i === slip.step || (other.action !== 'pause' && stepActions.indexOf(other.action) > rank)),
      );
      changes.push(
        next ? { change: 'insert', step, place: 'before', other: next } : { change: 'append', step },
      );
    }
  }
  return [{ title: `Add ${listing(added.map((step) => `"${sayStep(step)}"`))}`, changes }];
}

/** The steps that would put right what a slip tells of a kind of piece, in their order. */
function missingActions(w: Walk, slip: OrderSlip, kind: PieceKind): readonly StepAction[] {
  // A run that the order has is not added again.
  const runs = (['run empty', 'run loaded'] as const).filter(
    (action) => !w.sequence.steps.some((step) => step.action === action),
  );
  switch (kind) {
    case 'isolation':
      return ['remove isolation', ...runs];
    case 'running':
      return runs;
    case 'panel':
      if (slip.found === oldPanel) return ['strip', 'clean', 'fit'];
      return slip.found === cleaned ? ['fit'] : ['clean', 'fit'];
    default:
      return broughtBy(kind, slip.found, slip.wanted);
  }
}

function panelStretches(w: Walk, slip: OrderSlip): Stretch[] {
  const run = slip.pieces[0]?.run;
  if (!run) return [];
  const numbers = slip.pieces.filter((piece) => piece.run === run).map((piece) => piece.panel ?? 1);
  return [panelsStretch(w, run, Math.min(...numbers), Math.max(...numbers))];
}

function removeStep(w: Walk, slip: OrderSlip): Repair[] {
  const here = stepOf(w, slip);
  return here
    ? [{ title: `Leave out the second "${sayStep(here)}"`, changes: [{ change: 'remove', step: here }] }]
    : [];
}

function oneFront(w: Walk, slip: OrderSlip): Repair[] {
  const second = stepOf(w, slip);
  const first = [...slip.others].flatMap(([i, role]) =>
    role === 'other front' ? (w.sequence.steps[i] ?? []) : [],
  )[0];
  if (!second || !first) return [];
  const of = slip.pieces[0]?.run?.run;
  if (!of) return [];
  const a = startOf(first, of).start;
  const b = startOf(second, of).start;
  const run = of.label;
  const together = [
    ...first.crews,
    ...second.crews.filter((crew) => !first.crews.some((other) => other.use.name === crew.use.name)),
  ];
  const waits = (step: Step, other: Step): StepChange[] =>
    step.after.length > 0 ? [{ change: 'add after', step, after: other }] : [];
  const ways: readonly (Repair & { readonly from: End })[] = [
    {
      from: b,
      title: `Fit ${run} from the ${b} only: "${sayStep({ ...first, start: b })}" after "${sayStep(second)}"`,
      changes: [
        { change: 'set start', step: first, start: b },
        { change: 'move', step: first, place: 'after', other: second },
        ...waits(first, second),
      ],
    },
    {
      from: a,
      title: `Fit ${run} from the ${a} only: "${sayStep({ ...second, start: a })}" after "${sayStep(first)}"`,
      changes: [{ change: 'set start', step: second, start: a }, ...waits(second, first)],
    },
    {
      from: a,
      title: `Fit ${run} from the ${a} only: leave out "${sayStep(second)}"`,
      changes: [
        { change: 'set crews', step: first, crews: together },
        { change: 'remove', step: second },
      ],
    },
    {
      from: b,
      title: `Fit ${run} from the ${b} only: leave out "${sayStep(first)}"`,
      changes: [
        { change: 'set crews', step: second, crews: together },
        { change: 'remove', step: first },
      ],
    },
  ];
  // From a lower end that holds nothing, panels slide: no way out of two fronts.
  return [
    ...ways.flatMap(({ from, ...repair }) => (canStartAt(of, from) ? [repair] : [])),
    {
      title: `Declare a break in ${run} where the fronts meet, with an allowance for the error, and keep both`,
      changes: [],
    },
  ];
}

/** The same panels from the other end; where several steps fit the run, all of them, in the opposite order. */
function turn(w: Walk, slip: OrderSlip): Repair[] {
  const here = stepOf(w, slip);
  const run = slip.pieces[0]?.run;
  if (!here || !run) return [];
  const start = startOf(here, run.run).start === 'tail' ? 'head' : 'tail';
  if (!canStartAt(run.run, start)) return [];
  const fits = w.sequence.steps.filter(
    (step, i) =>
      step.action === 'fit' &&
      run.panels.some((panel) => areasOf(w.ground, i).some((area) => touches(panel, area))),
  );
  const one: Repair = {
    title: `Start "${sayStep({ ...here, start })}" instead`,
    changes: [{ change: 'set start', step: here, start }],
  };
  if (fits.length < 2) return [one];
  const changes: StepChange[] = fits.map((step) => ({ change: 'set start', step, start }));
  for (let k = fits.length - 2; k >= 0; k--) {
    const step = fits[k];
    const other = fits[k + 1];
    if (step && other)
      changes.push(
        { change: 'move', step, place: 'after', other },
        ...(step.after.length > 0 ? [{ change: 'add after', step, after: other } as const] : []),
      );
  }
  return [one, { title: `Fit all of ${run.run.label} from the ${start}`, changes }];
}

/** Takes off the panels between the hole and a break as well, in every step that speaks of the same stretch. */
function openToBreak(w: Walk, slip: OrderSlip): Repair[] {
  const here = stepOf(w, slip);
  const run = slip.pieces[0]?.run;
  if (!here?.stretch || here.stretch.kind !== 'panels' || !run) return [];
  const text = stretchText(here.stretch);
  const same = w.sequence.steps.filter((step) => step.stretch && stretchText(step.stretch) === text);
  const first = here.stretch.first.count;
  const last = here.stretch.last.count;
  const ends: readonly [number, number, 'tail' | 'head'][] = [
    [first, run.panels.length, 'tail'],
    [1, last, 'head'],
  ];
  return ends.map(([from, to, start]) => {
    const stretch = panelsStretch(w, run, from, to);
    const [low, high] = start === 'tail' ? [last + 1, to] : [1, first - 1];
    const beyond = low === high ? `panel ${low}` : `panels ${low} to ${high}`;
    const closing = start === 'tail' ? run.run.headBreak : run.run.tailBreak;
    return {
      title: `Take off ${beyond} too and close at ${closing.name}`,
      changes: [
        ...same.map((step): StepChange => ({ change: 'set stretch', step, stretch })),
        { change: 'set start' as const, step: here, start },
      ],
    };
  });
}

function dropForward(w: Walk, i: number): Repair[] {
  const step = w.sequence.steps[i];
  if (!step) return [];
  const written = new Map(w.sequence.steps.map((each, at) => [each.name, at]));
  return step.after
    .filter((use) => (written.get(use.name) ?? -1) >= i)
    .map((use) => ({
      title: `Do not let "${sayStep(step)}" wait for "${use.name}"`,
      changes: [{ change: 'drop after', step, name: use.name }],
    }));
}

export function panelsStretch(
  w: { readonly ground: Pick<Walk['ground'], 'job'> },
  run: RunGround,
  first: number,
  last: number,
): Stretch {
  const { origin } = w.ground.job;
  const number = { count: run.run.number, origin };
  if (first === 1 && last === run.panels.length)
    return { kind: 'run', run: { by: 'number', number }, origin };
  return {
    kind: 'panels',
    first: { count: first, origin },
    last: { count: last, origin },
    run: { by: 'number', number },
    origin,
  };
}

/** Has no place in the text yet: its origin is empty. */
function newStep(
  action: StepAction,
  like: Pick<Step, 'origin' | 'actionOrigin' | 'crews'>,
  stretch: Stretch | undefined,
  gate?: string,
): Step {
  const origin = { source: like.origin.source, start: like.origin.start, end: like.origin.start };
  return {
    action,
    crews: [],
    after: [],
    origin,
    actionOrigin: origin,
    ...(stretch ? { stretch } : {}),
    ...(gate === undefined ? {} : { gate: { name: gate, origin } }),
  };
}

function needsStretch(action: StepAction): boolean {
  switch (action) {
    case 'isolate':
    case 'prove dead':
    case 'remove isolation':
    case 'run empty':
    case 'run loaded':
    case 'restrain screw':
    case 'unbolt drive':
    case 'bolt drive':
    case 'empty':
    case 'pause':
    case 'gate off':
    case 'gate on':
    case 'gate shut':
    case 'gate open':
      return false;
    default:
      return true;
  }
}

function stepOf(w: Walk, slip: OrderSlip): Step | undefined {
  return slip.step === undefined ? undefined : w.sequence.steps[slip.step];
}
