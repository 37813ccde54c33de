// How `init` is written and what its help says. What it does stands in commands/init.ts, loaded only when it is called.

import { Argument, Option, type Command } from 'commander';
import type { InitOptions } from '../commands/init.js';
import type { Invocation } from './invocation.js';

export function addInit(program: Command, { console, finish }: Invocation): void {
  program
    .command('init')
    .summary('a first estate to change into your own')
    .description(
      'Write a small estate that checks clean, one file a thing and one file an inspection, with the files that let a ' +
        'build server review every change. Nothing that is there is written over: where one of the files exists, ' +
        'nothing is written at all.',
    )
    .addArgument(new Argument('[folder]', 'where to (made if missing)').default('.'))
    .addOption(
      new Option('--ci <host>', 'files for which build server')
        .choices(['github', 'gitlab', 'both', 'none'])
        .default('github'),
    )
    .addHelpText('after', '\nExamples:\n  troughline init plant/\n  troughline init . --ci gitlab')
    .action(async (folder: string, options: InitOptions) => {
      const { init } = await import('../commands/init.js');
      finish(init(folder, options, console));
    });
}
