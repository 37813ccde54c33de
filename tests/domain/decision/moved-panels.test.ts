// A panel moved to another place, against drawing both lives (Monte Carlo of the same sentence, another road to its number).

import { describe, expect, it } from 'vitest';
import type { LinerSpecification } from '../../../src/domain/model/specifications.js';
import { exchangeFor, movedReachedBy } from '../../../src/domain/decision/moved-panels.js';
import { panel } from './kit.js';

describe('a panel that is moved', () => {
  const worn = panel({ panel: 1, median: 18_000, spread: 0.1, now: 15_000 });
  const slow = panel({ panel: 2, median: 40_000, spread: 0.1, now: 15_000 });

  it('uses what is left of it at the pace of the new place', () => {
    // Drawn: T₁ given > 15 000, T₂ given > 15 000, (1 − x/T₁)·T₂ against 5 000 h.
    const chance = movedReachedBy(worn.life, slow.life, 'limit')(5000);
    let state = 7;
    const uniform = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (state + 0.5) / 4294967296;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const draw = (median: number): number => {
      for (;;) {
        const life = median * Math.exp(0.1 * normal());
        if (life > 15_000) return life;
      }
    };
    const n = 40_000;
    let soon = 0;
    for (let i = 0; i < n; i++) if ((1 - 15_000 / draw(18_000)) * draw(40_000) <= 5000) soon += 1;
    expect(Math.abs(chance - soon / n)).toBeLessThan(0.012);
  });

  it('lasts longer at a slower place and shorter at a faster one, and nothing happens in no time', () => {
    const there = movedReachedBy(worn.life, slow.life, 'limit');
    expect(there(3000)).toBeLessThan(worn.life.reachedBy(18_000));
    expect(movedReachedBy(slow.life, worn.life, 'limit')(3000)).toBeLessThan(0.02);
    expect(there(0)).toBeLessThan(1e-6);
    expect(movedReachedBy(worn.life, slow.life, 'through')(3000)).toBeLessThan(there(3000));
  });

  it('is exchanged for the slowest seen one of the same run and length', () => {
    const short = { ...panel({ panel: 3, median: 90_000, spread: 0.1, now: 15_000 }), to: 2900 };
    const other = panel({ panel: 4, run: 2, median: 90_000, spread: 0.1, now: 15_000 });
    const unseen = panel({ panel: 5, median: 90_000, spread: 0.1, now: 15_000, seen: false });
    expect(exchangeFor(worn, [worn, slow, short, other, unseen])).toBe(slow);
    expect(exchangeFor(worn, [worn, unseen])).toBeUndefined();
    // Not with one of another liner, nor with one that is past its own limit more likely than not.
    const [one, another] = [{}, {}] as unknown as readonly [LinerSpecification, LinerSpecification]; // told apart only
    expect(exchangeFor({ ...worn, liner: one }, [{ ...slow, liner: another }])).toBeUndefined();
    expect(exchangeFor({ ...worn, liner: one }, [{ ...slow, liner: one }])).toEqual({ ...slow, liner: one });
    const past = panel({ panel: 6, median: 14_000, spread: 0.1, now: 15_000 });
    expect(exchangeFor(worn, [worn, past])).toBeUndefined();
  });
});
