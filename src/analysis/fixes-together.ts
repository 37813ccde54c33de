// Which fixes can be taken in one go? Of each finding the fix that needs no question, or the line that is offered for one that cannot
// be read; whole or not at all: half an order repair would take a step out and put it nowhere. First come, first served where two
// would change the same text; the other is offered again once the first is in.

import type { Origin } from '../domain/model/origin.js';
import type { Edit, Finding, Fix } from '../validation/finding.js';

/** The fix in which nothing is guessed. */
export function certainFix({ fixes }: Finding): Fix | undefined {
  return fixes?.find(({ preferred }) => preferred);
}

/** The line that is offered for one that cannot be read: its author has to read it before it counts. */
export function offeredFix({ fixes }: Finding): Fix | undefined {
  return fixes?.find(({ offered }) => offered);
}

/** In the order of the findings. None of their edits meet, within a fix or between two. */
export function fixesTogether(
  findings: readonly Finding[],
  uriOf: (origin: Origin) => string,
  fixOf: (finding: Finding) => Fix | undefined = certainFix,
): readonly Fix[] {
  const chosen: Fix[] = [];
  const taken = new Map<string, Edit[]>();
  for (const finding of findings) {
    const fix = fixOf(finding);
    if (!fix) continue;
    const clear = fix.edits.every(
      (edit, i) =>
        !fix.edits
          .slice(0, i)
          .some((other) => uriOf(other.origin) === uriOf(edit.origin) && meet(other, edit)) &&
        !taken.get(uriOf(edit.origin))?.some((other) => meet(other, edit)),
    );
    if (!clear) continue;
    chosen.push(fix);
    for (const edit of fix.edits)
      taken.set(uriOf(edit.origin), [...(taken.get(uriOf(edit.origin)) ?? []), edit]);
  }
  return chosen;
}

/** The text with edits that do not meet, in any order. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.origin.start - a.origin.start)
    .reduce((now, { origin, text: put }) => now.slice(0, origin.start) + put + now.slice(origin.end), text);
}

/** Whether two edits share a character, or start at one place, where nothing says which goes first. */
function meet({ origin: a }: Edit, { origin: b }: Edit): boolean {
  return a.start === b.start || (a.start < b.end && b.start < a.end);
}
