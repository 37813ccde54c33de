// The shape of the report's data, as JSON Schema (draft 2020-12), for whoever reads it: printed by `troughline schema report` and
// shipped in dist/schemas. What the table of decisions holds is described to the last field; a field more elsewhere is no change
// of meaning, so other objects stay open.

import { blockKinds } from '../../domain/model/ledger.js';
import { optionKinds } from '../../domain/decision/option.js';
import { remainingLifeFormatVersion } from './json.js';
import { attentionLevels } from './parts/conveyor-life.js';

type Schema = { readonly [key: string]: unknown };

const text: Schema = { type: 'string' };
const flag: Schema = { type: 'boolean' };
const texts: Schema = { type: 'array', items: text };
const amount: Schema = { type: ['number', 'null'] };
const whole: Schema = { type: 'integer', minimum: 0 };
const maybeText: Schema = { type: ['string', 'null'] };
const dayPattern = String.raw`^\d{4}-\d{2}-\d{2}$`;
const date: Schema = { type: 'string', pattern: dayPattern };
const maybeDay: Schema = { type: ['string', 'null'], pattern: dayPattern };
const chance: Schema = { type: 'number', minimum: 0, maximum: 1 };
const maybeChance: Schema = { type: ['number', 'null'], minimum: 0, maximum: 1 };

/** Every field is there, and no other. */
function closed(properties: Schema): Schema {
  return { type: 'object', properties, required: Object.keys(properties), additionalProperties: false };
}

function orNull(schema: Schema): Schema {
  return { anyOf: [schema, { type: 'null' }] };
}

function list(items: Schema): Schema {
  return { type: 'array', items };
}

const twoChances = {
  condemn: chance,
  contact: chance,
  condemnSeen: maybeChance,
  contactSeen: maybeChance,
} as const;

const earliest = orNull(closed({ day: date, scope: text, why: text, ...twoChances }));

const stays = orNull(
  closed({ until: date, outage: maybeText, first: maybeText, keeps: flag, ...twoChances }),
);

const option = closed({
  kind: { enum: optionKinds },
  what: text,
  day: maybeDay,
  outage: maybeText,
  condemn: maybeChance,
  contact: maybeChance,
  condemnSeen: maybeChance,
  contactSeen: maybeChance,
  stays,
  within: flag,
  obstacle: maybeText,
  cost: amount,
  expected: amount,
  expectedSeen: amount,
  reassures: maybeChance,
  dutyShare: maybeChance,
  needs: texts,
  working: texts,
});

const decision = closed({
  panels: whole,
  panelsSeen: whole,
  governing: orNull(closed({ place: text, run: whole, panel: whole, from: amount, to: amount })),
  accepted: closed({ condemn: chance, contact: chance, contactAssumed: flag }),
  passed: orNull(closed({ day: date, by: { enum: ['condemn limit', 'steel'] } })),
  passedSeen: maybeDay,
  today: closed(twoChances),
  outages: list(
    closed({
      outage: text,
      from: date,
      to: date,
      chosen: flag,
      ...twoChances,
      within: flag,
      arrives: maybeDay,
      reachable: flag,
      orderBy: date,
      orderIsLate: flag,
    }),
  ),
  earliest,
  earliestPart: earliest,
  orderBy: orNull(closed({ day: date, now: flag, late: flag, outage: maybeText, latest: maybeDay })),
  orderWords: maybeText,
  leadTimeDays: { type: ['integer', 'null'], minimum: 0 },
  currency: maybeText,
  horizon: date,
  scopes: list(
    closed({
      scope: text,
      whole: flag,
      panels: whole,
      metres: amount,
      buildable: flag,
      obstacles: texts,
      personHours: amount,
      hours: amount,
    }),
  ),
  lastsNot: texts,
  lastsUntil: maybeDay,
  goesBy: { enum: ['all panels', 'what was seen'] },
  plan: { enum: ['nothing due', 'reline', 'look', 'no outage in time'] },
  ruledOut: orNull(closed({ why: texts, remedies: texts })),
  options: list(option),
  jobs: list(
    closed({
      job: text,
      outage: maybeText,
      from: maybeDay,
      covers: { type: ['boolean', 'null'] },
      arrives: maybeDay,
      inTime: { type: ['boolean', 'null'] },
      words: text,
    }),
  ),
});

const conveyor: Schema = {
  type: 'object',
  properties: {
    conveyor: text,
    title: maybeText,
    plant: text,
    rank: { type: 'integer', minimum: 1 },
    level: { enum: attentionLevels },
    todo: text,
    reasons: texts,
    exposureUnit: { enum: ['h', 't'] },
    hours: amount,
    tonnes: amount,
    limitPassed: orNull(
      closed({
        by: { enum: ['seen', 'reckoned'] },
        chance: { type: 'number', minimum: 0.5, maximum: 1 },
        from: maybeDay,
        to: date,
      }),
    ),
    hangsOn: orNull(closed({ point: text, day: date, thickness: amount, chance: amount, without: amount })),
    decision: orNull(decision),
    points: list({
      type: 'object',
      required: ['point', 'chainage', 'clock', 'state', 'leftFrom', 'readings'],
    }),
    runs: list({ type: 'object', required: ['run', 'from', 'to', 'panels'] }),
    safeguards: list(closed({ what: text, lastTried: maybeDay, tried: text, open: text, note: text })),
    serviced: list(
      closed({
        day: date,
        part: text,
        work: text,
        putRight: texts,
        by: maybeText,
        note: maybeText,
        photo: maybeText,
      }),
    ),
    panelsMoved: list(closed({ day: date, what: text, countsFrom: text, by: maybeText, note: maybeText })),
    corrections: list(
      closed({
        point: text,
        read: date,
        written: text,
        countsAs: text,
        corrected: date,
        by: maybeText,
        why: maybeText,
      }),
    ),
    findings: list(closed({ day: date, part: maybeText, at: amount, spot: maybeText, text })),
    holdDownGaps: list(
      closed({
        name: maybeText,
        at: amount,
        read: list(closed({ day: date, gap: amount, note: maybeText })),
      }),
    ),
    motorCurrents: list(closed({ day: date, empty: amount, loaded: amount, note: maybeText })),
    wornWidths: list(
      closed({
        at: amount,
        read: list(closed({ day: date, from: text, to: text, note: maybeText })),
      }),
    ),
    drive: list(
      closed({
        part: text,
        of: text,
        read: list(closed({ day: date, temperature: amount, told: text, note: maybeText })),
      }),
    ),
    flightReadings: list(
      closed({
        at: amount,
        read: list(closed({ day: date, depth: amount, diameter: amount, notes: texts })),
      }),
    ),
    gauges: list(closed({ day: date, kind: text, error: amount })),
    photos: list(closed({ day: date, path: text, note: maybeText })),
    notLooked: list(closed({ what: text, from: amount, to: amount, on: date, why: maybeText })),
    looksAsked: list(
      closed({ by: maybeDay, after: maybeText, asked: date, askedBy: maybeText, note: maybeText }),
    ),
    conditions: list(
      closed({
        what: text,
        place: text,
        at: amount,
        clock: maybeText,
        severity: { enum: ['slight', 'serious', 'urgent', null] },
        since: date,
        lastSeen: date,
        unanswered: maybeDay,
        notes: texts,
        photos: texts,
        safeguardOut: flag,
      }),
    ),
  },
  required: [
    'conveyor',
    'plant',
    'rank',
    'level',
    'todo',
    'reasons',
    'exposureUnit',
    'limitPassed',
    'hangsOn',
    'decision',
    'points',
    'runs',
  ],
};

const programme: Schema = {
  anyOf: [
    closed({ kind: { const: 'none' }, why: text }),
    closed({
      kind: { const: 'programme' },
      plant: text,
      currency: maybeText,
      expected: amount,
      expectedAlone: amount,
      missingCosts: texts,
      aloneFits: flag,
      gap: amount,
      breachesOverLeast: amount,
      lines: list(
        closed({
          conveyor: text,
          choice: { enum: ['reline', 'nothing', 'left out'] },
          outage: maybeText,
          scope: maybeText,
          crews: texts,
          hours: amount,
          personHours: amount,
          condemnSeen: maybeChance,
          contactSeen: maybeChance,
          stays,
          within: flag,
          orderBy: maybeDay,
          cost: amount,
          expected: amount,
          reason: maybeText,
        }),
      ),
      outages: list(
        closed({
          outage: text,
          from: date,
          to: date,
          hours: amount,
          crews: list(closed({ crew: text, used: amount, free: amount })),
          platforms: whole,
          platformHoursUsed: amount,
          aloneLoad: amount,
          jobs: list(closed({ conveyor: text, crews: texts, fromHour: amount, toHour: amount })),
        }),
      ),
      months: list(closed({ month: text, money: amount, relines: texts, orders: texts })),
      savings: list(closed({ what: text, saves: amount, helps: texts, about: flag })),
    }),
  ],
};

export const reportSchema: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Remaining life of liners',
  description:
    'Chances run from 0 to 1 and count panels that nobody has seen in; ' +
    'fields that end in Seen are of what was seen alone. ' +
    'Lengths in mm, days in ISO 8601, money in the currency named beside it. Missing is null.',
  type: 'object',
  properties: {
    formatVersion: { const: remainingLifeFormatVersion },
    kind: { const: 'remaining life' },
    asOf: maybeDay,
    notice: text,
    units: { type: 'object' },
    counts: { type: 'object' },
    fits: list({ type: 'object' }),
    unread: maybeText,
    trackRecord: list({ type: 'object' }),
    conveyors: list(conveyor),
    programmes: orNull(list(programme)),
    records: list(
      closed({
        kind: { enum: blockKinds },
        block: text,
        name: text,
        day: maybeDay,
        facts: list({
          type: 'object',
          properties: { fact: text, words: text, reading: { const: true } },
          required: ['fact', 'words'],
          additionalProperties: false,
        }),
      }),
    ),
  },
  required: ['formatVersion', 'kind', 'asOf', 'notice', 'units', 'counts', 'conveyors'],
};
