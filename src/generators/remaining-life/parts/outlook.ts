// What the table of decisions knows of the wear of a conveyor, from the model: chances by day of the conveyor and of each
// panel. A panel nobody has seen stands in with what its run lends; it is counted in, and what was seen is kept apart.

import type {
  ChanceBy,
  Chances,
  PanelOutlook,
  PlaceLife,
  WearOutlook,
} from '../../../domain/decision/wear-outlook.js';
import { setLying } from '../../../domain/model/exposure.js';
import { hoursByDuty } from '../../../domain/model/duty.js';
import { forwardDuty } from '../../../domain/model/history.js';
import type { Run } from '../../../domain/model/runs.js';
import { addDays, type CalendarDay } from '../../../domain/units/calendar.js';
import type { WearFit } from '../../../domain/wear/fit.js';
import { chanceOfFirst, type FirstChance, type GroupMember } from '../../../domain/wear/forecast-first.js';
import { forecastUnit } from '../../../domain/wear/forecast.js';
import {
  calendarOf,
  exposureThen,
  placed,
  recordedBefore,
  type Coming,
  type FittedWear,
  type PlacedUnit,
} from './forecasts.js';
import type { ConveyorForecast, DepthForecast } from './model.js';
import type { PointLife } from './points.js';
import { tabulated, type Distribution } from './tabulate.js';
import type { PanelLife, RunLife } from './runs.js';
import { unitOfUnseen } from './unseen-panels.js';

interface Unit {
  readonly unit: number;
  /** Exposure at the last meter reading, from which the forecasts count. */
  readonly now: number;
  readonly limit: number;
  readonly through: number;
}

interface PanelSource {
  readonly run: number;
  readonly panel: PanelLife;
  /** What its neighbours of one liner lend to a panel that nobody has seen. */
  readonly lent: readonly Unit[];
  /** Exposure since the last meter reading. */
  readonly since: number;
}

/** Undefined where the model gives no dates. */
export function outlookOf(
  fitted: FittedWear,
  coming: Coming,
  points: readonly PointLife[],
  runs: readonly RunLife[],
  forecast: ConveyorForecast,
): WearOutlook | undefined {
  const { result } = fitted;
  if (result.kind !== 'fitted' || coming.perDay === undefined || !(coming.perDay > 0)) return undefined;
  const known = new Map(placed(fitted, points, coming).map((each) => [each.point, each]));
  const since = (hoursByDuty(coming.duties, coming.from, coming.asOf) ?? 0) * exposurePerHour(coming);
  // Panels of one liner in a run that nobody has seen are alike; so is what is worked out for one unit.
  const singly = new Map<number, Chances>();
  const panels = runs.flatMap(({ run, panels: own }) => {
    return own.flatMap((panel) => {
      const source = { run: run.number, panel, lent: lent(fitted, coming, run, panel), since };
      const made = panelOf(result, coming, source, known, (units) => {
        const [only, another] = units;
        if (!only || another) return chancesOf(result, coming, units);
        const before = singly.get(only.unit) ?? chancesOf(result, coming, units);
        if (before) singly.set(only.unit, before);
        return before;
      });
      return made ? [made] : [];
    });
  });
  const units = new Map(panels.map(({ outlook, units: own }) => [outlook, own]));
  const seenUnits = points.flatMap((point) => {
    const each = known.get(point);
    return each && isSeen(point) ? [unitOf(each)] : [];
  });
  const unseen = panels.filter(({ outlook }) => !outlook.seen).flatMap(({ units: own }) => own);
  const counted = chancesOf(result, coming, [...seenUnits, ...unseen]);
  if (!counted) return undefined;
  const { asOf, duties, variation } = coming;
  const turnedBy = (day: CalendarDay): number => hoursByDuty(duties, asOf, day) ?? 0;
  const declared = forwardDuty(coming.history);
  const perHour = exposurePerHour(coming);
  const rests = new WeakMap<readonly PanelOutlook[], Chances>();
  const restsSeen = new WeakMap<readonly PanelOutlook[], Chances>();
  const stays = (relined: readonly PanelOutlook[]): Unit[] => {
    const gone = new Set(relined.flatMap((panel) => units.get(panel) ?? []).map(({ unit }) => unit));
    return seenUnits.filter(({ unit }) => !gone.has(unit));
  };
  const first = recordedBefore(coming).before?.first;
  return {
    asOf,
    ...(first !== undefined && first < asOf && { since: first }),
    counted,
    seen:
      (known.size === seenUnits.length ? ofForecast(forecast) : undefined) ??
      chancesOf(result, coming, seenUnits),
    panels: panels.map(({ outlook }) => outlook),
    rest(relined) {
      const left = (): Unit[] => [
        ...stays(relined),
        ...panels
          .filter(({ outlook }) => !outlook.seen && !relined.includes(outlook))
          .flatMap((p) => p.units),
      ];
      return kept(rests, relined, () => orNever(left(), (some) => laterOf(result, coming, some)));
    },
    restSeen: (relined) =>
      kept(restsSeen, relined, () => orNever(stays(relined), (some) => laterOf(result, coming, some))),
    exposureBy: (day) => turnedBy(day) * perHour,
    hoursBy: (day) => hoursByDuty(declared, asOf, day) ?? 0,
    turnedBy,
    dutySpread: variation.level.ratio,
  };
}

/** The conveyor's own forecast is of all its points: of what was seen, where all were. */
function ofForecast(forecast: ConveyorForecast): Chances | undefined {
  return forecast.kind === 'dates' && forecast.contactBy
    ? { condemnBy: forecast.chanceBy, contactBy: forecast.contactBy }
    : undefined;
}

function kept<K extends object, V>(known: WeakMap<K, V>, key: K, make: () => V): V {
  const made = known.get(key) ?? make();
  known.set(key, made);
  return made;
}

/** Where nothing stays there is nothing to fear. */
function orNever(units: readonly Unit[], make: (units: readonly Unit[]) => Chances): Chances {
  return units.length === 0 ? never : make(units);
}

const never: Chances = { condemnBy: () => 0, contactBy: () => 0 };

/** Exposure a running hour brings: 1, or tonnes. */
function exposurePerHour({ duties, from, perDay = 0 }: Coming): number {
  const first = hoursByDuty(duties, from, addDays(from, 1)) ?? 0;
  return first > 0 ? perDay / first : 1;
}

/** The place of a panel that was seen past its limit, or reaches it first by the middle of its forecast; or what the run lends. */
function panelOf(
  result: WearFit,
  coming: Coming,
  { run, panel, lent: ofRun, since }: PanelSource,
  known: ReadonlyMap<PointLife, PlacedUnit>,
  chancesFor: (units: readonly Unit[]) => Chances | undefined,
): { readonly outlook: PanelOutlook; readonly units: readonly Unit[] } | undefined {
  const own = panel.points.flatMap((point) => {
    const each = known.get(point);
    return each && isSeen(point) ? [each] : [];
  });
  const name = `panel ${panel.number} of run ${run}`;
  const units = own.length > 0 ? own.map(unitOf) : ofRun;
  const pointOf = ({ unit }: Unit): PointLife | undefined => own.find((each) => each.unit === unit)?.point;
  const lives = units.flatMap((unit) => {
    const life = lifeOf(result, unit, since, pointOf(unit)?.model?.condemn);
    return life ? [{ unit, life }] : [];
  });
  const [first] = [...lives].sort(
    (a, b) =>
      seenPast(pointOf(b.unit)) - seenPast(pointOf(a.unit)) ||
      a.life.median - a.life.now - (b.life.median - b.life.now),
  );
  const [only, another] = own;
  const chances =
    (only && !another ? ofPoint(only.point, laterOf(result, coming, units)) : undefined) ?? chancesFor(units);
  if (!first || !chances) return undefined;
  const governing = pointOf(first.unit);
  const other = governing && mirrored(governing, panel);
  const otherUnit = other && known.get(other);
  return {
    units,
    outlook: {
      run,
      panel: panel.number,
      from: panel.from,
      to: panel.to,
      seen: own.length > 0,
      liner: setLying(coming.history, (panel.from + panel.to) / 2, coming.asOf)?.liner,
      place: governing?.place.name ?? name,
      at: governing?.place.at ?? (panel.from + panel.to) / 2,
      life: first.life,
      ...chances,
      ...(otherUnit && { otherSide: lifeOf(result, unitOf(otherUnit), since) }),
    },
  };
}

/** Of one panel that nobody has seen: as any panel of the liner that lies there in its run. */
function lent({ input }: FittedWear, coming: Coming, run: Run, panel: PanelLife): readonly Unit[] {
  const unit = unitOfUnseen(input.members, coming.history, run, panel, coming.asOf);
  const member = unit === undefined ? undefined : input.members[unit];
  const now = member && exposureThen(member.set, coming);
  if (unit === undefined || !member || now === undefined) return [];
  const { set, fitted } = member;
  return [{ unit, now, limit: fitted - set.liner.condemn.value, through: fitted }];
}

/** What the report has worked out for the one point of a panel already; the rest when asked. */
function ofPoint({ model }: PointLife, later: Chances): Chances | undefined {
  const condemnBy = model?.condemn.kind === 'life' ? model.condemn.chanceBy : undefined;
  const contactBy = model?.trough?.kind === 'life' ? model.trough.chanceBy : undefined;
  return condemnBy && { condemnBy, contactBy: contactBy ?? later.contactBy };
}

/** A place of the same panel at the clock position that lies opposite, within half an hour of the clock. */
function mirrored({ place }: PointLife, { points }: PanelLife): PointLife | undefined {
  return points.find(
    (point) =>
      isSeen(point) && point.place !== place && Math.abs(12 - place.clock - point.place.clock) <= 0.5,
  );
}

function isSeen({ state }: PointLife): boolean {
  return state === 'thickness' || state === 'colour';
}

function unitOf({ point, unit, now }: PlacedUnit): Unit {
  return {
    unit,
    now,
    limit: point.fitted.value - point.condemn,
    through: point.depths.at(-1) ?? point.fitted.value,
  };
}

/** With the median where it is known already, the distribution is asked for only when somebody needs it. */
function lifeOf(
  result: WearFit,
  { unit, now: then, limit, through }: Unit,
  since: number,
  known?: DepthForecast,
): PlaceLife | undefined {
  // A look would be made today, not at the last meter reading.
  const now = Math.max(0, then + since);
  let asked: ((exposure: number) => number) | undefined;
  const ask = (): ((exposure: number) => number) => {
    const forecast = forecastUnit(result, unit, limit);
    return forecast.kind === 'life' ? tabulated(forecast) : () => 1;
  };
  if (known?.kind === 'life')
    return {
      now,
      limit,
      through,
      median: known.exposure.q50,
      reachedBy: (exposure) => (asked ??= ask())(exposure),
    };
  const forecast = forecastUnit(result, unit, limit);
  switch (forecast.kind) {
    case 'life':
      return { now, limit, through, reachedBy: tabulated(forecast), median: forecast.quantiles.q50 };
    case 'reached':
      return { now, limit, through, ...between(forecast) };
    case 'cannot say':
      return undefined;
  }
}

/** Seen short of the limit after so much, and past it by so much more: any exposure between is as likely. */
function between({
  after,
  by,
}: Readonly<Record<'after' | 'by', number>>): Pick<PlaceLife, 'median' | 'reachedBy'> {
  // Found past it when it was fitted: a life all but none, since its logarithm is asked for.
  const end = Math.max(by, 1e-6);
  const from = Math.min(Math.max(0, after), end);
  return {
    median: (from + end) / 2,
    reachedBy: (exposure) => (exposure >= end ? 1 : exposure <= from ? 0 : (exposure - from) / (end - from)),
  };
}

/** Bare steel before what was read at its limit, as the report orders its points; 0 where neither was seen. */
function seenPast(point: PointLife | undefined): number {
  return point?.pastLimit === 'trough shows' ? 2 : point?.pastLimit ? 1 : 0;
}

/**
 * Of the first of several to reach its limit, and to touch steel. Reached already: certain. Of steel it is asked when somebody wants
 * to know: of most panels of a large plant nobody does. What can be said of the limit can be said of steel.
 */
function chancesOf(result: WearFit, coming: Coming, units: readonly Unit[]): Chances | undefined {
  if (units.length === 0) return undefined;
  const condemnBy = firstBy(result, coming, units, ({ limit }) => limit);
  return condemnBy && { condemnBy, contactBy: laterOf(result, coming, units).contactBy };
}

/** The same, worked out only when asked; where nothing can be said of what is left, it counts as nothing more to fear. */
function laterOf(result: WearFit, coming: Coming, units: readonly Unit[]): Chances {
  let condemn: ChanceBy | undefined;
  let contact: ChanceBy | undefined;
  return {
    condemnBy: (day) =>
      (condemn ??= firstBy(result, coming, units, ({ limit }) => limit) ?? never.condemnBy)(day),
    contactBy: (day) =>
      (contact ??= firstBy(result, coming, units, ({ through }) => through) ?? never.contactBy)(day),
  };
}

/** Where the chance rises, roughly: enough to lay a table over it (tabulate.ts). */
function distributionOf({ reachedBy, about }: Extract<FirstChance, { kind: 'life' }>): Distribution {
  const at = (i: number): number => about * Math.exp(-3 + i / 6);
  const chance = Array.from({ length: 28 }, (_, i) => reachedBy(at(i)));
  const quantile = (level: number): number => {
    const i = chance.findIndex((each) => each >= level);
    if (i < 0) return at(chance.length);
    if (i === 0) return (chance[0] ?? 0) > level ? 0 : at(0);
    const [low = 0, high = 1] = [chance[i - 1], chance[i]];
    return at(i - 1 + (high > low ? (level - low) / (high - low) : 1));
  };
  const [q05, q10, q50, q90, q95] = [0.05, 0.1, 0.5, 0.9, 0.95].map(quantile) as unknown as Quintet; // five in, five out
  return { reachedBy, quantiles: { q05, q10, q50, q90, q95 } };
}

type Quintet = readonly [number, number, number, number, number];

function firstBy(
  result: WearFit,
  coming: Coming,
  units: readonly Unit[],
  depth: (unit: Unit) => number,
): ChanceBy | undefined {
  const had = Math.max(...units.map(({ now }) => now));
  const members = units.map((unit): GroupMember => ({ unit: unit.unit, now: unit.now, depth: depth(unit) }));
  const first = chanceOfFirst(result, members);
  if (first.kind === 'reached') return () => 1;
  if (first.kind === 'cannot say') return undefined;
  const dates = calendarOf(distributionOf(first), had, coming, had);
  return dates?.kind === 'dates' ? dates.reachedBy : undefined;
}
