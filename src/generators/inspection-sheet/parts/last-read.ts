// What was read last of everything that has no point: currents, speed, bearings and gearbox, flight, worn width, plate.
// Of a look that wrote a kind on several lines each line counts; a kind that the newest look left out keeps the value it had.

import { driveReadings } from '../../../domain/conditions/drive-readings.js';
import type { OpenCondition } from '../../../domain/conditions/rows.js';
import type { TroughState } from '../../../domain/conditions/trough.js';
import { flightSpots, type FlightSpot } from '../../../domain/model/flight-readings.js';
import type { Estate } from '../../../domain/model/estate.js';
import { recordedSpeed, type History } from '../../../domain/model/history.js';
import type { Inspection } from '../../../domain/model/records.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatClock, clockAsSeen, parseClock } from '../../../domain/units/clock.js';
import { lengthWords, temperatureWords, type LengthUnit } from '../../../domain/units/length-words.js';
import type { InspectionSheet, LastRead } from '../sheet.js';

export function lastRead(
  history: History,
  trough: TroughState,
  open: readonly OpenCondition[],
  look: InspectionSheet['look'],
  unit: LengthUnit,
  services: Estate['services'],
): LastRead {
  return {
    empty: lastOf(history, ({ currents }) => currents.flatMap(({ empty }) => empty?.text ?? [])),
    loaded: lastOf(history, ({ currents }) => currents.flatMap(({ loaded }) => loaded?.text ?? [])),
    speed: speedOf(history),
    flights: flightSpots(history).map((spot) => flightOf(spot, unit)),
    drive: driveReadings(history, services).flatMap(({ part, of, read: [last] }) => {
      if (!last || open.some(({ writes }) => writes === `${part} ${of}`)) return [];
      const { temperature, told } = last;
      const words = temperature === undefined ? told : temperatureWords(temperature, unit);
      return [{ what: `${part} ${of}`, words: dated(words, last.day) }];
    }),
    gauge: gaugeOf(history),
    wornWidths: wornWidthsOf(history, look),
    plates: platesOf(trough, look, unit),
  };
}

/** What lies bare for want of a panel stands on the sheet as that; what no liner ever covers comes first, worst before all. */
function platesOf(
  { places }: TroughState,
  look: InspectionSheet['look'],
  unit: LengthUnit,
): LastRead['plates'] {
  const rank = ({ noLiner, passedFor }: TroughState['places'][number]): number =>
    noLiner === undefined ? 2 : passedFor === undefined ? 1 : 0;
  return [...places]
    .sort((a, b) => rank(a) - rank(b))
    .flatMap(({ at, clock, bare, noLiner, passedFor, readings }) => {
      const last = readings.at(-1);
      if (!last || (bare && noLiner === undefined)) return [];
      const words = dated(lengthWords(last.thickness, unit), last.day);
      const worn = passedFor === undefined ? '' : '; past its minimum by its rate';
      return [{ at, clock: clockSeen(clock, look), words: `${words}${worn}` }];
    });
}

/** As the inspector sees it; empty where none is said. */
function clockSeen(clock: string | undefined, look: InspectionSheet['look']): string {
  const hours = clock === undefined ? undefined : parseClock(clock);
  if (hours === undefined) return '';
  return formatClock(clockAsSeen(hours, look));
}

function gaugeOf({ inspections }: History): string | undefined {
  const gauge = inspections.findLast(({ inspection }) => inspection.gauge)?.inspection.gauge;
  return gauge && [gauge.kind, gauge.error && `± ${gauge.error.text}`].filter(Boolean).join(' ');
}

function dated(words: string, day: CalendarDay): string {
  return `${words} on ${formatDay(day)}`;
}

function lastOf(
  { inspections }: History,
  texts: (inspection: Inspection) => readonly string[],
): string | undefined {
  return inspections
    .flatMap(({ inspection }) => texts(inspection).map((text) => dated(text, inspection.date.day)))
    .at(-1);
}

function speedOf(history: History): string | undefined {
  const recorded = recordedSpeed(history)?.text;
  return (
    lastOf(history, ({ speeds }) => speeds.map(({ speed }) => speed.text)) ??
    (recorded === undefined ? undefined : `${recorded} recorded`)
  );
}

function flightOf({ at, looks }: FlightSpot, unit: LengthUnit): LastRead['flights'][number] {
  const words = (pick: 'depth' | 'diameter'): string | undefined => {
    const look = looks.findLast((each) => each[pick] !== undefined);
    const value = look?.[pick]?.value;
    return look && value !== undefined ? dated(lengthWords(value, unit), look.day) : undefined;
  };
  return { at, depth: words('depth'), diameter: words('diameter') };
}

/** The newest of each place; places within 100 mm are one (judgement: what a torch shows). */
function wornWidthsOf({ inspections }: History, look: InspectionSheet['look']): LastRead['wornWidths'] {
  const found: { at: number; words: string }[] = [];
  for (const { inspection } of [...inspections].reverse())
    for (const { at, from, to } of inspection.wornWidths) {
      if (found.some((each) => Math.abs(each.at - at.value) <= 100)) continue;
      const [left, right] = [from.hours, to.hours].map((hours) => formatClock(clockAsSeen(hours, look)));
      const ends = look === 'downstream' ? `${left} to ${right}` : `${right} to ${left}`;
      found.push({ at: at.value, words: dated(ends, inspection.date.day) });
    }
  return found.sort((a, b) => a.at - b.at);
}
