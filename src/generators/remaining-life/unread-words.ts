// What the first page says where something that was written cannot be read: no number rests on it, and whoever reads the page
// has not seen what the check told.

import { capital, list } from '../../domain/units/wording.js';
import type { RemainingLife } from './remaining-life.js';

/** Undefined where everything is read. */
export function unreadText({
  estate,
  conveyors,
}: Pick<RemainingLife, 'estate' | 'conveyors'>): string | undefined {
  const { partly, wholly } = estate.unread ?? { partly: new Set(), wholly: [] };
  const names = conveyors.flatMap(({ conveyor }) => (partly.has(conveyor) ? [conveyor.name] : []));
  const sentences = [
    ...(names.length === 0
      ? []
      : [`something written of ${list(names, 'and')} cannot be read and is left out of what stands here.`]),
    ...(wholly.length === 0
      ? []
      : [
          `${list(wholly, 'and')} ${wholly.length === 1 ? 'is' : 'are'} left out: what describes the machine cannot be used.`,
        ]),
  ];
  return sentences.length === 0 ? undefined : sentences.map(capital).join(' ');
}
