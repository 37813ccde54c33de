// The heaviest panel that a job handles as bought, and how long panels of that liner may be to weigh no more than a limit: what two
// rules about the team's lift need, so that doing what one says does not bring the other.

import { panelMass } from '../../domain/geometry/trough.js';
import type { Job } from '../../domain/model/job.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { lengthOn } from '../../domain/model/unit-of-machine.js';
import { formatMass } from '../../domain/units/format.js';
import { linedSection } from './lined-section.js';
import { isPlausible } from './plausible.js';

export interface HeaviestPanel {
  readonly liner: LinerSpecification;
  /** mm and kg. */
  readonly length: number;
  readonly mass: number;
  /** Whole millimetres of a panel that weighs no more than so many kg. */
  readonly longestFor: (limit: number) => number;
}

/** Undefined where no panel's mass can be told. */
export function heaviestPanel({ conveyor, relines }: Job): HeaviestPanel | undefined {
  return relines
    .flatMap(({ liner }): HeaviestPanel[] => {
      const section = linedSection(conveyor, liner);
      const length = liner.panelLengths.reduce((most, each) => Math.max(most, each.value), 0);
      if (!section || !isPlausible('panel length', length)) return [];
      const mass = panelMass(section, length, liner.density.value);
      return [{ liner, length, mass, longestFor: (limit) => Math.floor((length * limit) / mass) }];
    })
    .reduce<HeaviestPanel | undefined>((a, b) => (!a || b.mass > a.mass ? b : a), undefined);
}

/** What ends both: panels that the team may lift, or no number for the team, and gear for each panel. */
export function shorterPanels(
  { conveyor }: Job,
  { liner, longestFor, mass }: HeaviestPanel,
  limit: number,
): string {
  const length = lengthOn(conveyor, longestFor(limit));
  return (
    `Cut panels of ${liner.name} to ${length} at most and let the team lift ${formatMass(Math.floor(limit * 10) / 10)}; ` +
    `or take \`team lift\` out and bring lifting gear for panels of ${formatMass(mass)}: ` +
    'the pack then says of each how many people or what gear it takes. A competent person assesses the lift on site.'
  );
}
