// How `explain` is written and what its help says. What it does stands in commands/explain.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addExplain(program: Command, { console, finish }: Invocation): void {
  program
    .command('explain')
    .summary('a rule, a formula or a word of the language, or the list of either')
    .argument(
      '[what...]',
      'code of a rule, such as TL301; a word of the language, such as gate shut; the name of a formula, such as spring; or words or formulas for a list',
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline explain\n  troughline explain TL301\n  troughline explain words\n  troughline explain gate shut\n  troughline explain formulas\n  troughline explain spiral-drag',
    )
    .action(async (what: readonly string[]) => {
      const { explain } = await import('../commands/explain.js');
      finish(explain(what.length === 0 ? undefined : what.join(' '), console));
    });
}
