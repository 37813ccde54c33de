import { describe, expect, test } from 'vitest';
import { codesIn, findingsIn, messageOf } from './findings-in.js';

const titles = (code: string, given: Parameters<typeof findingsIn>[0], lines: string): string[] =>
  findingsIn(given, lines)
    .filter((finding) => finding.code === code)
    .flatMap((finding) => (finding.fixes ?? []).map((fix) => fix.title));

describe('slips of the pen and their quick fixes', () => {
  test('a missing unit is offered only in units that make a plausible size', () => {
    expect(titles('TL102', 'conveyor', '  length 12')).toEqual(['Write 12 m', 'Write 12 ft']);
    expect(titles('TL102', 'liner', '  layer ivory 6\n  layer teal 6 mm')).toEqual(['Write 6 mm']);
    expect(titles('TL102', 'screw', '  outside diameter 400')).toEqual(['Write 400 mm']);
    expect(titles('TL102', 'screw', '  outside diameter 16')).toEqual(['Write 16 in', 'Write 16 cm']);
  });

  test('a unit that is nearly right is read as the one it resembles', () => {
    expect(titles('TL103', 'conveyor', '  length 12 mtr')).toContain('Write 12 m');
    expect(messageOf('TL103', 'plant', '  lead time liner 3 month')).toMatch(/a month is 28 to 31 days/);
  });

  test('a comma that may separate thousands is left to the author: both readings are offered, neither preferred', () => {
    const [finding] = findingsIn('estate', 'inspection DG1 2025-03-10 meter 6,200 h { P1 colour ivory }');
    expect(finding?.code).toBe('TL105');
    expect(finding?.fixes?.map((fix) => fix.title)).toEqual(['Write 6.200 h', 'Write 6200 h']);
    expect(finding?.fixes?.some((fix) => fix.preferred)).toBe(false);
  });

  test('a date that can be read in two ways is offered in both', () => {
    expect(titles('TL108', 'conveyor', '  commissioned 03/04/2024 meter 0 h')).toEqual([
      'Write 2024-04-03',
      'Write 2024-03-04',
    ]);
  });

  test.each([
    ['7.30', '7:30'],
    ['19:30', '7:30'],
    ['7 h', '7:00'],
    ['0:30', '12:30'],
  ])('clock %s is meant as %s', (written, meant) => {
    expect(
      titles('TL110', 'conveyor', `  point P1 at 4 m clock ${written}\n  point P2 at 9 m clock 7:30`),
    ).toEqual([`Write ${meant}`]);
  });

  test('a misspelt name is offered in the spelling that exists', () => {
    expect(titles('TL114', 'conveyor', '  screw Spiral4OO')).toEqual(['Write Spiral400']);
  });

  test('a reading at a point of another conveyor names that conveyor', () => {
    const other = `
conveyor DG2 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 electrical
  point Top at 11 m clock 7:30
}
inspection DG1 2024-03-10 meter 900 h {
  Top colour ivory
}`;
    expect(messageOf('TL116', 'estate', other)).toBe(
      'DG1 has no point Top, but DG2 has: is this the sheet of another conveyor?',
    );
  });

  test('a missing fact comes with a line to fill in, put inside the block', () => {
    const [finding] = findingsIn(
      'specifications',
      '\nconveyor DG1 {\n  plant Tarnholt\n  incline 20 deg\n  trough inside radius 226 mm side height 260 mm plate 4 mm\n  screw Spiral400\n  liner TwoLayer12\n}',
    );
    expect(finding?.code).toBe('TL111');
    expect(finding?.fixes?.[0]?.edits[0]?.text).toMatch(/^\n {2}length /);
  });
});

describe('comments that silence a finding', () => {
  const inspection = (comment: string): string =>
    `\ninspection DG1 2025-03-10 meter 6200 h {${comment}\n  gauge ultrasonic ± 0.2 mm\n  at 5.2 m clock 7:30 thickness 9.8 mm\n}`;

  test('with a reason silence it on their line', () => {
    expect(
      codesIn('estate', inspection(' // allow TL311 because "the shift always looks with the flow"')),
    ).toEqual([]);
  });

  test('without a reason silence nothing', () => {
    expect([...codesIn('estate', inspection(' // allow TL311'))].sort()).toEqual(['TL118', 'TL311']);
  });

  test('past their day silence nothing, judged by the newest record', () => {
    expect(
      [...codesIn('estate', inspection(' // allow TL311 until 2025-03-09 because "asked"'))].sort(),
    ).toEqual(['TL121', 'TL311']);
    expect(codesIn('estate', inspection(' // allow TL311 until 2025-03-10 because "asked"'))).toEqual([]);
  });

  test('of another code leave the finding standing and are called useless', () => {
    expect([...codesIn('estate', inspection(' // allow TL312 because "asked"'))].sort()).toEqual([
      'TL120',
      'TL311',
    ]);
  });
});
