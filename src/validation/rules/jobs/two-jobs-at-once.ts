// Are two jobs on one conveyor in windows that share days, and neither part of the other?

import type { Job } from '../../../domain/model/job.js';
import type { Rule } from '../../rule.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const twoJobsAtOnce: Rule = {
  code: 'TL477',
  title: 'Two jobs on one conveyor at the same time',
  severity: 'error',
  restsOn: ['jobs'],
  why:
    'One job hands back and takes off isolation while the other still has its hands in the trough; ' +
    'lifts and loose parts of the one hang over the people of the other.',
  todo: 'Give the jobs windows that share no day, or declare one of them `part of` the other, so that isolation and space have one person in charge.',
  given: 'specifications',
  example: `
${soundConveyor('DG1', 'Tarnholt')}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
}
job «J2» {
  conveyor DG1
  outage Spring27‹|
  part of J1›
  change screw bolted joints cut cold
  crews Bravo
  lift limit 500 kg
}`,
  *check({ estate }) {
    for (const [i, later] of estate.jobs.entries()) {
      for (const other of estate.jobs.slice(0, i)) {
        if (other.conveyor !== later.conveyor || !overlap(other, later)) continue;
        if (later.partOf?.name === other.name || other.partOf?.name === later.name) continue;
        if (later.partOf !== undefined && later.partOf.name === other.partOf?.name) continue;
        yield {
          origin: later.nameOrigin,
          message:
            `Jobs ${other.name} and ${later.name} are both on ${later.conveyor.name} in windows that share days, and ` +
            `neither is part of the other.`,
          related: [{ origin: other.nameOrigin, message: `job ${other.name}` }],
        };
      }
    }
    for (const job of estate.jobs) {
      const whole = job.partOf && estate.jobs.find(({ name }) => name === job.partOf?.name);
      if (!whole || (whole !== job && whole.conveyor === job.conveyor)) continue;
      yield {
        origin: job.partOf.origin,
        message:
          whole === job
            ? `Job ${job.name} is declared part of itself.`
            : `Job ${job.name} is on ${job.conveyor.name}, and ${whole.name}, which it is declared part of, is on ${whole.conveyor.name}.`,
      };
    }
  },
};

function overlap(a: Job, b: Job): boolean {
  if (!a.window || !b.window) return false;
  return a.window.from.day <= b.window.to.day && b.window.from.day <= a.window.to.day;
}
