// Working hours on the calendar, counted by hand. 2027-02-01 is a Monday.

import { describe, expect, it, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { Shift } from '../../../src/domain/model/plant.js';
import {
  workCalendar,
  type CalendarMoment,
  type WorkCalendar,
} from '../../../src/domain/plan/work-calendar.js';
import { formatDay, weekday } from '../../../src/domain/units/calendar.js';
import { calendarDay, on, origin, plant } from '../../kit/estate.js';
import { job, line } from '../order/stories.js';

const monday = weekday(calendarDay('2027-02-01'));
const daily = (from: number, to: number, ...days: readonly number[]): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days,
  origin: origin(),
});
const window = (from: string, to: string): NonNullable<Job['window']> => ({
  from: on(from),
  to: on(to),
  origin: origin(),
});
const calendar = (shifts: readonly Shift[], over?: NonNullable<Job['window']>): WorkCalendar =>
  workCalendar(job(line([4], [0, 0], { plant: plant({ shifts }) }), ['all'], over ? { window: over } : {}));
const week = window('2027-02-01', '2027-02-07');
const said = (moment: CalendarMoment | undefined): string | undefined =>
  moment && `${formatDay(moment.day).slice(5)} ${moment.hour}`;

describe('when so many hours of work have been done', () => {
  const nine = calendar([daily(7, 15)], week);
  test.each<[number, string, string]>([
    // A start goes to the next shift where an end stays with the last.
    [0, '02-01 7', '02-01 7'],
    [0.5, '02-01 7.5', '02-01 7.5'],
    [7.75, '02-01 14.75', '02-01 14.75'],
    [8, '02-02 7', '02-01 15'],
    [8.25, '02-02 7.25', '02-02 7.25'],
    [16, '02-03 7', '02-02 15'],
    [20, '02-03 11', '02-03 11'],
  ])('%d hours: begins %s, ends %s', (hours, start, finish) => {
    expect([said(nine.startAt(hours)), said(nine.finishAt(hours))]).toEqual([start, finish]);
  });
  it('to a rounding error of a thousand-millionth of an hour', () => {
    expect(said(nine.startAt(8 - 1e-10))).toBe('02-02 7');
    expect(said(nine.finishAt(8 + 1e-10))).toBe('02-01 15');
    expect(said(nine.startAt(8 - 1e-6))).toBe('02-01 15');
  });
  it('two shifts a day, with the hour between left out', () => {
    const two = calendar([daily(13, 17), daily(7, 12)], week);
    expect([4.5, 5, 5.5, 9, 10].map((hours) => said(two.startAt(hours)))).toEqual([
      '02-01 11.5',
      '02-01 13',
      '02-01 13.5',
      '02-02 7',
      '02-02 8',
    ]);
    expect([two.longestShift, two.available]).toEqual([5, 7 * 9]);
  });
  it('over midnight: the day after, and an end at midnight is the end of its day', () => {
    const night = calendar([daily(22, 6)], week);
    expect(said(night.startAt(1.5))).toBe('02-01 23.5');
    expect(said(night.startAt(2))).toBe('02-02 0');
    expect(said(night.finishAt(2))).toBe('02-01 24');
    expect(said(night.finishAt(3))).toBe('02-02 1');
    expect(said(night.startAt(8))).toBe('02-02 22');
    expect(said(night.finishAt(8))).toBe('02-02 6');
  });
  it('from midnight on: no day before the first', () => {
    const early = calendar([daily(0, 8)], week);
    expect(said(early.finishAt(0))).toBe('02-01 0');
    expect(said(early.startAt(0))).toBe('02-01 0');
  });
  it('in whole minutes', () => {
    const third = calendar([daily(7, 15)], week).finishAt(1 / 3);
    expect(third?.hour).toBeCloseTo(7 + 20 / 60, 12);
    expect(calendar([daily(7, 15)], week).finishAt(0.001)?.hour).toBe(7);
  });
  it('is not known without a window', () => {
    const loose = calendar([daily(7, 15)]);
    expect([loose.available, loose.startAt(0), loose.finishAt(0)]).toEqual([undefined, undefined, undefined]);
  });
  it('is not known where no shift ever comes', () => {
    const none = calendar([daily(7, 15, 9)], week);
    expect([none.works, none.available, none.longestShift, none.startAt(0), none.shiftsFor(5)]).toEqual([
      false,
      0,
      0,
      undefined,
      0,
    ]);
    expect(nine.works).toBe(true);
  });
});

describe('the hours in a window', () => {
  test.each<[string, readonly Shift[], NonNullable<Job['window']>, number]>([
    ['a week of eight hours', [daily(7, 15)], week, 56],
    ['the first and the last day count', [daily(7, 15)], window('2027-02-01', '2027-02-01'), 8],
    ['on Mondays only', [daily(7, 15, monday)], week, 8],
    ['on Mondays and Tuesdays', [daily(7, 15, monday, monday + 1)], week, 16],
    ['a window that begins on a Wednesday', [daily(7, 15, monday)], window('2027-02-03', '2027-02-09'), 8],
    [
      'a night shift that goes on after the window',
      [daily(22, 6)],
      window('2027-02-01', '2027-02-02'),
      8 + 2,
    ],
    ['all day long', [daily(0, 24)], week, 168],
    ['from seven to seven is a day', [daily(7, 7, monday)], week, 24],
    ['the longer of two that begin together', [daily(7, 15), daily(7, 9), daily(7, 10)], week, 56],
    ['the same twice counts once', [daily(7, 15), daily(7, 15)], week, 56],
    ['one that overlaps another counts once', [daily(7, 15), daily(13, 17)], week, 70],
    ['one within another counts once', [daily(7, 17), daily(9, 11)], week, 70],
  ])('%s', (_, shifts, over, hours) => {
    expect(calendar(shifts, over).available).toBe(hours);
  });
});

describe('where no shift is declared', () => {
  it('one from 7 to 15 every day is taken, and said', () => {
    const usual = calendar([], week);
    expect(usual).toMatchObject({
      available: 56,
      assumed: 'No shift is declared: 7:00 to 15:00 every day is taken, a judgement.',
      longestShift: 8,
    });
    expect([said(usual.startAt(0)), said(usual.finishAt(8))]).toEqual(['02-01 7', '02-01 15']);
    expect(calendar([daily(7, 15)], week).assumed).toBeUndefined();
  });
});

describe('ends of shifts', () => {
  it('hours worked at each, and hours until the next, as far as asked', () => {
    const ends = (upTo: number) => calendar([daily(7, 15)], week).shiftEnds(upTo);
    expect(ends(24)).toEqual([
      { at: 8, off: 16 },
      { at: 16, off: 16 },
    ]);
    expect(ends(24.5)).toHaveLength(3);
    expect(ends(8)).toEqual([]);
    expect(ends(0)).toEqual([]);
  });
  it('a weekend is off; shifts that touch are one', () => {
    const weekdays = [0, 1, 2, 3, 4].map((k) => (monday + k) % 7);
    const ends = calendar([daily(7, 15, ...weekdays), daily(15, 19, ...weekdays)], week).shiftEnds(70);
    expect(ends.map(({ at, off }) => [at, off])).toEqual([
      [12, 12],
      [24, 12],
      [36, 12],
      [48, 12],
      [60, 60],
    ]);
  });
  it('without a window days are counted from a Monday', () => {
    const ends = calendar([daily(7, 15, monday)]).shiftEnds(20);
    expect(ends).toEqual([
      { at: 8, off: 160 },
      { at: 16, off: 160 },
    ]);
    // On Tuesdays and Wednesdays: one night, then six days.
    expect(
      calendar([daily(7, 15, monday + 1, monday + 2)])
        .shiftEnds(17)
        .map(({ off }) => off),
    ).toEqual([16, 136]);
  });
  it('where shifts touch all day and night none ends', () => {
    expect(calendar([daily(6, 14), daily(14, 22), daily(22, 6)], week).shiftEnds(100)).toEqual([]);
  });
});

test.each([
  [0, 0],
  [0.5, 1],
  [8, 1],
  [8 + 1e-10, 1],
  [8.5, 2],
  [16, 2],
  [17, 3],
])('%d hours take %d shifts of eight hours', (hours, shifts) => {
  expect(calendar([daily(7, 15)], week).shiftsFor(hours)).toBe(shifts);
});

it('the longest shift is looked for among them all', () => {
  expect(calendar([daily(7, 9), daily(10, 16, monday + 3)], week).longestShift).toBe(6);
});
