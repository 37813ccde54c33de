// Which looks go together? Those that need the same access within four weeks of each other are one round: one hire, one day in
// the calendar. The round is due with the earliest of them; later looks are drawn forward, never pushed back.

import type { Conveyor } from '../model/conveyor.js';
import { addDays, type CalendarDay } from '../units/calendar.js';

export interface DueLook {
  readonly conveyor: Conveyor;
  readonly day: CalendarDay;
}

export interface Round {
  readonly by: CalendarDay;
  readonly access: 'a mobile platform or scaffold' | 'ground or fixed platform';
  /** Earliest due first. */
  readonly looks: readonly DueLook[];
}

/** Judgement: nobody hires a platform twice in a month. */
const together = 28;

export function roundsOf(looks: readonly DueLook[]): readonly Round[] {
  const waiting = [...looks].sort(
    (a, b) =>
      a.day - b.day || (a.conveyor.name < b.conveyor.name ? -1 : a.conveyor.name > b.conveyor.name ? 1 : 0),
  );
  const rounds: Round[] = [];
  for (let [first] = waiting; first; [first] = waiting) {
    const { day, conveyor } = first;
    const joins = waiting.filter(
      (look) =>
        look.conveyor.plant === conveyor.plant &&
        accessOf(look.conveyor) === accessOf(conveyor) &&
        look.day <= addDays(day, together),
    );
    rounds.push({ by: day, access: accessOf(conveyor), looks: joins });
    for (const look of joins) waiting.splice(waiting.indexOf(look), 1);
  }
  return rounds;
}

function accessOf({ access }: Conveyor): Round['access'] {
  return access.some(({ kind }) => kind === 'mobile platform' || kind === 'scaffold')
    ? 'a mobile platform or scaffold'
    : 'ground or fixed platform';
}
