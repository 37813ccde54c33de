// Runs the command line in this process on a folder of its own, and keeps what it printed.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';
import { run } from '../../src/cli/run.js';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder with the given files, removed after the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'trough-cli-'));
  folders.push(folder);
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), content);
  }
  return folder;
}

export interface Ran {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

export async function troughline(
  args: readonly string[],
  more: {
    cwd?: string;
    stdin?: string | Uint8Array;
    env?: Record<string, string>;
    terminal?: boolean;
    wait?: () => Promise<boolean>;
    progress?: string[];
  } = {},
): Promise<Ran> {
  let out = '';
  let err = '';
  const progress: string[] = [];
  const exit = await run(
    args,
    {
      out: (text) => void (out += text),
      err: (text) => void (err += text),
      readStdin: async () =>
        typeof more.stdin === 'string'
          ? new TextEncoder().encode(more.stdin)
          : (more.stdin ?? new Uint8Array()),
      cwd: more.cwd ?? folderWith({}),
      env: more.env ?? {},
      outIsTerminal: more.terminal ?? false,
      self: ['troughline'],
      progress: (text) => void progress.push(text),
      wait: more.wait ?? (async () => false),
    },
    '0.1.0',
  );
  more.progress?.push(...progress);
  return { exit, out, err };
}

/** For what is asked of a part of the command line alone. */
export function silentConsole(cwd: string): Parameters<typeof run>[1] {
  return {
    out: () => undefined,
    err: () => undefined,
    readStdin: async () => new Uint8Array(),
    cwd,
    env: {},
    outIsTerminal: false,
    self: ['troughline'],
    progress: () => undefined,
    wait: async () => false,
  };
}
