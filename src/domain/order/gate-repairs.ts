// Repairs about slide gates: shut before anybody is below them and while their drive has its energy, opened once nobody is below
// and before the machine runs.

import type { Step } from '../model/job.js';
import { gateDrive, isLockedByIsolation, saysItsDrive } from './gates-above.js';
import { inRole, makeAfter, makeBefore, newStep, waits, type SlipAt } from './repair-steps.js';
import { gateOff } from './states.js';
import type { Repair, StepChange } from './violation.js';
import type { Walk } from './walk-state.js';
import { listing, sayStep } from './words.js';

/** Where a step is put in. */
interface Beside {
  readonly place: 'before' | 'after';
  readonly other: Step;
}

/** Of gates between two crews: shut before the earlier of the two, and opened again. */
export function shutBetween(
  w: Walk,
  pairs: readonly { readonly step: number; readonly other: number }[],
  gates: readonly string[],
): Repair[] {
  const all = new Set(pairs.flatMap(({ step, other }) => [other, step]));
  const pair = w.sequence.steps.filter((_, i) => all.has(i));
  const [first] = pair;
  if (!first) return [];
  const place = gates.some((gate) => isLockedByIsolation(w.ground.job.conveyor, gate))
    ? beforeIsolation(w, first)
    : first;
  return [
    {
      title: `Shut ${listing(gates)} as a barrier first`,
      changes: gates.flatMap((gate) => shutAndOpen(w, gate, place, pair)),
    },
  ];
}

/** Of gates above people that are open: shut before isolation takes their drive away, or at least before the work. */
export function shutAbove(found: SlipAt): Repair[] {
  const { w, slip, at, here } = found;
  const late = inRole(slip, 'comes too late');
  const start = beforeIsolation(w, here);
  const isolate = w.sequence.steps.indexOf(start);
  if (late.length > 0)
    return [
      ...late.flatMap((step) => (isolate < step ? makeBefore(w, step, isolate) : [])),
      ...late.flatMap((step) => makeBefore(w, step, at)),
    ];
  if (slip.found === gateOff) return inRole(slip, 'made it so').flatMap((cause) => makeAfter(w, cause, at));
  const gates = slip.pieces.flatMap(({ name }) => name ?? []);
  return [start, here].map((place) => ({
    title: `Shut ${listing(gates)} before "${sayStep(place)}"`,
    changes: gates.flatMap((gate) => shutAndOpen(w, gate, place, [here])),
  }));
}

/** Opened once everybody below is done; where its drive is locked until then, after that. */
export function openLater({ w, slip, at, here }: SlipAt): Repair[] {
  const last = Math.max(...inRole(slip, 'works below'));
  const place = whereOpened(w, here.gate?.name ?? '');
  return [
    ...(place
      ? [
          {
            title: `Move "${sayStep(here)}" ${place.place} "${sayStep(place.other)}"`,
            changes: [{ change: 'move', step: here, ...place } as const, ...waitsThere(here, place)],
          },
        ]
      : []),
    ...makeAfter(w, at, last),
  ];
}

/** Moved while the drive still has its energy, or once it has it again. */
export function whileItHasPower({ w, at, here }: SlipAt): Repair[] {
  const { steps } = w.sequence;
  const gate = here.gate?.name ?? '';
  const isolate = isolatedAt(steps);
  const handBack = steps.findLastIndex(({ action }) => action === 'remove isolation');
  const moved =
    here.action === 'gate shut'
      ? isolate >= 0 && isolate < at
        ? makeBefore(w, at, isolate)
        : []
      : handBack > at
        ? makeAfter(w, at, handBack)
        : [];
  const { conveyor } = w.ground.job;
  return [
    ...moved,
    ...(saysItsDrive(conveyor, gate) || gateDrive(conveyor, gate) === undefined
      ? []
      : [{ title: `Say what moves it (\`driven by hand\` in the break ${gate})`, changes: [] }]),
  ];
}

/** Gates that no step opens before the machine runs: beside the end of the isolation. */
export function openBeforeItRuns({ w, slip, here }: SlipAt): Repair[] {
  const shut = slip.pieces.flatMap(({ kind, name }) => (kind === 'gate' && name !== undefined ? [name] : []));
  if (shut.length === 0 || !slip.missing || slip.found === gateOff) return [];
  const changes = shut.flatMap((gate): StepChange[] => {
    const open = newStep('gate open', here, undefined, gate);
    const place = whereOpened(w, gate) ?? { place: 'before' as const, other: here };
    return [
      { change: 'insert', step: open, ...place },
      ...(place.place === 'before' ? waits(place.other, open) : waits(here, open)),
    ];
  });
  return [{ title: `Open ${listing(shut)} before "${sayStep(here)}"`, changes }];
}

/** A step that shuts a gate, and one that opens it again where the order has none. */
function shutAndOpen(w: Walk, gate: string, before: Step, users: readonly Step[]): StepChange[] {
  const shut = newStep('gate shut', before, undefined, gate);
  const isolated = before.action === 'isolate';
  const open = newStep('gate open', before, undefined, gate);
  const place = whereOpened(w, gate);
  const { steps } = w.sequence;
  const opens = steps.some(
    (step, i) => step.action === 'gate open' && step.gate?.name === gate && i > steps.indexOf(before),
  );
  const opening: readonly StepChange[] = opens
    ? []
    : place
      ? [{ change: 'insert', step: open, ...place }, ...waitsThere(open, place)]
      : [{ change: 'append', step: open }];
  return [
    { change: 'insert', step: shut, place: 'before', other: before },
    ...(isolated ? waits(before, shut) : users.flatMap((each) => waits(each, shut))),
    ...opening,
  ];
}

/** The step before which a gate is shut: the isolation that is still to come, or the work itself. */
function beforeIsolation(w: Walk, here: Step): Step {
  const { steps } = w.sequence;
  const at = steps.indexOf(here);
  return steps.find(({ action }, i) => action === 'isolate' && i < at) ?? here;
}

/** Beside the end of the isolation, on the side where the gate can be moved; else before the machine runs. */
function whereOpened(w: Walk, gate: string): Beside | undefined {
  const { steps } = w.sequence;
  const handBack = steps.findLast(({ action }) => action === 'remove isolation');
  if (handBack)
    return { place: isLockedByIsolation(w.ground.job.conveyor, gate) ? 'after' : 'before', other: handBack };
  const run = steps.find(({ action }, i) => action.startsWith('run ') && i > isolatedAt(steps));
  return run && { place: 'before', other: run };
}

/** So that a step stays on that side of the other. */
function waitsThere(step: Step, { place, other }: Beside): StepChange[] {
  return place === 'before' ? waits(other, step) : waits(step, other);
}

/** −1 where the order does not isolate. */
function isolatedAt(steps: readonly Step[]): number {
  return steps.findIndex(({ action }) => action === 'isolate');
}
