// What is bought to a specification and used by many conveyors: the layered liner and the screw.

import type { Origin } from './origin.js';
import type { Range, Stated, StatedCount, StatedWords, Toleranced } from './stated.js';

export interface LinerSpecification {
  readonly name: string;
  readonly title?: string;
  readonly doc?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly material: string;
  /** From the screw side outwards; at least one. */
  readonly layers: readonly Layer[];
  /** Sum of the layers, or the stated thickness where the author gives one. */
  readonly thickness: Stated<'length'>;
  /** Purchased thickness tolerance, ±. */
  readonly thicknessTolerance?: Stated<'length'>;
  /** Spread of a layer's depth as a ratio of that depth (standard deviation). */
  readonly layerTolerance: Stated<'ratio'>;
  readonly panelLengths: readonly Stated<'length'>[];
  readonly panelTolerance: Stated<'length'>;
  readonly stockLengths: readonly Stated<'length'>[];
  /** Remaining thickness at which the liner must be changed. */
  readonly condemn: Stated<'length'>;
  readonly bolt?: Bolt;
  /** What holds it where no bolt does, or beside them. */
  readonly heldBy?: StatedWords;
  /** Overall, with the countersunk head. */
  readonly boltLength?: Stated<'length'>;
  readonly tighteningTorque?: Stated<'torque'>;
  readonly drill?: Drill;
  readonly sealant?: StatedWords;
  readonly joint: Joint;
  /** Where stated: panels may be fitted again turned end for end, so that their worn side comes to lie on the other side. */
  readonly turning?: { readonly origin: Origin };
  readonly expectedLife?: Toleranced<'duration'>;
  readonly density: Stated<'density'>;
  readonly expansion: Stated<'expansion'>;
  readonly modulus: Stated<'stress'>;
  readonly maximumTemperature: Stated<'temperature'>;
  readonly soundVelocity?: Toleranced<'velocity'>;
  readonly price?: Stated<'money a length'>;
}

export interface Layer {
  readonly name: string;
  readonly thickness: Stated<'length'>;
  readonly origin: Origin;
}

export interface Bolt {
  readonly size: string;
  /** Rows of bolts across the sheet. */
  readonly rows?: StatedCount;
  readonly pitch?: Stated<'length'>;
  readonly countersink?: Stated<'length'>;
  readonly origin: Origin;
}

/** The hole for a bolt through liner and trough. */
export interface Drill {
  readonly size: Stated<'length'>;
  /** How deep the bit goes in from the screw side. */
  readonly depth?: Stated<'length'>;
  readonly origin: Origin;
}

export type Joint =
  | { readonly policy: 'butted'; readonly origin: Origin; readonly assumed?: string }
  | {
      readonly policy: 'gap';
      readonly gap: Stated<'length'>;
      readonly origin: Origin;
      readonly assumed?: string;
    };

export interface ScrewSpecification {
  readonly name: string;
  readonly title?: string;
  readonly doc?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly kind:
    { readonly kind: 'shaftless' } | { readonly kind: 'shafted'; readonly shaft: Stated<'length'> };
  readonly outsideDiameter: Stated<'length'>;
  readonly pitch: Stated<'length'>;
  readonly hand?: 'left' | 'right';
  /** Radial width and thickness of the flat bar. */
  readonly flight?: {
    readonly width: Stated<'length'>;
    readonly thickness: Stated<'length'>;
    readonly origin: Origin;
  };
  readonly innerFlight?: {
    readonly outside: Stated<'length'>;
    readonly inside: Stated<'length'>;
    readonly pitch: Stated<'length'>;
    readonly thickness: Stated<'length'>;
    readonly origin: Origin;
  };
  /** Stretches with another pitch than the rest, chainages in mm. */
  readonly pitches?: readonly { readonly pitch: Stated<'length'>; readonly along: Range<'length'> }[];
  readonly drivePlate?: { readonly bolts: StatedCount; readonly size: string; readonly origin: Origin };
  readonly material?: string;
  readonly density: Stated<'density'>;
  /** Remaining flight depth at which the screw must be changed. */
  readonly condemnFlight?: Stated<'length'>;
  readonly price?: Stated<'money'>;
}
