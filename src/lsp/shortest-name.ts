// How a record would write a conveyor's name.

import type { Session } from './session.js';
import type { Declaration } from './document-symbols.js';

/** The plant is named only where two plants have a conveyor of this name. */
export function shortestName(session: Session, conveyor: Declaration): string {
  const twins = session
    .symbols()
    .declared('conveyor')
    .filter((other) => other.name === conveyor.name);
  const plant = session.symbols().plantOf(conveyor);
  return twins.length > 1 && plant ? `${plant.name}.${conveyor.name}` : conveyor.name;
}
