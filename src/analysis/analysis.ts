// What an analysis is: the estate that some texts make up, and what is to be said of it.

import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import type { Finding } from '../validation/finding.js';
import type { Suppression } from '../language/suppress.js';

export interface SourceText {
  readonly uri: string;
  readonly text: string;
}

/** Lines and columns from 1, columns in UTF-16 code units, the end exclusive. */
export interface TextLocation {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface Suppressed {
  readonly finding: Finding;
  readonly by: Suppression;
}

export interface Analysis {
  readonly estate: Estate;
  /** By file, line, column, code. */
  readonly findings: readonly Finding[];
  /** Findings that a comment with a reason silences. */
  readonly suppressed: readonly Suppressed[];
  /** How many findings wait until what cannot be read is mended, because they rest on it. */
  readonly heldBack: number;
  /** The texts that were read, by name. */
  readonly uris: readonly string[];
  /** Texts with a merge conflict that nobody has settled. While there is one, nothing may be forecast or planned. */
  readonly inConflict: readonly string[];
  /** The day that exceptions with an end were judged on: as given, or the newest record's. */
  readonly asOf: CalendarDay | undefined;
  locate(origin: Origin): TextLocation;
  textOf(origin: Origin): string;
  uriOf(source: number): string;
  sourceOf(uri: string): number | undefined;
}

/**
 * Looks for a photo that a text names: its size in bytes, `missing`, or undefined where nobody can look (a browser without a
 * disk), and then nothing is said of it. Only asked of paths that stay in the folder of their text.
 */
export type PhotoLook = (textUri: string, path: string) => number | 'missing' | undefined;

export interface AnalyseOptions {
  readonly photos?: PhotoLook | undefined;
  /** Judges `until` of exceptions; the newest record's day where left out, never today. */
  readonly asOf?: CalendarDay;
}
