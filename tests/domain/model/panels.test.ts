import { describe, expect, test } from 'vitest';
import { panelEnds } from '../../../src/domain/model/first-panels.js';
import { installedPanelEnds, installedPanels } from '../../../src/domain/model/panels.js';
import { panelsOf, placesToAvoid, usualStart } from '../../../src/domain/model/run-layout.js';
import type { Reline } from '../../../src/domain/model/records.js';
import { intervalOf, runsOf, type Run } from '../../../src/domain/model/runs.js';
import type { Stretch } from '../../../src/domain/model/stretch.js';
import {
  calendarDay,
  conveyor,
  estate,
  gap,
  liner,
  mm,
  origin,
  reline,
  stated,
  use,
} from '../../kit/estate.js';

const gated = () =>
  conveyor({
    breaks: [
      gap('Tail', 'end plate', 0),
      gap('Gate', 'slide gate', 4000, 4500, 12),
      gap('Head', 'end plate', 12_000),
    ],
  });

function run(of = gated(), number = 1): Run {
  const found = runsOf(of)[number - 1];
  if (!found) throw new Error(`There is no run ${number}.`);
  return found;
}

const runStretch = (number: number): Stretch & { kind: 'run' } => ({
  kind: 'run',
  run: { by: 'number', number: { count: number, origin: origin() } },
  origin: origin(),
});
const panelStretch = (number: number, first: number, last: number): Stretch => ({
  kind: 'panels',
  first: { count: first, origin: origin() },
  last: { count: last, origin: origin() },
  run: { by: 'number', number: { count: number, origin: origin() } },
  origin: origin(),
});
const fitted = (number: number, lengths: readonly number[]): Pick<Reline, 'panelsFitted'> => ({
  panelsFitted: [{ run: runStretch(number), lengths: lengths.map(mm), origin: origin() }],
});

describe('panels of a run', () => {
  test('are given in chainages', () => {
    const layout = panelsOf(run(gated(), 2), liner(), 'tail');
    expect(layout.joints[0]).toBe(4500);
    expect(layout.joints.at(-1)).toBe(12_000);
    expect(layout.panels.map((panel) => panel.length)).toEqual([1200, 1200, 1200, 1200, 1200, 1200, 300]);
  });

  test('start at the upper end, and close at the break that takes the error', () => {
    const c = gated();
    expect(usualStart(run(c, 2))).toBe('head'); // closes at the gate below
    expect(usualStart(run(c, 1))).toBe('tail'); // the tail plate is firm, the gate above takes the error
    expect(usualStart(run(conveyor()))).toBe('head'); // firm at both ends: from the top, and a rule complains
    const falling = conveyor({ incline: stated('angle', -10) });
    expect(usualStart(run(falling))).toBe('tail');
  });

  test('keep their joints clear of flanges and hold-downs where asked', () => {
    const c = conveyor({
      sections: [
        { name: 'S1', length: mm(6000), start: 0, origin: origin() },
        { name: 'S2', length: mm(6000), start: 6000, origin: origin() },
      ],
      holdDowns: [{ from: mm(2400), to: mm(2400), side: 'both sides', origin: origin() }],
    });
    const avoid = placesToAvoid(run(c), 50);
    expect(avoid).toEqual([
      { at: 2400, clearance: 50 },
      { at: 6000, clearance: 50 },
    ]);
    expect(panelsOf(run(c), liner(), { start: 'tail' }).joints).toContain(2400);
    const clear = panelsOf(run(c), liner(), { start: 'tail', avoid });
    expect(clear.unavoidable).toEqual([]);
    expect(clear.joints.every((joint) => Math.abs(joint - 2400) >= 50 && Math.abs(joint - 6000) >= 50)).toBe(
      true,
    );
  });

  test('of a liner without panel lengths are one piece', () =>
    expect(panelsOf(run(), liner({ panelLengths: [] })).joints).toEqual([0, 4000]));

  test('number the stretches that an author names', () => {
    const c = gated();
    expect(intervalOf(c, panelStretch(2, 2, 3), panelEnds)).toMatchObject({ from: 4800, to: 7200 });
    expect(intervalOf(c, panelStretch(2, 2, 8), panelEnds)).toBeUndefined();
  });
});

describe('panels that lie in a run by the records', () => {
  const c = gated();

  test('are worked out where nothing was recorded', () => {
    const installed = installedPanels(estate({ conveyors: [c] }), run(c));
    expect(installed.recorded).toBe(false);
    expect(installed.layout.joints).toEqual(panelsOf(run(c), c.liner).joints);
  });

  test('are as recorded, from the day they were fitted', () => {
    const relines = [reline(c, '2025-05-06', 2100, fitted(1, [1200, 1198, 1602]))];
    const records = estate({ conveyors: [c], relines });
    expect(installedPanels(records, run(c)).layout.joints).toEqual([0, 1200, 2398, 4000]);
    expect(installedPanels(records, run(c)).recorded).toBe(true);
    expect(installedPanels(records, run(c), calendarDay('2025-05-05')).recorded).toBe(false);
    expect(installedPanelEnds(records)(run(c))).toEqual([0, 1200, 2398, 4000]);
  });

  test('are worked out again after a reline that recorded none', () => {
    const thick = liner({ name: 'Long', panelLengths: [mm(3000)] });
    const relines = [
      reline(c, '2025-05-06', 2100, fitted(1, [1200, 1200, 1600])),
      reline(c, '2026-05-06', 6100, { liner: thick }),
    ];
    const installed = installedPanels(estate({ conveyors: [c], relines }), run(c));
    expect(installed.liner).toBe(thick);
    expect(installed.layout.panels.map((panel) => panel.length)).toEqual([3000, 1000]);
  });

  test('change only where some panels were changed', () => {
    const relines = [
      reline(c, '2025-05-06', 2100, fitted(1, [1200, 1200, 1600])),
      reline(c, '2026-05-06', 6100, { scope: [panelStretch(1, 2, 2)], ...fitted(1, [1203]) }),
    ];
    expect(
      installedPanels(estate({ conveyors: [c], relines }), run(c)).layout.panels.map((panel) => panel.length),
    ).toEqual([1200, 1203, 1600]);
  });

  test('of another run, another conveyor, or with lengths that cannot fill the run are left aside', () => {
    const other = conveyor({ name: 'GT5', breaks: c.breaks });
    const relines = [
      reline(c, '2025-05-06', 1, fitted(2, [1200])),
      reline(other, '2025-05-06', 1, fitted(1, [2000, 2000])),
      reline(c, '2025-06-06', 1, fitted(1, [1200])),
    ];
    const installed = installedPanels(estate({ conveyors: [c, other], relines }), run(c));
    expect(installed.recorded).toBe(false);
    expect(installed.layout.joints).toEqual(panelsOf(run(c), c.liner).joints);
  });

  test.each([
    ['above', 'Gate'],
    ['below', 'Head'],
  ] as const)('of the run %s %s are found by the name of the break', (side, name) => {
    const byBreak: Stretch = {
      kind: 'run',
      run: { by: 'break', side, break: use(name) },
      origin: origin(),
    };
    const relines = [
      reline(c, '2025-05-06', 1, {
        scope: [byBreak],
        panelsFitted: [{ run: byBreak, lengths: [3000, 3000, 1500].map(mm), origin: origin() }],
      }),
    ];
    expect(installedPanels(estate({ conveyors: [c], relines }), run(c, 2)).layout.joints).toEqual([
      4500, 7500, 10_500, 12_000,
    ]);
  });
});
