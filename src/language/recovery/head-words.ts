// What belongs into the heading of a record or on its line `by`, in the words of whoever wrote it inside: the hours of the meter
// (`hrs 2990`), hours read as one of two (`meter 8830 or 8880 h`), who looked (`inspector J`); and what of a job stands in the record of
// it, its time and its permit, which no line says.

import type { BrokenLine } from './broken-line.js';
import { blocksOfWork } from './general.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { commentedOut, changed } from './repairs.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

export const headWords: readonly LineSaying[] = [eitherOf, meterInside, lookedBy, ofTheJob];

function hours(word: Word | undefined): string | undefined {
  return /^(\d+(?:\.\d+)?) ?(?:h|hrs|hours)?$/.exec(word?.image ?? '')?.[1];
}

/** `meter 8830 or 8880 h`: the middle, with an error that holds both. */
function eitherOf({ words }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type, image }) => type === 'meter' || /^(hours|hrs|hour meter)$/.test(image));
  const rest = words.slice(at + 1).filter(({ image }) => image !== 'either' && image !== 'or');
  const or = words.findIndex(
    ({ image }, i) => i > at && /(?:^|\d )or$/.test(plainImage({ type: '', image })),
  );
  if (at < 0 || or < 0 || or > at + 2) return undefined;
  const [one, other] = rest
    .slice(0, 2)
    .map((word) => hours({ ...word, image: word.image.replace(/ or$/, '') }));
  if (one === undefined || other === undefined) return undefined;
  const [low, high] = [Number(one), Number(other)].sort((a, b) => a - b);
  if (low === undefined || high === undefined || low === high) return undefined;
  const said = `meter ${(low + high) / 2} h ± ${(high - low) / 2} h`;
  return {
    at,
    message: `Hours that are one of two stand in the heading as what lies between them, with an error that holds both: \`${said}\`.`,
  };
}

/** `hrs 2990` */
function meterInside({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, value, ...more] = words;
  const isMeter = first?.type === 'meter' || /^(hrs|hours|meter|hourmeter)$/i.test(first?.image ?? '');
  const read = hours(value);
  if (!blocksOfWork.has(block) || !isMeter || read === undefined || more.length > 0) return undefined;
  return {
    at: 0,
    message: `The hours of the meter stand in the heading, behind the day: \`meter ${read} h {\`.`,
  };
}

/** `inspector J`, `inspected by J` */
function lookedBy({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, ...rest] = words;
  const isBy = /^(inspector|inspected|observer)$/i.test(first?.image ?? '');
  const names = rest[0]?.type === 'by' || rest[0]?.type === ':' ? rest.slice(1) : rest;
  const isNames = names.every(({ type, image }) => type === 'ID' && /^[A-Z]/.test(image));
  if (block !== 'Inspection' || !isBy || names.length === 0 || !isNames) return undefined;
  const line = [keyword('by'), { type: 'STRING', image: `"${imagesOf(names)}"` }];
  return {
    at: 0,
    message: `Who looked is a text in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [[(first?.image ?? '').toLowerCase(), 'by']],
  };
}

/** `takes 6 h`, `permit "23-07"`: a record of what was done has no line for it. */
function ofTheJob({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, second] = words;
  const isOfTheJob = first?.type === 'takes' || /^(permit|takes|duration|took)$/.test(first?.image ?? '');
  if (!['Reline', 'ScrewChange', 'PanelsMoved'].includes(block) || !isOfTheJob || !second) return undefined;
  if (words.some(({ type }) => type === '{' || type === '}')) return undefined;
  const repair = commentedOut(words);
  return {
    at: 0,
    message: `A record of what was done has no line for it; a comment keeps it, which nothing reads: \`${imagesOf(repair.line)}\`.`,
    repair,
  };
}
