// When was a safeguard last tried, by whom, and did it do what it is there for? A trial whose own words say that it failed is none. It
// never puts anything right by itself: what was dead stays open until somebody closes it, and whether a machine may run is for people.

import type { Conveyor, Safeguard } from '../model/conveyor.js';
import type { PartName, SeenPlace, Service } from '../model/records.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import { workWords } from './service.js';
import { isSamePlace, partNameOf, samePlace, saysNoPlace } from './kinds.js';
import { safeguardKey } from './safeguards-named.js';

type Side = 'left side' | 'right side';

/** Of a cord on both sides each is tried by itself; nothing else has sides. */
const sides: readonly (Side | undefined)[] = ['left side', 'right side'];

const failing = new RegExp(
  [
    /\b(?:did|does|do|would|could|will|has|is|was|were) ?(?:not|n[’']?t)\b|n[’']t\b|\bnot (?:stop|trip|work|found|there)/,
    /\bfail|\bdead\b|\bbroken\b|\bbridged\b|\bbypassed\b|\bnothing happen|\bno effect\b|\bwithout effect\b/,
  ]
    .map(({ source }) => source)
    .join('|'),
  'i',
);

/** What was done is a trial or a look at a safeguard, whatever its words say. */
export function isTrial({ work }: Pick<Service, 'work'>): boolean {
  return work === 'tried' || work === 'found good';
}

/** `tried "ran on for 20 s, did not stop"`: the words take back what the line says. */
export function speaksOfFailing({ note }: Pick<Service, 'note'>): boolean {
  return note !== undefined && failing.test(note);
}

/** It says of a safeguard that it did what it is there for. */
export function wasGood(service: Service): boolean {
  return isTrial(service) && !speaksOfFailing(service);
}

/** A trial that was good is of the safeguard that a condition is of: at its place, or said of no place. */
export function isTrialOf(
  { part, place }: Service,
  line: SeenPlace & Parameters<typeof partNameOf>[0],
): boolean {
  if (part !== partNameOf(line)) return false;
  return saysNoPlace(place) || saysNoPlace(line) || isSamePlace(place, line);
}

/** A guard is looked at; what has to act is tried. */
function proves({ kind }: Safeguard, { work }: Service): boolean {
  return work === 'tried' || (kind === 'guard' && work === 'found good');
}

/** Those of one declared safeguard, the newest first; what says no place is of the only one of its kind, or of the whole cord. */
export function trialsOfSafeguard(
  conveyor: Conveyor,
  safeguard: Safeguard,
  services: readonly Service[],
): readonly Service[] {
  const isOnly = conveyor.safeguards.filter(({ kind }) => kind === safeguard.kind).length === 1;
  return services
    .filter(
      (each) =>
        each.conveyor === conveyor &&
        wasGood(each) &&
        each.part === (safeguard.kind satisfies PartName) &&
        isThere(each, safeguard, isOnly),
    )
    .sort((a, b) => b.date.day - a.date.day);
}

function isThere({ place, part }: Service, safeguard: Safeguard, isOnly: boolean): boolean {
  const { at, to } = safeguard;
  if (place.safeguard) return place.safeguard.names.includes(safeguardKey(safeguard));
  if (place.at === undefined) return isOnly || part === 'pull cord';
  if (at === undefined) return true;
  return (
    at.value <= (place.to ?? place.at).value + samePlace && (to ?? at).value >= place.at.value - samePlace
  );
}

/** The day on which all of it had been tried: of a cord on both sides the side that was tried longer ago. */
export function lastTried(safeguard: Safeguard, trials: readonly Service[]): CalendarDay | undefined {
  const tried = trials.filter((each) => proves(safeguard, each));
  const days = (safeguard.side === 'both sides' ? sides : [undefined]).map(
    (side) => tried.find(({ place }) => isOnSide(place, side))?.date.day,
  );
  return days.reduce((oldest, day) =>
    oldest !== undefined && day !== undefined && day < oldest ? day : oldest && day,
  );
}

function isOnSide({ side }: SeenPlace, asked: Side | undefined): boolean {
  return asked === undefined || side === undefined || side === 'both sides' || side === asked;
}

/** `tried 2026-03-09 by electrician: pressed under load; found good 2026-08-17`; that nothing is on record where nothing is. */
export function trialWords(safeguard: Safeguard, trials: readonly Service[]): string {
  const told = sides
    .flatMap((side) =>
      [true, false].flatMap(
        (proven) =>
          trials.find((each) => proves(safeguard, each) === proven && isOnSide(each.place, side)) ?? [],
      ),
    )
    .filter((each, at, all) => all.indexOf(each) === at);
  return told.length === 0 ? 'no trial on record' : told.map(toldWords).join('; ');
}

/** `emergency stop tried at tail by electrician: stops at once`. */
export function trialText(service: Service): string {
  const { by, note } = service;
  return `${workWords(service)}${by === undefined ? '' : ` by ${by}`}${note === undefined ? '' : `: ${note}`}`;
}

/** `tried left side 2026-03-09 by electrician: pressed under load`. */
function toldWords({ work, by, note, place, date }: Service): string {
  const who = by === undefined ? '' : ` by ${by}`;
  const side = place.side === undefined ? '' : ` ${place.side}`;
  return `${work ?? ''}${side} ${formatDay(date.day)}${who}${note === undefined ? '' : `: ${note}`}`;
}
