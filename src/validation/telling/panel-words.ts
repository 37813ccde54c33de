// Which panel does a message speak of, where it names a spot?

import type { Estate } from '../../domain/model/estate.js';
import { installedPanels, panelIn, reckonedWords } from '../../domain/model/panels.js';
import type { Place } from '../../domain/model/records.js';
import { panelsText, runAt } from '../../domain/model/runs.js';
import type { CalendarDay } from '../../domain/units/calendar.js';

/** `, on panel 4 of run 2`, as the panels lay on that day; nothing outside the runs. */
export function panelWords(estate: Estate, { conveyor, at }: Place, day: CalendarDay): string {
  const run = runAt(conveyor, at);
  if (!run) return '';
  const installed = installedPanels(estate, run, day);
  const panel = panelIn(installed.layout, at);
  return panel
    ? `, on ${panelsText(panel.number, panel.number, run.number)}${reckonedWords(run, installed)}`
    : '';
}
