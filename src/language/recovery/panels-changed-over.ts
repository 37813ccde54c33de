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
  const line = done ? (exchange(words, done) ?? withAnother(words, done)) : undefined;
  const end = block === 'PanelsMoved' && !isTurned ? turnedIn(words) : undefined;
  if (end)
    return {
      at: 0,
      message: `The other way round is \`turned end for end\`: \`${imagesOf(end)}\`.`,
      repair: changed(written, end),
      senses: words.map(({ image }): SaidBy => [image.toLowerCase(), 'turned end for end']),
    };
  if (line && block === 'PanelsMoved') {
    const told = `Each of them is named: \`${imagesOf(line)}\`.`;
    const senses: readonly SaidBy[] = [
      [plainImage(done ?? first).toLowerCase(), 'exchanged with'],
      ['panels', 'panel'],
      ['and', 'exchanged with'],
      ['with', 'exchanged with'],
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

const turning = /^(?:reversed|turned|rotated|flipped|turned round|turned around)$/;
const saysNoMore = /^(?:round|around|was|is|the|other|way|end|over|by|180|deg)$/;

/** `panel 2 of run 2 reversed`, `panel 2 of run 2 turned round` */
function turnedIn(words: readonly Word[]): readonly Word[] | undefined {
  const [panel, count, of, run, ...more] = words;
  if (!panel || count?.type !== 'NUMBER' || of?.type !== 'of run' || !run) return undefined;
  const plain = more.filter(({ type }) => type !== 'STRING');
  const isTurned = plain.some(({ image }) => turning.test(image.toLowerCase()));
  if (!isTurned || !plain.every(({ image }) => turning.test(image) || saysNoMore.test(image.toLowerCase())))
    return undefined;
  return [
    panel,
    count,
    of,
    run,
    keyword('turned end for end'),
    ...more.filter(({ type }) => type === 'STRING'),
  ];
}

/** `panel 1 of run 2 swapped with panel 3 of run 2` */
function withAnother(words: readonly Word[], done: Word): readonly Word[] | undefined {
  const at = words.indexOf(done);
  const behind = words.slice(at + 1);
  const other = behind[0]?.image === 'with' || behind[0]?.type === 'and' ? behind.slice(1) : behind;
  const [one, two] = [words.slice(0, at), other.slice(0, 4)];
  const isPanel = ([panel, count, of, run]: readonly Word[]): boolean =>
    panel?.type === 'panel' && count?.type === 'NUMBER' && of?.type === 'of run' && run !== undefined;
  if (one.length !== 4 || !isPanel(one) || !isPanel(two)) return undefined;
  const more = other.slice(4);
  return more.every(({ type }) => type === 'STRING')
    ? [...one, keyword('exchanged with'), ...two, ...more]
    : undefined;
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
