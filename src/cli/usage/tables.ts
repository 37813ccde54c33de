// How `tables` is written and what its help says. What it does stands in commands/tables.ts, loaded only when it is called.

import { Option, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { TablesOptions } from '../commands/tables.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paths } from './shared-options.js';

export function addTables(program: Command, { console, finish }: Invocation): void {
  program
    .command('tables')
    .summary('what the estate says, as tables for other programs')
    .description(
      'Write tables to be asked with SQL or opened in a spreadsheet: conveyors, points, readings, decisions (every way ' +
        'out), outages, orders, findings, jobs and steps, each with plant, conveyor and names to join by. Every ' +
        'prediction stands beside its interval and the count of readings behind it; missing is empty or NULL, never zero.',
    )
    .argument(...paths)
    .addOption(asOfOption())
    .requiredOption('-o, --out <folder>', 'the folder that holds the tables; several estates may share it')
    .option(
      '-f, --format <name>',
      'parquet (TABLE/plant=NAME/month=YYYY-MM/TABLE.parquet), csv (TABLE.csv) or json (TABLE.json, a row a line); ' +
        'may be given several times (default: parquet)',
      collect,
      [],
    )
    .addOption(
      new Option('--fail-on <what>', 'end with 1 on errors in the estate, or never')
        .choices(['error', 'never'])
        .default('error'),
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline tables plant/ --as-of 2026-10-31 --out fleet/\n' +
        '  troughline tables other-plant/ --as-of 2026-10-31 --out fleet/\n' +
        '  troughline tables plant/ --out tables/ --format csv --format json\n\n' +
        'A month that is written again replaces itself, other months and plants stay. `troughline schema tables` prints ' +
        'the JSON Schema of the tables; examples/9-fleet asks them with SQL. The same files and the same --as-of give ' +
        'the same bytes. In CI --as-of is required.',
    )
    .action(async (given: string[], options: Omit<TablesOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { tables } = await import('../commands/tables.js');
      finish(await tables(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });
}
