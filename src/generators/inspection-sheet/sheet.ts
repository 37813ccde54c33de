// The inspection sheet as a value: where to look, what was seen last, what to expect now, and what is to be written down.
// Lengths and chainages in mm, exposures in running hours or tonnes; clock positions in hours.

import type { DeclaredSafeguard } from '../../domain/conditions/safeguards-declared.js';
import type { Origin } from '../../domain/model/origin.js';
import type { Drawing } from '../drawing/drawing-sheet.js';

export interface InspectionSheet {
  readonly formatVersion: 1;
  /** Date the records were read at, ISO 8601. */
  readonly asOf: string;
  /** Identification of the sheet and its drawings. */
  readonly number: string;
  readonly plant: string;
  readonly conveyor: {
    readonly name: string;
    readonly origin: Origin;
    /** As an inspection block names it. */ readonly qualified: string;
    /** What tells it from a conveyor of another estate that has the same names. */ readonly identity: string;
    readonly title?: string;
    readonly length: number;
    readonly conveys?: string;
  };
  /** Which way the inspector looks; every clock position of the sheet is as seen that way. */
  readonly look: 'downstream' | 'upstream';
  /** Where that choice comes from. */
  readonly lookBecause: string;
  readonly meter: MeterExpected;
  /** Whether the tonnes counter is read too. */
  readonly tonnes: { readonly last: number | undefined; readonly date: string | undefined } | undefined;
  readonly confinedSpace: boolean;
  readonly cautions: readonly { readonly heading: string; readonly text: string }[];
  readonly isolations: readonly {
    readonly name: string;
    readonly title: string;
    readonly kind: string;
    readonly at: number | undefined;
  }[];
  /** In which thicknesses are read here: as the liner's layers are declared. */
  readonly unit: 'mm' | 'in';
  readonly liners: readonly LinerSeen[];
  /** Which of them lies where, chainages in mm, from the tail. */
  readonly lying: readonly { readonly from: number; readonly to: number; readonly liner: string }[];
  readonly points: readonly SheetPoint[];
  /** How a page that is filled in on another day finds what to expect: the rows of each point's `table`. */
  readonly running: {
    readonly measure: 'h' | 't';
    /** Day of the last reading of the counter, ISO 8601, and what it showed. */
    readonly from: string;
    readonly last: number | undefined;
    /** Running a day from that day on, each until the next begins; empty where nobody declares a duty. */
    readonly daily: readonly { readonly from: string; readonly running: number }[];
    readonly perCount: number;
    /** h or t after the last reading, rising from 0. */
    readonly ahead: readonly number[];
  };
  readonly holdDowns: readonly {
    readonly name: string;
    readonly at: number;
    readonly side: string;
    readonly lastGap: number | undefined;
    readonly lastDate: string | undefined;
  }[];
  /** As declared, each to be looked at, and tried by the site's rules. */
  readonly safeguards: readonly DeclaredSafeguard[];
  /** What is open, to be answered one by one; `answer` names it in the language. */
  readonly openConditions: readonly {
    readonly what: string;
    readonly place: string;
    readonly severity: string;
    readonly since: string;
    readonly notes: string;
    readonly answer: string;
    /** The same with a blank for what it measures. */
    readonly asks: string;
  }[];
  /** Bare steel, where the plate is to be read; chainages in mm. */
  readonly bare: readonly { readonly from: number; readonly to: number; readonly last: string }[];
  /** Remarks of the last inspection, to be looked at again. */
  readonly openRemarks: readonly {
    readonly date: string;
    readonly part: string;
    readonly at: number | undefined;
    readonly text: string;
  }[];
  /** What is measured beside the points, each with its last value. */
  readonly lastRead: LastRead;
  readonly drawings: readonly Drawing[];
}

export interface MeterExpected {
  readonly last: { readonly value: number; readonly date: string } | undefined;
  /** About what the hour meter should show on the date of the sheet; undefined where no duty tells. */
  readonly about: number | undefined;
  /** Hours a day from the last reading on, each until the next begins; empty where no duty tells. */
  readonly daily: readonly { readonly from: string; readonly running: number }[];
  readonly basis: string;
}

/** In words with the day it was read; undefined where it never was. Of a look with several, the last of each kind. */
export interface LastRead {
  readonly empty: string | undefined;
  readonly loaded: string | undefined;
  /** Of the screw: last counted, otherwise as recorded. */
  readonly speed: string | undefined;
  /** Of the screw that turns now, chainages in mm, tail first. */
  readonly flights: readonly {
    readonly at: number;
    readonly depth: string | undefined;
    readonly diameter: string | undefined;
  }[];
  /** Of bearings and gearbox, `gearbox temperature`; what stands open is asked for there. */
  readonly drive: readonly { readonly what: string; readonly words: string }[];
  /** As the inspector sees it, tail first. */
  readonly wornWidths: readonly { readonly at: number; readonly words: string }[];
  /** Where the plate was read and the steel is not bare now (from outside), tail first. */
  readonly plates: readonly { readonly at: number; readonly clock: string; readonly words: string }[];
  /** Of the last look that names one: `ultrasonic ± 0.3 mm`. */
  readonly gauge: string | undefined;
}

export interface LinerSeen {
  readonly name: string;
  readonly thickness: number;
  readonly condemn: number;
  /** From the screw side. `least` is what is left, in mm, when the layer is just worn through. */
  readonly layers: readonly { readonly name: string; readonly most: number; readonly least: number }[];
}

export interface SheetPoint {
  /** The declared point, or the newest reading of a place that is none. */
  readonly origin: Origin;
  /** A declared point's name, or undefined for a place read before by chainage and clock. */
  readonly name: string | undefined;
  /** How a row of the inspection block begins: `P1`, or `at 14.20 m clock 4:00`. */
  readonly writes: string;
  readonly at: number;
  readonly fromHead: number;
  /** As the inspector sees it, hours. */
  readonly clock: number;
  readonly clockText: string;
  readonly liner: string;
  readonly run: string;
  readonly panel: number | undefined;
  readonly cover: string;
  readonly access: string;
  readonly note: string;
  readonly last: LastSeen | undefined;
  /** mm when its layers were whole: as fitted, but for a panel that was moved as it was bought. */
  readonly fitted: number;
  /** On the date of the sheet. */
  readonly expect: Expectation;
  /** Least and most, mm, one each for `running.ahead`; undefined where nothing can be said. */
  readonly table: { readonly least: readonly number[]; readonly most: readonly number[] } | undefined;
}

export interface LastSeen {
  readonly date: string;
  readonly words: string;
  /** mm where a thickness was read. */
  readonly thickness: number | undefined;
}

/**
 * What a gauge should read on the sheet's date, mm, rounded outwards as it is printed, and the layers that may show: from the model
 * of the report, 98 of 100 right readings lie between.
 */
export type Expectation =
  | {
      readonly kind: 'range';
      readonly least: number;
      readonly most: number;
      readonly layers: readonly string[];
      readonly basis: string;
      readonly mayBeAtLimit: boolean;
    }
  | { readonly kind: 'open'; readonly most: number; readonly reason: string }
  | { readonly kind: 'worn through'; readonly reason: string };
