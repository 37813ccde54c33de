// Findings, gaps of hold-downs and motor currents stand on the conveyor's page, in all its forms.

import { expect, test } from 'vitest';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { look, reportOf } from './story.js';

const records =
  look(
    3000,
    'P1 thickness 10.5 mm; hold-down at 3 m gap 9 mm; current empty 4.1 A loaded 6.2 A; finding brace at 2.4 m "bent"',
  ) +
  look(
    6000,
    'P1 thickness 9 mm; hold-down at 3.02 m gap 14 mm "loose"; current loaded 7.5 A; finding "<b>rattles</b>"',
  );

test('findings, gaps and currents reach the page, the Markdown and the JSON', () => {
  const report = reportOf(records, { depth: 'hand' });
  const html = remainingLifeHtml(report);
  const markdown = remainingLifeMarkdown(report);
  for (const words of ['bent', '14.0 on 2025-09-08, loose', '9.0 on 2025-05-06', '+5.0', '7.5', '6.2']) {
    expect(html).toContain(words);
    expect(markdown).toContain(words);
  }
  expect(html).toContain('&lt;b&gt;rattles');
  const { conveyors } = JSON.parse(remainingLifeJson(report)) as {
    conveyors: readonly Readonly<Record<string, unknown>>[];
  };
  expect(conveyors[0]).toMatchObject({
    findings: [
      { day: '2025-09-08', part: null, at: null, text: '<b>rattles</b>' },
      { day: '2025-05-06', part: 'brace', at: 2400, text: 'bent' },
    ],
    holdDownGaps: [
      {
        name: null,
        at: 3000,
        read: [
          { day: '2025-09-08', gap: 14, note: 'loose' },
          { day: '2025-05-06', gap: 9, note: null },
        ],
      },
    ],
    motorCurrents: [
      { day: '2025-09-08', empty: null, loaded: 7.5 },
      { day: '2025-05-06', empty: 4.1, loaded: 6.2 },
    ],
  });
});

test('currents of one look on two lines are one row', () => {
  const two = look(3000, 'current empty 4.1 A; current loaded 6.2 A');
  const one = look(3000, 'current empty 4.1 A loaded 6.2 A');
  const rows = (records: string): unknown =>
    reportOf(records, { depth: 'hand' }).conveyors[0]?.beside.currents.map(({ empty, loaded }) => [
      empty,
      loaded,
    ]);
  expect(rows(two)).toEqual([[4.1, 6.2]]);
  expect(rows(one)).toEqual(rows(two));
});

test('a conveyor without them has no empty tables', () => {
  const html = remainingLifeHtml(reportOf(look(3000, 'P1 thickness 10.5 mm'), { depth: 'hand' }));
  for (const title of ['Findings', 'Gaps of hold-downs', 'Motor current, A'])
    expect(html).not.toContain(`>${title}`);
});

test('bearings and gearbox have their place: newest, before, and how they went, with the count of looks', () => {
  const report = reportOf(
    look(1000, 'gearbox temperature 55 degC; tail bearing noise slight') +
      look(2000, 'gearbox temperature 61 degC "after a wet week"; tail bearing noise serious') +
      look(3000, 'gearbox temperature 149 degF; closed tail bearing noise; thrust bearing noise'),
    { depth: 'hand' },
  );
  // 149 °F are 65 °C: +4 since the one before, +10 since the first.
  const row = ['gearbox', 'temperature', '65 °C on 2025-05-06'];
  for (const form of [remainingLifeHtml(report).replace(/<[^>]+>/g, ' '), remainingLifeMarkdown(report)]) {
    for (const words of [
      ...row,
      '61 °C on 2025-03-25, after a wet week; 55 °C on 2025-02-12',
      '+4.0 K since the one before; +10.0 K since 2025-02-12; 3 looks',
      'put right on 2025-05-06',
      'serious on 2025-03-25; slight on 2025-02-12',
      'noted on 2025-05-06',
    ])
      expect(form).toContain(words);
  }
  const { conveyors } = JSON.parse(remainingLifeJson(report)) as {
    conveyors: readonly { drive: readonly { part: string; of: string; read: readonly unknown[] }[] }[];
  };
  expect(conveyors[0]?.drive.map(({ part, of, read }) => [part, of, read.length])).toEqual([
    ['tail bearing', 'noise', 3],
    ['thrust bearing', 'noise', 1],
    ['gearbox', 'temperature', 3],
  ]);
});

/** The row of one part in the table of bearings and gearbox. */
function trendOf(part: string, ...texts: readonly string[]): string | undefined {
  const table = remainingLifeMarkdown(reportOf(texts.join(''), { depth: 'hand' }));
  return table
    .split('\n')
    .find((row) => row.startsWith(`| ${part} |`))
    ?.split('|')
    .at(-2)
    ?.trim();
}

test('a trend is told only where both looks say how bad it was, and counts from when the part was put right', () => {
  const leak = (hours: number, how: string): string =>
    look(hours, `P1 thickness 9 mm; gearbox oil leak ${how}`);
  expect(trendOf('gearbox', leak(3000, 'slight'), leak(6000, 'serious'))).toBe('worse; 2 looks');
  expect(trendOf('gearbox', leak(3000, 'slight'), leak(6000, ''))).toBe(
    'how bad is not said each time; 2 looks',
  );
  const renewed = 'serviced DG1 2025-06-02 gearbox renewed\n';
  expect(trendOf('gearbox', leak(3000, 'slight'), renewed, leak(6000, ''))).toBe(
    'back after it was put right; 1 look',
  );
});

test('a thickness of the last look stands before the colour of the same day', () => {
  const report = reportOf(
    look(3000, 'P1 thickness 10.5 mm') + look(6000, 'P1 thickness 5.1 mm; P1 colour teal'),
  );
  expect(remainingLifeMarkdown(report)).toContain('| 5.1 mm, 2025-09-08 |');
});

test('a photo of a reading of a liner that came out since stands beside what was read of it', () => {
  const markdown = remainingLifeMarkdown(
    reportOf(
      look(3000, 'P1 thickness 9 mm photo "photos/before.png"') +
        'reline DG1 2025-06-09 meter 5000 h {\n  liner TwoLayer12\n}\n',
    ),
  );
  expect(markdown).toMatch(/What was read of the liners before[^]*Photo photos\/before\.png: P1 on /);
});

test('every photo of a condition stands under its name, those of the looks between too', () => {
  const lifted = (hours: number, photo: string): string =>
    look(hours, `P1 thickness 9 mm; panel lifted 4 mm at 1.5 m photo "photos/${photo}.png"`);
  const markdown = remainingLifeMarkdown(
    reportOf(lifted(1000, 'one') + lifted(2000, 'two') + lifted(3000, 'three'), { depth: 'hand' }),
  );
  for (const name of ['one', 'two', 'three'])
    expect(markdown).toMatch(new RegExp(`Photo photos/${name}\\.png: .*panel lifted`));
});

test('what readings scatter by is never printed as nothing, and stands beside what the gauges are declared to err by', () => {
  const gauge = (text: string): string =>
    text.replace(/view downstream/g, 'view downstream\n  gauge ultrasonic ± 0.2 mm');
  const smooth = [1000, 2000, 3000, 4000, 5000].map((hours) =>
    look(hours, `P1 thickness ${12 - hours / 1000} mm; P2 thickness ${12 - hours / 1250} mm`),
  );
  const html = remainingLifeHtml(reportOf(gauge(smooth.join(''))));
  expect(html).toMatch(
    /readings scatter by about ± 0\.(0[1-9]|[1-9]\d) mm about smooth wear; the gauges are declared to err by ± 0\.20 mm/,
  );
});

test('work that closes what was put right before says of what it is', () => {
  const report = reportOf(
    look(3000, 'bolts loose 3 at P1') +
      'serviced DG1 2025-06-02 bolts tightened at P1 by "fitter"\n' +
      'serviced DG1 2025-06-03 closed bolts loose at P1 "tried" by "fitter"\n',
    { depth: 'hand' },
  );
  expect(report.conveyors[0]?.beside.serviced.map(({ part, work, ended }) => [part, work, ended])).toEqual([
    ['bolts at P1 clock 5:00', 'put right', []],
    ['bolts at P1 clock 5:00', 'tightened', ['3 bolts loose at P1']],
  ]);
});
