#!/usr/bin/env node
// Binds the command line to this process: its streams, its folder, its exit code.

import { buffer } from 'node:stream/consumers';
import { run } from './run.js';

declare const TROUGHLINE_VERSION: string | undefined;

// A reader that goes away (`troughline check | head`) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

process.exitCode = await run(
  process.argv.slice(2),
  {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    readStdin: () => buffer(process.stdin),
    cwd: process.cwd(),
    env: process.env,
    outIsTerminal: process.stdout.isTTY,
  },
  typeof TROUGHLINE_VERSION === 'string' ? TROUGHLINE_VERSION : 'development',
);
