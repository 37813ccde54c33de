// Lines that say what is to come: a look that somebody wants, a machine that must not run until then, a gate to be renewed. The
// language reckons the first, keeps the second as what is wrong, and has the third among the steps of an order.

import type { BrokenLine } from './broken-line.js';
import { blocksOfWork, noteOf, takenApart } from './general.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, inSmall, keyword, type Word } from './word.js';

export const linesToCome: readonly LineSaying[] = [lookAgain, notToRun, gateRenewed];

function saidBy(words: readonly Word[]): string {
  return inSmall(words.filter(({ type }) => type !== 'STRING'));
}

const again =
  /^(?:next (?:look|inspection|check)|(?:look|inspect|check) again|re-?(?:check|inspect))(?: is)?(?: due)? (?:after|in|by|within|on|before|at)\b/;

/** `next look after 100 h`, `look again after 100 h`: no line sets a day for it, and it is no step of the work. */
function lookAgain({ block, words }: BrokenLine): Otherwise | undefined {
  const isWork = blocksOfWork.has(block);
  if ((!isWork && block !== 'Order' && block !== 'Job') || !again.test(saidBy(words))) return undefined;
  const { part, by, photo, told, place, texts } = takenApart(words);
  if (part !== undefined) return undefined;
  const note = noteOf([...told, ...place], texts);
  if (!note) return undefined;
  const line = [keyword('finding'), note, ...by, ...photo];
  const shown = imagesOf(line);
  const reckoned =
    'When to look next is reckoned from the readings (page 1 of `report`, and its calendar); no line sets it. ';
  return isWork
    ? {
        at: 0,
        message: `${reckoned}What somebody asks for is kept for people, and counts for nothing: \`${shown}\`.`,
        repair: changed(words, line),
      }
    : {
        at: 0,
        message: `${reckoned}It is no step of the work: the record that follows the work keeps it for people, \`${shown}\`.`,
      };
}

const mayNotRun =
  /\b(?:(?:must|may|shall|should|is|are)? ?not (?:to )?(?:be )?(?:run|used|started|restarted|operated)|do not (?:run|start|use)|out of use)\b/;

/** `machine not to be run before repair`: as a note nobody would carry it on. How bad it is, and of what, is for its author to say. */
function notToRun({ block, words }: BrokenLine): Otherwise | undefined {
  if (!blocksOfWork.has(block) || !mayNotRun.test(saidBy(words))) return undefined;
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
  const said = saidBy(words);
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
