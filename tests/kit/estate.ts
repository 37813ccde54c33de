// Small estates for tests of the domain, without any parser: every fact has a plain default, so that a story states only
// what matters to it. Lengths in mm, hours in h, days in ISO 8601.

import { noOtherFacts } from '../../src/domain/model/other-facts.js';
import { parseDay, type CalendarDay } from '../../src/domain/units/calendar.js';
import type { Dimension } from '../../src/domain/units/dimension.js';
import { formatClock } from '../../src/domain/units/clock.js';
import type { Break, BreakKind, Conveyor, Point } from '../../src/domain/model/conveyor.js';
import type { Estate } from '../../src/domain/model/estate.js';
import type { Origin } from '../../src/domain/model/origin.js';
import type { Plant } from '../../src/domain/model/plant.js';
import type {
  DutyChange,
  Inspection,
  MeterChange,
  Place,
  Readings,
  Reline,
  ScrewChange,
} from '../../src/domain/model/records.js';
import type { LinerSpecification, ScrewSpecification } from '../../src/domain/model/specifications.js';
import type { NameUse, Stated, StatedClock, StatedDay } from '../../src/domain/model/stated.js';
import type { Stretch } from '../../src/domain/model/stretch.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

let counter = 0;
/** Every call another place, so that origins tell elements apart. */
export function origin(): Origin {
  counter += 1;
  return { source: 0, start: counter, end: counter };
}

export function stated<D extends Dimension>(dimension: D, value: number, text = String(value)): Stated<D> {
  return { dimension, value, text, origin: origin() };
}
export const mm = (value: number): Stated<'length'> => stated('length', value, `${value} mm`);
export const hours = (value: number): Stated<'duration'> => stated('duration', value, `${value} h`);
export const perDay = (value: number): Stated<'duty'> => stated('duty', value, `${value} h/d`);
export const ratio = (value: number): Stated<'ratio'> => stated('ratio', value, `${value * 100} %`);

export function calendarDay(text: string): CalendarDay {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new Error(`Not a day: ${text}`);
  return parsed;
}
export const on = (text: string): StatedDay => ({ day: calendarDay(text), origin: origin() });
export const clock = (value: number): StatedClock => ({
  hours: value,
  text: formatClock(value),
  origin: origin(),
});
export const use = (name: string): NameUse => ({ name, origin: origin() });

export function plant(facts: Partial<Plant> = {}): Plant {
  return {
    name: 'Tarnholt',
    origin: origin(),
    nameOrigin: origin(),
    risk: ratio(0.05),
    contactRisk: ratio(0.005),
    expedited: [],
    shelf: [],
    spareScrews: [],
    outages: [],
    crews: [],
    accessUnits: [],
    cranes: [],
    shifts: [],
    leadTimes: [],
    costs: [],
    unitTimes: [],
    ...facts,
  };
}

/** 6 mm ivory over 6 mm teal, condemned at 3 mm. */
export function liner(facts: Partial<LinerSpecification> = {}): LinerSpecification {
  const layers = facts.layers ?? [
    { name: 'ivory', thickness: mm(6), origin: origin() },
    { name: 'teal', thickness: mm(6), origin: origin() },
  ];
  return {
    name: 'TwoLayer12',
    origin: origin(),
    nameOrigin: origin(),
    material: 'PE1000',
    layers,
    thickness: mm(layers.reduce((sum, layer) => sum + layer.thickness.value, 0)),
    layerTolerance: ratio(0.05),
    panelLengths: [mm(1200)],
    panelTolerance: mm(1),
    stockLengths: [],
    condemn: mm(3),
    joint: { policy: 'butted', origin: origin() },
    density: stated('density', 935),
    expansion: stated('expansion', 200e-6),
    modulus: stated('stress', 750),
    maximumTemperature: stated('temperature', 80),
    ...facts,
  };
}

export function screw(facts: Partial<ScrewSpecification> = {}): ScrewSpecification {
  return {
    name: 'Spiral400',
    origin: origin(),
    nameOrigin: origin(),
    kind: { kind: 'shaftless' },
    outsideDiameter: mm(400),
    pitch: mm(350),
    density: stated('density', 7850),
    ...facts,
  };
}

export function point(name: string, at: number, hour = 5): Point {
  return { name, at: mm(at), clock: clock(hour), origin: origin(), nameOrigin: origin() };
}

export function gap(
  name: string,
  kind: BreakKind,
  from: number,
  to = from,
  allowance = 0,
  implied = false,
): Break {
  return { name, kind, from: mm(from), to: mm(to), allowance: mm(allowance), origin: origin(), implied };
}

/** 12 m between end plates, commissioned 2024-01-01 at 0 h, 10 h a day, points P1 at 3 m and P2 at 9 m. */
export function conveyor(facts: Partial<Conveyor> = {}): Conveyor {
  const length = facts.length ?? mm(12_000);
  return {
    name: 'DG1',
    origin: origin(),
    nameOrigin: origin(),
    plant: plant(),
    length,
    incline: stated('angle', 24),
    trough: { insideRadius: mm(226), sideHeight: mm(260), plate: mm(4), origin: origin() },
    minimumPlate: mm(2),
    screwUse: use('Spiral400'),
    screw: screw(),
    linerUse: use('TwoLayer12'),
    liner: liner(),
    linersAlong: [],
    panelsFitted: [],
    duty: { nominal: perDay(10) },
    commissioned: { date: on('2024-01-01'), meter: hours(0), origin: origin() },
    wearBy: 'hours',
    confinedSpace: false,
    sections: [],
    breaks: [
      gap('Tail', 'end plate', 0, 0, 0, true),
      gap('Head', 'end plate', length.value, length.value, 0, true),
    ],
    holdDowns: [],
    braces: [],
    covers: [],
    access: [],
    isolations: [],
    hatches: [],
    liftingPoints: [],
    safeguards: [],
    rests: [],
    hoppers: [],
    drains: [],
    points: [point('P1', 3000), point('P2', 9000)],
    ...facts,
  };
}

/** A thickness in mm, a layer number, or a word. */
export type Seen = number | { readonly colour: number } | 'trough' | 'not seen' | 'unreadable';
export interface Row {
  readonly point: string;
  readonly seen: Seen;
  readonly error?: number;
  readonly note?: string;
}

export interface Look {
  readonly conveyor: Conveyor;
  readonly date: string;
  readonly meter: number;
  readonly tonnes?: number;
  /** By point name, or rows with more to say. */
  readonly rows: Readonly<Record<string, Seen>> | readonly Row[];
  readonly facts?: Partial<Inspection>;
}

export function reline(of: Conveyor, date: string, meter: number, facts: Partial<Reline> = {}): Reline {
  return {
    conveyor: of,
    conveyorUse: use(of.name),
    date: on(date),
    meter: { hours: hours(meter) },
    liner: of.liner,
    scope: [],
    asFitted: [],
    oldPanels: [],
    panelsFitted: [],
    panelThicknesses: [],
    plates: [],
    offcuts: [],
    remarks: [],
    photos: [],
    conditions: [],
    asked: [],
    origin: origin(),
    ...facts,
  };
}

export const chainages = (from: number, to: number): Stretch => ({
  kind: 'chainage',
  from: mm(from),
  to: mm(to),
  origin: origin(),
});

export function meterChange(of: Conveyor, date: string, old: number, fresh: number): MeterChange {
  return {
    conveyor: of,
    conveyorUse: use(of.name),
    date: on(date),
    old: hours(old),
    new: hours(fresh),
    origin: origin(),
  };
}

export function dutyChange(of: Conveyor, from: string, hoursPerDay: number, spread?: number): DutyChange {
  return {
    conveyor: of,
    conveyorUse: use(of.name),
    from: on(from),
    origin: origin(),
    duty: { nominal: perDay(hoursPerDay), ...(spread === undefined ? {} : { tolerance: ratio(spread) }) },
  };
}

export interface EstateParts {
  readonly conveyors: readonly Conveyor[];
  readonly looks?: readonly Look[];
  readonly relines?: readonly Reline[];
  readonly screwChanges?: readonly ScrewChange[];
  readonly meterChanges?: readonly MeterChange[];
  readonly dutyChanges?: readonly DutyChange[];
}

/** Puts readings into their columns; a point name the conveyor does not have gets place −1. */
export function estate(parts: EstateParts): Estate {
  const places: Place[] = parts.conveyors.flatMap((of) =>
    of.points.map((p) => ({
      conveyor: of,
      name: p.name,
      at: p.at.value,
      clock: p.clock.hours,
      declared: true,
      origin: p.origin,
    })),
  );
  const looks = [...(parts.looks ?? [])].sort(
    (a, b) =>
      parts.conveyors.indexOf(a.conveyor) - parts.conveyors.indexOf(b.conveyor) ||
      calendarDay(a.date) - calendarDay(b.date),
  );
  const rows = looks.map((look) => rowsOf(look.rows));
  const count = rows.reduce((sum, r) => sum + r.length, 0);
  const notes = new Map<number, string>();
  const readings = {
    count,
    inspection: new Int32Array(count),
    place: new Int32Array(count),
    kind: new Uint8Array(count),
    value: new Float64Array(count).fill(NaN),
    error: new Float64Array(count).fill(NaN),
    source: new Int32Array(count),
    start: new Int32Array(count),
    end: new Int32Array(count),
    notes,
    photos: new Map(),
    corrected: new Map(),
    bench: new Map(),
  } satisfies Readings;

  const inspections: Inspection[] = [];
  let row = 0;
  looks.forEach((look, i) => {
    const firstRow = row;
    for (const { point: name, seen, error, note } of rows[i] ?? []) {
      readings.inspection[row] = i;
      readings.place[row] = places.findIndex((p) => p.conveyor === look.conveyor && p.name === name);
      readings.kind[row] = kindOf(seen);
      readings.value[row] = typeof seen === 'number' ? seen : typeof seen === 'object' ? seen.colour : NaN;
      if (error !== undefined) readings.error[row] = error;
      if (note !== undefined) notes.set(row, note);
      const { start } = origin();
      readings.start[row] = start;
      readings.end[row] = start;
      row += 1;
    }
    inspections.push({
      conveyor: look.conveyor,
      conveyorUse: use(look.conveyor.name),
      date: on(look.date),
      meter: {
        hours: hours(look.meter),
        ...(look.tonnes === undefined ? {} : { tonnes: stated('mass', look.tonnes * 1000) }),
      },
      origin: origin(),
      view: { direction: 'downstream', stated: true, origin: origin() },
      ...noOtherFacts(),
      firstRow,
      endRow: row,
      ...look.facts,
    });
  });
  return {
    plants: [...new Set(parts.conveyors.map((c) => c.plant))],
    liners: [...new Set(parts.conveyors.map((c) => c.liner))],
    screws: [...new Set(parts.conveyors.map((c) => c.screw))],
    conveyors: parts.conveyors,
    inspections,
    readings,
    corrections: [],
    places,
    relines: parts.relines ?? [],
    panelsMoved: [],
    screwChanges: parts.screwChanges ?? [],
    meterChanges: parts.meterChanges ?? [],
    patches: [],
    services: [],
    dutyChanges: parts.dutyChanges ?? [],
    driveChanges: [],
    amendments: [],
    jobs: [],
  };
}

function rowsOf(rows: Look['rows']): readonly Row[] {
  return Array.isArray(rows)
    ? (rows as readonly Row[])
    : Object.entries(rows).map(([name, seen]) => ({ point: name, seen: seen as Seen }));
}

function kindOf(seen: Seen): number {
  if (typeof seen === 'number') return ReadingKind.thickness;
  if (typeof seen === 'object') return ReadingKind.colour;
  return seen === 'trough'
    ? ReadingKind.trough
    : seen === 'not seen'
      ? ReadingKind.notSeen
      : ReadingKind.unreadable;
}
