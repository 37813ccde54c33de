// A motor, a gear or a speed that was changed on a day, in the words of whoever did it: `speed changed DG1 2022-06-01 from 18 rpm to 24 rpm`,
// `motor renewed DG1 2022-06-01 7.5 kW`. As work alone the hours would go on at the old speed.

import { parseQuantity } from '../../domain/units/parse.js';
import type { BrokenLine } from './broken-line.js';
import { noteOf } from './general.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { dated } from './record-words.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, textsIn, type Word } from './word.js';

const ofTheDrive =
  /^(?:motor|gear|gearbox|drive|speed|rpm|screw speed|sprocket|sprockets|pulley|inverter|vfd|power)$/;
const change =
  /^(?:changed|new|renewed|replaced|exchanged|set|raised|lowered|increased|reduced|now|fitted|change|to)$/;

export function driveChanged({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const record = block === 'Block' ? dated(words) : undefined;
  const around = [...(record?.before ?? []), ...(record?.behind ?? [])];
  const first = words[0]?.type ?? '';
  if (!record || first === 'drive change' || first === 'duty' || words.some(({ type }) => type === '{'))
    return undefined;
  const plain = around.filter(({ type }) => type !== 'STRING');
  if (!plain.some(({ image }) => ofTheDrive.test(image.toLowerCase()))) return undefined;
  if (!plain.some(({ image, type }) => change.test(image.toLowerCase()) || type === 'renewed'))
    return undefined;
  const power = last(around, 'power');
  const speed = last(around, 'rotation');
  if (!power && !speed) return undefined;
  const by = around.findIndex(({ type }, i) => type === 'by' && around[i + 1]?.type === 'STRING');
  const who = by < 0 ? [] : around.slice(by, by + 2);
  const left = around.filter((word) => word !== power && word !== speed && !who.includes(word));
  // `speed changed … to 24 rpm` is said by the line itself, and from what it was is not.
  const isSaid = ({ image, type }: Word): boolean =>
    type === 'STRING' ||
    type === ',' ||
    /^(?:speed|rpm|power|to|changed|change|now|set|serviced)$/.test(image.toLowerCase());
  const note = noteOf(
    left.every((word) => isSaid(word)) ? [] : left.filter((word) => !isSaid(word)),
    textsIn(left),
  );
  const line = [
    keyword('drive change'),
    record.conveyor,
    record.day,
    ...(power ? [keyword('power'), power] : []),
    ...(speed ? [keyword('speed'), speed] : []),
    ...who,
    ...(note ? [note] : []),
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `Another motor, gear or speed from a day on is a record of its own: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: left.flatMap(({ image }): SaidBy[] => [[image.toLowerCase(), 'drive change']]),
  };
}

/** Of two the later one holds now. */
function last(words: readonly Word[], dimension: 'power' | 'rotation'): Word | undefined {
  return words.findLast(({ type, image }) => type === 'QUANTITY' && parseQuantity(image, dimension).ok);
}
