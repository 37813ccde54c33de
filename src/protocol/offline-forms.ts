// What the generators give to the scripts of the offline forms (src/views): plain data, as JSON in the page. Words are made by the
// generator; lengths in mm unless they are words.

export type Look = 'downstream' | 'upstream';

export interface PhoneSheetData {
  /** Tells the entries of one machine from those of another in the browser's storage, whenever its page was made. */
  readonly key: string;
  /** The conveyor as a record names it. */
  readonly qualified: string;
  readonly name: string;
  readonly title: string;
  readonly length: number;
  readonly asOf: string;
  /** Which way the page was made for; the inspector may choose the other. */
  readonly look: Look;
  readonly unit: 'mm' | 'in';
  readonly meter: { readonly last: number | null; readonly date: string | null };
  readonly tonnes: { readonly last: number | null; readonly date: string | null } | null;
  readonly running: PhoneRunning;
  readonly cautions: readonly { readonly heading: string; readonly text: string }[];
  readonly isolations: readonly string[];
  readonly liners: readonly PhoneLiner[];
  /** Which of them lies where, chainages in mm, for places that are added on the page. */
  readonly lying: readonly { readonly from: number; readonly to: number; readonly liner: string }[];
  readonly points: readonly PhonePoint[];
  readonly holdDowns: readonly {
    readonly name: string;
    /** Metres, as the language reads them. */
    readonly at: string;
    readonly place: string;
    readonly last: string;
  }[];
  /** What stands open, to be answered; `answer` is how a line of the inspection names it. */
  readonly conditions: readonly { readonly what: string; readonly known: string; readonly answer: string }[];
  /** What may be found wrong, in the words of the language. */
  readonly kinds: readonly PhoneConditionKind[];
  /** Findings of the last round that nobody has taken back. */
  readonly open: readonly {
    readonly date: string;
    readonly part: string;
    /** Metres or feet, as the fields of the page take it; empty where not known. */
    readonly at: string;
    readonly place: string;
    readonly text: string;
  }[];
}

export interface PhoneConditionKind {
  readonly kind: string;
  /** Heading above its button. */
  readonly group: string;
  /** What is measured of it, and whether a line without that is of little use. */
  readonly measure: 'length' | 'count' | 'none';
  readonly needed: boolean;
  /** Whether it lies somewhere along the trough. */
  readonly place: boolean;
  readonly mayBeThrough: boolean;
  readonly aspects: readonly string[];
}

/** How much has run at a date or a counter that is typed on the page. */
export interface PhoneRunning {
  readonly measure: 'h' | 't';
  /** Day of the last reading of the counter that wear follows. */
  readonly from: string;
  /** Hours, or tonnes, a day from that day on, each until the next begins. */
  readonly daily: readonly { readonly from: string; readonly running: number }[];
  /** Hours a day by the same duties, for the meter that should be read. */
  readonly hoursDaily: readonly { readonly from: string; readonly running: number }[];
  /** What an hour or a tonne on the counter counts for. */
  readonly perCount: number;
  /** h or t after the last reading, rising from 0: where the points' tables are told. */
  readonly ahead: readonly number[];
}

export interface PhoneLiner {
  readonly name: string;
  readonly thickness: number;
  readonly thicknessWords: string;
  readonly condemn: number;
  readonly condemnWords: string;
  /** From the screw side, thickness in mm. */
  readonly layers: readonly { readonly name: string; readonly thickness: number }[];
}

export interface PhonePoint {
  readonly id: string;
  /** As it is met by someone who looks that way. */
  readonly seen: Readonly<Record<Look, PhoneView>>;
  readonly liner: string;
  /** mm when fitted. */
  readonly fitted: number;
  readonly where: readonly string[];
  readonly last: { readonly date: string; readonly words: string; readonly thickness: number | null } | null;
  /** From the report's model: least and most mm a gauge should read, one each for `running.ahead`; or why nothing is expected. */
  readonly expect:
    | { readonly least: readonly number[]; readonly most: readonly number[]; readonly basis: string }
    | { readonly words: string };
}

export interface PhoneView {
  readonly label: string;
  /** How a row of the inspection begins. */
  readonly writes: string;
  /** Hours on the clock face. */
  readonly clock: number;
  readonly clockText: string;
}

export interface AsFittedData {
  readonly key: string;
  readonly pack: string;
  readonly name: string;
  readonly qualified: string;
  readonly tonnes: boolean;
  /** In which lengths and thicknesses are typed: as the machine's liner is declared. */
  readonly unit: 'mm' | 'in';
  readonly meter: { readonly last: number | null; readonly date: string | null };
  readonly window: { readonly from: string; readonly to: string } | null;
  readonly screw: string | null;
  readonly relines: readonly AsFittedReline[];
}

export interface AsFittedReline {
  readonly liner: string;
  /** Nominal, in words of the form's unit, and in mm. */
  readonly thickness: string;
  readonly nominal: number;
  readonly runs: readonly AsFittedRun[];
  readonly points: readonly AsFittedPoint[];
}

export interface AsFittedPoint {
  readonly name: string;
  readonly at: string;
  readonly clock: string;
  /** The run and panels it lies on; two panels where it lies on a joint. */
  readonly run: number;
  readonly panels: readonly number[];
}

export interface AsFittedRun {
  readonly run: number;
  /** Every panel of the run is renewed. */
  readonly whole: boolean;
  /** The panels are numbered as those that lie there are, so that a part can be named by panels. */
  readonly numbered: boolean;
  /** In the order of the work. */
  readonly panels: readonly AsFittedPanel[];
}

export interface AsFittedPanel {
  readonly panel: number;
  readonly planned: string;
  /** The same, mm: of the panel itself, without the gap of its joints. */
  readonly length: number;
  /** Chainages as planned, mm. */
  readonly from: number;
  readonly to: number;
}
