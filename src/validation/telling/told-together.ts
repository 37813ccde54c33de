// Many readings that one wrong line of the records makes wrong are one finding: twenty squiggles hide the line that is to blame.

import { runAt, runsOf } from '../../domain/model/runs.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import { list } from '../../domain/units/wording.js';
import type { Found } from '../finding.js';

/** So many are still told one by one. */
const few = 2;

export interface OfALiner extends Found {
  /** What is wrong alike: the same liner, the same colour. */
  readonly alike: string;
  readonly conveyor: Conveyor;
  /** Chainage, mm. */
  readonly at: number;
}

/** Findings of one run that say the same, as one at the first, which then speaks of the run and of the runs there are. */
export function* toldTogether(found: readonly OfALiner[]): Iterable<Found> {
  const groups = new Map<string, OfALiner[]>();
  for (const each of found) {
    const key = `${each.conveyor.name} ${runAt(each.conveyor, each.at)?.number ?? ''} ${each.alike}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  for (const group of groups.values()) {
    const [first, ...others] = group;
    if (!first) continue;
    if (group.length <= few) {
      yield* group.map(plain);
      continue;
    }
    const run = runAt(first.conveyor, first.at);
    const place = run ? `in ${run.label}` : 'there';
    yield {
      ...plain(first),
      message: `${first.message} ${others.length} more readings ${place} of ${first.conveyor.name} say the same.`,
      todo:
        `Look first at the record that says which liner lies ${place}: is that the run that was meant? ` +
        `${first.conveyor.name} has ${list(
          runsOf(first.conveyor).map(({ label }) => label),
          'and',
          8,
        )}.`,
      related: [
        ...(first.related ?? []),
        ...others.map(({ origin }) => ({ origin, message: 'the same here' })),
      ],
    };
  }
}

function plain({ alike: _alike, conveyor: _conveyor, at: _at, ...found }: OfALiner): Found {
  return found;
}
