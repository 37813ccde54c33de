// Which conveyor comes first, what is to be done and why: tables of what is known of a conveyor and what follows. The day of
// the report is 2026-10-31 unless told. Texts are pinned whole, because fitters and planners act on them.

import { describe, expect, test } from 'vitest';
import { planFor } from '../../../src/domain/decision/conveyor-plan.js';
import type { Outage } from '../../../src/domain/model/plant.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { formatDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import type { ConveyorDecision } from '../../../src/domain/decision/conveyor-decision.js';
import type { OutageDecision } from '../../../src/domain/decision/outage-decision.js';
import { orderOfAttention, type Unsorted } from '../../../src/generators/remaining-life/parts/attention.js';
import type { ConveyorModel, Stray } from '../../../src/generators/remaining-life/parts/model.js';
import type { PointLife } from '../../../src/generators/remaining-life/parts/points.js';
import type { PanelLife } from '../../../src/generators/remaining-life/parts/runs.js';
import { remainingLife, type Attention } from '../../../src/generators/remaining-life/remaining-life.js';
import { calendarDay, conveyor, estate, on, origin, plant } from '../../kit/estate.js';

const today = calendarDay('2026-10-31');

const [real] = (() => {
  const of = conveyor();
  const looks = [{ conveyor: of, date: '2026-10-31', meter: 8000, rows: { P1: 8, P2: 9 } }];
  return remainingLife(estate({ conveyors: [of], looks }), { track: false }).conveyors;
})();
const realPoint = real?.points[0];
const realModel = real?.model;
if (!realPoint?.model || !realModel) throw new Error('a conveyor with a look has a model');
const realPointModel = realPoint.model;
const realDecision = real.decision;
if (!realDecision) throw new Error('a conveyor with a look has a row in the table of decisions');

/** A conveyor with one point seen, nothing worn, nothing due and no model. */
function life(facts: Partial<Unsorted> = {}, name = 'DG1', outages: readonly Outage[] = []): Unsorted {
  const of = conveyor({ name, plant: plant({ outages }) });
  const [made] = remainingLife(estate({ conveyors: [of] }), { depth: 'hand' }).conveyors;
  if (!made) throw new Error('one conveyor in, one out');
  return { ...made, worst: undefined, model: undefined, runs: [], points: [point('P1')], ...facts };
}

function point(name: string, facts: Partial<PointLife> = {}): PointLife {
  if (!realPoint) throw new Error('made above');
  return {
    ...realPoint,
    place: { ...realPoint.place, name },
    model: undefined,
    state: 'thickness',
    hand: { kind: 'no reading' },
    colours: { kind: 'nothing seen' },
    limitByHand: undefined,
    nextLook: undefined,
    pastLimit: undefined,
    ...facts,
  };
}

const steel = point('P1', { pastLimit: 'trough shows', state: 'colour' });
const atLimit = point('P1', {
  pastLimit: 'at the limit',
  hand: {
    kind: 'at the limit',
    last: { exposure: 8000, thickness: 2.8 },
    longTerm: 1.15e-3,
    shortTerm: { kind: 'one reading' },
    below: 0.2,
  },
});
const worn = point('P1', {
  hand: {
    kind: 'rate',
    last: { exposure: 8000, thickness: 8.44 },
    longTerm: 0.45e-3,
    shortTerm: { kind: 'one reading' },
    ruling: 0.45e-3,
    rules: 'long-term',
    remaining: 12_000,
    nextInspection: 6000,
  },
});

interface Dates {
  /** Middle of the forecast. */
  readonly middle?: string;
  readonly look?: ConveyorModel['look'];
}
/** What the model says where it gives dates. */
function model({ middle, look }: Dates): ConveyorModel {
  const day = middle === undefined ? undefined : calendarDay(middle);
  if (realModel?.forecast.kind !== 'dates') throw new Error('made above');
  return {
    ...realModel,
    forecast: { ...realModel.forecast, days: { q05: day, q10: day, q50: day, q90: day, q95: day } },
    look: look ?? { kind: 'by', day: calendarDay('2027-06-01'), because: 'the declared risk', chance: 0.01 },
  };
}
const silent = (forecast: ConveyorModel['forecast']): ConveyorModel => ({ ...model({}), forecast });

const chances = { condemn: 0.02, contact: 0.001, condemnSeen: 0.01, contactSeen: 0.0005 };
const outage = (
  name: string,
  from: string,
  orderBy: string,
  facts: Partial<OutageDecision> = {},
): OutageDecision => ({
  name,
  from: calendarDay(from),
  to: calendarDay(from),
  ...chances,
  within: true,
  arrives: calendarDay('2027-01-09'),
  reachable: true,
  orderBy: calendarDay(orderBy),
  orderIsLate: false,
  ...facts,
});
const spring = outage('Spring27', '2027-04-12', '2027-02-01');
const autumn = outage('Autumn27', '2027-09-13', '2027-07-05');
/** A row with both outages, every panel seen, accepted 5 % and 0.5 %; `passed`: the day on which the limit's risk is. */
function decided(facts: Partial<ConveyorDecision> & { readonly on?: string } = {}): ConveyorDecision {
  if (!realDecision) throw new Error('made above');
  const { on, ...rest } = facts;
  const day = on === undefined ? undefined : calendarDay(on);
  const made: ConveyorDecision = {
    ...realDecision,
    asOf: today,
    panels: 5,
    panelsSeen: 5,
    accepted: { condemn: 0.05, contact: 0.005, contactAssumed: false },
    passed: day === undefined ? undefined : { day, by: 'condemn limit' },
    passedSeen: day,
    passedSeenBy: day === undefined ? undefined : 'condemn limit',
    today: { condemn: 0.002, contact: 0, condemnSeen: 0.002, contactSeen: 0 },
    outages: [spring, autumn],
    chosen: undefined,
    chosenBySeen: undefined,
    earliest: undefined,
    earliestPart: undefined,
    ruledOut: undefined,
    scopes: undefined,
    ...rest,
  };
  const { passed, passedSeen, chosen, chosenBySeen, outages } = made;
  return {
    ...made,
    plan: planFor({ asOf: today, outages, passed: passed?.day, passedSeen, chosen, chosenBySeen }),
  };
}
const planned = (name: string, from: string): Outage => ({
  name,
  from: on(from),
  to: on(from),
  origin: origin(),
  nameOrigin: origin(),
});

function attention(of: Unsorted, asOf: CalendarDay | undefined = today): Attention {
  const [found] = orderOfAttention([of], asOf);
  if (!found) throw new Error('one in, one out');
  return found.attention;
}
const said = (of: Unsorted, asOf?: CalendarDay): readonly [string, string] => {
  const { level, todo } = attention(of, asOf);
  return [level, todo];
};

describe('what is to be done', () => {
  const within = {
    model: model({ middle: '2028-01-15' }),
    decision: decided({ on: '2027-05-20', chosen: spring }),
  };
  const soonest = {
    day: calendarDay('2027-01-09'),
    scope: 'the whole conveyor',
    why: 'liner 10 week',
    ...chances,
  };
  test.each<readonly [string, Unsorted, string, string]>([
    [
      'steel shows, whatever else is known',
      life({ worst: steel, points: [steel], ...within }),
      'worn through',
      'Look at the trough, patch it where the screw has cut in, and reline',
    ],
    [
      'the last thickness is at the limit',
      life({ worst: atLimit, ...within }),
      'past the limit',
      'Reline at the first chance; do not wait for a planned outage without a competent person’s leave',
    ],
    [
      'the model has seen a place at its limit',
      life({ worst: worn, model: silent({ kind: 'reached', names: ['P1'], passed: undefined }) }),
      'past the limit',
      'Reline at the first chance; do not wait for a planned outage without a competent person’s leave',
    ],
    [
      'an outage within the risk, and a later one beyond it',
      life({ worst: worn, ...within }),
      'reline to plan',
      'Reline at Spring27 (2027-04-12)',
    ],
    [
      'the last outage is within the risk, which is passed 92 days after it: soon',
      life({ worst: worn, decision: decided({ on: '2027-12-14', chosen: autumn }) }),
      'reline to plan',
      'Reline at Autumn27 (2027-09-13)',
    ],
    [
      'the last outage is within the risk, which is passed 93 days after it: not soon',
      life({ worst: worn, decision: decided({ on: '2027-12-15', chosen: autumn }) }),
      'in order',
      'Nothing to reline up to Autumn27',
    ],
    [
      'the last outage is within the risk, which is never passed',
      life({ worst: worn, decision: decided({ chosen: autumn }) }),
      'in order',
      'Nothing to reline up to Autumn27',
    ],
    [
      'a conveyor whose limit nothing can be said of',
      life({ worst: worn, model: silent({ kind: 'cannot say', why: 'no duty' }) }),
      'in order',
      'Nothing due',
    ],
    [
      'only what nobody has seen stands against an outage: reline by what was seen, and look',
      life({
        worst: worn,
        decision: decided({
          on: '2026-10-31',
          passedSeen: calendarDay('2027-05-20'),
          panelsSeen: 3,
          chosenBySeen: spring,
        }),
      }),
      'reline to plan',
      'Reline at Spring27 (2027-04-12) by what was seen, and look now at the 2 panels never seen',
    ],
    [
      'only one panel that nobody has seen stands against the last outage, and what was seen lasts long',
      life({
        worst: worn,
        decision: decided({
          on: '2026-10-31',
          passedSeen: calendarDay('2029-05-20'),
          panelsSeen: 4,
          chosenBySeen: autumn,
        }),
      }),
      'look now',
      'Look now at the panel never seen',
    ],
    [
      'no outage is early enough: how soon it could be relined at all',
      life({ worst: worn, decision: decided({ on: '2027-03-01', earliest: soonest }) }),
      'no outage in time',
      'No planned outage is early enough, and it cannot be relined before 2027-01-09',
    ],
    [
      'no outage is early enough, and the liner lies on the shelf',
      life({ worst: worn, decision: decided({ on: '2027-03-01', earliest: { ...soonest, day: today } }) }),
      'no outage in time',
      'No planned outage is early enough; the liner is on the shelf',
    ],
    [
      'no outage is early enough, and nothing says how long a liner takes',
      life({ worst: worn, decision: decided({ on: '2026-10-31' }) }),
      'no outage in time',
      'No planned outage is early enough, and no lead time says how soon it could be relined',
    ],
    [
      'no outage is declared, and the risk is passed within 366 days',
      life({ worst: worn, decision: decided({ on: '2027-11-01', outages: [], earliest: soonest }) }),
      'no outage in time',
      'No outage is declared, and it cannot be relined before 2027-01-09',
    ],
    [
      'no outage is declared, and the risk is passed later',
      life({ worst: worn, decision: decided({ on: '2027-11-02', outages: [] }) }),
      'in order',
      'Nothing due',
    ],
    [
      'no outage is declared and the risk is never passed',
      life({ worst: worn, decision: decided({ outages: [] }) }),
      'in order',
      'Nothing due',
    ],
    [
      'the model asks for a look',
      life({
        worst: worn,
        model: model({ look: { kind: 'now', because: 'the declared risk', chance: 0.07 } }),
      }),
      'look now',
      'Look again now',
    ],
    [
      'half the life by hand is over',
      life({
        worst: worn,
        points: [worn, point('P2', { nextLook: { day: calendarDay('2026-09-01'), overdue: true } })],
      }),
      'look now',
      'Look again now',
    ],
    [
      'half the life by hand is over, and the model gives dates: its chance says when to look',
      life({
        worst: worn,
        model: model({}),
        points: [worn, point('P2', { nextLook: { day: calendarDay('2026-09-01'), overdue: true } })],
      }),
      'in order',
      'Nothing due',
    ],
    [
      'the next look is still to come',
      life({
        worst: worn,
        points: [point('P2', { nextLook: { day: calendarDay('2026-12-01'), overdue: false } })],
      }),
      'in order',
      'Nothing due',
    ],
    [
      'seen, but no rate follows',
      life(),
      'not enough seen',
      'Look again: the records do not say how fast it wears',
    ],
    [
      'nothing was ever seen and nothing is near',
      life({
        points: [point('P1', { state: 'none' }), point('P2', { state: 'not seen' })],
        model: model({}),
      }),
      'not enough seen',
      'Inspect: nothing of the present liner was ever seen',
    ],
    [
      'nothing was ever seen, and what the others lend is near: a reason to look, never to reline',
      life({
        points: [point('P1', { state: 'none' })],
        ...within,
      }),
      'look now',
      'Inspect now: nothing of the present liner was ever seen, and going by the others its limit may come before the last planned outage',
    ],
    [
      'one point seen by its colour is enough to plan',
      life({
        points: [point('P1', { state: 'none' }), point('P2', { state: 'colour' })],
        ...within,
      }),
      'reline to plan',
      'Reline at Spring27 (2027-04-12)',
    ],
  ])('%s', (_, of, level, todo) => {
    expect(said(of)).toEqual([level, todo]);
  });
});

describe('by hand, where the model gives no date', () => {
  const outages = [planned('Spring27', '2027-04-12'), planned('Autumn27', '2027-09-13')];
  const limit = (day: string, by: 'rate' | 'colour' = 'rate', name = 'P1'): PointLife =>
    point(name, { limitByHand: { day: calendarDay(day), by } });
  test.each<readonly [string, readonly PointLife[], readonly Outage[], string, string]>([
    [
      'between two outages: at the earlier',
      [limit('2027-06-01')],
      outages,
      'reline to plan',
      'Reline at Spring27 (2027-04-12) at the latest: by hand the limit comes 2027-06-01',
    ],
    [
      'between two outages that are written the other way round',
      [limit('2027-06-01')],
      [...outages].reverse(),
      'reline to plan',
      'Reline at Spring27 (2027-04-12) at the latest: by hand the limit comes 2027-06-01',
    ],
    [
      'after two outages and before a third: at the second',
      [limit('2027-10-01')],
      [planned('Spring28', '2028-04-10'), ...outages],
      'reline to plan',
      'Reline at Autumn27 (2027-09-13) at the latest: by hand the limit comes 2027-10-01',
    ],
    [
      'after two outages that are written the other way round: at the second',
      [limit('2027-10-01')],
      [planned('Spring28', '2028-04-10'), ...[...outages].reverse()],
      'reline to plan',
      'Reline at Autumn27 (2027-09-13) at the latest: by hand the limit comes 2027-10-01',
    ],
    [
      'of two points with the same day the first is named',
      [limit('2026-10-31', 'colour', 'P4'), limit('2026-10-31', 'colour', 'P5')],
      outages,
      'look now',
      'Measure at P4 now: by its colour the limit may be reached already',
    ],
    [
      'on the first day of the last outage',
      [limit('2027-09-13')],
      outages,
      'reline to plan',
      'Reline at Autumn27 (2027-09-13) at the latest: by hand the limit comes 2027-09-13',
    ],
    [
      'before any outage',
      [limit('2027-04-11')],
      outages,
      'no outage in time',
      'Reline before 2027-04-11: by hand the limit comes 2027-04-11, before any planned outage',
    ],
    ['after the last outage', [limit('2027-09-14')], outages, 'in order', 'Nothing due'],
    ['no outage is planned', [limit('2027-04-11')], [], 'in order', 'Nothing due'],
    [
      'an outage that is over is none',
      [limit('2026-11-20')],
      [planned('Autumn26', '2026-10-30'), ...outages],
      'no outage in time',
      'Reline before 2026-11-20: by hand the limit comes 2026-11-20, before any planned outage',
    ],
    [
      'an outage that starts on the day of the report counts',
      [limit('2026-11-20')],
      [planned('Autumn26', '2026-10-31'), ...outages],
      'reline to plan',
      'Reline at Autumn26 (2026-10-31) at the latest: by hand the limit comes 2026-11-20',
    ],
    [
      'the earliest of several points rules',
      [limit('2028-06-01'), limit('2027-06-01', 'rate', 'P2'), limit('2027-08-01', 'rate', 'P3')],
      outages,
      'reline to plan',
      'Reline at Spring27 (2027-04-12) at the latest: by hand the limit comes 2027-06-01',
    ],
    [
      'a colour is a bound, and says so',
      [limit('2027-06-01', 'colour')],
      outages,
      'reline to plan',
      'Reline at Spring27 (2027-04-12) at the latest: by hand the limit comes as early as 2027-06-01',
    ],
    [
      'a colour whose bound is today is to be measured, not relined',
      [limit('2026-10-31', 'colour', 'P4')],
      outages,
      'look now',
      'Measure at P4 now: by its colour the limit may be reached already',
    ],
    [
      'a colour whose bound is tomorrow is no reason to measure now',
      [limit('2026-11-01', 'colour', 'P4')],
      outages,
      'no outage in time',
      'Reline before 2026-11-01: by hand the limit comes as early as 2026-11-01, before any planned outage',
    ],
  ])('%s', (_, points, known, level, todo) => {
    expect(said(life({ worst: worn, points }, 'DG1', known))).toEqual([level, todo]);
  });

  test('a model that gives no dates leaves it to the hand', () => {
    const of = life(
      { worst: worn, points: [limit('2027-06-01')], model: silent({ kind: 'cannot say', why: 'no duty' }) },
      'DG1',
      outages,
    );
    expect(said(of)[0]).toBe('reline to plan');
    expect(attention(of).day).toBe(calendarDay('2027-06-01'));
    expect(attention(of).outage).toBeUndefined();
  });

  test('without a day of the report every outage counts, and a colour is to be measured', () => {
    const at = (by: 'rate' | 'colour'): string => {
      const [found] = orderOfAttention(
        [
          life({ worst: worn, points: [limit('2020-06-01', by)] }, 'DG1', [
            planned('Old', '2019-04-12'),
            planned('Later', '2020-09-12'),
          ]),
        ],
        undefined,
      );
      return found?.attention.todo ?? '';
    };
    expect(at('rate')).toBe('Reline at Old (2019-04-12) at the latest: by hand the limit comes 2020-06-01');
    expect(at('colour')).toBe('Measure at P1 now: by its colour the limit may be reached already');
  });
});

describe('the outage that the liner is ordered for', () => {
  const orderBy = (decision: ConveyorDecision): readonly [string, boolean] | undefined => {
    const { outage: chosen } = attention(life({ worst: worn, decision }));
    return chosen && [formatDay(chosen.orderBy), chosen.orderIsLate];
  };
  test('a planned one keeps its own last day to order', () => {
    const late = outage('Spring27', '2027-04-12', '2026-10-30', { orderIsLate: true });
    expect(orderBy(decided({ on: '2027-05-20', chosen: late }))).toEqual(['2026-10-30', true]);
  });
  test('none in time: for the first that the liner can reach, else for the last', () => {
    const tooSoon = outage('Spring27', '2027-04-12', '2027-02-01', { reachable: false });
    expect(orderBy(decided({ on: '2027-03-01', outages: [tooSoon, autumn] }))).toEqual(['2027-07-05', false]);
    expect(orderBy(decided({ on: '2027-03-01' }))).toEqual(['2027-02-01', false]);
    expect(orderBy(decided({ on: '2027-03-01', outages: [tooSoon] }))).toEqual(['2027-02-01', false]);
  });
  test('nothing to order where nothing is planned', () => {
    expect(orderBy(decided())).toBeUndefined();
    expect(attention(life({ worst: steel })).outage).toBeUndefined();
  });
});

describe('why no outage is in time', () => {
  test('says the chances of the earliest day, of all and of what was seen, and when the risk is passed', () => {
    const soonest = {
      day: calendarDay('2027-01-09'),
      scope: 'the whole conveyor',
      why: 'liner 10 week',
      condemn: 0.62,
      contact: 0.077,
      condemnSeen: 0.23,
      contactSeen: 0.0004,
    };
    const decision = decided({
      on: '2026-10-31',
      passedSeen: calendarDay('2026-12-17'),
      panelsSeen: 3,
      earliest: soonest,
    });
    expect(attention(life({ worst: worn, decision })).reasons.slice(0, 2)).toEqual([
      'by 2027-01-09 the limit is reached with a chance of 62 % (of what was seen 23 %), steel with 7.7 % (of what was seen < 0.1 %); liner 10 week',
      'the accepted risk of 5 % is passed by what was seen on 2026-12-17, before Spring27 (2027-04-12)',
    ]);
  });
  test('the risk that is passed is the one that is named: steel has its own', () => {
    const decision = decided({ on: '2026-10-31', passedSeenBy: 'steel' });
    expect(attention(life({ worst: worn, decision })).reasons[0]).toBe(
      'the accepted risk of steel, 0.5 %, is passed today',
    );
  });
  test('a risk that is passed today says so', () => {
    expect(attention(life({ worst: worn, decision: decided({ on: '2026-10-31' }) })).reasons[0]).toBe(
      'the accepted risk of 5 % is passed today',
    );
  });
});

describe('the order', () => {
  const names = (...lives: readonly Unsorted[]): readonly string[] =>
    orderOfAttention(lives, today).map((each) => each.conveyor.name);
  const due = (risk: string): Pick<Unsorted, 'model' | 'decision'> => ({
    model: model({ middle: risk }),
    decision: decided({ on: risk, chosen: spring }),
  });

  test('goes by how bad it is, not by the alphabet', () => {
    const inOrder = life({ worst: worn }, 'A1');
    const notEnough = life({}, 'B2');
    const lookNow = life(
      { worst: worn, model: model({ look: { kind: 'now', because: 'the declared risk', chance: 0.1 } }) },
      'C3',
    );
    const plan = life({ worst: worn, ...due('2027-05-20') }, 'D4');
    const noOutage = life({ worst: worn, decision: decided({ on: '2027-03-01' }) }, 'E5');
    const past = life({ worst: atLimit }, 'F6');
    const through = life({ worst: steel }, 'G7');
    const expected = ['G7', 'F6', 'E5', 'D4', 'C3', 'B2', 'A1'];
    expect(names(inOrder, notEnough, lookNow, plan, noOutage, past, through)).toEqual(expected);
    expect(names(through, past, noOutage, plan, lookNow, notEnough, inOrder)).toEqual(expected);
  });
  test('within a level by the earlier date, one without a date last, then by name', () => {
    const at = (name: string, middle?: string): Unsorted =>
      life(
        {
          worst: worn,
          model: model(middle ? { middle } : {}),
          decision: decided({ on: '2027-05-20', chosen: spring }),
        },
        name,
      );
    expect(names(at('A', '2028-03-01'), at('B'), at('C', '2028-01-01'), at('D', '2028-02-01'))).toEqual([
      'C',
      'D',
      'A',
      'B',
    ]);
    expect(names(at('X', '2028-01-01'), at('B', '2028-01-01'), at('M', '2028-01-01'))).toEqual([
      'B',
      'M',
      'X',
    ]);
    expect(names(at('X'), at('B'), at('M'))).toEqual(['B', 'M', 'X']);
  });
  test('the date is the middle of the forecast, else the earliest limit by hand', () => {
    expect(attention(life({ worst: worn, model: model({ middle: '2028-01-15' }) })).day).toBe(
      calendarDay('2028-01-15'),
    );
    const byHand = point('P1', { limitByHand: { day: calendarDay('2027-06-01'), by: 'rate' } });
    expect(attention(life({ worst: worn, points: [byHand], model: model({}) })).day).toBe(
      calendarDay('2027-06-01'),
    );
    expect(attention(life({ worst: worn })).day).toBeUndefined();
  });
});

describe('why', () => {
  const why = (facts: Partial<Unsorted>): readonly string[] => attention(life(facts)).reasons;
  const look = (day: string, overdue = true) => ({ nextLook: { day: calendarDay(day), overdue } });
  const panel = (state: PanelLife['state']): PanelLife => ({
    number: 1,
    from: 0,
    to: 1200,
    points: [],
    worst: undefined,
    state,
    lastSeen: undefined,
  });
  const run = (...panels: readonly PanelLife[]): Unsorted['runs'][number] => ({
    run: { number: 1, label: 'run 1', from: 0, to: 1200 } as Unsorted['runs'][number]['run'], // no break is read here
    panels,
    recorded: false,
    worst: undefined,
  });
  const stray = (day: string, weight: number): Stray => ({
    row: 0,
    day: calendarDay(day),
    thickness: 5,
    expected: 8,
    weight,
  });
  const strays = (name: string, ...list: readonly Stray[]): PointLife =>
    point(name, { model: { ...realPointModel, strays: list } });

  test.each<readonly [string, Partial<Unsorted>, readonly string[]]>([
    ['nothing to say', {}, []],
    ['steel', { worst: steel }, ['P1: steel shows, the liner is worn through']],
    ['at the limit', { worst: atLimit }, ['P1: 2.8 mm left, the limit is 3.0 mm']],
    ['worn', { worst: worn }, ['P1: 8.4 mm left of 12.0 mm, limit 3.0 mm']],
    [
      'by colour',
      {
        worst: point('P3', {
          colours: {
            kind: 'between',
            last: { exposure: 7000, layer: 1 },
            lowRate: 6 / 7000,
            highRate: 6 / 5000,
            leastThickness: 3.6,
            mostThickness: 6,
            leastLife: 3000,
            mostLife: 6000,
          },
        }),
      },
      ['P3: by colour 3.6 to 6.0 mm left'],
    ],
    [
      'colour of the first layer only',
      {
        worst: point('P3', {
          colours: {
            kind: 'at most',
            last: { exposure: 7000, layer: 0 },
            highRate: 6 / 7000,
            leastThickness: 6,
            leastLife: 3000,
          },
        }),
      },
      [],
    ],
    [
      'one look overdue',
      { points: [point('P1', look('2026-08-01')), point('P2', look('2026-12-01', false))] },
      ['the next look is overdue at P1, since 2026-08-01'],
    ],
    [
      'several looks overdue: since the oldest',
      {
        points: [
          point('P1', look('2026-08-01')),
          point('P2', look('2026-06-01')),
          point('P3', look('2026-07-01')),
        ],
      },
      ['the next look is overdue at 3 points, since 2026-06-01'],
    ],
    [
      'some never seen',
      { points: [point('P1'), point('P2', { state: 'none' }), point('P3', { state: 'not seen' })] },
      ['P2, P3 never seen on the present liner'],
    ],
    ['none ever seen: the level says so already', { points: [point('P1', { state: 'none' })] }, []],
    [
      'four never seen are named',
      { points: [point('P0'), ...['P1', 'P2', 'P3', 'P4'].map((name) => point(name, { state: 'none' }))] },
      ['P1, P2, P3, P4 never seen on the present liner'],
    ],
    [
      'five are counted',
      {
        points: [
          point('P0'),
          ...['P1', 'P2', 'P3', 'P4', 'P5'].map((name) => point(name, { state: 'none' })),
        ],
      },
      ['5 points never seen on the present liner'],
    ],
    [
      'panels without a reading',
      { runs: [run(panel('seen'), panel('not inspected')), run(panel('not seen'))] },
      ['2 of 3 panels have no reading'],
    ],
    ['every panel read', { runs: [run(panel('seen'), panel('seen'))] }, []],
    [
      'one stray reading; one that counts half is none',
      { points: [strays('P1', stray('2026-03-01', 0.49), stray('2026-04-01', 0.5))] },
      ['a reading strays from the rest: P1 on 2026-03-01'],
    ],
    [
      'four stray readings',
      {
        points: [
          strays('P1', stray('2026-03-01', 0.1), stray('2026-04-01', 0.1)),
          strays('P2', stray('2026-03-01', 0.1), stray('2026-04-01', 0.1)),
        ],
      },
      [
        '4 readings stray from the rest: P1 on 2026-03-01, P1 on 2026-04-01, P2 on 2026-03-01, P2 on 2026-04-01',
      ],
    ],
    [
      'more than four',
      {
        points: [
          strays(
            'P1',
            ...['2026-03-01', '2026-03-02', '2026-03-03', '2026-03-04', '2026-03-05'].map((d) =>
              stray(d, 0.1),
            ),
          ),
        ],
      },
      [
        '5 readings stray from the rest: P1 on 2026-03-01, P1 on 2026-03-02, P1 on 2026-03-03, P1 on 2026-03-04 and more',
      ],
    ],
  ])('%s', (_, facts, reasons) => {
    expect(why(facts)).toEqual(reasons);
  });

  test('what is odd in the records comes last, without its full stop', () => {
    const bare = conveyor({ commissioned: undefined as never }); // left out: nothing says since when it runs
    const history = historyOf(estate({ conveyors: [bare] }), bare);
    expect(history.remarks.length).toBeGreaterThan(0);
    const odd = 'The reading 8120.5 h of 2026-03-14 (inspection) was set aside.';
    expect(why({ history: { ...history, remarks: [odd] } })).toEqual([odd.slice(0, -1)]);
    expect(why({ worst: worn, history })).toEqual([
      'P1: 8.4 mm left of 12.0 mm, limit 3.0 mm',
      ...history.remarks.map((remark) => remark.slice(0, -1)),
    ]);
  });
});

describe('the trough itself', () => {
  const trough = (facts: object): Pick<Unsorted, 'trough'> => ({
    trough: { ...life().trough, ...facts } as Unsorted['trough'], // what is read of it
  });
  const reasons = (facts: object): readonly string[] => attention(life(trough(facts))).reasons;
  const thin = (at: number, belowMinimum: boolean): object => ({ at, belowMinimum });

  test('a plate at its minimum stops the machine, whatever else is known', () => {
    const places = [thin(3200, true), thin(5000, false), thin(7000, true)];
    const found = attention(life({ worst: steel, points: [steel], ...trough({ places }) }));
    expect([found.level, found.todo]).toEqual([
      'worn through',
      'Stop, and patch the trough: its plate is at the minimum',
    ]);
    expect(reasons({ places })).toEqual(['the plate is at its minimum at 3.20 m, 7.00 m']);
    expect(reasons({ places: [thin(3200, false)] })).toEqual([]);
    expect(said(life({ worst: worn, ...trough({ places: [thin(3200, false)] }) }))[0]).toBe('in order');
  });

  test('steel that is bare since a panel fell out is a reason; what is covered again, or worn bare, is not', () => {
    const bare = (from: number, to: number, facts: object = {}): object => ({
      from,
      to,
      until: undefined,
      because: 'panel missing',
      ...facts,
    });
    const spans = [
      bare(1000, 2200),
      bare(3000, 4000, { until: today }),
      bare(5000, 6000, { because: 'worn through' }),
      bare(7000, 8200),
    ];
    expect(reasons({ spans })).toEqual([
      'steel is bare from 1.00 to 2.20 m, 7.00 to 8.20 m: a panel is missing',
    ]);
  });
});

describe('open conditions', () => {
  const open = (what: string, severity: string): Unsorted['conditions'][number] =>
    ({ what, severity, since: today, lastSeen: today }) as unknown as Unsorted['conditions'][number]; // what is read of it
  test('what is urgent is put right now', () => {
    expect(
      said(life({ worst: worn, conditions: [open('bolt loose', 'minor'), open('panel torn', 'urgent')] })),
    ).toEqual(['look now', 'Put right what is urgent']);
    expect(said(life({ worst: worn, conditions: [open('bolt loose', 'minor')] }))[0]).toBe('in order');
  });
  test('one is named, of several the worst', () => {
    const one = attention(
      life({ worst: worn, conditions: [open('panel torn at 14.2 m', 'urgent')] }),
    ).reasons;
    expect(one.find((each) => each.includes('torn'))).toMatch(/: panel torn at 14.2 m$/);
    const two = attention(
      life({
        worst: worn,
        conditions: [open('panel torn at 14.2 m', 'urgent'), open('bolt loose', 'minor')],
      }),
    ).reasons;
    expect(two.find((each) => each.includes('torn'))).toMatch(/, panel torn at 14.2 m among them$/);
  });
});

describe('what nobody has seen, in words', () => {
  const because = (facts: Partial<ConveyorDecision>): string | undefined =>
    attention(
      life({
        worst: worn,
        decision: decided({ on: '2026-10-31', chosenBySeen: spring, panelsSeen: 3, ...facts }),
      }),
    ).reasons[0];
  test.each<[string, Partial<ConveyorDecision>, string]>([
    [
      'by the first outage, while the chance of today is accepted',
      { passedSeen: calendarDay('2027-05-20') },
      'counting them in, the chance of the limit is 2.0 % by Spring27 (2027-04-12), by what was seen 1.0 %',
    ],
    [
      'one panel',
      { panelsSeen: 4 },
      'counting it in, the chance of the limit is 2.0 % by Spring27 (2027-04-12), by what was seen 1.0 %',
    ],
    [
      'today, where it is more than is accepted',
      { today: { condemn: 0.08, contact: 0, condemnSeen: 0.03, contactSeen: 0 } },
      'counting them in, the chance of the limit is 8.0 % by 2026-10-31, by what was seen 3.0 %',
    ],
    [
      'just what is accepted is not more',
      { today: { condemn: 0.05, contact: 0, condemnSeen: 0.03, contactSeen: 0 } },
      'counting them in, the chance of the limit is 2.0 % by Spring27 (2027-04-12), by what was seen 1.0 %',
    ],
    [
      'where nothing was seen nothing is said of it',
      { today: { condemn: 0.08, contact: 0, condemnSeen: undefined, contactSeen: undefined } },
      'counting them in, the chance of the limit is 8.0 % by 2026-10-31',
    ],
  ])('%s', (_, facts, expected) => {
    expect(because(facts)).toBe(expected);
  });
  test('stands too where a look is all there is to do', () => {
    expect(because({ chosenBySeen: autumn, passedSeen: calendarDay('2029-05-20') })).toBe(
      'counting them in, the chance of the limit is 2.0 % by Spring27 (2027-04-12), by what was seen 1.0 %',
    );
  });
  test('a reline by what was seen at the last outage, where its risk passes soon after', () => {
    const at = (day: string): string =>
      said(
        life({
          worst: worn,
          decision: decided({
            on: '2026-10-31',
            chosenBySeen: autumn,
            panelsSeen: 3,
            passedSeen: calendarDay(day),
          }),
        }),
      )[0];
    expect([at('2027-12-14'), at('2027-12-15')]).toEqual(['reline to plan', 'look now']);
  });
});

describe('why no outage is in time, at its borders', () => {
  const soonest = { day: today, scope: 'the whole conveyor', why: 'from the shelf', ...chances };
  const reasons = (facts: Parameters<typeof decided>[0]): readonly string[] =>
    attention(life({ worst: worn, decision: decided({ on: '2027-03-01', ...facts }) })).reasons.slice(0, 2);
  test('today, with every panel seen: no word of what was seen, nor where the day comes from', () => {
    expect(reasons({ earliest: soonest })).toEqual([
      'by today the limit is reached with a chance of 2.0 %, steel with 0.1 %',
      'the accepted risk of 5 % is passed on 2027-03-01, before Spring27 (2027-04-12)',
    ]);
  });
  test('nothing was seen: the chances of all alone', () => {
    const blind = { ...soonest, condemnSeen: undefined, contactSeen: undefined };
    expect(reasons({ earliest: blind, panelsSeen: 0 })[0]).toBe(
      'by today the limit is reached with a chance of 2.0 %, steel with 0.1 %',
    );
  });
  test('passed on the day of the outage, and after it, it is not before it', () => {
    expect(reasons({ on: '2027-04-12' })[0]).toBe('the accepted risk of 5 % is passed on 2027-04-12');
    expect(reasons({ on: '2027-05-12' })[0]).toBe('the accepted risk of 5 % is passed on 2027-05-12');
    const far = outage('Spring27', '2027-04-12', '2027-02-01', { reachable: false });
    expect(reasons({ outages: [far] })[0]).toBe('the accepted risk of 5 % is passed on 2027-03-01');
  });
  test('by what was seen on another day than by all', () => {
    expect(reasons({ passedSeen: calendarDay('2027-03-20') })[0]).toBe(
      'the accepted risk of 5 % is passed by what was seen on 2027-03-20, before Spring27 (2027-04-12)',
    );
    expect(reasons({ passedSeen: undefined })[0]).toBe(
      'the accepted risk of 5 % is passed on 2027-03-01, before Spring27 (2027-04-12)',
    );
  });
});

test('a thickness that a later colour overrules is at most that', () => {
  const overruled = { ...worn, overruled: { by: 'colour' } } as unknown as PointLife; // by what is all that is read
  expect(attention(life({ worst: overruled })).reasons[0]).toBe(
    'P1: by colour at most 8.4 mm left of 12.0 mm, limit 3.0 mm',
  );
});

test('where the model gives dates a look by hand makes nothing overdue', () => {
  const late = point('P1', {
    nextLook: { day: calendarDay('2026-10-01'), overdue: true } as unknown as NonNullable<
      PointLife['nextLook']
    >,
  });
  expect(attention(life({ worst: worn, points: [late] })).reasons.join()).toContain(
    'overdue at P1, since 2026-10-01',
  );
  expect(attention(life({ worst: worn, points: [late], model: model({}) })).reasons.join()).not.toContain(
    'overdue',
  );
  expect(said(life({ worst: worn, points: [late], model: model({}) }))[0]).toBe('in order');
});
