import { describe, expect, it } from 'vitest';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { estateOf, works } from './story.js';

/** Three conveyors that carry 4, 10 and 24 t an hour, each at a steady throughput; wear as told. */
function estate(wearOf: (hours: number, tonnes: number) => number) {
  const conveyor = works.slice(works.indexOf('conveyor DG1'));
  const names = ['DG1', 'DG2', 'DG3'];
  const loads = [4, 10, 24];
  const spread = [0, 0.06, -0.06, 0.1, -0.1, 0.04];
  const others = names.slice(1).map((name) => conveyor.replaceAll('DG1', name));
  const looks = names.flatMap((name, i) =>
    [1500, 3000, 4500].map((hours, k) => {
      const tonnes = hours * (loads[i] ?? 0);
      const left = (point: number): string =>
        (12 - wearOf(hours, tonnes) * (1 + (spread[i * 2 + point] ?? 0)) + 0.05 * ((k + point) % 2)).toFixed(
          2,
        );
      const date = new Date(Date.UTC(2025, 0, 1) + (hours / 24) * 86_400_000).toISOString().slice(0, 10);
      return `inspection ${name} ${date} meter ${hours} h tonnes ${tonnes} t {\n  view downstream\n  gauge ultrasonic ± 0.1 mm\n  P1 thickness ${left(0)} mm\n  P2 thickness ${left(1)} mm\n}\n`;
    }),
  );
  return estateOf(
    works.replaceAll('meter 0 h', 'meter 0 h tonnes 0 t'),
    others.join('\n').replaceAll('meter 0 h', 'meter 0 h tonnes 0 t'),
    looks.join(''),
  );
}

describe('hours or tonnes, over all conveyors', () => {
  it('conveyors of unlike throughput tell what no single one can', () => {
    const report = remainingLife(
      estate((_, tonnes) => tonnes * 5e-5),
      { track: false },
    );
    expect(report.conveyors.map((c) => c.measure?.better)).toEqual([undefined, undefined, undefined]);
    expect(report.measure).toMatchObject({ better: 'tonnes', conveyors: 3, readings: 18 });
    expect(remainingLifeHtml(report)).toContain('18 thicknesses of 3 conveyors together');
    expect(
      remainingLife(
        estate((hours) => hours * 8e-4),
        { track: false },
      ).measure?.better,
    ).toBe('hours');
  });

  it('nothing is said where one conveyor counts tonnes', () => {
    expect(remainingLife(estateOf(works), { track: false }).measure).toBeUndefined();
  });
});
