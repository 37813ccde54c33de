// How `check` is written and what its help says. What it does stands in commands/check.ts, loaded only when it is called.

import { Option, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { CheckOptions } from '../commands/check.js';
import type { ColourChoice } from '../console.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, dayArgument, epochDay, paths, stdinFilenameOption } from './shared-options.js';

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
      'text, json, sarif, junit, gitlab, github (also writes the job summary) or markdown; may be given several times',
      collect,
      [],
    )
    .addOption(asOfOption())
    .option('--watch', 'check again whenever a file changes, until ended (Ctrl+C)', false)
    .option('--fix', 'apply the fixes that need no question', false)
    .option(
      '--as-offered',
      'write each line that cannot be read as it is offered, and list them: for a first draft; read them all before you commit',
      false,
    )
    .addOption(
      new Option('--fail-on <severity>', 'least severity that gives exit code 1')
        .choices(['error', 'warning', 'information'])
        .default('warning'),
    )
    .option('--new-since <revision>', 'only findings that the revision did not have')
    .option(
      '--baseline <file>',
      'findings that are known, each with its reason and, if it has one, its last day',
    )
    .option('--write-baseline <file>', 'write what is found now as known, with the reason given by --because')
    .option('--because <reason>', 'with --write-baseline: why these findings are lived with')
    .addOption(
      new Option('--until <date>', 'with --write-baseline: the last day on which they are').argParser(
        dayArgument,
      ),
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
        '  troughline check --fix --as-offered plant/\n' +
        '  troughline check --new-since origin/main plant/\n' +
        '  troughline check --write-baseline known.json --because "mended at the next outage" --until 2027-05-01\n' +
        '  git show HEAD:plant.trough | troughline check - --stdin-filename plant.trough',
    )
    .action(
      async (
        given: string[],
        options: {
          format: string[];
          asOf?: CalendarDay;
          fix: boolean;
          asOffered: boolean;
          watch: boolean;
          failOn: CheckOptions['failOn'];
          color: ColourChoice;
          quiet: boolean;
          stdinFilename: string;
          newSince?: string;
          baseline?: string;
          writeBaseline?: string;
          because?: string;
          until?: CalendarDay;
        },
      ) => {
        const { check } = await import('../commands/check.js');
        const asOf = options.asOf ?? epochDay(console);
        const once = (): Promise<number> => check(given, { ...options, asOf, version }, console);
        const { watched } = await import('../watch.js');
        finish(options.watch ? await watched(once, given, console) : await once());
      },
    );
}
