// Does an isolation point for oil or air stand at a gate that is said to be moved by hand? What a gate is moved by turns the order of
// work round: a gate by hand can be opened while the machine is locked, and one by air cannot.

import type { Break, Isolation } from '../../../domain/model/conveyor.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const gateByHandWithEnergy: Rule = {
  code: 'TL572',
  title: 'Gate by hand with an energy of its own',
  severity: 'warning',
  restsOn: ['block'],
  why:
    'An order that has a gate opened by hand behind a locked machine is wrong as soon as a cylinder moves it, and the other way round; ' +
    'where a cylinder was fitted later, the line of the gate still says what it was built with.',
  todo: 'Write at the gate what moves it now, `driven by air` say; the day it was changed stands in a `serviced` line. Else move or take out the isolation point.',
  given: 'conveyor',
  example: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break «Gate» at 7 m to 7.5 m slide gate driven by ‹hand|air› allowance 20 mm
  isolation Q1 "local isolator" electrical at 11.5 m
  isolation Feed "feed held off" material at 0.2 m
  isolation V7 "air valve of the gate" pneumatic at 7.3 m`,
  cases: [
    {
      name: 'a valve of something else, further off',
      text: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break Gate at 7 m to 7.5 m slide gate driven by hand allowance 20 mm
  isolation Q1 "local isolator" electrical at 11.5 m
  isolation Feed "feed held off" material at 0.2 m
  isolation V7 "air hammer" pneumatic at 3 m`,
    },
    {
      name: 'an isolator of the motor that hangs there',
      text: `
  break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
  break Gate at 7 m to 7.5 m slide gate driven by hand allowance 20 mm
  isolation Q1 "local isolator" electrical at 7.3 m
  isolation Feed "feed held off" material at 0.2 m`,
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, breaks, isolations }) {
      for (const gate of breaks) {
        const own = gate.drive === 'hand' ? isolations.find((point) => standsAt(point, gate)) : undefined;
        if (!own) continue;
        yield {
          origin: gate.nameOrigin ?? gate.origin,
          message: `${gate.name} of ${name} is said to be driven by hand, and at it stands ${own.name}, a ${own.kind} isolation point.`,
          related: [{ origin: own.origin, message: 'its isolation point' }],
        };
      }
    },
  ),
};

/** mm from the gate to the valve of its cylinder; judgement. */
const beside = 500;

function standsAt({ kind, at }: Isolation, { from, to }: Break): boolean {
  return (
    (kind === 'pneumatic' || kind === 'hydraulic') &&
    at !== undefined &&
    at.value >= from.value - beside &&
    at.value <= to.value + beside
  );
}
