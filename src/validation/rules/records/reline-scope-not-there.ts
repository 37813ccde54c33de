// Does every stretch that a reline, a job, a look or a record of work names exist on its conveyor?

import { datedRecords } from '../../../domain/model/dated-records.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import { breaksNamed, findRun, runsOf, runUseText, type Run } from '../../../domain/model/runs.js';
import type { Stretch } from '../../../domain/model/stretch.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const relineScopeNotThere: Rule = {
  code: 'TL315',
  title: 'Stretch that the conveyor does not have',
  severity: 'error',
  restsOn: [],
  why: 'The record or the step covers nothing: the liner there counts as never changed, or the work is not planned.',
  todo: 'Runs are numbered from the tail; name one by its number or by a break at one of its ends (`run above Gate`, `run below Gate`).',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope «run 5|run 3»
}`,
  cases: [
    {
      name: 'an old panel that was not there',
      text: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  old panel 2 of run 2 thickness 9 mm
  old panel «9 of run 2» thickness 9 mm
}`,
    },
    {
      name: 'a condition at a panel',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  bolts loose 2 at «panel 9 of run 2»
  bolts loose 2 at panel 2 of run 2
}
serviced DG1 2025-03-12 bolts tightened at «panel 1 of run 7»`,
    },
  ],
  *check({ estate }) {
    for (const { conveyor, scope } of estate.relines)
      for (const stretch of scope) yield* judge(conveyor, stretch);
    for (const { conveyor, panelsFitted } of estate.relines)
      for (const { run } of panelsFitted) yield* judge(conveyor, run);
    for (const conveyor of estate.conveyors)
      for (const { run } of conveyor.panelsFitted) yield* judge(conveyor, run);
    for (const { conveyor, date, oldPanels } of estate.relines)
      for (const { spot } of oldPanels)
        if (spot.kind === 'panel') yield* judge(conveyor, spot.panel, installedPanelEnds(estate, date.day));
    for (const { conveyor, date, panelThicknesses } of estate.relines)
      for (const { stretch } of panelThicknesses)
        yield* judge(conveyor, stretch, installedPanelEnds(estate, date.day));
    for (const { conveyor, date, conditions, remarks } of datedRecords(estate))
      for (const { panel } of [...conditions, ...remarks])
        if (panel) yield* judge(conveyor, panel, installedPanelEnds(estate, date.day));
    for (const { conveyor, date, place, ended } of estate.services)
      for (const panel of [place.panel, ended?.panel])
        if (panel) yield* judge(conveyor, panel, installedPanelEnds(estate, date.day));
    // Steps of a written order are judged with the order.
    for (const { conveyor, relines } of estate.jobs)
      for (const { stretch } of relines) yield* judge(conveyor, stretch);
  },
};

function* judge(
  conveyor: Conveyor,
  stretch: Stretch,
  ends: (run: Run) => readonly number[] = panelEnds,
): Iterable<Found> {
  const { origin } = stretch;
  switch (stretch.kind) {
    case 'all':
      return;
    case 'chainage': {
      const length = conveyor.length;
      if (stretch.to.value <= stretch.from.value)
        yield {
          origin,
          message: `This stretch runs from ${stretch.from.text} to ${stretch.to.text}.`,
          todo: 'Write the lower chainage first.',
        };
      else if (stretch.from.value < -0.5 || stretch.to.value > length.value + 0.5) {
        yield {
          origin,
          message: `This stretch runs from ${stretch.from.text} to ${stretch.to.text}, and ${conveyor.name} from 0 m to ${length.text}.`,
        };
      }
      return;
    }
    case 'run':
    case 'panels': {
      const run = findRun(conveyor, stretch.run);
      if (!run) {
        const runs = runsOf(conveyor).map(
          (one) => `run ${one.number} (${one.tailBreak.name} to ${one.headBreak.name})`,
        );
        // A break of that name that does not exist is told as an unknown name.
        const known = (name: string): boolean => conveyor.breaks.some((one) => one.name === name);
        if (!breaksNamed(stretch.run).every(({ name }) => known(name))) return;
        yield {
          origin,
          message: `${conveyor.name} has no run ${runUseText(stretch.run)}; it has ${list(runs, 'and', 8)}.`,
        };
        return;
      }
      if (stretch.kind === 'run') return;
      const panels = ends(run).length - 1;
      if (stretch.first.count > stretch.last.count) {
        yield {
          origin,
          message: `Panels ${stretch.first.count} to ${stretch.last.count} run backwards.`,
          todo: 'Panels are numbered from the tail end of their run; write the lower number first.',
        };
      } else if (stretch.last.count > panels) {
        yield {
          origin,
          message:
            `Run ${run.number} of ${conveyor.name} (${chainageOn(conveyor, run.from)} to ${chainageOn(conveyor, run.to)}) ` +
            `has ${panels} panels, and this names panel ${stretch.last.count}.`,
        };
      }
    }
  }
}
