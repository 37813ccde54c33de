// One value behind all forms: the page, the comment and the data have the same sections of a conveyor, each with what is in it.

import { describe, expect, test } from 'vitest';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { estateOf, look, works } from './story.js';

/** Every kind of thing that the records can say, at least once. */
const rows = (thickness: number): string => `gauge ultrasonic ± 0.2 mm
  P1 thickness ${thickness} mm photo "p1-${thickness}.jpg"
  P2 not seen blocked "wet"
  P3 thickness ${thickness - 0.4} mm
  panel missing at 4.2 m urgent photo "gap.jpg" "found in the discharge"
  plate at 4.2 m thickness ${(3.9 - (12 - thickness) / 20).toFixed(2)} mm photo "plate.jpg"
  gearbox temperature ${Math.round(70 - thickness)} degC
  hold-down at 3 m gap 9 mm
  flight at 2 m depth ${Math.round(52 + thickness / 2)} mm
  flight at 2 m outside diameter ${Math.round(384 + thickness)} mm
  worn at 2 m clock 5:00 to 7:00
  current empty 4.1 A
  current loaded 6.2 A
  speed 17.6 rpm
  finding brace at 2.4 m "bent"
  photo "drive.jpg" "the drive end"`;

const change = (text: string): string =>
  text
    .replace('shaftless', 'shaftless flight 60 mm by 20 mm condemn flight at 40 mm')
    .replace('point P2', 'point P3 at 4.8 m clock 6:00\n  point P2');

const estate = estateOf(
  change(works),
  look(1000, rows(11.6)),
  'reline DG1 2025-03-20 meter 1872 h { liner TwoLayer12 scope panel 1 of run 1 }\n' +
    'patch DG1 2025-03-19 at 4.1 m to 4.5 m thickness 4 mm welded by "a coded welder" photo "weld.jpg"\n',
  look(3000, rows(10.4)),
  look(5000, rows(9.2)),
);
const report = remainingLife(estate, { track: false });

const text = (markup: string): string => markup.replace(/<[^>]+>/g, '').replace(/&amp;/g, '&');
const page = /<section class="page"[\s\S]*?<\/section>/.exec(remainingLifeHtml(report))?.[0] ?? '';
const comment = remainingLifeMarkdown(report).split(/^## /m)[1] ?? '';
const { conveyors } = JSON.parse(remainingLifeJson(report)) as {
  conveyors: readonly Readonly<Record<string, unknown>>[];
};

/** Sections that the page alone has, and why. */
const pageOnly: Readonly<Record<string, string>> = {
  'Thickness left, point by point': 'drawings of the readings that both forms have as a table',
};

/** Where the data have what a section shows. */
const inData: Readonly<Record<string, readonly string[]>> = {
  'Open conditions': ['conditions'],
  Findings: ['findings'],
  'Gaps of hold-downs, mm': ['holdDownGaps'],
  'Motor current, A': ['motorCurrents'],
  'Speed of the screw, rpm': ['speeds'],
  'Bearings and gearbox': ['drive'],
  'Worn strip, by the clock': ['wornWidths'],
  Points: ['points'],
  'What was read, mm left': ['points'],
  'Photos of the readings': ['photos'],
  'The trough behind the liner': ['trough'],
  'Screw flight': ['flights', 'flightReadings'],
  'Borrowed, doubted, assumed': ['dutyVariation'],
  'Not seen, and left out': ['runs', 'points'],
  'Liners before these': ['formerSets'],
};

describe('sections of a conveyor', () => {
  const onPage = [...page.matchAll(/<h3[^>]*>([\s\S]*?)<\/h3>/g)].map(([, title = '']) => text(title));
  const inComment = [...comment.matchAll(/^### (.*)$/gm)].map(([, title = '']) => title);

  test('are the same in the page and in the comment', () => {
    const shared = onPage.filter((title) => !(title in pageOnly) && !title.startsWith('What can be done'));
    expect(new Set(inComment)).toEqual(new Set(shared));
    for (const title of Object.keys(pageOnly)) expect(onPage).toContain(title);
  });

  test('stand in the data too, and none is empty', () => {
    expect(new Set(inComment)).toEqual(new Set(Object.keys(inData)));
    for (const [title, keys] of Object.entries(inData))
      for (const key of keys) {
        const value = conveyors[0]?.[key];
        expect(Array.isArray(value) ? value.length : value, `${title}: ${key}`).toBeTruthy();
      }
  });

  test('carry the same words: every reading, patch and photo is in all forms', () => {
    const data = JSON.stringify(conveyors[0]);
    for (const photo of ['p1-10.4.jpg', 'p1-9.2.jpg', 'gap.jpg', 'plate.jpg', 'weld.jpg', 'drive.jpg'])
      for (const form of [page, comment, data]) expect(form, photo).toContain(photo);
    for (const words of ['57.0, 393.0 across', 'a coded welder', 'P2 looked for and not seen'])
      for (const form of [text(page), comment]) expect(form).toContain(words);
  });
});

test('a comment without room for the records of all says which it left out, and keeps what has to be read', () => {
  const conveyor = works.slice(works.indexOf('conveyor DG1'));
  const many = Array.from(
    { length: 45 },
    (_, i) =>
      conveyor.replace('DG1', `C${i}`) +
      look(3000, 'P1 thickness 10.5 mm; P2 thickness 9 mm; current loaded 6.2 A', `C${i}`),
  ).join('');
  const whole = remainingLifeMarkdown(remainingLife(estateOf(works, many), { depth: 'hand' }));
  expect(whole.match(/^## /gm)).toHaveLength(46);
  const without = whole.match(/beside the wear did not fit here/g)?.length ?? 0;
  expect(without).toBeGreaterThan(0);
  expect(whole.match(/^### The trough behind the liner$/gm)).toHaveLength(46 - without);
});

test('a flight that was read is shown, also where its screw has no limit', () => {
  const read = look(3000, 'flight at 2 m depth 52 mm; flight at 2 m outside diameter 391 mm');
  const without = remainingLife(estateOf(works, read), { depth: 'hand' });
  for (const form of [remainingLifeHtml(without), remainingLifeMarkdown(without)]) {
    expect(form).toContain('52.0 (2025-05-06)');
    expect(form).toContain('391.0 (2025-05-06)');
    expect(form).toMatch(/screw Spiral400 has no .*flight.* and no .*condemn flight at/);
  }
});
