// The scale of a drawing: the largest of the recommended reductions (ISO 5455: 1, 2 and 5 times powers of ten) at which
// it still fits, so that a rule laid on the print measures the machine.

const steps = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000] as const;

export interface Scale {
  /** Millimetres of machine to one millimetre of paper, at least 1. */
  readonly reduction: number;
  /** `1:50`. */
  readonly text: string;
}

/** The largest recommended scale at which `width` by `height` (mm of machine) fits into `room` (mm of paper). */
export function scaleFor(width: number, height: number, room: { readonly width: number; readonly height: number }): Scale {
  const needed = Math.max(width / room.width, height / room.height);
  return scaleOf(steps.find((step) => step >= needed) ?? Math.ceil(needed / 10000) * 10000);
}

export function scaleOf(reduction: number): Scale {
  return { reduction, text: `1:${reduction}` };
}
