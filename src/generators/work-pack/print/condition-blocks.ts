// What was found on the conveyor and is still open, on the cover of the pack: the crew is there, so it is settled who puts it right.

import type { WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';

export function conditionBlocks(pack: WorkPack): PrintBlock[] {
  if (pack.conditions.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: 'Found and still open on this conveyor',
      form: true,
      columns: [
        { head: 'What' },
        { head: 'Where' },
        { head: 'Known of it' },
        { head: 'This job' },
        { head: 'Put right, by, date', write: 32 },
      ],
      origins: pack.conditions.map(({ origin }) => origin),
      rows: pack.conditions.map((row) => [
        row.severity === '' ? row.what : `${row.what}, ${row.severity}`,
        row.place,
        [row.since, row.notes].filter(Boolean).join('; '),
        row.before === undefined
          ? row.ends
            ? 'takes it away'
            : (row.again ?? 'does not touch it: settle who does')
          : `job ${row.before} before it takes it away (planned, not done)`,
        '',
      ]),
    },
  ];
}
