// A machine that is declared in inches is told about in inches and feet, whatever is found on it: every rule's bad example and
// cases, written in inches by a mechanical converter, with the message, its reason, what stands beside it and its repairs.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { rules } from '../../src/validation/catalogue.js';
import { caseOf, exampleOf } from '../../src/validation/example.js';
import { metricLengths, toInches } from '../kit/to-inches.js';

const texts = rules.flatMap((rule) =>
  [exampleOf(rule, 'bad'), ...(rule.cases ?? []).map((one) => caseOf(rule, one))].map(({ text }) => ({
    code: rule.code,
    text: toInches(text),
  })),
);

function told(text: string): readonly { readonly code: string; readonly words: readonly string[] }[] {
  return analyse([{ uri: 'memory:/estate.trough', text }]).findings.map(
    ({ code, message, why, todo, related = [], fixes = [] }) => ({
      code,
      words: [
        message,
        ...(why === ownWhy(code) ? [] : [why]),
        ...(todo === ownTodo(code) ? [] : [todo]),
        ...related.map((each) => each.message),
        ...fixes.flatMap(({ title, edits }) => [title, ...edits.map((edit) => edit.text)]),
      ],
    }),
  );
}

const ownWhy = (code: string): string | undefined => rules.find((rule) => rule.code === code)?.why;
const ownTodo = (code: string): string | undefined => rules.find((rule) => rule.code === code)?.todo;

/** What the message is about is the unit or the written number itself, not a size of the machine. */
const aboutTheUnit: Readonly<Record<string, string>> = {
  TL102: 'offers both units to choose from',
  TL103: 'offers both units to choose from',
  TL111: 'shows a line of the manual as an example, and says that it is one',
  TL227: 'names sizes of a metric standard',
  TL234: 'asks whether the other unit was meant',
  TL551: 'shows a line of the manual as an example',
  TL265: 'shows how the rule itself has its threshold written',
};

/** Photos have no length; the last needs a sheet that falls short by less than the rounding. */
const notInInches = ['TL347', 'TL348', 'TL496'];

describe('on a machine in inches', () => {
  const found = texts.flatMap(({ code, text }) => told(text).map((finding) => ({ ...finding, of: code })));

  test('every rule finds what it finds in metres', () => {
    const own = new Set(found.filter(({ code, of }) => code === of).map(({ code }) => code));
    expect(rules.filter(({ code }) => !own.has(code)).map(({ code }) => code)).toEqual(notInInches);
  });

  test('no finding, repair or note beside it speaks of metres or millimetres alone', () => {
    const metric = found.flatMap(({ code, words }) =>
      code in aboutTheUnit
        ? []
        : words.flatMap((each) => metricLengths(each).map((length) => `${code}: ${length}`)),
    );
    expect([...new Set(metric)].sort()).toEqual([]);
  });

  test('and what is left out of this does so still', () => {
    const still = new Set(
      found.flatMap(({ code, words }) => (words.some((each) => metricLengths(each).length > 0) ? code : [])),
    );
    expect(Object.keys(aboutTheUnit).filter((code) => !still.has(code))).toEqual([]);
  });
});

describe('the converter', () => {
  test('writes what is outside quotes and comments, and misses no length in metres', () => {
    expect(toInches('length 12 m // 3 m\nliner 12 mm "4 mm" at 0.3048 m duty 20 h/m')).toBe(
      'length 39.370079 ft // 3 m\nliner 0.472441 in "4 mm" at 1 ft duty 20 h/m',
    );
    expect(metricLengths('at 4 m, 0.47 in (12 mm) thick, 3 mm/1000 h, 2 m/s, 3 kg/m')).toHaveLength(2);
  });
});
