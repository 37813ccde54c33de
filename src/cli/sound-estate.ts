// Reads and analyses the estate for the commands that print from it. Findings do not stop them, they are counted and
// pointed at: a report with a gap is worth more than none, as long as it says so.

import type { Analysis } from '../analysis/analyse.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import { summarise } from '../validation/summary.js';
import { analyseRead } from './commands/check.js';
import type { Console } from './console.js';
import { allRead, readEstate } from './read-estate.js';

export async function soundEstate(
  paths: readonly string[],
  asOf: CalendarDay | undefined,
  console: Console,
): Promise<Analysis> {
  const read = await readEstate(paths, console);
  allRead(read);
  const analysis = analyseRead(read, asOf);
  const { error, text } = summarise(analysis.findings);
  if (error > 0)
    console.err(
      `troughline: ${text}; 'troughline check ${paths.join(' ')}' tells them. What they touch may be missing below.\n`,
    );
  return analysis;
}
