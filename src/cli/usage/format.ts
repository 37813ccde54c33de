// How `format` is written and what its help says. What it does stands in commands/format.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { FormatCommandOptions } from '../commands/format.js';
import type { Invocation } from './invocation.js';
import { paths, stdinFilenameOption } from './shared-options.js';

export function addFormat(program: Command, { console, finish }: Invocation): void {
  program
    .command('format')
    .summary('lay out the text in the one usual way')
    .description(
      'Format files in place and list the ones that changed. One fact a line, comments kept; formatting twice changes nothing.',
    )
    .argument(...paths)
    .option('--check', 'change nothing; exit code 1 where a file would change', false)
    .addOption(stdinFilenameOption())
    .addHelpText('after', '\nExamples:\n  troughline format plant/\n  troughline format - < draft.trough')
    .action(async (given: string[], options: FormatCommandOptions) => {
      const { format } = await import('../commands/format.js');
      finish(await format(given, options, console));
    });
}
