// `troughline schema`: the shape of the data that a command writes, for whoever reads it.

import { changeSummarySchema } from '../../generators/change-summary/json-schema.js';
import { tablesSchema } from '../../generators/tables/json-schema.js';
import { reportSchema } from '../../generators/remaining-life/json-schema.js';
import { Exit, type Console } from '../console.js';

const schemas = { report: reportSchema, diff: changeSummarySchema, tables: tablesSchema } as const;

export type SchemaName = keyof typeof schemas;

export function schema(name: SchemaName, console: Console): number {
  console.out(`${JSON.stringify(schemas[name], null, 2)}\n`);
  return Exit.clean;
}
