// A machine with five years of rough history, as a new user writes it from README and hovers: every line is taken, what is open is
// carried to report and next sheet, and slips that such a user makes are refused with their own reason.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';

const folder = fileURLToPath(new URL('../../examples/7-five-years', import.meta.url));
const texts = ['plant', 'history'].map((name) => ({
  uri: `${name}.trough`,
  text: readFileSync(`${folder}/${name}.trough`, 'utf8'),
}));

function read(more = ''): Analysis {
  return analyse([...texts, { uri: 'z.trough', text: more }], { photos: () => 1000 });
}

const { estate, findings } = read();

test('every line is taken, and nothing is found wrong', () => {
  expect(findings.map(({ code, message }) => `${code} ${message}`)).toEqual([]);
});

test('what is open is carried by the report and asked for by the next sheet; what was put right is not', () => {
  const open = ['panel lifted 15 mm at 5.40 m', 'material behind liner at 6.00 m', 'tail bearing noise'];
  const report = remainingLife(estate, { depth: 'hand' });
  expect(report.conveyors[0]?.conditions.map(({ what }) => what)).toEqual(open);
  expect(inspectionSheet(estate, estate.conveyors[0]!).openConditions.map(({ what }) => what)).toEqual(open);
  const page = remainingLifeHtml(report);
  // The oil leak stands in the history of the gearbox, as put right.
  expect(page).toContain('put right on');
  // What is over stays in the report as what was; nobody is sent to look for it again.
  const sheet = inspectionSheetHtml(inspectionSheet(estate, estate.conveyors[0]!));
  for (const gone of ['bolts loose', 'product blocked', 'spiral weld cracked', 'joint open']) {
    expect(page).toContain(gone);
    expect(sheet).not.toContain(gone);
  }
});

test('a reading corrected, a panel on the bench, a seal renewed and a stretch nobody saw stand in the report', () => {
  const [life] = remainingLife(estate, { depth: 'hand' }).conveyors;
  expect(life?.beside.corrections.map(({ was, now }) => [was, now])).toEqual([['6.2 mm', '6 mm']]);
  expect(life?.beside.serviced.map(({ ended }) => ended)).toEqual([['gearbox oil leak']]);
  expect(
    life?.former.flatMap(({ onTheBench }) => onTheBench.map(({ place, thickness }) => [place, thickness])),
  ).toEqual([['P2', 5.4]]);
  expect(life?.notLooked).toEqual([]);
});

test('the lost panel and its patch, two liners from the start and both former sets stand in the report', () => {
  const [life] = remainingLife(estate, { depth: 'hand' }).conveyors;
  expect(life?.trough.spans).toHaveLength(1);
  expect(life?.trough.patches).toHaveLength(1);
  expect(life?.former.map(({ set }) => set.liner.name).sort()).toEqual([
    'Thick12',
    'Thick12',
    'Thick12',
    'Thin8',
  ]);
  expect(life?.former.every(({ least }) => least === undefined || least.thickness > 0)).toBe(true);
});

describe('slips of a new user are refused with their reason', () => {
  const head = 'inspection KB7 2026-10-12 meter 11900 h {\n  view downstream\n';
  const answers =
    '  panel lifted 15 mm at 5.40 m\n  material behind liner at 6.00 m\n  not seen tail bearing noise\n';
  const codes = (row: string): readonly string[] =>
    read(`${head}${answers}  ${row}\n}`).findings.map(({ code }) => code);
  test.each([
    ['panel torn at 22 m', 'TL326', 'beyond the conveyor'],
    ['panel torn at 7.6 m', 'TL326', 'inside the gate'],
    ['panel torn at P9', 'TL116', 'a point that is not there'],
    ['panel torn', 'TL352', 'without a place'],
    ['joint open -4 mm at 3 m', 'TL107', 'a gap below nothing'],
    ['joint open 0 mm at 3 m', 'TL107', 'a joint that stands shut is not open'],
    ['joint open 4 at 3 m', 'TL102', 'without a unit'],
    ['bolts missing at 3 m', 'TL352', 'without a number'],
    ['closed spiral bent at 3 m', 'TL351', 'closed before it was seen'],
    ['panel torn at 3 m closed on 2026-10-01', 'TL351', 'closed before this look'],
    ['panel torn at 3 m photo "../secret.png"', 'TL349', 'a photo outside the folder'],
    ['panel torn at 3 m photo "tear.pdf"', 'TL349', 'no picture'],
    ['plate at 3 m thickness 6 mm', 'TL355', 'thicker than the trough'],
    ['plate at 3 m thickness 2.4 mm', 'TL354', 'below the minimum'],
    ['panel missing at 9 m', 'TL356', 'bare steel that nobody measured'],
    ['current loaded 1 A', 'TL357', 'a motor that runs light'],
  ])('%s: %s, %s', (row, code) => {
    expect(codes(row)).toContain(code);
  });

  test('a look that says nothing of what is open, and a patch thicker than its trough', () => {
    expect(read(`${head}  P1 thickness 7.0 mm\n}`).findings.map(({ code }) => code)).toContain('TL350');
    expect(
      read('patch KB7 2026-10-12 at 3 m to 3.4 m thickness 8 mm').findings.map(({ code }) => code),
    ).toContain('TL355');
  });
});
