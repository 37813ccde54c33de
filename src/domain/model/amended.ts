// Which measures beside the readings of the liner were found wrong later, and what do they say now? Plate, flight, gap, worn strip,
// current, speed, the meter of a look, and a condition that never was there. A look then holds what counts, and beside it stands the look as it was written.

import { placeOfAmended } from './as-in-look.js';
import { measuresMeant, sameSpot } from './amended-measures.js';
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
  if ('at' in a.of && 'at' in b.of && isElsewhere(a.of, b.of)) return false;
  if (
    a.of.kind === 'current' &&
    b.of.kind === 'current' &&
    a.of.which &&
    b.of.which &&
    a.of.which !== b.of.which
  )
    return false;
  if (a.writtenAs && b.writtenAs && !isSame(a.writtenAs.value, b.writtenAs.value)) return false;
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

type Spot = Extract<Amendment['of'], { readonly at: unknown }>;

function isElsewhere(a: Spot, b: Spot): boolean {
  return (
    Math.abs(a.at.value - b.at.value) > sameSpot ||
    (a.clock && b.clock ? a.clock.hours !== b.clock.hours : false)
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

type Verdict = Pick<JudgedAmendment, 'outcome' | 'was' | 'readTwice' | 'lies'>;

function applied(inspections: Inspection[], amendment: Amendment): Verdict {
  const verdict = (outcome: CorrectionOutcome, was = ''): Verdict => ({ outcome, was });
  const { conveyor, date, read, writtenAs } = amendment;
  const looks = inspections.flatMap((look, index) =>
    look.conveyor === conveyor && look.date.day === read.day
      ? [{ index, measures: measuresMeant(look, amendment) }]
      : [],
  );
  if (looks.length === 0) return verdict('no such look');
  const count = Math.max(...looks.map(({ measures }) => measures.length));
  const meant = Array.from({ length: count }, (_, i) =>
    looks.flatMap(({ index, measures }) =>
      (measures[i] ?? [])
        .filter(({ stated }) => !writtenAs || (stated && isSame(stated.value, writtenAs.value)))
        .map((measure) => ({ index, measure })),
    ),
  ).filter((same) => same.length > 0);
  const was = meant.map((same) => [...new Set(same.map(({ measure }) => measure.was))]);
  const twice = meant.find((same, i) => same.length > 1 && (was[i]?.length ?? 0) > 1);
  if (meant.length === 0) return verdict('not read there');
  if (date.day < read.day) return verdict('before the reading');
  if (twice) {
    const readTwice = new Set(twice.flatMap(({ measure }) => measure.stated?.text ?? []));
    return { outcome: 'read twice', was: '', readTwice: [...readTwice] };
  }
  const before = was.flat().filter(Boolean).join(', ');
  if (before === amendedText(amendment.says)) return verdict('changes nothing', before);
  for (const { index, measure } of meant.flat()) {
    const look = inspections[index];
    if (look) inspections[index] = { ...measure.change(look), written: look.written ?? look };
  }
  const [first] = meant.flat();
  const look = first && inspections[first.index];
  return { ...verdict('counts', before), ...(look && { lies: placeOfAmended(amendment.of, look) }) };
}

/** To what an author can write. */
function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b));
}

type Says = Amendment['says'];

function currentWords({ empty, loaded }: Pick<Inspection['currents'][number], 'empty' | 'loaded'>): string {
  return [empty && `${empty.text} empty`, loaded && `${loaded.text} loaded`].filter(Boolean).join(', ');
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
    case 'gap':
      return says.gap.text;
    case 'worn':
      return `${says.from.text} to ${says.to.text}`;
    case 'speed':
      return says.speed.text;
    case 'meter':
      return says.hours.text;
    case 'does not count':
      return 'does not count';
  }
}
