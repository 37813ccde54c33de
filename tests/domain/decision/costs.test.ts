// Every cost that a plant can declare is used: each one, changed by itself, changes what an option costs or is expected to cost,
// and the amount can be read in how that was worked out. Beside it the reckoning of a part by a table worked by hand.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { decideConveyor, type ConveyorDecision } from '../../../src/domain/decision/conveyor-decision.js';
import { contactCost } from '../../../src/domain/decision/option-setting.js';
import type { DecisionOption } from '../../../src/domain/decision/option.js';
import { costOfWork } from '../../../src/domain/decision/cost-of-work.js';
import { moneyOf } from '../../../src/domain/decision/money.js';
import type { StretchWork } from '../../../src/domain/decision/trial-work.js';
import { addDays, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { limit, normal, outlook, perDay, through, today, type Place } from './kit.js';

const costs = {
  'cost reline': '9500 EUR',
  'cost unplanned reline': '24000 EUR',
  'cost trough repair': '18500 EUR',
  'cost downtime': '420 EUR/h',
  'cost inspection': '650 EUR',
  'cost liner': '95 EUR/m',
  'cost screw': '410 EUR/m',
} as const;

interface Said {
  readonly costs?: Readonly<Record<string, string>>;
  readonly linerPrice?: string;
  readonly screwPrice?: string;
  readonly rate?: string;
  /** Of the first crew, and a second one. */
  readonly skills?: string;
  readonly crew?: string;
}

function estateOf({
  costs: own = costs,
  linerPrice,
  screwPrice,
  rate = '58 EUR/h',
  skills = '',
  crew,
}: Said): string {
  return `
plant Tarnholt {
  duty 112 h/week
  outage Winter27 2027-01-18 to 2027-01-22
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people ${skills} cost ${rate}
  ${crew ?? ''}
  shift 07:00 to 17:00 on mon, tue, wed, thu, fri
  lead time liner 10 week
  lead time screw 10 week
${Object.entries(own)
  .map(([what, amount]) => `  ${what} ${amount}`)
  .join('\n')}
}
liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm
  condemn at 3 mm
  bolt M10 rows 2 pitch 300 mm countersink 4 mm
  joint butted
  ${linerPrice === undefined ? '' : `price ${linerPrice}`}
}
screw Spiral300 {
  shaftless
  outside diameter 300 mm
  pitch 300 mm
  flight 60 mm by 20 mm
  condemn flight at 40 mm
  ${screwPrice === undefined ? '' : `price ${screwPrice}`}
}
conveyor DG1 {
  plant Tarnholt
  length 9.6 m
  incline 5 deg
  trough inside radius 175 mm side height 150 mm plate 4 mm
  screw Spiral300
  liner TwoLayer12
  drive at head power 4 kW speed 18 rpm
  break Gate at 4.8 m to 5.2 m slide gate allowance 60 mm
  access Floor at 0 m to 9.6 m ground
}
`;
}

/** P1 wears fast. */
const usual: readonly Place[] = [
  { panel: 1, median: 9000, spread: 0.1, now: 7600 },
  { panel: 2, median: 12_500, spread: 0.1, now: 7600 },
  { panel: 3, median: 16_000, spread: 0.2, now: 7600 },
  { panel: 4, median: 16_000, spread: 0.2, now: 7600 },
  ...[1, 2, 3, 4].map((panel) => ({ run: 2, panel, median: 30_000, spread: 0.2, now: 7600 })),
];

/** The screw is due by the spring. */
function decided(said: Said, places = usual): ConveyorDecision {
  const { estate } = analyse([{ uri: 'a.trough', text: estateOf(said) }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('the estate was not read');
  const middle = addDays(today, 120);
  return decideConveyor({
    estate,
    conveyor,
    liner: conveyor.liner,
    outlook: outlook(places),
    newLife: 9000,
    gauge: 0.3,
    screw: {
      screw: conveyor.screw,
      middle,
      reachedBy: (day) => normal((day - middle) / 40),
      newLife: 120 * perDay,
    },
  });
}

const numbersOf = ({ options }: ConveyorDecision): readonly unknown[] =>
  options.map(({ what, cost, expected }) => [what, cost, expected]);
const workingOf = ({ options }: ConveyorDecision): string =>
  options.flatMap(({ working }) => working).join('\n');

describe('every declared cost', () => {
  const base = decided({});
  it.each(Object.entries(costs))('%s changes an option', (what, amount) => {
    const dearer = amount.replace(/^\d+/, (n) => String(Number(n) + 100));
    expect(numbersOf(decided({ costs: { ...costs, [what]: dearer } }))).not.toEqual(numbersOf(base));
  });

  it.each([
    ['the price of the liner', { linerPrice: '120 EUR/m' }],
    ['the price of the screw', { screwPrice: '4900 EUR' }],
    ['the rate of a crew', { rate: '80 EUR/h' }],
  ] as const)('%s changes an option', (_, said) => {
    expect(numbersOf(decided(said))).not.toEqual(numbersOf(base));
  });

  it('is of those who have something to do: a crew without a task is not paid', () => {
    const both = (skills: string): string =>
      workingOf(
        decided({ skills: 'skills fitting', crew: `crew Watch 2 people skills ${skills} cost 72 EUR/h` }),
      );
    expect(both('electrical')).toMatch(/crews \d+ EUR \([\d.]+ h of Alpha, by the planner\)/);
    expect(both('electrical')).not.toMatch(/h of Alpha and Watch, by/);
    expect(both('fitting')).toMatch(/h of Alpha and Watch, by the planner/);
  });

  it('can be read in how that was worked out', () => {
    const words = workingOf(base);
    for (const amount of ['9500 EUR', '24000 EUR', '18500 EUR', '420 EUR', '650 EUR'])
      expect(words).toContain(amount);
    // 9.2 and 4.8 m of liner at 95, 9.6 m of screw at 410, rounded to the ten.
    expect(words).toContain('liner 870 EUR (9.2 m)');
    expect(words).toContain('liner 460 EUR (4.8 m)');
    expect(words).toContain('screw 3940 EUR');
    expect(words).toMatch(/crews \d+ EUR \([\d.]+ h of Alpha, by the planner\)/);
  });

  it('of a liner or a screw gives way to the price of its own', () => {
    const own = { linerPrice: '120 EUR/m', screwPrice: '4900 EUR' };
    const { 'cost liner': _, 'cost screw': __, ...without } = costs;
    expect(numbersOf(decided({ ...own, costs: without }))).toEqual(numbersOf(decided(own)));
  });

  it('in another currency than the price of its liner is refused with the reason', () => {
    expect(decided({ linerPrice: '120 USD/m' }).money).toEqual({
      kind: 'currencies',
      currencies: ['USD', 'EUR'],
    });
  });
});

describe('what a part costs', () => {
  const { estate } = analyse([{ uri: 'a.trough', text: estateOf({}) }]);
  const [plant] = estate.plants;
  const money = plant && moneyOf(plant);
  const work = (metres: number, hours: number, persons: number, whole = false): StretchWork =>
    ({
      whole,
      metres,
      pieces: [{ liner: {}, lengths: [metres * 1000], fixings: 0 }],
      together: { crews: ['Alpha'], duration: hours, personHours: persons, units: [] },
    }) as unknown as StretchWork; // only these are read

  // Declared 9500: liner 20 m × 95 = 1900, crews 30 h × 58 = 1740, besides 5860. A part of 5 m, 10 h, 40 of 120 person-hours:
  // 475 + 580 + 5860 / 3 = 3008.33.
  it('is its own liner and crews, and its share of all else', () => {
    if (money?.kind !== 'money') throw new Error('no money');
    const whole = work(20, 30, 120, true);
    expect(costOfWork(money.money, whole, whole, true)?.amount).toBeCloseTo(9500, 9);
    expect(costOfWork(money.money, work(5, 10, 40), whole, true)?.amount).toBeCloseTo(
      475 + 580 + 5860 / 3,
      9,
    );
    expect(costOfWork(money.money, work(5, 10, 40), whole, false)?.amount).toBeCloseTo(
      475 + 580 + (24_000 - 3640) / 3,
      9,
    );
  });

  it('is liner and crews alone where no reline is declared, and unknown where the liner has no price either', () => {
    const of = (own: Readonly<Record<string, string>>): number | undefined => {
      const read = analyse([{ uri: 'a.trough', text: estateOf({ costs: own }) }]).estate.plants[0];
      const answer = read && moneyOf(read);
      if (answer?.kind !== 'money') throw new Error('no money');
      return costOfWork(answer.money, work(5, 10, 40), work(20, 30, 120, true), true)?.amount;
    };
    expect(of({ 'cost liner': '95 EUR/m' })).toBeCloseTo(475 + 580, 9);
    expect(of({ 'cost downtime': '420 EUR/h' })).toBeUndefined();
  });
});

/** Worn so far that the steel is likely to be touched before the spring, also by panels that a part leaves lying. */
const worn: readonly Place[] = [
  { panel: 1, median: 4200, spread: 0.15, now: 3000 },
  { panel: 2, median: 4600, spread: 0.15, now: 3000 },
  { panel: 3, median: 5200, spread: 0.2, now: 3000 },
  { panel: 4, median: 5200, spread: 0.2, now: 3000 },
  ...[1, 2, 3, 4].map((panel) => ({ run: 2, panel, median: 5000, spread: 0.2, now: 3000, seen: false })),
];

/** The option's scope, whole or part, at an outage. */
function relines(decision: ConveyorDecision): readonly DecisionOption[] {
  return decision.options.filter(({ kind }) => kind === 'planned reline' || kind === 'part at an outage');
}

function damageOf({ setting }: ConveyorDecision): number {
  const damage = setting && contactCost(setting);
  if (damage === undefined) throw new Error('no costs');
  return damage;
}

/** The last day whose steel a scope answers for. */
function answersUntil({ scopes, horizon }: ConveyorDecision, day: CalendarDay): CalendarDay {
  return scopes && day < scopes.until ? scopes.until : horizon;
}

describe('what an option is expected to cost', () => {
  // A second road: each story drawn by itself, and its money added up. Steel is touched once: it ends the story.
  it('is the mean over stories of what was paid in each', () => {
    const decision = decided({ rate: '900 EUR/h' }, worn);
    const damage = damageOf(decision);
    const draws = 4000;
    const random = drawing(20261127);
    const touched = Array.from({ length: draws }, () => worn.map((place) => touchedOn(place, random)));
    const told = relines(decision).map((option) => {
      const [day = today, work] = [
        option.day,
        decision.scopes?.works.find((w) => w.work.scope === option.scope),
      ];
      const stays = decision.setting?.outlook.panels.map((panel) => !work?.relined.includes(panel)) ?? [];
      const until = answersUntil(decision, day);
      const paid = touched.map((days) => {
        if (days.some((each) => each <= day)) return damage;
        const later = !work?.work.whole && days.some((each, i) => stays[i] === true && each <= until);
        return (option.cost ?? 0) * (option.used ?? 0) + (later ? damage : 0);
      });
      const mean = paid.reduce((a, b) => a + b, 0) / draws;
      const error = Math.sqrt(paid.reduce((sum, each) => sum + (each - mean) ** 2, 0) / draws ** 2);
      return { what: option.what, off: ((option.expected ?? NaN) - mean) / error };
    });
    expect(told.length).toBeGreaterThanOrEqual(4);
    for (const { what, off } of told) expect(Math.abs(off), what).toBeLessThan(4);
  });

  it('is never more for a reline than the work itself on top of doing nothing', () => {
    const place = (panel: number, run: number): fc.Arbitrary<Place> =>
      fc.record({
        run: fc.constant(run),
        panel: fc.constant(panel),
        median: fc.integer({ min: 2900, max: 7000 }),
        spread: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        now: fc.constant(3000),
        seen: fc.boolean(),
      });
    const places = fc.tuple(...[1, 2, 3, 4].flatMap((panel) => [place(panel, 1), place(panel, 2)]));
    fc.assert(
      fc.property(places, (drawn) => {
        const decision = decided({}, drawn);
        if (!decision.setting) return;
        const damage = damageOf(decision);
        for (const { day = today, cost = 0, used = 1, expected, what } of relines(decision)) {
          const waiting = decision.chancesOn(answersUntil(decision, day)).contact * damage;
          expect(expected, what).toBeLessThanOrEqual(cost * used + waiting + 1e-6);
        }
      }),
      { numRuns: 20 },
    );
  });
});

/** Evenly from 0 to 1, the same each run (Park and Miller's minimal standard generator). */
function drawing(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}

/** A life longer than today's, by trying again (Box and Muller); the day on which its steel is touched. */
function touchedOn({ median, spread, now }: Place, random: () => number): number {
  for (;;) {
    const z = Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const life = median * Math.exp(spread * z);
    if (life > now) return today + ((life * through) / limit - now) / perDay;
  }
}
