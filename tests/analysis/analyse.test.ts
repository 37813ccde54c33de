// Texts in, estate and findings out.

import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { mostInOneFile } from '../../src/analysis/sorting.js';
import { parseDay } from '../../src/domain/units/calendar.js';
import { conveyor, inspect, machine, plant, specifications } from '../language/read.js';
import { exampleEstate } from './texts.js';
import type { Analysis } from '../../src/analysis/analysis.js';

const one = (text: string, asOf?: string): Analysis =>
  analyse([{ uri: 'a.trough', text }], asOf === undefined ? {} : { asOf: parseDay(asOf)! }); // days in these tests exist
const codes = (analysis: Analysis): readonly string[] => analysis.findings.map((finding) => finding.code);

describe('findings', () => {
  it('stand in the order of files, lines, columns', () => {
    const analysis = analyse([
      { uri: 'b.trough', text: 'plant B { duty 5 }\nplant C { duty 6 }' },
      { uri: 'a.trough', text: 'plant A { risk 5,0 % duty 7 }' },
    ]);
    expect(
      analysis.findings.map((finding) => {
        const { uri, line, column } = analysis.locate(finding.origin);
        return `${uri}:${line}:${column}`;
      }),
    ).toEqual(['a.trough:1:16', 'a.trough:1:27', 'b.trough:1:16', 'b.trough:2:16']);
  });
  it('count columns in UTF-16 code units and know Windows line ends', () => {
    const analysis = one('plant A "🌀" { duty 5 }\r\nplant B { duty 5 }');
    expect(analysis.findings.map((finding) => analysis.locate(finding.origin))).toMatchObject([
      { line: 1, column: 21, endColumn: 22 },
      { line: 2, column: 16 },
    ]);
  });
  it('point at their words', () => {
    const analysis = one('plant A { duty 5 }');
    expect(analysis.findings.map((finding) => analysis.textOf(finding.origin))).toEqual(['5']);
  });
  it('of ten thousand in one file are cut short with their number', () => {
    const analysis = one(
      `plant A { ${'crew A 0 people\n'.repeat(1)}${Array.from({ length: 10_000 }, (_, i) => `outage O${i} 2026-02-30 to 2026-03-01`).join('\n')} }`,
    );
    expect(analysis.findings).toHaveLength(mostInOneFile + 1);
    expect(analysis.findings.at(-1)?.message).toContain('9501 more');
  });
  it('of one file do not crowd out those of another', () => {
    const analysis = analyse([
      { uri: 'a', text: 'plant A { duty 5 }\n'.repeat(2000) },
      { uri: 'b', text: 'plant B { duty 5 }' },
    ]);
    expect(analysis.findings.filter((finding) => analysis.locate(finding.origin).uri === 'b')).toHaveLength(
      1,
    );
  });
});

describe('a comment that allows', () => {
  // TL102 is the missing unit.
  it('silences the finding on its line, and keeps it with its reason', () => {
    const analysis = one('plant A {\n  duty 5 // allow TL102 because "meter has no plate"\n}');
    expect(codes(analysis)).toEqual([]);
    expect(analysis.suppressed).toMatchObject([
      { finding: { code: 'TL102' }, by: { reason: 'meter has no plate' } },
    ]);
  });
  it('silences the finding on the next line of code, and only there', () => {
    expect(
      codes(one('plant A {\n  // allow TL102 because "so"\n  duty 5\n  gas test interval 5\n}')),
    ).toEqual(['TL102']);
  });
  it('silences only its code', () =>
    expect([...codes(one('plant A {\n  duty 5 // allow TL103 because "so"\n}'))].sort()).toEqual([
      'TL102',
      'TL120',
    ]));
  it('that hides nothing is told', () =>
    expect(codes(one('plant A {\n  duty 5 h/d // allow TL102 because "so"\n}'))).toEqual(['TL120']));
  it('of a code that no rule has is told', () =>
    expect(codes(one('// allow TL999 because "so"\nplant A { }'))).toEqual(['TL119']));
  it('without a reason silences nothing', () =>
    expect([...codes(one('plant A {\n  duty 5 // allow TL102\n}'))].sort()).toEqual(['TL102', 'TL118']));

  describe('until a day', () => {
    const text = 'plant A {\n  duty 5 // allow TL102 until 2026-06-30 because "so"\n}\n';
    it('holds on that day', () => expect(codes(one(text, '2026-06-30'))).toEqual([]));
    it('no longer the day after', () =>
      expect([...codes(one(text, '2026-07-01'))].sort()).toEqual(['TL102', 'TL121']));
    it('is judged on the newest record, not on today, where no day is given', () => {
      expect(
        codes(
          analyse([
            { uri: 'a', text },
            {
              uri: 'b',
              text:
                machine.replace(plant, 'plant Tarnholt { }\n') +
                inspect('P1 colour ivory', 'DG1 2026-06-29 meter 1 h'),
            },
          ]),
        ).filter((code) => code === 'TL121'),
      ).toEqual([]);
      expect(
        codes(
          analyse([
            { uri: 'a', text },
            {
              uri: 'b',
              text:
                machine.replace(plant, 'plant Tarnholt { }\n') +
                inspect('P1 colour ivory', 'DG1 2026-07-01 meter 1 h'),
            },
          ]),
        ),
      ).toContain('TL121');
    });
    it('holds where there is no day at all', () => expect(codes(one(text))).toEqual([]));
  });
});

describe('texts that are none', () => {
  it('empty, blank, with a byte order mark, with Windows line ends', () => {
    expect(codes(one(''))).toEqual([]);
    expect(codes(one(' \n\t\n'))).toEqual([]);
    expect(codes(one('\uFEFFplant A { }'))).toEqual([]);
    expect(codes(one('plant A {\r\n  duty 5 h/d\r\n}\r\n'))).toEqual([]);
    expect(codes(one('plant A {\r  duty 5 h/d // on old machines\r}\r'))).toEqual([]);
  });
  it('with a NUL are refused as a whole', () => {
    const analysis = one('plant A { }\0');
    expect(codes(analysis)).toEqual(['TL101']);
    expect(analysis.findings[0]?.message).toContain('not text');
    expect(analysis.estate.plants).toEqual([]);
  });
  it('of fifty million characters are refused by their size', () => {
    const analysis = one('plant A { }\n'.repeat(50_000_000 / 12));
    expect(codes(analysis)).toEqual(['TL101']);
    expect(analysis.findings[0]?.message).toContain('Split it');
  });
  it('none at all', () => {
    const analysis = analyse([]);
    expect(analysis.findings).toEqual([]);
    expect(analysis.asOf).toBeUndefined();
  });
});

describe('circular nonsense', () => {
  it('ends', () => {
    expect(
      codes(
        one(
          'plant Tarnholt { }\nliner liner { }\nconveyor C { plant C liner C screw C }\njob J { conveyor J order { a: isolate after b b: strip after a } }',
        ),
      ).length,
    ).toBeGreaterThan(0);
  });
});

describe('the demo estate', () => {
  const texts = exampleEstate('4-tarnholt');
  it('is read without a slip, and has the machines it is known for', () => {
    const analysis = analyse(texts);
    expect(codes(analysis).filter((code) => code.startsWith('TL1'))).toEqual([]);
    expect(analysis.estate.conveyors.map((each) => each.name)).toEqual([
      'CP3',
      'DG1',
      'FW2',
      'GT5',
      'RJ6',
      'SL4',
    ]);
  });
  it('is the same from texts in any order', () => {
    const there = analyse(texts);
    const back = analyse([...texts].reverse());
    const shown = ({ findings, locate }: Analysis): unknown =>
      findings.map((finding) => [locate(finding.origin), finding.code, finding.message]);
    expect(shown(back)).toEqual(shown(there));
    expect(back.estate.places.map((place) => place.name)).toEqual(
      there.estate.places.map((place) => place.name),
    );
    expect(back.estate.readings.value).toEqual(there.estate.readings.value);
  });
});

it('takes the later of two texts of one name', () => {
  const { estate } = analyse([
    { uri: 'a', text: 'plant A { }' },
    { uri: 'a', text: 'plant B { }' },
  ]);
  expect(estate.plants.map((each) => each.name)).toEqual(['B']);
});

it('leaves the conveyor of a broken fact out, and says it once', () => {
  expect(
    codes(
      one(
        specifications +
          conveyor('DG1', 'point P1 at 3 m clock 6:00', { length: 'length 22.4' }) +
          inspect('P1 colour ivory'),
      ),
    ),
  ).toEqual(['TL102']);
});
