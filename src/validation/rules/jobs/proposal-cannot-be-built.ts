// Told by the planner (domain/plan): the job writes no order, and the work that is proposed for it cannot be done as it stands.

import { onProposal } from '../../telling/on-plan.js';
import type { Rule } from '../../rule.js';

export const proposalCannotBeBuilt: Rule = {
  code: 'TL534',
  title: 'Job for which no work can be proposed that can be done',
  severity: 'error',
  restsOn: ['machine'],
  why: 'The pack of such a job is stamped as not buildable on the day it is printed, when crews and outage are booked.',
  todo: 'Declare the access, crew or platform that is missing, or write the order of work; the work pack lists everything that stands in the way.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews ‹Solo|Alpha›
}`,
  check: onProposal,
};
