// What if a conveyor ran longer, faster, with another liner or another limit? A change is read from one line, as in the
// language: `duty DG1 140 h/week ± 10 %`, `speed DG1 22 rpm`, `condemn DG1 4 mm` (or `condemn TwoLayer12 4 mm` for every conveyor
// that has it), `liner DG1 TwoLayer16`. It is tried on a copy of the estate (parts/tried-estate.ts) and shown beside the base case.

import { parseQuantity } from '../../domain/units/parse.js';
import type { Dimension } from '../../domain/units/dimension.js';
import type { Quantity } from '../../domain/units/quantity.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';

/** `conveyors`: the ones it is shown for; more than one where a limit is tried for a liner that several use. */
export type WhatIfChange = { readonly text: string; readonly conveyors: readonly Conveyor[] } &
  /** A duty from the day of the report on, with its spread where one is given. */
  (
    | {
        readonly kind: 'duty';
        readonly duty: Quantity<'duty'>;
        readonly tolerance: Quantity<'duty'> | Quantity<'ratio'> | undefined;
      }
    /** Turns a minute from that day on; wear by hours goes with the sliding distance. */
    | { readonly kind: 'speed'; readonly speed: Quantity<'rotation'> }
    /** Remaining thickness, of the liners that lie there or of one liner wherever it lies. */
    | {
        readonly kind: 'condemn';
        readonly least: Quantity<'length'>;
        readonly liner: LinerSpecification | undefined;
      }
    /** The next liner; says how long a set of it would last, fitted on that day. */
    | { readonly kind: 'liner'; readonly liner: LinerSpecification }
  );

export type ReadChange =
  { readonly ok: true; readonly change: WhatIfChange } | { readonly ok: false; readonly message: string };

const forms =
  "it reads 'duty CONVEYOR 20 h/d', 'speed CONVEYOR 22 rpm', 'condemn CONVEYOR 4 mm' (or a liner's name) or 'liner CONVEYOR NAME'";

/** `printed`: the conveyors of the report; undefined where all are. */
export function readChange(text: string, estate: Estate, printed?: readonly Conveyor[]): ReadChange {
  const [word = '', name = '', ...rest] = text.trim().split(/\s+/);
  const value = rest.join(' ');
  if (word === '' || name === '' || value === '') return wrong(forms);
  const found = estate.conveyors.filter((c) => c.name === name || `${c.plant.name}.${c.name}` === name);
  const liner = word === 'condemn' ? estate.liners.find((each) => each.name === name) : undefined;
  if (found.length === 0 && liner) {
    const using = estate.conveyors.filter((c) => has(estate, c, liner) && (!printed || printed.includes(c)));
    if (using.length === 0)
      return wrong(`no conveyor of this report has the liner ${name}, so there is nothing to show`);
    return condemn(value, { text: `${word} ${name} ${value}`, conveyors: using }, [liner], liner);
  }
  const [conveyor] = found;
  if (!conveyor)
    return wrong(
      `there is no conveyor ${name}; there ${estate.conveyors.length === 1 ? 'is' : 'are'} ${estate.conveyors.map((c) => c.name).join(', ')}`,
    );
  if (found.length > 1)
    return wrong(
      `${name} is the name of ${found.length} conveyors; write ${found.map((c) => `${c.plant.name}.${c.name}`).join(' or ')}`,
    );
  if (printed && !printed.includes(conveyor))
    return wrong(
      `${name} is not in this report, so the change would show nowhere; add --conveyor ${name}, or leave --conveyor out`,
    );
  return changeOf(word, value, conveyor, estate);
}

function changeOf(word: string, value: string, conveyor: Conveyor, estate: Estate): ReadChange {
  const change = { text: `${word} ${conveyor.name} ${value}`, conveyors: [conveyor] };
  switch (word) {
    case 'duty':
      return duty(value, change);
    case 'speed': {
      const now = conveyor.drive?.speed?.value;
      if (now === undefined || !(now > 0))
        return wrong(`${conveyor.name} declares no speed to compare with; add one to its drive`);
      return quantity(value, 'rotation', (speed) =>
        speed.value > 0 ? { ...change, kind: 'speed', speed } : 'a speed is above zero',
      );
    }
    case 'condemn': {
      const lying = estate.liners.filter((each) => has(estate, conveyor, each));
      return condemn(value, change, lying, undefined);
    }
    case 'liner': {
      const liner = estate.liners.find((l) => l.name === value);
      if (!liner)
        return wrong(
          `there is no liner ${value}; there ${estate.liners.length === 1 ? 'is' : 'are'} ${estate.liners.map((l) => l.name).join(', ')}`,
        );
      return { ok: true, change: { ...change, kind: 'liner', liner } };
    }
    default:
      return wrong(`"${word}" cannot be tried; ${forms}`);
  }
}

function wrong(message: string): ReadChange {
  return { ok: false, message };
}

/** Declared, or fitted by a reline. */
function has({ relines }: Estate, conveyor: Conveyor, liner: LinerSpecification): boolean {
  return conveyor.liner === liner || relines.some((r) => r.conveyor === conveyor && r.liner === liner);
}

function duty(value: string, change: Pick<WhatIfChange, 'text' | 'conveyors'>): ReadChange {
  const [nominal = '', spread, ...more] = value.split(/±|\+\/-/).map((part) => part.trim());
  if (more.length > 0) return wrong(`"${value}": one ± is enough`);
  if (spread === undefined) return quantity(nominal, 'duty', (read) => dutyOf(read, undefined, change));
  const isRatio = spread.endsWith('%');
  const tolerance = isRatio ? parseQuantity(spread, 'ratio') : parseQuantity(spread, 'duty');
  if (!tolerance.ok) return wrong(`"${spread}": ${tolerance.problem}`);
  if (!(tolerance.quantity.value > 0)) return wrong(`"${spread}": a spread is above zero`);
  return quantity(nominal, 'duty', (read) => dutyOf(read, tolerance.quantity, change));
}

function dutyOf(
  read: Quantity<'duty'>,
  tolerance: Quantity<'duty'> | Quantity<'ratio'> | undefined,
  change: Pick<WhatIfChange, 'text' | 'conveyors'>,
): WhatIfChange | string {
  return read.value >= 0 && read.value <= 24
    ? { ...change, kind: 'duty', duty: read, tolerance }
    : 'a day has 24 hours';
}

function condemn(
  value: string,
  change: Pick<WhatIfChange, 'text' | 'conveyors'>,
  liners: readonly LinerSpecification[],
  liner: LinerSpecification | undefined,
): ReadChange {
  return quantity(value.replace(/^at /, ''), 'length', (least) => {
    if (!(least.value >= 0)) return 'a thickness is not below zero';
    const thin = liners.find(({ thickness }) => thickness.value <= least.value);
    return thin
      ? `the liner ${thin.name} is ${thin.thickness.text} thick when new, so it would be condemned before it is fitted`
      : { ...change, kind: 'condemn', least, liner };
  });
}

function quantity<D extends Dimension>(
  text: string,
  dimension: D,
  make: (value: Quantity<D>) => WhatIfChange | string,
): ReadChange {
  const read = parseQuantity(text, dimension);
  if (!read.ok)
    return wrong(
      `"${text}": ${read.problem}${read.suggestions?.length ? `, for instance ${read.suggestions[0] ?? ''}` : ''}`,
    );
  const change = make(read.quantity);
  return typeof change === 'string' ? wrong(`"${text}": ${change}`) : { ok: true, change };
}
