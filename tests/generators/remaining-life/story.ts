// One small conveyor in the language, to which a story adds its records.

import { analyse } from '../../../src/analysis/analyse.js';
import type { Estate } from '../../../src/domain/model/estate.js';
import { parseDay, type CalendarDay } from '../../../src/domain/units/calendar.js';
import {
  remainingLife,
  type PointLife,
  type RemainingLife,
  type RemainingLifeOptions,
} from '../../../src/generators/remaining-life/remaining-life.js';
import type { ConveyorLife } from '../../../src/generators/remaining-life/parts/conveyor-life.js';

export const works = `
plant Tarnholt "Tarnholt Organics" {
  duty 24 h/d ± 10 %
  risk 5 %
  outage Spring26 2026-04-13 to 2026-04-24
  outage Autumn27 2027-09-13 to 2027-09-24
  lead time liner 10 week
  cost reline 9500 EUR
  cost unplanned reline 24000 EUR
  cost trough repair 18500 EUR
}
liner TwoLayer12 { layer ivory 6 mm layer teal 6 mm panel length 1200 mm condemn at 4 mm }
screw Spiral400 { shaftless outside diameter 400 mm pitch 350 mm }
conveyor DG1 "Digestate cake to bay 2" {
  plant Tarnholt
  length 6 m
  incline 20 deg
  trough inside radius 220 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  drive at head speed 18 rpm
  commissioned 2025-01-01 meter 0 h
  break Discharge at 5.4 m to 6 m discharge allowance 20 mm
  point P1 at 1.8 m clock 5:00
  point P2 at 4.2 m clock 5:00
}
`;

/** An inspection 2025-01-01 plus `hours` at 24 h a day, with its rows. */
export function look(hours: number, rows: string, conveyor = 'DG1'): string {
  const day = new Date(Date.UTC(2025, 0, 1) + Math.round(hours / 24) * 86_400_000).toISOString().slice(0, 10);
  return `inspection ${conveyor} ${day} meter ${hours} h {\n  view downstream\n${rows
    .split(';')
    .map((row) => `  ${row.trim()}\n`)
    .join('')}}\n`;
}

export function estateOf(...texts: readonly string[]): Estate {
  return analyse(texts.map((text, i) => ({ uri: `file${i}.trough`, text }))).estate;
}

/** `change` alters the text of the works before it is read. */
export function reportOf(
  records: string,
  options: RemainingLifeOptions = {},
  change: (text: string) => string = (text) => text,
): RemainingLife {
  return remainingLife(estateOf(change(works), records), { track: false, ...options });
}

export function day(text: string): CalendarDay {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new Error(text);
  return parsed;
}

export function only(report: RemainingLife): ConveyorLife {
  const [life] = report.conveyors;
  if (!life) throw new Error('no conveyor');
  return life;
}

export function pointOf(report: RemainingLife, name: string): PointLife {
  const point = report.conveyors.flatMap((c) => c.points).find((p) => p.place.name === name);
  if (!point) throw new Error(`no point ${name}`);
  return point;
}
