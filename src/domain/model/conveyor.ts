// A conveyor and its parts, placed by chainage: distance along the trough axis from the inside face of the tail-end
// plate, in the direction of flow, in mm. Repeated parts (`every … from … to …`) are already spelled out here.

import type { Origin } from './origin.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';
import type { Stretch } from './stretch.js';
import type { Plant } from './plant.js';
import type { NameUse, Range, Stated, StatedClock, StatedDay, Toleranced } from './stated.js';

export interface Conveyor {
  readonly name: string;
  readonly title?: string;
  readonly doc?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
  readonly plantUse?: NameUse;
  readonly plant: Plant;
  readonly length: Stated<'length'>;
  readonly incline: Stated<'angle'>;
  readonly trough: Trough;
  /** Least thickness of the trough's plate, mm: below it the trough is to be patched. */
  readonly minimumPlate: Stated<'length'>;
  /** Where the liner ends below the top of the trough; see liner-side.ts. */
  readonly linerSideHeight?: Stated<'length'>;
  readonly screwUse: NameUse;
  /** As named on the conveyor; what is fitted today follows from the screw changes (history.ts). */
  readonly screw: ScrewSpecification;
  readonly linerUse: NameUse;
  /** As named on the conveyor; what is fitted today follows from the relines (history.ts). */
  readonly liner: LinerSpecification;
  /** Liners that lay elsewhere than `liner` from the beginning; the later line where two speak of one place. */
  readonly linersAlong: readonly LinerAlong[];
  /** How the panels lay on the first day; runs that none of these names are laid out as they would be planned. */
  readonly panelsFitted: readonly PanelsFitted[];
  readonly drive?: Drive;
  readonly rotation?: { readonly sense: 'clockwise' | 'counter-clockwise'; readonly origin: Origin };
  readonly wornSector?: { readonly from: StatedClock; readonly to: StatedClock; readonly origin: Origin };
  readonly clearance?: Range<'length'>;
  readonly conveys?: { readonly material: string; readonly origin: Origin };
  /** What comes off it while people are at it, in the author's words; left out, the pack goes by what is conveyed. */
  readonly givesOff?: readonly string[];
  readonly bulkDensity?: Stated<'density'>;
  readonly fill?: Stated<'ratio'>;
  readonly capacity?: Stated<'mass flow'>;
  readonly resistanceFactor?: Stated<'ratio'>;
  readonly duty?: Toleranced<'duty'>;
  readonly risk?: Stated<'ratio'>;
  readonly contactRisk?: Stated<'ratio'>;
  readonly serviceTemperature?: Range<'temperature'>;
  readonly fittingTemperature?: Range<'temperature'>;
  readonly commissioned?: {
    readonly date: StatedDay;
    readonly meter: Stated;
    readonly tonnes?: Stated<'mass'>;
    readonly origin: Origin;
  };
  readonly wearBy: 'hours' | 'tonnes';
  readonly confinedSpace: boolean;

  readonly sections: readonly Section[];
  /** In chainage order. */
  readonly breaks: readonly Break[];
  readonly holdDowns: readonly HoldDown[];
  readonly braces: readonly Span[];
  readonly covers: readonly Cover[];
  readonly access: readonly Access[];
  readonly isolations: readonly Isolation[];
  readonly hatches: readonly Hatch[];
  readonly liftingPoints: readonly LiftingPoint[];
  /** What stops the screw, or keeps people from it, as declared; nothing is known of others. */
  readonly safeguards: readonly Safeguard[];
  /** Stops across the trough that panels fitted upward rest on. */
  readonly rests: readonly Span[];
  /** What stands open over the screw, with material above it. */
  readonly hoppers: readonly Hopper[];
  /** Where what is wet runs out of the trough. */
  readonly drains: readonly Span[];
  readonly points: readonly Point[];
}

export interface LinerAlong {
  readonly liner: LinerSpecification;
  readonly use: NameUse;
  readonly stretch: Stretch;
  readonly origin: Origin;
}

/** Lengths of the panels of a run as they were cut and fitted, from its tail end. */
export interface PanelsFitted {
  readonly run: Stretch;
  readonly lengths: readonly Stated<'length'>[];
  readonly origin: Origin;
}

/** Inside (steel) radius, straight side above the centre line, plate thickness. */
export interface Trough {
  readonly insideRadius: Stated<'length'>;
  readonly sideHeight: Stated<'length'>;
  readonly plate: Stated<'length'>;
  readonly material?: string;
  readonly origin: Origin;
}

export interface Drive {
  readonly end: 'head' | 'tail';
  readonly power?: Stated<'power'>;
  readonly speed?: Stated<'rotation'>;
  readonly origin: Origin;
}

/** Trough sections in order from the tail; joints are flanged. */
export interface Section {
  readonly name: string;
  readonly length: Stated<'length'>;
  /** Chainage of the section's tail end, mm. */
  readonly start: number;
  readonly origin: Origin;
}

/** What moves a slide gate; by hand it moves whether the machine is isolated or not. */
export type GateDrive = 'hand' | 'electricity' | 'hydraulics' | 'air';

export type BreakKind = 'inlet' | 'slide gate' | 'discharge' | 'end plate' | 'joint ring' | 'no liner';
export interface Break {
  readonly name: string;
  readonly kind: BreakKind;
  /** A discharge that a slide gate closes from below: nothing rests on it, and nobody is held back by it. */
  readonly gated?: true;
  /** Of a slide gate, where the author says it. */
  readonly drive?: GateDrive;
  readonly from: Stated<'length'>;
  /** Equal to `from` where the author gives one chainage. */
  readonly to: Stated<'length'>;
  /** Accumulated length error the break can take; 0 mm assumed for an end plate that states none (a firm end). */
  readonly allowance: Stated<'length'>;
  readonly note?: string;
  readonly origin: Origin;
  readonly nameOrigin?: Origin;
  /** True for the end plates that are there though the author names none. */
  readonly implied: boolean;
}

/** A slide gate, or a discharge with one below it. */
export function hasGate({ kind, gated }: Pick<Break, 'kind' | 'gated'>): boolean {
  return kind === 'slide gate' || gated === true;
}

/** Something between two chainages, or at one (from = to). */
export interface Span {
  readonly name?: string;
  readonly from: Stated<'length'>;
  readonly to: Stated<'length'>;
  readonly note?: string;
  readonly origin: Origin;
}

export interface HoldDown extends Span {
  readonly side: 'both sides' | 'left side' | 'right side';
}

export interface Cover extends Span {
  readonly mass?: Stated<'mass'>;
}

/** An opening; its length along the trough is its extent. */
export interface Hatch extends Span {
  readonly width?: Stated<'length'>;
}

export interface Hopper extends Span {
  readonly volume?: Stated<'volume'>;
}

export interface Access extends Span {
  readonly kind: 'ground' | 'stairs' | 'platform' | 'mobile platform' | 'scaffold';
  readonly height?: Stated<'length'>;
}

export interface Isolation {
  readonly name: string;
  readonly title?: string;
  readonly kind: 'electrical' | 'mechanical' | 'hydraulic' | 'pneumatic' | 'material' | 'gravity';
  readonly at?: Stated<'length'>;
  readonly origin: Origin;
}

export interface LiftingPoint {
  readonly name: string;
  readonly at: Stated<'length'>;
  readonly limit: Stated<'mass'>;
  readonly note?: string;
  readonly origin: Origin;
}

/** What stops the screw or keeps people from it, as lines, conditions and work name it. */
export const safeguardKinds = [
  'guard',
  'emergency stop',
  'pull cord',
  'interlock',
  'zero-speed sensor',
  'level probe',
  'blockage switch',
] as const;
export type SafeguardKind = (typeof safeguardKinds)[number];

export interface Safeguard {
  readonly kind: SafeguardKind;
  readonly name?: string;
  /** The part that it is at, by its name, or the end. */
  readonly point?: NameUse;
  readonly end?: NameUse;
  /** mm; undefined where no place is said or known. */
  readonly at?: Stated<'length'>;
  /** The other end of a stretch, mm: above `at`. */
  readonly to?: Stated<'length'>;
  readonly side?: 'both sides' | 'left side' | 'right side';
  readonly note?: string;
  readonly origin: Origin;
}

/** An inspection point. */
export interface Point {
  readonly name: string;
  readonly at: Stated<'length'>;
  readonly clock: StatedClock;
  readonly note?: string;
  readonly origin: Origin;
  readonly nameOrigin: Origin;
}
