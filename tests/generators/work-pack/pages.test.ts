// How many sheets of paper does a pack take? The jobs of the demo are printed in a real browser, as a planner prints them.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { openBrowser, pagesOf } from '../browser.js';
import { day, tarnholt } from '../estate.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

test('a pack of the demo takes at most twelve pages of A4, three of them drawings to scale', async () => {
  const estate = tarnholt();
  const pages: Record<string, number> = {};
  for (const job of estate.jobs) {
    const html = workPackHtml(workPack(estate, job, { asOf: day('2026-10-31') }));
    pages[job.name] = await pagesOf(browser, html);
    expect(html.match(/<section class="sheet">/g)).toHaveLength(3);
  }
  expect(Object.keys(pages).sort()).toEqual(['DG1_Winter27', 'SL4_Spring27']);
  for (const count of Object.values(pages)) expect(count).toBeLessThanOrEqual(12);
});
