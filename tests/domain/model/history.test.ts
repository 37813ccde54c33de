import fc from 'fast-check';
import { analyse } from '../../../src/analysis/analyse.js';
import { inSoundEstate } from '../../../src/validation/example.js';
import type { MeterChange } from '../../../src/domain/model/records.js';
import { describe, expect, it } from 'vitest';
import { dayAt, historyOf, momentOf, momentOn } from '../../../src/domain/model/history.js';
import { newestDay } from '../../../src/domain/model/newest.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import {
  calendarDay,
  chainages,
  conveyor,
  dutyChange,
  estate,
  hours,
  meterChange,
  on,
  perDay,
  plant,
  ratio,
  reline,
  screw,
  origin,
  use,
  type Look,
} from '../../kit/estate.js';

const dg1 = conveyor();
const look = (date: string, meter: number, rows: Look['rows'] = {}): Look => ({
  conveyor: dg1,
  date,
  meter,
  rows,
});
const hoursOn = (e: ReturnType<typeof estate>, day: string): number | undefined =>
  momentOn(historyOf(e, dg1), calendarDay(day)).hours;

describe('running hours since commissioning', () => {
  it('lie on a straight line between records', () => {
    const e = estate({ conveyors: [dg1], looks: [look('2024-04-10', 1000)] }); // 100 days later
    expect(hoursOn(e, '2024-02-20')).toBeCloseTo(500, 9);
  });

  it('go on by duty after the newest record, and change with it', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-04-10', 1000)],
      dutyChanges: [dutyChange(dg1, '2024-04-20', 20)],
    });
    // 10 days of 10 h, then 5 days of 20 h.
    expect(momentOn(historyOf(e, dg1), calendarDay('2024-04-25')).hours).toBeCloseTo(1000 + 100 + 100, 9);
  });

  it('survive a meter change', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-06-01', 1500), look('2025-01-01', 600)],
      meterChanges: [meterChange(dg1, '2024-09-01', 2400, 100)],
    });
    const [first, second] = historyOf(e, dg1).inspections;
    expect(momentOf(historyOf(e, dg1), first!.inspection).hours).toBe(1500);
    expect(momentOf(historyOf(e, dg1), second!.inspection).hours).toBe(2400 + 500);
  });

  it('survive a meter change that was written wrong, where a second one of that day says so', () => {
    const hoursWith = (...changes: readonly MeterChange[]): number | undefined => {
      const e = estate({
        conveyors: [dg1],
        looks: [look('2024-06-01', 1500), look('2025-01-01', 600)],
        meterChanges: changes,
      });
      return momentOf(historyOf(e, dg1), historyOf(e, dg1).inspections[1]!.inspection).hours;
    };
    const right = hoursWith(meterChange(dg1, '2024-09-01', 2400, 100));
    const [toNought, fromLess] = [
      meterChange(dg1, '2024-09-01', 2400, 0),
      meterChange(dg1, '2024-09-01', 2300, 100),
    ];
    expect(hoursWith(toNought)).not.toBe(right);
    expect(hoursWith(toNought, meterChange(dg1, '2024-09-01', 0, 100))).toBe(right);
    expect(hoursWith(fromLess, meterChange(dg1, '2024-09-01', 2400, 2300))).toBe(right);
  });

  it('count what the old counter should have shown, where a second line of that day puts its last reading right', () => {
    const told = (...changes: readonly string[]): readonly unknown[] => {
      const lines = changes.map(
        (each) => `meter change DG1 2024-09-01 from ${each} "ran with the counter dead"`,
      );
      const looks = ['2024-06-03 meter 1500 h', '2025-01-06 meter 600 h'].map(
        (each) => `inspection DG1 ${each} {\n  view downstream\n  P1 thickness 11 mm\n}`,
      );
      const text = inSoundEstate('estate', [...looks, ...lines].join('\n'));
      const { estate: read, findings } = analyse([{ uri: 'a.trough', text }]);
      const [machine] = read.conveyors;
      return [
        ...findings.map(({ code, message }) => `${code} ${message}`),
        ...historyOf(read, machine!).inspections.map(
          ({ inspection }) => momentOf(historyOf(read, machine!), inspection).hours,
        ),
      ];
    };
    const right = told('2490 h to 0 h');
    expect(right.slice(-1)).toEqual([3090]);
    expect(told('2400 h to 0 h', '2400 h to 2490 h')).toEqual(right);
    expect(told('2580 h to 0 h', '2580 h to 2490 h')).toEqual(right);
    // The new one did not begin at nought: read as before.
    expect(told('2490 h to 40 h', '40 h to 0 h')).toEqual(right);
  });

  it('count from the reading at commissioning, not from zero on the meter', () => {
    const used = conveyor({ commissioned: { date: on('2024-01-01'), meter: hours(700), origin: origin() } });
    const e = estate({
      conveyors: [used],
      looks: [{ conveyor: used, date: '2024-04-10', meter: 1700, rows: {} }],
    });
    expect(momentOn(historyOf(e, used), calendarDay('2024-04-10')).hours).toBe(1000);
  });

  it('are unknown before commissioning', () => {
    expect(
      hoursOn(estate({ conveyors: [dg1], looks: [look('2024-04-10', 1000)] }), '2023-12-31'),
    ).toBeUndefined();
  });
});

describe('records that contradict each other', () => {
  it('a single reading that runs back is set aside, and its date gives its hours', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-04-10', 1000), look('2024-07-19', 200), look('2024-10-27', 3000)],
    });
    const history = historyOf(e, dg1);
    expect(history.hours.setAside).toMatchObject([{ kind: 'runs back', reading: { value: 200 } }]);
    expect(momentOf(history, history.inspections[1]!.inspection).hours).toBeCloseTo(2000, 9);
    expect(history.remarks.join()).toContain('200 h of 2024-07-19');
  });

  it('a typing slip that rises faster than the clock is set aside', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-04-10', 10_000), look('2024-07-19', 2000), look('2024-10-27', 3000)],
    });
    expect(historyOf(e, dg1).hours.setAside).toMatchObject([
      { kind: 'faster than the clock', reading: { value: 10_000 } },
    ]);
  });

  it('a meter that starts again without a record is bridged by duty', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [
        look('2024-07-19', 2000),
        look('2024-10-27', 3000),
        look('2025-02-04', 100),
        look('2025-05-15', 1100),
      ],
    });
    const history = historyOf(e, dg1);
    expect(history.hours.bridges).toMatchObject([{ kind: 'runs back', added: 1000 }]);
    expect(history.hours.knots.map((k) => k.total)).toEqual([0, 2000, 3000, 4000, 5000]);
  });

  it('without any duty nothing is bridged: the lower readings are set aside', () => {
    const { duty: _none, ...bare } = conveyor();
    const e = estate({
      conveyors: [bare],
      looks: [1000, 100, 1100].map((meter, i) => ({
        conveyor: bare,
        date: `2024-0${4 + i}-10`,
        meter,
        rows: {},
      })),
    });
    expect(historyOf(e, bare).hours.setAside).toMatchObject([{ reading: { value: 100 } }]);
  });
});

describe('where the axis starts', () => {
  const { commissioned: _none, ...undated } = conveyor();
  it('without commissioning, at the first reline', () => {
    const e = estate({
      conveyors: [undated],
      relines: [reline(undated, '2024-05-01', 4000)],
      looks: [{ conveyor: undated, date: '2024-03-01', meter: 3500, rows: {} }],
    });
    expect(historyOf(e, undated).start).toMatchObject({
      kind: 'first reline',
      day: calendarDay('2024-05-01'),
    });
  });
  it('with neither, unknown, and it says so', () => {
    const history = historyOf(estate({ conveyors: [undated] }), undated);
    expect(history.start.kind).toBe('unknown');
    expect(history.remarks[0]).toContain('no commissioning record');
  });
});

describe('dates', () => {
  it('hours to date and back', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-04-10', 1000)],
      dutyChanges: [dutyChange(dg1, '2024-04-20', 20)],
    });
    const planned = historyOf(e, dg1, { asOf: calendarDay('2024-04-10') });
    expect(formatDay(dayAt(planned, 1200) as never)).toBe('2024-04-25');
    expect(formatDay(dayAt(planned, 500) as never)).toBe('2024-02-20');
  });

  it('none without any duty', () => {
    const { duty: _none, ...bare } = conveyor();
    const e = estate({
      conveyors: [bare],
      looks: [{ conveyor: bare, date: '2024-01-10', meter: 100, rows: {} }],
    });
    expect(dayAt(historyOf(e, bare), 500)).toBeUndefined();
  });

  it('by what the meter showed where no duty is declared', () => {
    const { duty: _none, ...bare } = conveyor();
    const e = estate({
      conveyors: [bare],
      looks: [{ conveyor: bare, date: '2024-04-10', meter: 500, rows: {} }],
    });
    expect(historyOf(e, bare).observed).toMatchObject({ perDay: 5, basis: 'observed' });
    expect(formatDay(dayAt(historyOf(e, bare), 550) as never)).toBe('2024-04-20');
  });

  it('observed duty carries the spread between its intervals', () => {
    const e = estate({ conveyors: [dg1], looks: [look('2024-04-10', 500), look('2024-07-19', 2000)] });
    // 5 and 15 h a day over equal times: mean 10, standard deviation of two values √(2·25) = 7.07.
    expect(historyOf(e, dg1).observed).toMatchObject({ perDay: 10, spread: expect.closeTo(0.7071, 4) });
  });

  it("the conveyor's own duty goes before the plant's, with its spread", () => {
    const works = plant({ duty: { nominal: perDay(4), tolerance: ratio(0.2) } });
    const { duty: _none, ...bare } = conveyor({ plant: works });
    expect(historyOf(estate({ conveyors: [bare] }), bare).duties).toMatchObject([
      { perDay: 4, spread: 0.2, basis: 'plant' },
    ]);
    const own = conveyor({ plant: works });
    expect(historyOf(estate({ conveyors: [own] }), own).duties).toMatchObject([
      { perDay: 10, spread: undefined, basis: 'conveyor' },
    ]);
  });

  it('the newest record of the estate is the default day of a report', () => {
    const e = estate({
      conveyors: [dg1],
      looks: [look('2024-04-10', 500)],
      relines: [reline(dg1, '2024-05-06', 700)],
    });
    expect(formatDay(newestDay(e)!)).toBe('2024-05-06');
    expect(newestDay(estate({ conveyors: [dg1] }))).toBeUndefined();
  });
});

describe('tonnes', () => {
  const cp3 = conveyor({
    wearBy: 'tonnes',
    commissioned: {
      date: on('2024-01-01'),
      meter: hours(0),
      tonnes: { dimension: 'mass', value: 0, text: '0 t', origin: origin() },
      origin: origin(),
    },
  });
  const e = estate({
    conveyors: [cp3],
    looks: [{ conveyor: cp3, date: '2024-04-10', meter: 1000, tonnes: 4000, rows: {} }],
  });
  it('go on by duty and the throughput seen', () => {
    expect(historyOf(e, cp3).throughput).toEqual({ perHour: 4, basis: 'observed' });
    expect(momentOn(historyOf(e, cp3), calendarDay('2024-04-20')).tonnes).toBeCloseTo(4400, 6);
    expect(formatDay(dayAt(historyOf(e, cp3), 4400) as never)).toBe('2024-04-20');
  });
});

describe('liner and screw sets', () => {
  it('a reline of a part leaves the rest lying', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000, { scope: [chainages(6000, 12_000)] })],
    });
    expect(historyOf(e, dg1).linerSets.map((s) => [s.from, s.to, s.fitted?.hours, s.removed?.hours])).toEqual(
      [
        [6000, 12_000, 0, 2000],
        [0, 6000, 0, undefined],
        [6000, 12_000, 2000, undefined],
      ],
    );
  });

  it('a scope in the middle cuts a set in three', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000, { scope: [chainages(4000, 5000)] })],
    });
    expect(historyOf(e, dg1).linerSets.map((s) => [s.from, s.to])).toEqual([
      [4000, 5000],
      [0, 4000],
      [4000, 5000],
      [5000, 12_000],
    ]);
  });

  it('two relines a day apart keep a set of a day', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000), reline(dg1, '2024-07-20', 2008)],
    });
    expect(historyOf(e, dg1).linerSets.map((s) => [s.fitted?.hours, s.removed?.hours])).toEqual([
      [0, 2000],
      [2000, 2008],
      [2008, undefined],
    ]);
  });

  it('overlapping scopes of one reline make no set of no life', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000, { scope: [chainages(0, 7000), chainages(5000, 12_000)] })],
    });
    const sets = historyOf(e, dg1).linerSets;
    expect(sets.filter((s) => s.removed).every((s) => s.reline === undefined)).toBe(true);
    expect(sets.filter((s) => !s.removed).map((s) => [s.from, s.to])).toEqual([
      [0, 5000],
      [5000, 12_000],
    ]);
  });

  it('screws follow the screw changes', () => {
    const change = {
      conveyor: dg1,
      conveyorUse: use('DG1'),
      date: on('2024-07-19'),
      meter: { hours: hours(2000) },
      screw: screw({ name: 'Spiral402' }),
      remarks: [],
      photos: [],
      conditions: [],
      asked: [],
      origin: origin(),
    };
    const e = estate({ conveyors: [dg1], screwChanges: [change] });
    expect(historyOf(e, dg1).screwSets.map((s) => [s.screw.name, s.fitted?.hours, s.removed?.hours])).toEqual(
      [
        ['Spiral400', 0, 2000],
        ['Spiral402', 2000, undefined],
      ],
    );
  });
});

describe('whatever the records say', () => {
  const record = fc.record({
    day: fc.integer({ min: -200, max: 1500 }),
    meter: fc.double({ min: -1000, max: 60_000, noNaN: true }),
  });
  const day = (n: number): string => formatDay((calendarDay('2024-01-01') + n) as never);

  it('totals never run back', () => {
    fc.assert(
      fc.property(
        fc.array(record, { maxLength: 12 }),
        fc.array(fc.tuple(record, record), { maxLength: 2 }),
        (records, changes) => {
          const e = estate({
            conveyors: [dg1],
            looks: records.map((r) => look(day(r.day), r.meter)),
            meterChanges: changes.map(([a, b]) => meterChange(dg1, day(a.day), a.meter, b.meter)),
          });
          const totals = historyOf(e, dg1).hours.knots.map((k) => k.total);
          totals.forEach((total, i) =>
            expect(total).toBeGreaterThanOrEqual((totals[i - 1] ?? -Infinity) - 1e-6),
          );
          const days = historyOf(e, dg1).hours.knots.map((k) => k.day);
          const line = Array.from(
            { length: 40 },
            (_, i) => momentOn(historyOf(e, dg1), ((days[0] ?? 0) + i * 50) as never).hours,
          );
          line.forEach((total, i) => {
            if (total !== undefined) expect(total).toBeGreaterThanOrEqual((line[i - 1] ?? -Infinity) - 1e-6);
          });
        },
      ),
    );
  });

  it('good records are all kept', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            days: fc.integer({ min: 1, max: 300 }),
            share: fc.double({ min: 0, max: 1, noNaN: true }),
          }),
          { minLength: 1, maxLength: 12 },
        ),
        (steps) => {
          let at = 0;
          let meter = 0;
          const looks = steps.map(({ days, share }) => {
            at += days;
            meter += days * 24 * share;
            return look(day(at), meter);
          });
          const history = historyOf(estate({ conveyors: [dg1], looks }), dg1);
          expect(history.hours.setAside).toEqual([]);
          expect(history.hours.bridges).toEqual([]);
          expect(history.hours.knots.at(-1)?.total).toBeCloseTo(meter, 6);
        },
      ),
    );
  });
});
