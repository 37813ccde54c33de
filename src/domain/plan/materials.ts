// What to have on site before the job begins, how many with spares, and by when to order it: liner from the cut list, bolts
// from rows and pitch, hold-down blocks and brace fixings by count, consumables by rule of thumb. Spares and rules of thumb
// are judgement and are shown as such. Order-by date = first day of the window − lead time, to the day.

import type { CalendarDay } from '../units/calendar.js';
import { addDays } from '../units/calendar.js';
import { formatLength, formatPercent } from '../units/format.js';
import type { Job } from '../model/job.js';
import type { LeadItem } from '../model/plant.js';
import { within, type Area, type Ground } from '../order/ground.js';
import type { CutList } from './cut-list.js';

export interface Material {
  readonly what: string;
  readonly for: LeadItem | 'consumable';
  /** Needed by the work itself. */
  readonly needed: number;
  readonly spares: number;
  readonly unit: 'pieces' | 'pairs' | 'm' | 'l';
  /** How the number came about. */
  readonly basis: string;
  /** Undefined without a window or a lead time. */
  readonly orderBy: CalendarDay | undefined;
}

/** Extra over what is needed, rounded up to whole pieces; judgement. */
export const spareShare = { liner: 0.05, bolts: 0.1, blocks: 0.05, screw: 0 } as const;

export function materialsOf(
  job: Job,
  ground: Ground,
  cuts: readonly CutList[],
  areas: readonly Area[] = ground.scope,
): readonly Material[] {
  const { conveyor } = job;
  const rows: Material[] = [];
  const add = (
    what: string,
    item: Material['for'],
    needed: number,
    share: number,
    unit: Material['unit'],
    basis: string,
  ): void => {
    if (needed <= 0) return;
    const spares = Math.max(0, Math.ceil(needed * share - 1e-9));
    rows.push({
      what,
      for: item,
      needed,
      spares,
      unit,
      basis: share > 0 ? `${basis}; ${formatPercent(share)} spares` : basis,
      orderBy: item === 'consumable' ? undefined : orderBy(job, item),
    });
  };
  for (const cut of cuts) {
    for (const { length, count } of cut.toBuy)
      add(
        `${cut.liner.name} sheet, ${formatLength(length)}`,
        'liner',
        count,
        spareShare.liner,
        'pieces',
        `cut list: ${cut.pieces.length} panels`,
      );
    const offcuts = cut.sticks.filter((stick) => stick.offcut).length;
    if (offcuts > 0) add(`${cut.liner.name} offcuts in hand`, 'consumable', offcuts, 0, 'pieces', 'cut list');
  }
  for (const [liner, bolts] of boltsByLiner(ground, areas)) {
    const { bolt } = liner;
    if (!bolt || bolts.count === 0) continue;
    add(
      `${bolt.size} countersunk bolt with nut and washer`,
      'fixings',
      bolts.count,
      spareShare.bolts,
      'pieces',
      bolts.basis,
    );
  }
  const opened = job.screwChange ? [{ from: 0, to: conveyor.length.value }] : areas;
  const holdDowns = conveyor.holdDowns.length > 0 ? within(ground.holdDowns, opened).length : 0;
  const sides = conveyor.holdDowns.some((part) => part.side === 'both sides') ? 'pairs' : 'pieces';
  add(
    'hold-down block',
    'fixings',
    holdDowns,
    spareShare.blocks,
    sides,
    `${holdDowns} stations in the stretch that is opened`,
  );
  const braces = conveyor.braces.length > 0 ? within(ground.braces, opened).length : 0;
  add(
    'brace fixing set',
    'fixings',
    braces,
    spareShare.blocks,
    'pieces',
    `${braces} braces in the stretch that is opened`,
  );
  if (job.screwChange) {
    add(
      `screw ${job.screwChange.screw.name}`,
      'screw',
      Math.round(conveyor.length.value) / 1000,
      0,
      'm',
      'length of the conveyor',
    );
    const plate = job.screwChange.screw.drivePlate;
    if (plate)
      add(
        `${plate.size} drive-plate bolt with nut and washer`,
        'fixings',
        plate.bolts.count,
        spareShare.bolts,
        'pieces',
        'drive plate',
      );
  }
  const panels = ground.runs.reduce((sum, run) => sum + within(run.panels, areas).length, 0);
  if (panels > 0) {
    add(
      'drill bit for trough holes',
      'consumable',
      Math.ceil(panels / 10),
      0,
      'pieces',
      'one for ten panels, a rule of thumb',
    );
    add(
      'countersink bit with depth stop',
      'consumable',
      Math.ceil(panels / 20),
      0,
      'pieces',
      'one for twenty panels, a rule of thumb',
    );
    add(
      'saw blade for PE',
      'consumable',
      Math.ceil(cuts.reduce((sum, cut) => sum + cut.pieces.length, 0) / 30),
      0,
      'pieces',
      'one for thirty cuts, a rule of thumb',
    );
  }
  return rows;
}

function boltsByLiner(
  ground: Ground,
  areas: readonly Area[],
): Map<CutList['liner'], { readonly count: number; readonly basis: string }> {
  const found = new Map<CutList['liner'], { count: number; basis: string }>();
  for (const run of ground.runs) {
    const panels = within(run.panels, areas);
    const { bolt } = run.liner;
    const pitch = bolt?.pitch?.value;
    if (panels.length === 0 || !bolt || pitch === undefined || pitch <= 0) continue;
    const rows = bolt.rows?.count ?? usualRows;
    const count = panels.reduce((sum, panel) => sum + boltsOf(panel.to - panel.from, pitch, rows), 0);
    const known = found.get(run.liner);
    found.set(run.liner, {
      count: (known?.count ?? 0) + count,
      basis: `${rows} rows${bolt.rows ? '' : ' (usual)'} at ${formatLength(pitch)} pitch`,
    });
  }
  return found;
}

/** Rows across the sheet where the liner does not say; judgement: one at each top edge and two on the curve. */
const usualRows = 4;

/** Bolts in a panel of a length, mm: in each row one near either end, and no two further apart than the pitch. */
export function boltsOf(length: number, pitch: number, rows: number): number {
  return rows * (Math.max(1, Math.ceil((length - pitch) / pitch - 1e-9)) + 1);
}

function orderBy(job: Job, item: LeadItem): CalendarDay | undefined {
  const lead = job.conveyor.plant.leadTimes.find((each) => each.item === item);
  if (!lead || !job.window) return undefined;
  return addDays(job.window.from.day, -Math.ceil(lead.time.value / 24 - 1e-9));
}
