// Which panel does a message speak of, where it names a spot, and which did a reline take that counts them?

import type { Estate } from '../../domain/model/estate.js';
import {
  installedPanelEnds,
  installedPanels,
  panelIn,
  reckonedAtFirst,
  reckonedWords,
} from '../../domain/model/panels.js';
import type { Place, Reline } from '../../domain/model/records.js';
import { findRun, intervalOf, panelsText, runAt, type Run } from '../../domain/model/runs.js';
import type { Stretch } from '../../domain/model/stretch.js';
import { chainageOn } from '../../domain/model/unit-of-machine.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { toCentimetre } from '../../domain/units/length-words.js';
import { list } from '../../domain/units/wording.js';

/** `, on panel 4 of run 2`, as the panels lay on that day, and how that is known; nothing outside the runs. */
export function panelWords(estate: Estate, { conveyor, at }: Place, day: CalendarDay): string {
  const run = runAt(conveyor, at);
  if (!run) return '';
  const installed = installedPanels(estate, run, day);
  const { recorded, reckonedFor, layout } = installed;
  const panel = panelIn(layout, at);
  if (!panel) return '';
  const { joints } = layout;
  const counted = relinesByNumber(estate, run).some(({ date }) => date.day <= day);
  const reckoned =
    recorded || reckonedFor || !counted
      ? reckonedWords(run, installed, joints)
      : reckonedAtFirst(run, joints);
  return `, on ${panelsText(panel.number, panel.number, run.number)}${reckoned}`;
}

/** Relines of a run that count their panels, and so rest on how these lie. */
export function relinesByNumber({ relines }: Estate, run: Run): readonly Reline[] {
  return relines.filter(
    ({ conveyor, scope }) => conveyor === run.conveyor && scope.some((stretch) => isOfRun(stretch, run)),
  );
}

/** `The reline of 2023-06-12 is taken for one from 1.17 m to 3.58 m`: where what it names is reckoned to lie. */
export function takenWords(estate: Estate, { conveyor, date, scope }: Reline): string {
  const ends = installedPanelEnds(estate, date.day);
  // To the centimetre: nobody measured where a reckoned joint lies.
  const near = (mm: number): string => chainageOn(conveyor, toCentimetre(mm));
  const places = scope.flatMap((stretch) => {
    const place = intervalOf(conveyor, stretch, ends);
    return place ? [`from ${near(place.from)} to ${near(place.to)}`] : [];
  });
  return `The reline of ${formatDay(date.day)} is taken for one ${list(places, 'and', 3)}`;
}

function isOfRun(stretch: Stretch, run: Run): boolean {
  return stretch.kind === 'panels' && findRun(run.conveyor, stretch.run)?.number === run.number;
}
