// A condition whose words are all there, in another order, in another word of the trade or with more words between: `brace at 6.7 m
// missing`, `P4 panel gone`, `hold-down slack at 9.5 m`, `motor hot 82 degC`. What is left over is its note. Of one that is no longer
// so, `motor noise gone`, the answer is `closed`.

import { aspectsOf, measureOf } from '../../domain/conditions/kinds.js';
import type { ConditionKind } from '../../domain/model/records.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { noteOf, type SaidLine } from './general.js';
import { isOwner, partOfWord } from './part-words.js';
import type { LinePattern } from './pattern.js';
import { fillers } from './fillers.js';
import { isDone } from './done-words.js';
import { numbers } from './kept.js';
import { isName } from './said-place.js';
import { isOverIn, isReassuring, isTurnedAt } from './reassuring.js';
import { sensesOf, sensesOfAspect, type Sense } from './senses.js';
import { isWord, keyword, plainImage, type Word } from './word.js';

/** Undefined where no kind is named in full. */
export function asCondition(said: SaidLine, pattern: LinePattern): readonly Word[] | undefined {
  const { part, place, severity, photo, by, told, texts, answer } = said;
  if (told.some(({ type }) => type === '{' || type === 'finding')) return undefined;
  const found = kindIn(part, told, pattern);
  if (!found) return undefined;
  const { kind, from, taken, isOwn } = found;
  // `no crack to see`: nobody says what it was that is over.
  if (!isOwn && isTurnedAt(told.map(plainImage), from)) return undefined;
  const isOver = isOverIn(told.map(plainImage), from, taken) || (isMended(told, kind) && !isOfAnything(kind));
  // `bolts reset, 2 lost`: what was done is of some, and what is wrong of others.
  const cut = told.findIndex(({ type }) => type === ',');
  if (isOver && cut > 0 && from > cut && isDone(told.slice(0, cut))) return undefined;
  const isUnseen = isNotLooked(told);
  // Nobody says which of the things that may be wrong with it is over.
  if (isOver && (answer.length > 0 || isOfAnything(kind))) return undefined;
  // `motor tripped 3 times`: that is no name for what is wrong with it.
  if (isOfAnything(kind) && !told.some(isTemperature) && answer.length === 0) return undefined;
  // Words are not cut out of the middle of what was said.
  const isInside = isAmidst(told, taken);
  const rest = told.filter((_, at) => isInside || !taken.has(at));
  // `hatch missing bolts 2`: something else is missing.
  const isPanel = (at: number): boolean => rest[at]?.type === 'panel' && rest[at + 1]?.type === 'NUMBER';
  const isOther = (word: Word, at: number): boolean =>
    partOfWord(word) !== undefined &&
    partOfWord(word) !== part &&
    !isPanel(at) &&
    !isOwner(rest, at) &&
    part !== 'guard' &&
    !beside.has(rest[at - 1]?.image ?? '');
  if (rest.some((word, at) => isOther(word, at) && !taken.has(told.indexOf(word)))) return undefined;
  const measure = measureIn(kind, rest);
  const hot = isOfDrive(kind) ? rest.find(isTemperature) : undefined;
  const more = rest.filter((word) => word !== measure && word !== hot && word.type !== 'temperature');
  // `noise from gearbox`: that is said already.
  const isSaid = more.every(
    (word) => (part !== undefined && partOfWord(word) === part) || fillers.has(word.image.toLowerCase()),
  );
  // `loose panel`
  const isLast =
    part !== undefined &&
    partOfWord(more.at(-1)) === part &&
    more.at(-2)?.type === 'ID' &&
    !beside.has(more.at(-2)?.image ?? '');
  // `dead, did not trip`: the language's own word stands in the line.
  const isDoubled = !isOwn && more[1]?.type === ',' && kind[0]?.endsWith(` ${more[0]?.image ?? ''}`);
  const left = isDoubled ? more.slice(2) : more;
  const note = noteOf(isSaid ? [] : isLast ? left.slice(0, -1) : left, texts);
  return [
    ...(isUnseen ? [keyword('not seen')] : isOver ? [keyword('closed')] : answer),
    ...kind.map(keyword),
    ...(measure ? [counted(measure)] : []),
    ...(hot ? [keyword('temperature'), hot] : []),
    ...place,
    ...severity,
    ...photo,
    ...(note ? [note] : []),
    ...by,
  ];
}

/** `cracked from bolt hole`: where it is, and not what is wrong. */
const beside: ReadonlySet<string> = new Set(
  'from near beside along behind under above below at with by to on in'.split(' '),
);

/** `weld holds, no crack to see`: what is left would be torn apart. */
function isAmidst(told: readonly Word[], taken: ReadonlySet<number>): boolean {
  const [first, last] = [Math.min(...taken), Math.max(...taken)];
  const says = (word: Word, at: number): boolean =>
    !taken.has(at) && word.type === 'ID' && !fillers.has(word.image.toLowerCase());
  const isCut = told[last + 1]?.type === ',';
  return (
    taken.size > 0 &&
    !isCut &&
    told.some((word, at) => at < first && says(word, at)) &&
    told.some((word, at) => at > last && says(word, at))
  );
}

/** `seized cover freed, new bolts`: it was put right; not where it is still to be. */
function isMended(told: readonly Word[], [kind]: readonly string[]): boolean {
  // `product plugged` is what is wrong.
  if (kind === 'product blocked' && told.some(({ image }) => /^plugged$/i.test(image))) return false;
  const isOpen = told.some(({ image, type }) => open.has(image.toLowerCase()) || type === 'not seen');
  return !isOpen && isDone(told);
}

const open: ReadonlySet<string> = new Set(['no', 'badly', 'only', 'order']);

/** `cover leaking at 13.1 m not looked at` */
function isNotLooked(told: readonly Word[]): boolean {
  const at = told.findIndex(({ image }) => image === 'not');
  const next = told[at + 1]?.image ?? '';
  return at >= 0 && ['looked', 'checked', 'inspected', 'visible', 'seen'].includes(next);
}

interface Found {
  /** `hold-down worn`; `motor`, `noise`. */
  readonly kind: readonly string[];
  /** Where its words begin, and which of them need not be told beside it. */
  readonly from: number;
  readonly taken: ReadonlySet<number>;
  /** In the language's own words. */
  readonly isOwn: boolean;
}

function kindIn(part: string | undefined, told: readonly Word[], pattern: LinePattern): Found | undefined {
  const kinds = [...pattern.first].filter(isWord) as readonly ConditionKind[];
  // A liner is torn where one of its panels is, and a flight is the spiral.
  const of = part === 'liner' ? 'panel' : part === 'flight' ? 'spiral' : part;
  const found = kinds.flatMap((kind) =>
    of !== undefined && partOfWord(keyword(kind)) === of && kind.startsWith(`${of} `)
      ? sense([kind], kind.slice(of.length + 1), sensesOf(kind), told)
      : [],
  );
  // `breather blocked` is of the gearbox.
  const others = kinds
    .filter((kind) => unnamed.has(kind) && (part === undefined || kind !== 'product blocked'))
    .flatMap((kind) => sense([kind], kind, sensesOf(kind), told));
  const gap = part === undefined ? openJoint(told) : undefined;
  if (gap) return gap;
  const all = [...found.filter((each) => isOfThePart(each, told) && !isCutToFit(each, told)), ...others];
  const best = bestOf(all);
  // `drain blocked`: that thing is, and not what is conveyed.
  if (best?.kind[0] === 'product blocked' && isOfAThing(told, best.from)) return undefined;
  if (best || part === undefined) return best;
  return pattern.next(pattern.start, part) === undefined
    ? undefined
    : ofTheDrive(part as ConditionKind, told);
}

/** `hatch seal gone`, `gate cylinder leaking`: something on the part is, and not the part. */
function isOfThePart({ kind: [kind = ''], from }: Found, told: readonly Word[]): boolean {
  const image = told[from - 1]?.image.toLowerCase() ?? '';
  const before = told[from - 1];
  // `2 clips of cover C3 missing`: they are, and the cover is not.
  const of = told.findIndex(
    (word, at) => at > 0 && at < from && word.image === 'of' && partOfWord(told[at + 1]) !== undefined,
  );
  const thing = /([a-z]+)$/.exec(told[of - 1]?.image.toLowerCase() ?? '')?.[1] ?? '';
  if (
    of > 0 &&
    thing !== '' &&
    !itself.has(thing) &&
    !fillers.has(thing) &&
    partOfWord(told[of - 1]) === undefined
  )
    return false;
  // `guard coupling bolt missing`
  if (partOfWord(before) === 'bolts' && !kind.startsWith('bolts') && kind !== 'spiral bolts loose')
    return false;
  if (
    !before ||
    before.type !== 'ID' ||
    partOfWord(before) !== undefined ||
    isName(before) ||
    isReassuring(image) ||
    image === 'longer' ||
    fillers.has(image) ||
    /ly$/.test(image)
  )
    return true;
  return kind.endsWith(' missing') ? false : itself.has(image) || numbers[image] !== undefined;
}

/** `one panel cut to 870 mm`: that is work on a new one. */
function isCutToFit({ from }: Found, told: readonly Word[]): boolean {
  return (
    told[from]?.image === 'cut' && /^(?:to|back|short|down|for|round|on)$/.test(told[from + 1]?.image ?? '')
  );
}

/** Of a part, what is said of it as of the part; and words that say how it is. */
const itself: ReadonlySet<string> = new Set(
  (
    'edge edges corner corners end side rim face shoe shoes block blocks pad clamp gasket seal flange joint seam lip ' +
    'insulation sheath jacket grating handrail handrails rail cord rope wire plate mesh ' +
    'upper lower left right top bottom all both some badly bit little much very more worse is are found seen half partly'
  ).split(' '),
);

/** Before what is wrong stands a thing of its own, which is none of what is conveyed. */
function isOfAThing(told: readonly Word[], from: number): boolean {
  const isThing = ({ type, image }: Word): boolean =>
    type === 'ID' &&
    /^[a-z]{3,}/.test(image) &&
    !/ly$/.test(image) &&
    !conveyed.has(image.replace(/s$/, '')) &&
    !fillers.has(image.toLowerCase());
  // `blocked drain`
  const next = from === 0 && told[0]?.type === 'blocked' ? told.slice(1, 2) : [];
  return [...told.slice(0, from), ...next].some(isThing);
}

/** What a trough carries, and words for how much of it lies where. */
const conveyed: ReadonlySet<string> = new Set(
  (
    'product material sludge cake digestate bark wood chip stone lump root ball plug build-up buildup deposit mud sand grit rag fibre ' +
    'waste compost manure straw trough screw conveyor machine whole half all full found again solid frozen wet dry old hard big'
  ).split(' '),
);

/** Of these the whole phrase is said, and no part. */
const unnamed: ReadonlySet<string> = new Set(['product blocked', 'material behind liner', 'joint open']);

/** `joint 9.7 m 7 mm`: what is measured of a joint is how far it stands open. */
function openJoint(told: readonly Word[]): Found | undefined {
  const isJoint = ({ image }: Word): boolean => image === 'joint' || image === 'joints';
  const [first, ...more] = told.filter(
    ({ image, type }) => type !== ':' && !fillers.has(image.toLowerCase()),
  );
  const [size, ...others] = more.filter(({ image }) => image !== 'open' && image !== 'gap');
  if (!first || !isJoint(first) || others.length > 0 || !/\d *mm$/.test(size?.image ?? '')) return undefined;
  const taken = told.flatMap((word, at) => (word === size ? [] : [at]));
  return { kind: ['joint open'], from: 0, taken: new Set(taken), isOwn: true };
}

interface Match extends Found {
  readonly length: number;
}

/** The longest, and of several that which stands first. */
function bestOf(found: readonly Match[]): Match | undefined {
  return found.toSorted((a, b) => b.length - a.length || a.from - b.from)[0];
}

/** By the language's own words, or another word of the trade. */
function sense(
  kind: readonly string[],
  own: string,
  senses: readonly Sense[],
  told: readonly Word[],
): readonly Match[] {
  const all = [{ said: own.split(' '), isSame: true }, ...senses];
  const single = singleWords(told);
  return all.flatMap((each, at) => matched(kind, each, single, at === 0));
}

/** A word by itself, with where in the line it stands. */
interface SingleWord {
  readonly image: string;
  readonly at: number;
}

/** Of the words of a line; asked for every kind that it may be. */
function singleWords(told: readonly Word[]): readonly SingleWord[] {
  const found =
    singleKnown.get(told) ??
    told.flatMap((word, at) =>
      plainImage(word)
        .toLowerCase()
        .split(' ')
        .map((image) => ({ image: ofOne(image), at })),
    );
  singleKnown.set(told, found);
  return found;
}
const singleKnown = new WeakMap<readonly Word[], readonly SingleWord[]>();

function ofOne(image: string): string {
  return image === 'panels' || image === 'bolts' ? image.slice(0, -1) : image;
}

function matched(
  kind: readonly string[],
  { said, isSame }: Sense,
  single: readonly SingleWord[],
  isOwn: boolean,
): readonly Match[] {
  const start = single.findIndex((_, i) => said.every((each, j) => single[i + j]?.image === ofOne(each)));
  if (start < 0) return [];
  const taken = single.slice(start, start + said.length).map(({ at }) => at);
  return [{ kind, from: taken[0] ?? 0, taken: new Set(isSame ? taken : []), length: said.length, isOwn }];
}

/** Its part alone is the kind, and what is wrong stands behind it. */
function ofTheDrive(part: ConditionKind, told: readonly Word[]): Found | undefined {
  // `seal of tail bearing drips`: whose it is stands between.
  const own = told.flatMap((word, at) => {
    const isPart = partOfWord(word) === part;
    const leads = ['of', 'on', 'the', 'at'].includes(word.image) && partOfWord(told[at + 1]) === part;
    return isPart || leads ? [] : [at];
  });
  const plain = own.flatMap((at) => told[at] ?? []);
  const placed = (each: Match): Match => ({
    ...each,
    from: own[each.from] ?? 0,
    taken: new Set([...each.taken].map((at) => own[at] ?? at)),
  });
  const found = aspectsOf(part).flatMap((aspect) =>
    sense([part, aspect], aspect, sensesOfAspect(aspect), plain).map(placed),
  );
  return bestOf(found) ?? { kind: [part], from: 0, taken: new Set(), isOwn: true };
}

function isOfDrive([kind = '']: readonly string[]): boolean {
  return aspectsOf(kind as ConditionKind).length > 0;
}

function isOfAnything(kind: readonly string[]): boolean {
  return kind.length === 1 && isOfDrive(kind);
}

function isTemperature({ type, image }: Word): boolean {
  return type === 'QUANTITY' && parseQuantity(image, 'temperature').ok;
}

/** `two` as a number. */
function counted(word: Word): Word {
  const number = numbers[word.image.toLowerCase()];
  return number === undefined ? word : { type: 'NUMBER', image: number };
}

function measureIn([kind = '']: readonly string[], rest: readonly Word[]): Word | undefined {
  switch (
    measureOf(kind as ConditionKind) // the pattern has the kinds of the language
  ) {
    case 'count':
      return (
        rest.find(({ type, image }) => type === 'NUMBER' && /^\d+$/.test(image)) ??
        rest.find(({ image }) => numbers[image.toLowerCase()] !== undefined)
      );
    case 'length':
      return rest.find(({ type }) => type === 'QUANTITY');
    case 'none':
      return undefined;
  }
}
