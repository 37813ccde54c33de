// Work at the drive, and a spare spiral on the shelf, as small stories.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { followUp } from '../../../src/domain/conditions/follow-up.js';
import { conditionWords } from '../../../src/domain/conditions/kinds.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${rows.join('\n  ')}\n}`;
const found = look(
  '2024-09-09',
  3600,
  'gearbox oil dirty serious',
  'gearbox oil leak slight',
  'tail bearing noise',
);
const served = (what: string, on = '2024-10-07'): string => `serviced DG1 ${on} ${what} by "fitter" "VG 220"`;

function read(...blocks: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', blocks.join('\n')) }]);
}

function open({ estate }: Analysis, asOf?: string): readonly string[] {
  const day = asOf === undefined ? undefined : parseDay(asOf);
  return estate.conveyors.flatMap((conveyor) =>
    followUp(estate, conveyor, day)
      .conditions.filter(({ closed }) => closed === undefined)
      .map(({ last }) => conditionWords(last.line)),
  );
}

describe('work at the drive', () => {
  test.each([
    ['gearbox oil changed', ['gearbox oil leak', 'tail bearing noise']],
    ['gearbox oil topped up', ['gearbox oil dirty', 'gearbox oil leak', 'tail bearing noise']],
    ['gearbox seal renewed', ['gearbox oil dirty', 'tail bearing noise']],
    ['gearbox renewed', ['tail bearing noise']],
    ['tail bearing greased', ['gearbox oil dirty', 'gearbox oil leak', 'tail bearing noise']],
    ['tail bearing renewed', ['gearbox oil dirty', 'gearbox oil leak']],
    ['thrust bearing renewed', ['gearbox oil dirty', 'gearbox oil leak', 'tail bearing noise']],
  ])('%s ends what it puts right, and no more', (work, left) => {
    expect(open(read(found, served(work)))).toEqual(left);
  });

  test('answers in the table of bearings what the look before told: no trend goes on past it', () => {
    const drive = (asOf: string, ...blocks: readonly string[]): unknown => {
      const { estate } = read(...blocks);
      const [life] = remainingLife(estate, { asOf: parseDay(asOf), depth: 'hand' }).conveyors;
      return life?.beside.drive
        .filter(({ of }) => of === 'oil leak')
        .flatMap(({ read: rows }) => rows.map(({ told, by }) => [told, by]));
    };
    const worse = look('2024-10-01', 3800, 'gearbox oil leak serious');
    const looks = [
      ['serious', 'look'],
      ['slight', 'look'],
    ];
    const seal = served('gearbox seal renewed');
    expect(drive('2024-12-01', found, worse, seal)).toEqual([['put right', 'seal renewed'], ...looks]);
    expect(drive('2024-10-06', found, worse, seal)).toEqual(looks);
    expect(drive('2024-12-01', found, worse, served('gearbox oil changed'))).toEqual(looks);
    // A leak after the new seal is a new one.
    const again = look('2025-01-06', 5000, 'gearbox oil leak slight');
    expect(drive('2025-02-01', found, worse, seal, again)).toEqual([
      ['slight', 'look'],
      ['put right', 'seal renewed'],
      ...looks,
    ]);
    const { estate } = read(found, worse, seal);
    expect(
      remainingLifeMarkdown(remainingLife(estate, { asOf: parseDay('2024-12-01'), depth: 'hand' })),
    ).toContain('put right (seal renewed) on 2024-10-07, VG 220');
  });

  test('before the look, or not yet known on the day of the report, it ends nothing', () => {
    const all = ['gearbox oil dirty', 'gearbox oil leak', 'tail bearing noise'];
    expect(open(read(found, served('gearbox oil changed', '2024-09-08')))).toEqual(all);
    expect(open(read(found, served('gearbox oil changed')), '2024-10-06')).toEqual(all);
    expect(open(read(found, served('gearbox oil changed')), '2024-10-07')).toHaveLength(2);
  });

  test('the next look may say that it is closed, and nothing else that never was', () => {
    const next = (row: string): readonly string[] =>
      read(
        found,
        served('gearbox oil changed'),
        look('2025-03-10', 6000, 'gearbox oil leak', 'tail bearing noise', row),
      ).findings.map(({ code }) => code);
    expect(next('closed gearbox oil dirty')).toEqual([]);
    expect(next('closed gearbox oil low')).toEqual(['TL351']);
  });

  test('what is dirty again afterwards is a new condition', () => {
    const again = read(found, served('gearbox oil changed'), look('2025-03-10', 6000, 'gearbox oil dirty'));
    const [conveyor] = again.estate.conveyors;
    const days = followUp(again.estate, conveyor!).conditions.filter(
      ({ last }) => last.line.aspect === 'oil dirty',
    );
    expect(days.map(({ closed }) => closed?.by)).toEqual(['service', undefined]);
  });

  test('stands in the report in every form, with what it put right, and what it ended is on no sheet', () => {
    const { estate } = read(found, served('gearbox oil changed'));
    const report = remainingLife(estate, { depth: 'hand' });
    const cells = ['2024-10-07', 'gearbox', 'oil changed', 'gearbox oil dirty', 'fitter', 'VG 220'];
    expect(remainingLifeMarkdown(report)).toContain(`| ${cells.join(' | ')} |`);
    expect(remainingLifeHtml(report)).toContain('Work done');
    const json = JSON.parse(remainingLifeJson(report)) as { conveyors: { serviced: object[] }[] };
    expect(json.conveyors[0]?.serviced).toHaveLength(1);
    const sheet = inspectionSheet(estate, estate.conveyors[0]!);
    expect(sheet.openConditions.map(({ what }) => what)).not.toContain('gearbox oil dirty');
  });

  test('without its conveyor, its day or its words it is told and does nothing', () => {
    for (const line of [
      'serviced DG9 2024-10-07 gearbox oil changed',
      'serviced DG1 2024-13-07 gearbox oil changed',
      'serviced DG1 2024-10-07 gearbox oil drunk',
      'serviced DG1 2024-10-07 tail bearing oil changed',
    ]) {
      const bad = read(found, line);
      expect(bad.findings.length, line).toBeGreaterThan(0);
      expect(open(bad), line).toHaveLength(3);
    }
  });
});

describe('a spare spiral on the shelf', () => {
  const job =
    'job Spiral "New spiral" {\n  conveyor DG1\n  outage Spring27\n  change screw\n  crews Alpha\n  lift limit 250 kg\n}';
  const late = look('2027-03-01', 16_000, 'P1 colour ivory');
  const estate = (spare: string): Analysis =>
    analyse([
      {
        uri: 'estate.trough',
        text: inSoundEstate('estate', `${late}\n${job}`, { plant: `lead time screw 20 week\n${spare}` }),
      },
    ]);
  const codes = (spare: string): readonly string[] => estate(spare).findings.map(({ code }) => code);

  test('is not to be ordered; an empty shelf, another screw, or a count to come is', () => {
    expect(codes('')).toContain('TL446');
    expect(codes('on the shelf Spiral400 1 spiral counted 2027-02-01')).not.toContain('TL446');
    expect(codes('on the shelf Spiral400 0 spirals counted 2027-02-01')).toContain('TL446');
    expect(codes('on the shelf Spiral400 1 spiral counted 2027-03-02')).toContain('TL446');
    const newer =
      'on the shelf Spiral400 1 spiral counted 2027-01-04\non the shelf Spiral400 0 spirals counted 2027-02-01';
    expect(codes(newer)).toContain('TL446');
  });

  test('stands in the pack beside the screw that is needed', () => {
    const { estate: read } = estate('on the shelf Spiral400 1 spiral counted 2027-02-01');
    const pack = JSON.stringify(workPack(read, read.jobs[0]!).materials);
    expect(pack).toContain('1 whole spiral on the shelf, counted on 2027-02-01');
  });

  test('goes down with each screw change after the count, and no other', () => {
    const shelf = 'on the shelf Spiral400 1 spiral counted 2027-02-01';
    const codesWith = (change: string): readonly string[] =>
      analyse([
        {
          uri: 'estate.trough',
          text: inSoundEstate('estate', `${late}\n${job}\n${change}`, {
            plant: `lead time screw 20 week\n${shelf}`,
          }),
        },
      ]).findings.map(({ code }) => code);
    const change = (on: string): string => `screw change DG1 ${on} meter 15950 h {\n  screw Spiral400\n}`;
    expect(codesWith(change('2027-02-15'))).toContain('TL446');
    expect(codesWith(change('2027-01-15'))).not.toContain('TL446');
  });

  test('of a screw that there is none of is told', () => {
    expect(codes('on the shelf Spiral999 1 spiral counted 2027-02-01')).toContain('TL114');
    expect(codes('on the shelf Spiral400 1 spiral counted 2027-02-01')).not.toContain('TL114');
  });

  test('that is ordered counts from the day it is promised for, until a count has it', () => {
    const order = 'ordered Spiral400 1 spiral on 2027-01-11 arrives';
    const counted = (day: string, n = 1) => `on the shelf Spiral400 ${n} spirals counted ${day}`;
    expect(codes(`${order} 2027-04-05`)).not.toContain('TL446');
    expect(codes(`${order} 2027-04-12`)).not.toContain('TL446');
    const late = estate(`${order} 2027-05-20`).findings.find(({ code }) => code === 'TL446');
    expect(late?.message).toContain('the one ordered is promised for 2027-05-20');
    expect(codes('ordered Spiral400 1 spiral on 2027-03-02 arrives 2027-04-05')).toContain('TL446');
    // Promised for a day that is over: told, and taken as there; a count since is what there is.
    expect(codes(`${order} 2027-02-22`)).toContain('TL278');
    expect(codes(`${order} 2027-02-22`)).not.toContain('TL446');
    expect(codes(`${order} 2027-02-22\n${counted('2027-02-22', 0)}`)).toContain('TL446');
    expect(codes(`${order} 2027-02-22\n${counted('2027-02-22')}`)).not.toContain('TL278');
    expect(codes(`${order} 2027-02-22\n${counted('2027-02-21', 0)}`)).not.toContain('TL446');
    expect(codes('ordered Spiral999 1 spiral arrives 2027-04-05')).toContain('TL114');
    expect(codes(`${order} 2027-04-05\n${order} 2027-04-05`)).toContain('TL112');
  });

  test('that came and was fitted is not there', () => {
    const change = 'screw change DG1 2027-02-24 meter 15950 h {\n  screw Spiral400\n}';
    const found = (plant: string) =>
      analyse([
        {
          uri: 'estate.trough',
          text: inSoundEstate('estate', `${late}\n${job}\n${change}`, {
            plant: `lead time screw 20 week\n${plant}`,
          }),
        },
      ]).findings.map(({ code }) => code);
    expect(found('ordered Spiral400 1 spiral arrives 2027-02-22')).toContain('TL446');
    expect(found('ordered Spiral400 2 spirals arrives 2027-02-22')).not.toContain('TL446');
    expect(
      found(
        'ordered Spiral400 1 spiral arrives 2027-02-22\non the shelf Spiral400 1 spiral counted 2027-02-01',
      ),
    ).not.toContain('TL446');
  });

  test('that is ordered stands in the pack, and is not ordered again', () => {
    const screwOf = (spare: string) => {
      const { estate: read } = estate(spare);
      return workPack(read, read.jobs[0]!).materials.find(({ what }) => what === 'screw Spiral400');
    };
    const order = 'ordered Spiral400 1 spiral on 2027-01-11 arrives';
    expect(screwOf(`${order} 2027-04-05`)).toMatchObject({ toOrder: 0, ordered: expect.anything() });
    expect(screwOf(`${order} 2027-04-05`)?.basis).toContain(
      '1 whole spiral ordered, promised for 2027-04-05',
    );
    expect(screwOf(`${order} 2027-05-20`)?.toOrder).toBeGreaterThan(0);
  });

  test('a length of one is no whole spiral, and is named beside the screw that is needed', () => {
    const half = 'on the shelf Spiral400 1 spiral length 9.5 m counted 2027-02-01 "half of one"';
    expect(codes(half)).toContain('TL446');
    const { estate: read } = estate(`${half}\nordered Spiral400 2 spirals length 6 m arrives 2027-08-02`);
    const basis = workPack(read, read.jobs[0]!).materials.find(
      ({ what }) => what === 'screw Spiral400',
    )?.basis;
    expect(basis).toContain('1 length of 9.5 m on the shelf, counted on 2027-02-01 (“half of one”)');
    expect(basis).toContain('2 lengths of 6 m ordered, promised for 2027-08-02');
  });

  test('a change of a part takes the length that is long enough, and no whole spiral', () => {
    const shelf = (length: string): string =>
      `on the shelf Spiral400 1 spiral length ${length} counted 2027-02-01\non the shelf Spiral400 1 spiral counted 2027-02-01`;
    const change =
      'screw change DG1 2027-02-15 meter 15950 h {\n  screw Spiral400\n  scope from 0 m to 4 m\n}';
    const found = (plant: string): readonly string[] =>
      analyse([
        {
          uri: 'estate.trough',
          text: inSoundEstate('estate', `${late}\n${job}\n${change}`, {
            plant: `lead time screw 20 week\n${plant}`,
          }),
        },
      ]).findings.map(({ code }) => code);
    expect(found(shelf('4 m'))).not.toContain('TL446');
    expect(found(shelf('3 m'))).toContain('TL446');
  });
});

describe('what lies on the shelf for a part of which something is open', () => {
  const notes = (plant: string, seen: string): string => {
    const { estate, findings } = analyse([
      {
        uri: 'estate.trough',
        text: inSoundEstate('estate', look('2027-03-01', 16_000, seen), { plant }),
      },
    ]);
    expect(findings.filter(({ code }) => code === 'TL101')).toEqual([]);
    return inspectionSheet(estate, estate.conveyors[0]!)
      .openConditions.map((row) => row.notes)
      .join();
  };
  const bearing = 'tail bearing noise serious';

  test.each([
    [
      'on the shelf 1 tail bearing counted 2027-01-04',
      bearing,
      '1 tail bearing on the shelf, counted on 2027-01-04',
    ],
    [
      'on the shelf 2 tail bearing "seals 60 x 80" for DG1 counted 2027-01-04 "from the old works"',
      bearing,
      '2 tail bearing (seals 60 x 80) on the shelf, counted on 2027-01-04 (“from the old works”)',
    ],
    [
      'on the shelf 1 tail bearing counted 2026-01-05\non the shelf 0 tail bearing counted 2027-01-04',
      bearing,
      'no tail bearing on the shelf, counted on 2027-01-04',
    ],
    ['on the shelf 1 gearbox counted 2027-01-04', bearing, ''],
    ['on the shelf 1 tail bearing counted 2027-03-02', bearing, ''],
    [
      'on the shelf Spiral400 1 spiral length 4 m counted 2027-01-04',
      'spiral bent at 4 m serious',
      'Spiral400: 1 length of 4 m on the shelf, counted on 2027-01-04',
    ],
  ])('%s', (plant, seen, expected) => expect(notes(plant, seen)).toBe(expected));

  test('that fits a machine which is not there is told', () => {
    const text = inSoundEstate('estate', '', { plant: 'on the shelf 1 gearbox for XX1 counted 2027-01-04' });
    expect(analyse([{ uri: 'estate.trough', text }]).findings.map(({ message }) => message)).toContain(
      'There is no conveyor named XX1.',
    );
  });

  test('what stands in quotes behind a count or an order of a liner goes with it', () => {
    const plant =
      'on the shelf TwoLayer12 3 panels counted 2027-02-01 "one broken at the corner"\n' +
      'ordered TwoLayer12 40 panels on 2027-02-02 arrives 2027-04-05 "by lorry"';
    const job = 'job Lining { conveyor DG1 outage Spring27 reline all with TwoLayer12 crews Alpha }';
    const text = inSoundEstate('estate', `${look('2027-03-01', 16_000, 'P1 colour ivory')}\n${job}`, {
      plant,
    });
    const { findings, estate } = analyse([{ uri: 'estate.trough', text }]);
    expect(findings.filter(({ code }) => code === 'TL101')).toEqual([]);
    const needs = JSON.stringify(workPack(estate, estate.jobs[0]!).materials);
    expect(needs).toContain('at the count: “one broken at the corner”');
    expect(needs).toContain('at the order: “by lorry”');
  });
});
