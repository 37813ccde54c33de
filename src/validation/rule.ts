// A rule is one file in rules/: hover text, `explain CODE`, the rule pages and the tests all come from this object.
// A check is pure and cheap: it runs while someone types, over the whole estate.

import type { CalendarDay } from '../domain/units/calendar.js';
import type { Estate } from '../domain/model/estate.js';
import type { PhotoUse } from '../domain/model/records.js';
import type { Problem } from '../domain/model/problem.js';
import type { Found, Severity } from './finding.js';
import type { RuleThreshold } from './threshold.js';

export interface RuleInput {
  readonly estate: Estate;
  readonly problems: readonly Problem[];
  /** The day that was asked for; left out, rules of time count from the newest record. */
  readonly asOf?: CalendarDay | undefined;
  /** Of every rule by its code, undefined where it has none. */
  readonly thresholds?: ReadonlyMap<string, RuleThreshold | undefined>;
  /** Size of a photo's file in bytes, or `missing`; undefined where nobody can look. */
  readonly photo?: ((use: PhotoUse) => number | 'missing' | undefined) | undefined;
}

/**
 * Where the lines of an example stand. `whole`: they are the whole estate. `estate`: blocks added to the sound estate of
 * example.ts; `specifications`: the same without its conveyor. Otherwise facts inside that block of the sound estate, in
 * place of its facts that start with the same word.
 */
export type Given =
  'whole' | 'estate' | 'specifications' | 'plant' | 'liner' | 'screw' | 'conveyor' | 'inspection' | 'job';

/** Facts of the sound estate's own blocks that stand otherwise for an example; see `Around` in example.ts. */
export type Around = Partial<Record<SoundBlock, string>>;

/** `neighbour`: a second conveyor DG2, like DG1 in everything that is not said. It is there only where an example asks for it. */
export type SoundBlock = 'plant' | 'liner' | 'screw' | 'conveyor' | 'neighbour' | 'inspection' | 'job';

/**
 * One text, wrong and right. The spot of the finding stands between « and »; what differs is written once, as `wrong|right`,
 * there or, where nothing is to be reported, between ‹ and ›.
 */
interface InOneText {
  readonly example: string;
}

/** Two texts, where they share too little to be one. */
interface InTwoTexts {
  /** The spot of the finding stands between « and ». */
  readonly bad: string;
  /** The same, right. */
  readonly good: string;
}

/** A further text: a border from either side, or a form that the example does not show. */
export interface RuleCase {
  /** What it shows, in a few words: `at the limit`. */
  readonly name: string;
  /** Stands where the rule's example stands. With a spot between « and » it is reported there, without one it is silent. */
  readonly text: string;
}

export type Rule = (InOneText | InTwoTexts) & {
  /** TL1xx the text itself, TL2xx geometry, TL3xx records, TL4xx jobs and orders, TL5xx wear. Never reused. */
  readonly code: `TL${number}`;
  readonly title: string;
  readonly severity: Severity;
  /**
   * What would have to be read in full for it to be told: a finding that follows from what is *not* said waits until the line that
   * may say it can be read. Empty where it follows from facts that are written, whatever else is not read.
   */
  readonly restsOn: readonly Premise[];
  /** `unused`: the text could go without a change of meaning. `advice`: nothing is wrong, something could be better. */
  readonly tags?: readonly RuleTag[];
  /** What happens on site if this is left as it is. */
  readonly why: string;
  /** What to do, in general. */
  readonly todo: string;
  /** The number it goes by, which a plant may set. */
  readonly threshold?: RuleThreshold;
  readonly given: Given;
  readonly around?: Around;
  readonly cases?: readonly RuleCase[];
  /** Photos that lie beside its examples, with their sizes in bytes; every other one is missing. Left out: nobody can look. */
  readonly photos?: Readonly<Record<string, number>>;
  /** True where a finding can come or go because days pass, without a change in the texts. */
  readonly byTheCalendar?: true;
  check(input: RuleInput): Iterable<Found>;
};

/**
 * `block`: all of the block it stands in. `looks`: every line of the conveyor's inspections but those that can only say what is
 * wrong or was put right. `conditions`: all of them but for colours that no layer has, which hold back what is told of wear and
 * nothing else. `history`: all its records, so which liner
 * and screw lay there when, and what the meter counted. `machine`: the conveyor's block, its plant, liners and screw.
 * `jobs`: every job of the conveyor.
 */
export type Premise = 'block' | 'looks' | 'conditions' | 'history' | 'machine' | 'jobs';

export type RuleTag = 'unused' | 'advice';
