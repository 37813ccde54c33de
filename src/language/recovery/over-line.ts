// A line in words of its own that may say that something is over: `tail bearing quiet`, `serviced DG1 2026-01-02 weld ground and welded at
// 4.8 m`. What it was that stood open there no line knows by itself: what it speaks of is handed on to those who know the records.

import { saysOver } from '../../domain/conditions/over-words.js';
import type { SaidOver } from '../../domain/model/problem.js';
import { parseDay } from '../../domain/units/calendar.js';
import { parseQuantity } from '../../domain/units/parse.js';
import type { BrokenLine } from './broken-line.js';
import { blocksOfWork, isConditionKind, takenApart } from './general.js';
import { joined } from './joined.js';
import { dated, isStop } from './record-words.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

type Told = Omit<SaidOver, 'origin' | 'offered'>;

export function overOf(line: BrokenLine): Told | undefined {
  const spoken = spokenOf(line);
  if (!spoken || spoken.words.some(({ type }) => type === '{' || type === ':')) return undefined;
  const { conveyor, date, head, words } = spoken;
  const day = parseDay(date.image);
  const { part, place, told, texts, by, photo, answer, severity } = takenApart(words);
  const plain = told.filter(({ type }) => type !== 'STRING');
  const said = imagesOf(plain.filter(({ type }) => type !== 'closed' && type !== 'finding'));
  // What stands in quotes in a look is for people, and may be of anything; of work it says what was done.
  const all = [said, ...(head.length > 0 ? texts : [])]
    .join(' ')
    .toLowerCase()
    .replace(/[,;.:]/g, ' ');
  const text = all.replace(/\s+/g, ' ').trim();
  const isEnded = isWorkOnACondition(spoken, text);
  if (day === undefined || answer.length + severity.length > 0 || !(saysOver(text) || isEnded))
    return undefined;
  const where = whereOf(place);
  const side = place.find(({ type }) => / side/.test(type))?.image;
  return {
    conveyor: conveyor.image,
    day,
    head: imagesOf(head),
    ...(part === undefined ? {} : { part }),
    ...(where ? { place: where } : {}),
    ...(side === undefined ? {} : { side }),
    told: isEnded && !saysOver(text) ? `${text} remedied` : text,
    said,
    texts,
    tail: imagesOf([...by, ...photo]),
  };
}

/** `serviced product blocked from 2 m to 4.5 m "chiselled out"`: who works on what is wrong puts it right, unless the words say otherwise. */
function isWorkOnACondition({ head, words: [first] }: Spoken, text: string): boolean {
  return (
    head.length > 0 &&
    first !== undefined &&
    isConditionKind(first) &&
    !/\b(?:still|not|no|temporar\w*|provisional\w*|only|partly|half|again)\b/.test(text)
  );
}

interface Spoken {
  readonly conveyor: Word;
  readonly date: Word;
  readonly head: readonly Word[];
  readonly words: readonly Word[];
}

/** In a look or a reline; or a record of work on a day. */
function spokenOf({ block, words: written, heading }: BrokenLine): Spoken | undefined {
  const words = joined(written);
  const isSaid = words[0]?.type === 'serviced';
  if (blocksOfWork.has(block)) {
    const conveyor = heading[1];
    const date = heading.find(({ type }) => type === 'DATE');
    return conveyor && date
      ? { conveyor, date, head: isSaid ? words.slice(0, 1) : [], words: isSaid ? words.slice(1) : words }
      : undefined;
  }
  const record = block === 'Block' ? dated(words) : undefined;
  if (!record || (!isSaid && (words[0]?.type !== 'ID' || isStop(words[0])))) return undefined;
  const { conveyor, day, before, behind } = record;
  return {
    conveyor,
    date: day,
    head: [keyword('serviced'), conveyor, day],
    words: [...(isSaid ? before.slice(1) : before), ...behind],
  };
}

function whereOf(place: readonly Word[]): SaidOver['place'] {
  const [first, second, , last] = place;
  if (!first || !second || (first.type !== 'at' && first.type !== 'from')) return undefined;
  const at = parseQuantity(second.image, 'length');
  if (!at.ok) return { name: second.type === 'panel' ? imagesOf(place.slice(1)) : plainImage(second) };
  const to = last ? parseQuantity(last.image, 'length') : undefined;
  return { at: at.quantity.value, ...(first.type === 'from' && to?.ok ? { to: to.quantity.value } : {}) };
}
