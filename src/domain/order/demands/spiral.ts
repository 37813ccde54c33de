// The spiral: held before it is unbolted, out before the new one comes in, in only over a trough that is lined, and let go
// only once the drive holds it again.

import {
  bolted,
  free,
  laidScrew,
  newScrew,
  noScrew,
  oldScrew,
  restrained,
  states,
  unbolted,
} from '../states.js';
import { need, orMissing, to, type Need } from './demand.js';
import { linedUnder, type DemandsByAction, type Site } from './site.js';

type SpiralAction =
  | 'restrain screw'
  | 'unbolt drive'
  | 'remove screw'
  | 'insert screw'
  | 'join screw'
  | 'bolt drive'
  | 'release screw';

export const spiralDemands: DemandsByAction<SpiralAction> = {
  'restrain screw': ({ ground: { restraint }, reached }) => ({
    needs: reached,
    effects: to([restraint], restrained),
    done: { pieces: [restraint], states: states(restrained), by: 'all' },
  }),
  'unbolt drive': (site) => ({
    needs: [...site.reached, ...held(site)],
    effects: to([site.ground.drive], unbolted),
    done: { pieces: [site.ground.drive], states: states(unbolted), by: 'all' },
  }),
  'remove screw': (site) => ({
    needs: [
      ...site.opened,
      ...held(site),
      ...need([site.ground.drive], states(unbolted), unbolted, 'screw out of turn', 'cannot be built'),
    ],
    effects: to(site.screw, noScrew),
    done: { pieces: site.screw, states: states(noScrew), by: 'any' },
  }),
  'insert screw': ({ ground, screw, opened }) => {
    const noOldOne = states(noScrew, newScrew, laidScrew);
    return {
      needs: [
        ...opened,
        ...linedUnder(ground, screw, 'screw out of turn'),
        ...need(screw, noOldOne, noScrew, 'screw out of turn', 'cannot be built'),
      ],
      effects: to(screw, ground.joins ? laidScrew : newScrew),
      done: { pieces: screw, states: states(laidScrew, newScrew), by: 'any' },
    };
  },
  'join screw': ({ screw, opened }) => ({
    needs: [...opened, ...need(screw, states(laidScrew), laidScrew, 'screw out of turn', 'cannot be built')],
    effects: to(screw, newScrew),
    done: { pieces: screw, states: states(newScrew), by: 'any' },
  }),
  'bolt drive': ({ ground: { screw, drive }, reached }) => ({
    needs: [
      ...reached,
      ...need(screw, states(oldScrew, newScrew), newScrew, 'screw out of turn', 'cannot be built', true),
      ...need([drive], states(unbolted, bolted), unbolted, 'screw out of turn', 'cannot be built'),
    ],
    effects: to([drive], bolted),
    done: { pieces: [drive], states: states(bolted), by: 'all' },
  }),
  'release screw': ({ ground: { drive, restraint }, reached }) => ({
    needs: [
      ...reached,
      ...orMissing(need([drive], states(bolted), bolted, 'screw not restrained', 'unsafe', true)),
    ],
    effects: to([restraint], free),
    done: { pieces: [restraint], states: states(free), by: 'all' },
  }),
};

function held({ ground }: Site): Need[] {
  return need([ground.restraint], states(restrained), restrained, 'screw not restrained', 'unsafe');
}
