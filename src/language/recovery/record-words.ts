// Records outside any block in the words of whoever wrote them: a meter that was changed, a look by another name, a day before what was
// done on it, panels that were swapped, a machine that stood still, and a correction of what has no correction.

import { addDays, formatDay, parseDay } from '../../domain/units/calendar.js';
import type { BrokenLine } from './broken-line.js';
import { asWork, noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed, likeWords } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, inSmall, isSmallLength, isWord, keyword, plainImage, textsIn, type Word } from './word.js';

export const recordLines: readonly LineSaying[] = [
  meterChangeMended,
  bought,
  meterChanged,
  headingByAnotherName,
  onADay,
  stoodStill,
  capacityFromADay,
  patchedOnADay,
  doneBeforeItsDay,
  correctedOtherwise,
];

/** The conveyor and the day of a record that stand side by side, and what stands around them. */
export function dated(words: readonly Word[]):
  | {
      readonly conveyor: Word;
      readonly day: Word;
      readonly before: readonly Word[];
      readonly behind: readonly Word[];
    }
  | undefined {
  const at = words.findIndex(({ type }) => type === 'DATE');
  const day = words[at];
  const name = isName(words[at - 1]) ? at - 1 : isName(words[at + 1]) ? at + 1 : -1;
  const conveyor = words[name];
  if (!day || !conveyor) return undefined;
  const from = Math.min(at, name);
  return { conveyor, day, before: words.slice(0, from), behind: words.slice(from + 2) };
}

/** `meter changed DG1 2024-03-04 old 8120 h new 0 h`, `new hour meter DG1 2023-11-14 old 5210 new starts 0` */
function meterChanged({ block, words }: BrokenLine): Otherwise | undefined {
  const record = block === 'Block' ? dated(words) : undefined;
  if (!record) return undefined;
  const head = record.before.flatMap((word) => plainImage(word).toLowerCase().split(' '));
  if (
    !head.includes('meter') ||
    !head.some((each) => /^(new|changed|replaced|renewed|exchanged|change|swapped|fitted)$/.test(each))
  )
    return undefined;
  if (words[0]?.type === 'meter change' && record.behind[0]?.type === 'from') return undefined;
  const values = record.behind.filter(({ type }) => type === 'QUANTITY' || type === 'NUMBER');
  const [old, fresh, ...more] = values.map(({ image }) => ({
    type: 'QUANTITY',
    image: /h$/.test(image) ? image : `${image.replace(/ .*$/, '')} h`,
  }));
  const texts = textsIn(record.behind);
  const note: readonly Word[] = texts.length > 0 ? [{ type: 'STRING', image: `"${texts.join('; ')}"` }] : [];
  const shape = (from: Word, to: Word): readonly Word[] => [
    keyword('meter change'),
    record.conveyor,
    record.day,
    keyword('from'),
    from,
    keyword('to'),
    to,
    ...note,
  ];
  const message =
    'A meter that was changed is a record with the hours of the old one and those that the new one began with';
  if (!old || !fresh || more.length > 0) {
    const from = old ?? { type: 'QUANTITY', image: '8120 h' };
    return {
      at: 0,
      message: `${message}: \`${imagesOf(shape(from, { type: 'QUANTITY', image: '0 h' }))}\`, say.`,
    };
  }
  const line = shape(old, fresh);
  const others = [...record.before, ...record.behind].filter(
    (word) => !values.includes(word) && word.type !== 'STRING',
  );
  return {
    at: 0,
    message: `${message}: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: others
      .flatMap((word) => plainImage(word).toLowerCase().split(' '))
      .map((each): SaidBy => [each, 'meter change']),
  };
}

/** What people call a record, by its word in the language. */
const headings: Readonly<Record<string, string>> = {
  look: 'inspection',
  visit: 'inspection',
  round: 'inspection',
  walk: 'inspection',
  inspected: 'inspection',
  check: 'inspection',
  relined: 'reline',
  're-line': 'reline',
  relining: 'reline',
  'panels swapped': 'panels moved',
  'panels turned': 'panels moved',
  'panels exchanged': 'panels moved',
  'panel swapped': 'panels moved',
  'panel swap': 'panels moved',
  'panel turned': 'panels moved',
  'screw changed': 'screw change',
  'new screw': 'screw change',
  'new spiral': 'screw change',
  'spiral change': 'screw change',
  'spiral changed': 'screw change',
};

/** `look KD3 2023-08-22 4590 h {`, `panels swapped BF4 date 2024-03-04 meter 5000 h {` */
function headingByAnotherName({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'Block' || words.at(-1)?.type !== '{') return undefined;
  const fillers = words.filter(({ image }) => !['date', 'on', 'of', 'dated', ',', ':'].includes(image));
  const record = dated(fillers);
  const name = inSmall(record?.before ?? []);
  const kind = Object.hasOwn(headings, name)
    ? headings[name]
    : record && pattern.first.has(name)
      ? name
      : undefined;
  // `2024-09-09 ± 7 d`: the day is in doubt, and not the meter.
  if (!record || kind === undefined || record.behind[0]?.type === '±') return undefined;
  const hours = record.behind.find(
    ({ type, image }) => type === 'QUANTITY' && /\d ?(h|hrs|hours)$/.test(image),
  );
  const rest = record.behind.filter((word) => word !== hours && word.type !== 'meter');
  const line = [
    keyword(kind),
    record.conveyor,
    record.day,
    ...(hours ? [keyword('meter'), hours] : []),
    ...rest,
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `This record is called \`${kind}\`: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: words
      .flatMap((word) => plainImage(word).toLowerCase().split(' '))
      .map((each): SaidBy => [each, kind]),
  };
}

/** `KD3 2022-05-31 drain rodded`: what was done or noted on a day needs no meter. */
function onADay({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const record = block === 'Block' ? dated(words) : undefined;
  if (
    !record ||
    record.before.length > 0 ||
    record.behind.length === 0 ||
    words.some(({ type }) => type === '{')
  )
    return undefined;
  const work = asWork(record.behind);
  if (!work) return undefined;
  const line = [keyword('serviced'), record.conveyor, record.day, ...work.line];
  const look = `\`inspection ${record.conveyor.image} ${record.day.image} meter … h {\``;
  return {
    at: 0,
    message:
      `What was done on a day, without a look, is said with \`serviced\` and needs no meter: \`${imagesOf(line)}\`. ` +
      `What was seen stands in a look, ${look}, with the hours of that day.`,
    repair: changed(written, line),
    senses: work.senses,
  };
}

/** `patched DG1 2022-04-15 from 12.4 m to 12.9 m with 3 mm plate`: as work it would cover no steel. */
function patchedOnADay({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const record = block === 'Block' && words[0]?.type !== 'patch' ? dated(words) : undefined;
  const around = [...(record?.before ?? []), ...(record?.behind ?? [])];
  if (!record || !around.some(({ image }) => /^patched$/i.test(image))) return undefined;
  const { place, told, texts, by, photo } = takenApart(around.filter(({ type }) => type !== 'serviced'));
  const sizes = told.filter(isSmallLength);
  const [size] = sizes;
  if (!size || sizes.length > 1 || place[0]?.type !== 'from') return undefined;
  const rest = told.filter((word) => word !== size && !saidByPatch.test(word.image.toLowerCase()));
  const note = noteOf(rest, texts);
  const line = [
    ...[keyword('patch'), record.conveyor, record.day, keyword('at'), ...place.slice(1)],
    ...[keyword('thickness'), size, ...photo, ...by, ...(note ? [note] : [])],
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `Steel that was welded in is a record of its own, which covers what lies under it: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
    senses: [...told, keyword('from'), keyword('serviced')].map(({ image }): SaidBy => [
      image.toLowerCase(),
      'patch',
    ]),
  };
}

const saidByPatch = /^(?:patched|patch|with|plate|steel|sheet|thick|a|of|trough|by|welded|on|in)$/;

/** `washed down DG1 2022-04-11 "high pressure"`: what was done stands before its machine. */
function doneBeforeItsDay({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const record = block === 'Block' ? dated(words) : undefined;
  const [first] = words;
  if (!record || !first || first.type !== 'ID' || words.some(({ type }) => type === '{')) return undefined;
  const isDoing =
    record.before.every(({ type }) => type === 'ID' || isWord(type)) &&
    record.before.some(({ image }) => doing.test(image));
  if (!isDoing || likeWords(first.image, [...pattern.first]).length > 0) return undefined;
  const work = asWork([...record.before, ...record.behind]);
  if (!work) return undefined;
  const line = [keyword('serviced'), record.conveyor, record.day, ...work.line];
  return {
    at: 0,
    message: `Work done is said with \`serviced\`: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
    senses: work.senses,
  };
}

const doing = /^[a-z]{2,}(?:ed|wn|nt|pt)$|^(?:cut|dug|put|reset|swept|thrown|ground)$/;

/** `order 4 panels TwoLayer15 2022-10-10`: what is bought stands in the plant, with the day it is promised for. */
function bought({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, ...rest] = words;
  const count = rest.find(({ type, image }) => type === 'NUMBER' && /^\d+$/.test(image));
  const item = rest.find(({ type }) => /^(?:panels?|stock lengths?|fixings?|spirals?)$/.test(type));
  if (block !== 'Block' || !/^(?:order|ordered|bought|orders)$/.test(first?.image ?? '') || !count || !item)
    return undefined;
  // `ordered DG1 2024-07-08 Twelve 3 panels`: the liner stands beside its number.
  const beside = [rest[rest.indexOf(count) - 1], rest[rest.indexOf(item) + 1]].find(isName);
  const name = (beside ?? rest.find(isName))?.image ?? 'TwoLayer12';
  const day = rest.find(({ type }) => type === 'DATE');
  const what = item.image === 'panel' ? 'panels' : item.image;
  const line = `ordered ${name} ${count.image} ${what}${day ? ` on ${day.image}` : ''} arrives …`;
  return {
    at: 0,
    message: `What is bought stands in the \`plant\`, with the day it is promised for: \`${line}\`, with that day in place of \`…\`.`,
  };
}

/** A record that begins so is of a machine that stood, whatever the reason is that it gives. */
export function isStop(first: Word | undefined): boolean {
  const said = plainImage(first ?? keyword('')).toLowerCase();
  return /^(standstill|stopped|stop|stood|idle|down|shutdown|outage|standing|off)$/.test(said);
}

/** `standstill DG1 from 2025-01-06 to 2025-02-10 "press out"`, `stopped 2025-02-24 to 2025-03-03` */
function stoodStill({ block, words }: BrokenLine): Otherwise | undefined {
  // `winter stop DG1 2022-12-20 to 2023-01-09`
  const isWhy =
    words[0]?.type === 'ID' &&
    !isName(words[0]) &&
    /^(?:stop|standstill|shutdown|outage)$/.test(words[1]?.image ?? '');
  if (block !== 'Block' || (!isStop(words[0]) && !isWhy)) return undefined;
  const [from, to] = words.filter(({ type }) => type === 'DATE');
  if (!from) return undefined;
  const conveyor = words.find((word, i) => i > 0 && isName(word))?.image ?? 'DG1';
  const why = isWhy ? [imagesOf(words.slice(0, 2))] : [];
  const told = [...why, ...textsIn(words)].join(': ');
  const texts = told === '' ? [] : [` "${told}"`];
  // It stood on its last day too.
  const again = to && dayAfter(to.image);
  const until = to
    ? ` and \`duty ${conveyor} from ${again ?? to.image} … h/week\` with its hours from then on in place of \`…\``
    : '';
  return {
    at: 0,
    message:
      'That a machine stood still shows in its meter: no line is needed. Where it counts for a forecast, it is a duty of none: ' +
      `\`duty ${conveyor} from ${from.image} 0 h/week${texts[0] ?? ''}\`${until}. A stop that is planned is an \`outage\` of the plant.`,
  };
}

function dayAfter(image: string): string | undefined {
  const day = parseDay(image);
  return day === undefined ? undefined : formatDay(addDays(day, 1));
}

/** `capacity DG1 from 2022-06-14 11.5 t/h` */
function capacityFromADay({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, conveyor] = words;
  const day = words.find(({ type }) => type === 'DATE');
  if (
    block !== 'Block' ||
    !first ||
    !conveyor ||
    !day ||
    !isName(conveyor) ||
    !/^(capacity|fill|load|conveys)$/.test(first.image)
  )
    return undefined;
  return {
    at: 0,
    message:
      `\`${first.image}\` is said once of the conveyor and has no day. What changed on a day is noted where the hours are: ` +
      `\`duty ${conveyor.image} from ${day.image} … h/week "${imagesOf(words.slice(0, 1))} ${words
        .slice(2)
        .filter(({ type }) => type === 'QUANTITY')
        .map(({ image }) => image)
        .join(' ')}"\`, with its hours in place of \`…\`.`,
  };
}

/** `correction DG1 2024-09-25 P1 thickness before 2024-09-23 all in doubt "plywood was read with it"`: look by look. */
function severalInDoubt(words: readonly Word[]): Otherwise | undefined {
  const [, conveyor, day, ...rest] = words;
  const plain = rest.filter(({ type }) => type !== 'STRING').map((word) => plainImage(word).toLowerCase());
  const isWrong = plain.some((each) =>
    /^(?:doubt|doubtful|wrong|invalid|void|false|unreliable|useless)$/.test(each),
  );
  const isSeveral = plain.some((each) => /^(?:before|until|since|after|to|all|every|from)$/.test(each));
  const spot = rest.find(isName) ?? rest.find(({ type }) => type === 'all');
  const date = rest.find(({ type }) => type === 'DATE');
  if (!conveyor || !day || !isWrong || !isSeveral || !date) return undefined;
  const why = textsIn(rest).map((text) => ` "${text}"`)[0] ?? ' "why"';
  const of = spot?.image ?? 'P1';
  return {
    at: 3,
    message:
      'What does not count is said of each look by its own day, a line each: ' +
      `\`correction ${conveyor.image} ${day.image} ${of} read on ${date.image} does not count by "…"${why}\`` +
      ', with the day of each look that read it so in place of that day; `all` in place of a point is all that a look read.',
  };
}

/** `correction DG1 2024-03-20 meter on 2024-03-14 was 6430 h`, and what is no correction of one reading. */
function correctedOtherwise({ block, words, pattern, reached }: BrokenLine): Otherwise | undefined {
  if (block !== 'Block' || words[0]?.type !== 'correction' || reached < 3) return undefined;
  const doubt = severalInDoubt(words);
  if (doubt) return doubt;
  const [, conveyor, day] = words;
  const rest = words.slice(3);
  const read = rest.findIndex(({ type }) => type === 'DATE');
  if (!conveyor || day?.type !== 'DATE' || read < 1) return undefined;
  const joins = ({ image, type }: Word): boolean =>
    /^(on|of|read|was|is|were|really|should|be|:|=|in|truth|reading)$/.test(image) || type === 'read on';
  const of = rest.slice(0, read).filter((word) => !joins(word));
  const value = rest.slice(read + 1).filter((word) => !joins(word));
  const [date] = rest.slice(read, read + 1);
  const line = [...words.slice(0, 3), ...of, keyword('read on'), ...(date ? [date] : []), ...value];
  if (of.length > 0 && readsSoundly(line, pattern))
    return {
      at: 3,
      message: `A correction names what was read, the day on which it was read, and what counts instead: \`${imagesOf(line)}\`.`,
      repair: changed(words, line),
      senses: rest.filter(joins).map(({ image }): SaidBy => [image, 'read on']),
    };
  const turned = fromTheOtherEnd(words, date);
  if (turned) return turned;
  if (
    !/^(all|every|each|both)$/.test(of[0]?.image ?? '') &&
    !of.some(({ image }) => /^(and|exchanged|swapped)$/.test(image))
  )
    return undefined;
  return {
    at: 3,
    message:
      'A correction is of one reading, with what counts instead of it: a line for each, ' +
      `\`correction ${conveyor.image} ${day.image} P1 read on ${date?.image ?? ''} thickness 7.4 mm by "…" "why"\`, P2 and so on; ` +
      'the look itself stays as it was written.',
  };
}

/** `correction DG1 2026-05-20 all read on 2026-05-18 measured from head`: where a look was read stands in no correction. */
function fromTheOtherEnd(words: readonly Word[], date: Word | undefined): Otherwise | undefined {
  const text = inSmall(words);
  if (
    !/\b(?:measured from|from (?:the )?(?:head|top|discharge|other|wrong)|(?:wrong|other) end|chainages?)\b/.test(
      text,
    )
  )
    return undefined;
  if (!/\b(?:all|every\w*|whole|look|chainages?)\b/.test(text)) return undefined;
  const line = `${imagesOf(words.slice(0, 3))} all read on ${date?.image ?? ''} does not count by "…" "measured from the head"`;
  return {
    at: 3,
    message:
      `A correction moves no reading along the trough: \`${line}\` takes back what was read, and the look is written once more beside it, ` +
      'with `measured from head` in its block: every chainage counts from there then.',
  };
}

/** `correction DG1 2026-01-19 meter change 2023-03-06 to 40 h`: a second change of that day joins the hours as they were. */
function meterChangeMended({ block, words }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type, image }) => type === 'meter change' || image === 'meter change');
  const [first, conveyor, day, ...rest] = words;
  if (block !== 'Block' || first?.type !== 'correction' || at < 0 || day?.type !== 'DATE') return undefined;
  const changed = rest.find(({ type }) => type === 'DATE')?.image ?? day.image;
  const hours = rest.filter(({ type, image }) => type === 'QUANTITY' && /\d ?h(?:ours)?$/.test(image)).at(-1);
  const right = hours?.image ?? '40 h';
  return {
    at,
    message:
      'A meter change stays as it was written, and what it lacks is one more of that day, from the hours that it says to those that are ' +
      `right: \`meter change ${conveyor?.image ?? 'DG1'} ${changed} from 0 h to ${right} "…"\`, where it says \`to 0 h\`; where the hours ` +
      'of the old meter are wrong, from the right ones to those that it says. The two are taken together.',
  };
}
