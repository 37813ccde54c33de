// Reads and analyses the estate for the commands that print from it. Findings do not stop them, they are counted and
// pointed at: a report with a gap is worth more than none, as long as it says so.
import type { CalendarDay } from '../domain/units/calendar.js';
import type { PhotoUse } from '../domain/model/records.js';
import { summarise } from '../validation/summary.js';
import { analyseRead } from './commands/check.js';
import { Trouble, type Console } from './console.js';
import { told } from './foreign-text.js';
import { photoAddresses, photosMissing } from './photos.js';
import { allRead, readEstate, tellAgain } from './read-estate.js';
import type { Analysis } from '../analysis/analysis.js';

export interface SoundEstate extends Analysis {
  /** A photo that lies beside its text, to be carried in a page; undefined where it cannot be had, `missing` where there is none. */
  readonly photoAddress: (use: PhotoUse) => string | undefined;
  readonly photoMissing: (use: PhotoUse) => boolean;
}

export async function soundEstate(
  paths: readonly string[],
  asOf: CalendarDay | undefined,
  console: Console,
): Promise<SoundEstate> {
  const read = await readEstate(paths, console);
  allRead(read);
  tellAgain(read, console);
  console.progress(`checking ${read.texts.length} files`);
  const analysis = analyseRead(read, asOf);
  if (analysis.inConflict.length > 0)
    throw new Trouble(
      analysis.inConflict
        .map(
          (file) =>
            `${told(file)}: holds a merge conflict that is not settled; nothing is forecast or planned from it`,
        )
        .join('\n'),
    );
  const { error, text } = summarise(analysis.findings);
  if (error > 0)
    console.err(
      `troughline: ${text}; 'troughline check ${paths.map(told).join(' ')}' tells them. What they touch may be missing below.\n`,
    );
  return {
    ...analysis,
    photoAddress: photoAddresses(read, analysis),
    photoMissing: photosMissing(read, analysis),
  };
}
