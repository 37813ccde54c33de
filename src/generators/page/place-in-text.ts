// Marks what stands for a line of the author's text, so that an editor's preview can lead back to it. On paper it is nothing.

import type { Attributes } from './markup.js';

/** @param origin numbers that only the language turns into file, line and column. */
export function placeInText(origin: {
  readonly source: number;
  readonly start: number;
  readonly end: number;
}): Attributes {
  return { 'data-origin': `${origin.source}:${origin.start}:${origin.end}` };
}
