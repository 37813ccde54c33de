// What does a crew need in hand to do this job? The whole pack as a value, from the model alone: the same estate and date give
// the same pack, byte for byte. Masses and counts come from geometry and the order's own steps, never from typing.

import { openConditionRows, safeguardsOutText } from '../../domain/conditions/rows.js';
import { declaredSafeguards } from '../../domain/conditions/safeguards-declared.js';
import { holdDownName } from '../../domain/model/part-names.js';
import { handlingGuideline } from '../../domain/geometry/handling.js';
import type { ConveyorDecision } from '../../domain/decision/conveyor-decision.js';
import { isNow } from '../../domain/decision/order-call.js';
import { countHoldDowns } from '../../domain/model/hold-down-count.js';
import type { Estate } from '../../domain/model/estate.js';
import { jobBy } from '../../domain/model/found-by-job.js';
import { knownOn } from '../../domain/model/known-on.js';
import { heldWords } from '../../domain/model/stands-above.js';
import { newestDay } from '../../domain/model/newest.js';
import type { Job, StepAction } from '../../domain/model/job.js';
import type { JobPlan } from '../../domain/plan/job-plan.js';
import { planJob } from '../../domain/plan/plan-job.js';
import { emptiedBy } from '../../domain/order/emptying.js';
import { fittedAreas, groundOf, type Area, type Ground } from '../../domain/order/ground.js';
import { heatOfOrder, isHot } from '../../domain/order/heat.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { addDays, formatDay } from '../../domain/units/calendar.js';
import type { LengthUnit } from '../../domain/units/length-words.js';
import { unitOf } from '../../domain/units/length-words.js';
import type { Fact, OrderBy, PanelRow, RunRow, StepRow, WorkPack } from './pack.js';
import { barrierMeasures, conditionFacts } from './parts/conditions.js';
import { cautionsFor } from './parts/cautions.js';
import { needsOf } from '../../domain/plan/job-needs.js';
import type { Material } from '../../domain/plan/materials.js';
import { asFoundThen } from '../../domain/plan/jobs-before.js';
import { panelLift, panelRows, runRows, runsInOrderOfWork } from './parts/panels.js';
import { machineFacts } from './parts/machine.js';
import { scopeWords } from './parts/scope.js';
import { steelFacts } from './parts/steel.js';
import { fixingOf } from './parts/fixing.js';
import { heldUpWords, rescueFacts, toolRows } from './parts/site.js';
import { restsOn } from './parts/rests-on.js';
import { standingOf } from './parts/standing.js';
import { hourRows } from './parts/hours.js';
import { cranesNotNamed, liftingGear, noGearWarning } from './parts/lifting-gear.js';
import { permitsFor } from './parts/permits.js';
import { packDrawings } from './parts/pictures.js';
import {
  liftCounts,
  liftFacts,
  obstaclesOf,
  scheduleFacts,
  unreadWarning,
  warningsOf,
} from './parts/planning.js';
import { stepRows } from './parts/steps.js';
import { cutListFacts, materialRow } from './parts/materials.js';
import { asFittedFacts } from './parts/records.js';
import { holdDownsTaken, takingsFor } from './parts/takings.js';

export interface PackOptions {
  /** Records are read at this date; left out: the newest record, never the clock. */
  readonly asOf?: CalendarDay;
  /** For title blocks, where the pack comes from: a file name or a revision. */
  readonly drawnFrom?: string;
  /** The conveyor's row of the table of decisions, as the report of that day has it; left out, the pack says nothing of it. */
  readonly decision?: ConveyorDecision | undefined;
}

export function workPack(present: Estate, asked: Job, options: PackOptions = {}): WorkPack {
  const records = knownOn(present, options.asOf);
  const known = records === present ? asked : jobBy(asked, records);
  const { conveyor } = asked;
  const today = options.asOf ?? newestDay(records) ?? known.window?.from.day;
  const { job, estate, before } = asFoundThen(known, records, today);
  const asOf = formatDay(today ?? (0 as CalendarDay));
  const unit = unitOf((job.relines[0]?.liner ?? conveyor.liner).layers.map((layer) => layer.thickness.text));
  const plan = planJob(job, estate);
  const steps = plan.steps.map((planned) => planned.step);
  // The plan's own ground counts its steps as they were written or proposed; the pack's follows them in time.
  const ground = groundOf(job, steps, estate);
  const runs = runRows(ground, steps);
  const panels = panelRows(ground);
  const byHand = panelLift(ground, panels);
  const takings = takingsFor(ground, panels, unit);
  const conditions = conditionFacts(records, before, ground, options.asOf);
  const rows = stepRows(ground, plan, unit, (gate) => barrierMeasures(conditions, gate));
  const heat = heatOfOrder(ground);
  const fitted = fittedAreas(ground);
  const steel = steelFacts(estate, ground, fitted, unit, options.asOf);
  const { cuts, materials } = needsOf({ ground, areas: fitted }, estate, before.store);
  const rests = restsOn(before, cuts, job, unit);
  const open = openConditionRows(records, conveyor, options.asOf);
  const renewed = panels.filter((panel) => panel.renewed);
  const standing = standingOf(options.decision, before, job, renewed);
  const orders = orderDates(job, options.decision, materials);
  const heaviest = heaviestOf(renewed);
  const gear = liftingGear(job, liftedIn(ground, fitted), unit);
  const noGear = noGearWarning(liftingGear(job, fitted, unit), heaviest, handlingGuideline);
  const number = job.name.startsWith(conveyor.name) ? job.name : `${conveyor.name}-${job.name}`;
  const owner = conveyor.plant.title ?? conveyor.plant.name;
  const drawnFrom = options.drawnFrom ?? `job ${job.name}`;
  return {
    formatVersion: 1,
    asOf,
    number,
    drawnFrom,
    plant: owner,
    unit,
    job: jobFacts(job),
    conveyor: {
      name: conveyor.name,
      ...(conveyor.title === undefined ? {} : { title: conveyor.title }),
      facts: [
        ...machineFacts(before, job, fitted, unit, options.asOf),
        ...gearFacts([...gear, ...cranesNotNamed(job, heaviest)]),
      ],
    },
    ...windowOf(job),
    ...(standing ? { standing } : {}),
    ...(rests.length > 0 ? { restsOn: rests } : {}),
    obstacles: obstaclesOf(plan),
    warnings: [...unreadWarning(estate, conveyor), ...warningsOf(plan), ...noGear],
    scope: scopeWords(ground, unit),
    conditions,
    ...(steel ? { steel } : {}),
    ...teamFacts(plan),
    cautions: cautionsFor({
      conveyor,
      unit,
      safeguardsOut: safeguardsOutText(open),
      changesScrew: job.screwChange !== undefined,
      heat,
      empties: emptiedBy(steps) !== undefined,
      heaviestByHand: heaviest,
      downSlope: plan.lifts.spiral?.downSlopeForce,
    }),
    isolations: isolationFacts(job),
    safeguards: declaredSafeguards(records, conveyor, open),
    permits: permitsFor({
      unit,
      conveyor,
      changesScrew: job.screwChange !== undefined,
      patches: steps.some((step) => step.action === 'patch' && isHot(ground, step)),
      heat,
      testsAir: steps.some((step) => step.action === 'gas test'),
      heaviestLift: heaviest,
      handLimit: handlingGuideline,
      saysWhatLifts: gear.length > 0,
    }),
    access: accessFacts(job, ground, rows),
    runs,
    panels,
    ...(byHand ? { panelLift: byHand } : {}),
    takings,
    ...siteFacts(ground, runs, unit),
    order: plan.order,
    steps: rows,
    schedule: scheduleFacts(plan),
    hours: hourRows(plan, ground, rows),
    lifts: liftFacts(plan.lifts, unit, liftCounts(takings, panels, runs)),
    cutLists: cuts.map(cutListFacts),
    materials: materials.map((material) => materialRow(material, orders)),
    holdDowns: holdDownFacts(job, holdDownsTaken(ground)),
    clearance: clearanceOf(job),
    asFitted: asFittedFacts(estate, records, ground, runsInOrderOfWork(ground, steps), panels, unit),
    orderBy: orders,
    drawings: packDrawings(ground, plan, runs, panels, rows, { owner, number, issued: asOf, drawnFrom }),
  };
}

/** Where the job lifts: all along where the spiral comes out, else where it fits, and where its order does what no other step says. */
function liftedIn({ job, steps, areas }: Ground, fitted: readonly Area[]): readonly Area[] {
  if (job.screwChange) return [{ from: 0, to: job.conveyor.length.value }];
  return [...fitted, ...steps.flatMap(({ action }, i) => (action === 'other work' ? (areas[i] ?? []) : []))];
}

function clearanceOf({ conveyor: { clearance } }: Job): WorkPack['clearance'] {
  return clearance && { from: clearance.from.value, to: clearance.to.value };
}

function jobFacts({ nameOrigin: origin, name, title, doc }: Job): WorkPack['job'] {
  return {
    origin,
    name,
    ...(title === undefined ? {} : { title }),
    ...(doc === undefined ? {} : { doc }),
  };
}

function gearFacts(gear: readonly string[]): readonly Fact[] {
  return gear.length > 0 ? [{ name: 'To lift with', value: gear.join('; ') }] : [];
}

function heaviestOf(panels: readonly PanelRow[]): number | undefined {
  const masses = panels.flatMap((panel) => panel.mass ?? []);
  return masses.length > 0 ? Math.max(...masses) : undefined;
}

function teamFacts({ job, steps }: JobPlan): Pick<WorkPack, 'crews' | 'accessUnits'> {
  const working = new Set(
    steps.flatMap(({ crews, step }) => [...crews, ...(step.attendants ?? []).map(({ use }) => use.name)]),
  );
  return {
    crews: job.crews.map(({ use, crew }) => ({
      name: use.name,
      size: crew?.size.count,
      skills: crew?.skills ?? [],
      ...(steps.length > 0 && !working.has(use.name) ? { idle: true as const } : {}),
    })),
    accessUnits: job.accessUnits.map(({ use, unit }) => ({
      name: use.name,
      ...(unit?.title === undefined ? {} : { title: unit.title }),
      ...(unit?.reach ? { reach: unit.reach.value } : {}),
      ...(unit?.limit ? { limit: unit.limit.value } : {}),
      ...(unit?.people ? { people: unit.people.count } : {}),
    })),
  };
}

function isolationFacts({ conveyor }: Job): WorkPack['isolations'] {
  return [
    ...conveyor.isolations.map((item) => ({
      origin: item.origin,
      name: item.name,
      title: item.title ?? '',
      kind: item.kind,
      at: item.at?.value,
    })),
    // What stands over the screw is locked by no switch: it is signed for in the same list.
    ...conveyor.hoppers.map((hopper) => ({
      origin: hopper.origin,
      name: hopper.name ?? 'hopper',
      title: ['emptied, or held off', heldWords(conveyor, hopper)].filter(Boolean).join('; '),
      kind: 'material above',
      at: hopper.from.value,
    })),
  ];
}

/** A zone is used where a step says so, tests of the air along the whole length too: what the steps name has to be there. */
function accessFacts(
  { conveyor, screwChange }: Job,
  ground: Ground,
  rows: readonly StepRow[],
): WorkPack['access'] {
  return conveyor.access.map((zone) => {
    const meets = (area: Area): boolean => area.from < zone.to.value && area.to > zone.from.value;
    const named = rows.filter(meets);
    return {
      ...doneIn(named),
      origin: zone.origin,
      name: zone.name ?? zone.kind,
      kind: zone.kind,
      from: zone.from.value,
      to: zone.to.value,
      height: zone.height?.value,
      used: screwChange !== undefined || named.length > 0 || ground.scope.some(meets),
    };
  });
}

/** Each action once: off and on of one part, strip and fit are what an issuer of permits asks for, not every step. */
function doneIn(rows: readonly StepRow[]): Pick<WorkPack['access'][number], 'inside' | 'outside'> {
  const actions = [...new Set(rows.map(({ action }) => action))];
  return {
    inside: actions.filter((action) => !fromOutside.has(action)),
    outside: actions.filter((action) => fromOutside.has(action)),
  };
}

/** Nobody goes into the trough or reaches into it for these. */
const fromOutside: ReadonlySet<StepAction> = new Set<StepAction>([
  'empty',
  'isolate',
  'prove dead',
  'gas test',
  'gate shut',
  'gate open',
  'pause',
  'remove isolation',
  'run empty',
  'run loaded',
]);

function holdDownFacts({ conveyor }: Job, taken: readonly number[]): WorkPack['holdDowns'] {
  return taken.flatMap((index) => {
    const block = conveyor.holdDowns[index];
    return block
      ? [
          {
            name: holdDownName(conveyor, block, index),
            at: (block.from.value + block.to.value) / 2,
            blocks: countHoldDowns([block]).blocks,
          },
        ]
      : [];
  });
}

/** How panels are fixed, what is brought along, how people are fetched out, what keeps the spiral up. */
function siteFacts(
  { job, runs: grounds }: Ground,
  runs: readonly RunRow[],
  unit: LengthUnit,
): Pick<WorkPack, 'fixings' | 'tools' | 'rescue' | 'heldUp'> {
  const { plate } = job.conveyor.trough;
  const liners = new Set(grounds.map(({ liner }) => liner));
  const heldUp = heldUpWords(job, unit);
  return {
    fixings: [...liners].flatMap((liner) =>
      runs.some((run) => run.renewed > 0 && run.liner === liner.name)
        ? (fixingOf(liner, plate.value, unit) ?? [])
        : [],
    ),
    tools: toolRows(job),
    rescue: rescueFacts(job),
    ...(heldUp === undefined ? {} : { heldUp }),
  };
}

/**
 * The window's first day less the lead time, in whole days; only for what has to be ordered. Where the report says to order the
 * liner now, so does the pack; the last day for its window stands behind.
 */
function orderDates(
  job: Job,
  decision: ConveyorDecision | undefined,
  materials: readonly Material[],
): readonly OrderBy[] {
  const { window } = job;
  if (!window) return [];
  return job.conveyor.plant.leadTimes
    .filter(({ item }) => materials.some((each) => each.for === item && each.toOrder > 0))
    .map(({ item, time }) => {
      const latest = formatDay(addDays(window.from.day, -Math.ceil(time.value / 24)));
      const now = item === 'liner' ? orderedNow(decision, window.from.day) : undefined;
      return { item, date: now ?? latest, leadTime: time.text, ...(now === undefined ? {} : { latest }) };
    });
}

/** Not for a window behind the outage that such an order is for. */
function orderedNow(decision: ConveyorDecision | undefined, from: CalendarDay): string | undefined {
  const order = decision?.order;
  const outage = decision?.outages.find(({ name }) => name === order?.outage);
  if (outage && from > outage.from) return undefined;
  return order?.kind === 'order' && isNow(order) ? formatDay(order.day) : undefined;
}

function windowOf(job: Job): Pick<WorkPack, 'window'> {
  if (!job.window) return {};
  const { outage, from, to } = job.window;
  return {
    window: {
      ...(outage
        ? { name: outage.name, ...(outage.title === undefined ? {} : { title: outage.title }) }
        : {}),
      from: formatDay(from.day),
      to: formatDay(to.day),
      days: to.day - from.day + 1,
    },
  };
}
