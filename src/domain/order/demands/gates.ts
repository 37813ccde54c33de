// Slide gates: shut and opened from outside, stripped and refitted from within.

import { gateOff, gateOpen, gateShut, states, type States } from '../states.js';
import { inTurn, need, to, type Demands, type Need } from './demand.js';
import type { DemandsByAction, Site } from './site.js';

export const gateDemands: DemandsByAction<'gate off' | 'gate on' | 'gate shut' | 'gate open'> = {
  'gate off': (site) => turned(site, site.safe, states(gateOpen, gateShut), gateOpen, gateOff),
  'gate on': (site) => turned(site, site.safe, states(gateOff), gateOff, gateOpen),
  'gate shut': (site) => turned(site, site.proved, states(gateOpen), gateOpen, gateShut),
  'gate open': (site) => turned(site, site.proved, states(gateShut), gateShut, gateOpen),
};

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
