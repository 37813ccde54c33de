// How much work is in a step: person-hours from the plant's declared unit times, or from defaults that are named as such.
// The defaults are judgement (person-hours): isolating 2; a cover, a brace or a hold-down 0.3; stripping and cleaning 0.5 a
// metre; fitting 2 a metre (1.5 to 2.5); clearing up 0.1 a metre; a test of the air 0.5; a piece of spiral cut and lifted 3; a welded joint 2.5; proving by running 3;
// a platform or a crane moved 1.

import { unitOfMachine } from '../model/unit-of-machine.js';
import { formatNumber } from '../units/format.js';
import type { Conveyor } from '../model/conveyor.js';
import type { Job, Step, StepAction } from '../model/job.js';
import type { WorkItem } from '../model/plant.js';
import { counted } from '../units/wording.js';
import { within, type Area, type Ground } from '../order/ground.js';
import { isHot, usualFireWatch } from '../order/heat.js';
import { loadAboard } from '../order/platform.js';

export interface Work {
  readonly personHours: number;
  /** More hands than this do not help. */
  readonly mostPeople: number;
  /** Heaviest part on a platform meanwhile, kg. */
  readonly load?: number;
  /** For people: `strip 9.6 m at 0.5 h/m`. */
  readonly basis: string;
  /** Where a unit time is a default, which one. */
  readonly defaults: readonly WorkItem[];
}

export const defaultUnitTimes: Readonly<
  Record<WorkItem, { readonly hours: number; readonly per: 'each' | 'metre' }>
> = {
  isolate: { hours: 2, per: 'each' },
  cover: { hours: 0.3, per: 'each' },
  brace: { hours: 0.3, per: 'each' },
  'hold-down': { hours: 0.3, per: 'each' },
  strip: { hours: 0.5, per: 'metre' },
  clean: { hours: 0.5, per: 'metre' },
  fit: { hours: 2, per: 'metre' },
  'screw section': { hours: 3, per: 'each' },
  weld: { hours: 2.5, per: 'each' },
  prove: { hours: 3, per: 'each' },
  'access move': { hours: 1, per: 'each' },
  'crane move': { hours: 1, per: 'each' },
  gate: { hours: 1, per: 'each' },
  empty: { hours: 1, per: 'each' },
  'gas test': { hours: 0.5, per: 'each' },
  'clear up': { hours: 0.1, per: 'metre' },
};

/** Person-hours for one of the item, or for a metre of it. */
export function unitTime(
  job: Job,
  item: WorkItem,
): { readonly hours: number; readonly per: 'each' | 'metre'; readonly assumed: boolean } {
  const stated = job.conveyor.plant.unitTimes.find((each) => each.item === item);
  if (!stated) return { ...defaultUnitTimes[item], assumed: true };
  return {
    hours: stated.time.value,
    per: stated.time.dimension === 'labour a length' ? 'metre' : 'each',
    assumed: false,
  };
}

/** `spiral`: its pieces, for the steps that lift or join them; one piece where they are not known. */
export function workOf(
  ground: Ground,
  step: Step,
  areas: readonly Area[],
  spiral: { readonly pieces: readonly { readonly centre: number }[] } | undefined,
): Work {
  const here = (spiral?.pieces ?? []).filter(({ centre }) =>
    areas.some(({ from, to }) => centre > from && centre < to),
  );
  const amount = amountOf(ground, step, areas, Math.max(1, here.length));
  return {
    ...amount,
    ...(step.takes ? { basis: 'as its step says', defaults: [] } : {}),
    load: loadAboard(ground, step, areas),
  };
}

function amountOf(ground: Ground, step: Step, areas: readonly Area[], pieces: number): Work {
  const { job } = ground;
  const metres = (kind: 'panels' | 'area'): number =>
    (kind === 'panels'
      ? ground.runs
          .flatMap((run) => within(run.panels, areas))
          .reduce((sum, panel) => sum + panel.to - panel.from, 0)
      : areas.reduce((sum, area) => sum + area.to - area.from, 0)) / 1000;
  const count = (list: Ground['covers']): number => within(list, areas).length;
  const work = (
    item: WorkItem,
    number: number,
    length: number,
    share = 1,
    most = mostPeople[step.action],
  ): Work => {
    const { hours, per, assumed } = unitTime(job, item);
    const amount = per === 'metre' ? length : number;
    const by =
      per === 'metre'
        ? lengthTimes(job.conveyor, amount, hours * share)
        : `${item === 'hold-down' ? counted(amount, 'place') : formatNumber(amount)} at ${formatNumber(Math.round(hours * share * 1000) / 1000)} h`;
    return {
      personHours: hours * share * amount,
      mostPeople: most,
      basis: by,
      defaults: assumed ? [item] : [],
    };
  };
  switch (step.action) {
    case 'isolate':
      return work('isolate', 1, 0);
    case 'empty':
      return work('empty', 1, 0);
    case 'pause':
      return fixed(0.5, 'half an hour');
    case 'fire watch':
      return fixed(usualFireWatch, `${usualFireWatch} h of watching`);
    case 'gate off':
    case 'gate on':
      return work('gate', 1, 0);
    case 'gate shut':
    case 'gate open':
      return work('gate', 1, 0, 0.25);
    case 'join screw':
      return work('weld', 1, 0);
    case 'prove dead':
      return work('isolate', 1, 0, 0.25);
    case 'gas test':
      return work('gas test', 1, 0);
    case 'clear up':
      return work('clear up', 1, metres('area'));
    case 'remove isolation':
      return work('isolate', 1, 0, 0.5);
    case 'covers off':
    case 'covers on':
      return work('cover', count(ground.covers), metres('area'));
    case 'braces off':
    case 'braces on':
      return work('brace', count(ground.braces), metres('area'));
    case 'hold-downs off':
    case 'hold-downs on':
      return work('hold-down', count(ground.holdDowns), metres('area'));
    case 'restrain screw':
    case 'unbolt drive':
    case 'bolt drive':
      return work('screw section', 1, 0, 0.5);
    case 'release screw':
      return work('screw section', 1, 0, 0.25);
    case 'remove screw':
      return work('screw section', pieces, metres('area'));
    case 'insert screw': {
      if (ground.joins) return work('screw section', pieces, metres('area'));
      const lift = work('screw section', pieces, metres('area'));
      const weld = work('weld', Math.max(0, pieces - 1), metres('area'));
      return {
        personHours: lift.personHours + weld.personHours,
        mostPeople: lift.mostPeople,
        basis: `lift ${lift.basis}; weld ${weld.basis}`,
        defaults: [...lift.defaults, ...weld.defaults],
      };
    }
    case 'strip':
      return work('strip', count(ground.runs.flatMap((run) => run.panels)), metres('panels'));
    case 'clean':
      return work('clean', count(ground.runs.flatMap((run) => run.panels)), metres('panels'));
    case 'patch': {
      const patch = work('weld', 2, 0);
      // As long as a welded one, a judgement.
      return isHot(ground, step) ? patch : { ...patch, defaults: [] };
    }
    case 'other work':
      return fixed(1, 'an hour: its step does not say how long');
    case 'fit':
      return work('fit', count(ground.runs.flatMap((run) => run.panels)), metres('panels'));
    case 'run empty':
    case 'run loaded':
      return work('prove', 1, 0, 0.5);
  }
}

/** Hours that pass whatever the number of hands. */
function fixed(hours: number, basis: string): Work {
  return { personHours: hours, mostPeople: 1, basis, defaults: [] };
}

/** Judgement. */
const mostPeople: Readonly<Record<StepAction, number>> = {
  empty: 1,
  pause: 1,
  'fire watch': 1,
  'gate off': 2,
  'gate on': 2,
  'gate shut': 1,
  'gate open': 1,
  'join screw': 2,
  isolate: 2,
  'prove dead': 2,
  'gas test': 1,
  'covers off': 6,
  'braces off': 4,
  'hold-downs off': 4,
  'restrain screw': 4,
  'unbolt drive': 3,
  'remove screw': 6,
  strip: 8,
  clean: 6,
  patch: 2,
  'other work': 6,
  fit: 4,
  'insert screw': 6,
  'bolt drive': 3,
  'release screw': 3,
  'hold-downs on': 4,
  'braces on': 4,
  'clear up': 6,
  'covers on': 6,
  'remove isolation': 2,
  'run empty': 3,
  'run loaded': 3,
};

/** What the hours come from, as the plant or the usual times have it: hours a metre, or a foot on a machine in inches. */
function lengthTimes(conveyor: Conveyor, metres: number, hours: number): string {
  const metric = `${formatNumber(Math.round(metres * 100) / 100)} m at ${formatNumber(hours)} h/m`;
  if (unitOfMachine(conveyor) === 'mm') return metric;
  return `${formatNumber(metres / 0.3048, 2)} ft at ${formatNumber(hours * 0.3048, 3)} h/ft (${metric})`;
}
