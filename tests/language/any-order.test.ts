// What ends a row or a record (where, how bad, its photo, own words, who says so) stands in any order: each reads, and says the same.

import { describe, expect, test } from 'vitest';
import { lower } from '../../src/language/lower.js';
import { parseText, prepare } from '../../src/language/parse.js';
import type { Sheet } from '../../src/language/sheet.js';

const ending = ['"edge"', 'photo "a.png"', 'by "night shift"'];
const placed = ['at 14.2 m', 'clock 5:00', 'serious', ...ending];

const inside = (heading: string) => (line: string) => `${heading} {\n  ${line}\n}\n`;
const look = inside('inspection DG1 2026-03-14 meter 8120 h');
const reline = inside('reline DG1 2026-03-14 meter 8120 h');
const moved = inside('panels moved DG1 2026-03-14 meter 8120 h');
const order = (line: string): string => `job J {\n  conveyor DG1\n  order {\n    ${line}\n  }\n}\n`;
const alone = (line: string): string => `${line}\n`;

const rows: readonly (readonly [string, readonly string[], (line: string) => string])[] = [
  ['panel torn', placed, look],
  ['joint open', ['9 mm', 'at 14.2 m', 'slight', '"edge"', 'by "x"'], look],
  ['bolts loose', ['3', 'at P4', 'slight', 'photo "a.png"', '"edge"'], look],
  ['gearbox', ['oil leak', 'slight', ...ending], look],
  ['motor temperature 92 degC', ['serious', ...ending], look],
  ['cover missing', ['at 8.4 m', 'left side', 'closed on 2026-03-20', '"x"', 'by "y"'], look],
  ['closed panel torn', placed, look],
  ['not seen gate stuck', ['at Gate', '"ice"', 'by "y"'], look],
  ['finding gate', placed, look],
  ['finding drive at 34.2 m', ['serious', ...ending], look],
  ['closed finding gate', ['at Gate', ...ending], look],
  ['P4 thickness 8.4 mm', ending, look],
  ['P4 colour teal', ending, look],
  ['P4 not seen no access', ending, look],
  ['from 18 m to 19.5 m clock 5:00 thickness 8.4 mm', ending, look],
  ['plate at 9.1 m thickness 3.4 mm', ending, look],
  ['not seen from 12 m to 15 m', ending, look],
  ['hold-down at 9.5 m gap 14 mm', ending, look],
  ['flight at 3 m depth 71 mm', ending, look],
  ['worn at 9 m clock 4:30 to 7:30', ending, look],
  ['speed 16.4 rpm', ending, look],
  ['serviced hold-down renewed at 9.5 m', ending, look],
  ['serviced spiral at 16.4 m', ending, look],
  ['serviced closed spiral weld cracked', placed, look],
  ['panel torn', placed, reline],
  ['old panel at P8 thickness 1.9 mm', ending, reline],
  ['panel 2 of run 1 turned end for end', ending, moved],
  ['serviced DG1 2026-03-10 gearbox oil changed', ending, alone],
  ['serviced DG1 2026-03-10 spiral at 16.4 m', ending, alone],
  ['serviced DG1 2026-03-10 closed gate stuck', ['at Gate', 'slight', ...ending], alone],
  ['patch DG1 2026-03-10 at 9 m to 9.6 m thickness 4 mm', ['welded by "x"', '"y"', 'photo "a.png"'], alone],
  ['drive change DG1 2026-03-10 speed 18 rpm', ['by "x"', '"y"'], alone],
  ['correction DG1 2026-03-20 P4 read on 2026-03-14 thickness 7.4 mm', ['by "x"', '"y"'], alone],
  ['duty DG1 from 2026-01-05 95 h/week', ['by "x"', '"y"'], alone],
  ['meter change DG1 2026-03-14 from 8120 h to 0 h', ['by "x"', '"dead"'], alone],
  ['fit run 1', ['starting at tail', 'cut to fit', 'by Alpha', 'attended by Bravo', '"x"'], order],
  [
    'patch run 1',
    ['by Alpha, Bravo', 'takes 3 h', 'hot work shielded wet fire watch 60 min', 'with 2 people', '"x"'],
    order,
  ],
  ['gate shut Gate', ['by Alpha', 'takes 3 h', 'after a, b', '"x"'], order],
];

describe('all orders of', () => {
  test.each(rows)('%s %j', (head, parts, block) => {
    const texts = permutations(parts).map((each) => block([head, ...each].join(' ')));
    const [said] = texts.map((text) => saysOf(text));
    for (const text of texts) {
      expect(saysOf(text), text).toEqual(said);
      expect(saysOf(text, parseText(text)), text).toEqual(said);
    }
  });
});

test('a part that stands twice is told', () => {
  const slips = (line: string): number => parseText(look(line)).slips.length;
  for (const line of [
    'panel torn at 14.2 m slight serious',
    'panel torn at 14.2 m "a" at 9 m',
    'bolts loose 2 at P4 3',
  ])
    expect(slips(line), line).toBe(1);
});

test('nothing of a slip is kept for the next line', () => {
  const rows =
    'panel torn at 14.2 m slight slight\n  panel torn at 9 m slight\n  gearbox noise slight by "x"';
  expect(parseText(look(rows)).slips).toHaveLength(1);
});

test('who says so is of the row behind it or further in, of the look on a line of its own', () => {
  const bys = (rows: string): unknown => {
    const [one] = lower(parseText(look(rows)), 0, 'a').inspections;
    return [one?.by, one?.conditions.map(({ note }) => note)];
  };
  expect(bys('gearbox noise by "x"')).toEqual([undefined, ['by x']]);
  expect(bys('gearbox noise\n    by "x"')).toEqual([undefined, ['by x']]);
  expect(bys('gearbox noise\n  by "x"')).toEqual(['x', [undefined]]);
  expect(bys('gearbox noise by "y" "hums"\n  by "x"')).toEqual(['x', ['hums; by y']]);
});

function permutations(parts: readonly string[]): readonly (readonly string[])[] {
  if (parts.length < 2) return [parts];
  return parts.flatMap((part, i) =>
    permutations([...parts.slice(0, i), ...parts.slice(i + 1)]).map((rest) => [part, ...rest]),
  );
}

/** All that a text says, without the places where it stands. */
function saysOf(text: string, parsed = parseText(text, prepare(text))): unknown {
  const sheet: Sheet = lower(parsed, 0, 'a');
  expect(sheet.problems, text).toEqual([]);
  return JSON.parse(
    JSON.stringify(sheet, (key, value: unknown) => {
      if (value instanceof Map) return [...value];
      if (key === 'text' && typeof value === 'string') return value.length;
      return ['origin', 'actionOrigin', 'start', 'end', 'colourStart'].includes(key) ? undefined : value;
    }),
  );
}
