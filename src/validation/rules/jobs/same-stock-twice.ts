// Do two jobs count on the same stock? What an earlier planned job takes from the shelf is not there for the later one: where the two
// need more than lies there, the rest has to be ordered for the later, as its pack says.

import type { Estate } from '../../../domain/model/estate.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Job } from '../../../domain/model/job.js';
import { groundOfJob, needsOf } from '../../../domain/plan/job-needs.js';
import { jobsBefore, type JobBefore, type TakenFromShelf } from '../../../domain/plan/jobs-before.js';
import type { Material, ShelfKind } from '../../../domain/plan/materials.js';
import { storeOf, type PlantStore } from '../../../domain/plan/store.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { list } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';
import { hasSizesToPlanWith } from '../../evidence/sizes-to-plan-with.js';
import { todayOf } from '../../telling/today.js';
import { soundConveyor } from '../../telling/sound-conveyor.js';

export const sameStockTwice: Rule = {
  code: 'TL535',
  title: 'Two jobs that count on the same stock',
  severity: 'information',
  restsOn: [],
  why: 'Each job by itself finds enough on the shelf. The second stands with the trough open and no panels, and they are weeks away.',
  todo: 'Order for the later job what both together need beyond the shelf, in time for it; its work pack reckons with that.',
  given: 'specifications',
  example: `
plant Works {
  crew Alpha 4 people
  outage Spring27 2027-04-12 to 2027-04-23
  outage Autumn27 2027-09-13 to 2027-09-24
  on the shelf TwoLayer12 ‹8|20› panels counted 2026-08-31
  lead time liner 10 week
}
${soundConveyor('DG1', 'Works', 'point P1 at 4 m clock 7:30')}
inspection DG1 2026-10-05 meter 9000 h {
  P1 colour ivory
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run 2
  crews Alpha
}
job «J2» {
  conveyor DG1
  outage Autumn27
  reline run 1
  crews Alpha
}`,
  *check(input) {
    const { estate } = input;
    const today = todayOf(input);
    for (const job of estate.jobs) {
      const { plant } = job.conveyor;
      if (plant.shelf.length + plant.spareScrews.length === 0 || !hasSizesToPlanWith(job)) continue;
      const before = jobsBefore(job, estate, today);
      if (before.jobs.every(({ takes }) => takes.length === 0)) continue;
      const takers = (kind: ShelfKind | undefined): readonly JobBefore[] =>
        before.jobs.filter(({ takes }) => takes.some((each) => isOf(each, kind)));
      const isTaken = (kind: ShelfKind | undefined): boolean => takers(kind).length > 0;
      const [short, ...others] = shortOf(job, estate, today, before.store, isTaken);
      if (!short) continue;
      const { material, more, what } = short;
      const first = takers(material.shelf);
      const same =
        others.length > 0 ? ` The same goes for ${list(others.map((each) => each.material.what))}.` : '';
      yield {
        origin: job.nameOrigin,
        message:
          `${list(first.map((each) => `job ${each.job.name}`))} before job ${job.name} takes ` +
          `${takenWords(job, first, material)} from the shelf of ${plant.name}, and both count on it: job ${job.name} needs ` +
          `${formatNumber(material.needed + material.spares)}${ofThemSpare(material.spares)} and finds ${formatNumber(material.onShelf ?? 0)}, ` +
          `so ${formatNumber(more)} ${what === undefined ? 'more' : `of ${what}`} ${more === 1 ? 'is' : 'are'} to be ordered` +
          `${material.orderBy === undefined ? '' : ` by ${formatDay(material.orderBy)}`}.${same}`,
        related: first.map((each) => ({
          origin: each.job.nameOrigin,
          message: 'the earlier job, planned and not done',
        })),
      };
    }
  },
};

interface Short {
  readonly material: Material;
  /** To be ordered because of the earlier jobs. */
  readonly more: number;
  /** Of what, where that is another length. */
  readonly what?: string;
}

/** What the job would have found on the shelf by itself, and does not. */
function shortOf(
  job: Job,
  estate: Estate,
  today: CalendarDay | undefined,
  left: PlantStore,
  isTaken: (kind: ShelfKind | undefined) => boolean,
): readonly Short[] {
  const worked = groundOfJob(job, estate);
  const { materials: alone } = needsOf(worked, estate, storeOf(estate, job.conveyor.plant, today));
  const { materials: beside } = needsOf(worked, estate, left);
  // A row is called a sheet where some of it is bought, and a panel where none is.
  const rowOf = (rows: readonly Material[], kind: ShelfKind | undefined): Material | undefined => {
    const key = keyOf(kind);
    return key === undefined ? undefined : rows.find(({ shelf }) => keyOf(shelf) === key);
  };
  return beside.flatMap((material): readonly Short[] => {
    const own = rowOf(alone, material.shelf);
    const more = material.toOrder - (own?.toOrder ?? 0);
    if (more <= 0) return [];
    if (own && isTaken(material.shelf)) return [{ material, more }];
    // What is missing may be cut from another length, which the job by itself does not touch, or less of.
    const instead = alone.find(
      ({ shelf }) =>
        isTaken(shelf) &&
        shelf?.kind === 'liner' &&
        material.shelf?.kind === 'liner' &&
        shelf.liner.name === material.shelf.liner.name,
    );
    if (!instead) return [];
    const onShelf = rowOf(beside, instead.shelf)?.onShelf ?? 0;
    const { orderBy, what } = material;
    return [
      {
        material: { ...instead, onShelf, ...(orderBy === undefined ? {} : { orderBy }) },
        more,
        what,
      },
    ];
  });
}

function keyOf(kind: ShelfKind | undefined): string | undefined {
  switch (kind?.kind) {
    case 'liner':
      return `${kind.liner.name} ${kind.length}`;
    case 'fixings':
      return `fixings ${kind.liner.name}`;
    case 'spiral':
      return `spiral ${kind.screw.name}`;
    case undefined:
      return undefined;
  }
}

function isOf(taken: TakenFromShelf, kind: ShelfKind | undefined): boolean {
  return kind !== undefined && keyOf(taken) === keyOf(kind);
}

function takenWords({ conveyor }: Job, first: readonly JobBefore[], { shelf }: Material): string {
  const takes = first.flatMap((each) => each.takes.filter((one) => isOf(one, shelf)));
  const count = takes.reduce((sum, each) => sum + each.count, 0);
  const spare = ofThemSpare(takes.reduce((sum, each) => sum + (each.kind === 'spiral' ? 0 : each.spares), 0));
  switch (shelf?.kind) {
    case 'liner':
      return `${count} of ${shelf.liner.name}, ${lengthOn(conveyor, shelf.length)}${spare}`;
    case 'fixings':
      return `${count} fixings of ${shelf.liner.name}${spare}`;
    case 'spiral':
      return `the spare spiral ${shelf.screw.name}`;
    case undefined:
      return String(count);
  }
}

/** What is taken beyond the panels of the job itself. */
function ofThemSpare(spares: number): string {
  return spares > 0 ? ` (${formatNumber(spares)} of them spare)` : '';
}
