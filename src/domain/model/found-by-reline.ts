// Which liner does a reline bring that names none? The same again: what lay before it at the middle of its scope. Records come in
// order of date, so each rests on those before it alone.

import { linersOf } from './liners-there.js';
import { panelEnds } from './first-panels.js';
import type { Reline } from './records.js';
import { intervalOf } from './runs.js';
import type { LinerSpecification } from './specifications.js';

/** What was made of a record the last time, so that equal texts give the same object. */
const made = new WeakMap<Reline, Reline>();

/** `relines` of all conveyors, each conveyor's in order of date; those that name no liner take it for the conveyor's own. */
export function withLinersFound(relines: readonly Reline[]): readonly Reline[] {
  const found: Reline[] = [];
  for (const reline of relines) {
    const liner = reline.linerUse ? reline.liner : linerBefore(reline, found);
    found.push(liner === reline.liner ? reline : bringing(reline, liner));
  }
  return found;
}

function bringing(reline: Reline, liner: LinerSpecification): Reline {
  const known = made.get(reline);
  if (known?.liner === liner) return known;
  const record = { ...reline, liner };
  made.set(reline, record);
  return record;
}

/** `found`: the records before it, of all conveyors. */
function linerBefore({ conveyor, scope, date }: Reline, found: readonly Reline[]): LinerSpecification {
  const before = found.filter((each) => each.conveyor === conveyor);
  const [stretch] = scope;
  const interval = stretch && intervalOf(conveyor, stretch, panelEnds);
  const { from, to } = interval ?? { from: 0, to: conveyor.length.value };
  return linersOf(conveyor, before)((from + to) / 2, date.day, 'after all work')[0] ?? conveyor.liner;
}
