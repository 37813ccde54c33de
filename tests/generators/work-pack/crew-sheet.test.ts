// The two pages that a crew takes along: the same steps, holds, measures and masses as the pack, never more than two pages in a
// real browser, and nothing left out in silence.

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formatMass } from '../../../src/domain/units/format.js';
import { escapeHtml } from '../../../src/generators/page/markup.js';
import { crewSheetHtml } from '../../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { standingCaution } from '../../../src/generators/work-pack/parts/cautions.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { troughline } from '../../cli/console.js';
import { openBrowser, pagesOf } from '../browser.js';
import { day, liftConveyor, read, tarnholt, theJob, type EstateFacts } from '../estate.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));

function pack(facts: EstateFacts = {}): WorkPack {
  const analysis = read(liftConveyor(facts));
  return workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });
}

/** A job with `count` steps: those of the pack again and again, under new numbers. */
function longer(made: WorkPack, count: number): WorkPack {
  const steps = Array.from({ length: count }, (_, index) => {
    const step = made.steps[index % made.steps.length];
    if (!step) throw new Error('a job without steps');
    return { ...step, number: index + 1 };
  });
  return { ...made, steps };
}

const hotWork = pack({
  job: 'change screw\n  order {\n    isolate\n    prove dead\n    strip run above Gate\n    patch run above Gate hot work shielded wet fire watch 60 min\n  }',
});
const screw = pack({ job: 'change screw' });

interface Row {
  readonly number: number;
  readonly hold: boolean;
  readonly sign: boolean;
  readonly text: string;
}

test('how many people a platform bears is said once for every step, and a lower number at its step', () => {
  const estate = tarnholt();
  const job = estate.jobs.find(({ name }) => name === 'DG1_Winter27');
  if (!job) throw new Error('the demo has no DG1_Winter27');
  const made = workPack(estate, job, { asOf: day('2026-10-31') });
  const [first, ...others] = made.steps;
  if (!first) throw new Error('no steps');
  expect(
    made.steps.filter(({ measures }) => measures.join().includes('at most 2 people')).length,
  ).toBeGreaterThan(9);
  const html = crewSheetHtml({
    ...made,
    steps: [{ ...first, measures: ['MP1: at most 1 person.'] }, ...others],
  });
  expect(html.match(/at most 2 people/g)).toHaveLength(1);
  expect(html).toContain('at most 2 people on it in every step');
  expect(html).toContain('MP1: at most 1 person.');
});

describe('in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  async function rowsOf(html: string): Promise<readonly Row[]> {
    const page = await browser.newPage();
    await page.setContent(html);
    const rows = await page.evaluate(() =>
      [...document.querySelectorAll('.steps tbody tr')].map((row) => ({
        number: Number(row.children[0]?.textContent?.replace('■', '')),
        hold: row.children[0]?.textContent?.includes('■') ?? false,
        sign: row.querySelector('.sign') !== null,
        text: row.textContent ?? '',
      })),
    );
    await page.close();
    return rows;
  }

  test('pages are counted right: a whole pack has many', async () => {
    expect(await pagesOf(browser, workPackHtml(screw))).toBeGreaterThan(5);
  });

  for (const [name, made] of [
    ['a reline', pack()],
    ['a screw change', screw],
    ['an order that cannot be built', hotWork],
    ['40 steps', longer(screw, 40)],
    ['150 steps', longer(screw, 150)],
    [
      'an order with 20 obstacles',
      {
        ...hotWork,
        obstacles: Array.from({ length: 20 }, () => hotWork.obstacles).flat(),
      },
    ],
  ] as const)
    for (const paper of ['A4', 'Letter'] as const)
      test(`${name} prints on at most two pages of ${paper}`, async () => {
        expect(await pagesOf(browser, crewSheetHtml(made, { paper }))).toBeLessThanOrEqual(2);
      });

  for (const [name, made] of [
    ['a reline', pack()],
    ['a screw change', screw],
  ] as const)
    test(`${name} tells every step of the pack, with its place, people, measures and hold`, async () => {
      const rows = await rowsOf(crewSheetHtml(made));
      // Repeated tests of the air are named with the first.
      const own = made.steps.filter(({ repeat }) => repeat === undefined);
      const test = rows.find(({ text }) => text.includes('gas test'))?.text ?? '';
      for (const { repeat, startText = '' } of made.steps)
        if (repeat !== undefined) expect(test).toContain(startText.split(' ')[1] ?? '');
      expect(rows.map(({ number }) => number)).toEqual(own.map(({ number }) => number));
      expect(rows.filter(({ hold }) => hold).map(({ number }) => number)).toEqual(
        own.filter(({ hold }) => hold).map(({ number }) => number),
      );
      for (const [index, step] of own.entries()) {
        const row = rows[index];
        expect(row?.sign).toBe(step.hold);
        for (const words of [step.action, step.where, step.who, step.access, ...step.measures])
          expect(row?.text).toContain(words);
      }
    });

  test('what does not fit is said to stand in the pack, and only then', async () => {
    const made = longer(screw, 150);
    const html = crewSheetHtml(made);
    const rows = await rowsOf(html);
    const own = made.steps.filter(({ repeat }) => repeat === undefined);
    expect(rows.length).toBeGreaterThan(15);
    expect(rows.length).toBeLessThan(150);
    expect(html).toContain(`More steps in the pack, from number ${own[rows.length]?.number}.`);
    expect(crewSheetHtml(screw)).not.toContain('More steps');
  });

  test('steps are set in 10 pt or more', async () => {
    const page = await browser.newPage();
    await page.setContent(crewSheetHtml(longer(screw, 150)));
    const px = await page.evaluate(() =>
      [...document.querySelectorAll('.steps tbody td')].map((cell) =>
        parseFloat(getComputedStyle(cell).fontSize),
      ),
    );
    expect(Math.min(...px) * 0.75).toBeGreaterThan(9.99);
    await page.close();
  });

  test('both jobs of the demo print on two pages with every step of the pack', async () => {
    const out = mkdtempSync(path.join(tmpdir(), 'trough-crew-'));
    try {
      await troughline(
        [
          'pack',
          'all',
          'examples/4-tarnholt',
          '--as-of',
          '2026-10-31',
          '--out',
          out,
          '--format',
          'crew',
          '--format',
          'json',
        ],
        { cwd: root },
      );
      const jobs = readdirSync(out).filter((name) => name.endsWith('.json'));
      expect(jobs).toHaveLength(2);
      for (const job of jobs) {
        const made = JSON.parse(readFileSync(path.join(out, job), 'utf8')) as WorkPack;
        const html = readFileSync(path.join(out, job.replace('.json', '-crew.html')), 'utf8');
        expect(await pagesOf(browser, html)).toBe(2);
        const rows = await rowsOf(html);
        expect(rows.map(({ number, sign }) => [number, sign])).toEqual(
          made.steps.filter(({ repeat }) => repeat === undefined).map(({ number, hold }) => [number, hold]),
        );
        for (const obstacle of made.obstacles) expect(html).toContain(escapeHtml(obstacle.message));
      }
    } finally {
      rmSync(out, { recursive: true, force: true });
    }
  });
});

describe('the same as the pack', () => {
  test('masses of panels, covers and every piece of the spiral', () => {
    const html = crewSheetHtml(screw);
    for (const lift of screw.lifts.byHand)
      expect(html).toContain(`${lift.what}: the heaviest ${formatMass(lift.mass)}`);
    const pieces = screw.lifts.spiral?.pieces ?? [];
    expect(pieces.length).toBeGreaterThan(1);
    for (const piece of pieces)
      expect(html).toContain(`spiral piece ${piece.number}: ${formatMass(piece.mass)}`);
    for (const taking of screw.takings) expect(html).toContain(taking.which);
  });

  test('the stamp, word for word, and only where the pack has it', () => {
    expect(hotWork.obstacles.length).toBeGreaterThan(0);
    const stampOf = (html: string): string => /<section class="stamp">.*?<\/section>/s.exec(html)?.[0] ?? '';
    const one = { ...hotWork, obstacles: hotWork.obstacles.slice(0, 1) };
    expect(stampOf(crewSheetHtml(one))).toBe(stampOf(workPackHtml(one)));
    expect(stampOf(crewSheetHtml(one))).toContain('NOT BUILDABLE');
    expect(stampOf(crewSheetHtml(screw))).toBe('');
  });

  test('the standing caution; it clears nothing', () => {
    expect(crewSheetHtml(screw)).toContain(standingCaution);
  });
});
