// Lines of a kind that people write and the language says in another way: each with that way, and with the line where nothing has
// to be made up for it.

import { imagesOf, isWord } from './repairs.js';
import { withNote } from './word-as-note.js';
import type { Word } from './word.js';

export interface Otherwise {
  readonly message: string;
  /** The line in the language's way. */
  readonly line?: readonly Word[];
}

/** `reached`: the word where the line cannot be followed. */
export function saidOtherwise(block: string, words: readonly Word[], reached: number): Otherwise | undefined {
  const here = words[reached];
  const first = words[0]?.type;
  if (block === 'Inspection') return inALook(words, reached);
  if (first === 'cost' && ['Reline', 'ScrewChange', 'Job'].includes(block))
    return {
      message:
        'Costs are said once, in the plant, as decisions need them: `cost reline 9600 EUR`. ' +
        'What one piece of work did cost is kept as a comment: `// cost 9600 EUR`.',
    };
  if (block !== 'Block' || !here) return undefined;
  if (first === 'correction' && isWord(here.type) && here.type !== 'at')
    return {
      message:
        'A correction is of one reading of a liner. All else is put right in the line of the look itself; ' +
        'what stood there before stays in the history of the file.',
    };
  if (first === 'serviced' && words[reached - 1]?.type === 'DATE')
    return {
      message:
        `A record of service is of gearbox, tail bearing, thrust bearing, motor or coupling. Other work is told by a look of ` +
        'that day: `closed gate stuck at UpperGate "cylinder renewed"`, or `finding drive "plate bolts tightened"`.',
    };
  return undefined;
}

function inALook(words: readonly Word[], reached: number): Otherwise | undefined {
  const [here, from, to, end] = words.slice(reached);
  if (!here) return undefined;
  const isStretch = here.type === 'from' && to?.type === 'to' && reached > 0;
  if (isStretch && from?.type === 'QUANTITY' && end?.type === 'QUANTITY') {
    const note = `from ${from.image} to ${end.image}`;
    const line = withNote(
      [...words.slice(0, reached), { type: 'at', image: 'at' }, from, ...words.slice(reached + 4)],
      [note],
    );
    return { message: `A condition has one place. Did you mean \`${imagesOf(line)}\`?`, line };
  }
  if (here.type === 'by eye')
    return {
      message:
        'How thickness was read is said once of the look, `gauge by eye`; a reading that is less sure than the others says so: ' +
        '`P6 thickness 5.0 mm ± 1 mm`.',
    };
  const [first] = words;
  const isTwice = here.image === words[reached - 1]?.image;
  if (here.type === 'STRING' && !isTwice && reached === words.length - 1 && first && notNoted.has(first.type))
    return {
      message: `\`${first.image}\` has no note: it is a line of its own, \`finding ${here.image}\`.`,
    };
  return undefined;
}

/** Lines of a look that end with their value. */
const notNoted: ReadonlySet<string> = new Set(['gauge', 'by', 'view']);
