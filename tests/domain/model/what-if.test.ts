import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { readChange, withChanges } from '../../../src/domain/model/what-if.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';

const text = readFileSync(new URL('../../../examples/1-first-conveyor/first.trough', import.meta.url), 'utf8').replace('liner TwoLayer10\n', 'liner TwoLayer10\n  drive at head speed 16 rpm\n');
const { estate } = analyse([{ uri: 'a.trough', text }]);
const asOf = parseDay('2025-12-31')!; // a date that exists

function daysLeft(change?: string): number {
  const read = change === undefined ? undefined : readChange(change, estate);
  if (read && !read.ok) throw new Error(read.message);
  const changed = read ? withChanges(estate, [read.change], asOf) : estate;
  const worst = remainingLife(changed, { asOf, depth: 'hand' }).conveyors[0]!.worst!; // one conveyor, one point with a reading
  return worst.milestones.find((m) => m.kind === 'condemn')!.day! - asOf; // one thickness and a duty give a day
}

describe('what if', () => {
  test('twice the duty halves the days that are left', () => {
    expect(Math.abs(daysLeft('duty BR1 120 h/week') - daysLeft() / 2)).toBeLessThanOrEqual(1);
  });

  test('twice the speed does the same: wear goes with sliding distance', () => {
    expect(daysLeft('speed BR1 32 rpm')).toBe(daysLeft('duty BR1 120 h/week'));
  });

  test('a stricter limit comes sooner, in proportion to what may still wear', () => {
    // 7.9 mm left at the reading of 2025-09-08; the limit moves from 2.5 to 5.2 mm: half of what may wear from there on.
    const sinceReading = asOf - parseDay('2025-09-08')!; // a date that exists
    expect(Math.abs(daysLeft('condemn TwoLayer10 5.2 mm') + sinceReading - (daysLeft() + sinceReading) / 2)).toBeLessThanOrEqual(1);
  });

  test('the true estate is not touched', () => {
    const before = JSON.stringify(estate.dutyChanges);
    daysLeft('duty BR1 120 h/week');
    expect(JSON.stringify(estate.dutyChanges)).toBe(before);
    expect(estate.liners[0]!.condemn.value).toBe(2.5);
  });

  test.each([
    ['duty BR1', /write 'duty DG1/],
    ['duty XX 3 h/d', /no conveyor XX; there are BR1/],
    ['duty BR1 30 h/d', /between 0 and 24/],
    ['duty BR1 30 mm', /wrong dimension/],
    ['condemn TwoLayer10 12 mm', /between 0 mm and/],
    ['condemn Nothing 3 mm', /no liner Nothing; there are TwoLayer10/],
    ['speed BR1 0 rpm', /more than 0 rpm/],
    ['colour BR1 red', /write 'duty DG1/],
  ])('refuses %j in words', (change, expected) => {
    const read = readChange(change, estate);
    expect(read.ok ? '' : read.message).toMatch(expected);
  });
});
