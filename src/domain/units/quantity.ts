// A number with its dimension: the only form in which a measured value crosses a door.
// `value` is in the base unit of the dimension (dimension.ts); `text` is what the author wrote, kept exactly for display.

import type { Dimension } from './dimension.js';

export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D;
  /** In the base unit of the dimension; always finite. */
  readonly value: number;
  /** As written by the author, or formatted by us where nobody wrote it. */
  readonly text: string;
  /** ISO 4217 code where the dimension is money or a rate of it. */
  readonly currency?: string;
}
