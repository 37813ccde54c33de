// What is taken where the author states nothing. Each value says in words where it comes from, for hovers and reports.

import type { Origin } from '../../domain/model/origin.js';
import type { Stated } from '../../domain/model/stated.js';
import type { Dimension } from '../../domain/units/dimension.js';
import { formatValue } from '../../domain/units/format.js';

/** A default in base units, shown at `origin` (the name of the block that leaves it out). */
export function assume<D extends Dimension>(
  value: number,
  dimension: D,
  origin: Origin,
  assumed: string,
  unit?: string,
): Stated<D> {
  return {
    dimension,
    value,
    text: formatValue(value, dimension, unit === undefined ? {} : { unit }),
    origin,
    assumed,
  };
}

export const assumed = {
  risk: (origin: Origin) =>
    assume(
      0.05,
      'ratio',
      origin,
      'No risk is stated: 5 % is taken, a judgement to be agreed with whoever answers for the plant.',
    ),
  contactRisk: (origin: Origin) =>
    assume(
      0.005,
      'ratio',
      origin,
      'No risk of contact is stated: 0.5 % is taken, a judgement: steel touched costs a trough, a passed limit only a liner.',
    ),
  minimumPlate: ({ value, origin }: Stated<'length'>) =>
    assume(
      value / 2,
      'length',
      origin,
      'No minimum plate is stated: half of the plate is taken, a judgement to be agreed with whoever answers for the structure.',
    ),
  layerTolerance: (origin: Origin) =>
    assume(
      0.05,
      'ratio',
      origin,
      'No layer tolerance is stated: each layer is taken to end within 5 % of its depth (one standard deviation), a judgement.',
    ),
  panelTolerance: (origin: Origin) =>
    assume(
      1,
      'length',
      origin,
      'No panel tolerance is stated: ± 1 mm is taken, common practice for sawn sheet.',
    ),
  linerDensity: (origin: Origin) =>
    assume(
      930,
      'density',
      origin,
      "No density is stated: 930 kg/m3 is taken, PE-UHMW (PE1000) by ISO 1183 in makers' data sheets.",
    ),
  expansion: (origin: Origin) =>
    assume(
      200e-6,
      'expansion',
      origin,
      'No expansion is stated: 200 um/m/K is taken; data sheets of PE-UHMW give 150 to 230.',
    ),
  modulus: (origin: Origin) =>
    assume(
      750,
      'stress',
      origin,
      'No modulus is stated: 750 MPa is taken from data sheets of PE-UHMW (tension, 23 degC).',
    ),
  maximumTemperature: (origin: Origin) =>
    assume(
      80,
      'temperature',
      origin,
      'No maximum temperature is stated: 80 °C is taken, the continuous service temperature in data sheets of PE-UHMW.',
    ),
  screwDensity: (origin: Origin) =>
    assume(7850, 'density', origin, 'No density is stated: 7850 kg/m3 is taken, carbon steel.'),
  noAllowance: (origin: Origin) =>
    assume(
      0,
      'length',
      origin,
      'No allowance is stated: the break is taken to be a firm end that takes up no length error.',
    ),
  tailEnd: (origin: Origin) =>
    assume(0, 'length', origin, 'The inside face of the tail-end plate is chainage 0 by definition.'),
  sawKerf: (origin: Origin) =>
    assume(3, 'length', origin, 'No saw kerf is stated: 3 mm is taken, usual for a circular saw.'),
  minimumClosingPiece: (origin: Origin) =>
    assume(
      200,
      'length',
      origin,
      'No minimum closing piece is stated: 200 mm is taken, a judgement: shorter pieces hold too few bolts.',
    ),
  measuringTolerance: (origin: Origin) =>
    assume(
      2,
      'length',
      origin,
      'No measuring tolerance is stated: ± 2 mm is taken, a judgement for a steel tape along a trough.',
    ),
  jointClearance: (origin: Origin) =>
    assume(
      50,
      'length',
      origin,
      'No joint clearance is stated: joints are kept 50 mm from flanges and hold-down bolts, a judgement.',
    ),
} as const;

export const buttedByDefault =
  'No joint is stated: panels are taken to be butted tight, common practice for short bolted panels.';
export const implied = (end: 'tail' | 'head'): string =>
  `No break is stated at the ${end} end: an end plate that takes up no length error is taken to be there.`;
