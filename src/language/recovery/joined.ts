// A line as whoever wrote it meant its words: what the lexer took together stands apart, and what people write in several words, or in
// one of their own, for a part or a place is the language's word. Whoever proposes a line reads this, and so does whoever judges it.

import { findUnit } from '../../domain/units/unit-table.js';
import { groupBy } from '../assembly/group-by.js';
import { partOfWord } from './part-words.js';
import { isFalseUnit, isWord, keyword, plainImage, type Word } from './word.js';

export function joined(line: readonly Word[]): readonly Word[] {
  return withPlaces(withNames(apart(withFileName(line))));
}

/** `photo tear.png`: the name of a file is one text. */
function withFileName(line: readonly Word[]): readonly Word[] {
  const at = line.findIndex(({ image }) => image === 'photo');
  const end = line.findIndex(
    ({ image }, i) =>
      i > at + 2 && line[i - 1]?.type === '.' && /^(jpe?g|png|webp|gif|heic|tiff?|bmp)$/i.test(image),
  );
  if (at < 0 || end < 0 || line.slice(at + 1, end).some(({ type }) => type === 'STRING')) return line;
  const name = line
    .slice(at + 1, end + 1)
    .map(({ image }) => image)
    .join('');
  return [...line.slice(0, at + 1), { type: 'STRING', image: `"${name}"` }, ...line.slice(end + 1)];
}

/** `2 squeaking`, `1 P4`, `1 in panel 3`, and `8-10.5 m`, which is no negative length but a stretch. */
function apart(line: readonly Word[]): readonly Word[] {
  return line.flatMap((word, at): readonly Word[] => {
    if (word.type !== 'QUANTITY') return [word];
    if (/^(1st|2nd|3rd|4th)$/.test(word.image)) return [{ type: 'ID', image: word.image }];
    const before = line[at - 1];
    const upper = /^-(\d.*)$/.exec(word.image)?.[1];
    if (upper !== undefined && (before?.type === 'NUMBER' || before?.type === 'QUANTITY'))
      return [keyword('to'), { type: 'QUANTITY', image: upper }];
    const spot = /^(\d+) +([A-Z]{1,2}\d+)$/.exec(word.image);
    if (spot)
      return [
        { type: 'NUMBER', image: spot[1] ?? '' },
        { type: 'ID', image: spot[2] ?? '' },
      ];
    const next = line[at + 1];
    const isPlace = / in$/.test(word.image) && isWord(next?.type ?? '');
    // `panel 4 of run 2`, `clock 5 "x"`: no unit follows these.
    const isOfPart =
      counting.has(before?.type ?? '') || (before !== undefined && partOfWord(before) !== undefined);
    const isCounted =
      isOfPart && /^\d+ ?[a-z]+$/.test(word.image) && findUnit(unitIn(word.image)) === undefined;
    if (!isPlace && !isCounted && !isFalseUnit(word.image)) return [word];
    const [, number = '', unit = ''] = /^([^a-z]*?)\s*([a-z].*)$/i.exec(word.image) ?? [];
    return [
      { type: 'NUMBER', image: number },
      { type: 'ID', image: unit },
    ];
  });
}

const counting: ReadonlySet<string> = new Set(['of run', 'run', 'panel', 'panels']);

function unitIn(image: string): string {
  return /[^\d\s.,+-].*$/.exec(image)?.[0] ?? '';
}

/** What people call a part, by what the language calls it: only names that say no more than that. */
const names: Readonly<Record<string, string>> = {
  'hold-down':
    'hold down, hold downs, holddown, holddowns, h-d, h-ds, pad, pads, hold-down pad, hold-down pads',
  'emergency stop':
    'emergency stops, emergency buttons, ' +
    'estop, e-stop, e stop, estops, e-stops, emergency-stop, emergency button, emergency stop button, emergency stop switch, ' +
    'emergency switch, mushroom button, panic button',
  'pull cord':
    'pull cords, emergency rope, emergency cord, emergency line, emergency wire, emergency pull cord, emergency pull rope, emergency stop rope, ' +
    'emergency stop cord, emergency stop line, pull rope, pull wire, pull-cord, pull-wire, pull-rope, pullcord, pull cord switch, ' +
    'trip wire, trip cord, trip rope, tripwire, rip cord, rope switch, cord switch',
  interlock: 'interlocks, interlock contact, interlock-switch',
  'zero-speed sensor':
    'zero speed sensor, zero speed sensors, zero-speed switch, zero speed switch, zero speed, zero speed monitor, zero-speed monitor, zero speed relay, ' +
    'underspeed switch, underspeed sensor, under-speed switch, speed sensor, speed switch, speed monitor, rotation sensor, rotation monitor, ' +
    'rotation switch, motion sensor, motion switch, standstill monitor, standstill sensor, stall sensor, stall switch',
  'level probe':
    'level-probe, level sensor, level switch, level detector, fill level probe, fill level sensor, filling probe, paddle switch, rotary paddle, ' +
    'high level probe, high level switch, overfill probe, overfill switch',
  'blockage switch':
    'blockage sensor, blockage probe, blockage detector, blocked chute switch, plugged chute switch, plug switch, chute switch, ' +
    'jam switch, jam sensor, overflow switch, pile-up switch',
  'tail bearing':
    'bearing tail, bearing at tail, bearing at the tail, tail-bearing, tail brg, tail end brg, brg tail, tail end bearing, tail shaft bearing',
  'thrust bearing': 'axial bearing, thrust brg, thrust-bearing, bearing thrust',
  gearbox: 'gear box, gear-box, gear unit, gearboxes, reducer, gear reducer',
  motor: 'drive motor, main motor, electric motor',
  coupling: 'flexible coupling, shaft coupling, drive coupling',
  walkway: 'gangway, catwalk, cat walk, footwalk, foot walk, walk way',
  sign: 'signboard, sign board, notice board',
  gate: 'knife gate, sliding gate, slidegate, slide valve, gate valve',
  hatch: 'inspection hatch, inspection door, access door, access hatch, inspection opening',
  brace: 'bracing, cross brace, cross-brace, crossbrace',
  spiral: 'helix',
  panel: 'liner panel, liner panels, liner sheet, liner sheets, lining panel, lining panels',
  bolts: 'fasteners, fastener, liner bolts, liner bolt',
  'left side': 'left hand side, left-hand side, lh side, lhs, on left side, on the left side, l h side',
  'right side': 'right hand side, right-hand side, rh side, rhs, on right side, on the right side, r h side',
  tail: 'tail end, tail-end, the tail, the tail end',
  head: 'head end, head-end, the head, the head end',
};

interface Name {
  readonly said: string;
  readonly is: string;
}

/** What the language calls a part or a place that the trade has a name of its own for. */
export function properName(said: string): string | undefined {
  return namesByFirst.get(firstOf(said))?.find((each) => each.said === said)?.is;
}

function firstOf(said: string): string {
  return said.slice(0, said.indexOf(' ') >>> 0);
}

/** By their first word, those of most words first: every word of a line that does not read is looked up here, many times. */
const namesByFirst: ReadonlyMap<string, readonly Name[]> = groupBy(
  Object.entries(names)
    .flatMap(([is, all]) => all.split(', ').map((said): Name => ({ said, is })))
    .sort((a, b) => b.said.split(' ').length - a.said.split(' ').length),
  ({ said }) => firstOf(said),
);

/** `emergency rope`, `bearing tail`, `hold downs` */
function withNames(line: readonly Word[]): readonly Word[] {
  const isSaid = (word: Word): boolean =>
    word.type !== 'STRING' &&
    plainImage(word)
      .toLowerCase()
      .split(' ')
      .some((said) => said === 'switch' || namesByFirst.has(said));
  if (!line.some(isSaid)) return line;
  const put: Word[] = [];
  for (let at = 0; at < line.length;) {
    const found = nameAt(line, at);
    put.push(found ? keyword(found.is) : (line[at] ?? keyword('')));
    at += found?.count ?? 1;
  }
  return put;
}

/** The name that begins here, and of how many words of the line it is. */
function nameAt(
  line: readonly Word[],
  from: number,
): { readonly is: string; readonly count: number } | undefined {
  // What is called so by its name stays what it is called.
  if (line[from]?.type === 'STRING' || (line[from - 1]?.type === 'at' && isName(line[from])))
    return undefined;
  const first = firstOf(plainImage(line[from] ?? keyword('')).toLowerCase());
  for (const { said, is } of namesByFirst.get(first) ?? []) {
    let text = '';
    let count = 0;
    while (text.length < said.length && from + count < line.length) {
      text = `${text} ${plainImage(line[from + count] ?? keyword('')).toLowerCase()}`.trim();
      count++;
    }
    // `spiral at tail end gap 34 mm`: the gap at an end.
    const isOfNext = said.endsWith(' end') && ends.has(line[from + count]?.image ?? '');
    if (text === said && !isOfNext) return { is, count };
  }
  return isSwitch(line, from) ? { is: 'interlock', count: 1 } : undefined;
}

/** What an end may have. */
const ends: ReadonlySet<string> = new Set(['gap', 'play', 'clearance', 'plate', 'float']);

/** The switch of a cover is its interlock. */
function isSwitch(line: readonly Word[], at: number): boolean {
  // `hatch 13 switch`
  const of = line[at - 1]?.type === 'NUMBER' ? line[at - 2] : line[at - 1];
  return line[at]?.image === 'switch' && /^(covers?|hatch|lids?|door|safety)$/.test(of?.image ?? '');
}

function isName(word: Word | undefined): boolean {
  return word?.type === 'ID' && /[A-Z0-9]/.test(word.image);
}

/** Places in the words of the language: `clock 5`, `5 o’clock`, `panel 5 run 2`, `run 2 panels 5 to 7`, `between 3 m and 4 m`. */
function withPlaces(line: readonly Word[]): readonly Word[] {
  return places.reduce((words, mend) => mend(words), line);
}

type Mend = (line: readonly Word[]) => readonly Word[];

/** Wherever `count` words in a row are such, others in their place. */
function everywhere(
  count: number,
  put: (words: readonly Word[], before: Word | undefined) => readonly Word[] | undefined,
): Mend {
  return (line) => {
    const out: Word[] = [];
    for (let at = 0; at < line.length;) {
      const found = at + count <= line.length ? put(line.slice(at, at + count), out.at(-1)) : undefined;
      out.push(...(found ?? line.slice(at, at + 1)));
      at += found ? count : 1;
    }
    return out;
  };
}

const places: readonly Mend[] = [
  // `5 o’clock`: the sign itself is no word.
  everywhere(2, ([hour, clock], before) => {
    const full = /^(\d{1,2}) ?o$/.exec(hour?.image ?? '')?.[1];
    return full !== undefined && clock?.type === 'clock' && before?.type !== 'clock'
      ? atClock(full)
      : undefined;
  }),
  everywhere(3, ([hour, o, clock]) =>
    hour?.type === 'CLOCK' && o?.image === 'o' && clock?.type === 'clock' ? [clock, hour] : undefined,
  ),
  everywhere(1, ([hour]) => {
    const full = /^(\d{1,2}) ?o-?clock$/.exec(hour?.image ?? '')?.[1];
    return full === undefined ? undefined : atClock(full);
  }),
  everywhere(2, ([clock, hour]) =>
    clock?.type === 'clock' && hour?.type === 'NUMBER' && /^(\d|1[0-2])$/.test(hour.image)
      ? atClock(hour.image)
      : undefined,
  ),
  // `clock 5-7`, `clock 5:00 to 7`
  everywhere(2, ([hour, end], before) => {
    const to = /^-(\d|1[0-2])$/.exec(end?.image ?? '')?.[1];
    return to !== undefined && hour?.type === 'CLOCK' && before?.type === 'clock'
      ? [hour, keyword('to'), { type: 'CLOCK', image: `${to}:00` }]
      : undefined;
  }),
  everywhere(3, ([hour, to, end]) =>
    hour?.type === 'CLOCK' && to?.type === 'to' && end?.type === 'NUMBER' && /^(\d|1[0-2])$/.test(end.image)
      ? [hour, to, { type: 'CLOCK', image: `${end.image}:00` }]
      : undefined,
  ),
  everywhere(2, ([size, hour]) =>
    isLong(size) && size && hour?.type === 'CLOCK' ? [size, keyword('clock'), hour] : undefined,
  ),
  // `at 9.4`, `pad 12.0 half gone`, `left 6.0`: where something is, in metres as everywhere.
  everywhere(2, ([at, size], before) =>
    at && isMetre(size) && (at.type === 'at' || placed.has(partOfWord(at)))
      ? [at, ...(at.type === 'at' ? [] : [keyword('at')]), inMetres(size)]
      : at && isMetre(size) && before && /^(left|right)$/.test(at.image)
        ? [keyword('at'), inMetres(size), keyword(`${at.image} side`)]
        : undefined,
  ),
  everywhere(3, ([from, to, end]) =>
    isMetre(from) && to?.type === 'to' && isMetre(end) ? [inMetres(from), to, inMetres(end)] : undefined,
  ),
  everywhere(2, ([at, clock]) => (at?.type === 'at' && clock?.type === 'clock' ? [clock] : undefined)),
  everywhere(4, ([between, from, and, to]) =>
    between?.image === 'between' && isMeasure(from) && from && and?.image === 'and' && isLong(to) && to
      ? [keyword('from'), from, keyword('to'), to]
      : undefined,
  ),
  everywhere(2, ([at, dot]) =>
    at?.type === 'ID' && dot?.type === '.' && chainages.has(at.image.toLowerCase()) ? [at] : undefined,
  ),
  everywhere(2, ([at, size]) =>
    at?.type === 'ID' && chainages.has(at.image.toLowerCase()) && isLong(size) && size
      ? [keyword('at'), size]
      : undefined,
  ),
  panelsOfRuns,
];

const chainages: ReadonlySet<string> = new Set(['chainage', 'ch', 'location', 'pos', 'position', 'station']);

function atClock(hour: string): readonly Word[] {
  return [keyword('clock'), { type: 'CLOCK', image: `${hour}:00` }];
}

function isMeasure(word: Word | undefined): boolean {
  return word?.type === 'QUANTITY' || word?.type === 'NUMBER';
}

function isLong(word: Word | undefined): boolean {
  return word?.type === 'QUANTITY' && /\d *(m|ft)$/.test(word.image);
}

const numbered: ReadonlySet<string> = new Set(['no', 'nr', 'number', '.']);

/** Parts that stand along the trough: behind these a number with a decimal is a chainage. */
const placed: ReadonlySet<string | undefined> = new Set([
  'hold-down',
  'brace',
  'trough',
  'spiral',
  'hatch',
  'cover',
]);

/** `9.4`, `13.2`: a number with a decimal and no unit, no longer than a conveyor. */
function isMetre(word: Word | undefined): word is Word {
  return word?.type === 'NUMBER' && /^\d{1,2}\.\d{1,2}$/.test(word.image);
}

function inMetres({ image }: Word): Word {
  return { type: 'QUANTITY', image: `${image} m` };
}

/** `panel 5 run 2`, `panels 5 and 6 in run 1`, `run 2 panel 5`: panels are said before their run. */
function panelsOfRuns(line: readonly Word[]): readonly Word[] {
  const at = line.findIndex(
    ({ type }, i) =>
      (type === 'panel' || type === 'panels') &&
      (line[i + 1]?.type === 'NUMBER' || numbered.has(line[i + 1]?.image ?? '')),
  );
  if (at < 0) return line;
  let from = at + 1;
  while (numbered.has(line[from]?.image ?? '')) from++;
  let end = from;
  while (line[end]?.type === 'NUMBER' || (end > from && ['to', 'and', ','].includes(line[end]?.image ?? '')))
    end++;
  const counts = line.slice(from, end);
  if (counts.at(-1)?.type !== 'NUMBER') return line;
  const [head, panel] = [line.slice(0, at), line.slice(at, at + 1)];
  const before =
    line[at - 2]?.type === 'run' && line[at - 1]?.type === 'NUMBER' ? line.slice(at - 1, at) : [];
  if (before.length > 0)
    return [...head.slice(0, -2), ...panel, ...counts, keyword('of run'), ...before, ...line.slice(end)];
  const joins = ['in', 'on', 'of', ','].includes(line[end]?.image ?? '') ? 1 : 0;
  const isRun = line[end + joins]?.type === 'run' && line[end + joins + 1]?.type === 'NUMBER';
  if (!isRun) return line;
  return [...head, ...panel, ...counts, keyword('of run'), ...line.slice(end + joins + 1)];
}
