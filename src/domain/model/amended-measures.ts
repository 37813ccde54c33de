// Which measures of a look does an amendment speak of, what did they say, and what is the look with what it says instead? Each measure
// that fits is a candidate: where two of one kind fit and say different things, whoever applies the amendment has to ask.

import { chainageInLook, hoursInLook } from './as-in-look.js';
import { bottom, mirrorClock } from '../units/clock.js';
import { meterWords } from './meter-read.js';
import type { Amendment, Inspection } from './records.js';
import type { Stated, StatedClock } from './stated.js';

export interface MeantMeasure {
  /** As it counts now. */
  readonly was: string;
  /** What its line says, as `written as` names it; undefined where it is no quantity. */
  readonly stated: Stated | undefined;
  change(look: Inspection): Inspection;
}

type Of = Amendment['of'];
type Says = Amendment['says'];
type Spot = Extract<Of, { readonly at: unknown }>;

/** By what they measure: a depth and an outside diameter of one flight are two. */
export function measuresMeant(
  look: Inspection,
  { of, says }: Amendment,
): readonly (readonly MeantMeasure[])[] {
  switch (of.kind) {
    case 'plate':
      return [
        among(
          'plates',
          look,
          of,
          (each) => each.thickness,
          (each) => (says.kind === 'thickness' ? { ...each, ...measured(says) } : undefined),
        ),
      ];
    case 'flight':
      return flightMeant(look, of, says);
    case 'hold-down':
      return [
        among(
          'holdDownGaps',
          look,
          of,
          (each) => each.gap,
          (each) => (says.kind === 'gap' ? { ...each, gap: says.gap } : undefined),
        ),
      ];
    case 'worn':
      return [stripMeant(look, of, says)];
    case 'current':
      return currentMeant(look, of, says);
    case 'speed':
      return [
        look.speeds.map((old) => ({
          was: old.speed.text,
          stated: old.speed,
          change: ({ speeds, ...rest }) => ({
            ...rest,
            speeds: replaced(speeds, old, says.kind === 'speed' ? { ...old, speed: says.speed } : undefined),
          }),
        })),
      ];
    case 'meter':
      return says.kind === 'meter' ? [[meterMeant(look, says.hours)]] : [];
    case 'condition':
      return [conditionMeant(look, of)];
  }
}

/** mm: the place of a measure as an author writes it again. */
export const sameSpot = 0.5;

/** Place and clock position stand as in the look; a plate without one was read at the bottom. */
function isThere(
  { at, clock }: { readonly at: Stated<'length'>; readonly clock?: StatedClock },
  of: Spot,
  look: Inspection,
): boolean {
  const meant = of.byName === true ? of.at.value : chainageInLook(of.at.value, look);
  if (Math.abs(at.value - meant) > sameSpot) return false;
  if (!of.clock) return true;
  const hours = hoursInLook(of.clock, look);
  return Math.round((clock?.hours ?? bottom) * 60) === Math.round(hours * 60);
}

type PlacedList = 'plates' | 'flights' | 'flightDiameters' | 'holdDownGaps';

/** Those of one list that lie there. `now`: what it says instead; undefined: nothing. */
function among<K extends PlacedList>(
  list: K,
  look: Inspection,
  of: Spot,
  read: (each: Inspection[K][number]) => Stated<'length'>,
  now: (each: Inspection[K][number]) => Inspection[K][number] | undefined,
): readonly MeantMeasure[] {
  const all: readonly Inspection[K][number][] = look[list];
  return all
    .filter((each) => isThere(each, of, look))
    .map((old) => ({
      was: read(old).text,
      stated: read(old),
      change: (before) => ({
        ...before,
        [list]: replaced<Inspection[K][number]>(before[list], old, now(old)),
      }),
    }));
}

function measured({ thickness, error }: Extract<Says, { readonly kind: 'thickness' }>) {
  return { thickness, ...(error && { error }) };
}

function flightMeant(look: Inspection, of: Spot, says: Says): readonly (readonly MeantMeasure[])[] {
  const gone = says.kind === 'does not count';
  const depths = among(
    'flights',
    look,
    of,
    (each) => each.depth,
    (each) => (says.kind === 'depth' ? { ...each, depth: says.depth } : undefined),
  );
  const across = among(
    'flightDiameters',
    look,
    of,
    (each) => each.diameter,
    (each) => (says.kind === 'diameter' ? { ...each, diameter: says.diameter } : undefined),
  );
  return [gone || says.kind === 'depth' ? depths : [], gone || says.kind === 'diameter' ? across : []];
}

/** The ends of a strip seen against the flow change places. */
function stripMeant(look: Inspection, of: Spot, says: Says): readonly MeantMeasure[] {
  const mirrored = look.view.direction === 'upstream';
  const turned = (clock: StatedClock): StatedClock => ({
    ...clock,
    hours: mirrored ? mirrorClock(clock.hours) : clock.hours,
  });
  return look.wornWidths
    .filter((each) => isThere({ at: each.at }, of, look))
    .map((old) => {
      const [from, to] = says.kind === 'worn' ? (mirrored ? [says.to, says.from] : [says.from, says.to]) : [];
      const fresh = from && to ? { ...old, from: turned(from), to: turned(to) } : undefined;
      return {
        was: `${old.from.text} to ${old.to.text}`,
        stated: undefined,
        change: (before) => ({ ...before, wornWidths: replaced(before.wornWidths, old, fresh) }),
      };
    });
}

type Load = 'empty' | 'loaded';

/** Running empty and running loaded are two measures, on one line or on two. */
function currentMeant(
  look: Inspection,
  of: Extract<Of, { kind: 'current' }>,
  says: Says,
): readonly (readonly MeantMeasure[])[] {
  const said = says.kind === 'current' ? says : undefined;
  const loads = (['empty', 'loaded'] as const).filter((load) =>
    said ? said[load] : (of.which ?? load) === load,
  );
  return loads.map((load) => {
    const read = look.currents.flatMap((each) => {
      const was = each[load];
      return was ? [{ each, was }] : [];
    });
    const [line] = look.currents;
    const fresh = said?.[load];
    if (read.length === 0 && line && fresh)
      return [{ was: '', stated: undefined, change: withLoad(line.origin, load, fresh) }];
    return read.map(({ each, was }) => ({
      was: `${was.text} ${load}`,
      stated: was,
      change: withLoad(each.origin, load, fresh),
    }));
  });
}

/** A line that says nothing any more is gone. */
function withLoad(
  line: Inspection['origin'],
  load: Load,
  fresh: Stated<'current'> | undefined,
): MeantMeasure['change'] {
  return (look) => ({
    ...look,
    currents: look.currents.flatMap((each) => {
      if (each.origin !== line) return [each];
      const { empty, loaded, ...rest } = each;
      const left = load === 'empty' ? { empty: fresh, loaded } : { empty, loaded: fresh };
      if (!left.empty && !left.loaded) return [];
      return [
        { ...rest, ...(left.empty && { empty: left.empty }), ...(left.loaded && { loaded: left.loaded }) },
      ];
    }),
  });
}

function meterMeant({ meter }: Inspection, hours: Stated<'duration'>): MeantMeasure {
  return {
    was: meterWords(meter),
    stated: meter.hours,
    change: (look) => ({ ...look, meter: { ...look.meter, hours } }),
  };
}

function conditionMeant(
  look: Inspection,
  { gone }: Extract<Of, { kind: 'condition' }>,
): readonly MeantMeasure[] {
  if (!look.conditions.some((each) => gone.includes(each))) return [];
  return [
    {
      was: 'there',
      stated: undefined,
      change: (before) => ({
        ...before,
        conditions: before.conditions.filter((each) => !gone.includes(each)),
      }),
    },
  ];
}

function replaced<T>(all: readonly T[], old: T, fresh: T | undefined): readonly T[] {
  return all.flatMap((each) => (each === old ? (fresh ? [fresh] : []) : [each]));
}
