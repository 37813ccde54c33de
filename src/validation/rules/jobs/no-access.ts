// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';

export const noAccess: Rule = {
  code: 'TL419',
  title: 'Work where nobody can get',
  severity: 'error',
  restsOn: ['machine'],
  why: 'Without access the crew stands below the work with its tools.',
  todo: 'Declare the access to the stretch on the conveyor.',
  given: 'estate',
  around: { conveyor: '- confined\n- cover\n- hold-down\naccess Floor at 0 m to ‹7|12› m ground' },
  example: `
job J1 {
  spiral held up by "chain hoist" rated 500 kg every 3 m
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  order {
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
  check: onViolation('no access'),
};
