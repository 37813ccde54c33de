// Panels that changed places or were turned end for end, in the words of whoever did it: `panel 2 and 3 of run 1 swapped`. It is a
// record of its own, because the wear goes with the sheet; as work or as a remark it would move nothing.

import { joined } from './joined.js';
import type { BrokenLine } from './broken-line.js';
import type { SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

const over: ReadonlySet<string> = new Set([
  'swapped',
  'swopped',
  'exchanged',
  'interchanged',
  'exchanged with',
  'swap',
  'changed',
]);

export function panelsChangedOver({ block, words: written }: BrokenLine): Otherwise | undefined {
  // `run 1 swapped` reads as a number with its unit.
  const words = joined(written);
  const [first] = words;
  if (!['Inspection', 'Reline', 'PanelsMoved'].includes(block)) return undefined;
  if (first?.type !== 'panel' && first?.type !== 'panels') return undefined;
  const isTurned = words.some(({ type }) => type === 'turned end for end');
  const done = words.find((word) => over.has(plainImage(word).toLowerCase()));
  const line = done ? exchange(words, done) : undefined;
  if (line && block === 'PanelsMoved') {
    const told = `Each of them is named: \`${imagesOf(line)}\`.`;
    const senses: readonly SaidBy[] = [
      [plainImage(done ?? first).toLowerCase(), 'exchanged with'],
      ['panels', 'panel'],
      ['and', 'exchanged with'],
    ];
    return { at: 0, message: told, repair: changed(written, line), senses };
  }
  if (block === 'PanelsMoved' || (!line && !isTurned)) return undefined;
  const row = imagesOf(line ?? words);
  return {
    at: 0,
    message:
      'Panels that were turned or changed places are a record of their own, with the meter of that day: the wear goes with them. ' +
      `\`panels moved DG1 2026-03-14 meter 8120 h {\`, \`${row}\`, \`}\`.`,
  };
}

/** `panel 2 and 3 of run 1 swapped "why"` as `panel 2 of run 1 exchanged with panel 3 of run 1 "why"`; undefined of any other line. */
function exchange(words: readonly Word[], done: Word): readonly Word[] | undefined {
  const rest = words.filter((word) => word !== done);
  const [panel, a, , b, of, run, ...more] = rest;
  const isTwo =
    a?.type === 'NUMBER' && ['and', ',', 'with'].includes(rest[2]?.image ?? '') && b?.type === 'NUMBER';
  if (!panel || !isTwo || of?.type !== 'of run' || !run) return undefined;
  if (more.some(({ type }) => type !== 'STRING')) return undefined;
  const one = keyword('panel');
  return [one, a, of, run, keyword('exchanged with'), one, b, of, run, ...more];
}
