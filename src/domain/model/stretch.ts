// Part of a conveyor's length as an author names it; geometry/runs.ts turns it into chainages.

import type { NameUse, Stated, StatedCount } from './stated.js';
import type { Origin } from './origin.js';

export type RunUse =
  | { readonly by: 'number'; readonly number: StatedCount }
  /** Between two breaks, whichever is named first. */
  | { readonly by: 'breaks'; readonly break: NameUse; readonly other: NameUse }
  /** The run whose lower end (`above`) or upper end (`below`) is at the break. */
  | { readonly by: 'break'; readonly side: 'above' | 'below'; readonly break: NameUse };

export type Stretch =
  | { readonly kind: 'all'; readonly origin: Origin }
  | { readonly kind: 'run'; readonly run: RunUse; readonly origin: Origin }
  | {
      readonly kind: 'panels';
      readonly first: StatedCount;
      readonly last: StatedCount;
      readonly run: RunUse;
      readonly origin: Origin;
    }
  | {
      readonly kind: 'chainage';
      readonly from: Stated<'length'>;
      readonly to: Stated<'length'>;
      readonly origin: Origin;
    };
