import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';

/** Three conveyors of one build; what they carry and where they are read is the story's own. */
function estateOf(materials: readonly string[], clocks: readonly string[], rates: readonly number[]): string {
  const shared =
    'plant A {\n  duty 60 h/week\n}\nliner L {\n  layer ivory 6 mm\n  layer teal 6 mm\n  panel length 1200 mm\n  condemn at 3 mm\n  expected life 15000 h\n}\nscrew S {\n  shaftless\n  outside diameter 400 mm\n  pitch 350 mm\n}\n';
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

describe('a run that was not relined, where another was', () => {
  const looks = [2400, 4800]
    .map((hours, i) => {
      const rows = [0.45, 0.55, 0.5, 0.6].map(
        (rate, p) => `  P${p + 1} thickness ${(12 - (rate * hours) / 1000).toFixed(1)} mm\n`,
      );
      return `inspection C ${i === 0 ? '2024-10-07' : '2025-07-14'} meter ${hours} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n${rows.join('')}}\n`;
    })
    .join('');
  const estate = `plant A {\n  duty 60 h/week ± 15 %\n}\nliner L {\n  layer ivory 6 mm\n  layer teal 6 mm\n  panel length 1200 mm\n  condemn at 3 mm\n}\nscrew S {\n  shaftless\n  outside diameter 400 mm\n  pitch 350 mm\n}\nconveyor C {\n  plant A\n  length 12 m\n  incline 0 deg\n  trough inside radius 220 mm side height 260 mm plate 4 mm\n  screw S\n  liner L\n  commissioned 2024-01-01 meter 0 h\n  break Gate at 6 m to 6.5 m slide gate allowance 15 mm\n  point P1 at 2 m clock 6:00\n  point P2 at 4 m clock 6:00\n  point P3 at 8 m clock 6:00\n  point P4 at 10 m clock 6:00\n}\n${looks}`;

  function lifeOfP4(reline: string): { exposure: number; day: number } {
    const { estate: read } = analyse([{ uri: 'a.trough', text: estate + reline }]);
    const point = remainingLife(read, { track: false }).conveyors[0]?.points.find(
      (p) => p.place.name === 'P4',
    );
    const condemn = point?.model?.condemn;
    if (condemn?.kind !== 'life' || condemn.days?.q50 === undefined) throw new Error('no life');
    return { exposure: condemn.exposure.q50, day: condemn.days.q50 };
  }
  const relined = (meter: number): string =>
    `reline C 2025-07-28 meter ${meter} h {\n  liner L\n  scope run 1\n}\n`;
  const before = lifeOfP4('');

  test('keeps its life within half a per cent: the new liner lends nothing that was not lent before', () => {
    // Two weeks at 60 h a week: the meter read at the reline is what the duty foretold.
    const after = lifeOfP4(relined(4920));
    expect(Math.abs(Math.log(after.exposure / before.exposure))).toBeLessThan(0.005);
    expect(Math.abs(after.day - before.day)).toBeLessThan(7);
  });

  test('is later by the days that did not run, where the meter at the reline shows less than the duty foretold', () => {
    // 120 h less than foretold are two weeks; that the hours are less even than they seemed adds some days.
    const moved = lifeOfP4(relined(4800)).day - lifeOfP4(relined(4920)).day;
    expect(moved).toBeGreaterThanOrEqual(12);
    expect(moved).toBeLessThanOrEqual(18);
  });
});
