// A reline that names no liner brings what lay before it, each liner where it lay, as a job does; each record rests on those before it
// alone, whatever the order of the texts.

import { expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { fittedThickness } from '../../../src/domain/model/fitted-thickness.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { scopeWords } from '../../../src/generators/work-pack/parts/scope.js';
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
      /^On 2025-02-10 .* came out of DG1, and the record names no liner; each is taken to have gone in where it lay\.$/,
    ),
  ]);
  expect(liners(reline('2025-02-10', 'by "fitters"')).told).toEqual([]);
});

test('of a machine that came with several each goes in again where it came, as if it were written so', () => {
  const along = 'liner TwoLayer12\nliner Other12 run above Gate';
  const looks =
    'inspection DG1 2025-08-04 meter 25080 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 11.2 mm\n  P2 thickness 10.8 mm\n}\n';
  const life = (records: string): unknown => {
    const { estate, told } = liners(records + looks, along);
    expect(told).toEqual([]);
    const [conveyor] = remainingLife(estate, { depth: 'hand' }).conveyors;
    return conveyor?.points.map(({ place, set, condemn, readings }) => [
      place.name,
      set?.liner.name,
      condemn,
      readings.map(({ exposure }) => exposure),
    ]);
  };
  const said = life(
    reline('2025-02-10', 'liner TwoLayer12', 'scope from 0 m to 7.5 m') +
      reline('2025-02-10', 'liner Other12', 'scope from 7.5 m to 12 m'),
  );
  expect(said).toEqual([
    ['P1', 'TwoLayer12', expect.any(Number), expect.any(Array)],
    ['P2', 'Other12', expect.any(Number), expect.any(Array)],
  ]);
  expect(life(reline('2025-02-10', 'by "fitters"'))).toEqual(said);
});

test('a thickness of the new liner as a whole is of the one it is nearest to', () => {
  const thin =
    'liner Thin8 {\n  layer green 4 mm\n  layer black 4 mm\n  panel length 1200 mm\n  condemn at 2 mm\n  joint butted\n}\n';
  const { estate, findings } = analyse([
    {
      uri: 'e.trough',
      text: inSoundEstate('estate', thin + reline('2025-02-10', 'thickness 8.1 mm', 'P1 thickness 12.1 mm'), {
        conveyor: 'liner TwoLayer12\nliner Thin8 run above Gate',
      }),
    },
  ]);
  expect(findings.map(({ code }) => code)).not.toContain('TL336');
  const sets = historyOf(estate, estate.conveyors[0]!).linerSets.filter(({ removed }) => !removed);
  expect(
    sets.map((set) => fittedThickness(set, { name: 'X', at: set.from + 100, declared: false }).value),
  ).toEqual([12, 8.1]);
});

test('a job that names none lines each run with what lies there', () => {
  const job = (scope: string): readonly string[] => {
    const { estate } = liners(
      `job J1 {\n  conveyor DG1\n  outage Spring27\n  crews Alpha\n  ${scope}\n}`,
      'liner TwoLayer12\nliner Other12 run above Gate',
    );
    const [one] = estate.jobs;
    return scopeWords(groundOf(one!, [], estate), 'mm');
  };
  expect(job('reline all')).toEqual([
    expect.stringMatching(/^Reline run 1.* with TwoLayer12\.$/),
    expect.stringMatching(/^Reline run 2.* with TwoLayer12\.$/),
    expect.stringMatching(/^Reline run 3.* with Other12\.$/),
  ]);
  const mixed = liners(
    'job J1 {\n  conveyor DG1\n  outage Spring27\n  crews Alpha\n  reline run 2\n}',
    'liner TwoLayer12\nliner Other12 from 1.5 m to 3 m',
  );
  expect(mixed.estate.jobs[0]?.relines.map(({ liner, unsure }) => [liner.name, unsure])).toEqual([
    ['TwoLayer12', true],
  ]);
  expect(job('reline all with Other12')).toEqual([
    expect.stringMatching(/^Reline the whole conveyor.* with Other12\.$/),
  ]);
});
