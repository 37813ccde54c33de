// What the columns of a list of conveyors say, a row a conveyor.

import type { Dimension } from '../../domain/units/dimension.js';
import { unitOf } from '../values/measure.js';

const wordRoles = [
  'name',
  'title',
  'plant',
  'screw',
  'liner',
  'conveys',
  'drive end',
  'commissioned',
  'not read',
] as const;

const measuredRoles = {
  length: 'length',
  incline: 'angle',
  'inside radius': 'length',
  'inside diameter': 'length',
  'side height': 'length',
  plate: 'length',
  power: 'power',
  speed: 'rotation',
  meter: 'duration',
  duty: 'duty',
} as const;

export type AssetWord = (typeof wordRoles)[number];
export type AssetMeasure = keyof typeof measuredRoles;

export type AssetRole =
  | { readonly is: AssetWord }
  | { readonly is: AssetMeasure; readonly dimension: Dimension; readonly unit?: string };

/** `name`, `length in m`, `incline in deg`, `inside diameter in mm`. */
export function readAssetRole(text: string): AssetRole | undefined {
  const word = wordRoles.find((role) => role === text);
  if (word) return { is: word };
  const [name, spelled, ...more] = text.split(' in ');
  const measured = (Object.keys(measuredRoles) as AssetMeasure[]).find((role) => role === name); // its own keys
  if (!measured || more.length > 0) return undefined;
  const dimension = measuredRoles[measured];
  if (spelled === undefined) return { is: measured, dimension };
  const unit = unitOf(spelled, dimension);
  return unit === undefined ? undefined : { is: measured, dimension, unit };
}
