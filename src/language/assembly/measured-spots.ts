// A thickness on a panel that was moved, by chainage, at a declared point is one of that point, as a reading is.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { PanelsMoved } from '../../domain/model/records.js';
import { formatClock } from '../../domain/units/clock.js';

type Measured = PanelsMoved['measured'][number];

/** mm. */
const sameSpot = 1;

/** Without a clock position the only point at that chainage is meant. */
export function atItsPoint(row: Measured, { points }: Conveyor): Measured {
  const { at, clock, point } = row;
  if (!at) return row;
  const there = points.filter((each) => Math.abs(each.at.value - at.value) <= sameSpot);
  const own = clock
    ? there.find((each) => formatClock(each.clock.hours) === formatClock(clock.hours))
    : there.length === 1
      ? there[0]
      : undefined;
  return own ? { ...row, point: { ...point, name: own.name } } : row;
}
