// How `month` is written and what its help says. What it does stands in commands/month.ts, loaded only when it is called.

import { InvalidArgumentError, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { MonthOptions } from '../commands/month.js';
import type { Invocation } from './invocation.js';
import { asOfOption, epochDay, paperOption, paths } from './shared-options.js';

export function addMonth(program: Command, { console, finish }: Invocation): void {
  program
    .command('month')
    .summary("the month's set of papers, and the index of months")
    .description(
      "Write the month's set into a folder named after it: report, both tables, what changed since the last set and " +
        'why, packs and crew sheets of the jobs ahead, sheets of the looks that are due, the list of liners to order, ' +
        'a calendar, and a message for the commit. Sets that lie there already are read back: what was published then ' +
        'is held against what was read since.',
    )
    .argument(...paths)
    .addOption(asOfOption())
    .requiredOption('-o, --out <folder>', 'the folder that holds the months')
    .option('--sheets-within <days>', 'sheets for looks that are due within so many days', days, 45)
    .addOption(paperOption())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline month plant/ --as-of 2026-10-31 --out months/\n' +
        '  git add months && git commit -F months/2026-10/message.txt\n\n' +
        'months/index.html and months/README.md compare all months. The same records give the same bytes.',
    )
    .action(async (given: string[], options: Omit<MonthOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { month } = await import('../commands/month.js');
      finish(await month(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });
}

function days(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isInteger(value) || value < 0)
    throw new InvalidArgumentError('a number of whole days from 0 is expected.');
  return value;
}
