// Which panel does a message speak of, where it names a spot?

import type { Estate } from '../../domain/model/estate.js';
import { installedPanels, reckonedWords } from '../../domain/model/panels.js';
import type { Place } from '../../domain/model/records.js';
import { panelsText, runAt } from '../../domain/model/runs.js';
import type { CalendarDay } from '../../domain/units/calendar.js';

/** `, on panel 4 of run 2`, as the panels lay on that day; nothing outside the runs. */
export function panelWords(estate: Estate, { conveyor, at }: Place, day: CalendarDay): string {
  const run = runAt(conveyor, at);
  if (!run) return '';
  const installed = installedPanels(estate, run, day);
  const number = installed.layout.panels.findIndex(({ from, to }) => at >= from && at <= to) + 1;
  return number > 0 ? `, on ${panelsText(number, number, run.number)}${reckonedWords(run, installed)}` : '';
}
