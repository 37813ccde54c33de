// The as-fitted form in a real browser: what was measured becomes a reline block that the language reads and lays the panels by.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { installedPanels } from '../../../src/domain/model/panels.js';
import { runsOf } from '../../../src/domain/model/runs.js';
import { asFittedPage } from '../../../src/generators/work-pack/as-fitted.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { openBrowser } from '../browser.js';
import { liftConveyor, read, theConveyor, theJob } from '../estate.js';

describe('the as-fitted form', () => {
  let browser: Browser;
  let folder: string;
  beforeAll(async () => {
    browser = await openBrowser();
    folder = mkdtempSync(path.join(os.tmpdir(), 'as-fitted-'));
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(job: string): Promise<Page> {
    const analysis = read(liftConveyor({ job }));
    const file = path.join(folder, 'form.html');
    writeFileSync(file, asFittedPage(workPack(analysis.estate, theJob(analysis))));
    const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    await page.goto(pathToFileURL(file).href);
    return page;
  }

  test('gives back a reline and a screw change, ready to commit', async () => {
    const page = await open('change screw');
    await page.locator('#date').fill('2027-04-15');
    await page.locator('#meter').fill('12050');
    await page.locator('#temperature').fill('-2');
    await page.locator('#by').fill('Alpha');
    for (const [panel, length] of [
      ['2/1', '497'],
      ['2/2', '1000'],
      ['2/3', '1001'],
      ['2/4', '1000,5'],
      ['2/5', '1000'],
    ])
      await page.locator(`[data-panel="${panel}"]`).fill(length ?? '');
    await page.locator('[data-point=P3]').fill('12.1');
    await page.locator('[data-offcuts="0"]').fill('497 mm');
    const text = await page.locator('#block').inputValue();
    expect(text).toBe(
      [
        'reline Tarnholt.DG1 2027-04-15 meter 12050 h {',
        '  liner TwoLayer12',
        '  scope run 2',
        '  fitting temperature -2 degC',
        '  by "Alpha"',
        '  P3 thickness 12.1 mm',
        '  fitted run 2 panels 497 mm, 1000 mm, 1001 mm, 1000.5 mm, 1000 mm',
        '  offcut 497 mm',
        '}',
        '',
        'screw change Tarnholt.DG1 2027-04-15 meter 12050 h {',
        '  screw Spiral300',
        '  by "Alpha"',
        '}',
        '',
      ].join('\n'),
    );
    const after = read(liftConveyor(), text);
    expect(
      after.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.message),
    ).toEqual([]);
    const run = runsOf(theConveyor(after))[1];
    expect(run && installedPanels(after.estate, run).layout.panels.map((panel) => panel.length)).toEqual([
      497, 1000, 1001, 1000.5, 1000,
    ]);
    await page.context().close();
  });

  test('writes no length of a run before all are measured, and says which are open', async () => {
    const page = await open('');
    await page.locator('[data-panel="2/1"]').fill('497');
    expect(await page.locator('#block').inputValue()).not.toContain('fitted run');
    await expect(page.getByText('run 2: 4 of 5 lengths').count()).resolves.toBe(1);
    await page.reload();
    expect(await page.locator('[data-panel="2/1"]').inputValue()).toBe('497');
    await page.context().close();
  });
});
