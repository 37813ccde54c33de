// The day that was asked for moves every rule that speaks of time, and a finding says whether days or a change brought it.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { formatDay } from '../../src/domain/units/calendar.js';
import { rules } from '../../src/validation/catalogue.js';
import { inSoundEstate } from '../../src/validation/example.js';
import { calendarDay } from '../kit/estate.js';

const looked = `
inspection DG1 2026-03-09 meter 12000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 7.9 mm
}
job J1 {
  conveyor DG1
  outage Spring27
  reline all
  crews Alpha, Bravo
  access units MP1
}`;

const on = (day?: string) =>
  analyse(
    [{ uri: 'a.trough', text: inSoundEstate('estate', looked) }],
    day === undefined ? {} : { asOf: calendarDay(day) },
  ).findings;
const codes = (day?: string): readonly string[] => on(day).map(({ code }) => code);

describe('a machine that nobody touches', () => {
  test('is silent on the day of its newest record, and for a while', () => {
    expect(codes()).toEqual([]);
    expect(codes('2026-03-09')).toEqual([]);
    expect(codes('2026-04-01')).toEqual([]);
  });

  test.each([
    ['2027-08-01', 'TL502', 'a look is overdue'],
    ['2027-02-15', 'TL446', 'the liner had to be ordered'],
    ['2027-05-01', 'TL436', 'the job is past'],
    ['2027-06-01', 'TL318', 'no look for thirteen months'],
  ])('on %s gives %s: %s, brought by the calendar', (day, code) => {
    const found = on(day).find((finding) => finding.code === code);
    expect(found?.broughtByTheCalendar).toBe(true);
    expect(`${found?.message ?? ''}${found?.why ?? ''}`).not.toContain('records reach');
  });

  test('without a day the same finding names the records, and is no work of the calendar', () => {
    const late = inSoundEstate(
      'estate',
      `${looked}\ninspection DG1 2027-05-03 meter 18000 h {\n  P2 colour ivory\n}`,
    );
    const found = analyse([{ uri: 'a.trough', text: late }]).findings.find(({ code }) => code === 'TL436');
    expect(found?.message).toContain('the records reach to 2027-05-03');
    expect(found?.broughtByTheCalendar).toBeUndefined();
  });

  test('every rule whose finding can come with the days says so', () => {
    const early = new Set(codes('2026-03-09'));
    const late = [
      ...new Set(
        ['2027-01-15', '2027-02-15', '2027-05-01', '2027-06-01', '2029-01-01'].flatMap((day) => codes(day)),
      ),
    ];
    const timed = new Set<string>(rules.filter(({ byTheCalendar }) => byTheCalendar).map(({ code }) => code));
    expect(late.filter((code) => !early.has(code) && !timed.has(code))).toEqual([]);
  });
});

test('a slip in a year is told at its own line, not only by what it does to everything else', () => {
  const text = inSoundEstate(
    'estate',
    `${looked}\ninspection DG1 2062-09-08 meter 15000 h {\n  P1 colour teal\n}`,
  );
  const { findings, locate } = analyse([{ uri: 'a.trough', text }]);
  const found = findings.filter(({ code }) => code === 'TL545');
  expect(found).toHaveLength(1);
  expect(found[0] && text.split('\n')[locate(found[0].origin).line - 1]).toContain('2062-09-08');
  expect(found[0]?.message).toContain(formatDay(calendarDay('2026-03-09')));
});
