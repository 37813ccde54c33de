// What the drawings show and how they print, for conveyors of many shapes. Where text lands is measured in a real browser.

import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import type { Drawing } from '../../../src/generators/drawing/drawing-sheet.js';
import { openBrowser } from '../browser.js';
import { liftConveyor, read, tarnholt, theConveyor, theJob } from '../estate.js';

function drawings(text: string, look: 'downstream' | 'upstream' = 'downstream'): readonly Drawing[] {
  const analysis = read(text);
  return [
    ...workPack(analysis.estate, theJob(analysis)).drawings,
    ...inspectionSheet(analysis.estate, theConveyor(analysis), { look }).drawings,
  ];
}

function words(drawing: Drawing | undefined): readonly string[] {
  return [...(drawing?.svg ?? '').matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((match) => match[1] ?? '');
}

const shapes: Readonly<Record<string, string>> = {
  'the lift conveyor with a screw change': liftConveyor({ job: 'change screw' }),
  'one that falls': liftConveyor().replace('incline 25 deg', 'incline -12 deg'),
  'a level one': liftConveyor().replace('incline 25 deg', 'incline 0 deg'),
  'one of 60 m': liftConveyor()
    .replace('length 12 m', 'length 60 m')
    .replace(
      'section S1 6 m\n  section S2 6 m',
      Array.from({ length: 10 }, (_, i) => `section S${i + 1} 6 m`).join('\n  '),
    )
    .replace('from 0.5 m to 11.5 m', 'from 0.5 m to 59.5 m')
    .replace('from 0 m to 12 m mass', 'from 0 m to 60 m mass')
    .replace('South at 5 m to 12 m', 'South at 5 m to 60 m')
    .replace('point P3 at 9.00 m clock 5:00', 'point Q every 1.5 m from 9 m to 59 m clock 5:30'),
  'a short one crowded with points and isolations': liftConveyor({
    conveyor:
      Array.from(
        { length: 14 },
        (_, i) => `isolation X${i} "valve ${i}" hydraulic at ${(10 + i / 10).toFixed(1)} m`,
      ).join('\n  ') + '\n  point R every 0.25 m from 7.5 m to 11.75 m clock 3:30',
  }),
  'names that are long and strange': liftConveyor({
    jobTitle: 'Reline <b>&above & "beyond'.replace('"', "'"),
    plantTitle: 'Tarnholt Organics, the composting and digestion works by the river, northern part',
  }),
};

/** The example in inches, with a job. */
const inchText = `${readFileSync(new URL('../../../examples/2-inches/inches.trough', import.meta.url), 'utf8')}
job J1 "Reline" {
  conveyor SC7
  outage Spring27
  reline all
  crews Alpha
}
`;

/** The demo's own jobs. */
function demoDrawings(): readonly Drawing[] {
  const estate = tarnholt();
  return estate.jobs.flatMap((job) => workPack(estate, job).drawings);
}

function inchDrawings(): readonly Drawing[] {
  const analysis = read(inchText);
  return workPack(analysis.estate, theJob(analysis)).drawings;
}

describe('drawings', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  const sets: Readonly<Record<string, () => readonly Drawing[]>> = {
    'the demo’s jobs': demoDrawings,
    'a machine in inches': inchDrawings,
    ...Object.fromEntries(
      Object.entries(shapes).map(([name, text]) => [name, () => drawings(text, 'upstream')]),
    ),
  };
  for (const [name, drawn] of Object.entries(sets)) {
    test(`of ${name}: no label covers another, none leaves the border, none is smaller than 2.5 mm`, async () => {
      const page = await browser.newPage();
      for (const drawing of drawn()) {
        await page.setContent(`<body style="margin:0">${drawing.svg}</body>`);
        const found = await page.evaluate(() => {
          const frame = document.querySelector('svg')?.getBoundingClientRect();
          const texts = [...document.querySelectorAll('text')].map((node) => ({
            words: node.textContent ?? '',
            box: node.getBBox(),
            seen: node.getBoundingClientRect(),
            group: node.parentNode,
            turned: node.hasAttribute('transform'),
            size: Number(node.getAttribute('font-size')),
          }));
          const problems: string[] = [];
          texts.forEach((a, i) => {
            if (a.size < 2.5) problems.push(`small: ${a.words}`);
            if (
              frame &&
              (a.seen.left < frame.left ||
                a.seen.right > frame.right ||
                a.seen.top < frame.top ||
                a.seen.bottom > frame.bottom)
            )
              problems.push(`outside: ${a.words}`);
            // Boxes are as tall as the font; lettering itself leaves a third of that free.
            for (const cross of document.querySelectorAll('.point-mark')) {
              const box = cross.getBoundingClientRect();
              const across = Math.min(a.seen.right, box.right) - Math.max(a.seen.left, box.left);
              // Lettering leaves a fifth of its box free above and below.
              const free = a.seen.height * 0.2;
              const down = Math.min(a.seen.bottom - free, box.bottom) - Math.max(a.seen.top + free, box.top);
              if (!a.turned && across > 0.5 && down > 0.5) problems.push(`${a.words} over a point`);
            }
            for (const b of texts.slice(i + 1)) {
              if (a.group !== b.group || a.turned || b.turned) continue;
              const across =
                Math.min(a.box.x + a.box.width, b.box.x + b.box.width) - Math.max(a.box.x, b.box.x);
              const down =
                Math.min(a.box.y + a.box.height, b.box.y + b.box.height) - Math.max(a.box.y, b.box.y);
              if (across > 0.1 && down > Math.min(a.box.height, b.box.height) * 0.35)
                problems.push(`${a.words} over ${b.words}`);
            }
          });
          return problems;
        });
        expect(found, drawing.title).toEqual([]);
      }
      await page.close();
    });
  }

  test('of a machine in inches letter feet and inches, and no metre', () => {
    const lettered = inchDrawings().flatMap(words);
    expect(lettered).toContain('feet');
    expect(lettered.some((word) => /\d (mm|m)\b/.test(word) && !word.includes('in ('))).toBe(false);
    // 36 ft at 22 degrees: 36 × sin 22° = 13.49, 36 × cos 22° = 33.38; a panel of 48 in.
    expect(lettered.some((word) => word.includes('rises 13.49 ft over 33.38 ft'))).toBe(true);
    expect(lettered).toContain('48.0');
    // Of a machine in millimetres nothing is in feet.
    expect(
      drawings(liftConveyor())
        .flatMap(words)
        .filter((word) => /\bft\b|feet/.test(word)),
    ).toEqual([]);
  });

  test('every closing panel carries its C, also one too narrow for its number', () => {
    // The last run of the lift conveyor closes with a panel of 500 mm; joints elsewhere make narrower ones.
    for (const gap of ['7.5 m', '7.55 m', '7.7 m', '7.25 m']) {
      const text = liftConveyor().replace('to 7.5 m slide gate', `to ${gap} slide gate`);
      const analysis = read(text);
      const pack = workPack(analysis.estate, theJob(analysis));
      const closing = pack.panels.filter((panel) => panel.closing).length;
      expect(closing).toBeGreaterThan(0);
      for (const kind of ['Elevation', 'Layout along the axis', 'Panel map']) {
        const lettered = pack.drawings
          .filter(({ documentType }) => documentType === kind)
          .flatMap(words)
          .filter((word) => /^(\d+ ?)?C( · \d+)?$/.test(word));
        expect(lettered, `${kind} at ${gap}`).toHaveLength(closing);
      }
    }
  });

  test('carry a title block with owner, number, scale, date, sheet and origin', () => {
    const analysis = read(liftConveyor());
    const pack = workPack(analysis.estate, theJob(analysis), { drawnFrom: 'jobs/spring.trough' });
    const sheets = pack.drawings.filter(({ chart }) => !chart);
    expect(sheets.length).toBeGreaterThan(2);
    expect(words(sheets[0])).toEqual(
      expect.arrayContaining([
        'Tarnholt Organics',
        'DG1: elevation',
        'DG1-J1',
        'jobs/spring.trough',
        '1:100',
        `1 of ${sheets.length}`,
        'Approved by',
      ]),
    );
    sheets.forEach((drawing, index) => expect(words(drawing)).toContain(`${index + 1} of ${sheets.length}`));
  });

  test('the elevation lies at the true incline and is to scale', () => {
    const [elevation] = drawings(liftConveyor());
    expect(/translate\([^)]+\) rotate\(([-\d.]+)\)/.exec(elevation?.svg ?? '')?.[1]).toBe('-25');
    // 12 m at 1:100 is 120 mm of trough.
    expect(
      [...(elevation?.svg ?? '').matchAll(/<rect x="0" y="[-\d.]+" width="([\d.]+)"/g)].map(
        (match) => match[1],
      ),
    ).toContain('120');
    // 12 m × sin 25° and cos 25°, by calculator.
    expect(words(elevation)).toContain('25°: rises 5.07 m over 10.88 m');
  });

  test('the panel map is as wide as the sheet: π(175 − 6) + 2 · 150 = 830.9 mm', () => {
    expect(
      drawings(liftConveyor())
        .flatMap(words)
        .some((text) => text.includes('Sheet width 831 mm')),
    ).toBe(true);
  });

  test('looking upstream everything is mirrored: 5:00 becomes 7:00, 4:30 to 6:00 becomes 6:00 to 7:30', () => {
    const analysis = read(liftConveyor());
    const shown = inspectionSheet(analysis.estate, theConveyor(analysis), {
      look: 'upstream',
    }).drawings.flatMap(words);
    // A right-hand screw that conveys away from the viewer turns counter-clockwise; seen from its other end, clockwise.
    expect(shown).toEqual(
      expect.arrayContaining(['Looking UPSTREAM', '7:00', '6:00 to 7:30', 'P1 7:00', 'clockwise']),
    );
    expect(shown).not.toContain('P1 5:00');
  });

  test('no id is used twice on a page that shows them all', () => {
    const ids = drawings(shapes['the lift conveyor with a screw change'] ?? '').flatMap((drawing) =>
      [...drawing.svg.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]),
    );
    const pack = ids.filter((id) => id?.startsWith('DG1-J1'));
    expect(new Set(pack).size).toBe(pack.length);
  });
});
