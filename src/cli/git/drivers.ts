// The drivers that git calls for `.trough` files: one that shows a change by facts, one that merges by facts. Which files they are
// for stands in .gitattributes, which everybody shares; the command stands in the repository's own settings, which nobody
// else sees, because git lets no repository choose what runs on a machine. Undo takes out what was put in, and no more.

import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gitLine, runGit } from './run-git.js';

export type DriverResult =
  { readonly ok: true; readonly said: readonly string[] } | { readonly ok: false; readonly message: string };

const attributes = '*.trough diff=troughline merge=troughline';
const remark = '# Changes of records are shown and merged by facts: `troughline git setup` on each machine.';

/** Names of settings with their values. */
function settings(command: string): readonly (readonly [string, string])[] {
  return [
    ['diff.troughline.textconv', `${command} git textconv`],
    ['diff.troughline.cachetextconv', 'false'],
    ['merge.troughline.name', 'merge of conveyor records by facts'],
    ['merge.troughline.driver', `${command} git merge %O %A %B --path %P`],
  ];
}

export function setUpDrivers(cwd: string, command: string): DriverResult {
  const top = topOf(cwd);
  if (!top.ok) return top;
  const file = path.join(top.folder, '.gitattributes');
  const before = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const said: string[] = [];
  if (!before.split(/\r?\n/).includes(attributes)) {
    const gap = before === '' || before.endsWith('\n') ? '' : '\n';
    writeFileSync(file, `${before}${gap}${remark}\n${attributes}\n`);
    said.push('.gitattributes: .trough files are shown and merged by facts; commit it');
  }
  for (const [name, value] of settings(command)) {
    const set = runGit(['config', '--local', name, value], top.folder);
    if (!set.ok) return { ok: false, message: `${name}: ${set.message}` };
  }
  said.push(`this clone: git runs ${command}`);
  return { ok: true, said };
}

export function undoDrivers(cwd: string): DriverResult {
  const top = topOf(cwd);
  if (!top.ok) return top;
  const said: string[] = [];
  for (const section of ['diff.troughline', 'merge.troughline']) {
    const there = gitLine(
      ['config', '--local', '--get-regexp', `^${section.replace('.', '\\.')}\\.`],
      top.folder,
    );
    if (there === undefined || there === '') continue;
    const gone = runGit(['config', '--local', '--remove-section', section], top.folder);
    if (!gone.ok) return { ok: false, message: `${section}: ${gone.message}` };
    said.push(`this clone: ${section} is gone`);
  }
  const file = path.join(top.folder, '.gitattributes');
  const before = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const kept = before
    .split(/(?<=\n)/)
    .filter((line) => ![attributes, remark].includes(line.replace(/\r?\n$/, '')));
  if (kept.join('') !== before) {
    if (kept.join('').trim() === '') rmSync(file);
    else writeFileSync(file, kept.join(''));
    said.push('.gitattributes: the line for .trough files is gone; commit it');
  }
  return { ok: true, said: said.length > 0 ? said : ['nothing was set up here'] };
}

function topOf(
  cwd: string,
): { readonly ok: true; readonly folder: string } | { readonly ok: false; readonly message: string } {
  const found = runGit(['rev-parse', '--show-toplevel'], cwd);
  if (found.ok) return { ok: true, folder: found.out.toString('utf8').replace(/\r?\n$/, '') };
  return {
    ok: false,
    message: found.missing ? found.message : `${cwd} is no working tree of a git repository`,
  };
}
