// What does a change mean? Two states of one estate, or a saved report and a state, become one value: records that came and
// history that was edited, what both did to each forecast, the machine, open jobs, names and places of texts, and what only
// the calendar did. Both sides are reckoned on one day first; then the day is moved. The printers only print it.

import type { Estate } from '../../domain/model/estate.js';
import { safeguardKinds } from '../../domain/model/conveyor.js';
import { isRecord, type LedgerBlock } from '../../domain/model/ledger.js';
import { knownOn } from '../../domain/model/known-on.js';
import { presentDay } from '../../domain/model/newest.js';
import { unreadText } from '../../domain/model/unread.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { changesBeside } from '../remaining-life/changes-beside.js';
import { remainingLife, type RemainingLife } from '../remaining-life/remaining-life.js';
import { forecastRows, type ForecastRow } from './parts/forecast-row.js';
import { splitHistory, type HistoryEdit, type LinerUse, type NewRecord } from './parts/history.js';
import { ledgerChanges, type BlockChange, type LedgerChanges, type Move } from './parts/ledger-changes.js';
import { jobEffects, runEffects, type MachineEffect } from './parts/machine.js';
import { movements, usualThreshold, type Movement, type Threshold } from './parts/movement.js';
import type { Rename } from './parts/renames.js';
import { savedChanges } from './parts/saved-readings.js';
import { photoEdits, type PhotoMarks } from './photo-edits.js';
import type { SavedReport } from './saved-report.js';

export type { MachineEffect } from './parts/machine.js';
export type { ForecastRow } from './parts/forecast-row.js';
export type { HistoryEdit, NewRecord, TextPlace } from './parts/history.js';
export type { Movement, Threshold } from './parts/movement.js';

export type ComparedSide = ComparedEstate | ComparedReport;

export interface ComparedEstate {
  readonly kind: 'estate';
  /** As the reader named it: `HEAD`, `working tree`, `plant/`. */
  readonly name: string;
  readonly estate: Estate;
  readonly ledger: readonly LedgerBlock[];
  /** Texts that do not parse: what they say is missing in the ledger. */
  readonly unreadable: readonly string[];
  readonly findings: readonly ComparedFinding[];
  /** What its photos are; left out where they cannot be looked at, and then nothing is said of them. */
  readonly photos?: PhotoMarks;
}

export interface ComparedReport {
  readonly kind: 'saved report';
  readonly name: string;
  readonly saved: SavedReport;
}

export interface ComparedFinding {
  readonly code: string;
  readonly severity: 'error' | 'warning' | 'information';
  readonly message: string;
  /** The same finding has the same on both sides, wherever it stands. */
  readonly fingerprint: string;
  readonly uri: string;
  readonly line: number;
}

export interface ChangeSummary {
  readonly before: string;
  readonly after: string;
  /** The day that both sides are reckoned on; undefined where nothing is dated. */
  readonly asOf: CalendarDay | undefined;
  /** True where nothing at all differs, the calendar aside. */
  readonly same: boolean;
  /** What of a side could not be read, a sentence each: no forecast or plan of that side rests on it. */
  readonly unread: readonly string[];
  /** First, because a forecast that moves by it looks like any other. */
  readonly history: readonly HistoryEdit[];
  readonly records: readonly NewRecord[];
  readonly forecasts: Moved;
  /** Against a saved report: its forecasts, reckoned again on its own day from what stands there now. */
  readonly rewritten: Moved | undefined;
  /** What the days between bring by themselves, of the earlier state; undefined where there are none between. */
  readonly calendar: (Moved & { readonly from: CalendarDay; readonly to: CalendarDay }) | undefined;
  /** By conveyor, what stands differently beside its wear: conditions, and what was measured. */
  readonly beside: readonly { readonly conveyor: string; readonly changes: readonly string[] }[];
  readonly threshold: Threshold;
  /** Facts of the machine, and what they do to runs, panels, cut lists and open jobs. */
  readonly machine: readonly BlockChange[];
  readonly effects: readonly MachineEffect[];
  /** What forecasts and plans rest on otherwise: plants, limits, costs, duties, jobs. */
  readonly settings: readonly BlockChange[];
  readonly come: readonly LedgerBlock[];
  readonly gone: readonly LedgerBlock[];
  readonly renames: readonly Rename[];
  readonly moves: readonly Move[];
  readonly findings: {
    readonly come: readonly ComparedFinding[];
    readonly gone: readonly ComparedFinding[];
  };
  /** What could not be compared, or needs a second look. */
  readonly remarks: readonly string[];
}

export interface Moved {
  /** Beyond the threshold, or of a conveyor with records, edits or changes of its own. */
  readonly told: readonly MovedForecast[];
  /** All others: how many, and the most that any of them moved. */
  readonly rest: { readonly count: number; readonly chance: number; readonly days: number };
}

export interface MovedForecast extends Movement {
  /** What of the change is its own: `inspected`, `history edited`; empty: it moved by what conveyors share. Undefined where no change is looked at. */
  readonly because: readonly string[] | undefined;
}

export interface SummaryOptions {
  readonly asOf?: CalendarDay | undefined;
  readonly threshold?: Threshold;
}

export type SummaryMade =
  | { readonly ok: true; readonly summary: ChangeSummary }
  /** Why the two cannot be compared, in words. */
  | { readonly ok: false; readonly message: string };

export function changeSummary(
  before: ComparedSide,
  after: ComparedSide,
  options: SummaryOptions = {},
): SummaryMade {
  if (after.kind === 'saved report')
    return {
      ok: false,
      message: `${after.name} is a saved report: it stands first, and what it is compared with second`,
    };
  const strange = unrelated(before, after);
  if (strange !== undefined) return { ok: false, message: strange };
  const changes = changesBetween(before, after);
  const reports = reportsOf(before, after, options.asOf, isEmpty(changes));
  return { ok: true, summary: summaryOf(before, after, changes, reports, options) };
}

/** Two estates without one conveyor in common, whatever its name, are no two states of one. */
function unrelated(before: ComparedSide, after: ComparedEstate): string | undefined {
  const [old, now] = [conveyorsOf(before), conveyorsOf(after)];
  if (old.length === 0 || now.length === 0 || now.some((name) => old.includes(name))) return undefined;
  const ledger = before.kind === 'estate' ? before.ledger : before.saved.ledger;
  const renamed = ledger ? ledgerChanges(ledger, after.ledger).renames : [];
  if (renamed.some(({ what }) => what === 'conveyor')) return undefined;
  return `${before.name} and ${after.name} have no conveyor in common (${old.join(', ')}; ${now.join(', ')}): these are two estates, not two states of one`;
}

function conveyorsOf(side: ComparedSide): readonly string[] {
  return side.kind === 'saved report'
    ? side.saved.rows.map(({ conveyor }) => conveyor)
    : side.ledger.filter(({ kind }) => kind === 'conveyor').map(({ name }) => name);
}

function changesBetween(before: ComparedSide, after: ComparedEstate): LedgerChanges {
  if (before.kind === 'estate') return ledgerChanges(before.ledger, after.ledger);
  const { ledger } = before.saved;
  // The texts of a saved report lie nowhere: nothing can have moved.
  return ledger
    ? { ...ledgerChanges(ledger, after.ledger), moves: [] }
    : {
        added: after.ledger.filter(
          ({ kind, day }) => isRecord(kind) && day !== undefined && day > before.saved.asOf,
        ),
        removed: [],
        changed: [],
        renames: [],
        moves: [],
      };
}

function isEmpty({ added, removed, changed, renames }: LedgerChanges): boolean {
  return added.length + removed.length + changed.length + renames.length === 0;
}

interface Reports {
  /** Of the earlier state on its own day, of it on the common day, and of the later state on that day. */
  readonly then: readonly ForecastRow[];
  readonly moved: readonly ForecastRow[];
  readonly now: readonly ForecastRow[];
  /** A saved report reckoned again on its own day. */
  readonly again: readonly ForecastRow[] | undefined;
  readonly from: CalendarDay | undefined;
  readonly to: CalendarDay | undefined;
  readonly old: RemainingLife | undefined;
  /** As before, where the report is a saved one: what was known on its day of the state that stands now. */
  readonly earlier: RemainingLife;
  readonly fresh: RemainingLife;
}

function reportsOf(
  before: ComparedSide,
  after: ComparedEstate,
  given: CalendarDay | undefined,
  unchanged: boolean,
): Reports {
  const own = before.kind === 'estate' ? presentDay(before.estate) : before.saved.asOf;
  const newest = given ?? latest(own, presentDay(after.estate));
  // A day that was asked for and lies before the records is the day of both.
  const from = own !== undefined && newest !== undefined && own > newest ? newest : own;
  const report = (estate: Estate, asOf: CalendarDay | undefined): RemainingLife =>
    remainingLife(estate, { asOf, track: false });
  if (before.kind === 'saved report') {
    const fresh = report(after.estate, newest);
    const day = before.saved.asOf;
    const again = newest === day ? fresh : report(after.estate, day);
    const known = knownOn(after.estate, day);
    const moved = newest === day ? again : report(known, newest);
    return {
      then: before.saved.rows,
      moved: forecastRows(moved),
      now: forecastRows(fresh),
      again: forecastRows(again),
      from: day,
      to: newest,
      old: undefined,
      earlier: moved,
      fresh,
    };
  }
  const old = report(before.estate, newest);
  const fresh = unchanged ? old : report(after.estate, newest);
  const then = from === newest ? old : report(before.estate, from);
  const [first, moved, now] = [then, old, fresh].map(forecastRows);
  return {
    then: first ?? [],
    moved: moved ?? [],
    now: now ?? [],
    again: undefined,
    from,
    to: newest,
    old,
    earlier: old,
    fresh,
  };
}

function latest(a: CalendarDay | undefined, b: CalendarDay | undefined): CalendarDay | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return a > b ? a : b;
}

function summaryOf(
  before: ComparedSide,
  after: ComparedEstate,
  changes: LedgerChanges,
  reports: Reports,
  options: SummaryOptions,
): ChangeSummary {
  const threshold = options.threshold ?? usualThreshold;
  const ledger = before.kind === 'estate' ? before.ledger : (before.saved.ledger ?? []);
  const split = splitHistory(
    changes,
    ledger,
    linerUses(reports.old ?? reports.fresh),
    before.kind === 'saved report' ? before.saved.asOf : undefined,
  );
  const history =
    before.kind === 'estate'
      ? [...split.edits, ...photoEdits(before.photos, after.photos, after.ledger)]
      : before.saved.ledger
        ? split.edits
        : [...split.edits, ...savedChanges(before.saved, reports.fresh)];
  const [machine, settings] = byRoom(split.rest);
  const because = causes(history, split.records, [...machine, ...settings], reports.fresh);
  const follow = (rows: readonly ForecastRow[]): readonly ForecastRow[] => renamed(rows, changes.renames);
  const moved = (old: readonly ForecastRow[], now: readonly ForecastRow[], own: Causes | undefined): Moved =>
    movedOf(movements(follow(old), now, threshold), own);
  const { from, to } = reports;
  const named = (blocks: readonly LedgerBlock[]): readonly LedgerBlock[] =>
    blocks.filter(({ kind }) => !isRecord(kind));
  return {
    before: before.name,
    after: after.name,
    asOf: to,
    same: isEmpty(changes) && changes.moves.length === 0 && history.length === 0,
    history,
    records: split.records,
    forecasts: moved(reports.moved, reports.now, because),
    rewritten: reports.again && moved(reports.then, reports.again, undefined),
    calendar:
      from === undefined || to === undefined || from === to
        ? undefined
        : { from, to, ...moved(reports.again ?? reports.then, follow(reports.moved), undefined) },
    beside: besideOf(reports, changes.renames),
    threshold,
    machine,
    effects: effectsOf(before, after, reports, machine, settings),
    settings,
    come: named(changes.added),
    gone: named(changes.removed),
    renames: changes.renames,
    moves: changes.moves,
    findings: findingsBetween(before, after),
    unread: unreadOf(before, after),
    remarks: remarksOf(before, after),
  };
}

function besideOf({ earlier, fresh }: Reports, renames: readonly Rename[]): ChangeSummary['beside'] {
  if (earlier === fresh) return [];
  return fresh.conveyors.flatMap((life) => {
    const { name } = life.conveyor;
    const was = renames.find(({ what, to }) => what === 'conveyor' && to === name)?.from ?? name;
    const before = earlier.conveyors.find(({ conveyor }) => conveyor.name === was);
    const changes = before ? changesBeside(before, life) : [];
    return changes.length === 0 ? [] : [{ conveyor: name, changes }];
  });
}

type Causes = ReadonlyMap<string, readonly string[]>;

function movedOf(all: readonly Movement[], because: Causes | undefined): Moved {
  const told = all.filter((movement) => movement.told || because?.has(movement.conveyor));
  const rest = all.filter((movement) => !told.includes(movement));
  const most = (of: (movement: Movement) => number): number => Math.max(0, ...rest.map(of));
  return {
    told: told.map((movement) => ({
      ...movement,
      because: because && (because.get(movement.conveyor) ?? []),
    })),
    rest: {
      count: rest.length,
      chance: most(({ chances }) => (chances ? Math.abs(chances.after.condemn - chances.before.condemn) : 0)),
      days: most(({ moved }) => Math.max(Math.abs(moved.limit ?? 0), Math.abs(moved.order ?? 0))),
    },
  };
}

/** By conveyor, what of this change is its own. */
function causes(
  history: readonly HistoryEdit[],
  records: readonly NewRecord[],
  described: readonly BlockChange[],
  { conveyors }: RemainingLife,
): Causes {
  const found = new Map<string, string[]>();
  const add = (conveyor: string, cause: string): void => {
    const known = found.get(conveyor) ?? [];
    if (!known.includes(cause)) found.set(conveyor, [...known, cause]);
  };
  for (const edit of history)
    if (edit.counts) for (const conveyor of edit.conveyors) add(conveyor, 'history edited');
  for (const { conveyor, kind } of records) add(conveyor, kind === 'inspection' ? 'inspected' : kind);
  for (const { after } of described) {
    if (after.kind === 'conveyor') add(after.name, 'described anew');
    if (after.kind === 'liner' || after.kind === 'screw')
      for (const { conveyor, lying } of conveyors)
        if (conveyor.screw.name === after.name || lying.some(({ liner }) => liner.name === after.name))
          add(conveyor.name, `${after.kind} ${after.name}`);
  }
  return found;
}

function renamed(rows: readonly ForecastRow[], renames: readonly Rename[]): readonly ForecastRow[] {
  const to = (what: string, name: string): string =>
    renames.find((rename) => rename.what === what && rename.from === name)?.to ?? name;
  return rows.map((row) => ({
    ...row,
    conveyor: to('conveyor', row.conveyor),
    outages: row.outages.map((outage) => ({ ...outage, name: to('outage', outage.name) })),
    ...(row.shown === undefined ? {} : { shown: to('outage', row.shown) }),
  }));
}

function linerUses({ conveyors }: RemainingLife): readonly LinerUse[] {
  return conveyors.flatMap(({ conveyor, history }) =>
    history.linerSets.map((set) => ({
      liner: set.liner.name,
      conveyor: conveyor.name,
      former: set.removed !== undefined,
    })),
  );
}

/** Facts of a conveyor that are its shape, and not what it carries or what is accepted of it. */
const shape = new RegExp(
  '^(length|incline|trough|section|order of sections|break|hold-down|brace|cover|access|isolation|hatch|lifting point|rest at|hopper|' +
    `drain|${safeguardKinds.join('|')}|point|clearance|rotation|worn sector|drive at|screw|liner)\\b`,
);

/** The facts of conveyors that are shape, liners' lengths with them; and all others. */
function byRoom(changes: readonly BlockChange[]): readonly [BlockChange[], BlockChange[]] {
  const machine: BlockChange[] = [];
  const settings: BlockChange[] = [];
  for (const change of changes) {
    const isShape = ({ identity }: { readonly identity: string }): boolean =>
      change.after.kind === 'conveyor'
        ? shape.test(identity)
        : change.after.kind === 'liner' &&
          /^(layer|thickness|panel length|joint|order of layers)\b/.test(identity);
    const facts = change.facts.filter(isShape);
    const others = change.facts.filter((fact) => !isShape(fact));
    if (facts.length > 0) machine.push({ ...change, facts });
    if (others.length > 0) settings.push({ ...change, facts: others });
  }
  return [machine, settings];
}

function effectsOf(
  before: ComparedSide,
  after: ComparedEstate,
  { old, fresh, to }: Reports,
  machine: readonly BlockChange[],
  settings: readonly BlockChange[],
): readonly MachineEffect[] {
  if (before.kind !== 'estate' || !old) return [];
  const liners = new Set(machine.filter((c) => c.after.kind === 'liner').map((c) => c.after.name));
  const touched = new Set(
    fresh.conveyors
      .filter(
        ({ conveyor, lying }) =>
          machine.some((c) => c.after.kind === 'conveyor' && c.after.name === conveyor.name) ||
          lying.some(({ liner }) => liners.has(liner.name)),
      )
      .map(({ conveyor }) => conveyor.name),
  );
  const jobs = new Set(settings.filter((c) => c.after.kind === 'job').map((c) => c.after.name));
  const plants = settings.some((c) => c.after.kind === 'plant');
  return [
    ...runEffects(old, fresh, touched),
    ...jobEffects(
      before.estate,
      after.estate,
      (job) =>
        plants ||
        jobs.has(job.name) ||
        touched.has(job.conveyor.name) ||
        job.relines.some(({ liner }) => liners.has(liner.name)),
      to,
    ),
  ];
}

function findingsBetween(before: ComparedSide, after: ComparedEstate): ChangeSummary['findings'] {
  if (before.kind !== 'estate') return { come: [], gone: [] };
  const missing = (
    these: readonly ComparedFinding[],
    those: readonly ComparedFinding[],
  ): readonly ComparedFinding[] => {
    const known = new Set(those.map(({ fingerprint }) => fingerprint));
    return these.filter(({ fingerprint }) => !known.has(fingerprint));
  };
  return {
    come: missing(after.findings, before.findings),
    gone: missing(before.findings, after.findings),
  };
}

/** The same sentence that every page of a side carries; said once where it is of both. */
function unreadOf(before: ComparedSide, after: ComparedEstate): readonly string[] {
  const told = [before, after].flatMap((side) => {
    const text = side.kind === 'estate' ? unreadText(side.estate, side.estate.conveyors) : undefined;
    return text === undefined ? [] : [{ name: side.name, text }];
  });
  const [one, other] = told;
  return other && one?.text === other.text
    ? [`${one.name} and ${other.name}: ${one.text}`]
    : told.map(({ name, text }) => `${name}: ${text}`);
}

function remarksOf(before: ComparedSide, after: ComparedEstate): readonly string[] {
  const remarks: string[] = [];
  for (const side of [before, after]) {
    if (side.kind === 'saved report') {
      if (!side.saved.ledger)
        remarks.push(
          `${side.name} was saved by an earlier version and holds no records of its own: ` +
            'only readings of the liners that lie there now were compared, not meters, relines or descriptions',
        );
      continue;
    }
    for (const uri of side.unreadable)
      remarks.push(
        `${uri} does not parse in ${side.name}: what it says counts as not there; mend it and compare again`,
      );
    if (side.ledger.length === 0 && side.unreadable.length === 0)
      remarks.push(
        `${side.name} holds no .trough text: everything counts as ${side === after ? 'gone' : 'new'}`,
      );
  }
  return remarks;
}
