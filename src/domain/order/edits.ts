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
    if (!now) edits.push({ origin: takenOut(step, after), text: '' });
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
    if (anchor) {
      const end = anchor.remark?.end ?? anchor.origin.end;
      edits.push({ origin: pointAt(anchor.origin, end), text: `\n    ${lineOf(step)}` });
    } else late.push(lineOf(step));
    const next = after.slice(i + 1).find((each) => stays.has(each));
    if (!anchor && next && !after.slice(0, i).some((each) => stays.has(each))) {
      const target = before.find((each) => kept.get(each) === next);
      if (target && after[i + 1] === next)
        edits.push({
          origin: pointAt(target.origin, target.origin.start),
          text: late
            .splice(0)
            .map((line) => `${line}\n    `)
            .join(''),
        });
    }
  }
  return merge(late.length > 0 && job.order ? [...inPlaceOf(before, edits, job.order.origin, late)] : edits);
}

/** Where no step stays, the new ones stand in the place of the first, or in the empty braces. */
function inPlaceOf(
  before: readonly Step[],
  edits: readonly OrderEdit[],
  order: Origin,
  lines: readonly string[],
): readonly OrderEdit[] {
  const text = lines.join('\n    ');
  const [first, ...others] = edits;
  return before.length > 0 && first
    ? [{ ...first, text }, ...others]
    : [{ origin: pointAt(order, order.end - 1), text: `\n    ${text}\n  ` }];
}

/** A comment behind a step goes where the step goes; that of a step which is left out for good stays to be read. */
function takenOut(step: Step, after: readonly Step[]): Origin {
  const moves = step.remark !== undefined && after.some((each) => isSame(step, each));
  return moves ? { ...step.origin, end: step.remark.end } : step.origin;
}

function lineOf(step: Step): string {
  return step.remark ? `${stepText(step)} ${step.remark.text}` : stepText(step);
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
  const n = before.length;
  const m = after.length;
  const table: Int32Array[] = Array.from({ length: n + 1 }, () => new Int32Array(m + 1));
  const at = (i: number, j: number): number => table[i]?.[j] ?? 0;
  for (let i = n - 1; i >= 0; i--) {
    for (let j = m - 1; j >= 0; j--) {
      const a = before[i];
      const b = after[j];
      table[i]![j] = a && b && isSame(a, b) ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1)); // row i exists
    }
  }
  const kept = new Map<Step, Step>();
  for (let i = 0, j = 0; i < n && j < m;) {
    const a = before[i];
    const b = after[j];
    if (a && b && isSame(a, b)) {
      kept.set(a, b);
      i++;
      j++;
    } else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return kept;
}

/** The same step of the text, whatever a repair has changed in it. */
function isSame(a: Step, b: Step): boolean {
  return (
    a.action === b.action &&
    a.origin.start === b.origin.start &&
    a.origin.end === b.origin.end &&
    a.origin.source === b.origin.source
  );
}
