// The change summary as data for other programs: the same value, days in ISO 8601, chances from 0 to 1, missing as null.

import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { BothChances } from './parts/forecast-row.js';
import type { BlockChange } from './parts/ledger-changes.js';
import type { ChangeSummary, ComparedFinding, ForecastRow, Moved, MovedForecast } from './change-summary.js';
import { editWords, headline, movementText } from './words.js';

export const changeSummaryFormatVersion = 1;

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export function changeSummaryJson(summary: ChangeSummary): string {
  return `${JSON.stringify(dataOf(summary), null, 2)}\n`;
}

function dataOf(summary: ChangeSummary): Json {
  const { calendar, rewritten } = summary;
  return {
    formatVersion: changeSummaryFormatVersion,
    kind: 'change summary',
    before: summary.before,
    after: summary.after,
    asOf: day(summary.asOf),
    same: summary.same,
    headline: headline(summary),
    threshold: { chance: summary.threshold.chance, days: summary.threshold.days },
    history: summary.history.map((edit) => ({
      kind: edit.kind,
      conveyors: edit.conveyors,
      where: edit.where,
      before: edit.before ?? null,
      after: edit.after ?? null,
      reach: edit.reach,
      counts: edit.counts,
      words: editWords(edit),
      ...place(edit.place),
    })),
    records: summary.records.map((record) => ({
      kind: record.kind,
      conveyor: record.conveyor,
      day: day(record.day),
      readings: record.readings,
      late: record.late,
      words: record.words,
      ...place(record.place),
    })),
    beside: summary.beside.map(({ conveyor, changes }) => ({ conveyor, changes })),
    forecasts: movedJson(summary.forecasts),
    rewritten: rewritten ? movedJson(rewritten) : null,
    calendar: calendar
      ? { from: formatDay(calendar.from), to: formatDay(calendar.to), ...movedJson(calendar) }
      : null,
    machine: factsJson(summary.machine),
    effects: summary.effects.map(({ on, before, after }) => ({
      on,
      before: before ?? null,
      after: after ?? null,
    })),
    settings: factsJson(summary.settings),
    come: summary.come.map(({ kind, name }) => ({ kind, name })),
    gone: summary.gone.map(({ kind, name }) => ({ kind, name })),
    renames: summary.renames.map(({ what, from, to, within }) => ({
      what,
      from,
      to,
      within: within ?? null,
    })),
    moves: summary.moves.map(({ from, to, blocks }) => ({ from, to, blocks })),
    findings: {
      come: summary.findings.come.map(findingJson),
      gone: summary.findings.gone.map(findingJson),
    },
    unread: summary.unread,
    remarks: summary.remarks,
  };
}

function movedJson({ told, rest }: Moved): { readonly [key: string]: Json } {
  return { told: told.map(movementJson), rest: { ...rest } };
}

function movementJson(movement: MovedForecast): Json {
  const { conveyor, by, chances, action, crossed, because, before, after, told } = movement;
  return {
    conveyor,
    beyondThreshold: told,
    because: because ?? null,
    by: by ?? null,
    action,
    crossed,
    condemn: pair(chances, 'condemn'),
    contact: pair(chances, 'contact'),
    before: rowJson(before),
    after: rowJson(after),
    words: movementText(movement),
  };
}

function pair(chances: MovedForecast['chances'], key: keyof BothChances): Json {
  return chances ? { before: chances.before[key], after: chances.after[key] } : null;
}

function rowJson({ level, todo, order, lookBy, limit, passed, readings }: ForecastRow): Json {
  return {
    level,
    todo,
    orderBy: day(order?.day),
    orderIsLate: order?.late ?? null,
    lookBy: day(lookBy),
    limit: limit ? { q10: day(limit.q10), q50: day(limit.q50), q90: day(limit.q90) } : null,
    passed: passed ?? null,
    readings,
  };
}

function factsJson(changes: readonly BlockChange[]): Json {
  return changes.flatMap(({ after, facts }) =>
    facts.map((fact) => ({
      kind: after.kind,
      name: after.name,
      fact: fact.identity,
      before: fact.before?.words ?? null,
      after: fact.after?.words ?? null,
      ...place({ uri: after.uri, line: fact.after?.line ?? after.line }),
    })),
  );
}

function findingJson({ code, severity, message, uri, line }: ComparedFinding): Json {
  return { code, severity, message, ...place({ uri, line }) };
}

function place({ uri, line }: { readonly uri: string; readonly line: number }): {
  readonly file: Json;
  readonly line: Json;
} {
  return uri === '' ? { file: null, line: null } : { file: uri, line };
}

function day(value: CalendarDay | undefined): Json {
  return value === undefined ? null : formatDay(value);
}
