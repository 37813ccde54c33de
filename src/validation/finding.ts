// What a check has to say: what is wrong, where, why it matters on site, what to do. Text and places only; the editor
// makes a squiggle of it, the command line a line, a report a table row.

import type { Origin } from '../domain/model/origin.js';

export type Severity = 'error' | 'warning' | 'information';

/** One replacement; an origin with start = end is an insertion. */
export interface Edit {
  readonly origin: Origin;
  readonly text: string;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** At most one fix of a finding is the one to apply without asking. */
  readonly preferred?: boolean;
  /** Writes the one line that is offered for a line that cannot be read: somebody has to read it. Never beside `preferred`. */
  readonly offered?: boolean;
  /** Written after all other such lines: which it is hangs on what those say. */
  readonly later?: boolean;
}

/** What a rule yields; the catalogue adds the rest. */
export interface Found {
  readonly origin: Origin;
  /** Names the thing and the two facts that disagree, with units. One or two sentences. */
  readonly message: string;
  /** The next step, where it is more exact than the rule's own. */
  readonly todo?: string;
  /** What happens on site, where it is more exact than the rule's own: with the numbers of this case. */
  readonly why?: string;
  readonly related?: readonly { readonly origin: Origin; readonly message: string }[];
  readonly fixes?: readonly Fix[];
}

export interface Finding extends Found {
  /** True where days that passed since the newest record brought it, and no change in the texts. */
  readonly broughtByTheCalendar?: true;
  /** Permanent, never reused: `TL203`. */
  readonly code: string;
  readonly severity: Severity;
  readonly why: string;
  readonly todo: string;
}
