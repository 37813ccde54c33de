// Power, air and fire: what makes the machine safe to reach into, and what gives it back and runs it.

import { isLockedByIsolation } from '../gates-above.js';
import { within, type Ground, type Piece } from '../ground.js';
import {
  bolted,
  cool,
  dead,
  emptied,
  free,
  gateOpen,
  gateShut,
  isolated,
  live,
  newPanel,
  newScrew,
  notRun,
  oldPanel,
  oldScrew,
  on,
  runEmpty,
  runLoaded,
  states,
  tested,
  untested,
} from '../states.js';
import type { ViolationKind } from '../violation.js';
import { inTurn, need, nothing, orMissing, to, type Need } from './demand.js';
import { watched, type DemandsByAction } from './site.js';

type PowerAction =
  | 'empty'
  | 'isolate'
  | 'prove dead'
  | 'gas test'
  | 'pause'
  | 'fire watch'
  | 'remove isolation'
  | 'run empty'
  | 'run loaded';

export const powerDemands: DemandsByAction<PowerAction> = {
  empty: ({ ground: { isolation, content, gates } }) => ({
    needs: inTurn([
      ...need([isolation], states(live), live, 'emptied too late', 'cannot be built'),
      ...need(gates, states(gateOpen), gateOpen, 'run too early', 'cannot be built'),
    ]),
    effects: to([content], emptied),
    done: { pieces: [content], states: states(emptied), by: 'all' },
  }),
  isolate: ({ ground: { isolation, running } }) => ({
    needs: [],
    effects: [...to([isolation], isolated), ...to([running], notRun)],
    done: { pieces: [isolation], states: states(isolated, dead), by: 'all' },
  }),
  'prove dead': ({ ground: { isolation } }) => ({
    needs: need([isolation], states(isolated, dead), isolated, 'isolation missing', 'unsafe'),
    effects: to([isolation], dead),
    done: { pieces: [isolation], states: states(dead), by: 'all' },
  }),
  'gas test': ({ ground, areas, proved }) => ({
    needs: proved,
    effects: to(within(ground.air, areas), tested),
    done: nothing,
  }),
  pause: ({ ground }) => ({
    needs: watched(ground.heat),
    effects: to(ground.air, untested),
    done: nothing,
  }),
  'fire watch': ({ ground, areas }) => ({
    needs: [],
    effects: to(within(ground.heat, areas), cool),
    done: nothing,
  }),
  'remove isolation': ({ ground, ground: { isolation } }) => ({
    needs: [
      ...need([isolation], states(isolated, dead), dead, 'isolation missing', 'unsafe'),
      ...watched(ground.heat),
      ...whole(ground, 'handed back too early', gatesThatMayStayShut(ground)),
    ],
    effects: [...to([isolation], live), ...to(ground.air, untested)],
    done: { pieces: [isolation], states: states(live), by: 'all' },
  }),
  'run empty': ({ ground, ground: { running } }) => ({
    needs: [...powered(ground), ...whole(ground, 'run too early')],
    effects: to([running], runEmpty),
    done: { pieces: [running], states: states(runEmpty, runLoaded), by: 'all' },
  }),
  'run loaded': ({ ground, ground: { running } }) => ({
    needs: [
      ...powered(ground),
      ...whole(ground, 'run too early'),
      ...orMissing(need([running], states(runEmpty, runLoaded), runEmpty, 'run too early', 'incomplete')),
    ],
    effects: to([running], runLoaded),
    done: { pieces: [running], states: states(runLoaded), by: 'all' },
  }),
};

function powered(ground: Ground): Need[] {
  return orMissing(need([ground.isolation], states(live), live, 'run too early', 'unsafe', true));
}

/** Everything that was taken off is back, nothing holds the spiral, and no gate is left pinned. */
function whole(ground: Ground, kind: ViolationKind, mayBeShut: readonly Piece[] = []): Need[] {
  const closed = [...ground.covers, ...ground.braces, ...ground.holdDowns];
  const panels = ground.runs.flatMap((run) => run.panels);
  return orMissing([
    ...need(closed, states(on), on, kind, 'unsafe', true),
    ...need(panels, states(oldPanel, newPanel), newPanel, kind, 'unsafe', true),
    ...need(ground.screw, states(oldScrew, newScrew), newScrew, kind, 'unsafe', true),
    ...need([ground.drive], states(bolted), bolted, kind, 'unsafe', true),
    ...need([ground.restraint], states(free), free, 'screw still restrained', 'unsafe', true),
    ...ground.gates.flatMap((gate) =>
      need(
        [gate],
        mayBeShut.includes(gate) ? states(gateOpen, gateShut) : states(gateOpen),
        gateOpen,
        kind,
        'unsafe',
        true,
      ),
    ),
  ]);
}

/** With a drive that isolation locks they can be opened only once it is off. */
function gatesThatMayStayShut({ gates, job }: Ground): Piece[] {
  return gates.filter(({ name }) => name !== undefined && isLockedByIsolation(job.conveyor, name));
}
