// The shape of the tables as JSON, as JSON Schema (draft 2020-12): printed by `troughline schema tables` and shipped in dist/schemas.
// It is made of the definitions of the columns, so that it says what is printed.

import type { ColumnType } from '../remaining-life/columns.js';
import { tablesFormatVersion } from './json.js';
import type { EstateTable, TableColumn } from './table.js';
import { tableKinds } from './tables.js';

type Schema = { readonly [key: string]: unknown };

const kinds: Readonly<Record<ColumnType, Schema & { readonly name: string }>> = {
  text: { name: 'string' },
  day: { name: 'string', format: 'date' },
  number: { name: 'number' },
  whole: { name: 'integer' },
  'yes or no': { name: 'boolean' },
};

export const tablesSchema: Schema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Tables of an estate',
  description:
    'One file a table. Chances run from 0 to 1; thicknesses in mm, chainages in m, days in ISO 8601, money in the currency ' +
    'named beside it. Missing is null, never zero.',
  oneOf: tableKinds.map(({ name }) => ({ $ref: `#/$defs/${name}` })),
  $defs: Object.fromEntries(tableKinds.map((kind) => [kind.name, schemaOf(kind)])),
};

function schemaOf({ name, about, columns }: Omit<EstateTable, 'rows'>): Schema {
  return closed({
    formatVersion: { const: tablesFormatVersion },
    kind: { const: 'table' },
    table: { const: name },
    asOf: { type: ['string', 'null'], format: 'date' },
    rows: {
      type: 'array',
      description: `A row is ${about}.`,
      items: closed(Object.fromEntries(columns.map((column) => [column.name, cellSchema(column)]))),
    },
  });
}

/** Every field is there, and no other. */
function closed(properties: Schema): Schema {
  return { type: 'object', properties, required: Object.keys(properties), additionalProperties: false };
}

function cellSchema({ type, about, always }: TableColumn): Schema {
  const { name, ...more } = kinds[type];
  return { description: about, type: always ? name : [name, 'null'], ...more };
}
