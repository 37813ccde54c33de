// Are the drawings to scale on paper? A pack is printed to PDF by a real browser, on A4 and on Letter, and its lines are measured
// there: a length that the machine is declared to have must be that length over the scale of the title block, to 0.05 mm.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { pathsOf, type PaperPage } from '../../kit/pdf-paths.js';
import { openBrowser } from '../browser.js';
import { liftConveyor, read, theJob } from '../estate.js';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** 10.5 m long, so that its elevation goes on a sheet at 1:50. */
const tenMetres = liftConveyor()
  .replace('length 12 m', 'length 10.5 m')
  .replace('section S2 6 m', 'section S2 4.5 m')
  .replace('11.5 m both', '9.5 m both')
  .replace('to 12 m mass', 'to 10.5 m mass')
  .replace('5 m to 12 m mobile', '5 m to 10.5 m mobile')
  .replace('at 11.5 m\n', 'at 10 m\n')
  .replace('to 10.6 m', 'to 10.5 m');

interface Printed {
  /** A sheet a drawing to scale, in their order. */
  readonly sheets: readonly PaperPage[];
  readonly scales: readonly number[];
}

/** The elevation comes first. */
async function printed(text: string, paper: string): Promise<Printed> {
  const analysis = read(text);
  const pack = workPack(analysis.estate, theJob(analysis));
  const page = await browser.newPage();
  await page.setContent(workPackHtml(pack).replaceAll('A4', paper));
  const pdf = await page.pdf({ preferCSSPageSize: true });
  await page.close();
  return {
    // Every sheet has its border of 256.3 mm, and no other page is as wide.
    sheets: pathsOf(pdf).filter(({ rectangles }) =>
      rectangles.some(({ width, height }) => Math.abs(width - 256.3) < 0.1 && height > 100),
    ),
    scales: pack.drawings
      .filter(({ chart }) => !chart)
      .map(({ svg }) => Number(/\b1:(\d+)\b/.exec(svg)?.[1])),
  };
}

function lengthsOf({ lines }: PaperPage): readonly number[] {
  return lines.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]));
}

/** Widths of the pieces of the scale bar, 1.6 mm high and side by side, from the left. */
function barOf({ rectangles }: PaperPage): readonly number[] {
  const pieces = rectangles.filter(({ height, width }) => Math.abs(height - 1.6) < 0.02 && width > 5);
  const at = new Map(pieces.map((piece) => [piece.x.toFixed(2), piece]));
  return [...at.values()].sort((a, b) => a.x - b.x).map(({ width }) => width);
}

const near = (length: number) => (found: number) => Math.abs(found - length) < 0.05;

test.each([
  ['A4', tenMetres, 50, 10_500],
  ['A4', liftConveyor(), 100, 12_000],
  ['Letter', tenMetres, 50, 10_500],
] as const)(
  'on %s a machine is as long as its scale says, and a metre of the bar a metre',
  async (paper, text, scale, length) => {
    const { sheets, scales } = await printed(text, paper);
    expect(scales).toEqual([scale, 50, 5]);
    expect(sheets).toHaveLength(3);
    const [elevation, along, across] = sheets;
    if (!elevation || !along || !across) return;
    expect(lengthsOf(elevation).some(near(length / scale))).toBe(true);
    const bar = barOf(elevation);
    expect(bar.length).toBeGreaterThanOrEqual(2);
    // Half a metre a piece at 1:50, so that a metre of two is 20.00 mm; a metre a piece at 1:100.
    const perMetre = scale === 50 ? 2 : 1;
    for (const piece of bar) expect(Math.abs(piece * perMetre - 1000 / scale)).toBeLessThan(0.01);
    // Panels of 1 m, at 1:50.
    expect(along.rectangles.filter(({ width }) => near(1000 / 50)(width)).length).toBeGreaterThanOrEqual(5);
    // The sides of the trough: 150 mm high, at 1:5.
    expect(lengthsOf(across).some(near(150 / 5))).toBe(true);
  },
);
