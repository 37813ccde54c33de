// A reading and an inspection: whose liner it was, how long that liner had run, and what came before.

import { meterWords } from '../../domain/model/meter-read.js';
import { hoursErrorOf } from '../../domain/model/hours-error.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { type LengthUnit, rateWords } from '../../domain/units/length-words.js';
import { screwSeen } from '../../domain/model/lying-screw.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatClock } from '../../domain/units/clock.js';
import { formatNumber } from '../../domain/units/format.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposureBetween, setSeen, type Exposure } from '../../domain/model/exposure.js';
import { fittedThickness } from '../../domain/model/fitted-thickness.js';
import { isImpossible } from '../../domain/model/impossible-reading.js';
import { type History, historyOf, momentOf } from '../../domain/model/history.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import type { CorrectedReading, Inspection, Place } from '../../domain/model/records.js';
import { runAt } from '../../domain/model/runs.js';
import { radialClearance } from '../../domain/geometry/clearance.js';
import { crescentEdge, crescentWear, depthFromEdge, type Crescent } from '../../domain/geometry/crescent.js';
import { attempt, hoverMarkdown, line, plain } from './markdown.js';
import { metres, mm } from './stated.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export function exposureWords(exposure: Exposure): string {
  return exposure.known
    ? `${formatNumber(exposure.value, 0)} ${exposure.unit}`
    : `not known: ${exposure.reason}`;
}

export function linerSetWords(set: LinerSet): string {
  const since = set.fitted ? `, fitted ${formatDay(set.fitted.day)}` : '';
  return `${plain(set.liner.name)}${since}${set.reline ? ' (reline)' : ''}`;
}

/** One row of an inspection. */
export function readingHover(estate: Estate, row: number): string | undefined {
  const { readings, inspections, places } = estate;
  const inspection = inspections[readings.inspection[row] ?? -1];
  const place = places[readings.place[row] ?? -1];
  if (!inspection || !place) return undefined;
  const history = historyOf(estate, inspection.conveyor);
  const set = setSeen(history, place.at, inspection);
  const exposure = set && exposureBetween(history, set, momentOf(history, inspection));
  const fitted = set && fittedThickness(set, place);
  const unit = unitOfMachine(inspection.conveyor);
  const seen = readings.kind[row];
  const value = readings.value[row] ?? NaN;
  const impossible = isImpossible(estate, row, set, place);
  const worn =
    seen === ReadingKind.thickness && fitted && Number.isFinite(value) && !impossible
      ? fitted.value - value
      : undefined;
  return hoverMarkdown(
    `**${plain(place.name)}** ${metres(unit, place.at)}, ${formatClock(place.clock)} o’clock in the direction of flow`,
    [
      ...(set ? line('liner', linerSetWords(set)) : []),
      ...(exposure
        ? line(
            exposure.known && exposure.unit === 't' ? 'tonnes on it' : 'hours on it',
            exposureWords(exposure),
          )
        : []),
      ...(impossible && fitted
        ? line('counts', `for nothing: ${mm(unit, value, 1)} read, and ${mm(unit, fitted.value, 1)} when new`)
        : []),
      ...(worn === undefined || !fitted
        ? []
        : line(
            'worn',
            mm(unit, worn, 1),
            `${mm(unit, fitted.value, 1)} ${fitted.measured ? 'measured when fitted' : 'by specification'} less the ${mm(unit, value, 1)} read`,
          )),
      ...(worn !== undefined && exposure?.known && exposure.value > 0
        ? line(
            'long-term rate',
            rateWords(worn / exposure.value, exposure.unit, unit),
            'wear over exposure; one reading alone tells no trend',
          )
        : []),
      ...(worn !== undefined && set ? stripLine(estate, place, set, inspection, worn) : []),
      ...(seen === ReadingKind.colour && set ? colourLines(set, value, unit) : []),
      ...(seen === ReadingKind.notSeen
        ? line('says', 'nothing about the wear: it was looked for and not seen')
        : []),
      ...correctedLines(readings.corrected.get(row)),
    ],
    previous(estate, place, inspection),
  );
}

function correctedLines(corrected: CorrectedReading | undefined): ReturnType<typeof line> {
  return (corrected?.versions ?? []).flatMap(({ correction, words }) =>
    correction
      ? line(
          'corrected',
          plain(words),
          plain(
            [
              `said on ${formatDay(correction.date.day)}`,
              correction.by === undefined ? '' : `by ${correction.by}`,
              correction.note ?? '',
            ]
              .filter(Boolean)
              .join(', '),
          ),
        )
      : [],
  );
}

/** How wide the worn strip is at that depth, by the two circles; nothing where the screw does not fit. */
function stripLine(
  estate: Estate,
  place: Place,
  set: LinerSet,
  inspection: Inspection,
  worn: number,
): ReturnType<typeof line> {
  const crescent = crescentOf(estate, inspection, set, place.at);
  const half = crescent && worn > 0 ? attempt(() => crescentEdge(crescent, worn)) : undefined;
  if (half === undefined || half === 0) return [];
  const [from, to] = [place.clock - half / 30, place.clock + half / 30];
  return line(
    'strip to expect',
    `${formatClock(hoursOf(from))} to ${formatClock(hoursOf(to))}`,
    'the circle of the screw sunk into that of the liner, if this is where it is deepest',
  );
}

/** A worn strip as read: how deep it tells the liner to be worn. */
export function wornWidthHover(
  estate: Estate,
  inspection: Inspection,
  strip: Inspection['wornWidths'][number],
): string {
  const history = historyOf(estate, inspection.conveyor);
  const set = setSeen(history, strip.at.value, inspection);
  const crescent = set && crescentOf(estate, inspection, set, strip.at.value);
  const unit = unitOfMachine(inspection.conveyor);
  const half = Math.abs(strip.to.hours - strip.from.hours) * 15;
  const deepest = crescent && half < 89 ? attempt(() => depthFromEdge(crescent, half)) : undefined;
  const beside =
    crescent && deepest !== undefined ? attempt(() => crescentWear(crescent, deepest, half / 2)) : undefined;
  return hoverMarkdown(`**worn strip** at ${metres(unit, strip.at.value)}`, [
    ...line('width', `${formatNumber(2 * half, 0)}°`),
    ...(deepest === undefined
      ? []
      : line(
          'deepest wear by its width',
          mm(unit, deepest, 1),
          'intersection of two circles, the screw’s and the liner’s; the screw taken as unworn',
        )),
    ...(beside === undefined ? [] : line('half way to its edge', mm(unit, beside, 1))),
  ]);
}

function crescentOf(estate: Estate, inspection: Inspection, set: LinerSet, at: number): Crescent | undefined {
  const { conveyor } = inspection;
  const screw = screwSeen(estate, inspection, at);
  const screwRadius = screw.outsideDiameter.value / 2;
  const e = attempt(() =>
    radialClearance(conveyor.trough.insideRadius.value, set.liner.thickness.value, 2 * screwRadius),
  );
  return e !== undefined && e > 0 ? { e, screwRadius } : undefined;
}

function hoursOf(clock: number): number {
  return (((clock - 1e-9) % 12) + 12) % 12 || 12;
}

function colourLines(set: LinerSet, layer: number, unit: LengthUnit): ReturnType<typeof line> {
  const depths = set.liner.layers.map((_, index, layers) =>
    layers.slice(0, index).reduce((sum, each) => sum + each.thickness.value, 0),
  );
  const from = depths[layer];
  const to = depths[layer + 1] ?? set.liner.thickness.value;
  return from === undefined
    ? []
    : line(
        'worn',
        `between ${mm(unit, from, 1)} and ${mm(unit, to, 1)}`,
        'a colour bounds the wear and says no more',
      );
}

function previous(estate: Estate, place: Place, until: Inspection): string[] {
  const { readings } = estate;
  const rows: string[] = [];
  for (let row = 0; row < readings.count; row += 1) {
    if (estate.places[readings.place[row] ?? -1] !== place) continue;
    const inspection = estate.inspections[readings.inspection[row] ?? -1];
    if (!inspection || inspection.date.day >= until.date.day) continue;
    rows.push(
      `| ${formatDay(inspection.date.day)} | ${meterWords(inspection.meter)} | ${seenWords(estate, row, inspection)} |`,
    );
  }
  return rows.length === 0
    ? []
    : [['| before | meter | seen |', '| :-- | --: | :-- |', ...rows.slice(-6)].join('\n')];
}

export function seenWords(estate: Estate, row: number, inspection: Inspection): string {
  const { kind, value } = estate.readings;
  switch (kind[row]) {
    case ReadingKind.thickness:
      return mm(unitOfMachine(inspection.conveyor), value[row] ?? 0, 1);
    case ReadingKind.colour: {
      const history = historyOf(estate, inspection.conveyor);
      const place = estate.places[estate.readings.place[row] ?? -1];
      const set = place && setSeen(history, place.at, inspection);
      return plain(set?.liner.layers[value[row] ?? -1]?.name ?? 'a colour');
    }
    case ReadingKind.trough:
      return 'trough showing';
    case ReadingKind.notSeen:
      return 'not seen';
    case ReadingKind.withdrawn:
      return 'does not count';
    default:
      return 'unreadable';
  }
}

export function inspectionHover(estate: Estate, inspection: Inspection): string {
  const { conveyor } = inspection;
  const unit = unitOfMachine(conveyor);
  const history = historyOf(estate, conveyor);
  const moment = momentOf(history, inspection);
  const index = history.inspections.findIndex((each) => each.inspection === inspection);
  const before = history.inspections[index - 1]?.inspection;
  const sets = history.linerSets
    .filter((set) => !set.removed || set.removed.day >= inspection.date.day)
    .filter((set) => setSeen(history, (set.from + set.to) / 2, inspection) === set);
  return hoverMarkdown(`**inspection of ${plain(conveyor.name)}** ${formatDay(inspection.date.day)}`, [
    ...line('readings', countText(estate, rowsOf(inspection))),
    ...(moment.hours === undefined
      ? []
      : line(
          'running hours',
          `${formatNumber(moment.hours, 0)} h ${history.start.kind === 'commissioned' ? 'since commissioning' : 'on record'}`,
          howHoursAreKnown(history, inspection),
        )),
    ...(before && moment.hours !== undefined
      ? line(
          'since the one before',
          `${inspection.date.day - before.date.day} days, ${formatNumber(moment.hours - (momentOf(history, before).hours ?? moment.hours), 0)} h`,
        )
      : []),
    ...sets.flatMap((set) =>
      line(
        `liner ${metres(unit, set.from)} to ${metres(unit, set.to)}`,
        `${linerSetWords(set)}, ${exposureWords(exposureBetween(history, set, moment))}`,
      ),
    ),
    ...line(
      'view',
      inspection.view.direction === 'upstream'
        ? 'upstream: clock positions are mirrored once, on the way in'
        : `downstream${inspection.view.stated ? '' : ' (assumed: none is stated)'}`,
    ),
  ]);
}

function howHoursAreKnown(history: History, look: Inspection): string {
  const { hours, error: doubt } = look.meter;
  if (hours)
    return `meter readings added up across meter changes${doubt ? `, this one ± ${doubt.text}` : ''}`;
  const error = hoursErrorOf(history, look);
  return `the meter was not read: by the readings before and after, ${error === undefined ? 'how sure is not known' : `± ${formatNumber(error, 0)} h`}`;
}

function rowsOf({ firstRow, endRow }: Inspection): readonly number[] {
  return Array.from({ length: endRow - firstRow }, (_, i) => firstRow + i);
}

/** `9`, or `9, of which 2 saw nothing`. */
function countText({ readings }: Estate, rows: readonly number[]): string {
  const nothing = rows.filter((row) => readings.kind[row] === ReadingKind.notSeen).length;
  return nothing === 0 ? String(rows.length) : `${rows.length}, of which ${nothing} saw nothing`;
}

/** A point with the run and panel it lies on and what was last seen there. */
export function pointHover(estate: Estate, place: Place, wear: readonly string[] = []): string {
  const unit = unitOfMachine(place.conveyor);
  const run = runAt(place.conveyor, place.at);
  const rows: string[] = [];
  const counts: number[] = [];
  for (let row = 0; row < estate.readings.count; row += 1) {
    if (estate.places[estate.readings.place[row] ?? -1] !== place) continue;
    const inspection = estate.inspections[estate.readings.inspection[row] ?? -1];
    if (inspection) counts.push(row);
    if (inspection)
      rows.push(
        `| ${formatDay(inspection.date.day)} | ${meterWords(inspection.meter)} | ${seenWords(estate, row, inspection)} |`,
      );
  }
  return hoverMarkdown(
    `**point ${plain(place.name)}** of ${plain(place.conveyor.name)}`,
    [
      ...line(
        'place',
        `${metres(unit, place.at)}, ${formatClock(place.clock)} o’clock in the direction of flow`,
      ),
      ...line('run', run ? plain(run.label) : 'none: it lies on a break or outside the conveyor'),
      ...line('readings', rows.length === 0 ? 'none yet' : countText(estate, counts)),
    ],
    [
      ...(wear.length === 0 ? [] : [wear.map(plain).join(' ')]),
      ...(rows.length === 0
        ? []
        : [['| date | meter | seen |', '| :-- | --: | :-- |', ...rows.slice(-6)].join('\n')]),
    ],
  );
}
