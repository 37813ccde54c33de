import { describe, expect, it } from 'vitest';
import { exposedReadings, setLying } from '../../../src/domain/model/exposure.js';
import { fittedThickness, meanFittedThickness } from '../../../src/domain/model/fitted-thickness.js';
import { historyOf } from '../../../src/domain/model/history.js';
import type { Estate } from '../../../src/domain/model/estate.js';
import type { Reline } from '../../../src/domain/model/records.js';
import {
  calendarDay,
  chainages,
  conveyor,
  estate,
  hours,
  mm,
  on,
  origin,
  reline,
  use,
  type Look,
} from '../../kit/estate.js';

const dg1 = conveyor();
const look = (date: string, meter: number, rows: Look['rows'] = { P1: 10 }): Look => ({
  conveyor: dg1,
  date,
  meter,
  rows,
});
const at = (e: Estate, name: string): { exposure: unknown; fitted: number | undefined }[] =>
  [...exposedReadings(e).entries()]
    .filter(([place]) => place.name === name)
    .flatMap(([, readings]) =>
      readings.map((r) => ({
        exposure: r.exposure.known ? r.exposure.value : r.exposure.reason,
        fitted: r.set?.fitted?.hours,
      })),
    );

describe('exposure of what a reading saw', () => {
  it('counts from commissioning', () => {
    expect(at(estate({ conveyors: [dg1], looks: [look('2024-04-10', 1000)] }), 'P1')).toEqual([
      { exposure: 1000, fitted: 0 },
    ]);
  });

  it('starts again after a reline, only where the reline was', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000, { scope: [chainages(6000, 12_000)] })],
      looks: [look('2024-10-27', 2500, { P1: 10, P2: 11.5 })],
    });
    expect(at(e, 'P1')).toEqual([{ exposure: 2500, fitted: 0 }]);
    expect(at(e, 'P2')).toEqual([{ exposure: 500, fitted: 2000 }]);
  });

  it('on the day of a reline at the same meter, it is of the liner that came out', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000)],
      looks: [look('2024-07-19', 2000)],
    });
    expect(at(e, 'P1')).toEqual([{ exposure: 2000, fitted: 0 }]);
  });

  it('on the day of a reline at a later meter, it is of the new liner', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000)],
      looks: [look('2024-07-19', 2004)],
    });
    expect(at(e, 'P1')).toEqual([{ exposure: 4, fitted: 2000 }]);
  });

  it('before commissioning there is none, and it says so', () => {
    const e = estate({ conveyors: [dg1], looks: [look('2023-12-01', 10)] });
    expect(at(e, 'P1')).toEqual([
      { exposure: 'dated 2023-12-01, before DG1 was commissioned', fitted: undefined },
    ]);
  });

  it('without commissioning the first liner has none; the relined one has', () => {
    const { commissioned: _none, ...undated } = conveyor();
    const e = estate({
      conveyors: [undated],
      relines: [reline(undated, '2024-07-19', 2000)],
      looks: [
        { conveyor: undated, date: '2024-03-01', meter: 900, rows: { P1: 8 } },
        { conveyor: undated, date: '2024-10-27', meter: 2600, rows: { P1: 11 } },
      ],
    });
    const [first, second] = at(e, 'P1');
    expect(first?.exposure).toContain('no commissioning record');
    expect(second?.exposure).toBe(600);
  });

  it('a reading whose meter ran back takes its exposure from its date, never below zero', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [reline(dg1, '2024-07-19', 2000)],
      looks: [look('2024-10-27', 50), look('2025-02-04', 4000)],
    });
    expect(at(e, 'P1').map((r) => r.exposure)).toEqual([1000, 2000]);
  });

  it('in tonnes where wear follows tonnes', () => {
    const cp3 = conveyor({
      wearBy: 'tonnes',
      commissioned: {
        date: on('2024-01-01'),
        meter: hours(0),
        tonnes: { dimension: 'mass', value: 50_000, text: '50 t', origin: origin() },
        origin: origin(),
      },
    });
    const e = estate({
      conveyors: [cp3],
      looks: [{ conveyor: cp3, date: '2024-04-10', meter: 1000, tonnes: 4050, rows: { P1: 10 } }],
    });
    expect([...exposedReadings(e).values()][0]?.[0]?.exposure).toEqual({
      known: true,
      value: 4000,
      unit: 't',
    });
  });

  it('rows without a place are left out', () => {
    const e = estate({ conveyors: [dg1], looks: [look('2024-04-10', 1000, { P9: 10 })] });
    expect([...exposedReadings(e).values()].flat()).toEqual([]);
  });
});

describe('what lies there', () => {
  it('the as-fitted thickness where it was measured, else the specification', () => {
    const e = estate({
      conveyors: [dg1],
      relines: [
        reline(dg1, '2024-07-19', 2000, {
          asFitted: [{ point: use('P1'), thickness: mm(12.2), origin: origin() }],
        }),
      ],
    });
    const lying = setLying(historyOf(e, dg1), 3000, calendarDay('2025-01-01'))!;
    expect(fittedThickness(lying, e.places[0]!)).toEqual({ value: 12.2, measured: true });
    expect(fittedThickness(lying, e.places[1]!)).toEqual({ value: 12, measured: false });
  });

  it('starts from what the gauge showed on the panel, the thinner one at a joint, unless the point was measured itself', () => {
    const onPanels = (
      thicknesses: readonly (readonly [number, number, number])[],
    ): Reline['panelThicknesses'] =>
      thicknesses.map(([from, to, thickness]) => ({
        stretch: chainages(from, to),
        thickness: mm(thickness),
        origin: origin(),
      }));
    const e = estate({
      conveyors: [dg1],
      looks: [look('2025-01-01', 2000, { P1: 11, P2: 10 })],
      relines: [
        reline(dg1, '2024-06-01', 800, {
          asFitted: [{ point: use('P1'), thickness: mm(12.2), origin: origin() }],
          panelThicknesses: onPanels([
            [0, 4000, 11.5],
            [4000, 6000, 11],
          ]),
        }),
      ],
    });
    const lying = setLying(historyOf(e, dg1), 3000, calendarDay('2025-01-01'))!;
    expect(fittedThickness(lying, e.places[0]!)).toEqual({ value: 12.2, measured: true });
    const there = (at: number) => fittedThickness(lying, { name: 'P1', at, declared: false });
    expect(there(1000)).toEqual({ value: 11.5, measured: true });
    expect(there(4000)).toEqual({ value: 11, measured: true });
    expect(there(6000.1)).toEqual({ value: 12, measured: false });
    // By hand: over 8 m, 4 m half a millimetre and 2 m a millimetre under the 12 mm of the specification.
    expect(meanFittedThickness(lying, { from: 0, to: 8000 })).toBeCloseTo(12 - (4 * 0.5 + 2 * 1) / 8, 12);
    expect(meanFittedThickness(lying, { from: 4000, to: 6000 })).toBeCloseTo(11, 12);
    expect(meanFittedThickness(lying, { from: 6000, to: 6000 })).toBe(12);
  });
});
