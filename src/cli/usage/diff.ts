// How `diff` is written and what its help says. What it does stands in commands/diff.ts, loaded only when it is called.

import { InvalidArgumentError, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { DiffOptions } from '../commands/diff.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, epochDay, paperOption } from './shared-options.js';

type Given = Omit<DiffOptions, 'asOf' | 'failOn'> & {
  readonly asOf?: CalendarDay;
  readonly failOn: readonly string[];
};

export function addDiff(program: Command, { console, finish }: Invocation): void {
  program
    .command('diff')
    .summary('what a change of the records means')
    .description(
      'Compare two states of an estate: new records and what they do to each forecast, history that was edited ' +
        'after the fact, the machine, open jobs; what only the calendar does stands apart. A and B are revisions, ' +
        'folders or a saved report JSON; left out, the working tree is compared with HEAD. ' +
        'main...HEAD is what a branch adds since it left main.',
    )
    .argument('[states...]', 'A, or A and B (default: HEAD and the working tree)')
    .addOption(asOfOption())
    .option('-e, --estate <folder>', 'the estate that revisions are read below', '.')
    .option(
      '-f, --format <name[=file]>',
      'text, markdown, json or html; may be given several times',
      collect,
      [],
    )
    .option(
      '--fail-on <what>',
      'end with 1 only on history edited (history), an accepted risk that the change passes or raises further ' +
        '(risk, contact), another action (action), new findings (finding), or never; may be given several times ' +
        '(default: on any difference)',
      collect,
      [],
    )
    .option('--threshold <points>', 'forecasts that move by fewer percentage points are counted', number, 5)
    .option('--days <days>', 'dates that move by fewer days are counted', number, 14)
    .addOption(paperOption())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline diff                              the working tree against HEAD\n' +
        '  troughline diff main...HEAD --format markdown=comment.md --fail-on history\n' +
        '  troughline diff reports/2026-09.json         against what was published\n\n' +
        'Exit codes: 0 nothing differs, 1 something does (or what --fail-on names), 2 trouble.',
    )
    .action(async (given: string[], options: Given) => {
      const { diff, diffFailures } = await import('../commands/diff.js');
      const { chosen } = await import('../deliver.js');
      const failOn = chosen(options.failOn, diffFailures, [], '--fail-on');
      finish(await diff(given, { ...options, failOn, asOf: options.asOf ?? epochDay(console) }, console));
    });
}

function number(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !(value >= 0)) throw new InvalidArgumentError('a number from 0 is expected.');
  return value;
}
