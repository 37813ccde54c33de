// What may be wrong on a conveyor: which part a condition is of, whether it has a place along the trough, and what ends it by
// itself: a reline takes the panel away, a new spiral the bent one.

import { formatClock } from '../units/clock.js';
import { safeguardKinds } from '../model/conveyor.js';
import type { ConditionKind, ConditionLine, PanelUse, SeenPlace } from '../model/records.js';
import { panelsText, runUseText } from '../model/runs.js';
import type { Stated } from '../model/stated.js';
import { formatChainage, formatValue } from '../units/format.js';

export type ConditionPart =
  | 'liner'
  | 'spiral'
  | 'hold-down'
  | 'brace'
  | 'cover'
  | 'hatch'
  | 'gate'
  | 'trough'
  | 'drive'
  | 'product'
  | 'safeguard'
  | 'surroundings'
  | 'other';

const parts: Readonly<Record<ConditionKind, ConditionPart>> = {
  'panel missing': 'liner',
  'panel torn': 'liner',
  'panel cracked': 'liner',
  'panel lifted': 'liner',
  'panel shifted': 'liner',
  'joint open': 'liner',
  'bolts loose': 'liner',
  'bolts missing': 'liner',
  'material behind liner': 'liner',
  'product blocked': 'product',
  'spiral bolts loose': 'spiral',
  'spiral off centre': 'spiral',
  'spiral bent': 'spiral',
  'spiral weld cracked': 'spiral',
  'spiral cracked': 'spiral',
  'hold-down loose': 'hold-down',
  'hold-down missing': 'hold-down',
  'hold-down bent': 'hold-down',
  'hold-down worn': 'hold-down',
  'brace bent': 'brace',
  'brace missing': 'brace',
  'cover missing': 'cover',
  'cover loose': 'cover',
  'cover bent': 'cover',
  'cover stuck': 'cover',
  'cover leaking': 'cover',
  'hatch missing': 'hatch',
  'hatch bent': 'hatch',
  'hatch stuck': 'hatch',
  'hatch leaking': 'hatch',
  'gate stuck': 'gate',
  'gate leaking': 'gate',
  'tail bearing': 'drive',
  'thrust bearing': 'drive',
  gearbox: 'drive',
  motor: 'drive',
  coupling: 'drive',
  'trough cracked': 'trough',
  'trough leaking': 'trough',
  'trough dented': 'trough',
  'guard missing': 'safeguard',
  'guard loose': 'safeguard',
  'guard bent': 'safeguard',
  'emergency stop dead': 'safeguard',
  'pull cord dead': 'safeguard',
  'pull cord broken': 'safeguard',
  'pull cord slack': 'safeguard',
  'interlock dead': 'safeguard',
  'interlock bypassed': 'safeguard',
  'zero-speed sensor dead': 'safeguard',
  'zero-speed sensor bypassed': 'safeguard',
  'level probe dead': 'safeguard',
  'level probe bypassed': 'safeguard',
  'blockage switch dead': 'safeguard',
  'blockage switch bypassed': 'safeguard',
  'cable damaged': 'surroundings',
  'walkway damaged': 'surroundings',
  'sign missing': 'surroundings',
  finding: 'other',
};

/** All that have a word of their own, part by part. */
export const conditionKinds = (Object.keys(parts) as readonly ConditionKind[]).filter(
  (kind) => kind !== 'finding', // the record has every kind, and nothing else
);

/** What is measured of a condition: how far, or how many. */
export function measureOf(kind: ConditionKind): 'length' | 'count' | 'none' {
  switch (kind) {
    case 'bolts loose':
    case 'bolts missing':
    case 'spiral bolts loose':
      return 'count';
    case 'joint open':
    case 'panel lifted':
    case 'panel shifted':
    case 'panel torn':
    case 'panel cracked':
    case 'spiral off centre':
      return 'length';
    default:
      return 'none';
  }
}

/** A gap without its width and bolts without their number cannot be followed. */
export function needsMeasure(kind: ConditionKind): boolean {
  return kind === 'joint open' || measureOf(kind) === 'count';
}

/** What may be wrong with a part of the drive; only a gearbox has oil that is looked at, only a bearing a seal against product. */
export function aspectsOf(kind: ConditionKind): readonly NonNullable<ConditionLine['aspect']>[] {
  if (parts[kind] !== 'drive') return [];
  if (kind === 'gearbox') return ['noise', 'oil low', 'oil dirty', 'oil leak', 'flooded'];
  if (kind === 'coupling') return ['noise'];
  return kind === 'motor' ? ['noise', 'flooded'] : ['noise', 'seal leaking', 'flooded'];
}

export function partOf(kind: ConditionKind): ConditionPart {
  return parts[kind];
}

/** With what it goes when that is renewed: a finding with the part that it names, what was noted of a panel with the panel. */
export function takenWith({ kind, about }: Pick<ConditionLine, 'kind' | 'about'>): ConditionPart {
  if (kind !== 'finding') return partOf(kind);
  switch (about) {
    case 'liner':
    case 'panel':
    case 'bolts':
      return 'liner';
    case 'spiral':
    case 'flight':
      return 'spiral';
    default:
      return partOf(kind);
  }
}

/** The part as a line names it: `bolts` of `bolts loose`, `pull cord` of `pull cord slack`; all of `tail bearing`. */
export function partNamedIn(kind: ConditionKind): string {
  if (parts[kind] === 'drive') return kind;
  return safeguardKinds.find((each) => kind.startsWith(`${each} `)) ?? /^[^ ]+/.exec(kind)?.[0] ?? kind;
}

/** The part that a line is of, as work names it; of a finding the one that it names, where it names one. */
export function partNameOf({ kind, about }: Pick<ConditionLine, 'kind' | 'about'>): string | undefined {
  return kind === 'finding' ? about : partNamedIn(kind);
}

/** Bearings, gearbox and motor are where they are, a pull cord is as long as the machine; all else is somewhere along the trough. */
export function needsPlace(kind: ConditionKind): boolean {
  return parts[kind] !== 'drive' && kind !== 'finding' && partNamedIn(kind) !== 'pull cord';
}

/** Of the part being hot, whether or not anybody says how hot. */
export function isOfTemperature({ temperature, hot }: Pick<ConditionLine, 'temperature' | 'hot'>): boolean {
  return temperature !== undefined || hot === true;
}

/** Of a part of the drive, with nothing that is wrong with it: an answer speaks of whatever stands open there. */
function saysNothingWrong(line: ConditionLine): boolean {
  return parts[line.kind] === 'drive' && line.aspect === undefined && !isOfTemperature(line);
}

/** A temperature without a severity is a measurement: nothing to be closed. */
export function isMeasurement({ temperature, severity, answer }: ConditionLine): boolean {
  return temperature !== undefined && severity === undefined && answer === undefined;
}

/** Two lines within this of each other are of one condition, mm (judgement: a torch held by hand, half a short panel). */
export const samePlace = 300;

/** `panel torn at 14.2 m`, `2 bolts missing at 7.2 m`, `gearbox oil leak`: what and where, without severity. */
export function conditionWords(line: ConditionLine): string {
  const { kind, count, size, aspect, temperature, movedFrom } = line;
  if (kind === 'finding')
    return [`${line.about ?? 'finding'}${whereWords(line)}`, line.words].filter(Boolean).join(': ');
  const what =
    count === undefined
      ? [kind, size?.text ?? ''].filter(Boolean).join(' ')
      : count.count === 1
        ? `1 ${kind.replace('bolts', 'bolt')}`
        : `${count.count} ${kind}`;
  const more = aspect ?? (temperature ? `at ${asHot(temperature)}` : line.hot && 'temperature');
  const before = movedFrom ? ` (seen as ${movedFrom.words}; its panel was moved on ${movedFrom.day})` : '';
  return `${what}${more === undefined ? '' : ` ${more}`}${whereWords(line)}${before}`;
}

/** ` at 14.2 m`, ` at panel 2 of run 1`, ` from 18 m to 19.5 m`; nothing where no place is said. */
export function whereWords(place: SeenPlace): string {
  const { point, panel, end, at, to, side } = place;
  const named = point ?? end;
  const where = named
    ? ` at ${named.name}`
    : panel
      ? ` at ${panelWords(panel)}`
      : at && to
        ? ` from ${along(at)} to ${along(to)}`
        : at
          ? ` at ${along(at)}`
          : '';
  return `${where}${side === undefined ? '' : ` ${side}`}`;
}

/** What is said of a place beyond its chainage, in the direction of flow: `to 4 m, 5:00, left side`; nothing where that is all. */
export function spotWords({ to, clock, side }: SeenPlace): string {
  return [to && `to ${to.text}`, clock && formatClock(clock.hours), side].filter(Boolean).join(', ');
}

/** `panel 2 of run 1`, as the run was named. */
export function panelWords({ first, run }: PanelUse): string {
  return panelsText(first.count, first.count, runUseText(run));
}

/** mm; of a stretch or a panel its middle, which no neighbour shares; undefined where no place is said. */
export function middleOf({ at, to }: SeenPlace): number | undefined {
  return at && (at.value + (to ?? at).value) / 2;
}

/**
 * Whether two places are one: near each other, or overlapping; two that nobody said are. Panels side by side are two, and so are
 * stretches of which one ends about where the other begins; safeguards of two names are two however near they lie.
 */
export function isSamePlace(a: SeenPlace, b: SeenPlace): boolean {
  if (areOnOtherSides(a, b) || areOtherSafeguards(a, b)) return false;
  // An isolation that is told by its name alone has no chainage.
  if (a.at === undefined || b.at === undefined) return a.at === b.at && a.point?.name === b.point?.name;
  const [low, high] = [
    Math.max(a.at.value, b.at.value),
    Math.min((a.to ?? a.at).value, (b.to ?? b.at).value),
  ];
  if (a.panel && b.panel) return high - low > samePlace;
  if (a.to === undefined || b.to === undefined) return low - high <= samePlace;
  const [middle, other] = [(a.at.value + a.to.value) / 2, (b.at.value + b.to.value) / 2];
  const shorter = Math.min(a.to.value - a.at.value, b.to.value - b.at.value);
  return Math.abs(middle - other) <= samePlace || high - low > Math.min(samePlace, shorter / 2);
}

/** Nobody says where along the trough. */
export function saysNoPlace({ at, point, panel, end }: SeenPlace): boolean {
  return [at, point, panel, end].every((each) => each === undefined);
}

/** Of one kind and part along the trough, wherever each lies; sides that both say are one. */
export function couldBeOne(a: ConditionLine, b: ConditionLine): boolean {
  if (parts[a.kind] === 'drive') {
    const answers = [a, b].filter(({ answer }) => answer !== undefined);
    if (a.kind !== b.kind || !(saysTheSame(a, b) || answers.some(saysNothingWrong))) return false;
    // `closed motor temperature` is of the only one that stands open, at whichever end.
    return answers.some((each) => isSameDrive(a, b) || saysNoPlace(each));
  }
  return a.kind === b.kind && a.about === b.about && !areOnOtherSides(a, b);
}

/** Of two that one answer could speak of: one thing at one place. */
export function areOneThing(a: ConditionLine, b: ConditionLine): boolean {
  return isSamePlace(a, b) && (parts[a.kind] !== 'drive' || isSameCondition(a, b));
}

function areOnOtherSides(a: SeenPlace, b: SeenPlace): boolean {
  return a.side !== undefined && b.side !== undefined && a.side !== b.side;
}

/** Of one kind, and by their names no one of them is meant by both. */
function areOtherSafeguards({ safeguard: a }: SeenPlace, { safeguard: b }: SeenPlace): boolean {
  return a !== undefined && b?.kind === a.kind && !a.names.some((each) => b.names.includes(each));
}

/** A chainage in metres to the centimetre, or as it was written where that is in feet or inches. */
function along({ value, text }: Stated<'length'>): string {
  return /(ft|foot|feet|in|inch|inches)$/.test(text) ? text : formatChainage(value);
}

function asHot({ value, text }: Stated<'temperature'>): string {
  return /F$/.test(text) ? text : formatValue(value, 'temperature');
}

/** As the language writes it, for the next look to answer: `bolts loose 3 at 8.4 m`; how much as last seen, where as first. */
export function conditionAnswerText(first: ConditionLine, last: ConditionLine = first): string {
  const { kind, aspect, about } = first;
  const { count, size, temperature, severity, words } = last;
  if (kind === 'finding')
    return [kind, `${about ?? ''}${placeAsWritten(first)}`.trim(), severity, `"${words ?? ''}"`]
      .filter(Boolean)
      .join(' ');
  return [
    kind,
    count === undefined ? size?.text : String(count.count),
    aspect ?? (temperature ? `temperature ${temperature.text}` : last.hot && 'temperature'),
    placeAsWritten(first).trim(),
  ]
    .filter(Boolean)
    .join(' ');
}

/** As the language writes it that it is over; what became of it stands behind. */
export function closingText(first: ConditionLine, last: ConditionLine = first): string {
  if (first.kind !== 'finding') return `closed ${conditionAnswerText(first, last)}`;
  return `closed finding ${first.about ?? ''}${placeAsWritten(first)}`.replace(/ +/g, ' ').trim();
}

/** The same to be filled in: nobody has measured it anew yet. `joint open ____ mm at 17 m`, `motor temperature ____ degC`. */
export function conditionAskText(first: ConditionLine, last: ConditionLine): string {
  const { count, size, temperature } = last;
  const blank = <T extends { readonly text: string }>(stated: T): T => ({
    ...stated,
    text: stated.text.replace(/^[-+\d.,/ ]+/, '____ '),
  });
  const asked = conditionAnswerText(first, {
    ...last,
    ...(size && { size: blank(size) }),
    ...(temperature && { temperature: blank(temperature) }),
  });
  return count === undefined ? asked : asked.replace(`${first.kind} ${count.count}`, `${first.kind} ____`);
}

function placeAsWritten({ at, to, ...place }: SeenPlace): string {
  if (place.point || place.panel || place.end || !at) return whereWords(place);
  const where = to ? ` from ${at.text} to ${to.text}` : ` at ${at.text}`;
  return `${where}${whereWords(place)}`;
}

/** Two lines of one condition: of one kind, at one place. */
export function isSameCondition(a: ConditionLine, b: ConditionLine): boolean {
  if (a.kind !== b.kind) return false;
  if (parts[a.kind] === 'drive') return saysTheSame(a, b) && isSameDrive(a, b);
  return a.about === b.about && (isSamePlace(a, b) || isWhereItIs(a, b));
}

/** Of a part of the drive, the same is wrong. */
function saysTheSame(a: ConditionLine, b: ConditionLine): boolean {
  return a.aspect === b.aspect && isOfTemperature(a) === isOfTemperature(b);
}

const driven: ReadonlySet<string | undefined> = new Set([
  'drive',
  'drive plate',
  'motor',
  'gearbox',
  'thrust bearing',
  'coupling',
]);

/** A part that is where the machine is driven, and twice where it is driven at both ends. */
export function isDriven(part: string | undefined): boolean {
  return driven.has(part);
}

/** Where a machine is driven at both ends, what says no end is of the drive that is declared. */
export function isSameDrive(a: SeenPlace, b: SeenPlace): boolean {
  return a.otherDrive === b.otherDrive;
}

/** `motor at drive` and `motor` are one: each part of a drive is where it is, whether or not somebody says so. */
function isWhereItIs(a: ConditionLine, b: ConditionLine): boolean {
  if ((!saysNoPlace(a) && !saysNoPlace(b)) || !isSameDrive(a, b)) return false;
  switch (a.about) {
    case 'motor':
    case 'gearbox':
    case 'coupling':
    case 'tail bearing':
    case 'thrust bearing':
      return true;
    case 'drive':
    case 'drive plate':
      return [a, b].some(({ end }) => end !== undefined);
    default:
      return false;
  }
}
