// What the model says, in sentences: for the page, the comment and whoever reads aloud.

import type { DepthForecast, MeasureComparison, WhatIf } from '../remaining-life.js';
import type { Case } from '../parts/what-if-cases.js';
import type { ConveyorModel, Quantiles } from '../parts/model.js';
import { lookDueWords } from '../../../domain/model/asked-looks.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { DayQuantiles } from '../../../domain/wear/to-calendar.js';
import { capital, counted } from '../../../domain/units/wording.js';
import { amount, amountWithUnit, chance, date } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { limitPassed, passedText } from '../passed-words.js';
import { readingCounts, seenCountText } from '../reading-counts.js';
import { whyNot } from '../reason-words.js';

/** `2027-01-28 (2026-12-23 to 2027-03-12)`, `passed, likely between … and …`, or why there is none. */
export function limitText(life: ConveyorLife): string {
  const passed = limitPassed(life);
  const through = life.worst?.pastLimit === 'trough shows';
  if (passed) return through ? `worn through, limit ${passedText(passed)}` : passedText(passed);
  if (life.worst?.pastLimit) return through ? 'worn through' : 'passed';
  const forecast = life.model?.forecast;
  switch (forecast?.kind) {
    case undefined:
      return '–';
    case 'reached':
      return 'passed';
    case 'cannot say':
      return `cannot say: ${whyNot(forecast.why)}`;
    case 'dates':
      return forecast.days.q50 === undefined ? 'beyond 40 years' : daysText(forecast.days);
  }
}

/** Undefined where the model says nothing of the conveyor. */
export function forecastText(life: ConveyorLife): string | undefined {
  const forecast = life.model?.forecast;
  if (forecast?.kind !== 'dates') return undefined;
  const lead = forecast.first
    .filter((f) => f.share >= 0.1)
    .slice(0, 3)
    .map((f) => `${f.name} (${chance(f.share)})`);
  const rest =
    forecast.notInspected > 0 ? `, ${counted(forecast.notInspected, 'point')} among them not inspected` : '';
  const where = lead.join(', ') || forecast.first[0]?.name || 'no one point';
  const head = forecast.passed
    ? `The limit is ${passedText(forecast.passed)}; the point to reach it first was most likely ${where}. `
    : `The limit is reached first within ${amount(forecast.exposure.q10)} to ` +
      `${amountWithUnit(forecast.exposure.q90, life.unit)} from the day of the report (80 %), ` +
      `middle ${amountWithUnit(forecast.exposure.q50, life.unit)}; ` +
      `the point to reach it first is most likely ${where}. `;
  return head + `It rests on ${seenCountText(readingCounts(life.points))}${rest}`;
}

export function lookText(life: ConveyorLife): string | undefined {
  const look = life.model?.look;
  switch (look?.kind) {
    case 'by':
      return `Look again by ${date(look.day)}: ${lookReason(look)}`;
    case 'now':
      return `Look again now: ${lookReason(look)}`;
    default:
      return undefined;
  }
}

/** What the records ask for, each a sentence. */
export function askedTexts({ looksAsked }: ConveyorLife): readonly string[] {
  return looksAsked.map((due) => capital(lookDueWords(due)));
}

/** Why then; empty where nothing tells when. */
export function lookReason(look: ConveyorModel['look']): string {
  if (look.kind === 'cannot say') return '';
  switch (look.because) {
    case 'half the remaining life':
      return `half of the remaining life by the hand arithmetic${look.kind === 'now' ? ' is over' : ''}`;
    case 'the declared risk':
      return look.kind === 'now'
        ? 'the chance of the limit is above the accepted risk'
        : 'the chance of the limit passes the accepted risk';
    case 'a look asked for':
      return `it is asked for${look.kind === 'now' ? ' and not made' : ''}`;
    case 'panels never seen':
      return 'only panels that nobody has seen stand against the outage to reline at';
  }
}

/** The middle day, and between which days the limit falls with 80 %. */
function daysText({ q10, q50, q90 }: DayQuantiles): string {
  return `${date(q50)} (${date(q10)} to ${q90 === undefined ? 'beyond 40 years' : date(q90)})`;
}

export function depthText(forecast: DepthForecast | undefined): string {
  switch (forecast?.kind) {
    case undefined:
      return '–';
    case 'reached':
      return forecast.passed ? passedText(forecast.passed) : 'passed';
    case 'cannot say':
      return `cannot say: ${whyNot(forecast.why)}`;
    case 'life':
      if (forecast.passed) return passedText(forecast.passed);
      return forecast.days ? daysText(forecast.days) : interval(forecast.exposure);
  }
}

export function whatIfText(whatIf: WhatIf): string {
  const head = `${whatIf.change.text}${whatIf.change.conveyors.length > 1 ? `, ${whatIf.conveyor}` : ''}: `;
  switch (whatIf.kind) {
    case 'cannot say':
      return `${head}cannot say, ${whatIf.why}.`;
    case 'liner life': {
      const { unit } = whatIf;
      return (
        `${head}a whole new set, fitted on the day of the report, would first reach its limit, ` +
        `most likely at ${whatIf.place}, after ${interval(whatIf.other, unit)}; ` +
        `one of the present liner after ${interval(whatIf.present, unit)}.`
      );
    }
    case 'dates':
      return `${head}limit ${caseText(whatIf.changed)}; as it is, ${caseText(whatIf.base)}.`;
  }
}

export function caseText({ forecast, riskDay }: Case): string {
  const risk = `risk passed ${riskDay === undefined ? 'beyond 40 years' : date(riskDay)}`;
  switch (forecast.kind) {
    case 'dates':
      return forecast.passed
        ? `${passedText(forecast.passed)}, ${risk}`
        : `${date(forecast.days.q50)} (80 %: ${date(forecast.days.q10)} to ${date(forecast.days.q90)}), ${risk}`;
    case 'reached':
      return `${forecast.passed ? passedText(forecast.passed) : 'passed'} at ${forecast.names.join(', ')}`;
    case 'cannot say':
      return `cannot say, ${whyNot(forecast.why)}`;
  }
}

function interval(q: Quantiles, unit?: 'h' | 't'): string {
  return `${unit ? amountWithUnit(q.q50, unit) : amount(q.q50)} (80 %: ${amount(q.q10)} to ${amount(q.q90)})`;
}

/** What the hours that nobody has read are taken for. */
export function dutyVariationText({
  dutyVariation: { level, wander },
  meterRead,
}: Pick<ConveyorModel, 'dutyVariation' | 'meterRead'>): string {
  const share = (ratio: number): string =>
    ratio < 0.005 ? 'less than 1 %' : `${formatNumber(ratio * 100, 0)} %`;
  const source = { declared: 'as declared', observed: 'as the meter shows', assumed: 'assumed' };
  return (
    `Hours are reckoned from the last meter reading, ${date(meterRead)}: ± ${share(level.ratio)} on their long-run mean (${source[level.from]}) ` +
    `and ± ${share(wander.ratio)} on any ${formatNumber(wander.per, 0)} days (${source[wander.from]})`
  );
}

/** Which of hours and tonnes explains the wear, of one conveyor or of all. */
export function measureText({ better, readings, ratio, conveyors }: MeasureComparison): string {
  const what = counted(readings, 'thickness', 'thicknesses');
  const of = conveyors > 1 ? ` of ${conveyors} conveyors together` : '';
  if (better === 'cannot tell')
    return `Hours or tonnes: ${what}${of} do not tell which explains the wear better`;
  return (
    `${better === 'hours' ? 'Hours' : 'Tonnes'} explain the wear better than ${better === 'hours' ? 'tonnes' : 'hours'}: ` +
    `the ${what}${of} are ${ratio > 1000 ? 'over 1000' : amount(ratio)} times as likely`
  );
}
