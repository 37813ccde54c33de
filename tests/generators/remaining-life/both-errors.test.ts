// A gauge that is declared far better than it reads: both forecasts, by the scatter found and with the gauge taken at its word.
import { describe, expect, it } from 'vitest';
import { changeSentences } from '../../../src/generators/remaining-life/print/change-words.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { seeded } from '../../domain/wear/fleet.js';
import { columnsOf, expectedLife, unitsOf } from '../../domain/wear/kit.js';
import { estateOf, look, only, works } from './story.js';

const points = [1, 2, 3, 4, 5, 6, 7, 8];

/** Eight points, six looks, wear 0.5 mm in 1000 h give or take; readings scatter by `scatter` mm, ± 0.2 mm is declared. */
function reportWith(scatter: number): RemainingLife {
  const { normal } = seeded(7);
  const rates = points.map(() => 5e-4 * Math.exp(0.2 * normal()));
  const place = points.map((p) => `  point P${p} at ${(0.5 * p).toFixed(1)} m clock 5:00\n`).join('');
  const text = works.replace(/ {2}point P1[^]*(?=\n})/, place.trimEnd());
  const looks = [1, 2, 3, 4, 5, 6].map((k) =>
    look(
      1500 * k,
      `gauge ultrasonic ± 0.2 mm;${points
        .map(
          (p, i) => `P${p} thickness ${(12 - 1500 * k * (rates[i] ?? 0) + scatter * normal()).toFixed(2)} mm`,
        )
        .join(';')}`,
    ),
  );
  return remainingLife(estateOf(text, ...looks), { track: false });
}

describe('readings that scatter more than twice what was declared', () => {
  const wild = reportWith(0.9);
  const life = only(wild);

  it('are told on page 1 with both dates and what to do', () => {
    const sentences = changeSentences(wild).join('\n');
    expect(sentences).toMatch(/Readings scatter far more than declared: .*Measure 5 points twice/);
    expect(sentences).toMatch(
      /The condemn limit comes \(80 % between\) at DG1 \d{4}-\d\d to \d{4}-\d\d if it is the gauge, .* if it is the wear\./,
    );
  });

  it('are forecast twice, at the conveyor and at every point: a bad gauge, or a good one and uneven wear', () => {
    const { model } = life;
    if (model?.forecast.kind !== 'dates' || !model.asDeclared) throw new Error('no dates');
    expect(model.asDeclared).not.toEqual(model.forecast.days);
    for (const { model: own } of life.points) {
      if (own?.condemn.kind !== 'life' || own.asDeclared?.kind !== 'life') throw new Error('no life');
      expect(own.asDeclared.exposure).not.toEqual(own.condemn.exposure);
    }
  });

  it('stand the same on the page and in the JSON', () => {
    expect(remainingLifeHtml(wild)).toMatch(
      /P1 reaches its limit: .* if its gauge scatters as found, .* if the gauge is as good as declared/,
    );
    const json = JSON.parse(remainingLifeJson(wild)) as {
      conveyors: { asDeclared: unknown; points: { model: { asDeclared: unknown } }[] }[];
    };
    expect(json.conveyors[0]?.asDeclared).not.toBeNull();
    expect(json.conveyors[0]?.points.every((p) => p.model.asDeclared !== null)).toBe(true);
  });
});

it('the second forecast takes the gauge at its word and finds the scatter in the wear', () => {
  const { normal } = seeded(3);
  const rows = Array.from({ length: 8 }, (_, unit) =>
    [1, 2, 3, 4, 5, 6].map((k) => ({ unit, at: 1500 * k, day: 90 * k, saw: 12 - 0.75 * k + 0.9 * normal() })),
  ).flat();
  const clock = {
    conveyor: new Array<number>(8).fill(0),
    start: new Array<number>(8).fill(0),
    product: [undefined],
  };
  const fit = fitWear(reduceReadings(columnsOf(rows), { ...unitsOf(8), clock }), [], {
    expectedLife,
    gaugeError: 0.2,
  });
  if (fit.kind !== 'fitted' || !fit.asDeclared) throw new Error('one forecast only');
  expect(fit.change?.scatter?.factor.low).toBeGreaterThan(2);
  expect(fit.asDeclared.change?.scatter?.factor.middle).toBeCloseTo(1, 1);
  const noise = (each: typeof fit): number =>
    (each.clocks?.hyper.nodes ?? []).reduce((sum, n) => sum + n.weight * n.answer.theta.pointNoise, 0);
  expect(noise(fit.asDeclared)).toBeGreaterThan(1.25 * noise(fit));
  // It is not asked a third time.
  expect(fit.asDeclared.asDeclared).toBeUndefined();
});

it('readings as good as declared are forecast once', () => {
  const tame = reportWith(0.2);
  const { model, points: own } = only(tame);
  expect(model?.asDeclared).toBeUndefined();
  expect(own.every((point) => point.model?.asDeclared === undefined)).toBe(true);
  expect(changeSentences(tame).join('\n')).not.toMatch(/scatter/);
});
