// What does a crew carry in its pocket out of the whole pack? The head, the steps in order with their measures and holds, what
// to carry, the stops: taken from the pack's own value and worked out nowhere else, so that the two cannot disagree.

import { formatMass, formatNumber } from '../../../domain/units/format.js';
import { counted } from '../../../domain/units/wording.js';
import { lengthWords } from '../../../domain/units/length-words.js';
import type { CrewRow, MaterialRow, StepRow, WorkPack } from '../pack.js';

export interface CrewSheet {
  readonly head: readonly { readonly name: string; readonly value: string }[];
  readonly carry: readonly { readonly heading: string; readonly items: readonly string[] }[];
  /** What holds for every panel: how the spiral is kept up, how panels are fixed. */
  readonly everyPanel: readonly string[];
  readonly steps: readonly CrewStep[];
  /** Numbers of the steps that nobody passes without a signature. */
  readonly holds: readonly number[];
}

export interface CrewStep {
  readonly number: number;
  readonly hold: boolean;
  /** `fit`, and where it is done. */
  readonly what: string;
  readonly where: string;
  /** People, and what they work from. */
  readonly who: string;
  readonly measures: readonly string[];
  /** What must be true before a hold is signed; undefined for no hold. */
  readonly check: string | undefined;
  /** The day where it is another than that of the step before, and the time; undefined without a window. */
  readonly day: string | undefined;
  readonly time: string | undefined;
}

export function crewSheet(pack: WorkPack): CrewSheet {
  const once = pack.steps.filter(({ repeat }) => repeat === undefined);
  return {
    head: headOf(pack),
    carry: [
      { heading: 'Comes off and goes back', items: takingItems(pack) },
      { heading: 'Bring to the place', items: [...pack.materials.map(materialWords), ...toolItems(pack)] },
      { heading: 'Lifting', items: liftItems(pack) },
    ].filter(({ items }) => items.length > 0),
    everyPanel: [
      ...(pack.heldUp === undefined ? [] : [pack.heldUp]),
      ...pack.fixings.map(({ liner, inShort }) =>
        pack.fixings.length > 1 ? `${liner}: ${inShort}` : inShort,
      ),
    ],
    steps: once.map((step, index) => crewStep(saidOnce(pack, withAgain(pack, step)), once[index - 1])),
    holds: once.filter((step) => step.hold).map((step) => step.number),
  };
}

/** How many a platform bears stands in the head, for every step on it; a step where fewer may be on it says so. */
function saidOnce({ accessUnits }: WorkPack, step: StepRow): StepRow {
  const isSaid = (measure: string): boolean =>
    accessUnits.some(
      ({ name, people }) =>
        people !== undefined &&
        (measure.startsWith(`${name}:`) || measure.startsWith(`${name}, `)) &&
        measure.endsWith(`: ${onIt(people)}.`),
    );
  return { ...step, measures: step.measures.filter((measure) => !isSaid(measure)) };
}

function onIt(people: number): string {
  return `at most ${counted(people, 'person', 'people')}`;
}

/** The first test of the air names the hours of all that follow it, which have no rows of their own here. */
function withAgain({ steps }: WorkPack, step: StepRow): StepRow {
  const first = steps.find(({ action }) => action === 'gas test');
  const again = steps.filter(({ repeat }) => repeat !== undefined);
  if (step !== first || again.length === 0) return step;
  const days = new Map<string, string[]>();
  for (const { startText, start } of again) {
    const [day = '', hour = `hour ${formatNumber(start, 1)}`] = startText?.split(' ') ?? [];
    days.set(day, [...(days.get(day) ?? []), hour]);
  }
  const hours = [...days].map(([day, list]) => `${day} ${list.join(', ')}`.trim()).join('; ');
  return { ...step, measures: [...step.measures, `Again, all work standing still: ${hours}.`] };
}

function headOf({
  conveyor,
  scope,
  window,
  crews,
  accessUnits,
  warnings,
  unit,
  rescue,
}: WorkPack): CrewSheet['head'] {
  const units = accessUnits.map((each) =>
    [
      each.name,
      each.title,
      each.limit === undefined ? '' : `at most ${formatMass(each.limit)}`,
      each.people === undefined ? '' : `${onIt(each.people)} on it in every step`,
      reachOf(each),
    ]
      .filter(Boolean)
      .join(', '),
  );
  function reachOf({ reach }: WorkPack['accessUnits'][number]): string {
    return reach === undefined ? '' : `reach ${lengthWords(reach, unit)}`;
  }
  return [
    { name: 'Conveyor', value: [conveyor.name, conveyor.title].filter(Boolean).join(': ') },
    { name: 'Job', value: scope.join(' ') || 'names nothing to reline and no screw to change' },
    {
      name: 'Window',
      value: window
        ? `${window.from} to ${window.to}, ${window.days} days`
        : 'not given: ask before you start',
    },
    { name: 'Crews', value: crews.map(crewWords).join('; ') || 'none named' },
    ...(units.length > 0 ? [{ name: 'Access', value: units.join('; ') }] : []),
    { name: 'Rescue', value: rescueWords(rescue) },
    ...(warnings.length > 0
      ? [{ name: 'To be settled', value: `${warnings.length}, on the first page of the pack` }]
      : []),
  ];
}

function crewWords({ name, size, idle }: CrewRow): string {
  const people =
    size === undefined
      ? `${name} (not declared at the plant)`
      : `${name}, ${counted(size, 'person', 'people')}`;
  return idle ? `${people}, in no step` : people;
}

function takingItems(pack: WorkPack): string[] {
  return pack.takings.map(({ part, which, off, back, mass, note }) =>
    [
      `${part}: ${off === back ? `${off} off and back` : `${off} off, ${back} back`}`,
      which,
      mass === undefined ? '' : `${formatMass(mass)} each`,
      note,
    ]
      .filter(Boolean)
      .join(', '),
  );
}

/** Contact and means as they are; the place with its name. */
function rescueWords([contact, means, place]: WorkPack['rescue']): string {
  const meet = place && `${place.name.toLowerCase()}: ${place.value}`;
  return [contact?.value, means?.value, meet].filter(Boolean).join('; ');
}

function toolItems({ tools }: WorkPack): string[] {
  if (tools.length === 0) return [];
  return [`tools: ${tools.map(({ what, count }) => (count > 1 ? `${count} × ${what}` : what)).join('; ')}`];
}

function materialWords({ what, needed, spares, unit }: MaterialRow): string {
  return `${needed}${spares > 0 ? ` + ${spares} spare` : ''} ${unit === 'pieces' ? '×' : `${unit} of`} ${what}`;
}

function liftItems({ lifts, panelLift }: WorkPack): string[] {
  const { spiral } = lifts;
  return [
    ...lifts.byHand.map((lift) => `${lift.what}: the heaviest ${formatMass(lift.mass)}`),
    ...(panelLift
      ? [
          panelLift.index === undefined
            ? 'Panels: beyond the reach that the NIOSH equation allows by hand; use lifting gear.'
            : 'One person in the posture worked out in the pack: ' +
              `the NIOSH equation gives ${formatMass(panelLift.limit)}; ` +
              `the heaviest panel is ${formatNumber(panelLift.index, 2)} times that.`,
        ]
      : []),
    ...(spiral?.pieces ?? []).map(
      ({ number, mass, limit, liftingPoint, withinLimit }) =>
        `spiral piece ${number}: ${formatMass(mass)}${liftingPoint === undefined ? '' : `, hangs from ${liftingPoint}`}` +
        `${limit === undefined ? '' : `, limit ${formatMass(limit)}`}${withinLimit ? '' : ': OVER LIMIT'}`,
    ),
  ];
}

function crewStep(step: StepRow, before: StepRow | undefined): CrewStep {
  const [day, time] = step.startText?.split(' ') ?? [];
  return {
    number: step.number,
    hold: step.hold,
    what: step.action,
    where: step.where,
    who: [step.who, step.access].filter(Boolean).join(' · '),
    measures: [...step.measures, ...(step.note === undefined ? [] : [step.note])],
    check: step.hold ? step.check : undefined,
    day: day === before?.startText?.split(' ')[0] ? undefined : day,
    time,
  };
}
