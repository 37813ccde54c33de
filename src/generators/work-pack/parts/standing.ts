// How does the liner stand on the first day of the window, and does the job renew what governs? From the one row of the table
// of decisions, so that a pack and the report of the same day say the same.

import type { ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import type { Job } from '../../../domain/model/job.js';
import type { WorkBefore } from '../../../domain/plan/jobs-before.js';
import type { Area } from '../../../domain/order/ground.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { StandingFacts } from '../pack.js';

/** Undefined where nothing is forecast or the job has no window ahead. `renewed`: where new panels go. */
export function standingOf(
  decision: ConveyorDecision | undefined,
  { jobs }: WorkBefore,
  job: Job,
  renewed: readonly Area[],
): StandingFacts | undefined {
  const day = job.window?.from.day;
  if (!decision || day === undefined || day < decision.asOf) return undefined;
  const { governing, accepted, panels, panelsSeen } = decision;
  const sharesPanel = (area: Area): boolean =>
    governing !== undefined && area.from < governing.to && area.to > governing.from;
  const first = jobs.find((each) => each.renewed.some(sharesPanel));
  return {
    day: formatDay(day),
    ...chancesOn(decision, job, day),
    accepted: { condemn: accepted.condemn, contact: accepted.contact },
    panels,
    panelsSeen,
    ...(governing
      ? {
          governing: {
            place: governing.place,
            run: governing.run,
            panel: governing.panel,
            seen: governing.seen,
            covered: renewed.some(sharesPanel),
            ...(first ? { before: first.job.name } : {}),
          },
        }
      : {}),
  };
}

/** The row of the outage where the window is one. */
function chancesOn(
  decision: ConveyorDecision,
  { window }: Job,
  day: CalendarDay,
): Pick<StandingFacts, 'condemn' | 'contact' | 'condemnSeen' | 'contactSeen'> {
  const { condemn, contact, condemnSeen, contactSeen } =
    decision.outages.find(({ name, from }) => name === window?.outage?.name && from === day) ??
    decision.chancesOn(day);
  return {
    condemn,
    contact,
    ...(condemnSeen === undefined ? {} : { condemnSeen }),
    ...(contactSeen === undefined ? {} : { contactSeen }),
  };
}
