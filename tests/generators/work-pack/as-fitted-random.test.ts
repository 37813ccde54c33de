// Random crews fit some of the runs, a part of others, measure some of it, change their minds and lose the tab: the block records what
// the model of the crew fitted and nothing else, and what is left of the job is the rest. Driven from inside the page, in a real
// browser, without a network; a machine declared in inches is asked in inches.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { asFittedPage } from '../../../src/generators/work-pack/as-fitted.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { openBrowser } from '../browser.js';
import { fittedThickness } from '../../../src/domain/model/fitted-thickness.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { setsAt } from '../../../src/domain/model/liner-sets.js';
import { liftConveyor, read, theConveyor, theJob } from '../estate.js';

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(path.join(os.tmpdir(), 'as-fitted-random-'));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const sizes = [
  { width: 360, height: 640 },
  { width: 412, height: 915 },
] as const;

async function open(text: string, viewport: { width: number; height: number } = sizes[0]): Promise<Page> {
  const analysis = read(text);
  const file = path.join(folder, 'form.html');
  writeFileSync(file, asFittedPage(workPack(analysis.estate, theJob(analysis))));
  const context = await browser.newContext({ viewport, offline: true });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  return page;
}

const estate = liftConveyor({ job: 'reline run 1' });
const panelsOf = { 1: 8, 2: 5 } as const;

interface Answer {
  readonly run: 1 | 2;
  readonly progress: 'done' | 'part' | 'not-done';
  readonly first: number;
  readonly last: number;
  /** Typed into the panel of this number, where it is asked for; PLAN stands for its planned length, PLUS for 1 mm more. */
  readonly panel: number;
  readonly typed: string;
  readonly thickness: string;
  /** Types the planned length of every panel that is asked for. */
  readonly measuresAll: boolean;
  readonly losesTab: boolean;
}
const answer: fc.Arbitrary<Answer> = fc.constantFrom(1 as const, 2 as const).chain((run) =>
  fc.record({
    run: fc.constant(run),
    progress: fc.constantFrom('done' as const, 'part' as const, 'not-done' as const),
    first: fc.integer({ min: 1, max: panelsOf[run] }),
    last: fc.integer({ min: 1, max: panelsOf[run] }),
    panel: fc.integer({ min: 1, max: panelsOf[run] }),
    typed: fc.constantFrom('PLAN', 'PLUS', 'PLUS mm', 'about PLAN', '39 in'),
    thickness: fc.constantFrom('12.1', '11,9', '12.3 mm', 'about 12', ''),
    measuresAll: fc.boolean(),
    losesTab: fc.boolean(),
  }),
);

/** Runs inside the page. */
function inThePage(answers: readonly Answer[]): string {
  const at = (id: string): HTMLElement => {
    const found = document.getElementById(id);
    if (!found) throw new Error(`no ${id}`);
    return found;
  };
  const put = (node: Element | null, value: string): void => {
    if (!(node instanceof HTMLInputElement || node instanceof HTMLSelectElement)) return;
    node.value = value;
    node.dispatchEvent(new Event('input', { bubbles: true }));
  };
  const script = document.querySelector('script:not([type])')?.textContent ?? '';
  const again = (): void => {
    at('app').replaceChildren();
    const node = document.createElement('script');
    node.textContent = script;
    document.body.append(node);
    node.remove();
  };
  const { relines } = JSON.parse(at('data').textContent) as {
    relines: readonly { runs: readonly Planned[] }[];
  };
  const plan = Object.fromEntries(
    relines.flatMap(({ runs }) =>
      runs.flatMap(({ run, panels }) => panels.map(({ panel, planned }) => [`${run}/${panel}`, planned])),
    ),
  );
  localStorage.clear();
  again();
  put(at('date'), '2027-04-15');
  put(at('meter'), '18750');
  for (const { run, progress, first, last, panel, typed, thickness, measuresAll, losesTab } of answers) {
    at(`run-${run}-${progress}`).click();
    if (progress === 'part') {
      put(at(`run-${run}-first`), String(first));
      put(at(`run-${run}-last`), String(last));
    }
    if (measuresAll)
      for (const field of document.querySelectorAll(`[data-panel^="${run}/"]`))
        put(field, plan[field.getAttribute('data-panel') ?? ''] ?? '');
    else put(document.querySelector(`[data-panel="${run}/${panel}"]`), typed);
    put(document.querySelector(`[data-thickness="${run}/${panel}"]`), thickness);
    if (losesTab) again();
  }
  const block = at('block');
  return block instanceof HTMLTextAreaElement ? block.value : '';
}

function numbers(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from + 1 }, (_, k) => from + k);
}

interface Planned {
  readonly run: number;
  readonly panels: readonly {
    readonly panel: number;
    readonly planned: string;
    readonly from: number;
    readonly to: number;
  }[];
}

/** Panels named by lines such as `scope panels 2 to 4 of run 1`, `reline run 2` or `scope from 1.2 m to 3 m`. */
function named(lines: readonly string[], word: string, planned: readonly Planned[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const line of lines) {
    const whole = new RegExp(`${word} run (\\d)$`).exec(line);
    const part = new RegExp(`${word} panels? (\\d)(?: to (\\d))? of run (\\d)$`).exec(line);
    const stretch = new RegExp(`${word} from ([\\d.]+) m to ([\\d.]+) m$`).exec(line);
    for (const { run, panels } of planned)
      for (const { panel, from, to } of panels) {
        const middle = (from + to) / 2000;
        const [low, high] = [Number(part?.[1]), Number(part?.[2] ?? part?.[1])];
        if (
          Number(whole?.[1]) === run ||
          (Number(part?.[3]) === run && panel >= low && panel <= high) ||
          (stretch && middle > Number(stretch[1]) && middle < Number(stretch[2]))
        )
          found.add(`${run}/${panel}`);
      }
  }
  return found;
}

test.each(sizes)(
  'what is recorded is what was fitted, and what is left is the rest, at $width × $height',
  async (size) => {
    const page = await open(estate, size);
    const planned = await page.evaluate(() => {
      const data = JSON.parse(document.getElementById('data')?.textContent ?? '{}') as {
        relines: readonly { runs: readonly Planned[] }[];
      };
      return data.relines.flatMap(({ runs }) => runs);
    });
    expect(planned.map(({ run, panels }) => [run, panels.length]).sort()).toEqual(
      Object.entries(panelsOf).map(([run, count]) => [Number(run), count]),
    );
    const plan = new Map<string, string>(
      planned.flatMap(({ run, panels }) =>
        panels.map((each) => [`${run}/${each.panel}`, each.planned] as const),
      ),
    );
    let readByLanguage = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(answer, { maxLength: 6 }), async (drawn) => {
        const answers = drawn.map((each) => {
          const length = plan.get(`${each.run}/${each.panel}`) ?? '';
          const longer = String(Number(length) + 1).replace('.', ',');
          return { ...each, typed: each.typed.replace('PLAN', length).replace('PLUS', longer) };
        });
        const block = await page.evaluate(inThePage, answers);
        const fitted = new Set<string>();
        const typed = new Map<string, string>();
        const thick = new Map<string, string>();
        for (const each of answers) {
          for (const panel of numbers(1, panelsOf[each.run])) fitted.delete(`${each.run}/${panel}`);
          const [low, high] =
            each.progress === 'done'
              ? [1, panelsOf[each.run]]
              : [Math.min(each.first, each.last), Math.max(each.first, each.last)];
          if (each.progress !== 'not-done')
            for (const panel of numbers(low, high)) fitted.add(`${each.run}/${panel}`);
          // There are fields for the panels that are said to be fitted.
          if (each.measuresAll)
            for (const [key, length] of plan)
              if (key.startsWith(`${each.run}/`) && fitted.has(key)) typed.set(key, length);
          if (!fitted.has(`${each.run}/${each.panel}`)) continue;
          if (!each.measuresAll) typed.set(`${each.run}/${each.panel}`, each.typed);
          thick.set(`${each.run}/${each.panel}`, each.thickness);
        }
        const lines = block
          .trimEnd()
          .split('\n')
          .map((line) => line.trim());
        const all = ([1, 2] as const).flatMap((run) =>
          numbers(1, panelsOf[run]).map((panel) => `${run}/${panel}`),
        );
        expect([...named(lines, '^scope', planned)].sort()).toEqual([...fitted].sort());
        expect([...named(lines, '^//   reline', planned)].sort()).toEqual(
          all.filter((panel) => !fitted.has(panel)),
        );
        // Every length typed is in the block: as one, in a comment, or as it was typed.
        for (const text of [...typed.values(), ...thick.values()])
          expect(block.replaceAll('.', ',')).toContain(text.replace(/ mm$/, '').replaceAll('.', ','));
        if (readByLanguage++ >= 12 || fitted.size === 0) return;
        const after = read(estate, block);
        const asPlanned = [...typed].every(([key, length]) => length === plan.get(key));
        expect(
          after.findings
            .filter(({ code, origin }) => origin.source === 1 && (asPlanned || code !== 'TL338'))
            .map(({ message }) => message),
        ).toEqual([]);
        expect(after.estate.relines).toHaveLength(1);
        // Each panel of the records starts as thick as the gauge said of it, and no other does.
        const { linerSets } = historyOf(after.estate, theConveyor(after));
        for (const { run, panels } of planned)
          for (const { panel, from, to } of panels) {
            const at = (from + to) / 2;
            const set = setsAt(linerSets, at).at(-1);
            const said = fitted.has(`${run}/${panel}`) ? (thick.get(`${run}/${panel}`) ?? '') : '';
            const value = Number.parseFloat(said.replace(',', '.'));
            expect(set && fittedThickness(set, { name: 'here', at, declared: false })).toEqual({
              value: Number.isNaN(value) ? 12 : value,
              measured: !Number.isNaN(value),
            });
          }
      }),
      { numRuns: 40 },
    );
    await page.context().close();
  },
  120_000,
);

describe('a machine declared in inches', () => {
  test('is asked in inches and °F, and a temperature keeps the unit it was typed with', async () => {
    const page = await open(
      liftConveyor({ job: '' })
        .replace('layer ivory 6 mm', 'layer ivory 1/4 in')
        .replace('layer teal 6 mm', 'layer teal 1/4 in'),
    );
    await page.locator('#date').fill('2027-04-15');
    await page.locator('#meter').fill('18750');
    await page.locator('#run-2-done').click();
    const view = await page.locator('#app').innerText();
    expect(view).toContain('Run 2: panels as fitted, in, in the order of the work');
    expect(view).toContain('Panel 2: planned 39.37 long, 0.50 thick');
    expect(view).toContain('Liner temperature while fitting, °F');
    expect(view).toContain('P3 at 29.53 ft');
    await page.locator('#temperature').fill('50 °F');
    await page.locator('[data-panel="2/2"]').fill('37.4');
    await page.locator('[data-point=P3]').fill('0.6');
    await page.locator('[data-offcuts="0"]').fill('19.5 in 8,25 long');
    expect(await page.locator('.field', { has: page.locator('[data-panel="2/2"]') }).innerText()).toContain(
      '! 1.97 in shorter than planned (39.37 in)',
    );
    expect(await page.locator('.field', { has: page.locator('[data-point=P3]') }).innerText()).toContain(
      '! 0.10 in thicker than bought (0.50 in)',
    );
    const text = await page.locator('#block').inputValue();
    expect(text).toContain('  fitting temperature 50 degF\n');
    expect(text).toContain('  P3 thickness 0.6 in\n');
    expect(text).toContain('  offcut 19.5 in\n');
    expect(text).toContain('//   Offcut of TwoLayer12: “8,25 long” (');
    await page.locator('#temperature').fill('10 C');
    expect(await page.locator('#block').inputValue()).toContain('  fitting temperature 10 degC\n');
    await page.context().close();
  });

  test('a date of another year and a meter that runs back are asked about', async () => {
    const page = await open(
      liftConveyor({ more: 'inspection DG1 2026-10-12 meter 16500 h {\n  P1 thickness 7 mm\n}' }),
    );
    await page.locator('#date').fill('2026-04-15');
    await page.locator('#meter').fill('1650');
    const view = await page.locator('#app').innerText();
    expect(view).toContain('! This form is of the job from 2027-04-12 to 2027-04-16.');
    expect(view).toContain('! Lower than last time (16500 h on 2026-10-12).');
    await page.context().close();
  });
});
