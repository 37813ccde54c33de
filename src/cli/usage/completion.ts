// How `completion` is written and what its help says. What it does stands in commands/completion.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addCompletion(program: Command, { console, finish }: Invocation): void {
  program
    .command('completion')
    .summary('shell completion script')
    .argument('<shell>', 'bash, zsh or fish')
    .addHelpText('after', '\nExample:\n  source <(troughline completion bash)')
    .action(async (shell: string) => {
      const { completion } = await import('../commands/completion.js');
      finish(completion(shell, program, console));
    });
}
