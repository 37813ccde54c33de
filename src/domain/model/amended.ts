// Which measures beside the readings of the liner were found wrong later, and what do they say now? Plate, flight, current, the meter
// of a look, and a condition that never was there. A look then holds what counts, and beside it stands the look as it was written.

import { meterWords } from './meter-read.js';
import type { CalendarDay } from '../units/calendar.js';
import type { Estate } from './estate.js';
import type { Amendment, CorrectionOutcome, Inspection, JudgedAmendment } from './records.js';

/**
 * Looks as they count, and what became of each amendment, in the order of their days; of one day the later line of a file holds. Where
 * two files say different things of one measure on one day, the measure counts for nothing.
 */
export function applyAmendments(
  looks: readonly Inspection[],
  amendments: readonly Amendment[],
): { readonly inspections: readonly Inspection[]; readonly judged: readonly JudgedAmendment[] } {
  if (amendments.length === 0) return { inspections: looks, judged: [] };
  const inspections = [...looks];
  const judged = [...amendments]
    .sort(inOrder)
    .map((each, _, all) => ({ ...each, ...settled(inspections, each, all) }));
  return { inspections, judged };
}

function inOrder(a: Amendment, b: Amendment): number {
  return a.date.day - b.date.day || a.origin.source - b.origin.source || a.origin.start - b.origin.start;
}

/** Of one measure, on one day, something else is said. */
function contradict(a: Amendment, b: Amendment): boolean {
  if (a.conveyor !== b.conveyor || a.date.day !== b.date.day || a.read.day !== b.read.day) return false;
  if (a.of.kind !== b.of.kind || a.of.kind === 'condition') return false;
  if ('at' in a.of && 'at' in b.of && Math.abs(a.of.at.value - b.of.at.value) > sameSpot) return false;
  if (a.says.kind === 'does not count' || b.says.kind === 'does not count')
    return a.says.kind !== b.says.kind;
  if (a.says.kind !== b.says.kind) return false;
  if (a.says.kind !== 'current' || b.says.kind !== 'current')
    return amendedText(a.says) !== amendedText(b.says);
  const [one, other] = [a.says, b.says];
  return (['empty', 'loaded'] as const).some(
    (which) => one[which] && other[which] && one[which].value !== other[which].value,
  );
}

/** Only the last of those that contradict each other holds. */
function settled(inspections: Inspection[], amendment: Amendment, all: readonly Amendment[]): Verdict {
  const against = all.filter((other) => contradict(amendment, other));
  const isOpen = against.some(({ origin }) => origin.source !== amendment.origin.source);
  const isLast = against.every((other) => inOrder(other, amendment) < 0);
  if (against.length === 0 || (isLast && !isOpen)) return applied(inspections, amendment);
  const { was } = isOpen
    ? applied(inspections, { ...amendment, says: { kind: 'does not count' } })
    : { was: '' };
  return { outcome: 'contradicted', was };
}

/** The looks as they stood on a day: what was corrected after it says again what it said then. */
export function looksOn<E extends Estate>(estate: E, day: CalendarDay): E {
  if (!estate.amendments.some(({ date }) => date.day > day)) return estate;
  const known = estate.amendments.filter(({ date }) => date.day <= day);
  const written = estate.inspections.map((look) => look.written ?? look);
  const { inspections, judged } = applyAmendments(written, known);
  return { ...estate, inspections, amendments: judged };
}

type Verdict = Pick<JudgedAmendment, 'outcome' | 'was'>;

function applied(inspections: Inspection[], amendment: Amendment): Verdict {
  const verdict = (outcome: CorrectionOutcome, was = ''): Verdict => ({ outcome, was });
  const { conveyor, date, read } = amendment;
  const index = inspections.findIndex(
    (each) => each.conveyor === conveyor && each.date.day === read.day && change(each, amendment),
  );
  const look = inspections[index];
  const changed = look && change(look, amendment);
  if (!changed)
    return verdict(
      inspections.some((each) => each.conveyor === conveyor && each.date.day === read.day)
        ? 'not read there'
        : 'no such look',
    );
  if (date.day < read.day) return verdict('before the reading');
  if (changed.was === changed.now) return verdict('changes nothing', changed.was);
  inspections[index] = { ...changed.look, written: look.written ?? look };
  return verdict('counts', changed.was);
}

interface Change {
  readonly look: Inspection;
  /** As it counted before, and as it counts now, as written. */
  readonly was: string;
  readonly now: string;
}

/** mm: the place of a measure as an author writes it again. */
const sameSpot = 0.5;

/** Undefined where the look says nothing of the kind there. */
function change(look: Inspection, { of, says }: Amendment): Change | undefined {
  const now = amendedText(says);
  const near = ({ at }: { readonly at: { readonly value: number } }): boolean =>
    'at' in of && Math.abs(at.value - of.at.value) <= sameSpot;
  switch (of.kind) {
    case 'plate': {
      const old = look.plates.find(near);
      if (!old) return undefined;
      const thickness = says.kind === 'thickness' ? says.thickness : undefined;
      const plates = replaced(look.plates, old, thickness && { ...old, thickness });
      return { look: { ...look, plates }, was: old.thickness.text, now };
    }
    case 'flight':
      return flightChange(look, near, says);
    case 'current': {
      const currents = look.currents.map((each) => currentSaid(each, says));
      if (look.currents.length === 0) return undefined;
      const was = look.currents.map(currentWords).join(', ');
      const fresh = currents.map(currentWords).join(', ');
      return { look: { ...look, currents }, was, now: says.kind === 'current' ? fresh : now };
    }
    case 'meter': {
      if (says.kind !== 'meter') return undefined;
      const meter = { ...look.meter, hours: says.hours };
      return { look: { ...look, meter }, was: meterWords(look.meter), now };
    }
    case 'condition': {
      const conditions = look.conditions.filter((each) => !of.gone.includes(each));
      if (conditions.length === look.conditions.length) return undefined;
      return { look: { ...look, conditions }, was: 'there', now };
    }
  }
}

type Says = Amendment['says'];

function flightChange(
  look: Inspection,
  near: (each: { readonly at: { readonly value: number } }) => boolean,
  says: Says,
): Change | undefined {
  const [depth, across] = [look.flights.find(near), look.flightDiameters.find(near)];
  const now = amendedText(says);
  if (says.kind === 'depth' && depth) {
    const flights = replaced(look.flights, depth, { ...depth, depth: says.depth });
    return { look: { ...look, flights }, was: depth.depth.text, now };
  }
  if (says.kind === 'diameter' && across) {
    const flightDiameters = replaced(look.flightDiameters, across, { ...across, diameter: says.diameter });
    return { look: { ...look, flightDiameters }, was: across.diameter.text, now };
  }
  if (says.kind !== 'does not count' || (!depth && !across)) return undefined;
  const was = [depth?.depth.text, across?.diameter.text].filter(Boolean).join(', ');
  const flights = look.flights.filter((each) => each !== depth);
  const flightDiameters = look.flightDiameters.filter((each) => each !== across);
  return { look: { ...look, flights, flightDiameters }, was, now };
}

type Current = Inspection['currents'][number];

function currentSaid(old: Current, says: Says): Current {
  const kept = { origin: old.origin, ...(old.note !== undefined && { note: old.note }) };
  if (says.kind !== 'current') return kept;
  const { empty = old.empty, loaded = old.loaded } = says;
  return { ...kept, ...(empty && { empty }), ...(loaded && { loaded }) };
}

function currentWords({ empty, loaded }: Pick<Current, 'empty' | 'loaded'>): string {
  return [empty && `${empty.text} empty`, loaded && `${loaded.text} loaded`].filter(Boolean).join(', ');
}

function replaced<T>(all: readonly T[], old: T, fresh: T | undefined): readonly T[] {
  return all.flatMap((each) => (each === old ? (fresh ? [fresh] : []) : [each]));
}

/** As it counts since: `3.6 mm`, `does not count`. */
export function amendedText(says: Says): string {
  switch (says.kind) {
    case 'thickness':
      return says.thickness.text;
    case 'depth':
      return says.depth.text;
    case 'diameter':
      return says.diameter.text;
    case 'current':
      return currentWords(says);
    case 'meter':
      return says.hours.text;
    case 'does not count':
      return 'does not count';
  }
}
