// Lines that people write and the language says in another way or in another record: each with that way in one sentence and, where
// nothing has to be made up for it, with the line. A word that begins no line of the block at all is in elsewhere.ts.

import type { BrokenLine } from './broken-line.js';
import { driveParts, driveWorks } from './drive-work.js';
import { changed, likeWords, type LineRepair } from './repairs.js';
import { boltsOfASpiral } from './spiral-bolts.js';
import { uncertainDay } from './uncertain-day.js';
import { imagesOf, isWord, keyword, type Word } from './word.js';
import { withNote } from './word-as-note.js';
import { oneOf } from './wording.js';

export interface Otherwise {
  readonly message: string;
  /** Number of the word where it is told. */
  readonly at: number;
  readonly repair?: LineRepair;
}

type Saying = (line: BrokenLine) => Otherwise | undefined;

/** Whatever line may lie near. */
export function saidOtherwise(line: BrokenLine): Otherwise | undefined {
  return firstOf(plain, line);
}

/** Of a line for which no line lies near. */
export function saidInAnotherRecord(line: BrokenLine): Otherwise | undefined {
  return firstOf(unlessNear, line);
}

function firstOf(sayings: readonly Saying[], line: BrokenLine): Otherwise | undefined {
  for (const saying of sayings) {
    const said = saying(line);
    if (said) return said;
  }
  return undefined;
}

const plain: readonly Saying[] = [
  ({ block, words }) =>
    block === 'Job' && words[0]?.type === 'screw change'
      ? {
          at: 0,
          message:
            'A job says `change screw`; `screw change` is the record of one that was done, a block of its own.',
          repair: { line: words, from: 0, to: 1, words: [keyword('change screw')] },
        }
      : undefined,

  ({ block, words: [first, second] }) =>
    block === 'Job' && first?.type === 'liner' && second?.type === 'ID'
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

  ({ block, words: [first, second] }) =>
    block === 'Conveyor' && first?.type === 'section' && second?.type === 'every'
      ? {
          at: 1,
          message: 'A section has a name and a length, a line each: `section S1 6 m`, `section S2 6 m`.',
        }
      : undefined,

  ({ words: [first] }) =>
    first?.type === 'closed on'
      ? {
          at: 0,
          message: '`closed on` stands behind what it closes: `panel torn at 14.2 m closed on 2026-03-20`.',
        }
      : undefined,

  colourAlone,

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

  /** Its part begins a line of a look, where it means that something is wrong. */
  ({ block, words, reached }) => {
    const [first] = words;
    const work = words.find(({ type }) => driveWorks.has(type));
    return block === 'Inspection' && reached > 0 && work && first && driveParts.has(first.type)
      ? {
          at: reached,
          message: `Work done is a record of its own, outside the inspection: \`serviced DG1 2026-03-10 ${first.type} ${work.type} by "fitter"\`.`,
        }
      : undefined;
  },

  conditionOfAStretch,

  ({ block, words, reached }) =>
    block === 'Inspection' && words[reached]?.type === 'by eye'
      ? {
          at: reached,
          message:
            'How thickness was read is said once of the look, `gauge by eye`; a reading that is less sure than the others says so: ' +
            '`P6 thickness 5.0 mm ± 1 mm`.',
        }
      : undefined,

  noteOfAValue,
];

const unlessNear: readonly Saying[] = [
  ({ block, words, reached }) =>
    words[0]?.type === 'cost' && ['Reline', 'ScrewChange', 'Job'].includes(block)
      ? {
          at: reached,
          message:
            'Costs are said once, in the plant, as decisions need them: `cost reline 9600 EUR`. ' +
            'What one piece of work did cost is kept as a comment: `// cost 9600 EUR`.',
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
            'A correction is of one reading of a liner. All else is put right in the line of the look itself; ' +
            'what stood there before stays in the history of the file.',
        }
      : undefined;
  },

  ({ block, words, reached }) =>
    block === 'Block' &&
    words[0]?.type === 'serviced' &&
    words[reached] &&
    words[reached - 1]?.type === 'DATE'
      ? {
          at: reached,
          message:
            `A record of service is of ${oneOf([...driveParts])}. Other work is told by a look of ` +
            'that day: `closed gate stuck at UpperGate "cylinder renewed"`, or `finding drive "plate bolts tightened"`.',
        }
      : undefined,
];

/** `A5 yellow`, `A5 yellow showing`: the word `colour` is left out. */
function colourAlone({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [point, colour, showing] = words;
  if (block !== 'Inspection' || point?.type !== 'ID' || colour?.type !== 'ID') return undefined;
  const isNearNoWord = (): boolean =>
    words.length === 2 &&
    !/^[a-z]{2}/.test(point.image) &&
    likeWords(colour.image, [...pattern.words].filter(isWord)).length === 0;
  if (showing?.image !== 'showing' && !isNearNoWord()) return undefined;
  const line = [point, keyword('colour'), colour, ...words.slice(3)];
  return { at: 1, message: `Did you mean \`${imagesOf(line)}\`?`, repair: changed(words, line) };
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

function conditionOfAStretch({ block, words, reached }: BrokenLine): Otherwise | undefined {
  const [here, from, to, end] = words.slice(reached);
  if (block !== 'Inspection' || reached === 0 || here?.type !== 'from' || to?.type !== 'to') return undefined;
  if (from?.type !== 'QUANTITY' || end?.type !== 'QUANTITY') return undefined;
  const atOneEnd: readonly Word[] = [
    ...words.slice(0, reached),
    keyword('at'),
    from,
    ...words.slice(reached + 4),
  ];
  const line = withNote(atOneEnd, [`from ${from.image} to ${end.image}`]);
  return {
    at: reached,
    message: `A condition has one place. Did you mean \`${imagesOf(line)}\`?`,
    repair: changed(words, line),
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
  };
}
