// How long does each liner last, how sure is that, and which conveyor needs attention first? Builds the whole answer as one
// value; html.ts, markdown.ts, json.ts and csv.ts only print it. Nothing here reads a clock: the day of the report is an
// input, records after it are ignored, and left out it is the day of the newest record.

import type { CalendarDay } from '../../domain/units/calendar.js';
import type { ConveyorDecision } from '../../domain/decision/conveyor-decision.js';
import type { ProgrammeSolver } from '../../domain/decision/integer-programme.js';
import { programmeOf, type ProgrammeAnswer } from '../../domain/decision/programme.js';
import { programmeProblem } from '../../domain/decision/programme-problem.js';
import { knownOn } from '../../domain/model/known-on.js';
import { notLookedAt } from '../../domain/conditions/not-looked.js';
import { closedConditionRows, openConditionRows } from '../../domain/conditions/rows.js';
import { troughState } from '../../domain/conditions/trough.js';
import { looksDue, type LookDue } from '../../domain/model/asked-looks.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposedReadings, isPointNow, setsLying } from '../../domain/model/exposure.js';
import { historyOf, momentOn, type History } from '../../domain/model/history.js';
import { presentDay } from '../../domain/model/newest.js';
import { besideLiner } from './parts/beside-liner.js';
import { orderOfAttention, type Unsorted } from './parts/attention.js';
import { countRecords, type Counts } from './parts/counts.js';
import {
  comingDuty,
  conveyorModel,
  fitEstate,
  pointModel,
  summarise,
  type FittedWear,
} from './parts/forecasts.js';
import { decisionOf } from './parts/decision-input.js';
import { dutyInForce } from './parts/duty-in-force.js';
import { flightLives } from './parts/flights.js';
import { hangsOn } from './parts/hangs-on.js';
import { compareMeasures, type MeasureComparison } from './parts/measure.js';
import { formerSetsOf } from './parts/former-sets.js';
import type { ConveyorModel, FitSummary } from './parts/model.js';
import { governingPoint, nearestToLimit, pointLife, worstOf, type PointLife } from './parts/points.js';
import { judgeReport, type JudgedReport } from './parts/judged-reports.js';
import type { PublishedReport } from './published.js';
import { runsWithPanels } from './parts/runs.js';
import { changesSince, type Since } from './parts/since.js';
import { trackOf, type Track } from './parts/track.js';
import { whatIfOf, type WhatIf } from './parts/what-if-cases.js';
import { scatterTold, type ScatterTold } from './parts/wear-change.js';
import type { WhatIfChange } from './what-if.js';
import type { ConveyorLife } from './parts/conveyor-life.js';

export type { Attention, AttentionLevel, ConveyorLife } from './parts/conveyor-life.js';
export type { Counts } from './parts/counts.js';
export type { FlightLife } from './parts/flights.js';
export type { MeasureComparison } from './parts/measure.js';
export type { FormerSet } from './parts/former-sets.js';
export type {
  Borrowed,
  ConveyorForecast,
  ConveyorModel,
  DepthForecast,
  FitSummary,
  PointModel,
  Stray,
} from './parts/model.js';
export type { LeftOut, Milestone, PointLife, Observation, ObservedReading } from './parts/points.js';
export type { PanelLife, RunLife } from './parts/runs.js';
export type { ConveyorSince, Since } from './parts/since.js';
export type { JudgedReport } from './parts/judged-reports.js';
export type { Track, TrackedLook } from './parts/track.js';
export type { Case, WhatIf } from './parts/what-if-cases.js';

export interface RemainingLife {
  readonly estate: Estate;
  /** Day of the report; undefined only where nothing at all is dated. */
  readonly asOf: CalendarDay | undefined;
  readonly counts: Counts;
  /** The conveyor that needs attention first comes first. */
  readonly conveyors: readonly ConveyorLife[];
  /** One a measure of exposure; empty where the model was not asked for. */
  readonly fits: readonly FitSummary[];
  /** Where readings scatter beyond what their gauges declare; one a measure at most. */
  readonly scatter: readonly ScatterTold[];
  /** Hours or tonnes, over all conveyors whose records carry both; undefined with fewer than two of them. */
  readonly measure: MeasureComparison | undefined;
  readonly tracks: readonly Track[];
  /** Published reports, oldest first, held against what was read since. */
  readonly judged: readonly JudgedReport[];
  /** Tried beside the base case; the records and the rest of the report know nothing of them. */
  readonly whatIfs: readonly WhatIf[];
  /** Against an earlier day, where one was asked for. */
  readonly since: Since | undefined;
  /** One a plant with outages and conveyors that are due; undefined where no solver was handed in. */
  readonly programmes: readonly ProgrammeAnswer[] | undefined;
}

export interface RemainingLifeOptions {
  readonly asOf?: CalendarDay | undefined;
  /** `hand`: the hand arithmetic only, at once. `model` (the default): with intervals, decisions and the track record. */
  readonly depth?: 'hand' | 'model';
  /** Re-forecasts the past; a fit for every half year looked back on. Default true with the model. */
  readonly track?: boolean;
  /** Conveyors to report on; the model borrows from all of them whatever. Left out: all. */
  readonly conveyors?: readonly Conveyor[] | undefined;
  /** Say what changed since the report of this day. */
  readonly since?: CalendarDay | undefined;
  readonly changes?: readonly WhatIfChange[] | undefined;
  /** Reports that were published, to be held against what was read since. */
  readonly previous?: readonly PublishedReport[] | undefined;
  /** With it the programme over all outages is made; it always looks at all conveyors. */
  readonly solver?: ProgrammeSolver | undefined;
}

/** Beyond so many points only the condemn limit of each is forecast, not every layer. */
const manyPoints = 400;
/** Beyond so many points only those of each conveyor that are nearest to their limit by hand are forecast at all. */
const veryManyPoints = 2000;

export function remainingLife(present: Estate, options: RemainingLifeOptions = {}): RemainingLife {
  const asOf = presentDay(present, options.asOf);
  const estate = knownOn(present, asOf);
  const readings = exposedReadings(estate, { asOf });
  const histories = estate.conveyors.map((conveyor) => historyOf(estate, conveyor, { asOf }));
  const fits =
    options.depth === 'hand' || asOf === undefined ? [] : fitEstate({ estate, histories, readings, asOf });
  const asked = options.conveyors === undefined ? undefined : new Set(options.conveyors);
  const flights = asOf === undefined ? undefined : flightLives(histories, asOf, options.depth !== 'hand');
  const conveyors = histories
    .filter(({ conveyor }) => asked === undefined || asked.has(conveyor))
    .map((history): Unsorted => {
      const known = knownOf({ estate, history, readings, asOf, flights, depth: options.depth });
      const fitted = fits.find(({ input }) => input.measure === known.unit);
      return fitted && asOf !== undefined
        ? byModel(estate, known, fitted, asOf)
        : byHandOnly(estate, known, asOf);
    });
  const tracks =
    options.track === false || asOf === undefined ? [] : fits.flatMap((fit) => trackOf(fit) ?? []);
  const whatIfs = asOf === undefined ? [] : whatIfsOf(estate, asOf, conveyors, options);
  const programmes = options.solver && programmesOf(estate, conveyors, options.solver);
  const report: RemainingLife = {
    estate,
    asOf,
    counts: countRecords(estate, conveyors, present.inspections.length - estate.inspections.length),
    conveyors: withProgramme(orderOfAttention(conveyors, asOf), programmes),
    fits: fits.map(summarise),
    scatter: fits.flatMap(({ result }) =>
      result.kind === 'fitted' ? (scatterTold(result.change?.scatter) ?? []) : [],
    ),
    measure: measureOfAll(estate, histories, readings, options),
    tracks,
    judged: [...(options.previous ?? [])]
      .sort((a, b) => a.asOf - b.asOf)
      .map((previous) => judgeReport(previous, estate, readings)),
    whatIfs,
    since: undefined,
    programmes,
  };
  if (options.since === undefined || asOf === undefined) return report;
  const then = remainingLife(present, {
    asOf: options.since,
    track: false,
    conveyors: options.conveyors,
    ...(options.depth && { depth: options.depth }),
  });
  return { ...report, since: changesSince(options.since, then, report) };
}

/** What is known of a conveyor before any model: its history, the hand arithmetic of its points, what lies in it now. */
type Known = Omit<Unsorted, 'points' | 'runs' | 'worst' | 'model' | 'hangsOn' | 'decision'> & {
  readonly byHand: readonly PointLife[];
};

function knownOf({
  estate,
  history,
  readings,
  asOf,
  flights,
  depth,
}: {
  readonly estate: Estate;
  readonly history: History;
  readonly readings: ReturnType<typeof exposedReadings>;
  readonly asOf: CalendarDay | undefined;
  readonly flights: ReturnType<typeof flightLives> | undefined;
  readonly depth: RemainingLifeOptions['depth'];
}): Known {
  const { conveyor } = history;
  const conditions = openConditionRows(estate, conveyor, asOf);
  return {
    conveyor,
    history,
    unit: conveyor.wearBy === 'tonnes' ? 't' : 'h',
    duty: asOf === undefined ? undefined : dutyInForce(history, asOf),
    lying: setsLying(history, asOf),
    former: formerSetsOf(estate, history, readings),
    flights: flights?.get(history) ?? [],
    conditions,
    closed: closedConditionRows(estate, conveyor, asOf),
    notLooked: notLookedAt(estate, history),
    looksAsked: looksDue(history),
    beside: besideLiner(estate, history, conditions),
    trough: troughState(estate, conveyor, asOf),
    measure: depth === 'hand' ? undefined : compareMeasures(estate, [history], readings),
    now: asOf === undefined ? undefined : momentOn(history, asOf),
    byHand: estate.places
      .filter(
        (place) =>
          place.conveyor === conveyor && isPointNow(estate, history, place, readings.get(place) ?? [], asOf),
      )
      .map((place) => pointLife({ estate, history, place, readings: readings.get(place) ?? [], asOf })),
  };
}

function byHandOnly(estate: Estate, { byHand, ...known }: Known, asOf: CalendarDay | undefined): Unsorted {
  return {
    ...known,
    points: byHand,
    runs: runsWithPanels(estate, known.conveyor, byHand, asOf),
    worst: worstOf(byHand),
    model: undefined,
    hangsOn: undefined,
    decision: undefined,
  };
}

function byModel(
  estate: Estate,
  { byHand, ...known }: Known,
  fitted: FittedWear,
  asOf: CalendarDay,
): Unsorted {
  const coming = comingDuty(known.history, asOf);
  const all = estate.places.length <= veryManyPoints;
  const near = all ? undefined : nearestToLimit(byHand, 12);
  const everyLayer = estate.places.length <= manyPoints;
  const points = byHand.map((point) =>
    near && !near.has(point) ? point : { ...point, model: pointModel(fitted, point, coming, everyLayer) },
  );
  const runs = runsWithPanels(estate, known.conveyor, points, asOf);
  const model = conveyorModel({ fitted, coming, points, runs });
  const { forecast } = model;
  const decision = decisionOf({ estate, fitted, coming, points, runs, forecast, ...known });
  const worst = governingPoint(points, forecast);
  const look = asAsked(looking(model, decision), known.looksAsked, asOf);
  return {
    ...known,
    points,
    runs,
    worst,
    model: { ...model, look },
    hangsOn: worst && hangsOn(fitted, coming, worst, model.risk),
    decision,
  };
}

/** Each is the same report of an estate with one edit more. */
function whatIfsOf(
  estate: Estate,
  asOf: CalendarDay,
  lives: readonly Unsorted[],
  { changes }: RemainingLifeOptions,
): readonly WhatIf[] {
  return (changes ?? []).flatMap((change) =>
    lives
      .filter(({ conveyor }) => change.conveyors.includes(conveyor))
      .map((life) =>
        whatIfOf(change, {
          estate,
          asOf,
          life,
          report: (tried) =>
            remainingLife(tried.estate, { asOf, track: false, conveyors: [tried.conveyor] }).conveyors[0],
        }),
      ),
  );
}

/** Where a reline is planned by what was seen and only panels that nobody has seen stand against it, they are looked at now. */
function looking({ look }: ConveyorModel, decision: ConveyorDecision | undefined): ConveyorModel['look'] {
  const outage = decision?.chosenBySeen;
  return outage && look.kind !== 'now'
    ? { kind: 'now', because: 'panels never seen', chance: outage.condemn }
    : look;
}

/** Whoever asks for a look before the model would has a reason that no reading shows. */
function asAsked(
  look: ConveyorModel['look'],
  [first]: readonly LookDue[],
  asOf: CalendarDay,
): ConveyorModel['look'] {
  const day = first?.day;
  if (day === undefined || look.kind === 'now' || (look.kind === 'by' && look.day <= day)) return look;
  const because = 'a look asked for';
  return day <= asOf ? { kind: 'now', because } : { kind: 'by', day, because };
}

function measureOfAll(
  estate: Estate,
  histories: readonly History[],
  readings: ReturnType<typeof exposedReadings>,
  { depth }: RemainingLifeOptions,
): MeasureComparison | undefined {
  if (depth === 'hand' || histories.filter((h) => h.tonnes).length < 2) return undefined;
  const comparison = compareMeasures(estate, histories, readings);
  return comparison && comparison.conveyors > 1 ? comparison : undefined;
}

/** What the programme chose to reline is ordered for that. */
function withProgramme(
  lives: readonly ConveyorLife[],
  programmes: readonly ProgrammeAnswer[] | undefined,
): readonly ConveyorLife[] {
  const lines = (programmes ?? []).flatMap((answer) =>
    answer.kind === 'programme' ? answer.programme.lines : [],
  );
  return lives.map((life) => {
    const choice = lines.find(({ conveyor }) => conveyor === life.conveyor.name)?.choice;
    return choice?.kind === 'reline' ? { ...life, order: choice.candidate.order } : life;
  });
}

/** Conveyors that were not asked for take no part: a programme of some would promise hours that others need. */
function programmesOf(
  estate: Estate,
  lives: readonly Unsorted[],
  solver: ProgrammeSolver,
): readonly ProgrammeAnswer[] {
  const decisions = lives.flatMap(({ decision }) => decision ?? []);
  return estate.plants.flatMap((plant) => {
    const whole = estate.conveyors.every(
      (conveyor) => conveyor.plant !== plant || lives.some((life) => life.conveyor === conveyor),
    );
    const problem = whole ? programmeProblem(plant, decisions, estate.relines) : undefined;
    return problem ? [programmeOf(problem, solver)] : [];
  });
}
