// How `sheet` is written and what its help says. What it does stands in commands/sheet.ts, loaded only when it is called.

import { Option, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { SheetCommandOptions } from '../commands/sheet.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paperOption, paths } from './shared-options.js';

export function addSheet(program: Command, { console, finish }: Invocation): void {
  program
    .command('sheet')
    .summary('inspection sheet of a conveyor')
    .description(
      'Print where to look, from which end, what was read last and what to expect; ' +
        'or a page for a phone that works without a network and gives back an inspection block.',
    )
    .argument(
      '<conveyor>',
      'name of the conveyor, "all", or "round" (round2, …) for the looks that the report says go together',
    )
    .argument(...paths)
    .addOption(asOfOption())
    .option('-o, --out <folder>', 'write the files here; without it the first format goes to standard output')
    .option(
      '-f, --format <name>',
      'html, phone or pdf; may be given several times (default: html)',
      collect,
      [],
    )
    .addOption(
      new Option(
        '--look <way>',
        'downstream (the material moves away from the inspector) or upstream; clock positions follow. ' +
          'On the phone page it may be chosen anew (default: as the last inspection looked)',
      ).choices(['downstream', 'upstream']),
    )
    .addOption(paperOption())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline sheet DG1 examples/4-tarnholt --out sheets/ --format html --format phone\n  troughline sheet DG1 plant/ --look upstream\n  troughline sheet round plant/ --out sheets/',
    )
    .action(
      async (
        conveyor: string,
        given: string[],
        options: Omit<SheetCommandOptions, 'asOf'> & { asOf?: CalendarDay },
      ) => {
        const { sheet } = await import('../commands/sheet.js');
        finish(
          await sheet(conveyor, given, { ...options, asOf: options.asOf ?? epochDay(console) }, console),
        );
      },
    );
}
