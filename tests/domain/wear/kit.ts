// Short stories in, columns out: one liner of 6 + 6 mm unless told.
import type { LifeColumns, ReadingColumns, UnitColumns } from '../../../src/domain/wear/columns.js';
import type { Pool, WearFit, WearOptions } from '../../../src/domain/wear/fit.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import type { Units } from '../../../src/domain/wear/reduce.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';

/** What was seen at an exposure: mm that remain, or a word. `unit` 0 where left out. */
export interface Seen {
  readonly unit?: number;
  readonly at: number;
  readonly saw: number | 'ivory' | 'teal' | 'trough' | 'not seen';
  readonly day?: number;
}

export function columnsOf(rows: readonly Seen[]): ReadingColumns {
  const kind = rows.map(({ saw }) =>
    typeof saw === 'number'
      ? ReadingKind.thickness
      : saw === 'trough'
        ? ReadingKind.trough
        : saw === 'not seen'
          ? ReadingKind.notSeen
          : ReadingKind.colour,
  );
  const columns = {
    unit: rows.map((r) => r.unit ?? 0),
    exposure: rows.map((r) => r.at),
    kind,
    value: rows.map(({ saw }) => (typeof saw === 'number' ? saw : saw === 'teal' ? 1 : 0)),
  };
  return rows.some((r) => r.day !== undefined) ? { ...columns, day: rows.map((r) => r.day ?? 0) } : columns;
}

export function unitsOf(count: number, lives?: LifeColumns): UnitColumns {
  return {
    count,
    fitted: new Float64Array(count).fill(12),
    build: new Int32Array(count),
    builds: [{ depths: [6, 12] }],
    ...(lives ? { lives } : {}),
  };
}

export function reduced(rows: readonly Seen[], count = 1, lives?: LifeColumns): Units {
  return reduceReadings(columnsOf(rows), unitsOf(count, lives));
}

export const expectedLife = { depth: 12, exposure: 12_000 } as const;

export function fitted(
  rows: readonly Seen[],
  count = 1,
  options: WearOptions = { expectedLife },
  pools: readonly Pool[] = [],
): WearFit {
  const fit = fitWear(reduced(rows, count), pools, options);
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}
