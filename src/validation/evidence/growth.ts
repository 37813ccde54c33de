// Where a later reading says that the liner got thicker. Wear only goes one way, so one of the two is of another liner, of
// another spot, or misread. A thickness bounds what is left from both sides, a colour by the ends of its layer; a later lower
// bound may not pass an earlier upper bound by more than three standard deviations of the two. Where it passes it by two only, what
// the spot should have lost in between counts too: thicker by two and above what was to be expected by four is as unlikely. In one
// look two readings of one spot are two tellings of one thickness, so there nothing was lost.

import type { Estate } from '../../domain/model/estate.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import type { Place } from '../../domain/model/records.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { expectedLoss } from './expected-loss.js';
import { errorOf } from '../../domain/model/reading-error.js';
import { leftByLayers, type LeftByLayers } from './left-by-layers.js';
import { eachCounted } from './seen-sets.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export interface Growth {
  /** What is compared: two thicknesses, two indicators (colours or bare steel), or one of each. */
  readonly kinds: 'thickness' | 'colour' | 'mixed';
  readonly row: number;
  readonly before: number;
  readonly place: Place;
  readonly liner: LinerSpecification;
  readonly sameInspection: boolean;
}

const known = new WeakMap<Estate, readonly Growth[]>();

/** Worked out once an estate; at most one for each row, against the latest reading that it contradicts. */
export function growthsOf(estate: Estate): readonly Growth[] {
  const found = known.get(estate) ?? workOut(estate);
  known.set(estate, found);
  return found;
}

const grown = new WeakMap<Estate, ReadonlySet<number>>();

/** Rows that read thicker than one before them: told by rules of their own, and no start of a short-term rate. */
export function grownRows(estate: Estate): ReadonlySet<number> {
  const found = grown.get(estate) ?? new Set(growthsOf(estate).map(({ row }) => row));
  grown.set(estate, found);
  return found;
}

function workOut(estate: Estate): readonly Growth[] {
  const { readings, places } = estate;
  const { kind, value, inspection } = readings;
  const growths: Growth[] = [];
  // Of each place, on the liner that lies there: the rows of its latest thickness and its latest indicator, −1 for none.
  const thickness = new Int32Array(places.length).fill(-1);
  const indicator = new Int32Array(places.length).fill(-1);
  const lying: LinerSet[] = [];
  const tables = new Map<LinerSpecification, LeftByLayers>();
  const tell = (
    kinds: Growth['kinds'],
    row: number,
    before: number,
    index: number,
    { liner }: LinerSet,
  ): void => {
    const place = places[index];
    if (place)
      growths.push({
        kinds,
        row,
        before,
        place,
        liner,
        sameInspection: inspection[before] === inspection[row],
      });
  };

  eachCounted(estate, (row, index, set) => {
    if (lying[index] !== set) {
      lying[index] = set;
      thickness[index] = -1;
      indicator[index] = -1;
    }
    const lastThickness = thickness[index] ?? -1;
    const lastIndicator = indicator[index] ?? -1;
    const now = value[row] ?? 0;
    if (kind[row] === ReadingKind.thickness) {
      // A spot read twice in one inspection has a rule of its own.
      if (
        lastThickness >= 0 &&
        inspection[lastThickness] !== inspection[row] &&
        now > (value[lastThickness] ?? 0) &&
        (grew(now, errorOf(estate, row), value[lastThickness] ?? 0, errorOf(estate, lastThickness)) ||
          shouldHaveLost(estate, index, lastThickness, row, between(estate, lastThickness, row)))
      ) {
        tell('thickness', row, lastThickness, index, set);
      } else if (lastIndicator >= 0) {
        const table = tableOf(set);
        const depth = depthOf(estate, lastIndicator, set.liner);
        const together = inspection[lastIndicator] === inspection[row];
        const error = errorOf(estate, row);
        if (
          contradicts(table, depth, now, error, 'later', together) ||
          (!together &&
            shouldHaveLost(estate, index, lastIndicator, row, {
              more: now - (table.most[depth] ?? 0),
              error: Math.hypot(error, table.mostError[depth] ?? 0),
            }))
        )
          tell('mixed', row, lastIndicator, index, set);
      }
      thickness[index] = row;
      return;
    }
    const depth = depthOf(estate, row, set.liner);
    if (
      lastIndicator >= 0 &&
      inspection[lastIndicator] !== inspection[row] &&
      depth < depthOf(estate, lastIndicator, set.liner)
    ) {
      // Where one colour ends the next begins, whatever the depth is exactly: their order in the liner is enough.
      tell('colour', row, lastIndicator, index, set);
    } else if (lastThickness >= 0) {
      const table = tableOf(set);
      const together = inspection[lastThickness] === inspection[row];
      const [was, error] = [value[lastThickness] ?? 0, errorOf(estate, lastThickness)];
      if (
        contradicts(table, depth, was, error, 'earlier', together) ||
        (!together &&
          shouldHaveLost(estate, index, lastThickness, row, {
            more: (table.least[depth] ?? 0) - was,
            error: Math.hypot(error, table.leastError[depth] ?? 0),
          }))
      )
        tell('mixed', row, lastThickness, index, set);
    }
    indicator[index] = row;
  });
  return growths;

  function tableOf({ liner }: LinerSet): LeftByLayers {
    let table = tables.get(liner);
    if (!table) tables.set(liner, (table = leftByLayers(liner)));
    return table;
  }
}

/** Layer showing, counted from the screw; bare steel comes after the last. */
function depthOf({ readings }: Estate, row: number, liner: LinerSpecification): number {
  return readings.kind[row] === ReadingKind.trough ? liner.layers.length : (readings.value[row] ?? 0);
}

/** A thickness against an indicator that came before it (`later`) or after it (`earlier`); in one inspection neither came first. */
function contradicts(
  table: LeftByLayers,
  depth: number,
  thickness: number,
  error: number,
  when: 'later' | 'earlier',
  together: boolean,
): boolean {
  if (
    (when === 'later' || together) &&
    grew(thickness, error, table.most[depth] ?? 0, table.mostError[depth] ?? 0)
  )
    return true;
  return (
    (when === 'earlier' || together) &&
    grew(table.least[depth] ?? 0, table.leastError[depth] ?? 0, thickness, error)
  );
}

/** Two thicknesses, as `shouldHaveLost` compares them. */
function between(estate: Estate, before: number, row: number): Surplus {
  const { value } = estate.readings;
  return {
    more: (value[row] ?? NaN) - (value[before] ?? NaN),
    error: Math.hypot(errorOf(estate, row), errorOf(estate, before)),
  };
}

interface Surplus {
  /** What the later reading has more than the earlier one at the most, mm. */
  readonly more: number;
  /** Of both, one standard deviation. */
  readonly error: number;
}

/** Thicker by two standard deviations of both readings, and by four above the least that the spot should have lost. */
function shouldHaveLost(
  estate: Estate,
  index: number,
  before: number,
  row: number,
  { more, error }: Surplus,
): boolean {
  const place = estate.places[index];
  if (!place || !(more > 2 * error)) return false;
  const loss = expectedLoss(estate, place, before, row);
  return loss !== undefined && more + loss.least > 4 * error;
}

function grew(now: number, nowError: number, before: number, beforeError: number): boolean {
  const more = now - before;
  return more > 0 && more > 3 * Math.sqrt(nowError * nowError + beforeError * beforeError) + 1e-9;
}
