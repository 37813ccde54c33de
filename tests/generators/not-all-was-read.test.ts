// Where a line cannot be read, whatever is made from the rest says so, in one sentence: report, sheet, phone, pack, crew sheet,
// tables, calendar, what a change means. Where all is read, none of them does.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Estate } from '../../src/domain/model/estate.js';
import { estateSide } from '../../src/cli/compared-sides.js';
import { changeSummary } from '../../src/generators/change-summary/change-summary.js';
import { changeSummaryHtml } from '../../src/generators/change-summary/html.js';
import { changeSummaryJson } from '../../src/generators/change-summary/json.js';
import { changeSummaryMarkdown } from '../../src/generators/change-summary/markdown.js';
import { changeSummaryText } from '../../src/generators/change-summary/text.js';
import { unreadText } from '../../src/domain/model/unread.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../src/generators/inspection-sheet/phone.js';
import { conveyorsCsv } from '../../src/generators/remaining-life/csv-conveyors.js';
import { remainingLifeCsv } from '../../src/generators/remaining-life/csv.js';
import { estateCalendar } from '../../src/generators/remaining-life/estate-calendar.js';
import { programmePage, remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { crewSheetHtml } from '../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../src/generators/work-pack/markdown.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';

const text = readFileSync(new URL('../../examples/6-screw-change/compost.trough', import.meta.url), 'utf8');

function formsOf(estate: Estate): Readonly<Record<string, string>> {
  const [conveyor] = estate.conveyors;
  const [job] = estate.jobs;
  if (!conveyor || !job) throw new Error('both are there');
  const report = remainingLife(estate, { depth: 'hand' });
  const sheet = inspectionSheet(estate, conveyor);
  const pack = workPack(estate, job);
  return {
    'report.html': remainingLifeHtml(report),
    'report.md': remainingLifeMarkdown(report),
    'report.json': remainingLifeJson(report),
    'programme.html': programmePage(report).body.html,
    'points.csv': remainingLifeCsv(report),
    'conveyors.csv': conveyorsCsv(report),
    'calendar.ics': estateCalendar(report).replace(/\r\n /g, ''),
    'sheet.html': inspectionSheetHtml(sheet),
    'phone.html': inspectionPhonePage(sheet),
    'pack.html': workPackHtml(pack),
    'pack.md': workPackMarkdown(pack),
  };
}

/** What a change means, in its four forms. */
function diffsOf(before: string, after: string): Readonly<Record<string, string>> {
  const side = (name: string, text: string) => estateSide(name, [{ uri: 'a.trough', text }]);
  const made = changeSummary(side('old', before), side('new', after));
  if (!made.ok) throw new Error(made.message);
  return {
    text: changeSummaryText(made.summary),
    markdown: changeSummaryMarkdown(made.summary).replace(/\\/g, ''),
    json: changeSummaryJson(made.summary),
    html: changeSummaryHtml(made.summary),
  };
}

describe('a line that cannot be read', () => {
  test.each([
    ['of the job', '  sling angle 30', '  slng angle 30'],
    ['of the plant', '  meeting point "gate', '  meetng point "gate'],
  ])('%s is told of on everything that is made without it, by one sentence', (_, right, wrong) => {
    const { estate } = analyse([{ uri: 'a.trough', text: text.replace(right, wrong) }]);
    const [conveyor] = estate.conveyors;
    const said = conveyor && unreadText(estate, [conveyor]);
    expect(said).toMatch(/cannot be read and is left out/);
    for (const [name, form] of Object.entries(formsOf(estate))) expect(form, name).toContain(said);
    const change = text.replace(right, wrong);
    for (const [name, form] of Object.entries(diffsOf(text, change)))
      expect(form, name).toContain(`new: ${said}`);
    for (const [name, form] of Object.entries(diffsOf(change, text)))
      expect(form, name).toContain(`old: ${said}`);
    for (const [name, form] of Object.entries(diffsOf(change, change)))
      expect(form, name).toContain(`old and new: ${said}`);
    const [job] = estate.jobs;
    const crew = job && crewSheetHtml(workPack(estate, job));
    const whole = analyse([{ uri: 'a.trough', text }]).estate;
    const before = workPack(whole, whole.jobs[0] ?? job!); // the job is there in both
    expect(crew).toContain(`${before.warnings.length + 1}, on the first page of the pack`);
  });

  test('and nothing is said where all is read', () => {
    const { estate } = analyse([{ uri: 'a.trough', text }]);
    for (const [name, form] of Object.entries(formsOf(estate)))
      expect(form, name).not.toMatch(/cannot be read and is left out|Not all was read/);
    for (const [name, form] of Object.entries(diffsOf(text, text)))
      expect(form, name).not.toMatch(/cannot be read|Not all was read/);
  });
});
