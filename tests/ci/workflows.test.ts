// The workflows under examples/ci: linted by the tools that people lint such files with, and their commands run as the runner
// would run them, on a repository with a branch that adds a look and one that edits an old reading. What a host alone can do
// (install, comment) is stood in for by programs that write down how they were called.

import { validateAction, validateWorkflow } from '@action-validator/core';
import { load } from 'js-yaml';
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { bundledCli } from '../kit/bundled-cli.js';
import { gitEnvironment, repository, type Repository } from '../kit/repository.js';
import { estateTexts, nextLook } from '../kit/small-estate.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const example = (...names: readonly string[]): string => path.join(root, 'examples', 'ci', ...names);
const yaml = (file: string): unknown => load(readFileSync(file, 'utf8'));
const program = await bundledCli();

/** Programs of the host, by name: each a line of shell. */
const shims = mkdtempSync(path.join(os.tmpdir(), 'trough-host-'));
afterAll(() => rmSync(shims, { recursive: true, force: true }));
const call = `exec "${process.execPath}" "${program}" "$@"`;
for (const [name, line] of Object.entries({
  npm: 'echo "npm $*" >> "$CALLS"',
  npx: `[ "$1" = troughline ] && shift; ${call}`,
  troughline: call,
  gh: 'echo "gh $*" >> "$CALLS"',
  date: 'echo "${TODAY:-2026-11-02}"',
  curl: 'echo "curl $*" >> "$CALLS"',
})) {
  writeFileSync(path.join(shims, name), `#!/bin/sh\n${line}\n`);
  chmodSync(path.join(shims, name), 0o755);
}

interface Step {
  readonly name?: string;
  readonly if?: string;
  readonly run?: string;
  readonly env?: Readonly<Record<string, string>>;
}

interface Played {
  /** By name of the step, its exit code. */
  readonly exits: Readonly<Record<string, number>>;
  readonly out: string;
  /** How the host's programs were called. */
  readonly calls: string;
}

/** Runs the steps one after the other as a runner does: after a failure only those that ask for it. */
function play(steps: readonly Step[], cwd: string, given: Readonly<Record<string, string>>): Played {
  const files = {
    GITHUB_OUTPUT: 'output',
    GITHUB_ENV: 'env',
    GITHUB_STEP_SUMMARY: 'summary',
    CALLS: 'calls',
  };
  const places = Object.fromEntries(
    Object.entries(files).map(([key, name]) => [key, path.join(cwd, '.git', name)]),
  );
  for (const place of Object.values(places)) writeFileSync(place, '');
  const exits: Record<string, number> = {};
  let out = '';
  for (const step of steps) {
    if (step.run === undefined) continue;
    const failed = Object.values(exits).some((code) => code !== 0);
    if (failed && !step.if?.includes('!cancelled()')) continue;
    const lines = readFileSync(places['GITHUB_ENV'] ?? '', 'utf8')
      .split('\n')
      .filter(Boolean);
    const learnt = Object.fromEntries(
      lines.map((line) => [line.slice(0, line.indexOf('=')), line.slice(line.indexOf('=') + 1)]),
    );
    if (step.if?.includes("env.ISSUE == 'true'") && given['ISSUE'] !== 'true') continue;
    const ran = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', step.run], {
      cwd,
      encoding: 'utf8',
      env: {
        ...gitEnvironment,
        ...places,
        GITHUB_WORKSPACE: cwd,
        CI: 'true',
        SOURCE_DATE_EPOCH: '1793577600',
        ...given,
        ...learnt,
        PATH: `${shims}:${process.env['PATH'] ?? ''}`,
      },
    });
    exits[step.name ?? ''] = ran.status ?? -1;
    out += ran.stdout + ran.stderr;
  }
  return { exits, out, calls: readFileSync(places['CALLS'] ?? '', 'utf8') };
}

function withBranches(): Repository {
  const made = repository(estateTexts);
  made.git('switch', '--quiet', '-c', 'look');
  made.commit('A look', { 'looks/new.trough': nextLook });
  made.git('switch', '--quiet', '-c', 'edit', 'main');
  const old = estateTexts['looks/BR1-2025-09.trough'] ?? '';
  made.commit('Tidy', { 'looks/BR1-2025-09.trough': old.replace('8.4', '7.4') });
  return made;
}

interface Hook {
  readonly id: string;
  readonly name: string;
  readonly entry: string;
  readonly language: string;
  readonly files: string;
}

function localHooks(): readonly Hook[] {
  const config = yaml(example('.pre-commit-config.yaml')) as {
    readonly repos: readonly { readonly hooks: readonly Hook[] }[];
  };
  return config.repos.flatMap(({ hooks }) => hooks);
}

describe('linted', () => {
  test('the action and the workflows by action-validator', () => {
    const text = (name: string): string => readFileSync(example('github', name), 'utf8');
    expect(validateAction(text('action.yml')).errors).toEqual([]);
    for (const name of ['pull-request.yml', 'month.yml'])
      expect(validateWorkflow(text(name)).errors).toEqual([]);
    expect(validateWorkflow(text('month.yml').replace('runs-on', 'run-on')).errors.length).toBeGreaterThan(0);
  });

  test('the hooks by the fields that their manager asks for', () => {
    // Fields of a hook as pre-commit's documentation lists them: id, name, entry and language must be there.
    const hooks = load(readFileSync(path.join(root, '.pre-commit-hooks.yaml'), 'utf8')) as readonly Hook[];
    for (const hook of [...hooks, ...localHooks()]) {
      for (const field of [hook.id, hook.name, hook.entry, hook.language]) expect(field).toMatch(/\S/);
      expect(new RegExp(hook.files).test('plant/a.trough')).toBe(true);
    }
    expect(new Set(hooks.map(({ id }) => id)).size).toBe(hooks.length);
  });

  test('the pipeline by the schema of gitlab-ci-local', () => {
    const { folder, git, commit } = repository();
    copyFileSync(example('gitlab', '.gitlab-ci.yml'), path.join(folder, '.gitlab-ci.yml'));
    commit('CI');
    git('remote', 'add', 'origin', 'git@gitlab.example:tarnholt/records.git');
    const list = (): string =>
      execFileSync(
        process.execPath,
        [path.join(root, 'node_modules/gitlab-ci-local/dist/index.js'), '--list'],
        { cwd: folder, encoding: 'utf8', env: gitEnvironment, stdio: 'pipe' },
      );
    expect(list()).toMatch(/records|name/);
    writeFileSync(path.join(folder, '.gitlab-ci.yml'), 'records:\n  script: 5\n  when: tuesday\n');
    expect(list).toThrow();
  });
});

describe('a pull request', () => {
  const action = yaml(example('github', 'action.yml')) as {
    readonly runs: { readonly steps: readonly Step[] };
  };
  const inputs = {
    PACKAGE: 'troughline',
    ESTATE: '.',
    BASE: 'main',
    FAIL_ON: 'history',
    SEVERITY: 'error',
    GH_TOKEN: 'x',
    PULL_REQUEST: 'address',
  };

  test('that adds an inspection passes, and the comment says what it means in under ten lines', () => {
    const made = withBranches();
    made.git('switch', '--quiet', 'look');
    const { exits, calls } = play(action.runs.steps, made.folder, inputs);
    expect(exits).toEqual({ Install: 0, Check: 0, 'What the change means': 0, Comment: 0 });
    const comment = readFileSync(path.join(made.folder, 'troughline-comment.md'), 'utf8');
    expect(comment.trimEnd().split('\n').length).toBeLessThan(10);
    for (const words of ['1 inspection added', 'BR1 (inspected): limit by', 'steel', 'order', 'action: '])
      expect(comment).toContain(words);
    expect(calls).toContain(
      'gh pr comment address --edit-last --create-if-none --body-file troughline-comment.md',
    );
    expect(existsSync(path.join(made.folder, 'troughline.sarif'))).toBe(true);
  });

  test('that edits an old reading fails for that reason, and says so on the pull request all the same', () => {
    const made = withBranches();
    const { exits, out, calls } = play(action.runs.steps, made.folder, inputs);
    expect(exits).toMatchObject({ Check: 0, 'What the change means': 1, Comment: 0 });
    expect(out).toContain(
      'history edited: BR1, inspection of 2025-09-15: P1 thickness 8.4 mm → P1 thickness 7.4 mm',
    );
    expect(readFileSync(path.join(made.folder, 'troughline-comment.md'), 'utf8')).toContain(
      '⚠ HISTORY EDITED',
    );
    expect(calls).toContain('gh pr comment');
  });

  test('goes the same way as a merge request', () => {
    const jobs = yaml(example('gitlab', '.gitlab-ci.yml')) as Readonly<
      Record<string, { readonly script: readonly string[] }>
    >;
    const made = withBranches();
    const review = (branch: string): Played => {
      made.git('switch', '--quiet', branch);
      return play([{ name: 'review', run: (jobs['records']?.script ?? []).join('\n') }], made.folder, {
        ...inputs,
        CI_PROJECT_DIR: made.folder,
        CI_MERGE_REQUEST_DIFF_BASE_SHA: 'main',
        COMMENT_TOKEN: 't',
        CI_API_V4_URL: 'u',
        CI_PROJECT_ID: '1',
        CI_MERGE_REQUEST_IID: '2',
      });
    };
    const edited = review('edit');
    expect(edited.exits).toEqual({ review: 1 });
    expect(edited.calls).toContain('curl');
    expect(JSON.parse(readFileSync(path.join(made.folder, 'quality.json'), 'utf8'))).toEqual([]);
  });
});

describe('a month', () => {
  /** With a place to push to, and the branch that follows it. */
  function withRemote(): Repository {
    const made = repository(estateTexts);
    made.git(
      'init',
      '--quiet',
      '--bare',
      '--initial-branch',
      'main',
      path.join(made.folder, '.git', 'elsewhere'),
    );
    made.git('remote', 'add', 'origin', path.join(made.folder, '.git', 'elsewhere'));
    made.git('push', '--quiet', '--set-upstream', 'origin', 'main');
    return made;
  }

  test('makes the set, commits it with its own message, and the next one is held against it', () => {
    const workflow = yaml(example('github', 'month.yml')) as {
      readonly jobs: {
        readonly month: { readonly steps: readonly Step[]; readonly env: Readonly<Record<string, string>> };
      };
    };
    const { steps, env } = workflow.jobs.month;
    const made = withRemote();
    const first = play(steps, made.folder, env);
    expect(
      Object.values(first.exits).every((code) => code === 0),
      first.out,
    ).toBe(true);
    expect(first.exits).not.toHaveProperty('Open an issue');
    const set = path.join(made.folder, 'months/2026-11');
    expect(existsSync(path.join(set, 'report.html'))).toBe(true);
    const pushed = made.git('show', '--stat=200', 'origin/main');
    expect(pushed).toContain('months/2026-11/report.json');
    expect(pushed).toContain('months/tables/points/plant=Tarnholt/month=2026-11/points.parquet');
    const log = (): string => made.git('log', '-1', '--format=%B', 'origin/main').trim();
    expect(log()).toBe(readFileSync(path.join(set, 'message.txt'), 'utf8').trim());
    expect(readFileSync(path.join(made.folder, '.git', 'summary'), 'utf8')).toContain('2026-11: ');
    // The same day again adds nothing; a month on, the set is compared with the one that was published.
    const before = made.git('rev-parse', 'origin/main');
    expect(play(steps, made.folder, env).exits).toMatchObject({ 'Keep it in the repository': 0 });
    expect(made.git('rev-parse', 'origin/main')).toBe(before);
    made.write({ 'looks/new.trough': nextLook });
    const next = play(steps, made.folder, { ...env, ISSUE: 'true', TODAY: '2026-12-01' });
    expect(next.exits, next.out).toMatchObject({ 'Open an issue': 0 });
    expect(log()).toMatch(/^2026-12: .*\n\nSince the report of 2026-11-02: 1 inspection added/);
    expect(next.calls).toMatch(/gh issue create --title 2026-12: .* --body-file months\/2026-12\/changes.md/);
  });

  test('goes the same way on a schedule of a pipeline', () => {
    const jobs = yaml(example('gitlab', '.gitlab-ci.yml')) as Readonly<
      Record<string, { readonly script: readonly string[] }>
    >;
    const made = withRemote();
    const given = { PACKAGE: 'troughline', ESTATE: '.', MONTHS: 'months', CI_DEFAULT_BRANCH: 'main' };
    const run = (more: Readonly<Record<string, string>>): Played =>
      play([{ name: 'month', run: (jobs['month']?.script ?? []).join('\n') }], made.folder, {
        ...given,
        ...more,
      });
    const kept = run({ PUSH_URL: path.join(made.folder, '.git', 'elsewhere') });
    expect(kept.exits, kept.out).toEqual({ month: 0 });
    made.git('fetch', '--quiet', 'origin');
    expect(made.git('log', '-1', '--format=%s', 'origin/main')).toMatch(/^2026-11: /);
  });
});

describe('a commit', () => {
  test('that edits history is stopped by the hook, one that adds a look is not', () => {
    const made = repository(estateTexts);
    const [, history] = localHooks();
    const hook = (): Played => play([{ name: 'hook', run: history?.entry ?? '' }], made.folder, {});
    made.write({ 'looks/new.trough': nextLook });
    expect(hook().exits).toEqual({ hook: 0 });
    made.write({
      'looks/BR1-2025-09.trough': (estateTexts['looks/BR1-2025-09.trough'] ?? '').replace('8.4', '7.4'),
    });
    const stopped = hook();
    expect(stopped.exits).toEqual({ hook: 1 });
    expect(stopped.out).toContain('history edited');
  });
});

describe('the snippet of the README', () => {
  test('works as printed, and reports although check found something', () => {
    const readme = readFileSync(path.join(root, 'README.md'), 'utf8');
    const snippet = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
    const steps = (load(snippet) as readonly Step[]).map((step, i) => ({ ...step, name: String(i) }));
    const { folder } = repository({ ...estateTexts, 'wrong.trough': 'plant B {\n  risk 5 kg\n}\n' });
    const { exits, calls } = play(steps, folder, {});
    expect(exits).toEqual({ 0: 0, 1: 1, 2: 1 });
    expect(calls).toContain('npm install');
    expect(existsSync(path.join(folder, 'reports/report.html'))).toBe(true);
    expect(readFileSync(path.join(folder, '.git', 'summary'), 'utf8')).toContain('### Check: ');
  });
});
