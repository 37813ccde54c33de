// What a value may be at all. These are not engineering judgements (the rules make those) but what keeps a slip such as a
// panel 0 mm long, or a conveyor of a million kilometres, out of the arithmetic behind.

import type { Dimension } from '../../domain/units/dimension.js';

export interface Limit {
  readonly from: number;
  readonly to: number;
  /** In words, for the message. */
  readonly range: string;
}

/** Taken where a fact has no limit of its own. Base units. */
export const usual: Readonly<Record<Dimension, Limit>> = {
  length: { from: 0, to: 1_000_000, range: '0 mm to 1000 m' },
  angle: { from: -90, to: 90, range: '-90 deg to 90 deg' },
  duration: { from: 0, to: 10_000_000, range: '0 h to 10000000 h' },
  mass: { from: 0, to: 1e12, range: '0 kg to 1000000000 t' },
  temperature: { from: -273.15, to: 1000, range: '-273.15 degC to 1000 degC' },
  force: { from: 0, to: 1e9, range: '0 N to 1000000000 N' },
  power: { from: 0, to: 100_000, range: '0 kW to 100000 kW' },
  rotation: { from: 0, to: 10_000, range: '0 rpm to 10000 rpm' },
  density: { from: 1, to: 30_000, range: '1 kg/m3 to 30000 kg/m3' },
  volume: { from: 0, to: 100_000, range: '0 m3 to 100000 m3' },
  ratio: { from: 0, to: 1000, range: '0 to 1000' },
  'mass flow': { from: 0, to: 100_000, range: '0 t/h to 100000 t/h' },
  current: { from: 0, to: 100_000, range: '0 A to 100000 A' },
  money: { from: 0, to: 1e12, range: 'from 0 up' },
  duty: { from: 0, to: 1000, range: '0 h/d to 24 h/d' },
  expansion: { from: 0, to: 0.01, range: '0 um/m/K to 10000 um/m/K' },
  stress: { from: 0.001, to: 1_000_000, range: '0.001 MPa to 1000000 MPa' },
  torque: { from: 0.01, to: 100_000, range: 'more than 0 N·m, at most 100000 N·m' },
  velocity: { from: 1, to: 20_000, range: '1 m/s to 20000 m/s' },
  'labour a length': { from: 0, to: 10_000, range: '0 h/m to 10000 h/m' },
  'money a duration': { from: 0, to: 1e9, range: 'from 0 up' },
  'money a length': { from: 0, to: 1e9, range: 'from 0 up' },
};

/** A length that something is divided by or laid out with. */
export const someLength: Limit = { from: 0.01, to: 1_000_000, range: 'more than 0 mm, at most 1000 m' };
/** Something that takes time at all. */
export const someTime: Limit = { from: 1 / 60, to: 10_000, range: '1 min to 10000 h' };
/** A load that something bears, or a reach: nothing is bought for none. */
export const someMass: Limit = { from: 0.001, to: 1e9, range: 'more than 0 kg, at most 1000000 t' };
export const conveyorLength: Limit = { from: 100, to: 1_000_000, range: '100 mm to 1000 m' };
export const panelLength: Limit = { from: 50, to: 50_000, range: '50 mm to 50 m' };
export const step: Limit = { from: 10, to: 1_000_000, range: '10 mm to 1000 m' };
/** A part may be written a little outside the conveyor; the rules say so. */
export const chainage: Limit = { from: -1_000_000, to: 1_000_000, range: '-1000 m to 1000 m' };
/** Between what a gauge showed and what was there. */
export const offset: Limit = { from: -50, to: 50, range: '-50 mm to 50 mm' };
/** Of a liner, as read. */
export const thickness: Limit = { from: 0, to: 1000, range: '0 mm to 1000 mm' };
export const probability: Limit = { from: 0.0001, to: 0.9999, range: '0.01 % to 99.99 %' };
export const spread: Limit = { from: 0, to: 1, range: '0 % to 100 %' };

/** Of these, planning and layout look at every one against every other; ten times what the largest plants have. */
export const most = {
  'panel lengths': 12,
  breaks: 100,
  crews: 60,
  steps: 400,
  'access units': 300,
} as const;
