import { describe, expect, it } from 'vitest';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { sideOf } from '../../../src/generators/remaining-life/parts/clock-columns.js';
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
