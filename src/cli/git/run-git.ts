// Runs the git command of this machine and tells in words what went wrong. Only questions are asked here that run no program
// of the repository's choosing: no hooks, no filters, no monitors; the settings of the user stay as they are.

import { spawnSync } from 'node:child_process';

export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer }
  | { readonly ok: false; readonly message: string; readonly missing?: true };

/** Files of half a million readings, many times over. */
const largestAnswer = 1024 * 1024 * 1024;

export function runGit(args: readonly string[], cwd: string, input?: string): GitAnswer {
  const { error, status, stdout, stderr } = spawnSync(
    'git',
    ['-c', 'core.fsmonitor=false', '-c', 'core.quotePath=false', ...args],
    {
      cwd,
      maxBuffer: largestAnswer,
      ...(input === undefined ? {} : { input }),
      // Messages in one language, so that those that are looked for below are found.
      env: { ...process.env, LC_ALL: 'C', GIT_OPTIONAL_LOCKS: '0' },
    },
  );
  if (error)
    return 'code' in error && error.code === 'ENOENT'
      ? {
          ok: false,
          message: 'there is no git command on this machine (or this folder is gone)',
          missing: true,
        }
      : { ok: false, message: error.message };
  if (status === 0) return { ok: true, out: stdout };
  return {
    ok: false,
    message: stderr.toString('utf8').trim().split('\n')[0] ?? `git ended with ${status ?? '?'}`,
  };
}

/** One line of text, where that is all that is expected. */
export function gitLine(args: readonly string[], cwd: string): string | undefined {
  const answer = runGit(args, cwd);
  return answer.ok ? answer.out.toString('utf8').replace(/\r?\n$/, '') : undefined;
}
