// What the server and its clients say to each other beyond the Language Server Protocol. Plain data only, so that a
// desktop process, a web worker and a webview can all send it.

/** A place in a text as the protocol counts it: lines and UTF-16 columns from 0. */
export interface SourcePosition {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}

/** Server to client, where the server cannot read the folder itself (web, virtual workspaces). */
export const listTexts = 'troughline/listTexts';
export interface ListTexts {
  readonly folder: string;
}
export type ListTextsAnswer = readonly string[];

export const readTexts = 'troughline/readTexts';
export interface ReadTexts {
  readonly uris: readonly string[];
}
/** In the order asked; null where a text is gone, a reason where it is there and is no text. */
export type ReadTextsAnswer = readonly (string | { readonly reason: string } | null)[];

/** Server to client after every analysis. */
export const estateChanged = 'troughline/estateChanged';
export interface EstateChanged {
  /** Grows by one with every change, so that a view knows whether it is stale. */
  readonly revision: number;
  readonly texts: number;
  readonly conveyors: number;
  readonly errors: number;
  readonly warnings: number;
  readonly information: number;
}

/** Client to server: what there is to show. */
export const listSubjects = 'troughline/listSubjects';
export interface Subject {
  /** As it is written in a record: `DG1`, or `Tarnholt.DG1` where two plants have a DG1. */
  readonly name: string;
  readonly title?: string;
  readonly plant?: string;
  /** Where it is declared. */
  readonly spot: SourcePosition;
}
export interface ConveyorSubject extends Subject {
  /** Date and meter of the newest record, as written; a new inspection starts from them. */
  readonly newest?: {
    readonly date: string;
    readonly meter: string;
    /** The same as a number, h, where the meter has not been changed since. */
    readonly hours?: number;
  };
  readonly inspections: number;
  /** What to do, as on the first page of the report; left out until the model has answered. */
  readonly todo?: string;
}
export interface ListSubjectsAnswer {
  readonly plants: readonly Subject[];
  /** The most urgent first, then by name. */
  readonly conveyors: readonly ConveyorSubject[];
  readonly jobs: readonly Subject[];
  /** The newest date in any record, or undefined where there is none. */
  readonly newestRecord?: string;
}

export type PreviewKind =
  'report' | 'programme' | 'work pack' | 'inspection sheet' | 'drawing' | 'comparison';

/** Client to server: a finished page to show. */
export const makePreview = 'troughline/makePreview';
export interface MakePreview {
  readonly kind: PreviewKind;
  /** Conveyor or job, by the name of its subject; a report without one covers the whole estate. Of a comparison, the revision. */
  readonly subject?: string;
  /** ISO 8601 date of the report; left out, the newest record's. */
  readonly asOf?: string;
  /** A text of the estate that is meant, where there are several. */
  readonly near?: string;
}
export type MakePreviewAnswer =
  | {
      readonly ok: true;
      readonly title: string;
      /** The whole page without scripts, to be saved. */
      readonly html: string;
      /**
       * The same for a view with a document of its own: a style sheet, and one element `.sheet` without style attributes.
       * Elements that stand for a line of text carry data-origin with a key of `origins`.
       */
      readonly styles: string;
      readonly body: string;
      readonly origins: Readonly<Record<string, SourcePosition>>;
      readonly revision: number;
    }
  | { readonly ok: false; readonly reason: string };

/** Server to client, in a browser only: the bytes of the solver that travels with the extension, read when first needed. */
export const readSolver = 'troughline/readSolver';
export type ReadSolverAnswer = Uint8Array<ArrayBuffer>;

/** Client to server: a new inspection to fill in. */
export const draftInspection = 'troughline/draftInspection';
export interface DraftInspection {
  readonly conveyor: string;
  readonly date: string;
  readonly meter: string;
  /** A text of the estate that is meant, where there are several. */
  readonly near?: string;
}
export interface DraftInspectionAnswer {
  /** A file name for it; the folder is the client's choice. */
  readonly fileName: string;
  /** Folder of the conveyor's newest inspection, or of the conveyor itself. */
  readonly folder: string;
  readonly text: string;
}

/** What the client says at start. */
export interface StartOptions {
  /** Address of a folder that holds a page `TL101.md` for every rule; the code of a finding leads there. */
  readonly rulePages?: string;
  /** The client answers listTexts and readTexts. */
  readonly clientReads?: boolean;
  readonly settings?: Settings;
}

/** Settings under `troughline.`; the server asks for them and has these defaults. */
export interface Settings {
  /** Folders, relative to a workspace folder, that are each an estate of their own; `*` stands for any one folder name. */
  readonly estates: readonly string[];
  readonly inlayHints: {
    readonly defaults: boolean;
    readonly chainage: boolean;
    readonly exposure: boolean;
    readonly wear: boolean;
  };
  readonly codeLens: { readonly conveyors: boolean };
  readonly diagnostics: { readonly information: boolean };
}

export const defaultSettings: Settings = {
  estates: [],
  inlayHints: { defaults: false, chainage: false, exposure: true, wear: true },
  codeLens: { conveyors: true },
  diagnostics: { information: true },
};
