// What the searches for a layout of panels work on: pieces in a row, and places that no joint should come near.

export interface KeepClear {
  readonly at: number;
  readonly clearance: number;
}

/** One piece as the searches see it: its length, and the panel it comes from. */
export interface PanelPiece {
  readonly length: number;
  readonly cutFrom: number;
}
