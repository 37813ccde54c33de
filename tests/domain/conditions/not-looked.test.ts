// Where nobody could look is a fact of its own: it is carried until a later look sees something there, and it closes and opens
// nothing by itself.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { openConditionRows } from '../../../src/domain/conditions/rows.js';
import { notLookedAt, notLookedWords } from '../../../src/domain/conditions/not-looked.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${rows.join('\n  ')}\n}`;

function read(...blocks: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', blocks.join('\n')) }]);
}

function told({ estate }: Analysis): readonly string[] {
  const [conveyor] = estate.conveyors;
  return conveyor ? notLookedAt(estate, historyOf(estate, conveyor)).map(notLookedWords) : [];
}

const behind = look('2024-09-09', 3600, 'not seen material behind liner at 5 m "covers stayed on"');
const stretch = look('2024-09-09', 3600, 'not seen from 6 m to 5 m no access "hoses in the way"');

describe('could not look there', () => {
  test('stands where nothing was ever open, without a finding', () => {
    const found = read(behind);
    expect(found.findings).toEqual([]);
    expect(told(found)).toEqual([
      'material behind liner at 5.00 m could not be looked at on 2024-09-09: covers stayed on',
    ]);
    expect(openConditionRows(found.estate, found.estate.conveyors[0]!)).toEqual([]);
  });

  test('of a condition ends when somebody looks for it: it is there, or it is not', () => {
    expect(told(read(behind, look('2025-03-10', 6000, 'P1 colour ivory')))).toHaveLength(1);
    const there = read(behind, look('2025-03-10', 6000, 'material behind liner at 5.1 m'));
    expect([told(there), there.findings]).toEqual([[], []]);
    expect(openConditionRows(there.estate, there.estate.conveyors[0]!)).toHaveLength(1);
    const none = read(behind, look('2025-03-10', 6000, 'closed material behind liner at 5.1 m'));
    expect([told(none), none.findings]).toEqual([[], []]);
    expect(openConditionRows(none.estate, none.estate.conveyors[0]!)).toEqual([]);
  });

  test('of a stretch ends when something is seen on it, also just beside it, and not by what is not seen again', () => {
    const words = '5.00 m to 6.00 m could not be looked at on 2024-09-09: no access: hoses in the way';
    expect(told(read(stretch))).toEqual([words]);
    expect(told(read(stretch, look('2025-03-10', 6000, 'at 5.5 m clock 6:00 not seen "dark"')))).toEqual([
      words,
    ]);
    expect(told(read(stretch, look('2025-03-10', 6000, 'at 5.5 m clock 6:00 colour ivory')))).toEqual([]);
    expect(told(read(stretch, look('2025-03-10', 6000, 'panel torn at 6.3 m')))).toEqual([]);
    expect(told(read(stretch, look('2025-03-10', 6000, 'panel torn at 6.31 m')))).toEqual([words]);
  });

  test('a reline takes the question away with the panel', () => {
    expect(told(read(behind, 'reline DG1 2024-10-07 meter 3900 h {\n}'))).toEqual([]);
  });

  test('stands in the report in every form, and on the next sheet', () => {
    const { estate } = read(behind, stretch.replace('2024-09-09', '2024-09-16').replace('3600', '3700'));
    const report = remainingLife(estate, { depth: 'hand' });
    for (const form of [remainingLifeHtml(report), remainingLifeMarkdown(report)]) {
      expect(form).toContain('could not be looked at on 2024-09-09: covers stayed on');
      expect(form).toContain('could not be looked at on 2024-09-16');
    }
    const json = JSON.parse(remainingLifeJson(report)) as { conveyors: { notLooked: object[] }[] };
    expect(json.conveyors[0]?.notLooked).toHaveLength(2);
    const sheet = inspectionSheetHtml(inspectionSheet(estate, estate.conveyors[0]!));
    expect(sheet).toContain('could not be looked at: material behind liner at 5.00 m (covers stayed on)');
  });

  test('beyond the conveyor it is told, and closing what was never open still is', () => {
    const codes = (...rows: readonly string[]): readonly string[] =>
      read(look('2024-09-09', 3600, ...rows)).findings.map(({ code }) => code);
    expect(codes('not seen at 40 m "dark"')).toEqual(['TL326']);
    expect(codes('not seen from 10 m to 40 m "dark"')).toEqual(['TL326']);
    expect(codes('closed material behind liner at 5 m')).toEqual(['TL351']);
  });
});

test('covers and gates have conditions of their own, by chainage or by the name of the part', () => {
  const found = read(
    look('2024-09-09', 3600, 'gate stuck at Gate serious', 'gate leaking at 7.2 m', 'cover missing at 3 m'),
  );
  const rows = openConditionRows(found.estate, found.estate.conveyors[0]!);
  expect(found.findings).toEqual([]);
  expect(rows.map(({ what, part, at }) => [what, part, at === undefined])).toEqual([
    ['gate stuck at Gate', 'gate', false],
    ['gate leaking at 7.20 m', 'gate', false],
    ['cover missing at 3.00 m', 'cover', false],
  ]);
  const unknown = read(look('2024-09-09', 3600, 'gate stuck at Portcullis'));
  expect(unknown.findings.length).toBeGreaterThan(0);
  const closed = read(
    look('2024-09-09', 3600, 'gate stuck at Gate'),
    look('2025-03-10', 6000, 'closed gate stuck at Gate'),
  );
  expect([closed.findings, openConditionRows(closed.estate, closed.estate.conveyors[0]!)]).toEqual([[], []]);
});
