// How far did a forecast move? Two rows of one conveyor side by side: the chances by one and the same outage, what to do, when
// to order and to look, when the limit comes. What moves by less than the threshold is counted and not told, because shared
// rates make every forecast of an estate stir a little with every reading.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { BothChances, ForecastRow } from './forecast-row.js';

export interface Threshold {
  /** A chance of the limit that moves by so much is told, 0 to 1; steel by a tenth of it. */
  readonly chance: number;
  /** A date that moves by so many days is told; when the limit comes, only by a tenth of its 80 % interval as well. */
  readonly days: number;
}

export const usualThreshold: Threshold = { chance: 0.05, days: 14 };

export interface Movement {
  readonly conveyor: string;
  readonly before: ForecastRow;
  readonly after: ForecastRow;
  /** The outage by which both chances are taken; undefined: on the day of the report. */
  readonly by: string | undefined;
  readonly chances: { readonly before: BothChances; readonly after: BothChances } | undefined;
  /** What to do changed in kind, or the outage to do it at. */
  readonly action: boolean;
  /** An accepted risk is passed now and was kept before, or the other way round. */
  readonly crossed: readonly ('limit' | 'steel')[];
  /** Days that each date moved, later > 0; undefined where it is missing on a side. */
  readonly moved: {
    readonly limit: number | undefined;
    readonly order: number | undefined;
    readonly look: number | undefined;
  };
  /** Whether it is more than the threshold. */
  readonly told: boolean;
}

/** Conveyors that both sides know, in the order of the later one. */
export function movements(
  before: readonly ForecastRow[],
  after: readonly ForecastRow[],
  threshold: Threshold,
): readonly Movement[] {
  return after.flatMap((row) => {
    const old = before.find(({ conveyor }) => conveyor === row.conveyor);
    return old ? [movementOf(old, row, threshold)] : [];
  });
}

function movementOf(before: ForecastRow, after: ForecastRow, threshold: Threshold): Movement {
  const { by, chances } = commonChances(before, after);
  const moved = {
    // Two estimates of one past day stir with every reading; that it was passed is what counts.
    limit: before.passed && after.passed ? 0 : days(before.limit?.q50, after.limit?.q50),
    order: before.order?.now && after.order?.now ? 0 : days(before.order?.day, after.order?.day),
    look: days(before.lookBy, after.lookBy),
  };
  const action = before.level !== after.level || before.shown !== after.shown;
  const crossed = chances && after.accepted ? crossings(chances, after.accepted) : [];
  return {
    conveyor: after.conveyor,
    before,
    after,
    by,
    chances,
    action,
    crossed,
    moved,
    told:
      action ||
      crossed.length > 0 ||
      (before.order === undefined) !== (after.order === undefined) ||
      before.order?.now !== after.order?.now ||
      (before.limit === undefined) !== (after.limit === undefined) ||
      (before.passed === undefined) !== (after.passed === undefined) ||
      Math.abs(moved.order ?? 0) >= threshold.days ||
      Math.abs(moved.limit ?? 0) >= Math.max(threshold.days, tenthOfInterval(after)) ||
      isFar(chances, threshold),
  };
}

/** Days; a forecast that is years wide stirs by weeks without meaning anything. */
function tenthOfInterval({ limit }: ForecastRow): number {
  const width = limit?.q10 === undefined || limit.q90 === undefined ? 0 : limit.q90 - limit.q10;
  return width / 10;
}

function isFar(chances: Movement['chances'], { chance }: Threshold): boolean {
  if (!chances) return false;
  const { before, after } = chances;
  return (
    Math.abs(after.condemn - before.condemn) >= chance ||
    Math.abs(after.contact - before.contact) >= chance / 10
  );
}

/** By the outage on the later first page where both sides have it, else by the one on the earlier, else on the day itself. */
function commonChances(before: ForecastRow, after: ForecastRow): Pick<Movement, 'by' | 'chances'> {
  for (const name of [after.shown, before.shown]) {
    const [old, now] = [before, after].map(({ outages }) => outages.find((each) => each.name === name));
    if (old && now) return { by: name, chances: { before: old, after: now } };
  }
  return {
    by: undefined,
    chances: before.today && after.today && { before: before.today, after: after.today },
  };
}

function crossings(
  { before, after }: NonNullable<Movement['chances']>,
  accepted: BothChances,
): Movement['crossed'] {
  const passes = (key: keyof BothChances): boolean =>
    before[key] > accepted[key] !== after[key] > accepted[key];
  return [...(passes('condemn') ? ['limit' as const] : []), ...(passes('contact') ? ['steel' as const] : [])];
}

function days(before: CalendarDay | undefined, after: CalendarDay | undefined): number | undefined {
  return before === undefined || after === undefined ? undefined : after - before;
}
