// The conveyors a command line names, as `DG1` or `Tarnholt.DG1`; all of them where it names none.

import type { Conveyor } from '../domain/model/conveyor.js';
import type { Estate } from '../domain/model/estate.js';
import { Trouble } from './console.js';

export function conveyorsNamed(names: readonly string[], estate: Estate): readonly Conveyor[] {
  if (estate.conveyors.length === 0) throw new Trouble('this estate has no conveyor that can be read');
  if (names.length === 0) return estate.conveyors;
  return names.flatMap((name) => {
    const found = estate.conveyors.filter(
      (conveyor) => conveyor.name === name || `${conveyor.plant.name}.${conveyor.name}` === name,
    );
    if (found.length === 0)
      throw new Trouble(
        `${name}: no such conveyor; there ${estate.conveyors.length === 1 ? 'is' : 'are'} ${estate.conveyors.map((conveyor) => conveyor.name).join(', ')}`,
      );
    return found;
  });
}
