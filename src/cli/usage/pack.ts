// How `pack` is written and what its help says. What it does stands in commands/pack.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { PackCommandOptions } from '../commands/pack.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paperOption, paths } from './shared-options.js';

export function addPack(program: Command, { console, finish }: Invocation): void {
  program
    .command('pack')
    .summary('the work pack of a job')
    .description(
      'Print what a crew needs for a job: scope, cautions, isolations, access, drawings, panels, steps, ' +
        'lifts, lists and check sheets. Advice only: it never clears a machine for work.',
    )
    .argument('<job>', 'name of the job, or "all"')
    .argument(...paths)
    .addOption(asOfOption())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option(
      '-f, --format <name>',
      'html, markdown, json, xlsx, ics, form (offline page that gives back a reline block), ' +
        'crew (the two pages a crew takes along), order (the steps as an order block) or pdf; ' +
        'may be given several times (default: html and markdown with --out, else markdown)',
      collect,
      [],
    )
    .addOption(paperOption())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline pack DG1_Winter27 examples/4-tarnholt --out packs/\n' +
        '  troughline pack all examples/4-tarnholt --out packs/ --format html --format xlsx',
    )
    .action(
      async (
        job: string,
        given: string[],
        options: Omit<PackCommandOptions, 'asOf'> & { asOf?: CalendarDay },
      ) => {
        const { pack } = await import('../commands/pack.js');
        finish(await pack(job, given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
      },
    );
}
