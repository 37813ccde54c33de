import { metric } from '../../../src/generators/remaining-life/sizes.js';
import { describe, expect, it } from 'vitest';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import {
  changeSentences,
  conveyorChangeSentences,
  disagreementSentence,
  paceInShort,
  scatterSentence,
} from '../../../src/generators/remaining-life/print/change-words.js';
import { disagreementsOf } from '../../../src/generators/remaining-life/parts/hand-against-model.js';
import {
  looksOff,
  scatterTold,
  wearPace,
  type BranchDates,
  type WearPace,
} from '../../../src/generators/remaining-life/parts/wear-change.js';
import type { Belief, ConveyorChange, WearChange } from '../../../src/domain/wear/change.js';
import type { Duty } from '../../../src/domain/model/duty.js';
import { day, estateOf, look, only, reportOf, works } from './story.js';

const belief = (low: number, middle: number, high: number): Belief => ({ low, middle, high });
const lookDay = day('2026-03-04');
const clock = (more: Partial<ConveyorChange>): ConveyorChange => ({
  kind: 'asked',
  conveyor: 0,
  chance: 0.05,
  shared: 0,
  since: [],
  likeliest: { day: lookDay, meter: 4000, chance: 0.05, factor: belief(1, 1.2, 1.5) },
  factor: belief(1.4, 1.9, 2.4),
  pace: belief(0.9, 1, 1.1),
  faster: 0.1,
  slower: 0.1,
  looks: [],
  side: undefined,
  along: undefined,
  thicknesses: 16,
  ...more,
});
const change = (...conveyors: ConveyorChange[]): WearChange => ({
  conveyors,
  curvature: {
    power: belief(1, 1.1, 1.3),
    mean: 1.15,
    spread: 0.09,
    fasterWithAge: 0.6,
    slowerWithAge: 0.05,
  },
  scatter: undefined,
});
const quantiles = { q05: 1, q10: 2, q50: 3, q90: 4, q95: 5 };
const branch: BranchDates = {
  point: 'P4',
  asOf: day('2026-10-01'),
  ifChanged: {
    q05: day('2026-10-08'),
    q10: day('2026-11-04'),
    q50: day('2027-01-20'),
    q90: day('2027-04-02'),
    q95: day('2027-05-01'),
  },
  ifNot: {
    q05: day('2027-05-20'),
    q10: day('2027-06-03'),
    q50: day('2027-09-20'),
    q90: day('2028-01-02'),
    q95: day('2028-03-01'),
  },
  exposureIfChanged: quantiles,
  exposureIfNot: quantiles,
};
const noted: Duty = {
  perDay: 20,
  spread: undefined,
  basis: 'duty record',
  text: '140 h/week',
  from: day('2026-03-09'),
  note: 'sand in the cake',
};
const paceOf = (...clocks: ConveyorChange[]): WearPace => pacesWith([], ...clocks);
const pacesWith = (duties: readonly Duty[], ...clocks: ConveyorChange[]): WearPace =>
  wearPace({ change: change(...clocks), conveyor: 0, names: ['DG1', 'CP3'], dates: () => branch, duties });

const small = remainingLife(
  estateOf(
    works,
    look(2000, 'P1 thickness 10.9 mm; P2 thickness 11.2 mm') +
      look(4000, 'P1 thickness 9.7 mm; P2 thickness 10.1 mm'),
  ),
  { track: false },
);

/** The report of a small estate with this pace written over what its model says. */
function withPace(pace: WearPace): RemainingLife {
  return {
    ...small,
    conveyors: small.conveyors.map((life) => ({ ...life, model: life.model && { ...life.model, pace } })),
  };
}

describe('what is said of a change', () => {
  it('a change that is believed is told with its look, its size and both dates', () => {
    const pace = paceOf(clock({ chance: 0.78 }));
    expect(changeSentences(withPace(pace))[0]).toBe(
      'DG1 has worn faster since the look of 2026-03-04, chance 78 %: about 1.9 times (1.4 to 2.4) its former rate. ' +
        'If so, P4 reaches the condemn limit 2026-11 to 2027-04; if not, 2027-06 to 2028-01.',
    );
    expect(paceInShort(pace)).toBe('faster since 2026-03-04');
  });

  it('one that may be is told not to be told yet, with the look that would tell', () => {
    const pace = paceOf(clock({ chance: 0.34 }));
    expect(changeSentences(withPace(pace))[0]).toBe(
      'Whether DG1 has worn faster since the look of 2026-03-04 cannot yet be told from steady wear (chance 34 %): ' +
        'a look by 2026-10-08, with thicknesses at the same points, would tell.',
    );
  });

  it('the record of about then is quoted, an older one is not', () => {
    const told = (...duties: Duty[]): string =>
      changeSentences(withPace(pacesWith(duties, clock({ chance: 0.78 }))))[0] ?? '';
    expect(told(noted)).toMatch(/ The record of 2026-03-09 says: “sand in the cake”\.$/);
    expect(told({ ...noted, from: day('2025-11-03') })).not.toContain('sand');
  });

  it('wear that speeds up with age is told as such where no look explains it', () => {
    const pace = paceOf(clock({ chance: 0.3, faster: 0.5 }));
    expect(changeSentences(withPace(pace))[0]).toBe(
      'Wear of DG1 speeds up with age (power 1.15 ± 0.09; 1 is a straight line).',
    );
    expect(paceOf(clock({ chance: 0.7, faster: 0.9 })).kind).toBe('changed');
  });

  it('nothing is claimed to be steady, and colours alone say nothing', () => {
    expect(changeSentences(withPace(paceOf(clock({}))))).toEqual(['No sign of a change at DG1.']);
    const mute = paceOf(clock({ chance: 0.9, thicknesses: 3 }));
    expect(changeSentences(withPace(mute))).toEqual(['At DG1 too little was measured to tell a change.']);
    expect(changeSentences(withPace({ kind: 'not asked', why: 'no wear clock' }))).toEqual([]);
  });

  it('conveyors that carry the same are named together', () => {
    const both = paceOf(
      clock({ chance: 0.8, shared: 0.7 }),
      clock({ conveyor: 1, chance: 0.8, shared: 0.7 }),
    );
    expect(changeSentences(withPace(both))[0]).toContain(
      'since the look of 2026-03-04, like CP3, which carries the same, chance',
    );
    const alone = paceOf(
      clock({ chance: 0.8, shared: 0.1 }),
      clock({ conveyor: 1, chance: 0.8, shared: 0.7 }),
    );
    expect(changeSentences(withPace(alone))[0]).not.toContain('CP3');
  });

  it('page, comment and data say the same', () => {
    const report = withPace(paceOf(clock({ chance: 0.78 })));
    const sentence = changeSentences(report)[0] ?? '';
    const page = remainingLifeHtml(report);
    expect(page.split(sentence)).toHaveLength(3); // the first page and the conveyor's own
    expect(page).toContain('look since which the rate may have changed');
    expect(remainingLifeMarkdown(report).split(sentence)).toHaveLength(3);
    const data = JSON.parse(remainingLifeJson(report)) as { conveyors: { pace: unknown }[] };
    expect(data.conveyors[0]?.pace).toMatchObject({
      kind: 'changed',
      since: '2026-03-04',
      chance: 0.78,
      factor: { middle: 1.9 },
      dates: { point: 'P4', ifChanged: { q10: '2026-11-04' } },
    });
  });
});

describe('what is said of readings', () => {
  it('a whole look that reads off, from most of the gauge error on', () => {
    const off = (bias: Belief) =>
      looksOff(change(clock({ looks: [{ day: lookDay, bias, readings: 9 }] })), 0, 0.4);
    expect(off(belief(0.1, 0.3, 0.5))).toHaveLength(1);
    expect(off(belief(-0.1, 0.3, 0.7))).toEqual([]);
    expect(off(belief(0.05, 0.2, 0.4))).toEqual([]);
  });

  it('scatter far beyond what was declared, and what to do', () => {
    const scatter = (above15: number, above2: number) =>
      scatterTold({
        factor: belief(1.9, 2.3, 2.8),
        above15,
        above2,
        gauges: [{ error: 0.4, readings: 30, factor: 2.3 }],
      });
    expect(scatter(0.5, 0.1)).toBeUndefined();
    expect(scatter(0.95, 0.4)?.level).toBe('above half as much again');
    const told = scatter(1, 0.95);
    expect(told && scatterSentence(told, metric)).toBe(
      'Readings scatter far more than declared: 0.9 mm about smooth wear where ± 0.4 mm was declared (2.3 times). ' +
        'Measure 5 points twice, by the same hand and by another, and declare what they differ by.',
    );
  });

  it('a point that grew is a break in its record, told on the first page', () => {
    const report = remainingLife(
      estateOf(
        works,
        look(2000, 'P1 thickness 8.9 mm; P2 thickness 11.2 mm') +
          look(4000, 'P1 thickness 11.9 mm; P2 thickness 10.1 mm'),
      ),
      { track: false },
    );
    expect(changeSentences(report)[0]).toBe(
      'P1 of DG1 reads 3.0 mm thicker on 2025-06-17 than on 2025-03-25, beyond the errors of both: a new panel that no reline records, another spot, or a misread; measure it again.',
    );
  });
});

describe('hand and model', () => {
  it('where the dates do not agree a sentence says why', () => {
    // Four looks at 0.5 mm/1000 h, and a last pair 1.4 mm apart by chance, with a gauge of ± 0.5 mm.
    const rows = (p1: number): string => `P1 thickness ${p1} mm; P2 thickness ${p1 + 0.1} mm`;
    const gauge = (text: string): string =>
      text.replaceAll('view downstream', 'view downstream\n  gauge depth gauge ± 0.5 mm');
    const report = remainingLife(
      estateOf(
        works,
        gauge(
          [1000, 2000, 3000, 4000, 5000, 6000]
            .map((x, i) => look(x, rows([11.5, 11, 10.5, 10, 9.9, 8.6][i] ?? 0)))
            .join(''),
        ),
      ),
      { track: false },
    );
    const life = only(report);
    const told = disagreementsOf(life);
    for (const one of told) {
      expect(one.model.q05 !== undefined && one.hand < one.model.q05).toBe(true);
      expect(disagreementSentence(one, metric)).toMatch(
        /^P\d: \d{4}-\d\d-\d\d by hand, \d{4}-\d\d-\d\d \(90 %: .* by the model\. The /,
      );
    }
    expect(told.length).toBeGreaterThan(0);
    expect(remainingLifeMarkdown(report)).toContain('by hand,');
  });

  it('nothing is said where they agree', () => {
    const steady = [1000, 2000, 3000].map((x) => look(x, `P1 thickness ${12 - x / 2000} mm`)).join('');
    expect(disagreementsOf(only(remainingLife(estateOf(works, steady), { track: false })))).toEqual([]);
  });
});

describe('a misreading that later looks have overtaken', () => {
  const looks = (count: number): string =>
    [
      'P1 thickness 11.4 mm',
      'P1 thickness 8.0 mm',
      'P1 thickness 10.2 mm',
      'P1 thickness 9.6 mm',
      'P1 thickness 9.0 mm',
      'P1 thickness 8.4 mm',
    ]
      .slice(0, count)
      .map((row, i) => look(1200 * (i + 1), `${row}; P2 thickness ${(11.4 - 0.6 * i).toFixed(1)} mm`))
      .join('');
  const said = (count: number) => {
    const life = only(reportOf(looks(count)));
    return [conveyorChangeSentences(life).join(' '), life.attention.reasons.join(' ')].join(' ');
  };
  it('is asked about while it is news, and stays listed among what is doubted after', () => {
    expect(said(3)).toMatch(/thicker/);
    expect(said(6)).not.toMatch(/thicker|strays/);
    expect(remainingLifeMarkdown(reportOf(looks(6)))).toContain('8.0 mm read where');
  });
});
