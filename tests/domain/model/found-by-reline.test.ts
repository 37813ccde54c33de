// A reline that names no liner brings what lay before it at the middle of its scope, as a job does; each record rests on those
// before it alone, whatever the order of the texts.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const other = `
liner Other12 {
  layer green 6 mm
  layer black 6 mm
  panel length 1200 mm
  condemn at 3 mm
  joint butted
}
`;
const reline = (date: string, ...facts: readonly string[]): string =>
  `reline DG1 ${date} meter ${Number(date.slice(2, 4)) * 1000 + Number(date.slice(5, 7)) * 10} h {\n  ${facts.join('\n  ')}\n}\n`;

function liners(records: string, along = '') {
  const { estate, findings } = analyse([
    { uri: 'e.trough', text: inSoundEstate('estate', other + records, { conveyor: along }) },
  ]);
  return {
    estate,
    told: findings.filter(({ code }) => code === 'TL266'),
    names: estate.relines.map(({ liner }) => liner.name),
  };
}

test('the liner of the last record there, else that of the stretch from the beginning, else the conveyor’s', () => {
  expect(liners(reline('2025-01-06', 'scope run 2')).names).toEqual(['TwoLayer12']);
  expect(
    liners(reline('2025-01-06', 'liner Other12', 'scope run 2') + reline('2025-02-10', 'scope run 2')).names,
  ).toEqual(['Other12', 'Other12']);
  expect(
    liners(reline('2025-01-06', 'liner Other12', 'scope run 2') + reline('2025-02-10', 'scope run 3')).names,
  ).toEqual(['Other12', 'TwoLayer12']);
  expect(liners(reline('2025-01-06', 'scope run 2'), 'liner TwoLayer12\nliner Other12 run 2').names).toEqual([
    'Other12',
  ]);
});

test('in whatever order the texts stand, and no record before knows of it', () => {
  const later = reline('2025-02-10', 'scope run 2');
  const earlier = reline('2025-01-06', 'liner Other12', 'scope run 2');
  expect(liners(later + earlier).names).toEqual(['Other12', 'Other12']);
  expect(liners(reline('2024-12-02', 'scope run 2') + earlier).names).toEqual(['TwoLayer12', 'Other12']);
});

test('the same texts give the same records', () => {
  const text = reline('2025-01-06', 'liner Other12', 'scope run 2') + reline('2025-02-10', 'scope run 2');
  const { estate } = liners(text);
  const day = parseDay('2025-12-31');
  expect(day === undefined ? [] : knownOn(estate, day).relines).toEqual(estate.relines);
});

test('where several came out it is told which one is taken', () => {
  const { told } = liners(
    reline('2025-01-06', 'liner Other12', 'scope run 2') + reline('2025-02-10', 'by "fitters"'),
  );
  expect(told.map(({ message }) => message)).toEqual([
    expect.stringMatching(
      /^On 2025-02-10 .* came out of DG1, and the record names no liner; .* is taken to have gone in\.$/,
    ),
  ]);
  expect(liners(reline('2025-02-10', 'by "fitters"')).told).toEqual([]);
});
