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
import { leftByLayers, nothingLeft, type Left, type LeftWhileShowing } from './left-by-layers.js';
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
  const tables = new Map<LinerSpecification, readonly LeftWhileShowing[]>();
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
    if (kind[row] === ReadingKind.thickness) {
      // A spot read twice in one inspection has a rule of its own.
      const byTwoLooks = lastThickness >= 0 && inspection[lastThickness] !== inspection[row];
      if (byTwoLooks && isMore(index, lastThickness, row, over(read(row), read(lastThickness)))) {
        tell('thickness', row, lastThickness, index, set);
      } else if (lastIndicator >= 0 && contradicts(lastIndicator, row, index, set)) {
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
    } else if (lastThickness >= 0 && contradicts(lastThickness, row, index, set)) {
      tell('mixed', row, lastThickness, index, set);
    }
    indicator[index] = row;
  });
  return growths;

  /** A thickness against an indicator, in the order of their rows; in one look neither came first. */
  function contradicts(before: number, row: number, index: number, set: LinerSet): boolean {
    const isLater = kind[row] === ReadingKind.thickness;
    const [gauged, shown] = isLater ? [row, before] : [before, row];
    const { most, least } = tableOf(set)[depthOf(estate, shown, set.liner)] ?? nothingLeft;
    const [above, below] = [over(read(gauged), most), over(least, read(gauged))];
    return inspection[before] === inspection[row]
      ? grew(above) || grew(below)
      : isMore(index, before, row, isLater ? above : below);
  }

  function isMore(index: number, before: number, row: number, surplus: Surplus): boolean {
    return grew(surplus) || shouldHaveLost(estate, index, before, row, surplus);
  }

  function read(row: number): Left {
    return { left: value[row] ?? 0, error: errorOf(estate, row) };
  }

  function tableOf({ liner }: LinerSet): readonly LeftWhileShowing[] {
    let table = tables.get(liner);
    if (!table) tables.set(liner, (table = leftByLayers(liner)));
    return table;
  }
}

/** Layer showing, counted from the screw; bare steel comes after the last. */
function depthOf({ readings }: Estate, row: number, liner: LinerSpecification): number {
  return readings.kind[row] === ReadingKind.trough ? liner.layers.length : (readings.value[row] ?? 0);
}

interface Surplus {
  /** What the later reading has more than the earlier one, mm; below 0 where it has less. */
  readonly more: number;
  /** Of both, one standard deviation. */
  readonly error: number;
}

function over(later: Left, earlier: Left): Surplus {
  return { more: later.left - earlier.left, error: Math.hypot(later.error, earlier.error) };
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

function grew({ more, error }: Surplus): boolean {
  return more > 0 && more > 3 * error + 1e-9;
}
