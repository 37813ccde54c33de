// Applies a quick fix to a text, as an editor would: from the end to the start, so that no edit moves another's place.

import type { Fix } from '../../src/validation/finding.js';

export function applied(text: string, fix: Fix): string {
  return [...fix.edits]
    .sort((a, b) => b.origin.start - a.origin.start)
    .reduce((now, { origin, text: put }) => now.slice(0, origin.start) + put + now.slice(origin.end), text);
}
