// The report as Markdown that fits a pull-request comment: the same order as the page, tables instead of drawings. What does
// not fit is left out from the end, conveyor by conveyor, and the text says so.

import { formatDay } from '../../domain/units/calendar.js';
import { formatClock } from '../../domain/units/clock.js';
import { disagreementsOf } from './parts/hand-against-model.js';
import { changeSentences, conveyorChangeSentences, disagreementSentence } from './print/change-words.js';
import { countsSentence, leftOutSentence, openText, safeguardText } from './print/front-page.js';
import type { ProgrammeAnswer } from '../../domain/decision/programme.js';
import {
  loadText,
  money,
  noProgrammeText,
  programmeHead,
  programmeNotes,
  programmeRow,
  programmeSentence,
  savingTexts,
} from './programme-words.js';
import {
  earliestText,
  orderOfOptionsText,
  leadSentence,
  orderText,
  riskText,
  roundTexts,
  cheapWaitingText,
  ruledOutText,
} from './decision-words.js';
import { conveyorFacts } from './print/conveyor-facts.js';
import { readingTable } from './print/reading-matrix.js';
import type { RecordSection } from './print/record-section.js';
import { photoName } from './print/photos.js';
import { sectionsAfter, sectionsBefore } from './print/record-sections.js';
import { optionRows, scopeText } from './print/option-table.js';
import { askedTexts, forecastText, limitText, lookText, whatIfText } from './print/sentences.js';
import { publishedSentences, trackSentence } from './print/track-record.js';
import type { PhotoUse } from '../../domain/model/records.js';
import { counted } from '../../domain/units/wording.js';
import { amount, date, lastSeen, seenText } from './print/wording.js';
import type { PointLife, RemainingLife } from './remaining-life.js';
import type { ConveyorLife } from './parts/conveyor-life.js';
import { passedText } from './passed-words.js';
import { whyNot } from './reason-words.js';
import { unreadIn } from './unread-words.js';
import { longTermText, sizesOf, type Sizes } from './sizes.js';

/** What a comment on the usual code hosts may hold, in UTF-16 code units. */
export const commentLimit = 65_536;

export interface MarkdownOptions {
  /** True of a photo that is not there; left out where nobody can look. */
  readonly photoMissing?: (use: PhotoUse) => boolean;
}

export function remainingLifeMarkdown(report: RemainingLife, options: MarkdownOptions = {}): string {
  const { asOf, conveyors } = report;
  const head = [
    `# Remaining life of liners${asOf === undefined ? '' : `, ${formatDay(asOf)}`}`,
    `**${markdownText(leadSentence(conveyors))}**`,
    markdownText(unreadIn(report) ?? ''),
    conveyors.length === 0
      ? ''
      : markdownTable(
          [
            '',
            'Conveyor',
            'What to do',
            'Limit at the points: middle (80 % between)',
            'Chance of the limit by the outage',
            'Cannot be relined before',
            'Order liner by',
          ],
          conveyors.map((life, i) => [
            String(i + 1),
            `**${markdownText(life.conveyor.name)}** ${markdownText(life.conveyor.title ?? '')}`,
            markdownText(`${life.attention.todo}.`),
            markdownText(limitText(life)),
            markdownText(riskText(life)),
            markdownText(earliestText(life)),
            orderText(life).startsWith('now') ? `**now**${orderText(life).slice(3)}` : orderText(life),
          ]),
        ),
    safeguardText(report) === undefined
      ? ''
      : `**Safeguards out of order.** ${markdownText(safeguardText(report) ?? '')}`,
    openText(report) === undefined ? '' : `Open conditions: ${markdownText(openText(report) ?? '')}`,
    programmeSection(report),
    roundsSection(report),
    changeSection(report),
    sinceSection(report),
    whatIfSection(report),
    `How good were the forecasts? ${markdownText([trackSentence(report), ...publishedSentences(report)].join(' '))}`,
    `What this rests on: ${markdownText(countsSentence(report.counts) + leftOutSentence(report.counts))}`,
    '> **This report advises; a competent person decides.** It does not clear a machine for work or ' +
      'for further running. Isolate and prove dead, follow site permits and local codes.',
  ].filter((part) => part !== '');
  return fitted(
    head,
    conveyors.map((life) => conveyorText(life, options)),
  );
}

/** What has to be read of a conveyor, and what its records say besides. */
interface ConveyorText {
  readonly brief: string;
  readonly records: string;
}

function conveyorText(life: ConveyorLife, options: MarkdownOptions): ConveyorText {
  return {
    brief: conveyorSection(life),
    records: [
      ...sectionsBefore(life).map((section) => sectionText(section, options)),
      readingsText(life),
      ...sectionsAfter(life).map((section) => sectionText(section, options)),
    ]
      .filter((part) => part !== '')
      .join('\n\n'),
  };
}

function sectionText(
  { title, notes, tables, lines, photos }: RecordSection,
  { photoMissing }: MarkdownOptions,
): string {
  const named = photos.map(({ use, words }) => `${photoName(use, photoMissing?.(use) === true)}: ${words}`);
  const items = [...lines, ...named].map((line) => `- ${markdownText(line)}`);
  return [
    `### ${markdownText(title)}`,
    ...notes.map(markdownText),
    ...tables.flatMap(({ caption, heads, rows }) => [
      ...(caption === undefined ? [] : [`${markdownText(caption)}:`]),
      markdownTable(
        heads.map((head) => (typeof head === 'string' ? head : head.head)),
        rows.map((row) => row.map(markdownText)),
      ),
    ]),
    ...(items.length === 0 ? [] : [items.join('\n')]),
  ].join('\n\n');
}

function readingsText(life: ConveyorLife): string {
  const found = readingTable(life);
  if (!found) return '';
  return [
    `### ${found.title}`,
    ...(found.note === '' ? [] : [found.note]),
    markdownTable(
      [
        'Point',
        ...found.looks.map(({ date, total, gauge }) => [date, total, gauge].filter(Boolean).join(' ')),
      ],
      found.rows.map((row) => row.map(markdownText)),
    ),
    found.key,
    ...(found.remarks.length === 0
      ? []
      : [found.remarks.map((remark) => `- ${markdownText(remark)}`).join('\n')]),
  ].join('\n\n');
}

function conveyorSection(life: ConveyorLife): string {
  const sizes = sizesOf(life.conveyor);
  const unit = sizes.rateUnit(life.unit);
  const rows = life.points.map((point) => [
    `${point === life.worst ? '**' : ''}${markdownText(point.place.name)}${point === life.worst ? '**' : ''}`,
    sizes.along(point.place.at),
    formatClock(point.place.clock),
    lastText(point, sizes),
    ...handText(point, sizes),
    date(point.leftFrom),
    modelText(point),
    point.nextLook
      ? `${date(point.nextLook.day)}${point.nextLook.overdue ? ' **overdue**' : ''}`
      : point.pastLimit
        ? '**now**'
        : '–',
  ]);
  return [
    `## ${markdownText(life.conveyor.name)} ${markdownText(life.conveyor.title ?? '')}`,
    conveyorFacts(life)
      .map(([term, value]) => `${term}: ${markdownText(value)}`)
      .join(' · '),
    [
      `${life.attention.todo}.`,
      ...life.attention.reasons.map((r) => `${r}.`),
      forecastText(life),
      lookText(life),
      ...askedTexts(life),
      ...[
        ...conveyorChangeSentences(life),
        ...disagreementsOf(life).map((told) => disagreementSentence(told, sizes)),
      ],
    ]
      .filter((line) => line !== undefined)
      .map((line) => `- ${markdownText(line)}`)
      .join('\n'),
    optionsSection(life),
    rows.length === 0 ? '' : '### Points',
    rows.length === 0
      ? ''
      : markdownTable(
          [
            'Point',
            `At, ${sizes.far}`,
            'Clock',
            'Last seen',
            `Long-term, ${unit}`,
            `Short-term, ${unit}`,
            `Left by hand, ${life.unit}`,
            'Left counts from',
            'Limit, model (80 %)',
            'Look again by',
          ],
          rows,
        ),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function roundsSection({ conveyors }: RemainingLife): string {
  const rounds = roundTexts(conveyors);
  return rounds.length === 0
    ? ''
    : `Rounds of looks:\n\n${rounds.map((text) => `- ${markdownText(text)}`).join('\n')}`;
}

function programmeSection({ programmes = [] }: RemainingLife): string {
  return programmes.map((answer) => programmeMarkdown(answer)).join('\n\n');
}

/** Also what `troughline programme` prints. */
export function programmeMarkdown(answer: ProgrammeAnswer): string {
  if (answer.kind === 'none') return markdownText(noProgrammeText(answer));
  const { programme } = answer;
  return [
    `**Programme of ${markdownText(programme.plant)}.** ${markdownText(programmeSentence(programme))}`,
    markdownTable(
      programmeHead,
      programme.lines.map((line) => programmeRow(programme, line).map(markdownText)),
    ),
    programme.loads.map((_, i) => `- ${markdownText(loadText(programme, i))}`).join('\n'),
    markdownTable(
      ['Month', 'Work', 'Relined', 'Liner ordered for'],
      programme.months.map((each) => [
        each.month,
        markdownText(money(programme, each.money)),
        markdownText(each.relines.join(', ')),
        markdownText(each.orders.join(', ')),
      ]),
    ),
    savingTexts(programme)
      .map((text) => `- ${markdownText(text)}`)
      .join('\n'),
    markdownText(`${programmeNotes(programme).join('. ')}.`),
  ].join('\n\n');
}

function optionsSection({ decision }: ConveyorLife): string {
  if (!decision) return '';
  const jobs = decision.jobs.map(({ words }) => `- ${markdownText(words)}.`).join('\n');
  if (decision.options.length === 0) return jobs;
  return [
    markdownText(scopeText(decision)),
    markdownText(ruledOutText(decision) ?? ''),
    markdownTable(
      ['', 'What can be done', 'Day', 'Limit and steel by then', 'Cost', 'Expected', 'Needs, or why not'],
      optionRows(decision).map((row) => row.map(markdownText)),
    ),
    markdownText(orderOfOptionsText(decision)),
    markdownText(cheapWaitingText(decision) ?? ''),
    jobs,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function lastText(point: PointLife, sizes: Sizes): string {
  const last = lastSeen(point);
  return last
    ? `${markdownText(seenText(last.seen, sizes))}, ${formatDay(last.day)}`
    : point.state === 'not seen'
      ? '_looked for, not seen_'
      : '_not inspected_';
}

function handText(point: PointLife, sizes: Sizes): readonly string[] {
  const { hand, colours, overruled } = point;
  if (hand.kind === 'no reading') {
    switch (colours.kind) {
      case 'between':
        return [
          `${sizes.rate(colours.lowRate)} to ${sizes.rate(colours.highRate)}`,
          'by colour',
          `${amount(colours.leastLife)} to ${amount(colours.mostLife)}`,
        ];
      case 'at most':
        return [`below ${sizes.rate(colours.highRate)}`, 'by colour', `over ${amount(colours.leastLife)}`];
      case 'worn through':
        return [`above ${sizes.rate(colours.lowRate)}`, 'by colour', '0'];
      case 'contradiction':
        return ['colours contradict', '–', '–'];
      case 'nothing seen':
        return ['–', '–', '–'];
    }
  }
  const short =
    hand.shortTerm.kind === 'rate'
      ? sizes.rate(hand.shortTerm.rate)
      : hand.shortTerm.kind === 'thicker later'
        ? `thicker by ${sizes.size(hand.shortTerm.gain)}`
        : hand.shortTerm.kind;
  return [
    longTermText(hand, point.fitted, sizes),
    short,
    hand.kind === 'rate'
      ? `${overruled ? 'at most ' : ''}${amount(hand.remaining)}`
      : hand.kind === 'at the limit'
        ? '**0**'
        : 'no wear measured',
  ];
}

function modelText({ model }: PointLife): string {
  const limit = model?.condemn;
  switch (limit?.kind) {
    case undefined:
      return '–';
    case 'reached':
      return `**${limit.passed ? passedText(limit.passed) : 'passed'}**`;
    case 'cannot say':
      return markdownText(`cannot say: ${whyNot(limit.why)}`);
    case 'life':
      if (limit.passed) return `**${passedText(limit.passed)}**`;
      return limit.days
        ? `${date(limit.days.q50)} (${date(limit.days.q10)} to ${date(limit.days.q90)})`
        : `${amount(limit.exposure.q50)} (${amount(limit.exposure.q10)} to ${amount(limit.exposure.q90)})`;
  }
}

function changeSection(report: RemainingLife): string {
  const sentences = changeSentences(report);
  return sentences.length === 0
    ? ''
    : `Has the wear changed?\n\n${sentences.map((s) => `- ${markdownText(s)}`).join('\n')}`;
}

function sinceSection({ since }: RemainingLife): string {
  if (!since) return '';
  const rows = since.conveyors.map(
    (c) =>
      `- **${markdownText(c.name)}**: ${c.changes.length === 0 ? 'nothing new' : markdownText(c.changes.join('; '))}`,
  );
  return `Since ${formatDay(since.day)}:\n\n${rows.join('\n')}`;
}

function whatIfSection({ whatIfs }: RemainingLife): string {
  return whatIfs.length === 0
    ? ''
    : `What if (beside the base case, not in the records):\n\n${whatIfs.map((w) => `- ${markdownText(whatIfText(w))}`).join('\n')}`;
}

/**
 * What has to be read of every conveyor comes first; the records of as many as then still fit go along. What does not fit is left
 * out from the end, and the text says so.
 */
function fitted(head: readonly string[], sections: readonly ConveyorText[]): string {
  const room = commentLimit - 200;
  const text = head.join('\n\n');
  if (text.length > room)
    return `${text.slice(0, text.lastIndexOf('\n', room))}\n\n_Cut here: the rest does not fit. The page and the JSON have it all._\n`;
  let free = room - text.length;
  const shown: { readonly section: ConveyorText; records: boolean }[] = [];
  for (const section of sections) {
    if (section.brief.length + noRecords.length + 4 > free) break;
    free -= section.brief.length + noRecords.length + 4;
    shown.push({ section, records: false });
  }
  for (const each of shown) {
    if (each.section.records.length > free + noRecords.length) break;
    free -= each.section.records.length - noRecords.length;
    each.records = true;
  }
  const more = sections.length - shown.length;
  return `${[
    text,
    ...shown.flatMap(({ section, records }) => [section.brief, records ? section.records : noRecords]),
    ...(more === 0
      ? []
      : [`_${counted(more, 'more conveyor')} did not fit. The page and the JSON have them all._`]),
  ].join('\n\n')}\n`;
}

const noRecords =
  '_What the records say beside the wear did not fit here. The page and the JSON have it all._';

export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** Names and notes are text, never markup: what Markdown or HTML would take for its own is escaped. */
export function markdownText(text: string): string {
  return text
    .replace(/[\\`*_{}[\]<>#|~]/g, (c) => (c === '<' ? '&lt;' : c === '>' ? '&gt;' : `\\${c}`))
    .replace(/[\r\n]+/g, ' ')
    .replace(/@/g, '@\u200b');
}
