// How `programme` is written and what its help says. What it does stands in commands/programme.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { ProgrammeOptions } from '../commands/programme.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paths } from './shared-options.js';

export function addProgramme(program: Command, { console, finish }: Invocation): void {
  program
    .command('programme')
    .summary('which conveyor at which outage')
    .description(
      'Choose scope, outage and crews of every reline over all outages, so that crew hours, platforms, ' +
        'lead times, stock and accepted risks hold at the least expected cost. ' +
        'What cannot be kept is named with its reason.',
    )
    .argument(...paths)
    .addOption(asOfOption())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option('-f, --format <name>', 'markdown, json, csv or ics; may be given several times', collect, [])
    .addHelpText('after', '\nExamples:\n  troughline programme examples/4-tarnholt --as-of 2026-10-31')
    .action(async (given: string[], options: Omit<ProgrammeOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { programme } = await import('../commands/programme.js');
      finish(await programme(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });
}
