// The block that a sheet prints to be pasted holds no number that nobody has measured: readings and open conditions are blanks.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inSoundEstate } from '../../../src/validation/example.js';

test('the block of the next sheet leaves what is measured to be filled in', () => {
  const rows = [
    'motor temperature 95 degC at head serious',
    'joint open 12 mm at 6 m',
    'bolts loose 3 at 4.2 m',
    'panel torn at 3.2 m',
    'finding gate at Gate serious "2 mm proud"',
  ];
  const text = inSoundEstate('estate', `inspection DG1 2024-09-09 meter 3600 h {\n${rows.join('\n')}\n}`);
  const { estate } = analyse([{ uri: 'a.trough', text }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  const block = /<pre>(.*?)<\/pre>/s.exec(inspectionSheetHtml(inspectionSheet(estate, conveyor)))?.[1] ?? '';
  for (const line of [
    'motor temperature ____ degC at head',
    'joint open ____ mm at 6 m',
    'bolts loose ____ at 4.2 m',
    'panel torn at 3.2 m',
  ])
    expect(block).toContain(`  ${line}\n`);
  expect(block).toContain('2 mm proud');
  expect(block).not.toMatch(/95|12 mm|loose 3/);
});
