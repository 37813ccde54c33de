// How `check` is written and what its help says. What it does stands in commands/check.ts, loaded only when it is called.

import { Option, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { CheckOptions } from '../commands/check.js';
import type { ColourChoice } from '../console.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paths, stdinFilenameOption } from './shared-options.js';

export function addCheck(program: Command, { console, finish, version }: Invocation): void {
  program
    .command('check')
    .summary('check geometry, records and install orders')
    .description(
      'Check the estate in the given files and folders. ' +
        'A finding says what is wrong, why it matters on site and what to do. ' +
        'All paths of one run make one estate; give each estate a run of its own.',
    )
    .argument(...paths)
    .option(
      '-f, --format <name[=file]>',
      'text, json, sarif, junit, github or markdown; may be given several times',
      collect,
      [],
    )
    .addOption(asOfOption())
    .option('--fix', 'apply the fixes that need no question', false)
    .addOption(
      new Option('--fail-on <severity>', 'least severity that gives exit code 1')
        .choices(['error', 'warning', 'information'])
        .default('warning'),
    )
    .addOption(
      new Option('--color <when>', 'colour the text').choices(['auto', 'always', 'never']).default('auto'),
    )
    .option('-q, --quiet', 'say nothing when nothing is wrong', false)
    .addOption(stdinFilenameOption())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline check examples/4-tarnholt\n' +
        '  troughline check --format github --format sarif=check.sarif .\n' +
        '  git show HEAD:plant.trough | troughline check - --stdin-filename plant.trough',
    )
    .action(
      async (
        given: string[],
        options: {
          format: string[];
          asOf?: CalendarDay;
          fix: boolean;
          failOn: CheckOptions['failOn'];
          color: ColourChoice;
          quiet: boolean;
          stdinFilename: string;
        },
      ) => {
        const { check } = await import('../commands/check.js');
        const format = options.format.length > 0 ? options.format : ['text'];
        finish(
          await check(
            given,
            { ...options, format, asOf: options.asOf ?? epochDay(console), version },
            console,
          ),
        );
      },
    );
}
