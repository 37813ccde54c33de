// A look that a record asks for: when it falls due, which look answers it, and that everybody who plans looks knows of it.

import { expect, test } from 'vitest';
import { lookDueWords, looksDue } from '../../../src/domain/model/asked-looks.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { estateCalendar } from '../../../src/generators/remaining-life/estate-calendar.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { estateOf, look, works } from '../../generators/remaining-life/story.js';

// The machine runs 24 h a day from 2025-01-01 on.
const reline = (asked: string): string => `reline DG1 2025-02-10 meter 960 h {\n  ${asked}\n}\n`;

function due(...records: readonly string[]): readonly string[] {
  const estate = estateOf(works, ...records);
  return estate.conveyors.flatMap((conveyor) => looksDue(historyOf(estate, conveyor)).map(lookDueWords));
}

test.each([
  ['next look by 2025-03-01', 'a look is asked for by 2025-03-01 (reline of 2025-02-10)'],
  ['next look after 240 h', 'a look is asked for by 2025-02-20 (reline of 2025-02-10, after 240 h)'],
  [
    'next look after 3 weeks "joints"',
    'a look is asked for by 2025-03-03 (reline of 2025-02-10, after 3 weeks: joints)',
  ],
  [
    'next look after 10 d by "inspector" "weld"',
    'a look is asked for by 2025-02-20 (reline of 2025-02-10, after 10 d, asked by inspector: weld)',
  ],
])('%s', (line, words) => {
  expect(due(reline(line))).toEqual([words]);
});

test('hours count by the meter, however the machine ran', () => {
  // Between the reline and the look it ran half the time: 240 h take 20 days.
  const text = reline('next look after 240 h');
  expect(due(text, 'reline DG1 2025-03-22 meter 1440 h {\n  scope run 1\n}\n')).toEqual([
    'a look is asked for by 2025-03-02 (reline of 2025-02-10, after 240 h)',
  ]);
});

test('a look answers it; one that came at once does not answer what was to run first', () => {
  const soon = look(1032, 'gearbox oil low');
  const later = look(1200, 'P1 thickness 11.8 mm');
  expect(due(reline('next look after 240 h'), soon)).toHaveLength(1);
  expect(due(reline('next look by 2025-03-01'), soon)).toEqual([]);
  expect(due(reline('next look after 240 h'), later)).toEqual([]);
});

test('no duty, no day', () => {
  const still = works.replace(/  (?:duty|commissioned) .*\n/g, '');
  const estate = estateOf(still, reline('next look after 240 h'));
  expect(estate.conveyors.flatMap((each) => looksDue(historyOf(estate, each)).map(lookDueWords))).toEqual([
    'a look is asked for, and no duty says when that is (reline of 2025-02-10, after 240 h)',
  ]);
});

test('report, calendar, sheet and phone know of it', () => {
  const estate = estateOf(
    works,
    look(480, 'P1 thickness 11.9 mm; P2 thickness 11.9 mm'),
    look(960, 'P1 thickness 11.8 mm; P2 thickness 11.8 mm; next look by 2025-03-01 "bolts"'),
  );
  const told = 'a look is asked for by 2025-03-01 (look of 2025-02-10: bolts)';
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  const report = remainingLife(estate, { track: false });
  expect(report.conveyors[0]?.model?.look).toEqual({
    kind: 'by',
    day: parseDay('2025-03-01'),
    because: 'a look asked for',
  });
  expect(remainingLifeMarkdown(report)).toContain(told.slice(1));
  const calendar = estateCalendar(report).replace(/\r\n[ \t]/g, '');
  expect(calendar).toContain('DTSTART;VALUE=DATE:20250301');
  expect(calendar).toContain('is asked for by 2025-03-01');
  expect(inspectionPhonePage(inspectionSheet(estate, conveyor))).toContain(told);
  const passed = remainingLife(estate, { track: false, asOf: parseDay('2025-03-02') });
  expect(passed.conveyors[0]?.model?.look.kind).toBe('now');
});
