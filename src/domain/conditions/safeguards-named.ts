// Which of the safeguards of one kind does a name mean? An interlock at a hatch and one at the cover beside it may lie a hand apart, and
// who tries or renews one has not touched the other: a name means that one only. A chainage means what lies there.

import { safeguardKinds, type Conveyor, type Safeguard } from '../model/conveyor.js';
import { partsByKind } from '../model/part-names.js';
import type { SeenPlace } from '../model/records.js';
import { samePlace } from './kinds.js';

type Named = NonNullable<SeenPlace['safeguard']>;

/** What tells it from others of its kind: its own name, else the part or the end that it is at, else where it lies. */
export function safeguardKey({ name, point, end, at }: Safeguard): string {
  return name ?? point?.name ?? end?.name ?? String(at?.value ?? '');
}

/** What a place with a name means of the safeguards of that part; undefined where no name says which, or the part is no safeguard. */
export function safeguardNamed(
  seen: SeenPlace,
  part: string | undefined,
  conveyor: Conveyor,
): Named | undefined {
  const kind = safeguardKinds.find((each) => each === part);
  if (kind === undefined) return undefined;
  const own = conveyor.safeguards.filter((each) => each.kind === kind);
  const said = seen.point?.name ?? seen.end?.name;
  const called = own.filter((each) => (said === undefined ? isJustThere(each, seen) : isCalled(each, said)));
  // At a part for which none is declared it is what is declared there without a part.
  const meant =
    called.length > 0 || said === undefined ? called : own.filter((each) => !each.point && lies(each, seen));
  if (meant.length > 0) return { kind, names: meant.map(safeguardKey) };
  return seen.point && isPart(seen.point.name, conveyor) ? { kind, names: [seen.point.name] } : undefined;
}

function isCalled({ name, point, end }: Safeguard, said: string): boolean {
  return [name, point?.name, end?.name].includes(said);
}

/** Both are told by the same chainage. */
function isJustThere({ point, end, at }: Safeguard, seen: SeenPlace): boolean {
  return !point && !end && at !== undefined && at.value === seen.at?.value;
}

function lies({ at, to = at }: Safeguard, seen: SeenPlace): boolean {
  if (!at || !to || !seen.at) return false;
  return at.value - samePlace <= seen.at.value && seen.at.value <= to.value + samePlace;
}

function isPart(name: string, conveyor: Conveyor): boolean {
  return [...partsByKind(conveyor).values()]
    .flat()
    .some((each) => each.name === name || each.called === name);
}
