// A git repository of its own for one test, removed after it: no settings of the machine reach it, and its days are fixed.

import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

export interface Repository {
  readonly folder: string;
  /** Runs git and gives what it printed; throws where git ends with anything but 0. */
  git(...args: readonly string[]): string;
  write(files: Readonly<Record<string, string>>): void;
  /** Writes the files and commits everything. */
  commit(message: string, files?: Readonly<Record<string, string>>): void;
}

export const gitEnvironment = {
  ...process.env,
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_AUTHOR_NAME: 'A fitter',
  GIT_AUTHOR_EMAIL: 'fitter@tarnholt.example',
  GIT_AUTHOR_DATE: '2026-11-02T08:00:00Z',
  GIT_COMMITTER_NAME: 'A fitter',
  GIT_COMMITTER_EMAIL: 'fitter@tarnholt.example',
  GIT_COMMITTER_DATE: '2026-11-02T08:00:00Z',
};

export function repository(files: Readonly<Record<string, string>> = {}): Repository {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'trough-git-'));
  made.push(folder);
  const git = (...args: readonly string[]): string =>
    execFileSync('git', args, { cwd: folder, encoding: 'utf8', env: gitEnvironment, stdio: 'pipe' });
  const write = (texts: Readonly<Record<string, string>>): void => {
    for (const [name, content] of Object.entries(texts)) {
      mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
      writeFileSync(path.join(folder, name), content);
    }
  };
  const commit = (message: string, texts: Readonly<Record<string, string>> = {}): void => {
    write(texts);
    git('add', '-A');
    git('commit', '--quiet', '--allow-empty', '-m', message);
  };
  git('init', '--quiet', '--initial-branch', 'main');
  if (Object.keys(files).length > 0) commit('The estate', files);
  return { folder, git, write, commit };
}
