// `troughline schema`: the shape of the report's data, for whoever reads it.

import { reportSchema } from '../../generators/remaining-life/json-schema.js';
import { Exit, type Console } from '../console.js';

export function schema(console: Console): number {
  console.out(`${JSON.stringify(reportSchema, null, 2)}\n`);
  return Exit.clean;
}
