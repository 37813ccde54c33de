// How a change reads: the one place from which text, comment, page and data take their sentences, so that they agree. What
// matters stands in words and signs, never in a colour alone.

import { percent } from '../../domain/decision/option-setting.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import { formatNumber } from '../../domain/units/format.js';
import { counted, list } from '../../domain/units/wording.js';
import type {
  ChangeSummary,
  ComparedFinding,
  MachineEffect,
  ForecastRow,
  HistoryEdit,
  Moved,
  MovedForecast,
  NewRecord,
} from './change-summary.js';
import type { BlockChange } from './parts/ledger-changes.js';

/** Before and after in one line: `76 % → 83 %`, or once where they are alike. */
export function fromTo(before: string, after: string): string {
  return before === after ? after : `${before} → ${after}`;
}

/** The counts that a reader wants first, the heaviest first; `nothing differs` where there are none. */
export function headline(summary: ChangeSummary): string {
  const { history, records, forecasts, machine, settings, renames, moves, findings, come, gone } = summary;
  const edited = history.filter(({ counts }) => counts).length;
  const words = history.length - edited;
  const facts = (changes: readonly BlockChange[]): number =>
    changes.reduce((sum, change) => sum + change.facts.length, 0);
  const moved = forecasts.told.filter(({ told }) => told).length;
  const parts = [
    edited > 0 && `HISTORY EDITED in ${counted(edited, 'place')}`,
    ...recordCounts(records),
    moved > 0 && `${counted(moved, 'forecast')} moved`,
    machine.length > 0 && `${counted(facts(machine), 'fact')} of the machine changed`,
    settings.length > 0 && `${counted(facts(settings), 'other fact')} changed`,
    come.length > 0 && `${counted(come.length, 'description')} new`,
    gone.length > 0 && `${counted(gone.length, 'description')} gone`,
    findings.come.length > 0 && counted(findings.come.length, 'new finding'),
    findings.gone.length > 0 && `${counted(findings.gone.length, 'finding')} gone`,
    words > 0 && `${counted(words, 'remark')} of old records changed`,
    renames.length > 0 && counted(renames.length, 'rename'),
    moves.length > 0 &&
      `${counted(
        moves.reduce((sum, move) => sum + move.blocks.length, 0),
        'block',
      )} moved to other files`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'nothing differs' : parts.join(', ');
}

function recordCounts(records: readonly NewRecord[]): readonly string[] {
  const kinds = [...new Set(records.map(({ kind }) => kind))];
  return kinds.map((kind) => {
    const count = records.filter((record) => record.kind === kind).length;
    return `${counted(count, kind)} added`;
  });
}

/** `main and the working tree, both as of 2026-09-21`. */
export function sidesText({ before, after, asOf }: ChangeSummary): string {
  return `${before} → ${after}${asOf === undefined ? '' : `, both reckoned on ${formatDay(asOf)}`}`;
}

export function historyText(edit: HistoryEdit): string {
  return `${list(edit.conveyors)}, ${edit.where}: ${editWords(edit)}${edit.reach === '' ? '' : `; ${edit.reach}`}`;
}

/** What happened to the record, without saying which. */
export function editWords({ kind, before, after }: HistoryEdit): string {
  const held = (words: string | undefined): string =>
    words === undefined || words === '' ? '' : ` (${words})`;
  switch (kind) {
    case 'record removed':
      return `taken out${held(before)}`;
    case 'record put in':
      return `put in before newer records${held(after)}`;
    case 'record changed':
    case 'described anew':
      if (before === undefined) return `${after ?? ''} put in`;
      return after === undefined ? `${before} taken out` : `${before} → ${after}`;
  }
}

export function recordText({ kind, conveyor, day, words, late }: NewRecord): string {
  return `${conveyor}, ${kind}${day === undefined ? '' : ` of ${formatDay(day)}`}${words === '' ? '' : ` (${words})`}${late ? ', added late' : ''}`;
}

export function placeText({ uri, line }: { readonly uri: string; readonly line: number }): string {
  return uri === '' ? '' : `${uri}:${line}`;
}

/** What a forecast did, in the order of what a reader acts on. */
export function movementText(movement: MovedForecast): string {
  const { conveyor, because } = movement;
  return `${conveyor}${becauseText(because)}: ${movementParts(movement).join('; ')}`;
}

/** In brackets behind the name; nothing where no change is looked at. */
export function becauseText(because: MovedForecast['because']): string {
  if (!because) return '';
  return because.length > 0 ? ` (${list(because)})` : ' (by what conveyors share)';
}

export function movementParts(movement: MovedForecast): readonly string[] {
  const { before, after, chances, by, crossed } = movement;
  const parts: string[] = [];
  if (chances)
    parts.push(
      `limit ${by === undefined ? 'today' : `by ${by}`} ` +
        `${fromTo(percent(chances.before.condemn), percent(chances.after.condemn))}${crossed.includes('limit') ? crossing(chances.after.condemn > chances.before.condemn) : ''}`,
      `steel ${fromTo(percent(chances.before.contact), percent(chances.after.contact))}${crossed.includes('steel') ? crossing(chances.after.contact > chances.before.contact) : ''}`,
    );
  parts.push(`order ${fromTo(orderText(before), orderText(after))}`);
  parts.push(limitChangeText(before, after));
  if (before.lookBy !== after.lookBy)
    parts.push(`look by ${fromTo(dayText(before.lookBy), dayText(after.lookBy))}`);
  parts.push(`action: ${actionText(before, after)}`);
  return parts;
}

function crossing(passed: boolean): string {
  return passed ? ' (passes what is accepted)' : ' (within what is accepted again)';
}

/** `now`, `by` a day, or a dash where nothing is to be ordered. */
export function orderText({ order }: ForecastRow): string {
  if (!order) return '–';
  return order.now || order.day === undefined ? order.words : `by ${order.words}`;
}

/** A date that was foretold, and one that was passed, are not called earlier or later than one another. */
function limitChangeText(before: ForecastRow, after: ForecastRow): string {
  if (!before.passed && !after.passed)
    return `limit expected ${fromTo(dayText(before.limit?.q50), dayText(after.limit?.q50))}${intervalText(after)}`;
  return `limit ${fromTo(expectedText(before), expectedText(after))}${after.passed ? '' : intervalText(after)}`;
}

/** `passed, likely between … and …`, or `expected 2027-02-01`. */
export function expectedText({ passed, limit }: ForecastRow): string {
  return passed ?? (limit?.q50 === undefined ? '–' : `expected ${dayText(limit.q50)}`);
}

function intervalText({ limit, readings }: ForecastRow): string {
  if (limit?.q50 === undefined) return '';
  return ` (80 %: ${dayText(limit.q10)} to ${dayText(limit.q90)}, ${counted(readings, 'reading')} that saw something)`;
}

/** The same action on both sides is said once. */
export function actionText(before: ForecastRow, after: ForecastRow): string {
  return before.todo === after.todo ? `as before, ${after.todo}` : fromTo(before.todo, after.todo);
}

export function dayText(day: CalendarDay | undefined): string {
  return day === undefined ? '–' : formatDay(day);
}

/** One line for all that moved by less than the threshold. */
export function restText({ rest }: Moved, summary: ChangeSummary): string | undefined {
  if (rest.count === 0) return undefined;
  const points = (chance: number): string => formatNumber(chance * 100, 1);
  const { chance, days } = summary.threshold;
  return (
    `${counted(rest.count, 'other forecast')} moved by at most ${points(rest.chance)} points and ` +
    `${counted(rest.days, 'day')}, less than is told one by one (${points(chance)} points, ` +
    `${counted(days, 'day')}, a tenth of the interval), as shared rates do`
  );
}

export function calendarTitle(calendar: NonNullable<ChangeSummary['calendar']>): string {
  return `By the calendar alone, ${formatDay(calendar.from)} → ${formatDay(calendar.to)}`;
}

export function factText({ after }: BlockChange, fact: BlockChange['facts'][number]): string {
  const where = `${after.kind} ${after.name}`;
  if (!fact.before) return `${where}: ${fact.after?.words ?? ''} put in`;
  return fact.after
    ? `${where}: ${fact.before.words} → ${fact.after.words}`
    : `${where}: ${fact.before.words} taken out`;
}

export function effectText({ on, before, after }: MachineEffect): string {
  return `${on}: ${fromTo(before ?? 'not there', after ?? 'not there any more')}`;
}

export function findingText({ code, severity, message, uri, line }: ComparedFinding): string {
  return `${severity === 'information' ? 'note' : severity} ${code} at ${placeText({ uri, line })}: ${message}`;
}

/** A title with its lines; sections without lines are left out. */
export interface ToldSection {
  readonly title: string;
  readonly sign: string;
  readonly lines: readonly string[];
}

export const unreadTitle = 'Not all was read';

export const besideTitle = 'Conditions, and what was measured beside the wear';

/** A line each, with the conveyor in front. */
export function besideLines({ conveyor, changes }: ChangeSummary['beside'][number]): readonly string[] {
  return changes.map((change) => `${conveyor}: ${change}`);
}

/** All there is to tell, in the order of its weight. */
export function sectionsOf(summary: ChangeSummary): readonly ToldSection[] {
  const { history, records, forecasts, rewritten, calendar, machine, effects, settings } = summary;
  const edits = history.filter(({ counts }) => counts);
  const words = history.filter(({ counts }) => !counts);
  const at = (place: { readonly uri: string; readonly line: number }): string =>
    place.uri === '' ? '' : ` [${placeText(place)}]`;
  return [
    section(unreadTitle, '!', summary.unread),
    section(
      'HISTORY EDITED: what was recorded before reads otherwise now',
      '!',
      edits.map((edit) => `${historyText(edit)}${at(edit.place)}`),
    ),
    section('What that does to the saved forecasts, on their own day', '!', movedLines(rewritten, summary)),
    section(
      'New records',
      '+',
      records.map((record) => `${recordText(record)}${at(record.place)}`),
    ),
    section(besideTitle, '+', summary.beside.flatMap(besideLines)),
    section('Forecasts: what the change does', '>', movedLines(forecasts, summary)),
    section(calendar ? calendarTitle(calendar) : '', '>', movedLines(calendar, summary)),
    section('Machine', '*', [
      ...machine.flatMap((change) => change.facts.map((fact) => factText(change, fact))),
      ...effects.map(effectText),
    ]),
    section(
      'What forecasts and plans rest on',
      '*',
      settings.flatMap((change) => change.facts.map((fact) => factText(change, fact))),
    ),
    section('Descriptions', '*', [
      ...summary.come.map(({ kind, name }) => `${kind} ${name}: new`),
      ...summary.gone.map(({ kind, name }) => `${kind} ${name}: gone`),
    ]),
    section('Findings', '*', [
      ...summary.findings.come.map((finding) => `new: ${findingText(finding)}`),
      ...summary.findings.gone.map((finding) => `gone: ${findingText(finding)}`),
    ]),
    section('Remarks and photos of old records', '~', words.map(historyText)),
    section('Renamed and moved, no change of what is said', '~', [
      ...summary.renames.map(
        ({ what, from, to, within }) =>
          `${what} ${from} → ${to}${within === undefined ? '' : ` (${within})`}`,
      ),
      ...summary.moves.map(({ from, to, blocks }) => `${counted(blocks.length, 'block')}: ${from} → ${to}`),
    ]),
    section('To be noted', '?', summary.remarks),
  ].filter(({ lines }) => lines.length > 0);
}

function section(title: string, sign: string, lines: readonly string[]): ToldSection {
  return { title, sign, lines };
}

function movedLines(moved: Moved | undefined, summary: ChangeSummary): readonly string[] {
  if (!moved) return [];
  // Saved chances are rounded: what only that moves is nothing.
  const rest = moved.rest.chance >= 0.0005 || moved.rest.days > 0 ? restText(moved, summary) : undefined;
  return [...moved.told.map(movementText), ...(rest === undefined ? [] : [rest])];
}
