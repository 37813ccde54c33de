// Where something was seen or done lies: a point or a part by its name at its chainage, a panel from end to end as it lay on that day.
// A name that is not there is told; a panel that is not there keeps no place, which a rule tells (TL315).

import { chainageText } from '../../domain/units/length-words.js';
import { partNamedIn } from '../../domain/conditions/kinds.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import type { Problem } from '../../domain/model/problem.js';
import type { ConditionLine, PanelUse, Reline, DatedRecord, SeenPlace } from '../../domain/model/records.js';
import type { NameUse, Stated } from '../../domain/model/stated.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import type { ConveyorIndex } from './conveyors.js';
import { panelThere } from './panel-there.js';
import { checkStretch } from './stretches.js';

export interface PlacesKnown {
  readonly conveyors: ConveyorIndex;
  readonly relines: readonly Reline[];
  readonly problems: Problem[];
}

/** `part`: what it is about, `gate` of `gate stuck`: a part of that kind is meant before any other of the name. */
export function withPlace<T extends SeenPlace>(
  seen: T,
  part: string | undefined,
  day: CalendarDay,
  conveyor: Conveyor,
  { conveyors, relines, problems }: PlacesKnown,
): T {
  if (seen.panel) {
    if (!checkStretch(seen.panel, conveyor, problems)) return seen;
    return { ...seen, ...panelPlace(seen.panel, conveyor, relines, day) };
  }
  if (seen.end) return { ...seen, ...endPlace(seen.end, conveyor) };
  if (!seen.point) return seen.at ? seen : { ...seen, ...onlyPart(part, conveyor) };
  const parts = partsByKind(conveyor);
  const own = partNamed(parts.get(part ?? '') ?? [], seen.point);
  if (own) return { ...seen, at: own };
  const isPoint = conveyor.points.some(({ name }) => name === seen.point?.name);
  const other = isPoint ? undefined : partNamed([...parts.values()].flat(), seen.point);
  if (other) return { ...seen, at: other };
  // An isolation may have no place along the trough: its name says where it is.
  if (!isPoint && conveyor.isolations.some(({ name, at }) => !at && name === seen.point?.name)) return seen;
  const point = conveyors.checkPoint(conveyor, seen.point, problems);
  return point ? { ...seen, at: point.at, clock: seen.clock ?? point.clock } : seen;
}

export function withConditionPlace(
  line: ConditionLine,
  day: CalendarDay,
  conveyor: Conveyor,
  known: PlacesKnown,
): ConditionLine {
  return withPlace(line, line.about ?? partNamedIn(line.kind), day, conveyor, known);
}

/** What was seen in a look or during work, with its places. */
export function seenPlaced(
  { remarks, conditions, date }: Pick<DatedRecord, 'remarks' | 'conditions' | 'date'>,
  conveyor: Conveyor,
  known: PlacesKnown,
): Pick<DatedRecord, 'remarks' | 'conditions'> {
  return {
    remarks: remarks.map((each) => withPlace(each, each.part, date.day, conveyor, known)),
    conditions: conditions.map((line) => withConditionPlace(line, date.day, conveyor, known)),
  };
}

interface NamedPart {
  readonly name?: string;
  readonly from: Stated<'length'>;
  readonly origin: Origin;
}

function partNamed(parts: readonly NamedPart[], use: NameUse): Stated<'length'> | undefined {
  return parts.find(({ name }) => name !== undefined && name === use.name)?.from;
}

/** Of a part that the machine has once nobody has to say where it is. */
function onlyPart(kind: string | undefined, conveyor: Conveyor): Pick<SeenPlace, 'at' | 'point'> {
  const parts: readonly NamedPart[] =
    kind === 'gate'
      ? conveyor.breaks.filter((each) => each.kind === 'slide gate')
      : (partsByKind(conveyor).get(kind ?? '') ?? []);
  const [part, ...more] = parts;
  if (!part || more.length > 0) return {};
  const { name, from, origin } = part;
  return { at: from, ...(name !== undefined && { point: { name, origin } }) };
}

/** A gate, a hatch, a cover, a lifting point lies where it is declared: `gate stuck at Gate`, `finding at L1 "hook bent"`. */
function partsByKind({
  breaks,
  hatches,
  covers,
  holdDowns,
  braces,
  access,
  liftingPoints,
  isolations,
}: Conveyor): ReadonlyMap<string, readonly NamedPart[]> {
  return new Map<string, readonly NamedPart[]>([
    ['gate', breaks],
    ['hatch', hatches],
    ['cover', covers],
    ['hold-down', holdDowns],
    ['brace', braces],
    ['access', access],
    ['lifting point', liftingPoints.map((each) => ({ ...each, from: each.at }))],
    ['isolation', isolations.flatMap(({ at, ...each }) => (at ? [{ ...each, from: at }] : []))],
  ]);
}

/** `tail`, `head`, or `drive`, which is at one of them; no place where the conveyor says no drive. */
function endPlace({ name, origin }: NameUse, conveyor: Conveyor): Pick<SeenPlace, 'at'> {
  const { drive, length } = conveyor;
  const end = name === 'drive' ? drive?.end : name;
  if (end === undefined) return {};
  const value = end === 'tail' ? 0 : length.value;
  return {
    at: { dimension: 'length', value, text: chainageText(value, unitOfMachine(conveyor)), origin },
  };
}

function panelPlace(
  use: PanelUse,
  conveyor: Conveyor,
  relines: readonly Reline[],
  day: CalendarDay,
): Pick<SeenPlace, 'at' | 'to'> {
  const panel = panelThere(conveyor, use, relines, day);
  if (!panel) return {};
  const unit = unitOfMachine(conveyor);
  const at = (value: number): Stated<'length'> => ({
    dimension: 'length',
    value,
    text: chainageText(value, unit),
    origin: use.origin,
  });
  return { at: at(panel.from), to: at(panel.to) };
}
