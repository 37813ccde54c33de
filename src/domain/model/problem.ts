// What could not be read or resolved while turning text into the model. Found by src/language, told to the author by the
// rules of src/validation (one rule a kind), so that reading never stops at the first slip.

import type { CalendarDay } from '../units/calendar.js';
import type { Dimension } from '../units/dimension.js';
import type { Origin } from './origin.js';

/** A line in words of its own about a part or a place, which says that what was wrong there is over. */
export interface SaidOver {
  readonly origin: Origin;
  readonly conveyor: string;
  readonly day: CalendarDay;
  /** What its line begins with: `serviced DG1 2026-01-02`; empty in a look. */
  readonly head: string;
  /** As the language names it; undefined where none is named. */
  readonly part?: string;
  /** Chainage, mm, or a name; undefined where no place is said. */
  readonly place?: { readonly at: number; readonly to?: number } | { readonly name: string };
  readonly side?: string;
  /** What it tells of that, in small letters with one blank between the words. */
  readonly told: string;
  /** As written, and what stands in quotes. */
  readonly said: string;
  readonly texts: readonly string[];
  /** Who did or saw it and what shows it, as written. */
  readonly tail: string;
  /** The line that is offered where nothing stands open. */
  readonly offered?: string;
}

/**
 * What is lost with a line that cannot be read: none of the facts of its block, but words for people; what is wrong or was put
 * right, and no reading; or any fact.
 */
export type Lacking = 'words' | 'conditions' | 'facts';

export type Problem = { readonly origin: Origin } & (
  | {
      readonly kind: 'syntax';
      readonly message: string;
      /** Any fact where it is left out. */ readonly lacks?: Lacking;
      /** The change that makes the likeliest line of it, where one is likeliest. */ readonly mend?: {
        readonly origin: Origin;
        readonly text: string;
        /** It says what was written, in the usual order. */ readonly isSure?: boolean;
      };
      /** Told instead where the conveyor has nothing of these names. */ readonly unnamed?: {
        readonly conveyor: string;
        readonly names: readonly string[];
        readonly message: string;
        readonly mend?: { readonly origin: Origin; readonly text: string; readonly isSure?: boolean };
      };
      /** It may say that something is over: what that is, those can tell who know what stands open. */ readonly over?: SaidOver;
    }
  | {
      readonly kind: 'missing unit';
      readonly text: string;
      readonly expected: Dimension;
      readonly fact: string;
    }
  | {
      readonly kind: 'unknown unit';
      readonly text: string;
      readonly unit: string;
      readonly expected: Dimension;
      readonly fact: string;
    }
  | {
      readonly kind: 'wrong dimension';
      readonly text: string;
      readonly found: Dimension;
      readonly expected: Dimension;
      readonly fact: string;
    }
  | {
      readonly kind: 'comma decimal';
      readonly text: string;
      /** Only where the comma can only be a decimal point. */ readonly corrected?: string;
      /** Otherwise the text both ways, decimal point first: `12,000 h` may be 12 h or 12000 h. */ readonly readings?: readonly [
        string,
        string,
      ];
    }
  | { readonly kind: 'not a number'; readonly text: string; readonly fact: string }
  | { readonly kind: 'out of range'; readonly text: string; readonly fact: string; readonly range: string }
  | {
      readonly kind: 'date form';
      readonly text: string;
      /** ISO form where it is certain. */ readonly corrected?: string;
      /** Otherwise both ISO forms: 03/04/2026 may be either month. */ readonly readings?: readonly [
        string,
        string,
      ];
    }
  | { readonly kind: 'no such date'; readonly text: string }
  | { readonly kind: 'clock form'; readonly text: string; readonly corrected?: string }
  | {
      readonly kind: 'missing fact';
      readonly block: string;
      readonly name: string;
      readonly fact: string;
      readonly example: string;
      /** Just after the block's opening brace. */ readonly insertAt: Origin;
    }
  | { readonly kind: 'repeated fact'; readonly block: string; readonly fact: string; readonly first: Origin }
  | { readonly kind: 'repeated name'; readonly what: string; readonly name: string; readonly first: Origin }
  | {
      readonly kind: 'unknown name';
      readonly what: string;
      readonly name: string;
      /** Names that exist, nearest first. */ readonly known: readonly string[];
      /** Where it exists after all, in words. */ readonly elsewhere?: string;
    }
  | {
      readonly kind: 'ambiguous name';
      readonly what: string;
      readonly name: string;
      readonly candidates: readonly string[];
    }
  | {
      readonly kind: 'unknown point';
      readonly point: string;
      readonly conveyor: string;
      readonly known: readonly string[];
      /** Other conveyors that have it. */ readonly elsewhere: readonly string[];
    }
  | {
      readonly kind: 'unknown colour';
      readonly colour: string;
      readonly liner: string;
      readonly known: readonly string[];
      readonly conveyor: string;
      /** mm; NaN where it has no place. */
      readonly chainage: number;
    }
  | {
      readonly kind: 'conflict marker';
      /** Lines (from 1) on which a conflict begins. */ readonly lines: readonly number[];
    }
  | {
      readonly kind: 'hidden character';
      /** `U+202E`. */ readonly name: string;
      /** How many stand there side by side. */ readonly count: number;
    }
  | {
      readonly kind: 'too many';
      /** `job Winter27`. */ readonly block: string;
      /** In the plural: `steps`. */ readonly what: string;
      readonly count: number;
      readonly most: number;
    }
  // A comment that silences a finding: without a reason, of a code that no rule has, hiding nothing, past its date.
  | { readonly kind: 'suppression without reason'; readonly code: string }
  | { readonly kind: 'suppression of unknown code'; readonly code: string }
  | { readonly kind: 'unused suppression'; readonly code: string; readonly isOneOfSeveral: boolean }
  | {
      readonly kind: 'expired suppression';
      readonly code: string;
      readonly until: string;
      /** The day it was judged on, ISO 8601. */ readonly asOf: string;
    }
);
export type ProblemKind = Problem['kind'];
