// What is there to lift with where the job works? The lifting points that the conveyor declares over the stretch or within a reach of
// it, and the cranes that the job brings. Asked for and not declared is an open point of the pack.

import { handlingGuideline } from '../../../domain/geometry/handling.js';
import type { Job } from '../../../domain/model/job.js';
import type { Area } from '../../../domain/order/ground.js';
import { formatMass } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords } from '../../../domain/units/length-words.js';

/** A load is hung from a point as far beside the work as this, mm; judgement. */
const reach = 1500;

/** `areas`: where the job works. */
export function liftingGear(
  { conveyor, cranes = [] }: Job,
  areas: readonly Area[],
  unit: LengthUnit,
): readonly string[] {
  const points = conveyor.liftingPoints
    .filter(({ at }) => areas.some(({ from, to }) => at.value >= from - reach && at.value <= to + reach))
    .map(
      ({ name, at, limit }) =>
        `${name} at ${chainageWords(at.value, unit)}, at most ${formatMass(limit.value)}`,
    );
  const stands = cranes.map(
    ({ use, crane, at }) =>
      `crane ${use.name}${crane?.title === undefined ? '' : `, ${crane.title},`} at ${chainageWords(at.value, unit)}`,
  );
  return [...points, ...stands];
}

/** Cranes of the plant that a job which lifts does not name: whether one of them comes is settled with whoever plans the lifts. */
export function cranesNotNamed(
  { conveyor, cranes = [], screwChange }: Job,
  heaviest: number | undefined,
): readonly string[] {
  if (!screwChange && (heaviest ?? 0) <= handlingGuideline) return [];
  return conveyor.plant.cranes
    .filter(({ name }) => !cranes.some(({ use }) => use.name === name))
    .map(
      ({ name, title }) =>
        `crane ${name}${title === undefined ? '' : `, ${title},`} of the plant: not named by this job, settle whether it lifts here`,
    );
}

/** Empty where something is declared, or one person may lift all of it. */
export function noGearWarning(
  gear: readonly string[],
  heaviest: number | undefined,
  handLimit: number,
): readonly { readonly message: string; readonly todo: string }[] {
  if (gear.length > 0 || heaviest === undefined || heaviest <= handLimit) return [];
  return [
    {
      message: `A panel of about ${formatMass(heaviest)} is more than one person should lift, and nothing that lifts is written for this stretch.`,
      todo: 'Declare a `lifting point` over the stretch or a `crane` of the job, or settle on site what lifts and who carries.',
    },
  ];
}
