// A look that was measured from the head is the look written right: the same findings, the same report, page for page, but for where
// the lines stand. What goes by the name of a point, by a part, a panel or an end lies where it lies.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';
import { works } from '../generators/remaining-life/story.js';

// The machine is 6 m long.
const machine = works.replace(/}\n$/, '  hatch H1 at 2 m to 2.6 m\n  emergency stop at tail\n}\n');
const fromHead = [
  'P1 thickness 10.4 mm',
  'at 3.3 m clock 5:00 thickness 10.1 mm',
  'from 1 m to 2 m clock 5:00 colour ivory',
  'from 3 m to 3.5 m not seen "ice"',
  'panel 1 of run 1 colour ivory',
  'panel torn at 1 m serious',
  'hatch stuck at H1',
  'finding from 1 m to 2.5 m "scored"',
  'not seen from 4 m to 5 m',
  'plate at 1.5 m thickness 3.6 mm',
  'plate from 2 to 2.5 m thickness 3.5 mm',
  'flight at 2.5 m depth 55 mm',
  'worn at 2 m clock 4:40 to 5:50',
  'emergency stop dead at tail',
  'serviced brace renewed at 1.2 m',
  'serviced closed panel torn at 1 m "welded"',
];
const fromTail = [
  'P1 thickness 10.4 mm',
  'at 2.70 m clock 5:00 thickness 10.1 mm',
  'from 4.00 m to 5.00 m clock 5:00 colour ivory',
  'from 2.50 m to 3.00 m not seen "ice"',
  'panel 1 of run 1 colour ivory',
  'panel torn at 5.00 m serious',
  'hatch stuck at H1',
  'finding from 3.50 m to 5.00 m "scored"',
  'not seen from 1.00 m to 2.00 m',
  'plate at 4.50 m thickness 3.6 mm',
  'plate from 3.50 m to 4.00 m thickness 3.5 mm',
  'flight at 3.50 m depth 55 mm',
  'worn at 4.00 m clock 4:40 to 5:50',
  'emergency stop dead at tail',
  'serviced brace renewed at 4.80 m',
  'serviced closed panel torn at 5.00 m "welded"',
];

function told(rows: readonly string[]): readonly string[] {
  const look = `inspection DG1 2025-05-06 meter 3000 h {\n  ${rows.join('\n  ')}\n}\n`;
  const later = 'inspection DG1 2025-08-04 meter 5160 h {\n  at 2.7 m clock 5:00 thickness 9.5 mm\n}\n';
  const { estate, findings } = analyse([
    { uri: 'a.trough', text: machine },
    { uri: 'b.trough', text: look },
    { uri: 'c.trough', text: later },
  ]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  return [
    ...findings.map(({ code, message }) => `${code} ${message}`),
    remainingLifeMarkdown(remainingLife(estate, { depth: 'hand' })),
    inspectionSheetHtml(inspectionSheet(estate, conveyor)).replace(/ data-\w+="[^"]*"/g, ''),
  ];
}

test('says what the look written from the tail says', () => {
  const right = told(fromTail);
  expect(told(['measured from head', ...fromHead])).toEqual(right);
  expect(told(['measured from tail', ...fromTail])).toEqual(right);
  expect(told(fromHead)).not.toEqual(right);
});

test('a look that is taken back is written once more beside it', () => {
  const look = (...rows: readonly string[]): string =>
    `inspection DG1 2025-05-06 meter 3000 h {\n  ${rows.join('\n  ')}\n}\n`;
  const row = 'at 3.3 m clock 5:00 thickness 10.1 mm';
  const back =
    'correction DG1 2025-05-12 all read on 2025-05-06 does not count by "day shift" "from the head"\n';
  const { estate, findings } = analyse([
    { uri: 'a.trough', text: machine },
    { uri: 'b.trough', text: look(row) },
    { uri: 'c.trough', text: look('measured from head', row) },
    { uri: 'd.trough', text: back },
  ]);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  const { kind, place } = estate.readings;
  const counted = [...kind.keys()].filter((each) => kind[each] === ReadingKind.thickness);
  expect(counted.map((each) => estate.places[place[each] ?? -1]?.at)).toEqual([2700]);
});
