// A limit that lies behind the day of the report: when it was passed, by a second road, and how every form says so.

import { describe, expect, it } from 'vitest';
import { forecastRows } from '../../../src/generators/change-summary/parts/forecast-row.js';
import { movements, usualThreshold } from '../../../src/generators/change-summary/parts/movement.js';
import { movementParts } from '../../../src/generators/change-summary/words.js';
import { readSavedReport } from '../../../src/generators/change-summary/saved-report.js';
import { indexTables } from '../../../src/generators/month/index-tables.js';
import { monthsOf } from '../../../src/generators/month/months.js';
import { conveyorsCsv } from '../../../src/generators/remaining-life/csv-conveyors.js';
import { remainingLifeCsv } from '../../../src/generators/remaining-life/csv.js';
import { estateCalendar } from '../../../src/generators/remaining-life/estate-calendar.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { limitPassed, passedText } from '../../../src/generators/remaining-life/passed-words.js';
import { passedAt } from '../../../src/generators/remaining-life/parts/points.js';
import { caseText } from '../../../src/generators/remaining-life/print/sentences.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { readChange } from '../../../src/generators/remaining-life/what-if.js';
import { forecasts } from '../../../src/lsp/forecasts.js';
import type { Session } from '../../../src/lsp/session.js';
import { addDays, formatDay } from '../../../src/domain/units/calendar.js';
import { day, estateOf, look, only, pointOf, works } from './story.js';

// 1 mm in 1,000 h: the limit of 4 mm, 8 mm of wear, is reached at 8,000 h, 2025-11-30; 9,600 h are had on 2026-02-05.
const worn =
  look(2400, 'P1 thickness 9.6 mm; P2 thickness 10.8 mm') +
  look(4800, 'P1 thickness 7.2 mm; P2 thickness 9.6 mm') +
  look(7200, 'P1 thickness 4.8 mm; P2 thickness 8.4 mm') +
  look(9600, 'P1 colour teal; P2 thickness 7.2 mm');
const estate = estateOf(works, worn);
const newest = day('2026-02-05');
const plainLimit = day('2025-11-30');
const reportOn = (asOf = newest) => remainingLife(estate, { asOf, track: false });

describe('when a limit was passed', () => {
  it('is about the day on which a line through the readings is at it, and never after the day of the report', () => {
    const passed = limitPassed(only(reportOn()));
    expect(passed?.by).toBe('reckoned');
    expect(passed?.chance).toBeGreaterThan(0.9);
    expect(passed?.from).toBeLessThan(plainLimit);
    expect(passed?.to).toBeGreaterThan(plainLimit);
    expect(passed?.to).toBeLessThanOrEqual(newest);
    const { model } = pointOf(reportOn(), 'P1');
    const middle = model?.condemn.kind === 'life' ? (model.condemn.days?.q50 ?? 0) : 0;
    expect(Math.abs(middle - plainLimit)).toBeLessThan(15);
  });

  it('does not move while nothing is recorded, by the days alone', () => {
    const [now, later] = [reportOn(), reportOn(addDays(newest, 60))].map((report) =>
      limitPassed(only(report)),
    );
    expect({ ...later, chance: 0 }).toEqual({ ...now, chance: 0 });
    expect(later?.chance).toBeGreaterThanOrEqual(now?.chance ?? 1);
  });

  it('follows the hours as they were run: a machine that stood still passes nothing meanwhile', () => {
    // The same hours, but the last 2,400 of them ran in the last 100 days of 300.
    const idle = estateOf(
      works,
      look(2400, 'P1 thickness 9.6 mm') +
        look(4800, 'P1 thickness 7.2 mm') +
        look(7200, 'P1 thickness 4.8 mm') +
        'inspection DG1 2026-05-18 meter 7200 h { view downstream\n P1 not seen "covers on"\n }\n' +
        'inspection DG1 2026-08-26 meter 9600 h { view downstream\n P1 colour teal\n }\n',
    );
    const passed = passedAt(pointOf(remainingLife(idle, { track: false }), 'P1'));
    const middle = addDays(day('2026-05-18'), Math.round(800 / 24));
    expect(passed?.from).toBeLessThan(middle);
    expect(passed?.to).toBeGreaterThan(middle);
    expect(passed?.from).toBeGreaterThan(day('2025-09-01'));
  });

  it('what a look has shown lies between that look and the one before it', () => {
    const through = estateOf(works, worn + look(9840, 'P1 trough showing; P2 thickness 7 mm'));
    const life = only(remainingLife(through, { track: false }));
    expect(life.model?.forecast.kind).toBe('reached');
    expect(limitPassed(life)).toEqual({
      by: 'seen',
      chance: 1,
      from: day('2025-07-20'),
      to: day('2026-02-15'),
    });
    const byHand = remainingLife(through, { depth: 'hand' });
    expect(limitPassed(only(byHand))).toEqual({
      by: 'seen',
      chance: 1,
      from: day('2025-10-28'),
      to: day('2026-02-15'),
    });
  });

  it('where one is as likely as not it says how likely', () => {
    const half = { by: 'reckoned', chance: 0.53, from: day('2025-10-01'), to: newest } as const;
    expect(passedText(half)).toBe('likely passed (chance 53 %), between 2025-10-01 and 2026-02-05');
    expect(passedText({ ...half, by: 'seen', chance: 1, from: undefined })).toBe('passed by 2026-02-05');
  });
});

describe('every form says that it is passed, and none prints it as a day to come', () => {
  const report = reportOn();
  const life = only(report);
  const passed = limitPassed(life);
  if (!passed) throw new Error('nothing is passed');
  const words = passedText(passed);
  const [from, to] = [formatDay(passed.from ?? newest), formatDay(passed.to)];
  const saved = (text: string) => {
    const read = readSavedReport(text, (value) => value);
    if (!read.ok) throw new Error(read.message);
    return read.saved;
  };

  it('page, comment, data and tables', () => {
    const html = remainingLifeHtml(report);
    expect(html).toContain(`<strong>passed</strong><span class="sub">likely ${from} to<br>${to}</span>`);
    expect(html).toContain(`DG1: ${words}`); // the description of the chart
    expect(remainingLifeMarkdown(report)).toContain(`| ${words} |`);
    const [row] = (JSON.parse(remainingLifeJson(report)) as { conveyors: { limitPassed: object }[] })
      .conveyors;
    expect(row?.limitPassed).toMatchObject({ by: 'reckoned', from, to });
    const cells = (csv: string): Record<string, string | undefined> => {
      const [head = '', first = ''] = csv.split('\r\n');
      const values = first.match(/("[^"]*"|[^,]*)(,|$)/g)?.map((cell) => cell.replace(/,$/, '')) ?? [];
      return Object.fromEntries(head.split(',').map((name, i) => [name, values[i]]));
    };
    for (const csv of [conveyorsCsv(report), remainingLifeCsv(report)])
      expect(cells(csv)).toMatchObject({ limit_passed: 'yes', limit_passed_to: to });
    expect(estateCalendar(report).replace(/\r\n |\\/g, '')).toContain(`The condemn limit is ${words}`);
  });

  it('an earlier report beside it', () => {
    const after = remainingLife(estate, { asOf: addDays(newest, 31), since: newest, track: false });
    expect(after.since?.conveyors[0]?.changes).toContain(`the limit was passed then already (${words})`);
    expect(after.since?.conveyors[0]?.changes.join()).not.toMatch(/later|earlier/);
    const before = remainingLife(estate, { asOf: newest, since: day('2025-07-20'), track: false });
    expect(before.since?.conveyors[0]?.changes.join()).toMatch(
      new RegExp(`limit ${words}; then it was foretold for 2025-1[12]-`),
    );
    expect(before.since?.conveyors[0]?.now).toBe('passed');
  });

  it('a comparison, and one with a report that was saved', () => {
    const [now] = forecastRows(report);
    const later = forecastRows(reportOn(addDays(newest, 31)));
    expect(now?.passed).toBe(words);
    const [moved] = movements(forecastRows(report), later, usualThreshold);
    expect(moved?.moved.limit).toBe(0);
    const told = movementParts({ ...moved!, because: undefined }).join('; ');
    expect(told).toContain(`limit ${words}`);
    expect(told).not.toContain('expected');
    expect(saved(remainingLifeJson(report)).rows[0]?.passed).toBe(words);
    const older = remainingLifeJson(report)
      .replace(/"limitPassed": \{[^}]*\}/, '"limitPassed": null')
      .replace(
        /"days": \{[^}]*\}/,
        `"days": { "q10": "2026-02-05", "q50": "2026-02-05", "q90": "2026-02-05" }`,
      );
    expect(saved(older).rows[0]?.passed).toBe('passed');
    const index = monthsOf([{ month: '2026-02', asOf: newest, rows: saved(older).rows }], []);
    expect(indexTables(index)[1]?.rows[0]?.cells).toEqual(['DG1', 'passed']);
  });

  it('a trial beside it', () => {
    const change = readChange('condemn DG1 7 mm', estate);
    if (!change.ok) throw new Error(change.message);
    const [tried] = remainingLife(estate, { asOf: newest, changes: [change.change], track: false }).whatIfs;
    if (tried?.kind !== 'dates') throw new Error('no dates');
    const [base, changed] = [caseText(tried.base), caseText(tried.changed)];
    expect(base).toContain(words);
    expect(changed).toMatch(/^passed between 2025-04-11 and 2025-10-28 at P1$/);
    expect(changed).not.toBe(base);
  });

  it('the editor', () => {
    const session = {
      revision: 1,
      analysis: () => ({ inConflict: [] }),
      estate: () => estate,
      uriOf: () => 'file0.trough',
    } as unknown as Session; // all that forecasts asks of one
    const [said] = Object.values(forecasts(session).conveyors);
    expect(said?.short).toContain(`condemn limit ${words}`);
    expect(said?.long.join(' ')).toContain(`Condemn limit ${words} (80 % interval)`);
    expect(said?.points['P1']?.short).toMatch(/, limit passed$/);
    expect(said?.points['P1']?.long.join(' ')).toContain('Condemn limit passed, likely between');
  });
});

describe('a risk that is passed since nobody knows when', () => {
  it('is passed by the day of the report, not on the day the liner was fitted', () => {
    const through = estateOf(works, worn + look(9840, 'P1 trough showing; P2 thickness 7 mm'));
    const { decision } = only(remainingLife(through, { track: false }));
    const first = day('2025-01-01');
    expect(decision?.passed?.day).toBeGreaterThan(first);
    expect(decision?.passedSeen).toBeGreaterThan(first);
  });
});

describe('a colour and a gauge', () => {
  const lot = works
    .replace('layer ivory 6 mm layer teal 6 mm', 'layer ivory 6 mm layer teal 4 mm')
    .replace('at 4 mm', 'at 3.5 mm');
  const fitted = (thickness: string): string =>
    `reline DG1 2025-01-11 meter 240 h {\n  thickness ${thickness}\n}\n`;
  const gauged = (hours: number, mm: number): string =>
    look(hours, `gauge ultrasonic ± 0.2 mm; P1 thickness ${mm} mm`);
  const teal = gauged(2640, 7.9) + gauged(5040, 6.3) + look(7440, 'P1 colour teal');
  const later = teal + gauged(8400, 3.8);
  const passed = (records: string, thickness = '9.2 mm') => {
    const report = remainingLife(estateOf(lot, fitted(thickness) + records), { track: false });
    return { at: passedAt(pointOf(report, 'P1')), model: pointOf(report, 'P1').model?.condemn, report };
  };

  it('of a lot that came thinner than bought nobody knows which layer is thinner: its second colour alone passes no limit', () => {
    // Teal begins somewhere between 5.2 and 6 mm of wear, so 3.2 to 4 mm are left: the limit of 3.5 mm may be ahead.
    expect(passed(teal).model?.kind).not.toBe('reached');
    expect(passed(teal).at?.by).not.toBe('seen');
  });

  it('the gauge that reads more than the limit afterwards is what counts, also where the colour had settled it', () => {
    for (const thickness of ['9.2 mm', '8.6 mm']) {
      const { at, model, report } = passed(later, thickness);
      expect(model?.kind).toBe('life');
      expect(at?.by).not.toBe('seen');
      expect(only(report).model?.forecast.kind).not.toBe('reached');
    }
  });

  it('steel that shows has passed every limit, however thick the liner was', () => {
    for (const thickness of ['9.2 mm', '10.6 mm']) {
      const { at, model } = passed(teal + look(8400, 'P1 trough showing'), thickness);
      expect(model?.kind).toBe('reached');
      expect(at?.by).toBe('seen');
    }
  });
});
