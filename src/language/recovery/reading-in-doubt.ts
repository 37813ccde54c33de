// A value that is no plain number: not read, a bound, about so much, from so much to so much. What was written stays in the note; how
// sure a reading is says its ±, and what nobody read is `not seen`.

import type { BrokenLine } from './broken-line.js';
import { noteOfWords, noteOf } from './general.js';
import { vague } from './fillers.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { commentedOut, changed } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, inSmall, isSmallLength, keyword, plainImage, textsIn, type Word } from './word.js';

export const doubtfulLines: readonly LineSaying[] = [
  meterNotRead,
  onASide,
  notRead,
  driveNotRead,
  bounded,
  about,
  ranging,
];

interface Parted {
  /** Of what the reading is, with what belongs to it before `thickness`. */
  readonly head: readonly Word[];
  /** What stands where its value should. */
  readonly value: readonly Word[];
}

/** Of a reading, or of the correction of one; undefined where it is neither. */
function parted({ block, words: written }: BrokenLine): Parted | undefined {
  const words = joined(written);
  const at = words.findIndex(({ type }) => type === 'thickness');
  const [first] = words;
  const isCorrection = block === 'Block' && first?.type === 'correction' && at > 0;
  const isPlaced = ['at', 'from', 'panel', 'panels', 'plate'].includes(first?.type ?? '') && at > 0;
  if (!isCorrection && block !== 'Inspection') return undefined;
  if (at === 0 && isName(words[1])) return { head: words.slice(1, 2), value: words.slice(2) };
  if (isCorrection || isPlaced || (isName(first) && at === 1))
    return { head: words.slice(0, at), value: words.slice(at + 1) };
  return isName(first) && at < 0 ? { head: words.slice(0, 1), value: words.slice(1) } : undefined;
}

/** How many words at the beginning say one of these; 0 where they say none. */
function saying(words: readonly Word[], sayings: ReadonlySet<string>): number {
  for (const length of [3, 2, 1])
    if (words.length >= length && sayings.has(inSmall(words.slice(0, length)))) return length;
  return 0;
}

function sensed(words: readonly Word[], put: string): readonly SaidBy[] {
  return words.map((word): SaidBy => [plainImage(word).toLowerCase(), put]);
}

const unread: ReadonlySet<string> = new Set([
  ...['not read', 'not measured', 'not taken', 'not gauged', 'not checked', 'not done', 'not possible'],
  ...['unread', 'no value', 'n a', 'na', 'n/a', 'nil', 'none', 'missed', 'could not read', 'cannot read'],
]);

/** `P7 thickness not read "no couplant"` */
function notRead(line: BrokenLine): Otherwise | undefined {
  const found = parted(line);
  if (!found || found.head[0]?.type === 'correction' || found.head[0]?.type === 'plate') return undefined;
  const length = saying(found.value, unread);
  if (length === 0) return undefined;
  const rest = found.value.slice(length);
  const note = noteOfWords(rest);
  const offered = [...found.head, keyword('not seen'), ...(note ? [note] : [])];
  return {
    at: found.head.length,
    message: `What nobody read is said with \`not seen\`: \`${imagesOf(offered)}\`.`,
    repair: changed(line.words, offered),
    senses: [...sensed(found.value.slice(0, length), 'not seen'), ['thickness', 'not seen']],
  };
}

/** `current not read "clamp flat"`, `speed not read`: nothing was measured, and the look says so. */
function driveNotRead({ block, words }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type, image }) => type === 'current' || type === 'speed' || image === 'amps');
  const part = words[at]?.type === 'speed' ? 'drive' : 'motor';
  const behind = words.slice(at + 1);
  if (block !== 'Inspection' || at < 0 || at > 1 || saying(behind, unread) === 0) return undefined;
  const own = words.slice(at === 1 && words[0]?.image === part ? 1 : 0);
  const note = noteOf(
    own.filter(({ type }) => type !== 'STRING'),
    textsIn(words),
  );
  const offered = [keyword('finding'), keyword(part), ...(note ? [note] : [])];
  return {
    at,
    message: `Where it was not read no line is needed; why not is told in \`${imagesOf(offered)}\`.`,
    repair: changed(words, offered),
  };
}

const bounds: ReadonlySet<string> = new Set(
  (
    'over, above, more than, greater than, thicker than, at least, not less than, min, minimum, under, ' +
    'below, less than, smaller than, thinner than, at most, not more than, up to, max, maximum'
  ).split(', '),
);

/** `P4 thickness over 8 mm`: a bound made a reading would be reckoned with as one. */
function bounded(line: BrokenLine): Otherwise | undefined {
  const found = parted(line);
  // `5 mm or less`
  const isBehind = /\b(?:or (?:less|more|thinner|thicker)|at (?:most|least)|max(?:imum)?|min(?:imum)?)$/.test(
    inSmall((found?.value ?? []).filter(({ type }) => type !== 'STRING')),
  );
  if (!found || !(isBehind || saying(found.value, bounds) > 0) || !found.value.some(isSmallLength))
    return undefined;
  const { head, value } = found;
  const of = imagesOf(head);
  const message =
    `A bound is no reading: a colour says between which depths it is, \`${of} colour teal\`, and a reading how sure it is, ` +
    `\`${of} thickness 8.4 mm ± 0.5 mm\``;
  if (head[0]?.type === 'correction' || head[0]?.type === 'plate')
    return {
      at: head.length,
      message: `A bound is no reading: how sure one is says its ±, \`${of} thickness 8.4 mm ± 0.5 mm\`.`,
    };
  const note = noteOfWords(value);
  const offered = [...head, keyword('not seen'), ...(note ? [note] : [])];
  return {
    at: head.length,
    message: `${message}; where neither is known, \`${imagesOf(offered)}\` keeps it and nothing reckons with it.`,
    repair: changed(line.words, offered),
    senses: [...sensed(value, 'not seen'), ['thickness', 'not seen']],
  };
}

const vaguely: ReadonlySet<string> = new Set([
  ...vague,
  'roughly',
  'around',
  'c',
  'nearly',
  'almost',
  'say',
  'some',
]);

/** `P2 thickness about 8.4 mm`: how sure it is, is for who measured to say. */
function about(line: BrokenLine): Otherwise | undefined {
  const found = parted(line);
  const length = found ? saying(found.value, vaguely) : 0;
  if (!found || length === 0) return undefined;
  const [said, size] = [found.value.slice(0, length), found.value.slice(length).find(isSmallLength)];
  if (!size) return undefined;
  const reading = imagesOf([...found.head, keyword('thickness'), size]);
  return {
    at: found.head.length,
    message:
      `How sure a thickness is says its ±: \`${reading} ± 0.5 mm "${imagesOf(said)}"\`, ` +
      'if it is right to half a millimetre.',
  };
}

/** `P1 thickness 8 mm to 8.5 mm`, `P1 8.0-8.5 mm`: the middle, and half of what lies between. */
function ranging(line: BrokenLine): Otherwise | undefined {
  const found = parted(line);
  if (!found) return undefined;
  const [low, to, high, ...rest] = found.value;
  const isRange = to?.type === 'to' || to?.image === '-' || to?.image === 'or';
  const isPlain = rest.every(({ type }) => ['STRING', 'by', 'photo'].includes(type));
  if (!low || !high || !isRange || !isSmallLength(high) || !isPlain || !/^\d/.test(low.image))
    return undefined;
  const unit = /[a-z]+$/.exec(high.image)?.[0] ?? 'mm';
  const [from, upTo] = [Number.parseFloat(low.image), Number.parseFloat(high.image)];
  const size = (value: number): Word => ({
    type: 'QUANTITY',
    image: `${Number(Math.abs(value).toFixed(3))} ${unit}`,
  });
  const texts = textsIn(rest.filter((_, i) => !['by', 'photo'].includes(rest[i - 1]?.type ?? '')));
  const said = [imagesOf([low, to, high]), ...texts].join(': ');
  const offered = [
    ...found.head,
    keyword('thickness'),
    size((from + upTo) / 2),
    keyword('±'),
    size((upTo - from) / 2),
    { type: 'STRING', image: `"${said}"` },
    ...rest.filter((word, i) => word.type !== 'STRING' || ['by', 'photo'].includes(rest[i - 1]?.type ?? '')),
  ];
  const isSound = found.head[0]?.type !== 'correction' && readsSoundly(offered, line.pattern);
  return {
    at: found.head.length,
    message: `A reading is one value and says how sure it is: \`${imagesOf(offered)}\`.`,
    ...(isSound || found.head[0]?.type === 'correction' ? { repair: changed(line.words, offered) } : {}),
  };
}

/** `meter not read` is of the heading, where leaving it out says the same. */
function meterNotRead({ block, words, heading }: BrokenLine): Otherwise | undefined {
  const [first, second, ...more] = words;
  const isHours = first?.type === 'meter' && second?.type === 'not read';
  if (!isHours || !['Inspection', 'Reline', 'PanelsMoved', 'ScrewChange'].includes(block)) return undefined;
  if (more.some(({ type }) => type !== 'STRING')) return undefined;
  const head = imagesOf([...heading.slice(0, 3), keyword('meter'), keyword('not read')]);
  return {
    at: 0,
    message:
      `That nobody read the meter is said in the heading, \`${head} {\`, or by leaving it out there; ` +
      `a comment keeps the line: \`// ${imagesOf(words)}\`.`,
    repair: commentedOut(words),
  };
}

function isOther({ type }: Word): boolean {
  return type !== 'thickness' && type !== 'STRING' && type !== ',';
}

/** `at 7 m left side thickness 9.1 mm`: how far up it was, is for who read it to say. */
function onASide({ block, words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const at = words.findIndex(({ type }) => type === 'left side' || type === 'right side');
  const half = words.findIndex(
    ({ image }, i) =>
      /^(?:left|right)$/.test(image) && /^(?:half|edge|flank|wall)$/.test(words[i + 1]?.image ?? ''),
  );
  const side = at < 0 ? half : at;
  const before = words.slice(0, side);
  const isPlaced =
    before[0]?.type === 'plate' || before[0]?.type === 'at' || (isName(before[0]) && side === 1);
  const says = words.find(
    (word) =>
      isSmallLength(word) || ['trough showing', 'second colour showing', 'colour'].includes(word.type),
  );
  if (block !== 'Inspection' || side < 1 || !isPlaced || !says || words.indexOf(says) < side)
    return undefined;
  const clock = words[side]?.image.startsWith('left') ? '9:00' : '3:00';
  const value = isSmallLength(says) ? [keyword('thickness'), says] : words.slice(words.indexOf(says));
  const place = isName(before[0]) ? [keyword('at'), { type: 'ID', image: '…' }] : before;
  const beside = words.slice(at < 0 ? side : side + 1, words.indexOf(says)).filter(isOther);
  const behind = isSmallLength(says) ? words.slice(words.indexOf(says) + 1).filter(isOther) : [];
  const note = isSmallLength(says) ? noteOf([...beside, ...behind], textsIn(words)) : undefined;
  const line = imagesOf([
    ...place,
    keyword('clock'),
    { type: 'CLOCK', image: clock },
    ...value,
    ...(note ? [note] : []),
  ]);
  const where = isName(before[0]) ? `, with the chainage of ${before[0]?.image ?? ''} in place of \`…\`` : '';
  return {
    at: side,
    message: `Where round the trough it was read is said by the clock: \`${line}\`${where}, if it was half way up.`,
  };
}
