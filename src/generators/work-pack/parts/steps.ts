// The order as rows of a work sheet: what, where, who, with what, when, after what, and what is signed before the next.

import { safeguardWords } from '../../../domain/conditions/safeguards-declared.js';
import { hasGate, type Conveyor } from '../../../domain/model/conveyor.js';
import type { Heat, Job, Step } from '../../../domain/model/job.js';
import { emptiedBy } from '../../../domain/order/emptying.js';
import { countHoldDowns, holdDownWords } from '../../../domain/model/hold-down-count.js';
import { causticOf } from '../../../domain/model/product-dangers.js';
import { drainsWords, hoppersWords } from '../../../domain/model/stands-above.js';
import { within, type Area, type Ground } from '../../../domain/order/ground.js';
import { heatOfOrder, isHot } from '../../../domain/order/heat.js';
import { servedAreas } from '../../../domain/order/platform.js';
import { worksInside } from '../../../domain/order/people.js';
import { stretchText } from '../../../domain/order/words.js';
import type { CalendarMoment } from '../../../domain/plan/work-calendar.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatHours } from '../../../domain/units/format.js';
import { formatTimeOfDay } from '../../../domain/units/clock.js';
import { counted } from '../../../domain/units/wording.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords, lengthWords } from '../../../domain/units/length-words.js';
import type { StepRow } from '../pack.js';
import { emptyingRun, guidanceFor, type StepSetting } from './guidance.js';
import type { JobPlan } from '../../../domain/plan/job-plan.js';

/** `ground` must be that of the plan's own steps, in their order; `ofGate` is what was found of a gate that is to hold back. */
export function stepRows(
  ground: Ground,
  plan: JobPlan,
  unit: LengthUnit,
  ofGate: (gate: string) => readonly string[],
): readonly StepRow[] {
  const { job } = ground;
  const hotOrder = heatOfOrder(ground) !== 'cold';
  const emptying = emptiedBy(plan.steps.map(({ step }) => step));
  return plan.steps.map((planned, index): StepRow => {
    const { step } = planned;
    const areas = ground.areas[index] ?? [];
    const from = Math.min(...areas.map((area) => area.from), Infinity);
    const to = Math.max(...areas.map((area) => area.to), -Infinity);
    const known = areas.length > 0;
    const words =
      step === emptying && step.action === 'run empty'
        ? emptyingRun
        : guidanceFor(step.action, {
            hot: { step: isHot(ground, step), order: hotOrder },
            joints: job.screwChange?.joints ?? 'welded',
            ...jointsIn(ground, areas, unit),
          });
    return {
      number: index + 1,
      origin: step.origin,
      ...(step.name === undefined ? {} : { name: step.name }),
      action: step.action,
      where:
        whereWords(step, known, from, to, job.conveyor.length.value, unit) +
        (step.action === 'fit' ? fitWords(ground, step, areas) : ''),
      from: known ? from : 0,
      to: known ? to : 0,
      who: planned.crews.join(', '),
      access: accessWords(ground, planned.unit, from, to),
      measures: [
        ...blocksOf(ground, step, areas),
        ...measuresOf(step, job, servedWords(job, areas, unit)),
        ...heldAbove(step, job.conveyor, unit),
        ...keptFromCaustic(step, job.conveyor),
        ...(step.action === 'gate shut' && step.gate ? ofGate(step.gate.name) : []),
        ...untilWatched(plan, index),
      ],
      work: words.work,
      check: words.check,
      hold: words.hold,
      after: nearestOnly(plan, index).map((position) => position + 1),
      people: planned.people,
      hours: planned.finish - planned.start,
      start: planned.start,
      finish: planned.finish,
      startText: momentText(planned.from),
      finishText: momentText(planned.to),
      float: planned.float,
      critical: planned.critical,
      basis: planned.work.basis,
      ...(planned.repeat === undefined ? {} : { repeat: planned.repeat }),
      ...(step.note === undefined ? {} : { note: step.note }),
    };
  });
}

/** Of the panels that a step works on. */
function jointsIn(
  { runs }: Ground,
  areas: readonly Area[],
  unit: LengthUnit,
): Pick<StepSetting, 'gap' | 'someButted' | 'heldBy'> {
  const here = runs.filter(({ panels }) => within(panels, areas).length > 0);
  const held = here.flatMap(({ liner }) => (liner.bolt ? [] : (liner.heldBy?.words ?? [])));
  const policies = here.map(({ liner }) => (liner.joint.policy === 'gap' ? liner.joint.gap.value : 0));
  const gaps = [...new Set(policies.filter((gap) => gap > 0))].sort((a, b) => a - b);
  return {
    gap: gaps.length === 0 ? undefined : gaps.map((gap) => lengthWords(gap, unit)).join(' or '),
    someButted: gaps.length > 0 && policies.some((gap) => gap === 0),
    // Where only some of the liners have no bolts, the usual words stand.
    heldBy: held.length > 0 && held.length === here.length ? [...new Set(held)].join('; ') : undefined,
  };
}

/** Blocks are counted, and set place by place. */
function blocksOf({ holdDowns, job }: Ground, { action }: Step, areas: readonly Area[]): readonly string[] {
  if (action !== 'hold-downs off' && action !== 'hold-downs on') return [];
  const here = job.conveyor.holdDowns.length > 0 ? within(holdDowns, areas) : [];
  return here.length === 0 ? [] : [`${holdDownWords(countHoldDowns(here))}.`];
}

/** The facts of a step that keep people safe, each as a line that a fitter can act on. */
function measuresOf(step: Step, { conveyor }: Job, served: string): readonly string[] {
  const { heat, attendants = [], aboard, unit, every, rest, cutToFit, gate } = step;
  return [
    ...(gate ? [/^gate\b/i.test(gate.name) ? `${gate.name}.` : `Gate ${gate.name}.`] : []),
    ...(heat ? [heat.kind === 'cold' ? 'Cold work: no flame, arc or sparks.' : hotWords(heat)] : []),
    ...(attendants.length > 0
      ? [`Stands by outside, does nothing else: ${attendants.map(({ use }) => use.name).join(', ')}.`]
      : []),
    ...(aboard && conveyor.confinedSpace && worksInside(step.action)
      ? [
          attendants.length > 0
            ? `At most ${counted(aboard.count, 'person', 'people')} inside.`
            : `At most ${counted(aboard.count, 'person', 'people')} inside: another stays outside, in touch, and does nothing else.`,
        ]
      : []),
    ...(aboard && (unit || !conveyor.confinedSpace)
      ? [
          `${[unit?.use.name ?? 'Platform', served].filter(Boolean).join(', ')}: at most ${counted(aboard.count, 'person', 'people')}.`,
        ]
      : []),
    ...(every ? [`Repeat every ${every.text} while anybody is inside.`] : []),
    ...(rest
      ? [`The place ${rest.kind} for ${rest.time.text}: nobody works there before, nights counted in.`]
      : []),
    ...(step.action === 'remove isolation' ? triedFirst(conveyor) : []),
    ...(cutToFit ? ['Closing panel: measure the gap on site and cut to fit.'] : []),
  ];
}

/** Shut off is not empty: a cylinder moves by what is left in its hose. */
function pressures({ isolations, breaks }: Conveyor): readonly string[] {
  const held = isolations.filter(({ kind }) => kind === 'hydraulic' || kind === 'pneumatic');
  const names = held.map(
    ({ name, title, kind }) => `${name}${title === undefined ? '' : ` ${title}`} (${kind})`,
  );
  // Its cylinder may be what holds it.
  const pinned = breaks.some(hasGate) ? 'A gate that is to stay shut is pinned first. ' : '';
  return names.length === 0
    ? []
    : [
        `${pinned}Vent, and see the pressure gone: ${names.join('; ')}. Accumulators and hoses behind it too.`,
      ];
}

/** What stands over the screw comes out or is held off with the power, and what is wet runs out before anything is opened. */
function heldAbove({ action }: Step, conveyor: Conveyor, unit: LengthUnit): readonly string[] {
  const hoppers = hoppersWords(conveyor, unit).join('; ');
  const drains = drainsWords(conveyor.drains, unit).join('; ');
  switch (action) {
    case 'empty':
      return hoppers === '' ? [] : [`Run out too: ${hoppers}. Look in from outside for what bridges there.`];
    case 'isolate':
      return hoppers === '' ? [] : [`Emptied, or held off, before this is signed: ${hoppers}.`];
    case 'prove dead':
      return [
        ...pressures(conveyor),
        ...(drains === '' ? [] : [`Then open, and let run out what stands in the trough: ${drains}.`]),
      ];
    case 'remove isolation':
      return drains === '' ? [] : [`Shut again, and tight: ${drains}.`];
    default:
      return [];
  }
}

/** Lime and its kin, where somebody first meets it and where it is taken out. */
function keptFromCaustic({ action, heat }: Step, conveyor: Conveyor): readonly string[] {
  const caustic = causticOf(conveyor);
  if (!caustic) return [];
  const { name, hot } = caustic;
  const noWater = hot ? ' No water on it: it gets hot. Take it up dry.' : '';
  switch (action) {
    case 'covers off':
      return [`${name} burns eyes and skin: tight goggles and gloves on, eye rinse in reach, before this.`];
    case 'strip':
    case 'clean':
      return [`${name} burns eyes and skin: goggles and gloves.${noWater}`];
    default:
      return hot && heat?.kind === 'hot' ? [`${name} out of this place before anything is wetted.`] : [];
  }
}

/** Before the machine is handed back; the list that is signed stands in the pack. */
function triedFirst(conveyor: Conveyor): readonly string[] {
  const all = conveyor.safeguards.map(safeguardWords);
  return all.length === 0
    ? []
    : [
        `Before it is handed back, looked at and tried as the site’s rules say: ${all.join('; ')}. One that does not work: stop and ask.`,
      ];
}

/** Where along the step the platform is needed; empty where it is all along, because what it carries holds nobody beside it. */
function servedWords({ conveyor }: Job, areas: readonly Area[], unit: LengthUnit): string {
  const served = servedAreas(conveyor, areas);
  const length = (all: readonly Area[]): number => all.reduce((sum, { from, to }) => sum + to - from, 0);
  return length(served) >= length(areas)
    ? ''
    : served
        .map(({ from, to }) => `${chainageWords(from, unit)} to ${chainageWords(to, unit)}`)
        .join(' and ');
}

/** One watch may follow several pieces of hot work: until it begins, the places of the earlier ones are not left alone. */
function untilWatched({ steps }: JobPlan, index: number): readonly string[] {
  const hot = steps[index];
  if (hot?.step.heat?.kind !== 'hot') return [];
  const watch = steps.find(({ step, start }) => step.action === 'fire watch' && start >= hot.finish - 1e-9);
  const gap = watch ? watch.start - hot.finish : 0;
  return gap < 1 / 60
    ? []
    : [
        `The fire watch begins ${formatHours(gap)} after it ends: until then somebody stays and watches this place too.`,
      ];
}

function hotWords(heat: Extract<Heat, { readonly kind: 'hot' }>): string {
  const measures = [
    heat.shielded ? 'liner shielded' : 'no shield declared',
    heat.wet ? 'kept wet' : 'wetting not declared',
    heat.fireWatch ? `fire watch ${heat.fireWatch.text} after it ends` : 'no fire watch declared',
  ].join(', ');
  return `HOT WORK: ${measures}.${heat.confirmed ? '' : ' TO BE CONFIRMED before it starts.'}`;
}

/** What a step waits for, without what those wait for themselves. */
function nearestOnly(plan: JobPlan, index: number): readonly number[] {
  const direct = plan.steps[index]?.after ?? [];
  const further = new Set<number>();
  const reach = (position: number): void => {
    for (const before of plan.steps[position]?.after ?? []) {
      if (further.has(before)) continue;
      further.add(before);
      reach(before);
    }
  };
  direct.forEach(reach);
  return direct.filter((position) => !further.has(position)).sort((a, b) => a - b);
}

/** `2027-01-18 07:00`. */
export function momentText(moment: CalendarMoment | undefined): string | undefined {
  return moment && `${formatDay(moment.day)} ${formatTimeOfDay(moment.hour)}`;
}

function whereWords(
  step: Step,
  known: boolean,
  from: number,
  to: number,
  length: number,
  unit: LengthUnit,
): string {
  switch (step.action) {
    case 'isolate':
    case 'prove dead':
    case 'remove isolation':
      return 'all isolation points';
    case 'run empty':
    case 'run loaded':
      return 'whole conveyor';
    case 'restrain screw':
    case 'release screw':
      return 'spiral, both ends of the length worked on';
    case 'unbolt drive':
    case 'bolt drive':
      return 'drive plate';
    default:
      break;
  }
  if (step.action === 'other work' && !step.stretch) return 'beside the machine';
  if (!known) return step.stretch ? `${stretchText(step.stretch)} (not found on this conveyor)` : 'not known';
  if (from <= 0 && to >= length) return 'whole length';
  const place =
    from === to ? chainageWords(from, unit) : `${chainageWords(from, unit)} to ${chainageWords(to, unit)}`;
  return step.stretch && step.stretch.kind !== 'chainage' && step.stretch.kind !== 'all'
    ? `${stretchText(step.stretch)}, ${place}`
    : place;
}

/** `, from the head end`; where a step fits several runs from different ends, each is named. */
function fitWords(ground: Ground, step: Step, areas: readonly Area[]): string {
  if (step.start) return `, from the ${step.start} end`;
  const runs = ground.runs.filter((run) =>
    areas.some((area) => area.from < run.run.to && area.to > run.run.from),
  );
  const ends = [...new Set(runs.map((run) => run.start))];
  return ends.length === 1
    ? `, from the ${ends[0]} end`
    : runs.map((run) => `, run ${run.run.number} from the ${run.start} end`).join('');
}

/** The platform used, and the other zones that serve a stretch, by name; empty where none is declared there. */
function accessWords({ job }: Ground, platform: string | undefined, from: number, to: number): string {
  const zones = job.conveyor.access.filter(
    (zone) =>
      zone.from.value < to &&
      zone.to.value > from &&
      (platform === undefined || zone.kind !== 'mobile platform'),
  );
  return [platform, ...zones.map((zone) => zone.name ?? zone.kind)].filter(Boolean).join(', ');
}
