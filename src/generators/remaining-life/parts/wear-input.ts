// Which rows does the wear model see? One unit for every liner set at every place, former sets included, and one for each liner
// that lies in a run, standing for its panels that nobody has looked at (unseen-panels.ts). Conveyors whose wear goes by hours are
// fitted together, those by tonnes together; pools say what they share: the conveyor, the run, the place (which may wear alike
// from set to set), the liner. Where the liners declare an expected life, rates are pooled relative to it.

import { defaultGaugeError } from '../../../domain/wear/reduce.js';
import { exposureErrorOf } from '../../../domain/model/hours-error.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { isPointNow, setLying, type ExposedReading } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import type { History } from '../../../domain/model/history.js';
import { setsAt } from '../../../domain/model/liner-sets.js';
import { believableSpread, spreadRatio } from '../../../domain/model/spread-ratio.js';
import type { Place } from '../../../domain/model/records.js';
import { runAt, runsOf } from '../../../domain/model/runs.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { clockColumns } from './clock-columns.js';
import { unseenPanels } from './unseen-panels.js';
import { sectorOf, type WearMember } from './wear-member.js';
import { layerDepths } from '../../../domain/wear/colour-bounds.js';
import type { Build, ReadingColumns, UnitColumns } from '../../../domain/wear/columns.js';
import type { Pool, WearOptions } from '../../../domain/wear/fit.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export interface WearInput {
  readonly measure: 'h' | 't';
  readonly units: UnitColumns;
  readonly readings: Required<ReadingColumns>;
  /** Row of the estate's readings for each row of `readings`. */
  readonly rows: readonly number[];
  readonly pools: readonly Pool[];
  readonly options: WearOptions;
  readonly members: readonly WearMember[];
  /** By number, as the wear clocks count them. */
  readonly conveyors: readonly Conveyor[];
}

export interface WearSource {
  readonly estate: Estate;
  readonly histories: readonly History[];
  readonly readings: ReadonlyMap<Place, readonly ExposedReading[]>;
  readonly asOf: CalendarDay | undefined;
}

/** One input a measure that at least one conveyor uses. */
export function wearInputs(source: WearSource): readonly WearInput[] {
  return (['h', 't'] as const).flatMap((measure) => {
    const histories = source.histories.filter((h) => (h.wearBy === 'tonnes') === (measure === 't'));
    return histories.length === 0 ? [] : [wearInput(source, histories, measure)];
  });
}

function wearInput(source: WearSource, histories: readonly History[], measure: 'h' | 't'): WearInput {
  const members: WearMember[] = [];
  const rows: number[] = [];
  const columns = {
    unit: [] as number[],
    exposure: [] as number[],
    kind: [] as number[],
    value: [] as number[],
    day: [] as number[],
    error: [] as number[],
  };
  const { kind: kinds, value: values, error: errors } = source.estate.readings;
  for (const history of histories) {
    for (const place of source.estate.places) {
      if (place.conveyor !== history.conveyor) continue;
      const readings = source.readings.get(place) ?? [];
      const lying =
        source.asOf !== undefined && isPointNow(source.estate, history, place, readings, source.asOf)
          ? setLying(history, place.at, source.asOf)
          : undefined;
      for (const set of setsAt(history.linerSets, place.at)) {
        const own = readings.filter((r) => r.set === set && r.exposure.known);
        if (own.length === 0 && set !== lying) continue;
        const { at, clock, conveyor } = place;
        const fitted = fittedThickness(set, place).value;
        const unit = members.push({ conveyor, place, run: runAt(conveyor, at), set, at, clock, fitted }) - 1;
        for (const { row, exposure, inspection } of own) {
          const kind = kinds[row] ?? ReadingKind.unreadable;
          if (kind === ReadingKind.unreadable || !exposure.known) continue;
          rows.push(row);
          columns.unit.push(unit);
          columns.exposure.push(exposure.value);
          columns.kind.push(kind);
          columns.value.push(values[row] ?? NaN);
          columns.day.push(inspection.date.day);
          columns.error.push(
            withHours(errors[row] ?? NaN, {
              wear: fitted - (values[row] ?? NaN),
              exposure: exposure.value,
              hours: measure === 'h' ? exposureErrorOf(history, set, inspection) : 0,
            }),
          );
        }
      }
    }
    if (source.asOf !== undefined)
      members.push(...unseenPanels(source.estate, source.readings, history, source.asOf));
  }
  const { builds, build } = buildsOf(members);
  const { offset, expectedLife } = expectations(members, histories, measure);
  return {
    measure,
    members,
    conveyors: histories.map((h) => h.conveyor),
    rows,
    readings: columns,
    pools: poolsOf(members, histories),
    units: {
      count: members.length,
      fitted: members.map(({ fitted }) => fitted),
      build,
      builds,
      ...(offset && { offset }),
      clock: clockColumns(members, histories, measure, dutyOf),
    },
    options: {
      gaugeError: usualGaugeError(source.estate, rows),
      ...(expectedLife && { expectedLife }),
      ...statedVariation(histories, columns),
    },
  };
}

/**
 * A build for each liner; and for each thickness that a moved panel started from one of a single layer, since its wear counts
 * from there and its colours tell nothing of that.
 */
function buildsOf(members: readonly WearMember[]): {
  readonly builds: readonly Build[];
  readonly build: readonly number[];
} {
  const keys: (LinerSpecification | string)[] = [];
  const builds: Build[] = [];
  const build = members.map(({ set, place, fitted }) => {
    const start = place && set.reline?.moved ? fitted : undefined;
    const key = start === undefined ? set.liner : `${start}`;
    const known = keys.indexOf(key);
    if (known >= 0) return known;
    keys.push(key);
    return (
      builds.push(
        start === undefined
          ? buildOf(set.liner)
          : { depths: [start], tolerance: set.liner.layerTolerance.value },
      ) - 1
    );
  });
  return { builds, build };
}

function buildOf(liner: LinerSpecification): Build {
  return {
    depths: layerDepths(liner.layers.map((layer) => layer.thickness.value)).slice(1),
    tolerance: liner.layerTolerance.value,
  };
}

function poolsOf(members: readonly WearMember[], histories: readonly History[]): readonly Pool[] {
  const conveyors = histories.map((h) => h.conveyor);
  const runs = conveyors.flatMap((c) => runsOf(c));
  const places = [...new Set(members.flatMap((m) => (m.place ? [m.place] : [])))];
  const liners = [...new Set(members.map((m) => m.set.liner))];
  const byConveyor: Pool = {
    name: 'conveyor',
    level: members.map((m) => conveyors.indexOf(m.conveyor)),
    labels: conveyors.map((c) => c.name),
  };
  const byRun: Pool = {
    name: 'run',
    level: members.map((m) => (m.run ? runs.indexOf(m.run) : -1)),
    labels: runs.map((r) => `${r.conveyor.name} run ${r.number}`),
  };
  // A run's unseen panels are at some place of their own, as different from the rest as any.
  const unseen = members.filter((m) => !m.place);
  const byPlace: Pool = {
    name: 'place',
    level: members.map((m) => (m.place ? places.indexOf(m.place) : places.length + unseen.indexOf(m))),
    labels: [
      ...places.map((p) => `${p.conveyor.name} ${p.name}`),
      ...unseen.map(
        (m) => `${m.conveyor.name} run ${m.run?.number ?? 0} at ${Math.round(m.at)} mm, not inspected`,
      ),
    ],
  };
  const byLiner: Pool = {
    name: 'liner',
    level: members.map((m) => liners.indexOf(m.set.liner)),
    labels: liners.map((l) => l.name),
  };
  const bySector = labelled(
    'sector',
    members.map(({ clock }) => (clock === undefined ? undefined : sectorOf(clock))),
  );
  const byDuty = labelled(
    'duty',
    members.map((m) => dutyOf(m.conveyor)),
  );
  // A pool is worth its parameters only where it groups what another does not: several conveyors, several runs in one,
  // several sets at one place, one liner on several conveyors, several sectors in one, one material on several.
  const pools: Pool[] = [];
  if (conveyors.length > 1) pools.push(byConveyor);
  if (runs.length > conveyors.length) pools.push(byRun);
  if (members.length - unseen.length > places.length) pools.push(byPlace);
  if (
    liners.length > 1 &&
    liners.some(
      (l) => conveyors.filter((c) => members.some((m) => m.conveyor === c && m.set.liner === l)).length > 1,
    )
  )
    pools.push(byLiner);
  if (
    conveyors.some(
      (c) =>
        new Set(members.flatMap((m) => (m.conveyor === c && m.place ? [sectorOf(m.place.clock)] : []))).size >
        1,
    )
  )
    pools.push(bySector);
  const conveyed = conveyors.filter((c) => members.some((m) => m.conveyor === c)).map(dutyOf);
  if (
    byDuty.labels &&
    byDuty.labels.length > 1 &&
    byDuty.labels.some((label) => conveyed.filter((material) => material === label).length > 1)
  )
    pools.push(byDuty);
  return pools;
}

/** What the conveyor carries, as a name for its kind of duty; undefined where it says nothing. */
export function dutyOf(conveyor: Conveyor): string | undefined {
  return conveyor.conveys?.material.trim().toLowerCase();
}

function labelled(name: string, ofUnits: readonly (string | undefined)[]): Pool {
  const labels = [...new Set(ofUnits.filter((label) => label !== undefined))].sort();
  return { name, labels, level: ofUnits.map((label) => (label === undefined ? -1 : labels.indexOf(label))) };
}

/** Expected rate of each unit relative to the middle of all, on natural logarithms; and what is expected of that middle. */
function expectations(
  members: readonly WearMember[],
  histories: readonly History[],
  measure: 'h' | 't',
): { offset?: readonly number[]; expectedLife?: NonNullable<WearOptions['expectedLife']> } {
  const logRates = members.map((m) => {
    const life = m.set.liner.expectedLife;
    const depth = m.set.liner.thickness.value - m.set.liner.condemn.value;
    const throughput =
      measure === 't' ? histories.find((h) => h.conveyor === m.conveyor)?.throughput?.perHour : 1;
    return life && life.nominal.value > 0 && depth > 0 && throughput !== undefined && throughput > 0
      ? Math.log(depth / (life.nominal.value * throughput))
      : undefined;
  });
  const known = logRates.filter((r) => r !== undefined);
  if (known.length === 0) return {};
  const middle = known.reduce((a, b) => a + b, 0) / known.length;
  const spreads = members.flatMap((m) => {
    const { expectedLife: life } = m.set.liner;
    const ratio = life && spreadRatio(life);
    // Outside what can be believed a finding says so; a certain life would outvote every reading.
    const { least, most } = believableSpread;
    return ratio === undefined ? [] : [Math.min(most, Math.max(least, ratio))];
  });
  const expectedLife = { depth: 1, exposure: 1 / Math.exp(middle) };
  // A supplier's stated spread is of single lives; of the middle of all it is at least that.
  return {
    offset: logRates.map((r) => (r ?? middle) - middle),
    expectedLife: spreads.length > 0 ? { ...expectedLife, spread: Math.max(...spreads) } : expectedLife,
  };
}

/**
 * The error of a thickness, mm, with that of its hours: at the pace so far a look that is h hours off is pace·h of wear off. All
 * points of a look are off together, which readings that count as independent say too little of; small beside the gauge mostly.
 */
function withHours(
  own: number,
  { wear, exposure, hours }: { readonly wear: number; readonly exposure: number; readonly hours: number },
): number {
  if (!(hours > 0) || !(exposure > 0) || !(wear > 0)) return own;
  return Math.hypot(own > 0 ? own : defaultGaugeError, (wear / exposure) * hours);
}

/** Middle of the errors that the readings state, mm; undefined leaves it to the model's default. */
function usualGaugeError(estate: Estate, rows: readonly number[]): number {
  const errors = rows
    .map((row) => estate.readings.error[row] ?? NaN)
    .filter((e) => e > 0)
    .sort((a, b) => a - b);
  return errors[errors.length >> 1] ?? 0.5;
}

/** A stated ± up to this is taken at its word: the hours are alike. Of more the records tell better. */
const evenDuty = 0.1;

/**
 * How alike the hours are, where every conveyor states with its duty that they nearly are: the largest of the stated, over a
 * usual interval between readings. Left out otherwise: the model then finds it from the records and its prior.
 */
function statedVariation(
  histories: readonly History[],
  { unit, exposure }: { readonly unit: readonly number[]; readonly exposure: readonly number[] },
): Pick<WearOptions, 'dutyNoise'> {
  const stated = histories.map(({ duties }) => duties.at(-1)?.spread ?? NaN);
  const ratio = Math.max(...stated);
  const steps = exposure
    .flatMap((x, i) =>
      i > 0 && unit[i] === unit[i - 1] && x > (exposure[i - 1] ?? x) ? [x - (exposure[i - 1] ?? x)] : [],
    )
    .sort((a, b) => a - b);
  const per = steps[steps.length >> 1];
  return per !== undefined && ratio <= evenDuty ? { dutyNoise: { ratio, per } } : {};
}
