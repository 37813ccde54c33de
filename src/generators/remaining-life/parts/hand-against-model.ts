// Where an inspector's arithmetic and the model give dates that do not agree, why? The hand takes the larger of two rates and holds
// it for ever; the model weighs every reading by its gauge, borrows from the other places, and weighs whether the rate has changed.
// Told only where the hand's date lies outside the model's 90 % interval.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { defaultGaugeError } from '../../../domain/wear/reduce.js';
import type { DayQuantiles } from '../../../domain/wear/to-calendar.js';
import type { ConveyorLife } from './conveyor-life.js';
import type { ObservedReading, PointLife } from './points.js';

export interface Disagreement {
  readonly point: string;
  readonly hand: CalendarDay;
  readonly model: DayQuantiles;
  readonly why: DisagreementReason;
}

export type DisagreementReason =
  /** Two readings closer together than their errors can make them differ: mm worn, and one standard deviation of that. */
  | {
      readonly kind: 'two readings';
      readonly worn: number;
      readonly error: number;
      readonly readings: number;
    }
  /** The model gives a reading of this point little weight. */
  | { readonly kind: 'a reading that strays'; readonly day: CalendarDay; readonly weight: number }
  /** The hand holds the last interval's rate, which the model takes for a change only in part; or the other way round. */
  | { readonly kind: 'a change of rate'; readonly chance: number }
  /** The hand has colours only and takes a layer's depth as it is drawn. */
  | { readonly kind: 'colours only' }
  /** Own readings tell less than what the others show. */
  | { readonly kind: 'the other places'; readonly readings: number; readonly pool: number };

export function disagreementsOf(life: ConveyorLife): readonly Disagreement[] {
  return life.points.flatMap((point) => disagreementOf(life, point) ?? []);
}

export function disagreementOf(life: ConveyorLife, point: PointLife): Disagreement | undefined {
  const { limitByHand, model } = point;
  const days = model?.condemn.kind === 'life' ? model.condemn.days : undefined;
  if (!limitByHand || !model || !days) return undefined;
  // What colours allow at the earliest may well be earlier than the model's dates; it must not be later than all of them.
  const early = limitByHand.by === 'rate' && days.q05 !== undefined && limitByHand.day < days.q05;
  const late = days.q95 !== undefined && limitByHand.day > days.q95;
  if (!early && !late) return undefined;
  return {
    point: point.place.name,
    hand: limitByHand.day,
    model: days,
    why: limitByHand.by === 'colour' ? { kind: 'colours only' } : reasonOf(life, point, early),
  };
}

function reasonOf(life: ConveyorLife, point: PointLife, early: boolean): DisagreementReason {
  const { hand, model } = point;
  const thick = point.readings.filter((r) => r.seen.kind === 'thickness');
  const stray = model?.strays.find((s) => s.weight < 0.7);
  if (stray) return { kind: 'a reading that strays', day: stray.day, weight: stray.weight };
  const pace = life.model?.pace;
  if (pace && (pace.kind === 'changed' || pace.kind === 'cannot yet be told') && pace.chance > 0.3)
    return { kind: 'a change of rate', chance: pace.chance };
  const [before, last] = [thick.at(-2), thick.at(-1)];
  if (early && !point.overruled && hand.kind === 'rate' && hand.rules === 'short-term' && before && last) {
    const [first, second] = [mmOf(before), mmOf(last)];
    const error = Math.hypot(first.error, second.error);
    return { kind: 'two readings', worn: first.left - second.left, error, readings: thick.length };
  }
  return { kind: 'the other places', readings: model?.readings ?? 0, pool: model?.pool ?? 0 };
}

function mmOf({ seen }: ObservedReading): { readonly left: number; readonly error: number } {
  return seen.kind === 'thickness'
    ? { left: seen.thickness, error: seen.error ?? defaultGaugeError }
    : { left: NaN, error: defaultGaugeError };
}
