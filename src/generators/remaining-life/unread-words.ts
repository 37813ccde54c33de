// What of the report's conveyors could not be read, as every other page says it.

import { unreadText } from '../../domain/model/unread.js';
import type { RemainingLife } from './remaining-life.js';

/** Undefined where everything is read. */
export function unreadIn({
  estate,
  conveyors,
}: Pick<RemainingLife, 'estate' | 'conveyors'>): string | undefined {
  return unreadText(
    estate,
    conveyors.map(({ conveyor }) => conveyor),
  );
}
