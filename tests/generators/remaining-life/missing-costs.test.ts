// Where a cost is not declared without which no expected cost can be told, every form says which, and none prints a number.

import { beforeAll, describe, expect, it } from 'vitest';
import type { ProgrammeSolver } from '../../../src/domain/decision/integer-programme.js';
import { programmeCsv } from '../../../src/generators/remaining-life/csv-programme.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { nodeSolver } from '../../../src/solver/node-solver.js';
import { estateOf, look, only, works } from './story.js';

const crewed = works
  .replace('lead time liner', 'crew Alpha 4 people cost 55 EUR/h\n  lead time liner')
  .replace('  point P1', '  access Floor at 0 m to 6 m ground\n  isolation Q1 electrical\n  point P1');
const records =
  look(3000, 'P1 thickness 10.5 mm; P2 thickness 10.6 mm') +
  look(6000, 'P1 thickness 9 mm; P2 thickness 9.2 mm') +
  look(8000, 'P1 thickness 8 mm; P2 thickness 8.3 mm');

describe('expected costs', () => {
  let solver: ProgrammeSolver;
  beforeAll(async () => {
    solver = await nodeSolver();
  });
  const made = (text: string): RemainingLife =>
    remainingLife(estateOf(text, records), { track: false, solver });
  const programmeOf = (report: RemainingLife) =>
    (
      JSON.parse(remainingLifeJson(report)) as {
        programmes: {
          expected: number | null;
          missingCosts: string[];
          lines: { expected: number | null; cost: number | null }[];
        }[];
      }
    ).programmes[0];

  it('are numbers where all is declared', () => {
    const report = made(crewed);
    expect(remainingLifeMarkdown(report)).toMatch(/Expected cost [\d ]+ EUR up to the last outage/);
    expect(programmeOf(report)?.expected).toBeGreaterThan(0);
    expect(programmeOf(report)?.missingCosts).toEqual([]);
    expect(only(report).decision?.options.some(({ expected }) => expected !== undefined)).toBe(true);
  });

  it('are not known without the cost of an unplanned reline, and what is missing is named', () => {
    const report = made(crewed.replace(/ *cost unplanned reline.*\n/, ''));
    const missing = '`cost unplanned reline` is not declared';
    const [html, markdown] = [remainingLifeHtml(report), remainingLifeMarkdown(report).replaceAll('\\', '')];
    for (const page of [html.replaceAll('<code>', '`').replaceAll('</code>', '`'), markdown]) {
      expect(page).toContain(`Expected costs are not known: ${missing}`);
      expect(page).not.toContain('Expected cost ');
      expect(page).not.toContain('least cost possible');
    }
    expect(programmeOf(report)?.expected).toBeNull();
    expect(programmeOf(report)?.missingCosts).toEqual(['cost unplanned reline']);
    expect(programmeOf(report)?.lines.map(({ expected }) => expected)).toEqual([null]);
    expect(programmeOf(report)?.lines[0]?.cost).toBeGreaterThan(0);
    const [head = '', row = ''] = programmeCsv(report.programmes ?? []).split('\r\n');
    expect(row.split(',')[head.split(',').indexOf('expected')]).toBe('');
    for (const { expected } of only(report).decision?.options ?? []) expect(expected).toBeUndefined();
  });

  it('may stand on the price of the liner and the rate of the crew in its place', () => {
    const priced = crewed
      .replace(/ *cost unplanned reline.*\n/, '')
      .replace('cost reline', 'cost liner 180 EUR/m\n  cost reline');
    expect(programmeOf(made(priced))?.missingCosts).toEqual([]);
  });

  it('that are declared, and less than liner and crews alone come to, are told beside what counts', () => {
    const dear = crewed.replace('cost reline', 'cost liner 1800 EUR/m\n  cost reline');
    const told =
      /A reline of the whole is written down as [\d ]+ EUR, and its liner and crews alone come to (\d+) EUR: the larger counts\./;
    for (const form of [remainingLifeHtml, remainingLifeMarkdown]) {
      const [, reckoned] = told.exec(form(made(dear))) ?? [];
      const whole = only(made(dear)).decision?.options.find(({ what }) =>
        what.includes('the whole conveyor'),
      );
      expect(whole?.cost?.toFixed(0)).toMatch(new RegExp(`^${reckoned?.slice(0, 3)}`));
      expect(form(made(crewed))).not.toMatch(told);
    }
  });
});
