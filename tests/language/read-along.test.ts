// What was read all along a stretch counts once, and never as a spot of its own beside a point in it that is read as well.

import { expect, test } from 'vitest';
import { conveyor, read, specifications } from './read.js';

const machine =
  specifications +
  conveyor(
    'DG1',
    'break Gate at 12.4 m to 12.9 m slide gate\n  point A at 9 m clock 5:00\n  point B at 11 m clock 5:00\n  point C at 14 m clock 5:00\n  point D at 15 m clock 7:00',
  );

/** The spots that the rows of a look count at, each with how many readings it has. */
function spotsOf(rows: string, head = ''): readonly string[] {
  const { estate, problems } = read(`${machine}inspection DG1 2026-01-05 meter 10 h {\n${head}${rows}\n}\n`);
  expect(problems).toEqual([]);
  const { readings, places } = estate;
  const seen = places.map(({ name, at, clock }, index) => ({
    text: name.startsWith(`${(at / 1000).toFixed(2)} m`) ? `${at} ${clock}` : name,
    count: readings.place.filter((place) => place === index).length,
  }));
  return seen.filter(({ count }) => count > 0).map(({ text, count }) => `${text}: ${count}`);
}

test.each([
  ['at the point nearest to its middle', 'from 8 m to 12 m clock 5:00 colour ivory', ['A: 1']],
  ['nearer to the other', 'from 8.5 m to 12.3 m clock 5:00 colour ivory', ['B: 1']],
  [
    'beside the reading of that point',
    'A thickness 9 mm\nfrom 8 m to 10 m clock 5:00 colour ivory',
    ['A: 2'],
  ],
  ['a quarter of an hour by the clock is the same', 'from 8 m to 10 m clock 5:15 colour ivory', ['A: 1']],
  ['another clock position is another spot', 'from 8 m to 10 m clock 7:00 colour ivory', ['9000 7: 1']],
  ['no point in it', 'from 9.1 m to 10.5 m clock 5:00 colour ivory', ['9800 5: 1']],
  ['not past a gate', 'from 11.5 m to 15 m clock 5:00 colour ivory', ['C: 1']],
  ['from below the gate, where no point is', 'from 11.2 m to 13.8 m clock 5:00 colour ivory', ['12500 5: 1']],
  [
    'at a spot that another reading names',
    'at 13.2 m clock 6:00 thickness 8 mm\nfrom 13 m to 13.6 m clock 6:00 colour ivory',
    ['13200 6: 2'],
  ],
  [
    'whichever is written first',
    'from 13 m to 13.6 m clock 6:00 colour ivory\nat 13.2 m clock 6:00 thickness 8 mm',
    ['13200 6: 2'],
  ],
  [
    'two stretches that overlap are one spot',
    'from 5 m to 8 m clock 6:00 colour ivory\nfrom 6 m to 7 m clock 6:00 colour ivory',
    ['6500 6: 2'],
  ],
  [
    'two that meet nowhere are two',
    'from 1 m to 3 m clock 6:00 colour ivory\nfrom 5 m to 7 m clock 6:00 colour ivory',
    ['2000 6: 1', '6000 6: 1'],
  ],
  ['without a clock at a point in it', 'from 8 m to 10 m thickness 9 mm', ['A: 1']],
  ['without a clock and without a point', 'from 2 m to 4 m thickness 9 mm', ['3000 6: 1']],
  ['without a clock, below a condition', 'bolts loose 2\nfrom 8 m to 10 m thickness 9 mm', ['A: 1']],
  ['from one clock position to another', 'from 8 m to 10 m clock 4:00 to 6:00 colour ivory', ['A: 1']],
  ['over the top', 'from 8 m to 10 m clock 11:00 to 1:00 colour ivory', ['9000 12: 1']],
  [
    'of panels that are named together each',
    'panels 1 to 3 and 5 of run 1 clock 2:00 colour ivory',
    ['200 2: 1', '1000 2: 1', '2200 2: 1', '4600 2: 1'],
  ],
])('%s', (_, rows, spots) => {
  expect(spotsOf(rows)).toEqual(spots);
});

test('a sector seen against the flow is turned round with both its ends', () => {
  expect(spotsOf('from 14 m to 16 m clock 4:00 to 6:00 colour ivory', 'view upstream\n')).toEqual(['D: 1']);
});

test('words and photo stand in either order', () => {
  const rows = [
    'A thickness 9 mm photo "a.png" "rough"',
    'panel torn at 8 m serious photo "a.png" "rough"',
    'panel torn at 8 m closed on 2026-02-01 "rough"',
    'finding gate at Gate slight photo "a.png" "rough"',
    'plate at 9 m thickness 3 mm photo "a.png" "rough"',
  ];
  const told = (lines: readonly string[]): unknown => {
    const { estate, problems } = read(
      `${machine}inspection DG1 2026-01-05 meter 10 h {\n${lines.join('\n')}\n}\n`,
    );
    expect(problems).toEqual([]);
    const { conditions, plates } = estate.inspections[0]!;
    const said = [...conditions, ...plates].map(({ photo, ...line }) => [
      photo?.path,
      line.note,
      'words' in line ? line.words : '',
    ]);
    return [
      said,
      [...estate.readings.photos.values()].map(({ path }) => path),
      [...estate.readings.notes.values()],
    ];
  };
  expect(told(rows.map((row) => row.replace('photo "a.png" "rough"', '"rough" photo "a.png"')))).toEqual(
    told(rows),
  );
});

test('against the flow the clock is turned round before a point is looked for', () => {
  expect(spotsOf('from 14.5 m to 16 m clock 5:00 colour ivory', 'view upstream\n')).toEqual(['D: 1']);
});
