// The command line as a function of its arguments and the console it is given; main.ts binds it to the process.

import { Command, CommanderError, Help, type Option } from 'commander';
import { Exit, Trouble, type Console } from './console.js';
import { addCheck } from './usage/check.js';
import { addCompletion } from './usage/completion.js';
import { addExplain } from './usage/explain.js';
import { addGit } from './usage/git.js';
import { addHelp } from './usage/help.js';
import { addImport } from './usage/import.js';
import { addInit } from './usage/init.js';
import { addFormat } from './usage/format.js';
import type { Invocation } from './usage/invocation.js';
import { addMonth } from './usage/month.js';
import { addPack } from './usage/pack.js';
import { addProgramme } from './usage/programme.js';
import { addDiff } from './usage/diff.js';
import { addReport } from './usage/report.js';
import { addSchema } from './usage/schema.js';
import { addServe } from './usage/serve.js';
import { addSheet } from './usage/sheet.js';
import { addTables } from './usage/tables.js';

/** In the order that the help lists them. */
const commands = [
  addCheck,
  addReport,
  addDiff,
  addMonth,
  addPack,
  addSheet,
  addFormat,
  addGit,
  addImport,
  addInit,
  addProgramme,
  addTables,
  addSchema,
  addExplain,
  addServe,
  addCompletion,
  addHelp,
];

export async function run(args: readonly string[], console: Console, version: string): Promise<number> {
  let exit: number = Exit.clean;
  const finish = (code: number): void => {
    exit = code;
  };
  try {
    await build({ console, version, finish }).parseAsync([...args], { from: 'user' });
    return exit;
  } catch (error) {
    return tell(error, console);
  }
}

function build(invocation: Invocation): Command {
  const { console, version } = invocation;
  const output = { writeOut: console.out, writeErr: console.err };
  const program = new Command('troughline')
    .description(
      'Lined-trough screw conveyors described in text: check them, see how long each liner lasts, ' +
        'print the work pack.',
    )
    .version(version, '-V, --version')
    .configureOutput(output)
    .configureHelp({ optionDescription })
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
  troughline help report                       the manual of a command

Exit codes: 0 clean, 1 findings, 2 usage or files, 70 a fault of this program.`,
    );
  for (const add of commands) add(program, invocation);
  for (const command of program.commands)
    command
      .configureOutput(output)
      .exitOverride()
      .showHelpAfterError(`(troughline ${command.name()} --help shows how)`);
  return program;
}

/** Nobody needs to read that nothing and no are the default. */
function optionDescription(option: Option): string {
  return new Help()
    .optionDescription(option)
    .replace(/ \(default: (?:\[\]|false)\)$/, '')
    .replace(/, default: (?:\[\]|false)\)$/, ')');
}

/** What went wrong, on standard error; returns the exit code it ends with. */
function tell(error: unknown, console: Console): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? Exit.clean : Exit.trouble;
  if (error instanceof Trouble) {
    for (const line of error.message.split('\n')) console.err(`troughline: ${line}\n`);
    return Exit.trouble;
  }
  const short = error instanceof Error ? error.message : String(error);
  const detail = console.env['TROUGHLINE_DEBUG'] && error instanceof Error ? error.stack : short;
  console.err(
    `troughline: a fault of this program, not of your files: ${detail}\n` +
      'Please report it with the command and, if you can, the file; TROUGHLINE_DEBUG=1 shows where.\n',
  );
  return Exit.fault;
}
