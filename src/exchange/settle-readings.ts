// What a sheet says, held against the estate: which conveyor, which point, which layer; what is recorded already, what says
// something else than the record, and what is new. New readings come in one inspection a conveyor and day, as the language has
// them. Nothing is filled in: without a meter reading there is no inspection, and a name that is not there is not guessed.

import { chainageOn } from '../domain/model/unit-of-machine.js';
import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate } from '../domain/model/estate.js';
import { setLying } from '../domain/model/exposure.js';
import { historyOf } from '../domain/model/history.js';
import type { Inspection } from '../domain/model/records.js';
import { formatDay, type CalendarDay } from '../domain/units/calendar.js';
import { hoursApart, clockAsSeen } from '../domain/units/clock.js';
import { list } from '../domain/units/wording.js';
import type { Mapping, WordMeaning } from './mapping.js';
import { conveyorNamed, pointNamed } from './settle/names.js';
import { recordedAt, spotKey, type Saying } from './settle/recorded.js';
import type { Passed, SheetMeter, SheetReading, Taken } from './take-readings.js';
import type { Measure } from './values/measure.js';

/** A reading that is to be written. */
export interface FreshReading {
  readonly where: string;
  /** `P1`; or a place of its own, which is written with the clock of the block's view. */
  readonly spot: { readonly point: string } | { readonly at: Measure; readonly clock: number };
  readonly saying: Saying;
  /** `thickness 8.4 mm`. */
  readonly words: string;
  readonly gauge?: GaugeKind;
  readonly note?: string;
}

const gauges = ['ultrasonic', 'depth gauge', 'calliper', 'by eye'] as const;
type GaugeKind = (typeof gauges)[number];

export interface FreshInspection {
  readonly conveyor: Conveyor;
  readonly day: CalendarDay;
  readonly hours: Measure | undefined;
  readonly tonnes: Measure | undefined;
  /** Recorded already, with other readings: the new ones go into it. */
  readonly into: Inspection | undefined;
  readonly by: readonly string[];
  readonly readings: readonly FreshReading[];
}

export interface Settled {
  readonly inspections: readonly FreshInspection[];
  /** Recorded already, to the same value. */
  readonly there: number;
  readonly conflicts: readonly Passed[];
  readonly skipped: readonly Passed[];
}

export function settleReadings(estate: Estate, mapping: Mapping, taken: readonly Taken[]): Settled {
  const settler = new Settler(estate, mapping);
  for (const { meters } of taken) for (const meter of meters) settler.keepMeter(meter);
  for (const { readings, skipped } of taken) {
    settler.skipped.push(...skipped);
    for (const reading of readings) settler.keep(reading);
  }
  return settler.settled();
}

/** One conveyor on one day. */
interface Look {
  readonly conveyor: Conveyor;
  readonly day: CalendarDay;
  readonly recorded: readonly Inspection[];
  readonly hours: MeterSaid[];
  readonly tonnes: MeterSaid[];
  readonly by: Set<string>;
  readonly readings: Placed[];
}

interface MeterSaid {
  readonly measure: Measure;
  readonly where: string;
}

interface Placed extends FreshReading {
  readonly key: string;
}

class Settler {
  readonly skipped: Passed[] = [];
  private readonly conflicts: Passed[] = [];
  private readonly looks = new Map<string, Look>();
  private there = 0;

  constructor(
    private readonly estate: Estate,
    private readonly mapping: Mapping,
  ) {}

  keepMeter({ where, conveyor: name, day, hours, tonnes }: SheetMeter): void {
    const conveyor = conveyorNamed(name, this.estate, this.mapping);
    if (typeof conveyor === 'string') return; // told with the readings of that name
    const look = this.look(conveyor, day);
    if (hours) look.hours.push({ measure: hours, where });
    if (tonnes) look.tonnes.push({ measure: tonnes, where });
  }

  keep(reading: SheetReading): void {
    const { where, day } = reading;
    const conveyor = conveyorNamed(reading.conveyor, this.estate, this.mapping);
    if (typeof conveyor === 'string') return void this.skipped.push({ where, why: conveyor });
    const look = this.look(conveyor, day);
    const placed = this.placed(conveyor, reading);
    if (typeof placed === 'string') return void this.skipped.push({ where, why: placed });
    if (reading.by !== undefined) look.by.add(reading.by);
    look.readings.push(placed);
  }

  settled(): Settled {
    const inspections = [...this.looks.values()].flatMap((look) => this.inspection(look) ?? []);
    return { inspections, there: this.there, conflicts: this.conflicts, skipped: this.skipped };
  }

  private look(conveyor: Conveyor, day: CalendarDay): Look {
    const key = `${conveyor.plant.name}.${conveyor.name} ${day}`;
    const known = this.looks.get(key);
    if (known) return known;
    const recorded = this.estate.inspections.filter(
      (one) => one.conveyor === conveyor && one.date.day === day,
    );
    const look = { conveyor, day, recorded, hours: [], tonnes: [], by: new Set<string>(), readings: [] };
    this.looks.set(key, look);
    return look;
  }

  /** The reading where it lies on the conveyor, or why it lies nowhere. */
  private placed(
    conveyor: Conveyor,
    { where, point: name, at, clock, said, day, note, error, gauge }: SheetReading,
  ): Placed | string {
    // Our own tables name a place that is no point by where it lies.
    const isPlace =
      name !== undefined && at !== undefined && clock !== undefined && /^[\d.]+ (?:m|ft) \d+:\d+$/.test(name);
    const point = name === undefined || isPlace ? undefined : pointNamed(name, conveyor, this.mapping);
    if (typeof point === 'string') return point;
    const hours = clock && clockAsSeen(clock.hours, this.mapping.view);
    if (point) {
      // Sheets round a place; further off than that it is another one.
      if (at && Math.abs(at.value - point.at.value) > 100)
        return `${point.name} lies at ${chainageOn(conveyor, point.at.value)}, and the sheet says ${at.text}`;
      if (hours !== undefined && hoursApart(hours, point.clock.hours) > 0.5)
        return `${point.name} lies at ${point.clock.text}, and the sheet says ${clock?.text ?? ''}`;
    }
    const chainage = point?.at.value ?? at?.value;
    const position = point?.clock.hours ?? hours;
    if (chainage === undefined || position === undefined) return 'no point';
    if (!point && (chainage < 0 || chainage > conveyor.length.value))
      return `${at?.text ?? ''} lies beyond ${conveyor.name}, which is ${conveyor.length.text} long`;
    const saying = this.saying(conveyor, chainage, day, said);
    if (typeof saying === 'string') return saying;
    const kind = gauges.find((one) => one === gauge?.toLowerCase());
    if (gauge !== undefined && !kind) return `"${gauge}" is none of the gauges ${list(gauges)}`;
    return {
      where,
      key: spotKey(chainage, position),
      spot: point ? { point: point.name } : { at: at ?? { text: '', value: chainage }, clock: position },
      ...saying,
      words: error ? `${saying.words} ± ${error.text}` : saying.words,
      ...(kind ? { gauge: kind } : {}),
      ...(note === undefined ? {} : { note }),
    };
  }

  private saying(
    conveyor: Conveyor,
    chainage: number,
    day: CalendarDay,
    said: SheetReading['said'],
  ): Pick<FreshReading, 'saying' | 'words'> | string {
    if (said.kind === 'thickness') {
      const { text, value } = said.measure;
      return { saying: { kind: 'thickness', value }, words: `thickness ${text}` };
    }
    const { layers } = (setLying(historyOf(this.estate, conveyor), chainage, day) ?? conveyor).liner;
    const colour = (name: string): Pick<FreshReading, 'saying' | 'words'> | undefined => {
      const at = layers.findIndex((layer) => layer.name.toLowerCase() === name.toLowerCase());
      const layer = layers[at];
      return layer && { saying: { kind: 'colour', value: at }, words: `colour ${layer.name}` };
    };
    const meaning: WordMeaning = said.kind === 'word' ? { is: 'colour', name: said.word } : said.meaning;
    const names = list(layers.map(({ name }) => name));
    switch (meaning.is) {
      case 'no reading':
      case 'blank':
        return `${said.word}: no reading`;
      case 'trough showing':
        return { saying: { kind: 'trough' }, words: 'trough showing' };
      case 'not seen':
        return {
          saying: { kind: 'not seen' },
          words: `not seen${meaning.reason ? ` ${meaning.reason}` : ''}`,
        };
      case 'layer':
        return (
          colour(layers[meaning.number - 1]?.name ?? '') ??
          `the liner there has no layer ${meaning.number}; it has ${names}`
        );
      case 'colour':
        return (
          colour(meaning.name) ??
          (said.kind === 'word'
            ? `"${said.word}" is no number, no layer of the liner there (${names}), and no word of the mapping`
            : `the liner there has no layer ${meaning.name}; it has ${names}`)
        );
    }
  }

  private inspection(look: Look): FreshInspection | undefined {
    const { conveyor, day, recorded } = look;
    const unread = this.unrecorded(look);
    if (unread.length === 0) return undefined;
    const name = `${conveyor.name} on ${formatDay(day)}`;
    const [into] = recorded;
    const passAll = (list: Passed[], why: string): undefined => {
      for (const { where } of unread) list.push({ where, why });
      return undefined;
    };
    const [hours, other] = different([...look.hours, ...this.statedMeter(look)]);
    if (hours && other)
      return passAll(
        this.conflicts,
        `two meter readings of ${name}: ${hours.measure.text} (${hours.where}) and ${other.measure.text} (${other.where})`,
      );
    const written = into?.meter.hours;
    if (hours && written && Math.abs(hours.measure.value - written.value) > 1e-6)
      return passAll(
        this.conflicts,
        `the record of ${name} has meter ${written.text}, and the sheet ${hours.measure.text}`,
      );
    if (!hours && !into)
      return passAll(
        this.skipped,
        `no meter reading of ${name}: without its hours an inspection cannot be written, and none are made up`,
      );
    const [tonnes, moreTonnes] = different(look.tonnes);
    if (tonnes && moreTonnes) return passAll(this.conflicts, `two counts of tonnes of ${name}`);
    return {
      conveyor,
      day,
      hours: hours?.measure,
      tonnes: tonnes?.measure,
      into,
      by: [...look.by],
      readings: unread,
    };
  }

  /** The mapping's meter reading is of one conveyor on one day; with more of them nobody knows of which. */
  private statedMeter({ hours, recorded }: Look): readonly MeterSaid[] {
    const { meter } = this.mapping;
    const isOnly = this.looks.size === 1 && hours.length === 0 && recorded.length === 0;
    return meter && isOnly ? [{ measure: meter, where: 'the mapping' }] : [];
  }

  /** The readings that nothing says yet; the others are counted, and those that contradict are told. */
  private unrecorded({ conveyor, day, recorded, readings }: Look): readonly Placed[] {
    const known = recordedAt(this.estate, recorded);
    const fresh = new Map<string, Placed[]>();
    for (const reading of readings) {
      const before = known.get(reading.key) ?? [];
      const against = before.find(({ saying }) => contradicts(saying, reading.saying));
      if (before.some(({ saying }) => agrees(saying, reading.saying))) this.there++;
      else if (against)
        this.conflicts.push({
          where: reading.where,
          why: `${spotName(reading)} of ${conveyor.name} on ${formatDay(day)} is recorded as ${against.words}, and the sheet says ${reading.words}`,
        });
      else fresh.set(reading.key, [...(fresh.get(reading.key) ?? []), reading]);
    }
    return [...fresh.values()].flatMap((twins) => this.agreed(twins, conveyor, day));
  }

  /** Of one spot: said twice alike counts once, said in two ways not at all. */
  private agreed(twins: readonly Placed[], conveyor: Conveyor, day: CalendarDay): readonly Placed[] {
    const kept: Placed[] = [];
    for (const one of twins) {
      const against = twins.find(({ saying }) => contradicts(saying, one.saying));
      const before = kept.find(({ saying }) => agrees(saying, one.saying));
      if (against)
        this.conflicts.push({
          where: one.where,
          why: `${spotName(one)} of ${conveyor.name} on ${formatDay(day)} is ${one.words} here and ${against.words} in ${against.where}`,
        });
      else if (before) this.skipped.push({ where: one.where, why: `says again what ${before.where} says` });
      else kept.push(one);
    }
    return kept;
  }
}

function spotName({ spot }: FreshReading): string {
  return 'point' in spot ? spot.point : `the place at ${spot.at.text}`;
}

/** The first, and the first that says something else. */
function different(said: readonly MeterSaid[]): readonly [MeterSaid?, MeterSaid?] {
  const [first] = said;
  if (!first) return [];
  const other = said.find(({ measure }) => Math.abs(measure.value - first.measure.value) > 1e-6);
  return other ? [first, other] : [first];
}

function agrees(a: Saying, b: Saying): boolean {
  if (a.kind !== b.kind) return false;
  return 'value' in a && 'value' in b ? Math.abs(a.value - b.value) < 1e-6 : true;
}

/** A colour beside a thickness is more said of the same spot; the same kind with another value, or seen and not seen, is not. */
function contradicts(a: Saying, b: Saying): boolean {
  if (a.kind === b.kind) return !agrees(a, b);
  return ['trough', 'not seen'].some((kind) => kind === a.kind || kind === b.kind);
}
