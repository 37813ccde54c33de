import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { inSoundEstate } from '../../src/validation/example.js';
import { panelWouldSlide } from '../../src/validation/rules/jobs/panel-would-slide.js';
import { findingsIn, messageOf } from './findings-in.js';

test('a stop that lies beside the end of the panels is named, with how far off it is', () => {
  const text = 'bad' in panelWouldSlide ? panelWouldSlide.bad.replace(/[«»]/g, '') : '';
  const told = (rest: string): string =>
    analyse([{ uri: 'a.trough', text: inSoundEstate('job', text, { conveyor: rest }) }]).findings.find(
      ({ code }) => code === 'TL405',
    )?.message ?? '';
  expect(told('rest at 1.6 m')).toMatch(
    /nothing to rest on: the stop at 1\.6 m lies 100 mm from the end of the panels\.$/,
  );
  expect(told('rest at 2.1 m')).toMatch(/nothing to rest on\.$/);
  expect(told('rest at 1.5 m')).toBe('');
});

test('an old panel that nothing took out is named by its number', () => {
  const records =
    'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope run 3\n  old panel at 4.2 m thickness 5.1 mm\n}';
  expect(messageOf('TL370', 'estate', records)).toMatch(/at 4\.20 m of DG1, on panel 3 of run 2\.$/);
});

test('where a layout is reckoned, what is held against it says so and how to write it down', () => {
  const before = 'reline DG1 2024-05-06 meter 1900 h {\n  liner TwoLayer12\n  scope run 2MORE\n}\n';
  const old =
    'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope run 3\n  old panel at 4.2 m thickness 5.1 mm\n}';
  const told = (more: string): string => messageOf('TL370', 'estate', before.replace('MORE', more) + old);
  expect(told('')).toContain('`fitted run 2 panels …` in the reline of 2024-05-06 says it as it is');
  const fitted = '\n  fitted run 2 panels 700 mm, 1200 mm, 1200 mm, 1200 mm, 1200 mm';
  expect(told(fitted)).toMatch(/, on panel \d of run 2\.$/);
  const step = (stretch: string, more = ''): string =>
    analyse([
      {
        uri: 'a.trough',
        text: inSoundEstate(
          'whole',
          inSoundEstate('job', `order {\n  strip ${stretch}\n}`) + before.replace('MORE', more),
        ),
      },
    ]).findings.find(({ code }) => code === 'TL427')?.message ?? '';
  expect(step('from 1.6 m to 1.8 m')).toMatch(
    /^No panel has its middle from 1\.6 m to 1\.8 m \(panel 1 of run 2 from 1\.50 m to .* is bought in, and .*\), so there is nothing to strip\.$/,
  );
  expect(step('from 1.6 m to 1.8 m', fitted)).toMatch(
    /^No panel has its middle [^;]*, so there is nothing to strip\.$/,
  );
  expect(step('from 7.1 m to 7.4 m')).toMatch(/^No liner lies from/);
});

test('where a reline counts panels of the first liner, what it does not reach names the joints and both ways out', () => {
  const estate =
    'liner Green12 {\n  material PE1000\n  layer green 6 mm\n  layer black 6 mm\n  panel length 1200 mm\n  condemn at 3 mm\n  bolt M10 rows 2 pitch 250 mm countersink 4 mm\n  joint butted\n}\n' +
    'inspection DG1 2024-09-09 meter 3000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 7.2 mm\n}\n' +
    'reline DG1 2024-10-07 meter 3900 h {\n  liner Green12\n  scope SCOPE\n  old panel at P1 thickness 5.1 mm\n}\n' +
    'inspection DG1 2025-03-10 meter 6200 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 11.2 mm\n  at 4 m clock 7:30 colour green\n}';
  const told = (scope: string): readonly string[] =>
    findingsIn('estate', estate.replace('SCOPE', scope)).flatMap(({ code, message, todo }) =>
      ['TL117', 'TL306', 'TL370'].includes(code) ? [`${code} ${message} | ${todo}`] : [],
    );
  const first =
    'on panel 3 of run 2; how they lie is reckoned from the lengths that TwoLayer12 is bought in (joints at 2.20 m, 3.40 m, 4.60 m and 5.80 m), and `fitted run 2 panels …` in `conveyor DG1` says it as it is';
  const taken = 'The reline of 2024-10-07 is taken for one from 4.60 m to 5.80 m: if it renewed';
  expect(told('panel 4 of run 2')).toEqual([
    `TL370 This reline took nothing out at 4.00 m of DG1, ${first}. | ${taken} another stretch, write which (\`scope from … to …\`), or the panels as they lie. Else correct the place.`,
    expect.stringMatching(
      /^TL306 .* less was to be expected, on panel 3 of run 2; how they lie .* \| The reline of 2024-10-07 is taken for one from 4\.60 m to 5\.80 m: if it renewed this spot/,
    ),
    expect.stringMatching(
      /^TL117 .* \| Green12 has green\. The reline of 2024-10-07 is taken for one from 4\.60 m to 5\.80 m: if it renewed this spot/,
    ),
  ]);
  expect(told('from 3.4 m to 4.6 m')).toEqual([]);
});

test('panels exchanged are of unequal length as reckoned, and the way to write their lengths down is named', () => {
  const moved = (fitted: string): readonly (readonly string[])[] =>
    findingsIn(
      'estate',
      `reline DG1 2024-05-06 meter 1900 h {\n  liner TwoLayer12\n  scope run 2\n${fitted}}\n` +
        'panels moved DG1 2024-10-07 meter 3900 h {\n  panel 1 of run 2 exchanged with panel 3 of run 2\n  P1 thickness 11.4 mm\n}',
    ).flatMap(({ code, message, todo }) => (code === 'TL373' ? [[message, todo]] : []));
  expect(moved('')).toEqual([
    [
      'One of them is 700 mm long as reckoned, the other 1.20 m.',
      expect.stringContaining(
        '`fitted run 2 panels …` in the reline that brought them, or in the conveyor, says it',
      ),
    ],
  ]);
  expect(moved('  fitted run 2 panels 1100 mm, 1100 mm, 1100 mm, 1100 mm, 1100 mm\n')).toEqual([]);
});

test('a reading where a liner begins is told as at its beginning', () => {
  const records = (at: string): string =>
    `reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope from 3.4 m to 4.6 m\n}\ninspection DG1 2025-03-10 meter 6200 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  at ${at} clock 7:30 thickness 11.2 mm\n}`;
  expect(messageOf('TL377', 'estate', records('3.4 m'))).toContain('fitted on 2024-10-07 begins;');
  expect(messageOf('TL377', 'estate', records('4.6 m'))).toContain('fitted on 2024-10-07 ends;');
});

test('no day that nobody wrote is quoted beside a slip of the pen', () => {
  const looks = [
    ['2024-03-04', 1000, 11.6],
    ['2024-06-03', 2400, 11],
    ['2023-09-02', 3600, 10.4],
    ['2024-12-02', 4900, 9.9],
    ['2025-03-03', 6100, 9.4],
  ]
    .map(
      ([on, meter, mm]) =>
        `inspection DG1 ${on} meter ${meter} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness ${mm} mm\n}`,
    )
    .join('\n');
  const wrong = looks.replace('2023-09-02', '2025-09-02');
  const correction =
    '\ncorrection DG1 2025-04-07 P1 read on 2024-09-16 thickness 10.2 mm by "day shift" "gauge"';
  expect(messageOf('TL378', 'estate', wrong + correction)).toContain('2024-09-02');
  expect(messageOf('TL366', 'estate', wrong + correction)).toContain('nearest look is of');
  expect(messageOf('TL366', 'estate', wrong + correction)).not.toContain('2024-09-02');
});
