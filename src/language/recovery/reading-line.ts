// Readings and measures whose parts are all there, in another order or in short: `second colour showing at P1`, `8.4 mm at P1`, `green at
// P3`, `P8 n.s. cover on`, `gap at hold-down 17 m 14 mm`, `trough plate 4.6 m from outside 3.8 mm`.

import { joined } from './joined.js';
import type { BrokenLine } from './broken-line.js';
import { noteOfWords, noteOf, takenApart } from './general.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise, LineSaying } from './otherwise.js';
import { changed } from './repairs.js';
import { isColour } from './colours.js';
import { partOfWord } from './part-words.js';
import { isChainage, isName, isSpotName } from './said-place.js';
import { withUnitWords } from './unit-words.js';
import { imagesOf, isSmallLength, keyword, textsIn, type Word } from './word.js';

export const readingLines: readonly LineSaying[] = [
  colourGone,
  readAtTheBottom,
  inAGouge,
  runningIdle,
  readAtAPart,
  severalPoints,
  plateReads,
  pointLast,
  placeLast,
  steelShowing,
  steelAtAPlace,
  notSeenInShort,
  colourWithWords,
  measured,
  lacksItsUnit,
  placedWithoutUnit,
  readingAndMore,
  bareMeasure,
  pointWithClock,
  currentOfMotor,
  panelShows,
];

/** `white layer gone at P3`: what shows now is another colour. */
function colourGone({ block, words }: BrokenLine): Otherwise | undefined {
  const plain = words.filter(({ type }) => type !== 'STRING');
  const at = plain.findIndex(({ image }) => /^(?:gone|lost|disappeared|vanished)$/i.test(image));
  const colours = plain.filter(isColour);
  const isNearly = plain.some(({ image }) => /^(?:nearly|almost|half|partly|not|soon|part)$/i.test(image));
  if (block !== 'Inspection' || at < 0 || colours.length !== 1 || isNearly) return undefined;
  if (plain.some((word) => partOfWord(word) !== undefined && partOfWord(word) !== 'liner')) return undefined;
  const spot = plain.find(isSpotName)?.image ?? 'P1';
  return {
    at: 0,
    message:
      `That ${colours[0]?.image ?? 'a colour'} is gone is said by the colour that shows now: \`${spot} colour …\`, with it in place of ` +
      `\`…\`, or \`${spot} second colour showing\` where the first one is gone.`,
  };
}

/** `at H3 clock 6:00 thickness 9.5 mm`: a part has no clock position, and a thickness there is the liner’s and not the steel’s. */
function readAtAPart({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const [at, part, clock, hour, ...row] = words;
  const isReading = ['thickness', 'colour', 'second colour showing', 'trough showing'].includes(
    row[0]?.type ?? '',
  );
  if (
    block !== 'Inspection' ||
    at?.type !== 'at' ||
    !part ||
    !isName(part) ||
    clock?.type !== 'clock' ||
    !hour
  )
    return undefined;
  if (!isReading) return undefined;
  const line = imagesOf([at, { type: 'ID', image: '…' }, clock, hour, ...row]);
  return {
    at: 1,
    message:
      `A reading at a part says its chainage: \`${line}\`, with where ${part.image} lies in place of \`…\`; of a point, which has its ` +
      `clock position where it is declared, \`${imagesOf([part, ...row])}\`.`,
  };
}

/** `at 4.2 m bottom 6.8 mm`: the bottom is six o’clock, where nothing else is said. */
function readAtTheBottom({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const bottom = words.findIndex(({ image }) => /^bottom$/i.test(image));
  const size = words.find(isSmallLength);
  const at = words.findIndex(({ type }, i) => type === 'at' && isChainage(words[i + 1]));
  const of = [bottom, at, at + 1, size ? words.indexOf(size) : -1];
  const rest = words.filter(
    (word, i) => !of.includes(i) && !['thickness', 'STRING'].includes(word.type) && word.image !== 'the',
  );
  if (block !== 'Inspection' || bottom < 0 || at < 0 || !size || rest.length > 0) return undefined;
  const clock = [keyword('clock'), { type: 'CLOCK', image: '6:00' }];
  const texts = words.filter(({ type }) => type === 'STRING');
  const line = [...words.slice(at, at + 2), ...clock, keyword('thickness'), size, ...texts];
  if (!readsSoundly(line, pattern)) return undefined;
  return { at: bottom, message: `The bottom is said by the clock: \`${imagesOf(line)}\`.` };
}

const damage = /^(?:gouge|gouges|gouged|groove|grooves|score|scored|scratch|scratched|notch|furrow|rut)$/i;

/** `P3 thickness 7.9 mm in a gouge`: how deep a gouge is says nothing of how fast the liner wears. */
function inAGouge({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const size = words.find(isSmallLength);
  const at = words.findIndex(({ image }) => damage.test(image));
  const isIn = words.slice(0, at).some(({ image }) => image === 'in');
  if (block !== 'Inspection' || !size || at < 0 || !isIn || words[0]?.type === 'plate') return undefined;
  const { place, told, texts, severity, photo, by } = takenApart(words);
  const spot = place.length > 0 ? place : isName(words[0]) ? [keyword('at'), ...words.slice(0, 1)] : [];
  const note = noteOf(
    told.filter((word) => word !== spot[1]),
    texts,
  );
  const line = [
    keyword('finding'),
    keyword('liner'),
    ...spot,
    ...severity,
    ...photo,
    ...(note ? [note] : []),
    ...by,
  ];
  if (spot.length === 0 || !note || !readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message:
      `What is left in a gouge says nothing of how fast the liner wears: as a finding no rate follows it, \`${imagesOf(line)}\`; ` +
      'what was read beside it is a reading of its own.',
    repair: changed(written, line),
  };
}

/** `idle current 3.1 A`, `screw speed 19.6` */
function runningIdle({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [how, what, size, ...more] = words;
  if (block !== 'Inspection' || (what?.type !== 'current' && what?.type !== 'speed')) return undefined;
  if (!how || more.some(({ type }) => type !== 'STRING')) return undefined;
  if (what.type === 'speed' && size?.type === 'NUMBER' && /^(?:screw|spiral|shaft|motor)$/.test(how.image))
    return { at: 2, message: `Its unit is missing: \`speed ${size.image} rpm\`, if that was it.` };
  const loads: readonly (readonly [RegExp, string])[] = [
    [/^(?:idle|idling|no-load|unloaded)$/i, 'empty'],
    [/^(?:full|full-load|load|running)$/i, 'loaded'],
  ];
  const load = loads.find(([said]) => said.test(how.image))?.[1];
  if (what.type !== 'current' || load === undefined || size?.type !== 'QUANTITY') return undefined;
  const line = [what, keyword(load), size, ...more];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `Did you mean \`${imagesOf(line)}\`?`,
    repair: changed(words, line),
    senses: [[how.image.toLowerCase(), load]],
  };
}

/** `thickness at 3 m 6 o'clock 6.8`: the unit is for who measured to say. */
function placedWithoutUnit({ block, words: written }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' || written[0]?.type !== 'thickness') return undefined;
  const { place, told, texts } = takenApart(joined(written.slice(1)));
  const [value, ...more] = told;
  if (value?.type !== 'NUMBER' || more.length > 0 || !place.some(({ type }) => type === 'clock'))
    return undefined;
  const note = texts.map((text) => ` "${text}"`).join('');
  return {
    at: written.length - 1,
    message: `A thickness is said with its unit: \`${imagesOf(place)} thickness ${value.image} mm${note}\`, if it was in mm.`,
  };
}

/** `P1 thickness 7.4 mm at minus 8 degC`: what follows a reading that is all there is its note. */
function readingAndMore({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, thickness, size, ...rest] = words;
  if (block !== 'Inspection' || !point || !isName(point) || thickness?.type !== 'thickness' || !size)
    return undefined;
  const isOther = ({ type, image }: Word): boolean =>
    ['photo', 'by', '±', '+/-', 'clock'].includes(type) ||
    (type === 'QUANTITY' && /\d *(?:mm|m|in|ft)$/.test(image));
  if (size.type !== 'QUANTITY' || rest.length < 2 || rest[0]?.type !== 'at' || rest.some(isOther))
    return undefined;
  const note = noteOfWords(rest);
  const line = [point, thickness, size, ...(note ? [note] : [])];
  if (!note || rest.some(isSpotName) || !readsSoundly(line, pattern)) return undefined;
  return { at: 3, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(words, line) };
}

/** `second colour showing at P1`, `8.4 mm at P1`, `green P3` */
function pointLast({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' || isName(words[0])) return undefined;
  const at = words.findIndex((word, i) => isSpotName(word) || (words[i - 1]?.type === 'at' && isName(word)));
  const name = words[at];
  if (!name) return undefined;
  const from = words[at - 1]?.type === 'at' ? at - 1 : at;
  const rest = [...words.slice(0, from), ...words.slice(at + 1)];
  const [first, ...more] = rest;
  const isShort = more.length === 0 || (more.length === 1 && more[0]?.image === 'showing');
  const line =
    isColour(first) && first && isShort
      ? [name, keyword('colour'), first]
      : (withUnitWords([name, ...rest], pattern) ?? [name, ...rest]);
  return { at: 0, message: `The point comes first: \`${imagesOf(line)}\`.`, repair: changed(words, line) };
}

/** `4 mm plate at 16.1 m reads 3.6 mm`: what it reads now is what is left of it. */
function plateReads({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const plate = words.findIndex(({ type }) => type === 'plate');
  const read = words.findIndex(({ image }) => /^(?:reads|read|now|measures|measured|left|down)$/.test(image));
  const at = words.findIndex(({ type }, i) => type === 'at' && /\d *m$/.test(words[i + 1]?.image ?? ''));
  const size = words.find(
    ({ type, image }, i) => i > read && type === 'QUANTITY' && /\d *(mm|in)$/.test(image),
  );
  if (!['Inspection', 'Reline'].includes(block) || plate < 0 || read < 0 || at < 0 || !size) return undefined;
  const place = words.slice(at, at + 2);
  const others = words.filter(
    (word, i) => word !== size && !place.includes(word) && i !== read && i !== plate,
  );
  const note = noteOfWords(others);
  const line = [keyword('plate'), ...place, keyword('thickness'), size, ...(note ? [note] : [])];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `What is left of the steel says first where: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: words.slice(read, read + 1).map(({ image }): SaidBy => [image.toLowerCase(), 'thickness']),
  };
}

/** `8.4 mm at 3.2 m clock 7:30` */
function placeLast({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type }, i) => type === 'at' && words[i + 1]?.type === 'QUANTITY');
  if (block !== 'Inspection' || at < 1 || words[0]?.type !== 'QUANTITY') return undefined;
  const isClock = words[at + 2]?.type === 'clock' || words[at + 2]?.type === 'CLOCK';
  const end = at + (words[at + 2]?.type === 'clock' ? 4 : isClock ? 3 : 2);
  const rest = [...words.slice(0, at), ...words.slice(end)];
  const line = withUnitWords([...words.slice(at, end), ...rest], pattern);
  const shape = `at ${words[at + 1]?.image ?? ''} clock 6:00 thickness ${words[0].image}`;
  if (!line)
    return isClock || !/(mm|in)$/.test(words[0].image)
      ? undefined
      : {
          at: 0,
          message: `A reading says first where it was taken, with its clock position: \`${shape}\`, say.`,
        };
  return { at: 0, message: `Where it is comes first: \`${imagesOf(line)}\`.`, repair: changed(words, line) };
}

/** `P4 bare steel`, `P4 worn through`, `P4 steel showing` */
function steelShowing({ block, words }: BrokenLine): Otherwise | undefined {
  const [point, ...rest] = words;
  const plain = rest.filter(({ type }) => type !== 'STRING').map(({ image }) => image.toLowerCase());
  if (block !== 'Inspection' || !point || !isName(point) || !steel.has(plain.join(' '))) return undefined;
  const line = [point, keyword('trough showing'), ...rest.filter(({ type }) => type === 'STRING')];
  return {
    at: 1,
    message: `Where the liner is through, the steel of the trough shows: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: plain
      .flatMap((each) => [each, ...each.split(' ')])
      .map((each): SaidBy => [each, 'trough showing']),
  };
}

/** `steel at 3 m`, `bare steel at 3 m clock 5:00` */
function steelAtAPlace({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const first = written[0]?.image.toLowerCase() ?? '';
  if (block !== 'Inspection' || !/^(?:steel|metal|bare)$/.test(first)) return undefined;
  const { place, told, severity, texts } = takenApart(joined(written));
  const said = told.map(({ image }) => image.toLowerCase()).join(' ');
  const isSteel = steel.has(said) || /^(?:bare )?(?:steel|metal) (?:shines|shows)$/.test(said);
  if (!isSteel || place[0]?.type !== 'at' || !isChainage(place[1]) || severity.length > 0) return undefined;
  const notes = texts.map((text): Word => ({ type: 'STRING', image: `"${text}"` }));
  const clock = [keyword('clock'), { type: 'CLOCK', image: '6:00' }];
  const isRound = place.some(({ type }) => type === 'clock');
  const line = [...place, ...(isRound ? [] : clock), keyword('trough showing'), ...notes];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message:
      `Where the liner is through, the steel of the trough shows: \`${imagesOf(line)}\`` +
      `${isRound ? '' : ', if it was at the bottom'}.`,
    ...(isRound
      ? {
          repair: changed(written, line),
          senses: said.split(' ').map((each): SaidBy => [each, 'trough showing']),
        }
      : {}),
  };
}

const steel: ReadonlySet<string> = new Set([
  'worn through',
  'steel',
  'metal',
  'bare',
  'bare steel',
  'steel showing',
  'steel bare',
  'down to steel',
  'down to the steel',
  'through to steel',
  'through to the steel',
  'steel visible',
]);

/** `P8 n.s. cover on` */
function notSeenInShort({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, ...rest] = words;
  const short = /^(n\.s\.?|ns|n\.a\.?)/i.exec(rest.map(({ image }) => image).join(''))?.[1];
  if (block !== 'Inspection' || !point || !isName(point) || short === undefined) return undefined;
  let used = 0;
  for (let length = 0; length < short.length; used++) length += rest[used]?.image.length ?? 1;
  const behind = rest.slice(used);
  const plain = [point, keyword('not seen'), ...behind];
  const note = noteOfWords(behind);
  const line = readsSoundly(plain, pattern) ? plain : [point, keyword('not seen'), ...(note ? [note] : [])];
  return {
    at: 1,
    message: `Where nobody could look is said with \`not seen\`: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: rest.slice(0, used).map(({ image }): SaidBy => [image.toLowerCase(), 'not seen']),
  };
}

/** `P1 and P2 green`, `P1 8.4 mm P2 7.9 mm`: a line for each. */
function severalPoints({ block, words }: BrokenLine): Otherwise | undefined {
  const spots = words.flatMap((word, at) => (isSpotName(word) ? [at] : []));
  const isOne = new Set(spots.map((at) => words[at]?.image)).size < spots.length;
  if (block !== 'Inspection' || spots.length < 2 || spots[0] !== 0 || isOne) return undefined;
  const of = words.map((word, at) => ({ word, at })).filter(({ word }) => shows(word));
  if (of.length === 0) return undefined;
  const each = spots.map((at, i) => {
    const next = spots[i + 1] ?? words.length;
    const own = of.find((value) => value.at > at && value.at < next) ?? of.find((value) => value.at > at);
    return own && `\`${words[at]?.image ?? ''} ${readingOf(own.word)}\``;
  });
  if (each.some((line) => line === undefined)) return undefined;
  const isBare = of.some(({ word }) => word.type === 'NUMBER');
  return {
    at: 0,
    message: `Each point has a line of its own: ${each.join(', ')}${isBare ? ', if it was in mm' : ''}.`,
  };
}

function shows(word: Word): boolean {
  return (
    isColour(word) ||
    (word.type === 'QUANTITY' && /\d *(mm|in)$/.test(word.image)) ||
    (word.type === 'NUMBER' && /\d\.\d/.test(word.image))
  );
}

function readingOf(word: Word): string {
  if (word.type === 'ID') return `colour ${word.image}`;
  return `thickness ${word.image}${word.type === 'NUMBER' ? ' mm' : ''}`;
}

/** `P6 red just showing`, `P2 teal in places "left of the bolt"` */
function colourWithWords({ block, words }: BrokenLine): Otherwise | undefined {
  const [point, colour, ...rest] = words;
  if (block !== 'Inspection' || !isName(point) || !isColour(colour) || !point || !colour) return undefined;
  const row = /^([A-Z]+)(\d+)-[A-Z]*(\d+)$/.exec(point.image);
  if (row) {
    const [first, last] = [`${row[1] ?? ''}${row[2] ?? ''}`, `${row[1] ?? ''}${row[3] ?? ''}`];
    const each = [first, last].map((name) => `\`${name} colour ${colour.image}\``).join(' and ');
    return { at: 0, message: `Each point has a line of its own: ${each}, and so for those between.` };
  }
  const plain = rest.filter(({ type }) => type !== 'STRING');
  // What shows not, or not yet, is no reading.
  if (plain.some(({ type, image }) => type === 'QUANTITY' || type === 'NUMBER' || image === 'not'))
    return undefined;
  // `blue shows round the bolt heads`: a countersink is not the panel.
  const round = plain.findIndex(({ image }) => /^(?:round|around|at|near|by|under|beside)$/.test(image));
  const part = plain.slice(round + 1, round + 3).find((word) => partOfWord(word) === 'bolts');
  if (round >= 0 && part) {
    const note = noteOf([colour, ...plain], textsIn(rest));
    const line = [keyword('finding'), keyword('bolts'), keyword('at'), point, ...(note ? [note] : [])];
    return {
      at: 1,
      message: `What shows at a bolt is no reading of the panel: \`${imagesOf(line)}\`.`,
      repair: changed(words, line),
    };
  }
  const others = plain.filter(isSpotName);
  if (others.length > 0) {
    const each = [point, ...others].map(({ image }) => `\`${image} colour ${colour.image}\``).join(' and ');
    return { at: 0, message: `Each point has a line of its own: ${each}.` };
  }
  const isAlone = plain.every(({ image }) => image === 'showing');
  const note = noteOf(isAlone ? [] : plain, textsIn(rest));
  const line = [point, keyword('colour'), colour, ...(note ? [note] : [])];
  return { at: 1, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(words, line) };
}

interface Measure {
  readonly part: string;
  /** All that may be said of it beside its place and its number. */
  readonly words: ReadonlySet<string>;
  readonly needs: ReadonlySet<string>;
  readonly line: (place: readonly Word[], size: Word) => readonly Word[];
}

const placing = ['at', 'of', 'the', 'from', 'in', 'on'];
const measures: readonly Measure[] = [
  {
    part: 'hold-down',
    words: new Set(['gap', 'hold-down', ...placing]),
    needs: new Set(['gap']),
    line: (place, size) => [keyword('hold-down'), ...place, keyword('gap'), size],
  },
  {
    part: 'flight',
    words: new Set(['depth', 'deep', 'flight', 'left', 'section', 'worn', 'to', ...placing]),
    needs: new Set(['depth', 'deep', 'left', 'section', 'worn', '']),
    line: (place, size) => [keyword('flight'), ...place, keyword('depth'), size],
  },
  {
    part: 'trough',
    words: new Set([
      'plate',
      'thickness',
      'thick',
      'steel',
      'left',
      'outside',
      'inside',
      'underneath',
      'trough',
      ...placing,
    ]),
    needs: new Set(['plate', 'thickness', 'thick', 'steel']),
    line: (place, size) => [keyword('plate'), ...place, keyword('thickness'), size],
  },
];

/** What of it is said in the line itself. */
const told: ReadonlySet<string> = new Set([
  'gap',
  'hold-down',
  'depth',
  'deep',
  'flight',
  'plate',
  'thickness',
  'thick',
  'trough',
  'steel',
]);

/** `gap at hold-down 17 m 14 mm`, `trough plate 4.6 m from outside 3.8 mm` */
function measured({ block, words }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' || words.some(({ type }) => type === 'finding' || type === 'closed'))
    return undefined;
  const said = takenApart(joined(words));
  const sizes = said.told.filter(({ type, image }) => type === 'QUANTITY' && /(mm|in)$/.test(image));
  const [size] = sizes;
  const isAPlace = said.place.length === 2 && said.place[0]?.type === 'at';
  if (!size || sizes.length > 1 || !isAPlace || said.severity.length + said.photo.length > 0)
    return undefined;
  const plain = said.told.filter((word) => word !== size);
  // `worn 8 mm` is what is gone, and `worn to 54 mm` what is left.
  const worn = plain.findIndex(({ image }) => image === 'worn');
  if (worn >= 0 && !plain.some(({ image }) => image === 'to' || image === 'left' || image === 'down'))
    return undefined;
  const measure = measures.find(
    ({ part, words: known, needs }) =>
      (said.part === part || (part === 'trough' && plain[0]?.type === 'plate')) &&
      plain.every(({ image }) => known.has(image)) &&
      (plain.some(({ image }) => needs.has(image)) || (plain.length === 0 && needs.has(''))),
  );
  if (!measure) return undefined;
  const note = noteOf(
    plain.filter(({ image }) => !told.has(image) && image !== 'to'),
    said.texts,
  );
  const line = [...measure.line(said.place, size), ...(note ? [note] : [])];
  const senses: readonly SaidBy[] =
    measure.part === 'trough'
      ? [
          ['trough', 'plate'],
          ['steel', 'plate'],
          ['thick', 'thickness'],
        ]
      : [['deep', 'depth']];
  return { at: 0, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(words, line), senses };
}

/** `tail bearing temp. 47`, `speed 15.9`: what is lacking is for who measured to say. */
function bareMeasure({ block, words }: BrokenLine): Otherwise | undefined {
  const plain = words.filter(({ type }) => type !== '.' && type !== ':');
  const value = plain.at(-1);
  const before = plain.at(-2);
  if (block !== 'Inspection' || value?.type !== 'NUMBER' || !before) return undefined;
  const isHot = ['temp', 'temperature'].includes(before.image.toLowerCase());
  const isFast = plain.length === 2 && before.image === 'speed';
  if (!isHot && !isFast) return undefined;
  const of = imagesOf(plain.slice(0, -2));
  const line = isHot ? `${of} temperature ${value.image} degC` : `speed ${value.image} rpm`;
  return { at: words.length - 1, message: `Its unit is missing: \`${line.trim()}\`, if that was it.` };
}

/** `P1 clock 7:00 thickness 8.7 mm`: a point has its clock position where it is declared. */
function pointWithClock({ block, words }: BrokenLine): Otherwise | undefined {
  const [point, clock, time, ...rest] = words;
  if (block !== 'Inspection' || !isName(point) || !point || clock?.type !== 'clock' || !time)
    return undefined;
  const line = imagesOf([keyword('at'), { type: 'ID', image: '…' }, clock, time, ...rest]);
  const own = imagesOf([point, ...rest]);
  return {
    at: 1,
    message:
      `A point has its clock position where it is declared: where that is the one, \`${own}\`; ` +
      `another spot is said by its chainage, \`${line}\`, with that of ${point.image} in place of \`…\`.`,
  };
}

/** `motor current 6.9 A loaded, 4.0 A empty`, `current 8.1 A` */
function currentOfMotor({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = inAmps(written);
  const plain = words.filter(({ type, image }) => type !== ',' && image !== 'motor');
  const [first, ...rest] = plain;
  const isCurrent = first?.type === 'current' || ['amps', 'current'].includes(first?.image ?? '');
  if (block !== 'Inspection' || !isCurrent || !rest.some(({ image }) => /\d *A$/.test(image)))
    return undefined;
  const valueBeside = (word: string): Word | undefined => {
    const at = rest.findIndex(({ image }) => image === word);
    const isA = (each: Word | undefined): boolean => /\d *A$/.test(each?.image ?? '');
    return at < 0
      ? undefined
      : isA(rest[0]) === isA(rest[at - 1]) && isA(rest[at - 1])
        ? rest[at - 1]
        : rest[at + 1];
  };
  const parts = ['empty', 'loaded'].flatMap((word) => {
    const value = valueBeside(word);
    return value ? [keyword(word), value] : [];
  });
  const line = [keyword('current'), ...parts];
  if (parts.length === 0) {
    const [value] = rest;
    const one = (word: string): string => `\`current ${word} ${value?.image ?? ''}\``;
    return {
      at: 0,
      message: `The current is that of the screw running ${one('empty')} or ${one('loaded')}.`,
    };
  }
  const senses: readonly SaidBy[] = [
    ['motor', 'current'],
    ['amps', 'current'],
    ['full', 'loaded'],
    ['idle', 'empty'],
  ];
  return { at: 0, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(written, line), senses };
}

/** `amps 15.9 full`: what is said in amps needs no unit. */
function inAmps(written: readonly Word[]): readonly Word[] {
  if (!/^(amps|ampere|amperage)$/.test(written[0]?.image ?? '')) return written;
  const running: Readonly<Record<string, string>> = { full: 'loaded', idle: 'empty' };
  return joined(written).map((word) => {
    if (word.type === 'NUMBER') return { type: 'QUANTITY', image: `${word.image} A` };
    const meant = Object.hasOwn(running, word.image) ? running[word.image] : undefined;
    return meant === undefined ? word : keyword(meant);
  });
}

/** `panel 7 of run 2 green showing` */
function panelShows({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  if (block !== 'Inspection' || words[0]?.type !== 'panel') return undefined;
  const at = words.findIndex((word, i) => i > 2 && isColour(word));
  const colour = words[at];
  const more = words.slice(at + 1).filter(({ image }) => image !== 'showing');
  if (!colour || words.some(({ type }) => type === 'colour')) return undefined;
  const line = [...words.slice(0, at), keyword('colour'), colour, ...more];
  return { at, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(written, line) };
}

/** `P2 11.3`: the unit is for who measured to say. */
function lacksItsUnit({ block, words }: BrokenLine): Otherwise | undefined {
  const [point, value, ...more] = words;
  if (block !== 'Inspection' || !isName(point) || value?.type !== 'NUMBER') return undefined;
  if (more.some(({ type }) => type !== 'STRING')) return undefined;
  const line = `${point?.image ?? ''} thickness ${value.image} mm`;
  return { at: 1, message: `A thickness is said with its unit: \`${line}\`, if it was in mm.` };
}
