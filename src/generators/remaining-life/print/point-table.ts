// The table an inspector can redo by hand: for every point what was seen last, the two rates, the one that rules, and when the
// limit comes at that rate. Points that allow no rate say why instead.

import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import type { ConveyorLife } from '../remaining-life.js';
import type { PointLife } from '../work/points.js';
import { amount, date, lastSeen, metres, rate, rateUnit, seenText, thickness } from './wording.js';
import { formatClock } from '../../../domain/units/clock.js';

export function pointTable(life: ConveyorLife): Markup {
  const unit = rateUnit(life.unit);
  return table({
    class: 'tight',
    columns: [
      { head: 'Point' }, { head: 'At, m', number: true }, { head: 'Clock', number: true }, { head: 'Last seen' },
      { head: headOf('Long-term', unit), number: true }, { head: headOf('Short-term', unit), number: true },
      { head: headOf('Left at ruling rate', life.unit), number: true }, { head: 'Limit by hand', class: 'day' }, { head: 'Look again by', class: 'day' },
    ],
    rows: life.points.map((point) => [
      point === life.worst ? `${point.place.name} ◂` : point.place.name, metres(point.place.at), formatClock(point.place.clock), lastSeenCell(point),
      ...handCells(point),
      point.nextLook ? (point.nextLook.overdue ? group(element('strong', {}, 'overdue'), ` ${date(point.nextLook.day)}`) : date(point.nextLook.day)) : point.pastLimit ? element('strong', {}, 'now') : '–',
    ]),
    rowClass: (row) => (life.points[row] === life.worst ? 'first' : lastSeen(life.points[row] ?? life.points[0]!) === undefined ? 'unseen' : undefined), // rows are the points
  });
}

function lastSeenCell(point: PointLife): Markup | string {
  const last = lastSeen(point);
  if (!last) return point.state === 'hidden' ? 'looked for, not seen' : 'not inspected';
  return group(element('span', { class: 'nowrap' }, seenText(last.seen)), ' ', small(date(last.day)));
}

/** Long-term, short-term, what is left, the date of the limit. */
function handCells(point: PointLife): readonly (Markup | string)[] {
  const { hand, colours } = point;
  const condemn = point.milestones.find((m) => m.kind === 'condemn');
  switch (hand.kind) {
    case 'rate':
      return [
        hand.rules === 'long-term' ? element('strong', {}, rate(hand.longTerm)) : rate(hand.longTerm),
        shortCell(point),
        amount(hand.remaining), date(condemn?.day),
      ];
    case 'at the limit':
      return [rate(hand.longTerm), shortCell(point), '0', element('strong', {}, 'reached')];
    case 'no wear measured':
      return [rate(hand.longTerm), shortCell(point), 'no wear measured', '–'];
    case 'no reading':
      switch (colours.kind) {
        case 'between':
          return [`${rate(colours.lowRate)} to ${rate(colours.highRate)}`, 'by colour', `${amount(colours.leastLife)} to ${amount(colours.mostLife)}`, '–'];
        case 'at most':
          return [`below ${rate(colours.highRate)}`, 'by colour', `over ${amount(colours.leastLife)}`, '–'];
        case 'worn through':
          return [`above ${rate(colours.lowRate)}`, 'by colour', '0', element('strong', {}, 'worn through')];
        case 'contradiction':
          return ['colours contradict', '–', '–', '–'];
        case 'nothing seen':
          return ['–', '–', '–', '–'];
      }
  }
}

function shortCell(point: PointLife): Markup | string {
  const { hand } = point;
  if (hand.kind === 'no reading') return '–';
  switch (hand.shortTerm.kind) {
    case 'rate':
      return hand.kind === 'rate' && hand.rules === 'short-term' ? element('strong', {}, rate(hand.shortTerm.rate)) : rate(hand.shortTerm.rate);
    case 'one reading':
      return 'one reading';
    case 'no exposure between':
      return 'no run between';
    case 'thicker later':
      return `thicker by ${thickness(hand.shortTerm.gain)}`;
  }
}

function headOf(words: string, unit: string): Markup {
  return group(words, element('br'), small(unit));
}

function small(text: string): Markup {
  return element('small', { class: 'muted' }, text);
}

