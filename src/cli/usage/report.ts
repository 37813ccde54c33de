// How `report` is written and what its help says. What it does stands in commands/report.ts, loaded only when it is called.

import { Option, type Command } from 'commander';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { ReportOptions } from '../commands/report.js';
import type { Invocation } from './invocation.js';
import { asOfOption, collect, dayArgument, epochDay, paperOption, paths } from './shared-options.js';

export function addReport(program: Command, { console, finish }: Invocation): void {
  program
    .command('report')
    .summary('remaining life of every liner')
    .description(
      'Work out how each liner stands: rates, remaining life with its interval, next inspection, which outage to reline at and when to order.',
    )
    .argument(...paths)
    .addOption(asOfOption())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option(
      '-f, --format <name>',
      'html, markdown, json, csv (two tables: conveyors.csv and points.csv), conveyors-csv, ' +
        'points-csv, ics (looks due, orders and outages for a calendar) or pdf; ' +
        'may be given several times (default: html, markdown, json and csv with --out, ' +
        'else markdown)',
      collect,
      [],
    )
    .option('-c, --conveyor <name>', 'only this conveyor; may be given several times', collect, [])
    .addOption(
      new Option('--since <date>', 'say what changed since the report of this day').argParser(dayArgument),
    )
    .option(
      '-p, --previous <file>',
      'a report.json published earlier: hold its forecasts against what was read since; may be given several times',
      collect,
      [],
    )
    .option(
      '-w, --with <change>',
      "what if: 'duty DG1 140 h/week', 'speed DG1 20 rpm', 'condemn DG1 4 mm' or 'liner DG1 TwoLayer16'; may be given several times",
      collect,
      [],
    )
    .addOption(paperOption())
    .option(
      '--fail-on <what>',
      'end with 1 on findings (error, warning, information), on a risk passed by the next outage (risk, ' +
        'contact), on an overdue look (overdue), or never; may be given several times (default: error)',
      collect,
      [],
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline report examples/4-tarnholt --as-of 2026-10-31 --out reports/\n' +
        "  troughline report plant/ --conveyor DG1 --with 'duty DG1 140 h/week'\n" +
        '  troughline report plant/ --previous reports/2026-03.json\n\n' +
        'The clock is never read: the same files and the same --as-of give the same bytes. ' +
        'In CI --as-of is required.',
    )
    .action(async (given: string[], options: Omit<ReportOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { report } = await import('../commands/report.js');
      finish(await report(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });
}
