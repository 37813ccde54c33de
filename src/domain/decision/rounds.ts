// Which looks go together? Those that one access unit can serve, close to each other in time, where the look is worth it: one
// hire, one day in the calendar. A round is due with the look that opened it. What is due within four weeks of that joins where
// its look is expected to tell something; a look that pays by itself joins however late it is due; others keep their own day.

import type { Conveyor } from '../model/conveyor.js';
import { addDays, type CalendarDay } from '../units/calendar.js';

export interface DueLook {
  readonly conveyor: Conveyor;
  readonly day: CalendarDay;
  readonly worth: WorthOfLook;
}

export interface WorthOfLook {
  /** Share by which the best single reading is expected to narrow the date of the limit, 0 to 1; 1 where nothing is known. */
  readonly narrows: number;
  /** Expected money that looking now and then deciding saves against deciding now, the look paid; undefined where not reckoned. */
  readonly saves: number | undefined;
  /** Chance that the look shows that it may wait; undefined where nothing hangs on it. */
  readonly reassures: number | undefined;
}

export interface Round {
  readonly by: CalendarDay;
  readonly access: 'a mobile platform or scaffold' | 'ground or fixed platform';
  /** Units of the plant that reach all of it; empty where none is needed or none is declared high enough. */
  readonly units: readonly string[];
  /** Earliest due first. */
  readonly looks: readonly DueLook[];
}

/** Judgement: nobody hires a platform twice in a month. */
const together = 28;
/** Judgement: a reading that narrows the date by less is not worth climbing for before its time. */
const telling = 0.05;

export function roundsOf(looks: readonly DueLook[]): readonly Round[] {
  const waiting = [...looks].sort(
    (a, b) =>
      a.day - b.day || (a.conveyor.name < b.conveyor.name ? -1 : a.conveyor.name > b.conveyor.name ? 1 : 0),
  );
  const rounds: Round[] = [];
  for (let [first] = waiting; first; [first] = waiting) {
    const { day, conveyor } = first;
    const joins: DueLook[] = [first];
    let units = unitsFor(conveyor);
    for (const look of waiting) {
      if (look === first || look.conveyor.plant !== conveyor.plant) continue;
      if (accessOf(look.conveyor) !== accessOf(conveyor) || !joinsBy(look, addDays(day, together))) continue;
      const both = units.filter((unit) => unitsFor(look.conveyor).includes(unit));
      // Two hires are no round.
      if (units.length + unitsFor(look.conveyor).length > 0 && both.length === 0) continue;
      units = both;
      joins.push(look);
    }
    rounds.push({ by: day, access: accessOf(conveyor), units, looks: joins });
    for (const look of joins) waiting.splice(waiting.indexOf(look), 1);
  }
  return rounds;
}

function joinsBy({ day, worth }: DueLook, until: CalendarDay): boolean {
  if (pays(worth)) return true;
  return day <= until && worth.narrows >= telling;
}

/** Looking now is expected to save more than it costs. */
export function pays({ saves }: WorthOfLook): boolean {
  return saves !== undefined && saves > 0;
}

/** Units that reach the highest place that has no fixed access. */
function unitsFor({ access, plant }: Conveyor): readonly string[] {
  const high = access.filter(({ kind }) => kind === 'mobile platform');
  if (high.length === 0) return [];
  const most = Math.max(...high.map(({ height }) => height?.value ?? 0));
  return plant.accessUnits
    .filter(({ reach }) => reach === undefined || reach.value >= most)
    .map(({ name }) => name);
}

function accessOf({ access }: Conveyor): Round['access'] {
  return access.some(({ kind }) => kind === 'mobile platform' || kind === 'scaffold')
    ? 'a mobile platform or scaffold'
    : 'ground or fixed platform';
}
