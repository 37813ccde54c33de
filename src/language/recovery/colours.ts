// Words that are colours of a layer of liner, and nothing else.

import type { Word } from './word.js';

/** Of makes of liner: any word may be the name of a layer, these are nothing else. */
const colours: ReadonlySet<string> = new Set(
  (
    'white black red green blue yellow orange brown grey gray teal ivory amber natural pink purple violet beige cream turquoise sand silver ' +
    'lime olive magenta cyan ochre mint khaki maroon navy lilac'
  ).split(' '),
);

export function isColour(word: Word | undefined): boolean {
  return word?.type === 'ID' && colours.has(word.image.toLowerCase());
}
