// Fits the wear model to the estate's records and turns what it says into forecasts of places, runs and conveyors, with dates
// by the coming duty and its spread. Where a change of duty is planned, dates are stretched to it.

import { addDays, type CalendarDay } from '../../../domain/units/calendar.js';
import { dutyOn, hoursByDuty, turningDuties, type Duty } from '../../../domain/model/duty.js';
import { dutyVariation, type DutyVariation } from '../../../domain/model/duty-variation.js';
import { forwardDuty, momentOn, totalOn, type History } from '../../../domain/model/history.js';
import { wearTotal, type LinerSet } from '../../../domain/model/liner-sets.js';
import { ageReplacement, type ReplacementCosts } from '../../../domain/wear/age-replacement.js';
import { nextInspection } from '../../../domain/wear/decision.js';
import { fitWear, type WearFit, type WearResult } from '../../../domain/wear/fit.js';
import { forecastFirst, type GroupMember } from '../../../domain/wear/forecast-first.js';
import { forecastUnit, recordsOf, type Forecast } from '../../../domain/wear/forecast.js';
import { passedByModel, passedBySight, type LimitPassed } from '../../../domain/wear/passed.js';
import { defaultGaugeError, reduceReadings } from '../../../domain/wear/reduce.js';
import { wearAt } from '../../../domain/wear/wear-at.js';
import { whereToLook } from '../../../domain/wear/where-to-look.js';
import {
  toCalendar,
  type CalendarForecast,
  type DayQuantiles,
  type ForwardDuty,
} from '../../../domain/wear/to-calendar.js';
import type {
  Borrowed,
  CheapestAge,
  ConveyorForecast,
  ConveyorModel,
  DepthForecast,
  FitSummary,
  PointModel,
  Quantiles,
  RecordBreak,
  Stray,
} from './model.js';
import { tabulated, type Distribution } from './tabulate.js';
import { governingPoint, type PointLife } from './points.js';
import { looksOff, wearPace, type BranchDates } from './wear-change.js';
import type { RunLife } from './runs.js';
import { unitOfUnseen } from './unseen-panels.js';
import { dutyOf, wearInputs, type WearInput, type WearSource } from './wear-input.js';
import { sectorOf } from './wear-member.js';

export interface FittedWear {
  readonly input: WearInput;
  readonly result: WearResult;
}

/** One fit a measure; a fit that cannot say is kept, so that the report can tell why. */
export function fitEstate(source: WearSource): readonly FittedWear[] {
  return wearInputs(source).map((input) => ({
    input,
    result: fitWear(reduceReadings(input.readings, input.units), input.pools, input.options),
  }));
}

export function summarise({ input, result }: FittedWear): FitSummary {
  const fit = result.kind === 'fitted' ? result : undefined;
  return {
    measure: input.measure,
    kind: result.kind,
    why: result.kind === 'cannot say' ? result.why : undefined,
    units: input.members.length,
    informative: fit?.informative ?? 0,
    readings: input.rows.length,
    medianRate: fit?.rate.median,
    rateError: fit && Number.isFinite(fit.rate.logError) ? fit.rate.logError : undefined,
    spread: fit?.rate.spread,
    readingError: fit?.readingError,
    method: fit?.method,
    dutyNoise: fit && { ratio: fit.dutyNoise.ratio, per: fit.dutyNoise.per, from: fit.dutyNoise.from },
  };
}

/**
 * What dates of a conveyor rest on. Everything counts from the last meter reading: what ran since is as unread as what is to
 * come.
 */
export interface Coming {
  readonly history: History;
  readonly asOf: CalendarDay;
  /** What exposures count in. */
  readonly measure: 'hours' | 'tonnes';
  /** Day of the last reading of the counter that wear goes by; the day of the report where there is none. */
  readonly from: CalendarDay;
  /** Exposure a day from then on, h or t; undefined where no duty or throughput is known. */
  readonly perDay: number | undefined;
  readonly variation: DutyVariation;
  /** By which dates are reckoned: declared, observed, or tried from the day of the report on. */
  readonly duties: readonly Duty[];
}

/** In what wear of the liner follows, or in hours where asked for. */
export function comingDuty(
  history: History,
  asOf: CalendarDay,
  measure: 'hours' | 'tonnes' = history.wearBy,
): Coming {
  const perHour = measure === 'tonnes' ? history.throughput?.perHour : 1;
  const counter = measure === 'tonnes' ? history.tonnes : history.hours;
  const from = counter?.knots.at(-1)?.day ?? asOf;
  const duties = turningDuties(forwardDuty(history));
  const then = dutyOn(duties, from);
  return {
    history,
    asOf,
    measure,
    from,
    duties,
    variation: dutyVariation(history.hours.knots, history.duties, then),
    perDay: then && perHour !== undefined ? then.perDay * perHour : undefined,
  };
}

/** Exposure of a set at the last meter reading, from which dates count; below 0 where it was fitted later. */
export function exposureThen(set: LinerSet | undefined, { history, from }: Coming): number | undefined {
  const fitted = wearTotal(history, set?.fitted);
  const total = totalOn(history, from);
  return fitted === undefined || total === undefined ? undefined : total - fitted;
}

/** With `full` false only the condemn limit is forecast, for estates of so many points that nobody reads the rest. */
export function pointModel(
  fitted: FittedWear,
  point: PointLife,
  coming: Coming,
  full: boolean,
): PointModel | undefined {
  const { input, result } = fitted;
  if (result.kind !== 'fitted') return undefined;
  const unit = input.members.findIndex((m) => m.place === point.place && m.set === point.set);
  if (unit < 0) return undefined;
  const through = point.depths.at(-1) ?? point.fitted.value;
  const then = exposureThen(point.set, coming);
  const forecastOf = (depth: number, fit: WearFit = result): DepthForecast =>
    depthForecast(forecastUnit(fit, unit, depth), then, coming);
  const limit = forecastUnit(result, unit, point.fitted.value - point.condemn);
  const strays = straysOf(fitted, result, unit);
  const { basis, readings, indicators, notSeen, pool } = recordsOf(result, unit);
  return {
    basis,
    readings,
    indicators,
    notSeen,
    pool,
    strays,
    breaks: breaksOf(fitted, result, unit),
    path: full ? pathOf(result, unit, point) : [],
    rate: limit.kind === 'life' ? limit.rate : rateOf(result, unit, through),
    condemn: depthForecast(limit, then, coming),
    layers: full ? point.depths.slice(1, -1).map((depth) => forecastOf(depth)) : undefined,
    trough: full ? forecastOf(through) : undefined,
    fullWeight:
      strays.length > 0 && result.fullWeight
        ? forecastOf(point.fitted.value - point.condemn, result.fullWeight)
        : undefined,
    asDeclared: result.asDeclared && forecastOf(point.fitted.value - point.condemn, result.asDeclared),
  };
}

/** Where the limit is past, the rate still draws the chart: asked of a depth far beyond. */
function rateOf(fit: WearFit, unit: number, through: number): PointModel['rate'] {
  const beyond = forecastUnit(fit, unit, through * 2);
  return beyond.kind === 'life' ? beyond.rate : undefined;
}

function straysOf({ input }: FittedWear, fit: WearFit, unit: number): readonly Stray[] {
  return fit.remarks.flatMap((remark) => {
    if (remark.kind !== 'outlier' || remark.unit !== unit) return [];
    const row = input.rows[remark.reading];
    const day = input.readings.day[remark.reading];
    const thickness = input.readings.value[remark.reading];
    // Days in the column came from calendar days.
    return row === undefined || day === undefined || thickness === undefined
      ? []
      : [{ row, day: day as CalendarDay, thickness, expected: remark.expected, weight: remark.weight }];
  });
}

/** The wear as the model sees it at each look of this liner. */
function pathOf(fit: WearFit, unit: number, point: PointLife): PointModel['path'] {
  const looks = [...new Set(point.readings.map(({ exposure }) => exposure))].filter((x) => x > 0);
  return looks.sort((a, b) => a - b).map((exposure) => ({ exposure, ...wearAt(fit, unit, exposure) }));
}

function breaksOf({ input }: FittedWear, fit: WearFit, unit: number): readonly RecordBreak[] {
  return fit.remarks.flatMap((remark) => {
    if (remark.kind !== 'thicker than before' || remark.unit !== unit) return [];
    const { day } = input.readings;
    const [from, to] = [day[remark.earlier], day[remark.reading]];
    // Days in the column came from calendar days.
    return from === undefined || to === undefined || from === to
      ? []
      : [{ from: from as CalendarDay, to: to as CalendarDay, growth: remark.growth }];
  });
}

/** For whatever unit of whatever fit. */
export function forecastDepth(
  fit: WearFit,
  unit: number,
  depth: number,
  /** Exposure at the last meter reading. */
  then: number | undefined,
  coming: Coming,
): DepthForecast {
  return depthForecast(forecastUnit(fit, unit, depth), then, coming);
}

function depthForecast(forecast: Forecast, then: number | undefined, coming: Coming): DepthForecast {
  switch (forecast.kind) {
    case 'reached':
      return { kind: 'reached', by: forecast.by, passed: seenPassed(forecast, then, coming) };
    case 'cannot say':
      return { kind: 'cannot say', why: forecast.why, atLeast: forecast.atLeast };
    case 'life': {
      const dates = then === undefined ? undefined : calendarOf(forecast, then, coming);
      const exposure = forecast.quantiles;
      if (dates?.kind !== 'dates')
        return { kind: 'life', exposure, days: undefined, chanceBy: undefined, passed: undefined };
      const { quantiles: days, reachedBy: chanceBy } = dates;
      return { kind: 'life', exposure, days, chanceBy, passed: passedByModel(days, chanceBy, coming.asOf) };
    }
  }
}

/** Between the look that found it short, or the fitting, and the one that found it reached. */
function seenPassed(
  { by, after }: Extract<Forecast, { kind: 'reached' }>,
  then: number | undefined,
  coming: Coming,
): LimitPassed | undefined {
  const on = then === undefined ? undefined : dayHad(coming, by - then);
  return then === undefined || on === undefined ? undefined : passedBySight(dayHad(coming, after - then), on);
}

/** The first day that had so much exposure, counted from the last meter reading (0 or less); undefined without a meter. */
function dayHad(coming: Coming, exposure: number): CalendarDay | undefined {
  const { before } = recordedBefore(coming);
  if (!before) return undefined;
  let low = before.first - 1;
  let high: number = coming.from;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    // Whole numbers between calendar days are calendar days; a reading's exposure is a sum of decimals.
    if (before.exposureOn(middle as CalendarDay) >= exposure - 1e-6) high = middle;
    else low = middle;
  }
  return high as CalendarDay;
}

/**
 * With no duty there are no dates. `then`: exposure at the last meter reading. `moved`: the exposure at which the forecast begins
 * to count. A change of duty since, or a planned one, stretches the days after it.
 */
export function calendarOf(
  forecast: Distribution,
  then: number,
  coming: Coming,
  moved = 0,
): CalendarForecast | undefined {
  const { perDay, variation, from, asOf, duties } = coming;
  if (perDay === undefined) return undefined;
  const changes = duties.some((duty) => duty.from !== undefined && duty.from > from);
  const duty: ForwardDuty = {
    perDay,
    spread: variation.level.ratio,
    wander: variation.wander,
    from,
    now: then,
    today: changes ? from : asOf,
    ...recordedBefore(coming),
  };
  const ahead = tabulated(forecast, Math.max(0, then - moved));
  const reachedBy = (exposure: number): number =>
    exposure < then ? forecast.reachedBy(exposure - moved) : ahead(exposure - moved);
  const calendar = toCalendar({ reachedBy }, duty);
  return calendar.kind === 'dates' && changes ? stretched(calendar, coming) : calendar;
}

/** As the meter says: dates that lie behind its last reading follow it and no duty. */
export function recordedBefore({ history, from, measure }: Coming): Pick<ForwardDuty, 'before'> {
  const totalBy = (day: CalendarDay): number | undefined => {
    const { tonnes, turned } = momentOn(history, day);
    return measure === 'tonnes' ? tonnes : turned;
  };
  const counter = measure === 'tonnes' ? history.tonnes : history.hours;
  const first = counter?.knots[0]?.day;
  const then = totalBy(from);
  if (first === undefined || then === undefined) return {};
  return { before: { first, exposureOn: (day) => Math.min(0, (totalBy(day) ?? 0) - then) } };
}

type Dates = Extract<CalendarForecast, { kind: 'dates' }>;

/** Reckons with the duty of each day: a date under unchanged duty becomes the day on which the same hours will have run. */
function stretched(calendar: Dates, { duties, from }: Coming): Dates {
  const first = hoursByDuty(duties, from, addDays(from, 1)) ?? 0;
  const plain = (day: CalendarDay): number =>
    first > 0 ? from + (hoursByDuty(duties, from, day) ?? 0) / first : day;
  const back = (day: CalendarDay | undefined): CalendarDay | undefined => {
    if (day === undefined || day <= from) return day;
    let low: number = from;
    let high: number = calendar.horizon;
    if (plain(calendar.horizon) < day) return undefined;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (plain(middle as CalendarDay) <= day)
        low = middle; // whole numbers between calendar days are calendar days
      else high = middle;
    }
    return low as CalendarDay;
  };
  let quantiles: DayQuantiles | undefined;
  const made = (): DayQuantiles => {
    const { q05, q10, q50, q90, q95 } = calendar.quantiles;
    return { q05: back(q05), q10: back(q10), q50: back(q50), q90: back(q90), q95: back(q95) };
  };
  return {
    kind: 'dates',
    horizon: calendar.horizon,
    duty: calendar.duty,
    get quantiles() {
      return (quantiles ??= made());
    },
    // The chance is continuous in the day.
    reachedBy: (day) => calendar.reachedBy(day < from ? day : (plain(day) as CalendarDay)),
    dayOf: (level) => back(calendar.dayOf(level)),
  };
}

export interface ConveyorInput {
  readonly fitted: FittedWear;
  readonly coming: Coming;
  readonly points: readonly PointLife[];
  readonly runs: readonly RunLife[];
}

export function conveyorModel({ fitted, coming, points, runs }: ConveyorInput): ConveyorModel {
  const { history, asOf } = coming;
  const { conveyor } = history;
  const risk = (conveyor.risk ?? conveyor.plant.risk).value;
  const { forecast, condemn, cheapest } = firstOf(fitted, coming, points);
  const half = points.reduce<CalendarDay | undefined>(
    (a, p) => (p.nextLook && (a === undefined || p.nextLook.day < a) ? p.nextLook.day : a),
    undefined,
  );
  return {
    forecast,
    asDeclared: firstAsDeclared(fitted, coming, points),
    risk,
    ...changeOf(fitted, coming, points, forecast),
    dutyVariation: coming.variation,
    meterRead: coming.from,
    riskDay: condemn?.kind === 'dates' ? condemn.dayOf(risk) : undefined,
    // The model's chance says when to look; half of the life by hand stands beside it and rules only where there are no dates.
    // The half is reckoned from each point's last look, so it is handed over as twice the days that are left to it.
    look: nextInspection({
      condemn,
      remainingDays: half === undefined || condemn?.kind === 'dates' ? undefined : 2 * (half - asOf),
      risk,
      asOf,
    }),
    lookAt: lookAt(fitted, points, coming),
    cheapest,
    unseen: unseenRuns(fitted, coming, runs),
    borrowed: borrowedBy(fitted, conveyor.name, history),
  };
}

/** The first place's dates if the gauges were as good as declared; undefined where the scatter gives no reason to ask. */
function firstAsDeclared(
  { input, result }: FittedWear,
  coming: Coming,
  points: readonly PointLife[],
): DayQuantiles | undefined {
  const declared = result.kind === 'fitted' ? result.asDeclared : undefined;
  const first = declared && firstOf({ input, result: declared }, coming, points).condemn;
  return first?.kind === 'dates' ? first.quantiles : undefined;
}

/** Whether the rate has changed, with both branches' dates at the point whose limit comes first. */
function changeOf(
  { input, result }: FittedWear,
  coming: Coming,
  points: readonly PointLife[],
  first: ConveyorForecast,
): Pick<ConveyorModel, 'pace' | 'looksOff'> {
  const change = result.kind === 'fitted' ? result.change : undefined;
  const conveyor = input.conveyors.indexOf(coming.history.conveyor);
  const dates = (): BranchDates | undefined => {
    const worst = governingPoint(points, first);
    const unit = input.members.findIndex((m) => m.place === worst?.place && m.set === worst?.set);
    const then = exposureThen(worst?.set, coming);
    if (!worst || result.kind !== 'fitted' || unit < 0 || then === undefined) return undefined;
    const forecast = forecastUnit(result, unit, worst.fitted.value - worst.condemn);
    const branches = forecast.kind === 'life' ? forecast.branches : undefined;
    if (!branches) return undefined;
    const daysOf = (reachedBy: (exposure: number) => number, quantiles: Quantiles) => {
      const calendar = calendarOf({ reachedBy, quantiles }, then, coming);
      return calendar?.kind === 'dates' ? calendar.quantiles : undefined;
    };
    const ifChanged = daysOf(branches.reachedByIfChanged, branches.ifChanged);
    const ifNot = daysOf(branches.reachedByIfNot, branches.ifNot);
    if (!ifChanged || !ifNot) return undefined;
    return {
      point: worst.place.name,
      asOf: coming.asOf,
      ifChanged,
      ifNot,
      exposureIfChanged: branches.ifChanged,
      exposureIfNot: branches.ifNot,
    };
  };
  const names = input.conveyors.map(({ name }) => name);
  return {
    pace: wearPace({ change, conveyor, names, dates, duties: coming.history.duties }),
    looksOff: looksOff(change, conveyor, input.options.gaugeError ?? defaultGaugeError),
  };
}

export interface PlacedUnit {
  readonly point: PointLife;
  readonly unit: number;
  /** Exposure at the last meter reading. */
  readonly now: number;
}

/** Points that are forecast and whose exposure is known, with their row in the model. */
export function placed(
  { input }: FittedWear,
  points: readonly PointLife[],
  coming: Coming,
): readonly PlacedUnit[] {
  return points.flatMap((point) => {
    const unit = input.members.findIndex((m) => m.place === point.place && m.set === point.set);
    const now = exposureThen(point.set, coming);
    return unit < 0 || now === undefined || point.model === undefined ? [] : [{ point, unit, now }];
  });
}

function lookAt(fitted: FittedWear, points: readonly PointLife[], coming: Coming): ConveyorModel['lookAt'] {
  if (fitted.result.kind !== 'fitted') return [];
  const members = placed(fitted, points, coming);
  return whereToLook(
    fitted.result,
    members.map(({ point, unit, now }) => ({ unit, now, depth: point.fitted.value - point.condemn })),
  )
    .filter((look) => look.narrowing >= 0.01)
    .slice(0, 3)
    .flatMap(({ index, narrowing }) => {
      const name = members[index]?.point.place.name;
      return name === undefined ? [] : [{ name, share: narrowing }];
    });
}

function firstOf(
  fitted: FittedWear,
  coming: Coming,
  points: readonly PointLife[],
): {
  forecast: ConveyorForecast;
  condemn: CalendarForecast | undefined;
  cheapest?: CheapestAge | undefined;
} {
  const { result } = fitted;
  if (result.kind !== 'fitted')
    return { forecast: { kind: 'cannot say', why: result.why }, condemn: undefined };
  const seenPoints = placed(fitted, points, coming);
  if (seenPoints.length === 0)
    return {
      forecast: { kind: 'cannot say', why: 'no point with a known exposure' },
      condemn: undefined,
    };
  const first = forecastFirst(
    result,
    seenPoints.map(({ point, unit, now }) => ({ unit, now, depth: point.fitted.value - point.condemn })),
  );
  const steel = forecastFirst(
    result,
    seenPoints.map(({ point, unit, now }) => ({
      unit,
      now,
      depth: point.depths.at(-1) ?? point.fitted.value,
    })),
  );
  if (first.kind === 'reached') {
    const units = new Set(first.members.map((m) => m.unit));
    return {
      forecast: {
        kind: 'reached',
        names: seenPoints.filter((s) => units.has(s.unit)).map((s) => s.point.place.name),
        passed: firstPassed(result, first.members, coming),
      },
      condemn: undefined,
    };
  }
  if (first.kind === 'cannot say')
    return {
      forecast: { kind: 'cannot say', why: 'the records only bound the rate' },
      condemn: undefined,
    };
  // Exposures from the last meter reading are moved by what the longest-lying liner had then, so that a cost per hour counts the
  // hours already given.
  const had = Math.max(...seenPoints.map((s) => s.now));
  const condemn = calendarOf(first, had, coming, had);
  const contact = steel.kind === 'life' ? calendarOf(steel, had, coming, had) : undefined;
  if (condemn?.kind !== 'dates')
    return {
      forecast: { kind: 'cannot say', why: condemn?.why ?? 'no duty, so no dates' },
      condemn,
    };
  return {
    condemn,
    cheapest: steel.kind === 'life' ? cheapestAge(steel, had, coming) : undefined,
    forecast: {
      kind: 'dates',
      days: condemn.quantiles,
      passed: passedByModel(condemn.quantiles, condemn.reachedBy, coming.asOf),
      exposure: first.quantiles,
      already: first.already,
      chanceBy: condemn.reachedBy,
      contactBy: contact?.kind === 'dates' ? contact.reachedBy : undefined,
      readings: first.readings,
      indicators: first.indicators,
      pool: first.pool,
      notInspected: first.notInspected,
      first: seenPoints
        .map(({ point }, i) => ({ name: point.place.name, share: first.first[i] ?? 0 }))
        .sort((a, b) => b.share - a.share || (a.name < b.name ? -1 : 1)),
    },
  };
}

/** Of several that were seen at their limit: when the first of them may have passed it, and by when one surely had. */
function firstPassed(
  result: WearFit,
  members: readonly GroupMember[],
  coming: Coming,
): LimitPassed | undefined {
  const all = members.flatMap(({ unit, depth, now }) => {
    const forecast = forecastUnit(result, unit, depth);
    return forecast.kind === 'reached' ? (seenPassed(forecast, now, coming) ?? []) : [];
  });
  const [first, ...others] = all;
  if (!first) return undefined;
  const starts = all.flatMap(({ from }) => from ?? []);
  const from = starts.length === all.length ? (Math.min(...starts) as CalendarDay) : undefined; // the least of calendar days
  return passedBySight(
    from,
    others.reduce((least, { to }) => (to < least ? to : least), first.to),
  );
}

/** Age replacement of the liner that lies there: it has lasted until now, and fails when the steel is touched. */
function cheapestAge(steel: Distribution, had: number, coming: Coming): CheapestAge | undefined {
  const costs = costsOf(coming.history);
  if (!costs) return undefined;
  const chance = tabulated(steel);
  const byAge = (age: number): number => (age <= had ? 0 : chance(age - had));
  const answer = ageReplacement(byAge, had + steel.quantiles.q50, costs);
  if (answer.kind === 'run to failure') return undefined;
  const exposure = Math.max(answer.exposure, had);
  const day =
    coming.perDay !== undefined && coming.perDay > 0
      ? addDays(coming.from, (exposure - had) / coming.perDay)
      : undefined;
  const past = day !== undefined && day < coming.asOf;
  return { exposure, day: past ? coming.asOf : day, costRate: answer.costRate, toFailure: answer.toFailure };
}

/** Planned: the reline. Failure: the unplanned reline and the repair of the trough. Undefined unless all are declared in one currency. */
function costsOf(history: History): ReplacementCosts | undefined {
  const amount = (item: string): { value: number; currency: string | undefined } | undefined => {
    const cost = history.conveyor.plant.costs.find((c) => c.item === item);
    return cost?.amount.dimension === 'money'
      ? { value: cost.amount.value, currency: cost.amount.currency }
      : undefined;
  };
  const [planned, unplanned, repair] = [
    amount('reline'),
    amount('unplanned reline'),
    amount('trough repair'),
  ];
  if (
    !planned ||
    !unplanned ||
    planned.currency !== unplanned.currency ||
    (repair && repair.currency !== planned.currency)
  )
    return undefined;
  return { planned: planned.value, failure: unplanned.value + (repair?.value ?? 0) };
}

function unseenRuns(fitted: FittedWear, coming: Coming, runs: readonly RunLife[]): ConveyorModel['unseen'] {
  const { input, result } = fitted;
  if (result.kind !== 'fitted') return [];
  return runs.flatMap(({ run, panels }) => {
    const unseen = panels.flatMap((panel) =>
      panel.state === 'seen'
        ? []
        : (unitOfUnseen(input.members, coming.history, run, panel, coming.asOf) ?? []),
    );
    const units = [...new Set(unseen)];
    return units.flatMap((unit) => {
      const member = input.members[unit];
      if (!member) return [];
      const { set, fitted } = member;
      return [
        {
          run: run.number,
          panels: unseen.filter((each) => each === unit).length,
          linedOn: units.length > 1 ? set.fitted?.day : undefined,
          condemn: depthForecast(
            forecastUnit(result, unit, fitted - set.liner.condemn.value),
            exposureThen(set, coming),
            coming,
          ),
        },
      ];
    });
  });
}

function borrowedBy({ input, result }: FittedWear, name: string, history: History): readonly Borrowed[] {
  if (result.kind !== 'fitted') return [];
  const sectors = new Set(
    input.members.flatMap((m) =>
      m.conveyor === history.conveyor && m.place ? [sectorOf(m.place.clock)] : [],
    ),
  );
  const liners = new Set(history.linerSets.filter((s) => !s.removed).map((s) => s.liner.name));
  const belongs = (pool: string, label: string): boolean =>
    pool === 'conveyor'
      ? label === name
      : pool === 'run'
        ? label.startsWith(`${name} run `)
        : pool === 'liner'
          ? liners.has(label)
          : pool === 'sector'
            ? sectors.has(label)
            : pool === 'duty'
              ? label === dutyOf(history.conveyor)
              : false;
  return result.pools.flatMap((pool) =>
    pool.levels
      .filter((level) => belongs(pool.name, level.label))
      .map((level) => ({
        pool: pool.name,
        label: level.label,
        factor: Math.exp(level.offset),
        units: level.units,
        low: Math.exp(level.offset - 1.645 * level.standardError),
        high: Math.exp(level.offset + 1.645 * level.standardError),
      })),
  );
}
