// Does the work ask for a tool that is not on the job's own list? A list that leaves one out is trusted all the same. Asked for
// is what a step names by the words under which some job of the estate lists it, and whatever tightens to the declared torque.
// A job without a list of tools has none to trust.

import type { Rule } from '../../rule.js';
import { sayStep } from '../../../domain/order/words.js';

export const toolNotBrought: Rule = {
  code: 'TL498',
  title: 'Tool that the work asks for and the list leaves out',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'The crew packs by the list; what is not on it is missed above, with the trough open and the clock running.',
  todo: 'Add a `tool` line for it, or take the words out of the step.',
  given: 'job',
  around: { liner: 'tightening torque 15 N·m' },
  bad: '  «tool "depth gauge"»',
  good: '  tool "depth gauge"\n  tool "torque wrench"',
  cases: [{ name: 'a job without a list', text: '  lift limit 25 kg' }],
  *check({ estate }) {
    const known = new Set(
      estate.jobs.flatMap(({ tools = [] }) => tools.map(({ what }) => what.toLowerCase())),
    );
    for (const { name, tools = [], relines, order } of estate.jobs) {
      const [first] = tools;
      if (!first) continue;
      const listed = tools.map(({ what }) => what.toLowerCase());
      const torque = relines.find(({ liner }) => liner.tighteningTorque)?.liner;
      if (torque?.tighteningTorque && !listed.some((what) => what.includes('torque')))
        yield {
          origin: first.origin,
          message:
            `Bolts of ${torque.name} are tightened to ${torque.tighteningTorque.text}, ` +
            `and nothing among the tools of job ${name} measures a torque.`,
        };
      for (const step of order?.steps ?? []) {
        const note = step.note?.toLowerCase();
        const named = note === undefined ? [] : [...known].filter((what) => note.includes(what));
        const lacks = named.find((what) => !listed.some((one) => one.includes(what)));
        if (lacks !== undefined)
          yield {
            origin: step.actionOrigin,
            message: `"${sayStep(step)}" names the ${lacks}, and job ${name} does not list it among its tools.`,
          };
      }
    }
  },
};
