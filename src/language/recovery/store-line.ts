// Lines of a plant about what lies on the shelf or is on its way, in another order or of another word than the language has:
// `on the shelf spare gearbox 1 for DG1 counted 2026-10-20`, `ordered gate wiper 1 arrives 2026-12-04`, `ordered DG1 2024-07-08 Twelve 3 panels`.

import type { PartName } from '../../domain/model/records.js';
import type { BrokenLine } from './broken-line.js';
import { noteOfWords } from './general.js';
import { joined } from './joined.js';
import { isOffered, readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { partIn, partOfWord } from './part-words.js';
import { changed } from './repairs.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

/** Small things that are bought for a part, by what people call them. */
const boughtFor: Readonly<Record<string, PartName>> = {
  clip: 'hold-down',
  clips: 'hold-down',
  plug: 'bolts',
  plugs: 'bolts',
  nut: 'bolts',
  nuts: 'bolts',
  washer: 'bolts',
  washers: 'bolts',
  wiper: 'gate',
  wipers: 'gate',
};

export function storeOtherwise(line: BrokenLine): Otherwise | undefined {
  return asLiner(line) ?? asOrderOfLiner(line) ?? asSparePart(line) ?? asOffcut(line) ?? noSuchSpare(line);
}

const inStore = /^(?:in stock|in store|on shelf|on the shelf|shelf|stock|in the store)$/;
const saysNoMore =
  /^(?:of|pieces|counted|count|on|arrives|arrive|due|expected|for|promised|delivery|by|at|the|,)$/;

/** `on the shelf 6 panels TwoLayer12 counted 2026-10-20`, `ordered TwoLayer12 9 panels 2026-08-31 due 2026-11-06`: of a liner, in any order. */
function asLiner({ words, pattern }: BrokenLine): Otherwise | undefined {
  const item = words.findIndex(({ type }) => items.has(type));
  const first = words.findIndex(({ type }) => type === 'NUMBER' || items.has(type) || type === 'ID');
  const head = words.slice(0, 1 + words.findIndex((_, i) => inStore.test(imagesOf(words.slice(0, i + 1)))));
  const isShelf = head.length > 0;
  const own = isShelf ? words.slice(head.length) : words.slice(1);
  const isOrdered = words[0]?.type === 'ordered' || words[0]?.image === 'bought';
  const liner = own.filter(
    ({ type, image }, i) => type === 'ID' && /^[A-Z]/.test(image) && own[i - 1]?.type !== 'for',
  );
  const counts = own.filter(({ type, image }) => type === 'NUMBER' && /^\d+$/.test(image));
  const days = own.filter(({ type }) => type === 'DATE');
  const [name] = liner;
  const what = words[item];
  if (first < 0 || !what || !name || liner.length !== 1 || counts.length !== 1 || !(isShelf || isOrdered))
    return undefined;
  const used = [name, what, ...counts, ...days];
  const rest = own.filter((word) => !used.includes(word) && word.type !== 'STRING');
  if (!rest.every(({ image }) => saysNoMore.test(image)) || /^offcuts?$/.test(what.type)) return undefined;
  const texts = own.filter(({ type }) => type === 'STRING');
  const by = (leads: RegExp): Word | undefined =>
    days.find((day) => leads.test(own[own.indexOf(day) - 1]?.image ?? ''));
  const arrives =
    by(/^(?:arrives|due|expected|for|promised|by|delivery)$/) ?? (days.length === 1 ? days[0] : days[1]);
  const on = days.find((day) => day !== arrives);
  const line = isShelf
    ? [keyword('on the shelf'), name, ...counts, what, keyword('counted'), ...days, ...texts]
    : [
        ...[keyword('ordered'), name, ...counts, what],
        ...[...(on ? [keyword('on'), on] : []), keyword('arrives'), ...(arrives ? [arrives] : []), ...texts],
      ];
  const isWhole = readsSoundly(line, pattern);
  if (days.length === 0)
    return {
      at: words.length - 1,
      message: `The day belongs to it: \`${imagesOf(line.filter(({ type }) => type !== 'STRING'))} …\`, with it in place of \`…\`.`,
    };
  if (!isWhole) return undefined;
  return {
    at: 0,
    message: `What there is of a liner names it first, then how many, and the day: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [...rest, ...head].flatMap((word) =>
      plainImage(word)
        .split(' ')
        .map((each) => [each, line[0]?.type ?? ''] as const),
    ),
  };
}

function isStore(first: Word | undefined): boolean {
  return first?.type === 'on the shelf' || first?.type === 'ordered';
}

/** `on the shelf 2 tail bearing seals counted 2026-10-20`, `ordered gate wiper 1 on 2026-11-12 arrives 2026-12-04` */
function asSparePart({ words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const [first] = words;
  const end = words.findIndex(({ type }, i) => i > 0 && ['counted', 'on', 'arrives'].includes(type));
  const said = words.slice(1, end < 0 ? words.length : end);
  const at = partIn(said);
  const small = said.findIndex(({ image }) => Object.hasOwn(boughtFor, image.toLowerCase()));
  const part = partOfWord(said[at]) ?? boughtFor[said[small]?.image.toLowerCase() ?? ''];
  const counts = said.filter(({ type }) => type === 'NUMBER');
  if (!first || !isStore(first) || part === undefined || counts.length !== 1) return undefined;
  const owner = said.findIndex(({ type }, i) => type === 'for' && said[i + 1]?.type === 'ID');
  const isTaken = (i: number): boolean => i === at || (owner >= 0 && (i === owner || i === owner + 1));
  const rest = said.filter((word, i) => !isTaken(i) && word.type !== 'NUMBER');
  const what = noteOfWords(rest);
  const line = [
    first,
    ...counts,
    keyword(part),
    ...(what === undefined ? [] : [what]),
    ...(owner < 0 ? [] : said.slice(owner, owner + 2)),
    ...(end < 0 ? [] : words.slice(end)),
  ];
  // A small thing stays in the words; the part that it is bought for is what it is found by.
  const isNamed = at >= 0 ? isOffered(written, line, pattern) : readsSoundly(line, pattern);
  if (!isNamed) return undefined;
  return {
    at: 0,
    message: `A spare part is written with its number first${at >= 0 ? '' : ', and by the part that it is for'}: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
  };
}

/** What there is of a liner and of a screw. */
const items: ReadonlySet<string> = new Set([
  ...['panels', 'panel', 'panel length', 'stock lengths', 'stock length'],
  ...['offcut', 'offcuts', 'fixings', 'fixing', 'spiral', 'spirals'],
]);

/** `ordered DG1 2024-07-08 Twelve 3 panels cost 3180 EUR`: the liner stands before its number, the machine is no liner. */
function asOrderOfLiner({ words: written }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const item = words.findIndex(({ type }) => items.has(type));
  const [liner, count] = [words[item - 2], words[item - 1]];
  if (words[0]?.type !== 'ordered' || count?.type !== 'NUMBER' || liner?.type !== 'ID' || item < 4)
    return undefined;
  const day = words.slice(1, item).find(({ type }) => type === 'DATE');
  const end = words.findIndex(({ type }) => type === 'arrives');
  const line = [
    ...[words[0], liner, count, ...words.slice(item, item + 1)],
    ...(day ? [keyword('on'), day] : []),
    ...(end < 0 ? [] : words.slice(end, end + 2)),
  ];
  const others = words.slice(1, item - 2).filter(({ type }) => type === 'ID');
  const machine =
    others.length === 0 ? '' : `; for which machine (\`${imagesOf(others)}\`) and what it costs`;
  return {
    at: 0,
    message:
      `An order names the liner, how many, and the day they are promised for: \`${imagesOf(line)}${end < 0 ? ' arrives …' : ''}\`` +
      `${machine}, stands behind it in quotes. What came since is counted \`on the shelf\`.`,
  };
}

/** `on the shelf 1 offcut Ten 1400 mm counted 2026-10-20`, in whichever order. */
function asOffcut({ words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const end = words.findIndex(({ type }) => type === 'counted');
  const said = words.slice(1, end < 0 ? words.length : end);
  const offcut = said.find(isOffcut);
  const liner = said.filter((word) => word.type === 'ID' && !isOffcut(word));
  const count = said.filter(({ type }) => type === 'NUMBER');
  const length = said.filter(({ type }) => type === 'QUANTITY');
  if (words[0]?.type !== 'on the shelf' || !offcut || liner.length !== 1 || length.length !== 1)
    return undefined;
  const number = count.length > 0 ? count : [{ type: 'NUMBER', image: '1' }];
  const line = [
    ...[words[0], ...liner, ...number],
    ...[keyword('offcut'), keyword('length'), ...length],
    ...(end < 0 ? [] : words.slice(end)),
  ];
  if (!isOffered(written, line, pattern)) return undefined;
  return {
    at: 0,
    message: `An offcut is counted with its liner and its length: \`${imagesOf(line)}\`.`,
    repair: changed(written, line),
  };
}

/** `on the shelf wear bars 0 pieces`: of no part that the language knows. */
function noSuchSpare({ words }: BrokenLine): Otherwise | undefined {
  const said = joined(words);
  const [first] = said;
  const named = said.filter(({ type }) => type === 'ID');
  const isKnown = said.some(({ type }) => items.has(type)) || partIn(said) >= 0;
  if (!first || !isStore(first) || isKnown || named.length === 0 || named.some(isOffcut)) return undefined;
  // `ordered Twelve 3`: a name with a capital is one of a liner.
  if (/^[A-Z]/.test(named[0]?.image ?? '')) return undefined;
  const end = first.type === 'ordered' ? 'arrives …' : 'counted …';
  return {
    at: 0,
    message:
      'What is in store is `panels`, `stock lengths`, `offcuts` or `fixings` of a liner, a `spiral`, or so many of a part, with what it ' +
      `is in quotes: \`${plainImage(first)} … gate "${imagesOf(named)}" ${end}\`, say, by the part that it is for (\`trough\`, ` +
      '`spiral`, `tail bearing`, `drive`, …).',
  };
}

function isOffcut({ image }: Word): boolean {
  return /^offcuts?$/i.test(image);
}
