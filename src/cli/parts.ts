// A file that is being written stands beside its place under a name of its own, `report.html.4711.part`, with the number of
// the process that writes it. What a killed run left behind is cleared by the next one.

import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';

export function partOf(target: string): string {
  return `${target}.${process.pid}.part`;
}

/** The old file, kept until the whole set is in place. */
export function oldPartOf(target: string): string {
  return `${target}.${process.pid}.old.part`;
}

/** The place that a part was written for. */
export function placeOf(part: string): string | undefined {
  return /^(.+)\.\d+\.part$/.exec(part)?.[1];
}

const ours = /\.(?:trough|html|md|json|csv|pdf|xlsx|ics|sarif|xml|parquet)\.(\d+)(?:\.old)?\.part$/;

/** Removes the parts of runs that are no more. A run that still goes keeps its own. */
export function clearParts(folder: string): void {
  for (const name of readdirSync(folder)) {
    const [, owner] = ours.exec(name) ?? [];
    if (owner !== undefined && !isRunning(Number(owner))) rmSync(path.join(folder, name), { force: true });
  }
}

function isRunning(processId: number): boolean {
  if (processId === process.pid) return false; // numbers are used again
  try {
    process.kill(processId, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
