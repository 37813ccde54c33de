// Against a report that was saved without its records: do the readings it printed still say the same? Only those of liners that
// lie there now can be held against it, since only their readings are printed.

import { formatDay } from '../../../domain/units/calendar.js';
import type { PointLife, RemainingLife } from '../../remaining-life/remaining-life.js';
import type { SavedReading, SavedReport } from '../saved-report.js';
import type { HistoryEdit } from './history.js';

/** Exposures are printed to six digits; meters are read to the hour. */
const sameExposure = 1;

export function savedChanges(saved: SavedReport, now: RemainingLife): readonly HistoryEdit[] {
  const edits: HistoryEdit[] = [];
  for (const { conveyor, points } of now.conveyors)
    for (const point of points) {
      const old = saved.readings.filter(
        (reading) => reading.conveyor === conveyor.name && reading.point === point.place.name,
      );
      edits.push(...pointChanges(conveyor.name, point, old, saved));
    }
  return edits;
}

function pointChanges(
  conveyor: string,
  point: PointLife,
  old: readonly SavedReading[],
  { asOf }: SavedReport,
): readonly HistoryEdit[] {
  const edit = (
    day: SavedReading['day'],
    before: string | undefined,
    after: string | undefined,
  ): HistoryEdit => ({
    kind: 'record changed',
    conveyors: [conveyor],
    where: `inspection of ${formatDay(day)}`,
    before: before === undefined ? undefined : `${point.place.name} ${before}`,
    after: after === undefined ? undefined : `${point.place.name} ${after}`,
    reach: '',
    counts: true,
    place: { uri: '', line: 0 },
  });
  const now = point.readings.filter(({ day }) => day <= asOf);
  const fitted = point.set?.fitted?.day;
  const changed = now.flatMap((reading): readonly HistoryEdit[] => {
    const before = old.find(({ day }) => day === reading.day);
    const said = saidOf(reading.seen);
    if (!before) return [edit(reading.day, undefined, said)];
    if (before.said !== said) return [edit(reading.day, before.said, said)];
    const [was, is] = [before.exposure, reading.exposure];
    return was !== undefined && Math.abs(was - is) > sameExposure
      ? [
          edit(
            reading.day,
            `${said} at ${Math.round(was)} since fitting`,
            `${said} at ${Math.round(is)} since fitting`,
          ),
        ]
      : [];
  });
  const gone = old
    .filter(
      ({ day }) => !now.some((reading) => reading.day === day) && (fitted === undefined || day >= fitted),
    )
    .map(({ day, said }) => edit(day, said, undefined));
  return [...changed, ...gone];
}

function saidOf(seen: PointLife['readings'][number]['seen']): string {
  switch (seen.kind) {
    case 'thickness':
      return `${seen.thickness} mm`;
    case 'colour':
      return seen.name;
    case 'trough':
    case 'not seen':
      return seen.kind;
  }
}
