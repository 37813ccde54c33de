// The offline pages as a screen reader meets them: by the accessibility tree of a real Chromium, not by what is seen. Every field and
// button has a role and a name of its own, the focus goes in the order of reading, and what is worth a second look is announced. No
// screen reader runs here: how one of them speaks, only a person with it can tell.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { asFittedPage } from '../../../src/generators/work-pack/as-fitted.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { liftConveyor, read, theJob } from '../estate.js';
import { dated, finish, phoneBench, smallPhone } from './phone-bench.js';

const bench = phoneBench(
  liftConveyor({
    more: `inspection DG1 2026-01-05 meter 8000 h {
  view upstream
  P1 thickness 8.4 mm
  panel torn at 4 m slight
  bolts missing 3 at 8.4 m
  finding cover at 3 m "hinge bent"
}`,
  }),
);

interface Node {
  readonly nodeId: string;
  readonly parentId?: string;
  readonly childIds?: readonly string[];
  readonly ignored: boolean;
  readonly role?: { readonly value?: string };
  readonly name?: { readonly value?: string };
  readonly value?: { readonly value?: string };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value?: unknown } }[];
}

interface Heard {
  readonly role: string;
  /** With the names of the groups around it, as they are read when one enters them. */
  readonly name: string;
  readonly value: string;
}

const acted = new Set(['button', 'textbox', 'combobox', 'Date', 'spinbutton', 'checkbox']);

/** What can be acted on, in the order of reading, and what stands in live regions. */
async function heard(page: Page): Promise<{ controls: readonly Heard[]; announced: readonly string[] }> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send('Accessibility.getFullAXTree')) as { nodes: readonly Node[] };
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const controls: Heard[] = [];
  const announced: string[] = [];
  const words = (node: Node): string =>
    node.role?.value === 'StaticText'
      ? (node.name?.value ?? '')
      : (node.childIds ?? []).map((id) => words(byId.get(id) ?? node)).join(' ');
  const walk = (node: Node, groups: readonly string[]): void => {
    const role = node.role?.value ?? '';
    const name = node.name?.value ?? '';
    if (!node.ignored && acted.has(role))
      controls.push({ role, name: [...groups, name].join(' › '), value: String(node.value?.value ?? '') });
    if (!node.ignored && (role === 'alert' || role === 'status')) announced.push(words(node).trim());
    // The parts of a date field and the options of a choice belong to it.
    if (acted.has(role)) return;
    const within = role === 'group' && name !== '' ? [...groups, name] : groups;
    for (const id of node.childIds ?? []) {
      const child = byId.get(id);
      if (child) walk(child, within);
    }
  };
  const [root] = nodes;
  if (root) walk(root, []);
  return { controls, announced: announced.filter((text) => text !== '') };
}

/** Names of what the Tab key reaches, from the first to the last; a control that is switched off is not reached. */
async function tabbed(page: Page): Promise<readonly string[]> {
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  const count = await page.locator('button:enabled, input, select, textarea').count();
  const found: string[] = [];
  for (let step = 0; found.length < count && step < count + 20; step++) {
    await page.keyboard.press('Tab');
    const name = await page.evaluate(() => {
      const node = document.activeElement;
      if (!(node instanceof HTMLElement) || node === document.body || node.dataset['met'] !== undefined)
        return '';
      node.dataset['met'] = '';
      const label = node.closest('label')?.querySelector('span')?.textContent;
      return node.getAttribute('aria-label') ?? label ?? node.textContent;
    });
    // A date field holds the Tab key three times over.
    if (name !== '') found.push(name.replace(/\s+/g, ''));
  }
  return found;
}

async function expectSpoken(page: Page, screen: string): Promise<readonly Heard[]> {
  const { controls } = await heard(page);
  expect(controls.length, screen).toBeGreaterThan(2);
  expect(
    controls.filter(({ name }) => /(^|› )$/.test(name)),
    screen,
  ).toEqual([]);
  const names = controls.map(({ role, name }) => `${role} ${name}`);
  expect(
    names.filter((name, index) => names.indexOf(name) !== index),
    `${screen}: said twice`,
  ).toEqual([]);
  const reached = await tabbed(page);
  const disabled = await page
    .locator('button:disabled')
    .evaluateAll((all) => all.map((one) => one.ariaLabel));
  const read = controls
    .map(({ name }) => (name.split(' › ').at(-1) ?? '').replace(/\s+/g, ''))
    .filter((name) => !disabled.some((off) => off?.replace(/\s+/g, '') === name));
  // The Tab key goes on from where somebody last was, and round.
  const first = Math.max(0, reached.indexOf(read[0] ?? ''));
  expect([...reached.slice(first), ...reached.slice(0, first)], `${screen}: order of focus`).toEqual(read);
  return controls;
}

test('every screen says what each field and button is, and the focus goes as it is read', async () => {
  const page = await dated(await bench.open());
  const start = await expectSpoken(page, 'start');
  expect(start.find(({ name }) => name.startsWith('Hour meter'))?.value).toBe('8850');
  await page.locator('#to-list').click();
  await expectSpoken(page, 'list');
  await page.locator('.row').first().click();
  await page.getByRole('button', { name: '7', exact: true }).click();
  const point = await expectSpoken(page, 'point');
  expect(point.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['Thickness › 7', 'Thickness › point', 'previous point', 'Remark']),
  );
  await page.locator('#wrong-here').click();
  await expectSpoken(page, 'what is wrong');
  await page.locator('[data-kind="joint open"]').click();
  await expectSpoken(page, 'something wrong');
  await page.locator('#wrong-done').click();
  await page.locator('#list').click();
  await page.locator('#add-place').click();
  await expectSpoken(page, 'another place');
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  await page.locator('#to-more').click();
  for (const id of ['#add-flight', '#add-flight', '#add-finding', '#add-finding', '#add-photo', '#add-photo'])
    await page.locator(id).click();
  await expectSpoken(page, 'beside the points');
  await finish(page);
  await expectSpoken(page, 'finish');
  await page.context().close();
}, 60_000);

test('a suspicious value, what cannot be read, and the number typed are announced', async () => {
  const page = await dated(await bench.open());
  await page.locator('#meter').fill('70');
  expect((await heard(page)).announced.join('\n')).toContain('Lower than last time (8000 h)');
  await page.locator('#meter').fill('about 70');
  expect((await heard(page)).announced.join('\n')).toContain('Cannot be read: it is no number');
  await page.locator('#meter').fill('8850');
  await page.locator('#to-list').click();
  await page.locator('.row', { hasText: 'P1' }).click();
  for (const digit of ['1', '1']) await page.getByRole('button', { name: digit, exact: true }).click();
  const { announced } = await heard(page);
  expect(announced).toContain('11 mm');
  expect(announced.join('\n')).toContain('Thicker than last time (8.4 mm on 2026-01-05)');
  await page.getByRole('button', { name: 'TROUGH SHOWING' }).click();
  expect((await heard(page)).announced.join('\n')).toContain('Tell the person responsible at once.');
  await page.context().close();
});

test('the as-fitted form too: each panel says which field is which, and doubts are announced', async () => {
  const analysis = read(liftConveyor({ job: 'reline run 1' }));
  const folder = mkdtempSync(path.join(os.tmpdir(), 'by-ear-'));
  const file = path.join(folder, 'form.html');
  writeFileSync(file, asFittedPage(workPack(analysis.estate, theJob(analysis))));
  const context = await bench.browser().newContext({ viewport: smallPhone, offline: true });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  rmSync(folder, { recursive: true, force: true });
  await page.locator('#run-2-done').click();
  await page.locator('#run-1-part').click();
  await page.locator('#run-1-last').selectOption('2');
  const controls = await expectSpoken(page, 'as fitted');
  expect(controls.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['Panel 2 of run 2: length', 'Panel 2 of run 2: thickness']),
  );
  await page.locator('[data-thickness="2/2"]').fill('9');
  expect((await heard(page)).announced.join('\n')).toContain('thinner than bought (12 mm)');
  await context.close();
});
