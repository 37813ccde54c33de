// `troughline pack JOB`: the work pack of one job, or of all. A job that cannot be built as it stands still gets its pack,
// stamped with the reasons, and the exit code says so. `form` is an offline page that gives back the records of the work,
// `crew` the two pages that a crew takes along.

import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Estate } from '../../domain/model/estate.js';
import { jobBy } from '../../domain/model/found-by-job.js';
import type { Job } from '../../domain/model/job.js';
import { knownOn } from '../../domain/model/known-on.js';
import { newestDay } from '../../domain/model/newest.js';
import { asFoundThen } from '../../domain/plan/jobs-before.js';
import { planJob } from '../../domain/plan/plan-job.js';
import { writeOrder } from '../../domain/plan/write-order.js';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../generators/work-pack/html.js';
import { workPackMarkdown } from '../../generators/work-pack/markdown.js';
import type { WorkPack } from '../../generators/work-pack/pack.js';
import { workPack } from '../../generators/work-pack/work-pack.js';
import path from 'node:path';
import { Exit, Trouble, type Console } from '../console.js';
import { chosen, deliver } from '../deliver.js';
import { printPdf } from '../print-pdf.js';
import { soundEstate } from '../sound-estate.js';
import { fileName, type OutputFile } from '../write-files.js';

const formats = ['html', 'markdown', 'json', 'xlsx', 'ics', 'form', 'crew', 'order', 'pdf'] as const;

export interface PackCommandOptions {
  readonly asOf: CalendarDay | undefined;
  readonly out?: string;
  readonly format: readonly string[];
  readonly paper: 'A4' | 'Letter';
}

export async function pack(
  name: string,
  paths: readonly string[],
  options: PackCommandOptions,
  console: Console,
): Promise<number> {
  const wanted = chosen(
    options.format,
    formats,
    options.out === undefined ? ['markdown'] : ['html', 'markdown'],
  );
  const { estate, locate } = await soundEstate(paths, options.asOf, console);
  const jobs = jobsNamed(name, estate.jobs);
  console.progress(`planning ${jobs.map((job) => job.name).join(', ')}`);
  const lives = remainingLife(estate, {
    asOf: options.asOf,
    track: false,
    conveyors: jobs.map(({ conveyor }) => conveyor),
  });
  const packs = jobs.map((job) =>
    workPack(estate, job, {
      decision: lives.conveyors.find(({ conveyor }) => conveyor === job.conveyor)?.decision,
      ...(options.asOf === undefined ? {} : { asOf: options.asOf }),
      drawnFrom: path.posix.basename(locate(job.origin).uri),
    }),
  );
  const files: OutputFile[] = [];
  for (const [i, made] of packs.entries()) {
    const job = jobs[i]!; // one pack a job, in the same order
    for (const format of wanted)
      files.push(
        format === 'order' ? orderOf(job, estate, options.asOf) : await print(made, format, options, console),
      );
  }
  deliver(files, options.out, console);
  const stamped = packs.filter((made) => made.obstacles.length > 0);
  for (const made of stamped)
    console.err(
      `troughline: ${made.job.name} cannot be built as it stands: ${made.obstacles[0]?.message ?? ''}\n`,
    );
  return stamped.length > 0 ? Exit.findings : Exit.clean;
}

function jobsNamed(name: string, jobs: readonly Job[]): readonly Job[] {
  const found = name === 'all' ? jobs : jobs.filter((job) => job.name === name);
  if (found.length > 0) return found;
  const known = jobs.map((job) => job.name);
  throw new Trouble(
    known.length === 0
      ? `${name}: this estate has no job that can be read`
      : `${name}: no such job; there ${known.length === 1 ? 'is' : 'are'} ${known.join(', ')}`,
  );
}

/** The order as written, or the one proposed where none is, ready to paste into the job; after the jobs before it, as in its pack. */
function orderOf(asked: Job, present: Estate, asOf: CalendarDay | undefined): OutputFile {
  const records = knownOn(present, asOf);
  const known = records === present ? asked : jobBy(asked, records);
  const { job, estate } = asFoundThen(known, records, asOf ?? newestDay(records) ?? known.window?.from.day);
  return {
    name: `${fileName(job.name)}-order.trough`,
    content: `${writeOrder(planJob(job, estate)).join('\n')}\n`,
  };
}

/** Places in a text are numbers of this run only. */
function withoutPlaces(key: string, value: unknown): unknown {
  return key === 'origin' ? undefined : value;
}

async function print(
  made: WorkPack,
  format: Exclude<(typeof formats)[number], 'order'>,
  options: PackCommandOptions,
  console: Console,
): Promise<OutputFile> {
  const name = fileName(made.job.name);
  const html = (): string => workPackHtml(made, { paper: options.paper });
  switch (format) {
    case 'html':
      return { name: `${name}.html`, content: html() };
    case 'markdown':
      return { name: `${name}.md`, content: workPackMarkdown(made) };
    case 'json':
      return { name: `${name}.json`, content: `${JSON.stringify(made, withoutPlaces, 2)}\n` };
    case 'pdf':
      return { name: `${name}.pdf`, content: printPdf(html(), console) };
    case 'xlsx':
      return {
        name: `${name}.xlsx`,
        content: await (await import('../../generators/work-pack/xlsx.js')).workPackXlsx(made),
      };
    case 'form':
      return {
        name: `${name}-as-fitted.html`,
        content: (await import('../../generators/work-pack/as-fitted.js')).asFittedPage(made),
      };
    case 'crew':
      return {
        name: `${name}-crew.html`,
        content: (await import('../../generators/work-pack/crew-sheet.js')).crewSheetHtml(made, {
          paper: options.paper,
        }),
      };
    case 'ics':
      return {
        name: `${name}.ics`,
        content: (await import('../../generators/work-pack/calendar.js')).workPackCalendar(made),
      };
  }
}
