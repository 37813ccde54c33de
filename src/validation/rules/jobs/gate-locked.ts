// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundRunBelow } from '../../telling/sound-order.js';

const hydraulicGate =
  `break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm\n` +
  `break Gate at 7 m to 7.5 m slide gate driven by hydraulics allowance 20 mm\n` +
  `isolation Q1 "local isolator" electrical at 11.5 m\nisolation Feed "feed held off" material at 0.2 m\n` +
  `isolation H1 "power pack" hydraulic`;

export const gateLocked: Rule = {
  code: 'TL554',
  title: 'Gate to be moved while its drive is locked off',
  severity: 'error',
  restsOn: ['machine'],
  why:
    'Isolation takes away what moves the gate: people trust a barrier that is not there, or somebody takes a lock off ' +
    'again to move it.',
  todo:
    'Shut the gate first, then isolate and prove dead; open it once isolation is removed and before the machine runs. ' +
    'Where it moves by hand, say so: `slide gate driven by hand`.',
  given: 'job',
  around: { conveyor: hydraulicGate },
  bad: but(soundRunBelow, ['  gate shut Gate\n  isolate', '  isolate\n  «gate shut» Gate'], ...openedLate()),
  good: but(soundRunBelow, ...openedLate()),
  cases: [
    {
      name: 'opened before isolation is removed',
      text: but(soundRunBelow, ['  gate open', '  «gate open»']),
    },
  ],
  check: onViolation('gate locked'),
};

function openedLate(): readonly (readonly [string, string])[] {
  return [
    ['  gate open Gate\n', ''],
    ['  run empty', '  gate open Gate\n  run empty'],
  ];
}
