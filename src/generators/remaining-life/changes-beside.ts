// What do two reports of a conveyor say differently beside its wear? Conditions that came, went, got worse or wider, and what was
// measured anew: flight, plate, gaps, currents, speed, bearings and gearbox. In words, for the report's "since" and for `diff`.

import { samePlace } from '../../domain/conditions/kinds.js';
import type { OpenCondition } from '../../domain/conditions/rows.js';
import { flightSpots } from '../../domain/model/flight-readings.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { counted } from '../../domain/units/wording.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import {
  chainageWords,
  lengthWords,
  temperatureWords,
  type LengthUnit,
} from '../../domain/units/length-words.js';
import type { ConveyorLife } from './parts/conveyor-life.js';

/** Without full stops; conditions first, worst first. */
export function changesBeside(before: ConveyorLife, now: ConveyorLife): readonly string[] {
  return [
    ...conditionChanges(before.conditions, now.conditions),
    ...seriesChanges(measuredSeries(before), measuredSeries(now)),
  ];
}

function conditionChanges(
  before: readonly OpenCondition[],
  now: readonly OpenCondition[],
): readonly string[] {
  const left = [...before];
  const told = now.flatMap((row): readonly string[] => {
    const at = left.findIndex((each) => isSame(each, row));
    const [old] = at < 0 ? [] : left.splice(at, 1);
    const named = [row.what, row.severity].filter(Boolean).join(', ');
    if (!old) return [`new: ${named}`];
    const changes = [
      old.severity === row.severity
        ? ''
        : `${old.severity ?? 'no severity'} → ${row.severity ?? 'none said'}`,
      old.measure === row.measure ? '' : `${old.measure || 'no measure'} → ${row.measure || 'none said'}`,
    ].filter(Boolean);
    return changes.length === 0 ? [] : [`${row.what}: ${changes.join(', ')}`];
  });
  return [...told, ...left.map(({ what }) => `no longer open: ${what}`)];
}

function isSame(a: OpenCondition, b: OpenCondition): boolean {
  if (a.called !== b.called) return false;
  return a.at === undefined || b.at === undefined ? a.at === b.at : Math.abs(a.at - b.at) <= samePlace;
}

interface Series {
  /** What was measured, and where; the same in both reports. */
  readonly what: string;
  /** Oldest first. */
  readonly read: readonly { readonly day: CalendarDay; readonly words: string }[];
}

function measuredSeries(life: ConveyorLife): readonly Series[] {
  const unit = unitOfMachine(life.conveyor);
  const { currents, speeds, gaps } = life.beside;
  const number = (value: number | undefined, day: CalendarDay, name: string): Series['read'] =>
    value === undefined ? [] : [{ day, words: `${Math.round(value * 100) / 100} ${name}` }];
  const oldestFirst = (read: Series['read']): Series['read'] => [...read].reverse();
  return [
    ...flightSeries(life, unit),
    ...life.trough.places.map(({ at, clock, readings }) => ({
      what: `plate at ${chainageWords(at, unit)}${clock === undefined ? '' : ` clock ${clock}`}`,
      read: readings.map(({ day, thickness }) => ({ day, words: lengthWords(thickness, unit) })),
    })),
    // Noise and oil are conditions, and are told with them.
    ...life.beside.drive.map(({ part, of, read }) => ({
      what: `${part} ${of}`,
      read: oldestFirst(
        read.flatMap(({ day, temperature }) =>
          temperature === undefined ? [] : [{ day, words: temperatureWords(temperature, unit) }],
        ),
      ),
    })),
    ...gaps.map(({ at, read }) => ({
      what: `gap of the hold-down at ${chainageWords(at, unit)}`,
      read: oldestFirst(read.map(({ day, gap }) => ({ day, words: lengthWords(gap, unit) }))),
    })),
    { what: 'current empty', read: oldestFirst(currents.flatMap((c) => number(c.empty, c.day, 'A'))) },
    { what: 'current loaded', read: oldestFirst(currents.flatMap((c) => number(c.loaded, c.day, 'A'))) },
    { what: 'counted speed', read: oldestFirst(speeds.flatMap((s) => number(s.speed, s.day, 'rpm'))) },
    ...wornSeries(life, unit),
  ];
}

function flightSeries({ history }: ConveyorLife, unit: LengthUnit): readonly Series[] {
  return flightSpots(history).flatMap(({ at, looks }) =>
    (['depth', 'diameter'] as const).map((of) => ({
      what: `${of === 'depth' ? 'flight depth' : 'outside diameter'} at ${chainageWords(at, unit)}`,
      read: looks.flatMap((look) => {
        const value = look[of]?.value;
        return value === undefined ? [] : [{ day: look.day, words: lengthWords(value, unit) }];
      }),
    })),
  );
}

/** By the chainage as it was written: a worn width is read at a place of its own choosing. */
function wornSeries({ history }: ConveyorLife, unit: LengthUnit): readonly Series[] {
  const found = new Map<string, { day: CalendarDay; words: string }[]>();
  for (const { inspection } of history.inspections)
    for (const { at, from, to } of inspection.wornWidths) {
      const what = `worn width at ${chainageWords(at.value, unit)}`;
      const read = found.get(what) ?? [];
      found.set(what, read);
      read.push({ day: inspection.date.day, words: `${from.text} to ${to.text}` });
    }
  return [...found].map(([what, read]) => ({ what, read }));
}

function seriesChanges(before: readonly Series[], now: readonly Series[]): readonly string[] {
  const key = ({ day, words }: Series['read'][number]): string => `${day} ${words}`;
  return now.flatMap(({ what, read }): readonly string[] => {
    const known = new Set(before.find((each) => each.what === what)?.read.map(key));
    const fresh = read.filter((each) => !known.has(key(each)));
    const last = fresh.at(-1);
    if (!last) return [];
    const old = read.slice(0, read.indexOf(last)).at(-1);
    return [
      `${what}: ${last.words} on ${formatDay(last.day)}` +
        (old ? ` (${old.words} on ${formatDay(old.day)})` : '') +
        (fresh.length > 1 ? `, ${counted(fresh.length, 'new reading')}` : ''),
    ];
  });
}
