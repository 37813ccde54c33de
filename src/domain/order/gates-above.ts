// Which slide gates hold back what stands or sticks above people in the trough, and who moves them? On a slope, for each part
// of the work inside, the nearest gate uphill of it has to be shut; a level trough needs none. A stretch that reaches across a
// gate is looked at part by part, but for work on the spiral and on a gate, which is above it as well as below.

import type { Break, Conveyor, GateDrive } from '../model/conveyor.js';
import type { Step } from '../model/job.js';
import { areasOf, type Area, type Ground, type Piece } from './ground.js';
import { worksInside } from './people.js';

/** mm; a gate that begins where the work ends lies above it. */
const slack = 1;

/** Slide gates that must be shut while the step is done at these places, lowest first; none where nobody is inside. */
export function gatesAbove(conveyor: Conveyor, step: Step, areas: readonly Area[]): readonly Break[] {
  const up = Math.sign(conveyor.incline.value);
  if (up === 0 || !worksInside(step.action)) return [];
  const gates = uphill(conveyor, up).filter(({ name }) => name !== step.gate?.name);
  const needed = new Set(
    areas.flatMap((area) =>
      worksThroughGates(step) ? nearestTo(gates, area, up) : overEach(gates, area, up),
    ),
  );
  return gates.filter((gate) => needed.has(gate));
}

/** The same as pieces of the ground. */
export function gatePiecesAbove(ground: Ground, step: Step, areas: readonly Area[]): Piece[] {
  const names = new Set(gatesAbove(ground.job.conveyor, step, areas).map(({ name }) => name));
  return ground.gates.filter(({ name }) => name !== undefined && names.has(name));
}

/** True where a step of the order has people below the gate: what is above it comes down on them where it does not hold. */
export function hasPeopleBelow(ground: Ground, gate: string): boolean {
  return ground.steps.some((step, i) =>
    gatesAbove(ground.job.conveyor, step, areasOf(ground, i)).some(({ name }) => name === gate),
  );
}

/** What moves a gate: as its break says, else as the conveyor's isolation points tell; undefined where neither does. */
export function gateDrive({ breaks, isolations }: Conveyor, name: string): GateDrive | undefined {
  const gate = breaks.find((each) => each.name === name && each.kind === 'slide gate');
  if (!gate || gate.drive) return gate?.drive;
  const kinds = new Set(isolations.map(({ kind }) => kind));
  return kinds.has('hydraulic') ? 'hydraulics' : kinds.has('pneumatic') ? 'air' : undefined;
}

/** True where the break itself says what moves it. */
export function saysItsDrive({ breaks }: Conveyor, name: string): boolean {
  return breaks.some((each) => each.name === name && each.drive !== undefined);
}

/** True where isolating the machine takes away what moves the gate. */
export function isLockedByIsolation(conveyor: Conveyor, name: string): boolean {
  const drive = gateDrive(conveyor, name);
  return drive !== undefined && drive !== 'hand';
}

/** From the lowest to the highest. */
function uphill({ breaks }: Conveyor, up: number): readonly Break[] {
  const gates = breaks.filter(({ kind }) => kind === 'slide gate');
  return up > 0 ? gates : [...gates].reverse();
}

/** The spiral lies through the gates, and who strips a gate stands on either side of it. */
function worksThroughGates({ action }: Step): boolean {
  switch (action) {
    case 'remove screw':
    case 'insert screw':
    case 'join screw':
    case 'gate off':
    case 'gate on':
      return true;
    default:
      return false;
  }
}

function nearestTo(gates: readonly Break[], area: Area, up: number): readonly Break[] {
  const nearest = gates.find(({ from, to }) =>
    up > 0 ? from.value >= area.to - slack : to.value <= area.from + slack,
  );
  return nearest ? [nearest] : [];
}

/** Every gate that has a part of the stretch between itself and the next one below. */
function overEach(gates: readonly Break[], area: Area, up: number): readonly Break[] {
  return gates.filter((gate, k) => {
    const below = gates[k - 1];
    const [from, to] =
      up > 0
        ? [below?.to.value ?? -Infinity, gate.from.value]
        : [gate.to.value, below?.from.value ?? Infinity];
    return Math.min(area.to, to) - Math.max(area.from, from) > slack;
  });
}
