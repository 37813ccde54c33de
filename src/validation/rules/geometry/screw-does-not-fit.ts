// Does the screw go into the lined trough? Liner radius less screw radius; also for what a reline, a screw change or a job brings.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Job } from '../../../domain/model/job.js';
import { screwAfter } from '../../../domain/model/lying-screw.js';
import type { Origin } from '../../../domain/model/origin.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { intervalOf, runsOf } from '../../../domain/model/runs.js';
import type { LinerSpecification, ScrewSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Found } from '../../finding.js';
import { clearanceOf } from '../../evidence/lined-section.js';
import type { Rule } from '../../rule.js';

export const screwDoesNotFit: Rule = {
  code: 'TL201',
  title: 'Screw that does not fit into the lined trough',
  severity: 'error',
  restsOn: [],
  why: 'Panels and spiral would be bought and cut, and found out on site not to go together.',
  todo: 'Measure trough, liner and screw again; the trough is given by its radius, the screw by its diameter.',
  given: 'conveyor',
  example: `
  trough inside radius ‹206|226› mm side height 260 mm plate 4 mm
  screw «Spiral400»`,
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      yield* judge(conveyor, conveyor.liner, conveyor.screw, conveyor.screwUse.origin);
    for (const conveyor of estate.conveyors)
      for (const { liner, use } of conveyor.linersAlong)
        yield* judge(conveyor, liner, conveyor.screw, use.origin);
    for (const { conveyor, liner, linerUse } of estate.relines) {
      if (linerUse && liner !== conveyor.liner)
        yield* judge(conveyor, liner, conveyor.screw, linerUse.origin);
    }
    for (const { conveyor, screw, origin } of estate.screwChanges) {
      if (screw !== conveyor.screw) yield* judge(conveyor, conveyor.liner, screw, origin);
    }
    for (const job of estate.jobs) {
      const screw = screwAfter(job);
      const tried = new Set<LinerSpecification>();
      for (const { liner, origin } of job.relines) {
        if (tried.has(liner) || (liner === job.conveyor.liner && screw === job.conveyor.screw)) continue;
        tried.add(liner);
        yield* judge(job.conveyor, liner, screw, origin);
      }
      if (
        job.screwChange &&
        screw !== job.conveyor.screw &&
        !tried.has(job.conveyor.liner) &&
        keepsOldLiner(job)
      )
        yield* judge(job.conveyor, job.conveyor.liner, screw, job.screwChange.origin);
    }
  },
};

/** True where the job leaves a run, or a part of one, with the liner that is there. */
function keepsOldLiner({ conveyor, relines }: Job): boolean {
  const scope = relines.flatMap(({ stretch }) => intervalOf(conveyor, stretch, panelEnds) ?? []);
  return runsOf(conveyor).some((run) => !scope.some(({ from, to }) => from <= run.from && to >= run.to));
}

function* judge(
  conveyor: Conveyor,
  liner: LinerSpecification,
  screw: ScrewSpecification,
  origin: Origin,
): Iterable<Found> {
  const clearance = clearanceOf(conveyor, liner, screw);
  if (clearance === undefined || clearance > 0) return;
  yield {
    origin,
    message:
      `${screw.name} is ${screw.outsideDiameter.text} across, and ${liner.name} (${liner.thickness.text}) leaves ` +
      `${lengthOn(conveyor, 2 * (conveyor.trough.insideRadius.value - liner.thickness.value))} in the trough of ${conveyor.name}.`,
    related: [
      {
        origin: conveyor.trough.origin,
        message: `trough, inside radius ${conveyor.trough.insideRadius.text}`,
      },
      { origin: screw.outsideDiameter.origin, message: `outside diameter of ${screw.name}` },
      { origin: liner.thickness.origin, message: `thickness of ${liner.name}` },
    ],
  };
}
