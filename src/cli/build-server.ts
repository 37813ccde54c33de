// What a build server tells a program through its environment: where the repository lies that its pages speak of, and where a
// summary of the job is to be written.

import { appendFileSync } from 'node:fs';
import path from 'node:path';
import { Trouble, type Console } from './console.js';
import { slashes } from './foreign-text.js';
import { reasonOf } from './reason.js';

/** The name of a file in the repository; as the command line has it where no build server says where that lies. */
export function repositoryName(file: string, { cwd, env }: Console): string {
  const top = env['GITHUB_WORKSPACE'] ?? env['CI_PROJECT_DIR'];
  if (top === undefined || top === '') return file;
  const below = path.relative(top, path.resolve(cwd, file));
  return below.startsWith('..') || path.isAbsolute(below) ? file : slashes(below);
}

/** Adds to the summary of the job, where the runner names a file for it. */
export function addToJobSummary(markdown: string, { cwd, env }: Console): void {
  const file = env['GITHUB_STEP_SUMMARY'];
  if (file === undefined || file === '') return;
  try {
    appendFileSync(path.resolve(cwd, file), `${markdown}\n`);
  } catch (error) {
    throw new Trouble(`the job summary (GITHUB_STEP_SUMMARY): ${reasonOf(error)}`);
  }
}
