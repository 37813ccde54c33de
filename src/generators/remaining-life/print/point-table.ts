// The table an inspector can redo by hand: for every point what was seen last, the two rates, the one that rules, and when the
// limit comes at that rate. Points that allow no rate say why instead.

import { element, group, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import { placeInText } from '../../page/place-in-text.js';
import type { PointLife } from '../parts/points.js';
import { amount, date, lastSeen, seenText } from './wording.js';
import { formatClock } from '../../../domain/units/clock.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { whyNot } from '../reason-words.js';
import { passedCell } from './passed-cell.js';
import { longTermText, sizesOf } from '../sizes.js';

export function pointTable(life: ConveyorLife): Markup {
  const sizes = sizesOf(life.conveyor);
  const unit = sizes.rateUnit(life.unit);
  return table({
    class: 'tight',
    columns: [
      { head: 'Point' },
      { head: `At, ${sizes.far}`, number: true },
      { head: 'Clock', number: true },
      { head: 'Last seen' },
      { head: headOf('Long-term', unit), number: true },
      { head: headOf('Short-term', unit), number: true },
      { head: headOf('Left at ruling rate', `${life.unit}, from when`), number: true },
      { head: 'Limit by hand', class: 'day' },
      ...(life.model
        ? [
            { head: headOf('Records', `${sizes.near} + colours`), number: true },
            { head: headOf('Limit by model', 'middle, 80 % between'), class: 'day' },
          ]
        : []),
      { head: 'Look again by', class: 'day' },
    ],
    rows: life.points.map((point) => [
      element(
        'span',
        placeInText(point.place.origin),
        point === life.worst ? `${point.place.name} ◂` : point.place.name,
      ),
      sizes.along(point.place.at),
      formatClock(point.place.clock),
      lastSeenCell(point),
      ...handCells(point),
      ...(life.model ? modelCells(point) : []),
      point.nextLook
        ? point.nextLook.overdue
          ? group(
              date(point.nextLook.day),
              ' ',
              element('span', { class: 'sub' }, element('strong', {}, 'overdue')),
            )
          : date(point.nextLook.day)
        : point.pastLimit
          ? element('strong', {}, 'now')
          : '–',
    ]),
    rowClass: (row) =>
      life.points[row] === life.worst
        ? 'first'
        : lastSeen(life.points[row] ?? life.points[0]!) === undefined
          ? 'no-reading'
          : undefined, // rows are the points
  });
}

function lastSeenCell(point: PointLife): Markup | string {
  const last = lastSeen(point);
  if (!last) return point.state === 'not seen' ? 'looked for, not seen' : 'not inspected';
  return group(
    element(
      'span',
      { class: 'nowrap', ...placeInText(last.origin) },
      seenText(last.seen, sizesOf(point.place.conveyor)),
    ),
    element('span', { class: 'sub' }, date(last.day)),
  );
}

/** How many records of this place, and the model's date; italics where it is borrowed from the pool alone. */
function modelCells(point: PointLife): readonly (Markup | string)[] {
  const { model } = point;
  if (!model) return ['–', '–'];
  const records = `${model.readings} + ${model.indicators}`;
  const limit = model.condemn;
  switch (limit.kind) {
    case 'reached':
      return [records, limit.passed ? passedCell(limit.passed) : element('strong', {}, 'passed')];
    case 'cannot say':
      return [records, element('span', { class: 'sub wrap' }, `cannot say: ${whyNot(limit.why)}`)];
    case 'life': {
      if (limit.passed) return [records, passedCell(limit.passed)];
      const middle = limit.days ? date(limit.days.q50) : amount(limit.exposure.q50);
      const [low, high] = limit.days
        ? [date(limit.days.q10), limit.days.q90 === undefined ? 'beyond 40 years' : date(limit.days.q90)]
        : [amount(limit.exposure.q10), amount(limit.exposure.q90)];
      return [
        records,
        group(
          model.basis === 'not inspected' ? element('em', {}, `${middle}, from the pool`) : middle,
          element('span', { class: 'sub' }, `${low} to`, element('br'), high),
        ),
      ];
    }
  }
}

/** Long-term, short-term, what is left, the date of the limit. */
function handCells(point: PointLife): readonly (Markup | string)[] {
  const sizes = sizesOf(point.place.conveyor);
  const { hand, colours } = point;
  const condemn = point.milestones.find((m) => m.kind === 'condemn');
  switch (hand.kind) {
    case 'rate':
      return [
        hand.rules === 'long-term'
          ? element('strong', {}, sizes.rate(hand.longTerm))
          : longTermText(hand, point.fitted, sizes),
        shortCell(point),
        leftCell(point, hand.remaining, hand.last.thickness),
        date(condemn?.day),
      ];
    case 'at the limit':
      return [sizes.rate(hand.longTerm), shortCell(point), '0', element('strong', {}, 'passed')];
    case 'no wear measured':
      return [longTermText(hand, point.fitted, sizes), shortCell(point), 'no wear measured', '–'];
    case 'no reading':
      switch (colours.kind) {
        case 'between':
          return [
            `${sizes.rate(colours.lowRate)} to ${sizes.rate(colours.highRate)}`,
            'by colour',
            group(`${amount(colours.leastLife)} to ${amount(colours.mostLife)}`, countedFrom(point)),
            '–',
          ];
        case 'at most':
          return [
            `below ${sizes.rate(colours.highRate)}`,
            'by colour',
            group(`over ${amount(colours.leastLife)}`, countedFrom(point)),
            '–',
          ];
        case 'worn through':
          return [
            `above ${sizes.rate(colours.lowRate)}`,
            'by colour',
            '0',
            element('strong', {}, 'worn through'),
          ];
        case 'contradiction':
          return ['colours contradict', '–', '–', '–'];
        case 'nothing seen':
          return ['–', '–', '–', '–'];
      }
  }
}

/** Where a colour was seen after the last thickness and agrees with it, the life counts from that thickness; where not, the colour caps it. */
function leftCell(point: PointLife, remaining: number, last: number): Markup | string {
  const sizes = sizesOf(point.place.conveyor);
  if (point.overruled)
    return group(
      'at most ',
      amount(remaining),
      element('span', { class: 'sub' }, `from at most ${sizes.size(last)}`, element('br'), 'by colour'),
      countedFrom(point),
    );
  const seen = lastSeen(point);
  const from = point.readings.findLast((r) => r.seen.kind === 'thickness');
  if (!seen || !from || seen === from) return group(amount(remaining), countedFrom(point));
  return group(
    amount(remaining),
    element('span', { class: 'sub' }, `from ${sizes.size(last)}`, countedFrom(point)),
  );
}

/** What is left counts from that day, not from the day of the report. */
function countedFrom({ leftFrom }: PointLife): Markup | undefined {
  return leftFrom === undefined ? undefined : element('span', { class: 'sub' }, date(leftFrom));
}

function shortCell(point: PointLife): Markup | string {
  const sizes = sizesOf(point.place.conveyor);
  const { hand } = point;
  if (hand.kind === 'no reading') return '–';
  switch (hand.shortTerm.kind) {
    case 'rate':
      return hand.kind === 'rate' && hand.rules === 'short-term'
        ? element('strong', {}, sizes.rate(hand.shortTerm.rate))
        : sizes.rate(hand.shortTerm.rate);
    case 'one reading':
      return 'one reading';
    case 'no exposure between':
      return 'no run between';
    case 'thicker later':
      return `thicker by ${sizes.thickness(hand.shortTerm.gain)}`;
  }
}

function headOf(words: string, unit: string): Markup {
  return group(words, element('br'), small(unit));
}

function small(text: string): Markup {
  return element('small', { class: 'muted' }, text);
}
