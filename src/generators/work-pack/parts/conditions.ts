// What stands open on the conveyor of a job, and what of it the job takes away: a reline of its place what is wrong with a panel, a
// new screw what is wrong with the spiral. What an earlier job takes away first is still open until that is done. What lies where
// the job works, or on a part that its steps take off, is looked at again while somebody is there.

import { samePlace } from '../../../domain/conditions/kinds.js';
import { openConditionRows, sinceWords, type OpenCondition } from '../../../domain/conditions/rows.js';
import { partsToRenew, type PartToRenew } from '../../../domain/conditions/to-renew.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { StepAction } from '../../../domain/model/job.js';
import type { WorkBefore } from '../../../domain/plan/jobs-before.js';
import { areasOfAction, overlaps, within, type Area, type Ground } from '../../../domain/order/ground.js';
import { hasPeopleBelow } from '../../../domain/order/gates-above.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { WorkPack } from '../pack.js';

export function conditionFacts(
  records: Estate,
  before: WorkBefore,
  ground: Ground,
  asOf: CalendarDay | undefined,
): WorkPack['conditions'] {
  const { job, scope } = ground;
  const toRenew = partsToRenew(records, job.conveyor, asOf);
  const open = openConditionRows(records, job.conveyor, asOf);
  const left = before.estate === records ? open : openConditionRows(before.estate, job.conveyor);
  return open.map((row) => {
    const first = left.some(({ origin }) => origin === row.origin)
      ? undefined
      : (before.jobs.find(({ renewed, screw }) =>
          row.part === 'spiral'
            ? screw !== undefined
            : renewed.some(({ from, to }) => row.at !== undefined && row.at >= from && row.at <= to),
        ) ?? before.jobs.find((each) => each.job.conveyor === job.conveyor));
    const { at } = row;
    const inScope = at !== undefined && scope.some((area) => at >= area.from && at <= area.to);
    const ends = row.part === 'liner' ? inScope : row.part === 'spiral' && job.screwChange !== undefined;
    const barrier = barrierOf(ground, row);
    const again = ends ? undefined : barrier === undefined ? againWords(ground, row, toRenew) : relied;
    return {
      what: row.what,
      place: row.place,
      severity: row.severity ?? '',
      since: sinceWords(row),
      notes: row.notes.join('; '),
      ...(first ? { before: first.job.name } : {}),
      ends,
      ...(again === undefined ? {} : { again }),
      ...(barrier === undefined ? {} : { barrier }),
      origin: row.origin,
    };
  });
}

const renewed = 'comes off: a new one goes back, see the materials';
const relied = 'relies on it as a barrier: a competent person confirms first that it holds';

/** The gate that the order shuts above people, and of which something is open. */
function barrierOf(ground: Ground, { gate }: OpenCondition): string | undefined {
  const shut = ground.steps.some((step) => step.action === 'gate shut' && step.gate?.name === gate);
  return gate !== undefined && shut && hasPeopleBelow(ground, gate) ? gate : undefined;
}

/** What the job does to the part, or where it lies; undefined where it comes nowhere near. */
function againWords(
  ground: Ground,
  { partName, at, to, origin }: OpenCondition,
  toRenew: readonly PartToRenew[],
): string | undefined {
  const { job } = ground;
  const has = (action: StepAction): boolean => ground.steps.some((step) => step.action === action);
  if (partName !== undefined && ofTheDrive.has(partName) && at === undefined)
    return has('unbolt drive') ? 'the drive plate is unbolted: look at it again' : undefined;
  if (at === undefined) return undefined;
  const here = near(at, to);
  const off = (action: StepAction, pieces: Ground['covers']): boolean =>
    within(pieces, areasOfAction(ground, action)).some((piece) => overlaps(piece, here));
  const meets = (...actions: readonly StepAction[]): boolean =>
    actions.some((action) => areasOfAction(ground, action).some((area) => overlaps(here, area)));
  const isRenewed = toRenew.some((each) => each.origin === origin);
  const comesOff = 'comes off: look at it before it goes back';
  switch (partName) {
    case 'hold-down':
      if (off('hold-downs off', ground.holdDowns)) return isRenewed ? renewed : comesOff;
      break;
    case 'brace':
      if (off('braces off', ground.braces)) return isRenewed ? renewed : comesOff;
      break;
    case 'cover':
    case 'hatch':
      if (off('covers off', ground.covers)) return comesOff;
      break;
    case 'gate':
      if (meets('gate off')) return comesOff;
      break;
    case 'trough':
      if (meets('strip', 'fit')) return 'is laid bare: look at it again while nothing lies over it';
      break;
    case 'spiral':
    case 'flight':
      if (job.screwChange) return 'a new spiral comes in: look whether it is settled';
      break;
    case undefined:
      break;
  }
  if (onTheLiner.has(partName ?? '') && meets('strip', 'fit'))
    return 'its place is relined: look at it again';
  return meets('covers off', 'strip', 'patch', 'fit')
    ? 'lies where the trough is opened: look at it again'
    : undefined;
}

const ofTheDrive: ReadonlySet<string> = new Set(['drive', 'drive plate', 'coupling']);

const onTheLiner: ReadonlySet<string> = new Set(['liner', 'panel', 'bolts', 'spiral', 'flight']);

/** As far as one condition reaches, mm. */
function near(at: number, to = at): Area {
  return { from: at - samePlace, to: to + samePlace };
}

/** What is said at the step that shuts the gate. */
export function barrierMeasures(conditions: WorkPack['conditions'], gate: string): readonly string[] {
  return conditions
    .filter(({ barrier }) => barrier === gate)
    .map(
      ({ what, since }) =>
        `Found: ${what} (${since}). A competent person confirms that it holds, before anybody relies on it.`,
    );
}
