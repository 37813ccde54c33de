// How many sheets of paper does a pack take? The jobs of the demo are printed in a real browser, as a planner prints them.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { troughline } from '../../cli/console.js';
import { openBrowser, pagesOf } from '../browser.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
let browser: Browser;
let out: string;
beforeAll(async () => {
  browser = await openBrowser();
  out = mkdtempSync(path.join(tmpdir(), 'trough-pack-'));
  const options = ['--as-of', '2026-10-31', '--out', out, '--format', 'html'];
  await troughline(['pack', 'all', 'examples/4-tarnholt', ...options], { cwd: root });
}, 120_000); // on a busy machine a forecast, two plans and a browser take a while
afterAll(async () => {
  await browser.close();
  rmSync(out, { recursive: true, force: true });
});

test.each(['DG1_Winter27', 'SL4_Spring27'])('%s takes at most twelve pages of A4', async (job) => {
  const html = readFileSync(path.join(out, `${job}.html`), 'utf8');
  expect(await pagesOf(browser, html)).toBeLessThanOrEqual(12);
  // Only drawings to scale begin a sheet of their own, so no other page stays nearly empty.
  expect(html.match(/<section class="sheet">/g)).toHaveLength(3);
  expect(html).not.toMatch(/class="[^"]*\bpage\b/);
});
