// What the language has once of a conveyor, said of a stretch of it: `incline 25 deg run above Gate`, `screw Spiral355 from 8.6 m to 19.6 m`, a
// second drive, `change screw from 8.6 m to 19 m`, the current of one of two motors. Each is answered with what that one is used for and with
// what to do.

import type { BrokenLine } from './broken-line.js';
import { noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import { readsSoundly } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { commentedOut, changed } from './repairs.js';
import { imagesOf, keyword, type Word } from './word.js';

export const machineLines: readonly LineSaying[] = [
  oneIncline,
  oneScrew,
  oneDrive,
  lengthOfSpiral,
  currentSomewhere,
];

/** Of a stretch, a run or one of several. */
function isOfAPart(words: readonly Word[]): boolean {
  return words.some(({ type }) => ['run', 'from', 'of run', 'above', 'below'].includes(type));
}

const two =
  'Two that differ are two conveyors, each with its own length, incline, screw, liner and drive, which meet where one gives to the other';

/** Which of two is the steeper one, a line alone does not know: none is offered. */
function oneIncline({ block, words }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type }) => type === 'incline');
  const size = words.find(({ type, image }) => type === 'QUANTITY' && /\d *(?:deg|%|rad)$/.test(image));
  if (block !== 'Conveyor' || at < 0 || !size || words.length < at + 3) return undefined;
  if (!isOfAPart(words) && at === 0 && words.every(({ type }) => type !== 'at' && type !== 'STRING'))
    return undefined;
  return {
    at: Math.min(at + 2, words.length - 1),
    message:
      'A conveyor has one incline: what it carries, what power it takes, what could slide or fall back on people, heights and lifts are reckoned ' +
      `with it. Write that of its steepest stretch, \`${imagesOf([keyword('incline'), size])}\` if it is this one, which errs on the safe side, and keep the ` +
      `other as a comment, \`// ${imagesOf(words)}\`. ${two}.`,
  };
}

/** `screw Spiral355Steep run above Gate` */
function oneScrew({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, name, ...more] = words;
  if (block !== 'Conveyor' || first?.type !== 'screw' || !name || !isOfAPart(more)) return undefined;
  return {
    at: 2,
    message:
      'A conveyor has one screw: its flight when new, its pitch and its limits hold for every reading and for what a new one costs. ' +
      `${two}; one spiral of which a length was renewed is a record, \`screw change … {\` with \`scope from 8.6 m to 19 m\` inside. ` +
      `A comment keeps this line, which nothing reads: \`// ${imagesOf(words)}\`.`,
    repair: commentedOut(words),
  };
}

/** `drive at head power 7.5 kW speed 22 rpm run above Gate`, `drive 2 at head …` */
function oneDrive({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first] = words;
  const isDrive = first?.type === 'drive at' || first?.image === 'drive';
  const isOther =
    isOfAPart(words) || words[1]?.type === 'NUMBER' || /^(?:second|other)$/.test(first?.image ?? '');
  if (block !== 'Conveyor' || !isDrive || !isOther || readsSoundly(words, pattern)) return undefined;
  return {
    at: 0,
    message:
      'A conveyor has one drive: current, speed, power and the wear by its turns are of that one. ' +
      `${two}; of two on one screw the power is that of both, with the other in a comment. ` +
      `A comment keeps this line, which nothing reads: \`// ${imagesOf(words)}\`.`,
    repair: commentedOut(words),
  };
}

/** `change screw from 8.6 m to 19 m to Spiral355Steep`, in a job. */
function lengthOfSpiral({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, ...more] = words;
  if (block !== 'Job' || first?.type !== 'change screw' || !isOfAPart(more)) return undefined;
  const from = words.findIndex(({ type }, i) => type === 'from' && words[i + 2]?.type === 'to');
  const stretch = from < 0 ? 'from … to …' : imagesOf(words.slice(from, from + 4));
  const rest =
    from < 0
      ? words.filter(({ type }) => type !== 'run' && type !== 'NUMBER')
      : [...words.slice(0, from), ...words.slice(from + 4)];
  return {
    at: from < 0 ? 1 : from,
    message:
      `A job plans a change of the whole spiral, \`${imagesOf(rest)}\`, with its lifts and its joints. A length of it alone is work in the order, ` +
      `\`other work ${stretch} by … takes … "new length of spiral"\`; what was done is recorded with \`scope ${stretch}\` in \`screw change … {\`.`,
  };
}

/** `current loaded 5.9 A at tail "drive 1"`: of one of two motors; as a plain current it would be of the other too. */
function currentSomewhere({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const [first] = words;
  const isCurrent = first?.type === 'current' || /^amps?$/.test(first?.image ?? '');
  if (block !== 'Inspection' || (!isCurrent && first?.type !== 'speed')) return undefined;
  const { place, told, texts, severity, by, photo } = takenApart(words);
  const note = noteOf(told, texts);
  if (place.length === 0 || !note) return undefined;
  const part = isCurrent ? 'motor' : 'drive';
  const line =
    place[0]?.type === 'at' && part === 'drive'
      ? [keyword('drive at'), ...place.slice(1)]
      : [keyword(part), ...place];
  const finding = [keyword('finding'), ...line, ...severity, ...photo, note, ...by];
  if (!readsSoundly(finding, pattern)) return undefined;
  const own = told.filter(({ type }) => type !== 'STRING');
  const plain = imagesOf(own);
  const at = Math.max(
    0,
    written.findIndex(({ type }) => type === 'at' || type === 'from'),
  );
  const whole = [...own, ...written.filter(({ type }) => type === 'STRING')];
  // `at drive`: that is where it is measured.
  if (place.length === 2 && place[1]?.image === 'drive' && first && readsSoundly(whole, pattern))
    return {
      at,
      message: `It is the drive’s without a place: \`${imagesOf(whole)}\`.`,
      repair: changed(written, whole),
      senses: [['drive', first.type]],
    };
  return {
    at,
    message:
      `${isCurrent ? 'Current' : 'Speed'} is of the one drive that is declared, \`${plain}\`; of another one it is kept as a finding, which joins no trend: ` +
      `\`${imagesOf(finding)}\`.`,
    repair: changed(written, finding),
  };
}
