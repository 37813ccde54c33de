// Lines that say what is to come in words of one's own: a look that somebody wants, a machine that must not run until then, a gate to be
// renewed. The language has a line for the first, keeps the second as what is wrong, and has the third among the steps of an order.

import { parseQuantity } from '../../domain/units/parse.js';
import type { BrokenLine } from './broken-line.js';
import { blocksOfWork, noteOf, takenApart } from './general.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { readsSoundly, type SaidBy } from './kept.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
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
    '\\bre-?(?:check|inspect|measure|look|tighten)(?:ed|ion)?\\b',
  ].join('|'),
);
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
function lookAgain({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const isWork = blocksOfWork.has(block);
  if ((!isWork && block !== 'Order' && block !== 'Job') || !asking.test(plainlySaid(words))) return undefined;
  const wished = wishedIn(words);
  if (!wished) return undefined;
  const line = [keyword('next look'), ...wished.line];
  const shown = imagesOf(line);
  if (!isWork)
    return {
      at: 0,
      message: `A look is no step of the work: the record that follows the work asks for it, \`${shown}\` in its \`reline\`.`,
    };
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `A look that is asked for: \`${shown}\`.`,
    repair: changed(words, line),
    senses: wished.senses,
  };
}

/** When, what for and who asks, as they stand behind `next look`. */
function wishedIn(
  words: readonly Word[],
): { readonly line: readonly Word[]; readonly senses: readonly SaidBy[] } | undefined {
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
  if (!blocksOfWork.has(block) || !mayNotRun.test(plainlySaid(words))) return undefined;
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
