// What if the duty, the speed or a condemn limit were another? Gives an estate that differs in that one thing from the day
// of the report on; the records of what happened are never touched, and the changed estate is only ever shown beside the
// true one.

import { parseQuantity } from '../units/parse.js';
import type { CalendarDay } from '../units/calendar.js';
import type { Dimension } from '../units/dimension.js';
import type { Quantity } from '../units/quantity.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';
import type { LinerSpecification } from './specifications.js';
import type { Stated } from './stated.js';

export type Change =
  | { readonly kind: 'duty'; readonly conveyor: Conveyor; readonly duty: Stated<'duty'>; readonly text: string }
  /** Wear goes with sliding distance (Archard), so an hour at another speed counts for speed over speed of an hour. */
  | { readonly kind: 'speed'; readonly conveyor: Conveyor; readonly speed: Stated<'rotation'>; readonly text: string }
  | { readonly kind: 'condemn'; readonly liner: LinerSpecification; readonly thickness: Stated<'length'>; readonly text: string };

export type ReadChange = { readonly ok: true; readonly change: Change } | { readonly ok: false; readonly message: string };

const forms = "write 'duty DG1 140 h/week', 'speed DG1 20 rpm' or 'condemn TwoLayer12 4 mm'";
const shape = /^(duty|speed|condemn)\s+(\S+)\s+(.+)$/;

/** Reads a change as a person writes it; the message of a refusal says what to write instead. */
export function readChange(text: string, estate: Estate): ReadChange {
  const [, kind, name = '', value = ''] = shape.exec(text.trim()) ?? [];
  switch (kind) {
    case 'duty': return forConveyor(estate, name, value, 'duty', (conveyor, duty) =>
      duty.value < 0 || duty.value > 24 ? refuse(`${duty.text} is not between 0 and 24 hours a day`) : accept({ kind, conveyor, duty, text }));
    case 'speed': return forConveyor(estate, name, value, 'rotation', (conveyor, speed) => {
      if (speed.value <= 0) return refuse('a speed is more than 0 rpm');
      return conveyor.drive?.speed ? accept({ kind, conveyor, speed, text }) : refuse(`${conveyor.name} declares no speed to compare with; add it to its drive`);
    });
    case 'condemn': {
      const liner = estate.liners.find((candidate) => candidate.name === name);
      if (!liner) return refuse(`there is no liner ${name}; there are ${namesOf(estate.liners)}`);
      const read = quantity(value, 'length', liner.condemn);
      if (!read.ok) return read;
      if (read.value.value < 0 || read.value.value >= liner.thickness.value) return refuse(`${read.value.text} is not between 0 mm and the ${liner.thickness.text} of ${name}`);
      return accept({ kind, liner, thickness: read.value, text });
    }
    default: return refuse(forms);
  }
}

/** The estate with the changes made from `asOf` on. */
export function withChanges(estate: Estate, changes: readonly Change[], asOf: CalendarDay): Estate {
  return changes.reduce((changed, change) => withChange(changed, change, asOf), estate);
}

function withChange(estate: Estate, change: Change, asOf: CalendarDay): Estate {
  switch (change.kind) {
    case 'duty':
      return withDuty(estate, change.conveyor.name, change.conveyor.plant.name, asOf, () => change.duty);
    case 'speed': {
      const before = change.conveyor.drive?.speed;
      if (!before) throw new Error('readChange lets a speed through only where there is one to compare with');
      const ratio = change.speed.value / before.value;
      return withDuty(estate, change.conveyor.name, change.conveyor.plant.name, asOf, (duty) => ({ ...duty, value: duty.value * ratio, text: `${duty.text}, each hour as ${ratio.toFixed(2)} h at ${before.text}` }));
    }
    case 'condemn':
      return withLiner(estate, change.liner.name, (liner) => ({ ...liner, condemn: change.thickness }));
  }
}

/** Another duty from a day on: dated records after that day are plans, and give way to the question. */
function withDuty(estate: Estate, name: string, plant: string, from: CalendarDay, change: (duty: Stated<'duty'>) => Stated<'duty'>): Estate {
  const isMeant = (conveyor: Conveyor): boolean => conveyor.name === name && conveyor.plant.name === plant;
  const conveyor = estate.conveyors.find(isMeant);
  if (!conveyor) throw new Error('a change names a conveyor of its own estate');
  const records = estate.dutyChanges.filter((record) => isMeant(record.conveyor));
  const inForce = records.filter((record) => record.from.day <= from).sort((a, b) => a.from.day - b.from.day).at(-1)?.duty ?? conveyor.duty ?? conveyor.plant.duty;
  // Without a declared duty there is nothing that a speed could scale: the given duty stands alone, with no spread.
  const nominal = inForce ? change(inForce.nominal) : change({ dimension: 'duty', value: 0, text: '0 h/d', origin: conveyor.origin });
  const changed = {
    conveyor, conveyorUse: { name, origin: conveyor.nameOrigin }, from: { day: from, origin: conveyor.origin }, origin: conveyor.origin,
    duty: { ...inForce, nominal },
  };
  return { ...estate, dutyChanges: [...estate.dutyChanges.filter((record) => !isMeant(record.conveyor) || record.from.day <= from), changed] };
}

/** A changed specification, with everything that refers to it, by way of the conveyors or not, referring to the changed one. */
function withLiner(estate: Estate, name: string, change: (liner: LinerSpecification) => LinerSpecification): Estate {
  const liners = new Map(estate.liners.map((liner) => [liner, liner.name === name ? change(liner) : liner]));
  const linerOf = (liner: LinerSpecification): LinerSpecification => liners.get(liner) ?? liner;
  const conveyors = new Map(estate.conveyors.map((conveyor) => [conveyor, { ...conveyor, liner: linerOf(conveyor.liner) }]));
  const moved = <T extends { readonly conveyor: Conveyor }>(record: T): T => ({ ...record, conveyor: conveyors.get(record.conveyor) ?? record.conveyor });
  return {
    ...estate,
    liners: [...liners.values()],
    conveyors: [...conveyors.values()],
    inspections: estate.inspections.map(moved),
    places: estate.places.map(moved),
    relines: estate.relines.map((reline) => ({ ...moved(reline), liner: linerOf(reline.liner) })),
    screwChanges: estate.screwChanges.map(moved),
    meterChanges: estate.meterChanges.map(moved),
    dutyChanges: estate.dutyChanges.map(moved),
    jobs: estate.jobs.map((job) => ({ ...moved(job), relines: job.relines.map((reline) => ({ ...reline, liner: linerOf(reline.liner) })) })),
  };
}

function forConveyor<D extends Dimension>(estate: Estate, name: string, value: string, dimension: D, go: (conveyor: Conveyor, value: Stated<D>) => ReadChange): ReadChange {
  const found = estate.conveyors.filter((conveyor) => conveyor.name === name || `${conveyor.plant.name}.${conveyor.name}` === name);
  const [conveyor] = found;
  if (!conveyor) return refuse(`there is no conveyor ${name}; there are ${namesOf(estate.conveyors)}`);
  if (found.length > 1) return refuse(`${name} is a conveyor of several plants: write ${found.map((c) => `${c.plant.name}.${c.name}`).join(' or ')}`);
  const read = quantity(value, dimension, conveyor.length);
  return read.ok ? go(conveyor, read.value) : read;
}

function quantity<D extends Dimension>(text: string, dimension: D, at: Stated): { readonly ok: true; readonly value: Stated<D> } | { readonly ok: false; readonly message: string } {
  const read = parseQuantity(text, dimension);
  if (read.ok) return { ok: true, value: { ...(read.quantity as Quantity<D>), origin: at.origin } };
  return { ok: false, message: `'${text}' is not read (${read.problem}${read.corrected ? `; ${read.corrected}?` : ''}); ${forms}` };
}

function namesOf(things: readonly { readonly name: string }[]): string {
  return things.map((thing) => thing.name).join(', ') || 'none';
}

function accept(change: Change): ReadChange {
  return { ok: true, change };
}

function refuse(message: string): ReadChange {
  return { ok: false, message };
}
