// The command line as a function of its arguments and the console it is given; main.ts binds it to the process.

import { Argument, Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { parseDay, type CalendarDay } from '../domain/units/calendar.js';
import { Exit, Trouble, type ColourChoice, type Console } from './console.js';
import type { ProgrammeOptions } from './commands/programme.js';
import type { CheckOptions } from './commands/check.js';
import type { FormatCommandOptions } from './commands/format.js';
import type { PackCommandOptions } from './commands/pack.js';
import type { ReportOptions } from './commands/report.js';
import type { SheetCommandOptions } from './commands/sheet.js';

export async function run(args: readonly string[], console: Console, version: string): Promise<number> {
  let exit: number = Exit.clean;
  const program = build(console, version, (code) => {
    exit = code;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return exit;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? Exit.clean : Exit.trouble;
    if (error instanceof Trouble) {
      for (const line of error.message.split('\n')) console.err(`troughline: ${line}\n`);
      return Exit.trouble;
    }
    const detail =
      error instanceof Error
        ? console.env['TROUGHLINE_DEBUG']
          ? error.stack
          : error.message
        : String(error);
    console.err(
      `troughline: a fault of this program, not of your files: ${detail}\nPlease report it with the command and, if you can, the file; TROUGHLINE_DEBUG=1 shows where.\n`,
    );
    return Exit.fault;
  }
}

function build(console: Console, version: string, finish: (code: number) => void): Command {
  const program = new Command('troughline')
    .description(
      'Lined-trough screw conveyors described in text: check them, see how long each liner lasts, print the work pack.',
    )
    .version(version, '-V, --version')
    .configureOutput({ writeOut: console.out, writeErr: console.err })
    .showHelpAfterError('(troughline --help shows how)')
    .exitOverride()
    .addHelpText(
      'after',
      `
Examples:
  troughline check plant/                      findings, with why and what to do
  troughline report plant/ --out reports/      remaining life of every liner: HTML, Markdown, JSON, CSV
  troughline pack DG1_Winter27 plant/          the work pack of a job
  troughline sheet DG1 plant/                  what to look at on the next inspection
  troughline explain TL301                     a rule in full

Exit codes: 0 clean, 1 findings, 2 usage or files, 70 a fault of this program.`,
    );

  const asOf = (): Option =>
    new Option(
      '--as-of <date>',
      'count from this day (YYYY-MM-DD); default SOURCE_DATE_EPOCH, else the newest record',
    ).argParser(dayArgument);
  const stdinFilename = (): Option =>
    new Option('--stdin-filename <name>', 'name to show for standard input (-)').default('stdin.trough');
  const paths = ['[paths...]', 'files or folders; - reads standard input (default: this folder)'] as const;

  program
    .command('check')
    .summary('check geometry, records and install orders')
    .description(
      'Check the estate in the given files and folders. A finding says what is wrong, why it matters on site and what to do. All paths of one run make one estate; give each estate a run of its own.',
    )
    .argument(...paths)
    .option(
      '-f, --format <name[=file]>',
      'text, json, sarif, junit, github or markdown; may be given several times',
      collect,
      [],
    )
    .addOption(asOf())
    .option('--fix', 'apply the fixes that need no question', false)
    .addOption(
      new Option('--fail-on <severity>', 'least severity that gives exit code 1')
        .choices(['error', 'warning', 'information'])
        .default('warning'),
    )
    .addOption(
      new Option('--color <when>', 'colour the text').choices(['auto', 'always', 'never']).default('auto'),
    )
    .option('-q, --quiet', 'say nothing when nothing is wrong', false)
    .addOption(stdinFilename())
    .addHelpText(
      'after',
      '\nExamples:\n  troughline check examples/4-tarnholt\n  troughline check --format github --format sarif=check.sarif .\n  git show HEAD:plant.trough | troughline check - --stdin-filename plant.trough',
    )
    .action(
      async (
        given: string[],
        options: {
          format: string[];
          asOf?: CalendarDay;
          fix: boolean;
          failOn: CheckOptions['failOn'];
          color: ColourChoice;
          quiet: boolean;
          stdinFilename: string;
        },
      ) => {
        const { check } = await import('./commands/check.js');
        const format = options.format.length > 0 ? options.format : ['text'];
        finish(
          await check(
            given,
            { ...options, format, asOf: options.asOf ?? epochDay(console), version },
            console,
          ),
        );
      },
    );

  program
    .command('report')
    .summary('remaining life of every liner')
    .description(
      'Work out how each liner stands: rates, remaining life with its interval, next inspection, which outage to reline at and when to order.',
    )
    .argument(...paths)
    .addOption(asOf())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option(
      '-f, --format <name>',
      'html, markdown, json, csv (two tables: conveyors.csv and points.csv), conveyors-csv, points-csv or pdf; may be given several times (default: html, markdown, json and csv with --out, else markdown)',
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
    .addOption(
      new Option('--paper <size>', 'page size of HTML, crew sheet and PDF')
        .choices(['A4', 'Letter'])
        .default('A4'),
    )
    .option(
      '--fail-on <what>',
      'end with 1 on findings (error, warning, information), on a risk passed by the next outage (risk, contact), on an overdue look (overdue), or never; may be given several times (default: error)',
      collect,
      [],
    )
    .addHelpText(
      'after',
      "\nExamples:\n  troughline report examples/4-tarnholt --as-of 2026-10-31 --out reports/\n  troughline report plant/ --conveyor DG1 --with 'duty DG1 140 h/week'\n  troughline report plant/ --previous reports/2026-03.json\n\nThe clock is never read: the same files and the same --as-of give the same bytes. In CI --as-of is required.",
    )
    .action(async (given: string[], options: Omit<ReportOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { report } = await import('./commands/report.js');
      finish(await report(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });

  program
    .command('pack')
    .summary('the work pack of a job')
    .description(
      'Print what a crew needs for a job: scope, cautions, isolations, access, drawings, panels, steps, lifts, lists and check sheets. Advice only: it never clears a machine for work.',
    )
    .argument('<job>', 'name of the job, or "all"')
    .argument(...paths)
    .addOption(asOf())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option(
      '-f, --format <name>',
      'html, markdown, json, xlsx, ics, form (offline page that gives back a reline block), crew (the two pages a crew takes along), order (the steps as an order block) or pdf; may be given several times (default: html and markdown with --out, else markdown)',
      collect,
      [],
    )
    .addOption(
      new Option('--paper <size>', 'page size of HTML, crew sheet and PDF')
        .choices(['A4', 'Letter'])
        .default('A4'),
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline pack DG1_Winter27 examples/4-tarnholt --out packs/\n  troughline pack all examples/4-tarnholt --out packs/ --format html --format xlsx',
    )
    .action(
      async (
        job: string,
        given: string[],
        options: Omit<PackCommandOptions, 'asOf'> & { asOf?: CalendarDay },
      ) => {
        const { pack } = await import('./commands/pack.js');
        finish(await pack(job, given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
      },
    );

  program
    .command('sheet')
    .summary('inspection sheet of a conveyor')
    .description(
      'Print where to look, from which end, what was read last and what to expect; or a page for a phone that works without a network and gives back an inspection block.',
    )
    .argument('<conveyor>', 'name of the conveyor, or "all"')
    .argument(...paths)
    .addOption(asOf())
    .option('-o, --out <folder>', 'write the files here; without it the first format goes to standard output')
    .option(
      '-f, --format <name>',
      'html, phone or pdf; may be given several times (default: html)',
      collect,
      [],
    )
    .addOption(
      new Option('--paper <size>', 'page size of HTML, crew sheet and PDF')
        .choices(['A4', 'Letter'])
        .default('A4'),
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline sheet DG1 examples/4-tarnholt --out sheets/ --format html --format phone',
    )
    .action(
      async (
        conveyor: string,
        given: string[],
        options: Omit<SheetCommandOptions, 'asOf'> & { asOf?: CalendarDay },
      ) => {
        const { sheet } = await import('./commands/sheet.js');
        finish(
          await sheet(conveyor, given, { ...options, asOf: options.asOf ?? epochDay(console) }, console),
        );
      },
    );

  program
    .command('format')
    .summary('lay out the text in the one usual way')
    .description(
      'Format files in place and list the ones that changed. One fact a line, comments kept; formatting twice changes nothing.',
    )
    .argument(...paths)
    .option('--check', 'change nothing; exit code 1 where a file would change', false)
    .addOption(stdinFilename())
    .addHelpText('after', '\nExamples:\n  troughline format plant/\n  troughline format - < draft.trough')
    .action(async (given: string[], options: FormatCommandOptions) => {
      const { format } = await import('./commands/format.js');
      finish(await format(given, options, console));
    });

  program
    .command('programme')
    .summary('which conveyor at which outage')
    .description(
      'Choose scope, outage and crews of every reline over all outages, so that crew hours, platforms, lead times, stock and accepted risks hold at the least expected cost. What cannot be kept is named with its reason.',
    )
    .argument(...paths)
    .addOption(asOf())
    .option('-o, --out <folder>', 'write the files here; without it the Markdown goes to standard output')
    .option('-f, --format <name>', 'markdown, json, csv or ics; may be given several times', collect, [])
    .addHelpText('after', '\nExamples:\n  troughline programme examples/4-tarnholt --as-of 2026-10-31')
    .action(async (given: string[], options: Omit<ProgrammeOptions, 'asOf'> & { asOf?: CalendarDay }) => {
      const { programme } = await import('./commands/programme.js');
      finish(await programme(given, { ...options, asOf: options.asOf ?? epochDay(console) }, console));
    });

  program
    .command('schema')
    .summary('the shape of the data that a command writes, as JSON Schema')
    .addArgument(new Argument('<name>', 'which data').choices(['report']))
    .addHelpText('after', '\nExamples:\n  troughline schema report > report.schema.json')
    .action(async () => {
      const { schema } = await import('./commands/schema.js');
      finish(schema(console));
    });

  program
    .command('explain')
    .summary('a rule in full, or the list of rules')
    .argument('[code]', 'code of the rule, such as TL301')
    .addHelpText('after', '\nExamples:\n  troughline explain\n  troughline explain TL301')
    .action(async (code: string | undefined) => {
      const { explain } = await import('./commands/explain.js');
      finish(explain(code, console));
    });

  program
    .command('serve')
    .summary('language server for editors')
    .description(
      'Speak the Language Server Protocol on standard input and output, for any editor that can start a server.',
    )
    .requiredOption('--stdio', 'on standard input and output')
    .addHelpText('after', '\nExample:\n  troughline serve --stdio')
    .action(async () => {
      const { serve } = await import('./commands/serve.js');
      finish(await serve());
    });

  program
    .command('completion')
    .summary('shell completion script')
    .argument('<shell>', 'bash, zsh or fish')
    .addHelpText('after', '\nExample:\n  source <(troughline completion bash)')
    .action(async (shell: string) => {
      const { completion } = await import('./commands/completion.js');
      finish(completion(shell, program, console));
    });

  for (const command of program.commands)
    command
      .configureOutput({ writeOut: console.out, writeErr: console.err })
      .exitOverride()
      .showHelpAfterError(`(troughline ${command.name()} --help shows how)`);
  return program;
}

function collect(value: string, before: readonly string[]): string[] {
  return [...before, value];
}

function dayArgument(text: string): CalendarDay {
  const day = parseDay(text);
  if (day === undefined)
    throw new InvalidArgumentError('a date is written YYYY-MM-DD, for example 2026-10-31.');
  return day;
}

/** SOURCE_DATE_EPOCH (reproducible-builds.org): seconds since 1970-01-01, UTC. */
function epochDay(console: Console): CalendarDay | undefined {
  const text = console.env['SOURCE_DATE_EPOCH'];
  if (text === undefined || text === '') return undefined;
  if (!/^\d+$/.test(text))
    throw new Trouble(`SOURCE_DATE_EPOCH is '${text}': it must be whole seconds since 1970-01-01`);
  return parseDay(new Date(Number(text) * 1000).toISOString().slice(0, 10));
}
