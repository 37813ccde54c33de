// How a record would write a conveyor's name.

import type { Desk } from './desk.js';
import type { Declaration } from './declared.js';

/** The plant is named only where two plants have a conveyor of this name. */
export function shortestName(desk: Desk, conveyor: Declaration): string {
  const twins = desk
    .names()
    .declared('conveyor')
    .filter((other) => other.name === conveyor.name);
  const plant = desk.names().plantOf(conveyor);
  return twins.length > 1 && plant ? `${plant.name}.${conveyor.name}` : conveyor.name;
}
