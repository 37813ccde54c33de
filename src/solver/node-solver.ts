// The solver's binary beside the bundle, or where the package keeps it when the source runs as it is.

import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { ProgrammeSolver } from '../domain/decision/integer-programme.js';
import { highsSolver } from './highs.js';

let loaded: Promise<ProgrammeSolver> | undefined;

export function nodeSolver(): Promise<ProgrammeSolver> {
  return (loaded ??= highsSolver(binary()));
}

function binary(): string {
  // Chunks lie one folder below the bundle.
  for (const beside of ['./highs.wasm', '../highs.wasm']) {
    const file = fileURLToPath(new URL(beside, import.meta.url));
    if (existsSync(file)) return file;
  }
  return createRequire(import.meta.url).resolve('highs/runtime');
}
