// Words stay inside their boxes at the widths that the sheet is read and printed at.

import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { openBrowser } from '../browser.js';
import { tarnholt } from '../estate.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

test.each([760, 1000, 1200])('boxes to be filled in hold their small print at %d pixels', async (width) => {
  const estate = tarnholt();
  const conveyor = estate.conveyors.find(({ name }) => name === 'DG1');
  if (!conveyor) throw new Error('no DG1');
  const page = await browser.newPage({ viewport: { width, height: 1200 } });
  await page.setContent(inspectionSheetHtml(inspectionSheet(estate, conveyor)));
  const over = await page.$$eval('.blank', (boxes) =>
    boxes.filter((box) => box.scrollHeight > box.clientHeight + 1).map(({ textContent }) => textContent),
  );
  await page.close();
  expect(over).toEqual([]);
});
