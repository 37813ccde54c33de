// What could be decided instead: every planned outage with the chance that the limit, and the steel, is reached by then, and
// what that would cost; where to look next; what changed since an earlier report; what was tried; how far to trust it all.

import { riskDayOf } from '../parts/risk-day.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { element, group, type Child, type Markup } from '../../page/markup.js';
import { table } from '../../page/page.js';
import { percent } from '../../../domain/decision/option-setting.js';
import type { RemainingLife } from '../remaining-life.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { acceptedText, roundTexts, steelText } from '../decision-words.js';
import { lookReason, measureText, whatIfText } from './sentences.js';
import { trackTable } from './track-record.js';
import { counted, list } from '../../../domain/units/wording.js';
import { chance, date } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { sizesOfAll, type Sizes } from '../sizes.js';
import type { Estate } from '../../../domain/model/estate.js';
import { fineWords } from '../../../domain/units/length-words.js';

export function decisionPages(report: RemainingLife): Markup | undefined {
  const parts = [
    outageTable(report.conveyors),
    lookTable(report.conveyors),
    sinceList(report),
    whatIfList(report),
    trackSection(report),
    fitSection(report),
  ].filter((part) => part !== undefined);
  return parts.length === 0
    ? undefined
    : element('section', { class: report.conveyors.length > 1 ? 'page' : undefined }, parts);
}

function outageTable(conveyors: readonly ConveyorLife[]): Markup | undefined {
  const rows = conveyors.filter((c) => (c.decision?.outages.length ?? 0) > 0);
  if (rows.length === 0) return undefined;
  const outages = [
    ...new Map(
      rows
        .flatMap((c) => c.decision?.outages ?? [])
        .map((outage) => [`${outage.name} ${outage.from}`, outage]),
    ).values(),
  ]
    .sort((a, b) => a.from - b.from)
    .slice(0, 6);
  return group(
    element('h2', {}, 'Which outage?'),
    element(
      'p',
      {},
      'Chance that the condemn limit is reached by the first day of the outage, ' +
        'panels that nobody has seen counted in; ' +
        'below it of what was seen alone, and that the screw touches steel. ' +
        'The framed outage is the one to reline at; ' +
        'where none is framed, no planned outage is early enough, or none is needed yet.',
    ),
    table({
      class: 'choice',
      columns: [
        { head: 'Conveyor' },
        { head: 'Accepted' },
        { head: 'Risk passed', class: 'day' },
        ...outages.map((o) => ({
          head: group(o.name, element('br'), element('small', { class: 'muted' }, formatDay(o.from))),
          class: 'day',
        })),
      ],
      rows: rows.map((life) => [
        element('span', { class: 'name' }, life.conveyor.name),
        life.decision && acceptedText(life.decision),
        life.decision?.passed
          ? group(
              date(life.decision.passed.day),
              element('span', { class: 'sub' }, life.decision.passed.by),
              element('span', { class: 'sub' }, `seen ${date(life.decision.passedSeen)}`),
            )
          : '–',
        ...outages.map((o) => {
          const row = life.decision?.outages.find((each) => each.from === o.from && each.name === o.name);
          if (!row) return '–';
          const chosen =
            life.attention.level === 'reline to plan' &&
            life.attention.outage?.from === o.from &&
            life.attention.outage.name === o.name;
          const text = group(
            element(chosen ? 'strong' : 'span', {}, percent(row.condemn), chosen ? ' ◂' : ''),
            life.decision &&
              life.decision.panels > life.decision.panelsSeen &&
              row.condemnSeen !== undefined &&
              element('span', { class: 'sub' }, `seen ${percent(row.condemnSeen)}`),
            element('span', { class: 'sub' }, `steel ${steelText(row, life.decision)}`),
            !row.reachable && element('span', { class: 'sub' }, `liner from ${date(row.arrives)}`),
          );
          return chosen ? element('div', { class: 'boxed' }, text) : text;
        }),
      ]),
    }),
    cheapestList(rows),
  );
}

/** Age replacement beside the outages: what cost alone would say, and why that is not a plan. */
function cheapestList(conveyors: readonly ConveyorLife[]): Markup | undefined {
  const told = conveyors.flatMap((life) => {
    const cheapest = life.model?.cheapest;
    if (!cheapest) return [];
    const when = cheapest.day === undefined ? '' : `, about ${formatDay(cheapest.day)}`;
    const riskDay = riskDayOf(life);
    const late =
      cheapest.day !== undefined && riskDay !== undefined && cheapest.day > riskDay
        ? `; the accepted risk is passed before, on ${formatDay(riskDay)}, and that rules`
        : '';
    return [
      `${life.conveyor.name} at ${exposureText(cheapest.exposure, life.unit)} since fitting${when}: ` +
        `${hourly(life, cheapest.costRate)} (${hourly(life, cheapest.toFailure)} if run until steel is ` +
        `touched)${late}`,
    ];
  });
  if (told.length === 0) return undefined;
  return group(
    element('p', {}, 'By cost alone, were there no outages to wait for, relining is cheapest for'),
    element(
      'ul',
      {},
      told.map((text) => element('li', {}, text, '.')),
    ),
  );
}

function exposureText(exposure: number, unit: 'h' | 't'): string {
  return `${formatNumber(Math.round(exposure / 10) * 10, 0)} ${unit}`;
}

function hourly(life: ConveyorLife, amount: number): string {
  const currency = life.conveyor.plant.costs.find((c) => c.item === 'reline')?.amount.currency ?? '';
  return `${formatNumber(amount, 2)} ${currency}/${life.unit}`;
}

function lookTable(conveyors: readonly ConveyorLife[]): Markup | undefined {
  const rows = conveyors.filter((c) => c.model && c.model.look.kind !== 'cannot say');
  if (rows.length === 0) return undefined;
  return group(
    element('h2', {}, 'Where and when to look next'),
    table({
      class: 'choice',
      columns: [
        { head: 'Conveyor' },
        { head: 'Look again by', class: 'day' },
        { head: 'Because' },
        { head: 'By hand: half of the life', class: 'day' },
        { head: 'Look here first' },
      ],
      rows: rows.map((life) => {
        const look = life.model?.look;
        const because = look ? lookReason(look) : '';
        const never = life.points
          .filter((p) => p.state === 'none' || p.state === 'not seen')
          .map((p) => p.place.name);
        const best = (life.model?.lookAt ?? [])
          .filter((p) => !never.includes(p.name))
          .map((p) => `${p.name} (${chance(p.share)} of the doubt)`);
        const likely =
          life.model?.forecast.kind === 'dates' && best.length === 0
            ? life.model.forecast.first.slice(0, 2).map((f) => f.name)
            : [];
        const places = [
          ...(never.length > 0
            ? [`${list(never.slice(0, 6))}${never.length > 6 ? ' and more' : ''} (never seen on this liner)`]
            : []),
          ...best,
          ...(likely.length > 0 ? [`${list(likely)} (where the limit most likely comes first)`] : []),
        ];
        return [
          element('span', { class: 'name' }, life.conveyor.name),
          look?.kind === 'by' ? date(look.day) : element('strong', {}, 'now'),
          because,
          date(halfOfLife(life)),
          places.join(', '),
        ];
      }),
    }),
    roundList(rows),
    element(
      'p',
      { class: 'small muted' },
      'Of the doubt: by how much a reading there, taken on the day of the report, is expected to narrow the date at which the conveyor reaches its limit.',
    ),
  );
}

/** The earliest half of a remaining life by the hand arithmetic, which stands beside the model's chance. */
function halfOfLife({ points }: ConveyorLife): CalendarDay | undefined {
  return points.reduce<CalendarDay | undefined>(
    (a, { nextLook }) => (nextLook && (a === undefined || nextLook.day < a) ? nextLook.day : a),
    undefined,
  );
}

/** Looks that go together, where there are any. */
function roundList(lives: readonly ConveyorLife[]): Markup | undefined {
  const rounds = roundTexts(lives);
  if (rounds.length === 0) return undefined;
  return group(
    element(
      'p',
      {},
      'Rounds of looks: the same access unit within four weeks where the look tells something, and looks that pay whenever they are due; one hire each:',
    ),
    element(
      'ul',
      {},
      rounds.map((text) => element('li', {}, `${text}.`)),
    ),
  );
}

function sinceList({ since }: RemainingLife): Markup | undefined {
  if (!since) return undefined;
  return group(
    element('h2', {}, `What changed since ${formatDay(since.day)}`),
    table({
      columns: [
        { head: 'Conveyor' },
        { head: 'Limit then', class: 'day' },
        { head: 'Limit now', class: 'day' },
        { head: 'What happened' },
      ],
      rows: since.conveyors.map((c) => [
        element('span', { class: 'name' }, c.name),
        c.before === 'passed' ? 'passed' : date(c.before),
        c.now === 'passed' ? 'passed' : date(c.now),
        c.changes.length === 0 ? 'nothing new' : `${c.changes.join('; ')}.`,
      ]),
    }),
  );
}

function whatIfList({ whatIfs }: RemainingLife): Markup | undefined {
  if (whatIfs.length === 0) return undefined;
  return group(
    element('h2', {}, 'What if'),
    element(
      'p',
      {},
      'Tried beside the base case; the records and the rest of this report know nothing of it.',
    ),
    element(
      'ul',
      {},
      whatIfs.map((w) => element('li', {}, whatIfText(w))),
    ),
  );
}

function trackSection(report: RemainingLife): Markup | undefined {
  const track = trackTable(report);
  return track && element('div', { class: 'keep' }, element('h2', {}, 'How good were the forecasts?'), track);
}

/** By the scatter of the readings, beside what their gauges are declared to err by: an error that all share does not scatter. */
function readingErrorText(
  found: number,
  { inspections }: Pick<Estate, 'inspections'>,
  sizes: Pick<Sizes, 'near'>,
): string {
  const declared = [...new Set(inspections.flatMap(({ gauge }) => gauge?.error?.value ?? []))].sort(
    (a, b) => a - b,
  );
  const [least, most] = [declared[0], declared.at(-1)];
  const to = most === least ? '' : ` to ${fineWords(most ?? NaN, sizes.near)}`;
  const beside =
    least === undefined
      ? ''
      : `; the gauges are declared to err by ± ${fineWords(least, sizes.near)}${to}, and an error that all readings share does not scatter`;
  return `readings scatter by about ± ${fineWords(found, sizes.near)} about smooth wear${beside}`;
}

function fitSection({ fits, measure, estate }: RemainingLife): Markup | undefined {
  const sizes = sizesOfAll(estate.conveyors);
  if (fits.length === 0) return undefined;
  const lines: Child[] = fits.map((fit) => {
    const what = fit.measure === 'h' ? 'Wear by running hours' : 'Wear by tonnes';
    if (fit.kind === 'cannot say' || fit.medianRate === undefined)
      return element(
        'li',
        {},
        `${what}: no model, ${fit.why ?? 'nothing to go by'}. Only the hand arithmetic stands.`,
      );
    return element(
      'li',
      {},
      `${what}: ${fit.informative} of ${counted(fit.units, 'liner at a place', 'liners at places')} have ` +
        `records, ${counted(fit.readings, 'record')} in all. ` +
        `A middle place wears ${sizes.rate(fit.medianRate)} ${sizes.rateUnit(fit.measure)}` +
        `${fit.rateError === undefined ? '' : ` (give or take ${formatNumber(fit.rateError * 100, 0)} %)`}; places of one group differ by about ${formatNumber((fit.spread ?? 0) * 100, 0)} %; ` +
        `${readingErrorText(fit.readingError ?? 0, estate, sizes)}.`,
    );
  });
  return group(
    element('h2', {}, 'The model behind the intervals'),
    element('ul', {}, lines, measure && element('li', {}, `${measureText(measure)}.`)),
    element(
      'p',
      { class: 'small' },
      'Places, runs, conveyors and liners borrow from each other; ' +
        'how much is said on each conveyor’s page. ' +
        'A place with few records leans on the others, one with many stands on its own.',
    ),
  );
}
