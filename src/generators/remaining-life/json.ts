// The report as data for other programs: a format version that grows by whole numbers when a field changes its meaning, UCUM
// unit codes beside the values, days in ISO 8601, and nothing that is not in the report. Missing is null, never zero.

import { recordsOf } from '../../domain/model/dated-records.js';
import { unreadIn } from './unread-words.js';
import type { BesideLiner } from './parts/beside-liner.js';
import type { TroughState } from '../../domain/conditions/trough.js';
import type { OpenCondition } from '../../domain/conditions/rows.js';
import { flightSpots } from '../../domain/model/flight-readings.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatClock } from '../../domain/units/clock.js';
import { ucumCode } from '../../domain/units/ucum.js';
import type { Belief } from '../../domain/wear/change.js';
import { disagreementsOf } from './parts/hand-against-model.js';
import { disagreementSentence } from './print/change-words.js';
import type { WearPace } from './parts/wear-change.js';
import { rulingRate } from '../../domain/wear/arithmetic.js';
import type { PooledMiss } from '../../domain/wear/pooled-miss.js';
import type { LedgerBlock } from '../../domain/model/ledger.js';
import { ledgerJson } from './json-ledger.js';
import { programmeJson } from './json-programme.js';
import { decisionJson } from './json-decision.js';
import { day, number, type Json } from './json-values.js';
import type {
  ConveyorForecast,
  ConveyorLife,
  DepthForecast,
  MeasureComparison,
  PointLife,
  RemainingLife,
  WhatIf,
} from './remaining-life.js';
import type { LimitPassed } from '../../domain/wear/passed.js';
import type { DayQuantiles, Quantiles } from './parts/model.js';
import { limitPassed } from './passed-words.js';
import { sizesOf } from './sizes.js';

export const remainingLifeFormatVersion = 2;

/** @param ledger every record behind the report, so that a later comparison sees what was edited since */
export function remainingLifeJson(report: RemainingLife, ledger?: readonly LedgerBlock[]): string {
  return `${JSON.stringify(reportOf(report, ledger), null, 2)}\n`;
}

function reportOf(report: RemainingLife, ledger: readonly LedgerBlock[] | undefined): Json {
  return {
    formatVersion: remainingLifeFormatVersion,
    kind: 'remaining life',
    asOf: day(report.asOf),
    notice:
      'This report advises; a competent person decides. It does not clear a machine for work or for further running.',
    units: {
      length: ucumCode('length'),
      chainage: ucumCode('length'),
      hours: ucumCode('duration'),
      tonnes: 't',
      rateByHours: 'mm/h',
      rateByTonnes: 'mm/t',
      duty: ucumCode('duty'),
      chance: ucumCode('ratio'),
    },
    counts: {
      ...report.counts,
      leftOut: report.counts.leftOut.map(({ reason, count }) => ({ reason, count })),
    },
    fits: report.fits.map((fit) => ({
      measure: fit.measure,
      kind: fit.kind,
      why: fit.why ?? null,
      units: fit.units,
      informative: fit.informative,
      readings: fit.readings,
      medianRate: number(fit.medianRate),
      relativeError: number(fit.rateError),
      spread: number(fit.spread),
      readingError: number(fit.readingError),
      method: fit.method ?? null,
    })),
    published: report.judged.map((judged) => ({
      asOf: day(judged.asOf),
      conveyors: judged.conveyors.map(({ name, pooled, told }) => ({
        conveyor: name,
        ...missOf(pooled),
        told,
      })),
      together: judged.together ? { ...missOf(judged.together), told: judged.told } : null,
      reached: { ...judged.reached },
      notReadSince: judged.notReadSince,
    })),
    unread: unreadIn(report) ?? null,
    scatter: report.scatter.map((s) => ({
      level: s.level,
      factor: beliefOf(s.factor),
      declared: number(s.declared),
    })),
    measure: measureOf(report.measure),
    trackRecord: report.tracks.map(({ measure, cuts, looks, together, finished }) => ({
      measure,
      cuts: cuts.map((cut) => formatDay(cut)),
      looks: looks.map(({ conveyor, horizon, cut, day: look, pooled, told }) => ({
        conveyor: conveyor.name,
        foretoldFrom: horizon,
        cut: formatDay(cut),
        look: formatDay(look),
        ...missOf(pooled),
        told,
      })),
      together: Object.entries(together).flatMap(([horizon, pooled]) =>
        pooled ? [{ foretoldFrom: horizon, ...missOf(pooled), told: pooled.told }] : [],
      ),
      finishedSets: {
        of: finished.of,
        early: finished.early,
        late: finished.late,
        chance: number(finished.chance),
        told: finished.told,
      },
    })),
    conveyors: report.conveyors.map((life, i) => conveyorOf(life, i + 1)),
    programmes: report.programmes?.map(programmeJson) ?? null,
    ...(ledger ? { records: ledgerJson(ledger) } : {}),
    ...(report.whatIfs.length > 0 ? { whatIf: report.whatIfs.map(whatIfOf) } : {}),
    ...(report.since
      ? {
          since: {
            day: formatDay(report.since.day),
            conveyors: report.since.conveyors.map((c) => ({ conveyor: c.name, changes: c.changes })),
          },
        }
      : {}),
  };
}

/** What the looks say of a change of rate. */
function paceOf(pace: WearPace): Json {
  switch (pace.kind) {
    case 'changed':
    case 'cannot yet be told':
      return {
        kind: pace.kind,
        since: day(pace.day),
        chance: number(pace.chance),
        factor: beliefOf(pace.factor),
        withOthers: pace.kind === 'changed' ? pace.withOthers : [],
        dates: pace.dates
          ? { point: pace.dates.point, ifChanged: days(pace.dates.ifChanged), ifNot: days(pace.dates.ifNot) }
          : null,
      };
    case 'faster with age':
      return { kind: pace.kind, power: number(pace.power), spread: number(pace.spread) };
    case 'no sign':
      return { kind: pace.kind, thicknesses: pace.thicknesses };
    case 'not asked':
      return { kind: pace.kind, why: pace.why };
  }
}

function beliefOf({ low, middle, high }: Belief): Json {
  return { low: number(low), middle: number(middle), high: number(high) };
}

function measureOf(measure: MeasureComparison | undefined): Json {
  return measure
    ? {
        better: measure.better,
        readings: measure.readings,
        conveyors: measure.conveyors,
        ratio: number(measure.ratio),
      }
    : null;
}

function missOf(pooled: PooledMiss): { readonly [key: string]: Json } {
  return {
    excess: number(pooled.excess),
    low: number(pooled.low),
    high: number(pooled.high),
    points: pooled.points,
    more: pooled.more,
    hidden: number(pooled.hidden),
  };
}

function conveyorOf(life: ConveyorLife, rank: number): Json {
  const { attention, model } = life;
  return {
    conveyor: life.conveyor.name,
    title: life.conveyor.title ?? null,
    plant: life.conveyor.plant.name,
    rank,
    level: attention.level,
    todo: attention.todo,
    reasons: attention.reasons,
    exposureUnit: life.unit,
    hours: number(life.now?.hours),
    tonnes: number(life.now?.tonnes),
    duty: life.duty
      ? {
          perDay: number(life.duty.perDay),
          spread: number(life.duty.spread),
          basis: life.duty.basis,
          text: life.duty.text,
        }
      : null,
    meterRead: day(model?.meterRead),
    dutyVariation: model ? dutyVariationOf(model.dutyVariation) : null,
    limitPassed: passedOf(limitPassed(life)),
    forecast: model ? forecastOf(model.forecast) : null,
    asDeclared: model?.asDeclared ? days(model.asDeclared) : null,
    pace: model ? paceOf(model.pace) : null,
    looksOff: (model?.looksOff ?? []).map((look) => ({
      look: day(look.day),
      bias: beliefOf(look.bias),
      readings: look.readings,
    })),
    hangsOn: life.hangsOn ? { ...life.hangsOn, day: day(life.hangsOn.day) } : null,
    handAgainstModel: disagreementsOf(life).map((told) => ({
      point: told.point,
      hand: day(told.hand),
      model: days(told.model),
      why: told.why.kind,
      words: disagreementSentence(told, sizesOf(life.conveyor)),
    })),
    nextLook: model ? nextLookOf(model.look) : null,
    decision: decisionJson(life),
    cheapestAge: model?.cheapest
      ? {
          exposure: number(model.cheapest.exposure),
          day: day(model.cheapest.day),
          costRate: number(model.cheapest.costRate),
          toFailure: number(model.cheapest.toFailure),
        }
      : null,
    unseen: (model?.unseen ?? []).map((u) => ({
      run: u.run,
      panels: u.panels,
      ...(u.linedOn !== undefined && { fitted: day(u.linedOn) }),
      condemn: depthOf(u.condemn),
    })),
    borrowed: (model?.borrowed ?? []).map((b) => ({
      pool: b.pool,
      label: b.label,
      factor: number(b.factor),
      low: number(b.low),
      high: number(b.high),
      units: b.units,
    })),
    remarks: life.history.remarks,
    runs: life.runs.map(runOf),
    points: life.points.map((point) => pointOf(life, point)),
    flights: life.flights.map(flightOf),
    conditions: life.conditions.map(conditionOf),
    notLooked: life.notLooked.map((each) => ({
      what: each.what,
      from: number(each.from),
      to: number(each.to),
      on: day(each.day),
      why: each.why ?? null,
    })),
    looksAsked: life.looksAsked.map(askedOf),
    ...besideOf(life.beside),
    ...looksOf(life.history),
    ...formerlyOf(life),
    trough: troughOf(life.trough),
    measure: measureOf(life.measure),
    formerSets: life.former.map(({ set, reached, least, onTheBench }) => ({
      liner: set.liner.name,
      from: number(set.from),
      to: number(set.to),
      fitted: day(set.fitted?.day),
      removed: day(set.removed?.day),
      reached: reached.known ? number(reached.value) : null,
      leastSeen: least
        ? { place: least.place, thickness: number(least.thickness), day: day(least.day) }
        : null,
      onTheBench: onTheBench.map((each) => ({ place: each.place, thickness: number(each.thickness) })),
      unknown: reached.known ? null : reached.reason,
    })),
  };
}

/** What is over: screws that came out, conditions that were put right. */
function formerlyOf({ history, closed }: ConveyorLife): Readonly<Record<string, Json>> {
  return {
    screws: history.screwSets.map((set) => ({
      screw: set.screw.name,
      fitted: day(set.fitted?.day),
      removed: day(set.removed?.day),
      from: number(set.from),
      to: number(set.to),
      flights: spotsOf(flightSpots(history, set)),
    })),
    closedConditions: closed.map((each) => ({
      what: each.what,
      place: each.place,
      since: day(each.since),
      ended: day(each.day),
      how: each.how,
      notes: each.notes,
      photos: each.photos.map(({ path }) => path),
    })),
  };
}

function spotsOf(spots: ReturnType<typeof flightSpots>): Json {
  return spots.map(({ at, looks }) => ({
    at: number(at),
    read: looks.map((look) => ({
      day: day(look.day),
      depth: number(look.depth?.value),
      diameter: number(look.diameter?.value),
      notes: look.notes,
    })),
  }));
}

/** One a look: a block that was pasted twice says the same once more. */
function gaugesOf({ inspections }: ConveyorLife['history']): Json {
  const gauges = inspections.flatMap(({ inspection: { date, gauge } }) =>
    gauge ? [{ day: day(date.day), kind: gauge.kind, error: number(gauge.error?.value) }] : [],
  );
  return [...new Map(gauges.map((each) => [JSON.stringify(each), each])).values()];
}

function looksOf(history: ConveyorLife['history']): Readonly<Record<string, Json>> {
  return {
    gauges: gaugesOf(history),
    photos: recordsOf(history).flatMap(({ date, photos }) =>
      photos.map(({ path, note }) => ({ day: day(date.day), path, note: note ?? null })),
    ),
    flightReadings: spotsOf(flightSpots(history)),
  };
}

function besideOf(beside: BesideLiner): Readonly<Record<string, Json>> {
  const { findings, gaps, currents, speeds, worn, drive, corrections, moved, serviced, safeguards } = beside;
  return {
    safeguards: safeguards.map((each) => ({
      what: each.what,
      lastTried: each.lastTried === undefined ? null : day(each.lastTried),
      tried: each.tried,
      open: each.found,
      note: each.note,
    })),
    serviced: serviced.map((each) => ({
      day: day(each.day),
      part: each.part,
      work: each.work,
      putRight: each.ended,
      by: each.by ?? null,
      note: each.note ?? null,
      photo: each.photo?.path ?? null,
    })),
    panelsMoved: moved.map((each) => ({
      day: day(each.day),
      what: each.what,
      countsFrom: each.counts,
      by: each.by ?? null,
      note: each.note ?? null,
    })),
    corrections: corrections.map((each) => ({
      point: each.place,
      read: day(each.read),
      written: each.was,
      countsAs: each.now,
      corrected: day(each.day),
      by: each.by ?? null,
      why: each.why ?? null,
    })),
    findings: findings.map(({ day: on, part, at, spot, text }) => ({
      day: day(on),
      part: part ?? null,
      at: number(at),
      spot: spot === '' ? null : spot,
      text,
    })),
    holdDownGaps: gaps.map(({ name, at, read }) => ({
      name: name ?? null,
      at: number(at),
      read: read.map(({ day: on, gap, note }) => ({ day: day(on), gap: number(gap), note: note ?? null })),
    })),
    motorCurrents: currents.map(({ day: on, empty, loaded, note }) => ({
      day: day(on),
      empty: number(empty),
      loaded: number(loaded),
      note: note ?? null,
    })),
    speeds: speeds.map(({ day: on, speed, recorded, note }) => ({
      day: day(on),
      counted: number(speed),
      recorded: number(recorded),
      note: note ?? null,
    })),
    wornWidths: worn.map(({ at, read }) => ({
      at: number(at),
      read: read.map(({ day: on, from, to, note }) => ({
        day: day(on),
        from: formatClock(from),
        to: formatClock(to),
        note: note ?? null,
      })),
    })),
    drive: drive.map(({ part, of, read }) => ({
      part,
      of,
      read: read.map(({ day: on, temperature, told, note }) => ({
        day: day(on),
        temperature: number(temperature),
        told,
        note: note ?? null,
      })),
    })),
  };
}

function dutyVariationOf({ level, wander }: NonNullable<ConveyorLife['model']>['dutyVariation']): Json {
  return {
    level: number(level.ratio),
    levelFrom: level.from,
    wander: number(wander.ratio),
    wanderDays: number(wander.per),
    wanderFrom: wander.from,
  };
}

function askedOf({ asked, record, day: due }: ConveyorLife['looksAsked'][number]): Json {
  return {
    by: day(due),
    after: asked.after?.text ?? null,
    asked: day(record.date.day),
    askedBy: asked.asker ?? null,
    note: asked.note ?? null,
  };
}

function nextLookOf(look: NonNullable<ConveyorLife['model']>['look']): Json {
  switch (look.kind) {
    case 'by':
      return { by: day(look.day), because: look.because };
    case 'now':
      return { now: true, because: look.because };
    default:
      return null;
  }
}

function runOf({ run, panels }: ConveyorLife['runs'][number]): Json {
  return {
    run: run.number,
    from: number(run.from),
    to: number(run.to),
    panels: panels.map((panel) => ({
      panel: panel.number,
      from: number(panel.from),
      to: number(panel.to),
      state: panel.state,
      lastSeen: day(panel.lastSeen),
      points: panel.points.map((point) => point.place.name),
    })),
  };
}

function flightOf(flight: ConveyorLife['flights'][number]): Json {
  return {
    screw: flight.screw,
    at: number(flight.at),
    new: number(flight.fitted),
    condemn: number(flight.condemn),
    readings: flight.readings.map((reading) => ({
      day: formatDay(reading.day),
      exposure: number(reading.exposure),
      depth: number(reading.depth),
      diameter: number(reading.diameter),
    })),
    remaining: flight.hand.kind === 'rate' ? number(flight.hand.remaining) : null,
    leftFrom: day(flight.readings.at(-1)?.day),
    forecast: flight.forecast ? depthOf(flight.forecast) : null,
  };
}

function troughOf({
  plate,
  minimum,
  material,
  bareAbove,
  spans,
  places,
  covered,
  patches,
}: TroughState): Json {
  return {
    material: material ?? null,
    bareAboveLiner: number(bareAbove),
    plate: number(plate),
    minimum: number(minimum),
    bare: spans.map((span) => ({
      from: number(span.from),
      to: number(span.to),
      because: span.because,
      linedOn: day(span.lined?.day),
      found: day(span.found.day),
      until: day(span.until?.day),
    })),
    plates: places.map(plateOf),
    platesCovered: covered.map((place) => ({ until: day(place.covered), plate: plateOf(place) })),
    patches: patches.map((patch) => ({
      from: number(patch.from.value),
      to: number(patch.to.value),
      on: day(patch.date.day),
      thickness: number(patch.thickness.value),
      by: patch.by ?? null,
      photo: patch.photo?.path ?? null,
    })),
  };
}

function plateOf({
  at,
  clock,
  readings,
  hand,
  rateIsLeast,
  belowMinimum,
  bare,
  noLiner,
}: TroughState['places'][number]): Json {
  return {
    at: number(at),
    clock: clock ?? null,
    readings: readings.map((r) => ({
      day: day(r.day),
      thickness: number(r.thickness),
      bareAtLeast: number(r.bareLeast),
      bareAtMost: number(r.bareMost),
      error: number(r.error),
      note: r.note ?? null,
      photo: r.photo?.path ?? null,
    })),
    rate: number(rulingRate(hand)),
    remaining: hand.kind === 'rate' ? number(hand.remaining) : null,
    rateIsLeast,
    belowMinimum,
    bare,
    noLiner: noLiner ?? null,
  };
}

function conditionOf(row: OpenCondition): Json {
  return {
    what: row.what,
    place: row.place,
    at: number(row.at),
    clock: row.clock === undefined ? null : formatClock(row.clock),
    severity: row.severity ?? null,
    safeguardOut: row.safeguardOut,
    since: day(row.since),
    lastSeen: day(row.lastSeen),
    unanswered: day(row.unanswered),
    notes: row.notes,
    photos: row.photos.map(({ path }) => path),
  };
}

function pointOf(life: ConveyorLife, point: PointLife): Json {
  const { hand, model } = point;
  return {
    point: point.place.name,
    chainage: number(point.place.at),
    clock: formatClock(point.place.clock),
    liner: point.set?.liner.name ?? null,
    fittedOn: day(point.set?.fitted?.day),
    fitted: number(point.fitted.value),
    fittedMeasured: point.fitted.measured,
    condemn: number(point.condemn),
    exposureNow: number(point.exposureNow),
    state: point.state,
    leftFrom: day(point.leftFrom),
    pastLimit: point.pastLimit ?? null,
    worst: point === life.worst,
    readings: point.readings.map((r) => ({
      day: formatDay(r.day),
      exposure: number(r.exposure),
      seen: r.seen.kind,
      note: r.note ?? null,
      ...(r.photo ? { photo: r.photo.path } : {}),
      ...(r.seen.kind === 'thickness'
        ? { thickness: number(r.seen.thickness), error: number(r.seen.error) }
        : r.seen.kind === 'colour'
          ? { colour: r.seen.name, layer: r.seen.layer }
          : {}),
    })),
    formerReadings: point.former.map(({ day: on, liner, seen }) => ({
      day: day(on),
      liner,
      seen: seen.kind,
      ...(seen.kind === 'thickness' ? { thickness: number(seen.thickness) } : {}),
      ...(seen.kind === 'colour' ? { colour: seen.name } : {}),
    })),
    leftOut: point.leftOut.map((l) => ({ day: formatDay(l.day), reason: l.reason })),
    hand: {
      kind: hand.kind,
      overruledBy: point.overruled?.by ?? null,
      ...(hand.kind === 'no reading'
        ? {}
        : {
            longTerm: number(hand.longTerm),
            shortTerm: hand.shortTerm.kind === 'rate' ? number(hand.shortTerm.rate) : null,
            shortTermKind: hand.shortTerm.kind,
          }),
      ...(hand.kind === 'rate'
        ? {
            rules: hand.rules,
            ruling: number(hand.ruling),
            remaining: number(hand.remaining),
            nextInspection: number(hand.nextInspection),
          }
        : {}),
    },
    leastSquares: point.line
      ? {
          slope: number(point.line.slope),
          standardError: number(point.line.slopeError),
          count: point.line.count,
        }
      : null,
    milestones: point.milestones.map((m) => ({
      name: m.name,
      depth: number(m.depth),
      remaining: number(m.remaining),
      exposure: number(m.exposure),
      day: day(m.day),
    })),
    lookAgainBy: day(point.nextLook?.day),
    overdue: point.nextLook?.overdue ?? null,
    model: model
      ? {
          basis: model.basis,
          readings: model.readings,
          indicators: model.indicators,
          notSeen: model.notSeen,
          pool: model.pool,
          rate: model.rate ? quantiles(model.rate) : null,
          condemn: depthOf(model.condemn),
          asDeclared: model.asDeclared ? depthOf(model.asDeclared) : null,
          layers: model.layers?.map(depthOf) ?? null,
          trough: model.trough ? depthOf(model.trough) : null,
          path: model.path.map((p) => ({
            exposure: number(p.exposure),
            mean: number(p.mean),
            spread: number(p.spread),
          })),
          breaks: model.breaks.map((b) => ({ from: day(b.from), to: day(b.to), growth: number(b.growth) })),
          strays: model.strays.map((s) => ({
            day: formatDay(s.day),
            thickness: number(s.thickness),
            expected: number(s.expected),
            weight: number(s.weight),
          })),
        }
      : null,
  };
}

function forecastOf(forecast: ConveyorForecast): Json {
  switch (forecast.kind) {
    case 'dates':
      return {
        kind: 'dates',
        days: days(forecast.days),
        passed: passedOf(forecast.passed),
        exposureFromNow: quantiles(forecast.exposure),
        already: number(forecast.already),
        readings: forecast.readings,
        indicators: forecast.indicators,
        pool: forecast.pool,
        notInspected: forecast.notInspected,
        first: forecast.first.slice(0, 5).map((f) => ({ point: f.name, share: number(f.share) })),
      };
    case 'reached':
      return { kind: 'reached', points: forecast.names, passed: passedOf(forecast.passed) };
    case 'cannot say':
      return { kind: 'cannot say', why: forecast.why };
  }
}

/** Of a limit that lies behind the day of the report: between which days it was passed, and how sure that is. */
function passedOf(passed: LimitPassed | undefined): Json {
  return passed
    ? { by: passed.by, chance: number(passed.chance), from: day(passed.from), to: day(passed.to) }
    : null;
}

function depthOf(forecast: DepthForecast): Json {
  switch (forecast.kind) {
    case 'life':
      return {
        kind: 'life',
        exposure: quantiles(forecast.exposure),
        days: forecast.days ? days(forecast.days) : null,
        passed: passedOf(forecast.passed),
      };
    case 'reached':
      return { kind: 'reached', by: number(forecast.by), passed: passedOf(forecast.passed) };
    case 'cannot say':
      return { kind: 'cannot say', why: forecast.why, atLeast: number(forecast.atLeast) };
  }
}

function whatIfOf(whatIf: WhatIf): Json {
  const head = { change: whatIf.change.text, conveyor: whatIf.conveyor, kind: whatIf.kind };
  switch (whatIf.kind) {
    case 'dates':
      return {
        ...head,
        base: forecastOf(whatIf.base.forecast),
        changed: forecastOf(whatIf.changed.forecast),
        baseRiskDay: day(whatIf.base.riskDay),
        changedRiskDay: day(whatIf.changed.riskDay),
      };
    case 'liner life':
      return {
        ...head,
        place: whatIf.place,
        present: quantiles(whatIf.present),
        other: quantiles(whatIf.other),
      };
    case 'cannot say':
      return { ...head, why: whatIf.why };
  }
}

function quantiles(q: Quantiles): Json {
  return {
    q05: number(q.q05),
    q10: number(q.q10),
    q50: number(q.q50),
    q90: number(q.q90),
    q95: number(q.q95),
  };
}

function days(q: DayQuantiles): Json {
  return { q05: day(q.q05), q10: day(q.q10), q50: day(q.q50), q90: day(q.q90), q95: day(q.q95) };
}
