// What is said where somebody can be hurt before anything is fitted: power, air, fire, gates, a spiral that is let go.

import type { Step } from '../../model/job.js';
import { formatHours } from '../../units/format.js';
import { gateDrive, saysItsDrive } from '../gates-above.js';
import { watchAfter } from '../heat.js';
import { stepAt } from '../sequence.js';
import { gateOff } from '../states.js';
import type { OrderSlip } from '../walk-state.js';
import { listing, sayStep } from '../words.js';
import { are } from './pieces.js';
import { known, otherStep, type Telling, type ViolationWords, type WordsByKind } from './telling.js';

export const safetyWords: WordsByKind<
  | 'isolation missing'
  | 'gas test missing'
  | 'hot work over liner'
  | 'fire watch missing'
  | 'fire watch too short'
  | 'fire watch too late'
  | 'gate out of turn'
  | 'gate locked'
  | 'gate above open'
  | 'gate opened above people'
  | 'emptied too late'
> = {
  'isolation missing': ({ slip, doing, when }) => isolation(slip, doing, when),
  'gas test missing': ({ doing, what, when }) => ({
    message: `${doing} opens or enters an enclosed space without a gas test of ${what}.${when}`,
    reason:
      'Material in the trough gives off gas when it is disturbed, smell is no warning, and people reach into the trough from here on.',
  }),
  'hot work over liner': ({ step, doing, what }) => hotWork(doing, what, step),
  'fire watch missing': ({ doing, late, cause }) => ({
    message:
      `${doing} comes before the hot work is watched: ` +
      `${cause ? `"${sayStep(cause)}" throws sparks` : 'sparks were thrown'}, ` +
      `and ${late ? `"${sayStep(late)}" comes only later` : 'no fire watch follows it'}.`,
    reason:
      'Polyethylene and dust smoulder out of sight and break into fire when everybody has gone; somebody stays, watches, and does nothing else.',
  }),
  'fire watch too short': ({ step, doing, cause }) => ({
    message:
      `${doing} watches for ${known(step?.takes).text}, ` +
      `and "${sayStep(known(cause))}" asks for ${formatHours(watchAfter(known(cause)))}.`,
    reason:
      'What smoulders behind the liner shows late. The watch lasts as long as the permit asks, counted from the last spark.',
  }),
  'fire watch too late': ({ w, slip, doing, cause }) => {
    const between = otherStep(w, slip, 'comes between');
    return {
      message:
        `${doing} begins only after "${sayStep(known(between))}": ` +
        `nobody watches the place from the end of "${sayStep(known(cause))}" until then.`,
      reason:
        'The watch is counted from the last spark of each weld or cut. Welds may follow one another directly under one watch; ' +
        'whoever turns to other work first leaves what glows to itself.',
    };
  },
  'gate out of turn': ({ slip, doing, what, when }) => ({
    message: `${doing} finds ${what} ${slip.found === gateOff ? 'stripped' : 'shut'}.${when}`,
    reason:
      'A gate is pinned shut, opened, stripped and refitted in turn; a barrier that is not where the order says protects nobody.',
  }),
  'gate locked': (telling) => gateLocked(telling),
  'gate above open': (telling) => gateAboveOpen(telling),
  'gate opened above people': (telling) => gateOpenedAbove(telling),
  'emptied too late': ({ doing, when }) => ({
    message: `${doing} needs power, and the machine is isolated.${when}`,
    reason:
      'Only a turning screw empties the trough; what stays in is weight on the spiral, gas, and dirt under the liner.',
  }),
};

const comesDown =
  'What stands or sticks above an open gate comes down the slope without warning, ' +
  'faster than anybody gets out of the trough, and buries whoever is below it.';

function gateAboveOpen({ slip, doing, what, when }: Telling): ViolationWords {
  const stands = slip.found === gateOff ? 'stripped' : 'open';
  return {
    message:
      `${doing} has people in the trough below ${what}, which ${are(slip)} ${stands}.${when}` +
      `${slip.missing ? ` No step shuts ${slip.pieces.length === 1 ? 'it' : 'them'} before.` : ''}`,
    reason: comesDown,
  };
}

function gateOpenedAbove({ w, slip, doing, what }: Telling): ViolationWords {
  const below = [...slip.others.keys()].map((i) => `"${sayStep(stepAt(w.sequence, i))}"`);
  return {
    message: `${doing} opens ${what} while there is work to be done below it: ${listing(below, 4)}.`,
    reason: comesDown,
  };
}

function gateLocked({ w, step, doing }: Telling): ViolationWords {
  const { conveyor } = w.ground.job;
  const gate = known(step?.gate).name;
  const drive = known(gateDrive(conveyor, gate));
  const how = saysItsDrive(conveyor, gate)
    ? `${gate} is driven by ${drive}`
    : `going by the isolation points of ${conveyor.name}, ${gate} is driven by ${drive}`;
  return {
    message: `${doing} comes while the machine is isolated, and ${how}.`,
    reason:
      'A drive that is locked off moves nothing: the gate stays as it is, people trust a barrier that is not there, ' +
      'or somebody takes a lock off again to move it.',
  };
}

function isolation(slip: OrderSlip, doing: string, when: string): ViolationWords {
  const message =
    slip.found === 1
      ? `${doing} comes before the machine is proved dead.${when}`
      : `${doing} comes while the machine is not isolated.${when}`;
  return {
    message,
    reason:
      'A spiral that can turn takes hands and arms; isolation counts only when a try-start has proved it dead.',
  };
}

/** What is said on the step, and what is still to be said. */
function hotWork(doing: string, what: string, step: Step | undefined): ViolationWords {
  const heat = step?.heat?.kind === 'hot' ? step.heat : undefined;
  const lacks = heat?.shielded ? 'wet' : heat?.wet ? 'shielded' : 'shielded and wet';
  return {
    message: `${doing} is hot work with liner in reach of its sparks, ${what}, and the step does not say that it is ${lacks}.`,
    reason:
      'PE1000 burns and drips burning, and the fire runs down the trough out of reach. ' +
      'Strip it there first, do it cold, or shield it, keep it wet and watch it; ' +
      'a word in the note is no measure.',
  };
}
