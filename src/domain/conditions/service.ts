// What does work on a day put right? What it says it closes; fresh oil ends oil that was dirty or low and no leak; a new seal ends the
// leak; what was tightened is no longer loose; a new part ends all that was wrong with it at its place. Grease and alignment end
// nothing by themselves: whether the noise is gone, the next look has to say. Nor does a trial: who closes it says so.

import type { History } from '../model/history.js';
import type { ConditionLine, PartName, Service } from '../model/records.js';
import { formatClock } from '../units/clock.js';
import { isSafeguard } from './safeguards.js';
import {
  couldBeOne,
  isSameDrive,
  isSameCondition,
  isOfTemperature,
  isSamePlace,
  partNameOf,
  partOf,
  saysNoPlace,
  whereWords,
} from './kinds.js';

type Work = NonNullable<Service['work']>;

/** At the drive, by what a line says of the part. */
const puts: Readonly<Record<Work, readonly NonNullable<ConditionLine['aspect']>[]>> = {
  'oil changed': ['oil dirty', 'oil low'],
  'oil topped up': ['oil low'],
  'seal renewed': ['oil leak', 'seal leaking'],
  'bearings renewed': ['noise'],
  greased: [],
  aligned: [],
  tightened: [],
  tried: [],
  'found good': [],
  renewed: ['noise', 'oil low', 'oil dirty', 'oil leak', 'seal leaking', 'flooded'],
};

/** Along the trough, by how the kind of the condition ends: `hold-down loose`, `gate leaking`. */
const mends: Readonly<Partial<Record<Work, readonly string[]>>> = {
  tightened: ['loose', 'slack'],
  'seal renewed': ['leaking'],
};

/** Of a conveyor, up to the day of its history. */
export function servicesOf(services: readonly Service[], { conveyor, asOf }: History): readonly Service[] {
  return services.filter((each) => each.conveyor === conveyor && each.date.day <= (asOf ?? Infinity));
}

/** ` at 14.2 m clock 5:00`: the whole place of a piece of work; nothing where none is said. */
export function workPlaceWords(place: Service['place']): string {
  const { clock } = place;
  return `${whereWords(place)}${clock ? ` clock ${formatClock(clock.hours)}` : ''}`;
}

/**
 * `gearbox oil changed`, `spiral at 16.4 m: weld ground out and welded`; what only says what it ends is told by its note, and by
 * nothing where it has none.
 */
export function workWords({ part, place, work, words, ended, note }: Service): string {
  if (ended) return note ?? '';
  const what = [part, work].filter(Boolean).join(' ') + workPlaceWords(place);
  return [what, words].filter(Boolean).join(': ').trim();
}

/** True where the work ends what a line says; of work that says no place, whoever asks has to see that no other stands open (`isWorkSomewhere`). */
export function putsRight(
  { part, place, work, ended }: Pick<Service, 'part' | 'place' | 'work' | 'ended'>,
  line: ConditionLine,
): boolean {
  if (ended) return isSameCondition(ended, line) || (saysNoPlace(ended) && couldBeOne(ended, line));
  if (part === undefined || work === undefined) return false;
  if (partOf(line.kind) === 'drive') {
    if (line.kind !== part || !isSameDrive(place, line)) return false;
    if (work === 'renewed') return true;
    // A bearing that runs hot is over with new bearings; a motor or a gearbox may be hot of something else.
    if (work === 'bearings renewed' && part.endsWith(' bearing') && isOfTemperature(line)) return true;
    return line.aspect !== undefined && puts[work].includes(line.aspect);
  }
  if (partNameOf(line) !== part || !(saysNoPlace(place) || isSamePlace(place, line))) return false;
  return work === 'renewed' || mends[work]?.some((ending) => line.kind.endsWith(` ${ending}`)) === true;
}

/** Nobody says where the part is that was worked on. */
export function isWorkSomewhere({ place, ended }: Pick<Service, 'place' | 'ended'>): boolean {
  return saysNoPlace(ended ?? place);
}

/** What is renewed by records of their own. */
const ownRecords: ReadonlySet<PartName> = new Set(['liner', 'panel', 'spiral', 'flight', 'trough']);

/** Only a gearbox has oil, and no grease; a motor has no seal that is looked at here; a new liner is a reline. */
export function belongsTo({ part, work }: Pick<Service, 'part' | 'work'>): boolean {
  if (part === undefined) return true;
  switch (work) {
    case 'oil changed':
    case 'oil topped up':
      return part === 'gearbox';
    case 'seal renewed':
      return ['gearbox', 'tail bearing', 'thrust bearing', 'gate', 'hatch', 'cover'].includes(part);
    case 'bearings renewed':
      return ['motor', 'gearbox', 'drive', 'tail bearing', 'thrust bearing'].includes(part);
    case 'greased':
      return part !== 'gearbox';
    case 'renewed':
      return !ownRecords.has(part);
    case 'tried':
    case 'found good':
      return isSafeguard(part);
    default:
      return true;
  }
}
