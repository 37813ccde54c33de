// What each kind of step needs to find, and what it leaves behind (all but `fit`, which front.ts follows panel by panel).
// The order between kinds of work over the same stretch: isolate and prove dead, test the air where enclosed, covers off,
// braces and hold-downs off, strip, clean, fit, braces and hold-downs back, covers back, hand back, run empty, run loaded.
// A screw: restrain the spiral before the drive plate is unbolted; in again after the liner under it and before the
// hold-downs. Only stretches that touch bind one another.

import type { Step, StepAction } from '../model/job.js';
import { need, to, type Demands, type Need } from './demands/demand.js';
import { gateDemands } from './demands/gates.js';
import { linerDemands } from './demands/liner.js';
import { openingDemands } from './demands/opening.js';
import { powerDemands } from './demands/power.js';
import { siteOf, type DemandsByAction } from './demands/site.js';
import { spiralDemands } from './demands/spiral.js';
import { within, type Area, type Ground } from './ground.js';
import { gatePiecesAbove } from './gates-above.js';
import { gateShut, littered, states } from './states.js';

const byAction: DemandsByAction<StepAction> = {
  ...powerDemands,
  ...openingDemands,
  ...spiralDemands,
  ...linerDemands,
  ...gateDemands,
};

export function demandsOf(ground: Ground, step: Step, areas: readonly Area[]): Demands {
  const site = siteOf(ground, step, areas);
  const demands = byAction[step.action](site);
  return {
    ...demands,
    needs: [...demands.needs, ...site.fire, ...heldBack(ground, step, areas)],
    effects: [
      ...demands.effects,
      ...site.smoulders,
      ...(leavesLitter(step) ? to(within(ground.litter, areas), littered) : []),
    ],
  };
}

/** What stands above on a slope. */
function heldBack(ground: Ground, step: Step, areas: readonly Area[]): Need[] {
  return need(gatePiecesAbove(ground, step, areas), states(gateShut), gateShut, 'gate above open', 'unsafe');
}

/** Old liner, offcuts, swarf and tools lie in the trough after these. */
function leavesLitter(step: Step): boolean {
  switch (step.action) {
    case 'remove screw':
    case 'strip':
    case 'clean':
    case 'patch':
    case 'fit':
    case 'insert screw':
    case 'join screw':
    case 'hold-downs on':
    case 'braces on':
      return true;
    case 'other work':
      return step.stretch !== undefined;
    default:
      return false;
  }
}
