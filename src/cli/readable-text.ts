// A text as `git diff` shows it once the driver is set up: a line a fact, each with the block it belongs to in front, so that a
// changed reading says whose it is and of which day, and a layout or an order that changed shows nothing.

import { blocksOf, type TextBlock } from '../language/blocks.js';
import { scanComments } from '../language/comments.js';

/** The text itself where it does not parse. */
export function readableText(text: string): string {
  const blocks = blocksOf(text);
  if (!blocks) return text;
  const comments = scanComments(text).map(({ text: said }) => `// ${said.replace(/\s+/g, ' ')}`);
  const lines = [...blocks].sort(byIdentity).flatMap(linesOf);
  return [...lines, ...comments].map((line) => `${line}\n`).join('');
}

function linesOf({ identity, head, facts }: TextBlock): readonly string[] {
  return [identity, ...[...head, ...facts].map(({ words }) => `${identity}: ${words}`)];
}

function byIdentity(a: TextBlock, b: TextBlock): number {
  return a.identity < b.identity ? -1 : a.identity > b.identity ? 1 : a.start - b.start;
}
