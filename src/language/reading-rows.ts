// The readings of one text while they are written: regular rows straight off the text (lifting.ts), all others from the tree
// (lowering/readings.ts), by whichever road into the same columns. Equal texts (`8.4 mm`) are parsed once, and no object a
// row stays behind. A row that cannot be read keeps its place, marked unreadable, so that a row is never lost silently.

import { mirrorClock } from '../domain/units/clock.js';
import { parseQuantity } from '../domain/units/parse.js';
import type { PanelUse, PhotoUse } from '../domain/model/records.js';
import type { ReadingKind } from '../domain/units/reading-kind.js';
import type { Limit } from './lowering/limits.js';
import type { ReadingSpot, Rows } from './sheet.js';

/** Stands for the second layer from the screw side, whatever its name: no name of a layer reads so. */
export const secondColour = 'second colour showing';

/** Part of a text, in characters from its beginning; the end exclusive. */
export interface TextSpan {
  readonly start: number;
  readonly end: number;
}

/** Rows of the finished columns: first, and one past the last. */
export interface RowRange {
  readonly firstRow: number;
  readonly endRow: number;
}

export interface NewRow extends TextSpan {
  /** Number of a spot, as `point`, `chainage` or `unreadableSpot` gave it. */
  readonly spot: number;
  readonly kind: ReadingKind;
  /** mm for a thickness, number of the name for a colour, NaN otherwise. */
  readonly value: number;
  /** mm, NaN where the row states none. */
  readonly error: number;
  /** Where the name of a colour begins; 0 on other rows. */
  readonly colourStart: number;
  readonly note: string | undefined;
  readonly photo?: PhotoUse | undefined;
}

export interface ReadingRows {
  readonly count: number;
  /** Where the row that was added last ends; 0 where there is none. */
  readonly lastEnd: number;
  /** Where rows stand in the text, in the order written. */
  extents(): readonly TextSpan[];
  /** mm; NaN where the text is no length in the limits. */
  length(text: string, limit: Limit): number;
  point(name: string): number;
  chainage(at: number, clock: number, along?: { readonly from: number; readonly to: number }): number;
  /** `clock` in the direction of flow already. */
  panel(panel: PanelUse, clock: number | undefined): number;
  stretch(from: number, to: number): number;
  unreadableSpot(): number;
  colour(name: string): number;
  add(row: NewRow): void;
  /**
   * What the head of an inspection says of the regular rows in it: whether the inspector looked against the flow, and the
   * gauge's error (mm, or NaN). Comes before any row is added that is read from the tree.
   */
  settle(block: TextSpan, mirrored: boolean, gaugeError: number): void;
  /** The rows in these blocks, in the order of the text, and where each block's own are. Blocks come in the order of the text. */
  finish(blocks: readonly TextSpan[]): { readonly rows: Rows; readonly ranges: readonly RowRange[] };
}

function atChainage(...[at, clock, along]: Parameters<ReadingRows['chainage']>): ReadingSpot {
  return { kind: 'chainage', at, clock, along };
}

export function createReadingRows(): ReadingRows {
  const spot: number[] = [];
  const kind: number[] = [];
  const value: number[] = [];
  const error: number[] = [];
  const start: number[] = [];
  const end: number[] = [];
  const colourStart: number[] = [];
  const notes = new Map<number, string>();
  const photos = new Map<number, PhotoUse>();
  const spots = createNumbering<ReadingSpot>();
  const colours = createNumbering<string>();
  const lengths = new Map<string, number>();
  /** So many rows, from the first, are in the order of the text. */
  let ordered = 0;

  const chainage: ReadingRows['chainage'] = (at, clock, along) =>
    spots.numberOf(`c ${at} ${clock}${along ? ` ${along.from} ${along.to}` : ''}`, () =>
      atChainage(at, clock, along),
    );
  const mirrored = (number: number): number => {
    const seen = spots.items[number];
    return seen?.kind === 'chainage' ? chainage(seen.at, mirrorClock(seen.clock), seen.along) : number;
  };

  return {
    get count() {
      return spot.length;
    },
    get lastEnd() {
      return end.at(-1) ?? 0;
    },
    extents: () => start.map((from, row) => ({ start: from, end: end[row] ?? from })),
    length(text, { from, to }) {
      let mm = lengths.get(text);
      if (mm === undefined) {
        const parsed = parseQuantity(text, 'length');
        mm = parsed.ok ? parsed.quantity.value : NaN;
        lengths.set(text, mm);
      }
      return mm >= from && mm <= to ? mm : NaN;
    },
    point: (name) => spots.numberOf(`p ${name}`, () => ({ kind: 'point', name })),
    chainage,
    panel: (panel, clock) =>
      spots.numberOf(`n ${panel.origin.start} ${panel.first.count}`, () => ({ kind: 'panel', panel, clock })),
    stretch: (from, to) => spots.numberOf(`s ${from} ${to}`, () => ({ kind: 'stretch', from, to })),
    unreadableSpot: () => spots.numberOf('?', () => ({ kind: 'unreadable' })),
    colour: (name) => colours.numberOf(name, () => name),
    add(row) {
      const index = spot.push(row.spot) - 1;
      if (ordered === index && row.start >= (start.at(-1) ?? 0)) ordered++;
      kind.push(row.kind);
      value.push(row.value);
      error.push(row.error);
      start.push(row.start);
      end.push(row.end);
      colourStart.push(row.colourStart);
      if (row.note !== undefined) notes.set(index, row.note);
      if (row.photo !== undefined) photos.set(index, row.photo);
    },
    settle(block, against, gaugeError) {
      if (!against && Number.isNaN(gaugeError)) return;
      const last = firstAt(start, ordered, block.end);
      for (let row = firstAt(start, ordered, block.start); row < last; row++) {
        if (against) spot[row] = mirrored(spot[row] ?? -1);
        if (Number.isNaN(error[row])) error[row] = gaugeError;
      }
    },
    finish(blocks) {
      const order = Array.from(start, (_, row) => row);
      if (ordered < order.length) order.sort((a, b) => (start[a] ?? 0) - (start[b] ?? 0));
      const kept: number[] = [];
      let next = 0;
      const ranges = blocks.map((block): RowRange => {
        const firstRow = kept.length;
        while (next < order.length && (start[order[next] ?? -1] ?? Infinity) < block.start) next++;
        for (; next < order.length; next++) {
          const row = order[next] ?? -1;
          if ((start[row] ?? Infinity) >= block.end) break;
          kept.push(row);
        }
        return { firstRow, endRow: kept.length };
      });
      const numbers = (column: readonly number[]) => (row: number) => column[row] ?? NaN;
      const rows: Rows = {
        count: kept.length,
        spot: Int32Array.from(kept, numbers(spot)),
        kind: Uint8Array.from(kept, numbers(kind)),
        value: Float64Array.from(kept, numbers(value)),
        error: Float64Array.from(kept, numbers(error)),
        start: Int32Array.from(kept, numbers(start)),
        end: Int32Array.from(kept, numbers(end)),
        colourStart: Int32Array.from(kept, numbers(colourStart)),
        notes: keptOf(kept, notes),
        photos: keptOf(kept, photos),
        spots: spots.items,
        colours: colours.items,
      };
      return { rows, ranges };
    },
  };
}

/** Things numbered from 0 in the order they first come, each kept once. */
function createNumbering<T>(): {
  readonly items: readonly T[];
  numberOf(key: string, make: () => T): number;
} {
  const items: T[] = [];
  const numbers = new Map<string, number>();
  return {
    items,
    numberOf(key, make) {
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, items.length);
      return items.push(make()) - 1;
    },
  };
}

function keptOf<T>(kept: readonly number[], all: ReadonlyMap<number, T>): ReadonlyMap<number, T> {
  const found = new Map<number, T>();
  if (all.size === 0) return found;
  for (const [index, row] of kept.entries()) {
    const one = all.get(row);
    if (one !== undefined) found.set(index, one);
  }
  return found;
}

/** The first index below `count` whose number is at least this one, else `count`; up to there the numbers rise. */
function firstAt(sorted: readonly number[], count: number, wanted: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? Infinity) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
