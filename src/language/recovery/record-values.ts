// Records whose value or day is said as from one to another, and corrections in another form: `drive change DG1 2023-02-01 speed 13 rpm to
// 14 rpm`, `serviced DG1 from 2022-06-21 to 2022-06-22 gearbox oil changed`, `correction … reline read on 2023-09-05 meter 1190 h`.

import type { BrokenLine } from './broken-line.js';
import { noteOfWords, noteOf, takenApart } from './general.js';
import { readsSoundly } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, textsIn, type Word } from './word.js';

export const valueLines: readonly LineSaying[] = [
  patchOfPlastic,
  otherOfTheDrive,
  fromTo,
  overDays,
  hoursCorrected,
];

const noSteel =
  /^(?:plastic|pe|pe1000|pe-uhmw|polymer|polyethylene|nylon|rubber|wood|wooden|plywood|liner|epoxy|resin|sheet of pe|glued|bonded)$/i;

/** `patch DG1 2023-01-16 at 5 m to 5.5 m thickness 12 mm plastic sheet screwed`: a patch is steel welded to the trough. */
function patchOfPlastic({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, conveyor, day, ...rest] = words;
  if (block !== 'Block' || first?.type !== 'patch' || !conveyor || day?.type !== 'DATE') return undefined;
  const texts = textsIn(rest).flatMap((text) => text.split(/[^A-Za-z0-9-]+/));
  const said = rest.filter(({ type }) => type !== 'STRING').map(({ image }) => image);
  if (![...said, ...texts].some((each) => noSteel.test(each))) return undefined;
  const { place, by, photo, told, texts: quoted } = takenApart(rest);
  const stretch =
    place[0]?.type === 'at' && place[2]?.type === 'to' ? [keyword('from'), ...place.slice(1)] : place;
  const left = told.filter(({ type, image }) => type !== 'thickness' && image !== 'thick');
  const note = noteOf([keyword('patch'), ...left], quoted);
  const line = [
    keyword('serviced'),
    conveyor,
    day,
    keyword('panel'),
    ...stretch,
    ...(note ? [note] : []),
    ...by,
    ...photo,
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message:
      `A \`patch\` is steel welded to the trough, and its thickness is counted as steel; what was put over the liner is work on a panel: ` +
      `\`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [
      ['patch', 'serviced'],
      ['thickness', 'serviced'],
      ['thick', 'serviced'],
      ['liner', 'panel'],
      ['at', 'from'],
    ],
  };
}

/** `drive change DG1 2023-04-03 frequency converter 30 Hz to 50 Hz speed 12 rpm by "x"`: what is neither power nor speed is its note. */
function otherOfTheDrive({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, conveyor, day, ...rest] = words;
  if (block !== 'Block' || first?.type !== 'drive change' || !conveyor || day?.type !== 'DATE')
    return undefined;
  const kept: Word[] = [];
  const others: Word[] = [];
  const isOf: Readonly<Record<string, RegExp>> = {
    power: /\d *(?:kW|hp|W)$/,
    speed: /\d *(?:rpm|1\/min|\/min)$/,
  };
  for (let at = 0; at < rest.length; at++) {
    const [word, next] = [rest[at], rest[at + 1]];
    const isPair =
      word &&
      next &&
      (isOf[word.type]?.test(next.image) === true ||
        (['by', 'photo'].includes(word.type) && next.type === 'STRING'));
    if (isPair && rest[at + 2]?.type !== 'to') {
      kept.push(word, next);
      at++;
    } else if (word) others.push(word);
  }
  // `speed 13 rpm to 14 rpm` has its own answer.
  const isChange = others.some(({ type }) => type === 'speed' || type === 'power');
  const note = noteOfWords(others);
  const line = [first, conveyor, day, ...kept, ...(note ? [note] : [])];
  if (!note || isChange || !others.some(({ type }) => type === 'ID') || !readsSoundly(line, pattern)) {
    const service = [keyword('serviced'), conveyor, day, keyword('motor'), ...(note ? [note] : []), ...kept];
    const isWork =
      note &&
      !isChange &&
      kept[0]?.type !== 'power' &&
      kept[0]?.type !== 'speed' &&
      readsSoundly(service, pattern);
    return isWork && others.some(({ type }) => type === 'ID')
      ? {
          at: 3,
          message: `A change of the drive says its power or its speed; what was done without either is work: \`${imagesOf(service)}\`.`,
          repair: changed(words, service),
          senses: [
            ['drive', 'motor'],
            ['change', 'serviced'],
            ['drive change', 'serviced'],
          ],
        }
      : undefined;
  }
  return {
    at: 3,
    message: `A change of the drive says its power or its speed, and all else in quotes: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** What it was stands in its note. */
function fromTo({ block, words }: BrokenLine): Otherwise | undefined {
  const to = words.findIndex(({ type }) => type === 'to');
  const [before, behind] = [words[to - 1], words[to + 1]];
  const isChange =
    words[0]?.type === 'drive change' || (words[0]?.type === 'duty' && words[2]?.type === 'from');
  if (block !== 'Block' || !isChange || before?.type !== 'QUANTITY' || behind?.type !== 'QUANTITY')
    return undefined;
  const rest = words.slice(to + 2);
  const note = noteOf([{ type: 'ID', image: 'was' }, before], textsIn(rest.filter(isOwnText(rest))));
  const line = [
    ...words.slice(0, to - 1),
    behind,
    ...rest.filter((word, i) => !isOwnText(rest)(word, i)),
    ...(note ? [note] : []),
  ];
  return {
    at: to,
    message: `A change says what it is from that day on; what it was stands in its note: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [['to', 'speed']],
  };
}

/** A text that is not who did it. */
function isOwnText(words: readonly Word[]): (word: Word, at: number) => boolean {
  return ({ type }, at) =>
    type === 'STRING' && words[at - 1]?.type !== 'by' && words[at - 1]?.type !== 'photo';
}

/** Work of several days is of the last, when it was done. */
function overDays({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, conveyor, ...more] = words;
  const days = more.filter(({ type }) => type === 'DATE');
  const last = days[1];
  if (block !== 'Block' || first?.type !== 'serviced' || !conveyor || !last || more[0]?.type !== 'from')
    return undefined;
  const end = more.indexOf(last) + 1;
  const said: Word = { type: 'STRING', image: `"${imagesOf(more.slice(0, end))}"` };
  const line = [first, conveyor, last, ...more.slice(end), said];
  return {
    at: 2,
    message: `Work is of one day, that on which it was done: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** The hours of a reline or a look are corrected as its meter. */
function hoursCorrected({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, conveyor, day, ...rest] = words;
  const read = rest.findIndex(({ type }) => type === 'read on');
  const date = rest[read + 1];
  const hours = rest.find(({ type, image }) => type === 'QUANTITY' && /\d *(h|hrs|hours)$/.test(image));
  const isOfHours = rest.some(({ type }) => type === 'meter' || type === 'reline' || type === 'inspection');
  if (block !== 'Block' || first?.type !== 'correction' || !conveyor || !day || read < 1) return undefined;
  if (!date || !hours || !isOfHours || rest.indexOf(hours) < read) return undefined;
  const behind = rest.slice(rest.indexOf(hours) + 1);
  const line = [first, conveyor, day, keyword('meter'), keyword('read on'), date, hours, ...behind];
  return {
    at: 3,
    message: `The hours of a look or of work are corrected as its meter: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: rest.slice(0, rest.indexOf(hours)).map(({ image }) => [image.toLowerCase(), 'meter'] as const),
  };
}
