// Is there one slip of the pen behind what contradicts itself? A look or a reline dated in another year makes its meter run back
// and every spot grow; two points exchanged in one look grow crosswise. Each is tried on a copy of the estate: where one change of
// one record ends all its contradictions, that is what was meant, and what only follows is not told beside it (catalogue.ts).

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { historyOf } from '../../domain/model/history.js';
import type { Inspection, Place, Reline } from '../../domain/model/records.js';
import { formatDay, parseDay, type CalendarDay } from '../../domain/units/calendar.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import { conflictsOf } from './counter-conflicts.js';
import { expectedLoss, exposedOf } from './expected-loss.js';
import { growthsOf } from './growth.js';
import { errorOf } from '../../domain/model/reading-error.js';

export interface DateSlip {
  readonly record: Inspection | Reline;
  readonly meant: CalendarDay;
  /** How many contradictions it ends. */
  readonly ends: number;
}

export interface Exchange {
  readonly inspection: Inspection;
  readonly rows: readonly [number, number];
  readonly places: readonly [Place, Place];
}

export interface LikelySlips {
  readonly dates: readonly DateSlip[];
  readonly exchanges: readonly Exchange[];
  /** The estate as it was meant; undefined where there is no such slip. */
  readonly mended: Estate | undefined;
}

const known = new WeakMap<Estate, LikelySlips>();

export function likelySlips(estate: Estate): LikelySlips {
  const found = known.get(estate) ?? workOut(estate);
  known.set(estate, found);
  return found;
}

function workOut(estate: Estate): LikelySlips {
  const dates = estate.conveyors.flatMap((conveyor) => dateSlipOf(estate, conveyor) ?? []);
  const exchanges: Exchange[] = [];
  let mended = dates.reduce(withDate, estate);
  // The one that explains most comes first: what is left beside it may be explained by it.
  for (let one = exchangeIn(mended); one && exchanges.length < mostTried; one = exchangeIn(mended)) {
    exchanges.push(one);
    mended = withExchange(mended, one);
  }
  return { dates, exchanges, mended: mended === estate ? undefined : mended };
}

/** Contradictions of one conveyor, each with the looks that take part. */
function troublesOf(estate: Estate, conveyor: Conveyor): readonly (readonly unknown[])[] {
  const { inspections, readings } = estate;
  const lookOf = (row: number): Inspection | undefined => inspections[readings.inspection[row] ?? -1];
  const grown = growthsOf(estate)
    .filter(({ place, sameInspection }) => place.conveyor === conveyor && !sameInspection)
    .map(({ row, before }) => [lookOf(row), lookOf(before)]);
  const meters = [...conflictsOf(estate, 'hours', [conveyor])]
    // The meter is worth as much as two readings: it runs one way only.
    .flatMap(({ reading, against }) => [
      [reading.record, against.record],
      [reading.record, against.record],
    ]);
  return [...grown, ...meters];
}

/** Looks tried, the ones with most contradictions first: more are a history that no one slip explains. */
const mostTried = 3;

function dateSlipOf(estate: Estate, conveyor: Conveyor): DateSlip | undefined {
  const before = troublesOf(estate, conveyor);
  if (before.length < 2) return undefined;
  const counted = new Map<unknown, number>();
  for (const looks of before) for (const look of looks) counted.set(look, (counted.get(look) ?? 0) + 1);
  const suspects = [...estate.inspections, ...estate.relines]
    .filter((each) => each.conveyor === conveyor && (counted.get(each) ?? 0) >= 2)
    .map((record) => ({ record, ends: counted.get(record) ?? 0 }))
    .sort((a, b) => b.ends - a.ends)
    .slice(0, mostTried);
  let best: DateSlip | undefined;
  for (const { record, ends } of suspects)
    for (const meant of otherDays(estate, record)) {
      const slip = { record, meant, ends };
      if ((best?.ends ?? 0) >= ends || !endsAll(estate, slip, before.length)) continue;
      best = slip;
    }
  return best;
}

/** The same day a year earlier or later, or with month and day exchanged; not on the day of another look. */
function otherDays(estate: Estate, { conveyor, date }: DateSlip['record']): readonly CalendarDay[] {
  const taken = new Set(
    estate.inspections.filter((each) => each.conveyor === conveyor).map((each) => each.date.day),
  );
  const start = conveyor.commissioned?.date.day ?? -Infinity;
  const [year = '', month = '', day = ''] = formatDay(date.day).split('-');
  const written = [
    `${Number(year) + 1}-${month}-${day}`,
    `${Number(year) - 1}-${month}-${day}`,
    `${year}-${day}-${month}`,
  ];
  return written
    .map(parseDay)
    .filter((other): other is CalendarDay => other !== undefined && other >= start && !taken.has(other));
}

function endsAll(estate: Estate, slip: DateSlip, before: number): boolean {
  const { conveyor, origin } = slip.record;
  const mended = of(conveyor, withDate(estate, slip));
  const look = [...mended.inspections, ...mended.relines].find((each) => each.origin === origin);
  const after = troublesOf(mended, conveyor);
  if (!look || after.length > before - slip.ends || after.some((looks) => looks.includes(look))) return false;
  return runsAsUsual(mended, look, slip.ends);
}

/**
 * Between a third of and three times as many hours a day as over all its records, on both sides: judgement. A meter that contradicts alone is
 * as likely misread, so without a reading that says the same it has to lie between others of a longer history, and nearer to the usual.
 */
function runsAsUsual(estate: Estate, look: DateSlip['record'], ends: number): boolean {
  const { knots } = historyOf(estate, look.conveyor).hours;
  const at = knots.findIndex(({ reading }) => reading.record === look);
  const [first, last] = [knots[0], knots.at(-1)];
  if (at < 0 || !first || !last || !(last.day > first.day)) return false;
  const byMeterAlone = ends < 3;
  if (byMeterAlone && (at === knots.length - 1 || knots.length < longHistory)) return false;
  const most = byMeterAlone ? 2 : 3;
  const usual = (last.total - first.total) / (last.day - first.day);
  return [at, at + 1].every((i) => {
    const [from, to] = [knots[i - 1], knots[i]];
    if (!from || !to || to.day - from.day < 7) return true;
    const own = (to.total - from.total) / (to.day - from.day);
    return own >= usual / most && own <= most * usual;
  });
}

/** Meter readings from which what is usual is known (judgement). */
const longHistory = 5;

/** For a trial: what is tried on one conveyor costs no more in a large estate. Rows and looks keep their numbers. */
function of(conveyor: Conveyor, estate: Estate): Estate {
  return { ...estate, conveyors: [conveyor] };
}

function withDate(estate: Estate, { record, meant }: DateSlip): Estate {
  return 'firstRow' in record ? withLookDated(estate, record, meant) : withRelineDated(estate, record, meant);
}

function withRelineDated(estate: Estate, reline: Reline, meant: CalendarDay): Estate {
  const dated: Reline = { ...reline, date: { ...reline.date, day: meant } };
  const { readings, relines } = estate;
  return {
    ...estate,
    relines: relines
      .map((each) => (each === reline ? dated : each))
      .sort((a, b) => (a.conveyor === b.conveyor ? a.date.day - b.date.day : 0)),
    readings: {
      ...readings,
      bench: new Map([...readings.bench].map(([row, of]) => [row, of === reline ? dated : of])),
    },
  };
}

function withLookDated(estate: Estate, inspection: Inspection, meant: CalendarDay): Estate {
  const { inspections, readings, conveyors, corrections } = estate;
  const number = new Map(conveyors.map((conveyor, i) => [conveyor, i]));
  const moved = inspections.map((each, from) => ({
    from,
    look: each === inspection ? { ...each, date: { ...each.date, day: meant } } : each,
  }));
  moved.sort(
    (a, b) =>
      (number.get(a.look.conveyor) ?? 0) - (number.get(b.look.conveyor) ?? 0) ||
      a.look.date.day - b.look.date.day ||
      a.from - b.from,
  );
  const to = new Map(moved.map(({ from }, i) => [from, i]));
  return {
    ...estate,
    inspections: moved.map(({ look }) => look),
    corrections: corrections.map((each) =>
      each.conveyor === inspection.conveyor && each.read.day === meant && each.outcome === 'no such look'
        ? { ...each, outcome: 'counts' as const }
        : each,
    ),
    readings: { ...readings, inspection: readings.inspection.map((from) => to.get(from) ?? from) },
  };
}

/** The exchange that ends most growths of the two points; undefined where none ends any. */
function exchangeIn(estate: Estate): Exchange | undefined {
  const growths = growthsOf(estate).slice(0, mostGrowths);
  const candidates = new Map<string, Exchange>();
  for (const growth of growths)
    for (const row of [growth.row, growth.before]) {
      const found = exchangeAt(estate, row);
      if (found) candidates.set(found.rows.join(' '), found);
    }
  let best: Exchange | undefined;
  let most = 0;
  for (const exchange of candidates.values()) {
    const at = ({ place }: { readonly place: Place }): boolean => exchange.places.includes(place);
    const ends =
      growthsOf(estate).filter(at).length -
      growthsOf(of(exchange.inspection.conveyor, withExchange(estate, exchange))).filter(at).length;
    if (ends <= most) continue;
    most = ends;
    best = exchange;
  }
  return best;
}

/** More are a history that no exchange explains. */
const mostGrowths = 20;

/** The one other row of its look that a row fits crosswise with; undefined where there is none, or more than one. */
function exchangeAt(estate: Estate, row: number): Exchange | undefined {
  const { readings, inspections, places } = estate;
  const inspection = inspections[readings.inspection[row] ?? -1];
  const place = places[readings.place[row] ?? -1];
  if (!inspection || !place || !misfits(estate, place, row)) return undefined;
  const found: Exchange[] = [];
  for (let other = inspection.firstRow; other < inspection.endRow; other++) {
    const there = places[readings.place[other] ?? -1];
    if (!there || there === place || !misfits(estate, there, other)) continue;
    if (misfits(estate, place, row, other) || misfits(estate, there, other, row)) continue;
    found.push(
      row < other
        ? { inspection, rows: [row, other], places: [place, there] }
        : { inspection, rows: [other, row], places: [there, place] },
    );
  }
  return found.length === 1 ? found[0] : undefined;
}

/**
 * Whether a thickness, its own or that of another row, cannot stand between the readings before and after it at its place: by three
 * standard deviations of both. After the last reading it may have lost at most what was to be expected.
 */
function misfits(estate: Estate, place: Place, row: number, says = row): boolean {
  const { kind, value } = estate.readings;
  if (kind[row] !== ReadingKind.thickness || kind[says] !== ReadingKind.thickness) return false;
  const all = exposedOf(estate).get(place) ?? [];
  const rows = all.filter((each) => kind[each.row] === ReadingKind.thickness && each.exposure.known);
  const at = rows.findIndex((each) => each.row === row);
  const own = rows[at];
  if (!own) return false;
  const [before, after] = [rows[at - 1], rows[at + 1]].map((each) =>
    each?.set === own.set ? each : undefined,
  );
  const now = value[says] ?? NaN;
  const doubt = (other: number): number => 3 * Math.hypot(errorOf(estate, says), errorOf(estate, other));
  if (before && now > (value[before.row] ?? NaN) + doubt(before.row)) return true;
  if (after) return now < (value[after.row] ?? NaN) - doubt(after.row);
  const loss = before && expectedLoss(estate, place, before.row, row);
  return (
    loss !== undefined && now < (value[before?.row ?? -1] ?? NaN) - loss.most - doubt(before?.row ?? row)
  );
}

function withExchange(estate: Estate, { rows: [a, b] }: Exchange): Estate {
  const exchanged = (column: Float64Array): Float64Array => {
    const copy = column.slice();
    [copy[a], copy[b]] = [column[b] ?? NaN, column[a] ?? NaN];
    return copy;
  };
  const { readings } = estate;
  return {
    ...estate,
    readings: { ...readings, value: exchanged(readings.value), error: exchanged(readings.error) },
  };
}
