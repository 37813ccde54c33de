// What a machine is built with, in the words of whoever describes it: `drive head 4 kW 20 rpm`, `inlet at 0.5 m to 1.5 m`, `slide gate driven by
// compressed air`, `hold-downs every 2 m both sides`. As a comment the machine would lack it.

import { parseQuantity } from '../../domain/units/parse.js';
import type { BrokenLine } from './broken-line.js';
import { noteOf } from './general.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import type { LinePattern } from './pattern.js';
import { changed } from './repairs.js';
import { isChainage, isName } from './said-place.js';
import { imagesOf, inSmall, keyword, plainImage, type Word } from './word.js';

export const builtLines: readonly LineSaying[] = [
  gateDrive,
  breakWithoutName,
  everyWithoutEnds,
  linerAlong,
  isolationInWords,
];

/** Where no line lies near. */
export const drivenLines: readonly LineSaying[] = [driveInWords];

const energies: readonly (readonly [RegExp, string, string])[] = [
  [/^(?:air|pneumatic|pneumatically|pneumatics|compressed)$/i, 'driven by air', 'pneumatic'],
  [/^(?:hydraulic|hydraulically|hydraulics|oil)$/i, 'driven by hydraulics', 'hydraulic'],
  [/^(?:electric|electrical|electrically|electricity)$/i, 'driven by electricity', 'electrical'],
  [/^(?:hand|manual|manually|handwheel|lever)$/i, 'driven by hand', 'mechanical'],
];

function energyOf(words: readonly Word[]): (typeof energies)[number] | undefined {
  const said = words.flatMap((word) => plainImage(word).split(' '));
  return energies.find(([pattern]) => said.some((each) => pattern.test(each)));
}

function sensesOf(words: readonly Word[], put: string): readonly SaidBy[] {
  return words.flatMap((word) =>
    plainImage(word)
      .toLowerCase()
      .split(' ')
      .map((each): SaidBy => [each, put]),
  );
}

/** `break Gate at 11 m to 11.5 m slide gate driven by compressed air`: as a note nothing would isolate it. */
function gateDrive({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const gate = words.findIndex(({ type }) => type === 'slide gate');
  if (block !== 'Conveyor' || words[0]?.type !== 'break' || gate < 0) return undefined;
  const behind = words.slice(gate + 1);
  const plain = behind.filter(({ type }) => type !== 'STRING');
  const isOfIt = plain.every(
    ({ image }) =>
      /^(?:driven|by|compressed|cylinder|operated|moved|with|ram|wheel|drive|actuator)$/.test(image) ||
      energyOf([{ type: 'ID', image }]),
  );
  const energy = energyOf(plain);
  if (!energy || !isOfIt || plain.length === 0) return undefined;
  const line = [
    ...words.slice(0, gate + 1),
    keyword(energy[1]),
    ...behind.filter(({ type }) => type === 'STRING'),
  ];
  return offered(words, line, pattern, 'What moves a gate stands behind it', sensesOf(plain, energy[1]));
}

function offered(
  words: readonly Word[],
  line: readonly Word[],
  pattern: LinePattern,
  why: string,
  senses: readonly SaidBy[],
): Otherwise | undefined {
  if (!readsSoundly(line, pattern)) return undefined;
  return { at: 0, message: `${why}: \`${imagesOf(line)}\`.`, repair: changed(words, line), senses };
}

const ofADrive =
  /^(?:drive|drive at|motor|motor power|speed|power|at|screw|geared|gearmotor|the|end|,|with|by)$/i;

/** `drive head 4 kW 20 rpm`, `motor 4 kW`, `speed 20 rpm` */
function driveInWords({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  if (
    block !== 'Conveyor' ||
    !words.some(({ image }) => /^(?:drive|drive at|motor|speed|geared|gearmotor)$/i.test(image))
  )
    return undefined;
  const of = (dimension: 'power' | 'rotation'): readonly Word[] =>
    words.filter(({ type, image }) => type === 'QUANTITY' && parseQuantity(image, dimension).ok);
  const [power, speed] = [of('power'), of('rotation')];
  const ends = words.filter(({ type }) => type === 'head' || type === 'tail');
  if (
    power.length > 1 ||
    speed.length > 1 ||
    ends.length > 1 ||
    power.length + speed.length + ends.length === 0
  )
    return undefined;
  // `zero speed switch at the tail`: that is no drive.
  const isDrive = words.some(
    ({ type, image }) => type === 'drive at' || /^(?:drive|gearmotor)$/i.test(image),
  );
  if (power.length + speed.length === 0 && !isDrive) return undefined;
  // In the language's own words it is a slip, which is told at its place.
  if (words[0]?.type === 'drive at' && words.some(({ type }) => type === 'power' || type === 'speed'))
    return undefined;
  const values = [
    ...(power[0] ? [keyword('power'), power[0]] : []),
    ...(speed[0] ? [keyword('speed'), speed[0]] : []),
  ];
  const [end] = ends;
  const line = [keyword('drive at'), end ?? keyword('head'), ...values];
  const rest = words.filter((word) => !ends.includes(word) && !power.includes(word) && !speed.includes(word));
  const isAll = rest.every(({ image }) => ofADrive.test(image));
  const hasMore = rest.some(({ type }) => type === 'QUANTITY' || type === 'NUMBER' || type === 'DATE');
  if (hasMore || !readsSoundly(line, pattern)) return undefined;
  const where = end ? '' : ', or `at tail`, with what else is known of it on that line';
  return {
    at: 0,
    message: `The drive of a conveyor is one line with its end, its power and the speed of the screw: \`${imagesOf(line)}\`${where}.`,
    ...(isAll && end ? { repair: changed(words, line), senses: sensesOf(rest, 'drive at') } : {}),
  };
}

const openings: readonly (readonly [RegExp, string, string])[] = [
  [/^(?:inlet|feed|infeed|intake|chute)$/, 'inlet', 'Inlet'],
  [/^(?:slide gate|gate|slide|knife gate|air gate)$/, 'slide gate', 'Gate'],
  [/^(?:discharge|outlet|spout)$/, 'discharge', 'Discharge'],
  [/^(?:joint ring|ring)$/, 'joint ring', 'Ring'],
  [/^end plate$/, 'end plate', 'End'],
];

/** `inlet at 0.5 m to 1.5 m`, `gate at 11 m air` */
function breakWithoutName({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type }, i) => type === 'at' && isChainage(words[i + 1]));
  if (block !== 'Conveyor' || at < 1 || at > 2) return undefined;
  const said = inSmall(words.slice(0, at));
  const [, kind, name] = openings.find(([pattern]) => pattern.test(said)) ?? [];
  if (kind === undefined || name === undefined) return undefined;
  const end = at + (words[at + 2]?.type === 'to' ? 4 : 2);
  const behind = words.slice(end);
  const energy = kind === 'slide gate' ? energyOf([...behind, ...words.slice(0, at)]) : undefined;
  const rest = behind.filter(
    (word) => word.type === 'allowance' || word.type === 'QUANTITY' || word.type === 'STRING',
  );
  if (behind.length > rest.length && !energy) return undefined;
  const line = [
    ...[keyword('break'), { type: 'ID', image: name }, ...words.slice(at, end), keyword(kind)],
    ...[...(energy ? [keyword(energy[1])] : []), ...rest],
  ];
  return offered(words, line, pattern, 'What opens the trough is a `break`, with a name of its own', [
    ...sensesOf(words.slice(0, at), kind),
    ...sensesOf(behind, energy?.[1] ?? kind),
  ]);
}

const rows: Readonly<Record<string, string>> = {
  'hold-downs': 'hold-down',
  'hold-down': 'hold-down',
  covers: 'cover',
  cover: 'cover',
  lids: 'cover',
  braces: 'brace',
  brace: 'brace',
  hatches: 'hatch',
};

/** `hold-downs every 2 m both sides`: from where to where is for whoever counts them to say. */
function everyWithoutEnds({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const every = words.findIndex(({ type }) => type === 'every');
  const first = plainImage(words[0] ?? keyword('')).toLowerCase();
  const part = Object.hasOwn(rows, first) ? rows[first] : undefined;
  const step = words[every + 1];
  if (block !== 'Conveyor' || part === undefined || every < 1 || !isChainage(step)) return undefined;
  if (words.some(({ type }) => type === 'from' || type === 'at')) return undefined;
  const mass = words.find(({ type, image }) => type === 'QUANTITY' && /\d *kg$/.test(image));
  const side = words.find(({ type }) => / sides?$/.test(type));
  const line = [
    `${part} every ${step?.image ?? ''} from … m to … m`,
    ...(mass ? [`mass ${mass.image}`] : []),
    ...(side ? [side.type] : []),
  ].join(' ');
  return {
    at: 0,
    message: `A row of them says from where to where: \`${line}\`, with the chainages of the first and the last in place of \`…\`.`,
  };
}

/** `liner Hard8 0 m to 8 m` */
function linerAlong({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, from, to, end, ...more] = words;
  if (block !== 'Conveyor' || first?.type !== 'liner' || !isName(name) || !from || !name || more.length > 0)
    return undefined;
  const until =
    to?.type === 'to'
      ? end
      : to?.image.startsWith('-')
        ? { type: 'QUANTITY', image: to.image.slice(1) }
        : undefined;
  if (!until || !/^\d/.test(from.image)) return undefined;
  const unit = /[a-z]+$/.exec(until.image)?.[0] ?? 'm';
  const start = from.type === 'NUMBER' ? { type: 'QUANTITY', image: `${from.image} ${unit}` } : from;
  const line = [first, name, keyword('from'), start, keyword('to'), until];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 2,
    message: `Where a liner lies is said with \`from\`: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `isolation Q7 main switch electrical`, `isolation A1 air at 11 m` */
function isolationInWords({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, ...rest] = words;
  if (block !== 'Conveyor' || first?.type !== 'isolation' || !name || !isName(name)) return undefined;
  const at = rest.findIndex(({ type }) => type === 'at');
  const behind = at < 0 ? [] : rest.slice(at, at + 2);
  const said = rest.filter((word) => !behind.includes(word));
  const energy = energyOf(said);
  if (!energy) return undefined;
  const isOfIt = (word: Word): boolean => energy[0].test(plainImage(word));
  const title = noteOf(
    said.filter((word) => word.type !== 'STRING' && !isOfIt(word)),
    said.filter(({ type }) => type === 'STRING').map(({ image }) => image.slice(1, -1)),
  );
  const line = [first, name, ...(title ? [title] : []), keyword(energy[2]), ...behind];
  return offered(
    words,
    line,
    pattern,
    'What is locked says its energy in one word',
    sensesOf(said.filter(isOfIt), energy[2]),
  );
}
