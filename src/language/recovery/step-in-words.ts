// A step of an order that the language has no word for: `measure plate at 15 m by Own`. It is `other work`, with what it is in quotes and
// all that a step says of itself where the language has it. How long it takes is for whoever writes it to say, and so is whether
// somebody is in the trough for it: neither is made up.

import type { BrokenLine } from './broken-line.js';
import { noteOfWords, noteOf } from './general.js';
import { keepsAll, readsSoundly, type SaidBy } from './kept.js';
import type { LinePattern } from './pattern.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { isChainage } from './said-place.js';
import { inSmall, imagesOf, isValue, isWord, keyword, plainImage, textsIn, type Word } from './word.js';

export function stepInWords(line: BrokenLine): Otherwise | undefined {
  const { words, pattern } = line;
  const named = words[1]?.type === ':' ? 2 : 0;
  const run = line.block === 'Order' ? testRun(words, named, pattern) : undefined;
  if (run) return run;
  if (!mayBeWork(line, words[named])) return undefined;
  const { clauses, told } = takenApart(words.slice(named));
  const note = noteOfWords(told);
  // Another step on the same line is none of its words.
  const isAnother = told.some(({ type }) => isWord(type) && pattern.first.has(type));
  if (!note || told.length < 2 || isAnother || isSafety(told)) return undefined;
  const withTime = (time: Word): readonly Word[] => [
    ...words.slice(0, named),
    keyword('other work'),
    ...order.flatMap((each) => clauses.get(each) ?? (each === 'takes' ? [keyword('takes'), time] : [])),
    note,
  ];
  const read = withTime({ type: 'QUANTITY', image: '1 h' });
  if (!readsSoundly(read, pattern) || !keepsAll(words, read, [])) return undefined;
  const open = stillOpen(clauses, told);
  const shown = imagesOf(withTime({ type: 'ID', image: '…' }));
  return {
    at: named,
    message: `A step that no other word says is \`other work\`, in words of your own: \`${shown}\`${open.join('') || '.'}`,
    ...(open.length === 0 ? { repair: changed(words, read) } : {}),
  };
}

/** `test run wet takes 1 h`, `trial run`: whether with product or without it is for whoever writes it to say. */
function testRun(words: readonly Word[], named: number, pattern: LinePattern): Otherwise | undefined {
  const { clauses, told } = takenApart(words.slice(named));
  const said = inSmall(told);
  const found =
    /^(?:(?:test|trial|proof) ?-?run(?:ning)?|run(?:ning)? (?:test|trial)|run up|start ?up|restart)(?![a-z])/.exec(
      said,
    );
  if (!found) return undefined;
  const left = told.filter(
    ({ image, type }) =>
      type !== 'STRING' &&
      !/^(?:test|trial|proof|run|running|up|start|startup|restart|with|without)$/.test(image),
  );
  const isKnown = left.find(({ image }) => /^(?:empty|dry|loaded|full|product|wet)$/.test(image));
  const note = noteOf(
    left.filter((word) => !/^(?:empty|loaded)$/.test(word.image)),
    textsIn(told),
  );
  const lines = ['run empty', 'run loaded'].map((step) => [
    ...words.slice(0, named),
    keyword(step),
    ...order.flatMap((each) => clauses.get(each) ?? []),
    ...(note ? [note] : []),
  ]);
  const [empty = [], loaded = []] = lines;
  if (!lines.every((line) => readsSoundly(line, pattern))) return undefined;
  const only = /^(?:empty|dry)$/.test(isKnown?.image ?? '')
    ? empty
    : /^(?:loaded|full|product)$/.test(isKnown?.image ?? '')
      ? loaded
      : undefined;
  const shown = only
    ? `\`${imagesOf(only)}\``
    : `\`${imagesOf(empty)}\` or, with product, \`${imagesOf(loaded)}\``;
  return {
    at: named,
    message: `That the screw runs to be tried is a step: ${shown}.`,
    ...(only
      ? {
          repair: changed(words, only),
          senses: said.split(' ').map((each): SaidBy => [each, only[named]?.type ?? '']),
        }
      : {}),
  };
}

/** Begins with no word of a step, and reads in no other block, where it would have to be moved to. */
function mayBeWork(
  { block, words, pattern, blocksSaying, inside }: BrokenLine,
  first: Word | undefined,
): boolean {
  if (block !== 'Order' || !first || isValue(first.type)) return false;
  if (words.some(({ type }) => type === '{' || type === '}')) return false;
  if (!isWord(first.type)) return first.type === 'ID';
  return (
    !pattern.first.has(first.type) &&
    !blocksSaying(first.type).some((each) => readsSoundly(words, inside(each)))
  );
}

/** What only whoever writes the line can say, in sentences behind the line that is shown. */
function stillOpen(clauses: Clauses, told: readonly Word[]): readonly string[] {
  const isInside = clauses.has('from') || clauses.has('run') || clauses.has('panels');
  const isHot =
    !clauses.has('hot work') && told.some(({ image }) => /^(weld|grind|burn|torch|gouge|cut)/.test(image));
  const open = [
    ...(isInside
      ? []
      : [
          ' Without a stretch it is done beside the machine; where somebody is in the trough for it, it names one: ' +
            `\`other work ${stretchAt(told)} …\`.`,
        ]),
    ...(isHot ? [' What makes sparks or flame says `hot work` with its `fire watch` before the text.'] : []),
  ];
  if (!clauses.has('takes')) return [', with how long it takes in place of `…`.', ...open];
  return open.length > 0 ? ['.', ...open] : [];
}

type Clauses = ReadonlyMap<Clause, readonly Word[]>;

/** In the order of a step, what it says of itself, by the word that begins it. */
const order = [
  'from',
  'run',
  'panels',
  'by',
  'attended by',
  'using',
  'after',
  'takes',
  'every',
  'dries',
  'cools',
  'hot work',
  'cold work',
] as const;

type Clause = (typeof order)[number];

const lists: ReadonlySet<string> = new Set(['by', 'attended by', 'after']);
const measured: ReadonlySet<string> = new Set(['takes', 'every', 'dries', 'cools']);

function takenApart(words: readonly Word[]): {
  readonly clauses: Clauses;
  readonly told: readonly Word[];
} {
  const clauses = new Map<Clause, readonly Word[]>();
  const told: Word[] = [];
  for (let at = 0; at < words.length;) {
    const word = words[at] ?? keyword('');
    const type = word.type === 'panel' ? 'panels' : word.type;
    const clause = order.find((each) => each === type);
    const length = clause && !clauses.has(clause) ? clauseLength(words.slice(at)) : 0;
    if (clause && length > 0) clauses.set(clause, words.slice(at, at + length));
    else told.push(word);
    at += Math.max(1, length);
  }
  return { clauses, told };
}

/** Of how many words the clause is that begins here; none where it is no clause. */
function clauseLength([first, ...rest]: readonly Word[]): number {
  const type = first?.type ?? '';
  const types = rest.map((word) => word.type);
  if (lists.has(type)) {
    let names = types[0] === 'ID' ? 1 : 0;
    while (names > 0 && types[names] === ',' && types[names + 1] === 'ID') names += 2;
    return names > 0 ? 1 + names : 0;
  }
  if (type === 'using') return types[0] !== 'ID' ? 0 : types[1] === 'with' && types[2] === 'NUMBER' ? 5 : 2;
  if (measured.has(type)) return types[0] === 'QUANTITY' ? 2 : 0;
  if (type === 'from') return types.slice(0, 3).join(' ') === 'QUANTITY to QUANTITY' ? 4 : 0;
  if (type === 'run') return runLength(types);
  if (type === 'panel' || type === 'panels') {
    const run = types.indexOf('of run');
    return run < 0 ? 0 : 1 + run + runLength(types.slice(run + 1));
  }
  if (type === 'cold work') return 1;
  const text = types.indexOf('STRING');
  return 1 + (text < 0 ? types.length : text);
}

function runLength([first, second]: readonly string[]): number {
  if (first === 'NUMBER') return 2;
  if (first === 'between') return 5;
  return (first === 'above' || first === 'below') && second === 'ID' ? 3 : 0;
}

/** `at 15 m`: the stretch around it is for whoever is there to say. */
function stretchAt(told: readonly Word[]): string {
  const place = told.find(isChainage);
  return place ? `from ${place.image} to … m` : 'from 14 m to 16 m';
}

/** What keeps people safe has steps of its own, whose words are never taken for work like any other. */
function isSafety(told: readonly Word[]): boolean {
  const said = told.map((word) => plainImage(word).toLowerCase());
  const isBarrier = said.includes('gate') && said.some((each) => /^(shut|open|off|on|closed?)$/.test(each));
  return isBarrier || said.some((each) => safety.test(each));
}

const safety =
  /^(isolat|de-?isolat|lock|un-?lock|loto|tag|gas|dead|voltage|watch|rescue|permit|energi[sz]|de-?energi[sz]|test|prove|breaker)/;
