// Lines that people write and the language says in another way or in another record: each with that way in one sentence and, where
// nothing has to be made up for it, with the line. A word that begins no line of the block at all is in elsewhere.ts.

import type { BrokenLine } from './broken-line.js';
import { declaredOtherwise } from './declared-line.js';
import { driveChanged } from './drive-words.js';
import { screwChangeLines } from './screw-change-words.js';
import { quotedFact } from './quoted-facts.js';
import { headWords } from './head-words.js';
import { headingInOrder } from './heading-order.js';
import { isOffered, keepsAll, readsSoundly, type SaidBy } from './kept.js';
import type { Otherwise, LineSaying } from './otherwise.js';
import { panelsChangedOver } from './panels-changed-over.js';
import { lookLines } from './look-words.js';
import { doubtfulLines } from './reading-in-doubt.js';
import { twofoldLines } from './two-facts.js';
import { valueLines } from './record-values.js';
import { recordLines } from './record-words.js';
import { relineLines } from './reline-words.js';
import { readInWords } from './reading-words.js';
import { readingLines } from './reading-line.js';
import { commentedOut, changed, likeWords, noColours, repaired, states, type LineRepair } from './repairs.js';
import { fewWords } from './few-words.js';
import { inDoubt } from './in-doubt-words.js';
import { inSeveralLines, linesOf, shownTogether } from './several-lines.js';
import { boltsOfASpiral } from './spiral-bolts.js';
import { machineLines } from './one-machine.js';
import { builtLines, drivenLines } from './machine-words.js';
import { crewLines, plantLines } from './plant-words.js';
import { placesInALine } from './several-places.js';
import { notLookedAt } from './not-looked-at.js';
import { blocksOfWork } from './general.js';
import { isReassuring } from './reassuring.js';
import { isChainage } from './said-place.js';
import { partFoundGood, safeguardTried } from './trial-words.js';
import type { LinePattern } from './pattern.js';
import { linesToCome } from './to-come.js';
import { uncertainDay } from './uncertain-day.js';
import { withUnitWords } from './unit-words.js';
import { unquoted } from './unquoted.js';
import { imagesOf, isWord, keyword, textsIn, type Word } from './word.js';

/** Whatever line may lie near. */
export function saidOtherwise(line: BrokenLine): Otherwise | undefined {
  return firstOf(plain, line);
}

/** Of a line for which no line lies near. */
export function saidInAnotherRecord(line: BrokenLine): Otherwise | undefined {
  return firstOf(unlessNear, line);
}

/** A line that is said with it has to read and to keep all that was written, as any other: a saying need not ask that itself. */
function firstOf(sayings: readonly LineSaying[], line: BrokenLine): Otherwise | undefined {
  for (const saying of sayings) {
    const said = saying(line);
    if (
      said &&
      (!said.repair || said.repair.line[0]?.type === '//' || isSound(line, said.repair, said.senses))
    )
      return said;
  }
  return undefined;
}

function isSound(broken: BrokenLine, repair: LineRepair, senses?: readonly SaidBy[]): boolean {
  const { words, pattern, inside } = broken;
  const line = repaired(words, repair);
  const lines = linesOf(line);
  if (lines.length > 1) {
    const [first = []] = lines;
    const of = first.at(-1)?.type === '{' ? inside(blockOf(first, pattern)) : pattern;
    return (
      lines.every((each, at) => readsSoundly(each, at === 0 ? pattern : of)) &&
      keepsAll(words, lines.flat(), senses ?? [])
    );
  }
  const opens = line.findIndex(({ type }) => type === '{') + 1;
  if (opens === 0 || opens === line.length) return isOffered(words, line, pattern, senses);
  // What stands behind a brace is a line of the block.
  const block = blockOf(line, pattern);
  return (
    keepsAll(words, line, senses ?? []) &&
    readsSoundly(line.slice(0, opens), pattern) &&
    readsSoundly(line.slice(opens), inside(block))
  );
}

/** The block that a heading begins. */
function blockOf([first]: readonly Word[], pattern: LinePattern): string {
  return pattern.ways(pattern.start).find(({ token }) => token === first?.type)?.fact ?? '';
}

const plain: readonly LineSaying[] = [
  ({ block, words }) =>
    block === 'Job' && words[0]?.type === 'screw change'
      ? {
          at: 0,
          message:
            'A job says `change screw`; `screw change` is the record of one that was done, a block of its own.',
          repair: { line: words, from: 0, to: 1, words: [keyword('change screw')] },
        }
      : undefined,

  ({ block, words: [first, second, ...more] }) =>
    block === 'Job' && first?.type === 'liner' && second?.type === 'ID' && more.length === 0
      ? {
          at: 0,
          message: `A job names the liner behind what is relined: \`reline all with ${second.image}\`.`,
        }
      : undefined,

  ({ block, words, reached }) =>
    block === 'Inspection' && words[reached]?.image === 'trough' && words[reached + 1]?.image === 'not'
      ? {
          at: reached,
          message:
            'That no steel shows is said by what does: the colour of the layer, `P1 colour teal`, or the thickness left; ' +
            '`not seen` where nobody could look.',
        }
      : undefined,

  ({ block, words, reached }) =>
    block === 'Order' &&
    words[0]?.type === 'patch' &&
    [words[reached], words[1]].some((word) => word?.type === 'at')
      ? {
          at: reached,
          message: 'A place is patched as the stretch that the plate covers: `patch from 4.6 m to 5.2 m`.',
        }
      : undefined,

  ({ block, words, reached }) => {
    const place = words[reached + 1];
    return block === 'Order' &&
      words[0]?.type === 'other work' &&
      words[reached]?.type === 'at' &&
      isChainage(place)
      ? {
          at: reached,
          message:
            `Where somebody works in the trough is a stretch, \`other work from … to …\` around ${place?.image ?? ''}; ` +
            'without one it is done beside the machine.',
        }
      : undefined;
  },

  ({ block, words: [first, second] }) =>
    block === 'Conveyor' && first?.type === 'section' && second?.type === 'every'
      ? {
          at: 1,
          message: 'A section has a name and a length, a line each: `section S1 6 m`, `section S2 6 m`.',
        }
      : undefined,

  // `fitted panels 1200 mm, 1200 mm`: of which run is for who fitted them to say.
  ({ block, words: [first, second, ...rest] }) =>
    block === 'Reline' &&
    first?.type === 'fitted' &&
    second?.type === 'panels' &&
    rest[0]?.type === 'QUANTITY'
      ? {
          at: 1,
          message: `It is said of which run they are: \`fitted run 1 panels ${imagesOf(rest)}\`, if it is run 1.`,
        }
      : undefined,

  ({ block, words: [first, second] }) =>
    block === 'Reline' && first?.type === 'offcut' && ['none', 'no', 'nil'].includes(second?.image ?? '')
      ? { at: 1, message: 'Where nothing was left over no line is needed: leave it out.' }
      : undefined,

  // `fit run 1 from tail`
  ({ block, words }) => {
    const at = words.findIndex(
      ({ type }, i) => type === 'from' && ['head', 'tail'].includes(words[i + 1]?.type ?? ''),
    );
    const line = [...words.slice(0, at), keyword('starting at'), ...words.slice(at + 1)];
    return block === 'Order' && at > 0
      ? {
          at,
          message: `Where a step begins is said with \`starting at\`: \`${imagesOf(line)}\`.`,
          repair: changed(words, line),
        }
      : undefined;
  },

  ({ block, words: [first, second, ...more] }) =>
    block === 'Job' && first?.type === 'spare' && isWord(second?.type ?? '') && more.length === 0
      ? { at: 1, message: `How many more is said too: \`spare 2 ${second?.image ?? ''}\`, say.` }
      : undefined,

  ...placesInALine,

  severalPlaces,

  safeguardTried,

  partFoundGood,

  ({ words: [first] }) =>
    first?.type === 'closed on'
      ? {
          at: 0,
          message: '`closed on` stands behind what it closes: `panel torn at 14.2 m closed on 2026-03-20`.',
        }
      : undefined,

  quotedFact,

  ...linesToCome,

  closedOnADay,

  panelsChangedOver,

  ...machineLines,

  ...headWords,

  ...twofoldLines,

  ...doubtfulLines,

  inDoubt,

  ...valueLines,

  driveChanged,

  ...recordLines,

  ...screwChangeLines,

  ...relineLines,

  headingInOrder,

  ...readingLines,

  colourAlone,

  notLookedAt,

  ...builtLines,

  ...plantLines,

  declaredOtherwise,

  unquoted,

  speedFromADay,

  hoursADay,

  ({ words, pattern }) =>
    words[0]?.type === 'STRING' && pattern.first.has('finding')
      ? {
          at: 0,
          message: 'A text on a line of its own is of nothing: write `finding` before it.',
          repair: changed(words, [keyword('finding'), ...words]),
        }
      : undefined,

  boltsOfASpiral,

  uncertainDay,

  feetAndInches,

  byEye,

  noteOfAValue,

  ...fewWords,

  readInWords,

  ...lookLines,
];

const unlessNear: readonly LineSaying[] = [
  ...drivenLines,

  ...crewLines,

  ({ block, words, reached }) =>
    ['cost', 'price'].includes(words[0]?.type ?? '') && (block === 'Job' || blocksOfWork.has(block))
      ? {
          at: reached,
          message:
            'Costs are said once, in the plant, as decisions need them: `cost reline …`, with what one costs there. ' +
            `What one piece of work did cost is kept as a comment: \`// ${imagesOf(words)}\`.`,
          repair: commentedOut(words),
        }
      : undefined,

  ({ block, words, reached }) => {
    const here = words[reached];
    return block === 'Block' &&
      words[0]?.type === 'correction' &&
      here &&
      isWord(here.type) &&
      here.type !== 'at'
      ? {
          at: reached,
          message:
            'A correction is of one reading of a liner, of plate, flight, gap, worn strip, current, speed or meter, or of a condition that never was there, ' +
            'each in a line of its own, and the look stays as it was written. What no correction can say is said by a `finding "…"` ' +
            'in the next look.',
        }
      : undefined;
  },
];

/** `closed cable damaged at 8.7 m on 2025-10-02`, in an earlier look: it stood open until that day. */
function closedOnADay({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, ...rest] = words;
  const day = rest.findIndex(({ type }) => type === 'DATE');
  if (!blocksOfWork.has(block) || first?.type !== 'closed' || day < 1) return undefined;
  const date = rest[day];
  const end = rest[day - 1]?.image === 'on' ? day - 1 : day;
  if (!date) return undefined;
  const line = [...rest.slice(0, end), keyword('closed on'), date, ...rest.slice(day + 1)];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 0,
    message: `What was put right on another day than that of the look says so behind it: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [
      ['closed', 'closed on'],
      ['on', 'closed on'],
    ],
  };
}

/** `A5 yellow`, `A5 yellow showing`: the word `colour` is left out. */
function colourAlone({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, colour, showing] = words;
  if (block !== 'Inspection' || point?.type !== 'ID' || colour?.type !== 'ID') return undefined;
  // `HeadGate leaks`: a name without a number is no point whose colour was left out.
  const isNearNoWord = (): boolean =>
    words.length === 2 &&
    /\d/.test(point.image) &&
    !/^[a-z]{2}/.test(point.image) &&
    !isReassuring(colour.image) &&
    !noColours.has(colour.image) &&
    likeWords(colour.image, [...pattern.words].filter(isWord)).length === 0;
  if (showing?.image !== 'showing' && !isNearNoWord()) return undefined;
  // `P3 torn` is no colour, and `P2-P3` no point.
  if (states.has(colour.image) || /\d-[A-Z]*\d/.test(point.image)) return undefined;
  const line = [point, keyword('colour'), colour, ...words.slice(3)];
  return { at: 1, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(words, line) };
}

/** `bolts loose 2 at 16.1 m and 1 at 17 m`: two conditions, which no note can hold. */
function severalPlaces({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const and = words.findIndex(({ image }) => image === 'and');
  const head = words.slice(0, and);
  const tail = words.slice(and + 1);
  const isPlace = tail.some(isChainage);
  if (block !== 'Inspection' || and < 2 || !isPlace || !readsSoundly(head, pattern)) return undefined;
  for (let own = 1; own < head.length; own++) {
    const line = [...head.slice(0, own), ...tail];
    const other = readsSoundly(line, pattern) ? line : withUnitWords(line, pattern);
    if (other && other.length > tail.length)
      return {
        at: and,
        message: `Each place has a line of its own: ${shownTogether([head, other])}.`,
        repair: inSeveralLines(words, [head, other]),
      };
  }
  return undefined;
}

/** `speed GW1 from 2024-03-04 14 rpm`, outside any look: a change of duty, whose hours go on. */
function speedFromADay({ block, words }: BrokenLine): Otherwise | undefined {
  const [first, conveyor, ...rest] = words;
  if (block !== 'Block' || first?.type !== 'speed' || conveyor?.type !== 'ID') return undefined;
  const day = rest.find(({ type }) => type === 'DATE');
  const speed = rest.find(({ type, image }) => type === 'QUANTITY' && /\d\s*(rpm|1\/min|\/min)$/.test(image));
  if (!day || !speed) return undefined;
  const more = rest.filter((word) => word !== day && word !== speed && word.type !== 'from');
  const line = [keyword('duty'), conveyor, keyword('from'), day, first, speed, ...more];
  return {
    at: 0,
    message: `A speed that holds from a day on is a record of duty, whose hours may be left out: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `running hours 14 h/day`, in a look. */
function hoursADay({ block, words, heading, reached }: BrokenLine): Otherwise | undefined {
  const duty = words.find(({ type, image }) => type === 'QUANTITY' && /\d\s*h\/(d|day|week|wk)$/.test(image));
  if (block !== 'Inspection' || !duty || reached > 1) return undefined;
  const conveyor = heading[1]?.image ?? 'DG1';
  const day = heading.find(({ type }) => type === 'DATE')?.image ?? '2026-03-14';
  return {
    at: 0,
    message:
      `How long a machine runs is a record of its own, outside the inspection: ` +
      `\`duty ${conveyor} from ${day} ${duty.image}\`.`,
  };
}

/** `21 ft 6 in`: a length is one number with one unit. */
function feetAndInches({ words, reached }: BrokenLine): Otherwise | undefined {
  const feet = /^(\d+) *ft$/.exec(words[reached - 1]?.image ?? '')?.[1];
  const inches = /^(\d+(?:\.\d+)?) *in$/.exec(words[reached]?.image ?? '')?.[1];
  if (feet === undefined || inches === undefined) return undefined;
  const whole = Number(feet) * 12 + Number(inches);
  return {
    at: reached,
    message: `A length is one number with one unit: write \`${whole} in\` for ${feet} ft ${inches} in.`,
  };
}

/** `P1 thickness 11 mm by eye`: how sure it is, is for who looked to say. */
function byEye({ block, words, reached, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'Inspection' || words[reached]?.type !== 'by eye') return undefined;
  const head = words.slice(0, reached);
  const size: Word = { type: 'QUANTITY', image: '1 mm' };
  const own = [
    ...head,
    keyword('±'),
    size,
    { type: 'STRING', image: `"${['by eye', ...textsIn(words)].join(': ')}"` },
  ];
  const shown = readsSoundly(own, pattern) ? imagesOf(own) : 'P6 thickness 5.0 mm ± 1 mm';
  return {
    at: reached,
    message:
      'How thickness was read is said once of the look, `gauge by eye`; a reading that is less sure than the others says so: ' +
      `\`${shown}\`, if it is right to a millimetre.`,
  };
}

/** Lines of a look that end with their value. */
const notNoted: ReadonlySet<string> = new Set(['gauge', 'by', 'view']);

function noteOfAValue({ block, words, reached }: BrokenLine): Otherwise | undefined {
  const [first] = words;
  const here = words[reached];
  if (block !== 'Inspection' || !first || !notNoted.has(first.type)) return undefined;
  const isTwice = here?.image === words[reached - 1]?.image;
  if (here?.type !== 'STRING' || isTwice || reached !== words.length - 1) return undefined;
  return {
    at: reached,
    message: `\`${first.image}\` has no note: it is a line of its own, \`finding ${here.image}\`.`,
    repair: inSeveralLines(words, [words.slice(0, reached), [keyword('finding'), here]]),
  };
}
