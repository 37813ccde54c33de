// Which liner lay at a spot when a reading was made? Needed only to know what a colour means, so it goes by dates and, on the
// day of a reline, by the meter; exposure is worked out elsewhere (history.ts).

import type { Conveyor } from '../../domain/model/conveyor.js';
import { panelEnds } from '../../domain/model/panels.js';
import type { Reline } from '../../domain/model/records.js';
import { intervalOf } from '../../domain/model/runs.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import type { CalendarDay } from '../../domain/units/calendar.js';

export interface Fitted {
  /**
   * The liner that lay there, likeliest first. On the day of a reline both the new and the old one may have been looked at.
   * Without a chainage (mm): every liner that may have lain anywhere in the conveyor.
   */
  linersAt(conveyor: Conveyor, chainage: number | undefined, day: CalendarDay, meter: number): readonly LinerSpecification[];
}

/** `relines` in order of date within a conveyor. */
export function createFitted(relines: readonly Reline[]): Fitted {
  const byConveyor = new Map<Conveyor, readonly { readonly reline: Reline; readonly covers: (chainage: number) => boolean }[]>();
  for (const reline of relines) {
    byConveyor.set(reline.conveyor, [...(byConveyor.get(reline.conveyor) ?? []), { reline, covers: cover(reline) }]);
  }
  return {
    linersAt(conveyor, chainage, day, meter) {
      const there = (byConveyor.get(conveyor) ?? []).filter(({ reline, covers }) => reline.date.day <= day && (chainage === undefined || covers(chainage)));
      const history = [conveyor.liner, ...there.map(({ reline }) => reline.liner)];
      const last = there.at(-1)?.reline;
      if (chainage === undefined) return history.reverse();
      const newest = history.slice(-1);
      if (!last || last.date.day !== day) return newest;
      const both = history.slice(-2);
      return meter > last.meter.hours.value ? both.reverse() : both;
    },
  };
}

function cover(reline: Reline): (chainage: number) => boolean {
  if (reline.scope.length === 0) return () => true;
  const intervals = reline.scope.flatMap((stretch) => intervalOf(reline.conveyor, stretch, panelEnds) ?? []);
  return (chainage) => intervals.some(({ from, to }) => chainage >= from && chainage <= to);
}
