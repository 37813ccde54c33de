// What the crew gives back for the records.

import type { WorkPack } from '../pack.js';
import { recordTemplate } from '../parts/records.js';
import type { PrintBlock } from './blocks.js';

export function recordBlocks(pack: WorkPack): PrintBlock[] {
  return [
    { kind: 'heading', level: 2, text: 'As fitted: what goes into the records' },
    {
      kind: 'text',
      text:
        'Write what was measured, not what was planned. Leave out what nobody measured; strike a run that was not fitted, ' +
        'of a part write its panels (scope panels 1 to 3 of run 2). Lengths run from the tail end of the run.',
    },
    { kind: 'code', text: recordTemplate(pack.asFitted) },
    {
      kind: 'table',
      form: true,
      columns: [
        { head: 'Left undone, or found on the way' },
        { head: 'Reported to', write: 40 },
        { head: 'By, date', write: 34 },
      ],
      rows: [
        ['', '', ''],
        ['', '', ''],
      ],
    },
  ];
}
