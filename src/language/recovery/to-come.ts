// Lines that say what is to come in words of one's own: a look that somebody wants, a machine that must not run until then, a gate to be
// renewed. The language has a line for the first, keeps the second as what is wrong, and has the third among the steps of an order.

import { parseQuantity } from '../../domain/units/parse.js';
import type { BrokenLine } from './broken-line.js';
import { blocksOfWork, noteOf, takenApart } from './general.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { readsSoundly, type SaidBy } from './kept.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import { imagesOf, inSmall, keyword, textsIn, type Word } from './word.js';

export const linesToCome: readonly LineSaying[] = [lookAgain, notToRun, gateRenewed];

function plainlySaid(words: readonly Word[]): string {
  return inSmall(words.filter(({ type }) => type !== 'STRING'));
}

/** What asks for a look; `check gearbox oil again` is kept beside it as what it is for. */
const asking = new RegExp(
  [
    '\\bnext (?:look|inspection|check|visit|reading)\\b',
    '\\b(?:look|inspect|check|measure|read|see|go)\\b.*\\bagain\\b',
    '\\b(?:look|check|inspection|inspect|retighten|tighten)(?: [a-z]+)* (?:after|within) \\d',
    '\\bre-?(?:check|inspect|measure|look|tighten)(?:ed|ion)?\\b',
  ].join('|'),
);
/** A look that was made. */
const made = /\b(?:found|seen|was|were|done|made|after the)\b/;
/** That and no more. */
const onlyAsking =
  /^(?:the )?(?:next (?:look|inspection|check|visit)|(?:look|inspect|check) (?:at it )?again|re-?(?:check|inspect|inspection))(?: is| to be made)?(?: due)?$/;

/** What leads to when, and how the language says it. */
const leading: Readonly<Record<string, 'after' | 'by'>> = {
  after: 'after',
  in: 'after',
  within: 'after',
  by: 'by',
  before: 'by',
  until: 'by',
  on: 'by',
  due: 'by',
};

/** `next inspection in 4 weeks`, `look again after 100 h "running in"`, `check P4 again by 2026-01-10`: no step of the work, and no finding. */
function lookAgain(line: BrokenLine): Otherwise | undefined {
  const { block, words, pattern } = line;
  const isWork = blocksOfWork.has(block);
  const said = plainlySaid(words);
  if ((!isWork && block !== 'Order' && block !== 'Job') || !asking.test(said) || made.test(said))
    return undefined;
  const asked = words.findIndex(({ image }) =>
    /^(?:next|look|inspect|check|re-?(?:check|inspect))/i.test(image),
  );
  const before = words.slice(0, asked);
  const isBehind = asked > 1 && readsSoundly(before, pattern);
  const wished = wishedIn(isBehind ? words.slice(asked) : words) ?? inMonths(line);
  if (!wished) return undefined;
  const wish = [keyword('next look'), ...wished.line];
  const shown = imagesOf(wish);
  if (!isWork)
    return {
      at: 0,
      message: `A look is no step of the work: the record that follows the work asks for it, \`${shown}\` in its \`reline\`.`,
    };
  if (!readsSoundly(wish, pattern)) return undefined;
  // `spiral cracked at 9.2 m next look in 2 weeks`: what was seen is a line of its own.
  if (isBehind)
    return {
      at: asked,
      message: `What was seen, and the look that is asked for, are a line each: ${shownTogether([before, wish])}.`,
      repair: inSeveralLines(words, [before, wish]),
      senses: wished.senses,
    };
  return {
    at: 0,
    message: `A look that is asked for: \`${shown}\`.`,
    repair: changed(words, wish),
    senses: wished.senses,
  };
}

interface Wish {
  readonly line: readonly Word[];
  readonly senses: readonly SaidBy[];
}

/** `next inspection in 3 months`: a month is no fixed time, so the day that is meant is named. */
function inMonths({ words, heading }: BrokenLine): Wish | undefined {
  const at = words.findIndex(({ image }) => /^\d+ ?(?:months?|mths?)$/.test(image));
  const from = /^(\d{4})-(\d{2})-(\d{2})$/.exec(heading.find(({ type }) => type === 'DATE')?.image ?? '');
  const when = words[at];
  if (!when || !from) return undefined;
  const [, year, month, day] = from.map(Number);
  const months = (month ?? 1) - 1 + Number.parseInt(when.image, 10);
  const last = new Date(Date.UTC(year ?? 0, months + 1, 0)).getUTCDate();
  const due = new Date(Date.UTC(year ?? 0, months, Math.min(day ?? 1, last))).toISOString().slice(0, 10);
  const note = noteOf(
    words.filter(({ type }) => type !== 'STRING' && type !== 'next look'),
    textsIn(words),
  );
  return {
    line: [keyword('by'), { type: 'DATE', image: due }, ...(note ? [note] : [])],
    senses: [['next look', 'by']],
  };
}

/** When, what for and who asks, as they stand behind `next look`. */
function wishedIn(words: readonly Word[]): Wish | undefined {
  const at = words.findIndex(
    ({ type, image }) => type === 'DATE' || (type === 'QUANTITY' && parseQuantity(image, 'duration').ok),
  );
  const when = words[at];
  const lead = leading[words[at - 1]?.image.toLowerCase() ?? ''];
  const put = when?.type === 'DATE' ? 'by' : 'after';
  // `again at 12000 h` is a reading of the meter, and `by 100 h` nobody knows.
  if (!when || (lead ? lead !== put && lead !== 'by' : words[at - 1]?.type === 'at')) return undefined;
  if (lead === 'by' && put === 'after' && !/^(?:before|due)$/.test(words[at - 1]?.image ?? ''))
    return undefined;
  const left = words.filter((_, i) => i !== at && (i !== at - 1 || lead === undefined));
  const who = left.findIndex(({ type }, i) => type === 'by' && left[i + 1]?.type === 'STRING');
  const by = who < 0 ? [] : left.slice(who, who + 2);
  const rest = left.filter((word) => !by.includes(word));
  const plain = rest.filter(({ type }) => type !== 'STRING');
  const isAlone = onlyAsking.test(inSmall(plain));
  const asks = plain.findIndex(({ type }) => type === 'next look') === 0 ? plain.slice(1) : plain;
  const note = noteOf(isAlone ? [] : asks, textsIn(rest));
  return {
    line: [keyword(put), when, ...(note ? [note] : []), ...by],
    senses: [...plain, ...(words[at - 1] ? [words[at - 1] as Word] : [])].flatMap(({ image }): SaidBy[] => [
      [image, 'next look'],
      [image, put],
    ]),
  };
}

const mayNotRun =
  /\b(?:(?:must|may|shall|should|is|are)? ?not (?:to )?(?:be )?(?:run|used|started|restarted|operated)|do not (?:run|start|use)|out of use)\b/;

/** `machine not to be run before repair`: as a note nobody would carry it on. How bad it is, and of what, is for its author to say. */
function notToRun({ block, words }: BrokenLine): Otherwise | undefined {
  const said = plainlySaid(words);
  // `not run since 2022-08-20`: it stood still.
  const isPast = /\bsince\b/.test(said) || words.some(({ type }) => type === 'DATE');
  if (!blocksOfWork.has(block) || isPast || !mayNotRun.test(said)) return undefined;
  const { answer, part, severity, place, told, texts, by, photo } = takenApart(words);
  if (answer.length > 0 || part !== undefined || place.length > 0 || severity.length > 0) return undefined;
  const note = noteOf(told, texts);
  if (!note) return undefined;
  const line = [keyword('finding'), keyword('urgent'), note, ...by, ...photo];
  return {
    at: 0,
    message:
      'With how bad it is, report, sheet and pack carry it until it is closed; without that it is a note: ' +
      `\`${imagesOf(line)}\`, with the part and the place that it is because of, where there is one.`,
  };
}

/** `renew gate Discharge`, in a job */
function gateRenewed({ block, words }: BrokenLine): Otherwise | undefined {
  const said = plainlySaid(words);
  if (block !== 'Job' || !/^(?:renew|change|replace|exchange|fit|new|refit)(?: new| the)? gate\b/.test(said))
    return undefined;
  const gate = words.find(isName)?.image ?? 'Gate';
  return {
    at: 0,
    message:
      `A gate is taken out and put back by steps of the \`order\`, and a job may be of them alone: \`gate off ${gate}\`, ` +
      `\`gate on ${gate}\`.`,
  };
}
