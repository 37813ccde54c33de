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
        'Fill in what was measured, not what was planned; leave out lines that nobody measured, ' +
        'and strike the scope of a run that was not fitted: ' +
        'of a part write its panels, as in scope panels 1 to 3 of run 2. ' +
        'Panel lengths run from the tail end of their run. ' +
        'The form for the phone gives back the same text ready to commit.',
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
        ['', '', ''],
      ],
    },
  ];
}
