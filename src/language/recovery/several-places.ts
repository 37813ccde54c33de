// One line about several places: `interlock dead at H3 and H4 urgent`, `hold-down bent at 4 m and 13 m slight`, `panels 2 and 3 of run 2 loose
// on left side`. All else that it says is said of each, in a line each; how many there are of at each place is for who counted to say.

import type { BrokenLine } from './broken-line.js';
import { asCondition } from './condition-line.js';
import { blocksOfWork, isConditionKind, takenApart } from './general.js';
import { joined } from './joined.js';
import { readsSoundly } from './kept.js';
import type { LinePattern } from './pattern.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { isChainage, isName } from './said-place.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import { keyword, type Word } from './word.js';

export const placesInALine: readonly LineSaying[] = [atSeveral, onSeveralPanels];

const joins = (word: Word | undefined): boolean =>
  word?.type === ',' || word?.type === 'and' || word?.image === 'and';

function isPlace(word: Word | undefined): boolean {
  return isName(word) || isChainage(word) || ['tail', 'head', 'drive'].includes(word?.type ?? '');
}

/** The places behind `at`, and where they end. */
function placesFrom(
  words: readonly Word[],
  from: number,
): { readonly places: readonly Word[]; readonly end: number } {
  const places: Word[] = [];
  let at = from;
  for (let place = words[at]; place && isPlace(place); place = words[at]) {
    places.push(place);
    at++;
    while (joins(words[at])) at++;
  }
  return { places, end: at };
}

function atSeveral({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const at = words.findIndex(({ type }, i) => type === 'at' && placesFrom(words, i + 1).places.length > 1);
  if (at < 1 || (!blocksOfWork.has(block) && words[0]?.type !== 'serviced')) return undefined;
  const { places, end } = placesFrom(words, at + 1);
  // What joined them stands between places alone.
  if (joins(words[end - 1])) return undefined;
  const counted = words.slice(0, at).findIndex(({ type }) => type === 'NUMBER');
  const of = (place: Word): readonly Word[] => [...words.slice(0, at + 1), place, ...words.slice(end)];
  const plain = places.map(of);
  const isRead = plain.every((line) => readsSoundly(line, pattern));
  const lines = isRead ? plain : plain.flatMap((line) => inWords(line, pattern));
  if (lines.length < places.length || (counted >= 0 && !isRead)) return undefined;
  const blank = (line: readonly Word[]): readonly Word[] =>
    line.map((word, i) => (i === counted ? { type: 'ID', image: '…' } : word));
  return counted >= 0
    ? {
        at,
        message: `Each place has a line of its own, with how many there were at it in place of \`…\`: ${shownTogether(lines.map(blank))}.`,
      }
    : {
        at,
        message: `Each place has a line of its own: ${shownTogether(lines)}.`,
        repair: inSeveralLines(words, lines),
      };
}

/** A condition in other words of the trade: one line, or none. */
function inWords(words: readonly Word[], pattern: LinePattern): readonly (readonly Word[])[] {
  const line = asCondition(takenApart(joined(words)), pattern);
  const [first] = line ?? [];
  return line && first && isConditionKind(first) && readsSoundly(line, pattern) ? [line] : [];
}

/** More lines than that are a stretch. */
const most = 6;

/** `panels 2 and 3 of run 2 loose on left side` */
function onSeveralPanels({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  const words = joined(written);
  const panels = words.findIndex(
    ({ type }, i) => (type === 'panels' || type === 'panel') && words[i + 1]?.type === 'NUMBER',
  );
  const run = words.findIndex(({ type }, i) => i > panels && type === 'of run');
  const numbers = words.slice(panels + 1, run);
  if (!blocksOfWork.has(block) || panels < 0 || run < panels + 4) return undefined;
  if (!numbers.every((word) => word.type === 'NUMBER' || word.type === 'to' || joins(word))) return undefined;
  const counts = countsIn(numbers);
  if (counts.length < 2 || counts.length > most) return undefined;
  const rest = [...words.slice(0, panels), ...words.slice(run + 2)];
  const lines = counts.flatMap((count) => {
    const one = [keyword('panel'), { type: 'NUMBER', image: String(count) }, ...words.slice(run, run + 2)];
    return inWords([...one, ...rest], pattern);
  });
  if (lines.length < counts.length) return undefined;
  return {
    at: panels,
    message: `Each panel has a line of its own: ${shownTogether(lines)}.`,
    repair: inSeveralLines(written, lines),
  };
}

/** `2 and 3`, `2 to 4` */
function countsIn(numbers: readonly Word[]): readonly number[] {
  return numbers.flatMap(({ type, image }, i): readonly number[] => {
    if (type !== 'NUMBER') return [];
    const to = numbers[i - 1]?.type === 'to' ? Number(numbers[i - 2]?.image) + 1 : Number(image);
    return Array.from({ length: Math.min(Math.max(0, Number(image) - to + 1), most + 1) }, (_, n) => to + n);
  });
}
