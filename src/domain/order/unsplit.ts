// Which steps may not be left half done when a shift ends: a load in the air or a spiral hanging free, hot work and the watch
// after it, a drive or a gate half unbolted, and giving the machine back. Common practice; the rules of the site come first.

import type { Step } from '../model/job.js';

export function mustNotBeSplit(step: Step): boolean {
  if (step.heat?.kind === 'hot') return true;
  switch (step.action) {
    case 'isolate':
    case 'prove dead':
    case 'gas test':
    case 'restrain screw':
    case 'unbolt drive':
    case 'bolt drive':
    case 'release screw':
    case 'remove screw':
    case 'insert screw':
    case 'join screw':
    case 'patch':
    case 'fire watch':
    case 'gate off':
    case 'gate on':
    case 'gate shut':
    case 'gate open':
    case 'remove isolation':
    case 'run empty':
    case 'run loaded':
      return true;
    case 'empty':
    case 'pause':
    case 'covers off':
    case 'braces off':
    case 'hold-downs off':
    case 'strip':
    case 'clean':
    case 'other work':
    case 'fit':
    case 'hold-downs on':
    case 'braces on':
    case 'clear up':
    case 'covers on':
      return false;
  }
}
