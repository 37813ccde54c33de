// A machine that falls, in inches, with five years of rough history: two liners from the start, a lost panel, a patch, a bent spiral,
// half a reline, a new meter, another speed. Every line is taken, what is told has a reason, and what is open is carried on.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { openConditions } from '../../src/domain/conditions/follow-up.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';

const text = readFileSync(new URL('rough-in-inches.trough', import.meta.url), 'utf8');
const { estate, findings } = analyse([{ uri: 'rough-in-inches.trough', text }]);
const [conveyor] = estate.conveyors;
if (!conveyor) throw new Error('no conveyor');

test('every line is taken; the spot on the joint, the old groove and the limit are told', () => {
  expect(findings.map(({ code }) => code).sort()).toEqual(['TL377', 'TL501', 'TL521']);
});

test('what is open stands in the report and on the next sheet, and what the reline took away does not', () => {
  const open = openConditions(estate, conveyor).map(({ last }) => last.line.kind);
  expect(open.sort()).toEqual(['brace bent', 'gearbox', 'material behind liner']);
  const report = remainingLifeHtml(remainingLife(estate, { depth: 'hand' }));
  const sheet = inspectionSheetHtml(inspectionSheet(estate, conveyor));
  for (const page of [report, sheet])
    for (const what of ['brace bent', 'gearbox oil low', 'material behind liner'])
      expect(page).toContain(what);
  // What is over stays in the report as what was; nobody is sent to look for it again.
  expect(report).toContain('spiral bent');
  expect(sheet).not.toContain('spiral bent');
});

test('the report has the patch, the steel, the two speeds and the edge of the liner', () => {
  const page = remainingLifeHtml(remainingLife(estate, { depth: 'hand' }));
  for (const words of [
    'Patches',
    'of 304',
    'Speed of the screw, rpm',
    'The liner ends 2.00 in below the top of the trough',
  ])
    expect(page).toContain(words);
});
