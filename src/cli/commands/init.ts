// `troughline init`: a first estate that checks clean, cut from the first example into one file a thing, and the files for a build
// server. Nothing is ever written over: either all files are new, or none is written.

import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { blocksOf, type TextBlock } from '../../language/blocks.js';
import { Exit, Trouble, type Console } from '../console.js';
import { told } from '../foreign-text.js';
import { starterFiles } from '../generated/starter-files.js';
import { reasonOf } from '../reason.js';

export interface InitOptions {
  readonly ci: 'github' | 'gitlab' | 'both' | 'none';
}

export function init(given: string, { ci }: InitOptions, console: Console): number {
  const folder = path.resolve(console.cwd, given);
  const files = [...estateFiles(), ...ciFiles(ci)];
  const there = files.filter(([name]) => existsSync(path.join(folder, name)));
  if (there.length > 0)
    throw new Trouble(
      `${there.map(([name]) => told(path.join(given, name))).join(', ')}: there already; nothing was written. Take an empty folder, or move what is there`,
    );
  const written: string[] = [];
  try {
    for (const [name, text] of files) {
      const full = path.join(folder, name);
      mkdirSync(path.dirname(full), { recursive: true });
      writeFileSync(full, text, { flag: 'wx' });
      written.push(full);
    }
  } catch (error) {
    for (const full of written) rmSync(full, { force: true });
    throw new Trouble(`${told(given)}: could not write: ${reasonOf(error)}; nothing was written`);
  }
  for (const [name] of files) console.out(`${told(path.join(given, name))}\n`);
  console.err(
    `Next: troughline check ${told(given)}, then change the files into your own.\n` +
      'In a git repository, troughline git setup lets git show and merge them by facts.\n',
  );
  return Exit.clean;
}

type NamedText = readonly [name: string, text: string];

/** The first example, each block with what leads it in, in the file where it would be looked for. */
function estateFiles(): readonly NamedText[] {
  const text: string = starterFiles.conveyor;
  const files = new Map<string, string>();
  let at = 0;
  for (const block of blocksOf(text) ?? []) {
    const name = fileOf(block);
    const own = text.slice(at, block.end).trim();
    files.set(name, files.has(name) ? `${files.get(name) ?? ''}\n${own}\n` : `${own}\n`);
    at = block.end;
  }
  return [...files];
}

function fileOf({ kind, name, date }: TextBlock): string {
  switch (kind) {
    case 'conveyor':
      return `conveyors/${name}.trough`;
    case 'inspection':
      return `inspections/${name}/${date ?? 'first'}.trough`;
    case 'plant':
    case 'liner':
    case 'screw':
    case 'job':
      return `${kind}${kind === 'plant' ? '' : 's'}.trough`;
    case 'reline':
    case 'panels moved':
    case 'screw change':
    case 'meter change':
    case 'duty':
    case 'drive change':
    case 'patch':
    case 'serviced':
    case 'correction':
      return `history/${name}.trough`;
  }
}

function ciFiles(ci: InitOptions['ci']): readonly NamedText[] {
  const github: readonly NamedText[] = [
    ['.github/actions/troughline/action.yml', starterFiles.githubAction],
    ['.github/workflows/records.yml', starterFiles.githubPullRequest],
    ['.github/workflows/month.yml', starterFiles.githubMonth],
  ];
  const gitlab: readonly NamedText[] = [['.gitlab-ci.yml', starterFiles.gitlab]];
  const hooks: readonly NamedText[] = [['.pre-commit-config.yaml', starterFiles.hooks]];
  switch (ci) {
    case 'github':
      return [...github, ...hooks];
    case 'gitlab':
      return [...gitlab, ...hooks];
    case 'both':
      return [...github, ...gitlab, ...hooks];
    case 'none':
      return [];
  }
}
