// What should a gauge show at each place of a conveyor, now and over the running to come? Asked of the very model that the report
// forecasts with, so that the sheet an inspector carries and the report cannot disagree. Fitted once an estate and day.

import type { CalendarDay } from '../../domain/units/calendar.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposedReadings, setLying, type ExposedReading } from '../../domain/model/exposure.js';
import { dutyOn } from '../../domain/model/duty.js';
import { forwardDuty, historyOf, totalOn } from '../../domain/model/history.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import { knownOn } from '../../domain/model/known-on.js';
import type { Place } from '../../domain/model/records.js';
import { layerDepths } from '../../domain/wear/colour-bounds.js';
import { expectedLevels, expectedReach, expectedReading } from '../../domain/wear/expected-reading.js';
import type { WearFit } from '../../domain/wear/fit.js';
import { knownOf, recordsOf } from '../../domain/wear/forecast.js';
import { defaultGaugeError } from '../../domain/wear/reduce.js';
import { comingDuty, exposureThen, fitEstate, type Coming, type FittedWear } from './parts/forecasts.js';

export interface ExpectedWear {
  readonly measure: 'h' | 't';
  /** Day of that reading, and what runs a day from then on, h or t: each until the next begins. Empty where nobody declares it. */
  readonly from: CalendarDay;
  readonly daily: readonly { readonly from: CalendarDay; readonly running: number }[];
  /** What an hour or a tonne on the counter counts for: more than 1 where a faster speed than the drive's is recorded. */
  readonly perCount: number;
  /** Running after the last reading of the counter at which each place is told, h or t: rising from 0, `now` among them. */
  readonly ahead: readonly number[];
  /** Position of the day asked for in `ahead`; undefined where no duty tells how much has run by then. */
  readonly now: number | undefined;
  readonly of: (place: Place) => ExpectedPlace;
}

export type ExpectedPlace =
  | {
      readonly kind: 'readings';
      /** Between these a gauge should read, mm, one each for `ahead`. */
      readonly least: readonly number[];
      readonly most: readonly number[];
      /** Thicknesses and colours of this place and liner, and places behind the pool. */
      readonly records: number;
      readonly pool: number;
    }
  | { readonly kind: 'steel' }
  | { readonly kind: 'cannot say'; readonly why: string };

export function expectedWear(present: Estate, conveyor: Conveyor, asOf: CalendarDay): ExpectedWear {
  const estate = knownOn(present, asOf);
  const { fits, histories, readings } = fitted(estate, asOf);
  const history = histories.find((h) => h.conveyor === conveyor) ?? historyOf(estate, conveyor, { asOf });
  const coming = comingDuty(history, asOf);
  const measure = conveyor.wearBy === 'tonnes' ? 't' : 'h';
  const [then, today] = [totalOn(history, coming.from), totalOn(history, asOf)];
  const now = then === undefined || today === undefined ? undefined : tenths(Math.max(0, today - then));
  const ahead = aheadOf(coming.perDay, now);
  const fit = fits.find(({ input }) => input.measure === measure);
  return {
    measure,
    from: coming.from,
    daily: dailyOf(coming),
    perCount: measure === 't' ? 1 : (dutyOn(forwardDuty(history), coming.from)?.turns ?? 1),
    ahead,
    now: now === undefined ? undefined : ahead.indexOf(now),
    of: (place) => {
      const set = setLying(history, place.at, asOf);
      const exposure = exposureThen(set, coming);
      if (!fit || !set || exposure === undefined)
        return { kind: 'cannot say', why: 'how long this liner has been in is not known' };
      return expectedAt(fit, place, set, { rows: readings.get(place) ?? [], estate, exposure, ahead });
    },
  };
}

type Kept = ReturnType<typeof fitAll>;
const kept = new WeakMap<Estate, Map<CalendarDay, Kept>>();

/** An estate never changes, so what its records say on a day is worked out once. */
function fitted(estate: Estate, asOf: CalendarDay): Kept {
  let days = kept.get(estate);
  if (!days) kept.set(estate, (days = new Map()));
  let made = days.get(asOf);
  if (!made) days.set(asOf, (made = fitAll(estate, asOf)));
  return made;
}

function fitAll(estate: Estate, asOf: CalendarDay) {
  const readings = exposedReadings(estate, { asOf });
  const histories = estate.conveyors.map((conveyor) => historyOf(estate, conveyor, { asOf }));
  return { readings, histories, fits: fitEstate({ estate, histories, readings, asOf }) };
}

function dailyOf({ from, duties, perDay, history }: Coming): ExpectedWear['daily'] {
  const perHour = history.wearBy === 'tonnes' ? history.throughput?.perHour : 1;
  if (perDay === undefined || perHour === undefined) return [];
  const later = duties.flatMap((duty) =>
    duty.from !== undefined && duty.from > from ? [{ from: duty.from, running: duty.perDay * perHour }] : [],
  );
  return [{ from, running: perDay }, ...later];
}

/** Close together where most sheets are filled in, and out to two years of running, as parts of it. */
const steps = [0, 1 / 96, 1 / 48, 1 / 24, 1 / 12, 1 / 6, 1 / 4, 3 / 8, 1 / 2, 3 / 4, 1];
const twoYears = 731;

function aheadOf(perDay: number | undefined, now: number | undefined): readonly number[] {
  const most = Math.max((perDay ?? 24) * twoYears, 1, 1.5 * (now ?? 0));
  const all = [...steps.map((step) => Math.round(step * most)), ...(now === undefined ? [] : [now])];
  return [...new Set(all)].sort((a, b) => a - b);
}

/** Of an hour or a tonne: a counter shows no more. */
function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

interface At {
  readonly estate: Estate;
  readonly rows: readonly ExposedReading[];
  /** At the last reading of the counter. */
  readonly exposure: number;
  readonly ahead: readonly number[];
}

function expectedAt({ input, result }: FittedWear, place: Place, set: LinerSet, at: At): ExpectedPlace {
  const unit = input.members.findIndex((m) => m.place === place && m.set === set);
  if (result.kind !== 'fitted' || unit < 0)
    return { kind: 'cannot say', why: 'no record here or elsewhere tells how fast it wears' };
  const depths = layerDepths(set.liner.layers.map((layer) => layer.thickness.value));
  if (knownOf(result, unit, depths.at(-1) ?? 0).reached < Infinity) return { kind: 'steel' };
  const { usual, found: gauge } = gaugeOf(result, input.options.gaugeError ?? defaultGaugeError, at);
  const found = at.ahead.map((more) =>
    expectedReading(result, unit, { exposure: at.exposure + more, gauge, levels: expectedLevels }),
  );
  if (found.some((reading) => reading === undefined))
    return { kind: 'cannot say', why: 'the records only bound how fast it wears from one side' };
  const { middle, give } = leftBelow(set, input.units.fitted[unit] ?? Infinity, at, usual);
  // The path of a point wanders as a walk does; a liner does not grow.
  const most = falling(found.map((reading) => Math.min(Math.max(0, reading?.[1] ?? 0), middle + give)));
  const least = falling(
    found.map((reading) => {
      const low = reading?.[0] ?? 0;
      // Where a colour says that less is left than all else does, its layer may have ended just now or long ago.
      return Math.max(0, low > middle ? middle - give : low);
    }),
  );
  const { readings, indicators, pool } = recordsOf(result, unit);
  return {
    kind: 'readings',
    least: least.map((mm) => Math.floor(mm * 1000) / 1000),
    most: most.map((mm) => Math.ceil(mm * 1000) / 1000),
    records: readings + indicators,
    pool,
  };
}

function falling(values: readonly number[]): readonly number[] {
  let low = Infinity;
  return values.map((value) => (low = Math.min(low, value)));
}

/** Of the gauge that read here last: as it declares, and as much larger as the records show the usual one to be. mm. */
function gaugeOf(
  fit: WearFit,
  usual: number,
  { estate, rows }: At,
): { readonly usual: number; readonly found: number } {
  const stated = rows.map(({ row }) => estate.readings.error[row] ?? NaN).findLast((error) => error > 0);
  return { usual: stated ?? usual, found: fit.readingError * ((stated ?? usual) / usual) };
}

/** No more than was fitted, and after a colour than its layer leaves, give or take the gauge and the layer's tolerance; mm. */
function leftBelow(
  set: LinerSet,
  fitted: number,
  { estate, rows }: At,
  gauge: number,
): { readonly middle: number; readonly give: number } {
  const depths = layerDepths(set.liner.layers.map((layer) => layer.thickness.value));
  const deepest = rows
    .filter((row) => row.set?.reline === set.reline && estate.readings.kind[row.row] === ReadingKind.colour)
    .reduce((most, { row }) => Math.max(most, estate.readings.value[row] ?? 0), 0);
  const depth = depths[deepest] ?? 0;
  const spread = Math.hypot(gauge, set.liner.layerTolerance.value * depth);
  // The layers of a panel that was moved count from what it was new, its wear from what it was then.
  const left = set.reline?.moved ? Math.min(fitted, set.liner.thickness.value - depth) : fitted - depth;
  return { middle: left, give: expectedReach * spread };
}
