// How `schema` is written and what its help says. What it does stands in commands/schema.ts, loaded only when it is called.

import { Argument, type Command } from 'commander';
import type { SchemaName } from '../commands/schema.js';
import type { Invocation } from './invocation.js';

export function addSchema(program: Command, { console, finish }: Invocation): void {
  program
    .command('schema')
    .summary('the shape of the data that a command writes, as JSON Schema')
    .addArgument(new Argument('<name>', 'which data').choices(['report', 'diff', 'tables']))
    .addHelpText('after', '\nExamples:\n  troughline schema report > report.schema.json')
    .action(async (name: SchemaName) => {
      const { schema } = await import('../commands/schema.js');
      finish(schema(name, console));
    });
}
