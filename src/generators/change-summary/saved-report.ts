// A report that was saved as JSON, read back as one side of a comparison: what it forecast, and the records it rested on. A
// report of an earlier version carries no records of its own; then its readings stand for them, and what cannot be compared
// is said. A file that is no such report is refused in words.

import type { LedgerBlock, LedgerFact } from '../../domain/model/ledger.js';
import { blockKinds } from '../../domain/model/ledger.js';
import { formatDay, parseDay, type CalendarDay } from '../../domain/units/calendar.js';
import { passedText } from '../remaining-life/passed-words.js';
import type { BothChances, ForecastRow, OutageChances } from './parts/forecast-row.js';

export interface SavedReport {
  readonly asOf: CalendarDay;
  readonly rows: readonly ForecastRow[];
  /** Undefined in reports of earlier versions. */
  readonly ledger: readonly LedgerBlock[] | undefined;
  readonly readings: readonly SavedReading[];
}

/** What a point was seen to be on a day; exposure in h or t since the liner was fitted. */
export interface SavedReading {
  readonly conveyor: string;
  readonly point: string;
  readonly day: CalendarDay;
  readonly said: string;
  readonly exposure: number | undefined;
}

export type SavedRead =
  { readonly ok: true; readonly saved: SavedReport } | { readonly ok: false; readonly message: string };

/** @param valueOf words of a fact in the form in which two spellings compare, as the language has it */
export function readSavedReport(text: string, valueOf: (words: string) => string): SavedRead {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { ok: false, message: 'is no JSON' };
  }
  if (at(data, 'kind') !== 'remaining life')
    return { ok: false, message: 'is no remaining-life report (JSON) of this program' };
  const version = at(data, 'formatVersion');
  if (version !== 2)
    return { ok: false, message: `has format ${JSON.stringify(version)}; format 2 can be compared` };
  const asOf = dayAt(data, 'asOf');
  if (asOf === undefined) return { ok: false, message: 'names no day that it counts from' };
  const conveyors = listAt(data, 'conveyors');
  const records = at(data, 'records');
  return {
    ok: true,
    saved: {
      asOf,
      rows: conveyors.map((conveyor) => rowIn(conveyor, asOf)),
      ledger: Array.isArray(records)
        ? records.flatMap((block) => blockIn(block as unknown, valueOf) ?? []) // Array.isArray gives any[]
        : undefined,
      readings: conveyors.flatMap(readingsIn),
    },
  };
}

function rowIn(conveyor: unknown, asOf: CalendarDay): ForecastRow {
  const decision = at(conveyor, 'decision');
  const orderBy = at(decision, 'orderBy');
  const look = at(conveyor, 'nextLook');
  const days = at(at(conveyor, 'forecast'), 'days');
  const outages = listAt(decision, 'outages');
  return {
    conveyor: textAt(conveyor, 'conveyor') ?? '',
    level: textAt(conveyor, 'level') ?? '',
    todo: textAt(conveyor, 'todo') ?? '',
    accepted: chancesIn(at(decision, 'accepted')),
    today: chancesIn(at(decision, 'today')),
    outages: outages.flatMap((outage): readonly OutageChances[] => {
      const [name, from, both] = [textAt(outage, 'outage'), dayAt(outage, 'from'), chancesIn(outage)];
      return name !== undefined && from !== undefined && both ? [{ name, from, ...both }] : [];
    }),
    // The order is for the outage on the first page; without one the last outage stands there.
    shown: textAt(orderBy, 'outage') ?? textAt(outages.at(-1), 'outage'),
    order: orderIn(conveyor, asOf),
    lookBy: at(look, 'now') === true ? asOf : dayAt(look, 'by'),
    limit:
      typeof days === 'object' && days !== null
        ? { q10: dayAt(days, 'q10'), q50: dayAt(days, 'q50'), q90: dayAt(days, 'q90') }
        : undefined,
    passed: passedIn(conveyor, dayAt(days, 'q50'), asOf),
    readings: readingsIn(conveyor).filter(({ said }) => said !== 'not seen').length,
  };
}

/** A report of before this was said in one way goes by its level and by the day for its outage. */
function orderIn(conveyor: unknown, asOf: CalendarDay): ForecastRow['order'] {
  const decision = at(conveyor, 'decision');
  const orderBy = at(decision, 'orderBy');
  const day = dayAt(orderBy, 'day');
  const late = at(orderBy, 'late') === true;
  const said = textAt(decision, 'orderWords');
  if (said !== undefined) return { words: said, day, now: at(orderBy, 'now') === true, late };
  const level = textAt(conveyor, 'level') ?? '';
  const now = late || lateLevels.includes(level);
  if (!now) return day === undefined ? undefined : { words: formatDay(day), day, now, late };
  const words = late && day !== undefined ? `now (was ${formatDay(day)})` : 'now';
  return { words, day: asOf, now, late };
}

/** Levels at which nobody waits for an outage. */
const lateLevels = ['worn through', 'past the limit', 'no outage in time'];

/** A report of before this was said printed a date that was passed as its own day. */
function passedIn(conveyor: unknown, middle: CalendarDay | undefined, asOf: CalendarDay): string | undefined {
  const passed = at(conveyor, 'limitPassed');
  const [chance, to] = [numberAt(passed, 'chance'), dayAt(passed, 'to')];
  if (chance !== undefined && to !== undefined)
    return passedText({
      by: textAt(passed, 'by') === 'seen' ? 'seen' : 'reckoned',
      chance,
      from: dayAt(passed, 'from'),
      to,
    });
  return middle !== undefined && middle <= asOf ? 'passed' : undefined;
}

function chancesIn(value: unknown): BothChances | undefined {
  const [condemn, contact] = [numberAt(value, 'condemn'), numberAt(value, 'contact')];
  return condemn === undefined || contact === undefined ? undefined : { condemn, contact };
}

function readingsIn(conveyor: unknown): readonly SavedReading[] {
  const name = textAt(conveyor, 'conveyor') ?? '';
  return listAt(conveyor, 'points').flatMap((point) =>
    listAt(point, 'readings').flatMap((reading): readonly SavedReading[] => {
      const day = dayAt(reading, 'day');
      const thickness = numberAt(reading, 'thickness');
      const seen = textAt(reading, 'seen') ?? '';
      const colour = textAt(reading, 'colour');
      if (day === undefined) return [];
      return [
        {
          conveyor: name,
          point: textAt(point, 'point') ?? '',
          day,
          said: thickness === undefined ? (colour ?? seen) : `${thickness} mm`,
          exposure: numberAt(reading, 'exposure'),
        },
      ];
    }),
  );
}

function blockIn(value: unknown, valueOf: (words: string) => string): LedgerBlock | undefined {
  const kind = blockKinds.find((each) => each === at(value, 'kind'));
  const [identity, name, day] = [textAt(value, 'block'), textAt(value, 'name'), dayAt(value, 'day')];
  if (!kind || identity === undefined || name === undefined) return undefined;
  return {
    kind,
    identity,
    name,
    ...(day === undefined ? {} : { day }),
    facts: listAt(value, 'facts').flatMap((fact): readonly LedgerFact[] => {
      const [of, words] = [textAt(fact, 'fact'), textAt(fact, 'words')];
      if (of === undefined || words === undefined) return [];
      const remark = [...words.matchAll(/"[^"]*"/g)].map(([quoted]) => quoted).join(' ');
      const reading = at(fact, 'reading') === true;
      return [{ identity: of, words, value: valueOf(words), remark, reading, line: 0 }];
    }),
    uri: '',
    line: 0,
  };
}

function at(value: unknown, key: string): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key] // an object with that own field
    : undefined;
}

function listAt(value: unknown, key: string): readonly unknown[] {
  const found = at(value, key);
  return Array.isArray(found) ? (found as readonly unknown[]) : []; // Array.isArray gives any[]
}

function textAt(value: unknown, key: string): string | undefined {
  const found = at(value, key);
  return typeof found === 'string' ? found : undefined;
}

function numberAt(value: unknown, key: string): number | undefined {
  const found = at(value, key);
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}

function dayAt(value: unknown, key: string): CalendarDay | undefined {
  const found = textAt(value, key);
  return found === undefined ? undefined : parseDay(found);
}
