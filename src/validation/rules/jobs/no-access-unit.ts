// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';

export const noAccessUnit: Rule = {
  code: 'TL420',
  title: 'Mobile access without a unit',
  severity: 'error',
  restsOn: ['machine'],
  why: 'The stretch is reached by a mobile platform, and the job has none: it has to be hired, and that takes days.',
  todo: 'Name an access unit of the plant on the job.',
  given: 'estate',
  around: {
    conveyor:
      '- confined\n- cover\n- hold-down\naccess Floor at 0 m to 7 m ground\naccess Yard at 7 m to 12 m mobile platform height 6 m',
  },
  example: `
job J1 {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  ‹|access units MP1
  ›order {
    isolate
    prove dead
    «strip» run above Gate
    clean run above Gate
    fit run above Gate starting at head
    remove isolation
    run empty
    run loaded
  }
}`,
  check: onViolation('no access unit'),
};
