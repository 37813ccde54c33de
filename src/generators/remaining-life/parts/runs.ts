// Which panels of which run were looked at? Points are put to the panel they lie on; a panel on which nothing was seen is
// not inspected, and is never taken for good.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { installedPanels } from '../../../domain/model/panels.js';
import { runsOf, type Run } from '../../../domain/model/runs.js';
import { worstOf, type PointLife } from './points.js';

export interface RunLife {
  readonly run: Run;
  readonly panels: readonly PanelLife[];
  /** True where the panels' lengths were written down when they were fitted; else they are as they would be laid out. */
  readonly recorded: boolean;
  readonly worst: PointLife | undefined;
}

export interface PanelLife {
  /** From the tail end of its run, from 1. */
  readonly number: number;
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly points: readonly PointLife[];
  readonly worst: PointLife | undefined;
  /** `not seen`: somebody looked and could not see it. */
  readonly state: 'seen' | 'not seen' | 'not inspected';
  /** Day of the last look that saw something of the liner lying there. */
  readonly lastSeen: CalendarDay | undefined;
}

/** A point on a joint belongs to the panel towards the head; one at a break belongs to none. */
export function runsWithPanels(
  estate: Estate,
  conveyor: Conveyor,
  points: readonly PointLife[],
  asOf: CalendarDay | undefined,
): readonly RunLife[] {
  return runsOf(conveyor).map((run) => {
    const installed = installedPanels(estate, run, asOf);
    const ends = installed.layout.joints;
    const within = points.filter((p) => p.place.at >= run.from && p.place.at <= run.to);
    const panels = ends.slice(1).map((to, i): PanelLife => {
      const from = ends[i] ?? run.from;
      const last = i === ends.length - 2;
      const own = within.filter((p) => p.place.at >= from && (p.place.at < to || (last && p.place.at <= to)));
      const looks = own.flatMap((p) => p.readings);
      const seen = looks.filter((r) => r.seen.kind !== 'not seen');
      return {
        number: i + 1,
        from,
        to,
        points: own,
        worst: worstOf(own),
        state: seen.length > 0 ? 'seen' : looks.length > 0 ? 'not seen' : 'not inspected',
        lastSeen: seen.reduce<CalendarDay | undefined>(
          (a, r) => (a === undefined || r.day > a ? r.day : a),
          undefined,
        ),
      };
    });
    return { run, panels, recorded: installed.recorded, worst: worstOf(within) };
  });
}
