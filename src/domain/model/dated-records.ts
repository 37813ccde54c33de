// Looks, and the work during which something may have been seen: all that tells of conditions, findings and photos.

import type { Estate } from './estate.js';
import type { History } from './history.js';
import { compareMeters } from './meter-read.js';
import type { DatedRecord, Inspection } from './records.js';

type Records = Pick<Estate, 'inspections' | 'relines' | 'panelsMoved' | 'screwChanges'>;

export function datedRecords({
  inspections,
  relines,
  panelsMoved,
  screwChanges,
}: Records): readonly DatedRecord[] {
  return [inspections, relines, panelsMoved, screwChanges].flat();
}

/** Those of one conveyor by the day of its history, oldest first; of one moment the look comes first. */
export function recordsOf({ inspections, relines, panelsMoved, screwSets }: History): readonly DatedRecord[] {
  const screwChanges = [...new Set(screwSets.flatMap(({ change }) => change ?? []))];
  const looks = inspections.map(({ inspection }) => inspection);
  const work = [relines, panelsMoved, screwChanges].flat();
  if (work.length === 0) return looks;
  return [...looks, ...work].sort((a, b) => a.date.day - b.date.day || compareMeters(a.meter, b.meter));
}

/** Nobody who works at one place looks at all others. */
export function isLook(record: DatedRecord): record is Inspection {
  return 'firstRow' in record;
}

/** `look`, `reline`, … */
export function recordWord(record: DatedRecord): string {
  if (isLook(record)) return 'look';
  if ('moves' in record) return 'moving of panels';
  return 'screw' in record ? 'screw change' : 'reline';
}
