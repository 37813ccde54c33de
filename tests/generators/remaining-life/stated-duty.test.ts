import { describe, expect, it } from 'vitest';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { clockColumns, sideOf } from '../../../src/generators/remaining-life/parts/clock-columns.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { estateOf, look, only, works } from './story.js';

const records =
  look(1500, 'P1 thickness 11.2 mm ± 0.1 mm; P2 thickness 11.3 mm ± 0.1 mm') +
  look(3000, 'P1 thickness 10.4 mm ± 0.1 mm; P2 thickness 10.6 mm ± 0.1 mm') +
  look(4500, 'P1 thickness 9.5 mm ± 0.1 mm; P2 thickness 9.9 mm ± 0.1 mm') +
  look(6000, 'P1 thickness 8.8 mm ± 0.1 mm; P2 thickness 9.2 mm ± 0.1 mm');

/** Relative width of the 80 % interval of the first life, in exposure: the wear alone, without the hours to come. */
function width(duty: string): number {
  const estate = estateOf(works.replace('duty 24 h/d ± 10 %', `duty ${duty}`), records);
  const forecast = only(remainingLife(estate, { track: false })).model?.forecast;
  if (forecast?.kind !== 'dates') throw new Error('no dates');
  return Math.log(forecast.exposure.q90 / forecast.exposure.q10);
}

describe('a duty that is stated to be even', () => {
  it('makes the forecast of a small pool narrower, on the plant as in a duty record', () => {
    const unstated = width('20 h/d');
    expect(width('20 h/d ± 2 %')).toBeLessThan(0.95 * unstated);
    expect(width('20 h/d ± 30 %')).toBeCloseTo(unstated, 9);
  });
});

describe('sides of the trough', () => {
  it('are told by the clock, seen along the flow', () => {
    expect(sideOf(9)).toBeCloseTo(-1, 12);
    expect(sideOf(6)).toBeCloseTo(0, 12);
    expect(sideOf(3)).toBeCloseTo(1, 12);
    expect(sideOf(7.5)).toBeLessThan(0);
  });
});

describe('what tells hard hours from fast wear', () => {
  const workOf = (text: string) => {
    const estate = estateOf(text);
    const histories = estate.conveyors.map((conveyor) => historyOf(estate, conveyor));
    return clockColumns([], histories, 'h', () => undefined).work?.[0] ?? [];
  };
  const counted = (hours: number, tonnes: number): string =>
    look(hours, 'P1 thickness 11 mm').replace(`meter ${hours} h`, `meter ${hours} h tonnes ${tonnes} t`);
  const loaded = (hours: number, current: number): string =>
    look(hours, `P1 thickness 11 mm; current loaded ${current} A`);

  it('tonnes an hour between readings of the counter, about the middle of all', () => {
    const records = counted(1000, 10_000) + counted(2000, 20_000) + counted(3000, 40_000);
    const stretches = workOf(works.replace('meter 0 h', 'meter 0 h tonnes 0 t') + records);
    // 10, 10 and 20 t/h.
    expect(stretches.map(({ logFactor }) => logFactor)).toEqual(
      [0, 0, Math.log(2)].map((v) => expect.closeTo(v, 9)),
    );
  });

  it('else the loaded current; one stretch alone says nothing', () => {
    const three = workOf(works + loaded(1000, 8) + loaded(2000, 8) + loaded(3000, 10));
    expect(three.map(({ logFactor }) => logFactor)).toEqual([
      expect.closeTo(-Math.log(9 / 8) / 2, 9),
      expect.closeTo(Math.log(9 / 8) / 2, 9),
    ]);
    expect(workOf(works + loaded(1000, 8) + loaded(2000, 12))).toEqual([]);
  });
});
