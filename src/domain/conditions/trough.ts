// The last line of defence: where is the steel bare, since when, how thick is the plate still, and how long does it last? A panel
// that is missing, or worn through, leaves its panel's length bare until a reline covers it or somebody closes it. Steel under a
// liner does not wear; so its exposure is the bare hours alone, and the arithmetic over them is that of API 570 as for liners. In a
// break (a gate, an inlet) no liner ever lies, and all hours count.

import { middleOf } from './kinds.js';
import { handArithmetic, type HandResult } from '../wear/arithmetic.js';
import { addDays, type CalendarDay } from '../units/calendar.js';
import { bottom, formatClock } from '../units/clock.js';
import { ReadingKind } from '../units/reading-kind.js';
import type { Conveyor } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import { setSeen } from '../model/exposure.js';
import { historyOf, momentOf, momentOn, type History } from '../model/history.js';
import { bareAbove } from '../model/liner-side.js';
import { setsAt, type LinerSet, type Moment } from '../model/liner-sets.js';
import type { Origin } from '../model/origin.js';
import { panelAt } from '../model/panels.js';
import {
  originOf,
  type DatedRecord,
  type Patch,
  type PhotoUse,
  type PlateReading,
  type Reline,
} from '../model/records.js';
import { runAt } from '../model/runs.js';
import { followUp } from './follow-up.js';
import { isOfPatch, liesOver } from './patched.js';

/** A length of trough without liner. */
export interface BareSpan {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  /** The last look, or the fitting, at which the liner still lay there; undefined where none is recorded. */
  readonly lined: Moment | undefined;
  readonly found: Moment;
  /** Undefined: still bare. */
  readonly until: Moment | undefined;
  readonly because: 'panel missing' | 'worn through';
  readonly origin: Origin;
}

export interface PlateRead {
  readonly day: CalendarDay;
  readonly thickness: number;
  /** One standard deviation, mm, where the row states it. */
  readonly error: number | undefined;
  /** Hours that the steel lay bare there until then: at least, and at most. */
  readonly bareLeast: number;
  readonly bareMost: number;
  readonly note: string | undefined;
  readonly photo: PhotoUse | undefined;
  readonly origin: Origin;
}

export interface PlatePlace {
  readonly at: number;
  /** As one of its readings says it; undefined where none does: at the bottom. */
  readonly clock: string | undefined;
  /** What the readings count from, mm: the trough's plate, or the patch that lies there. */
  readonly plate: number;
  readonly patch: Patch | undefined;
  /** Of this plate, oldest first. */
  readonly readings: readonly PlateRead[];
  /** Over bare hours: the fewest that each reading can have had, or, where that is none for one of them, the most for all. */
  readonly hand: HandResult;
  /** The steel may have lain bare for less than its rate takes: it is at least so fast, and the life at most so long. */
  readonly rateIsLeast: boolean;
  readonly belowMinimum: boolean;
  /** Bare, and read above its minimum: by its rate the minimum was reached so many hours before the last meter reading. */
  readonly passedFor: number | undefined;
  readonly bare: boolean;
  /** The break that lies there: no liner ever covers it, and its steel is bare whenever the machine runs. */
  readonly noLiner: string | undefined;
}

export interface TroughState {
  /** mm. */
  readonly plate: number;
  readonly minimum: number;
  /** As declared on the conveyor; undefined where nothing is. */
  readonly material: string | undefined;
  /** Steel bare above the liner, mm, on each side. */
  readonly bareAbove: number;
  /** In the order found. */
  readonly spans: readonly BareSpan[];
  readonly places: readonly PlatePlace[];
  /** What was read of plates before they were patched over; `covered` is the day. */
  readonly covered: readonly (PlatePlace & { readonly covered: CalendarDay })[];
  readonly patches: readonly Patch[];
  /** Bare now, and no plate was read there since it was found. */
  readonly unread: readonly BareSpan[];
}

/** Readings within this of each other are of one place, mm (judgement: the width of a gauge's foot and a hand). */
const samePlate = 100;

/** Days between a weld and the liner over it in which the machine is taken to stand still (judgement: one outage). */
const oneOutage = 7;

export function troughState(estate: Estate, conveyor: Conveyor, asOf?: CalendarDay): TroughState {
  const history = historyOf(estate, conveyor, { asOf });
  const spans = bareSpans(estate, history, asOf);
  const patches = estate.patches
    .filter((patch) => patch.conveyor === conveyor && patch.date.day <= (asOf ?? Infinity))
    .sort((a, b) => a.date.day - b.date.day);
  const minimum = conveyor.minimumPlate.value;
  const { places, covered } = platePlaces(history, spans, patches);
  return {
    plate: conveyor.trough.plate.value,
    minimum,
    material: conveyor.trough.material,
    bareAbove: bareAbove(conveyor),
    spans,
    places,
    covered,
    patches,
    unread: spans.filter(
      (span) =>
        span.until === undefined &&
        ![...places, ...covered].some(
          ({ at, readings }) =>
            at >= span.from && at <= span.to && readings.some(({ day }) => day >= span.found.day),
        ),
    ),
  };
}

function bareSpans(estate: Estate, history: History, asOf: CalendarDay | undefined): readonly BareSpan[] {
  const spans: BareSpan[] = [];
  const { conveyor } = history;
  for (const { first, closed } of followUp(estate, conveyor, asOf).conditions) {
    const at = middleOf(first.line);
    if (first.line.kind !== 'panel missing' || at === undefined) continue;
    add(at, first.record, 'panel missing', first.line.origin, closed && momentOn(history, closed.day));
  }
  for (const { inspection } of history.inspections) {
    for (let row = inspection.firstRow; row < inspection.endRow; row++) {
      const place = estate.places[estate.readings.place[row] ?? -1];
      if (!place || estate.readings.kind[row] !== ReadingKind.trough) continue;
      add(place.at, inspection, 'worn through', originOf(estate.readings, row), undefined);
    }
  }
  for (const [row, reline] of estate.readings.bench) {
    const place = estate.places[estate.readings.place[row] ?? -1];
    const isThrough = estate.readings.kind[row] === ReadingKind.trough;
    if (place && isThrough && place.conveyor === conveyor) addFromBench(place.at, row, reline);
  }
  return spans;

  /** On the bench it is seen that the panel was through when it came out, and the steel bare since the last look at the most. */
  function addFromBench(at: number, row: number, reline: Reline): void {
    const sets = setsAt(history.linerSets, at);
    const set = sets.find(({ removed }) => removed?.reline === reline);
    const panel = set?.removed && panelAt(estate, conveyor, at, addDays(reline.date.day, -1));
    if (!set?.removed || !panel) return;
    const out = set.removed;
    const isKnown = (span: BareSpan): boolean =>
      span.from <= at && span.to >= at && span.found.day <= out.day && span.until?.day === out.day;
    if (spans.some(isKnown)) return;
    spans.push({
      from: panel.from,
      to: panel.to,
      lined: lastLined(set, reline.date.day),
      found: out,
      until: out,
      because: 'worn through',
      origin: originOf(estate.readings, row),
    });
  }

  /** The last look before a day, or the fitting, if that was later. */
  function lastLined(set: LinerSet | undefined, day: CalendarDay): Moment | undefined {
    const before = history.inspections.filter((each) => each.inspection.date.day < day).at(-1);
    const looked = before && momentOf(history, before.inspection);
    const fitted = set?.fitted;
    return looked && (!fitted || looked.day > fitted.day) ? looked : fitted;
  }

  function add(
    at: number,
    record: DatedRecord,
    because: BareSpan['because'],
    origin: Origin,
    closed: Moment | undefined,
  ): void {
    const panel = panelAt(estate, conveyor, at, record.date.day);
    const found = momentOf(history, record);
    const covers = (span: BareSpan): boolean =>
      span.from <= at && span.to >= at && (span.until === undefined || span.until.day > found.day);
    if (!panel || spans.some(covers)) return;
    const set = setSeen(history, at, record);
    const lined = lastLined(set, record.date.day);
    const removed = set?.removed;
    const until = closed && removed ? (closed.day < removed.day ? closed : removed) : (closed ?? removed);
    spans.push({ from: panel.from, to: panel.to, lined, found, until, because, origin });
  }
}

function platePlaces(
  history: History,
  spans: readonly BareSpan[],
  patches: readonly Patch[],
): Pick<TroughState, 'places' | 'covered'> {
  const groups: { at: number; around: string; looks: Look[] }[] = [];
  for (const look of platesRead(history)) {
    const at = look.plate.at.value;
    const around = formatClock(hoursOf(look));
    const own = groups.find((each) => each.around === around && Math.abs(each.at - at) <= samePlate);
    if (own) own.looks.push(look);
    else groups.push({ at, around, looks: [look] });
  }
  const byPlace = (a: PlatePlace, b: PlatePlace): number => a.at - b.at;
  const found = groups.map(({ at, looks: written }) => {
    const clock = written.find(({ plate }) => plate.clock)?.plate.clock?.text;
    const own = patches.filter((patch) =>
      liesOver(patch, { from: at, to: at, clock: written[0] && hoursOf(written[0]) }),
    );
    // Of one day what was welded over was read first, in whichever order it was written.
    const looks = [...written].sort(
      (a, b) => a.when.day - b.when.day || lyingThen(own, a).length - lyingThen(own, b).length,
    );
    const place = placeOf(history, spans, own, at, clock, looks);
    // Welded over since it was read last: of what lies there now nobody has read anything.
    const over = own[lyingThen(own, looks.at(-1)).length];
    return {
      places: over ? [] : [place],
      covered: [
        ...(over ? [{ ...place, covered: over.date.day }] : []),
        ...coveredAt(history, spans, own, at, clock, looks),
      ],
    };
  });
  return {
    places: found.flatMap(({ places }) => places).sort(byPlace),
    covered: found.flatMap(({ covered }) => covered).sort(byPlace),
  };
}

function isRead(patch: Patch, { when, since, plate }: Look): boolean {
  return isOfPatch(patch, { since, day: when.day }, plate);
}

/** Of patches in the order of time those that a reading was taken on, or on what lies over them. */
function lyingThen(patches: readonly Patch[], look: Look | undefined): readonly Patch[] {
  return patches.slice(0, patches.findLastIndex((patch) => look !== undefined && isRead(patch, look)) + 1);
}

/** Without a clock position steel was read at the bottom. */
function hoursOf({ plate }: Look): number {
  return plate.clock?.hours ?? bottom;
}

/** In looks, and while a reline had the liner off, in the order of time. */
function platesRead(history: History): readonly Look[] {
  const seen = history.inspections.flatMap(({ inspection }) =>
    inspection.plates.map((plate) => ({
      when: momentOf(history, inspection),
      since: inspection.date.day,
      plate,
    })),
  );
  const off = history.relines.flatMap(({ date, plates }) =>
    plates.map((plate) => ({
      when: momentOn(history, date.day),
      since: addDays(date.day, -oneOutage),
      plate,
    })),
  );
  return [...seen, ...off].sort((a, b) => a.when.day - b.when.day);
}

/** Of each plate that was patched over what was read of it until then, the newest first. */
function coveredAt(
  history: History,
  spans: readonly BareSpan[],
  patches: readonly Patch[],
  at: number,
  clock: string | undefined,
  looks: readonly Look[],
): TroughState['covered'] {
  const { patch } = placeOf(history, spans, patches, at, clock, looks);
  const earlier = looks.filter((look) => patch && !isRead(patch, look));
  if (!patch || earlier.length === 0) return [];
  return [
    { ...placeOf(history, spans, patches, at, clock, earlier), covered: patch.date.day },
    ...coveredAt(history, spans, patches, at, clock, earlier),
  ];
}

interface Look {
  readonly when: Moment;
  /** The first day on which it may have been read: a reline takes its stop. */
  readonly since: CalendarDay;
  readonly plate: PlateReading;
}

function placeOf(
  history: History,
  spans: readonly BareSpan[],
  patches: readonly Patch[],
  at: number,
  clock: string | undefined,
  looks: readonly Look[],
): PlatePlace {
  const { conveyor } = history;
  const patch = lyingThen(patches, looks.at(-1)).at(-1);
  const here = spans.filter((span) => at >= span.from && at <= span.to);
  const ended = ({ until }: BareSpan): boolean =>
    patch !== undefined && until !== undefined && until.day <= patch.date.day + oneOutage;
  const own = here.filter((span) => !ended(span));
  const noLiner = runAt(conveyor, at) ? undefined : breakAt(conveyor, at);
  const start = patch && momentOn(history, patch.date.day).hours;
  const sinceNew = start ?? history.hours.knots[0]?.total;
  const readings = looks
    .filter((look) => patch === undefined || isRead(patch, look))
    .map(({ when, plate }): PlateRead => {
      const now = when.hours;
      return {
        day: when.day,
        thickness: plate.thickness.value,
        error: plate.error?.value,
        ...(noLiner === undefined
          ? {
              bareLeast: bareHours(own, start, now, (span) => span.found),
              bareMost: bareHours(own, start, now, (span) => span.lined ?? span.found),
            }
          : alwaysBare(sinceNew, now)),
        note: plate.note,
        photo: plate.photo,
        origin: plate.origin,
      };
    });
  const plate = patch?.thickness.value ?? conveyor.trough.plate.value;
  const least = conveyor.minimumPlate.value;
  // One bound for all readings of a place, or the hours between them would not be those that passed: the least, unless one
  // was taken when the steel had only just been found bare.
  const sure = readings.every(({ bareLeast }) => bareLeast > 0);
  const hand = handArithmetic({
    fitted: plate,
    least,
    readings: readings.map(({ thickness, bareLeast, bareMost }) => ({
      thickness,
      exposure: sure ? bareLeast : bareMost,
    })),
  });
  const bare = noLiner !== undefined || here.some((span) => span.until === undefined);
  const belowMinimum = (readings.at(-1)?.thickness ?? Infinity) <= least;
  return {
    at,
    clock,
    plate,
    patch,
    readings,
    hand,
    rateIsLeast: !sure && !(hand.kind === 'rate' && hand.rules === 'short-term'),
    belowMinimum,
    passedFor: bare && !belowMinimum ? passedFor(history, hand, looks.at(-1)) : undefined,
    bare,
    noLiner,
  };
}

/** Hours that the steel has lain bare since it was read, beyond what its rate left it; undefined where it lasts. */
function passedFor(history: History, hand: HandResult, last: Look | undefined): number | undefined {
  const now = history.hours.knots.at(-1)?.total;
  if (hand.kind !== 'rate' || now === undefined || last?.when.hours === undefined) return undefined;
  const over = now - last.when.hours - hand.remaining;
  return over > 0 ? over : undefined;
}

function breakAt({ breaks }: Conveyor, at: number): string | undefined {
  return breaks.find(({ from, to }) => from.value <= at && at <= to.value)?.name;
}

function alwaysBare(
  since: number | undefined,
  now: number | undefined,
): Pick<PlateRead, 'bareLeast' | 'bareMost'> {
  const hours = since === undefined || now === undefined ? 0 : Math.max(0, now - since);
  return { bareLeast: hours, bareMost: hours };
}

/** Hours bare between the fitting of the plate (`start`, the beginning where undefined) and now; 0 where the meter tells nothing. */
function bareHours(
  spans: readonly BareSpan[],
  start: number | undefined,
  now: number | undefined,
  begins: (span: BareSpan) => Moment,
): number {
  if (now === undefined) return 0;
  return spans.reduce((sum, span) => {
    const from = begins(span).hours;
    if (from === undefined) return sum;
    const to = Math.min(now, span.until?.hours ?? Infinity);
    return sum + Math.max(0, to - Math.max(from, start ?? -Infinity));
  }, 0);
}
