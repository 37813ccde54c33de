// A clock position or a side that was seen against the flow, as it is in the direction of flow.

import type { SeenPlace } from '../../domain/model/records.js';
import type { StatedClock } from '../../domain/model/stated.js';
import { formatClock, mirrorClock } from '../../domain/units/clock.js';

export function mirror({ hours, origin }: StatedClock): StatedClock {
  const turned = mirrorClock(hours);
  return { hours: turned, text: formatClock(turned), origin };
}

export function otherSide(side: SeenPlace['side']): SeenPlace['side'] {
  if (side === 'left side') return 'right side';
  return side === 'right side' ? 'left side' : side;
}
