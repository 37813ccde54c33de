// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder, soundScrewChange } from '../../telling/sound-order.js';

const stays = but(
  soundOrder,
  ['  strip run above Gate', '  restrain screw\n  strip run above Gate'],
  ['  hold-downs on', '  release screw\n  hold-downs on'],
);

export const screwStillRestrained: Rule = {
  code: 'TL495',
  title: 'Spiral restrained while the machine is run',
  severity: 'error',
  restsOn: [],
  why:
    'A spiral that is started while chains or clamps hold it winds itself up until they tear off or the drive stalls; ' +
    'what tears off is thrown.',
  todo: 'Take the restraint off once the drive holds the spiral, before isolation is removed: `release screw`.',
  given: 'job',
  bad: but(soundScrewChange, ['  release screw\n', ''], ['remove isolation', '«remove isolation»']),
  good: soundScrewChange,
  cases: [
    { name: 'a spiral that stays in and is released', text: stays },
    {
      name: 'released only after the machine is handed back',
      text: but(
        stays,
        ['  release screw\n', ''],
        ['  remove isolation\n', '  «remove isolation»\n  release screw\n'],
      ),
    },
    {
      name: 'an order that ends before the machine is handed back',
      text: but(
        stays,
        ['order {', '«order» {'],
        ['  release screw\n', ''],
        ['  remove isolation\n  run empty\n  run loaded\n', ''],
      ),
    },
  ],
  check: onViolation('screw still restrained'),
};
