// The scale of a drawing, `1:50`: reductions are the recommended ones (ISO 5455: 1, 2 and 5 times powers of ten), so that a rule
// laid on the print measures the machine.

export interface Scale {
  /** Millimetres of machine to one millimetre of paper, at least 1. */
  readonly reduction: number;
  /** `1:50`. */
  readonly text: string;
}

export function scaleOf(reduction: number): Scale {
  return { reduction, text: `1:${reduction}` };
}
