// A clock position that was seen against the flow, as it is in the direction of flow.

import type { StatedClock } from '../../domain/model/stated.js';
import { formatClock, mirrorClock } from '../../domain/units/clock.js';

export function mirror({ hours, origin }: StatedClock): StatedClock {
  const turned = mirrorClock(hours);
  return { hours: turned, text: formatClock(turned), origin };
}
