// `troughline report`: how each liner stands, as pages for people and as data.

import type { Conveyor } from '../../domain/model/conveyor.js';
import { presentDay } from '../../domain/model/newest.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { conveyorsCsv } from '../../generators/remaining-life/csv-conveyors.js';
import { remainingLifeCsv } from '../../generators/remaining-life/csv.js';
import { estateCalendar } from '../../generators/remaining-life/estate-calendar.js';
import { remainingLifeHtml, type ReportPageOptions } from '../../generators/remaining-life/html.js';
import { remainingLifeJson } from '../../generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../generators/remaining-life/remaining-life.js';
import { readChange, type WhatIfChange } from '../../generators/remaining-life/what-if.js';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { readPublished, type PublishedReport } from '../../generators/remaining-life/published.js';
import type { Finding } from '../../validation/finding.js';
import type { Estate } from '../../domain/model/estate.js';
import { counted } from '../../domain/units/wording.js';
import { Exit, Trouble, type Console } from '../console.js';
import { estateLedger } from '../../analysis/estate-ledger.js';
import { conveyorsNamed } from '../conveyors-named.js';
import { chosen, deliver } from '../deliver.js';
import { nodeSolver } from '../../solver/node-solver.js';
import { printPdf } from '../print-pdf.js';
import { soundEstate, type SoundEstate } from '../sound-estate.js';
import type { OutputFile } from '../write-files.js';

const formats = ['html', 'markdown', 'json', 'csv', 'conveyors-csv', 'points-csv', 'ics', 'pdf'] as const;

/** What makes a report end with 1 besides being printed. */
export const failures = ['error', 'warning', 'information', 'risk', 'contact', 'overdue', 'never'] as const;

export interface ReportOptions {
  readonly failOn: readonly string[];
  readonly asOf: CalendarDay | undefined;
  readonly since?: CalendarDay;
  readonly out?: string;
  readonly format: readonly string[];
  readonly conveyor: readonly string[];
  readonly with: readonly string[];
  readonly previous: readonly string[];
  readonly paper: 'A4' | 'Letter';
}

export async function report(
  paths: readonly string[],
  options: ReportOptions,
  console: Console,
): Promise<number> {
  const wanted = chosen(
    options.format,
    formats,
    options.out === undefined ? ['markdown'] : ['html', 'markdown', 'json', 'csv'],
  );
  // A build that counts from whatever record is newest gives another report when a record is added late; CI names its day.
  if (options.asOf === undefined && console.env['CI'])
    throw new Trouble('in CI, say which day to count from: --as-of YYYY-MM-DD (or SOURCE_DATE_EPOCH)');
  const failOn = chosen(options.failOn, failures, ['error']);
  const sound = await soundEstate(paths, options.asOf, console);
  const { estate, findings, photoAddress } = sound;
  const asOf = presentDay(estate, options.asOf);
  if (options.since !== undefined && asOf !== undefined && options.since > asOf)
    throw new Trouble(
      `--since ${formatDay(options.since)} lies after the day of the report, ${formatDay(asOf)}: name an earlier day`,
    );
  const conveyors = conveyorsNamed(options.conveyor, estate);
  console.progress(`forecasting ${counted(estate.conveyors.length, 'conveyor')}`);
  const made = remainingLife(estate, {
    asOf: options.asOf,
    since: options.since,
    conveyors,
    previous: options.previous.map((file) => publishedIn(file, console)),
    solver: await nodeSolver(),
    changes: options.with.map((text) =>
      changeOf(text, estate, options.conveyor.length > 0 ? conveyors : undefined),
    ),
  });
  if (options.out === undefined && wanted.includes('csv'))
    throw new Trouble('csv is two tables: give --out, or ask for conveyors-csv or points-csv');
  deliver(
    wanted.flatMap((format) => print(made, sound, format, { ...options, photo: photoAddress }, console)),
    options.out,
    console,
  );
  const failed = failuresOf(made, findings, failOn);
  for (const line of failed) console.err(`troughline: ${line}\n`);
  return failed.length > 0 ? Exit.findings : Exit.clean;
}

/** A report that cannot be read stops the run: a check that quietly judges nothing would look like a clean one. */
function publishedIn(file: string, console: Console): PublishedReport {
  let text: string;
  try {
    text = readFileSync(path.resolve(console.cwd, file), 'utf8');
  } catch (error) {
    throw new Trouble(`--previous ${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
  const read = readPublished(text);
  if (!read.ok) throw new Trouble(`--previous ${file} ${read.message}`);
  return read.report;
}

/** A line each reason to end with 1; empty where none was asked for or found. */
function failuresOf(
  made: RemainingLife,
  findings: readonly Finding[],
  failOn: readonly (typeof failures)[number][],
): readonly string[] {
  const rank = { information: 0, warning: 1, error: 2 } as const;
  const listOf = (lives: RemainingLife['conveyors']): string =>
    lives.map(({ conveyor }) => conveyor.name).join(', ');
  return failOn.flatMap((what): readonly string[] => {
    switch (what) {
      case 'never':
        return [];
      case 'error':
      case 'warning':
      case 'information': {
        const count = findings.filter(({ severity }) => rank[severity] >= rank[what]).length;
        return count > 0
          ? [`${count} findings of severity ${what} or above in the estate (--fail-on ${what})`]
          : [];
      }
      case 'risk':
      case 'contact': {
        const beyond = made.conveyors.filter(({ decision }) => {
          if (!decision) return false;
          const { accepted, today, outages } = decision;
          const next = outages[0] ?? today;
          return what === 'risk' ? next.condemn > accepted.condemn : next.contact > accepted.contact;
        });
        return beyond.length > 0
          ? [
              `by the next outage the accepted risk of ${what === 'risk' ? 'the limit' : 'steel'} is passed at ${listOf(beyond)} (--fail-on ${what})`,
            ]
          : [];
      }
      case 'overdue': {
        const late = made.conveyors.filter(
          ({ points, model }) =>
            (model?.look.kind === 'now' && model.look.because !== 'panels never seen') ||
            (model?.forecast.kind !== 'dates' && points.some(({ nextLook }) => nextLook?.overdue)),
        );
        return late.length > 0 ? [`a look is overdue at ${listOf(late)} (--fail-on overdue)`] : [];
      }
    }
  });
}

function changeOf(text: string, estate: Estate, printed: readonly Conveyor[] | undefined): WhatIfChange {
  const read = readChange(text, estate, printed);
  if (!read.ok) throw new Trouble(`--with '${text}': ${read.message}`);
  return read.change;
}

function print(
  made: RemainingLife,
  analysis: SoundEstate,
  format: (typeof formats)[number],
  options: ReportOptions & ReportPageOptions,
  console: Console,
): OutputFile | readonly OutputFile[] {
  console.progress(`printing ${format}`);
  const conveyors = (): OutputFile => ({ name: 'conveyors.csv', content: conveyorsCsv(made) });
  const points = (): OutputFile => ({ name: 'points.csv', content: remainingLifeCsv(made) });
  const html = (): string => remainingLifeHtml(made, { paper: options.paper, photo: options.photo });
  switch (format) {
    case 'html':
      return { name: 'report.html', content: html() };
    case 'markdown':
      return {
        name: 'report.md',
        content: remainingLifeMarkdown(made, { photoMissing: analysis.photoMissing }),
      };
    case 'json':
      return { name: 'report.json', content: remainingLifeJson(made, estateLedger(analysis).blocks) };
    case 'csv':
      return [conveyors(), points()];
    case 'conveyors-csv':
      return conveyors();
    case 'points-csv':
      return points();
    case 'ics':
      return { name: 'calendar.ics', content: estateCalendar(made) };
    case 'pdf':
      return { name: 'report.pdf', content: printPdf(html(), console) };
  }
}
