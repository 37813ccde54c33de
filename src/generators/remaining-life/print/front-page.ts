// The manager's page: which conveyor, when, how sure, what to do and order, and how good the forecasts have been.

import { formatDay } from '../../../domain/units/calendar.js';
import { element, group, type Markup } from '../../page/markup.js';
import { figure, table } from '../../page/page.js';
import type { Counts, RemainingLife } from '../remaining-life.js';
import { changeSentences } from './change-words.js';
import { timelineKey } from './keys.js';
import { leadSentence, orderText, shownOutage, steelInShort } from '../decision-words.js';
import { noProgrammeText, programmeSentence } from '../programme-words.js';
import { optionBox } from './option-table.js';
import { passedCell } from './passed-cell.js';
import { timeline } from './timeline.js';
import { publishedSentences, trackSentence } from './track-record.js';
import { unreadIn } from '../unread-words.js';
import { openConditionsText, safeguardsOutText } from '../../../domain/conditions/rows.js';
import { percent } from '../../../domain/decision/option-setting.js';
import { counted, list } from '../../../domain/units/wording.js';
import { date } from './wording.js';
import type { ConveyorLife } from '../parts/conveyor-life.js';
import { limitPassed } from '../passed-words.js';
import { whyNot } from '../reason-words.js';

export function frontPage(report: RemainingLife): Markup {
  const { estate, asOf, conveyors } = report;
  const plants = estate.plants.map((p) => p.title ?? p.name);
  const chart = asOf === undefined ? undefined : timeline(conveyors, asOf);
  const unread = unreadIn(report);
  return element(
    'section',
    { class: 'front-page' },
    element(
      'div',
      { class: 'masthead' },
      element('div', {}, element('h1', {}, 'Remaining life of liners'), element('p', {}, list(plants))),
      element(
        'p',
        { class: 'asof' },
        'as of ',
        element('strong', {}, asOf === undefined ? 'no dated record' : formatDay(asOf)),
      ),
    ),
    element('p', { class: 'lead' }, leadSentence(conveyors)),
    unread !== undefined && element('p', {}, element('strong', {}, 'Not all was read. '), unread),
    conveyors.length > 0 && conveyorTable(conveyors),
    ...conveyors
      .filter(({ attention }) => attention.level === 'no outage in time')
      .slice(0, 1)
      .map((life) => optionBox(life)),
    changeBlock(report),
    safeguardBlock(report),
    conditionBlock(report),
    programmeLine(report),
    chart && figure({ drawing: chart, caption: timelineKey() }),
    element(
      'p',
      { class: 'small' },
      element('strong', {}, 'How good were the forecasts? '),
      [trackSentence(report), ...publishedSentences(report)].join(' '),
    ),
    element(
      'p',
      { class: 'small' },
      element('strong', {}, 'What this rests on. '),
      countsSentence(report.counts),
      leftOutSentence(report.counts),
    ),
    caution(),
  );
}

/** What keeps people from the screw and is out of order: here, because it cannot wait until somebody reads on. */
function safeguardBlock(report: RemainingLife): Markup | undefined {
  const text = safeguardText(report);
  return text === undefined
    ? undefined
    : element('p', {}, element('strong', {}, 'Safeguards out of order. '), text);
}

/** `DG1: guard missing at drive (open since 2026-03-09).`; undefined where all are in order. */
export function safeguardText({ conveyors }: RemainingLife): string | undefined {
  const parts = conveyors.flatMap(({ conveyor, conditions }) => {
    const text = safeguardsOutText(conditions);
    return text === undefined ? [] : [`${conveyor.name}: ${text}`];
  });
  return parts.length === 0
    ? undefined
    : `${parts.join('; ')}. Whether it may run until they are put right is for the site’s competent person to decide.`;
}

/** How much is open, and where; the conveyors' pages have each. */
function conditionBlock(report: RemainingLife): Markup | undefined {
  const text = openText(report);
  return text === undefined
    ? undefined
    : element('p', { class: 'small' }, element('strong', {}, 'Open conditions. '), text);
}

/** `DG1: 3 open conditions, 1 urgent (…); FW2: …`; undefined where nothing is open. */
export function openText({ conveyors }: RemainingLife): string | undefined {
  const parts = conveyors.flatMap(({ conveyor, conditions }) => {
    const text = openConditionsText(conditions);
    const [worst] = conditions;
    return text === undefined || !worst ? [] : [`${conveyor.name}: ${text} (${worst.what})`];
  });
  return parts.length === 0 ? undefined : `${parts.join('; ')}.`;
}

/** What the looks say of changes, gauges and breaks in the records; nothing where no model was asked for. */
function changeBlock(report: RemainingLife): Markup | undefined {
  const sentences = changeSentences(report);
  const head = element('strong', {}, 'Has the wear changed? ');
  return sentences.length === 0
    ? undefined
    : sentences.length === 1
      ? element('p', { class: 'small' }, head, sentences[0])
      : element(
          'div',
          { class: 'small keep' },
          head,
          element(
            'ul',
            {},
            sentences.map((sentence) => element('li', {}, sentence)),
          ),
        );
}

function conveyorTable(conveyors: readonly ConveyorLife[]): Markup {
  return table({
    class: 'front',
    columns: [
      { head: element('span', { class: 'unseen' }, 'Order of attention') },
      { head: 'Conveyor' },
      { head: 'What to do, and why' },
      {
        head: group('Limit reached', element('br'), small('at the points: middle, 80 % between')),
        class: 'day',
      },
      { head: group('Chance', element('br'), small('unseen counted in')) },
      { head: 'Order liner by', class: 'day' },
    ],
    rows: conveyors.map((life, i) => [
      element('span', { class: 'rank' }, String(i + 1)),
      element(
        'a',
        { class: 'name', href: `#c${i + 1}` },
        life.conveyor.name,
        element('span', { class: 'sub' }, life.conveyor.title ?? ''),
      ),
      element(
        'span',
        {},
        element('span', { class: 'verdict' }, `${life.attention.todo}.`),
        element('span', { class: 'sub' }, sentence(life.attention.reasons.slice(0, 1))),
      ),
      limitCell(life),
      riskCell(life),
      orderCell(life),
    ]),
  });
}

export function limitCell(life: ConveyorLife): Markup | string {
  const passed = limitPassed(life);
  const word = life.worst?.pastLimit === 'trough shows' ? 'worn through' : 'passed';
  if (passed) return passedCell(passed, word);
  if (life.worst?.pastLimit) return element('strong', {}, word);
  const forecast = life.model?.forecast;
  switch (forecast?.kind) {
    case undefined:
      return '–';
    case 'reached':
      return element('strong', {}, word);
    case 'cannot say':
      return element('span', { class: 'sub wrap' }, `cannot say: ${whyNot(forecast.why)}`);
    case 'dates':
      return group(
        element('strong', {}, forecast.days.q50 === undefined ? 'beyond 40 years' : date(forecast.days.q50)),
        element(
          'span',
          { class: 'sub' },
          `${date(forecast.days.q10)} to`,
          element('br'),
          forecast.days.q90 === undefined ? 'beyond 40 years' : date(forecast.days.q90),
        ),
      );
  }
}

/** In one sentence; the page that follows has it in full. */
function programmeLine({ programmes, conveyors }: RemainingLife): Markup | undefined {
  if (programmes === undefined)
    return conveyors.some(({ decision }) => decision?.setting)
      ? element(
          'p',
          { class: 'small' },
          'Which conveyor goes into which outage, so that crews and platforms suffice: `troughline programme`, ' +
            'or in the editor “Show Programme over All Outages”, works it out; this page is made without it.',
        )
      : undefined;
  if (programmes.length === 0) return undefined;
  return element(
    'p',
    {},
    element('strong', {}, 'Programme. '),
    programmes
      .map((answer) =>
        answer.kind === 'programme' ? programmeSentence(answer.programme) : noProgrammeText(answer),
      )
      .join(' '),
  );
}

function riskCell(life: ConveyorLife): Markup | string {
  const { decision } = life;
  const outage = shownOutage(life);
  if (!outage || !decision) return '–';
  return group(
    element('strong', {}, percent(outage.condemn)),
    element('span', { class: 'sub' }, `by ${outage.name}`),
    decision.panels > decision.panelsSeen &&
      outage.condemnSeen !== undefined &&
      element('span', { class: 'sub' }, `seen ${percent(outage.condemnSeen)}`),
    element('span', { class: 'sub' }, `steel ${steelInShort(outage, decision)}`),
  );
}

function orderCell(life: ConveyorLife): Markup | string {
  const text = orderText(life);
  const earliest = life.decision?.earliest;
  const [main = '', was] = text.split(' (was ');
  return group(
    text === '–' || text.startsWith('no ') ? text : element('strong', {}, main),
    was !== undefined && element('span', { class: 'sub' }, `was ${was.replace(')', '')}`),
    life.attention.outage && earliest && element('span', { class: 'sub' }, `soonest ${date(earliest.day)}`),
  );
}

export function countsSentence(counts: Counts): string {
  const more = [
    counts.withdrawn > 0 ? `, ${counts.withdrawn} taken back` : '',
    counts.unreadable > 0 ? `, ${counts.unreadable} that cannot be read` : '',
  ].join('');
  return (
    `${counted(counts.conveyors, 'conveyor')}, ${counted(counts.points, 'point')}, ` +
    `${counted(counts.inspections, 'inspection')} with ${counted(counts.readings, 'reading')}: ` +
    `${counted(counts.thicknesses, 'thickness', 'thicknesses')}, ${counted(counts.colours, 'colour')}, ` +
    `${counts.troughShowing} with steel showing, ${counts.notSeen} not seen${more}. ` +
    `Of what was seen, ${counted(counts.used, 'reading')} ${counts.used === 1 ? 'is' : 'are'} of the liners ` +
    `that lie there now, which forecasts rest on, and ${counts.ofFormerSets} of liners replaced since. ` +
    `${counts.panelsNotSeen} of ${counted(counts.panels, 'panel')} have no reading; ` +
    `${counts.pointsNeverSeen} of ${counted(counts.points, 'point')} were never seen on the present liner.` +
    (counts.pointsByHandOnly > 0
      ? ` ${counted(counts.pointsByHandOnly, 'point')} far from the limit ${counts.pointsByHandOnly === 1 ? 'was' : 'were'} reckoned by hand only.`
      : '') +
    (counts.laterInspections > 0
      ? ` ${counted(counts.laterInspections, 'inspection')} dated after the day of this report ${counts.laterInspections === 1 ? 'was' : 'were'} not looked at.`
      : '')
  );
}

export function leftOutSentence(counts: Counts): string {
  return counts.leftOut.length === 0
    ? ' No reading was left out.'
    : ` Left out: ${counts.leftOut.map(({ reason, count }) => `${counted(count, 'reading')} (${reason})`).join('; ')}.`;
}

function caution(): Markup {
  return element(
    'div',
    { class: 'caution small' },
    element('strong', {}, 'This report advises; a competent person decides. '),
    'It does not clear a machine for work or for further running. Before anyone opens a cover: isolate and prove dead, follow site permits and local codes, ' +
      'test for gas where the trough is enclosed, mind the energy stored in the spiral and the head of material. What was not seen may be worse than what was.',
  );
}

function sentence(reasons: readonly string[]): string {
  return reasons.length === 0 ? '' : `${reasons.join('; ')}.`;
}

function small(text: string): Markup {
  return element('small', { class: 'muted' }, text);
}
