// Several texts as one estate: names across texts, records to their machines, one answer whatever the order of the texts.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../src/language/assemble.js';
import {
  conveyor,
  inspect,
  liner,
  machine,
  problemsOf,
  read,
  screw,
  sheetOf,
  specifications,
} from './read.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

const otherLiner = liner
  .replace('TwoLayer12', 'Three12')
  .replace('layer ivory 6 mm\n  layer teal 6 mm', 'layer green 4 mm\n  layer ivory 4 mm\n  layer black 4 mm');

describe('colours', () => {
  const reline = (scope: string): string => `reline DG1 2025-06-01 meter 5000 h { liner Three12 ${scope} }`;
  const look = (date: string, meter: number, rows: string): string =>
    inspect(rows, `DG1 ${date} meter ${meter} h`);
  const layers = (...texts: readonly string[]): readonly number[] => [
    ...read(machine, otherLiner, ...texts).estate.readings.value,
  ];

  it('are layers of the liner that lay there on the day', () => {
    expect(
      layers(
        reline(''),
        look('2025-05-01', 4000, 'P1 colour ivory'),
        look('2025-07-01', 6000, 'P1 colour ivory'),
      ),
    ).toEqual([0, 1]);
  });
  it('of a liner that has gone are unknown after it', () => {
    expect(
      problemsOf(machine, otherLiner, reline(''), look('2025-07-01', 6000, 'P1 colour teal')),
    ).toMatchObject([{ kind: 'unknown colour', at: 'teal', liner: 'Three12' }]);
  });
  it('stay those of the old liner where the reline did not reach', () => {
    expect(
      layers(reline('scope from 7 m to 9 m'), look('2025-07-01', 6000, 'P1 colour teal\n  P2 colour black')),
    ).toEqual([1, 2]);
  });
  it('on the day of a reline may be of either liner', () => {
    expect(layers(reline(''), look('2025-06-01', 5000, 'P1 colour teal\n  P2 colour black'))).toEqual([1, 2]);
  });
  it('that are unknown keep their row, marked', () => {
    const { readings } = read(machine, inspect('P1 colour blue')).estate;
    expect([readings.kind[0], readings.value[0]]).toEqual([ReadingKind.unreadable, NaN]);
  });
});

describe('names', () => {
  it('are found in other texts, wherever these stand', () => {
    expect(
      problemsOf(inspect('P1 colour ivory'), conveyor('DG1', 'point P1 at 6 m clock 6:00'), specifications),
    ).toEqual([]);
  });
  it('of conveyors may be written with their plant', () => {
    expect(problemsOf(machine, inspect('P1 colour ivory', 'Tarnholt.DG1 2026-03-14 meter 8120 h'))).toEqual(
      [],
    );
  });
  it('sort by the numbers in them: DG2 before DG10', () => {
    const { estate } = read(specifications, conveyor('DG10') + conveyor('DG2') + conveyor('CP3'));
    expect(estate.conveyors.map((one) => one.name)).toEqual(['CP3', 'DG2', 'DG10']);
  });
  it('that are unknown leave the plant of a conveyor to its defaults, so that the machine is still checked', () => {
    const { estate, problems } = read(specifications, conveyor('DG1', '', { plant: 'plant Tarnhold' }));
    expect(problems.map((problem) => problem.kind)).toEqual(['unknown name']);
    expect(estate.conveyors[0]?.plant).toMatchObject({
      name: 'Tarnhold',
      risk: { value: 0.05, assumed: expect.any(String) },
    });
  });
});

describe('the same objects', () => {
  it('come back where nothing they are made of has changed', () => {
    const sheets = [sheetOf(machine, 0), sheetOf(inspect('P1 colour ivory'), 1)];
    const before = assemble(sheets).estate;
    const after = assemble([sheets[0]!, sheetOf(inspect('P1 colour teal'), 1, 'text1.trough')]).estate; // the first sheet is there
    expect(after.conveyors[0]).toBe(before.conveyors[0]);
    expect(after.liners[0]).toBe(before.liners[0]);
  });
  it('change with their parts', () => {
    const before = assemble([sheetOf(specifications, 0), sheetOf(conveyor('DG1'), 1)]);
    const changed = assemble([
      sheetOf(specifications.replace('ivory 6 mm', 'ivory 7 mm'), 0),
      sheetOf(conveyor('DG1'), 1),
    ]);
    expect(before.estate.conveyors[0]?.liner.thickness.value).toBe(12);
    expect(changed.estate.conveyors[0]?.liner.thickness.value).toBe(13);
  });
});

it('gives the same estate in whatever order the texts come', () => {
  const texts = [
    specifications,
    otherLiner,
    conveyor('DG1', 'point P every 2 m from 2 m to 20 m clock 7:30'),
    conveyor('DG2', 'point P1 at 6 m clock 6:00'),
    conveyor('DG2'),
    'plant Tarnholt { duty 5 h/d }',
    inspect('P1 colour teal\n  P4 thickness 8 mm\n  at 3 m clock 5:00 thickness 4 mm'),
    inspect('P1 colour ivory\n  at 2.5 m clock 5:00 thickness 4 mm', 'DG1 2025-03-14 meter 7000 h'),
    inspect('P1 colour blue\n  P9 thickness 8 mm', 'DG2 2025-03-14 meter 7000 h'),
    inspect('P1 colour ivory', 'DG1 2026-03-14 meter 8120 h'),
    'reline DG1 2025-06-01 meter 7500 h { liner Three12 scope run 1 }',
    'reline DG2 2025-06-01 meter 7500 h { }',
    'job J { conveyor DG1 }',
    'job J { conveyor DG2 }',
  ];
  // Each text keeps its number and name; only the order in which they are handed over changes.
  const sheets = texts.map((text, source) =>
    sheetOf(text, source, `text${String(source).padStart(2, '0')}.trough`),
  );
  const expected = comparable(assemble(sheets));
  fc.assert(
    fc.property(fc.shuffledSubarray(sheets, { minLength: sheets.length }), (order) => {
      expect(comparable(assemble(order))).toEqual(expected);
    }),
    { numRuns: 50 },
  );
});

function comparable({ estate, problems }: ReturnType<typeof assemble>): unknown {
  return structuredClone({ estate, problems });
}

describe('a job goes by what lies there', () => {
  const heavy = screw.replace('Spiral400', 'Heavy400');
  const changed = (date: string, of: string): string =>
    `screw change DG1 ${date} meter 5000 h {\n  screw ${of}\n}\n`;
  const jobOf = (facts: string): string => `job J1 {\n  conveyor DG1\n  ${facts}\n}\n`;
  const found = (...texts: readonly string[]) => read(machine, otherLiner, heavy, ...texts).estate.jobs[0];

  it('the screw of the last change of its conveyor before its window', () => {
    const window = 'window 2026-04-06 to 2026-04-10';
    expect(found(jobOf(window))?.screwLying).toBeUndefined();
    expect(found(jobOf(window), changed('2025-05-01', 'Heavy400'))?.screwLying?.name).toBe('Heavy400');
    expect(found(jobOf(window), changed('2026-05-01', 'Heavy400'))?.screwLying).toBeUndefined();
    expect(
      found(jobOf(window), changed('2025-06-01', 'Spiral400'), changed('2025-05-01', 'Heavy400'))?.screwLying
        ?.name,
    ).toBe('Spiral400');
    const other = conveyor('DG2') + changed('2025-06-01', 'Heavy400').replace('DG1', 'DG2');
    expect(found(jobOf(window), other)?.screwLying).toBeUndefined();
  });
  it('a screw change without a name brings the same again', () => {
    expect(found(jobOf('change screw'), changed('2025-05-01', 'Heavy400'))?.screwChange?.screw.name).toBe(
      'Heavy400',
    );
  });
  it('a reline without a name brings the same again: the liner of that run, or of its last reline', () => {
    const named = (job: string, ...texts: readonly string[]): string | undefined =>
      found(jobOf(job), ...texts)?.relines[0]?.liner.name;
    const reline = 'reline DG1 2025-06-01 meter 5000 h { liner Three12 scope from 2 m to 12 m }';
    expect(named('reline from 4 m to 9 m')).toBe('TwoLayer12');
    expect(named('reline from 4 m to 9 m', reline)).toBe('Three12');
    expect(named('reline from 4 m to 9 m with TwoLayer12', reline)).toBe('TwoLayer12');
    expect(named('window 2025-05-01 to 2025-05-02\n  reline from 4 m to 9 m', reline)).toBe('TwoLayer12');
    expect(named('reline from 13 m to 20 m', reline)).toBe('TwoLayer12');
  });
});
