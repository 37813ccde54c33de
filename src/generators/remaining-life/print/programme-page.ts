// The programme over all outages: what is relined when and by whom, a bar picture of every crew in every outage that is used,
// money and orders by month, and what more hands, platforms or days would save.

import { capital } from '../../../domain/units/wording.js';
import type { OutageLoad, Programme, ProgrammeAnswer } from '../../../domain/decision/programme.js';
import { formatNumber } from '../../../domain/units/format.js';
import { element, group, type Markup } from '../../page/markup.js';
import { figure, table } from '../../page/page.js';
import { drawing, rectangle, letters } from '../../page/svg.js';
import {
  loadText,
  money,
  noProgrammeText,
  programmeHead,
  programmeNotes,
  programmeRow,
  programmeSentence,
  savingTexts,
} from '../programme-words.js';

export function programmeSection(answers: readonly ProgrammeAnswer[]): Markup | undefined {
  if (answers.length === 0) return undefined;
  return element(
    'section',
    { class: 'page', id: 'programme' },
    answers.map((answer) =>
      answer.kind === 'none'
        ? group(element('h2', {}, 'Programme'), element('p', {}, noProgrammeText(answer)))
        : programmePart(answer.programme),
    ),
  );
}

function programmePart(programme: Programme): Markup {
  return group(
    element('h2', {}, `Programme of ${programme.plant} over all outages`),
    element('p', { class: 'lead' }, programmeSentence(programme)),
    table({
      class: 'tight',
      columns: programmeHead.map((head) => ({
        head,
        ...(head === 'Hours' || head === 'Expected' ? { number: true } : {}),
        ...(head === 'Order liner by' ? { class: 'day' } : {}),
      })),
      rows: programme.lines.map((each) => programmeRow(programme, each)),
    }),
    figure({
      drawing: bars(programme),
      caption:
        'Working hours of each crew in each outage: a bar a job, the frame is the window. What is free stays white.',
      data: table({
        columns: [{ head: 'Hours used' }],
        rows: programme.loads.map((_, i) => [loadText(programme, i)]),
      }),
    }),
    element('h3', {}, 'By month'),
    table({
      class: 'tight',
      columns: [
        { head: 'Month' },
        { head: 'Work', number: true },
        { head: 'Relined' },
        { head: 'Liner ordered for' },
      ],
      rows: programme.months.map((each) => [
        each.month,
        money(programme, each.money),
        each.relines.join(', '),
        each.orders.join(', '),
      ]),
    }),
    element('h3', {}, 'What more would save'),
    element(
      'ul',
      {},
      savingTexts(programme).map((text) => element('li', {}, `${capital(text)}.`)),
    ),
    element('p', { class: 'small muted' }, `${programmeNotes(programme).join('. ')}.`),
  );
}

const left = 96;
const right = 700;
const barHeight = 16;

/** Only outages in which something is done. */
function bars(programme: Programme): Markup {
  const loads = programme.loads.filter(({ jobs }) => jobs.length > 0);
  const { crews } = programme.problem;
  const high = 26 + crews.length * (barHeight + 6);
  const most = Math.max(1, ...loads.map(({ outage }) => outage.hours));
  return drawing(
    {
      width: 720,
      height: Math.max(30, loads.length * high),
      id: `programme-${programme.plant}`,
      title: 'Crew hours by outage',
      description: loads.map(({ outage }) => outage.name).join(', ') || 'no outage is used',
    },
    loads.map((load, k) => outageBars(load, crews, k * high, (hours) => ((right - left) * hours) / most)),
  );
}

function outageBars(
  load: OutageLoad,
  crews: readonly string[],
  top: number,
  wide: (hours: number) => number,
): Markup {
  return group(
    letters([0, top + 13], `${load.outage.name}, ${formatNumber(load.outage.hours, 0)} working hours`, {
      size: 11.5,
      bold: true,
    }),
    crews.map((crew, i) => {
      const y = top + 20 + i * (barHeight + 6);
      return group(
        letters([left - 6, y + 12], crew, { anchor: 'end', size: 11 }),
        rectangle(left, y, wide(load.outage.hours), barHeight, { width: 1 }),
        load.jobs
          .filter((job) => job.crews.includes(crew))
          .map((job) =>
            group(
              rectangle(left + wide(job.from), y, wide(job.hours), barHeight, { fill: '#d9d9d9', width: 1 }),
              letters([left + wide(job.from) + wide(job.hours) / 2, y + 12], job.conveyor, {
                anchor: 'middle',
                size: 10.5,
              }),
            ),
          ),
      );
    }),
  );
}
