// A number as typed: in other units, and what is wrong with it if it cannot be read.

import type { Dimension } from '../../domain/units/dimension.js';
import { formatValue } from '../../domain/units/format.js';
import { parseQuantity, unitsOf } from '../../domain/units/parse.js';

const others: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ['mm', 'm', 'in', 'ft'],
  angle: ['deg', 'rad'],
  duration: ['h', 'd', 'week'],
  mass: ['kg', 't', 'lb'],
  temperature: ['°C', 'degF', 'K'],
  force: ['N', 'kN', 'lbf'],
  power: ['kW', 'hp'],
  rotation: ['rpm'],
  density: ['kg/m3', 'lb/ft3'],
  volume: ['m3', 'l', 'ft3'],
  ratio: ['%'],
  'mass flow': ['t/h', 't/week', 'lb/h'],
  duty: ['h/week', 'h/d'],
  expansion: ['um/m/K', '1/K'],
  stress: ['MPa', 'psi'],
  torque: ['N·m', 'lbf·ft'],
  velocity: ['m/s', 'ft/s'],
  'labour a length': ['h/m', 'h/ft'],
};

/** The first dimension that the text can be read in; undefined where it cannot be read in any. */
export function valueLine(text: string, dimensions: readonly Dimension[]): string | undefined {
  for (const dimension of dimensions) {
    const read = parseQuantity(text, dimension);
    if (!read.ok) continue;
    const same = (others[dimension] ?? [])
      .filter(
        (unit) =>
          !text
            .replace(/[\d.,\s/]+/, '')
            .trim()
            .startsWith(unit) || unit !== unitOf(text),
      )
      .map((unit) => formatValue(Number(read.quantity.value.toPrecision(5)), dimension, { unit }))
      .filter((shown) => isHandy(Number.parseFloat(shown)))
      .filter((shown) => shown !== text.replace(/\s+/g, ' '));
    return same.length === 0 ? text : `${text} = ${same.join(' = ')}`;
  }
  return undefined;
}

/** Hundredths of a foot and hundred thousands of millimetres help nobody. */
function isHandy(value: number): boolean {
  return value === 0 || (Math.abs(value) >= 0.01 && Math.abs(value) < 100_000);
}

export function unitHint(dimensions: readonly Dimension[]): string {
  const units = [...new Set(dimensions.flatMap((dimension) => unitsOf(dimension)))].filter(
    (unit) => unit !== '"',
  );
  return units
    .slice(0, 8)
    .map((unit) => `\`${unit}\``)
    .join(', ');
}

function unitOf(text: string): string {
  return /[A-Za-z%°µ][\w/%°µ]*$/.exec(text)?.[0] ?? '';
}
