// A thickness on a panel that was moved, by chainage, at a declared point is one of that point, as a reading is.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { PanelsMoved } from '../../domain/model/records.js';
import { formatClock } from '../../domain/units/clock.js';

type Measured = PanelsMoved['measured'][number];

/** mm. */
const sameSpot = 1;

export function atItsPoint(row: Measured, { points }: Conveyor): Measured {
  const { at, point } = row;
  if (!at) return row;
  const there = points.filter((each) => Math.abs(each.at.value - at.value) <= sameSpot);
  const own = there.find(({ clock }) => point.name.endsWith(` ${formatClock(clock.hours)}`));
  const found = own ?? (/\d:\d/.test(point.name) || there.length !== 1 ? undefined : there[0]);
  return found ? { ...row, point: { ...point, name: found.name } } : row;
}
