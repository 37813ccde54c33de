// One section of what the records say beside the wear, as the page and the comment print it.

import type { Origin } from '../../../domain/model/origin.js';
import type { ShownPhoto } from './photos.js';

export interface RecordSection {
  readonly title: string;
  /** Said first, each a paragraph. */
  readonly notes: readonly string[];
  readonly tables: readonly RecordTable[];
  /** Said after the tables, each with its full stop. */
  readonly lines: readonly string[];
  readonly photos: readonly ShownPhoto[];
}

export interface RecordTable {
  readonly caption?: string;
  readonly heads: readonly RecordHead[];
  readonly rows: readonly (readonly string[])[];
  /** Of each row, where one line of the records stands behind it; left out where none does. */
  readonly origins?: readonly Origin[];
}

/** A day is never broken over two lines. */
export type RecordHead = string | { readonly head: string; readonly number?: true; readonly class?: 'day' };
