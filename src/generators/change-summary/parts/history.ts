// Which changes reach into the past? A record that was there and now says something else, is gone or came in before the newest
// one; and a machine or a liner described anew under records that were made on the old one. These are told first, whatever
// else there is: a forecast that moves because yesterday was rewritten looks like any other.

import { isRecord, type LedgerBlock, type LedgerFact } from '../../../domain/model/ledger.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import type { BlockChange, FactChange, LedgerChanges } from './ledger-changes.js';

export interface HistoryEdit {
  readonly kind: 'record changed' | 'record removed' | 'record put in' | 'described anew';
  /** The conveyors whose history it is. */
  readonly conveyors: readonly string[];
  /** `inspection of 2025-09-15`, `liner TwoLayer12`. */
  readonly where: string;
  /** What it said and says now, as written; undefined where it was not there or is gone. */
  readonly before: string | undefined;
  readonly after: string | undefined;
  /** What it touches: readings, liner sets; in words, may be empty. */
  readonly reach: string;
  /** False where only remarks or names of people differ: no number rests on them. */
  readonly counts: boolean;
  readonly place: TextPlace;
}

export interface TextPlace {
  readonly uri: string;
  readonly line: number;
}

/** Where a liner lay and lies: sets that were fitted with it. */
export interface LinerUse {
  readonly liner: string;
  readonly conveyor: string;
  readonly former: boolean;
}

export interface HistorySplit {
  readonly edits: readonly HistoryEdit[];
  /** Records that were not there before. */
  readonly records: readonly NewRecord[];
  /** What is no history. */
  readonly rest: readonly BlockChange[];
}

export interface NewRecord {
  readonly kind: LedgerBlock['kind'];
  readonly conveyor: string;
  readonly day: CalendarDay | undefined;
  readonly readings: number;
  /** Dated before the newest record that the conveyor had, or not after the report that was published. */
  readonly late: boolean;
  readonly words: string;
  readonly place: TextPlace;
}

/** @param published day of the saved report that stands for what was before */
export function splitHistory(
  changes: LedgerChanges,
  before: readonly LedgerBlock[],
  uses: readonly LinerUse[],
  published: CalendarDay | undefined,
): HistorySplit {
  const newest = newestByConveyor(before);
  const isLate = ({ name, day }: LedgerBlock): boolean =>
    day !== undefined && (day < (newest.get(name) ?? -Infinity) || day <= (published ?? -Infinity));
  const records = changes.added.filter(({ kind }) => isRecord(kind));
  const putIn = records.filter((block) => block.kind !== 'inspection' && isLate(block));
  const described = changes.changed.filter(({ after }) => !isRecord(after.kind));
  const anew = described.map((change) => describedAnew(change, before, uses));
  return {
    edits: [
      ...changes.changed
        .filter(({ after }) => isRecord(after.kind))
        .flatMap(({ before: old, after, facts }) => facts.map((fact) => recordChanged(old, after, fact))),
      ...changes.removed.filter(({ kind }) => isRecord(kind)).map(recordRemoved),
      ...putIn.map((block) => recordPutIn(block, newest.get(block.name))),
      ...anew.flatMap(({ edits }) => edits),
    ].sort((a, b) => Number(b.counts) - Number(a.counts)),
    records: records
      .filter((block) => !putIn.includes(block))
      .map((block) => newRecord(block, isLate(block))),
    rest: anew.flatMap(({ rest }) => (rest.facts.length > 0 ? [rest] : [])),
  };
}

function newestByConveyor(blocks: readonly LedgerBlock[]): ReadonlyMap<string, CalendarDay> {
  const newest = new Map<string, CalendarDay>();
  for (const { kind, name, day } of blocks) {
    // Duty may be dated ahead: it is a plan until its day comes.
    if (!isRecord(kind) || kind === 'duty' || day === undefined) continue;
    if (day > (newest.get(name) ?? -Infinity)) newest.set(name, day);
  }
  return newest;
}

export function recordName({ kind, day }: LedgerBlock): string {
  return day === undefined ? kind : `${kind} of ${formatDay(day)}`;
}

function recordChanged(before: LedgerBlock, after: LedgerBlock, fact: FactChange): HistoryEdit {
  return {
    kind: 'record changed',
    conveyors: [after.name],
    where: recordName(before),
    before: fact.before?.words,
    after: fact.after?.words,
    reach: reachOf(fact, after),
    counts: !fact.wordsOnly,
    place: { uri: after.uri, line: fact.after?.line ?? after.line },
  };
}

/** A fact of the head that every reading of the record goes by. */
function reachOf({ identity, wordsOnly }: FactChange, { facts }: LedgerBlock): string {
  const readings = facts.filter(({ reading }) => reading).length;
  if (wordsOnly || readings === 0) return '';
  const all = counted(readings, 'reading');
  switch (identity) {
    case 'date':
    case 'meter':
    case 'tonnes':
      return `${all} of it stand at another age`;
    case 'view':
      return `${all} of it are seen from the other side where no point is named`;
    case 'gauge':
      return `${all} of it carry another error`;
    default:
      return '';
  }
}

function recordRemoved(block: LedgerBlock): HistoryEdit {
  return {
    kind: 'record removed',
    conveyors: [block.name],
    where: recordName(block),
    before: whatItHeld(block),
    after: undefined,
    reach: '',
    counts: true,
    place: { uri: block.uri, line: block.line },
  };
}

function recordPutIn(block: LedgerBlock, newest: CalendarDay | undefined): HistoryEdit {
  return {
    kind: 'record put in',
    conveyors: [block.name],
    where: recordName(block),
    before: undefined,
    after: whatItHeld(block),
    reach: newest === undefined ? '' : `there were records up to ${formatDay(newest)}`,
    counts: true,
    place: { uri: block.uri, line: block.line },
  };
}

function whatItHeld({ facts }: LedgerBlock): string {
  const readings = facts.filter(({ reading }) => reading).length;
  const head = facts.find(({ identity }) =>
    ['meter', 'meters', 'duty', 'patch', 'correction', 'serviced'].includes(identity),
  )?.words;
  return [
    ...(head === undefined ? [] : [head]),
    ...(readings > 0 ? [counted(readings, 'reading')] : []),
  ].join(', ');
}

function newRecord(block: LedgerBlock, late: boolean): NewRecord {
  return {
    kind: block.kind,
    conveyor: block.name,
    day: block.day,
    readings: block.facts.filter(({ reading }) => reading).length,
    late,
    words: whatItHeld(block),
    place: { uri: block.uri, line: block.line },
  };
}

/** Splits what changed in a description into what records already rest on, and the rest. */
function describedAnew(
  change: BlockChange,
  before: readonly LedgerBlock[],
  uses: readonly LinerUse[],
): { edits: readonly HistoryEdit[]; rest: BlockChange } {
  const edits: HistoryEdit[] = [];
  const rest: FactChange[] = [];
  for (const fact of change.facts) {
    const reach = fact.wordsOnly ? undefined : restsOn(change.after, fact, before, uses);
    if (!reach) rest.push(fact);
    else
      edits.push({
        kind: 'described anew',
        conveyors: reach.conveyors,
        where: `${change.after.kind} ${change.after.name}`,
        before: fact.before?.words,
        after: fact.after?.words,
        reach: reach.words,
        counts: true,
        place: { uri: change.after.uri, line: fact.after?.line ?? change.after.line },
      });
  }
  return { edits, rest: { ...change, facts: rest } };
}

interface Reach {
  readonly conveyors: readonly string[];
  readonly words: string;
}

function restsOn(
  block: LedgerBlock,
  fact: FactChange,
  before: readonly LedgerBlock[],
  uses: readonly LinerUse[],
): Reach | undefined {
  if (block.kind === 'liner' && /^(layer .*|thickness|order of layers)$/.test(fact.identity))
    return linerReach(block.name, uses);
  if (block.kind !== 'conveyor') return undefined;
  const records = before.filter(({ kind, name }) => isRecord(kind) && kind !== 'duty' && name === block.name);
  if (records.length === 0) return undefined;
  if (fact.identity.startsWith('point ')) return pointReach(block.name, fact, records);
  return /^(commissioned|wear by|liner.*|screw)$/.test(fact.identity)
    ? { conveyors: [block.name], words: `${counted(records.length, 'record')} rest on it` }
    : undefined;
}

function linerReach(liner: string, uses: readonly LinerUse[]): Reach | undefined {
  const sets = uses.filter((use) => use.liner === liner);
  if (sets.length === 0) return undefined;
  const former = sets.filter((use) => use.former).length;
  const lying = sets.length - former;
  const parts = [
    ...(former > 0 ? [counted(former, 'former set')] : []),
    ...(lying > 0 ? [counted(lying, 'set that lies there', 'sets that lie there')] : []),
  ];
  return {
    conveyors: [...new Set(sets.map(({ conveyor }) => conveyor))],
    words: `reaches back into ${parts.join(' and ')}`,
  };
}

/** A point at another place makes its readings those of another place; a row of points is numbered behind its name. */
function pointReach(
  conveyor: string,
  { identity, before }: FactChange,
  records: readonly LedgerBlock[],
): Reach | undefined {
  if (!before) return undefined;
  const name = identity.slice('point '.length);
  const isOf = ({ identity: spot, reading }: LedgerFact): boolean =>
    reading &&
    (spot === name ||
      (/ every /.test(before.words) && /^\d+$/.test(spot.slice(name.length)) && spot.startsWith(name)));
  const readings = records.reduce((sum, { facts }) => sum + facts.filter(isOf).length, 0);
  return readings === 0
    ? undefined
    : {
        conveyors: [conveyor],
        words: `${counted(readings, 'reading')} of it ${readings === 1 ? 'was' : 'were'} made at the former place`,
      };
}
