import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';

/** Three conveyors of one build; what they carry and where they are read is the story's own. */
function estateOf(materials: readonly string[], clocks: readonly string[], rates: readonly number[]): string {
  const shared =
    'plant A {\n  duty 60 h/week\n}\nliner L {\n  layer white 6 mm\n  layer red 6 mm\n  panel length 1200 mm\n  condemn at 3 mm\n  expected life 15000 h\n}\nscrew S {\n  shaftless\n  outside diameter 400 mm\n  pitch 350 mm\n}\n';
  return (
    shared +
    materials
      .map((material, c) => {
        const points = clocks.map((clock, p) => `  point P${p + 1} at ${p + 2} m clock ${clock}\n`).join('');
        const rounds = [3000, 6000]
          .map(
            (hours, i) =>
              `inspection C${c} ${i === 0 ? '2024-12-16' : '2025-12-01'} meter ${hours} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n` +
              clocks
                .map(
                  (_, p) =>
                    `  P${p + 1} thickness ${(12 - ((rates[p] ?? 0.5) * hours) / 1000).toFixed(1)} mm\n`,
                )
                .join('') +
              '}\n',
          )
          .join('');
        return `conveyor C${c} {\n  plant A\n  length 12 m\n  incline 0 deg\n  trough inside radius 220 mm side height 260 mm plate 4 mm\n  screw S\n  liner L\n  conveys "${material}"\n  commissioned 2024-01-01 meter 0 h\n${points}}\n${rounds}`;
      })
      .join('')
  );
}

function borrowed(text: string): Map<string, number> {
  const { estate } = analyse([{ uri: 'a.trough', text }]);
  const life = remainingLife(estate, { track: false }).conveyors.find((c) => c.conveyor.name === 'C0');
  return new Map((life?.model?.borrowed ?? []).map((b) => [`${b.pool} ${b.label}`, b.factor]));
}

describe('what is borrowed from where', () => {
  test('sectors of one trough are a pool of their own, and the one that wears faster shows it', () => {
    const from = borrowed(
      estateOf(['sludge', 'cake', 'grit'], ['5:00', '5:15', '7:00', '6:45'], [0.7, 0.7, 0.4, 0.4]),
    );
    expect(from.get('sector 5 o’clock')).toBeGreaterThan(1);
    expect(from.get('sector 7 o’clock')).toBeLessThan(1);
    expect([...from.keys()].some((key) => key.startsWith('duty'))).toBe(false);
  });

  test('conveyors that carry the same share its pool', () => {
    const from = borrowed(estateOf(['Sludge', 'sludge', 'grit'], ['6:00', '6:00'], [0.5, 0.5]));
    expect(from.has('duty sludge')).toBe(true);
    expect(from.has('duty grit')).toBe(false);
    expect([...from.keys()].some((key) => key.startsWith('sector'))).toBe(false);
  });
});
