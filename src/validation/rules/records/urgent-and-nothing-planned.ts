// Is there work for what cannot be left?

import { openConditions } from '../../../domain/conditions/follow-up.js';
import { conditionWords, partOf } from '../../../domain/conditions/kinds.js';
import { panelEnds } from '../../../domain/model/first-panels.js';
import { intervalOf } from '../../../domain/model/runs.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { ConditionLine } from '../../../domain/model/records.js';
import type { Estate } from '../../../domain/model/estate.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const urgentAndNothingPlanned: Rule = {
  code: 'TL363',
  title: 'Urgent condition, and no job takes it away',
  severity: 'warning',
  restsOn: ['conditions', 'history', 'jobs'],
  why:
    'Whoever wrote urgent expected somebody to come; without a job nothing is ordered, nobody is booked, and it is ' +
    'found again when it has torn the rest.',
  todo: 'Write a job that relines this place, or changes the spiral; or write what was done and close it; or say that it is only serious.',
  given: 'inspection',
  example: '  «panel torn at 8.8 m urgent|panel torn at 8.8 m serious»',
  cases: [
    { name: 'a bearing is no job of this kind', text: '  gearbox noise urgent' },
    { name: 'closed on the day after', text: '  panel torn at 8.8 m urgent closed on 2025-03-11' },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      for (const { last, first, severity } of openConditions(estate, conveyor)) {
        const part = partOf(last.line.kind);
        if (severity !== 'urgent' || (part !== 'liner' && part !== 'spiral')) continue;
        if (isPlanned(estate, conveyor, last.line)) continue;
        yield {
          origin: last.line.origin,
          message:
            `${capitalised(conditionWords(last.line))} is urgent since ${formatDay(first.record.date.day)}, and no job ` +
            `of ${conveyor.name} takes it away.`,
        };
      }
    }
  },
};

function isPlanned(estate: Estate, conveyor: Conveyor, { kind, at }: ConditionLine): boolean {
  return estate.jobs.some((job) => {
    if (job.conveyor !== conveyor) return false;
    if (partOf(kind) === 'spiral') return job.screwChange !== undefined;
    return job.relines.some(({ stretch }) => {
      const area = intervalOf(conveyor, stretch, panelEnds);
      return area !== undefined && at !== undefined && at.value >= area.from && at.value <= area.to;
    });
  });
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
