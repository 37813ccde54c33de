// What is printed of a machine in inches fits its narrow columns: a chainage or a length stands there without its metric value, and
// the last reading on a sheet breaks before its bracket and nowhere else.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, read, theConveyor, theJob } from '../estate.js';

const example = readFileSync(new URL('../../../examples/2-inches/inches.trough', import.meta.url), 'utf8');
const asOf = day('2026-10-31');

test('panels go by feet and inches alone in their table', () => {
  const analysis = read(example, 'job J1 {\n  conveyor SC7\n  reline run 1\n  crews Alpha\n}\n');
  const lines = workPackMarkdown(workPack(analysis.estate, theJob(analysis), { asOf })).split('\n');
  const head = lines.findIndex((line) => line.startsWith('| Turn | Panel |'));
  const rows = lines.slice(head + 2, lines.indexOf('', head));
  expect(rows).toHaveLength(9);
  for (const row of rows) {
    const [, , from = '', to = '', length = ''] = row.replaceAll('**', '').split('|').slice(1);
    for (const cell of [from, to]) expect(cell.trim()).toMatch(/^[\d.]+ ft$/);
    expect(length.trim()).toMatch(/^[\d.]+ in$/);
  }
});

test('the last reading stays together inside its bracket', () => {
  const analysis = read(example);
  const html = inspectionSheetHtml(inspectionSheet(analysis.estate, theConveyor(analysis, 'SC7'), { asOf }));
  expect(html).toContain('0.27 in (6.9\u00a0mm)');
});
