// Does the head of a bolt lie below the liner's face? Flush at (head − hole) / 2 of a 90° countersink (geometry/fixing.ts).

import { boltSize, flushDepth } from '../../../domain/geometry/fixing.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

/** mm; real heads are a little flatter than sharp-edged ones, and a first turn of the nut pulls them in [judgement]. */
const pulledIn = 1;

export const boltHeadProud: Rule = {
  code: 'TL458',
  title: 'Bolt head that stands proud of the liner',
  severity: 'warning',
  restsOn: [],
  why: 'The spiral strikes the heads: they are torn out, and panels with them.',
  todo: 'Countersink deeper where the first colour is thick enough, or take smaller bolts; try it on an offcut.',
  given: 'liner',
  example: '  bolt M10 rows 2 pitch 250 mm countersink «3 mm|4.5 mm»',
  cases: [{ name: 'pulled in by the nut', text: '  bolt M10 rows 2 pitch 250 mm countersink 3.6 mm' }],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      const { name, bolt, drill } = liner;
      const size = bolt && boltSize(bolt.size);
      const depth = bolt?.countersink;
      if (!size || !depth) return;
      // A hole that is no hole for this bolt is told as such.
      const hole = drill && Math.max(drill.size.value, size.diameter);
      const flush = flushDepth(size, hole);
      if (depth.value >= flush - pulledIn) return;
      const said = (mm: number): string => lengthOn({ liner }, Math.round(mm * 10) / 10);
      yield {
        origin: depth.origin,
        message:
          `The heads of ${bolt.size} lie flush ${said(flush)} deep, and ${name} is countersunk ${depth.text}` +
          `${roomBelow(liner, flush - pulledIn, said, bolt.size)}.`,
      };
    },
  ),
};

/** Where a deeper countersink would meet the next colour, which TL218 would tell only once it is there. */
function roomBelow(
  { layers }: LinerSpecification,
  needed: number,
  said: (mm: number) => string,
  bolt: string,
): string {
  const [first, next] = layers;
  if (!first || !next) return '';
  const begins = `; ${next.name} begins ${said(first.thickness.value)} deep`;
  return needed < first.thickness.value
    ? `${begins}, so a countersink of ${said(needed)} or more serves, as long as it stays above that`
    : `${begins}, so no countersink of a ${bolt} suits it: take a smaller bolt or a thicker first colour`;
}
