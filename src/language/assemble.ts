// Sheets → the estate: names are looked up across all texts, records get their conveyors, readings are joined into one set of
// columns. The same texts give the same estate in whatever order they come; objects whose parts are unchanged since the last
// time are the same objects, so that what others keep about them stays good.

import { compareMeters } from '../domain/model/meter-read.js';
import { atItsPoint } from './assembly/measured-spots.js';
import { withOldPanelsPlaced } from './assembly/old-panels.js';
import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate, ToldOnly } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Problem } from '../domain/model/problem.js';
import { applyAmendments } from '../domain/model/amended.js';
import { applyCorrections, type LinersSeen } from '../domain/model/corrected.js';
import { isSameCondition } from '../domain/conditions/kinds.js';
import type {
  Amendment,
  Correction,
  Inspection,
  DriveChange,
  DutyChange,
  MeterChange,
  MeterReading,
  PanelsMoved,
  Patch,
  Reline,
  ScrewChange,
  Service,
} from '../domain/model/records.js';
import type { LinerSpecification, ScrewSpecification } from '../domain/model/specifications.js';
import type { NameUse } from '../domain/model/stated.js';
import type { JobDraft, Sheet } from './sheet.js';
import { buildConveyors, type ConveyorIndex } from './assembly/conveyors.js';
import { closest, collect, findNamed, type NameTable } from './assembly/name-table.js';
import { placeInLook, workFromTail } from './assembly/from-the-head.js';
import { buildJob } from './assembly/jobs.js';
import { withLinersFound } from '../domain/model/found-by-reline.js';
import { linersOf } from '../domain/model/liners-there.js';
import { groupBy } from './assembly/group-by.js';
import { joinReadings, type Joined } from './assembly/readings.js';
import {
  flightsPlaced,
  measuredAt,
  platesPlaced,
  seenPlaced,
  withConditionPlace,
  withPlace,
  type PlacesKnown,
} from './assembly/seen-places.js';
import { checkStretch } from './assembly/stretches.js';

export interface Assembled {
  readonly estate: Estate;
  readonly problems: readonly Problem[];
  /** Conveyors with a record that cannot be read, or that names what there is not. */
  readonly doubted: ReadonlySet<Conveyor>;
  /** A job is left out: what it renews, and when, is not known. */
  readonly lacksJobs: boolean;
}

/** `sheets` in any order; their sources must be distinct. */
export function assemble(sheets: readonly Sheet[]): Assembled {
  const inOrder = [...sheets].sort((a, b) => (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0));
  const problems: Problem[] = [];
  for (const sheet of inOrder) for (const problem of sheet.problems) problems.push(problem);
  const namedPlants = inOrder.flatMap((sheet) => sheet.plants);
  const plants = collect('plant', namedPlants, problems);
  const liners = collect(
    'liner',
    inOrder.flatMap((sheet) => sheet.liners),
    problems,
  );
  const screws = collect(
    'screw',
    inOrder.flatMap((sheet) => sheet.screws),
    problems,
  );
  for (const { shelf, spareScrews, ordered = [], orderedScrews = [] } of plants.items) {
    for (const { liner } of [...shelf, ...ordered]) findNamed(liners, liner, problems);
    for (const { screw } of [...spareScrews, ...orderedScrews]) findNamed(screws, screw, problems);
  }
  const conveyors = buildConveyors(
    inOrder.flatMap((sheet) => sheet.conveyors),
    { plants, liners, screws },
    problems,
  );

  for (const { spareParts = [], orderedParts = [] } of plants.items)
    for (const { conveyorUse } of [...spareParts, ...orderedParts])
      if (conveyorUse) conveyors.find(conveyorUse, problems);

  const relines = withOldPanelsPlaced(relinesOf(inOrder, conveyors, liners, problems));
  const panelsMoved = panelsMovedOf(inOrder, conveyors, relines, problems);
  const screwChanges = screwChangesOf(inOrder, { conveyors, relines, problems }, screws);
  const { meterChanges, dutyChanges, driveChanges, patches, services } = oneLineRecords(
    inOrder,
    conveyors,
    relines,
    problems,
  );
  const joined = joinReadings(inOrder, conveyors, relines, problems);
  const { places } = joined;
  const { inspections, judged: amendments } = amended(
    inOrder,
    joined.inspections,
    conveyors,
    relines,
    problems,
  );
  const { readings, judged } = corrected(inOrder, joined, conveyors, relines, problems);

  const unreadNames = new Map(namedPlants.map((plant) => [plant.name, plant.unread]));
  const jobs = collect(
    'job',
    inOrder.flatMap((sheet) => sheet.jobs),
    problems,
  );
  checkParts(jobs, problems);
  const doubted = new Set([
    ...doubtedIn(inOrder, conveyors),
    ...recordsLeftOut(inOrder, conveyors, [...relines, ...screwChanges, ...panelsMoved]),
  ]);
  const known = { plants: unreadNames, conveyors, liners, screws, records: { relines, screwChanges } };
  const built = jobs.items.flatMap((draft) => buildJob(draft, known, problems) ?? []);
  const blocks = [...inspections, ...relines, ...panelsMoved, ...screwChanges, ...built];
  const partly = new Set([...doubted, ...partlyRead(inOrder, conveyors.items, blocks)]);
  const { unusable: wholly } = conveyors;
  return {
    estate: {
      ...(partly.size + wholly.length === 0
        ? {}
        : { unread: { partly, wholly, told: toldOf(inOrder, wholly) } }),
      plants: plants.items,
      liners: liners.items,
      screws: screws.items,
      conveyors: conveyors.items,
      inspections,
      readings,
      corrections: judged,
      amendments,
      places,
      relines,
      panelsMoved,
      screwChanges,
      meterChanges,
      dutyChanges,
      driveChanges,
      patches,
      services,
      jobs: built,
    },
    problems,
    doubted,
    lacksJobs: built.length < jobs.byName.size,
  };
}

/** Of conveyors that are left out. */
function toldOf(sheets: readonly Sheet[], wholly: readonly string[]): readonly ToldOnly[] {
  const isOf = ({ conveyorUse }: { readonly conveyorUse: NameUse }): boolean =>
    wholly.includes(conveyorUse.name);
  return wholly.length === 0
    ? []
    : sheets.flatMap(({ inspections, relines, screwChanges, panelsMoved, services }) => [
        ...[...inspections, ...relines, ...screwChanges, ...panelsMoved]
          .filter(isOf)
          .map(({ conveyorUse, date, conditions }) => ({
            conveyor: conveyorUse.name,
            day: date.day,
            conditions,
          })),
        ...services
          .filter(isOf)
          .map((work) => ({ conveyor: work.conveyorUse.name, day: work.date.day, conditions: [], work })),
      ]);
}

/** Conveyors of records that read as they stand and name a liner, a screw or a stretch that is not there: they are left out too. */
function recordsLeftOut(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  kept: readonly { readonly origin: Origin }[],
): readonly Conveyor[] {
  const placeOf = ({ origin }: { readonly origin: Origin }): string => `${origin.source} ${origin.start}`;
  const built = new Set(kept.map(placeOf));
  return sheets
    .flatMap(({ relines, screwChanges, panelsMoved }) => [...relines, ...screwChanges, ...panelsMoved])
    .filter((draft) => !built.has(placeOf(draft)))
    .flatMap(({ conveyorUse }) => conveyors.find(conveyorUse, []) ?? []);
}

/** Conveyors of records that cannot be read; of all where the record does not say which. */
function doubtedIn(sheets: readonly Sheet[], conveyors: ConveyorIndex): ReadonlySet<Conveyor> {
  return new Set(
    sheets.flatMap((sheet) =>
      sheet.doubted.flatMap((use) => (use.name === '' ? conveyors.items : (conveyors.find(use, []) ?? []))),
    ),
  );
}

/** Conveyors that are used without something in their own block, their specifications or their inspections. */
function partlyRead(
  sheets: readonly Sheet[],
  conveyors: readonly Conveyor[],
  blocks: readonly { readonly conveyor: Conveyor; readonly origin: Origin }[],
): readonly Conveyor[] {
  const unsound = new Set(
    sheets.flatMap((sheet) => sheet.unsound.map(({ source, start }) => `${source} ${start}`)),
  );
  if (unsound.size === 0) return [];
  const isUnsound = ({ origin }: { readonly origin: Origin }): boolean =>
    unsound.has(`${origin.source} ${origin.start}`);
  return [
    ...conveyors.filter((conveyor) =>
      [conveyor, conveyor.plant, conveyor.liner, conveyor.screw].some(isUnsound),
    ),
    ...blocks.filter(isUnsound).map(({ conveyor }) => conveyor),
  ];
}

/** A job that is part of another names one that there is. */
function checkParts({ items, byName }: NameTable<JobDraft>, problems: Problem[]): void {
  const names = [...byName.keys()];
  for (const { partOf } of items)
    if (partOf && !byName.has(partOf.name))
      problems.push({
        kind: 'unknown name',
        origin: partOf.origin,
        what: 'job',
        name: partOf.name,
        known: closest(partOf.name, names),
      });
}

function screwChangesOf(
  sheets: readonly Sheet[],
  known: PlacesKnown,
  screws: NameTable<ScrewSpecification>,
): readonly ScrewChange[] {
  const { conveyors, problems } = known;
  return records(
    sheets.flatMap((sheet) => sheet.screwChanges),
    conveyors,
    problems,
    (draft, conveyor): ScrewChange | undefined => {
      const { screwUse, ...rest } = draft;
      const screw = screwUse ? findNamed(screws, screwUse, problems)?.value : conveyor.screw;
      const taken = flightsPlaced(draft.taken, draft.date, conveyor, known);
      const seen = { ...seenPlaced(draft, conveyor, known), taken };
      return screw && kept(draft, conveyor, screw, () => ({ ...rest, conveyor, screw, ...seen }));
    },
  );
}

function panelsMovedOf(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): readonly PanelsMoved[] {
  return records(
    sheets.flatMap((sheet) => sheet.panelsMoved),
    conveyors,
    problems,
    (draft, conveyor): PanelsMoved | undefined => {
      const panels = draft.moves.flatMap(({ panel, other }) => [panel, ...(other ? [other] : [])]);
      const sound = panels.map((panel) => checkStretch(panel, conveyor, problems)).every((found) => found);
      for (const { point, at } of draft.measured) if (!at) conveyors.checkPoint(conveyor, point, problems);
      const seen = seenPlaced(draft, conveyor, { conveyors, relines, problems });
      const measured = draft.measured.map((row) => atItsPoint(row, conveyor));
      return sound
        ? kept(draft, conveyor, undefined, () => ({ ...draft, conveyor, measured, ...seen }))
        : undefined;
    },
  );
}

/** Readings as they count after their corrections. A point or a colour that is not there is told here. */
function corrected(
  sheets: readonly Sheet[],
  joined: Joined,
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): ReturnType<typeof applyCorrections> {
  const found = records(
    sheets.flatMap((sheet) => sheet.corrections),
    conveyors,
    problems,
    (draft, conveyor): Correction => kept(draft, conveyor, undefined, () => ({ ...draft, conveyor })),
  );
  for (const { spot, conveyor } of found)
    if (spot.kind === 'point') conveyors.checkPoint(conveyor, spot.point, problems);
  const relinesOf = groupBy(relines, ({ conveyor }) => conveyor);
  const linersSeen: LinersSeen = (place, { conveyor, date, meter }) =>
    linersOf(conveyor, relinesOf.get(conveyor) ?? [])(place.at, date.day, meter);
  const applied = applyCorrections(joined, found, linersSeen);
  for (const correction of applied.judged) {
    const { outcome, says, row } = correction;
    if (outcome !== 'unreadable' || says.kind !== 'colour' || row === undefined) continue;
    const place = joined.places[joined.readings.place[row] ?? -1];
    const look = joined.inspections[joined.readings.inspection[row] ?? -1];
    const liner = (place && look ? linersSeen(place, look)[0] : undefined) ?? correction.conveyor.liner;
    const { name: colour, origin } = says.colour;
    const known = closest(
      colour,
      liner.layers.map(({ name }) => name),
    );
    const chainage = place?.at ?? NaN;
    const conveyor = correction.conveyor.name;
    problems.push({ kind: 'unknown colour', origin, colour, liner: liner.name, known, conveyor, chainage });
  }
  return applied;
}

/** Looks as they count after the corrections of what is not a reading of the liner. */
function amended(
  sheets: readonly Sheet[],
  inspections: readonly Inspection[],
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): ReturnType<typeof applyAmendments> {
  const known = { conveyors, relines, problems };
  const found = records(
    sheets.flatMap((sheet) => sheet.amendments),
    conveyors,
    problems,
    (draft, conveyor): Amendment | undefined => {
      const { of, read } = draft;
      if ('place' in of) {
        const { kind, place } = of;
        const at = measuredAt(place, kind === 'hold-down' ? kind : undefined, read, conveyor, known);
        const byName = place.point ?? place.panel ?? place.end;
        const clock = place.clock && { clock: place.clock };
        return at && { ...draft, conveyor, of: { kind, at, ...clock, ...(byName && { byName: true }) } };
      }
      if (of.kind !== 'condition')
        return kept(draft, conveyor, undefined, () => ({ ...draft, conveyor, of }));
      const line = withConditionPlace(of.line, read.day, conveyor, known);
      const gone = inspections
        .filter((look) => look.conveyor === conveyor && look.date.day === read.day)
        .flatMap((look) => {
          const seen = placeInLook(of.line, look);
          const there = withConditionPlace(seen, read.day, conveyor, { ...known, problems: [] });
          return look.conditions.filter((each) => isSameCondition(each, there));
        });
      return { ...draft, conveyor, of: { ...of, line, gone } };
    },
  );
  return applyAmendments(inspections, found);
}

function relinesOf(
  inOrder: readonly Sheet[],
  conveyors: ConveyorIndex,
  liners: NameTable<LinerSpecification>,
  problems: Problem[],
): readonly Reline[] {
  return withLinersFound(
    records(
      inOrder.flatMap((sheet) => sheet.relines),
      conveyors,
      problems,
      (draft, conveyor): Reline | undefined => {
        const liner = draft.linerUse ? findNamed(liners, draft.linerUse, problems)?.value : conveyor.liner;
        const stretches = [
          ...draft.scope,
          ...draft.panelsFitted.map((row) => row.run),
          ...draft.panelThicknesses.map((row) => row.stretch),
          ...draft.oldPanels.flatMap(({ spot }) => (spot.kind === 'panel' ? [spot.panel] : [])),
        ];
        const sound = stretches
          .map((stretch) => checkStretch(stretch, conveyor, problems))
          .every((found) => found);
        for (const { point } of draft.asFitted) conveyors.checkPoint(conveyor, point, problems);
        const known = { conveyors, relines: [], problems };
        const plates = platesPlaced(draft, conveyor, known);
        const seen = { ...seenPlaced(draft, conveyor, known), plates };
        return liner && sound
          ? kept(draft, conveyor, liner, () => ({ ...draft, conveyor, liner, ...seen }))
          : undefined;
      },
    ),
  );
}

/** Records of one line, which name nothing but their conveyor and a place on it. */
function oneLineRecords(
  sheets: readonly Sheet[],
  conveyors: ConveyorIndex,
  relines: readonly Reline[],
  problems: Problem[],
): Pick<Estate, 'meterChanges' | 'dutyChanges' | 'driveChanges' | 'patches' | 'services'> {
  return {
    meterChanges: records(
      sheets.flatMap((sheet) => sheet.meterChanges),
      conveyors,
      problems,
      (draft, conveyor): MeterChange => kept(draft, conveyor, undefined, () => ({ ...draft, conveyor })),
    ),
    dutyChanges: records(
      sheets.flatMap((sheet) => sheet.dutyChanges),
      conveyors,
      problems,
      (draft, conveyor): DutyChange => kept(draft, conveyor, undefined, () => ({ ...draft, conveyor })),
    ),
    driveChanges: records(
      sheets.flatMap((sheet) => sheet.driveChanges),
      conveyors,
      problems,
      (draft, conveyor): DriveChange => kept(draft, conveyor, undefined, () => ({ ...draft, conveyor })),
    ),
    patches: records(
      sheets.flatMap((sheet) => sheet.patches),
      conveyors,
      problems,
      (draft, conveyor): Patch => kept(draft, conveyor, undefined, () => ({ ...draft, conveyor })),
    ),
    services: records(
      sheets.flatMap((sheet) => sheet.services),
      conveyors,
      problems,
      (written, conveyor): Service => {
        const known = { conveyors, relines, problems };
        const draft = workFromTail(written, conveyor);
        const { place: stated, part, ended: closed, date } = draft;
        const place = withPlace(stated, part, date.day, conveyor, known);
        const ended = closed && withConditionPlace(closed, date.day, conveyor, known);
        const make = (): Service => ({ ...draft, conveyor, place, ...(ended ? { ended } : {}) });
        // Where a panel lies goes by the relines.
        return place.panel || ended?.panel ? make() : kept(written, conveyor, undefined, make);
      },
    ),
  };
}

/** Drafts with their conveyors, by conveyor in the estate's order, then by day; those of one day in the order of the texts. */
function records<D extends { readonly conveyorUse: NameUse }, R extends { readonly conveyor: Conveyor }>(
  drafts: readonly D[],
  conveyors: ConveyorIndex,
  problems: Problem[],
  build: (draft: D, conveyor: Conveyor) => R | undefined,
): readonly R[] {
  const built = drafts.flatMap((draft) => {
    const conveyor = conveyors.find(draft.conveyorUse, problems);
    const record = conveyor && build(draft, conveyor);
    return record ? [record] : [];
  });
  return built.sort(
    (a, b) =>
      conveyors.orderOf(a.conveyor) - conveyors.orderOf(b.conveyor) ||
      dayOf(a) - dayOf(b) ||
      compareMeters(meterOf(a), meterOf(b)),
  );
}

const before = new WeakMap<
  object,
  { readonly conveyor: Conveyor; readonly specification: object | undefined; readonly record: unknown }
>();

/** The record made of this draft the last time, where it belonged to the same conveyor and specification. */
function kept<R extends { readonly conveyor: Conveyor }>(
  draft: object,
  conveyor: Conveyor,
  specification: object | undefined,
  make: () => R,
): R {
  const known = before.get(draft);
  // A draft is of one kind of record for good, so what was made of it is of that kind.
  if (known && known.conveyor === conveyor && known.specification === specification) return known.record as R;
  const record = make();
  before.set(draft, { conveyor, specification, record });
  return record;
}

function dayOf(record: object): number {
  if ('date' in record) return (record as Reline).date.day;
  return (record as DutyChange).from.day; // duty changes alone have no date but a first day
}

const noMeter: MeterReading = {};

function meterOf(record: object): MeterReading {
  return 'meter' in record ? (record as Reline).meter : noMeter;
}
