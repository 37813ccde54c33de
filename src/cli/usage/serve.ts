// How `serve` is written and what its help says. What it does stands in commands/serve.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addServe(program: Command, { finish }: Invocation): void {
  program
    .command('serve')
    .summary('language server for editors')
    .description(
      'Speak the Language Server Protocol on standard input and output, for any editor that can start a server.',
    )
    .requiredOption('--stdio', 'on standard input and output')
    .addHelpText('after', '\nExample:\n  troughline serve --stdio')
    .action(async () => {
      const { serve } = await import('../commands/serve.js');
      finish(await serve());
    });
}
