// A round of looks over two conveyors that one platform reaches: `sheet round` prints a sheet and a page for each of them and for
// nobody else, and one phone carries both pages of the round without mixing what was typed.

import { readdirSync, rmSync, writeFileSync, mkdtempSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import { troughline } from '../../cli/console.js';
import { openBrowser } from '../browser.js';
import { liftConveyor, read } from '../estate.js';
import { finish, smallPhone } from './phone-bench.js';

const one = liftConveyor({ job: '' });
const conveyor = one.slice(one.indexOf('conveyor DG1'), one.indexOf('job J1'));
const looks = (name: string, thickness: string): string => `
inspection ${name} 2025-01-05 meter 8000 h {
  view upstream
  gauge depth gauge
  P1 thickness ${thickness} mm
  P2 thickness 9.9 mm
  P3 thickness 10 mm
}`;
const estate = [
  one,
  conveyor.replace('conveyor DG1', 'conveyor DG2'),
  looks('DG1', '8.4'),
  looks('DG2', '8.39'),
].join('\n');

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(path.join(os.tmpdir(), 'round-'));
  writeFileSync(path.join(folder, 'estate.trough'), estate);
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

test('prints both machines, and one phone carries both', async () => {
  const days = ['--as-of', '2026-03-16'];
  const report = await troughline(['report', ...days, '--format', 'markdown'], { cwd: folder });
  expect(report.out).toMatch(/DG[12] \(.*\) and DG[12] \(.*\); sheets with ..?troughline sheet round/);
  const forms = ['--format', 'html', '--format', 'phone'];
  const ran = await troughline(['sheet', 'round', '.', ...days, ...forms, '--out', 'sheets'], {
    cwd: folder,
  });
  expect([ran.exit, ran.err]).toEqual([0, expect.not.stringContaining('error')]);
  const files = readdirSync(path.join(folder, 'sheets')).sort();
  expect(files).toEqual(['DG1-phone.html', 'DG1.html', 'DG2-phone.html', 'DG2.html']);
  const context = await browser.newContext({ viewport: smallPhone, offline: true });
  const blocks: string[] = [];
  for (const [name, digit] of [
    ['DG1', '7'],
    ['DG2', '6'],
  ] as const) {
    const page = await context.newPage();
    await page.goto(pathToFileURL(path.join(folder, 'sheets', `${name}-phone.html`)).href);
    expect(await page.locator('.who').innerText()).toContain(name);
    expect(await page.locator('#meter').inputValue()).toBe('');
    await page.locator('#date').fill('2026-03-16');
    await page.locator('#meter').fill('12000');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.getByRole('button', { name: digit, exact: true }).click();
    blocks.push(await finish(page));
  }
  // The first page once more: what the second typed is not in it.
  const again = await context.newPage();
  await again.goto(pathToFileURL(path.join(folder, 'sheets', 'DG1-phone.html')).href);
  expect(await again.locator('#block').inputValue()).toBe(blocks[0]);
  await context.close();
  const after = read(estate, ...blocks);
  expect(after.findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual(
    [],
  );
  expect(after.estate.inspections.map((look) => look.conveyor.name).sort()).toEqual([
    'DG1',
    'DG1',
    'DG2',
    'DG2',
  ]);
});

test('a round that is not there is refused in words', async () => {
  const ran = await troughline(['sheet', 'round9', '.', '--as-of', '2026-03-16'], { cwd: folder });
  expect(ran).toMatchObject({ exit: 2, out: '' });
  expect(ran.err).toMatch(/there (is 1 round|are \d rounds) of looks, and no 9/);
});
