// What should the gauge show, on the date and at the meter that are typed on the page? Read off the tables that the report's model
// made, straight between their columns; rounded outwards to what a gauge is read to, as on the printed sheet.

import { typedNumber } from '../forms/typed-number.js';
import { data, linerOf, state, type PhoneRow } from './state.js';
import { hoursField, tonnesField } from './typed.js';

export interface ExpectedHere {
  /** mm, rounded outwards as in the words. */
  readonly least: number;
  readonly most: number;
  /** Layers that may show. */
  readonly layers: readonly string[];
  readonly words: string;
}

/** Undefined where the records or the duty do not tell. */
export function expectedAt(point: PhoneRow): ExpectedHere | undefined {
  const ahead = runSince();
  if (!('least' in point.expect) || ahead === undefined) return undefined;
  const [low, high] = [tabled(point.expect.least, ahead.running), tabled(point.expect.most, ahead.running)];
  if (low === undefined || high === undefined) return undefined;
  const [size, digits] = data.unit === 'mm' ? [1, 1] : [25.4, 2];
  const step = 10 ** digits;
  const least = Math.floor((low / size) * step + 1e-6) / step;
  const most = Math.ceil((high / size) * step - 1e-6) / step;
  const layers = layersWithin(point, low, high);
  const shown = low <= 0 ? [...layers, 'trough'] : layers;
  const words = `${least.toFixed(digits)} to ${most.toFixed(digits)} ${data.unit}, ${shown.join(' or ')}`;
  return { least: least * size, most: most * size, layers, words };
}

/** What has run since the last reading of the counter, h or t, and what that was reckoned from. */
export function runSince(): { readonly running: number; readonly by: 'counter' | 'duty' } | undefined {
  const { running, meter, tonnes } = data;
  const [typed, last] =
    running.measure === 't'
      ? [typedNumber(state.tonnes, tonnesField), tonnes?.last]
      : [typedNumber(state.meter, hoursField), meter.last];
  if (
    typed.kind === 'read' &&
    last !== null &&
    last !== undefined &&
    typed.value >= last &&
    isPossible(typed.value - last)
  )
    return { running: (typed.value - last) * running.perCount, by: 'counter' };
  const byDuty = runBy(running.daily, state.date);
  return byDuty === undefined ? undefined : { running: byDuty, by: 'duty' };
}

/** What the hour meter should show on the date that is typed; undefined where nobody declares how long it runs. */
export function meterExpected(): number | undefined {
  const run = runBy(data.running.hoursDaily, state.date);
  return run === undefined || data.meter.last === null ? undefined : Math.round(data.meter.last + run);
}

/** No meter runs faster than the clock; one that does is asked about and not reckoned with. */
function isPossible(more: number): boolean {
  const { measure, from } = data.running;
  return measure === 't' || !isDate(state.date) || more <= 24 * (daysBetween(from, state.date) + 1);
}

function runBy(daily: typeof data.running.daily, date: string): number | undefined {
  const [first] = daily;
  if (!first || !isDate(date) || date < first.from) return undefined;
  return daily.reduce((sum, { from, running }, k) => {
    const end = daily[k + 1]?.from;
    const until = end !== undefined && end < date ? end : date;
    return sum + running * Math.max(0, daysBetween(from, until));
  }, 0);
}

function isDate(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text);
}

/** Whole days from one ISO date to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}

/** Straight between the columns; undefined beyond the last, where nobody should go by a page so old. */
function tabled(values: readonly number[], at: number): number | undefined {
  const { ahead } = data.running;
  const next = ahead.findIndex((each) => each >= at);
  const [end, after] = [values[next], ahead[next]];
  if (end === undefined || after === undefined) return undefined;
  const [start, before] = [values[next - 1], ahead[next - 1]];
  if (after === at || start === undefined || before === undefined) return end;
  return start + ((end - start) * (at - before)) / (after - before);
}

function layersWithin(point: PhoneRow, least: number, most: number): readonly string[] {
  const layers = linerOf(point)?.layers ?? [];
  const showing = (left: number): number => {
    let depth = 0;
    const at = layers.findIndex(({ thickness }) => point.fitted - left < (depth += thickness) - 1e-9);
    return at < 0 ? layers.length - 1 : at;
  };
  return layers.slice(showing(most), showing(least) + 1).map(({ name }) => name);
}
