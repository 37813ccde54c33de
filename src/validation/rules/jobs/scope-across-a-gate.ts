// Does a stretch to be relined go across a slide gate? The liner ends there: it is two runs.

import type { Job } from '../../../domain/model/job.js';
import type { Estate } from '../../../domain/model/estate.js';
import { panelsText } from '../../../domain/model/runs.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { areaOf, groundOf, within } from '../../../domain/order/ground.js';
import { stretchText } from '../../../domain/order/words.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { onceAJob } from '../../telling/once-a-job.js';
import { replace } from '../../telling/fixes.js';

export const scopeAcrossAGate: Rule = {
  code: 'TL537',
  title: 'Reline across a slide gate',
  severity: 'warning',
  restsOn: ['machine', 'history'],
  why:
    'The liner ends at a gate: what is one stretch on paper is two runs, each with joints, a closing panel and an end to be fitted ' +
    'from of its own. And while people work on both sides the gate holds nothing back from those below.',
  todo: 'Write a reline for each side, and say by the order which side is done first.',
  given: 'job',
  example: '«reline from 5.8 m to 8.4 m|reline from 5.8 m to 7.2 m»',
  cases: [
    { name: 'both runs whole, in one stretch', text: 'reline from 1.5 m to 12 m' },
    { name: 'one run whole, a part of the other', text: '«reline from 1.5 m to 9.9 m»' },
  ],
  *check({ estate }) {
    for (const job of estate.jobs)
      if (job.relines.length > 0 && hasSizesToPlanWith(job)) yield* found(job, estate);
  },
};

const found = onceAJob((job: Job, estate: Estate): readonly Found[] => {
  const { conveyor } = job;
  const across = job.relines.filter(({ stretch }) => stretch.kind === 'chainage');
  if (across.length === 0) return [];
  const { runs } = groundOf(job, job.order?.steps ?? [], estate);
  return across.flatMap(({ stretch, liner, linerUse, origin }) => {
    if (stretch.kind !== 'chainage') return [];
    const area = { from: stretch.from.value, to: stretch.to.value };
    const parts = runs.flatMap((run) => {
      const panels = within(run.panels, [area]).map(({ panel }) => panel);
      const [first, last] = [panels[0], panels.at(-1)];
      if (first === undefined || last === undefined) return [];
      return [{ run: run.run, whole: panels.length === run.panels.length, first, last }];
    });
    const gate = conveyor.breaks.find(
      (each) =>
        each.kind === 'slide gate' &&
        parts.some(({ run }) => run.to <= areaOf(each).from + 1) &&
        parts.some(({ run }) => run.from >= areaOf(each).to - 1),
    );
    // Whole runs are whole runs, however they are written.
    if (!gate || parts.every(({ whole }) => whole)) return [];
    const texts = parts.map(({ run, whole, first, last }) =>
      whole ? `run ${run.number}` : panelsText(first, last, run.number),
    );
    const lines = texts.map((text) => `reline ${text}${linerUse ? ` with ${liner.name}` : ''}`);
    return [
      {
        origin,
        message:
          `"${stretchText(stretch)}" of ${job.name} goes across ${gate.name} (${chainageOn(conveyor, gate.from.value)} to ` +
          `${chainageOn(conveyor, gate.to.value)}): it is ${texts.join(' and ')}.`,
        related: [{ origin: gate.origin, message: gate.kind }],
        fixes: [replace(origin, lines.join('\n  '), { title: `Write ${texts.join(' and ')}` })],
      },
    ];
  });
});
