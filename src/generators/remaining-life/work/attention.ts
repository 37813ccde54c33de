// Which conveyor needs attention first, and why? Worn through before past the limit, past the limit before due within the
// planned outages, due before a look that is late, and parts nobody has seen are never passed over. Within a level the
// earlier date goes first, then the name.

import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { ConveyorLife } from '../remaining-life.js';
import type { PointLife } from './points.js';

export const attentionLevels = ['worn through', 'past the limit', 'limit before the last outage', 'look overdue', 'not enough seen', 'in order'] as const;
export type AttentionLevel = (typeof attentionLevels)[number];

export interface Attention {
  readonly level: AttentionLevel;
  /** What leads, then what else is to be known; sentences without a full stop. */
  readonly reasons: readonly string[];
  /** The date the order goes by, by the hand arithmetic of the worst point. */
  readonly limitDay: CalendarDay | undefined;
}

type Unsorted = Omit<ConveyorLife, 'attention'>;

export function orderOfAttention(conveyors: readonly Unsorted[], asOf: CalendarDay | undefined): readonly ConveyorLife[] {
  return conveyors
    .map((life) => ({ ...life, attention: attentionOf(life, asOf) }))
    .sort((a, b) =>
      attentionLevels.indexOf(a.attention.level) - attentionLevels.indexOf(b.attention.level)
      || (a.attention.limitDay ?? Infinity) - (b.attention.limitDay ?? Infinity)
      || (a.conveyor.name < b.conveyor.name ? -1 : a.conveyor.name > b.conveyor.name ? 1 : 0));
}

function attentionOf(life: Unsorted, asOf: CalendarDay | undefined): Attention {
  const { worst } = life;
  const limitDay = worst?.milestones.find((m) => m.kind === 'condemn')?.day;
  const outages = life.conveyor.plant.outages.filter((o) => asOf === undefined || o.from.day >= asOf);
  const beforeLast = limitDay !== undefined && outages.some((o) => o.from.day >= limitDay);
  const overdue = life.points.filter((p) => p.nextLook?.overdue);
  const seen = life.points.some((p) => p.state === 'thickness' || p.state === 'colour');
  const lead = worst ? aboutWorst(worst, limitDay) : [];
  const rest = [...overdueReason(overdue), ...unseenReason(life), ...life.history.remarks.map((r) => r.replace(/\.$/, ''))];
  const level: AttentionLevel = worst?.pastLimit === 'trough shows' ? 'worn through'
    : worst?.pastLimit === 'at the limit' ? 'past the limit'
    : beforeLast ? 'limit before the last outage'
    : overdue.length > 0 ? 'look overdue'
    : !seen ? 'not enough seen' : 'in order';
  return { level, limitDay, reasons: [...lead, ...rest] };
}

function aboutWorst(worst: PointLife, limitDay: CalendarDay | undefined): readonly string[] {
  const where = worst.place.name;
  const { hand } = worst;
  if (worst.pastLimit === 'trough shows') return [`${where}: steel shows, the liner is worn through`];
  if (hand.kind === 'at the limit') return [`${where}: ${formatNumber(hand.last.thickness, 1)} mm left, the limit is ${formatNumber(worst.condemn, 1)} mm`];
  if (hand.kind === 'rate') {
    const when = limitDay === undefined ? '' : `, at the ruling rate the limit is reached about ${formatDay(limitDay)}`;
    return [`${where}: ${formatNumber(hand.last.thickness, 1)} mm left of ${formatNumber(worst.fitted.value, 1)} mm, limit ${formatNumber(worst.condemn, 1)} mm${when}`];
  }
  if (worst.colours.kind === 'between') {
    return [`${where}: by colour ${formatNumber(worst.colours.leastThickness, 1)} to ${formatNumber(worst.colours.mostThickness, 1)} mm left`];
  }
  return [];
}

function overdueReason(overdue: readonly PointLife[]): readonly string[] {
  if (overdue.length === 0) return [];
  const oldest = overdue.reduce((a, b) => ((b.nextLook?.day ?? Infinity) < (a.nextLook?.day ?? Infinity) ? b : a));
  const since = oldest.nextLook ? `, the oldest since ${formatDay(oldest.nextLook.day)}` : '';
  return [`the next look is overdue at ${overdue.length === 1 ? oldest.place.name : `${overdue.length} points`}${since}`];
}

function unseenReason(life: Unsorted): readonly string[] {
  const panels = life.runs.flatMap((r) => r.panels);
  const unseen = panels.filter((p) => p.state !== 'seen').length;
  return unseen === 0 ? [] : [`${unseen} of ${panels.length} panels not inspected since they were fitted`];
}
