// The right-hand sides of a mapping: what a column, a point or a word means, read from their few words and written again.

import { clockForms } from '../values/clock.js';
import { unitOf } from '../values/measure.js';
import type { PointMeaning, WordMeaning, Role } from '../mapping.js';

const plainRoles = [
  'plant',
  'conveyor',
  'date',
  'point',
  'colour',
  'unit',
  'gauge',
  'by',
  'note',
  'not read',
] as const;
const measuredRoles = {
  thickness: 'length',
  error: 'length',
  chainage: 'length',
  meter: 'duration',
  tonnes: 'mass',
} as const;

/** `thickness in mm`, `meter in h`, `clock in degrees from 12`, `point`, `not read`. */
export function readRole(text: string): Role | undefined {
  const plain = plainRoles.find((role) => role === text);
  if (plain) return { is: plain };
  if (text === 'clock') return { is: 'clock', form: 'time' };
  const form = clockForms.find((one) => text === `clock in ${one}`);
  if (form) return { is: 'clock', form };
  const [name = '', spelled, ...more] = text.split(' in ');
  const measured = (Object.keys(measuredRoles) as (keyof typeof measuredRoles)[]).find(
    (role) => role === name,
  ); // its own keys
  if (!measured || more.length > 0) return undefined;
  if (spelled === undefined) return { is: measured };
  const unit = unitOf(spelled, measuredRoles[measured]);
  return unit === undefined ? undefined : { is: measured, unit };
}

export function roleText(role: Role): string {
  if (role.is === 'clock') return role.form === 'time' ? 'clock' : `clock in ${role.form}`;
  return 'unit' in role ? `${role.is} in ${role.unit}` : role.is;
}

/** A point's name, `meter in h`, or `not read`. */
export function readPointMeaning(text: string): PointMeaning | undefined {
  if (text === 'not read') return { row: 'not read' };
  if (!text.startsWith('meter in ')) return text;
  const role = readRole(text);
  return role?.is === 'meter' && role.unit !== undefined ? { row: 'meter', unit: role.unit } : undefined;
}

/** Reasons that the language has words for. */
const reasons = ['blocked', 'buried', 'no light', 'no access', 'cover on'];

/** `no reading`, `blank`, `trough showing`, `not seen buried`, `colour teal`, `layer 2`. */
export function readMeaning(text: string): WordMeaning | undefined {
  if (text === 'no reading' || text === 'blank' || text === 'trough showing') return { is: text };
  if (text === 'not seen') return { is: 'not seen' };
  const reason = reasons.find((one) => text === `not seen ${one}`);
  if (reason) return { is: 'not seen', reason };
  const colour = /^colour ([A-Za-z_][\w-]*)$/.exec(text);
  if (colour) return { is: 'colour', name: colour[1] ?? '' };
  const layer = /^layer ([1-9])$/.exec(text);
  return layer ? { is: 'layer', number: Number(layer[1]) } : undefined;
}

export function meaningText(meaning: WordMeaning): string {
  switch (meaning.is) {
    case 'no reading':
    case 'blank':
    case 'trough showing':
      return meaning.is;
    case 'not seen':
      return meaning.reason === undefined ? 'not seen' : `not seen ${meaning.reason}`;
    case 'colour':
      return `colour ${meaning.name}`;
    case 'layer':
      return `layer ${meaning.number}`;
  }
}
