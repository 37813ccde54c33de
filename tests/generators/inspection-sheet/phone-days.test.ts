// The phone page over days, tabs and sides: entries are found again, by the page made again too; two tabs keep what both typed; the
// side of looking is mirrored once; what is expected follows the date and the meter typed. In a real browser, without a network.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import { openBrowser } from '../browser.js';
import { day, liftConveyor, read, theConveyor } from '../estate.js';

const records = `
inspection DG1 2025-05-05 meter 6000 h {
  view upstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.5 mm
  P2 thickness 9.4 mm
}
inspection DG1 2026-01-05 meter 8000 h {
  view upstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.7 mm
  P2 thickness 8.5 mm
  at 10.20 m clock 7:30 thickness 9.0 mm
}`;

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(path.join(os.tmpdir(), 'phone-days-'));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

function sheetOf(text: string, asOf = '2026-03-16') {
  const analysis = read(text);
  return inspectionSheet(analysis.estate, theConveyor(analysis), { asOf: day(asOf) });
}

let pages = 0;
function written(text = liftConveyor({ more: records }), asOf?: string): string {
  const file = path.join(folder, `page${++pages}.html`);
  writeFileSync(file, inspectionPhonePage(sheetOf(text, asOf)));
  return pathToFileURL(file).href;
}

function phone(): Promise<BrowserContext> {
  return browser.newContext({ viewport: { width: 360, height: 640 }, offline: true });
}

async function open(context: BrowserContext, address: string, on = '2026-03-16'): Promise<Page> {
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(`${on}T09:00:00`));
  await page.goto(address);
  return page;
}

async function point(page: Page, name: string, keys: string): Promise<void> {
  await page.locator('.row', { hasText: name }).click();
  await page.keyboard.type(keys);
  await page.locator('#list').click();
}

async function block(page: Page): Promise<string> {
  await page.locator('#to-finish').click();
  return page.locator('#block').inputValue();
}

/** Closes a page once the browser has what it kept: until another page of the folder finds the same there. */
async function leave(page: Page): Promise<void> {
  const kept = (): string => JSON.stringify(Object.entries(localStorage).sort());
  const wanted = await page.evaluate(kept);
  const blank = path.join(folder, 'blank.html');
  writeFileSync(blank, '<!doctype html>');
  const other = await page.context().newPage();
  await other.goto(pathToFileURL(blank).href);
  await expect.poll(() => other.evaluate(kept), { timeout: 30_000 }).toBe(wanted);
  await other.close();
  await page.close();
}

describe('what to expect', () => {
  test('on the day of the sheet is what the printed sheet says, and follows the meter and the date', async () => {
    const context = await phone();
    const page = await open(context, written());
    const printed = sheetOf(liftConveyor({ more: records })).points.find(({ name }) => name === 'P1')?.expect;
    if (printed?.kind !== 'range') throw new Error('no range');
    const words = `${printed.least.toFixed(1)} to ${printed.most.toFixed(1)} mm`;
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    expect(await page.locator('#expect').innerText()).toContain(words);
    expect(await page.locator('#view').innerText()).toContain('by duty up to 2026-03-16');
    const least = async (): Promise<number> => {
      const found = /Expect: ([\d.]+) to/.exec(await page.locator('#expect').innerText());
      return Number(found?.[1]);
    };
    await page.locator('#list').click();
    await page.getByRole('button', { name: 'Back to date' }).click();
    expect(await page.locator('#meter-hint').innerText()).toContain('About 8840 h expected on 2026-03-16');
    // By duty 840 h have run; half as many leave more, the same as a fortnight less than the days.
    await page.locator('#meter').fill('8100');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    const early = await least();
    expect(early).toBeGreaterThan(printed.least);
    expect(await page.locator('#view').innerText()).toContain('by the meter typed');
    await page.locator('#list').click();
    await page.getByRole('button', { name: 'Back to date' }).click();
    await page.locator('#meter').fill('');
    await page.locator('#date').fill('2027-01-05');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    expect(await least()).toBeLessThan(printed.least - 1);
    await context.close();
  });

  test('a meter faster than the clock and a date a year off are asked about, with their numbers', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#meter').fill('29700');
    expect(await page.locator('#view').innerText()).toContain(
      '! 21700 h since 2026-01-05, and the clock has gone on 1704 h at most. Misread?',
    );
    await page.locator('#date').fill('2025-03-16');
    expect(await page.locator('#view').innerText()).toContain('! Before the last inspection on 2026-01-05.');
    await page.locator('#to-list').click();
    await page.locator('#to-finish').click();
    expect(await page.locator('#suspicious').innerText()).toContain('Date 2025-03-16');
    await context.close();
  });

  test('a phone whose clock is a year off writes down no date by itself', async () => {
    for (const on of ['2025-03-16', '2027-11-16']) {
      const context = await phone();
      const page = await open(context, written(), on);
      expect(await page.locator('#date').inputValue()).toBe('');
      expect(await page.locator('#view').innerText()).toContain(`own date is ${on}`);
      await page.locator('#to-list').click();
      await page.locator('#to-finish').click();
      await expect(page.getByText('Still missing: the date and the hour meter').count()).resolves.toBe(1);
      await context.close();
    }
  });
});

describe('another day', () => {
  test('asks whether it goes on; a new round leaves the old one on the phone', async () => {
    const context = await phone();
    const address = written();
    const page = await open(context, address);
    await page.locator('#meter').fill('8850');
    await page.locator('#to-list').click();
    await point(page, 'P1', '8.1');
    await leave(page);
    // A page made again, of the same machine with one more point and a new title, finds what was typed.
    const again = written(
      liftConveyor({ more: records, conveyor: 'point P9 at 5 m clock 5:00' }).replace(
        'cake to bay 2',
        'cake',
      ),
      '2026-03-20',
    );
    const next = await open(context, again, '2026-03-20');
    expect(await next.locator('#resume').innerText()).toContain('1 point, meter 8850');
    await next.locator('#continue').click();
    expect(await block(next)).toContain(
      '2026-03-16 meter 8850 h {\n  view upstream\n  P1 thickness 8.1 mm\n',
    );
    await leave(next);
    const third = await open(context, again, '2026-06-01');
    await third.locator('#start-new').click();
    expect(await third.locator('#meter').inputValue()).toBe('');
    expect(await third.locator('#date').inputValue()).toBe('2026-06-01');
    await third.locator('#meter').fill('9900');
    await third.locator('#aside button').click();
    expect(await third.locator('#meter').inputValue()).toBe('8850');
    await third.locator('#aside button').click();
    expect(await third.locator('#meter').inputValue()).toBe('9900');
    await context.close();
  });

  test('readings of a point that the page has no more are carried along', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#meter').fill('8850');
    await page.locator('#to-list').click();
    await point(page, 'P3', '7.7');
    await leave(page);
    const text = liftConveyor({ more: records }).replace(/^ {2}point P3 .*$/m, '');
    const next = await open(context, written(text));
    expect(await block(next)).toContain('//   P3: “7.7 mm” (this page has no such point');
    await context.close();
  });

  test('two estates with the same names keep their entries apart', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#meter').fill('8850');
    const other = liftConveyor({ more: records }).replace(
      'commissioned 2023-01-02',
      'commissioned 2022-10-03',
    );
    const next = await open(context, written(other));
    expect(await next.locator('#meter').inputValue()).toBe('');
    await context.close();
  });
});

describe('two tabs', () => {
  test('keep what both typed, and tell where both typed something else into one field', async () => {
    const context = await phone();
    const address = written();
    const one = await open(context, address);
    await one.locator('#meter').fill('8850');
    const two = await open(context, address);
    await one.locator('#to-list').click();
    await two.locator('#to-list').click();
    await point(one, 'P1', '8.1');
    await point(two, 'P2', '8.2');
    await point(one, 'P3', '8.3');
    const expected = '  P1 thickness 8.1 mm\n  P2 thickness 8.2 mm\n  P3 thickness 8.3 mm\n';
    expect(await block(one)).toContain(expected);
    expect(await block(two)).toContain(expected);
    await context.close();
  });

  test('also where one of them was not told, as a phone puts tabs to sleep', async () => {
    const context = await phone();
    const address = written();
    const page = await open(context, address);
    await page.locator('#meter').fill('8850');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    // What another tab wrote stands in the storage, and no event came.
    await page.evaluate(() => {
      const key = Object.keys(localStorage).find((name) => name.startsWith('troughline inspection')) ?? '';
      const state = JSON.parse(localStorage.getItem(key) ?? '{}') as {
        entries: Record<string, unknown>;
        by: string;
      };
      state.entries = {
        P2: { kind: 'colour', colour: 'teal' },
        P1: { kind: 'thickness', value: '8.4', unit: 'mm' },
      };
      state.by = 'night shift';
      localStorage.setItem(key, JSON.stringify(state));
    });
    await page.keyboard.type('8.1');
    await page.locator('#list').click();
    const text = await block(page);
    expect(text).toContain('  by "night shift"\n');
    expect(text).toContain('  P2 colour teal\n');
    // The first key of the other number met what the other tab had.
    expect(text).toContain('  P1 thickness 8.1 mm\n');
    expect(text).toContain('//   P1: “8.4 mm” (another tab');
    await context.close();
  });
});

describe('the side of looking', () => {
  test('is chosen on the page; every clock is mirrored once', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#meter').fill('8850');
    await page.locator('#to-list').click();
    expect(await page.locator('.row', { hasText: 'P1' }).innerText()).toContain('7:00');
    await page.locator('#add-place').click();
    await page.locator('#chainage').fill('6.4');
    await page.locator('#clock').fill('7.30');
    await page.locator('#place-add').click();
    await page.keyboard.type('9.9');
    await page.locator('#list').click();
    await point(page, '10.20 m', '8.8');
    const upstream = await block(page);
    await page.getByRole('button', { name: 'Back to the list' }).click();
    await page.getByRole('button', { name: 'Back to date' }).click();
    await page.getByRole('button', { name: 'away from me' }).click();
    expect(await page.locator('#bar').innerText()).toContain('LOOK DOWNSTREAM');
    expect(await page.locator('#view').innerText()).toContain('1 added place is shown from this side now');
    await page.locator('#to-list').click();
    expect(await page.locator('.row', { hasText: 'P1' }).innerText()).toContain('5:00');
    const downstream = await block(page);
    expect(downstream).toContain(
      'view downstream\n  at 10.20 m clock 4:30 thickness 8.8 mm\n  at 6.4 m clock 4:30 thickness 9.9 mm\n',
    );
    // Both say the same of the machine.
    const places = (text: string): unknown => {
      const { estate } = read(liftConveyor({ more: records }), text);
      return estate.places.map(({ at, clock }) => [at, clock]);
    };
    expect(places(downstream)).toEqual(places(upstream));
    await context.close();
  });
});

describe('findings and photos', () => {
  test('of last time are shown again; a tap writes them down as still so, photos by their names', async () => {
    const context = await phone();
    const text = liftConveyor({
      more: records.replace(
        'at 10.20 m clock',
        'finding brace at 4.6 m "still: cracked"\n  at 10.20 m clock',
      ),
    });
    const page = await open(context, written(text));
    await page.locator('#to-list').click();
    await page.locator('#to-more').click();
    expect(await page.locator('#open').innerText()).toContain('2026-01-05, brace at 4.60 m: still: cracked');
    await page.locator('#open button').click();
    await page.locator('#add-photo').click();
    await page.locator('[data-photo="0"]').fill('IMG_0231.jpg');
    await page.locator('#more-back').click();
    expect(await block(page)).toContain(
      '  finding brace at 4.60 m "still: cracked"\n  photo "IMG_0231.jpg"\n',
    );
    await context.close();
  });
});

describe('a keyboard', () => {
  test('types readings and keeps its place; a wet screen does not skip a point', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.keyboard.type('8,15');
    await page.keyboard.press('Backspace');
    expect(await page.locator('#display').innerText()).toBe('8.1 mm');
    const teal = page.getByRole('button', { name: 'teal' });
    await teal.focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('✓ teal');
    await page.locator('#note').fill('wet');
    await page.keyboard.type('7');
    expect(await page.locator('#note').inputValue()).toBe('wet7');
    await page.locator('#next').dblclick();
    expect(await page.locator('.point').innerText()).toContain('P2');
    expect(await page.locator('#said').innerText()).toContain('open');
    await context.close();
  });

  test('the number typed is in sight on a small phone, on its side and with letters twice as large', async () => {
    const context = await phone();
    const page = await open(context, written());
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    for (const [width, height, letters] of [
      [360, 640, 1],
      [360, 640, 2],
      [640, 360, 1],
      [640, 360, 2],
      [320, 568, 2],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.evaluate((size) => {
        document.documentElement.style.fontSize = `${112.5 * size}%`;
      }, letters);
      for (const sign of ['2', 'point', '1', 'delete', '5']) {
        await page.getByRole('button', { name: sign, exact: true }).click();
        const box = await page.locator('#display').boundingBox();
        if (!box) throw new Error('no display');
        const at = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.id, [
          box.x + box.width / 2,
          box.y + box.height / 2,
        ] as const);
        expect(at, `${width} × ${height}, letters × ${letters}`).toBe('display');
      }
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
      await page.getByRole('button', { name: 'Clear this point' }).click();
    }
    await context.close();
  });
});
