// The shape of the change summary's data, as JSON Schema (draft 2020-12): printed by `troughline schema diff`.

import { blockKinds } from '../../domain/model/ledger.js';
import { changeSummaryFormatVersion } from './json.js';

type Schema = { readonly [key: string]: unknown };

const text: Schema = { type: 'string' };
const texts: Schema = { type: 'array', items: text };
const flag: Schema = { type: 'boolean' };
const maybeText: Schema = { type: ['string', 'null'] };
const dayPattern = String.raw`^\d{4}-\d{2}-\d{2}$`;
const maybeDay: Schema = { type: ['string', 'null'], pattern: dayPattern };
const chance: Schema = { type: 'number', minimum: 0, maximum: 1 };
const whole: Schema = { type: 'integer', minimum: 0 };
const place = { file: maybeText, line: { type: ['integer', 'null'], minimum: 1 } };
const kind: Schema = { enum: blockKinds };

/** Every field is there, and no other. */
function closed(properties: Schema): Schema {
  return { type: 'object', properties, required: Object.keys(properties), additionalProperties: false };
}

function list(items: Schema): Schema {
  return { type: 'array', items };
}

function orNull(schema: Schema): Schema {
  return { anyOf: [schema, { type: 'null' }] };
}

const pair = orNull(closed({ before: chance, after: chance }));
const row = closed({
  level: text,
  todo: text,
  orderBy: maybeDay,
  orderIsLate: { type: ['boolean', 'null'] },
  lookBy: maybeDay,
  limit: orNull(closed({ q10: maybeDay, q50: maybeDay, q90: maybeDay })),
  passed: maybeText,
  readings: whole,
});
const moved = {
  told: list(
    closed({
      conveyor: text,
      beyondThreshold: flag,
      because: orNull(texts),
      by: maybeText,
      action: flag,
      crossed: list({ enum: ['limit', 'steel'] }),
      condemn: pair,
      contact: pair,
      before: row,
      after: row,
      words: text,
    }),
  ),
  rest: closed({ count: whole, chance, days: whole }),
};
const facts = list(closed({ kind, name: text, fact: text, before: maybeText, after: maybeText, ...place }));
const named = list(closed({ kind, name: text }));
const found = list(
  closed({ code: text, severity: { enum: ['error', 'warning', 'information'] }, message: text, ...place }),
);

export const changeSummarySchema: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Change of an estate',
  description:
    'What a change of the records means. Chances run from 0 to 1 and count panels that nobody has seen in; days in ISO 8601. Missing is null.',
  ...closed({
    formatVersion: { const: changeSummaryFormatVersion },
    kind: { const: 'change summary' },
    before: text,
    after: text,
    asOf: maybeDay,
    same: flag,
    headline: text,
    threshold: closed({ chance: { type: 'number', minimum: 0 }, days: { type: 'number', minimum: 0 } }),
    history: list(
      closed({
        kind: { enum: ['record changed', 'record removed', 'record put in', 'described anew'] },
        conveyors: texts,
        where: text,
        before: maybeText,
        after: maybeText,
        reach: text,
        counts: flag,
        words: text,
        ...place,
      }),
    ),
    records: list(
      closed({ kind, conveyor: text, day: maybeDay, readings: whole, late: flag, words: text, ...place }),
    ),
    beside: list(closed({ conveyor: text, changes: texts })),
    forecasts: closed(moved),
    rewritten: orNull(closed(moved)),
    calendar: orNull(
      closed({
        from: { type: 'string', pattern: dayPattern },
        to: { type: 'string', pattern: dayPattern },
        ...moved,
      }),
    ),
    machine: facts,
    effects: list(closed({ on: text, before: maybeText, after: maybeText })),
    settings: facts,
    come: named,
    gone: named,
    renames: list(closed({ what: text, from: text, to: text, within: maybeText })),
    moves: list(closed({ from: text, to: text, blocks: texts })),
    findings: closed({ come: found, gone: found }),
    unread: texts,
    remarks: texts,
  }),
};
