// Prints and offline forms can be read with other eyes and hands too: judged by axe-core, WCAG 2.1 A and AA.

import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../src/generators/inspection-sheet/phone.js';
import { asFittedPage } from '../../src/generators/work-pack/as-fitted.js';
import { crewSheetHtml } from '../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { openBrowser } from './browser.js';
import { liftConveyor, read, theConveyor, theJob } from './estate.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

describe('pages', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  const analysis = read(
    liftConveyor({
      job: 'change screw',
      more: 'inspection DG1 2026-05-04 meter 4000 h {\n  P1 thickness 9.4 mm\n}',
    }),
  );
  const pack = workPack(analysis.estate, theJob(analysis));
  const sheet = inspectionSheet(analysis.estate, theConveyor(analysis));
  const pages: Readonly<Record<string, string>> = {
    'work pack': workPackHtml(pack),
    'crew sheet': crewSheetHtml(pack),
    'as-fitted form': asFittedPage(pack),
    'inspection sheet': inspectionSheetHtml(sheet),
    'phone page': inspectionPhonePage(sheet),
  };
  for (const [name, html] of Object.entries(pages)) {
    test(`${name} has nothing that axe-core objects to`, async () => {
      const page = await browser.newPage({ bypassCSP: true, viewport: { width: 390, height: 844 } });
      await page.setContent(html);
      await page.evaluate(axe);
      const found: unknown = await page.evaluate(
        `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'] }).then((result) => result.violations.map((each) => each.id + ': ' + each.nodes.map((node) => node.target).join(', ').slice(0, 200)))`,
      );
      expect(found).toEqual([]);
      await page.close();
    });
  }
});
