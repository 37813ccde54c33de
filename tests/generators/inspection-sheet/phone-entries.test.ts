// Whatever is typed into the phone page comes back: as a value where it can be read with certainty, else as a comment that holds it
// as it was typed. In a real browser at the size of a small phone, without a network; the block is read by the language itself.

import fc from 'fast-check';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { typedNumber } from '../../../src/views/forms/typed-number.js';
import { liftConveyor, read } from '../estate.js';
import { dated, finish, phoneBench } from './phone-bench.js';

const estate = liftConveyor({
  more: 'inspection DG1 2026-01-05 meter 8000 h {\n  view upstream\n  P1 thickness 8.4 mm\n}',
});

const bench = phoneBench(estate);

async function open(before?: () => void): Promise<Page> {
  return dated(await bench.open(before ? { before } : {}));
}

/** From the first screen to the one beside the points. */
async function toMore(page: Page): Promise<void> {
  await page.locator('#to-list').click();
  await page.locator('#to-more').click();
}

function comments(block: string): string {
  return block
    .split('\n')
    .filter((line) => line.trim().startsWith('//'))
    .join('\n');
}

/** The inspection that the language reads out of the block. */
function inspection(block: string) {
  const analysis = read(estate, block);
  const errors = analysis.findings.filter(({ severity }) => severity === 'error');
  expect(
    errors.map(({ message }) => message),
    block,
  ).toEqual([]);
  const found = analysis.estate.inspections.at(-1);
  if (analysis.estate.inspections.length !== 2 || !found) throw new Error(`no inspection in ${block}`);
  return found;
}

describe('a number as typed', () => {
  const counter = { units: ['h', 'hours'], most: 9_999_999, counter: true };
  const gap = { units: ['mm'], most: 1000 };
  const metres = { units: ['m', 'metres'], most: 12 };
  test.each([
    ['7,9 A', { units: ['A'], most: 100 }, '7.9'],
    ['7.9a', { units: ['A'], most: 100 }, '7.9'],
    ['14 mm', gap, '14'],
    ['.5', gap, '0.5'],
    ['007,', gap, '7'],
    ['24 000', counter, '24000'],
    ['24\u2009000', counter, '24000'],
    ['24\u202f000,5 h', counter, '24000.5'],
    ['1 024 000 hours', counter, '1024000'],
    ['24000.125', counter, '24000.125'],
    ['6,400 m', metres, '6.400'],
  ])('%s is read', (typed, field, text) => {
    expect(typedNumber(typed, field)).toEqual({ kind: 'read', text, value: Number(text) });
  });
  test.each([
    ['-2', gap, 'below zero'],
    ['−2', gap, 'below zero'],
    ['14 in', gap, 'in mm, not in in'],
    ['14 m', gap, 'in mm, not in m'],
    ['1 400', gap, 'leaves open'],
    ['24 00', counter, 'leaves open'],
    ['24.000', counter, 'may be 24 and a part, or 24000'],
    ['24,000 h', counter, 'may be 24 and a part, or 24000'],
    ['about 5', metres, 'no number'],
    ['5-6', metres, 'no number'],
    ['1.2.3', metres, 'no number'],
    ['mm', gap, 'no number'],
    ['12.1', metres, 'more than 12 m'],
    ['5?', metres, 'no number'],
  ])('%s is marked', (typed, field, words) => {
    expect(typedNumber(typed, field)).toEqual({
      kind: 'unreadable',
      why: expect.stringContaining(words) as string,
    });
  });
  test('blank is neither', () => {
    expect(typedNumber(' \u2009', gap)).toEqual({ kind: 'blank' });
  });
});

describe('an entry', () => {
  const long = `${'cracked along the weld, '.repeat(20)}to the end`;
  test('is read where it is certain, else said in words, listed at the finish and carried in a comment', async () => {
    const page = await open();
    await page.locator('#meter').fill('9 000');
    await page.locator('#gauge-error').fill('0,2');
    expect(await page.locator('.field', { has: page.locator('#gauge-error') }).innerText()).toContain(
      'Cannot be read: no gauge is chosen',
    );
    await toMore(page);
    await page.locator('#loaded').fill('7,9 A');
    await page.locator('#empty').fill('about 4');
    await page.locator('[data-gap=H4]').fill('14 mm');
    await page.locator('[data-gap=H5]').fill('−2');
    expect(await page.locator('.field', { has: page.locator('[data-gap=H5]') }).innerText()).toContain(
      '! Cannot be read: it is below zero. It is kept as typed.',
    );
    await page.locator('#add-flight').click();
    await page.locator('[data-flight-depth]').fill('57,5');
    expect(await page.locator('.finding').innerText()).toContain('the place is missing');
    await page.locator('#add-finding').click();
    await page.locator('[data-finding-at="0"]').fill('about 5');
    await page.locator('[data-finding="0"]').fill(long);
    await page.locator('#add-finding').click();
    await page.locator('.finding select').nth(1).selectOption('brace');
    await page.locator('#more-back').click();
    await page.locator('#add-place').click();
    await page.locator('#chainage').fill('about 3');
    await page.locator('#clock').fill('7 or 8');
    await page.locator('#place-add').click();
    await page.getByRole('button', { name: 'Back' }).click();
    const block = await finish(page);
    expect(block).toBe(
      [
        'inspection Tarnholt.DG1 2026-03-16 meter 9000 h {',
        '  view upstream',
        '  hold-down at 3.5 m gap 14 mm',
        '  current loaded 7.9 A',
        `  finding "${long}"`,
        '  // Typed on the sheet and not read as a value, so not counted; what is meant is for a person to say:',
        '  //   Gauge is right to ± mm: “0,2” (no gauge is chosen: choose the one it belongs to)',
        '  //   Another place: “about 3 at 7 or 8” (it was begun and not added)',
        '  //   Hold-down gap H5: “−2” (it is below zero)',
        '  //   Motor current empty: “about 4” (it is no number of A)',
        '  //   Flight 1: “57,5 at no place” (place: the place is missing)',
        '  //   Place of finding 1: “about 5” (it is no number of m)',
        '  //   Finding 2: “brace” (it says not what was found)',
        '}',
        '',
      ].join('\n'),
    );
    const list = await page.locator('#unread').innerText();
    for (const typed of ['0,2', 'about 3', '−2', 'about 4', '57,5', 'about 5', 'brace'])
      expect(list).toContain(`“${typed}`);
    expect(inspection(block)).toMatchObject({
      meter: { hours: { value: 9000 } },
      currents: [{ loaded: { value: 7.9 } }],
      remarks: [{ text: long }],
    });
    await page.context().close();
  });

  test('that is suspicious is repeated at the finish', async () => {
    const page = await open();
    await page.locator('#meter').fill('7 900');
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    for (const sign of ['9', 'point', '6'])
      await page.getByRole('button', { name: sign, exact: true }).click();
    await finish(page);
    const list = await page.locator('#suspicious').innerText();
    expect(list).toContain('Hour meter 7 900: Lower than last time (8000 h)');
    expect(list).toContain('P1, 9.6 mm: Thicker than last time');
    await page.context().close();
  });
});

describe('nothing goes by a slip of the thumb', () => {
  test('steel that was seen gives way to a digit only when the inspector says so', async () => {
    const page = await open();
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.getByRole('button', { name: 'TROUGH SHOWING' }).click();
    const seven = page.getByRole('button', { name: '7', exact: true });
    await seven.click();
    expect(await page.locator('#display').innerText()).toBe('TROUGH SHOWING');
    await page.locator('#steel-keep').click();
    expect(await page.locator('#display').innerText()).toBe('TROUGH SHOWING');
    await page.getByRole('button', { name: 'delete', exact: true }).click();
    await page.locator('#steel-keep').click();
    await seven.click();
    await page.locator('#steel-replace').click();
    await page.getByRole('button', { name: '5', exact: true }).click();
    expect(await page.locator('#display').innerText()).toBe('75 mm');
    await page.context().close();
  });

  test('a remark outlives the reading it was typed beside', async () => {
    const page = await open();
    await page.locator('#to-list').click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.getByRole('button', { name: '7', exact: true }).click();
    await page.locator('#note').fill('loose bolt');
    await page.getByRole('button', { name: 'delete', exact: true }).click();
    expect(comments(await finish(page))).toContain('Remark at P1: “loose bolt”');
    await page.getByRole('button', { name: 'Back to the list' }).click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.getByRole('button', { name: 'too dark' }).click();
    await page.getByRole('button', { name: 'out of reach' }).click();
    expect(await finish(page)).toContain('  P1 not seen "out of reach, loose bolt"\n');
    await page.getByRole('button', { name: 'Back to the list' }).click();
    await page.locator('.row', { hasText: 'P1' }).click();
    await page.getByRole('button', { name: 'ivory' }).click();
    expect(await finish(page)).toContain('  P1 colour ivory "loose bolt"\n');
    await page.context().close();
  });

  test('delete asks first, and a second tap on the same spot keeps everything', async () => {
    const page = await open();
    await page.locator('#by').fill('day shift');
    await finish(page);
    await page.locator('#delete').scrollIntoViewIfNeeded();
    const spot = await page.locator('#delete').boundingBox();
    if (!spot) throw new Error('no delete button');
    await page.mouse.dblclick(spot.x + spot.width / 2, spot.y + spot.height / 2);
    expect(await page.locator('#block').inputValue()).toContain('by "day shift"');
    await page.context().close();
  });
});

describe('what the page says of itself is so', () => {
  const clipboards: readonly (readonly [string, () => void, string])[] = [
    [
      'copied',
      () => Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.resolve() } }),
      'Copied.',
    ],
    [
      'refused',
      () =>
        Object.defineProperty(navigator, 'clipboard', {
          value: { writeText: () => Promise.reject(new Error()) },
        }),
      'Not known to be copied. The text is selected',
    ],
    [
      'missing',
      () => Object.defineProperty(navigator, 'clipboard', { value: undefined }),
      'Not known to be copied. The text is selected',
    ],
  ];
  test.each(clipboards)('clipboard %s', async (_name, before, words) => {
    const page = await open(before);
    const block = await finish(page);
    await page.locator('#copy').click();
    await page.locator('#told:not(:empty)').waitFor();
    expect(await page.locator('#told').innerText()).toContain(words);
    if (words !== 'Copied.') expect(await page.evaluate(() => String(getSelection()))).toBe(block);
    await page.context().close();
  });

  test('NOT KEPT stays in sight on every screen where storage is blocked', async () => {
    const page = await open(() => {
      Storage.prototype.setItem = () => {
        throw new Error('blocked');
      };
    });
    const seen = async (): Promise<void> => {
      await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
      const box = await page.locator('#not-kept').boundingBox();
      expect(await page.locator('#not-kept').innerText()).toContain('NOT KEPT');
      expect(box && box.y >= 0 && box.y + box.height <= 640).toBe(true);
    };
    await seen();
    await page.locator('#to-list').click();
    await seen();
    await page.locator('.row').first().click();
    await seen();
    await finish(page);
    await seen();
    await page.context().close();
  });
});

// A model of the inspector: every entry is a text and what it means, undefined where nobody but the inspector can say.
interface Typed {
  readonly text: string;
  readonly means: number | undefined;
}
const tenths = (most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 1, max: most * 10 }).map((n) => n / 10);
function entry(most: number, unit: string, other: string): fc.Arbitrary<Typed> {
  const sure = fc
    .tuple(tenths(most), fc.constantFrom('', ' ', unit, ` ${unit}`, ` ${unit.toUpperCase()}`), fc.boolean())
    .map(([means, end, comma]) => ({
      text: `${comma ? String(means).replace('.', ',') : String(means)}${end}`,
      means,
    }));
  const words = fc.string({ minLength: 1, maxLength: 12 }).filter((text) => /[^\d\s.,]/.test(text));
  const slip = fc.oneof(
    fc.tuple(fc.constantFrom('-', '−', 'about ', '~', '>'), tenths(most)).map(([sign, n]) => `${sign}${n}`),
    tenths(most).map((n) => `${n} ${other}`),
    words.map((text) => `${text}?`),
  );
  return fc.oneof(
    sure,
    slip.map((text) => ({ text, means: undefined })),
  );
}
const perhaps = <T>(made: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(made, { nil: undefined });
const inspector = fc.record({
  first: fc.string({ maxLength: 10 }),
  loaded: perhaps(entry(90, 'A', 'kW')),
  empty: perhaps(entry(90, 'A', 'kW')),
  gap: perhaps(entry(90, 'mm', 'in')),
  flightAt: perhaps(entry(11, 'm', 'ft')),
  flightDepth: perhaps(entry(60, 'mm', 'in')),
  findingAt: perhaps(entry(11, 'm', 'ft')),
  finding: perhaps(fc.string({ minLength: 1, maxLength: 400 })),
  thickness: fc
    .integer({ min: 51, max: 83 })
    .filter((n) => n % 10 > 0)
    .map((n) => n / 10),
  remark: fc.string({ maxLength: 40 }),
  losesTab: fc.boolean(),
});

const keyNames: Readonly<Record<string, string>> = { '.': 'point', '⌫': 'delete' };

test('a random inspector finds everything typed in the block, as a value or as typed', async () => {
  const page = await open();
  await fc.assert(
    fc.asyncProperty(inspector, async (typed) => {
      await page.evaluate(() => localStorage.clear());
      await page.reload();
      await page.locator('#date').fill('2026-03-16');
      await page.locator('#meter').fill('8850');
      await page.locator('#to-list').click();
      await page.locator('.row', { hasText: 'P1' }).click();
      for (const sign of `6⌫${typed.thickness}`)
        await page.getByRole('button', { name: keyNames[sign] ?? sign, exact: true }).click();
      await page.locator('#note').fill(typed.first);
      await page.locator('#note').fill(typed.remark);
      await page.locator('#list').click();
      await page.locator('#to-more').click();
      await page.locator('#add-flight').click();
      await page.locator('#add-finding').click();
      const fields: readonly (readonly [string, string | undefined])[] = [
        ['#loaded', typed.loaded?.text],
        ['#empty', typed.empty?.text],
        ['[data-gap=H4]', typed.gap?.text],
        ['[data-flight-at]', typed.flightAt?.text],
        ['[data-flight-depth]', typed.flightDepth?.text],
        ['[data-finding-at]', typed.findingAt?.text],
        ['[data-finding]', typed.finding],
      ];
      // A mistake first, then what is meant: only the correction may come back.
      for (const [field] of fields) await page.locator(field).fill(typed.first);
      for (const [field, text] of fields) await page.locator(field).fill(text ?? '');
      if (typed.losesTab) await page.reload();
      judge(typed, await finish(page));
    }),
    { numRuns: 3 },
  );
  await page.context().close();
});

function judge(typed: typeof inspector extends fc.Arbitrary<infer T> ? T : never, block: string): void {
  const found = inspection(block);
  const left = comments(block);
  const holds = (entry: Typed | undefined, value: number | undefined, together = true): void => {
    if (entry?.means !== undefined && together) expect(value, block).toBeCloseTo(entry.means, 9);
    else expect(value, block).toBeUndefined();
    if (entry && entry.text.trim() !== '' && (entry.means === undefined || !together))
      expect(left).toContain(entry.text.trim());
  };
  const metres = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : value / 1000;
  holds(typed.loaded, found.currents[0]?.loaded?.value);
  holds(typed.empty, found.currents[0]?.empty?.value);
  holds(typed.gap, found.holdDownGaps[0]?.gap.value);
  const isPair = typed.flightAt?.means !== undefined && typed.flightDepth?.means !== undefined;
  holds(typed.flightAt, metres(found.flights[0]?.at.value), isPair);
  holds(typed.flightDepth, found.flights[0]?.depth.value, isPair);
  const words = (typed.finding ?? '').trim();
  holds(typed.findingAt, metres(found.remarks[0]?.at?.value), words !== '');
  expect(found.remarks.map(({ text }) => text)).toEqual(words === '' ? [] : [words.replace(/"/g, "'")]);
  const remark = typed.remark.trim().replace(/"/g, "'");
  expect(block).toContain(`\n  P1 thickness ${typed.thickness} mm${remark && ` "${remark}"`}\n`);
}
