// How many people an access unit carries: its plate, or its rated load less what they handle up there.
// EN 280 rates a platform as n people of 80 kg and at least 40 kg of tools (from memory; the plate on site decides).

import { panelMassIfSound } from '../geometry/trough.js';
import { linerSide } from '../model/liner-side.js';
import type { Conveyor } from '../model/conveyor.js';
import type { AccessUnit } from '../model/plant.js';
import type { Step } from '../model/job.js';
import { areaOf, overlaps, within, type Area, type Ground } from './ground.js';

/** kg */
export const personMass = 80;
/** kg */
export const toolMass = 40;

/** Whole people beside a load in kg; 0 where the load alone is too much, Infinity where the unit states no limit. */
export function peopleAboard(unit: AccessUnit, load: number): number {
  const byLoad = unit.limit
    ? Math.max(0, Math.floor((unit.limit.value - toolMass - load) / personMass + 1e-9))
    : Infinity;
  return Math.min(byLoad, unit.people?.count ?? Infinity);
}

/**
 * People who stand by on the platform besides those who work: one of each crew that attends, since whoever stands by has to see
 * the opening, and the opening is up there. None where the author says how many are up there: the number counts everybody.
 */
export function standingByAboard(step: Step): number {
  return step.aboard ? 0 : crewsStandingBy(step).length;
}

/** Crews that attend and do not work on the step themselves. */
export function crewsStandingBy(step: Step): readonly string[] {
  const doing = step.crews.map(({ use }) => use.name);
  return (step.attendants ?? []).map(({ use }) => use.name).filter((name) => !doing.includes(name));
}

/**
 * The heaviest single part that is on the platform during the step, kg; 0 where none is, or its mass is not known. What is handled
 * beyond the stretch that a mobile platform serves is handled from there.
 */
export function loadAboard(ground: Ground, step: Step, areas: readonly Area[]): number {
  const { conveyor } = ground.job;
  const served = servedAreas(conveyor, areas);
  switch (step.action) {
    case 'strip':
    case 'fit': {
      const { insideRadius } = conveyor.trough;
      const sideHeight = linerSide(conveyor);
      const masses = ground.runs.flatMap((run) =>
        within(run.panels, areas)
          .filter((panel) => served.some((area) => overlaps(area, panel)))
          .map((panel) => {
            const section = {
              insideRadius: insideRadius.value,
              sideHeight: sideHeight.value,
              thickness: run.liner.thickness.value,
            };
            return panelMassIfSound(section, panel.length, run.liner.density.value) ?? 0;
          }),
      );
      return Math.max(0, ...masses);
    }
    case 'covers off':
    case 'covers on':
      return Math.max(
        0,
        ...conveyor.covers.flatMap((cover) =>
          cover.mass && served.some((area) => cover.from.value < area.to && cover.to.value > area.from)
            ? [cover.mass.value]
            : [],
        ),
      );
    default:
      return 0;
  }
}

/** Where a mobile platform serves the places of a step; all of them where none does, and one is used all the same. */
export function servedAreas({ access }: Conveyor, areas: readonly Area[]): readonly Area[] {
  const served = areas.flatMap((area) =>
    access
      .filter((zone) => zone.kind === 'mobile platform' && overlaps(areaOf(zone), area))
      .map((zone) => ({
        from: Math.max(area.from, zone.from.value),
        to: Math.min(area.to, zone.to.value),
      })),
  );
  return served.length > 0 ? served : areas;
}
