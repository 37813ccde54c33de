// May these panels be fitted again so: turned where the liner allows it, exchanged with one of the same make and length?

import { historyOf } from '../../../domain/model/history.js';
import { installedPanelEnds, installedPanels } from '../../../domain/model/panels.js';
import { setsAt } from '../../../domain/model/liner-sets.js';
import type { PanelsMoved, PanelUse } from '../../../domain/model/records.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { toCentimetre } from '../../../domain/units/length-words.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { intervalOf, runAt } from '../../../domain/model/runs.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

/** mm; sawn panels of one length differ by no more (judgement). */
const sameLength = 10;

export const panelMovedAgainstTheLiner: Rule = {
  code: 'TL373',
  title: 'Panel moved to where it does not belong',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'Bolt holes and countersinks of a panel that may not be turned lie on the wrong side, and one of another length or make leaves an open joint or a step.',
  todo: 'Check which panel it was. Where the bolt pattern allows it, say so in the liner: may be turned end for end.',
  given: 'estate',
  around: { liner: '‹|may be turned end for end›' },
  example: `
panels moved DG1 2024-10-07 meter 3900 h {
  «panel 3 of run 2 turned end for end»
  P1 thickness 11.4 mm
}`,
  cases: [
    {
      name: 'a panel that is not there',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  «panel 99 of run 2 turned end for end»
  P1 thickness 11.4 mm
}`,
    },
    {
      name: 'with itself',
      text: `
panels moved DG1 2024-10-07 meter 3900 h {
  «panel 3 of run 2 exchanged with panel 3 of run 2»
  P1 thickness 11.4 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const moved of estate.panelsMoved)
      for (const { panel, other, origin } of moved.moves) {
        const here = lying(estate, moved, panel);
        const there = other && lying(estate, moved, other);
        if (typeof here === 'string' || typeof there === 'string') {
          yield { origin, message: typeof here === 'string' ? here : String(there) };
          continue;
        }
        const message = there ? exchangeTrouble(here, there) : turnTrouble(here);
        if (message !== undefined) yield { origin, message, ...(there && fittedOtherwise(moved, here)) };
      }
  },
};

interface Lying {
  readonly liner: LinerSpecification;
  readonly from: number;
  readonly length: number;
  /** Nobody wrote down how long its run's panels are. */
  readonly reckoned: boolean;
}

/** Lengths that nobody wrote down may be others than are reckoned. */
function fittedOtherwise(
  { conveyor }: PanelsMoved,
  { from, length, reckoned }: Lying,
): { readonly todo?: string } {
  const run = runAt(conveyor, from + length / 2);
  if (!run || !reckoned) return {};
  return {
    todo:
      'Check which panel it was. Their lengths are reckoned and not written down: where they were cut otherwise, ' +
      `\`fitted run ${run.number} panels …\` in the reline that brought them, or in the conveyor, says it.`,
  };
}

function isReckoned(estate: Estate, conveyor: Conveyor, at: number, day: CalendarDay): boolean {
  const run = runAt(conveyor, at);
  return run !== undefined && !installedPanels(estate, run, day).recorded;
}

/** What lay there before the move, or why nothing is known to. */
function lying(estate: Estate, { conveyor, date }: PanelsMoved, panel: PanelUse): Lying | string {
  const place = intervalOf(conveyor, panel, installedPanelEnds(estate, date.day));
  if (!place) return `${conveyor.name} has no panel ${panel.first.count} there.`;
  const before = setsAt(historyOf(estate, conveyor).linerSets, (place.from + place.to) / 2).filter(
    ({ fitted, reline }) => !reline?.moved && (fitted?.day ?? -Infinity) <= date.day,
  );
  return {
    liner: before.at(-1)?.liner ?? conveyor.liner,
    from: place.from,
    length: place.to - place.from,
    reckoned: isReckoned(estate, conveyor, (place.from + place.to) / 2, date.day),
  };
}

function turnTrouble({ liner }: Lying): string | undefined {
  return liner.turning ? undefined : `${liner.name} does not say that its panels may be turned end for end.`;
}

function exchangeTrouble(here: Lying, there: Lying): string | undefined {
  if (here.from === there.from) return 'A panel cannot change places with itself.';
  if (here.liner !== there.liner) return `One of them is ${here.liner.name}, the other ${there.liner.name}.`;
  return Math.abs(here.length - there.length) > sameLength
    ? `One of them is ${lengthOn(here, toCentimetre(here.length))} long${here.reckoned ? ' as reckoned' : ''}, the other ${lengthOn(here, toCentimetre(there.length))}.`
    : undefined;
}
