// Where something was seen or done lies: a point or a part by its name at its chainage, a panel from end to end as it lay on that day.
// A name that is not there is told; a panel that is not there keeps no place, which a rule tells (TL315).

import { chainageText } from '../../domain/units/length-words.js';
import { panelWords, partNamedIn } from '../../domain/conditions/kinds.js';
import { isDriven } from '../../domain/conditions/kinds.js';
import { safeguardNamed } from '../../domain/conditions/safeguards-named.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { hasGate, type Conveyor, type Safeguard } from '../../domain/model/conveyor.js';
import { partNamed, partsByKind, type NamedPart } from '../../domain/model/part-names.js';
import type { Problem } from '../../domain/model/problem.js';
import type {
  ConditionLine,
  DatedRecord,
  PanelUse,
  PlateReading,
  Reline,
  SeenPlace,
} from '../../domain/model/records.js';
import type { Stated, StatedDay } from '../../domain/model/stated.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import type { MeasureDraft, MeasureDrafts, PlacedMeasures } from '../sheet.js';
import type { ConveyorIndex } from './conveyors.js';
import { endPlace } from '../lowering/end-place.js';
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
  known: PlacesKnown,
): T {
  const lying = whereItLies(seen, part, day, conveyor, known);
  const safeguard = safeguardNamed(lying, part, conveyor);
  return safeguard ? { ...lying, safeguard } : lying;
}

function whereItLies<T extends SeenPlace>(
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
  if (seen.end)
    return {
      ...seen,
      ...endPlace(seen.end, conveyor, unitOfMachine(conveyor)),
      ...otherDrive(seen.end.name, part, conveyor),
    };
  if (!seen.point) return seen.at ? seen : { ...seen, ...onlyPart(part, conveyor) };
  const parts = partsByKind(conveyor);
  const own = partNamed(parts.get(part ?? '') ?? [], seen.point.name);
  if (own) return { ...seen, at: own };
  const isPoint = conveyor.points.some(({ name }) => name === seen.point?.name);
  const other = isPoint ? undefined : partNamed([...parts.values()].flat(), seen.point.name);
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

/** Measures at their places; one whose place is not there is told and left out. */
export function measuresPlaced(
  draft: MeasureDrafts & { readonly date: StatedDay },
  conveyor: Conveyor,
  known: PlacesKnown,
): PlacedMeasures {
  const { holdDownGaps, wornWidths, notLooked, date } = draft;
  const placed = <T extends Measured>(all: readonly MeasureDraft<T>[], part?: string): readonly T[] =>
    all.flatMap((each) => measureAt(each, part, date, conveyor, known)?.measure ?? []);
  return {
    holdDownGaps: placed<PlacedMeasures['holdDownGaps'][number]>(holdDownGaps, 'hold-down'),
    ...flightsPlaced(draft, date, conveyor, known),
    wornWidths: placed<PlacedMeasures['wornWidths'][number]>(wornWidths),
    plates: platesPlaced(draft, conveyor, known),
    notLooked: notLooked.flatMap(({ place, ...rest }) => {
      const { at, to = at } = placeFound(place, undefined, date, conveyor, known);
      return at && to ? [{ ...rest, from: at, to }] : [];
    }),
  };
}

export function flightsPlaced(
  { flights, flightDiameters }: Pick<MeasureDrafts, 'flights' | 'flightDiameters'>,
  date: StatedDay,
  conveyor: Conveyor,
  known: PlacesKnown,
): Pick<PlacedMeasures, 'flights' | 'flightDiameters'> {
  const placed = <T extends Measured>(all: readonly MeasureDraft<T>[]): readonly T[] =>
    all.flatMap((each) => measureAt(each, undefined, date, conveyor, known)?.measure ?? []);
  return {
    flights: placed<PlacedMeasures['flights'][number]>(flights),
    flightDiameters: placed<PlacedMeasures['flightDiameters'][number]>(flightDiameters),
  };
}

/** A plate that goes by the name of a point lies at the clock position of that point. */
export function platesPlaced(
  { plates, date }: Pick<MeasureDrafts, 'plates'> & { readonly date: StatedDay },
  conveyor: Conveyor,
  known: PlacesKnown,
): PlacedMeasures['plates'] {
  return plates.flatMap((plate) => {
    const found = measureAt<PlateReading>(plate, undefined, date, conveyor, known);
    return found ? [{ ...found.measure, ...(found.clock && { clock: found.clock }) }] : [];
  });
}

/** Where a measure counts: of a stretch, at its middle. Undefined, and told, where that is not there. */
export function measuredAt(
  place: SeenPlace,
  part: string | undefined,
  date: StatedDay,
  conveyor: Conveyor,
  known: PlacesKnown,
): Stated<'length'> | undefined {
  const { at, to } = placeFound(place, part, date, conveyor, known);
  return at && to ? middleOf(at, to) : at;
}

interface Measured {
  readonly at: Stated<'length'>;
  readonly note?: string;
}

function measureAt<T extends Measured>(
  { place, ...said }: MeasureDraft<T>,
  part: string | undefined,
  date: StatedDay,
  conveyor: Conveyor,
  known: PlacesKnown,
): { readonly measure: T; readonly clock: SeenPlace['clock'] } | undefined {
  const { at, to, clock } = placeFound(place, part, date, conveyor, known);
  if (!at) return undefined;
  const note = [place.panel && panelWords(place.panel), said.note].filter(Boolean).join(': ');
  const middle = to ? middleOf(at, to) : at;
  // All that a draft lacks of its measure is its place.
  return { measure: { ...said, at: middle, ...(note !== '' && { note }) } as unknown as T, clock };
}

function middleOf(from: Stated<'length'>, to: Stated<'length'>): Stated<'length'> {
  const value = (from.value + to.value) / 2;
  return { ...from, value, text: chainageText(value, /(ft|in)$/.test(to.text) ? 'in' : 'mm') };
}

/** As `withPlace` says; what is not there along the trough is told. */
function placeFound(
  place: SeenPlace,
  part: string | undefined,
  { day }: StatedDay,
  conveyor: Conveyor,
  known: PlacesKnown,
): SeenPlace {
  const found = withPlace(place, part, day, conveyor, known);
  const { panel, end, point } = found;
  const noPlace = conveyor.isolations.some(({ name, at }) => !at && name === point?.name);
  const use = panel
    ? { name: panelWords(panel), origin: panel.origin }
    : (end ?? (noPlace ? point : undefined));
  if (!found.at && use)
    known.problems.push({
      kind: 'unknown name',
      origin: use.origin,
      what: `place along ${conveyor.name}`,
      name: use.name,
      known: [],
    });
  return found;
}

/** A machine that is driven at both ends declares one of them: what is said of the other end is of the second drive. */
function otherDrive(
  end: string,
  part: string | undefined,
  { drive }: Conveyor,
): Pick<SeenPlace, 'otherDrive'> {
  if (!isDriven(part) || (end !== 'head' && end !== 'tail')) return {};
  return end === (drive?.end ?? 'head') ? {} : { otherDrive: end };
}

/** Of a part that the machine has once nobody has to say where it is. */
function onlyPart(kind: string | undefined, conveyor: Conveyor): Pick<SeenPlace, 'at' | 'point' | 'end'> {
  const [safeguard, ...others] = conveyor.safeguards.filter((each) => each.kind === kind);
  if (safeguard) return others.length > 0 || kind === 'pull cord' ? {} : placeOf(safeguard);
  const parts: readonly NamedPart[] =
    kind === 'gate' ? conveyor.breaks.filter(hasGate) : (partsByKind(conveyor).get(kind ?? '') ?? []);
  const [part, ...more] = parts;
  if (!part || more.length > 0) return {};
  const { name, from, origin } = part;
  return { at: from, ...(name !== undefined && { point: { name, origin } }) };
}

function placeOf({ at, point, end }: Safeguard): Pick<SeenPlace, 'at' | 'point' | 'end'> {
  return { ...(at && { at }), ...(point && { point }), ...(end && { end }) };
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
