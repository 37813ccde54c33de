// What happened to a conveyor over its life: running hours (and tonnes) since commissioning whatever its meters did, which
// liner lay where, which screw turned, what duty it had, and what date goes with what total. Records that contradict each
// other never crash it: what can be concluded is concluded, and what was set aside is kept with its reason.

import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import { readCounter, totalBetween, type Counter, type CounterReading, type Knot } from './counter.js';
import { daysByDuty, declaredDuties, hoursByDuty, observedDuty, turningDuties, type Duty } from './duty.js';
import type { Estate } from './estate.js';
import { linerSetsOf, wearTotal, type LinerSet, type Moment } from './liner-sets.js';
import { refittedBy } from './panels-moved.js';
import { installedPanelEnds } from './panels.js';
import type {
  DatedRecord,
  DutyChange,
  Inspection,
  MeterChange,
  PanelsMoved,
  Reline,
  ScrewChange,
} from './records.js';
import type { Stated } from './stated.js';
import { screwSetsOf, type ScrewSet } from './screw-sets.js';
import { byTurns, runningHours, speedFactors, type SpeedChange } from './turns.js';

export interface History {
  readonly conveyor: Conveyor;
  /** Records after this day are ignored, but duty, which may be a plan (known-on.ts); undefined takes them all. */
  readonly asOf: CalendarDay | undefined;
  readonly start: Start;
  /** Totals count from commissioning; where that is not recorded, from the first reading. */
  readonly hours: Counter;
  /** Undefined where no record states tonnes. */
  readonly tonnes: Counter | undefined;
  /** What wear follows, as the conveyor declares it. */
  readonly wearBy: 'hours' | 'tonnes';
  /** Declared duties, first to last. */
  readonly duties: readonly Duty[];
  /** Recorded speeds other than the drive's, where wear follows them (turns.ts). */
  readonly speeds: readonly SpeedChange[];
  /** As recorded, first to last. */
  readonly dutyChanges: readonly DutyChange[];
  /** Over the last year of records. */
  readonly observed: Duty | undefined;
  /** t per running hour, for dates of a total in tonnes. */
  readonly throughput: Throughput | undefined;
  readonly inspections: readonly {
    readonly inspection: Inspection;
    /** Index into Estate.inspections. */ readonly index: number;
  }[];
  readonly relines: readonly Reline[];
  readonly panelsMoved: readonly PanelsMoved[];
  readonly linerSets: readonly LinerSet[];
  readonly screwSets: readonly ScrewSet[];
  /** What could not be taken as written, in words. */
  readonly remarks: readonly string[];
  readonly moments: ReadonlyMap<DatedRecord, Moment>;
}

/** Where the running total begins. Without a commissioning record only liners fitted by a recorded reline have an exposure. */
export type Start =
  | { readonly kind: 'commissioned'; readonly day: CalendarDay }
  | { readonly kind: 'first reline'; readonly day: CalendarDay; readonly reason: string }
  | { readonly kind: 'unknown'; readonly reason: string };

export interface Throughput {
  /** t per running hour. */
  readonly perHour: number;
  readonly basis: 'observed' | 'capacity';
}

export interface HistoryOptions {
  readonly asOf?: CalendarDay | undefined;
}

const known = new WeakMap<Estate, Map<CalendarDay | undefined, Map<Conveyor, History>>>();

/** Worked out once for an estate, conveyor and options, so that the same set is the same object wherever it is asked for. */
export function historyOf(estate: Estate, conveyor: Conveyor, options: HistoryOptions = {}): History {
  const key = options.asOf;
  const byOptions = known.get(estate) ?? new Map<CalendarDay | undefined, Map<Conveyor, History>>();
  known.set(estate, byOptions);
  const byConveyor = byOptions.get(key) ?? new Map<Conveyor, History>();
  byOptions.set(key, byConveyor);
  const history = byConveyor.get(conveyor) ?? buildHistory(estate, conveyor, options);
  byConveyor.set(conveyor, history);
  return history;
}

/** Totals at a dated record: its own meter reading where that is kept, else by date between its neighbours. */
export function momentOf(history: History, record: DatedRecord): Moment {
  return history.moments.get(record) ?? momentOn(history, record.date.day);
}

/** Totals on a day: between records by straight line, beyond the newest by duty; before the first, not known. */
export function momentOn(history: History, day: CalendarDay): Moment {
  const hours = hoursOn(history, day);
  return { day, hours, turned: turnedBy(history, hours), tonnes: tonnesOn(history, day, hours) };
}

function turnedBy({ speeds }: Pick<History, 'speeds'>, hours: number | undefined): number | undefined {
  return hours === undefined ? undefined : byTurns(speeds, hours);
}

/** The total that wear follows on a day: h, or t where it goes by tonnes. */
export function totalOn(history: History, day: CalendarDay): number | undefined {
  return wearTotal(history, momentOn(history, day));
}

/** The day on which the total (h, or t where wear follows tonnes) is reached, as a fraction; undefined where no duty tells. */
export function dayAt(
  history: History,
  total: number,
  duties: readonly Duty[] = forwardDuty(history),
): number | undefined {
  const knots = (history.wearBy === 'tonnes' ? history.tonnes?.knots : history.hours.knots) ?? [];
  const last = knots.at(-1);
  if (!last || !Number.isFinite(total)) return undefined;
  const turned = byTurns(history.speeds, last.total);
  if (total >= turned) {
    const perHour = history.wearBy === 'tonnes' ? history.throughput?.perHour : 1;
    if (perHour === undefined || !(perHour > 0)) return undefined;
    const days = daysByDuty(turningDuties(duties), last.day, (total - turned) / perHour);
    return days === undefined ? undefined : last.day + days;
  }
  const ran = runningHours(history.speeds, total);
  const after = knots.findIndex((k) => k.total > ran);
  const b = knots[after];
  const a = knots[after - 1];
  if (!a || !b) return undefined;
  return a.day + ((b.day - a.day) * (ran - a.total)) / (b.total - a.total);
}

/** The duty that dates rest on: declared, else as observed over the last year, else none. */
export function forwardDuty(history: History): readonly Duty[] {
  if (history.duties.length > 0) return history.duties;
  if (!history.observed) return [];
  // Observed duty is taken to hold on, and to have held before: it has no first day.
  const { from: _firstDay, ...always } = history.observed;
  return [always];
}

function buildHistory(estate: Estate, conveyor: Conveyor, options: HistoryOptions): History {
  const records = recordsOf(estate, conveyor, options);
  const { inspections, relines, panelsMoved, screwChanges, dutyChanges } = records;
  const duties = declaredDuties(conveyor, dutyChanges);
  const dated = [...inspections.map((i) => i.inspection), ...relines, ...panelsMoved, ...screwChanges];

  const hours = hourCounter(conveyor, records, duties, options.asOf);
  const tonnes = tonnesCounter(conveyor, records, options.asOf);
  const start = startOf(conveyor, hours, relines, options.asOf);
  const throughput = throughputOf(conveyor, hours, tonnes);
  const unturned = {
    conveyor,
    asOf: options.asOf,
    start,
    hours,
    tonnes,
    wearBy: conveyor.wearBy,
    duties,
    speeds: [],
    dutyChanges: [...dutyChanges].sort((a, b) => a.from.day - b.from.day),
    throughput,
    observed: observedDuty(hours.knots, hours.knots.at(-1)?.day ?? (0 as CalendarDay)),
    inspections,
    relines,
    panelsMoved,
    remarks: [
      ...unreadRemark(estate, conveyor),
      ...remarksOf(conveyor, start, hours, tonnes),
      ...speedRemarks(conveyor, dutyChanges),
    ],
    linerSets: [],
    screwSets: [],
    moments: new Map<DatedRecord, Moment>(),
  } satisfies History;
  const partial: History = { ...unturned, speeds: speedsOf(unturned, dutyChanges) };

  const keptHours = totalsByRecord(hours.knots);
  const keptTonnes = totalsByRecord(tonnes?.knots ?? []);
  const moments = new Map<DatedRecord, Moment>();
  for (const record of dated) {
    const byDay = momentOn(partial, record.date.day);
    const own = keptHours.get(record) ?? byDay.hours;
    moments.set(record, {
      day: byDay.day,
      hours: own,
      turned: turnedBy(partial, own),
      tonnes: keptTonnes.get(record) ?? tonnesOn(partial, byDay.day, own),
    });
  }
  const commissioned = start.kind === 'commissioned' ? momentOn(partial, start.day) : undefined;
  const momentFor = (record: DatedRecord): Moment =>
    moments.get(record) ?? momentOn(partial, record.date.day);
  const byTime = (of: readonly Reline[]): readonly Reline[] =>
    [...of].sort(
      (a, b) =>
        a.date.day - b.date.day ||
        (momentFor(a).hours ?? 0) - (momentFor(b).hours ?? 0) ||
        a.origin.start - b.origin.start,
    );
  const refitted = panelsMoved.flatMap((moved) => refittedBy(estate, moved, inspections));
  for (const each of refitted) moments.set(each, momentFor(each.startLook ?? each.moved));
  const inOrder = byTime(relines);
  return {
    ...partial,
    moments,
    relines: inOrder,
    linerSets: linerSetsOf({
      conveyor,
      commissioned,
      relines: byTime([...relines, ...refitted]).map((reline) => ({ reline, moment: momentFor(reline) })),
      panelEnds: (reline) => installedPanelEnds(estate, reline.date.day),
    }),
    screwSets: screwSetsOf(conveyor, commissioned, screwChanges, momentFor),
  };
}

/** Where the running hours on the day of a record are not known, its speed cannot be counted. */
function speedsOf(history: History, changes: readonly DutyChange[]): readonly SpeedChange[] {
  return speedFactors(history.conveyor, changes).flatMap(({ change, factor }) => {
    const hours = hoursOn(history, change.from.day);
    return hours === undefined ? [] : [{ day: change.from.day, hours, factor }];
  });
}

interface Records {
  readonly inspections: readonly { readonly inspection: Inspection; readonly index: number }[];
  readonly relines: readonly Reline[];
  readonly panelsMoved: readonly PanelsMoved[];
  readonly screwChanges: readonly ScrewChange[];
  readonly meterChanges: readonly MeterChange[];
  readonly dutyChanges: readonly DutyChange[];
}

const inspectionIndex = new WeakMap<
  Estate,
  Map<Conveyor, { readonly inspection: Inspection; readonly index: number }[]>
>();

function recordsOf(estate: Estate, conveyor: Conveyor, options: HistoryOptions): Records {
  let byConveyor = inspectionIndex.get(estate);
  if (!byConveyor) {
    byConveyor = new Map();
    for (const [index, inspection] of estate.inspections.entries()) {
      const list = byConveyor.get(inspection.conveyor);
      if (list) list.push({ inspection, index });
      else byConveyor.set(inspection.conveyor, [{ inspection, index }]);
    }
    for (const list of byConveyor.values())
      list.sort((a, b) => a.inspection.date.day - b.inspection.date.day || a.index - b.index);
    inspectionIndex.set(estate, byConveyor);
  }
  const asOf = options.asOf ?? Infinity;
  const own = <T extends { readonly conveyor: Conveyor }>(records: readonly T[]): T[] =>
    records.filter((r) => r.conveyor === conveyor);
  return {
    inspections: (byConveyor.get(conveyor) ?? []).filter((i) => i.inspection.date.day <= asOf),
    relines: own(estate.relines).filter((r) => r.date.day <= asOf),
    panelsMoved: own(estate.panelsMoved).filter((r) => r.date.day <= asOf),
    screwChanges: own(estate.screwChanges).filter((r) => r.date.day <= asOf),
    meterChanges: own(estate.meterChanges).filter((r) => r.date.day <= asOf),
    dutyChanges: own(estate.dutyChanges),
  };
}

function hourCounter(
  conveyor: Conveyor,
  records: Records,
  duties: readonly Duty[],
  asOf: CalendarDay | undefined,
): Counter {
  const readings: CounterReading[] = [];
  const commissioned = conveyor.commissioned;
  if (commissioned && commissioned.date.day <= (asOf ?? Infinity)) {
    readings.push({
      day: commissioned.date.day,
      value: commissioned.meter.value,
      source: 'commissioning',
      origin: commissioned.origin,
    });
  }
  for (const { record, source } of datedWithSource(records)) {
    const { hours } = record.meter;
    if (!hours) continue;
    readings.push({
      day: record.date.day,
      value: hours.value,
      source,
      origin: record.origin,
      record,
    });
  }
  const changes = records.meterChanges.map((m) => ({
    day: m.date.day,
    old: m.old.value,
    new: m.new.value,
    origin: m.origin,
  }));
  return fromCommissioning(
    readCounter(readings, changes, { mostPerDay: 24, byDuty: (from, to) => hoursByDuty(duties, from, to) }),
  );
}

function tonnesCounter(
  conveyor: Conveyor,
  records: Records,
  asOf: CalendarDay | undefined,
): Counter | undefined {
  const readings: CounterReading[] = [];
  const commissioned = conveyor.commissioned;
  if (commissioned?.tonnes && commissioned.date.day <= (asOf ?? Infinity)) {
    readings.push({
      day: commissioned.date.day,
      value: commissioned.tonnes.value / 1000,
      source: 'commissioning',
      origin: commissioned.origin,
    });
  }
  for (const { record, source } of datedWithSource(records)) {
    const tonnes = record.meter.tonnes;
    if (tonnes)
      readings.push({
        day: record.date.day,
        value: tonnes.value / 1000,
        source,
        origin: record.origin,
        record,
      });
  }
  if (readings.length === 0) return undefined;
  return fromCommissioning(readCounter(readings, [], { mostPerDay: Infinity, byDuty: () => undefined }));
}

function datedWithSource(
  records: Records,
): readonly { readonly record: DatedRecord; readonly source: CounterReading['source'] }[] {
  return [
    ...records.inspections.map(({ inspection }) => ({ record: inspection, source: 'inspection' as const })),
    ...records.relines.map((record) => ({ record, source: 'reline' as const })),
    ...records.panelsMoved.map((record) => ({ record, source: 'panels moved' as const })),
    ...records.screwChanges.map((record) => ({ record, source: 'screw change' as const })),
  ];
}

function fromCommissioning(counter: Counter): Counter {
  const zero = counter.knots.find((k) => k.reading.source === 'commissioning')?.total ?? 0;
  return zero === 0
    ? counter
    : { ...counter, knots: counter.knots.map((k) => ({ ...k, total: k.total - zero })) };
}

function startOf(
  conveyor: Conveyor,
  hours: Counter,
  relines: readonly Reline[],
  asOf: CalendarDay | undefined,
): Start {
  const kept = hours.knots.find((k) => k.reading.source === 'commissioning');
  if (kept) return { kind: 'commissioned', day: kept.day };
  const declared = conveyor.commissioned;
  const why =
    declared === undefined
      ? `${conveyor.name} has no commissioning record`
      : declared.date.day > (asOf ?? Infinity)
        ? `${conveyor.name} was not yet commissioned (${formatDay(declared.date.day)})`
        : `the meter reading at commissioning of ${conveyor.name} contradicts the later ones`;
  const first = relines.reduce<Reline | undefined>(
    (a, b) => (a === undefined || b.date.day < a.date.day ? b : a),
    undefined,
  );
  if (first) {
    return {
      kind: 'first reline',
      day: first.date.day,
      reason: `${why}: hours on a liner are counted from the first reline, ${formatDay(first.date.day)}; what ran on the liner before it is not known`,
    };
  }
  return {
    kind: 'unknown',
    reason: `${why}, and no reline is recorded: how long the liner has been in is not known`,
  };
}

function throughputOf(
  conveyor: Conveyor,
  hours: Counter,
  tonnes: Counter | undefined,
): Throughput | undefined {
  const last = tonnes?.knots.at(-1);
  if (tonnes && last) {
    const back = tonnes.knots.findLast((k) => k.day <= last.day - 365) ?? tonnes.knots[0];
    const from = back && totalBetween(hours.knots, back.day);
    const to = totalBetween(hours.knots, last.day);
    if (back && from !== undefined && to !== undefined && to > from)
      return { perHour: (last.total - back.total) / (to - from), basis: 'observed' };
  }
  return conveyor.capacity ? { perHour: conveyor.capacity.value, basis: 'capacity' } : undefined;
}

function hoursOn(history: History, day: CalendarDay): number | undefined {
  const last = history.hours.knots.at(-1);
  if (!last) return undefined;
  if (day <= last.day) return totalBetween(history.hours.knots, day);
  const added = hoursByDuty(forwardDuty(history), last.day, day);
  return added === undefined ? undefined : last.total + added;
}

/** Beyond the newest tonnes by running hours times throughput. */
function tonnesOn(history: History, day: CalendarDay, hours: number | undefined): number | undefined {
  const last = history.tonnes?.knots.at(-1);
  if (!last || !history.tonnes) return undefined;
  if (day <= last.day) return totalBetween(history.tonnes.knots, day);
  const then = hoursOn(history, last.day);
  if (hours === undefined || then === undefined || !history.throughput) return undefined;
  return last.total + Math.max(0, hours - then) * history.throughput.perHour;
}

function totalsByRecord(knots: readonly Knot[]): ReadonlyMap<object, number> {
  return new Map(knots.flatMap((k) => (k.reading.record ? [[k.reading.record, k.total] as const] : [])));
}

function speedRemarks(conveyor: Conveyor, changes: readonly DutyChange[]): readonly string[] {
  const factors = speedFactors(conveyor, changes).filter(({ factor }) => factor !== 1);
  const { speed } = conveyor.drive ?? {};
  if (factors.length === 0 || !speed) return [];
  const each = factors.map(
    ({ change, factor }) =>
      `from ${formatDay(change.from.day)} at ${change.speed?.text ?? ''} as ${Math.round(100 * factor) / 100} h`,
  );
  return [`Hours on a liner are counted at ${speed.text}: 1 h ${each.join(', ')}.`];
}

/** What is worked out lacks what cannot be read: whoever reads it is told. */
function unreadRemark({ unread }: Estate, conveyor: Conveyor): readonly string[] {
  return unread?.partly.has(conveyor) === true
    ? [
        `Something written of ${conveyor.name} cannot be read and is left out here; a check of the texts tells what.`,
      ]
    : [];
}

function remarksOf(
  conveyor: Conveyor,
  start: Start,
  hours: Counter,
  tonnes: Counter | undefined,
): readonly string[] {
  const said = (r: CounterReading, unit: string): string =>
    `${r.value} ${unit} of ${formatDay(r.day)} (${r.source})`;
  const remarks: string[] = [];
  if (start.kind !== 'commissioned') remarks.push(`${start.reason}.`);
  for (const [counter, unit] of [
    [hours, 'h'],
    [tonnes, 't'],
  ] as const) {
    for (const { reading, against, kind } of counter?.setAside ?? []) {
      remarks.push(
        `The reading ${said(reading, unit)} ` +
          `${kind === 'runs back' ? 'does not agree with' : 'is more than the clock allows beside'} ` +
          `${said(against, unit)}; it was set aside and its date used instead.`,
      );
    }
    for (const { from, to, kind, added } of counter?.bridges ?? []) {
      remarks.push(
        `Between ${said(from, unit)} and ${said(to, unit)} the meter ` +
          `${kind === 'runs back' ? 'fell' : 'rose faster than the clock'} and no meter change is recorded; ` +
          `${Math.round(added)} ${unit} were reckoned by duty.`,
      );
    }
  }
  if (conveyor.wearBy === 'tonnes' && !tonnes)
    remarks.push(`Wear of ${conveyor.name} goes by tonnes, but no record states tonnes.`);
  return remarks;
}

/** Speed of the screw as recorded: of the newest duty record up to the day that states one, otherwise the drive's. */
export function recordedSpeed(
  { conveyor, dutyChanges }: Pick<History, 'conveyor' | 'dutyChanges'>,
  day: number = Infinity,
): Stated<'rotation'> | undefined {
  return dutyChanges.findLast(({ from, speed }) => speed && from.day <= day)?.speed ?? conveyor.drive?.speed;
}
