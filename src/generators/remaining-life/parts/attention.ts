// Which conveyor needs attention first, why, and what is there to do? Steel showing goes before a limit that was passed, that
// before a risk that no planned outage meets, that before a reline to plan, a look to make, a conveyor not seen enough, and
// last what is in order. Within a level the earlier date goes first, then the name.

import type { ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import type { OutageDecision } from '../../../domain/decision/outage-decision.js';
import type { OrderCall } from '../../../domain/decision/order-call.js';
import { openConditionsText, safeguardsOutText } from '../../../domain/conditions/rows.js';
import { percent } from '../../../domain/decision/option-setting.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import { formatPercent } from '../../../domain/units/format.js';
import { limitPassed, passedText } from '../passed-words.js';
import { isOvertaken, type PointLife } from './points.js';
import type { Attention, ConveyorLife } from './conveyor-life.js';
import { attentionLevels } from './conveyor-life.js';
import { sizesOf } from '../sizes.js';

export type Unsorted = Omit<ConveyorLife, 'attention' | 'order'>;

export function orderOfAttention(
  conveyors: readonly Unsorted[],
  asOf: CalendarDay | undefined,
): readonly ConveyorLife[] {
  return conveyors
    .map((life) => {
      const attention = attentionOf(life, asOf);
      return { ...life, attention, order: ownOrder(life, attention, asOf) };
    })
    .sort(
      (a, b) =>
        attentionLevels.indexOf(a.attention.level) - attentionLevels.indexOf(b.attention.level) ||
        (a.attention.day ?? Infinity) - (b.attention.day ?? Infinity) ||
        (a.conveyor.name < b.conveyor.name ? -1 : a.conveyor.name > b.conveyor.name ? 1 : 0),
    );
}

/** Of the conveyor by itself: where nothing is to be relined nothing is to be ordered. */
function ownOrder(
  { decision }: Unsorted,
  { level }: Attention,
  asOf: CalendarDay | undefined,
): OrderCall | undefined {
  switch (level) {
    case 'worn through':
    case 'past the limit':
      return (
        decision?.order ??
        (asOf === undefined
          ? undefined
          : { kind: 'order', day: asOf, why: 'no outage in time', outage: undefined, latest: undefined })
      );
    case 'no outage in time':
    case 'reline to plan':
      return decision?.order;
    case 'look now':
    case 'not enough seen':
    case 'in order':
      return undefined;
  }
}

function attentionOf(life: Unsorted, asOf: CalendarDay | undefined): Attention {
  const { worst, model } = life;
  const safeguards = safeguardsOutText(life.conditions);
  const reasons = [
    ...(safeguards === undefined ? [] : [`safeguards out of order: ${safeguards}`]),
    ...passedReason(life),
    ...aboutWorst(worst),
    ...troughReason(life),
    ...conditionReason(life),
    ...overdueReason(life),
    ...unseenReason(life),
    ...strayReason(life),
    ...life.history.remarks.map((r) => r.replace(/\.$/, '')),
  ];
  const first = firstByHand(life);
  const day =
    (model?.forecast.kind === 'dates' ? model.forecast.days.q50 : undefined) ?? first?.limitByHand?.day;
  const base = { reasons, day, outage: undefined };
  if (life.trough.places.some(({ belowMinimum }) => belowMinimum))
    return {
      ...base,
      level: 'worn through',
      todo: 'Stop, and patch the trough: its plate is at the minimum',
    };
  if (worst?.pastLimit === 'trough shows')
    return {
      ...base,
      level: 'worn through',
      todo: 'Look at the trough, patch it where the screw has cut in, and reline',
    };
  if (worst?.pastLimit === 'at the limit' || model?.forecast.kind === 'reached')
    return {
      ...base,
      level: 'past the limit',
      todo: 'Reline at the first chance; do not wait for a planned outage without a competent person’s leave',
    };
  const plan = planOf(life, asOf);
  const seen = life.points.some((p) => p.state === 'thickness' || p.state === 'colour');
  if (!seen) {
    // Nobody relines what nobody has looked at: what the others lend is a reason to look, not to act.
    const unseen = 'nothing of the present liner was ever seen';
    return plan
      ? {
          ...base,
          level: 'look now',
          todo: `Inspect now: ${unseen}, and going by the others its limit may come before the last planned outage`,
        }
      : { ...base, level: 'not enough seen', todo: `Inspect: ${unseen}` };
  }
  if (plan) {
    const { because = [], ...rest } = plan;
    return { ...base, ...rest, reasons: [...because, ...reasons] };
  }
  if (
    model?.look.kind === 'now' ||
    isAskedFor(life, asOf) ||
    (!byModel(life) && life.points.some((p) => p.nextLook?.overdue))
  )
    return { ...base, level: 'look now', todo: 'Look again now' };
  if (safeguards !== undefined)
    return {
      ...base,
      level: 'look now',
      todo: 'Put the safeguards right; whether it runs until then is decided on site',
    };
  if (life.conditions.some(({ severity }) => severity === 'urgent'))
    return { ...base, level: 'look now', todo: 'Put right what is urgent' };
  if (worst === undefined)
    return {
      ...base,
      level: 'not enough seen',
      todo: 'Look again: the records do not say how fast it wears',
    };
  return { ...base, level: 'in order', todo: nothingDue(life) };
}

/** The day has come that a record asks a look by. */
function isAskedFor({ looksAsked: [first] }: Unsorted, asOf: CalendarDay | undefined): boolean {
  return first?.day !== undefined && asOf !== undefined && first.day <= asOf;
}

type Plan = Pick<Attention, 'level' | 'todo' | 'outage'> & { readonly because?: readonly string[] };

/** By the table of decisions where the model gives dates, else by hand against the planned outages. */
function planOf(life: Unsorted, asOf: CalendarDay | undefined): Plan | undefined {
  const { conveyor, decision } = life;
  if (decision) return planByDecision(decision);
  const first = firstByHand(life);
  const limit = first?.limitByHand;
  if (!first || !limit) return undefined;
  if (limit.by === 'colour' && (asOf === undefined || limit.day <= asOf)) {
    return {
      level: 'look now',
      outage: undefined,
      todo: `Measure at ${first.place.name} now: by its colour the limit may be reached already`,
    };
  }
  const outages = conveyor.plant.outages.filter((o) => asOf === undefined || o.from.day >= asOf);
  if (!outages.some((o) => o.from.day >= limit.day)) return undefined;
  const intime = outages
    .filter((o) => o.from.day <= limit.day)
    .sort((a, b) => a.from.day - b.from.day)
    .at(-1);
  const when = `${limit.by === 'colour' ? 'as early as ' : ''}${formatDay(limit.day)}`;
  return intime
    ? {
        level: 'reline to plan',
        outage: undefined,
        todo: `Reline at ${intime.name} (${formatDay(intime.from.day)}) at the latest: by hand the limit comes ${when}`,
      }
    : {
        level: 'no outage in time',
        outage: undefined,
        todo: `Reline before ${formatDay(limit.day)}: by hand the limit comes ${when}, before any planned outage`,
      };
}

function firstByHand({ points }: Unsorted): PointLife | undefined {
  return points.reduce<PointLife | undefined>(
    (a, p) => (p.limitByHand && (!a?.limitByHand || p.limitByHand.day < a.limitByHand.day) ? p : a),
    undefined,
  );
}

/** The plan of the table of decisions in words, with what speaks for it. */
function planByDecision(decision: ConveyorDecision): Plan | undefined {
  const { plan, chosen } = decision;
  const look = `look now at ${unseenPanels(decision)} never seen`;
  switch (plan.kind) {
    case 'nothing due':
      return undefined;
    case 'reline': {
      const where = `${plan.outage.name} (${formatDay(plan.outage.from)})`;
      if (decision.ruledOut) return ruledOutPlan(decision, plan.outage);
      return chosen
        ? { level: 'reline to plan', outage: plan.outage, todo: `Reline at ${where}` }
        : {
            level: 'reline to plan',
            outage: plan.outage,
            todo: `Reline at ${where} by what was seen, and ${look}`,
            because: [unseenText(decision)],
          };
    }
    case 'look':
      return {
        level: 'look now',
        outage: undefined,
        todo: `${look.charAt(0).toUpperCase()}${look.slice(1)}`,
        because: [unseenText(decision)],
      };
    case 'no outage in time':
      return {
        level: 'no outage in time',
        outage: plan.outage,
        todo: noOutageText(decision),
        because: noOutageReasons(decision),
      };
  }
}

/** An outage is early enough, and nothing that was tried can be done there. */
function ruledOutPlan({ ruledOut }: ConveyorDecision, outage: OutageDecision): Plan {
  return {
    level: 'no outage in time',
    outage,
    todo: `Due at ${outage.name} (${formatDay(outage.from)}), and nothing that was tried can be done there`,
    because: ruledOut?.why ?? [],
  };
}

function unseenPanels({ panels, panelsSeen }: ConveyorDecision): string {
  return panels - panelsSeen === 1 ? 'the panel' : `the ${panels - panelsSeen} panels`;
}

/** What nobody has seen stands against it: how much, and by when. */
function unseenText({ panels, panelsSeen, today, accepted, outages, asOf }: ConveyorDecision): string {
  const when = today.condemn > accepted.condemn ? undefined : outages[0];
  const chance = when?.condemn ?? today.condemn;
  const seen = when ? when.condemnSeen : today.condemnSeen;
  return (
    `counting ${panels - panelsSeen === 1 ? 'it' : 'them'} in, the chance of the limit is ` +
    `${percent(chance)} by ${when ? `${when.name} (${formatDay(when.from)})` : formatDay(asOf)}` +
    (seen === undefined ? '' : `, by what was seen ${percent(seen)}`)
  );
}

/** That none is in time, and how soon it could be relined at all. */
function noOutageText(decision: ConveyorDecision): string {
  const { earliest, earliestPart, ruledOut, asOf, outages, scopes, order } = decision;
  const head = outages.length === 0 ? 'No outage is declared' : 'No planned outage is early enough';
  if (ruledOut) return `${head}, and nothing that was tried can be done before`;
  const part =
    earliestPart && (earliest === undefined || earliestPart.day < earliest.day)
      ? `${earliestPart.scope} can be relined ${earliestPart.day <= asOf ? 'today' : `from ${formatDay(earliestPart.day)}`}`
      : undefined;
  const whole = scopes?.works.at(-1)?.work;
  if (whole && !whole.buildable)
    return `${head}${part === undefined ? '' : `; ${part}`}, and no order of work can be built for the whole`;
  if (!earliest)
    return part === undefined
      ? `${head}, and no lead time says how soon it could be relined`
      : `${head}; ${part}, and no lead time says how soon the whole could be`;
  const sooner = decision.expedited === undefined ? '' : `, expedited ${formatDay(decision.expedited)}`;
  if (earliest.day <= asOf)
    return order?.kind === 'ordered'
      ? `${head}; the liner is ordered and was to be there by now`
      : `${head}; the liner is on the shelf`;
  return part === undefined
    ? `${head}, and it cannot be relined before ${formatDay(earliest.day)}${sooner}`
    : `${head}; ${part}, the whole not before ${formatDay(earliest.day)}${sooner}`;
}

/** Panels without any reading that alone pass the risk today: a reason to look, and no date. */
function neverSeen({ panels, panelsSeen, today, accepted }: ConveyorDecision): readonly string[] {
  const { condemn, contact, condemnSeen = 0, contactSeen = 0 } = today;
  const alone =
    (condemn > accepted.condemn && condemnSeen <= accepted.condemn) ||
    (contact > accepted.contact && contactSeen <= accepted.contact);
  if (!alone || panelsSeen === 0) return [];
  return [
    `${counted(panels - panelsSeen, 'panel')} never seen, with 0 readings: by what the others do alone the limit ` +
      `there is passed already with a chance of ${percent(condemn)}, steel with ${percent(contact)}; look there`,
  ];
}

/** The chances on the earliest day, when the risk passes, and where the day comes from. */
function noOutageReasons(decision: ConveyorDecision): readonly string[] {
  const { passed, passedSeen, passedSeenBy, accepted, earliest, asOf, outages } = decision;
  const day = passedSeen ?? passed?.day;
  const first = outages.find(({ reachable }) => reachable);
  const seen = (chance: number | undefined): string =>
    chance === undefined || decision.panels === decision.panelsSeen
      ? ''
      : ` (of what was seen ${percent(chance)})`;
  const risk =
    (passedSeen === undefined ? passed?.by : passedSeenBy) === 'steel'
      ? `the accepted risk of steel, ${formatPercent(accepted.contact)},`
      : `the accepted risk of ${formatPercent(accepted.condemn)}`;
  const { ruledOut } = decision;
  return [
    ...(ruledOut?.why ?? []),

    ...(earliest
      ? [
          `by ${earliest.day <= asOf ? 'today' : formatDay(earliest.day)} the limit is reached with a chance ` +
            `of ${percent(earliest.condemn)}${seen(earliest.condemnSeen)}, ` +
            `steel with ${percent(earliest.contact)}${seen(earliest.contactSeen)}${earliest.day <= asOf ? '' : `; ${earliest.why}`}`,
        ]
      : []),
    day === undefined || day <= asOf
      ? `${risk} ${day === undefined || day === asOf ? 'is passed today' : `has been passed since ${formatDay(day)}`}`
      : `${risk} is passed ${day === passed?.day ? '' : 'by what was seen '}on ` +
        `${formatDay(day)}${first && day < first.from ? `, before ${first.name} (${formatDay(first.from)})` : ''}`,
    ...neverSeen(decision),
  ];
}

function nothingDue({ decision }: Unsorted): string {
  const last = decision?.outages.at(-1);
  if (last) return `Nothing to reline up to ${last.name}`;
  return 'Nothing due';
}

/** Steel that is bare, or too thin, stands before all else that is wrong. */
function troughReason({ trough, conveyor }: Unsorted): readonly string[] {
  const sizes = sizesOf(conveyor);
  const thin = trough.places.filter(({ belowMinimum }) => belowMinimum);
  const passed = trough.places.filter(({ passedFor }) => passedFor !== undefined);
  const bare = trough.spans.filter(
    ({ until, because }) => until === undefined && because === 'panel missing',
  );
  return [
    ...(thin.length === 0
      ? []
      : [
          `the plate is at its minimum at ${thin.map(({ at }) => `${sizes.along(at)} ${sizes.far}`).join(', ')}`,
        ]),
    ...(passed.length === 0
      ? []
      : [
          `by its rate the plate is past its minimum at ${passed.map(({ at }) => `${sizes.along(at)} ${sizes.far}`).join(', ')}: measure it now`,
        ]),
    ...(bare.length === 0
      ? []
      : [
          `steel is bare from ${bare.map(({ from, to }) => `${sizes.joint(from)} to ${sizes.joint(to)} ${sizes.far}`).join(', ')}: a panel is missing`,
        ]),
  ];
}

function conditionReason({ conditions }: Unsorted): readonly string[] {
  const text = openConditionsText(conditions);
  const [worst] = conditions;
  return text === undefined || !worst
    ? []
    : [`${text}${conditions.length === 1 ? `: ${worst.what}` : `, ${worst.what} among them`}`];
}

/** What the model says is passed; what was seen is told by the point it was seen at. */
function passedReason({ model, worst }: Unsorted): readonly string[] {
  const passed = limitPassed({ model, worst });
  return passed?.by === 'reckoned' ? [`the condemn limit is ${passedText(passed)}`] : [];
}

function aboutWorst(worst: PointLife | undefined): readonly string[] {
  if (!worst) return [];
  const where = worst.place.name;
  const sizes = sizesOf(worst.place.conveyor);
  const { hand } = worst;
  if (worst.pastLimit === 'trough shows') return [`${where}: steel shows, the liner is worn through`];
  if (hand.kind === 'at the limit')
    return [
      `${where}: ${atMost(worst)}${sizes.size(hand.last.thickness)} left, the limit is ${sizes.size(worst.condemn)}`,
    ];
  if (hand.kind === 'rate')
    return [
      `${where}: ${atMost(worst)}${sizes.size(hand.last.thickness)} left of ` +
        `${sizes.size(worst.fitted.value)}${readOn(worst)}, limit ${sizes.size(worst.condemn)}`,
    ];
  if (worst.colours.kind === 'between') {
    return [
      `${where}: by colour ${sizes.thickness(worst.colours.leastThickness)} to ${sizes.size(worst.colours.mostThickness)} left`,
    ];
  }
  return [];
}

/** What is left is of an earlier look than the last that saw something. */
function readOn({ readings, leftFrom }: PointLife): string {
  const last = readings.findLast(({ seen }) => seen.kind !== 'not seen');
  return leftFrom === undefined || last === undefined || last.day <= leftFrom
    ? ''
    : ` on ${formatDay(leftFrom)}`;
}

/** A colour seen after the last thickness bounds what is left and does not measure it. */
function atMost({ overruled }: PointLife): string {
  return overruled?.by === 'colour' ? 'by colour at most ' : '';
}

/** Where the model gives dates its chance says when to look; a first colour then makes nothing overdue. */
function byModel({ model }: Unsorted): boolean {
  return model?.forecast.kind === 'dates';
}

function overdueReason(life: Unsorted): readonly string[] {
  const { points } = life;
  if (byModel(life)) return [];
  const overdue = points.filter((p) => p.nextLook?.overdue);
  if (overdue.length === 0) return [];
  const oldest = overdue.reduce((a, b) =>
    (b.nextLook?.day ?? Infinity) < (a.nextLook?.day ?? Infinity) ? b : a,
  );
  const since = oldest.nextLook ? `, since ${formatDay(oldest.nextLook.day)}` : '';
  return [
    `the next look is overdue at ${overdue.length === 1 ? oldest.place.name : `${overdue.length} points`}${since}`,
  ];
}

function unseenReason({ runs, points }: Unsorted): readonly string[] {
  const panels = runs.flatMap((r) => r.panels);
  const unseen = panels.filter((p) => p.state !== 'seen').length;
  const never = points.filter((p) => p.state === 'none' || p.state === 'not seen').map((p) => p.place.name);
  return [
    ...(never.length === 0 || never.length === points.length
      ? []
      : [
          `${never.length <= 4 ? never.join(', ') : `${never.length} points`} never seen on the present liner`,
        ]),
    ...(unseen === 0 ? [] : [`${unseen} of ${panels.length} panels have no reading`]),
  ];
}

function strayReason({ points }: Unsorted): readonly string[] {
  const strays = points.flatMap((p) =>
    (p.model?.strays ?? [])
      .filter((s) => s.weight < 0.5 && !isOvertaken(p, s.day))
      .map((s) => `${p.place.name} on ${formatDay(s.day)}`),
  );
  return strays.length === 0
    ? []
    : [
        `${strays.length === 1 ? 'a reading strays' : `${strays.length} readings stray`} from the rest: ` +
          `${strays.slice(0, 4).join(', ')}${strays.length > 4 ? ' and more' : ''}`,
      ];
}
