// The sheet of a text with an unsettled merge conflict: its one problem, and the names of its blocks in both versions, so that
// other texts which refer to them are not told that they do not exist. No value, no record, no reading.

import type { MergeConflict } from './conflict.js';
import { sidesOf } from './conflict.js';
import { emptySheet, lower } from './lower.js';
import { parseText, prepare } from './parse.js';
import type { Named, NamedConveyor, Sheet } from './sheet.js';

export function namesAlone(text: string, source: number, uri: string, conflict: MergeConflict): Sheet {
  const origin = { source, start: conflict.start, end: conflict.end };
  const sides = sidesOf(text).map((side) => lower(parseText(side, prepare(side)), source, uri));
  const names = (kind: 'plants' | 'liners' | 'screws'): readonly Named<never>[] =>
    [...new Set(sides.flatMap((sheet) => sheet[kind].map(({ name }) => name)))].map((name) => ({
      name,
      origin,
      unfinished: true,
    }));
  const conveyors = new Map<string, NamedConveyor>();
  for (const { name, plantUse } of sides.flatMap((sheet) => sheet.conveyors))
    conveyors.set(`${plantUse?.name ?? ''}.${name}`, {
      name,
      origin,
      unfinished: true,
      unplaced: [],
      ...(plantUse ? { plantUse: { name: plantUse.name, origin } } : {}),
    });
  return {
    ...emptySheet(source, uri, [{ kind: 'conflict marker', origin, lines: conflict.lines }]),
    plants: names('plants'),
    liners: names('liners'),
    screws: names('screws'),
    conveyors: [...conveyors.values()],
  };
}
