// A day that nobody knows exactly: `~2023-07-10`, `about 2023-07-10`, `2023-07`, `summer 2023`. Every page prints the day of a record
// as it stands, so a record takes one day; the answer says which to write and where the doubt is noted, where pages show it too.

import { monthNamed } from '../../domain/units/calendar.js';
import type { BrokenLine } from './broken-line.js';
import { vague } from './fillers.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, isWord, keyword, type Word } from './word.js';

const oneDay = 'A record has one day, because pages print it as one: ';

/** Is it what `dayInDoubt` says? */
export function tellsOfADayInDoubt(message: string): boolean {
  return message.startsWith(oneDay);
}

/** `likeliest`: what to write for it, where nothing has to be made up. */
export function dayInDoubt(likeliest?: string): string {
  return (
    `${oneDay}write the likeliest, ` +
    `${likeliest === undefined ? 'of a month its middle (such as `2023-07-15`)' : `\`${likeliest}\``}, and the doubt where it is printed ` +
    'too: `finding "the day is not certain"` in the block, or the note of a record of one line. ' +
    'Wear counts by the meter, so such a doubt moves no rate.'
  );
}

const records = new Set([
  'inspection',
  'reline',
  'screw change',
  'panels moved',
  'meter change',
  'duty',
  'drive change',
  'patch',
  'serviced',
  'correction',
]);

/** These say no more than `about`. */
const about: ReadonlySet<string> = new Set([...vague, 'around', 'roughly', 'some']);

/** Before a day that is meant and not known, beside the names of months. */
const roughly: ReadonlySet<string> = new Set([
  ...about,
  ...'early mid late end beginning spring summer autumn winter'.split(' '),
]);

export function uncertainDay(line: BrokenLine): Otherwise | undefined {
  const { block, words, reached } = line;
  const here = words[reached];
  if (block !== 'Block' || !here || !records.has(words[0]?.type ?? '')) return undefined;
  const before = words[reached - 1];
  // `duty DG1 from 2022-07-01 100 h/week winter`: its day is told already.
  if (isRough(here))
    return words.slice(0, reached).some(({ type }) => type === 'DATE') ? undefined : nearADay(line);
  // `2023-07` is read as 2023 and −07.
  if (/^-(0?[1-9]|1[0-2])$/.test(here.image) && /^(19|20)\d\d$/.test(before?.image ?? ''))
    return {
      at: reached,
      message: dayInDoubt(`${before?.image}-${here.image.slice(1).padStart(2, '0')}-15`),
    };
  if (['±', '+/-'].includes(here.image) && before?.type === 'DATE')
    return { at: reached, message: dayInDoubt(before.image) };
  return undefined;
}

function isRough({ image }: Word): boolean {
  return roughly.has(image.toLowerCase()) || monthNamed(image) !== undefined;
}

/** With the day that stands behind it, where one does. */
function nearADay({ words, reached, pattern }: BrokenLine): Otherwise {
  const day = words.findIndex(({ type }, i) => i > reached && type === 'DATE');
  const said = words[day]?.image;
  if (said === undefined || day > reached + 3) return { at: reached, message: dayInDoubt() };
  const rough = words.slice(reached, day).filter(({ type }) => isWord(type) || type === 'ID');
  const isAbout = rough.every(({ image }) => about.has(image.toLowerCase()));
  const nearly = isAbout ? 'about' : imagesOf(rough);
  const doubt = { type: 'STRING', image: `"day not certain: ${nearly} ${said}"` };
  const kept = [...words.slice(0, reached), ...words.slice(day)];
  const opens = kept.at(-1)?.type === '{';
  // What stands behind a brace is a line of the block.
  const line = opens ? [...kept, keyword('finding'), doubt] : [...kept, doubt];
  const isOffered = readsSoundly(opens ? kept : line, pattern);
  return {
    at: reached,
    message: dayInDoubt(said),
    ...(isOffered
      ? {
          repair: changed(words, line),
          senses: rough.map(({ image }): SaidBy => [image.toLowerCase(), 'about']),
        }
      : {}),
  };
}
