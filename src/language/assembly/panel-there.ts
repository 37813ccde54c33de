// Which panel is meant by its number, as it lay on a day, and which point lies on it? The records before that day say how the panels
// lay, so it is asked once these are known.

import type { Conveyor, Point } from '../../domain/model/conveyor.js';
import { installedPanels } from '../../domain/model/panels.js';
import type { PanelUse, Reline } from '../../domain/model/records.js';
import { findRun } from '../../domain/model/runs.js';
import type { CalendarDay } from '../../domain/units/calendar.js';

/** Chainages of its ends, mm. */
export interface PanelEnds {
  readonly from: number;
  readonly to: number;
}

/** Undefined where the run has no such panel. */
export function panelThere(
  conveyor: Conveyor,
  { first, run: use }: PanelUse,
  relines: readonly Reline[],
  day: CalendarDay,
): PanelEnds | undefined {
  const run = findRun(conveyor, use);
  return run && installedPanels({ relines }, run, day).layout.panels[first.count - 1];
}

export function middleOfPanel({ from, to }: PanelEnds): number {
  return (from + to) / 2;
}

/** Of several that nearest to the middle. */
export function pointOn({ points }: Conveyor, panel: PanelEnds): Point | undefined {
  const middle = middleOfPanel(panel);
  const on = points.filter(({ at }) => at.value >= panel.from && at.value <= panel.to);
  return on.sort((a, b) => Math.abs(a.at.value - middle) - Math.abs(b.at.value - middle))[0];
}
