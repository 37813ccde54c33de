// Is what is shut, opened, stripped or refitted as a gate a slide gate?

import { hasGate } from '../../../domain/model/conveyor.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const barrierIsNoGate: Rule = {
  code: 'TL485',
  title: 'Gate step about something that is no gate',
  severity: 'error',
  restsOn: ['machine'],
  why: 'Those below trust a barrier that is not there.',
  todo: 'Name a slide gate of the conveyor; an inlet or a discharge cannot be shut against what slides down the trough.',
  given: 'job',
  bad: but(soundOrder, ['  strip run', '  gate shut «Inlet»\n  strip run']),
  good: but(
    soundOrder,
    ['  strip run', '  gate shut Gate\n  strip run'],
    ['  remove iso', '  gate open Gate\n  remove iso'],
  ),
  *check({ estate }) {
    for (const { order, conveyor } of estate.jobs) {
      for (const { gate, action } of order?.steps ?? []) {
        const place = gate && conveyor.breaks.find(({ name }) => name === gate.name);
        if (!gate || !place || place.kind === 'slide gate') continue;
        // The gate below a discharge comes off and goes on; it holds nothing back from people in the trough.
        if (hasGate(place) && (action === 'gate off' || action === 'gate on')) continue;
        yield {
          origin: gate.origin,
          message: `${place.name} of ${conveyor.name} is a break of the kind ${place.kind}, and "${action}" needs a slide gate.`,
          related: [{ origin: place.origin, message: place.kind }],
        };
      }
    }
  },
};
