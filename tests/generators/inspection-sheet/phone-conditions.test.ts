// Conditions on the phone page: what stands open is answered by buttons, what is new is entered with place, severity and words; both
// come back as lines that the language reads as they were meant. In a real browser without a network, at the size of a small phone.

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openConditionRows } from '../../../src/domain/conditions/rows.js';
import { conditionKinds } from '../../../src/domain/conditions/kinds.js';
import { day, liftConveyor, read, theConveyor } from '../estate.js';
import { dated, expectGloves, finish, largePhone, phoneBench, smallPhone } from './phone-bench.js';

const estate = liftConveyor({
  more: `inspection DG1 2026-01-05 meter 8000 h {
  by "day shift"
  view upstream
  gauge depth gauge
  P1 thickness 8.4 mm
  bolts missing 3 at 8.4 m serious
  panel torn at 4 m slight
  gearbox noise slight
}`,
});
const bench = phoneBench(estate);

/** By its words and the condition or entry it is of. */
async function tap(page: Page, of: string, words: string): Promise<void> {
  await page.locator(`button[data-of="${of}: ${words}"]`).click();
}

/** The records with the block, and what of the block is found fault with. */
function after(block: string) {
  const analysis = read(estate, block);
  expect(
    analysis.findings.filter(({ code }) => code.startsWith('TL0')).map(({ message }) => message),
    block,
  ).toEqual([]);
  return {
    open: openConditionRows(analysis.estate, theConveyor(analysis)),
    faults: analysis.findings.filter(({ origin }) => origin.source === 1).map(({ code }) => code),
    lines: block.split('\n').map((line) => line.trim()),
  };
}

test('what stands open is answered with buttons: put right, still there and worse, not looked at', async () => {
  const page = await dated(await bench.open());
  await page.locator('#to-list').click();
  await page.locator('#to-more').click();
  await expectGloves(page);
  await tap(page, 'bolts missing 3 at 8.4 m', 'put right');
  await tap(page, 'panel torn at 4 m', 'still there');
  await tap(page, 'panel torn at 4 m', 'urgent');
  await page.locator('[data-condition-note="panel torn at 4 m"]').fill('hand wide "now"');
  // Taken back by a second tap, and answered otherwise.
  await tap(page, 'gearbox noise', 'still there');
  await tap(page, 'gearbox noise', 'serious');
  await tap(page, 'gearbox noise', 'still there');
  await tap(page, 'gearbox noise', 'could not look');
  await page.reload();
  const { open, lines } = after(await finish(page));
  expect(lines).toEqual(
    expect.arrayContaining([
      'closed bolts missing 3 at 8.4 m',
      `panel torn at 4 m urgent "hand wide 'now'"`,
      'not seen gearbox noise',
    ]),
  );
  expect(open.map(({ what, severity, lastSeen }) => [what, severity, lastSeen])).toEqual([
    ['panel torn at 4.00 m', 'urgent', day('2026-03-16')],
    ['gearbox noise', 'slight', day('2026-01-05')],
  ]);
  expect(await page.locator('#unanswered').count()).toBe(0);
  await page.context().close();
});

test('what is new is entered with its place, how bad it is and what was seen', async () => {
  const page = await dated(await bench.open());
  await page.locator('#to-list').click();
  await page.locator('#to-wrong').click();
  await expectGloves(page, 56);
  await page.locator('[data-kind="joint open"]').click();
  await page.locator('#wrong-measure').fill('9,5');
  await page.locator('#wrong-at').fill('6.4');
  await page.locator('#wrong-clock').fill('4:30');
  await tap(page, 'wrong', 'serious');
  await page.locator('#wrong-note').fill('runs under the flange');
  await page.locator('#wrong-photo').fill('IMG_0231.jpg');
  await expectGloves(page);
  await page.reload();
  expect(await page.locator('#wrong-note').inputValue()).toBe('runs under the flange');
  await page.locator('#wrong-done').click();
  // At a point its place is known; steel asks for somebody to be told.
  await page.locator('.row', { hasText: 'P3' }).click();
  await page.locator('#wrong-here').click();
  await page.locator('[data-kind="panel cracked"]').click();
  expect(await page.locator('#wrong-at').inputValue()).toBe('P3');
  await page.getByRole('button', { name: 'WORN THROUGH' }).click();
  expect(await page.locator('#view').innerText()).toContain('Tell the person responsible at once.');
  await tap(page, 'wrong', 'urgent');
  await page.locator('#wrong-done').click();
  expect(await page.locator('#view').getAttribute('data-view')).toBe('point');
  await page.locator('#list').click();
  await page.locator('#to-wrong').click();
  await page.locator('[data-kind=gearbox]').click();
  await tap(page, 'wrong', 'oil leak');
  await tap(page, 'wrong', 'slight');
  await page.locator('#wrong-temperature').fill('84');
  // The other side of looking mirrors what was seen from this one.
  await page.locator('#wrong-done').click();
  await page.getByRole('button', { name: 'Back to date' }).click();
  const side = page.getByRole('button', { name: '(upstream)' });
  const upstream = (await side.getAttribute('aria-pressed')) === 'true';
  await (upstream ? page.getByRole('button', { name: '(downstream)' }) : side).click();
  const { open, lines, faults } = after(await finish(page));
  expect(lines).toEqual(
    expect.arrayContaining([
      'joint open 9.5 mm at 6.4 m clock 7:30 serious photo "IMG_0231.jpg" "runs under the flange"',
      'panel cracked at P3 worn through urgent',
      'gearbox oil leak slight',
      'gearbox temperature 84 degC',
    ]),
  );
  expect(faults.filter((code) => /TL35/.test(code))).not.toContain('TL352');
  const known = open.map(({ what, severity }) => `${what} ${severity ?? ''}`);
  expect(known).toEqual(
    expect.arrayContaining([
      'joint open 9.5 mm at 6.40 m serious',
      'panel cracked at P3 urgent',
      'gearbox oil leak slight',
    ]),
  );
  await page.context().close();
});

test('what is missing or cannot be read is said, and stands in the text; taking one out asks first', async () => {
  const page = await dated(await bench.open({ viewport: largePhone }));
  await page.locator('#to-list').click();
  await page.locator('#to-wrong').click();
  await page.locator('[data-kind="bolts loose"]').click();
  await page.locator('#wrong-at').fill('by the gate');
  expect(await page.locator('.field', { has: page.locator('#wrong-at') }).innerText()).toContain(
    '! Cannot be read: it is no number of m.',
  );
  await page.locator('#wrong-clock').fill('half past');
  await page.locator('#wrong-done').click();
  await page.locator('#to-wrong').click();
  await page.locator('[data-kind="spiral bent"]').click();
  await page.locator('#wrong-out').click();
  await page.locator('#wrong-keep').click();
  await page.locator('#wrong-done').click();
  await page.locator('#to-more').click();
  await page.locator('[data-wrong="1"]').click();
  await page.locator('#wrong-out').click();
  await page.locator('#wrong-out-sure').click();
  expect(await page.locator('[data-wrong]').allInnerTexts()).toEqual(['✓ bolts loose, at by the gate']);
  const { lines } = after(await finish(page));
  expect(lines).toContain('bolts loose');
  expect(lines.join('\n')).not.toContain('spiral bent');
  expect(lines).toContain('//   Place of bolts loose: “by the gate” (it is no number of m)');
  expect(lines).toContain('//   Clock of bolts loose: “half past” (it is no clock position like 7:30)');
  expect(await page.locator('#suspicious').innerText()).toContain(
    'bolts loose, at by the gate: it does not say how many, how bad it is.',
  );
  expect(await page.locator('#unanswered').innerText()).toContain('gearbox noise');
  await page.context().close();
});

test('every condition of the language has its button, and each makes a line that is read as that condition', async () => {
  const page = await dated(await bench.open({ viewport: smallPhone }));
  await page.locator('#to-list').click();
  for (const kind of conditionKinds) {
    await page.locator('#to-wrong').click();
    await page.locator(`[data-kind="${kind}"]`).click();
    const fields = await page.locator('#view input').evaluateAll((nodes) => nodes.map(({ id }) => id));
    if (fields.includes('wrong-at')) await page.locator('#wrong-at').fill('9.9');
    if (fields.includes('wrong-measure')) await page.locator('#wrong-measure').fill('4');
    if (fields.includes('wrong-temperature')) await page.locator('#wrong-temperature').fill('60 °C');
    await tap(page, 'wrong', 'slight');
    await page.locator('#wrong-done').click();
  }
  const block = await finish(page);
  const { faults } = after(block);
  expect(faults).not.toContain('TL352');
  expect(
    read(estate, block)
      .estate.inspections.at(-1)
      ?.conditions.map((line) => line.kind),
  ).toEqual(conditionKinds);
  await page.context().close();
});

test('a round in which only something wrong was written down goes on the next day, and is not thrown away', async () => {
  const page = await bench.open();
  await page.locator('#to-list').click();
  await page.locator('#to-wrong').click();
  await page.locator('[data-kind="panel torn"]').click();
  await page.locator('#wrong-at').fill('5');
  await page.waitForTimeout(800); // the browser writes its storage down a moment later
  await page.addInitScript(() => {
    const now = Date.now() + 2 * 86_400_000;
    const Real = Date;
    globalThis.Date = class extends Real {
      constructor(...given: ConstructorParameters<DateConstructor> | []) {
        super(...((given.length === 0 ? [now] : given) as [number]));
      }
    } as DateConstructor;
  });
  await page.reload();
  expect(await page.locator('#view').getAttribute('data-view')).toBe('resume');
  await page.context().close();
});
