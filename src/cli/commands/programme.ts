// `troughline programme`: which conveyor at which outage, so that crews, platforms, stock and accepted risks hold.

import type { CalendarDay } from '../../domain/units/calendar.js';
import { programmeCsv } from '../../generators/remaining-life/csv-programme.js';
import { programmeJson } from '../../generators/remaining-life/json-programme.js';
import { unreadIn } from '../../generators/remaining-life/unread-words.js';
import { programmeMarkdown } from '../../generators/remaining-life/markdown.js';
import { programmeCalendar } from '../../generators/remaining-life/programme-calendar.js';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import { Exit, Trouble, type Console } from '../console.js';
import { chosen, deliver } from '../deliver.js';
import { nodeSolver } from '../../solver/node-solver.js';
import { soundEstate } from '../sound-estate.js';
import type { OutputFile } from '../write-files.js';

const formats = ['markdown', 'json', 'csv', 'ics'] as const;

export interface ProgrammeOptions {
  readonly asOf: CalendarDay | undefined;
  readonly out?: string;
  readonly format: readonly string[];
}

export async function programme(
  paths: readonly string[],
  options: ProgrammeOptions,
  console: Console,
): Promise<number> {
  const wanted = chosen(options.format, formats, options.out === undefined ? ['markdown'] : formats);
  if (options.asOf === undefined && console.env['CI'])
    throw new Trouble('in CI, say which day to count from: --as-of YYYY-MM-DD (or SOURCE_DATE_EPOCH)');
  const { estate } = await soundEstate(paths, options.asOf, console);
  const report = remainingLife(estate, { asOf: options.asOf, track: false, solver: await nodeSolver() });
  const answers = report.programmes ?? [];
  const unread = unreadIn(report);
  const print = (format: (typeof formats)[number]): OutputFile => {
    switch (format) {
      case 'markdown':
        return {
          name: 'programme.md',
          content: `${[unread ?? '', answers.length === 0 ? nothingDue : answers.map(programmeMarkdown).join('\n\n')].filter(Boolean).join('\n\n')}\n`,
        };
      case 'json':
        return {
          name: 'programme.json',
          content: `${JSON.stringify({ formatVersion: 1, kind: 'programme', unread: unread ?? null, programmes: answers.map(programmeJson) }, null, 2)}\n`,
        };
      case 'csv':
        return { name: 'programme.csv', content: programmeCsv(answers) };
      case 'ics':
        if (report.asOf === undefined) throw new Trouble('no day to count from: --as-of YYYY-MM-DD');
        return { name: 'programme.ics', content: programmeCalendar(answers, report.asOf) };
    }
  };
  deliver(wanted.map(print), options.out, console);
  return Exit.clean;
}

const nothingDue = 'No conveyor is due before the last outage, or no outage is declared.';
