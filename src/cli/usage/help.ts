// How `help` is written and what its help says. What it does stands in commands/help.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addHelp(program: Command, { console, finish, version }: Invocation): void {
  for (const command of [program, ...program.commands]) command.helpCommand(false); // ours says more
  program
    .command('help')
    .summary('the manual of a command: options, exit status, files, examples')
    .argument('[command...]', 'name of the command; left out, the program as a whole')
    .option('--man', 'as a page for man', false)
    .addHelpText(
      'after',
      '\nExamples:\n  troughline help tables\n  troughline help git setup\n  troughline help month --man | man -l -',
    )
    .action(async (path: string[], { man }: { man: boolean }) => {
      const { help } = await import('../commands/help.js');
      finish(help(program, path, { man, version }, console));
    });
}
