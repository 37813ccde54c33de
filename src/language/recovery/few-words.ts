// Short lines of a look or a reline that lack what the language wants beside them: `photo lost`, `rest not seen, in a hurry`, `crew B`,
// `greased`, `top bearing noisy`, `spiral 448 at 9 m`, `gauge ultrasonic 2 ± 0.2 mm`. What was written is kept; what is lacking is asked.

import type { BrokenLine } from './broken-line.js';
import { workOf } from './done-words.js';
import { noteOfWords, asFinding, blocksOfWork, takenApart } from './general.js';
import { generalLine } from './general-line.js';
import { joined } from './joined.js';
import { readsSoundly } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed, follow } from './repairs.js';
import { isName } from './said-place.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import { imagesOf, isUnknown, keyword, plainImage, type Word } from './word.js';

export const fewWords: readonly LineSaying[] = [
  photoGone,
  photoAndMore,
  restUnseen,
  pointUnseen,
  byACrew,
  doneAlone,
  whichBearing,
  diameterOfSpiral,
  numberOfGauge,
  onTheShelf,
];

/** The whole line in quotes. */
function asNote(words: readonly Word[], message: (line: string) => string): Otherwise | undefined {
  const note = noteOfWords(words);
  if (!note) return undefined;
  const line = [keyword('finding'), note];
  return { at: 0, message: message(imagesOf(line)), repair: changed(words, line) };
}

/** `photo lost`, `photo of the tear not taken`: there is none to show. */
function photoGone({ block, words }: BrokenLine): Otherwise | undefined {
  const isFile = words.some(({ type, image }) => type === 'STRING' || /^(?:jpe?g|png|webp)$/i.test(image));
  if (!blocksOfWork.has(block) || words[0]?.type !== 'photo' || words.length < 2 || isFile) return undefined;
  return asNote(
    words,
    (line) => `A photo is named by its file in quotes; where there is none it is told: \`${line}\`.`,
  );
}

/** `photo "photos/hole.png" of the hole` */
function photoAndMore({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  // `P3 photo "photos/p3.png"`
  const isBehind = isName(words[0]) && words[1]?.type === 'photo';
  const [photo, path, ...rest] = isBehind ? [...words.slice(1), ...words.slice(0, 1)] : words;
  if (!blocksOfWork.has(block) || photo?.type !== 'photo' || path?.type !== 'STRING' || rest.length === 0)
    return undefined;
  const note = noteOfWords(rest);
  const line = [photo, path, ...(note ? [note] : [])];
  if (!note || !readsSoundly(line, pattern)) return undefined;
  return {
    at: 2,
    message: `What it shows stands in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `rest not seen, in a hurry`: no stretch, and no point. */
function restUnseen({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, second] = words;
  if (block !== 'Inspection' || !isUnknown(first) || second?.type !== 'not seen') return undefined;
  return asNote(
    words,
    (line) =>
      `Where nobody could look is said from where to where, \`not seen from 2 m to 9 m "…"\`; without that it is no more than \`${line}\`.`,
  );
}

/** `P6 not seen under material` */
function pointUnseen({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, second, ...rest] = words;
  if (block !== 'Inspection' || !point || !isName(point) || second?.type !== 'not seen') return undefined;
  const note = noteOfWords(rest.filter(({ type }) => type !== ','));
  const line = [point, second, ...(note ? [note] : [])];
  if (!note || rest.some(({ type }) => type === 'photo') || !readsSoundly(line, pattern)) return undefined;
  return { at: 2, message: `Why not stands in quotes: \`${imagesOf(line)}\`.`, repair: changed(words, line) };
}

/** `crew B` */
function byACrew({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, ...names] = words;
  const isNames =
    names.length > 0 &&
    names.length < 4 &&
    names.every(({ type }) => ['ID', 'STRING', 'NUMBER'].includes(type));
  if (
    !blocksOfWork.has(block) ||
    !['crew', 'crews', 'team', 'shift'].includes(first?.image ?? '') ||
    !isNames
  )
    return undefined;
  const said = words.map(({ image }) => image.replace(/"/g, '')).join(' ');
  const line = [keyword('by'), { type: 'STRING', image: `"${said}"` }];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `Who did it is a text in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `greased`: of what is for who did it to say. */
function doneAlone({ block, words }: BrokenLine): Otherwise | undefined {
  const [only, ...more] = words;
  const work = workOf(only);
  if (!blocksOfWork.has(block) || work === undefined || more.some(({ type }) => type !== 'STRING'))
    return undefined;
  return asNote(
    words,
    (line) =>
      `What was done says to which part, \`serviced tail bearing ${work}\`, say; without it it is no more than \`${line}\`.`,
  );
}

const ends = /^(?:top|upper|bottom|lower|end|main|other|head|outer)$/;

/** `top bearing noisy`: the language has a thrust bearing, at the drive, and a tail bearing. */
function whichBearing(line: BrokenLine): Otherwise | undefined {
  const [end, bearing, ...rest] = line.words;
  if (line.block !== 'Inspection' || !end || !ends.test(end.image) || bearing?.image !== 'bearing')
    return undefined;
  const lines = ['thrust bearing', 'tail bearing'].flatMap((part) => {
    const isHot = rest.length === 1 && rest.every(({ image }) => /\d *(?:degC|degF)$/.test(image));
    const words = [keyword(part), ...(isHot ? [keyword('temperature')] : []), ...rest];
    if (readsSoundly(words, line.pattern)) return [words];
    const found = generalLine({ ...line, words, ...follow(words, line.pattern) });
    return found ? [found.line] : [];
  });
  if (lines.length < 2) return undefined;
  const [thrust, tail] = lines.map(imagesOf);
  return {
    at: 0,
    message: `At the drive it is the thrust bearing, \`${thrust ?? ''}\`, at the other end the tail bearing, \`${tail ?? ''}\`.`,
  };
}

const worn =
  /^(?:worn|to|from|od|outside|diameter|spiral|flight|screw|now|was|only|down|,|=|dia|measured|reads)$/;

/** `spiral 448 at 9 m`, `flight worn at 2 m, 460 to 448`: how wide it still is; the unit is for who measured to say. */
function diameterOfSpiral({ block, words: written }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection') return undefined;
  const { part, place, told, severity } = takenApart(joined(written));
  const sizes = told.filter(({ type }) => type === 'NUMBER' || type === 'QUANTITY');
  const last = sizes.at(-1);
  const value = Number(/^\d{3,4}(?:\.\d+)?(?= *(?:mm)?$)/.exec(last?.image ?? '')?.[0]);
  const isWidth = value >= 120 && value <= 1500;
  if (!last || !isWidth || (part !== 'spiral' && part !== 'flight') || place[0]?.type !== 'at')
    return undefined;
  if (severity.length > 0 || told.some((word) => !sizes.includes(word) && !worn.test(plainImage(word))))
    return undefined;
  const line = `flight ${imagesOf(place)} outside diameter ${value} mm`;
  return {
    at: 0,
    message: `How wide the spiral still is stands behind its place: \`${line}\`${last.type === 'NUMBER' ? ', if it was in mm' : ''}.`,
  };
}

/** `gauge ultrasonic 2 ± 0.2 mm`: which of them it was is none of its error. */
function numberOfGauge({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type }) => type === '±');
  const number = words[at - 1];
  const isNumber =
    number?.type === 'NUMBER' || (number?.type === 'ID' && /^[A-Z]?\d+$|^no/i.test(number.image));
  if (block !== 'Inspection' || words[0]?.type !== 'gauge' || at < 2 || !number || !isNumber)
    return undefined;
  const line = [...words.slice(0, at - 1), ...words.slice(at)];
  const finding = [keyword('finding'), { type: 'STRING', image: `"gauge ${number.image}"` }];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: at - 1,
    message: `How sure it reads, and which gauge it was, are a line each: ${shownTogether([line, finding])}.`,
    repair: inSeveralLines(words, [line, finding]),
  };
}

/** `left on the shelf 2 panels`: what lies there is counted in the plant. */
function onTheShelf({ block, words, heading }: BrokenLine): Otherwise | undefined {
  const isThere = words.some(({ type, image }) => type === 'on the shelf' || image === 'shelf');
  const count = words.findIndex(({ type }) => type === 'NUMBER');
  if (!blocksOfWork.has(block) || !isThere || count < 0) return undefined;
  const day = heading.find(({ type }) => type === 'DATE')?.image ?? '2026-03-14';
  const name = words.find((word) => isName(word))?.image ?? '…';
  const note = asFinding(words);
  const line = `on the shelf ${name} ${words[count]?.image ?? '2'} panels counted ${day}`;
  return {
    at: 0,
    message:
      `What lies on the shelf is counted in the \`plant\`: \`${line}\`${name === '…' ? ', with the name of the liner in place of `…`' : ''}` +
      `${note ? `; as a note it is \`${imagesOf(note)}\`` : ''}.`,
    ...(note ? { repair: changed(words, note) } : {}),
  };
}
