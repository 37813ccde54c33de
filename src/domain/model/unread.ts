// What is said where something that was written cannot be read: no number rests on it, and whoever holds a page has not seen what
// the check told. One sentence for report, sheet, pack, programme, tables and calendar.

import { capital, list } from '../units/wording.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';

/** Undefined where everything is read. */
export function unreadText({ unread }: Estate, conveyors: readonly Conveyor[]): string | undefined {
  const { partly, wholly } = unread ?? { partly: new Set<Conveyor>(), wholly: [] };
  const names = conveyors.flatMap((conveyor) => (partly.has(conveyor) ? [conveyor.name] : []));
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
