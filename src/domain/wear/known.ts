// What is known by hand of a place on the liner, from everything seen there in the order of time? Newer evidence overrules older:
// a colour seen after the last thickness says that at most so much is left, and steel that nothing is. A colour that agrees
// with the arithmetic, or speaks of more, changes nothing. Depths of layers are nominal, as in colour-bounds.ts.

import { handArithmetic, type HandResult, type ThicknessReading } from './arithmetic.js';
import { leftWhile } from './colour-bounds.js';

/** Exposure of the liner (h or t, ≥ 0) and what was seen: mm left, or the layer (0 on the screw side, their number for steel). */
export interface SeenByHand {
  readonly exposure: number;
  readonly thickness?: number;
  readonly layer?: number;
}

export interface KnownInput {
  /** Thickness when fitted, mm. */
  readonly fitted: number;
  /** Condemn limit, mm. */
  readonly least: number;
  /** Depths at which the layers end, mm, from 0 at the screw side; see layerDepths. */
  readonly depths: readonly number[];
  /** In the order of time. */
  readonly seen: readonly SeenByHand[];
}

/** What overruled the last thickness: `last` of the result is then the most that it leaves, mm, and not a reading. */
export interface Overruled {
  readonly by: 'colour' | 'steel';
  readonly thickness: ThicknessReading;
}

export interface KnownByHand {
  readonly result: HandResult;
  readonly overruled: Overruled | undefined;
}

/** Without a thickness there is no arithmetic to overrule: `no reading`, and the colours speak alone (colour-bounds.ts). */
export function knownByHand({ fitted, least, depths, seen }: KnownInput): KnownByHand {
  const readings = seen.flatMap(({ exposure, thickness }) =>
    thickness === undefined ? [] : [{ exposure, thickness }],
  );
  const plain = handArithmetic({ fitted, least, readings });
  if (plain.kind === 'no reading') return { result: plain, overruled: undefined };
  let result: HandResult = plain;
  let by: Overruled['by'] | undefined;
  // Steel in the round of the last thickness counts in whatever order the two were written; what was seen before it does not.
  for (const { exposure, layer } of seen) {
    if (layer === undefined || result.kind === 'no reading' || exposure < result.last.exposure) continue;
    if (layer >= depths.length - 1)
      return {
        result: wornThrough(result, exposure, least),
        overruled: { by: 'steel', thickness: plain.last },
      };
    const { most } = leftWhile(layer, fitted, depths);
    if (exposure === result.last.exposure || leftAt(result, exposure) <= most) continue;
    readings.push({ exposure, thickness: Math.max(0, most) });
    result = handArithmetic({ fitted, least, readings });
    by = 'colour';
  }
  return { result, overruled: by && { by, thickness: plain.last } };
}

/** mm that the arithmetic expects at an exposure after its last reading. */
function leftAt(result: Exclude<HandResult, { kind: 'no reading' }>, exposure: number): number {
  const { last } = result;
  const rate = result.kind === 'rate' ? result.ruling : Math.max(0, result.longTerm);
  return last.thickness - rate * (exposure - last.exposure);
}

/** Rates stay those of the thicknesses: steel says only that the wear was at least so fast. */
function wornThrough(
  { longTerm, shortTerm }: Exclude<HandResult, { kind: 'no reading' }>,
  exposure: number,
  least: number,
): HandResult {
  return { kind: 'at the limit', last: { exposure, thickness: 0 }, longTerm, shortTerm, below: least };
}
