// Random concurrent edits of one file, merged: none may be lost or doubled. `npx tsx tests/bench/merge.ts [EDITS] [SEED]`.

import fc from 'fast-check';
import { mergeTexts } from '../../src/language/merge-texts.js';
import { concurrentEdits } from '../kit/concurrent-edits.js';
import { wrongWith } from '../kit/merge-judge.js';

const [wanted, seed] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 20_261_126)];
let edits = 0;
let merges = 0;
let clean = 0;
let wrong = 0;
for (let round = 0; edits < wanted; round++)
  for (const each of fc.sample(concurrentEdits, { numRuns: 500, seed: seed + round })) {
    const merged = mergeTexts(each.base.text, each.ours.text, each.theirs.text);
    const fault = wrongWith(each, merged);
    if (fault !== undefined && wrong++ < 5) console.log(fault);
    edits += each.edits;
    merges++;
    if (merged.conflicts === 0) clean++;
  }
console.log(
  `${edits} edits in ${merges} merges: ${wrong} lost or doubled; ${Math.round((100 * clean) / merges)} % without a conflict`,
);
process.exitCode = wrong > 0 ? 1 : 0;
