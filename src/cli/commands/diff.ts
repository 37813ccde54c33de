// `troughline diff`: what a change of the records means. Ends as diff does: 0 where nothing differs, 1 where something does,
// 2 on trouble; told what to fail on, it ends with 1 for those reasons alone, each named.

import type { CalendarDay } from '../../domain/units/calendar.js';
import {
  changeSummary,
  type ChangeSummary,
  type MovedForecast,
} from '../../generators/change-summary/change-summary.js';
import { changeSummaryHtml } from '../../generators/change-summary/html.js';
import { changeSummaryJson } from '../../generators/change-summary/json.js';
import { changeSummaryMarkdown } from '../../generators/change-summary/markdown.js';
import { changeSummaryText } from '../../generators/change-summary/text.js';
import { historyText, placeText } from '../../generators/change-summary/words.js';
import path from 'node:path';
import { percent } from '../../domain/decision/option-setting.js';
import { counted } from '../../domain/units/wording.js';
import { comparedSides } from '../compared-sides.js';
import { Exit, Trouble, type Console } from '../console.js';
import { namedFormats } from '../named-formats.js';
import { shownLine } from '../foreign-text.js';
import { writeFile } from '../write-files.js';

export const diffFormats = ['text', 'markdown', 'json', 'html'] as const;
export const diffFailures = ['history', 'risk', 'contact', 'action', 'finding', 'never'] as const;
type DiffFailure = (typeof diffFailures)[number];

export interface DiffOptions {
  /** NAME or NAME=FILE. */
  readonly format: readonly string[];
  readonly asOf: CalendarDay | undefined;
  readonly estate: string;
  readonly failOn: readonly DiffFailure[];
  /** Percentage points, and days. */
  readonly threshold: number;
  readonly days: number;
  readonly paper: 'A4' | 'Letter';
}

export async function diff(
  given: readonly string[],
  options: DiffOptions,
  console: Console,
): Promise<number> {
  if (given.length > 2) throw new Trouble('diff compares two states: name at most two');
  const formats = namedFormats(options.format, diffFormats, 'text');
  const [before, after] = await comparedSides(given, options.estate, console);
  console.progress(`forecasting ${before.name} and ${after.name}`);
  const made = changeSummary(before, after, {
    asOf: options.asOf,
    threshold: { chance: options.threshold / 100, days: options.days },
  });
  if (!made.ok) throw new Trouble(made.message);
  for (const { name, file } of formats) {
    const text = printed(made.summary, name, options);
    if (file === undefined) console.out(text);
    else writeFile(path.resolve(console.cwd, file), text);
  }
  if (options.failOn.length === 0) return made.summary.same ? Exit.clean : Exit.findings;
  const failed = options.failOn.flatMap((what) => reasons(made.summary, what));
  for (const line of failed) console.err(`troughline: ${shownLine(line)}\n`);
  return failed.length > 0 ? Exit.findings : Exit.clean;
}

function printed(
  summary: ChangeSummary,
  format: (typeof diffFormats)[number],
  { paper }: DiffOptions,
): string {
  switch (format) {
    case 'text':
      return changeSummaryText(summary);
    case 'markdown':
      return changeSummaryMarkdown(summary);
    case 'json':
      return changeSummaryJson(summary);
    case 'html':
      return changeSummaryHtml(summary, { paper });
  }
}

/** A line each reason to end with 1. What only the calendar brings fails nobody's change. */
function reasons(
  { history, forecasts, rewritten, findings, threshold }: ChangeSummary,
  what: DiffFailure,
): readonly string[] {
  switch (what) {
    case 'never':
      return [];
    case 'history':
      return history
        .filter(({ counts }) => counts)
        .map(
          (edit) =>
            `history edited: ${historyText(edit)}${edit.place.uri === '' ? '' : ` (${placeText(edit.place)})`} (--fail-on history)`,
        );
    case 'risk':
    case 'contact': {
      const key = what === 'risk' ? 'condemn' : 'contact';
      return [...forecasts.told, ...(rewritten?.told ?? [])].flatMap((moved) =>
        riskRaised(moved, key, threshold.chance),
      );
    }
    case 'action':
      return forecasts.told
        .filter(({ action }) => action)
        .map(({ conveyor, after }) => `what to do changes at ${conveyor}: ${after.todo} (--fail-on action)`);
    case 'finding': {
      const come = findings.come.filter(({ severity }) => severity !== 'information');
      return come.length > 0 ? [`${counted(come.length, 'new finding')} (--fail-on finding)`] : [];
    }
  }
}

/** The change passes an accepted risk, or raises one that is passed already by as much as is told. */
function riskRaised(
  { conveyor, by, chances, after }: MovedForecast,
  key: 'condemn' | 'contact',
  least: number,
): readonly string[] {
  const accepted = after.accepted?.[key];
  if (!chances || accepted === undefined) return [];
  const [was, is] = [chances.before[key], chances.after[key]];
  const rise = key === 'condemn' ? least : least / 10;
  if (is <= accepted || (was > accepted && is - was < rise)) return [];
  return [
    `the change raises the risk of ${key === 'condemn' ? 'the limit' : 'steel'} at ` +
      `${conveyor}${by === undefined ? '' : ` by ${by}`} from ${percent(was)} to ${percent(is)}, ` +
      `and ${percent(accepted)} is accepted (--fail-on ${key === 'condemn' ? 'risk' : 'contact'})`,
  ];
}
