// What happened, as written down: inspections with their readings in columns, relines, screw changes, meter and duty
// changes. Never edited to make the present true. Exposure, age and duty over time are worked out in history.ts.

import type { Conveyor, PanelsFitted, SafeguardKind } from './conveyor.js';
import type { LinedPiece } from './run-layout.js';
import type { Origin } from './origin.js';
import type { ReadingKind } from '../units/reading-kind.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';
import type { NameUse, Stated, StatedClock, StatedCount, StatedDay, Toleranced } from './stated.js';
import type { Stretch } from './stretch.js';

/** Hour-meter reading, and the tonnes counter where one is kept. */
export interface MeterReading {
  /** Undefined where nobody read it: the hours of that day are reckoned (history.ts). */
  readonly hours?: Stated<'duration'>;
  /** One standard deviation, where it was read with doubt: a fogged glass. */
  readonly error?: Stated<'duration'>;
  readonly tonnes?: Stated<'mass'>;
}

/** A photo by its path beside the text that names it. */
export interface PhotoUse {
  readonly path: string;
  readonly origin: Origin;
}

export type ConditionKind =
  | 'panel missing'
  | 'panel torn'
  | 'panel cracked'
  | 'panel lifted'
  | 'panel shifted'
  | 'joint open'
  | 'bolts loose'
  | 'bolts missing'
  | 'material behind liner'
  | 'product blocked'
  | 'spiral off centre'
  | 'spiral bolts loose'
  | 'spiral bent'
  | 'spiral weld cracked'
  | 'spiral cracked'
  | 'hold-down loose'
  | 'hold-down missing'
  | 'hold-down bent'
  | 'hold-down worn'
  | 'brace bent'
  | 'brace missing'
  | 'cover missing'
  | 'cover loose'
  | 'cover bent'
  | 'cover stuck'
  | 'cover leaking'
  | 'hatch missing'
  | 'hatch bent'
  | 'hatch stuck'
  | 'hatch leaking'
  | 'gate stuck'
  | 'gate leaking'
  | 'tail bearing'
  | 'thrust bearing'
  | 'gearbox'
  | 'motor'
  | 'coupling'
  | 'trough cracked'
  | 'trough leaking'
  | 'trough dented'
  | 'guard missing'
  | 'guard loose'
  | 'guard bent'
  | 'emergency stop dead'
  | 'pull cord dead'
  | 'pull cord broken'
  | 'pull cord slack'
  | 'interlock dead'
  | 'interlock bypassed'
  | 'zero-speed sensor dead'
  | 'zero-speed sensor bypassed'
  | 'level probe dead'
  | 'level probe bypassed'
  | 'blockage switch dead'
  | 'blockage switch bypassed'
  | 'cable damaged'
  | 'walkway damaged'
  | 'sign missing'
  /** Whatever no other kind has a word for: `about` and `words` say what. */
  | 'finding';

export type ConditionSeverity = 'slight' | 'serious' | 'urgent';

/** Where something is along a conveyor. */
export interface SeenPlace {
  /** The point, or the part, named instead of a chainage. */
  readonly point?: NameUse;
  /** The panel named instead of a chainage. */
  readonly panel?: PanelUse;
  /** The end named instead of a chainage; a drive is at the end that the conveyor says. */
  readonly end?: NameUse;
  /** Of a motor, a gearbox or a coupling that is said to be at the end where no drive is declared: that of a second drive. */
  readonly otherDrive?: 'head' | 'tail';
  /** Of a safeguard that is named by its own name, its part or its end: which of its kind that is, or may be. */
  readonly safeguard?: { readonly kind: SafeguardKind; readonly names: readonly string[] };
  /** Chainage, mm, as written, or where the point, the part, the panel or the end lies; undefined where none is said or known. */
  readonly at?: Stated<'length'>;
  /** The other end of a stretch, mm: above `at`. */
  readonly to?: Stated<'length'>;
  /** As seen in the direction of flow. */
  readonly clock?: StatedClock;
  /** Of the conveyor, seen in the direction of flow. */
  readonly side?: 'left side' | 'right side' | 'both sides';
}

/** One line about something wrong: that it is there, or what became of it. Which lines are one condition: domain/conditions. */
export interface ConditionLine extends SeenPlace {
  readonly kind: ConditionKind;
  /** Of a finding: the part it is of, and the words. */
  readonly about?: PartName;
  readonly words?: string;
  /** `closed`: put right; `not seen`: nobody could look. Undefined: it is there. */
  readonly answer?: 'closed' | 'not seen';
  /** How wide a gap, how far off or lifted, mm. */
  readonly size?: Stated<'length'>;
  /** A measure stands there and could not be read, which is told. */
  readonly unread?: true;
  /** How many bolts. */
  readonly count?: StatedCount;
  readonly aspect?: 'noise' | 'oil low' | 'oil dirty' | 'oil leak' | 'seal leaking' | 'flooded';
  readonly temperature?: Stated<'temperature'>;
  /** It was too hot, and nobody says how hot. */
  readonly hot?: true;
  /** What it was called where it was seen, and the day its panel was moved; `at` and `clock` are where it lies since. */
  readonly movedFrom?: { readonly words: string; readonly day: string };
  /** The liner was worn through here: a row of the readings says so too, and only then it tells of the rate. */
  readonly wornThrough: boolean;
  readonly severity?: ConditionSeverity;
  readonly photo?: PhotoUse;
  /** Put right on a day that was written down afterwards. */
  readonly closed?: StatedDay;
  readonly note?: string;
  readonly origin: Origin;
}

/** A place or stretch that nobody could look at, chainages in mm, the lower first. */
export interface NotLooked {
  readonly from: Stated<'length'>;
  readonly to: Stated<'length'>;
  readonly note?: string;
  readonly origin: Origin;
}

/** Steel left of the trough at a place, mm. */
export interface PlateReading {
  readonly at: Stated<'length'>;
  /** As seen in the direction of flow; undefined: at the bottom. */
  readonly clock?: StatedClock;
  readonly thickness: Stated<'length'>;
  readonly error?: Stated<'length'>;
  readonly photo?: PhotoUse;
  readonly note?: string;
  readonly origin: Origin;
}

/** A finding in words. */
export interface NotedFinding extends SeenPlace {
  readonly part?: string;
  readonly text: string;
  readonly origin: Origin;
}

/** A look that a record asks for: by a day, or so long after the record. When it falls due: asked-looks.ts. */
export interface AskedLook {
  readonly by?: StatedDay;
  /** In hours the machine's own, by its meter; in days or weeks those of the calendar. */
  readonly after?: Stated<'duration'>;
  /** What for, and who asks. */
  readonly note?: string;
  readonly asker?: string;
  readonly origin: Origin;
}

/** What was seen of the machine, in a look or while work was done. */
export interface SeenBeside {
  /** In words. */
  readonly remarks: readonly NotedFinding[];
  readonly photos: readonly (PhotoUse & { readonly note?: string })[];
  readonly conditions: readonly ConditionLine[];
  readonly asked: readonly AskedLook[];
}

/** A look, or work during which something may have been seen: each with a meter of its own. */
export type DatedRecord = Inspection | Reline | PanelsMoved | ScrewChange;

export interface Inspection extends SeenBeside {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly meter: MeterReading;
  readonly origin: Origin;
  readonly by?: string;
  /** Which way the inspector looked; readings in the columns are already mirrored to the direction of flow. */
  readonly view: {
    readonly direction: 'upstream' | 'downstream';
    readonly stated: boolean;
    readonly origin: Origin;
  };
  /** As written; places are chainages from the tail already. */
  readonly measuredFrom?: 'head' | 'tail';
  readonly gauge?: {
    readonly kind: 'ultrasonic' | 'depth gauge' | 'calliper' | 'by eye';
    readonly error?: Stated<'length'>;
    readonly origin: Origin;
  };
  readonly holdDownGaps: readonly {
    readonly at: Stated<'length'>;
    readonly gap: Stated<'length'>;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  readonly flights: readonly {
    readonly at: Stated<'length'>;
    readonly depth: Stated<'length'>;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  readonly flightDiameters: readonly {
    readonly at: Stated<'length'>;
    readonly diameter: Stated<'length'>;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  readonly wornWidths: readonly {
    readonly at: Stated<'length'>;
    readonly from: StatedClock;
    readonly to: StatedClock;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  readonly currents: readonly {
    readonly empty?: Stated<'current'>;
    readonly loaded?: Stated<'current'>;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  /** Of the screw, as counted. */
  readonly speeds: readonly {
    readonly speed: Stated<'rotation'>;
    readonly note?: string;
    readonly origin: Origin;
  }[];
  /** Where nobody could look. */
  readonly notLooked: readonly NotLooked[];
  readonly plates: readonly PlateReading[];
  /** As it was written, where a measure of it was corrected. */
  readonly written?: Inspection;
  /** Rows of this inspection in the estate's readings: first, and one past the last. */
  readonly firstRow: number;
  readonly endRow: number;
}

/** All readings of the estate in columns; row i of every column belongs to the same reading. */
export interface Readings {
  readonly count: number;
  /** Index into Estate.inspections; −1 for what was measured on the bench (`bench`). */
  readonly inspection: Int32Array;
  /** Index into Estate.places; -1 where the point's name is unknown. */
  readonly place: Int32Array;
  /** A ReadingKind. */
  readonly kind: Uint8Array;
  /** mm for a thickness, layer number for a colour, NaN otherwise. */
  readonly value: Float64Array;
  /** One standard deviation of the reading, mm; NaN where neither row nor gauge states one. */
  readonly error: Float64Array;
  /** Origin columns: see `originOf`. */
  readonly source: Int32Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Remarks on rows that have one, by row. */
  readonly notes: ReadonlyMap<number, string>;
  /** Photos of rows that have one, by row. */
  readonly photos: ReadonlyMap<number, PhotoUse>;
  /** Rows of old panels measured when a reline took them out. They come last of their conveyor, and no inspection has them. */
  readonly bench: ReadonlyMap<number, Reline>;
  /** Rows that were corrected later; the columns hold what counts now. */
  readonly corrected: ReadonlyMap<number, CorrectedReading>;
}

/** What a row has said over time: as first written, then as each correction that counts had it, by day. */
export interface CorrectedReading {
  readonly versions: readonly [ReadingVersion, ...ReadingVersion[]];
}

export interface ReadingVersion {
  /** Undefined for the line as first written. */
  readonly correction: Correction | undefined;
  readonly kind: ReadingKind;
  /** As in the columns. */
  readonly value: number;
  readonly error: number;
  readonly note: string | undefined;
  /** `7.4 mm`, `ivory showing`, `does not count`. */
  readonly words: string;
}

export function originOf(readings: Readings, row: number): Origin {
  // Row numbers come from the columns themselves; one out of range is our fault and shows as a zero origin.
  return { source: readings.source[row] ?? 0, start: readings.start[row] ?? 0, end: readings.end[row] ?? 0 };
}

/** A spot that is read again and again: a declared point, or a chainage and clock used in readings. */
export interface Place {
  readonly conveyor: Conveyor;
  /** The point's name, or `14.20 m 8:00`. */
  readonly name: string;
  /** Chainage, mm. */
  readonly at: number;
  /** Clock position in hours, as seen in the direction of flow. */
  readonly clock: number;
  readonly declared: boolean;
  readonly origin: Origin;
}

/** Of a reading that was found wrong later. The line itself stays as it was written. */
export interface Correction {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  /** As the inspection names it: a chainage from the end that it was measured from, a clock position as the inspector saw it. */
  readonly spot:
    | { readonly kind: 'point'; readonly point: NameUse }
    | { readonly kind: 'chainage'; readonly at: Stated<'length'>; readonly clock: StatedClock }
    | { readonly kind: 'panel'; readonly panel: PanelUse; readonly clock?: StatedClock }
    | {
        readonly kind: 'stretch';
        readonly from: Stated<'length'>;
        readonly to: Stated<'length'>;
        readonly clock?: StatedClock;
      }
    /** Every thickness of the look; every reading where it does not count. */
    | { readonly kind: 'all' };
  /** The day of the reading. */
  readonly read: StatedDay;
  /** What the line says that is meant, where the spot was read twice that day: a thickness, or the name of a colour. */
  readonly writtenAs?: Stated<'length'> | NameUse;
  readonly says:
    | {
        readonly kind: 'thickness';
        readonly thickness: Stated<'length'>;
        readonly error?: Stated<'length'>;
      }
    | { readonly kind: 'colour'; readonly colour: NameUse }
    /** So much more than was read, mm; below zero: less. */
    | { readonly kind: 'offset'; readonly offset: Stated<'length'> }
    | { readonly kind: 'trough showing' | 'not seen' | 'does not count' };
  readonly by?: string;
  /** Why. */
  readonly note?: string;
  readonly origin: Origin;
}

/** A measure beside the readings of the liner that was found wrong, or a condition that never was there. */
export interface Amendment {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  /** The day of the look. */
  readonly read: StatedDay;
  readonly of:
    /** Place and clock position as the look has them. */
    | {
        readonly kind: 'plate' | 'flight' | 'hold-down' | 'worn';
        readonly at: Stated<'length'>;
        readonly clock?: StatedClock;
        /** At a point, a part, a panel or an end: it lies where that lies, whichever way the look counts. */
        readonly byName?: true;
      }
    | { readonly kind: 'current'; readonly which?: 'empty' | 'loaded' }
    | { readonly kind: 'speed' | 'meter' }
    /** `gone`: the lines of the looks of that day which it speaks of. */
    | { readonly kind: 'condition'; readonly line: ConditionLine; readonly gone: readonly ConditionLine[] };
  /** What the line says that is meant, where the look says two things of it. */
  readonly writtenAs?: Stated;
  readonly says:
    | {
        readonly kind: 'thickness';
        readonly thickness: Stated<'length'>;
        readonly error?: Stated<'length'>;
      }
    | { readonly kind: 'gap'; readonly gap: Stated<'length'> }
    | { readonly kind: 'worn'; readonly from: StatedClock; readonly to: StatedClock }
    | { readonly kind: 'speed'; readonly speed: Stated<'rotation'> }
    | { readonly kind: 'depth'; readonly depth: Stated<'length'> }
    | { readonly kind: 'diameter'; readonly diameter: Stated<'length'> }
    | { readonly kind: 'current'; readonly empty?: Stated<'current'>; readonly loaded?: Stated<'current'> }
    | { readonly kind: 'meter'; readonly hours: Stated<'duration'> }
    | { readonly kind: 'does not count' };
  readonly by?: string;
  /** Why. */
  readonly note?: string;
  readonly origin: Origin;
}

export interface JudgedAmendment extends Amendment {
  readonly outcome: CorrectionOutcome;
  /** What it is of where it lies, in the direction of flow and from the tail; undefined where it hits nothing. */
  readonly lies?: Amendment['of'];
  /** As it counted before, as written; empty where it hits nothing. */
  readonly was: string;
  /** What the lines say that may be meant, where they are more than one. */
  readonly readTwice?: readonly string[];
}

/** What became of a correction. Only one that counts, or that a later one replaced, ever moved a number. */
export type CorrectionOutcome =
  | 'counts'
  | 'replaced'
  | 'no such look'
  | 'not read there'
  | 'read twice'
  | 'before the reading'
  | 'contradicted'
  | 'changes nothing'
  | 'unreadable';

export interface JudgedCorrection extends Correction {
  readonly outcome: CorrectionOutcome;
  /** Row of the readings; undefined where none was found. */
  readonly row: number | undefined;
}

export interface OldPanel {
  readonly spot:
    | { readonly kind: 'point'; readonly point: NameUse }
    /** A clock position in the direction of flow. */
    | { readonly kind: 'chainage'; readonly at: Stated<'length'>; readonly clock?: StatedClock }
    /** One that was not there; any other is settled as the chainage of its middle when the records are put together. */
    | { readonly kind: 'panel'; readonly panel: PanelUse; readonly clock?: StatedClock };
  /** Undefined: worn through. */
  readonly thickness?: Stated<'length'>;
  readonly error?: Stated<'length'>;
  readonly note?: string;
  readonly origin: Origin;
}

export interface Reline extends SeenBeside {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly meter: MeterReading;
  readonly liner: LinerSpecification;
  readonly linerUse?: NameUse;
  /** Where it names none and several liners lay: what went in again where; `liner` is then the first of them (same-again.ts). */
  readonly again?: readonly LinedPiece[];
  /** True where it names none and which of several went in cannot be known. */
  readonly unsure?: boolean;
  /** Empty: the whole liner. */
  readonly scope: readonly Stretch[];
  readonly fittingTemperature?: { readonly from: Stated<'temperature'>; readonly to: Stated<'temperature'> };
  readonly by?: string;
  readonly asFitted: readonly {
    readonly point: NameUse;
    /** Where no point lies, of a panel that was moved; then `point` is what a reading there is called. */
    readonly at?: Stated<'length'>;
    readonly clock?: StatedClock;
    readonly thickness: Stated<'length'>;
    readonly error?: Stated<'length'>;
    readonly origin: Origin;
  }[];
  readonly panelsFitted: readonly PanelsFitted[];
  /** What was left of panels that came out, measured on the bench where they had lain. */
  readonly oldPanels: readonly OldPanel[];
  /** What the gauge showed on new panels. */
  readonly panelThicknesses: readonly {
    readonly stretch: Stretch;
    readonly thickness: Stated<'length'>;
    readonly error?: Stated<'length'>;
    readonly origin: Origin;
  }[];
  /** What it showed wherever no point and no panel has a number of its own. */
  readonly newThickness?: {
    readonly thickness: Stated<'length'>;
    readonly error?: Stated<'length'>;
    readonly origin: Origin;
  };
  /** Steel measured while the liner was off. */
  readonly plates: readonly PlateReading[];
  readonly offcuts: readonly {
    readonly length: Stated<'length'>;
    readonly count: number;
    readonly origin: Origin;
  }[];
  readonly origin: Origin;
  /** No reline at all: panels that lay there already were fitted again, and their wear counts anew from what was measured. */
  readonly moved?: PanelsMoved;
  /** The look whose thicknesses are what was measured, where the record of the move has none. */
  readonly startLook?: Inspection;
}

/** Panels fitted again the other way round, or in each other's place. */
export interface PanelsMoved extends SeenBeside {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly meter: MeterReading;
  readonly moves: readonly PanelMove[];
  /** What was left at points on them, as they lie now. */
  readonly measured: Reline['asFitted'];
  readonly by?: string;
  readonly origin: Origin;
}

export interface PanelMove {
  readonly panel: PanelUse;
  /** The panel it changed places with; undefined where it was turned end for end. */
  readonly other?: PanelUse;
  readonly note?: string;
  readonly origin: Origin;
}

export type PanelUse = Extract<Stretch, { readonly kind: 'panels' }>;

export interface ScrewChange extends SeenBeside {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly meter: MeterReading;
  readonly screw: ScrewSpecification;
  /** Of a spiral in several lengths, what was renewed; undefined: all of it. */
  readonly scope?: ScrewStretch;
  /** What was measured of the screw that came out, where it had turned. */
  readonly taken?: Pick<Inspection, 'flights' | 'flightDiameters'>;
  readonly origin: Origin;
}

/** One length of a spiral, or several beside each other. */
export interface ScrewStretch {
  readonly from: Stated<'length'>;
  readonly to: Stated<'length'>;
  readonly origin: Origin;
}

export interface MeterChange {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  /** Reading of the meter taken out, and of the one put in. */
  readonly old: Stated<'duration'>;
  readonly new: Stated<'duration'>;
  readonly note?: string;
  readonly origin: Origin;
}

/** Steel welded into or onto the trough. */
export interface Patch {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly from: Stated<'length'>;
  readonly to: Stated<'length'>;
  /** In the direction of flow; undefined: all round. */
  readonly sector?: { readonly from: StatedClock; readonly to: StatedClock };
  readonly thickness: Stated<'length'>;
  readonly by?: string;
  readonly photo?: PhotoUse;
  readonly note?: string;
  readonly origin: Origin;
}

/** Parts that a finding or a piece of work can be about. */
export type PartName =
  | 'liner'
  | 'panel'
  | 'bolts'
  | 'spiral'
  | 'flight'
  | 'hold-down'
  | 'brace'
  | 'cover'
  | 'hatch'
  | 'gate'
  | 'trough'
  | 'drive'
  | 'drive plate'
  | 'gearbox'
  | 'thrust bearing'
  | 'tail bearing'
  | 'motor'
  | 'coupling'
  | SafeguardKind
  | 'cable'
  | 'walkway'
  | 'sign'
  | 'hopper'
  | 'drain';

/** Work on a day, outside a job. */
export interface Service {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  readonly part?: PartName;
  readonly place: SeenPlace;
  /** Undefined: as `words` say, or what `ended` does. */
  readonly work?:
    | 'oil changed'
    | 'oil topped up'
    | 'seal renewed'
    | 'bearings renewed'
    | 'greased'
    | 'aligned'
    | 'tightened'
    | 'renewed'
    | 'tried'
    | 'found good';
  /** Of the look that tells of it, as written; its place is a chainage from the tail already. */
  readonly measuredFrom?: 'head' | 'tail';
  /** What was done, in the author's words. */
  readonly words?: string;
  /** The condition that it says it closes. */
  readonly ended?: ConditionLine;
  readonly by?: string;
  readonly photo?: PhotoUse;
  readonly note?: string;
  readonly origin: Origin;
}

/** The drive from a day on: a power, a speed or both. Its speed is a DutyChange too, and the work of that day a Service. */
export interface DriveChange {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly date: StatedDay;
  /** Rated, of the motor. */
  readonly power?: Stated<'power'>;
  /** Of the screw. */
  readonly speed?: Stated<'rotation'>;
  readonly by?: string;
  readonly note?: string;
  readonly origin: Origin;
}

export interface DutyChange {
  readonly conveyor: Conveyor;
  readonly conveyorUse: NameUse;
  readonly from: StatedDay;
  /** Undefined: the hours go on as before. */
  readonly duty?: Toleranced<'duty'>;
  readonly speed?: Stated<'rotation'>;
  readonly note?: string;
  readonly origin: Origin;
}
