// A run named by its break (`run above Gate`, `run below Gate`) must name a break that the conveyor has.

import { breaksNamed } from '../../domain/model/runs.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Problem } from '../../domain/model/problem.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { Stretch } from '../../domain/model/stretch.js';
import { closest } from './name-table.js';

/** False, with a problem, where the break is unknown. */
export function checkStretch(stretch: Stretch, conveyor: Conveyor, problems: Problem[]): boolean {
  if (stretch.kind === 'all' || stretch.kind === 'chainage') return true;
  return breaksNamed(stretch.run).every((use) => checkBreak(use, conveyor, problems));
}

/** The same for a break named on its own. */
export function checkBreak(use: NameUse, conveyor: Conveyor, problems: Problem[]): boolean {
  if (conveyor.breaks.some((one) => one.name === use.name)) return true;
  problems.push({
    kind: 'unknown name',
    origin: use.origin,
    what: `break of ${conveyor.name}`,
    name: use.name,
    known: closest(
      use.name,
      conveyor.breaks.map((one) => one.name),
    ),
  });
  return false;
}
