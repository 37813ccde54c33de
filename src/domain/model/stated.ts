// A quantity of the model: what the author stated, or a default that is shown as one (never silently).

import type { Dimension } from '../units/dimension.js';
import type { Quantity } from '../units/quantity.js';
import type { CalendarDay } from '../units/calendar.js';
import type { Origin } from './origin.js';

export interface Stated<D extends Dimension = Dimension> extends Quantity<D> {
  readonly origin: Origin;
  /** Present when the author did not state it: where the default comes from, in words for a hover. */
  readonly assumed?: string;
}

/** A length that nobody wrote, as if it had been written in mm. */
export function millimetres(value: number, origin: Origin): Stated<'length'> {
  return { dimension: 'length', value, text: `${value} mm`, origin };
}

/** A quantity with a stated tolerance or spread, e.g. `1200 mm ± 1 mm` or `110 h/week ± 15 %`. */
export interface Toleranced<D extends Dimension> {
  readonly nominal: Stated<D>;
  /** Absolute in the same dimension, or a ratio of the nominal. */
  readonly tolerance?: Stated<D> | Stated<'ratio'>;
}

export interface Range<D extends Dimension> {
  readonly from: Stated<D>;
  readonly to: Stated<D>;
}

export interface StatedDay {
  readonly day: CalendarDay;
  readonly origin: Origin;
}

/** Clock position, in hours from 0 (exclusive) to 12, 12 at the top, as seen in the direction of flow. */
export interface StatedClock {
  readonly hours: number;
  readonly text: string;
  readonly origin: Origin;
}

export interface StatedCount {
  readonly count: number;
  readonly origin: Origin;
}

/** Words of the author, as written. */
export interface StatedWords {
  readonly words: string;
  readonly origin: Origin;
}

/** A name used to refer to something; what it resolves to is beside it in the model. */
export interface NameUse {
  readonly name: string;
  readonly origin: Origin;
}
