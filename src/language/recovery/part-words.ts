// Which part of a machine does a line speak of? The parts as the language names them, and other words of the trade for them. What
// has several words goes before what has one: a thrust bearing is not a gearbox because it lies in one.

import { safeguardKinds } from '../../domain/model/conveyor.js';
import type { PartName } from '../../domain/model/records.js';
import { plainImage, type Word } from './word.js';

/** Spelled out by part, so that a part that the records gain is missed here at once. */
const words: Readonly<Record<PartName, readonly string[]>> = {
  liner: ['liner', 'liners', 'lining'],
  panel: ['panel', 'panels', 'sheet', 'sheets'],
  bolts: ['bolts', 'bolt', 'fixing', 'fixings'],
  spiral: ['spiral', 'spirals', 'screw', 'auger'],
  flight: ['flight', 'flights', 'flighting'],
  'hold-down': ['hold-down', 'hold-downs'],
  brace: ['brace', 'braces'],
  cover: ['cover', 'covers', 'lid', 'lids'],
  hatch: ['hatch', 'hatches'],
  gate: ['gate', 'gates', 'slide gate'],
  trough: ['trough'],
  'drive plate': ['drive plate'],
  'thrust bearing': ['thrust bearing', 'gearbox thrust bearing'],
  'tail bearing': ['tail bearing'],
  gearbox: ['gearbox'],
  motor: ['motor'],
  coupling: ['coupling'],
  drive: ['drive', 'drive at'],
  guard: ['guard', 'guards', 'guarding'],
  'emergency stop': ['emergency stop', 'emergency stops'],
  'pull cord': ['pull cord', 'pull cords'],
  interlock: ['interlock switch', 'interlock', 'interlocks'],
  'zero-speed sensor': ['zero-speed sensor', 'zero-speed sensors'],
  'level probe': ['level probe', 'level probes'],
  'blockage switch': ['blockage switch', 'blockage switches'],
  cable: ['cable', 'cables'],
  walkway: ['walkway', 'walkways'],
  sign: ['sign', 'signs'],
  hopper: ['hopper', 'hoppers', 'silo', 'bunker'],
  drain: ['drain', 'drains'],
};

const byWord = new Map<string, PartName>(
  // The record has every part, and nothing else.
  (Object.entries(words) as [PartName, readonly string[]][]).flatMap(([part, all]) =>
    all.map((word) => [word, part] as const),
  ),
);

/** What has several words before what has one. */
const longestFirst = [...byWord.keys()].sort((a, b) => b.length - a.length);

/** The part that a word of a line names, a part and what is wrong with it in one word too: `bolts` of `bolts loose`. */
export function partOfWord(word: Word | undefined): PartName | undefined {
  if (!word || word.type === 'STRING') return undefined;
  // A name of somebody's own has a capital: `Gate` is one.
  const image = plainImage(word);
  return byWord.get(word.type === 'ID' ? image : wordsNamed(image));
}

/** `MidGate`, `LowerHatch`: names that say by themselves what they are of. */
export function partOfName(word: Word | undefined): PartName | undefined {
  const end = word?.type === 'ID' ? /[a-z]([A-Z][a-z]+)\d*$|^([A-Z][a-z]+)\d*$/.exec(word.image) : undefined;
  const last = (end?.[1] ?? end?.[2] ?? '').toLowerCase();
  return named.has(last) ? byWord.get(last) : undefined;
}

const named: ReadonlySet<string> = new Set(['gate', 'hatch', 'cover', 'brace']);

/** What is named with what it belongs to before it: a `motor cable` is a cable, and a `coupling guard` a guard. */
const ofAPart: ReadonlySet<PartName | undefined> = new Set([
  ...safeguardKinds,
  'cable',
  'walkway',
  'sign',
] as const);

/** `motor` of a `motor cable` */
export function isOwner(words: readonly Word[], at: number): boolean {
  // `hatch 13 interlock`
  return ofAPart.has(partOfWord(words[at + (words[at + 1]?.type === 'NUMBER' ? 2 : 1)]));
}

/** Number of the first word that names a part of the machine; the lid of a cable tray is none. */
export function partIn(words: readonly Word[]): number {
  return words.findIndex(
    (word, at) =>
      partOfWord(word) !== undefined &&
      // The guard of a belt, but the lid of a cable tray.
      (ofAPart.has(partOfWord(word)) || !around.has(words[at - 1]?.image.toLowerCase() ?? '')) &&
      !isOwner(words, at) &&
      // `no sign of product`
      !(partOfWord(word) === 'sign' && words[at + 1]?.image === 'of'),
  );
}

/** Things beside a conveyor that have lids, bolts, panels and drives of their own. */
const around: ReadonlySet<string> = new Set(
  (
    'cable tray conduit duct guard mesh fence walkway platform ladder stair handrail rail pipe hose valve pump fan belt chain ' +
    'hoist crane lamp light box terminal junction control switch sensor probe chute hopper bunker silo skip container floor ' +
    'roof wall door tank filter nozzle camera sign stand support foot frame'
  ).split(' '),
);

/** The name of a part alone, whichever people use. */
export function isPartName(word: Word): boolean {
  return word.type !== 'STRING' && byWord.has(plainImage(word));
}

/** As much of a phrase as names its part: `hatch` of `hatch missing`. */
export function wordsNamed(phrase: string): string {
  if (byWord.has(phrase)) return phrase;
  return longestFirst.find((each) => phrase.startsWith(`${each} `)) ?? '';
}
