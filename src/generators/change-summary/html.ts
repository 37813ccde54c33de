// The change summary as a page: before and after side by side, what was edited in the past first. Signs and words carry what
// matters; the page says the same in grey.

import { percent } from '../../domain/decision/option-setting.js';
import { counted, list } from '../../domain/units/wording.js';
import { element, group, type Markup } from '../page/markup.js';
import { htmlPage, table, type PageOptions, type Paper } from '../page/page.js';
import type { BlockChange } from './parts/ledger-changes.js';
import type { ChangeSummary, Moved, MovedForecast } from './change-summary.js';
import {
  becauseText,
  besideLines,
  besideTitle,
  unreadTitle,
  calendarTitle,
  dayText,
  expectedText,
  editWords,
  findingText,
  headline,
  orderText,
  placeText,
  recordText,
  restText,
  sidesText,
} from './words.js';

export function changeSummaryHtml(summary: ChangeSummary, options: { readonly paper?: Paper } = {}): string {
  return htmlPage(changeSummaryPage(summary, options));
}

const styles = `
.sides td { width: 34%; } .sides td:first-child { width: 32%; }
.edited { border: 1.2pt solid #000; border-left-width: 5pt; padding: 2mm 3mm; margin: 3mm 0; }
.edited h2 { margin-top: 0; } del { text-decoration: none; } ins { font-weight: bold; text-decoration: underline; }
`;

export function changeSummaryPage(
  summary: ChangeSummary,
  options: { readonly paper?: Paper } = {},
): PageOptions {
  const title = `Change: ${summary.before} → ${summary.after}`;
  return {
    title,
    styles,
    paper: options.paper ?? 'A4',
    body: element(
      'main',
      {},
      element('h1', {}, title),
      element('p', {}, element('strong', {}, headline(summary))),
      element('p', { class: 'muted' }, sidesText(summary)),
      summary.unread.map((text) =>
        element('p', { class: 'edited' }, element('strong', {}, `! ${unreadTitle}. `), text),
      ),
      historyPart(summary),
      recordsPart(summary),
      besidePart(summary),
      movedPart('Forecasts: what the change does', summary.forecasts, summary),
      summary.calendar && movedPart(calendarTitle(summary.calendar), summary.calendar, summary),
      machinePart(summary),
      factsPart('What forecasts and plans rest on', summary.settings),
      restPart(summary),
    ),
    footer: `${title}. Advises; a competent person decides.`,
  };
}

function historyPart(summary: ChangeSummary): Markup | undefined {
  const { history, rewritten } = summary;
  if (history.length === 0) return undefined;
  const edits = history.filter(({ counts }) => counts);
  const rows = (some: typeof history): Markup =>
    sides(
      'Record',
      some.map((edit) => ({
        what: `${list(edit.conveyors)}, ${edit.where}${edit.reach === '' ? '' : `; ${edit.reach}`}`,
        before: edit.before ?? '–',
        after: edit.after ?? (edit.kind === 'record changed' ? '–' : editWords(edit)),
        place: placeText(edit.place),
      })),
    );
  const words = history.filter(({ counts }) => !counts);
  return group(
    edits.length > 0 &&
      element(
        'section',
        { class: 'edited' },
        element('h2', {}, '! HISTORY EDITED: what was recorded before reads otherwise now'),
        rows(edits),
        rewritten && movedPart('What that does to the saved forecasts, on their own day', rewritten, summary),
      ),
    words.length > 0 && group(element('h2', {}, 'Remarks and photos of old records'), rows(words)),
  );
}

function recordsPart({ records }: ChangeSummary): Markup | undefined {
  if (records.length === 0) return undefined;
  return group(
    element('h2', {}, 'New records'),
    element(
      'ul',
      {},
      records.map((record) =>
        element('li', {}, `+ ${recordText(record)} `, element('small', {}, placeText(record.place))),
      ),
    ),
  );
}

function besidePart({ beside }: ChangeSummary): Markup | undefined {
  if (beside.length === 0) return undefined;
  return group(
    element('h2', {}, besideTitle),
    element(
      'ul',
      {},
      beside.flatMap(besideLines).map((line) => element('li', {}, `+ ${line}`)),
    ),
  );
}

function movedPart(title: string, moved: Moved, summary: ChangeSummary): Markup | undefined {
  const rest = restText(moved, summary);
  if (moved.told.length === 0 && rest === undefined) return undefined;
  return group(
    element('h2', {}, title),
    moved.told.length > 0 && sides('Conveyor', moved.told.flatMap(movedRows)),
    rest !== undefined && element('p', {}, rest),
  );
}

interface SideRow {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  readonly place?: string;
}

/** A row a thing that a reader acts on; the first names the conveyor. */
function movedRows({ conveyor, because, before, after, by, chances }: MovedForecast): readonly SideRow[] {
  const row = (what: string, was: string, is: string): SideRow => ({
    what: `${conveyor}: ${what}`,
    before: was,
    after: is,
  });
  const limit = (side: typeof before): string =>
    side.passed !== undefined || side.limit?.q50 === undefined
      ? expectedText(side)
      : `${dayText(side.limit.q50)} (80 %: ${dayText(side.limit.q10)} to ${dayText(side.limit.q90)}, ${counted(side.readings, 'reading')} that saw something)`;
  return [
    { what: `${conveyor}${becauseText(because)}: action`, before: before.todo, after: after.todo },
    ...(chances
      ? [
          row(
            `limit ${by === undefined ? 'today' : `by ${by}`}`,
            percent(chances.before.condemn),
            percent(chances.after.condemn),
          ),
          row('steel', percent(chances.before.contact), percent(chances.after.contact)),
        ]
      : []),
    row('order', orderText(before), orderText(after)),
    row('limit', limit(before), limit(after)),
    row('look by', dayText(before.lookBy), dayText(after.lookBy)),
  ];
}

/** Before and after as columns; what differs is bold and underlined besides standing in its column. */
function sides(head: string, rows: readonly SideRow[]): Markup {
  return table({
    class: 'sides',
    columns: [{ head }, { head: 'Before' }, { head: 'After' }],
    rows: rows.map(({ what, before, after, place }) => [
      place === undefined || place === '' ? what : group(what, ' ', element('small', {}, place)),
      before === after || before === '–' ? before : element('del', {}, before),
      before === after || after === '–' ? after : element('ins', {}, after),
    ]),
  });
}

function machinePart({ machine, effects }: ChangeSummary): Markup | undefined {
  if (machine.length === 0 && effects.length === 0) return undefined;
  return group(
    factsPart('Machine', machine),
    effects.length > 0 &&
      sides(
        'What it does',
        effects.map(({ on, before, after }) => ({ what: on, before: before ?? '–', after: after ?? '–' })),
      ),
  );
}

function factsPart(title: string, changes: readonly BlockChange[]): Markup | undefined {
  if (changes.length === 0) return undefined;
  return group(
    element('h2', {}, title),
    sides(
      'Fact',
      changes.flatMap(({ after, facts }) =>
        facts.map((fact) => ({
          what: `${after.kind} ${after.name}: ${fact.identity}`,
          before: fact.before?.words ?? '–',
          after: fact.after?.words ?? '–',
          place: placeText({ uri: after.uri, line: fact.after?.line ?? after.line }),
        })),
      ),
    ),
  );
}

function restPart({ come, gone, findings, renames, moves, remarks }: ChangeSummary): Markup {
  const part = (title: string, lines: readonly string[]): Markup | undefined =>
    lines.length === 0
      ? undefined
      : group(
          element('h2', {}, title),
          element(
            'ul',
            {},
            lines.map((line) => element('li', {}, line)),
          ),
        );
  return group(
    part('Descriptions', [
      ...come.map(({ kind, name }) => `${kind} ${name}: new`),
      ...gone.map(({ kind, name }) => `${kind} ${name}: gone`),
    ]),
    part('Findings', [
      ...findings.come.map((finding) => `new: ${findingText(finding)}`),
      ...findings.gone.map((finding) => `gone: ${findingText(finding)}`),
    ]),
    part('Renamed and moved, no change of what is said', [
      ...renames.map(
        ({ what, from, to, within }) =>
          `${what} ${from} → ${to}${within === undefined ? '' : ` (${within})`}`,
      ),
      ...moves.map(({ from, to, blocks }) => `${counted(blocks.length, 'block')}: ${from} → ${to}`),
    ]),
    part('To be noted', remarks),
  );
}
