// What the records of a conveyor say beside its wear: what is open, what was found and measured, the trough, the flight, photos, what
// was borrowed, not seen, and what lay there before. One value, section by section; the page and the comment only print it, so that
// neither can have what the other leaves out.

import { recordWord, recordsOf } from '../../../domain/model/dated-records.js';
import { screwNow } from '../../../domain/model/lying-screw.js';
import { isWholeScrew } from '../../../domain/model/screw-sets.js';
import { flightSpots, type FlightSpot } from '../../../domain/model/flight-readings.js';
import { notLookedWords } from '../../../domain/conditions/not-looked.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { capital, counted } from '../../../domain/units/wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import type { ConveyorModel } from '../parts/model.js';
import type { LeastSeen } from '../parts/former-sets.js';
import type { FlightLife } from '../parts/flights.js';
import { besideTables } from './beside-liner.js';
import { conditionCells, conditionHeads } from './conditions.js';
import type { RecordHead, RecordSection } from './record-section.js';
import { depthText, dutyVariationText, measureText } from './sentences.js';
import { troughSection } from './trough.js';
import { amount, amountWithUnit, date, seenText } from './wording.js';
import { rateUntilLast } from '../parts/flights.js';
import { sizesOf, type Sizes } from '../sizes.js';

/** What stands before the wear: open things and what was measured beside the liner. */
export function sectionsBefore(life: ConveyorLife): readonly RecordSection[] {
  return [conditions(life), ...besideTables(life.beside, sizesOf(life.conveyor)).map(beside)].filter(
    hasContent,
  );
}

/** What stands after it. */
export function sectionsAfter(life: ConveyorLife): readonly RecordSection[] {
  return [
    readingPhotos(life),
    troughSection(life),
    flights(life),
    screws(life),
    borrowed(life),
    notSeen(life),
    formerSets(life),
    formerReadings(life),
    closedConditions(life),
  ].filter(hasContent);
}

function hasContent({ notes, tables, lines, photos }: RecordSection): boolean {
  return notes.length + lines.length + photos.length + tables.length > 0;
}

const empty: Omit<RecordSection, 'title'> = { notes: [], tables: [], lines: [], photos: [] };

function conditions(life: ConveyorLife): RecordSection {
  const title = 'Open conditions';
  const rows = life.conditions;
  if (rows.length === 0) return { ...empty, title };
  return {
    ...empty,
    title,
    notes: [
      'What was found and not yet put right. A condition tells nothing of the rate of wear ' +
        'unless it says that the liner was worn through.',
    ],
    tables: [
      { heads: conditionHeads, rows: rows.map(conditionCells), origins: rows.map(({ origin }) => origin) },
    ],
    photos: rows.flatMap(({ photos, what }) => photos.map((use) => ({ use, words: what }))),
  };
}

function beside({ title, note, heads, rows, found }: ReturnType<typeof besideTables>[number]): RecordSection {
  const origins = found.map(({ origin }) => origin);
  return {
    ...empty,
    title,
    notes: note === '' ? [] : [note],
    tables: [{ heads, rows, ...(origins.length === 0 ? {} : { origins }) }],
  };
}

/** Of the readings of the present liner, and of looks and work themselves, newest first. */
function readingPhotos(life: ConveyorLife): RecordSection {
  const shown = [
    ...life.points.flatMap(({ place, readings }) =>
      readings.flatMap((r) =>
        r.photo ? [{ use: r.photo, words: `${place.name} on ${formatDay(r.day)}`, day: r.day }] : [],
      ),
    ),
    ...recordsOf(life.history).flatMap((record) =>
      record.photos.map((use) => ({
        use,
        words: [`the ${recordWord(record)} of ${formatDay(record.date.day)}`, use.note]
          .filter(Boolean)
          .join(': '),
        day: record.date.day,
      })),
    ),
    ...life.beside.serviced.flatMap(({ photo, day, part, work }) =>
      photo
        ? [{ use: photo, words: [part, work, `on ${formatDay(day)}`].filter(Boolean).join(' '), day }]
        : [],
    ),
  ];
  return { ...empty, title: 'Photos of the readings', photos: shown.sort((a, b) => b.day - a.day) };
}

function flights(life: ConveyorLife): RecordSection {
  const title = 'Screw flight';
  if (life.flights.length === 0) return flightsWithoutLimit(life, title);
  const sizes = sizesOf(life.conveyor);
  const heads: RecordHead[] = [
    'Screw',
    { head: `At, ${sizes.far}`, number: true },
    `Depth read, ${sizes.near}`,
    { head: 'New', number: true },
    { head: 'Change at', number: true },
    { head: `Rate, ${sizes.rateUnit('h')}`, number: true },
    { head: 'Left by hand, h', number: true },
    'Limit by model, 80 % between',
  ];
  return { ...empty, title, tables: [{ heads, rows: life.flights.map((each) => flightCells(each, sizes)) }] };
}

function flightCells(flight: FlightLife, sizes: Sizes): readonly string[] {
  const { hand } = flight;
  const read = flight.readings.map(({ depth, diameter, day, notes }) => {
    const across = diameter === undefined ? '' : `, ${sizes.thickness(diameter)} across`;
    return `${sizes.thickness(depth)}${across} (${[formatDay(day), ...notes].join(', ')})`;
  });
  return [
    flight.screw,
    sizes.along(flight.at),
    read.join(', '),
    sizes.thickness(flight.fitted),
    sizes.thickness(flight.condemn),
    hand.kind === 'no reading' ? '–' : sizes.rate(hand.kind === 'rate' ? hand.ruling : hand.longTerm),
    hand.kind === 'rate' ? amount(hand.remaining) : hand.kind === 'at the limit' ? '0' : '–',
    depthText(flight.forecast),
  ];
}

/** Read, but no life can be told: the screw says not how deep its flight is when new, or at which depth to change it. */
function flightsWithoutLimit({ history }: ConveyorLife, title: string): RecordSection {
  const spots = flightSpots(history);
  const sizes = sizesOf(history.conveyor);
  const screw = screwNow(history);
  if (spots.length === 0) return { ...empty, title };
  const read = (spot: (typeof spots)[number], pick: 'depth' | 'diameter'): string =>
    spot.looks
      .flatMap((each) => {
        const value = each[pick]?.value;
        return value === undefined
          ? []
          : `${sizes.thickness(value)} (${[formatDay(each.day), ...each.notes].join(', ')})`;
      })
      .join(', ');
  const missing = [
    screw.flight === undefined ? '`flight`' : '',
    screw.condemnFlight === undefined ? '`condemn flight at`' : '',
  ].filter(Boolean);
  return {
    ...empty,
    title,
    notes:
      missing.length === 0
        ? []
        : [`No life is told: screw ${screw.name} has no ${missing.join(' and no ')}.`],
    tables: [
      {
        heads: [
          'Screw',
          { head: `At, ${sizes.far}`, number: true },
          `Depth read, ${sizes.near}`,
          `Outside diameter read, ${sizes.near}`,
        ],
        rows: spots.map((spot) => [
          screw.name,
          sizes.along(spot.at),
          read(spot, 'depth') || '–',
          read(spot, 'diameter') || '–',
        ]),
      },
    ],
  };
}

/** What the model took from elsewhere, what it makes of panels nobody has seen, and which readings it doubts. */
function borrowed(life: ConveyorLife): RecordSection {
  const title = 'Borrowed, doubted, assumed';
  const { model } = life;
  if (!model || model.forecast.kind === 'cannot say') return { ...empty, title };
  const lines: string[] = model.borrowed.map(
    (b) =>
      `${groupName(b.pool, b.label, life.conveyor.name)} wears ${formatNumber(b.factor, 2)} times (90 %: ` +
      `${formatNumber(b.low, 2)} to ${formatNumber(b.high, 2)}) what its group does, ` +
      `from ${counted(b.units, 'liner at a place', 'liners at places')} with records`,
  );
  lines.push(...model.unseen.map(unseenText));
  lines.push(...doubted(life));
  if (life.measure) lines.push(measureText(life.measure));
  lines.push(dutyVariationText(model));
  return { ...empty, title, lines: lines.map((line) => `${line}.`) };
}

/** What nobody has looked at has no date of its own: what the others lend is marked, and where it lies behind it only asks for a look. */
function unseenText({ run, panels, linedOn, condemn }: ConveyorModel['unseen'][number]): string {
  const since = linedOn === undefined ? '' : ` of those fitted on ${formatDay(linedOn)}`;
  const head = `Run ${run}: ${counted(panels, 'panel')}${since} never seen, 0 readings`;
  const passed = condemn.kind === 'reached' || (condemn.kind === 'life' && condemn.passed !== undefined);
  return passed
    ? `${head}. By what the others do alone ${panels === 1 ? 'it' : 'such a panel'} would be past its limit: a reason to look now, and no date`
    : `${head}. By what the others do alone such a panel would reach its limit ${depthText(condemn)}, ` +
        `80 % between${panels === 1 ? '' : '; the worst of several comes earlier'}`;
}

function doubted({ points, conveyor }: ConveyorLife): readonly string[] {
  const sizes = sizesOf(conveyor);
  const lines: string[] = [];
  for (const { place, model } of points)
    for (const stray of model?.strays ?? []) {
      const full = model?.fullWeight;
      lines.push(
        `${place.name} on ${formatDay(stray.day)}: ` +
          `${sizes.size(stray.thickness)} read where ${sizes.size(stray.expected)} was to be expected; ` +
          `it counts for ${formatNumber(stray.weight, 2)}${full ? `. At full weight the limit would be ${depthText(full)}` : ''}`,
      );
    }
  for (const { place, model } of points)
    if (model?.asDeclared)
      lines.push(
        `${place.name} reaches its limit: ${depthText(model.condemn)} if its gauge scatters as found, ` +
          `${depthText(model.asDeclared)} if the gauge is as good as declared and the wear uneven`,
      );
  return lines;
}

function notSeen(life: ConveyorLife): RecordSection {
  const lines: string[] = [];
  const panels = life.runs.flatMap((run) =>
    run.panels.filter((p) => p.state !== 'seen').map((p) => `run ${run.run.number} panel ${p.number}`),
  );
  if (panels.length > 0) lines.push(`No reading of the present liner: ${shortList(panels)}.`);
  for (const point of life.points) {
    const misses = point.readings.filter((r) => r.seen.kind === 'not seen');
    if (misses.length === 0) continue;
    const words = misses.map((r) => `${formatDay(r.day)}${r.note ? ` (${r.note})` : ''}`);
    lines.push(`${point.place.name} looked for and not seen: ${words.join(', ')}.`);
  }
  for (const point of life.points) {
    for (const { day, reason } of point.leftOut)
      lines.push(`${point.place.name}, ${formatDay(day)}: left out, ${reason}.`);
  }
  lines.push(...life.notLooked.map((each) => `${capital(notLookedWords(each))}.`));
  return { ...empty, title: 'Not seen, and left out', lines };
}

function shortList(items: readonly string[]): string {
  return items.length <= 12
    ? items.join(', ')
    : `${items.slice(0, 10).join(', ')} and ${items.length - 10} more`;
}

function formerSets(life: ConveyorLife): RecordSection {
  const title = 'Liners before these';
  if (life.former.length === 0) return { ...empty, title };
  const sizes = sizesOf(life.conveyor);
  const measured = life.former.some(({ onTheBench }) => onTheBench.length > 0);
  const rows = life.former.map(({ set, reached, least, onTheBench }) => [
    set.liner.name,
    `${sizes.joint(set.from)} to ${sizes.joint(set.to)}`,
    date(set.fitted?.day),
    date(set.removed?.day),
    reached.known ? amountWithUnit(reached.value, reached.unit) : `not known: ${reached.reason}`,
    least === undefined ? 'no thickness read' : leastWords(least, set.liner.thickness.value, sizes),
    ...(measured
      ? [onTheBench.map((each) => `${sizes.thickness(each.thickness)} at ${each.place}`).join(', ')]
      : []),
  ]);
  const heads: RecordHead[] = [
    'Liner',
    `Chainage, ${sizes.far}`,
    'Fitted',
    'Taken out',
    { head: 'Reached', number: true },
    'Least seen of it',
    ...(measured ? [`On the bench, ${sizes.near}`] : []),
  ];
  return { ...empty, title, tables: [{ heads, rows }] };
}

function leastWords({ thickness: left, place, day }: LeastSeen, fitted: number, sizes: Sizes): string {
  const what = left === 0 ? 'steel showed' : `${sizes.size(left)} of ${sizes.size(fitted)}`;
  return `${what} at ${place} on ${formatDay(day)}`;
}

/** Where more than one turned there: what was read of the flight of each that came out. */
function screws({ history, conveyor }: ConveyorLife): RecordSection {
  const title = 'Screws so far';
  const sets = history.screwSets;
  if (sets.length < 2) return { ...empty, title };
  const sizes = sizesOf(conveyor);
  const rows = sets.map((set) => {
    const [from, to] = [set.fitted?.hours, set.removed?.hours];
    const read = set.removed === undefined ? [] : flightSpots(history, set);
    return [
      isWholeScrew(set, conveyor)
        ? set.screw.name
        : `${set.screw.name}, ${sizes.along(set.from)} to ${sizes.along(set.to)} ${sizes.far}`,
      date(set.fitted?.day),
      date(set.removed?.day),
      from === undefined || to === undefined ? '–' : amount(to - from),
      read
        .map((spot) => `at ${sizes.along(spot.at)} ${sizes.far}: ${formerWords(history, spot, sizes)}`)
        .join('; ') || (set.removed === undefined ? 'turns there now' : 'not read'),
    ];
  });
  const heads: RecordHead[] = [
    'Screw',
    { head: 'Fitted', class: 'day' },
    { head: 'Taken out', class: 'day' },
    { head: 'Ran, h', number: true },
    `Flight read, ${sizes.near}`,
  ];
  return { ...empty, title, tables: [{ heads, rows: [...rows].reverse() }] };
}

/** With how fast it wore until its last reading: what the next one is likely to do. */
function formerWords(history: ConveyorLife['history'], spot: FlightSpot, sizes: Sizes): string {
  const rate = rateUntilLast(history, spot);
  const wore = rate === undefined ? '' : `, ${sizes.rate(rate)} ${sizes.rateUnit('h')}`;
  return `${spotWords(spot, sizes)}${wore}`;
}

function spotWords({ looks }: FlightSpot, sizes: Sizes): string {
  return looks
    .map(({ depth, diameter, day, notes }) => {
      const read = [
        depth === undefined ? '' : sizes.thickness(depth.value),
        diameter === undefined ? '' : `${sizes.thickness(diameter.value)} across`,
      ].filter(Boolean);
      return `${read.join(', ')} (${[formatDay(day), ...notes].join(', ')})`;
    })
    .join(', ');
}

function formerReadings(life: ConveyorLife): RecordSection {
  const title = 'What was read of the liners before';
  const sizes = sizesOf(life.conveyor);
  const rows = life.points.flatMap(({ place, former }) =>
    [...new Map(former.map((each) => [each.until?.day, each])).values()].map(({ liner, until }) => [
      place.name,
      // Two liners of one make that lay there one after the other are told apart by when they went.
      `${liner}${until ? `, ${until.reline.moved ? 'moved' : 'out'} ${formatDay(until.day)}` : ''}`,
      former
        .filter((each) => each.until?.day === until?.day)
        .map(({ day, seen }) => `${seenText(seen, sizes)} (${formatDay(day)})`)
        .join(', '),
    ]),
  );
  const photos = life.points.flatMap(({ place, former }) =>
    former.flatMap(({ photo, day }) =>
      photo ? [{ use: photo, words: `${place.name} on ${formatDay(day)}` }] : [],
    ),
  );
  return rows.length === 0
    ? { ...empty, title }
    : { ...empty, title, tables: [{ heads: ['Point', 'Liner', 'Read'], rows }], photos };
}

const mostClosed = 20;

function closedConditions({ closed }: ConveyorLife): RecordSection {
  const title = 'Conditions that are over';
  if (closed.length === 0) return { ...empty, title };
  const shown = closed.slice(0, mostClosed);
  return {
    ...empty,
    title,
    notes:
      closed.length > mostClosed
        ? [`The newest ${mostClosed} of ${closed.length}; the others stand in the records.`]
        : [],
    tables: [
      {
        heads: ['What', 'Where', { head: 'Since', class: 'day' }, 'Ended', 'Notes'],
        rows: shown.map(({ what, place, since, how, notes }) => [
          what,
          place,
          formatDay(since),
          how,
          notes.join('; '),
        ]),
      },
    ],
    photos: shown.flatMap(({ photos, what }) => photos.map((use) => ({ use, words: what }))),
  };
}

function groupName(pool: string, label: string, conveyor: string): string {
  switch (pool) {
    case 'conveyor':
      return 'This conveyor';
    case 'liner':
      return `Liner ${label}`;
    case 'sector':
      return `The sector at ${label}`;
    case 'duty':
      return `What carries ${label}`;
    default:
      return capital(label.replace(`${conveyor} `, ''));
  }
}
