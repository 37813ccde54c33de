// Turns changes of steps into replacements of the author's text. A step that stays keeps its place and comments; a moved
// step leaves an empty line behind, which whoever applies the edit may take away with it.

import type { Job, Step } from '../model/job.js';
import type { Origin } from '../model/origin.js';
import { changeSteps } from './change-steps.js';
import { stepText } from './words.js';
import type { StepChange } from './violation.js';

export interface OrderEdit {
  /** An origin with start = end is an insertion. */
  readonly origin: Origin;
  readonly text: string;
}

/** None overlap; empty where nothing changes. Steps are indented by four spaces, as the formatter does. */
export function editsOf(job: Job, changes: readonly StepChange[]): readonly OrderEdit[] {
  const before = job.order?.steps ?? [];
  const after = changeSteps(before, changes);
  const kept = longestKept(before, after);
  const edits: OrderEdit[] = [];
  for (const step of before) {
    const now = kept.get(step);
    if (!now) edits.push({ origin: step.origin, text: '' });
    else if (stepText(now) !== stepText(step)) edits.push({ origin: step.origin, text: stepText(now) });
  }
  const stays = new Set(kept.values());
  let anchor: Step | undefined;
  const late: string[] = [];
  for (const [i, step] of after.entries()) {
    if (stays.has(step)) {
      anchor = before.find((each) => kept.get(each) === step);
      continue;
    }
    if (anchor)
      edits.push({ origin: pointAt(anchor.origin, anchor.origin.end), text: `\n    ${stepText(step)}` });
    else late.push(`${stepText(step)}\n    `);
    const next = after.slice(i + 1).find((each) => stays.has(each));
    if (!anchor && next && !after.slice(0, i).some((each) => stays.has(each))) {
      const target = before.find((each) => kept.get(each) === next);
      if (target && after[i + 1] === next)
        edits.push({ origin: pointAt(target.origin, target.origin.start), text: late.splice(0).join('') });
    }
  }
  return merge(edits);
}

function pointAt(origin: Origin, at: number): Origin {
  return { source: origin.source, start: at, end: at };
}

/** Insertions at one place become one edit, in order. */
function merge(edits: readonly OrderEdit[]): OrderEdit[] {
  const merged: OrderEdit[] = [];
  for (const edit of edits) {
    const last = merged.findIndex(
      (other) =>
        other.origin.start === edit.origin.start &&
        other.origin.end === edit.origin.end &&
        edit.origin.start === edit.origin.end,
    );
    const known = merged[last];
    if (known) merged[last] = { origin: known.origin, text: known.text + edit.text };
    else merged.push(edit);
  }
  return merged;
}

/** The longest list of steps that keep their order, old step to new: everything else is taken out and put in again. */
function longestKept(before: readonly Step[], after: readonly Step[]): Map<Step, Step> {
  const same = (a: Step, b: Step): boolean =>
    a.action === b.action &&
    a.origin.start === b.origin.start &&
    a.origin.end === b.origin.end &&
    a.origin.source === b.origin.source;
  const n = before.length;
  const m = after.length;
  const table: Int32Array[] = Array.from({ length: n + 1 }, () => new Int32Array(m + 1));
  const at = (i: number, j: number): number => table[i]?.[j] ?? 0;
  for (let i = n - 1; i >= 0; i--) {
    for (let j = m - 1; j >= 0; j--) {
      const a = before[i];
      const b = after[j];
      table[i]![j] = a && b && same(a, b) ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1)); // row i exists
    }
  }
  const kept = new Map<Step, Step>();
  for (let i = 0, j = 0; i < n && j < m;) {
    const a = before[i];
    const b = after[j];
    if (a && b && same(a, b)) {
      kept.set(a, b);
      i++;
      j++;
    } else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return kept;
}
