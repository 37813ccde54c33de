// In which order options are offered: an engineer reads the first ones, so the order has to be one that he would give, with costs
// and without them.

import { describe, expect, it } from 'vitest';
import { ranked, type DecisionOption } from '../../../src/domain/decision/option.js';
import { addDays } from '../../../src/domain/units/calendar.js';
import { today } from './kit.js';

function option(what: string, facts: Partial<DecisionOption> = {}): DecisionOption {
  return {
    kind: 'planned reline',
    what,
    day: addDays(today, 80),
    outage: 'Winter27',
    condemn: 0.01,
    contact: 0,
    condemnSeen: undefined,
    contactSeen: undefined,
    within: true,
    obstacle: undefined,
    cost: undefined,
    expected: undefined,
    needs: [],
    working: [],
    ...facts,
  };
}

const order = (...options: readonly DecisionOption[]): readonly string[] =>
  ranked(options, 'all panels').map(({ what }) => what);

const waiting = option('wait', { kind: 'do nothing', within: false, expected: 10, outage: undefined });
const look = (reassures: number, facts: Partial<DecisionOption> = {}): DecisionOption =>
  option('look', { kind: 'look first', day: today, outage: undefined, reassures, ...facts });

describe('the order of options', () => {
  it('has a look that hardly ever reassures after all that helps, unless it saves money', () => {
    const late = option('late', { within: false, expected: 900 });
    expect(order(look(0.004, { expected: 100, saves: -5 }), late, waiting)).toEqual(['late', 'look', 'wait']);
    expect(order(look(0.004, { expected: 100, saves: 5 }), late, waiting)).toEqual(['look', 'late', 'wait']);
    expect(order(look(0.05), late, waiting)[0]).toBe('look');
    expect(order(look(0.049), late, waiting)[0]).toBe('late');
  });

  it('goes by expected cost where it is known', () => {
    expect(order(option('dear', { expected: 3 }), option('cheap', { expected: 2 }))).toEqual([
      'cheap',
      'dear',
    ]);
  });

  it('without costs: planned before unplanned, the sooner, a part before the whole', () => {
    const stop = option('stop', { kind: 'unplanned stop', day: today, outage: undefined });
    const part = option('part', { kind: 'part at an outage' });
    const spring = option('spring', { day: addDays(today, 160) });
    expect(order(stop, spring, option('whole'), part)).toEqual(['part', 'whole', 'spring', 'stop']);
  });

  it('without costs: of those beyond the risk the one that is least beyond, what stays counted in', () => {
    const until = addDays(today, 160);
    const stays = {
      until,
      outage: undefined,
      first: undefined,
      keeps: false,
      condemn: 0.9,
      contact: 0,
      condemnSeen: 0.9,
      contactSeen: 0,
    };
    const beyond = { within: false, condemn: 0.35 };
    const spring = option('spring', { ...beyond, condemn: 0.8, day: until });
    expect(order(spring, option('part', { ...beyond, stays }), option('whole', beyond))).toEqual([
      'whole',
      'spring',
      'part',
    ]);
  });
});
