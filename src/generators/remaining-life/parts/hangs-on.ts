// Does the answer at the governing point hang on one reading? Its newest thickness is left out, and the chance of the limit asked
// again. Every reading moves a chance a little; told is the one whose absence would call for something else: the accepted risk, or an
// even chance, lies between the two, and they are far apart. A reading that contradicts what was seen since is such a one.

import { forecastUnit, forecastWithoutNewest } from '../../../domain/wear/forecast.js';
import { calendarOf, exposureThen, forecastDepth, type Coming, type FittedWear } from './forecasts.js';
import type { HangsOn } from './model.js';
import type { PointLife } from './points.js';

/** So many times as likely, or more, beside not being so (judgement): less is what any look does. */
const farApart = 5;

export function hangsOn(
  { input, result }: FittedWear,
  coming: Coming,
  point: PointLife,
  risk: number,
): HangsOn | undefined {
  const unit = input.members.findIndex((m) => m.place === point.place && m.set === point.set);
  const then = exposureThen(point.set, coming);
  const newest = point.readings.findLast(({ seen }) => seen.kind === 'thickness');
  if (newest?.seen.kind !== 'thickness') return undefined;
  if (result.kind !== 'fitted' || unit < 0 || then === undefined) return undefined;
  const depth = point.fitted.value - point.condemn;
  if (forecastUnit(result, unit, depth).kind !== 'life') return undefined;
  const other = forecastWithoutNewest(result, unit, depth);
  const without = other && calendarOf(other, then, coming);
  const as = forecastDepth(result, unit, depth, then, coming);
  if (without?.kind !== 'dates' || as.kind !== 'life' || !as.chanceBy) return undefined;
  const [chance, bare] = [as.chanceBy(coming.asOf), without.reachedBy(coming.asOf)];
  const between = [risk, 0.5].some((level) => chance < level !== bare < level);
  const odds = (p: number): number => Math.max(p, 1e-6) / Math.max(1 - p, 1e-6);
  const ratio = odds(chance) / odds(bare);
  if (!between || (ratio < farApart && ratio > 1 / farApart)) return undefined;
  return {
    point: point.place.name,
    day: newest.day,
    thickness: newest.seen.thickness,
    chance,
    without: bare,
  };
}
