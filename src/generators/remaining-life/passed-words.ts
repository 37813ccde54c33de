// How a limit that has been passed reads: one place for page, comment, comparison, index of months, calendar and editor. A date
// that lies behind the day of the report is never printed as one to come.

import type { LimitPassed } from '../../domain/wear/passed.js';
import { formatDay } from '../../domain/units/calendar.js';
import { passedAt } from './parts/points.js';
import type { ConveyorLife } from './parts/conveyor-life.js';
import { chance } from './print/wording.js';

/** `passed, likely between 2025-02-22 and 2025-07-22`; what a look showed needs no `likely`, what is not sure says how sure. */
export function passedText(passed: LimitPassed): string {
  const when = passedWhen(passed);
  if (passed.by === 'seen') return `passed ${when}`;
  return passed.chance < 0.895
    ? `likely passed (chance ${chance(passed.chance)}), ${when}`
    : `passed, likely ${when}`;
}

/** For a narrow cell whose first line says `passed`: `2025-02-22 to`, `2025-07-22`. */
export function passedLines({ from, to }: LimitPassed): readonly [string, string] {
  return from === undefined || from === to
    ? [from === to ? 'on' : 'by', formatDay(to)]
    : [`${formatDay(from)} to`, formatDay(to)];
}

/** Of a conveyor: its first place, by the model, else by what was seen at the worst point; undefined where it is not passed. */
export function limitPassed({
  model,
  worst,
}: Pick<ConveyorLife, 'model' | 'worst'>): LimitPassed | undefined {
  const forecast = model?.forecast;
  const byModel = forecast?.kind === 'dates' || forecast?.kind === 'reached' ? forecast.passed : undefined;
  return byModel ?? (worst?.pastLimit ? passedAt(worst) : undefined);
}

function passedWhen({ from, to }: LimitPassed): string {
  if (from === undefined) return `by ${formatDay(to)}`;
  return from === to ? `on ${formatDay(to)}` : `between ${formatDay(from)} and ${formatDay(to)}`;
}
