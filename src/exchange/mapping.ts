// What the columns of somebody's sheet mean. A mapping is a small text kept in git beside the estate; whatever is not said in it
// is not assumed when readings are taken, and what a guess cannot know stands in it as a question (?) until a person answers.

import type { AssetRole } from './mapping/asset-roles.js';
import type { ClockForm } from './values/clock.js';
import type { DayOrder } from './values/day.js';
import type { Measure } from './values/measure.js';
import type { Decimal } from './values/number.js';
import type { Encoding, Separator } from './table.js';

/** Where a unit is left out, each cell or a column of units says it. */
export type Role =
  | {
      readonly is:
        'plant' | 'conveyor' | 'date' | 'point' | 'colour' | 'unit' | 'gauge' | 'by' | 'note' | 'not read';
    }
  | { readonly is: 'thickness' | 'error' | 'chainage' | 'meter' | 'tonnes'; readonly unit?: string }
  | { readonly is: 'clock'; readonly form: ClockForm };

/** What a word in a cell says. */
export type WordMeaning =
  /** `blank`: the cell counts as empty. */
  | { readonly is: 'no reading' | 'blank' | 'trough showing' }
  | { readonly is: 'not seen'; readonly reason?: string }
  | { readonly is: 'colour'; readonly name: string }
  /** From the screw side, 1 the first. */
  | { readonly is: 'layer'; readonly number: number };

/** A point's name, a row of meter readings, or a row that is no point. */
export type PointMeaning =
  string | { readonly row: 'meter'; readonly unit: string } | { readonly row: 'not read' };

/** The heads of further columns each say a date, or a point. */
export interface Across {
  readonly what: 'date' | 'point';
  /** The row that says it, from 0. */
  readonly row: number;
  /** What stands under a head that no column of its own is named for. */
  readonly reading: Role;
}

export interface Mapping {
  /** A list of conveyors instead of readings: what its columns say, by their heads. */
  readonly assets?: ReadonlyMap<string, AssetRole>;
  /** The folder that takes the inspections, beside the mapping. */
  readonly writesInto: string;
  readonly separator?: Separator;
  readonly encoding?: Encoding;
  /** Undefined: every sheet that is not hidden. */
  readonly sheets?: readonly string[];
  /** Rows of heads, from 0, the last included. */
  readonly heads: { readonly from: number; readonly to: number };
  /** Of all rows, where no column says it. */
  readonly conveyor?: { readonly name: string } | 'name of the sheet';
  /** Of all rows, where no column says it. */
  readonly date?: string;
  /** Of the one day of a sheet that says no hours, as the list of a gauge. */
  readonly meter?: Measure;
  readonly dates?: DayOrder;
  readonly dateNumbers?: 1900 | 1904;
  readonly century?: number;
  readonly decimal?: Decimal;
  readonly view?: 'upstream' | 'downstream';
  /** As the language writes it: `ultrasonic ± 0.2 mm`. */
  readonly gauge?: string;
  readonly across?: Across;
  /** A row of meter readings under the dates, from 0. */
  readonly meterRow?: { readonly row: number; readonly unit: string };
  /** By the head of the column. */
  readonly columns: ReadonlyMap<string, Role>;
  /** Heads of columns whose empty cells mean what stands above. */
  readonly asAbove: ReadonlySet<string>;
  /** Names of the sheet, in lower case, to names of the estate. */
  readonly conveyors: ReadonlyMap<string, string>;
  /** The same; rows of meter readings and of what is reckoned (a mean) may stand among the points of a wide sheet. */
  readonly points: ReadonlyMap<string, PointMeaning>;
  /** In lower case. */
  readonly words: ReadonlyMap<string, WordMeaning>;
}

/** One form for names and words: letters alike, blanks single. */
export function wordKey(text: string): string {
  return text.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').trim();
}
