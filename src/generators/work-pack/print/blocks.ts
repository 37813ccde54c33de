// The pieces every print of a pack is put together from, so that paper, Markdown and screen say the same words.

import type { Origin } from '../../../domain/model/origin.js';
import type { Drawing } from '../../drawing/drawing-sheet.js';

export interface Column {
  readonly head: string;
  /** Right-aligned figures. */
  readonly number?: boolean;
  /** For filling in by hand: width on paper, mm. */
  readonly write?: number;
  /** Width on paper, mm, where the words would take more than is good. */
  readonly width?: number;
}

export interface CautionWords {
  readonly heading: string;
  readonly text: readonly string[];
  readonly sources?: string;
}

/** Cells are text; a line break in one begins a new line. */
export type PrintBlock =
  | { readonly kind: 'heading'; readonly level: 2 | 3; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly strong?: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly strong?: boolean }
  | {
      readonly kind: 'table';
      readonly caption?: string;
      readonly columns: readonly Column[];
      readonly rows: readonly (readonly string[])[];
      /** What a row stands for in the text, row by row, where it does. */
      readonly origins?: readonly Origin[];
      /** Tall rows for handwriting. */
      readonly form?: boolean;
      /** Low rows, to be looked up and not written in. */
      readonly dense?: boolean;
      /** Narrow enough to be printed in two halves side by side. */
      readonly halves?: boolean;
      readonly strong?: readonly number[];
    }
  | ({ readonly kind: 'caution' } & CautionWords)
  /** Side by side where the paper is wide enough. */
  | { readonly kind: 'cautions'; readonly cautions: readonly CautionWords[] }
  | { readonly kind: 'code'; readonly text: string }
  | { readonly kind: 'drawing'; readonly drawing: Drawing };
