// What of a spiral was changed, and what was measured of the old one, in the words of whoever did it: `middle part from 5 m to 10 m new`,
// `old flight 44 mm at 7 m`. As a remark the scope would be lost, and the whole spiral count as new.

import type { BrokenLine } from './broken-line.js';
import { noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import { imagesOf, isSmallLength, keyword, type Word } from './word.js';

export const screwChangeLines: readonly LineSaying[] = [scopeOfTheSpiral, oldFlight];

const renewed = /^(?:new|renewed|replaced|changed|exchanged|only|just|fitted)$/;
const length =
  /^(?:part|piece|section|length|middle|lower|upper|half|third|end|spiral|screw|the|of|was|is|in|a)$/;

/** `middle part from 5 m to 10 m new`, `only 5 m to 10 m renewed` */
function scopeOfTheSpiral({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'ScrewChange') return undefined;
  const { place, told, texts, answer, severity, by, photo } = takenApart(joined(written));
  const isStretch = place[0]?.type === 'from' && place.length === 4;
  if (!isStretch || !told.some(({ image }) => renewed.test(image.toLowerCase()))) return undefined;
  if (answer.length + severity.length + by.length + photo.length > 0) return undefined;
  const line = [keyword('scope'), ...place];
  const says = ({ image }: Word): boolean =>
    !renewed.test(image.toLowerCase()) && !length.test(image.toLowerCase());
  const isPlain = texts.length === 0 && !told.some(says);
  const note = noteOf(told, texts);
  const finding = [keyword('finding'), keyword('spiral'), ...place, ...(note ? [note] : [])];
  if (!readsSoundly(line, pattern) || (!isPlain && !readsSoundly(finding, pattern))) return undefined;
  const why =
    'What was changed of a spiral in several lengths is its `scope`, without which all of it counts as new: ';
  const senses = told.map(({ image }): SaidBy => [image.toLowerCase(), 'scope']);
  return isPlain
    ? { at: 0, message: `${why}\`${imagesOf(line)}\`.`, repair: changed(written, line), senses }
    : {
        at: 0,
        message: `${why}${shownTogether([line, finding])}.`,
        repair: inSeveralLines(written, [line, finding]),
      };
}

/** `old flight 44 mm at 7 m`, `old spiral at 7 m 44 mm deep` */
function oldFlight({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'ScrewChange' || written[0]?.image.toLowerCase() !== 'old') return undefined;
  const { place, part, told, texts, by, photo } = takenApart(joined(written.slice(1)));
  const sizes = told.filter(isSmallLength);
  const [size] = sizes;
  if (!size || sizes.length > 1 || place.length < 2 || (part !== 'flight' && part !== 'spiral'))
    return undefined;
  const rest = told.filter(
    (word) =>
      word !== size &&
      !/^(?:flight|spiral|depth|deep|left|measured|now|was|outside diameter)$/.test(word.image),
  );
  const note = noteOf(rest, texts);
  const what = told.some(({ type }) => type === 'outside diameter') ? 'outside diameter' : 'depth';
  const line = [keyword('flight'), ...place, keyword(what), size, ...photo, ...(note ? [note] : []), ...by];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `A flight that is measured here is of the spiral that came out: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
    senses: ['old', 'spiral', 'deep', 'left', 'was', 'measured', 'now'].map((each): SaidBy => [
      each,
      'flight',
    ]),
  };
}
