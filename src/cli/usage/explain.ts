// How `explain` is written and what its help says. What it does stands in commands/explain.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addExplain(program: Command, { console, finish }: Invocation): void {
  program
    .command('explain')
    .summary('a rule or a formula in full, or the list of either')
    .argument('[code]', 'code of the rule, such as TL301; formulas; or the name of a formula, such as spring')
    .addHelpText(
      'after',
      '\nExamples:\n  troughline explain\n  troughline explain TL301\n  troughline explain formulas\n  troughline explain spiral-drag',
    )
    .action(async (code: string | undefined) => {
      const { explain } = await import('../commands/explain.js');
      finish(explain(code, console));
    });
}
