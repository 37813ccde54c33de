// Does a reline count panels whose cut nobody wrote down, and would the count reach elsewhere if they had been laid from the other
// end? Then what it renewed is a guess. 100 mm is where a spot may change its panel unseen (judgement).

import { firstPiecesOf } from '../../../domain/model/first-panels.js';
import { installedPanels } from '../../../domain/model/panels.js';
import { intervalOf, panelsText, runsOf, type Run } from '../../../domain/model/runs.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { addDays } from '../../../domain/units/calendar.js';
import { toCentimetre } from '../../../domain/units/length-words.js';
import { counted } from '../../../domain/units/wording.js';
import { relinesByNumber } from '../../telling/panel-words.js';
import type { Rule } from '../../rule.js';

/** mm. */
const elsewhere = 100;

export const panelsCountedByGuess: Rule = {
  code: 'TL576',
  title: 'Panels counted by a layout that nobody wrote down',
  severity: 'information',
  restsOn: ['history'],
  why: 'Where the short panel lies decides which stretch is taken for new: a worn spot beside it may count as relined, or a new one as old.',
  todo: 'Write how the panels were cut, from the tail end of the run, or the stretch that was renewed.',
  given: 'estate',
  example: `
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope «panels 1 to 2 of run 2|from 1.5 m to 3.4 m»
}`,
  cases: [
    {
      name: 'all of them are one, wherever the short one lies',
      text: 'reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  scope panels 1 to 5 of run 2\n}',
    },
    {
      name: 'with lengths of its own that go with it',
      text: 'reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  scope panels 1 to 2 of run 2\n  fitted run 2 panels 700 mm, 1200 mm\n}',
    },
    {
      name: 'with lengths of its own that do not',
      text: 'reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  scope «panels 1 to 2 of run 2»\n  fitted run 2 panels 1200 mm, 1200 mm\n}',
    },
    {
      name: 'a reline before it wrote them down',
      text: `reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 2
  fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm, 700 mm
}
reline DG1 2025-06-09 meter 7000 h {
  liner TwoLayer12
  scope panels 1 to 2 of run 2
}`,
    },
  ],
  *check({ estate }) {
    const counting = new Set(
      estate.relines
        .filter(({ scope }) => scope.some(({ kind }) => kind === 'panels'))
        .map((each) => each.conveyor),
    );
    for (const conveyor of estate.conveyors.filter((each) => counting.has(each)))
      for (const run of runsOf(conveyor)) {
        const relines = relinesByNumber(estate, run);
        const told = relines.flatMap((reline) => {
          const before = installedPanels(estate, run, addDays(reline.date.day, -1));
          // Lengths that it gives itself, and that go with what is taken, bear it out; of several liners neither end is the other's mirror.
          const isBorneOut = installedPanels(estate, run, reline.date.day).recorded;
          if (before.recorded || isBorneOut || firstPiecesOf(run).length > 1) return [];
          return reline.scope.flatMap((stretch) => {
            if (stretch.kind !== 'panels') return [];
            const taken = intervalOf(conveyor, stretch, (each) => (each === run ? before.layout.joints : []));
            const other = intervalOf(conveyor, stretch, (each) =>
              each === run ? mirrored(run, before.layout.joints) : [],
            );
            if (!taken || !other) return [];
            const off = Math.max(Math.abs(taken.from - other.from), Math.abs(taken.to - other.to));
            return off > elsewhere ? [{ stretch, taken, other }] : [];
          });
        });
        const [first, ...others] = told;
        if (!first) continue;
        const words = ({ from, to }: { readonly from: number; readonly to: number }): string =>
          `${chainageOn(conveyor, toCentimetre(from))} to ${chainageOn(conveyor, toCentimetre(to))}`;
        const { stretch, taken, other } = first;
        yield {
          origin: stretch.origin,
          message:
            `How the panels of run ${run.number} of ${conveyor.name} were cut is not written: ` +
            `${panelsText(stretch.first.count, stretch.last.count, run.number)} ` +
            `${stretch.first.count === stretch.last.count ? 'is' : 'are'} taken for ${words(taken)}; ` +
            `laid from the other end, ${words(other)}` +
            (others.length > 0 ? `. So are ${counted(others.length, 'later scope')}.` : '.'),
          todo:
            `Write \`fitted run ${run.number} panels …\` in \`conveyor ${conveyor.name}\`, or in the reline that brought them, ` +
            'or the stretch itself (`scope from … to …`).',
        };
      }
  },
};

/** Joints as they would lie from the other end. */
function mirrored({ from, to }: Run, joints: readonly number[]): readonly number[] {
  return joints.map((joint) => from + to - joint).reverse();
}
