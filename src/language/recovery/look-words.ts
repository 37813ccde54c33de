// Lines of a look that are no reading of the liner, in the words of whoever looked: from where (`looked from head end`), how fast it
// turned (`rpm 16.8`), how hot a part was (`bearing tail 71 degrees`), and what a new liner measured (`new liner measured 12 mm`).

import type { BrokenLine } from './broken-line.js';
import { aspectsOf } from '../../domain/conditions/kinds.js';
import type { ConditionKind } from '../../domain/model/records.js';
import { fillers } from './fillers.js';
import { noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import { type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { inSmall, imagesOf, keyword, plainImage, textsIn, type Word } from './word.js';

export const lookLines: readonly LineSaying[] = [measuredFrom, lookedFrom, turned, hot, newLiner];

const looking = /^(?:view|viewed|looked|looking|look|seen|standing|stood|inspected|walked|read|inspection)$/;
/** Against the flow is upstream: the flow goes from the tail to the head. */
const ways: readonly (readonly [RegExp, string])[] = [
  [/^(?:from )?(?:the )?(?:head|discharge|outlet|drive|top)(?: side)?$/, 'upstream'],
  [/^(?:from )?(?:the )?(?:tail|inlet|feed|bottom|infeed)(?: side)?$/, 'downstream'],
  [
    /^(?:against|opposite to) (?:the )?(?:flow|direction of flow)$|^(?:towards? )(?:the )?(?:tail|inlet)$/,
    'upstream',
  ],
  [
    /^(?:with|in|in direction of|in the direction of) (?:the )?flow$|^(?:towards? )(?:the )?(?:head|discharge)$/,
    'downstream',
  ],
];

/** `looked from head end`, `view from the tail`, `looking against the flow` */
function lookedFrom({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const [first, ...rest] = words;
  if (block !== 'Inspection' || !first || !looking.test(first.image.toLowerCase())) return undefined;
  const plain = rest.filter(({ type }) => type !== 'STRING' && type !== ':');
  const text = inSmall(plain);
  const way = ways.find(([pattern]) => pattern.test(text))?.[1];
  if (way === undefined || textsIn(words).length > 0) return undefined;
  const line = [keyword('view'), keyword(way)];
  return {
    at: 0,
    message:
      `Which way the inspector looked is said by the flow, which goes from the tail to the head: \`${imagesOf(line)}\`; ` +
      'clock positions are mirrored by it.',
    repair: changed(written, line),
    senses: words
      .flatMap((word) => plainImage(word).toLowerCase().split(' '))
      .map((each): SaidBy => [each, way]),
  };
}

const measure =
  /^(?:all |everything )*(?:chainages?|distances?|meters?|metres?|measured?|measures|measurements?|measuring|positions?|places|tape|counted|zero)\b/;
const fromHead =
  /\b(?:from|(?:starts?|begins?|zero|zero is) at) (?:the )?(?:head|discharge|outlet|top|upper)(?: end| side)?\b/;
const fromTail =
  /\b(?:from|(?:starts?|begins?|zero|zero is) at) (?:the )?(?:tail|inlet|feed|infeed|bottom|lower)(?: end| side)?\b/;
const saidThen: ReadonlySet<string> = new Set(
  (
    'all everything chainage chainages distance distances meter meters metre metres measured measure measures measurement measurements ' +
    'measuring position positions place places tape counted count zero start starts begin begins at are is were was taken read here ' +
    'from the end side of look this in today'
  ).split(' '),
);

/** `chainage from head`, `all measured from the top end`: from which end the whole look counts. */
function measuredFrom({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const plain = words.filter(({ type }) => type !== 'STRING' && type !== ':');
  const text = inSmall(plain);
  if (block !== 'Inspection' || !measure.test(text) || words.some(({ type }) => /QUANTITY|NUMBER/.test(type)))
    return undefined;
  const end = fromHead.test(text) ? 'head' : fromTail.test(text) ? 'tail' : undefined;
  const ends = /^(?:head|discharge|outlet|top|upper|tail|inlet|feed|infeed|bottom|lower)$/;
  const singles = text.split(' ');
  if (end === undefined || !singles.every((each) => saidThen.has(each) || ends.test(each))) return undefined;
  if (textsIn(words).length > 0) return undefined;
  const line = [keyword('measured from'), keyword(end)];
  return {
    at: 0,
    message:
      `From which end every chainage of the look counts is said with \`${imagesOf(line)}\`: ` +
      'what goes by a name, a panel or an end stays where it is.',
    repair: changed(written, line),
    senses: singles.map((each): SaidBy => [each, ends.test(each) ? end : 'measured from']),
  };
}

/** `rpm 16.8`, `16.8 rpm`, `screw turns 16.8 rpm` */
function turned({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  if (block !== 'Inspection') return undefined;
  const isTurns = (text: string): boolean => /^(rpm|r\/min|1\/min|turns|revs|rev\/min|u\/min)$/i.test(text);
  const value = words.find(
    ({ type, image }) => type === 'QUANTITY' && isTurns(/[^\d\s.,]+$/.exec(image)?.[0] ?? ''),
  );
  const bare = words.find(({ type }, i) => type === 'NUMBER' && isTurns(words[i - 1]?.image ?? ''));
  const speed = value ?? (bare && { type: 'QUANTITY', image: `${bare.image} rpm` });
  const others = words.filter((word) => word !== value && word !== bare && word.type !== 'STRING');
  const isSaid = ({ image, type }: Word): boolean =>
    isTurns(image) || turning.has(image.toLowerCase()) || fillers.has(image.toLowerCase()) || type === ':';
  if (!speed || !others.every(isSaid)) return undefined;
  const texts = words.filter(({ type }) => type === 'STRING');
  const line = [keyword('speed'), speed, ...texts];
  return {
    at: 0,
    message: `How fast the screw turns is said with \`speed\`: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
    senses: others.map(({ image }): SaidBy => [image.toLowerCase(), 'speed']),
  };
}

const turning: ReadonlySet<string> = new Set(
  'screw spiral shaft speed turns turning runs running counted measured rotates rotation = revolutions'.split(
    ' ',
  ),
);

/** `bearing tail 71 degrees`, `gearbox 68`: of a part of the drive, degrees of what is for who measured to say. */
function hot({ block, words: written }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection') return undefined;
  const { part, told: apart, texts, ...more } = takenApart(joined(written));
  // `71 degrees`: a unit that nobody knows stands apart.
  const told = apart.flatMap((word, at): readonly Word[] => {
    if (apart[at - 1]?.type === 'NUMBER' && degrees.test(word.image)) return [];
    const unit = apart[at + 1]?.image ?? '';
    return [
      word.type === 'NUMBER' && degrees.test(unit)
        ? { type: 'QUANTITY', image: `${word.image} ${unit}` }
        : word,
    ];
  });
  const [value, ...others] = told.filter(
    ({ type, image }) => type === 'QUANTITY' && degrees.test(/[^\d\s.,]+$/.exec(image)?.[0] ?? ''),
  );
  if (!value || others.length > 0 || part === undefined || aspectsOf(part as ConditionKind).length === 0)
    return undefined;
  const rest = told.filter(
    ({ image, type }) =>
      image !== value.image &&
      type !== 'temperature' &&
      !/^(temp|reads?|measured|=|:|\.)$/.test(image) &&
      !fillers.has(image),
  );
  if (more.severity.length + more.answer.length + more.place.length > 0) return undefined;
  const number = /^[\d.,]+/.exec(value.image)?.[0] ?? '';
  const note = noteOf(
    rest.filter(({ image }) => image !== part),
    texts,
  );
  const size = { type: 'QUANTITY', image: `${number} degC` };
  const line = [keyword(part), keyword('temperature'), size, ...(note ? [note] : [])];
  const unit = /^[\d.,]+ ?(.*)$/.exec(value.image)?.[1]?.toLowerCase() ?? '';
  return {
    at: 0,
    message: `How hot it was is said with its unit: \`${imagesOf(line)}\`${/^c/.test(unit) ? '' : ', if it was in degrees Celsius'}.`,
  };
}

const degrees = /^(degrees?|deg|grad|C|celsius)$/i;

/** `new liner measured 12.0 mm` */
function newLiner({ block, words: written }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' && block !== 'Reline') return undefined;
  const { part, place, told, severity, answer } = takenApart(joined(written));
  const [size, ...others] = told.filter(({ type }) => type === 'QUANTITY' || type === 'NUMBER');
  const says = told.filter((word) => word !== size && !fillers.has(word.image.toLowerCase()));
  if (
    !size ||
    others.length + place.length + severity.length + answer.length > 0 ||
    !/\d ?(mm|in)$/.test(size.image)
  )
    return undefined;
  if (part !== 'liner' && part !== 'panel') return undefined;
  if (
    !says.every(({ image }) => ofNew.has(image.toLowerCase())) ||
    !says.some(({ image }) => /^(new|fitted)$/.test(image))
  )
    return undefined;
  const line = [keyword('thickness'), size];
  const texts = textsIn(written);
  if (block === 'Reline' && texts.length === 0)
    return {
      at: 0,
      message: `What the gauge showed on the new liner is said with \`thickness\`: \`${imagesOf(line)}\`.`,
      repair: changed(written, line),
      senses: [...says, keyword(part)].flatMap(({ image }): SaidBy[] => [[image.toLowerCase(), 'thickness']]),
    };
  return {
    at: 0,
    message: `What a new liner measured stands in its record: \`reline DG1 2026-03-14 meter 8120 h {\`, \`${imagesOf(line)}\`, \`}\`.`,
  };
}

const ofNew: ReadonlySet<string> = new Set(
  'new liner liners panel panels lining fitted measured measures measure gauge gauged thickness thick reading read = : all everywhere'.split(
    ' ',
  ),
);
