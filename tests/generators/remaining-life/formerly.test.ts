// What is over stays in the report: readings of liners, screws and plates that came out or were patched, conditions put right.

import { expect, test } from 'vitest';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { look, only, reportOf } from './story.js';

const records =
  look(
    1000,
    'P2 thickness 11 mm; flight at 2 m depth 57 mm; panel missing at 4.2 m serious; tail bearing noise slight "hums"',
  ) +
  look(3000, 'P2 thickness 9.6 mm; panel missing at 4.2 m serious; plate at 4.2 m thickness 3.6 mm') +
  look(
    5000,
    'P2 thickness 8.1 mm; panel missing at 4.2 m serious; plate at 4.2 m thickness 3.2 mm; closed tail bearing noise "new seal"',
  ) +
  'patch DG1 2025-08-01 at 4 m to 4.5 m thickness 4 mm\n' +
  'reline DG1 2025-08-01 meter 5088 h { liner TwoLayer12 scope run 1 old panel at 4.9 m thickness 6.2 mm }\n' +
  look(6000, 'P2 thickness 11.8 mm; flight at 2 m depth 52 mm; plate at 4.2 m thickness 4 mm') +
  'screw change DG1 2025-09-08 meter 6000 h { screw Spiral400 }\n' +
  look(8000, 'P2 thickness 10.9 mm; flight at 2 m depth 59 mm');

const report = reportOf(records, { depth: 'hand' }, (text) =>
  text.replace('shaftless', 'shaftless flight 60 mm by 20 mm condemn flight at 40 mm'),
);
const text = remainingLifeHtml(report).replace(/<[^>]+>/g, ' ');
const forms = [text, remainingLifeMarkdown(report)];
const data = JSON.parse(remainingLifeJson(report)) as {
  conveyors: readonly Readonly<Record<string, unknown>>[];
};

test('the plate that was patched over keeps its readings and its rate', () => {
  // Bare from the look of 1000 h on: 0.4 mm in 2,000 h, and 0.8 mm in 4,000 h.
  const [covered] = only(report).trough.covered;
  expect(covered?.readings.map(({ thickness, bareLeast }) => [thickness, bareLeast])).toEqual([
    [3.6, 2000],
    [3.2, 4000],
  ]);
  expect(covered?.hand).toMatchObject({ kind: 'rate', ruling: expect.closeTo(0.0002, 9) as number });
  for (const form of forms) {
    expect(form).toContain('0.20 mm/1000 h at 4.20 m, a new plate lasts 10000 h bare');
    expect(form).toContain('patched over on 2025-08-01');
    expect(form).not.toContain('never measured here');
  }
});

test('a screw that came out keeps its flight readings, those of the day it came out too', () => {
  for (const form of forms) expect(form).toContain('at 2.00 m: 57.0 (2025-02-12), 52.0 (2025-09-08)');
  expect(only(report).flights.map(({ readings }) => readings.map(({ depth }) => depth))).toEqual([[59]]);
});

test('readings of a liner that came out, and what the bench showed, at no clock position that nobody wrote', () => {
  for (const form of forms) {
    expect(form).toContain('11.0 mm (2025-02-12), 9.6 mm (2025-05-06), 8.1 mm (2025-07-28)');
    expect(form).toContain('6.2 at 4.90 m');
    expect(form).not.toContain('6.2 at 4.90 m 6:00');
  }
});

test('a condition that was put right says since when, how it ended and what was noted', () => {
  for (const form of forms)
    for (const words of ['tail bearing noise', 'closed by the look of 2025-07-28', 'hums; new seal'])
      expect(form).toContain(words);
  expect(data.conveyors[0]?.['closedConditions']).toMatchObject([
    { what: 'panel missing at 4.20 m, serious', how: 'ended by the reline of 2025-08-01' },
    { what: 'tail bearing noise, slight', since: '2025-02-12', ended: '2025-07-28' },
  ]);
});
