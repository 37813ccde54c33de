// How `git` and its four commands are written and what their help says. What they do stands in commands/git.ts.

import type { Command } from 'commander';
import type { Invocation } from './invocation.js';

export function addGit(program: Command, { console, finish }: Invocation): void {
  const git = program
    .command('git')
    .summary('let git show and merge .trough files by facts')
    .description(
      'Two drivers for git: changes of .trough files are shown fact by fact, and merged by facts, so that two branches ' +
        'that add inspections to one file merge without a conflict and no reading is lost or doubled. Where both sides ' +
        'changed the same fact, the usual conflict markers stand around it.',
    )
    .addHelpText(
      'after',
      '\nExamples:\n  troughline git setup\n  troughline git setup --command "npx troughline"\n  troughline git undo',
    );
  git
    .command('setup')
    .summary('set the drivers up: .gitattributes and the settings of this clone')
    .option('--command <words>', 'what git is to run (default: this program as it was started)')
    .action(async ({ command }: { command?: string }) => {
      const { gitSetUp } = await import('../commands/git.js');
      finish(gitSetUp(command, console));
    });
  git
    .command('undo')
    .summary('take out what setup put in')
    .action(async () => {
      const { gitUndo } = await import('../commands/git.js');
      finish(gitUndo(console));
    });
  git
    .command('textconv')
    .summary('a text fact by fact; what git diff calls')
    .argument('<file>', 'a .trough file')
    .action(async (file: string) => {
      const { gitTextconv } = await import('../commands/git.js');
      finish(gitTextconv(file, console));
    });
  git
    .command('merge')
    .summary('merge two changes of a text by facts; what git merge calls')
    .argument('<base>', 'the text that both began with')
    .argument('<ours>', 'our text; the result is written over it')
    .argument('<theirs>', 'their text')
    .option('--path <name>', 'its name in the repository')
    .action(async (base: string, ours: string, theirs: string, options: { path?: string }) => {
      const { gitMerge } = await import('../commands/git.js');
      finish(gitMerge([base, ours, theirs], options.path, console));
    });
  for (const command of git.commands)
    command
      .configureOutput({ writeOut: console.out, writeErr: console.err })
      .exitOverride()
      .showHelpAfterError(`(troughline git ${command.name()} --help shows how)`);
}
