// Where does the fitter look, what was there last time, and what should be there now? The sheet as a value, from the model and
// its records alone. Clock positions are turned once, here, to the way the inspector looks.

import { spotWords } from '../../domain/conditions/kinds.js';
import { screwNow } from '../../domain/model/lying-screw.js';
import { openConditionRows, sinceWords, type OpenCondition } from '../../domain/conditions/rows.js';
import { lookDueWords, looksDue } from '../../domain/model/asked-looks.js';
import { notLookedAt } from '../../domain/conditions/not-looked.js';
import { troughState, type TroughState } from '../../domain/conditions/trough.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import { coverName, holdDownName } from '../../domain/model/part-names.js';
import { declaredSafeguards } from '../../domain/conditions/safeguards-declared.js';
import type { Estate } from '../../domain/model/estate.js';
import { exposedReadings, isPointNow, setLying, setsLying } from '../../domain/model/exposure.js';
import { fittedThickness } from '../../domain/model/fitted-thickness.js';
import { isImpossible } from '../../domain/model/impossible-reading.js';
import { linersLying } from '../../domain/model/lying-liner.js';
import { knownOn } from '../../domain/model/known-on.js';
import type { ExposedReading } from '../../domain/model/exposure.js';
import { dutyOn } from '../../domain/model/duty.js';
import { forwardDuty, historyOf, momentOn } from '../../domain/model/history.js';
import { presentDay } from '../../domain/model/newest.js';
import type { History } from '../../domain/model/history.js';
import { installedPanels } from '../../domain/model/panels.js';
import type { Inspection, Place } from '../../domain/model/records.js';
import { runAt, runsOf } from '../../domain/model/runs.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { formatDay } from '../../domain/units/calendar.js';
import { formatClock, clockAsSeen } from '../../domain/units/clock.js';
import { type LengthUnit, lengthWords, chainageText } from '../../domain/units/length-words.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { alongTheTrough } from '../drawing/along.js';
import { linerBuildUps, stretchWords } from '../drawing/build-up.js';
import { crossSection } from '../drawing/cross-section.js';
import type { Drawing } from '../drawing/drawing-sheet.js';
import { issueDrawings } from '../drawing/picture.js';
import { safeguardCaution, sheetCautions, unreadCaution } from './parts/cautions.js';
import { expectedWear, type ExpectedWear } from '../remaining-life/expected-wear.js';
import { expectationFor } from './parts/expectation.js';
import { lastRead } from './parts/last-read.js';
import type { InspectionSheet, LastSeen, LinerSeen, MeterExpected, SheetPoint } from './sheet.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export interface SheetOptions {
  /** The day of the inspection; left out: the newest record, never the clock. */
  readonly asOf?: CalendarDay;
  /** Left out: as the last inspection looked, else downstream. */
  readonly look?: 'downstream' | 'upstream';
  readonly drawnFrom?: string;
}

export function inspectionSheet(
  present: Estate,
  conveyor: Conveyor,
  options: SheetOptions = {},
): InspectionSheet {
  const asOf = presentDay(present, options.asOf) ?? (0 as CalendarDay); // an estate without records has no date of its own
  const estate = knownOn(present, asOf);
  const history = historyOf(estate, conveyor, { asOf });
  const lastInspection = history.inspections.at(-1)?.inspection;
  const look = options.look ?? (lastInspection?.view.stated ? lastInspection.view.direction : 'downstream');
  const lookBecause = options.look
    ? 'as asked for'
    : lastInspection?.view.stated
      ? `as on ${formatDay(lastInspection.date.day)}`
      : 'with the flow, as nothing else is said';
  const number = `${conveyor.name}-inspection`;
  const plant = conveyor.plant.title ?? conveyor.plant.name;
  const readings = exposedReadings(estate, { asOf });
  const places = estate.places.filter(
    (place) =>
      place.conveyor === conveyor && isPointNow(estate, history, place, readings.get(place) ?? [], asOf),
  );
  const unit = unitOfMachine(conveyor);
  const wear = expectedWear(estate, conveyor, asOf);
  const trough = troughState(estate, conveyor, asOf);
  const open = openConditionRows(estate, conveyor, asOf);
  const points = places
    .map((place) =>
      pointOf({ estate, history, place, rows: readings.get(place) ?? [], asOf, look, unit, wear }),
    )
    .sort((a, b) => a.at - b.at || a.clock - b.clock);
  return {
    formatVersion: 1,
    asOf: formatDay(asOf),
    number,
    plant,
    conveyor: {
      name: conveyor.name,
      origin: conveyor.nameOrigin,
      qualified: `${conveyor.plant.name}.${conveyor.name}`,
      identity: identityOf(conveyor),
      ...(conveyor.title === undefined ? {} : { title: conveyor.title }),
      length: conveyor.length.value,
      ...(conveyor.conveys ? { conveys: conveyor.conveys.material } : {}),
    },
    look,
    lookBecause,
    meter: meterExpected(history, asOf),
    tonnes: tonnesAsked(history),
    confinedSpace: conveyor.confinedSpace,
    cautions: [
      ...unreadCaution(estate, conveyor),
      ...safeguardCaution(open),
      ...sheetCautions(conveyor, unit),
    ],
    isolations: conveyor.isolations.map((item) => ({
      name: item.name,
      title: item.title ?? '',
      kind: item.kind,
      at: item.at?.value,
    })),
    unit,
    ...linersOf(history, conveyor, places, asOf),
    points,
    running: runningOf(history, wear),
    holdDowns: holdDownsOf(history, conveyor),
    safeguards: declaredSafeguards(estate, conveyor, open),
    openConditions: openRows(
      open.filter(({ underLiner }) => !underLiner),
      look,
    ),
    bare: bareOf(trough, unit),
    openRemarks: toBeLookedAt(estate, history, lastInspection, asOf),
    lastRead: lastRead(history, trough, open, look, unit, estate.services),
    drawings: drawingsOf(estate, history, conveyor, asOf, look, {
      owner: plant,
      number,
      issued: formatDay(asOf),
      drawnFrom: options.drawnFrom ?? `conveyor ${conveyor.name}`,
    }),
  };
}

/** What the last look noted, what the records ask to be looked at, and what nobody could see. */
function toBeLookedAt(
  estate: Estate,
  history: History,
  last: Inspection | undefined,
  asOf: CalendarDay,
): InspectionSheet['openRemarks'] {
  return [
    ...looksDue(history).map((due) => ({
      date: formatDay(due.record.date.day),
      part: '',
      at: undefined,
      text: lookDueWords(due),
    })),
    ...(last?.remarks ?? []).map((remark) => ({
      date: formatDay(last?.date.day ?? asOf),
      part: remark.part ?? '',
      at: remark.at?.value,
      text: [spotWords(remark), remark.text].filter(Boolean).join(': '),
    })),
    ...notLookedAt(estate, history).map((each) => ({
      date: formatDay(each.day),
      part: '',
      at: undefined,
      text: `could not be looked at: ${each.what}${each.why === undefined ? '' : ` (${each.why})`}`,
    })),
  ];
}

function openRows(
  open: readonly OpenCondition[],
  look: InspectionSheet['look'],
): InspectionSheet['openConditions'] {
  return open.map((row) => ({
    what: row.what,
    place: [row.place, row.clock === undefined ? '' : formatClock(clockAsSeen(row.clock, look))]
      .filter(Boolean)
      .join(', '),
    severity: row.severity ?? '',
    since: sinceWords(row),
    notes: row.notes.join('; '),
    answer: row.writes,
    asks: row.asks,
  }));
}

/** Steel that lies bare now, with what was last read of its plate. */
function bareOf({ spans, places }: TroughState, unit: LengthUnit): InspectionSheet['bare'] {
  return spans
    .filter(({ until }) => until === undefined)
    .map(({ from, to }) => {
      const read = places
        .filter(({ at }) => at >= from && at <= to)
        .flatMap(({ readings }) => readings)
        .at(-1);
      return {
        from,
        to,
        last: read ? `${lengthWords(read.thickness, unit)} on ${formatDay(read.day)}` : '',
      };
    });
}

interface PointAsked {
  readonly estate: Estate;
  readonly history: History;
  readonly place: Place;
  readonly rows: readonly ExposedReading[];
  readonly asOf: CalendarDay;
  readonly look: 'downstream' | 'upstream';
  readonly unit: LengthUnit;
  readonly wear: ExpectedWear;
}

function pointOf({ estate, history, place, rows, asOf, look, unit, wear }: PointAsked): SheetPoint {
  const { conveyor } = history;
  const set = setLying(history, place.at, asOf);
  const liner = set?.liner ?? conveyor.liner;
  const run = runAt(conveyor, place.at);
  const panel =
    run &&
    installedPanels(estate, run, asOf).layout.panels.findLast(
      (each) => place.at >= each.from && place.at <= each.to,
    )?.number;
  const clock = clockAsSeen(place.clock, look);
  // Sets worked out at two times are two objects; the reline that fitted them is one.
  const own = rows.filter((row) => row.set !== undefined && row.set.reline === set?.reline);
  const cover = conveyor.covers.findIndex((each) => place.at >= each.from.value && place.at <= each.to.value);
  const coverAt = conveyor.covers[cover];
  const declared = place.declared ? conveyor.points.find((point) => point.name === place.name) : undefined;
  const fitted = set ? fittedThickness(set, place).value : liner.thickness.value;
  // A panel that was moved had its layers before it came to lie here.
  const whole = set?.reline?.moved ? liner.thickness.value : fitted;
  const expected = wear.of(place);
  return {
    origin: place.origin,
    name: place.declared ? place.name : undefined,
    writes: place.declared ? place.name : `at ${chainageText(place.at, unit)} clock ${formatClock(clock)}`,
    at: place.at,
    fromHead: conveyor.length.value - place.at,
    clock,
    clockText: formatClock(clock),
    liner: liner.name,
    run: run?.label ?? 'at a break',
    panel,
    cover: coverAt ? coverName(coverAt, cover) : '',
    access: conveyor.access
      .filter((zone) => place.at >= zone.from.value && place.at <= zone.to.value)
      .map((zone) => `${zone.name ?? ''} ${zone.kind}`.trim())
      .join(', '),
    note: declared?.note ?? '',
    last: lastSeen(estate, place, own, liner, unit),
    fitted: whole,
    expect: expectationFor({
      wear,
      place: expected,
      fitted,
      whole,
      condemn: liner.condemn.value,
      layers: liner.layers.map((layer) => ({ name: layer.name, thickness: layer.thickness.value })),
      unit,
    }),
    table: expected.kind === 'readings' ? { least: expected.least, most: expected.most } : undefined,
  };
}

function lastSeen(
  estate: Estate,
  place: Place,
  rows: readonly ExposedReading[],
  liner: LinerSpecification,
  unit: LengthUnit,
): LastSeen | undefined {
  const own = rows.filter(
    (each) =>
      estate.readings.kind[each.row] !== ReadingKind.withdrawn &&
      !isImpossible(estate, each.row, each.set, place),
  );
  const last = own.at(-1);
  if (!last) return undefined;
  // Of one day a thickness says more than a colour.
  const measured =
    estate.readings.kind[last.row] === ReadingKind.colour
      ? own.findLast(
          (each) =>
            each.inspection.date.day === last.inspection.date.day &&
            estate.readings.kind[each.row] === ReadingKind.thickness,
        )
      : undefined;
  const row = measured ?? last;
  const value = estate.readings.value[row.row] ?? NaN;
  const date = formatDay(row.inspection.date.day);
  const note = estate.readings.notes.get(row.row);
  const remark = note === undefined ? '' : ` (${note})`;
  switch (estate.readings.kind[row.row]) {
    case ReadingKind.thickness:
      return { date, words: `${lengthWords(value, unit)}${remark}`, thickness: value };
    case ReadingKind.colour:
      return { date, words: `${liner.layers[value]?.name ?? 'colour'}${remark}`, thickness: undefined };
    case ReadingKind.trough:
      return { date, words: `trough showing${remark}`, thickness: undefined };
    default:
      return { date, words: `not seen${remark}`, thickness: undefined };
  }
}

function linersOf(
  history: History,
  conveyor: Conveyor,
  places: readonly Place[],
  asOf: CalendarDay,
): Pick<InspectionSheet, 'liners' | 'lying'> {
  const sets = setsLying(history, asOf);
  const all = [
    ...places.map((place) => setLying(history, place.at, asOf)?.liner ?? conveyor.liner),
    ...runsOf(conveyor).map(
      (run) => setLying(history, (run.from + run.to) / 2, asOf)?.liner ?? conveyor.liner,
    ),
    ...sets.map(({ liner }) => liner),
  ];
  const liners = [...new Set(all)].map((liner): LinerSeen => {
    let left = liner.thickness.value;
    return {
      name: liner.name,
      thickness: liner.thickness.value,
      condemn: liner.condemn.value,
      layers: liner.layers.map((layer) => {
        const most = left;
        left = Math.max(0, left - layer.thickness.value);
        return { name: layer.name, most, least: left };
      }),
    };
  });
  return { liners, lying: sets.map(({ from, to, liner }) => ({ from, to, liner: liner.name })) };
}

function meterExpected(history: History, asOf: CalendarDay): MeterExpected {
  const last = history.hours.knots.at(-1);
  const total = momentOn(history, asOf).hours;
  if (!last) return { last: undefined, about: undefined, daily: [], basis: 'no meter reading on record' };
  const about = total === undefined ? undefined : last.reading.value + (total - last.total);
  const duties = forwardDuty(history);
  const now = dutyOn(duties, last.day);
  const later = duties.flatMap((duty) =>
    duty.from !== undefined && duty.from > last.day
      ? [{ from: formatDay(duty.from), running: duty.perDay }]
      : [],
  );
  return {
    last: { value: last.reading.value, date: formatDay(last.day) },
    about,
    daily: now ? [{ from: formatDay(last.day), running: now.perDay }, ...later] : [],
    basis: about === undefined ? 'no duty declared' : 'by duty since then',
  };
}

/** Hard facts that nobody changes from one sheet to the next; titles of the conveyor, points and parts may be written anew. */
function identityOf({ plant, name, length, incline, commissioned }: Conveyor): string {
  const since = commissioned && `${formatDay(commissioned.date.day)} ${commissioned.meter.value}`;
  return [plant.name, plant.title, name, length.value, incline.value, since].join(' ');
}

function runningOf(history: History, wear: ExpectedWear): InspectionSheet['running'] {
  const counter = wear.measure === 't' ? history.tonnes : history.hours;
  return {
    measure: wear.measure,
    from: formatDay(wear.from),
    last: counter?.knots.at(-1)?.reading.value,
    daily: wear.daily.map(({ from, running }) => ({ from: formatDay(from), running })),
    perCount: wear.perCount,
    ahead: wear.ahead,
  };
}

/** Where wear follows tonnes, or tonnes were ever recorded. Tonnes. */
function tonnesAsked(history: History): InspectionSheet['tonnes'] {
  if (history.wearBy !== 'tonnes' && !history.tonnes) return undefined;
  const last = history.tonnes?.knots.at(-1);
  return { last: last?.reading.value, date: last && formatDay(last.day) };
}

function holdDownsOf(history: History, conveyor: Conveyor): InspectionSheet['holdDowns'] {
  const gaps = history.inspections.flatMap(({ inspection }) =>
    inspection.holdDownGaps.map((gap) => ({
      at: gap.at.value,
      gap: gap.gap.value,
      date: formatDay(inspection.date.day),
    })),
  );
  return conveyor.holdDowns.map((block, index) => {
    const at = (block.from.value + block.to.value) / 2;
    const last = gaps.findLast((gap) => Math.abs(gap.at - at) <= 50);
    return {
      name: holdDownName(conveyor, block, index),
      at,
      side: block.side,
      lastGap: last?.gap,
      lastDate: last?.date,
    };
  });
}

function drawingsOf(
  estate: Estate,
  history: History,
  conveyor: Conveyor,
  asOf: CalendarDay,
  look: 'downstream' | 'upstream',
  issue: Parameters<typeof issueDrawings>[1],
): readonly Drawing[] {
  const liners = linersLying(history, asOf);
  const liner = setLying(history, conveyor.length.value / 2, asOf)?.liner ?? conveyor.liner;
  const along = liners.length > 1 ? liners.find((each) => each.liner === liner) : undefined;
  const where = along && stretchWords(conveyor, along);
  const screw = screwNow(history);
  const runs = runsOf(conveyor).map((run) => ({
    run,
    panels: installedPanels(estate, run, asOf).layout.panels.map((panel) => ({
      number: panel.number,
      from: panel.from,
      to: panel.to,
      length: panel.length,
      closing: false,
      renewed: false,
    })),
  }));
  return issueDrawings(
    [
      crossSection(conveyor, { look, liner, screw, ...(where === undefined ? {} : { where }) }),
      ...linerBuildUps(conveyor, liners),
      ...alongTheTrough({ conveyor, runs, scope: [], look }),
    ],
    issue,
  );
}
