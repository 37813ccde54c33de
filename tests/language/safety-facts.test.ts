// The facts that keep people safe, read from text, written back by the order's own words, and laid out by the formatter.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { stepText } from '../../src/domain/order/words.js';
import { formatText } from '../../src/language/format.js';
import { inSoundEstate } from '../../src/validation/example.js';

const steps = [
  'empty',
  'isolate',
  'prove dead',
  'gas test all every 2 h',
  'gate shut Gate',
  'covers off run above Gate by Alpha attended by Bravo using MP1 with 2 people',
  'pause takes 30 min',
  'patch run above Gate hot work shielded wet fire watch 60 min to be confirmed "two plates"',
  'fire watch run above Gate takes 1 h',
  'patch run above Gate cold work',
  'fit run above Gate starting at head cut to fit',
  'join screw from 0 m to 9 m hot work shielded',
  'gate open Gate',
  'gate off Gate',
  'gate on Gate',
];
const job = `
part of J0
change screw to Spiral400 bolted joints cut cold
crane C1 at 9 m offset 6 m
order {
${steps.map((step) => `  ${step}`).join('\n')}
}`;

function read(text: string) {
  return analyse([{ uri: 'safety.trough', text }]);
}

const text = inSoundEstate('job', job).replace(
  'access unit MP1 reach 12 m',
  'access unit MP1 reach 12 m platform load 230 kg for 2 people\n  crane C1 "mobile crane" chart 4000 kg at 6 m, 1800 kg at 10 m',
);

describe('the facts of a job', () => {
  const [of] = read(text).estate.jobs;

  test('each step reads back as it was written', () => {
    expect(of?.order?.steps.map(stepText)).toEqual(steps);
  });

  test('hot and cold, the gate, who stands by, how many are aloft', () => {
    const found = of?.order?.steps;
    expect(found?.[7]?.heat).toMatchObject({
      kind: 'hot',
      shielded: true,
      wet: true,
      confirmed: false,
      fireWatch: { value: 1 },
    });
    expect(found?.[9]?.heat).toMatchObject({ kind: 'cold' });
    expect(found?.[11]?.heat).toMatchObject({ shielded: true, wet: false, confirmed: true });
    expect(found?.[4]?.gate?.name).toBe('Gate');
    expect(found?.[5]?.attendants?.[0]?.crew?.name).toBe('Bravo');
    expect(found?.[5]?.aboard?.count).toBe(2);
    expect(found?.[10]?.cutToFit).toBe(true);
  });

  test('the screw, the crane, and the job it is part of', () => {
    expect(of?.screwChange).toMatchObject({ joints: 'bolted', cut: 'cold' });
    expect(of?.partOf?.name).toBe('J0');
    expect(of?.cranes?.[0]).toMatchObject({ at: { value: 9000 }, offset: { value: 6000 } });
    expect(of?.cranes?.[0]?.crane?.chart.map(({ load, radius }) => [load.value, radius.value])).toEqual([
      [4000, 6000],
      [1800, 10_000],
    ]);
    expect(of?.accessUnits[0]?.unit?.people?.count).toBe(2);
  });

  test('laid out once, they stay as they are', () => {
    expect(formatText(formatText(text))).toBe(formatText(text));
    expect(formatText(text)).toContain('\n    patch run above Gate cold work\n');
  });
});

describe('the facts of a conveyor', () => {
  test('a rest, and the width of a hatch', () => {
    const { estate } = read(inSoundEstate('conveyor', 'rest at 1.5 m\nhatch H1 at 3 m to 4 m width 500 mm'));
    expect(estate.conveyors[0]?.rests[0]?.from.value).toBe(1500);
    expect(estate.conveyors[0]?.hatches[0]?.width?.value).toBe(500);
  });
});

describe('what cannot be', () => {
  const codes = (given: 'plant' | 'job', lines: string): string[] =>
    read(inSoundEstate(given, lines)).findings.map((finding) => finding.code);

  test.each([
    ['plant', 'access unit MP1 reach 12 m platform load 0 kg'],
    ['plant', 'crane C1 chart 0 kg at 6 m'],
    ['plant', 'crane C1 chart 400 kg at 0 m'],
    ['plant', 'crane C1 chart -400 kg at 3 m'],
    ['job', 'order {\n  isolate takes 0 h\n}'],
    ['job', 'order {\n  patch hot work shielded wet fire watch 0 min\n}'],
    ['job', 'order {\n  gas test every 0 h\n}'],
  ] as const)('%s: %s', (given, lines) => {
    expect(codes(given, lines)).toContain('TL107');
  });

  test('a crane, a gate or a crew that nobody declared', () => {
    expect(codes('job', 'crane C9 at 9 m offset 6 m')).toContain('TL114');
    expect(codes('job', 'order {\n  gate shut Nowhere\n}')).toContain('TL114');
    expect(codes('job', 'order {\n  strip run above Gate by Alpha attended by Nobody\n}')).toContain('TL114');
  });
});
