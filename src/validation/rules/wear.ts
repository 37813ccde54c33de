// TL5xx: what the wear calls for.

import type { Rule } from '../rule.js';
import { inspectionOverdue } from './wear/inspection-overdue.js';
import { lastColourShowing } from './wear/last-colour-showing.js';
import { limitBeforeTheNextOutage } from './wear/limit-before-the-next-outage.js';
import { lifeExpectedBeyondBelief } from './wear/life-expected-beyond-belief.js';
import { orderTheLinerNow } from './wear/order-the-liner-now.js';
import { pointsSpeedingUpTogether } from './wear/points-speeding-up-together.js';
import { speedNotCounted } from './wear/speed-not-counted.js';
import { wearSpeedingUp } from './wear/wear-speeding-up.js';

export const wearRules: readonly Rule[] = [
  limitBeforeTheNextOutage,
  inspectionOverdue,
  orderTheLinerNow,
  lastColourShowing,
  wearSpeedingUp,
  pointsSpeedingUpTogether,
  lifeExpectedBeyondBelief,
  speedNotCounted,
];
