// The solver's binary beside the bundle, or where the package keeps it when the source runs as it is.

import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { ProgrammeSolver } from '../domain/decision/integer-programme.js';
import { highsSolver } from '../solver/highs.js';

let loaded: Promise<ProgrammeSolver> | undefined;

export function nodeSolver(): Promise<ProgrammeSolver> {
  return (loaded ??= highsSolver(readFileSync(binary())));
}

function binary(): URL | string {
  // Chunks lie one folder below the bundle.
  for (const beside of ['./highs.wasm', '../highs.wasm']) {
    const url = new URL(beside, import.meta.url);
    if (existsSync(url)) return url;
  }
  return createRequire(import.meta.url).resolve('highs/runtime');
}
