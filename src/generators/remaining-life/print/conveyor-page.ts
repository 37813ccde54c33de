// The engineer's pages of one conveyor: what it is about, the liner unrolled, the worst point at large, every point in small,
// the table with the hand arithmetic, what was not seen or left out, and the liners that lay there before.

import { placeInText } from '../../page/place-in-text.js';
import { formatDay, parseDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { momentOn } from '../../../domain/model/history.js';
import { element, group, type Child, type Markup } from '../../page/markup.js';
import { figure, table } from '../../page/page.js';
import { nearestToLimit, type PointLife } from '../parts/points.js';
import { disagreementsOf } from '../parts/hand-against-model.js';
import { conveyorChangeSentences, disagreementSentence } from './change-words.js';
import type { WearPace } from '../parts/wear-change.js';
import { chartKey, mapKey } from './keys.js';
import { depthText, dutyVariationText, forecastText, measureText, lookText } from './sentences.js';
import { troughSection } from './trough.js';
import { besideSection } from './beside-liner.js';
import { conditionSection } from './conditions.js';
import { photoStrip, type PhotoBytes } from './photos.js';
import { optionSection } from './option-table.js';
import { linerMap, mapRows } from './liner-map.js';
import { pointTable } from './point-table.js';
import { readingMatrix } from './reading-matrix.js';
import { wearChart } from './wear-chart.js';
import { capital, counted } from '../../../domain/units/wording.js';
import {
  amount,
  amountWithUnit,
  date,
  metres,
  millimetres,
  rate,
  seenText,
  spot,
  thickness,
} from './wording.js';
import { wearTotal } from '../../../domain/model/liner-sets.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';

/** More drawings than this nobody leafs through; the table has every point. */
const mostCharts = 24;

export function conveyorPage(life: ConveyorLife, index: number, photo?: PhotoBytes): Markup {
  const { conveyor, worst } = life;
  const id = `c${index + 1}`;
  const most = axisEnd(life);
  const seen = life.points.filter((p) => p.state === 'thickness' || p.state === 'colour');
  const near = seen.length <= mostCharts ? undefined : nearestToLimit(seen, mostCharts);
  const charts = near ? seen.filter((p) => near.has(p)) : seen;
  return element(
    'section',
    { class: 'page', id },
    element(
      'h2',
      placeInText(conveyor.nameOrigin),
      conveyor.name,
      ' ',
      element('span', { class: 'sub' }, conveyor.title ?? ''),
    ),
    facts(life),
    element('p', { class: 'verdict' }, `${life.attention.todo}.`),
    element(
      'ul',
      {},
      [...life.attention.reasons, forecastText(life), lookText(life)]
        .filter((text) => text !== undefined)
        .map((text) => element('li', {}, `${capital(text)}.`)),
      [...conveyorChangeSentences(life), ...disagreementsOf(life).map(disagreementSentence)].map((sentence) =>
        element('li', {}, sentence),
      ),
    ),
    optionSection(life),
    conditionSection(life, photo),
    ...besideSection(life.beside),
    figure({
      drawing: linerMap(life, `${id}-map`),
      caption: mapKey(life),
      data: table({
        columns: [{ head: 'Panel' }, { head: 'Chainage, m' }, { head: 'Last seen' }],
        rows: mapRows(life),
      }),
    }),
    worst &&
      figure({
        drawing: wearChart(worst, {
          id: `${id}-worst`,
          size: 'large',
          unit: life.unit,
          most,
          years: yearMarks(life, worst, most),
          ...changeAt(life, worst),
        }),
        caption: group(
          `${worst.place.name} (${spot(worst)}): the limit comes first here. `,
          chartKey(worst.model?.rate !== undefined, changeAt(life, worst).changedAt !== undefined),
        ),
      }),
    element('h3', {}, 'Points'),
    pointTable(life),
    charts.length > 1 && element('h3', {}, 'Thickness left, point by point'),
    charts.length > 1 &&
      element(
        'p',
        { class: 'small' },
        `mm left over ${life.unit === 'h' ? 'running hours' : 'tonnes'} since the liner was fitted; ` +
          `all on one scale.${near ? ` The ${charts.length} of ${seen.length} points nearest to their limit.` : ''}`,
      ),
    charts.length > 1 &&
      element(
        'div',
        { class: 'charts' },
        charts.map((point, i) =>
          wearChart(point, {
            id: `${id}-p${i + 1}`,
            size: 'small',
            unit: life.unit,
            most,
            ...changeAt(life, point),
          }),
        ),
      ),
    readingsData(life, seen),
    readingMatrix(life),
    readingPhotos(life, photo),
    troughSection(life, photo),
    flightTable(life),
    borrowed(life),
    notSeen(life),
    formerSets(life),
  );
}

function facts(life: ConveyorLife): Markup {
  const { conveyor, now, duty } = life;
  const liners = [...new Set(life.lying.map((set) => set.liner.name))];
  const fitted = [
    ...new Set(life.lying.map((set) => (set.fitted ? formatDay(set.fitted.day) : 'not recorded'))),
  ];
  const total = life.unit === 'h' ? now?.hours : now?.tonnes;
  const items: readonly (readonly [string, string])[] = [
    ['Liner', liners.length === 0 ? 'none' : liners.join(', ')],
    ['Fitted', fitted.length === 0 ? '–' : fitted.join(', ')],
    [
      'Condemn at',
      [...new Set(life.points.map((p) => millimetres(p.condemn)))].join(', ') ||
        millimetres(conveyor.liner.condemn.value),
    ],
    [
      life.unit === 'h' ? 'Run in all' : 'Carried in all',
      total === undefined ? 'not known' : amountWithUnit(total, life.unit),
    ],
    ['Duty', duty ? duty.text : 'none declared'],
    ['Wear goes by', life.unit === 'h' ? 'running hours' : 'tonnes'],
  ];
  return element(
    'dl',
    { class: 'facts' },
    items.map(([term, value]) => element('div', {}, element('dt', {}, term), element('dd', {}, value))),
  );
}

/** Far enough to see the limit come at the worst point, whatever room that leaves the readings. */
export function axisEnd(life: ConveyorLife): number {
  const now = Math.max(
    1,
    ...life.points.map((p) => Math.max(p.exposureNow ?? 0, ...p.readings.map((r) => r.exposure))),
  );
  const { worst } = life;
  const limit =
    worst?.model?.condemn.kind === 'life'
      ? worst.model.condemn.exposure.q90
      : worst?.milestones.find((m) => m.kind === 'condemn')?.exposure;
  return Math.min(Math.max((limit ?? now * 1.3) * 1.15, now * 1.25), now * 12);
}

/** The look since which the rate may have changed, at the exposure this point's liner had then; none before it was fitted. */
function changeAt(life: ConveyorLife, point: PointLife): { pace?: WearPace; changedAt?: number } {
  const pace = life.model?.pace;
  if (pace?.kind !== 'changed' && pace?.kind !== 'cannot yet be told') return {};
  const moment = momentOn(life.history, pace.day);
  const [then, from] = [wearTotal(life.history, moment), wearTotal(life.history, point.set?.fitted)];
  return then === undefined || from === undefined || then <= from ? {} : { pace, changedAt: then - from };
}

/** First days of calendar years, at the exposure the set had or will have then. */
function yearMarks(
  life: ConveyorLife,
  point: PointLife,
  most: number,
): { day: CalendarDay; label: string; exposure: number }[] {
  const fitted = point.set?.fitted;
  const from = wearTotal(life.history, fitted);
  if (!fitted || from === undefined) return [];
  const marks: { day: CalendarDay; label: string; exposure: number }[] = [];
  for (let year = Number(formatDay(fitted.day).slice(0, 4)) + 1; marks.length < 12; year++) {
    const day = parseDay(`${year}-01-01`);
    const moment = day === undefined ? undefined : momentOn(life.history, day);
    const total = wearTotal(life.history, moment);
    if (day === undefined || total === undefined || total - from > most) break;
    marks.push({ day, label: String(year), exposure: total - from });
  }
  // A reader sees years only where they do not touch.
  return marks.filter((mark, i) => i === 0 || (mark.exposure - (marks[i - 1]?.exposure ?? 0)) / most > 0.06);
}

function readingsData(life: ConveyorLife, points: readonly PointLife[]): Markup | undefined {
  if (points.length === 0) return undefined;
  const rows = points.flatMap((p) =>
    p.readings.map((r) => [
      p.place.name,
      formatDay(r.day),
      amountWithUnit(r.exposure, life.unit),
      seenText(r.seen),
      [
        r.seen.kind === 'thickness' && r.seen.error !== undefined ? `± ${millimetres(r.seen.error)}` : '',
        r.note ?? '',
      ]
        .filter(Boolean)
        .join('; '),
    ]),
  );
  return element(
    'details',
    { class: 'data' },
    element('summary', {}, `The ${counted(rows.length, 'reading')} behind these charts`),
    table({
      columns: [
        { head: 'Point' },
        { head: 'Date' },
        { head: 'Since fitted', number: true },
        { head: 'Seen' },
        { head: 'Note' },
      ],
      rows,
    }),
  );
}

/** Beside the readings of the present liner, newest first. */
function readingPhotos(life: ConveyorLife, photo: PhotoBytes | undefined): Markup | undefined {
  const shown = life.points.flatMap(({ place, readings }) =>
    readings.flatMap((r) =>
      r.photo ? [{ use: r.photo, words: `${place.name} on ${formatDay(r.day)}`, day: r.day }] : [],
    ),
  );
  const strip = photoStrip(
    shown.sort((a, b) => b.day - a.day),
    photo,
  );
  return strip && element('div', {}, element('h3', {}, 'Photos of the readings'), strip);
}

function flightTable(life: ConveyorLife): Markup | undefined {
  if (life.flights.length === 0) return undefined;
  return element(
    'div',
    { class: 'keep' },
    element('h3', {}, 'Screw flight'),
    table({
      class: 'tight',
      columns: [
        { head: 'Screw' },
        { head: 'At, m', number: true },
        { head: 'Depth read, mm' },
        { head: 'New', number: true },
        { head: 'Change at', number: true },
        { head: 'Rate, mm/1000 h', number: true },
        { head: 'Left by hand, h', number: true },
        { head: 'Limit by model, 80 % between' },
      ],
      rows: life.flights.map((f) => [
        f.screw,
        metres(f.at),
        f.readings
          .map(
            (r) =>
              `${thickness(r.depth)}${r.diameter === undefined ? '' : `, ${thickness(r.diameter)} across`} (${formatDay(r.day)})`,
          )
          .join(', '),
        thickness(f.fitted),
        thickness(f.condemn),
        f.hand.kind === 'no reading' ? '–' : rate(f.hand.kind === 'rate' ? f.hand.ruling : f.hand.longTerm),
        f.hand.kind === 'rate' ? amount(f.hand.remaining) : f.hand.kind === 'at the limit' ? '0' : '–',
        depthText(f.forecast),
      ]),
    }),
  );
}

/** What the model took from elsewhere, what it makes of panels nobody has seen, and which readings it doubts. */
function borrowed(life: ConveyorLife): Markup | undefined {
  const { model } = life;
  if (!model || model.forecast.kind === 'cannot say') return undefined;
  const lines: string[] = model.borrowed.map(
    (b) =>
      `${groupName(b.pool, b.label, life.conveyor.name)} wears ${formatNumber(b.factor, 2)} times (90 %: ` +
      `${formatNumber(b.low, 2)} to ${formatNumber(b.high, 2)}) what its group does, ` +
      `from ${counted(b.units, 'liner at a place', 'liners at places')} with records`,
  );
  for (const unseen of model.unseen) {
    lines.push(
      `Panels nobody has seen, ${unseen.panels} in run ${unseen.run}: ` +
        `such a panel reaches its limit ${depthText(unseen.condemn)}, 80 % between, from the pool alone; ` +
        'the worst of several comes earlier',
    );
  }
  for (const point of life.points) {
    for (const stray of point.model?.strays ?? []) {
      const full = point.model?.fullWeight;
      lines.push(
        `${point.place.name} on ${formatDay(stray.day)}: ` +
          `${millimetres(stray.thickness)} read where ${millimetres(stray.expected)} was to be expected; ` +
          `it counts for ${formatNumber(stray.weight, 2)}${full ? `. At full weight the limit would be ${depthText(full)}` : ''}`,
      );
    }
  }
  for (const { place, model: own } of life.points)
    if (own?.asDeclared)
      lines.push(
        `${place.name} reaches its limit ${depthText(own.condemn)} if its gauge scatters as found, ` +
          `${depthText(own.asDeclared)} if the gauge is as good as declared and the wear uneven`,
      );
  if (life.measure) lines.push(measureText(life.measure));
  lines.push(dutyVariationText(model));
  return element(
    'div',
    {},
    element('h3', {}, 'Borrowed, doubted, assumed'),
    element(
      'ul',
      { class: 'small' },
      lines.map((line) => element('li', {}, `${line}.`)),
    ),
  );
}

function notSeen(life: ConveyorLife): Markup | undefined {
  const lines: Child[] = [];
  const panels = life.runs.flatMap((run) =>
    run.panels.filter((p) => p.state !== 'seen').map((p) => `run ${run.run.number} panel ${p.number}`),
  );
  if (panels.length > 0)
    lines.push(element('li', {}, `No reading of the present liner: ${shortList(panels)}.`));
  for (const point of life.points) {
    const misses = point.readings.filter((r) => r.seen.kind === 'not seen');
    if (misses.length === 0) continue;
    const words = misses.map((r) => `${formatDay(r.day)}${r.note ? ` (${r.note})` : ''}`);
    lines.push(element('li', {}, `${point.place.name} looked for and not seen: ${words.join(', ')}.`));
  }
  for (const point of life.points) {
    for (const { day, reason } of point.leftOut)
      lines.push(element('li', {}, `${point.place.name}, ${formatDay(day)}: left out, ${reason}.`));
  }
  return lines.length === 0
    ? undefined
    : element('div', {}, element('h3', {}, 'Not seen, and left out'), element('ul', {}, lines));
}

function shortList(items: readonly string[]): string {
  return items.length <= 12
    ? items.join(', ')
    : `${items.slice(0, 10).join(', ')} and ${items.length - 10} more`;
}

function formerSets(life: ConveyorLife): Markup | undefined {
  if (life.former.length === 0) return undefined;
  return element(
    'div',
    { class: 'keep' },
    element('h3', {}, 'Liners before these'),
    table({
      class: 'tight',
      columns: [
        { head: 'Liner' },
        { head: 'Chainage, m' },
        { head: 'Fitted' },
        { head: 'Taken out' },
        { head: 'Reached', number: true },
        { head: 'Least seen of it' },
      ],
      rows: life.former.map(({ set, reached, least }) => [
        set.liner.name,
        `${metres(set.from)} to ${metres(set.to)}`,
        date(set.fitted?.day),
        date(set.removed?.day),
        reached.known ? amountWithUnit(reached.value, reached.unit) : `not known: ${reached.reason}`,
        least === undefined
          ? 'no thickness read'
          : `${least.thickness === 0 ? 'steel showed' : `${millimetres(least.thickness)} of ${millimetres(set.liner.thickness.value)}`} at ${least.place} on ${formatDay(least.day)}`,
      ]),
    }),
  );
}

function groupName(pool: string, label: string, conveyor: string): string {
  switch (pool) {
    case 'conveyor':
      return 'This conveyor';
    case 'liner':
      return `Liner ${label}`;
    case 'sector':
      return `The sector at ${label}`;
    case 'duty':
      return `What carries ${label}`;
    default:
      return capital(label.replace(`${conveyor} `, ''));
  }
}
