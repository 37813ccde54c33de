// `troughline completion SHELL`: a completion script, made from the commands and options as they are.

import type { Command } from 'commander';
import { Exit, Trouble, type Console } from '../console.js';

export const shells = ['bash', 'zsh', 'fish'] as const;

export function completion(shell: string, program: Command, console: Console): number {
  const commands = program.commands.map((command) => ({
    name: command.name(),
    summary: command.summary() || command.description(),
    options: command.options.map((option) => option.long).filter((long): long is string => Boolean(long)),
  }));
  switch (shell) {
    case 'bash':
      console.out(bash(commands));
      return Exit.clean;
    case 'zsh':
      console.out(`autoload -U +X bashcompinit && bashcompinit\n${bash(commands)}`);
      return Exit.clean;
    case 'fish':
      console.out(fish(commands));
      return Exit.clean;
    default:
      throw new Trouble(`${shell}: not one of ${shells.join(', ')}`);
  }
}

interface Described {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly string[];
}

function bash(commands: readonly Described[]): string {
  return [
    '# bash completion for troughline',
    '_troughline() {',
    '  local word="${COMP_WORDS[COMP_CWORD]}" options=""',
    '  if [ "$COMP_CWORD" -eq 1 ]; then',
    `    COMPREPLY=($(compgen -W "${commands.map((c) => c.name).join(' ')} --help --version" -- "$word"))`,
    '    return',
    '  fi',
    '  case "${COMP_WORDS[1]}" in',
    ...commands.map((c) => `    ${c.name}) options="${[...c.options, '--help'].join(' ')}" ;;`),
    '  esac',
    '  if [[ "$word" == -* ]]; then COMPREPLY=($(compgen -W "$options" -- "$word"))',
    '  else COMPREPLY=($(compgen -f -- "$word")); fi',
    '}',
    'complete -o filenames -F _troughline troughline',
    '',
  ].join('\n');
}

function fish(commands: readonly Described[]): string {
  const quote = (text: string): string => `'${text.replace(/['\\]/g, '\\$&')}'`;
  return [
    '# fish completion for troughline',
    ...commands.map(
      (c) => `complete -c troughline -n __fish_use_subcommand -a ${c.name} -d ${quote(c.summary)}`,
    ),
    ...commands.flatMap((c) =>
      c.options.map(
        (o) =>
          `complete -c troughline -n ${quote(`__fish_seen_subcommand_from ${c.name}`)} -l ${o.replace(/^--/, '')}`,
      ),
    ),
    '',
  ].join('\n');
}
