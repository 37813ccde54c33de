// The manual of a command as a value, made from its usage as it is: what it does, its operands and options, how it ends, what it
// reads and writes, examples. text.ts and roff.ts print it.

import type { Command } from 'commander';
import { environment, manualFacts, trouble } from './facts.js';

export interface Manual {
  /** `troughline check`. */
  readonly name: string;
  readonly version: string;
  readonly summary: string;
  readonly synopsis: string;
  readonly sections: readonly ManualSection[];
}

export interface ManualSection {
  readonly title: string;
  readonly parts: readonly ManualPart[];
}

/** Words that are filled, a term with what it means, or lines that stand as they are. */
export type ManualPart =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'term'; readonly term: string; readonly text: string }
  | { readonly kind: 'lines'; readonly lines: readonly string[] };

/** @param path names from the program down: `['git', 'setup']`; empty for the program itself */
export function manualOf(command: Command, path: readonly string[], version: string): Manual {
  const help = command.createHelp();
  const facts = manualFacts[path.join(' ')];
  const { examples, notes } = afterwards(command);
  const terms = (pairs: readonly (readonly [string, string])[]): readonly ManualPart[] =>
    pairs.map(([term, text]) => ({ kind: 'term', term, text }));
  const sections: readonly ManualSection[] = [
    { title: 'DESCRIPTION', parts: [{ kind: 'words', text: command.description() || command.summary() }] },
    {
      title: 'COMMANDS',
      parts: terms(
        help
          .visibleCommands(command)
          .map((each) => [help.subcommandTerm(each), help.subcommandDescription(each)] as const),
      ),
    },
    {
      title: 'ARGUMENTS',
      parts: terms(
        help
          .visibleArguments(command)
          .map((each) => [help.argumentTerm(each), help.argumentDescription(each)] as const),
      ),
    },
    {
      title: 'OPTIONS',
      parts: terms(
        help
          .visibleOptions(command)
          .map((each) => [help.optionTerm(each), help.optionDescription(each)] as const),
      ),
    },
    { title: 'EXIT STATUS', parts: terms(exits(facts)) },
    { title: 'FILES', parts: terms(facts?.files ?? []) },
    { title: 'ENVIRONMENT', parts: terms(path.length === 0 ? environment : []) },
    { title: 'EXAMPLES', parts: examples.length === 0 ? [] : [{ kind: 'lines', lines: examples }] },
    { title: 'NOTES', parts: notes },
    { title: 'SEE ALSO', parts: [{ kind: 'words', text: seeAlso(path) }] },
  ];
  return {
    name: ['troughline', ...path].join(' '),
    version,
    summary: command.summary() || command.description(),
    synopsis: help.commandUsage(command),
    sections: sections.filter(({ parts }) => parts.length > 0),
  };
}

function exits(facts: (typeof manualFacts)[string] | undefined): readonly (readonly [string, string])[] {
  return [
    ['0', facts?.clean ?? 'clean'],
    ...(facts && facts.findings === undefined ? [] : [['1', facts?.findings ?? 'findings'] as const]),
    ...trouble,
  ];
}

function seeAlso(path: readonly string[]): string {
  const up = path.slice(0, -1).join(' ');
  return path.length === 0
    ? 'troughline help COMMAND'
    : `troughline help${up === '' ? '' : ` ${up}`} (all commands, environment); troughline ${path.join(' ')} --help`;
}

/** What stands after the options in the help: examples, and notes a paragraph each; exit codes have a section of their own. */
function afterwards(command: Command): {
  readonly examples: readonly string[];
  readonly notes: readonly ManualPart[];
} {
  const blocks = textAfter(command)
    .split(/\n\s*\n/)
    .map((block) => block.replace(/^\n+|\s+$/g, ''))
    .filter((block) => block !== '' && !block.startsWith('Exit codes:'));
  const isExample = (block: string): boolean => /^Examples?:/.test(block);
  return {
    examples: blocks.filter(isExample).flatMap((block) => block.split('\n').slice(1).map(unindented)),
    notes: blocks
      .filter((block) => !isExample(block))
      .map((block): ManualPart =>
        block.includes('\n') ? { kind: 'lines', lines: block.split('\n') } : { kind: 'words', text: block },
      ),
  };
}

function unindented(line: string): string {
  return line.replace(/^ {2}/, '');
}

function textAfter(command: Command): string {
  const output = command.configureOutput();
  let whole = '';
  command.configureOutput({ ...output, writeOut: (text) => void (whole += text) });
  command.outputHelp();
  command.configureOutput(output);
  return whole.slice(command.helpInformation().length);
}
