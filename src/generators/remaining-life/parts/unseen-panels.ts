// What stands for the panels that nobody has looked at? In each run one unit for every liner that lies there, because a strip
// relined last year is not as worn as what lies beside it since the beginning. It wears as its neighbours do: where its panels
// lie along the trough, and at the clock position that most places of its run were read at, since a panel is governed there.

import { setOfPanel, type ExposedReading } from '../../../domain/model/exposure.js';
import { meanFittedThickness } from '../../../domain/model/fitted-thickness.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { History } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import { installedPanels } from '../../../domain/model/panels.js';
import type { Place } from '../../../domain/model/records.js';
import { runAt, runsOf, type Run } from '../../../domain/model/runs.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { sectorOf, type WearMember } from './wear-member.js';

interface Stretch {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
}

/** Of every run, every liner that lies in it, whether or not somebody saw a panel of it. */
export function unseenPanels(
  estate: Estate,
  readings: ReadonlyMap<Place, readonly ExposedReading[]>,
  history: History,
  asOf: CalendarDay,
): readonly WearMember[] {
  const { conveyor } = history;
  const read = estate.places.filter(
    (place) => place.conveyor === conveyor && (readings.get(place)?.length ?? 0) > 0,
  );
  return runsOf(conveyor).flatMap((run) => {
    const own = read.filter((place) => runAt(conveyor, place.at) === run);
    const clock = usualClock(own.length > 0 ? own : read);
    return laidIn(estate, history, run, asOf).map(({ set, panels }): WearMember => {
      const at = mean(panels.map(({ from, to }) => (from + to) / 2));
      const fitted = mean(panels.map((panel) => meanFittedThickness(panel.set, panel)));
      return { conveyor, place: undefined, run, set, at, clock, fitted };
    });
  });
}

/** The unit that stands for a panel of a run. */
export function unitOfUnseen(
  members: readonly WearMember[],
  history: History,
  run: Run,
  panel: Stretch,
  asOf: CalendarDay,
): number | undefined {
  const set = setOfPanel(history, run, panel, asOf);
  const unit = members.findIndex(
    (m) => m.place === undefined && m.run === run && set !== undefined && together(m.set, set),
  );
  return unit < 0 ? undefined : unit;
}

interface Laid {
  readonly set: LinerSet;
  readonly panels: readonly (Stretch & { readonly set: LinerSet })[];
}

function laidIn(estate: Estate, history: History, run: Run, asOf: CalendarDay): readonly Laid[] {
  const { joints } = installedPanels(estate, run, asOf).layout;
  const laid: { set: LinerSet; panels: (Stretch & { set: LinerSet })[] }[] = [];
  joints.slice(1).forEach((to, i) => {
    const panel = { from: joints[i] ?? run.from, to };
    const set = setOfPanel(history, run, panel, asOf);
    if (!set) return;
    const known = laid.find((each) => together(each.set, set));
    if (known) known.panels.push({ ...panel, set });
    else laid.push({ set, panels: [{ ...panel, set }] });
  });
  return laid;
}

/** Pieces of what was fitted at one time. */
function together(a: LinerSet, b: LinerSet): boolean {
  return a.reline === b.reline && a.liner === b.liner;
}

/** Middle of the places in the sector that holds most of them; of two alike the one nearer the bottom, then the later. */
function usualClock(places: readonly Place[]): number | undefined {
  const sectors = [...new Set(places.map(({ clock }) => sectorOf(clock)))].map((sector) => {
    const own = places.filter(({ clock }) => sectorOf(clock) === sector);
    return { count: own.length, clock: mean(own.map(({ clock }) => clock)) };
  });
  const [most] = sectors.sort(
    (a, b) => b.count - a.count || Math.abs(a.clock - 6) - Math.abs(b.clock - 6) || b.clock - a.clock,
  );
  return most?.clock;
}

function mean(values: readonly number[]): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
