// A job with its conveyor, and the outage, crews and access units of that conveyor's plant. A crew that the plant does not
// have stays in the job as a name, so that the plan can say who is missing.

import type { Conveyor } from '../../domain/model/conveyor.js';
import { linersFound, screwFound, type JobsBefore } from '../../domain/model/found-by-job.js';
import type { Job, Step } from '../../domain/model/job.js';
import type { AccessUnit, Crane, Crew, Outage } from '../../domain/model/plant.js';
import type { Problem } from '../../domain/model/problem.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { JobDraft, StepDraft } from '../sheet.js';
import { present, stated } from '../lowering/block.js';
import type { ConveyorIndex } from './conveyors.js';
import { closest, findNamed, type NameTable } from './name-table.js';
import { checkBreak, checkStretch } from './stretches.js';

interface Index {
  /** By plant, the names in it that exist but cannot be read; a plant that is not declared, or has lost a fact, may have any. */
  readonly plants: ReadonlyMap<string, readonly string[] | undefined>;
  readonly conveyors: ConveyorIndex;
  readonly liners: NameTable<LinerSpecification>;
  readonly screws: NameTable<ScrewSpecification>;
  readonly records: JobsBefore;
}

export function buildJob(
  draft: JobDraft,
  { plants, conveyors, liners, screws, records }: Index,
  problems: Problem[],
): Job | undefined {
  const conveyor = conveyors.find(draft.conveyorUse, problems);
  if (!conveyor) return undefined;
  const { plant } = conveyor;
  const unread = plants.get(plant.name);
  const { outageUse, window, relines, screwChange, crews, accessUnits, cranes, order, ...rest } = draft;
  const crew = (use: NameUse): { readonly use: NameUse; readonly crew?: Crew } => ({
    use,
    ...stated({ crew: pick(plant.crews, 'crew', use, plant.name, unread, problems) }),
  });
  const unit = (use: NameUse): { readonly use: NameUse; readonly unit?: AccessUnit } => ({
    use,
    ...stated({ unit: pick(plant.accessUnits, 'access unit', use, plant.name, unread, problems) }),
  });
  const crane = (use: NameUse): { readonly crane?: Crane } =>
    stated({ crane: pick(plant.cranes, 'crane', use, plant.name, unread, problems) });
  const outage: Outage | undefined =
    outageUse && pick(plant.outages, 'outage', outageUse, plant.name, unread, problems);
  const before =
    outageUse && outage ? { outage, from: outage.from, to: outage.to, origin: outageUse.fact } : window;
  const screwLying = screwFound({ conveyor, ...stated({ window: before }) }, records);
  const screw =
    screwChange &&
    (screwChange.screwUse
      ? findNamed(screws, screwChange.screwUse, problems)?.value
      : (screwLying ?? conveyor.screw));
  const steps = order && buildSteps(order.steps, conveyor, crew, unit, problems);
  const scope = relines.flatMap(({ stretch, linerUse, origin }) => {
    if (!checkStretch(stretch, conveyor, problems)) return [undefined];
    if (!linerUse)
      return linersFound({ conveyor, ...stated({ window: before }) }, stretch, records).map((found) => ({
        ...found,
        origin,
      }));
    const liner = findNamed(liners, linerUse, problems)?.value;
    return [liner && { stretch, liner, origin, linerUse }];
  });
  // A job that has lost part of its scope is another job.
  if (scope.includes(undefined) || (screwChange && !screw)) return undefined;
  return {
    ...rest,
    conveyor,
    relines: present(scope),
    crews: crews.map(crew),
    accessUnits: accessUnits.map(unit),
    cranes: cranes.map((place) => ({ ...place, ...crane(place.use) })),
    ...stated({
      window: before,
      screwChange: screwChange && screw && { ...screwChange, screw },
      screwLying,
      order: order && steps && { origin: order.origin, steps },
    }),
  };
}

/** Undefined where a step is about a stretch that is not there: judged without it, every other step would seem wrong. */
function buildSteps(
  drafts: readonly StepDraft[],
  conveyor: Conveyor,
  crew: (use: NameUse) => Step['crews'][number],
  unit: (use: NameUse) => NonNullable<Step['unit']>,
  problems: Problem[],
): readonly Step[] | undefined {
  const labels = drafts.flatMap((step) => step.name ?? []);
  const steps = drafts.map(({ unit: unitUse, ...step }): Step | undefined => {
    const built = {
      ...step,
      ...stated({ unit: unitUse && unit(unitUse) }),
      crews: step.crews.map(crew),
      attendants: step.attendants.map(crew),
      after: step.after.filter((use) => isLabel(use, labels, problems)),
    };
    if (step.stretch && !checkStretch(step.stretch, conveyor, problems)) return undefined;
    return step.gate && !checkBreak(step.gate, conveyor, problems) ? undefined : built;
  });
  return steps.includes(undefined) ? undefined : present(steps);
}

function pick<T extends { readonly name: string }>(
  all: readonly T[],
  what: string,
  use: NameUse,
  plant: string,
  unread: readonly string[] | undefined,
  problems: Problem[],
): T | undefined {
  const found = all.find((one) => one.name === use.name);
  if (!found && unread && !unread.includes(use.name))
    problems.push({
      kind: 'unknown name',
      origin: use.origin,
      what: `${what} of ${plant}`,
      name: use.name,
      known: closest(
        use.name,
        all.map((one) => one.name),
      ),
    });
  return found;
}

function isLabel(use: NameUse, labels: readonly string[], problems: Problem[]): boolean {
  if (labels.includes(use.name)) return true;
  problems.push({
    kind: 'unknown name',
    origin: use.origin,
    what: 'step',
    name: use.name,
    known: closest(use.name, labels),
  });
  return false;
}
