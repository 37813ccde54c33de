// `troughline help COMMAND`: the manual of a command, to be read here or by man.

import type { Command } from 'commander';
import { Exit, Trouble, type Console } from '../console.js';
import { told } from '../foreign-text.js';
import { manualOf } from '../manual/manual.js';
import { manualRoff } from '../manual/roff.js';
import { manualText } from '../manual/text.js';

export function help(
  program: Command,
  path: readonly string[],
  options: { readonly man: boolean; readonly version: string },
  console: Console,
): number {
  const manual = manualOf(commandAt(program, path), path, options.version);
  console.out(options.man ? manualRoff(manual) : manualText(manual));
  return Exit.clean;
}

function commandAt(program: Command, path: readonly string[]): Command {
  return path.reduce((command, name) => {
    const found = command.commands.find((each) => each.name() === name);
    if (!found)
      throw new Trouble(
        `${told(name)}: no such command; one of ${command.commands.map((each) => each.name()).join(', ') || 'none'}`,
      );
    return found;
  }, program);
}
