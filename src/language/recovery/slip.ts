// What an author is told of a line that cannot be read, with its place in the text and the change that mends it.

import type { SaidOver } from '../../domain/model/problem.js';
import { workOf } from './done-words.js';
import { overOf } from './over-line.js';
import { dated } from './record-words.js';
import type { TokenPlaces } from './places.js';
import type { BrokenLine } from './broken-line.js';
import { partOfWord } from './part-words.js';
import type { LineRepair } from './repairs.js';
import { linesOf } from './several-lines.js';
import { imagesOf, isWord } from './word.js';
import { tellBroken } from './telling.js';

export interface Slip {
  readonly start: number;
  readonly end: number;
  readonly message: string;
  /** The change of the text that mends it, where one is likeliest. */
  readonly mend?: {
    readonly start: number;
    readonly end: number;
    readonly text: string;
    /** Nothing is guessed in it. */
    readonly isSure?: boolean;
  };
  /** It may say that something is over, with where it begins and ends. */
  readonly over?: Omit<SaidOver, 'origin'> & { readonly start: number; readonly end: number };
  /** Told instead where the conveyor has nothing of these names, which the line that is offered takes for places. */
  readonly unnamed?: {
    readonly conveyor: string;
    readonly names: readonly string[];
    readonly told: Pick<Slip, 'message' | 'mend'>;
  };
}

export interface BrokenTokens extends BrokenLine {
  /** The first token of the line. */
  readonly from: number;
}

/** With what the likeliest repair begins. */
export interface ToldLine {
  readonly slip: Slip;
  readonly meant: string | undefined;
}

export function slipOf(line: BrokenTokens, places: TokenPlaces): ToldLine {
  const told = tellBroken(line);
  const { message, repair, isSure } = told;
  const mend = repair && mendOf(repair, line.from, places);
  const over = overIn(line, repair, places);
  const unnamed = unnamedIn(line, repair, places);
  return {
    meant: repair && meantBy(line, repair),
    slip: {
      start: places.span(line.from + told.from).start,
      end: places.span(line.from + Math.max(told.from + 1, told.to) - 1).end,
      message,
      ...(mend ? { mend: isSure ? { ...mend, isSure } : mend } : {}),
      ...(over ? { over } : {}),
      ...(unnamed ? { unnamed } : {}),
    },
  };
}

/** `liner of WB1, 20 mm`: another machine is no place of this one. */
function unnamedIn(line: BrokenTokens, repair: LineRepair | undefined, places: TokenPlaces): Slip['unnamed'] {
  const { words, heading } = line;
  const wasPlace = (name: string): boolean =>
    words.some(({ image }, at) => image === name && words[at - 1]?.type === 'at');
  const names = (repair?.line ?? []).flatMap(({ type, image }, at, all) =>
    type === 'ID' && all[at - 1]?.type === 'at' && !wasPlace(image) ? [image] : [],
  );
  const conveyor = (heading[1] ?? dated(words)?.conveyor)?.image;
  if (names.length === 0 || conveyor === undefined) return undefined;
  // A word of no kind: it is told, and says no place.
  const plain = words.map((word) => (names.includes(word.image) ? { ...word, type: 'NAME' } : word));
  const { message, repair: other, isSure } = tellBroken({ ...line, words: plain });
  const mend = other && mendOf(other, line.from, places);
  return mend ? { conveyor, names, told: { message, mend: isSure ? { ...mend, isSure } : mend } } : undefined;
}

/** Not where the line that is offered ends something by its own words already, or by the work that it names. */
function overIn(line: BrokenTokens, repair: LineRepair | undefined, places: TokenPlaces): Slip['over'] {
  const offered = repair?.line ?? [];
  const closes = offered.findIndex(({ type }) => type === 'closed');
  // A trial closes nothing.
  const isWork = offered.some(
    (word) => isWord(word.type) && workOf(word) === word.type && !/^(tried|found good)$/.test(word.type),
  );
  if (offered[0]?.type === '//' || isWork || closes >= 0) return undefined;
  const over = overOf(line);
  return (
    over && {
      ...over,
      ...(repair ? { offered: imagesOf(offered) } : {}),
      start: places.span(line.from).start,
      end: places.span(line.from + line.words.length - 1).end,
    }
  );
}

/** A comment is no line of the block, and what begins with no part may have been any line before it was taken for a finding. */
function meantBy({ words }: BrokenTokens, { line }: LineRepair): string | undefined {
  const [first] = line;
  if (first?.type === '//') return undefined;
  const isGeneral = first?.type === 'finding' || first?.type === 'serviced';
  return isGeneral && words[0]?.type === 'ID' && partOfWord(words[0]) === undefined ? undefined : first?.type;
}

function mendOf({ from, to, words }: LineRepair, line: number, places: TokenPlaces): Slip['mend'] {
  // Several lines stand as far in as the one that was written.
  const indent = ' '.repeat(places.column(line) - 1);
  const lines = linesOf(words);
  const isInside = lines[0]?.at(-1)?.type === '{';
  const text = lines.map(imagesOf).join(`\n${indent}${isInside ? '  ' : ''}`);
  const { start } = places.span(line + from);
  const before = from > 0 ? places.span(line + from - 1).end : start;
  if (to > from) {
    const { end } = places.span(line + to - 1);
    // A word taken out goes with the blank before it.
    const isTight = from > 0 && start === before && !/^[,:.]/.test(text);
    return { start: text === '' ? before : start, end, text: isTight && text !== '' ? ` ${text}` : text };
  }
  return { start: before, end: before, text: from > 0 ? ` ${text}` : `${text} ` };
}
