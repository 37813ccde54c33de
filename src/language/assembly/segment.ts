// The readings of one conveyor in the estate's columns: each spot a place of that conveyor, each colour a layer of the liner that
// lay there at the time. Inspections and places are numbered from 0, so a segment stays good while other conveyors change.

import { panelWords } from '../../domain/conditions/kinds.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Conveyor, Point } from '../../domain/model/conveyor.js';
import type { Problem } from '../../domain/model/problem.js';
import type {
  CorrectedReading,
  OldPanel,
  PanelUse,
  PhotoUse,
  Place,
  Readings,
  Reline,
} from '../../domain/model/records.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { InspectionDraft, ReadingSpot, Sheet } from '../sheet.js';
import { linersOf } from '../../domain/model/liners-there.js';
import { noteFromTail, spotFromTail } from './from-the-head.js';
import { closest } from './name-table.js';
import { middleOfPanel, panelThere, pointOn, type PanelEnds } from './panel-there.js';
import { createPlaces } from './places.js';
import { secondColour } from '../reading-rows.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

/** An inspection with the sheet that holds its rows. */
export interface PlacedDraft {
  readonly draft: InspectionDraft;
  readonly sheet: Sheet;
}

export interface Segment {
  readonly looks: readonly PlacedDraft[];
  readonly relines: readonly Reline[];
  readonly places: readonly Place[];
  /** `inspection` counts in `looks`, `place` in `places`. */
  readonly readings: Readings;
  /** Rows that were said of a panel or all along a stretch: as what. */
  readonly along: ReadonlyMap<number, AlongSpot>;
  readonly problems: readonly Problem[];
  /** A problem names other conveyors, so it has to be looked up anew when these change. */
  readonly looksElsewhere: boolean;
}

/** Said of a panel or all along a stretch, which counts at one spot of it. */
export type AlongSpot = Extract<ReadingSpot, { readonly kind: 'panel' | 'stretch' | 'chainage' }>;

const last = new WeakMap<Conveyor, Segment>();

/** The same object as before where conveyor, inspections and relines are the same. */
export function segmentOf(
  conveyor: Conveyor,
  looks: readonly PlacedDraft[],
  relines: readonly Reline[],
  checkPoint: (conveyor: Conveyor, use: NameUse, problems: Problem[]) => Point | undefined,
): Segment {
  const before = last.get(conveyor);
  if (
    before &&
    !before.looksElsewhere &&
    sameItems(before.relines, relines) &&
    sameLooks(before.looks, looks)
  )
    return before;
  const segment = build(conveyor, looks, relines, checkPoint);
  last.set(conveyor, segment);
  return segment;
}

function build(
  conveyor: Conveyor,
  looks: readonly PlacedDraft[],
  relines: readonly Reline[],
  checkPoint: Parameters<typeof segmentOf>[3],
): Segment {
  const seen = looks.reduce((sum, { draft }) => sum + draft.endRow - draft.firstRow, 0);
  const count = seen + relines.reduce((sum, { oldPanels }) => sum + oldPanels.length, 0);
  const columns = emptyColumns(count);
  const problems: Problem[] = [];
  const places = createPlaces(conveyor);
  const along = new Map<number, AlongSpot>();
  let looksElsewhere = false;
  let row = 0;
  for (const [index, { draft, sheet }] of looks.entries()) {
    const { rows, source } = sheet;
    const { firstRow, endRow } = draft;
    const end = row + endRow - firstRow;
    columns.inspection.fill(index, row, end);
    columns.kind.set(rows.kind.subarray(firstRow, endRow), row);
    columns.value.set(rows.value.subarray(firstRow, endRow), row);
    columns.error.set(rows.error.subarray(firstRow, endRow), row);
    columns.source.fill(source, row, end);
    columns.start.set(rows.start.subarray(firstRow, endRow), row);
    columns.end.set(rows.end.subarray(firstRow, endRow), row);
    for (let from = firstRow; from < endRow; from++, row++) {
      const written = rows.spots[rows.spot[from] ?? -1];
      const stated = written && draft.measuredFrom === 'head' ? spotFromTail(written, conveyor) : written;
      const spot = settledSpot(conveyor, stated, relines, draft.date.day);
      if (isAlong(stated)) along.set(row, stated);
      if (stated?.kind === 'panel' && !spot) problems.push(panelNotThere(conveyor, stated.panel));
      const start = rows.start[from] ?? 0;
      const number = spot ? places.numberOf(spot, { source, start, end: rows.end[from] ?? 0 }) : -1;
      columns.place[row] = number;
      if (number < 0 && spot?.kind === 'point') {
        checkPoint(
          conveyor,
          { name: spot.name, origin: { source, start, end: start + spot.name.length } },
          problems,
        );
        looksElsewhere = true;
      }
      const note = rows.notes.size > 0 ? rows.notes.get(from) : undefined;
      if (note !== undefined)
        columns.notes.set(row, draft.measuredFrom === 'head' ? noteFromTail(note, conveyor) : note);
      const photo = rows.photos.size > 0 ? rows.photos.get(from) : undefined;
      if (photo !== undefined) columns.photos.set(row, photo);
    }
  }
  for (const reline of relines)
    for (const old of reline.oldPanels) {
      const spot = spotOfOldPanel(conveyor, old);
      addOldPanel(columns, row, reline, old, spot ? places.numberOf(spot, old.origin) : -1);
      if (old.spot.kind === 'point' && !checkPoint(conveyor, old.spot.point, problems)) looksElsewhere = true;
      row++;
    }
  const finished = places.finish();
  for (let i = 0; i < count; i++) {
    const number = columns.place[i] ?? -1;
    if (number >= 0) columns.place[i] = finished.newNumber[number] ?? -1;
  }
  nameColours(conveyor, looks, relines, finished.places, columns, problems);
  return { looks, relines, places: finished.places, readings: columns, along, problems, looksElsewhere };
}

/** A panel in the layout of that day, all along it; undefined where there is no such panel. */
function settledSpot(
  conveyor: Conveyor,
  stated: ReadingSpot | undefined,
  relines: readonly Reline[],
  day: CalendarDay,
): ReadingSpot | undefined {
  if (stated?.kind === 'stretch') return spotAlong(conveyor, stated, undefined);
  if (stated?.kind !== 'panel') return stated;
  const lay = panelThere(conveyor, stated.panel, relines, day);
  return lay && spotAlong(conveyor, lay, stated.clock);
}

/** Without a clock position a point on it is meant. */
function spotAlong(conveyor: Conveyor, lay: PanelEnds, clock: number | undefined): ReadingSpot {
  const point = clock === undefined ? pointOn(conveyor, lay) : undefined;
  if (point) return { kind: 'point', name: point.name };
  const spot = spotAt(conveyor, middleOfPanel(lay), clock);
  return spot.kind === 'chainage' ? { ...spot, along: { from: lay.from, to: lay.to } } : spot;
}

function isAlong(spot: ReadingSpot | undefined): spot is AlongSpot {
  return (
    spot?.kind === 'panel' ||
    spot?.kind === 'stretch' ||
    (spot?.kind === 'chainage' && spot.along !== undefined)
  );
}

function panelNotThere(conveyor: Conveyor, panel: PanelUse): Problem {
  const what = `panel of ${conveyor.name}`;
  return { kind: 'unknown name', origin: panel.origin, what, name: panelWords(panel), known: [] };
}

/** Where no clock position is written: the point that lies there, else the middle of the worn sector, else the bottom. */
function spotOfOldPanel(conveyor: Conveyor, { spot }: OldPanel): ReadingSpot | undefined {
  if (spot.kind === 'panel') return undefined; // it was not there, which a rule tells
  if (spot.kind === 'point') return { kind: 'point', name: spot.point.name };
  return spotAt(conveyor, spot.at.value, spot.clock?.hours);
}

function spotAt(conveyor: Conveyor, at: number, stated: number | undefined): ReadingSpot {
  if (stated !== undefined) return { kind: 'chainage', at, clock: stated };
  const there = conveyor.points.filter((point) => Math.abs(point.at.value - at) <= 1);
  const [only, another] = there;
  if (only && !another) return { kind: 'point', name: only.name };
  const { wornSector } = conveyor;
  const clock = wornSector ? (wornSector.from.hours + wornSector.to.hours) / 2 : 6;
  return { kind: 'chainage', at, clock };
}

function addOldPanel(
  columns: ReturnType<typeof emptyColumns>,
  row: number,
  reline: Reline,
  { thickness, error, note, origin }: OldPanel,
  place: number,
): void {
  columns.inspection[row] = -1;
  columns.place[row] = place;
  columns.kind[row] = thickness ? ReadingKind.thickness : ReadingKind.trough;
  columns.value[row] = thickness?.value ?? NaN;
  columns.error[row] = error?.value ?? NaN;
  columns.source[row] = origin.source;
  columns.start[row] = origin.start;
  columns.end[row] = origin.end;
  columns.notes.set(row, ['measured when it was taken out', note ?? ''].filter(Boolean).join('; '));
  columns.bench.set(row, reline);
}

/** The estate's columns before anything is written to them. */
export function emptyColumns(count: number) {
  return {
    count,
    inspection: new Int32Array(count),
    place: new Int32Array(count),
    kind: new Uint8Array(count),
    value: new Float64Array(count),
    error: new Float64Array(count),
    source: new Int32Array(count),
    start: new Int32Array(count),
    end: new Int32Array(count),
    notes: new Map<number, string>(),
    photos: new Map<number, PhotoUse>(),
    corrected: new Map<number, CorrectedReading>(),
    bench: new Map<number, Reline>(),
  } satisfies Readings;
}

/** Colour names become layer numbers of the liner that lay at the place on the day. */
function nameColours(
  conveyor: Conveyor,
  looks: readonly PlacedDraft[],
  relines: readonly Reline[],
  places: readonly Place[],
  columns: { readonly kind: Uint8Array; readonly value: Float64Array; readonly place: Int32Array },
  problems: Problem[],
): void {
  const linersAt = linersOf(conveyor, relines);
  let row = 0;
  for (const { draft, sheet } of looks) {
    const { rows } = sheet;
    for (let from = draft.firstRow; from < draft.endRow; from++, row++) {
      if (columns.kind[row] !== ReadingKind.colour) continue;
      const colour = rows.colours[rows.value[from] ?? -1] ?? '';
      const liners = linersAt(places[columns.place[row] ?? -1]?.at, draft.date.day, draft.meter);
      const layer = liners.map((liner) => layerOf(liner, colour)).find((index) => index >= 0) ?? -1;
      if (layer >= 0) {
        columns.value[row] = layer;
        continue;
      }
      columns.kind[row] = ReadingKind.unreadable;
      columns.value[row] = NaN;
      const [liner = conveyor.liner] = liners;
      const start = rows.colourStart[from] ?? 0;
      problems.push({
        kind: 'unknown colour',
        origin: { source: sheet.source, start, end: start + colour.length },
        colour,
        liner: liner.name,
        conveyor: conveyor.name,
        chainage: places[columns.place[row] ?? -1]?.at ?? NaN,
        known:
          colour === secondColour
            ? []
            : closest(
                colour,
                liner.layers.map((each) => each.name),
              ),
      });
    }
  }
}

/** −1 where the liner has no such layer. */
function layerOf({ layers }: LinerSpecification, colour: string): number {
  return colour === secondColour
    ? layers.length > 1
      ? 1
      : -1
    : layers.findIndex(({ name }) => name === colour);
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, index) => item === b[index]);
}

function sameLooks(a: readonly PlacedDraft[], b: readonly PlacedDraft[]): boolean {
  return a.length === b.length && a.every(({ draft }, index) => draft === b[index]?.draft);
}
