// Which liner does a reline bring that names none? The same again (same-again.ts). Records come in order of date, so each rests on
// those before it alone.

import { panelEnds } from './first-panels.js';
import type { Reline } from './records.js';
import { intervalOf } from './runs.js';
import { sameAgain, type SameAgain } from './same-again.js';

type Brought = Pick<SameAgain, 'pieces' | 'settled'>;

/** What was made of a record the last time, so that equal texts give the same object. */
const made = new WeakMap<Reline, Reline>();

/** `relines` of all conveyors, each conveyor's in order of date; those that name no liner take it for the conveyor's own. */
export function withLinersFound(relines: readonly Reline[]): readonly Reline[] {
  const found: Reline[] = [];
  for (const reline of relines)
    found.push(reline.linerUse ? reline : bringing(reline, sameAsBefore(reline, found)));
  return found;
}

function bringing(reline: Reline, { pieces, settled }: Brought): Reline {
  const liner = pieces[0]?.liner ?? reline.liner;
  const again = pieces.length > 1 ? pieces : undefined;
  const known = made.get(reline);
  if (known?.liner === liner && isSame(known.again, again) && known.unsure === !settled) return known;
  if (liner === reline.liner && !again && settled) return reline;
  const record = { ...reline, liner, ...(again && { again }), unsure: !settled };
  made.set(reline, record);
  return record;
}

function isSame(a: Reline['again'], b: Reline['again']): boolean {
  return (
    a?.length === b?.length &&
    (a ?? []).every(({ liner, from, to }, i) => {
      const other = b?.[i];
      return other?.liner === liner && other.from === from && other.to === to;
    })
  );
}

/** `found`: the records before it, of all conveyors. */
function sameAsBefore({ conveyor, scope }: Reline, found: readonly Reline[]): Brought {
  const before = found.filter((each) => each.conveyor === conveyor);
  const areas = scope.flatMap((stretch) => intervalOf(conveyor, stretch, panelEnds) ?? []);
  const whole = { from: 0, to: conveyor.length.value };
  const each = (areas.length > 0 ? areas : [whole])
    .sort((a, b) => a.from - b.from)
    .map((area) => sameAgain(conveyor, area, before));
  return {
    pieces: oneEach(each.flatMap(({ pieces }) => pieces)),
    settled: each.every(({ settled }) => settled),
  };
}

/** Of several stretches that get one liner a single piece says enough. */
function oneEach(pieces: SameAgain['pieces']): SameAgain['pieces'] {
  const [first] = pieces;
  return first && pieces.every(({ liner }) => liner === first.liner) ? [first] : pieces;
}
