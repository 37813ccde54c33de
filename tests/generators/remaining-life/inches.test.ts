// A machine that is declared in inches is reported in inches and feet, in every form; only data and names of places stay metric.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { changesBeside } from '../../../src/generators/remaining-life/changes-beside.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { metric, sizesIn } from '../../../src/generators/remaining-life/sizes.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';

const example = readFileSync(new URL('../../../examples/2-inches/inches.trough', import.meta.url), 'utf8');
const look = `
inspection SC7 2026-10-20 meter 12400 h {
  view downstream
  gauge ultrasonic ± 0.008 in
  P1 thickness 0.26 in
  panel missing at 20 ft serious
  joint open 1/4 in at 10 ft
  plate at 20 ft thickness 0.17 in
  hold-down at 10 ft gap 0.5 in
  flight at 6 ft depth 2.5 in
  flight at 6 ft outside diameter 13.6 in
  gearbox temperature 150 degF
  finding at 5 ft "scratch"
}
patch SC7 2026-10-18 at 19 ft to 21 ft thickness 3/16 in welded by "a coded welder"
`;
const read = (text: string): ReturnType<typeof analyse>['estate'] =>
  analyse([{ uri: 'memory:/inches.trough', text }]).estate;
const estate = read(example + look);
const report = remainingLife(estate, { depth: 'hand' });
const text = (markup: string): string =>
  markup.replace(/<style>[\s\S]*?<\/style>/g, '').replace(/<[^>]+>/g, ' ');
const page = text(/<section class="page"[\s\S]*?<\/section>/.exec(remainingLifeHtml(report))?.[0] ?? '');
const comment = remainingLifeMarkdown(report);

/** A number, or the head of a column, with a metric unit; what stands in brackets behind the other unit may. */
const metricWords = (words: string): readonly string[] =>
  words
    .replace(/\([^()]*\d\s(mm|m|°C)\)/g, '')
    .match(/[^|.\n]{0,30}(\d\s(mm|m|°C|K)\b|, (mm|m)\b|\bmm\b)[^|.\n]{0,20}/g) ?? [];

describe('in inches', () => {
  test('the report says no metric length, rate or temperature', () => {
    for (const form of [page, comment]) {
      expect(form).toContain('0.26 in');
      expect(metricWords(form)).toEqual([]);
    }
  });

  test('each value is the metric one by the inch of 25.4 mm and the foot of 304.8 mm', () => {
    for (const form of [page, comment])
      for (const words of [
        'limit 0.125 in', // 1/8 in
        '0.17 (2026-10-20)',
        '2.50 (2026-10-20)',
        '13.60 (2026-10-20)',
        'panel missing at 20 ft',
        'joint open 1/4 in at 10 ft',
        '150 °F (65.6 °C) on 2026-10-20',
        'in/1000 h',
      ])
        expect(form).toContain(words);
    const inches = sizesIn('in');
    expect([inches.thickness(25.4), inches.along(3048), inches.rate(0.000254)]).toEqual([
      '1.00',
      '10.00',
      '0.0100',
    ]);
    expect([metric.thickness(25.4), metric.along(3048), metric.rate(0.000254)]).toEqual([
      '25.4',
      '3.048',
      '0.25',
    ]);
  });

  test('what changed beside the wear, and the sheet, name inches and feet first', () => {
    const [before] = remainingLife(read(example), { depth: 'hand' }).conveyors;
    const [now] = report.conveyors;
    const told = before && now ? changesBeside(before, now) : [];
    expect(told).toContain('flight depth at 6.00 ft (1.83 m): 2.50 in (63.5 mm) on 2026-10-20');
    expect(told.flatMap(metricWords)).toEqual([]);
    const [conveyor] = estate.conveyors;
    const sheet = conveyor ? text(inspectionSheetHtml(inspectionSheet(estate, conveyor))) : '';
    expect(sheet).toContain('2.50 in (63.5 mm) on 2026-10-20');
    expect(sheet).toContain('150 °F (65.6 °C) on 2026-10-20');
    expect(metricWords(sheet)).toEqual([]);
  });
});
