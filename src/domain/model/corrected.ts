// Which readings were found wrong later, and what do they say now? A correction names its reading by spot and day; the columns
// then hold what counts, and beside each corrected row stands all that it ever said. A correction that hits nothing or two
// readings moves no number: it is kept with the reason, for a rule to tell. Of two of one day that contradict each other the later
// line of a file holds, and where they stand in two files nobody knows which is later: the reading counts for nothing then.

import { lengthOn } from './unit-of-machine.js';
import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import { chainageInLook, hoursInLook } from './as-in-look.js';
import { ReadingKind } from '../units/reading-kind.js';
import type { Estate } from './estate.js';
import type {
  Correction,
  CorrectedReading,
  CorrectionOutcome,
  Inspection,
  JudgedCorrection,
  PanelUse,
  Place,
  Readings,
  ReadingVersion,
} from './records.js';
import { findRun } from './runs.js';
import type { LinerSpecification } from './specifications.js';
import type { StatedClock } from './stated.js';

/** The liners that may have lain at a place when an inspection saw it, likeliest first. */
export type LinersSeen = (place: Place, inspection: Inspection) => readonly LinerSpecification[];

/** As what a row was said that is of a panel, or all along a stretch; mm, and hours in the direction of flow. */
export type SaidAlong =
  | { readonly kind: 'panel'; readonly panel: PanelUse; readonly clock: number | undefined }
  | { readonly kind: 'stretch'; readonly from: number; readonly to: number }
  | {
      readonly kind: 'chainage';
      readonly clock: number;
      readonly along?: { readonly from: number; readonly to: number } | undefined;
    };

type Looked = Pick<Estate, 'inspections' | 'places'> & {
  readonly readings: Readings;
  readonly along: ReadonlyMap<number, SaidAlong>;
};

interface Target {
  readonly row: number;
  readonly place: Place;
  readonly inspection: Inspection;
}

/** Columns with what counts now, and what became of each correction, in the order given. */
export function applyCorrections(
  estate: Looked,
  corrections: readonly Correction[],
  linersSeen: LinersSeen,
): { readonly readings: Readings; readonly judged: readonly JudgedCorrection[] } {
  if (corrections.length === 0) return { readings: estate.readings, judged: [] };
  const outcomes = new Map<Correction, CorrectionOutcome>();
  const rows = new Map<Correction, number>();
  const byRow = new Map<number, { target: Target; said: Correction[] }>();
  for (const correction of corrections) {
    const isTakenBack = corrections.some((other) => takesBack(other, correction));
    const found = targetsOf(estate, correction, linersSeen, isTakenBack);
    if (typeof found === 'string') {
      outcomes.set(correction, found);
      continue;
    }
    for (const target of found) {
      rows.set(correction, rows.get(correction) ?? target.row);
      const known = byRow.get(target.row) ?? { target, said: [] };
      known.said.push(correction);
      byRow.set(target.row, known);
    }
  }
  const corrected = new Map<number, CorrectedReading>();
  for (const [row, { target, said }] of byRow) {
    const versions = versionsOf(estate.readings, target, said, linersSeen, outcomes);
    if (versions.length > 1) corrected.set(row, { versions });
  }
  return {
    readings: withVersions(estate.readings, corrected, Infinity),
    judged: corrections.map((correction) => ({
      ...correction,
      outcome: outcomes.get(correction) ?? 'counts',
      row: rows.get(correction),
    })),
  };
}

/** The readings as they stood on a day: what was corrected after it says again what it said then. */
export function readingsOn<E extends Estate>(estate: E, day: CalendarDay | undefined): E {
  if (day === undefined || !estate.corrections.some(({ date }) => date.day > day)) return estate;
  return {
    ...estate,
    corrections: estate.corrections.filter(({ date }) => date.day <= day),
    readings: withVersions(estate.readings, estate.readings.corrected, day),
  };
}

function targetsOf(
  { inspections, places, readings, along }: Looked,
  { conveyor, date, read, spot, writtenAs, says: said }: Correction,
  linersSeen: LinersSeen,
  isTakenBack: boolean,
): readonly Target[] | CorrectionOutcome {
  const ofThatDay = inspections.filter((each) => each.conveyor === conveyor && each.date.day === read.day);
  const looks = looksMeant(ofThatDay, spot, isTakenBack);
  if (spot.kind === 'point' && !conveyor.points.some(({ name }) => name === spot.point.name))
    return 'unreadable';
  if (looks.length === 0) return 'no such look';
  if (date.day < read.day) return 'before the reading';
  const there = looks.flatMap((inspection): readonly Target[] => {
    const targets: Target[] = [];
    for (let row = inspection.firstRow; row < inspection.endRow; row++) {
      const place = places[readings.place[row] ?? -1];
      const counts = spot.kind !== 'all' || isOfAll(said, readings.kind[row]);
      if (place && counts && isMeant(place, along.get(row), spot, inspection))
        targets.push({ row, place, inspection });
    }
    return targets;
  });
  if (spot.kind === 'all') return there.length === 0 ? 'not read there' : there;
  // What was said all along a stretch may count at a point that was read by itself too.
  const own = there.filter(({ row }) => !along.has(row));
  const found = (own.length > 0 ? own : there).filter(
    (target) => writtenAs === undefined || isWritten(readings, target, writtenAs, linersSeen),
  );
  if (found.length === 0) return 'not read there';
  const says = new Set(found.map(({ row }) => `${readings.kind[row] ?? ''} ${readings.value[row] ?? ''}`));
  return says.size > 1 ? 'read twice' : found;
}

/** Says of the whole look that the other one is of that it does not count. */
function takesBack({ spot, says, conveyor, read }: Correction, other: Correction): boolean {
  const isOfAllOfIt = spot.kind === 'all' && says.kind === 'does not count';
  return isOfAllOfIt && conveyor === other.conveyor && read.day === other.read.day;
}

/** Of a look that was taken back and written once more, as measured from the head, that one is right: the other stays taken back. */
function looksMeant(
  ofThatDay: readonly Inspection[],
  spot: Correction['spot'],
  isTakenBack: boolean,
): readonly Inspection[] {
  const fromHead = ofThatDay.filter(({ measuredFrom }) => measuredFrom === 'head');
  if (fromHead.length === 0 || fromHead.length === ofThatDay.length) return ofThatDay;
  if (spot.kind === 'all') return ofThatDay.filter(({ measuredFrom }) => measuredFrom !== 'head');
  return isTakenBack ? fromHead : ofThatDay;
}

/** All that a look read may not count; by a difference only what was measured changes. */
function isOfAll(says: Correction['says'], kind: number | undefined): boolean {
  return says.kind === 'does not count' ? kind !== ReadingKind.notSeen : kind === ReadingKind.thickness;
}

function isWritten(
  { kind, value }: Readings,
  { row, place, inspection }: Target,
  writtenAs: NonNullable<Correction['writtenAs']>,
  linersSeen: LinersSeen,
): boolean {
  if (!('name' in writtenAs))
    return kind[row] === ReadingKind.thickness && Math.abs((value[row] ?? NaN) - writtenAs.value) < 0.005;
  if (kind[row] !== ReadingKind.colour) return false;
  return linersSeen(place, inspection).some(
    ({ layers }) => layers[value[row] ?? -1]?.name === writtenAs.name,
  );
}

/** A panel and a stretch as the look names them; a spot to a tenth of a millimetre and a minute of the clock: what an author can write. */
function isMeant(
  place: Place,
  said: SaidAlong | undefined,
  spot: Correction['spot'],
  look: Inspection,
): boolean {
  const hours = (clock: StatedClock): number => hoursInLook(clock, look);
  switch (spot.kind) {
    case 'all':
      return true;
    case 'point':
      return place.declared && place.name === spot.point.name;
    case 'chainage':
      return (
        Math.round(place.at * 10) === Math.round(chainageInLook(spot.at.value, look) * 10) &&
        Math.round(place.clock * 60) === Math.round(hours(spot.clock) * 60)
      );
    case 'panel':
    case 'stretch': {
      const clock = spot.clock && hours(spot.clock);
      const own = said?.kind === 'stretch' ? undefined : said?.clock;
      if (clock !== undefined && (own === undefined || Math.round(own * 60) !== Math.round(clock * 60)))
        return false;
      return spot.kind === 'panel' ? isOfPanel(said, spot.panel, place) : isAllAlong(said, spot, look);
    }
  }
}

function isOfPanel(said: SaidAlong | undefined, { run, first }: PanelUse, { conveyor }: Place): boolean {
  if (said?.kind !== 'panel' || said.panel.first.count !== first.count) return false;
  const [one, other] = [findRun(conveyor, said.panel.run), findRun(conveyor, run)];
  return one !== undefined && one.from === other?.from;
}

function isAllAlong(
  said: SaidAlong | undefined,
  spot: Extract<Correction['spot'], { readonly kind: 'stretch' }>,
  look: Inspection,
): boolean {
  const ends = said?.kind === 'stretch' ? said : said?.kind === 'chainage' ? said.along : undefined;
  const [one, other] = [spot.from.value, spot.to.value].map((at) => chainageInLook(at, look));
  const [from, to] = [Math.min(one ?? NaN, other ?? NaN), Math.max(one ?? NaN, other ?? NaN)];
  return ends !== undefined && Math.abs(ends.from - from) < 0.5 && Math.abs(ends.to - to) < 0.5;
}

function versionsOf(
  readings: Readings,
  target: Target,
  said: readonly Correction[],
  linersSeen: LinersSeen,
  outcomes: Map<Correction, CorrectionOutcome>,
): readonly [ReadingVersion, ...ReadingVersion[]] {
  const { row } = target;
  const liners = linersSeen(target.place, target.inspection);
  const note = readings.notes.get(row);
  const kind = kindOf(readings.kind[row]);
  const value = readings.value[row] ?? NaN;
  const written: ReadingVersion = {
    correction: undefined,
    kind,
    value,
    error: readings.error[row] ?? NaN,
    note,
    words: wordsOf(kind, value, liners),
  };
  const versions: [ReadingVersion, ...ReadingVersion[]] = [written];
  const judge = (correction: Correction, outcome: CorrectionOutcome): void => {
    // What is said of a whole look counts as soon as it does at one point of it, and stays where another is corrected again.
    const isOfAll = correction.spot.kind === 'all';
    if (!isOfAll || outcomes.get(correction) !== 'counts') outcomes.set(correction, outcome);
  };
  for (const ofOneDay of dayByDay(said)) {
    const before = versions.at(-1) ?? written;
    const told = ofOneDay.flatMap((correction) => {
      // What was taken back, or was never a thickness, is not thicker or thinner by anything.
      if (correction.says.kind === 'offset' && before.kind !== ReadingKind.thickness) {
        judge(correction, 'changes nothing');
        return [];
      }
      const now = versionOf(correction, written, before, liners);
      if (!now) judge(correction, 'unreadable');
      return now ? [{ correction, now }] : [];
    });
    const last = told.at(-1);
    if (!last) continue;
    const isOpen = told.some(
      ({ correction, now }) =>
        correction.origin.source !== last.correction.origin.source && !sameSaying(now, last.now),
    );
    for (const { correction, now } of told) {
      const agrees = !isOpen && sameSaying(now, last.now);
      const current = versions.at(-1) ?? written;
      const outcome = !agrees ? 'contradicted' : sameSaying(now, current) ? 'changes nothing' : 'counts';
      judge(correction, outcome);
      if (outcome !== 'counts') continue;
      if (current.correction && current.correction.spot.kind !== 'all')
        outcomes.set(current.correction, 'replaced');
      versions.push(now);
    }
    if (isOpen)
      versions.push(
        setAside(
          last.correction,
          before,
          told.map(({ now }) => now.words),
        ),
      );
  }
  return versions;
}

/** The days of the corrections of one reading, oldest first; of one day what is said of the whole look comes before what is said of the one reading. */
function dayByDay(said: readonly Correction[]): readonly (readonly Correction[])[] {
  const key = ({ date, spot }: Correction): string => `${date.day} ${spot.kind === 'all' ? 0 : 1}`;
  const days = new Map<string, Correction[]>();
  const inOrder = [...said].sort(
    (a, b) =>
      a.date.day - b.date.day ||
      Number(b.spot.kind === 'all') - Number(a.spot.kind === 'all') ||
      a.origin.source - b.origin.source ||
      a.origin.start - b.origin.start,
  );
  for (const each of inOrder) days.set(key(each), [...(days.get(key(each)) ?? []), each]);
  return [...days.values()];
}

/** Two files say different things of it on one day. */
function setAside(correction: Correction, before: ReadingVersion, words: readonly string[]): ReadingVersion {
  return {
    correction,
    kind: ReadingKind.withdrawn,
    value: NaN,
    error: before.error,
    note: `${before.words} read; said on ${formatDay(correction.date.day)} to be ${[...new Set(words)].join(' and ')}`,
    words: 'does not count',
  };
}

function sameSaying(a: ReadingVersion, b: ReadingVersion): boolean {
  return a.kind === b.kind && Object.is(a.value, b.value) && Object.is(a.error, b.error);
}

/** Undefined where it names a colour that the liner does not have, which is told elsewhere. */
function versionOf(
  correction: Correction,
  written: ReadingVersion,
  before: ReadingVersion,
  liners: readonly LinerSpecification[],
): ReadingVersion | undefined {
  const { says } = correction;
  const made = (kind: ReadingKind, value: number, error: number): ReadingVersion => ({
    correction,
    kind,
    value,
    error,
    note: [noteOf(correction, before), written.note ?? ''].filter(Boolean).join('; '),
    words: wordsOf(kind, value, liners),
  });
  switch (says.kind) {
    case 'thickness':
      return made(ReadingKind.thickness, says.thickness.value, says.error?.value ?? written.error);
    case 'offset':
      return made(
        ReadingKind.thickness,
        Math.max(0, Math.round((before.value + says.offset.value) * 1000) / 1000),
        before.error,
      );
    case 'colour': {
      const layer = liners
        .map(({ layers }) => layers.findIndex(({ name }) => name === says.colour.name))
        .find((index) => index >= 0);
      return layer === undefined ? undefined : made(ReadingKind.colour, layer, written.error);
    }
    case 'trough showing':
      return made(ReadingKind.trough, NaN, written.error);
    case 'not seen':
      return made(ReadingKind.notSeen, NaN, written.error);
    case 'does not count':
      return made(ReadingKind.withdrawn, NaN, written.error);
  }
}

function noteOf({ date, by, note, says }: Correction, before: ReadingVersion): string {
  const what =
    says.kind === 'does not count'
      ? `${before.words} read; said on ${formatDay(date.day)} not to count`
      : `corrected on ${formatDay(date.day)} from ${before.words}`;
  return `${what}${by === undefined ? '' : ` by ${by}`}${note === undefined ? '' : `: ${note}`}`;
}

function wordsOf(kind: ReadingKind, value: number, liners: readonly LinerSpecification[]): string {
  switch (kind) {
    case ReadingKind.thickness:
      return lengthOn({ liner: liners[0] ?? { layers: [] } }, value);
    case ReadingKind.colour:
      return `${liners.find(({ layers }) => layers[value])?.layers[value]?.name ?? 'a colour'} showing`;
    case ReadingKind.trough:
      return 'trough showing';
    case ReadingKind.notSeen:
      return 'not seen';
    case ReadingKind.unreadable:
      return 'what could not be read';
    case ReadingKind.withdrawn:
      return 'does not count';
  }
}

function kindOf(kind: number | undefined): ReadingKind {
  return Object.values(ReadingKind).find((each) => each === kind) ?? ReadingKind.unreadable;
}

/** Columns that hold of each corrected row the last version up to a day. */
function withVersions(
  readings: Readings,
  corrected: ReadonlyMap<number, CorrectedReading>,
  day: number,
): Readings {
  if (corrected.size === 0) return readings;
  const kind = readings.kind.slice();
  const value = readings.value.slice();
  const error = readings.error.slice();
  const notes = new Map(readings.notes);
  const kept = new Map<number, CorrectedReading>();
  for (const [row, { versions }] of corrected) {
    const [written, ...later] = versions;
    const known = later.filter(({ correction }) => (correction?.date.day ?? 0) <= day);
    const now = known.at(-1) ?? written;
    kind[row] = now.kind;
    value[row] = now.value;
    error[row] = now.error;
    if (now.note === undefined) notes.delete(row);
    else notes.set(row, now.note);
    if (known.length > 0) kept.set(row, { versions: [written, ...known] });
  }
  return { ...readings, kind, value, error, notes, corrected: kept };
}
