// Is what keeps people from a turning screw, or stops it for them, out of order? A missing guard and a stop, a pull cord or an
// interlock that does nothing are, however the line rates them; anything else about one of them is where somebody rates it serious.
// "Safeguard" is a guard or a protective device, as ISO 12100 has it.

import { safeguardKinds } from '../model/conveyor.js';
import type { ConditionLine, ConditionSeverity, PartName } from '../model/records.js';
import { partOf } from './kinds.js';

const safeguards: ReadonlySet<string> = new Set(safeguardKinds);
const surroundings: ReadonlySet<PartName> = new Set(['cable', 'walkway', 'sign']);

type Told = Pick<ConditionLine, 'kind' | 'about'>;

/** Of a part by its name. */
export function isSafeguard(part: string): boolean {
  return safeguards.has(part);
}

function isOfSafeguard({ kind, about }: Told): boolean {
  return partOf(kind) === 'safeguard' || (about !== undefined && safeguards.has(about));
}

/** Beside the trough: which panel lies at its chainage says nothing of it. */
export function isBesideTrough(line: Told): boolean {
  const { kind, about } = line;
  return (
    isOfSafeguard(line) || partOf(kind) === 'surroundings' || (about !== undefined && surroundings.has(about))
  );
}

/** `severity`: as last stated. */
export function isSafeguardOut(line: Told, severity: ConditionSeverity | undefined): boolean {
  if (!isOfSafeguard(line)) return false;
  return /(missing|dead|broken|bypassed)$/.test(line.kind) || severity === 'serious' || severity === 'urgent';
}

/** How people write of one; what is no safeguard but has one, `the motor of the interlock`, is theirs to say. */
const called: readonly (readonly [PartName, RegExp])[] = [
  ['pull cord', /\b(pull|trip)[- ]?(cord|wire|rope)\b|\bemergency (rope|cord|wire)\b/i],
  ['emergency stop', /\bemergency[- ](stop|button)\b|\be-?stop\b/i],
  ['zero-speed sensor', /\b(zero[- ]speed|rotation (sensor|monitor)|speed (sensor|switch|monitor))\b/i],
  ['interlock', /\binterlock\b/i],
  ['level probe', /\blevel (probe|switch|sensor)\b/i],
  ['blockage switch', /\b(blockage|plugged chute|blocked chute) (switch|sensor)\b/i],
  ['guard', /\bguard\b/i],
];

/** The safeguard that a finding of something else speaks of in its own words. */
export function safeguardSpokenOf(line: ConditionLine): PartName | undefined {
  if (line.kind !== 'finding' || isBesideTrough(line)) return undefined;
  return called.find(([, words]) => words.test(line.words ?? ''))?.[0];
}
