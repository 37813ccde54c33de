// What the wear model says of every conveyor and point, in words for lenses, hints and hovers. Every date stands with its
// interval; where there is none, the reason stands instead.

import { unitOfMachine } from '../domain/model/unit-of-machine.js';
import { rateWords } from '../domain/units/length-words.js';
import { formatDay, type CalendarDay } from '../domain/units/calendar.js';
import { formatNumber } from '../domain/units/format.js';
import { firstOption } from '../domain/decision/option.js';
import { lowered, counted } from '../domain/units/wording.js';
import { pointSentences, wearInShort, wearSentences } from '../generators/remaining-life/wear-words.js';
import { remainingLife, type PointLife } from '../generators/remaining-life/remaining-life.js';
import { passedText as passedLimit } from '../generators/remaining-life/passed-words.js';
import { readingCounts, seenCountText } from '../generators/remaining-life/reading-counts.js';
import { whyNot } from '../generators/remaining-life/reason-words.js';
import type { Session } from './session.js';
import type { Forecasts, ConveyorWords } from './forecast-words.js';
import type { ConveyorLife } from '../generators/remaining-life/remaining-life.js';
import {
  acceptedText,
  earliestText,
  optionChances,
  ruledOutText,
  orderText,
  passedText,
  riskText,
  unseenText,
} from '../generators/remaining-life/decision-words.js';

export function forecasts(session: Session): Forecasts {
  const conveyors: Record<string, ConveyorWords> = {};
  if (session.analysis().inConflict.length > 0) return { revision: session.revision, conveyors };
  for (const life of remainingLife(session.estate(), { track: false }).conveyors) {
    const { nameOrigin } = life.conveyor;
    conveyors[keyOf(session.uriOf(nameOrigin), nameOrigin.start)] = {
      short: conveyorShort(life),
      todo: life.attention.todo,
      long: conveyorLong(life),
      ...urgencyOf(life),
      points: Object.fromEntries(
        life.points.map((point) => [
          point.place.name,
          {
            short: pointShort(point, life.unit),
            long: [...pointLong(point, life.unit), ...pointSentences(life, point)],
          },
        ]),
      ),
    };
  }
  return { revision: session.revision, conveyors };
}

export function keyOf(uri: string, start: number): string {
  return `${uri} ${start}`;
}

/** By the plain arithmetic alone; shown until the model has answered. */
export function handWords({ history, worst, unit }: ConveyorLife): string {
  const newest = history.inspections.at(-1);
  if (!newest) return 'not inspected yet';
  const looked = `inspected ${formatDay(newest.inspection.date.day)}`;
  if (!worst) return `${looked}, no rate from the readings yet`;
  if (worst.pastLimit) return `${looked}, ${worst.place.name}: ${worst.pastLimit}`;
  const condemn = worst.milestones.find(({ kind }) => kind === 'condemn');
  if (condemn?.remaining === undefined) return `${looked}, colours only`;
  const left =
    worst.exposureNow !== undefined && condemn.exposure !== undefined
      ? Math.max(0, condemn.exposure - worst.exposureNow)
      : condemn.remaining;
  return `${looked}, ${worst.place.name}: ${worst.overruled ? 'at most' : 'about'} ${formatNumber(left, 0)} ${unit} to the condemn limit by plain arithmetic`;
}

function conveyorShort(life: ConveyorLife): string {
  const newest = life.history.inspections.at(-1);
  const looked = newest ? `inspected ${formatDay(newest.inspection.date.day)}` : 'not inspected yet';
  const forecast = life.model?.forecast;
  if (!forecast) return handWords(life);
  switch (forecast.kind) {
    case 'dates': {
      const condemn = `condemn limit ${forecast.passed ? passedLimit(forecast.passed) : between(forecast.days.q10, forecast.days.q90)}`;
      const known = [looked, condemn, wearInShort(life)].filter((each) => each !== undefined);
      return `${known.join(', ')}: ${lowered(life.attention.todo)}`;
    }
    case 'reached':
      return `${looked}, condemn limit ${forecast.passed ? passedLimit(forecast.passed) : 'passed'} at ${forecast.names.join(', ')}`;
    case 'cannot say':
      return `${looked}, no forecast: ${whyNot(forecast.why)}`;
  }
}

/** Days, 40 years: as far as forecasts reach. */
const beyond = 14_610;

function urgencyOf({ model }: ConveyorLife): { readonly urgency?: number } {
  if (model?.forecast.kind === 'reached') return { urgency: 0 };
  const forecast = model?.forecast.kind === 'dates' ? model.forecast : undefined;
  const days = forecast?.days;
  if (days?.q10 === undefined) return {};
  // Both ends and the middle count, so that two conveyors that may be at their limit today are still told apart; how long ago
  // it may have been passed makes it no more urgent.
  const today = forecast?.passed?.to ?? -Infinity;
  const [early, middle, late] = [days.q10, days.q50 ?? days.q10 + beyond, days.q90 ?? days.q10 + beyond].map(
    (each) => Math.max(today, each),
  ) as [number, number, number]; // three in, three out
  return { urgency: (early + middle + late) / 3 };
}

function conveyorLong(life: ConveyorLife): string[] {
  const { model } = life;
  if (!model) return [];
  const { forecast } = model;
  switch (forecast.kind) {
    case 'dates':
      return [
        (forecast.passed
          ? `Condemn limit ${passedLimit(forecast.passed)} (80 % interval); `
          : `Condemn limit first reached ${between(forecast.days.q10, forecast.days.q90)} (80 % interval), ` +
            `middle ${dayWords(forecast.days.q50)}; `) +
          `from ${seenCountText(readingCounts(life.points))} here and ` +
          `${forecast.pool} places in all.`,
        ...(forecast.notInspected > 0
          ? [`${forecast.notInspected} places were never seen and are forecast from the others.`]
          : []),
        ...decisionWords(life),
        ...wearSentences(life),
        ...lookWords(model.look),
        ...(model.lookAt[0] ? [`A reading of ${model.lookAt[0].name} would narrow this most.`] : []),
      ];
    case 'reached':
      return [
        `Condemn limit ${forecast.passed ? passedLimit(forecast.passed) : 'passed'} at ${forecast.names.join(', ')}.`,
      ];
    case 'cannot say':
      return [`No forecast: ${whyNot(forecast.why)}`];
  }
}

/** The row of the table of decisions, as the report prints it. */
function decisionWords(life: ConveyorLife): string[] {
  const { decision } = life;
  if (!decision) return [];
  const first = firstOption(decision.options);
  const ruledOut = ruledOutText(decision);
  return [
    `**${life.attention.todo}.**`,
    `Accepted: ${acceptedText(decision)}; passed on ${passedText(decision)}; ${unseenText(decision)}.`,
    `Chance of the limit ${riskText(life)}.`,
    ...(decision.earliest ? [`Cannot be relined before ${earliestText(life)}.`] : []),
    ...(orderText(life) === '–' ? [] : [`Order the liner by: ${orderText(life)}.`]),
    ...(first && life.attention.level === 'no outage in time'
      ? [`First of ${decision.options.length} options: ${first.what} (${optionChances(first, decision)}).`]
      : []),
    ...(ruledOut === undefined ? [] : [ruledOut]),
    ...decision.jobs.map(({ words }) => `${words}.`),
  ];
}

function lookWords(look: NonNullable<ConveyorLife['model']>['look']): string[] {
  switch (look.kind) {
    case 'by':
      return [`Look again by ${formatDay(look.day)} (${look.because}).`];
    case 'now':
      return [`Look again now (${look.because}).`];
    case 'cannot say':
      return [];
  }
}

function pointShort({ place, model }: PointLife, unit: 'h' | 't'): string {
  if (!model?.rate) return '';
  const { condemn } = model;
  const limit =
    condemn.kind === 'reached' || (condemn.kind === 'life' && condemn.passed)
      ? 'limit passed'
      : condemn.kind === 'life' && condemn.days
        ? months(condemn.days.q10, condemn.days.q90)
        : undefined;
  const rate = rateWords(model.rate.q50, unit, unitOfMachine(place.conveyor));
  return limit === undefined ? rate : `${rate}, ${limit}`;
}

function pointLong({ place, model }: PointLife, unit: 'h' | 't'): string[] {
  if (!model) return [];
  const lines: string[] = [];
  if (model.rate) {
    const [slow, middle, fast] = [model.rate.q10, model.rate.q50, model.rate.q90].map((rate) =>
      rateWords(rate, unit, unitOfMachine(place.conveyor)),
    );
    lines.push(`Wears ${middle} (80 % interval ${slow} to ${fast}).`);
  }
  switch (model.condemn.kind) {
    case 'life':
      lines.push(
        model.condemn.passed
          ? `Condemn limit ${passedLimit(model.condemn.passed)} (80 % interval).`
          : model.condemn.days
            ? `Condemn limit ${between(model.condemn.days.q10, model.condemn.days.q90)} (80 % interval), middle ${dayWords(model.condemn.days.q50)}.`
            : `Condemn limit after ${formatNumber(model.condemn.exposure.q10, 0)} to ` +
              `${formatNumber(model.condemn.exposure.q90, 0)} ${unit} since fitting (80 % interval).`,
      );
      break;
    case 'reached':
      lines.push(
        `Seen at ${formatNumber(model.condemn.by, 0)} ${unit}: condemn limit ${model.condemn.passed ? passedLimit(model.condemn.passed) : 'passed'}.`,
      );
      break;
    case 'cannot say':
      lines.push(`No forecast: ${whyNot(model.condemn.why)}`);
  }
  lines.push(basisWords(model));
  return lines;
}

function basisWords({ basis, readings, indicators, notSeen, pool }: NonNullable<PointLife['model']>): string {
  const own = [
    some(readings, 'thickness', 'thicknesses'),
    some(indicators, 'colour', 'colours'),
    some(notSeen, 'look that saw nothing', 'looks that saw nothing'),
  ].filter((part) => part !== '');
  const from = own.length > 0 ? own.join(', ') : 'no record of its own';
  return `Rests on ${from} and ${pool} places with the same liner${basis === 'inspected' ? '' : ` (${basis})`}.`;
}

/** Nothing for none. */
function some(count: number, one: string, many: string): string {
  return count === 0 ? '' : counted(count, one, many);
}

function between(early: CalendarDay | undefined, late: CalendarDay | undefined): string {
  if (early === undefined) return 'beyond 40 years';
  return late === undefined
    ? `after ${formatDay(early)}`
    : `between ${formatDay(early)} and ${formatDay(late)}`;
}

/** `limit 2027-03 to 2028-01`: months, because an editor cuts a hint at 43 characters; the days stand in its tooltip. */
function months(early: CalendarDay | undefined, late: CalendarDay | undefined): string {
  if (early === undefined) return 'limit beyond 40 years';
  const month = (day: CalendarDay): string => formatDay(day).slice(0, 7);
  if (late === undefined) return `limit after ${month(early)}`;
  return month(early) === month(late) ? `limit ${month(early)}` : `limit ${month(early)} to ${month(late)}`;
}

function dayWords(day: CalendarDay | undefined): string {
  return day === undefined ? 'beyond 40 years' : formatDay(day);
}
