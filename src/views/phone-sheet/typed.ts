// Every field of the sheet beside the points: what it says as the records take it, and what of it cannot be read, with the reason.
// Each screen, the finish view and the block ask here, so that what one calls unreadable the others carry as it was typed.

import { typedNumber, type NumberField, type TypedNumber } from '../forms/typed-number.js';
import { entryInFull } from './entry.js';
import { data, far, homeless, hours, rows, state, type PhoneRow, type Wrong } from './state.js';

/** Something typed that the records cannot take as a value. */
export interface NotRead {
  readonly what: string;
  readonly typed: string;
  readonly why: string;
}

// What the language takes at most of each; a thickness is never more than a metre, nor a conveyor longer than one kilometre.
const inch = { units: ['in', 'inch', 'inches', '"'], most: 39 };
const millimetre = { units: ['mm', 'millimetres'], most: 1000 };
/** A screw across, mm or inches. */
export const wide: NumberField = {
  ...(data.unit === 'in' ? inch : millimetre),
  most: data.unit === 'in' ? 118 : 3000,
};
export const small: NumberField = data.unit === 'in' ? inch : millimetre;
export const hoursField: NumberField = { units: ['h', 'hrs', 'hours'], most: 9_999_999, counter: true };
export const tonnesField: NumberField = { units: ['t', 'tonnes'], most: 999_999_999, counter: true };
/** Bolts are counted. */
export const boltCount: NumberField = { units: ['bolts', 'bolt'], most: 999, counter: true };
export const ampere: NumberField = { units: ['A', 'amp', 'amps'], most: 100_000 };
export const turns: NumberField = { units: ['rpm', '1/min', '/min'], most: 1000 };
export const along: NumberField = {
  units: far.unit === 'ft' ? ['ft', 'feet'] : ['m', 'metres'],
  most: Math.floor((data.length / far.mm) * 100) / 100,
};

/** A reading of a point, in its own unit; the records take 0 as steel that shows. */
export function thicknessRead({
  value,
  unit,
}: {
  readonly value: string;
  readonly unit: 'mm' | 'in';
}): TypedNumber {
  return typedNumber(value, unit === 'in' ? inch : millimetre);
}

export function inMillimetres(reading: {
  readonly value: string;
  readonly unit: 'mm' | 'in';
}): number | undefined {
  const read = thicknessRead(reading);
  if (read.kind !== 'read') return undefined;
  return reading.unit === 'mm' ? read.value : read.value * 25.4;
}

/** Of a field, in words; empty where it can be read. */
export function why(typed: string, field: NumberField): string {
  const read = typedNumber(typed, field);
  return read.kind === 'unreadable' ? read.why : '';
}

export function gaugeErrorWhy(): string {
  const read = typedNumber(state.gaugeError, small);
  if (read.kind === 'unreadable') return read.why;
  if (read.kind === 'blank') return '';
  if (read.value === 0) return 'no gauge is right to 0';
  return state.gauge === '' ? 'no gauge is chosen: choose the one it belongs to' : '';
}

/** What is typed of the flight at one place. */
interface FlightTyped {
  readonly at: string;
  readonly depth: string;
  readonly across?: string;
}

/** A place belongs to a depth, an outside diameter or both: one without the other is no reading. */
export function flightWhy({ at, depth, across = '' }: FlightTyped): {
  readonly at: string;
  readonly depth: string;
  readonly across: string;
} {
  const [noPlace, noValue] = [at.trim() === '', depth.trim() + across.trim() === ''];
  return {
    at: noPlace && !noValue ? 'the place is missing' : why(at, along),
    depth: noValue && !noPlace ? 'the depth or the diameter is missing' : why(depth, small),
    across: why(across, wide),
  };
}

/** A clock position as typed, 7.30 or 7, as the language writes it; undefined for anything else. */
export function clockTyped(typed: string): string | undefined {
  const written = typed.trim().replace('.', ':');
  const tidy = /^\d{1,2}$/.test(written) ? `${written}:00` : written;
  return hours(tidy) === undefined ? undefined : tidy;
}

/** All that was typed and cannot be read, in the order of the screens. */
export function unread(): readonly NotRead[] {
  const { chainage, clock } = state.placeBegun;
  return [
    ...fieldUnread('Hour meter', state.meter, why(state.meter, hoursField)),
    ...(data.tonnes ? fieldUnread('Tonnes counter', state.tonnes, why(state.tonnes, tonnesField)) : []),
    ...fieldUnread(`Gauge is right to ± ${data.unit}`, state.gaugeError, gaugeErrorWhy()),
    ...rows().flatMap(({ id, label }) => pointUnread(id, label)),
    ...(chainage.trim() + clock.trim() === ''
      ? []
      : [{ what: 'Another place', typed: `${chainage} at ${clock}`, why: 'it was begun and not added' }]),
    ...data.holdDowns.flatMap(({ name }) => {
      const typed = (state.gaps as Partial<Record<string, string>>)[name] ?? '';
      return fieldUnread(`Hold-down gap ${name}`, typed, why(typed, small));
    }),
    ...fieldUnread('Motor current empty', state.empty, why(state.empty, ampere)),
    ...fieldUnread('Motor current loaded', state.loaded, why(state.loaded, ampere)),
    ...fieldUnread('Speed of the screw', state.speed, why(state.speed, turns)),
    ...state.flights.flatMap(flightUnread),
    ...state.findings.flatMap(findingUnread),
    ...conditionsUnread(),
    ...state.wrong.flatMap(wrongUnread),
    ...homeless().map(([id, entry]) => ({
      what: id,
      typed: entryInFull(entry),
      why: 'this page has no such point: it was made again since',
    })),
    ...state.elsewhere.map(({ what, typed }) => ({
      what,
      typed,
      why: 'another tab of this page had it where this one says something else',
    })),
  ];
}

/** A temperature as the language writes it, in its own unit or the machine's; undefined for anything else. */
export function temperatureTyped(typed: string): string | undefined {
  const found = /^([+-]?\d+(?:\.\d+)?) ?(?:(?:°|deg ?)?([CF]))?$/i.exec(
    typed.trim().replace('−', '-').replace(',', '.'),
  );
  const unit = found?.[2]?.toUpperCase() ?? (data.unit === 'in' ? 'F' : 'C');
  return found ? `${(found[1] ?? '').replace(/^\+/, '')} deg${unit}` : undefined;
}

export function isDeclared({ writes }: PhoneRow): boolean {
  return !writes.startsWith('at ');
}

/** A declared point by its name, however it is written. */
export function pointNamed(typed: string): string | undefined {
  const name = typed.trim().toLowerCase();
  return rows().find((point) => isDeclared(point) && point.writes.toLowerCase() === name)?.writes;
}

/** Why a field of it cannot be read; empty where it can. */
export function wrongWhy({
  at,
  clock,
  measure,
  temperature,
  kind,
}: Wrong): Record<'at' | 'clock' | 'measure' | 'temperature', string> {
  const counts = data.kinds.find((each) => each.kind === kind)?.measure === 'count';
  return {
    at: pointNamed(at) === undefined ? why(at, along) : '',
    clock: clock.trim() === '' || clockTyped(clock) !== undefined ? '' : 'it is no clock position like 7:30',
    measure: why(measure, counts ? boltCount : small),
    temperature:
      temperature.trim() === '' || temperatureTyped(temperature) !== undefined ? '' : 'it is no temperature',
  };
}

function wrongUnread(wrong: Wrong): readonly NotRead[] {
  const reasons = wrongWhy(wrong);
  return [
    ...fieldUnread(`Place of ${wrong.kind}`, wrong.at, reasons.at),
    ...fieldUnread(`Clock of ${wrong.kind}`, wrong.clock, reasons.clock),
    ...fieldUnread(`How much of ${wrong.kind}`, wrong.measure, reasons.measure),
    ...fieldUnread(`Temperature of ${wrong.kind}`, wrong.temperature, reasons.temperature),
  ];
}

/** Words beside a condition that nobody answered, or that the page has no more. */
function conditionsUnread(): readonly NotRead[] {
  return Object.entries(state.conditions).flatMap(([id, { answer, note }]) => {
    const what = data.conditions.find((each) => each.answer === id)?.what;
    if (what === undefined)
      return fieldUnread(id, [answer, note].filter(Boolean).join(': '), 'this page has no such condition');
    return answer === '' && note.trim() !== ''
      ? fieldUnread(`Remark at ${what}`, note, 'no answer was chosen')
      : [];
  });
}

function fieldUnread(what: string, typed: string, reason: string): readonly NotRead[] {
  return reason === '' ? [] : [{ what, typed, why: reason }];
}

function pointUnread(id: string, label: string): readonly NotRead[] {
  const entry = (state.entries as Partial<typeof state.entries>)[id];
  const read = entry?.kind === 'thickness' ? thicknessRead(entry) : undefined;
  const remark = (state.remarks as Partial<Record<string, string>>)[id] ?? '';
  return [
    ...(entry?.kind === 'thickness' && read?.kind === 'unreadable'
      ? [
          {
            what: label,
            typed: [`${entry.value} ${entry.unit}`, entry.note].filter(Boolean).join(', '),
            why: read.why,
          },
        ]
      : []),
    ...(remark.trim() === ''
      ? []
      : [{ what: `Remark at ${label}`, typed: remark, why: 'the reading it belonged to was taken back' }]),
  ];
}

function flightUnread(flight: FlightTyped, index: number): readonly NotRead[] {
  const reasons = flightWhy(flight);
  const across = flight.across?.trim() ?? '';
  const values = [flight.depth.trim(), across && `${across} across`].filter(Boolean).join(', ');
  const typed = `${values || 'no depth'} at ${flight.at.trim() || 'no place'}`;
  const reason = [
    reasons.at && `place: ${reasons.at}`,
    reasons.depth && `depth: ${reasons.depth}`,
    reasons.across && `diameter: ${reasons.across}`,
  ].filter(Boolean);
  return fieldUnread(`Flight ${index + 1}`, typed, reason.join('; '));
}

function findingUnread(
  { part, at, text }: { readonly part: string; readonly at: string; readonly text: string },
  index: number,
): readonly NotRead[] {
  const what = `Finding ${index + 1}`;
  if (text.trim() === '') {
    const typed = [part, at.trim()].filter(Boolean).join(' at ');
    return fieldUnread(what, typed, typed && 'it says not what was found');
  }
  const reason = why(at, along);
  return fieldUnread(`Place of finding ${index + 1}`, at, reason);
}
