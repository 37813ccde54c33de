// A spiral in several lengths, one of them changed: only there wear, conditions and a groove start anew; report, JSON and pack say
// which length is of when. Expected numbers by hand from the records below.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { openConditions } from '../../../src/domain/conditions/follow-up.js';
import { flightSpots } from '../../../src/domain/model/flight-readings.js';
import { historyOf, type History } from '../../../src/domain/model/history.js';
import { lyingScrew, screwSeen, screwsNow } from '../../../src/domain/model/lying-screw.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (day: string, meter: number, rows: readonly string[]): string =>
  [
    `inspection DG1 ${day} meter ${meter} h {`,
    '  view downstream',
    ...rows.map((row) => `  ${row}`),
    '}',
  ].join('\n');

const first = look('2024-09-09', 3600, [
  'flight at 3 m depth 70 mm',
  'flight at 9 m depth 66 mm',
  'spiral bent at 3 m slight',
  'spiral bent at 9 m slight',
  'spiral bolts loose 2 at 6 m serious',
]);
const length =
  'screw change DG1 2024-10-07 meter 3900 h {\n  scope from 6 m to 12 m\n  finding "one of two"\n}';
const last = look('2025-03-10', 5900, ['flight at 3 m depth 66 mm', 'flight at 9 m depth 76 mm']);

function read(...records: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', records.join('\n')) }]);
}

function historyIn({ estate }: Analysis): History {
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('the sound estate has one');
  return historyOf(estate, conveyor);
}

const told = ({ findings }: Analysis): readonly string[] => findings.map(({ code }) => code);

describe('one length of a spiral was changed', () => {
  const seen = read(first, length, last);
  const history = historyIn(seen);

  test('the others are as old as before', () => {
    expect(told(seen)).not.toContain('TL101');
    expect(screwsNow(history).map(({ from, to, change }) => [from, to, change?.date.day])).toEqual([
      [0, 6000, undefined],
      [6000, 12000, parseDay('2024-10-07')],
    ]);
  });

  test('flight is read anew only on it', () => {
    expect(flightSpots(history).map(({ at, looks }) => [at, looks.map(({ depth }) => depth?.value)])).toEqual(
      [
        [3000, [70, 66]],
        [9000, [76]],
      ],
    );
  });

  test('what was wrong with it is ended by the change, what was wrong beside it is open', () => {
    const open = openConditions(seen.estate, history.conveyor).map(({ last: { line } }) => line.at?.value);
    expect(open).toContain(3000);
    expect(open).not.toContain(9000);
  });

  test('its wear counts from its own day: 2,000 h, the others 5,900 h less those at commissioning', () => {
    const report = remainingLife(seen.estate, { asOf: parseDay('2025-03-10') });
    const flights = report.conveyors[0]?.flights ?? [];
    const exposures = flights.map(({ at, readings }) => [at, readings.at(-1)?.exposure]);
    expect(exposures[1]).toEqual([9000, 2000]);
    expect(exposures[0]?.[1]).toBeGreaterThan(5000);
    const text = remainingLifeMarkdown(report);
    expect(text).toMatch(/Screws so far/);
    expect(text).toMatch(/Spiral400, 6\.00 to 12\.00 m \| 2024-10-07/);
    expect(text).toMatch(/Spiral400, 0\.00 to 6\.00 m/);
    expect(text.match(/one of two/g)).toHaveLength(1);
  });

  test('two lengths changed one after the other leave nothing of the first', () => {
    const whole = historyIn(
      read(
        'screw change DG1 2024-10-07 meter 3900 h {\n  scope from 0 m to 6 m\n}',
        length.replace('10-07', '10-08'),
      ),
    );
    expect(screwsNow(whole).every(({ change }) => change !== undefined)).toBe(true);
    expect(screwsNow(whole)).toHaveLength(2);
  });

  test('a joint given a hand’s breadth off is the same joint', () => {
    const near = historyIn(
      read(length, 'screw change DG1 2025-01-07 meter 4900 h {\n  scope from 0.02 m to 6.03 m\n}'),
    );
    expect(screwsNow(near)).toHaveLength(2);
  });

  test('from the larger to the smaller chainage is told, and is one length all the same', () => {
    const turned = read(length.replace('from 6 m to 12 m', 'from 12 m to 6 m'));
    expect(told(turned)).toContain('TL213');
    expect(screwsNow(historyIn(turned))).toHaveLength(2);
  });

  test('another screw lies only there', () => {
    const slim =
      'screw Spiral360 {\n  shaftless\n  outside diameter 360 mm\n  pitch 320 mm\n  flight 60 mm by 15 mm\n  condemn flight at 40 mm\n}';
    const mixed = read(slim, length.replace('  finding', '  screw Spiral360\n  finding'), last);
    const [inspection] = mixed.estate.inspections;
    if (!inspection) throw new Error('there is one');
    expect([3000, 9000].map((at) => screwSeen(mixed.estate, inspection, at).name)).toEqual([
      'Spiral400',
      'Spiral360',
    ]);
    // 76 mm is deeper than the 60 mm that the slim one was made.
    expect(told(mixed)).toContain('TL328');
  });
});

describe('bolts of a joint of the spiral', () => {
  test.each([
    'spiral flange bolts loose 2 at 6 m',
    'flange bolts of the spiral loose 2 at 6 m',
    'spiral bolt loose 1 at 6 m',
    'spiral coupling bolts loose 2 at 6 m serious',
  ])('%s is told how the language says it', (line) => {
    const [finding] = read(look('2024-09-09', 3600, [line])).findings.filter(({ code }) => code === 'TL101');
    expect(finding?.message).toContain('spiral bolts loose');
    expect(finding?.fixes?.[0]?.edits[0]?.text ?? '').toBe('spiral bolts loose');
  });
});

test('a job finds the screw of most of the length, not the spare length that went in last', () => {
  const other =
    'screw Spare400 {\n  shaftless\n  outside diameter 400 mm\n  pitch 350 mm\n  flight 80 mm by 30 mm\n}\n';
  const job = 'job J1 {\n  conveyor DG1\n  outage Spring27\n  reline run 2\n  crews Alpha\n}\n';
  const found = (scope: string): string | undefined => {
    const change = `screw change DG1 2024-10-07 meter 3900 h {\n  screw Spare400\n${scope}}\n`;
    const [only] = read(other, change, job).estate.jobs;
    return only && lyingScrew(only).name;
  };
  expect(found('  scope from 0 m to 3 m\n')).toBe('Spiral400');
  expect(found('  scope from 0 m to 9 m\n')).toBe('Spare400');
  expect(found('')).toBe('Spare400');
});

test('a strip between two layouts is no panel that a crew takes out', () => {
  const reline = 'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope from 1.5 m to TO m\n}\n';
  const job = 'job J1 {\n  conveyor DG1\n  outage Spring27\n  reline from 3.4 m to 7 m\n  crews Alpha\n}\n';
  const out = (to: string): string => {
    const { estate } = read(reline.replace('TO', to), job);
    const [only] = estate.jobs;
    if (!only) throw new Error('there is one');
    const { conveyor } = workPack(estate, only, { asOf: parseDay('2025-03-10')! });
    return conveyor.facts.find(({ name }) => name === 'Liner, comes out')?.value ?? '';
  };
  expect(out('3.406')).not.toContain('2024-10-07');
  expect(out('3.6')).toContain('in since 2024-10-07');
});

describe('a flight measured on the bench', () => {
  const bench = (row: string): Analysis =>
    read(first, `screw change DG1 2024-10-07 meter 3900 h {\n  scope from 6 m to 12 m\n  ${row}\n}`, last);
  const taken = (of: Analysis) => {
    const history = historyIn(of);
    const old = history.screwSets.find(({ removed }) => removed);
    return flightSpots(history, old).map(({ at, looks }) => [at, looks.map(({ depth }) => depth?.value)]);
  };

  test('is the last reading of the spiral that came out, and none of what turns there now', () => {
    const seen = bench('flight at 9 m depth 64 mm "on the bench"');
    expect(told(seen)).not.toContain('TL101');
    expect(taken(seen)).toEqual([[9000, [66, 64]]]);
    expect(flightSpots(historyIn(seen)).map(({ looks }) => looks.map(({ depth }) => depth?.value))).toEqual([
      [70, 66],
      [76],
    ]);
    // 80 mm when new, 64 mm after 3,900 h: 4.10 mm in 1,000 h.
    const report = remainingLifeMarkdown(remainingLife(seen.estate, { depth: 'hand' }));
    expect(report).toContain('64.0 (2024-10-07, on the bench), 4.10 mm/1000 h');
  });

  test('by its outside diameter says as much', () => {
    const report = remainingLifeMarkdown(
      remainingLife(bench('flight at 9 m outside diameter 368 mm').estate, { depth: 'hand' }),
    );
    expect(report).toContain('368.0 across (2024-10-07), 4.10 mm/1000 h');
  });
});
