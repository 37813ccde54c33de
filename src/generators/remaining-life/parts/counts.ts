// What was read and what was left out? Stands at the top of the report, so that nobody takes silence for good news.

import type { Estate } from '../../../domain/model/estate.js';
import { saidAgain } from '../../../domain/model/exposure.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { readingCounts } from '../reading-counts.js';
import type { ConveyorLife } from './conveyor-life.js';

/** `readings` is the sum of its kinds, and of `used`, `ofFormerSets`, `notSeen`, `withdrawn` and what was left out. */
export interface Counts {
  readonly conveyors: number;
  readonly points: number;
  readonly inspections: number;
  /** Rows of the inspections on or before the day of the report, and of old panels measured by then; what a look says twice of a spot is one. */
  readonly readings: number;
  readonly thicknesses: number;
  readonly colours: number;
  readonly troughShowing: number;
  readonly notSeen: number;
  /** Taken back by a later correction. */
  readonly withdrawn: number;
  /** What they say could not be read. */
  readonly unreadable: number;
  /** Rows that saw something of the liners that lie there now: what forecasts rest on. */
  readonly used: number;
  /** Rows that saw something of liners that were replaced since. */
  readonly ofFormerSets: number;
  /** By reason, most first. */
  readonly leftOut: readonly { readonly reason: string; readonly count: number }[];
  /** Inspections dated after the day of the report: not looked at. */
  readonly laterInspections: number;
  readonly panels: number;
  readonly panelsNotSeen: number;
  readonly pointsNeverSeen: number;
  /** Far from their limit on an estate of very many points: not forecast, only reckoned by hand. */
  readonly pointsByHandOnly: number;
}

export function countRecords(
  estate: Estate,
  conveyors: readonly Omit<ConveyorLife, 'attention' | 'order'>[],
  laterInspections: number,
): Counts {
  const { readings } = estate;
  const looks = conveyors.flatMap((c) => c.history.inspections);
  const known = new Set(looks.map((i) => i.index));
  const again = new Set(looks.flatMap(({ inspection }) => [...saidAgain(estate, inspection)]));
  const relines = new Set(conveyors.flatMap((c) => c.history.relines));
  const points = conveyors.flatMap((c) => c.points);
  const shown = new Set(points.map(({ place }) => place));
  const byKind = new Map<number, number>();
  let rows = 0;
  let noPlace = 0;
  // Of spots without a name on liners that are gone, which are no points of the report.
  let gone = 0;
  for (let row = 0; row < readings.count; row++) {
    const reline = readings.bench.get(row);
    if (reline ? !relines.has(reline) : !known.has(readings.inspection[row] ?? -1)) continue;
    if (again.has(row)) continue;
    rows += 1;
    const kind = readings.kind[row] ?? ReadingKind.unreadable;
    byKind.set(kind, (byKind.get(kind) ?? 0) + 1);
    const place = estate.places[readings.place[row] ?? -1];
    const saw = kind !== ReadingKind.notSeen && kind !== ReadingKind.withdrawn;
    if (!place) noPlace += saw ? 1 : 0;
    else if (!shown.has(place)) gone += saw ? 1 : 0;
  }
  const panels = conveyors.flatMap((c) => c.runs.flatMap((r) => r.panels));
  const reasons = new Map<string, number>();
  const add = (reason: string, count: number): void =>
    void (count > 0 && reasons.set(reason, (reasons.get(reason) ?? 0) + count));
  add('the point named is not on the conveyor', noPlace);
  // What saw nothing, or was taken back, is counted as that.
  const counts = ({ row }: { readonly row: number }): boolean =>
    readings.kind[row] !== ReadingKind.notSeen && readings.kind[row] !== ReadingKind.withdrawn;
  for (const { reason } of points.flatMap((p) => p.leftOut.filter(counts))) add(reason, 1);
  return {
    conveyors: conveyors.length,
    points: points.length,
    inspections: known.size,
    readings: rows,
    thicknesses: byKind.get(ReadingKind.thickness) ?? 0,
    colours: byKind.get(ReadingKind.colour) ?? 0,
    troughShowing: byKind.get(ReadingKind.trough) ?? 0,
    notSeen: byKind.get(ReadingKind.notSeen) ?? 0,
    withdrawn: byKind.get(ReadingKind.withdrawn) ?? 0,
    unreadable: byKind.get(ReadingKind.unreadable) ?? 0,
    used: readingCounts(points).seen,
    ofFormerSets: gone + points.reduce((sum, p) => sum + p.formerReadings, 0),
    leftOut: [...reasons]
      .map(([reason, count]) => ({ reason, count }))
      .sort((a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1)),
    laterInspections,
    panels: panels.length,
    panelsNotSeen: panels.filter((p) => p.state !== 'seen').length,
    pointsNeverSeen: points.filter((p) => p.state === 'not seen' || p.state === 'none').length,
    pointsByHandOnly: conveyors.some((c) => c.model) ? points.filter((p) => p.model === undefined).length : 0,
  };
}
