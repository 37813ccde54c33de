// A stretch, a band and a section may say their unit once, behind the second number; a number alone still lacks one.

import { expect, test } from 'vitest';
import { conditionWords } from '../../src/domain/conditions/kinds.js';
import { conveyor, read, specifications } from './read.js';

const machine =
  specifications + conveyor('DG1', 'break Gate at 12.4 to 12.9 m slide gate\n  clearance 4 to 20 mm');
const look = (row: string): string => `inspection DG1 2026-01-05 meter 10 h {\n  ${row}\n}\n`;

test.each([
  ['material behind liner from 8 to 10.5 m', 'material behind liner from 8.00 m to 10.50 m'],
  ['bolts loose 2 at 8 to 9 m', '2 bolts loose from 8.00 m to 9.00 m'],
  ['cover leaking from 20 to 30 ft', 'cover leaking from 20 ft to 30 ft'],
  ['spiral bolts loose 2 at 10.4 m', '2 spiral bolts loose at 10.40 m'],
  ['gearbox oil level low', 'gearbox oil low'],
])('%s', (row, words) => {
  const { estate, problems } = read(machine + look(row));
  expect(problems).toEqual([]);
  expect(estate.inspections[0]?.conditions.map(conditionWords)).toEqual([words]);
  expect(estate.conveyors[0]?.breaks.find(({ name }) => name === 'Gate')?.from.value).toBe(12400);
  expect(estate.conveyors[0]?.clearance?.from.value).toBe(4);
});

test('a reading along a stretch', () => {
  const { estate, problems } = read(machine + look('from 8 to 10.5 m clock 5:00 thickness 9 mm'));
  expect(problems).toEqual([]);
  expect(estate.places.map(({ at }) => at)).toEqual([9250]);
});

test('plate and flight along a stretch count once, at its middle', () => {
  const { estate, problems } = read(
    machine + look('plate from 8 to 10.5 m thickness 3.6 mm "rust"\n  flight from 5 to 10 ft depth 50 mm'),
  );
  const [seen] = estate.inspections;
  expect(problems).toEqual([]);
  expect(seen?.plates.map(({ at, note }) => [at.value, note])).toEqual([[9250, 'from 8 m to 10.5 m: rust']]);
  expect(seen?.flights.map(({ at, note }) => [at.value, note])).toEqual([
    [7.5 * 304.8, 'from 5 ft to 10 ft'],
  ]);
});

test.each(['material behind liner from 8 to 10.5', 'material behind liner from 8 m to 10.5'])('%s', (row) => {
  expect(read(machine + look(row)).problems.map(({ kind }) => kind)).toContain('missing unit');
});

test.each(['80 mm by 25 mm', '80 mm x 25 mm', '80 mm × 25 mm', '80 x 25 mm', '80 by 25 mm'])(
  'flight %s',
  (section) => {
    const text = `screw S1 { shaftless outside diameter 400 mm pitch 350 mm flight ${section} }`;
    const { estate, problems } = read(text);
    const [screw] = estate.screws;
    expect([problems, screw?.flight?.width.value, screw?.flight?.thickness.value]).toEqual([[], 80, 25]);
  },
);
