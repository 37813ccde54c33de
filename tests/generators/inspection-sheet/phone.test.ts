// The phone page in a real browser: readings typed with its buttons become a block that the language reads without a finding,
// nothing is lost when the battery dies, nothing an author typed runs, no network is used.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import { openBrowser } from '../browser.js';
import { day, liftConveyor, read, theConveyor } from '../estate.js';

const records = `
inspection DG1 2026-01-05 meter 8000 h {
  view upstream
  P1 thickness 8.4 mm
  at 10.20 m clock 7:30 thickness 9.9 mm
}`;
const estate = liftConveyor({ more: records });

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(path.join(os.tmpdir(), 'phone-'));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

/** The page as a file, the way it lies on a phone. */
async function open(text = estate, page?: Page): Promise<Page> {
  const analysis = read(text);
  const file = path.join(folder, 'page.html');
  writeFileSync(
    file,
    inspectionPhonePage(inspectionSheet(analysis.estate, theConveyor(analysis), { asOf: day('2026-03-16') })),
  );
  const shown =
    page ?? (await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage());
  await shown.goto(pathToFileURL(file).href);
  return shown;
}

async function type(page: Page, value: string): Promise<void> {
  for (const sign of value)
    await page.getByRole('button', { name: sign === '.' ? 'point' : sign, exact: true }).click();
}

async function block(page: Page): Promise<string> {
  await page.locator('#to-finish').click();
  return page.locator('#block').inputValue();
}

async function start(page: Page): Promise<void> {
  await page.locator('#date').fill('2026-03-16');
  await page.locator('#meter').fill('8850');
  await page.locator('#to-list').click();
}

describe('readings', () => {
  test('become a block that the language reads as it was meant', async () => {
    const page = await open();
    await page.locator('#date').fill('2026-03-16');
    await page.locator('#meter').fill('8850');
    await page.locator('#by').fill('day "shift"\tand more');
    await page.getByRole('button', { name: 'ultrasonic' }).click();
    await page.locator('#gauge-error').fill('0.2');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await type(page, '7.9');
    await page.locator('#next').click();
    await page.getByRole('button', { name: 'ivory' }).click();
    await page.locator('#note').fill('edge of "panel"');
    await page.locator('#next').click();
    await page.getByRole('button', { name: 'TROUGH SHOWING' }).click();
    await page.locator('#next').click();
    await page.getByRole('button', { name: 'cover not opened' }).click();
    await page.locator('#list').click();
    await page.locator('#add-place').click();
    await page.locator('#chainage').fill('6.4');
    await page.locator('#clock').fill('7.30');
    await page.locator('#place-add').click();
    await page.getByRole('button', { name: 'in', exact: true }).click();
    await type(page, '.33');
    await page.locator('#list').click();
    await page.locator('#to-more').click();
    await page.locator('[data-gap=H4]').fill('14');
    await page.locator('#empty').fill('4,1');
    await page.locator('#loaded').fill('6.2');
    await page.locator('#add-flight').click();
    await page.locator('[data-flight-at]').fill('6');
    await page.locator('[data-flight-depth]').fill('57.5');
    await page.locator('[data-flight-across]').fill('296,5 mm');
    await page.locator('#speed').fill('17.6');
    await page.locator('#add-finding').click();
    await page.locator('.finding select').selectOption('hold-down');
    await page
      .locator('.finding', { has: page.locator('select') })
      .locator('input')
      .first()
      .fill('3.5');
    await page.locator('[data-finding]').fill('cracked');
    await page.locator('#more-back').click();
    const text = await block(page);
    expect(text).toBe(
      [
        'inspection Tarnholt.DG1 2026-03-16 meter 8850 h {',
        '  by "day \'shift\' and more"',
        '  view upstream',
        '  gauge ultrasonic ± 0.2 mm',
        '  P1 thickness 7.9 mm',
        '  P2 colour ivory "edge of \'panel\'"',
        '  P3 trough showing',
        '  at 10.20 m clock 7:30 not seen "cover not opened"',
        '  at 6.4 m clock 7:30 thickness 0.33 in',
        '  hold-down at 3.5 m gap 14 mm',
        '  flight at 6 m depth 57.5 mm',
        '  flight at 6 m outside diameter 296.5 mm',
        '  current empty 4.1 A loaded 6.2 A',
        '  speed 17.6 rpm',
        '  finding hold-down at 3.5 m "cracked"',
        '}',
        '',
      ].join('\n'),
    );
    const analysis = read(estate, text);
    // The one error is about the machine, not about the text: steel shows at P3.
    expect(
      analysis.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.message),
    ).toEqual([expect.stringContaining('trough of DG1 shows at P3') as string]);
    expect(analysis.estate.inspections.at(-1)).toMatchObject({
      by: "day 'shift' and more",
      view: { direction: 'upstream' },
    });
    expect(analysis.estate.readings.count).toBe(7);
    await page.context().close();
  });

  test('nothing is invented: what nobody touched is not in the block', async () => {
    const page = await open();
    await start(page);
    expect(await block(page)).toBe('inspection Tarnholt.DG1 2026-03-16 meter 8850 h {\n  view upstream\n}\n');
    await expect(page.getByText('Open: P1, P2, P3').count()).resolves.toBe(1);
    await page.context().close();
  });

  test('a block without a meter reading is shown as unfinished', async () => {
    const page = await open();
    await page.locator('#to-list').click();
    await page.locator('#to-finish').click();
    await expect(page.getByText('Still missing: the hour meter').count()).resolves.toBe(1);
    await page.context().close();
  });
});

describe('a conveyor declared in inches', () => {
  test('is read in inches and feet', async () => {
    const page = await open(
      liftConveyor({ more: records })
        .replace('layer ivory 6 mm', 'layer ivory 1/4 in')
        .replace('layer teal 6 mm', 'layer teal 1/4 in'),
    );
    await start(page);
    await page.locator('.row', { hasText: 'P1' }).click();
    // 2 m is 6.56 ft; 8.4 mm is 0.33 in.
    expect(await page.locator('#view').innerText()).toContain('6.56 ft (2.00 m) from the tail');
    expect(await page.locator('#view').innerText()).toContain('0.33 in (8.4 mm)');
    await type(page, '.31');
    await page.locator('#list').click();
    await page.locator('#add-place').click();
    await page.locator('#chainage').fill('20');
    await page.locator('#clock').fill('7:30');
    await page.locator('#place-add').click();
    await page.getByRole('button', { name: 'ivory' }).click();
    await page.locator('#list').click();
    expect(await block(page)).toBe(
      'inspection Tarnholt.DG1 2026-03-16 meter 8850 h {\n  view upstream\n  P1 thickness 0.31 in\n  at 20 ft clock 7:30 colour ivory\n}\n',
    );
    await page.context().close();
  });
});

describe('a conveyor whose wear follows tonnes', () => {
  test('is asked for its tonnes counter', async () => {
    const page = await open(liftConveyor({ conveyor: 'wear by tonnes', more: records }));
    await start(page);
    await page.locator('#to-finish').click();
    await expect(page.getByText('Still missing: the tonnes counter').count()).resolves.toBe(1);
    await page.getByRole('button', { name: 'Fill it in' }).click();
    await page.locator('#tonnes').fill('41250');
    await page.locator('#to-list').click();
    expect((await block(page)).split('\n')[0]).toBe(
      'inspection Tarnholt.DG1 2026-03-16 meter 8850 h tonnes 41250 t {',
    );
    await page.context().close();
  });
});

describe('a second look is asked for', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['9.6', 'Thicker than last time'],
    ['15', 'Thicker than the liner when new (12 mm)'],
    ['5', 'Thinner than expected'],
    ['2.5', 'At or below the condemn limit (3 mm)'],
  ];
  test('for readings that do not fit, and none is refused', async () => {
    const page = await open();
    await start(page);
    await page.locator('.row', { hasText: 'P1' }).click();
    for (const [value, words] of cases) {
      await type(page, value);
      expect(await page.locator('.warn[role=alert]').innerText(), value).toContain(words);
      expect(await page.locator('#display').innerText()).toBe(`${value} mm`);
      await page.getByRole('button', { name: 'Clear this point' }).click();
    }
    await type(page, '8');
    expect((await page.locator('.warn[role=alert]').textContent()) ?? '').toBe('');
    await page.context().close();
  });
});

describe('a dead battery', () => {
  test('loses nothing: the page comes back where it was', async () => {
    const page = await open();
    await start(page);
    await page.locator('.row', { hasText: 'P1' }).click();
    await type(page, '7.9');
    const context = page.context();
    // The browser hands what a page stores to a process of its own, a moment later.
    await page.waitForTimeout(800);
    await page.close();
    const again = await open(estate, await context.newPage());
    expect(await again.locator('#display').innerText()).toBe('7.9 mm');
    await again.locator('#list').click();
    expect(await block(again)).toContain('  P1 thickness 7.9 mm');
    await again.locator('#delete').click();
    expect(await again.locator('#delete').innerText()).toContain('Tap again');
    await again.locator('#delete').click();
    await again.reload();
    expect(await again.locator('#meter').inputValue()).toBe('');
    await context.close();
  });
});

describe('the page', () => {
  test('runs no text of an author, uses no network, and has no fault in its script', async () => {
    const page = await (await browser.newContext()).newPage();
    const requests: string[] = [];
    const faults: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith('file:')) requests.push(request.url());
    });
    page.on('pageerror', (problem) => faults.push(problem.message));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    page.on('dialog', (dialog) => {
      faults.push('dialog');
      void dialog.dismiss();
    });
    const nasty = '</script><script>alert(1)</script><!-- <img src=x onerror=alert(1)>';
    await open(
      liftConveyor({
        more: records.replace('8.4 mm', `8.4 mm "${nasty}"`),
        conveyor: `point P9 at 5 m clock 5:00 "${nasty}"`,
      }),
      page,
    );
    await start(page);
    await page.locator('.row', { hasText: 'P1' }).click();
    expect(await page.locator('#view').innerText()).toContain(nasty);
    expect([requests, faults]).toEqual([[], []]);
    await page.context().close();
  });

  test('has targets for gloves: every button and field at least 48 px high', async () => {
    const page = await open();
    const small = async (): Promise<readonly string[]> =>
      page.evaluate(() =>
        [...document.querySelectorAll('button, input, select')]
          .filter(
            (node) => node.getBoundingClientRect().height < 48 || node.getBoundingClientRect().width < 48,
          )
          .map((node) => node.outerHTML),
      );
    expect(await small()).toEqual([]);
    await start(page);
    expect(await small()).toEqual([]);
    await page.locator('.row').first().click();
    expect(await small()).toEqual([]);
    // No sideways scrolling on a phone.
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    await page.context().close();
  });
});
