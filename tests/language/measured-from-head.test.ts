// A look that was measured from the head is the look written right: the same findings, the same report, page for page, but for where
// the lines stand. What goes by the name of a point, by a part, a panel or an end lies where it lies.

import { describe, expect, test } from 'vitest';
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

// The machine is 6 m long: at 4.8 m from the head lies what is at 1.2 m, where another reading of each kind stands.
describe('a correction names its place as the look has it', () => {
  const rows = (from: 'head' | 'tail', text: string): string => {
    const turned = (at: string): string => (6 - Number(at)).toFixed(2);
    return from === 'head'
      ? text
      : text
          .replace(
            /from ([\d.]+) m to ([\d.]+) m/,
            (_, a: string, b: string) => `from ${turned(b)} M to ${turned(a)} M`,
          )
          .replace(/at ([\d.]+) m\b/g, (_, at: string) => `at ${turned(at)} m`)
          .replace(/ M\b/g, ' m');
  };
  const both = [
    'at 4.8 m clock 5:00 thickness 10.1 mm',
    'at 1.2 m clock 5:00 thickness 9.1 mm',
    'from 4 m to 5 m clock 7:00 colour ivory',
    'from 1 m to 2 m clock 7:00 second colour showing',
    'plate at 4.5 m clock 5:00 thickness 3.6 mm',
    'plate at 1.5 m clock 5:00 thickness 3.1 mm',
    'flight at 4.5 m depth 55 mm',
    'flight at 1.5 m depth 58 mm',
    'hold-down at 5 m gap 9 mm',
    'hold-down at 1 m gap 4 mm',
    'worn at 4 m clock 4:40 to 5:50',
    'worn at 2 m clock 4:10 to 5:10',
    'trough leaking at 5 m right side',
    'trough leaking at 1 m right side',
    'panel torn at 4 m serious',
    'panel torn at 2 m serious',
  ];
  const said = (from: 'head' | 'tail', view: string, correction: string, day: string): readonly string[] => {
    const look = `inspection DG1 2025-05-06 meter 3000 h {\n  measured from ${from}\n  view ${view}\n  ${both.map((row) => rows(from, row)).join('\n  ')}\n}\n`;
    const line = `correction DG1 ${day} ${rows(from, correction)} by "fitter" "wrong velocity"\n`;
    const { estate, findings } = analyse([
      { uri: 'a.trough', text: machine },
      { uri: 'b.trough', text: look },
      { uri: 'c.trough', text: line },
    ]);
    return [
      ...findings.map(({ code, message }) => `${code} ${message}`),
      remainingLifeMarkdown(remainingLife(estate, { depth: 'hand' })),
    ];
  };

  test.each([
    'at 4.8 m clock 5:00 read on 2025-05-06 thickness 9.9 mm',
    'at 4.8 m clock 5:00 read on 2025-05-06 written as 10.1 mm does not count',
    'from 4 m to 5 m clock 7:00 read on 2025-05-06 second colour showing',
    'plate at 4.5 m clock 5:00 read on 2025-05-06 thickness 3.4 mm',
    'plate at 4.5 m read on 2025-05-06 does not count',
    'flight at 4.5 m read on 2025-05-06 depth 52 mm',
    'hold-down at 5 m read on 2025-05-06 gap 7 mm',
    'worn at 4 m read on 2025-05-06 clock 4:30 to 6:00',
    'trough leaking at 5 m right side read on 2025-05-06 does not count',
    'panel torn at 4 m read on 2025-05-06 does not count',
    'at 3.3 m clock 5:00 read on 2025-05-06 thickness 9.9 mm',
    'P1 read on 2025-05-06 thickness 9.9 mm',
  ])('%s', (correction) => {
    for (const view of ['upstream', 'downstream'])
      for (const day of ['2025-05-12', '2025-05-06']) {
        const placeless = (text: string): string => text.replace(/^TL366 .*/, 'TL366');
        const told = said('head', view, correction, day).map(placeless);
        const right = said('tail', view, correction, day).map(placeless);
        expect(told).toEqual(right);
      }
  });

  test('by the chainage from the tail it hits nothing, and is told how its place stands there', () => {
    const wrong = 'flight at 3.4 m read on 2025-05-06 depth 52 mm';
    expect(said('head', 'upstream', wrong, '2025-05-12').join('\n')).toContain(
      'what lies at 3.40 m from the tail stands there at 2.60 m',
    );
  });

  test('of a look that was taken back and written once more the one that is right is put right', () => {
    const look = (...lines: readonly string[]): string =>
      `inspection DG1 2025-05-06 meter 3000 h {\n  ${lines.join('\n  ')}\n}\n`;
    const row = 'at 3.5 m clock 5:00 thickness 10.1 mm\n  P1 thickness 10.4 mm';
    const lines = [
      'all read on 2025-05-06 does not count by "day shift" "from the head"',
      'at 3.5 m clock 5:00 read on 2025-05-06 thickness 9.9 mm by "fitter" "velocity"',
      'P1 read on 2025-05-06 thickness 10.1 mm by "fitter" "velocity"',
    ].map((line, i) => `correction DG1 2025-05-${12 + i} ${line}\n`);
    const text = [machine, look(row), look('measured from head', row), ...lines].join('');
    const { estate } = analyse([{ uri: 'a.trough', text }]);
    const { kind, place, value } = estate.readings;
    const counted = [...kind.keys()].filter((each) => kind[each] === ReadingKind.thickness);
    const at = (each: number): number | undefined => estate.places[place[each] ?? -1]?.at;
    expect(counted.map((each) => [at(each), value[each]])).toEqual([
      [2500, 9.9],
      [1800, 10.1],
    ]);
  });
});
