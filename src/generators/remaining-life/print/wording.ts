// How numbers and records read on the page: one place, so that every table, chart and sentence says a thing the same way.

import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { formatClock } from '../../../domain/units/clock.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { PointLife, Observation, ObservedReading } from '../parts/points.js';
import { sizesOf, type Sizes } from '../sizes.js';

/** Whole hours or tonnes; a remaining life has no decimals worth printing. */
export function amount(value: number): string {
  return formatNumber(value, 0);
}

export function amountWithUnit(value: number, unit: 'h' | 't'): string {
  return `${amount(value)} ${unit}`;
}

export function date(day: CalendarDay | undefined): string {
  return day === undefined ? '–' : formatDay(day);
}

/** A chance in per cent that never claims certainty: `< 1 %`, `37 %`, `> 99 %`. */
export function chance(probability: number): string {
  if (probability < 0.005) return '< 1 %';
  if (probability > 0.995) return '> 99 %';
  return `${formatNumber(probability * 100, 0)} %`;
}

/** `6.20 m, 7:30`. */
export function spot({ place }: PointLife): string {
  const sizes = sizesOf(place.conveyor);
  return `${sizes.along(place.at)} ${sizes.far}, ${formatClock(place.clock)}`;
}

/** What a reading said, in the inspector's terms: `8.4 mm`, `teal showing`, `steel showing`, `not seen`. */
export function seenText(seen: Observation, sizes: Sizes): string {
  switch (seen.kind) {
    case 'thickness':
      return sizes.size(seen.thickness);
    case 'colour':
      return `${seen.name} showing`;
    case 'trough':
      return 'steel showing';
    case 'not seen':
      return 'not seen';
  }
}

/** The last reading that saw something; of those of one day a thickness, which says more than a colour. */
export function lastSeen({ readings }: PointLife): ObservedReading | undefined {
  const last = readings.findLast((r) => r.seen.kind !== 'not seen');
  if (last?.seen.kind !== 'colour') return last;
  return readings.findLast((r) => r.day === last.day && r.seen.kind === 'thickness') ?? last;
}
