// Corrected readings, findings, hold-down gaps, motor currents and speeds on a conveyor's page: the same rows in HTML and Markdown.

import { knownOfSafeguard } from '../../../domain/conditions/safeguards-declared.js';
import type { DriveRead, DriveReadings } from '../../../domain/conditions/drive-readings.js';
import { formatClock } from '../../../domain/units/clock.js';
import { formatNumber } from '../../../domain/units/format.js';
import { counted } from '../../../domain/units/wording.js';
import { temperatureWords } from '../../../domain/units/length-words.js';
import type { BesideLiner } from '../parts/beside-liner.js';
import type { Origin } from '../../../domain/model/origin.js';
import { date } from './wording.js';
import type { Sizes } from '../sizes.js';

/** Older ones stand in the records; the page says how many. */
const mostFindings = 12;
const mostRounds = 4;

export interface BesideTable {
  readonly title: string;
  readonly note: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Of each row, where one line of the records stands behind it. */
  readonly found: readonly { readonly origin: Origin }[];
}

export function besideTables(beside: BesideLiner, sizes: Sizes): readonly BesideTable[] {
  const { findings, gaps, currents, speeds, worn, drive } = beside;
  const shown = findings.slice(0, mostFindings);
  return [
    ...safeguardTables(beside),
    ...settledTables(beside),
    {
      title: 'Findings',
      note: older(findings.length, mostFindings),
      heads: ['Date', 'Part', `At, ${sizes.far}`, 'Found'],
      rows: shown.map(({ day, part, at, spot, text }) => [
        date(day),
        part ?? '',
        [at === undefined ? '' : sizes.along(at), spot].filter(Boolean).join(', '),
        text,
      ]),
      found: shown,
    },
    {
      title: `Gaps of hold-downs, ${sizes.near}`,
      note: '',
      heads: ['Hold-down', `At, ${sizes.far}`, 'Newest', 'Before', 'Since the one before'],
      rows: gaps.map(({ name, at, read }) => {
        const [newest, before] = read;
        const change = newest && before ? newest.gap - before.gap : undefined;
        return [
          name ?? '',
          sizes.along(at),
          newest
            ? [`${sizes.thickness(newest.gap)} on ${date(newest.day)}`, newest.note]
                .filter(Boolean)
                .join(', ')
            : '',
          read
            .slice(1, mostRounds)
            .map(({ gap, day }) => `${sizes.thickness(gap)} on ${date(day)}`)
            .join('; '),
          change === undefined ? '' : `${change > 0 ? '+' : ''}${sizes.thickness(change)}`,
        ];
      }),
      found: [],
    },
    {
      title: 'Motor current, A',
      note: older(currents.length, 2 * mostRounds),
      heads: ['Date', 'Empty', 'Loaded', 'Note'],
      rows: currents
        .slice(0, 2 * mostRounds)
        .map(({ day, empty, loaded, note }) => [date(day), tenth(empty), tenth(loaded), note ?? '']),
      found: [],
    },
    {
      title: 'Speed of the screw, rpm',
      note: older(speeds.length, 2 * mostRounds),
      heads: ['Date', 'Counted', 'Recorded', 'Note'],
      rows: speeds
        .slice(0, 2 * mostRounds)
        .map(({ day, speed, recorded, note }) => [date(day), tenth(speed), tenth(recorded), note ?? '']),
      found: [],
    },
    wornTable(worn, sizes),
    driveTable(drive, sizes),
  ].filter(({ rows }) => rows.length > 0);
}

function wornTable(worn: BesideLiner['worn'], sizes: Sizes): BesideTable {
  return {
    title: 'Worn strip, by the clock',
    note: '',
    heads: [`At, ${sizes.far}`, 'Newest', 'Before'],
    rows: worn.map(({ at, read }) => {
      const words = read.map(({ day, from, to, note }) =>
        [`${formatClock(from)} to ${formatClock(to)} on ${date(day)}`, note].filter(Boolean).join(', '),
      );
      return [sizes.along(at), words[0] ?? '', words.slice(1, mostRounds).join('; ')];
    }),
    found: [],
  };
}

function driveTable(drive: BesideLiner['drive'], sizes: Sizes): BesideTable {
  return {
    title: 'Bearings and gearbox',
    note: drive.some(({ of }) => of === 'temperature')
      ? 'The temperature of a housing goes with load and weather too: compare looks of a like day.'
      : '',
    heads: ['Part', 'Of it', 'Newest', 'Before', 'Trend'],
    rows: drive.map((each) => [
      each.part,
      each.of,
      ...[each.read.slice(0, 1), each.read.slice(1, mostRounds)].map((some) =>
        some.map((read) => driveText(read, sizes)).join('; '),
      ),
      trendText(each, sizes),
    ]),
    found: [],
  };
}

/** `71 °C on 2024-04-08`, `serious on 2024-04-08, grinding`. */
function driveText({ day, temperature, told, note, by }: DriveRead, sizes: Sizes): string {
  const done = by === 'look' ? told : `${told} (${by})`;
  const what = temperature === undefined ? done : temperatureWords(temperature, sizes.near);
  return [`${what} on ${date(day)}`, note].filter(Boolean).join(', ');
}

/** Against the look before and the first, with how many looks it rests on. */
function trendText({ read }: DriveReadings, sizes: Sizes): string {
  const [newest, before] = read;
  const first = read.at(-1);
  const count = counted(sinceMended(read).filter(({ by }) => by === 'look').length, 'look');
  if (!newest || !before || !first) return count;
  if (newest.temperature === undefined || before.temperature === undefined || first.temperature === undefined)
    return `${toldAgainst(newest.told, before.told)}; ${count}`;
  const change = (from: number): string => {
    const by = (newest.temperature ?? 0) - from;
    const [shown, unit] = sizes.near === 'mm' ? [by, 'K'] : [by * 1.8, '°F'];
    return `${by > 0 ? '+' : ''}${formatNumber(shown, 1)} ${unit}`;
  };
  return [
    `${change(before.temperature)} since the one before`,
    read.length > 2 ? `${change(first.temperature)} since ${date(first.day)}` : '',
    count,
  ]
    .filter(Boolean)
    .join('; ');
}

/** What was told since it was last put right: a new part has no looks of the old one. */
function sinceMended(read: readonly DriveRead[]): readonly DriveRead[] {
  const mended = read.findIndex(({ told }, i) => i > 0 && told === 'put right');
  return mended < 0 ? read : read.slice(0, mended);
}

const badness = ['slight', 'serious', 'urgent'] as const;

/** Two can be held against each other only where both looks said how bad it was. */
function toldAgainst(now: DriveRead['told'], before: DriveRead['told']): string {
  if (now === 'put right') return 'put right';
  if (before === 'put right') return 'back after it was put right';
  if (now === 'noted' || before === 'noted') return 'how bad is not said each time';
  const worse = badness.indexOf(now) - badness.indexOf(before);
  return worse > 0 ? 'worse' : worse < 0 ? 'better' : 'as before';
}

/** What was put right since: readings, panels, the drive. */
function settledTables({ corrections, moved, serviced }: BesideLiner): readonly BesideTable[] {
  const work = serviced.filter(({ isTrial }) => !isTrial);
  return [
    {
      title: 'Readings corrected later',
      note: 'The lines stay in the records as they were written; only what they say now counts.',
      heads: ['Point', 'Read on', 'Written', 'Counts as', 'Corrected', 'By', 'Why'],
      rows: corrections.map(({ place, read, was, now, day, by, why }) => [
        place,
        date(read),
        was,
        now,
        date(day),
        by ?? 'not said',
        why ?? 'not said',
      ]),
      found: corrections,
    },
    {
      title: 'Panels turned or exchanged',
      note: '',
      heads: ['Date', 'Panel', 'Its wear counts from', 'By', 'Note'],
      rows: moved.map(({ day, what, counts, by, note }) => [date(day), what, counts, by ?? '', note ?? '']),
      found: moved,
    },
    {
      title: 'Work done',
      note: older(work.length, 2 * mostRounds),
      heads: ['Date', 'Part', 'Done', 'Put right', 'By', 'Note'],
      rows: work
        .slice(0, 2 * mostRounds)
        .map(({ day, part, work, ended, by, note }) => [
          date(day),
          part,
          work,
          ended.join('; '),
          by ?? '',
          note ?? '',
        ]),
      found: work.slice(0, 2 * mostRounds),
    },
  ];
}

/** Those declared with what is known of each, and every trial, of which the newest stand here. */
function safeguardTables({ safeguards, serviced }: BesideLiner): readonly BesideTable[] {
  const trials = serviced.filter(({ isTrial }) => isTrial);
  return [
    {
      title: 'Safeguards declared',
      note: 'As the records have it. Whether one is good enough, and how often it is tried, is for competent people.',
      heads: ['Safeguard', 'Last tried', 'Known of it'],
      rows: safeguards.map((each) => [
        each.what,
        each.lastTried === undefined ? 'not on record' : date(each.lastTried),
        knownOfSafeguard(each),
      ]),
      found: safeguards,
    },
    {
      title: 'Trials of safeguards',
      note: older(trials.length, mostFindings),
      heads: ['Date', 'Safeguard', 'Result', 'By', 'Note'],
      rows: trials
        .slice(0, mostFindings)
        .map(({ day, part, work, by, note }) => [date(day), part, work, by ?? '', note ?? '']),
      found: trials.slice(0, mostFindings),
    },
  ];
}

/** Where a table holds only the newest. */
function older(all: number, most: number): string {
  return all > most ? `The newest ${most} of ${all}; the others stand in the records.` : '';
}

function tenth(value: number | undefined): string {
  return value === undefined ? '' : formatNumber(value, 1);
}
