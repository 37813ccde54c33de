// How `explain` is written and what its help says. What it does stands in commands/explain.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

const examples = ['', ' TL301', ' words', ' gate shut', ' seized', ' formulas', ' spiral-drag'];

export function addExplain(program: Command, { console, finish }: Invocation): void {
  program
    .command('explain')
    .summary('a rule, a formula or a word of the language, or the list of either')
    .argument(
      '[what...]',
      'code of a rule, such as TL301; a word of the language, such as gate shut, or one of your own for it, such as seized; ' +
        'the name of a formula, such as spring; or words or formulas for a list',
    )
    .addHelpText('after', `\nExamples:\n${examples.map((each) => `  troughline explain${each}`).join('\n')}`)
    .action(async (what: readonly string[]) => {
      const { explain } = await import('../commands/explain.js');
      finish(explain(what.length === 0 ? undefined : what.join(' '), console));
    });
}
