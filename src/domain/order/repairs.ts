// Repairs for what is wrong with an order. Each idea is tried: the order is changed, checked again, and offered only if
// the complaint is gone and no more complaints are left than before; the one that leaves the fewest comes first.

import type { Estate } from '../model/estate.js';
import type { Heat, Job, Step, StepAction } from '../model/job.js';
import { stepActions } from '../model/job.js';
import type { Stated } from '../model/stated.js';
import type { Stretch } from '../model/stretch.js';
import { changeJob } from './change-steps.js';
import { openBeforeItRuns, openLater, shutAbove, shutBetween, whileItHasPower } from './gate-repairs.js';
import { areasOf, within, type PieceKind, type RunGround } from './ground.js';
import { isHot, usualFireWatch, watchAfter } from './heat.js';
import { judge, type JudgedViolation } from './judge.js';
import { peopleOn } from './people.js';
import {
  inOrder,
  inRole,
  makeAfter,
  makeBefore,
  needsStretch,
  newStep,
  waits,
  type SlipAt,
} from './repair-steps.js';
import { stepAt } from './sequence.js';
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
      ...shutBetween(w, judged.pairs ?? [], judged.gates ?? []),
      ...makeBefore(w, pair.other, pair.step),
      ...makeBefore(w, pair.step, pair.other),
    ];
  if (violation.kind === 'lone worker') return standBy(w, judged.at ?? 0);
  if (violation.kind === 'nobody outside') return somebodyOutside(w, judged.inside ?? []);
  if (violation.kind === 'platform overloaded') return fewerAboard(w, judged.at ?? 0, judged);
  if (pair) return [...makeBefore(w, pair.other, pair.step), ...makeBefore(w, pair.step, pair.other)];
  return slip ? ideasForSlip(w, slip) : [];
}

function ideasForSlip(w: Walk, slip: OrderSlip): Repair[] {
  if (slip.step === undefined) return addAtEnd(w, slip);
  const found = { w, slip, at: slip.step, here: stepAt(w.sequence, slip.step) };
  switch (slip.kind) {
    case 'two fronts':
      return oneFront(found);
    case 'closes inside the run':
      return [...bringForward(found), ...turn(found), ...openToBreak(found)];
    case 'closing error too large':
      return closesElsewhere(found) ? turn(found) : cutToFit(found);
    case 'panel would slide':
      return [
        ...turn(found),
        { title: 'Declare the stop that the panels rest on (`rest at …` on the conveyor)', changes: [] },
      ];
    case 'not contiguous':
      return [...bringForward(found), ...turn(found)];
    case 'gate out of turn':
      return [...putCauseAfter(found), ...removeStep(found)];
    case 'gate locked':
      return whileItHasPower(found);
    case 'gate above open':
      return shutAbove(found);
    case 'gate opened above people':
      return openLater(found);
    case 'emptied too late':
      return [...slip.others.keys()].flatMap((cause) => makeBefore(w, found.at, cause));
    case 'done twice':
      return removeStep(found);
    case 'hot work over liner':
      return [...bringForward(found), ...insertMissing(found), ...demandProtection(found)];
    case 'fire watch missing':
      return [...bringForward(found), ...addFireWatch(found)];
    case 'fire watch too short':
      return watchLonger(found);
    case 'fire watch too late':
      return [...watchAtOnce(found), ...addFireWatch(found)];
    case 'not cleared up':
      return [...bringForward(found), ...clearUpLater(found), ...toItsPlace(found), ...insertMissing(found)];
    case 'screw not restrained':
      // Released too soon: unbolting the drive later would leave a spiral that is taken out still bolted.
      return found.here.action === 'release screw'
        ? [...bringForward(found), ...insertMissing(found)]
        : [...bringForward(found), ...toItsPlace(found), ...putCauseAfter(found), ...insertMissing(found)];
    case 'screw out of turn':
      return [
        ...bringForward(found),
        ...toItsPlace(found),
        ...putCauseAfter(found),
        ...putCauseInItsPlace(found),
        ...insertMissing(found),
      ];
    case 'spiral from the middle':
      return afterItsNeighbours(found);
    case 'screw still restrained':
    case 'handed back too early':
      return [
        ...bringForward(found),
        ...toItsPlace(found),
        ...(slip.missing ? addAtEnd(w, slip) : []),
        ...putCauseAfter(found),
        ...insertMissing(found),
      ];
    case 'run too early':
      return [
        ...bringForward(found),
        ...toItsPlace(found),
        ...openBeforeItRuns(found),
        ...insertMissing(found),
        ...(slip.missing ? addAtEnd(w, slip) : []),
        ...putCauseAfter(found),
      ];
    case 'gas test missing':
      return [
        ...bringForward(found),
        ...putCauseAfter(found),
        ...insertMissing(found, true),
        ...insertMissing(found),
      ];
    default:
      return [...bringForward(found), ...toItsPlace(found), ...putCauseAfter(found), ...insertMissing(found)];
  }
}

/** Writes what has to be true, for the crew to confirm: nobody here knows whether shields and water are at hand. */
function demandProtection({ here: step }: SlipAt): Repair[] {
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
function addFireWatch({ w, slip, here }: SlipAt): Repair[] {
  const causes = inRole(slip, 'made it so').map((i) => stepAt(w.sequence, i));
  if (causes.length === 0) return [];
  const changes = causes.flatMap((cause): StepChange[] => {
    const watch: Step = {
      ...newStep('fire watch', cause, placeOf(cause)),
      crews: cause.crews,
      takes: hoursOf(watchAfter(cause), cause),
    };
    return [
      { change: 'insert', step: watch, place: 'after', other: cause },
      ...(cause.after.length > 0 ? [{ change: 'add after', step: watch, after: cause } as const] : []),
      ...waits(here, watch),
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

/** Cleared up too soon: after the last that left something lying, and never that work after the covers are on. */
function clearUpLater({ w, slip, at }: SlipAt): Repair[] {
  const { order, steps } = w.sequence;
  const before = order.slice(0, order.indexOf(at));
  const last = before.findLast((i) => slip.others.get(i) === 'made it so');
  const clear = before.findLast((i) => steps[i]?.action === 'clear up');
  return last === undefined || clear === undefined ? [] : makeAfter(w, clear, last);
}

/** The watch follows the last of the hot work that it is for. */
function watchAtOnce({ w, slip, at }: SlipAt): Repair[] {
  const last = inRole(slip, 'made it so').at(-1);
  return last === undefined ? [] : makeAfter(w, at, last);
}

function watchLonger({ w, slip, here }: SlipAt): Repair[] {
  const asked = Math.max(...[...slip.others.keys()].map((i) => watchAfter(stepAt(w.sequence, i))));
  const takes = hoursOf(asked, here);
  return [{ title: `Watch for ${takes.text}`, changes: [{ change: 'set takes', step: here, takes }] }];
}

function afterItsNeighbours({ w, at }: SlipAt): Repair[] {
  return w.sequence.steps.flatMap((step, i) =>
    i > at && step.action === 'remove screw' ? makeAfter(w, at, i) : [],
  );
}

/** True where the end that the front starts from would take up the error. */
function closesElsewhere({ slip, here }: SlipAt): boolean {
  const { run } = runOf(slip);
  const other = startOf(here, run).start === 'tail' ? run.tailBreak : run.headBreak;
  return other.allowance.value >= (slip.closing?.worst ?? Infinity) - 1e-9;
}

/** Cut, for the last gap, on site: what is left to do where no break takes up the error. */
function cutToFit({ here }: SlipAt): Repair[] {
  return [
    {
      title: `Measure the last gap of "${sayStep(here)}" on site and cut the closing panel to fit`,
      changes: [{ change: 'cut to fit', step: here }],
    },
    { title: 'Declare a joint ring in the run, with an allowance for the error', changes: [] },
  ];
}

function standBy(w: Walk, at: number): Repair[] {
  const here = stepAt(w.sequence, at);
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

/** At every step that leaves nobody outside: a crew that has no part in it, or one of those who come. */
function somebodyOutside(w: Walk, inside: readonly number[]): Repair[] {
  const { crews } = w.ground.job;
  const steps = inside.map((i) => stepAt(w.sequence, i));
  const doing = new Set(steps.flatMap((step) => step.crews.map(({ use }) => use.name)));
  const named = steps.every((step) => step.crews.length > 0);
  const free = named ? crews.filter(({ use }) => !doing.has(use.name)) : [];
  const others = steps.map((step) =>
    crews.find(({ use }) => !step.crews.some((crew) => crew.use.name === use.name)),
  );
  const oneFewer = steps.flatMap((step): StepChange[] => {
    const least = peopleOn(w, step, Math.min) ?? 0;
    return least < 2
      ? []
      : [{ change: 'set aboard', step, aboard: { count: least - 1, origin: step.origin } }];
  });
  return [
    ...free.map((crew): Repair => ({
      title: `Let ${crew.use.name} stand by outside`,
      changes: steps.map((step) => ({ change: 'set attendants', step, attendants: [crew] })),
    })),
    ...(named && free.length === 0 && others.every((crew) => crew !== undefined)
      ? [
          {
            title: 'Let the other crew stand by outside',
            changes: steps.map((step, k): StepChange => ({
              change: 'set attendants',
              step,
              attendants: others.slice(k, k + 1),
            })),
          },
        ]
      : []),
    ...(oneFewer.length === steps.length
      ? [{ title: 'Let one of those who come stay outside', changes: oneFewer }]
      : []),
    { title: 'Add a crew to the job that can stand by', changes: [] },
  ];
}

function fewerAboard(w: Walk, at: number, { overload, violation }: JudgedViolation): Repair[] {
  const here = stepAt(w.sequence, at);
  const most = overload?.most ?? 0;
  if (most < 1) return [{ title: 'Take a platform that is rated for it', changes: [] }];
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
function bringForward({ w, slip, at }: SlipAt): Repair[] {
  return inRole(slip, 'comes too late').flatMap((late) => [
    ...makeBefore(w, late, at),
    ...makeAfter(w, at, late),
  ]);
}

/** Steps that close up go in front of the first later kind of work, once what they close up after is done. */
function toItsPlace({ w, slip, here }: SlipAt): Repair[] {
  const late = inRole(slip, 'comes too late');
  if (late.length === 0) return [];
  const last = Math.max(...late);
  const rank = stepActions.indexOf(here.action);
  const next = w.sequence.steps.find((other, i) => i > last && stepActions.indexOf(other.action) > rank);
  return next
    ? [
        {
          title: `Move "${sayStep(here)}" before "${sayStep(next)}"`,
          changes: [{ change: 'move', step: here, place: 'before', other: next }],
        },
      ]
    : [];
}

function putCauseAfter({ w, slip, at }: SlipAt): Repair[] {
  return inRole(slip, 'made it so').flatMap((cause) => makeAfter(w, cause, at));
}

/** What was done too early goes behind the last of the work that comes before it in the usual order. */
function putCauseInItsPlace({ w, slip, at }: SlipAt): Repair[] {
  return inRole(slip, 'made it so').flatMap((cause) => {
    const rank = stepActions.indexOf(stepAt(w.sequence, cause).action);
    const last = w.sequence.steps.findLastIndex(
      (step, i) => i > at && stepActions.indexOf(step.action) < rank,
    );
    return last < 0 ? [] : makeAfter(w, cause, last);
  });
}

/** Of the first piece of a slip about panels. @throws RangeError where it is about something else. */
function runOf(slip: OrderSlip): RunGround {
  const run = slip.pieces[0]?.run;
  if (!run) throw new RangeError(`"${slip.kind}" is about panels.`);
  return run;
}

/** `everywhere`: for the whole scope and not only for the step's stretch. */
function insertMissing({ w, slip, here }: SlipAt, everywhere = false): Repair[] {
  const kind = slip.pieces[0]?.kind;
  if (!kind) return [];
  const added = broughtBy(kind, slip.found, slip.wanted).flatMap((action): Step[] => {
    const stretch = needsStretch(action) && !everywhere ? here.stretch : undefined;
    const step = newStep(action, here, stretch);
    // What throws sparks is watched at once.
    return isHot(w.ground, step)
      ? [step, { ...newStep('fire watch', here, stretch), takes: hoursOf(watchAfter(step), here) }]
      : [step];
  });
  if (added.length === 0) return [];
  return [
    {
      title: `Add ${listing(added.map((step) => `"${sayStep(step)}"`))} before "${sayStep(here)}"`,
      changes: [
        ...added.map((step): StepChange => ({ change: 'insert', step, place: 'before', other: here })),
        ...added.flatMap((step) => waits(here, step)),
      ],
    },
  ];
}

/** Puts what was left out in front of the first later kind of work. */
function addAtEnd(w: Walk, slip: OrderSlip): Repair[] {
  const kind = slip.pieces[0]?.kind;
  const order = w.ground.job.order;
  if (!kind || !order) return [];
  const causes = [...slip.others.keys()].map((i) => stepAt(w.sequence, i));
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
  // A run that the order has further on is not added again.
  const last = Math.max(-1, ...slip.others.keys());
  const runs = (['run empty', 'run loaded'] as const).filter(
    (action) => !w.sequence.steps.some((step, i) => i >= last && step.action === action),
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
  const run = runOf(slip);
  const numbers = slip.pieces.flatMap((piece) => (piece.run === run ? (piece.panel ?? []) : []));
  return [panelsStretch(w, run, Math.min(...numbers), Math.max(...numbers))];
}

function removeStep({ here }: SlipAt): Repair[] {
  return [{ title: `Leave out the second "${sayStep(here)}"`, changes: [{ change: 'remove', step: here }] }];
}

function oneFront({ w, slip, at, here: second }: SlipAt): Repair[] {
  const [other = -1] = inRole(slip, 'other front');
  const first = stepAt(w.sequence, other);
  const { run: of } = runOf(slip);
  const a = startOf(first, of).start;
  const b = startOf(second, of).start;
  const run = of.label;
  const ways: readonly (Repair & { readonly from: End })[] = [
    {
      from: b,
      title: `Fit ${run} from the ${b} only: "${sayStep({ ...first, start: b })}" after "${sayStep(second)}"`,
      changes: [
        { change: 'set start', step: first, start: b },
        { change: 'move', step: first, place: 'after', other: second },
        ...inOrder(second, first),
      ],
    },
    {
      from: a,
      title: `Fit ${run} from the ${a} only: "${sayStep({ ...second, start: a })}" after "${sayStep(first)}"`,
      changes: [{ change: 'set start', step: second, start: a }, ...waits(second, first)],
    },
    { from: a, ...inOneStep(w, runOf(slip), a, other, at) },
    { from: b, ...inOneStep(w, runOf(slip), b, at, other) },
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

/** One of two steps that fit a run does the work of both, by both crews but for who stands by outside. */
function inOneStep(w: Walk, run: RunGround, start: End, kept: number, left: number): Repair {
  const [stays, goes] = [stepAt(w.sequence, kept), stepAt(w.sequence, left)];
  const panelsOf = (i: number): number[] =>
    within(run.panels, areasOf(w.ground, i)).map(({ panel }) => panel);
  const all = [...new Set([...panelsOf(kept), ...panelsOf(left)])].sort((a, b) => a - b);
  const [first = 0, last = 0] = [all[0], all.at(-1)];
  const grows = all.length > panelsOf(kept).length && last - first + 1 === all.length;
  const stretch = panelsStretch(w, run, first, last);
  const named = (crews: Step['crews'] = []): string[] => crews.map(({ use }) => use.name);
  const busy = [...named(stays.crews), ...named(stays.attendants)];
  const more = goes.crews.filter(({ use }) => !busy.includes(use.name));
  const crews = left < kept ? [...more, ...stays.crews] : [...stays.crews, ...more];
  const how = grows
    ? `"${sayStep({ ...stays, stretch, start })}" in place of both`
    : `leave out "${sayStep(goes)}"`;
  return {
    title: `Fit ${run.run.label} from the ${start} only: ${how}`,
    changes: [
      ...(grows ? [{ change: 'set stretch', step: stays, stretch } as const] : []),
      { change: 'set crews', step: stays, crews },
      { change: 'remove', step: goes },
    ],
  };
}

/** The same panels from the other end; where several steps fit the run, all of them, in the opposite order. */
function turn({ w, slip, here }: SlipAt): Repair[] {
  const run = runOf(slip);
  const start = startOf(here, run.run).start === 'tail' ? 'head' : 'tail';
  if (!canStartAt(run.run, start)) return [];
  const fits = w.sequence.steps.filter(
    (step, i) => step.action === 'fit' && within(run.panels, areasOf(w.ground, i)).length > 0,
  );
  const one: Repair = {
    title: `Start "${sayStep({ ...here, start })}" instead`,
    changes: [{ change: 'set start', step: here, start }],
  };
  if (fits.length < 2) return [one];
  const changes: StepChange[] = fits.map((step) => ({ change: 'set start', step, start }));
  // The last goes first: each moves behind the one that was written after it.
  fits.reduceRight((other, step) => {
    changes.push({ change: 'move', step, place: 'after', other }, ...inOrder(other, step));
    return step;
  });
  return [one, { title: `Fit all of ${run.run.label} from the ${start}`, changes }];
}

/** Takes off the panels between the hole and a break as well, in every step that speaks of the same stretch. */
function openToBreak({ w, slip, here }: SlipAt): Repair[] {
  if (here.stretch?.kind !== 'panels') return [];
  const run = runOf(slip);
  const text = stretchText(here.stretch);
  const same = w.sequence.steps.filter((step) => step.stretch && stretchText(step.stretch) === text);
  const first = here.stretch.first.count;
  const last = here.stretch.last.count;
  const ends: readonly [number, number, 'tail' | 'head'][] = [
    [first, run.panels.length, 'tail'],
    [1, last, 'head'],
  ];
  return ends.flatMap(([from, to, start]): Repair | readonly never[] => {
    const stretch = panelsStretch(w, run, from, to);
    const [low, high] = start === 'tail' ? [last + 1, to] : [1, first - 1];
    if (low > high) return [];
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
  const step = stepAt(w.sequence, i);
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
