// On paper a table that runs over a page has its head again on the next one, and no row is split: measured in a browser that
// lays the pages out for print.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { openBrowser } from './browser.js';
import { liftConveyor, read, theConveyor, theJob } from './estate.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const analysis = read(
  liftConveyor({
    more: 'inspection DG1 2026-05-04 meter 4000 h {\n  view downstream\n  P1 thickness 9.4 mm\n}',
  }),
);
test.each<readonly [string, () => string]>([
  ['report', () => remainingLifeHtml(remainingLife(analysis.estate, { track: false }))],
  ['work pack', () => workPackHtml(workPack(analysis.estate, theJob(analysis)))],
  ['inspection sheet', () => inspectionSheetHtml(inspectionSheet(analysis.estate, theConveyor(analysis)))],
])('%s', async (_, html) => {
  const page = await browser.newPage();
  await page.setContent(html());
  await page.emulateMedia({ media: 'print' });
  const tables = await page.evaluate(() =>
    [...document.querySelectorAll('table')].map((table) => ({
      heads: table.querySelectorAll(':scope > thead').length,
      repeats: [...table.querySelectorAll(':scope > thead')].every(
        (head) =>
          getComputedStyle(head).display === 'table-header-group' &&
          head === table.querySelector('thead, tbody'),
      ),
      columns: table.querySelectorAll(':scope > thead th').length,
      split: [...table.querySelectorAll('tr')].filter((row) => getComputedStyle(row).breakInside !== 'avoid')
        .length,
      data: table.querySelectorAll(':scope > tbody > tr').length,
    })),
  );
  expect(tables.length).toBeGreaterThan(1);
  for (const table of tables) {
    expect(table).toMatchObject({ repeats: true, split: 0 });
    // A few lines of a form, each with its own words before the space to write in, need no head.
    if (table.heads === 0) expect(table.data).toBeLessThanOrEqual(4);
    else expect([table.heads, table.columns > 0]).toEqual([1, true]);
  }
  await page.close();
});
