// The phone page of an estate in a real browser, as it lies on a phone: one file, no network. For the tests beside this file.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import { openBrowser } from '../browser.js';
import { day, read, theConveyor } from '../estate.js';

export const smallPhone = { width: 360, height: 640 } as const;
export const largePhone = { width: 412, height: 915 } as const;

export interface PhoneBench {
  /** A phone of its own each time; `before` runs in the page before its script. */
  readonly open: (options?: {
    readonly viewport?: { readonly width: number; readonly height: number };
    readonly before?: () => void;
  }) => Promise<Page>;
  readonly browser: () => Browser;
}

/** To be called once at the head of a test file; the browser is closed after its last test. */
export function phoneBench(estate: string, conveyor = 'DG1', asOf = '2026-03-16'): PhoneBench {
  let browser: Browser;
  let folder: string;
  let address: string;
  beforeAll(async () => {
    browser = await openBrowser();
    folder = mkdtempSync(path.join(os.tmpdir(), 'phone-'));
    const analysis = read(estate);
    const file = path.join(folder, 'page.html');
    const sheet = inspectionSheet(analysis.estate, theConveyor(analysis, conveyor), { asOf: day(asOf) });
    writeFileSync(file, inspectionPhonePage(sheet));
    address = pathToFileURL(file).href;
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    browser: () => browser,
    open: async ({ viewport = smallPhone, before } = {}) => {
      const context = await browser.newContext({ viewport, offline: true });
      const page = await context.newPage();
      if (before) await page.addInitScript(before);
      await page.goto(address);
      return page;
    },
  };
}

/** Date and meter, as everybody fills them in first. */
export async function dated(page: Page, meter = '8850'): Promise<Page> {
  await page.locator('#date').fill('2026-03-16');
  await page.locator('#meter').fill(meter);
  return page;
}

/** From any screen to the finish: the text for the records. */
export async function finish(page: Page): Promise<string> {
  const ways: Readonly<Record<string, string>> = {
    start: '#to-list',
    point: '#list',
    more: '#more-back',
    wrong: '#wrong-done',
  };
  for (let step = 0; step < 3; step++) {
    const way = ways[(await page.locator('#view').getAttribute('data-view')) ?? ''];
    if (way !== undefined) await page.locator(way).click();
  }
  await page.locator('#to-finish').click();
  return page.locator('#block').inputValue();
}

/** Everything to be tapped is at least so high, and nothing reaches beyond the screen. */
export async function expectGloves(page: Page, least = 48): Promise<void> {
  const small = await page
    .locator('button:visible, input:visible, select:visible')
    .evaluateAll(
      (nodes, height) =>
        nodes
          .filter((node) => node.getBoundingClientRect().height < height)
          .map((node) => node.id || node.textContent),
      least,
    );
  expect(small).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
}
