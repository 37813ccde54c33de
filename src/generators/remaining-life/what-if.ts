// What if a conveyor ran longer, faster, with another liner or another limit? A change is read from one line, as in the
// language: `duty DG1 140 h/week`, `speed DG1 22 rpm`, `condemn DG1 4 mm` (or `condemn TwoLayer12 4 mm` for every conveyor that
// has it), `liner DG1 TwoLayer16`. It is shown beside the base
// case and never mixed into the records.

import { parseQuantity } from '../../domain/units/parse.js';
import type { Dimension } from '../../domain/units/dimension.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';

/** `conveyors`: the ones it is tried on; more than one where a limit is tried for a liner that several use. */
export type WhatIfChange = { readonly text: string; readonly conveyors: readonly Conveyor[] } &
  /** Running hours a calendar day. */
  (
    | { readonly kind: 'duty'; readonly perDay: number }
    /** Turns a minute from now on; wear goes with the sliding distance. */
    | { readonly kind: 'speed'; readonly rpm: number; readonly now: number }
    /** Remaining thickness, mm. */
    | { readonly kind: 'condemn'; readonly least: number }
    /** The next liner; says how long a set of it would last at the rate seen. */
    | { readonly kind: 'liner'; readonly liner: LinerSpecification }
  );

export type ReadChange =
  { readonly ok: true; readonly change: WhatIfChange } | { readonly ok: false; readonly message: string };

const forms =
  "it reads 'duty CONVEYOR 20 h/d', 'speed CONVEYOR 22 rpm', 'condemn CONVEYOR 4 mm' (or a liner's name) or 'liner CONVEYOR NAME'";

export function readChange(text: string, estate: Estate): ReadChange {
  const [word = '', name = '', ...rest] = text.trim().split(/\s+/);
  const value = rest.join(' ');
  if (word === '' || name === '' || value === '') return { ok: false, message: forms };
  const found = estate.conveyors.filter((c) => c.name === name || `${c.plant.name}.${c.name}` === name);
  const [conveyor] = found;
  if (!conveyor && word === 'condemn') {
    const using = estate.conveyors.filter((c) => c.liner.name === name);
    if (using.length > 0) return condemn(value, { text: `${word} ${name} ${value}`, conveyors: using });
  }
  if (!conveyor)
    return {
      ok: false,
      message: `there is no conveyor ${name}; there ${estate.conveyors.length === 1 ? 'is' : 'are'} ${estate.conveyors.map((c) => c.name).join(', ')}`,
    };
  if (found.length > 1)
    return {
      ok: false,
      message: `${name} is the name of ${found.length} conveyors; write ${found.map((c) => `${c.plant.name}.${c.name}`).join(' or ')}`,
    };
  const change = { text: `${word} ${name} ${value}`, conveyors: [conveyor] };
  switch (word) {
    case 'duty':
      return quantity(value, 'duty', (perDay) =>
        perDay >= 0 && perDay <= 24 ? { ...change, kind: 'duty', perDay } : 'a day has 24 hours',
      );
    case 'speed': {
      const now = conveyor.drive?.speed?.value;
      if (now === undefined || !(now > 0))
        return { ok: false, message: `${name} declares no speed to compare with; add one to its drive` };
      return quantity(value, 'rotation', (rpm) =>
        rpm >= 0 ? { ...change, kind: 'speed', rpm, now } : 'a speed is not below zero',
      );
    }
    case 'condemn':
      return condemn(value, change);
    case 'liner': {
      const liner = estate.liners.find((l) => l.name === value);
      if (!liner)
        return {
          ok: false,
          message: `there is no liner ${value}; there ${estate.liners.length === 1 ? 'is' : 'are'} ${estate.liners.map((l) => l.name).join(', ')}`,
        };
      return { ok: true, change: { ...change, kind: 'liner', liner } };
    }
    default:
      return { ok: false, message: `"${word}" cannot be tried; ${forms}` };
  }
}

function condemn(value: string, change: Pick<WhatIfChange, 'text' | 'conveyors'>): ReadChange {
  return quantity(value.replace(/^at /, ''), 'length', (least) =>
    least >= 0 ? { ...change, kind: 'condemn', least } : 'a thickness is not below zero',
  );
}

function quantity(
  text: string,
  dimension: Dimension,
  make: (value: number) => WhatIfChange | string,
): ReadChange {
  const read = parseQuantity(text, dimension);
  if (!read.ok)
    return {
      ok: false,
      message: `"${text}": ${read.problem}${read.suggestions?.length ? `, for instance ${read.suggestions[0] ?? ''}` : ''}`,
    };
  const change = make(read.quantity.value);
  return typeof change === 'string' ? { ok: false, message: `"${text}": ${change}` } : { ok: true, change };
}
