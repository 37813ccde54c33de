// Slide gates: shut and opened from outside, by hand at any time, by a drive only while it has its energy; stripped and refitted
// from within.

import { isLockedByIsolation } from '../gates-above.js';
import { gateOff, gateOpen, gateShut, live, states, type States } from '../states.js';
import { inTurn, need, to, type Demands, type Need } from './demand.js';
import type { DemandsByAction, Site } from './site.js';

export const gateDemands: DemandsByAction<'gate off' | 'gate on' | 'gate shut' | 'gate open'> = {
  'gate off': (site) => turned(site, site.safe, states(gateOpen, gateShut), gateOpen, gateOff),
  'gate on': (site) => turned(site, site.safe, states(gateOff), gateOff, gateOpen),
  'gate shut': (site) => turned(site, driven(site), states(gateOpen), gateOpen, gateShut),
  'gate open': (site) => turned(site, driven(site), states(gateShut), gateShut, gateOpen),
};

function driven({ ground, step }: Site): Need[] {
  if (!step.gate || !isLockedByIsolation(ground.job.conveyor, step.gate.name)) return [];
  const powered = need([ground.isolation], states(live), live, 'gate locked', 'cannot be built');
  return inTurn(powered).map((each) => ({ ...each, goesOn: true }));
}

function turned(
  { ground, step }: Site,
  first: readonly Need[],
  from: States,
  good: number,
  then: number,
): Demands {
  const gate = ground.gates.filter((each) => each.name === step.gate?.name);
  return {
    needs: [
      ...first,
      ...inTurn(need(gate, from | states(then), good, 'gate out of turn', 'cannot be built')),
    ],
    effects: to(gate, then),
    done: { pieces: gate, states: states(then), by: 'all' },
  };
}
