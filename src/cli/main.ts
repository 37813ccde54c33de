#!/usr/bin/env node
// Binds the command line to this process: its streams, its folder, its exit code.

import { fstatSync, readSync, statSync } from 'node:fs';
import { buffer } from 'node:stream/consumers';
import { setTimeout as sleep } from 'node:timers/promises';
import { Exit } from './console.js';
import { reasonOf } from './reason.js';
import { run } from './run.js';

declare const TROUGHLINE_VERSION: string | undefined;

// What was not written is trouble. A reader that goes away (`troughline check | head`) needs no message, like one that is
// ended by a broken pipe.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') tell(`standard output: ${reasonOf(error)}`);
  process.exit(Exit.trouble);
});
process.stderr.on('error', () => undefined); // nobody is left to tell

const args = process.argv.slice(2);
const goesNowhere = isClosed(process.stdout.fd);
let lost = false;
let inProgress = false;

const exit = await run(
  args,
  {
    out: (text) => {
      clearProgress();
      if (goesNowhere && !lost) tell('standard output is closed');
      lost ||= goesNowhere;
      process.stdout.write(text);
    },
    err: (text) => {
      clearProgress();
      process.stderr.write(text);
    },
    readStdin: () => buffer(process.stdin),
    cwd: process.cwd(),
    env: process.env,
    outIsTerminal: process.stdout.isTTY,
    self: [process.execPath, ...process.argv.slice(1, 2)],
    progress: (text) => {
      if (!process.stderr.isTTY || args.includes('--quiet') || args.includes('-q')) return;
      process.stderr.write(`\r\u001b[K${text} …`);
      inProgress = true;
    },
    wait: async (milliseconds) => {
      await sleep(milliseconds);
      return true;
    },
  },
  typeof TROUGHLINE_VERSION === 'string' ? TROUGHLINE_VERSION : 'development',
);
clearProgress();
// What `check` has to say, its exit code says too.
// eslint-disable-next-line @typescript-eslint/no-unnecessary-condition -- a stream that breaks sets it
process.exitCode = lost && exit === Exit.clean && args[0] !== 'check' ? Exit.trouble : exit;

/** The line of progress is not part of what was asked for, and leaves no trace. */
function clearProgress(): void {
  if (inProgress) process.stderr.write('\r\u001b[K');
  inProgress = false;
}

function tell(message: string): void {
  process.stderr.write(`troughline: ${message}\n`);
}

/** Node opens the null device both ways in place of a stream that is closed; `> /dev/null` can only be written to. */
function isClosed(stream: number): boolean {
  if (process.platform === 'win32') return false;
  try {
    const [here, nothing] = [fstatSync(stream), statSync('/dev/null')];
    if (!here.isCharacterDevice() || here.rdev !== nothing.rdev) return false;
    readSync(stream, new Uint8Array(1));
    return true;
  } catch {
    return false;
  }
}
