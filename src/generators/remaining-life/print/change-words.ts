// Has the wear changed, and are the readings what they say? The sentences for the first page, the conveyor's page, the comment and
// the editor: what an engineer would say, with the chance and both dates, and what to do where it cannot be told.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { DayQuantiles } from '../../../domain/wear/to-calendar.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import type { Disagreement } from '../parts/hand-against-model.js';
import {
  noClock,
  type BranchDates,
  type LookOff,
  type ScatterTold,
  type WearPace,
} from '../parts/wear-change.js';
import type { RemainingLife, TrackedLook } from '../remaining-life.js';
import { missedLooks, missWords } from './track-record.js';
import { counted, list } from '../../../domain/units/wording.js';
import { chance } from './wording.js';
import { isOvertaken } from '../parts/points.js';
import { sizesOf, sizesOfAll, type Sizes } from '../sizes.js';

/** For the first page: all there is to say of changes, looks and gauges; one sentence where there is none. */
export function changeSentences({
  conveyors,
  scatter,
  tracks,
}: Pick<RemainingLife, 'conveyors' | 'scatter' | 'tracks'>): readonly string[] {
  // What is believed goes before what cannot be told yet.
  const pending = (life: ConveyorLife): boolean => life.model?.pace.kind === 'cannot yet be told';
  const inOrder = [...conveyors.filter((life) => !pending(life)), ...conveyors.filter(pending)];
  const told = [
    ...scatter.map((told) => scatterSentence(told, sizesOfAll(conveyors.map(({ conveyor }) => conveyor)))),
    ...bothErrorsSentence(conveyors),
    ...inOrder.flatMap(conveyorChangeSentences),
  ];
  const silent = (kind: WearPace['kind']): string[] =>
    conveyors.filter((c) => c.model?.pace.kind === kind).map((c) => c.conveyor.name);
  const missed = missedLooks(tracks);
  const quiet = silent('no sign');
  const none = quiet.filter((name) => !missed.has(name));
  const unexplained = quiet.flatMap((name) => missed.get(name) ?? []);
  const mute = conveyors
    .filter(({ model }) => model?.pace.kind === 'not asked' && model.pace.why !== noClock)
    .map((c) => c.conveyor.name);
  const tail = mute.length > 0 ? `t ${list(mute)} too little was measured to tell ` : '';
  const rest =
    none.length === 0
      ? tail && `A${tail}a change`
      : `No sign of a change at ${list(none)}${tail && `; a${tail}one`}`;
  return [...told, ...unexplained.map(unexplainedSentence), ...(rest === '' ? [] : [`${rest}.`])];
}

/** Both hold: no day divides slower wear from faster, and yet it was not what was foretold. */
function unexplainedSentence({ conveyor, day, pooled }: TrackedLook): string {
  const way = pooled.excess < 0 ? 'less' : 'more';
  return (
    `${conveyor.name} wore ${missWords(pooled)}, up to the look of ${formatDay(day)}, and no day is seen since which it does: ` +
    `it has worn ${way} than the others told from the start of what was judged, or for less long than the looks can tell; ` +
    'the dates go by all its readings, and thicknesses at the same points at the next look would tell which.'
  );
}

/** What is worth a sentence at one conveyor; none where there is no sign. */
export function conveyorChangeSentences(life: ConveyorLife): readonly string[] {
  const { model, conveyor } = life;
  if (!model) return [];
  return [
    ...paceSentence(conveyor.name, model.pace),
    ...model.looksOff.map((look) => lookOffSentence(conveyor.name, look, sizesOf(conveyor))),
    ...breakSentences(life),
    ...hangsOnSentence(life),
  ];
}

/** One reading decides: whoever signs has to know which, and what the rest would say. */
function hangsOnSentence({ conveyor, hangsOn }: ConveyorLife): readonly string[] {
  if (!hangsOn) return [];
  const { point, day, thickness } = hangsOn;
  return [
    `${point}, which governs ${conveyor.name}, hangs on one reading: with ${sizesOf(conveyor).size(thickness)} of ${formatDay(day)} the ` +
      `chance that its limit is reached today is ${chance(hangsOn.chance)}, by all else that was seen ${chance(hangsOn.without)}. ` +
      'A thickness there would tell; until then go by the worse of the two.',
  ];
}

function paceSentence(name: string, pace: WearPace): readonly string[] {
  switch (pace.kind) {
    case 'changed': {
      const faster = pace.factor.middle >= 1;
      const others =
        pace.withOthers.length > 0 ? `, like ${list(pace.withOthers)}, which carries the same` : '';
      return [
        `${name} has worn ${faster ? 'faster' : 'slower'} since the look of ${formatDay(pace.day)}${others}, chance ${chance(pace.chance)}: ` +
          `about ${factorWords(pace)} its former rate.${branchWords(pace.dates)}${notedWords(pace)}`,
      ];
    }
    case 'cannot yet be told': {
      const [a, b] = [pace.dates?.ifChanged.q05, pace.dates?.ifNot.q05];
      const soonest = a !== undefined && (b === undefined || a < b) ? a : b;
      const by = pace.dates && soonest !== undefined && soonest <= pace.dates.asOf ? 'now' : soonest;
      return [
        `Whether ${name} has worn ${pace.factor.middle >= 1 ? 'faster' : 'slower'} since the look of ` +
          `${formatDay(pace.day)} cannot yet be told from steady wear (chance ${chance(pace.chance)}): ` +
          `a look${by === undefined ? '' : by === 'now' ? ' now' : ` by ${formatDay(by)}`}, with thicknesses at the same points, would tell.${notedWords(pace)}`,
      ];
    }
    case 'faster with age':
      return [
        `Wear of ${name} speeds up with age (power ${formatNumber(pace.power, 2)} ± ${formatNumber(pace.spread, 2)}; 1 is a straight line).`,
      ];
    case 'no sign':
    case 'not asked':
      return [];
  }
}

/** `faster since 2026-03-04`, `perhaps faster since …`, `faster with age`; undefined where there is no sign. */
export function paceInShort(pace: WearPace): string | undefined {
  switch (pace.kind) {
    case 'changed':
      return `${pace.factor.middle >= 1 ? 'faster' : 'slower'} since ${formatDay(pace.day)}`;
    case 'cannot yet be told':
      return `perhaps ${pace.factor.middle >= 1 ? 'faster' : 'slower'} since ${formatDay(pace.day)}`;
    case 'faster with age':
      return 'faster with age';
    case 'no sign':
    case 'not asked':
      return undefined;
  }
}

function factorWords({ factor }: { readonly factor: { low: number; middle: number; high: number } }): string {
  return `${formatNumber(factor.middle, 1)} times (${formatNumber(factor.low, 1)} to ${formatNumber(factor.high, 1)})`;
}

function notedWords({ noted }: { readonly noted: { day: CalendarDay; text: string } | undefined }): string {
  return noted ? ` The record of ${formatDay(noted.day)} says: “${noted.text}”.` : '';
}

function branchWords(dates: BranchDates | undefined): string {
  if (!dates) return '';
  const { point, ifChanged, ifNot, asOf } = dates;
  const isPast = ({ q50 }: DayQuantiles): boolean => q50 !== undefined && q50 <= asOf;
  const verb = (days: DayQuantiles): string => (isPast(days) ? 'passed' : 'reaches');
  const again =
    isPast(ifChanged) === isPast(ifNot) ? '' : `${isPast(ifNot) ? 'it passed' : 'it reaches'} it `;
  return ` If so, ${point} ${verb(ifChanged)} the condemn limit ${months(ifChanged)}; if not, ${again}${months(ifNot)}.`;
}

/** `2026-11 to 2027-04`: a month is as near as a branch can be told. */
function months({ q10, q90 }: DayQuantiles): string {
  const month = (day: CalendarDay | undefined): string =>
    day === undefined ? 'beyond 40 years' : formatDay(day).slice(0, 7);
  return month(q10) === month(q90) ? `in ${month(q10)}` : `${month(q10)} to ${month(q90)}`;
}

function lookOffSentence(name: string, { day, bias }: LookOff, sizes: Sizes): string {
  return (
    `The look of ${formatDay(day)} at ${name} reads ${sizes.size(Math.abs(bias.middle))} ` +
    `${bias.middle > 0 ? 'thick' : 'thin'} nearly everywhere: ` +
    'check the gauge and its sound velocity on a piece of known thickness.'
  );
}

/** A point that grew beyond its errors: another panel, another spot, or a misread. */
function breakSentences({ points, conveyor }: ConveyorLife): readonly string[] {
  const sizes = sizesOf(conveyor);
  return points.flatMap((point) =>
    (point.model?.breaks ?? [])
      .filter(({ from, to }) => ![from, to].some((on) => isOvertaken(point, on)))
      .map(
        ({ from, to, growth }) =>
          `${point.place.name} of ${conveyor.name} reads ${sizes.size(growth)} thicker on ${formatDay(to)} than ` +
          `on ${formatDay(from)}, beyond the errors of both: a new panel that no reline records, ` +
          'another spot, or a misread; measure it again.',
      ),
  );
}

export function scatterSentence({ level, factor, declared }: ScatterTold, sizes: Sizes): string {
  const scatter = sizes.size(factor.middle * declared);
  const which =
    level === 'above twice'
      ? 'Readings scatter far more than declared'
      : 'Readings scatter more than declared';
  return (
    `${which}: ${scatter} about smooth wear where ± ${sizes.size(declared)} was declared ` +
    `(${formatNumber(factor.middle, 1)} times). ` +
    'Measure 5 points twice, by the same hand and by another, and declare what they differ by.'
  );
}

/** Either the gauge is worse than declared, or the wear itself is uneven: until it is known which, both dates. */
function bothErrorsSentence(conveyors: readonly ConveyorLife[]): readonly string[] {
  const both = conveyors.flatMap(({ conveyor, model }) => {
    const found = model?.forecast.kind === 'dates' ? model.forecast.days : undefined;
    return found && model?.asDeclared
      ? [
          `${conveyor.name} ${months(found)} if it is the gauge, ${months(model.asDeclared)} if it is the wear`,
        ]
      : [];
  });
  return both.length === 0
    ? []
    : [
        'Until then it is open whether the gauge is that bad or, with the gauge as good as declared, the wear that uneven. ' +
          `The condemn limit comes (80 % between) at ${both.join('; at ')}. All other dates take it to be the gauge.`,
      ];
}

/** Why the hand's date and the model's do not agree. */
export function disagreementSentence({ point, hand, model, why }: Disagreement, sizes: Sizes): string {
  const between =
    `${model.q50 === undefined ? 'beyond 40 years' : formatDay(model.q50)} (90 %: ` +
    `${model.q05 === undefined ? '–' : formatDay(model.q05)} to ` +
    `${model.q95 === undefined ? 'beyond 40 years' : formatDay(model.q95)})`;
  const head = `${point}: ${formatDay(hand)} by hand, ${between} by the model.`;
  switch (why.kind) {
    case 'two readings':
      return (
        `${head} The hand holds the rate between the last two readings for ever: ` +
        `${sizes.size(why.worn)} worn, give or take ${sizes.size(why.error)} from their gauges alone; ` +
        `the model goes by all ${counted(why.readings, 'thickness', 'thicknesses')} and by what the other places show.`
      );
    case 'a reading that strays':
      return (
        `${head} The hand takes the reading of ${formatDay(why.day)} as it stands; ` +
        `the model, going by all others, lets it count for ${formatNumber(why.weight, 2)}.`
      );
    case 'a change of rate':
      return `${head} The model gives a change of the rate a chance of ${chance(why.chance)} and weighs both cases; the hand knows one rate only.`;
    case 'colours only':
      return (
        `${head} The hand has colours only and takes each layer to end where it is drawn; ` +
        'the model lets layers vary and also goes by what the other places show.'
      );
    case 'the other places':
      return (
        `${head} The hand knows the ${counted(why.readings, 'thickness', 'thicknesses')} of this point ` +
        `only; the model also goes by ${counted(why.pool, 'place')} with records, which wear at another rate.`
      );
  }
}
