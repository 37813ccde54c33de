// One row of the table of decisions, by an outlook whose chances are straight lines in the day, so that every date and chance is
// mental arithmetic: a chance of one in a thousand a day passes 5 % on the 51st day.

import { describe, expect, it, test } from 'vitest';
import {
  acceptedBy,
  decideConveyor,
  type ConveyorDecision,
  type DecisionInput,
} from '../../../src/domain/decision/conveyor-decision.js';
import { isNow, isOrderLate } from '../../../src/domain/decision/order-call.js';
import type { PanelOutlook, WearOutlook } from '../../../src/domain/decision/wear-outlook.js';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Outage, Plant } from '../../../src/domain/model/plant.js';
import { addDays, formatDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import { conveyor, estate, hours, mm, origin, plant, ratio, use } from '../../kit/estate.js';
import { crew, everywhere, job, line } from '../order/stories.js';
import { today } from './kit.js';

const perThousand =
  (rate: number) =>
  (day: CalendarDay): number =>
    Math.min(1, Math.max(0, (rate * (day - today)) / 1000));

interface Pace {
  readonly condemn: number;
  readonly contact: number;
}

function panel(number: number, { condemn, contact }: Pace, facts: Partial<PanelOutlook> = {}): PanelOutlook {
  return {
    run: 1,
    panel: number,
    from: (number - 1) * 1000,
    to: number * 1000,
    seen: true,
    place: `P${number}`,
    at: (number - 0.5) * 1000,
    life: { now: 1000, limit: 9, through: 12, reachedBy: (x) => Math.min(1, x / 1e5), median: 5e4 },
    condemnBy: perThousand(condemn),
    contactBy: perThousand(contact),
    ...facts,
  };
}

/** Chances in thousandths a day: of all panels, and of what was seen. */
function outlook(
  counted: Pace,
  seen: Pace | undefined = counted,
  panels: readonly PanelOutlook[] = [panel(1, counted)],
): WearOutlook {
  const chances = ({ condemn, contact }: Pace) => ({
    condemnBy: perThousand(condemn),
    contactBy: perThousand(contact),
  });
  return {
    asOf: today,
    counted: chances(counted),
    seen: seen && chances(seen),
    panels,
    rest: () => chances({ condemn: 0, contact: 0 }),
    restSeen: () => chances({ condemn: 0, contact: 0 }),
    exposureBy: (day) => 16 * (day - today),
    hoursBy: (day) => 16 * (day - today),
    turnedBy: (day) => 16 * (day - today),
    dutySpread: 0,
  };
}

const outage = (name: string, days: number, length = 4): Outage => ({
  name,
  from: { day: addDays(today, days), origin: origin() },
  to: { day: addDays(today, days + length), origin: origin() },
  origin: origin(),
  nameOrigin: origin(),
});
const lead = (days: number, item: 'liner' | 'screw' = 'liner'): Plant['leadTimes'][number] => ({
  item,
  time: hours(days * 24),
  origin: origin(),
});

interface Story {
  readonly outages?: readonly Outage[];
  readonly lead?: number;
  readonly of?: Partial<Conveyor>;
  readonly works?: Partial<Plant>;
  readonly input?: Partial<DecisionInput>;
}

function decide(
  wear: WearOutlook,
  { outages = [], lead: days, of, works, input }: Story = {},
): ConveyorDecision {
  const made = line([4], [10, 60], {
    access: [everywhere],
    plant: plant({
      outages,
      crews: [],
      leadTimes: days === undefined ? [] : [lead(days, 'screw'), lead(days)],
      ...works,
    }),
    ...of,
  });
  return decideConveyor({
    estate: estate({ conveyors: [made] }),
    conveyor: made,
    liner: made.liner,
    outlook: wear,
    newLife: undefined,
    gauge: 0.3,
    ...input,
  });
}
const days = (day: CalendarDay | undefined): number | undefined => day && day - today;
const slow = { condemn: 1, contact: 0.01 };
/** Passes 5 % after 50 days, 0.5 % of steel after 500. */
const outages = Object.freeze([
  outage('Summer', 200),
  outage('Winter', 40),
  outage('Spring', 120),
  outage('Past', -1),
]);

describe('when the accepted risk is passed', () => {
  test.each<[string, Pace, number | undefined, string | undefined]>([
    // 1/1000 a day: 0.05 on day 50, above it on day 51.
    ['by the limit', { condemn: 1, contact: 0.01 }, 51, 'condemn limit'],
    // 0.2/1000 a day: 0.005 on day 25.
    ['by steel, where that comes first', { condemn: 1, contact: 0.2 }, 26, 'steel'],
    ['by steel alone', { condemn: 0, contact: 0.2 }, 26, 'steel'],
    ['by the limit where both are passed on one day', { condemn: 2, contact: 0.2 }, 26, 'condemn limit'],
    ['never', { condemn: 0, contact: 0 }, undefined, undefined],
  ])('%s', (_, pace, day, by) => {
    const { passed } = decide(outlook(pace));
    expect([days(passed?.day), passed?.by]).toEqual([day, by]);
  });

  it('forty years are looked ahead, and no more', () => {
    // 0.05 / 14 610 a day passes 5 % on the last of them.
    const rate = (to: number): number => 50 / to;
    expect(decide(outlook({ condemn: rate(14_609), contact: 0 })).passed?.day).toBe(addDays(today, 14_610));
    expect(decide(outlook({ condemn: rate(14_611), contact: 0 })).passed).toBeUndefined();
  });

  it('passed already: since when, where the wear behind today is known, else today', () => {
    // A tenth of a thousand a day since 100 days before today: 5 % was passed on the 51st of them.
    const behind = (day: CalendarDay): number => perThousand(1)(addDays(day, 100));
    const past = { ...outlook(slow), counted: { condemnBy: behind, contactBy: () => 0 } };
    expect(days(decide({ ...past, since: addDays(today, -100) }).passed?.day)).toBe(-49);
    expect(days(decide(past).passed?.day)).toBe(0);
    // At the accepted risk and not above it: it is passed tomorrow.
    const just = (day: CalendarDay): number => perThousand(1)(addDays(day, 50));
    const now = { ...past, counted: { condemnBy: just, contactBy: () => 0 }, since: addDays(today, -100) };
    expect(days(decide(now).passed?.day)).toBe(1);
  });

  it('what was seen has its own day', () => {
    const both = decide(outlook({ condemn: 1, contact: 0.01 }, { condemn: 0.5, contact: 0.001 }));
    expect([days(both.passed?.day), days(both.passedSeen)]).toEqual([51, 101]);
    const none = decide({ ...outlook(slow), seen: undefined });
    expect([days(none.passed?.day), none.passedSeen, none.today.condemnSeen]).toEqual([
      51,
      undefined,
      undefined,
    ]);
  });

  it('the risk is the conveyor’s own before the plant’s, and said to be assumed where it is', () => {
    const works = plant({ risk: ratio(0.1), contactRisk: { ...ratio(0.02), assumed: 'usual' } });
    expect(acceptedBy(conveyor({ plant: works }))).toEqual({
      condemn: 0.1,
      contact: 0.02,
      contactAssumed: true,
    });
    expect(acceptedBy(conveyor({ plant: works, risk: ratio(0.01), contactRisk: ratio(0.001) }))).toEqual({
      condemn: 0.01,
      contact: 0.001,
      contactAssumed: false,
    });
  });
});

describe('the outages', () => {
  it('are weighed in the order of their days; what began before today is over', () => {
    const rows = decide(outlook(slow), { outages }).outages;
    expect(rows.map(({ name }) => name)).toEqual(['Winter', 'Spring', 'Summer']);
    expect(rows.map(({ from, to }) => [days(from), days(to)])).toEqual([
      [40, 44],
      [120, 124],
      [200, 204],
    ]);
  });

  it('one that starts on the day of the report counts', () => {
    const { outages: rows } = decide(outlook(slow), { outages: [outage('Now', 0), outage('Yesterday', -1)] });
    expect(rows.map(({ name }) => name)).toEqual(['Now']);
  });

  it('have the chances of their first day, of all panels and of what was seen', () => {
    const [row] = decide(outlook({ condemn: 1, contact: 0.05 }, { condemn: 0.5, contact: 0.01 }), {
      outages: [outage('Winter', 40)],
    }).outages;
    expect(row).toMatchObject({ condemn: 0.04, condemnSeen: 0.02 });
    expect([row?.contact, row?.contactSeen]).toEqual([expect.closeTo(0.002, 12), expect.closeTo(0.0004, 12)]);
  });

  test.each<[string, number, Pace, boolean]>([
    ['on the last day within the risk of the limit', 50, { condemn: 1, contact: 0 }, true],
    ['a day later', 51, { condemn: 1, contact: 0 }, false],
    ['on the last day within the risk of steel', 25, { condemn: 0, contact: 0.2 }, true],
    ['a day later by steel', 26, { condemn: 0, contact: 0.2 }, false],
    ['within one and not the other', 40, { condemn: 1, contact: 0.2 }, false],
  ])('is within both risks: %s', (_, day, pace, within) => {
    const { outages: rows } = decide(outlook(pace), { outages: [outage('One', day)] });
    expect(rows[0]?.within).toBe(within);
  });

  test.each<[string, number | undefined, boolean, number | undefined, number, boolean]>([
    ['40 days on, ordered today with 39', 39, true, 39, 1, false],
    ['with 40: it comes on the day', 40, true, 40, 0, false],
    ['with 41: a day too late', 41, false, 41, -1, true],
    ['with no lead time declared', undefined, true, undefined, 40, false],
  ])('an outage %s', (_, wait, reachable, arrives, orderBy, late) => {
    const [row] = decide(outlook(slow), {
      outages: [outage('Winter', 40)],
      ...(wait === undefined ? {} : { lead: wait }),
    }).outages;
    expect([row?.reachable, days(row?.arrives), days(row?.orderBy), row?.orderIsLate]).toEqual([
      reachable,
      arrives,
      orderBy,
      late,
    ]);
  });
});

describe('the outage to reline at', () => {
  const three = [outage('A', 20), outage('B', 40), outage('C', 60)];
  test.each<[string, Pace, Pace, number | undefined, string | undefined, string | undefined]>([
    ['the last within the risk', slow, slow, 10, 'B', undefined],
    [
      'the last of all where the risk is passed later',
      { condemn: 0.5, contact: 0 },
      slow,
      10,
      'C',
      undefined,
    ],
    ['none where the liner comes too late for it', slow, slow, 41, undefined, undefined],
    [
      'none within the risk',
      { condemn: 5, contact: 0 },
      { condemn: 5, contact: 0 },
      10,
      undefined,
      undefined,
    ],
    [
      'by what was seen where only what nobody saw stands against it',
      { condemn: 5, contact: 0 },
      { condemn: 1, contact: 0 },
      10,
      undefined,
      'B',
    ],
    [
      'not by what was seen where its steel is near',
      { condemn: 5, contact: 0 },
      { condemn: 1, contact: 0.2 },
      10,
      undefined,
      'A',
    ],
    [
      'nor where the liner does not come in time',
      { condemn: 5, contact: 0 },
      { condemn: 1, contact: 0 },
      41,
      undefined,
      undefined,
    ],
  ])('%s', (_, counted, seen, wait, chosen, bySeen) => {
    const found = decide(outlook(counted, seen), { outages: three, lead: wait ?? 0 });
    expect([found.chosen?.name, found.chosenBySeen?.name]).toEqual([chosen, bySeen]);
  });

  it('by what was seen on the last day within either risk, and the table goes by it then', () => {
    const near = { condemn: 5, contact: 0 };
    const goesBy = (found: ConveyorDecision): unknown => [found.chosenBySeen?.name, found.goesBy];
    // 0.05 on day 50; 0.005 of steel on day 25.
    expect(goesBy(decide(outlook(near, slow), { outages: [outage('A', 50)] }))).toEqual([
      'A',
      'what was seen',
    ]);
    const steel = { condemn: 0, contact: 0.2 };
    expect(goesBy(decide(outlook(near, steel), { outages: [outage('A', 25)] }))).toEqual([
      'A',
      'what was seen',
    ]);
    expect(goesBy(decide(outlook(slow), { outages: three }))).toEqual([undefined, 'all panels']);
    expect(goesBy(decide({ ...outlook(near), seen: undefined }, { outages: three }))).toEqual([
      undefined,
      'all panels',
    ]);
  });

  it('where nothing was seen nothing is chosen by it', () => {
    const found = decide({ ...outlook({ condemn: 5, contact: 0 }), seen: undefined }, { outages: three });
    expect([found.chosen, found.chosenBySeen]).toEqual([undefined, undefined]);
  });
});

describe('what to order by when', () => {
  const three = [outage('A', 20), outage('B', 40), outage('C', 60)];
  test.each<[string, Pace, Pace, number, readonly [number, boolean, string] | undefined]>([
    ['for the outage that was chosen', slow, slow, 10, [30, false, 'B']],
    [
      'for the one by what was seen',
      { condemn: 5, contact: 0 },
      { condemn: 1, contact: 0 },
      10,
      [30, false, 'B'],
    ],
    [
      'none in time: today, though it would also reach the first that the liner can reach',
      { condemn: 5, contact: 0 },
      { condemn: 5, contact: 0 },
      30,
      [0, false, 'B'],
    ],
    [
      'none that it can reach: today, and for the first it is late',
      { condemn: 5, contact: 0 },
      { condemn: 5, contact: 0 },
      90,
      [0, true, 'A'],
    ],
    ['nothing where nothing is due', { condemn: 0.1, contact: 0 }, slow, 10, undefined],
  ])('%s', (_, counted, seen, wait, expected) => {
    const { order } = decide(outlook(counted, seen), { outages: three, lead: wait });
    const told = order?.kind === 'order' ? [days(order.day), isOrderLate(order), order.outage] : order;
    expect(told).toEqual(expected);
  });
  it('now where the limit was seen, due or not; nothing where it was not and nothing is due', () => {
    const none = outlook({ condemn: 0, contact: 0 });
    const seen = decide(none, { outages: three, lead: 10, input: { atLimit: true } }).order;
    expect(seen && [isNow(seen), seen.outage]).toEqual([true, 'C']);
    const waiting = decide(outlook(slow), { outages: three, lead: 10, input: { atLimit: true } }).order;
    expect(waiting && isNow(waiting)).toBe(true);
    expect(decide(none, { outages: three, lead: 10, input: { atLimit: false } }).order).toBeUndefined();
    // Outages that come too late are no day of their own: the order is for none of them, and is due now.
    const late = decide(outlook({ condemn: 5, contact: 0 }), { outages: [outage('C', 60)], lead: 5 });
    expect(late.order).toMatchObject({ kind: 'order', day: today, outage: 'C' });
  });
  it('nothing where the shelf has all of it today', () => {
    const shelf = (count: number): Plant['shelf'] => [
      {
        liner: use('TwoLayer12'),
        item: 'panels',
        count: { count, origin: origin() },
        counted: { day: today, origin: origin() },
        length: mm(1000),
        origin: origin(),
      },
    ];
    const kind = (works: Partial<Plant>): string | undefined =>
      decide(outlook(slow), { works: { outages: three, ...works } }).order?.kind;
    expect(kind({ leadTimes: [lead(10)], shelf: shelf(4) })).toBe('on the shelf');
    expect(kind({ leadTimes: [lead(10)], shelf: shelf(1) })).toBe('order');
    expect(kind({ leadTimes: [lead(0)] })).toBe('order');
    expect(kind({ shelf: shelf(4) })).toBe('on the shelf');
  });
  it('without an outage so that it is there when the risk passes', () => {
    const { order, passed } = decide(outlook(slow), { lead: 10 });
    expect(order?.kind === 'order' && days(order.day)).toBe((days(passed?.day) ?? NaN) - 10);
  });
});

describe('whether anything has to be decided', () => {
  it('until the end of the last outage, the day itself counted, and as long as that outage is the one to reline at', () => {
    // Passed on day 151: 92 days after the first of the outage at day 59.
    const slower = { condemn: 50 / 150.5, contact: 0 };
    const until = (start: number, end: number): boolean =>
      decide(outlook(slower), { outages: [outage('A', start, end - start)] }).scopes !== undefined;
    expect([until(45, 150), until(45, 151), until(58, 60), until(59, 60)]).toEqual([
      false,
      true,
      false,
      true,
    ]);
    const { plan, chosen, scopes } = decide(outlook(slower), { outages: [outage('A', 59, 1)] });
    expect([plan.kind, chosen?.name, scopes !== undefined]).toEqual(['reline', 'A', true]);
    expect(days(decide(outlook(slow), { outages }).horizon)).toBe(204);
  });
  it('without an outage for a year and a day', () => {
    // A little under 50/366 thousandths a day pass 5 % on day 367, 50/365.5 on day 366.
    expect(days(decide(outlook(slow)).horizon)).toBe(366);
    expect(decide(outlook({ condemn: 49.999 / 366, contact: 0 })).scopes).toBeUndefined();
    expect(decide(outlook({ condemn: 50 / 365.5, contact: 0 })).scopes).toBeDefined();
  });
  it('where not, no options, no scope and no day of supply', () => {
    const found = decide(outlook({ condemn: 0.01, contact: 0 }), { outages, lead: 10 });
    expect(found).toMatchObject({ options: [], scopes: undefined, setting: undefined, earliest: undefined });
    expect([found.missingCosts, found.earliestPart]).toEqual([[], undefined]);
    expect(found.supplies.size).toBe(0);
    // By the lead time alone.
    expect(found.outages.map(({ arrives }) => days(arrives))).toEqual([10, 10, 10]);
  });
});

describe('how soon it could be relined', () => {
  const steady = outlook(slow, slow, [
    panel(1, { condemn: 0.1, contact: 0 }),
    panel(2, { condemn: 3, contact: 0 }),
    panel(3, { condemn: 0.1, contact: 0 }),
    panel(4, { condemn: 0.1, contact: 0 }),
  ]);
  it('the whole conveyor after its lead time, with the chances of that day', () => {
    const { earliest, leadTime } = decide(steady, { outages, lead: 30 });
    expect([days(earliest?.day), earliest?.condemn, earliest?.condemnSeen]).toEqual([30, 0.03, 0.03]);
    expect(earliest?.why).toContain('from an order on 2026-10-31');
    expect(leadTime).toEqual({ days: 30, declared: true });
  });
  it('an expedited lead time is an option, not the earliest', () => {
    const price = {
      dimension: 'money' as const,
      value: 900,
      text: '900 EUR',
      currency: 'EUR',
      origin: origin(),
    };
    const works = {
      outages,
      leadTimes: [lead(30)],
      expedited: [{ item: 'liner' as const, time: hours(10 * 24), price, origin: origin() }],
    };
    const found = decide(steady, { works });
    expect(days(found.earliest?.day)).toBe(30);
    expect(days(found.earliestPart?.day ?? found.earliest?.day)).toBe(30);
    expect(days(found.outages[0]?.arrives)).toBe(30);
  });
  it('from the shelf today', () => {
    const works = {
      outages,
      leadTimes: [lead(30)],
      shelf: [
        {
          liner: use('TwoLayer12'),
          item: 'panels' as const,
          count: { count: 4, origin: origin() },
          counted: { day: today, origin: origin() },
          length: mm(1000),
          origin: origin(),
        },
      ],
    };
    const { earliest, outages: rows } = decide(steady, { works });
    expect(days(earliest?.day)).toBe(0);
    expect(rows.map(({ arrives, orderBy }) => [days(arrives), days(orderBy)])).toEqual([
      [0, 10],
      [0, 90],
      [0, 170],
    ]);
  });
  it('a part of it from the shelf before the whole from its maker', () => {
    const works = {
      outages,
      leadTimes: [lead(30)],
      shelf: [
        {
          liner: use('TwoLayer12'),
          item: 'panels' as const,
          count: { count: 1, origin: origin() },
          counted: { day: today, origin: origin() },
          length: mm(1000),
          origin: origin(),
        },
      ],
    };
    const uneven = outlook(slow, slow, [
      panel(1, { condemn: 0.01, contact: 0 }),
      panel(2, { condemn: 0.01, contact: 0 }),
      panel(3, { condemn: 0.01, contact: 0 }),
      panel(4, { condemn: 3, contact: 0 }),
    ]);
    const { earliest, earliestPart, scopes } = decide(uneven, { works });
    expect(scopes?.works.length).toBeGreaterThan(1);
    expect([days(earliest?.day), days(earliestPart?.day)]).toEqual([30, 0]);
    expect(earliestPart?.scope).toBe(scopes?.works[0]?.work.scope);
  });
  it('nothing says how soon without a lead time', () => {
    const { earliest, leadTime } = decide(steady, { outages });
    expect(earliest).toBeUndefined();
    expect(leadTime).toEqual({ days: 0, declared: false });
  });
});

describe('what governs', () => {
  const likely = { condemn: 3, contact: 0 };
  const unlikely = { condemn: 0.5, contact: 0 };
  const governing = (...panels: readonly PanelOutlook[]): string | undefined =>
    decide(outlook(slow, slow, panels), { outages }).governing?.place;
  it('the panel that is likeliest to reach its limit by the second outage', () => {
    expect(governing(panel(1, unlikely), panel(2, likely), panel(3, unlikely))).toBe('P2');
    // Alike: the first.
    expect(governing(panel(1, likely), panel(2, likely))).toBe('P1');
  });
  it('the one of the point that the report calls governing, where it was seen there', () => {
    const at = (governs: number, seen = true): string | undefined =>
      decide(outlook(slow, slow, [panel(1, unlikely, { seen }), panel(2, likely), panel(3, unlikely)]), {
        outages,
        input: { governs: { name: 'Weld', at: governs } },
      }).governing?.place;
    expect([0, 500, 1000].map((governs) => at(governs))).toEqual(['Weld', 'Weld', 'Weld']);
    expect([at(1001), at(2500), at(500, false), at(9000), at(-1)]).toEqual([
      'Weld',
      'Weld',
      'P2',
      'P2',
      'P2',
    ]);
  });
  it('one that was seen before one that nobody has seen', () => {
    expect(governing(panel(1, unlikely), panel(2, likely, { seen: false }))).toBe('P1');
    expect(governing(panel(1, unlikely, { seen: false }), panel(2, likely, { seen: false }))).toBe('P2');
    expect(governing()).toBeUndefined();
  });
  it('at the second outage, not at the first or the last', () => {
    const early = panel(1, unlikely, { condemnBy: (day) => (day - today >= 40 ? 0.4 : 0) });
    const middle = panel(2, unlikely, { condemnBy: (day) => (day - today >= 120 ? 0.5 : 0) });
    const late = panel(3, unlikely, { condemnBy: (day) => (day - today >= 200 ? 0.6 : 0) });
    expect(governing(early, middle, late)).toBe('P2');
    // With one outage, by its end.
    const found = decide(
      outlook(slow, slow, [
        early,
        panel(2, unlikely, { condemnBy: (day) => (day - today >= 124 ? 0.5 : 0) }),
      ]),
      {
        outages: [outage('Spring', 120, 4)],
      },
    );
    expect(found.governing?.place).toBe('P2');
  });
  it('panels are counted, and those that were seen', () => {
    const found = decide(
      outlook(slow, slow, [panel(1, likely), panel(2, likely, { seen: false }), panel(3, likely)]),
    );
    expect([found.panels, found.panelsSeen]).toEqual([3, 2]);
  });
  it('the chances of any day', () => {
    const found = decide(outlook({ condemn: 1, contact: 0.05 }, { condemn: 0.5, contact: 0.01 }));
    expect(found.today).toEqual({ condemn: 0, contact: 0, condemnSeen: 0, contactSeen: 0 });
    expect(found.chancesOn(addDays(today, 100))).toMatchObject({ condemn: 0.1, condemnSeen: 0.05 });
  });
});

describe('jobs that are written already', () => {
  const made = line([4], [10, 60], {
    access: [everywhere],
    plant: plant({ outages, leadTimes: [lead(30)] }),
  });
  const other = line([4], [10, 60], { name: 'L2' });
  const window = (from: number, to: number) => ({
    from: { day: addDays(today, from), origin: origin() },
    to: { day: addDays(today, to), origin: origin() },
    origin: origin(),
  });
  const jobs = [
    job(made, ['all'], { name: 'Over', window: window(-9, -1), crews: [crew('A')] }),
    job(made, ['all'], { name: 'Today', window: window(-9, 0) }),
    job(made, ['panels 1 to 2 of run 1'], { name: 'Some', window: window(30, 33) }),
    job(made, ['panels 3 to 4 of run 1'], { name: 'Others', window: window(29, 33) }),
    job(made, ['all'], { name: 'Open' }),
    job(other, ['all'], { name: 'Elsewhere' }),
  ];
  const of = (wear: WearOutlook): readonly (readonly unknown[])[] =>
    decideConveyor({
      estate: { ...estate({ conveyors: [made, other] }), jobs },
      conveyor: made,
      liner: made.liner,
      outlook: wear,
      newLife: undefined,
      gauge: 0.3,
    }).jobs.map(({ job: name, covers, arrives }) => [name, covers, arrives?.inTime]);
  it('whether they cover what governs, and whether the liner comes in time: not those that are over', () => {
    // Panel 2 governs, the liner comes on day 30.
    const panels = [panel(1, slow), panel(2, { condemn: 3, contact: 0 }), panel(3, slow), panel(4, slow)];
    expect(of(outlook(slow, slow, panels))).toEqual([
      ['Today', true, false],
      ['Some', true, true],
      ['Others', false, false],
      ['Open', true, undefined],
    ]);
  });
  it('where nothing is due nothing governs', () => {
    expect(of(outlook({ condemn: 0.01, contact: 0 })).map(([, covers]) => covers)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

test('a date is told as it is written', () =>
  expect(formatDay(decide(outlook(slow)).passed?.day ?? today)).toBe('2026-12-21'));
