// What the generators give to the scripts of the offline forms (src/views): plain data, as JSON in the page. Words are made by the
// generator; lengths in mm unless they are words.

export interface PhoneSheetData {
  /** Tells the entries of one sheet from those of another in the browser's storage. */
  readonly key: string;
  /** The conveyor as a record names it. */
  readonly qualified: string;
  readonly name: string;
  readonly title: string;
  readonly length: number;
  readonly asOf: string;
  readonly look: 'downstream' | 'upstream';
  readonly unit: 'mm' | 'in';
  readonly meter: {
    readonly last: number | null;
    readonly date: string | null;
    readonly about: number | null;
  };
  readonly tonnes: { readonly last: number | null; readonly date: string | null } | null;
  readonly cautions: readonly { readonly heading: string; readonly text: string }[];
  readonly isolations: readonly string[];
  readonly liners: readonly PhoneLiner[];
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
}

export interface PhoneLiner {
  readonly name: string;
  readonly thickness: number;
  readonly thicknessWords: string;
  readonly condemn: number;
  readonly condemnWords: string;
  readonly layers: readonly { readonly name: string }[];
}

export interface PhonePoint {
  readonly id: string;
  readonly label: string;
  /** How a row of the inspection begins. */
  readonly writes: string;
  /** Hours on the clock face. */
  readonly clock: number;
  readonly clockText: string;
  readonly liner: string;
  readonly where: readonly string[];
  readonly last: { readonly date: string; readonly words: string; readonly thickness: number | null } | null;
  readonly expect: {
    readonly words: string;
    readonly least?: number;
    readonly most?: number;
    readonly layers?: readonly string[];
  };
}

export interface AsFittedData {
  readonly key: string;
  readonly pack: string;
  readonly name: string;
  readonly qualified: string;
  readonly tonnes: boolean;
  readonly screw: string | null;
  readonly relines: readonly AsFittedReline[];
}

export interface AsFittedReline {
  readonly liner: string;
  readonly thickness: string;
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
  /** Chainages as planned, mm. */
  readonly from: number;
  readonly to: number;
}
