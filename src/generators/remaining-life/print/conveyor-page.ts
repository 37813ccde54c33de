// The engineer's pages of one conveyor: what it is about, the liner unrolled, the worst point at large, every point in small,
// the table with the hand arithmetic, what was not seen or left out, and the liners that lay there before.

import { placeInText } from '../../page/place-in-text.js';
import { formatDay, parseDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { momentOn } from '../../../domain/model/history.js';
import { element, group, type Markup } from '../../page/markup.js';
import { figure, table } from '../../page/page.js';
import { nearestToLimit, type PointLife } from '../parts/points.js';
import { disagreementsOf } from '../parts/hand-against-model.js';
import { conveyorChangeSentences, disagreementSentence } from './change-words.js';
import type { WearPace } from '../parts/wear-change.js';
import { conveyorFacts } from './conveyor-facts.js';
import { chartKey, mapKey } from './keys.js';
import { askedTexts, forecastText, lookText } from './sentences.js';
import type { PhotoBytes } from './photos.js';
import { sectionsAfter, sectionsBefore } from './record-sections.js';
import { sectionMarkup } from './section-page.js';
import { optionSection } from './option-table.js';
import { linerMap, mapRows } from './liner-map.js';
import { pointTable } from './point-table.js';
import { readingMatrix } from './reading-matrix.js';
import { wearChart } from './wear-chart.js';
import { capital, counted } from '../../../domain/units/wording.js';
import { readingCounts } from '../reading-counts.js';
import { amountWithUnit, seenText, spot } from './wording.js';
import { wearTotal } from '../../../domain/model/liner-sets.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { sizesOf } from '../sizes.js';

/** More drawings than this nobody leafs through; the table has every point. */
const mostCharts = 24;

export function conveyorPage(life: ConveyorLife, index: number, photo?: PhotoBytes): Markup {
  const { conveyor, worst } = life;
  const id = `c${index + 1}`;
  const sizes = sizesOf(conveyor);
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
    element(
      'dl',
      { class: 'facts' },
      conveyorFacts(life).map(([term, value]) =>
        element('div', {}, element('dt', {}, term), element('dd', {}, value)),
      ),
    ),
    element('p', { class: 'verdict' }, `${life.attention.todo}.`),
    element(
      'ul',
      {},
      [...life.attention.reasons, forecastText(life), lookText(life), ...askedTexts(life)]
        .filter((text) => text !== undefined)
        .map((text) => element('li', {}, `${capital(text)}.`)),
      [
        ...conveyorChangeSentences(life),
        ...disagreementsOf(life).map((told) => disagreementSentence(told, sizes)),
      ].map((sentence) => element('li', {}, sentence)),
    ),
    optionSection(life),
    sectionsBefore(life).map((section) => sectionMarkup(section, photo)),
    figure({
      drawing: linerMap(life, `${id}-map`),
      caption: mapKey(life),
      data: table({
        columns: [{ head: 'Panel' }, { head: `Chainage, ${sizes.far}` }, { head: 'Last seen' }],
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
        `${sizes.near} left over ${life.unit === 'h' ? 'running hours' : 'tonnes'} since the liner was fitted; ` +
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
    sectionsAfter(life).map((section) => sectionMarkup(section, photo)),
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
  const sizes = sizesOf(life.conveyor);
  const rows = points.flatMap((p) =>
    p.readings.map((r) => [
      p.place.name,
      formatDay(r.day),
      amountWithUnit(r.exposure, life.unit),
      seenText(r.seen, sizes),
      [
        r.seen.kind === 'thickness' && r.seen.error !== undefined ? `± ${sizes.size(r.seen.error)}` : '',
        r.note ?? '',
      ]
        .filter(Boolean)
        .join('; '),
    ]),
  );
  const { seen: saw, notSeen } = readingCounts(points);
  const nothing = notSeen === 0 ? '' : `, and ${counted(notSeen, 'look')} that saw nothing`;
  return element(
    'details',
    { class: 'data' },
    element('summary', {}, `The ${counted(saw, 'reading')} behind these charts${nothing}`),
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
