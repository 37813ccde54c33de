import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  circles,
  importsOf,
  judge,
  namesNobodyUses,
  nonNullAssertions,
  sharedTypeNames,
  sourceFiles,
  unusedPermissions,
  type SourceFile,
} from './imports.js';
import { parts, type Part } from './table.js';

const files = sourceFiles(fileURLToPath(new URL('../../src', import.meta.url)));

/** Each is a check against something published, or a door that only tests go through. */
const keptWithReason: Readonly<Record<string, string>> = {
  'exampleOf: validation/example.ts': 'what the example of a rule says, for the tests that run all of them',
  'screwSizes: domain/geometry/sizes.ts':
    'the published sizes, against which the check of odd sizes is tested',
  'laden: domain/order/states.ts':
    'the first state of what lies in the trough: nothing names it, all begin with it',
  'angleToClock: domain/units/clock.ts': 'the way back of clockToAngle, with which a test goes round',
  'baseUnit: domain/units/dimension.ts': 'the unit behind every quantity, for the tests of units',
  'isCurrency: domain/units/unit-table.ts': 'held against the list of the platform',
  'ageReplacementWeibull: domain/wear/age-replacement.ts': 'held against a published age of replacement',
  'binomialInterval: domain/wear/binomial.ts': 'for the coverage that tests and benchmarks count',
  'lineWithIntercept: domain/wear/least-squares.ts': 'held against the reference data of NIST',
  'formulaOf: generators/appendix/formulas.ts': 'one of them',
};

describe('the parts of src', () => {
  test('import only what the table allows, through doors', () => {
    expect(files.flatMap((file) => judge(file, parts))).toEqual([]);
  });

  test('are read at all: there are files, and they import things', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.flatMap((file) => importsOf(file.text)).length).toBeGreaterThan(200);
  });

  test('hold no folder that the table does not know, and the table none that is gone', () => {
    const used = new Set(
      parts.filter((part) => files.some((file) => file.file.startsWith(`${part.folder}/`))),
    );
    expect(parts.filter((part) => !used.has(part)).map((part) => part.folder)).toEqual([]);
  });

  test('import nothing that comes round to them again', () => {
    expect(circles(files)).toEqual([]);
  });

  test('have no permission that they do not use', () => {
    expect(unusedPermissions(files, parts)).toEqual([]);
  });

  test('say ! at most once in a thousand lines outside the arithmetic on typed arrays', () => {
    const isKernel = (file: string): boolean => /^domain\/(wear|plan\/(scheduling|cutting))\//.test(file);
    const others = files.filter(({ file }) => !isKernel(file));
    const lines = others.reduce((sum, { text }) => sum + text.split('\n').length, 0);
    const found = others.reduce((sum, each) => sum + nonNullAssertions(each), 0);
    expect(found).toBeGreaterThan(0);
    expect((1000 * found) / lines).toBeLessThanOrEqual(1);
  });

  test('hold few lines that are wider than a screen: style sheets, and a message or two that no joint divides', () => {
    const wide = files.flatMap(({ file, text }) =>
      text.split('\n').flatMap((line, i) => (line.length > 160 ? [`${file}:${i + 1}`] : [])),
    );
    expect(wide.length, wide.join('\n')).toBeLessThanOrEqual(40);
  });

  test('export nothing that no other line names, but for what is listed with its reason', () => {
    const rules = /^validation\/rules\//; // named in the list that is made from the folder
    const others = namesNobodyUses(files).filter((each) => !rules.test(each.split(': ')[1] ?? ''));
    expect(others).toEqual(Object.keys(keptWithReason));
  });

  test('call no two types by one name', () => {
    expect(sharedTypeNames(files)).toEqual([]);
  });
});

describe('what is wrong with a whole', () => {
  const file = (name: string, ...imports: readonly string[]): SourceFile => ({
    file: name,
    text: imports.map((each) => `import type { T } from '${each}';`).join('\n'),
  });

  test('a circle is told with every file in it, once', () => {
    const round = [
      file('a/x.ts', '../b/y.js'),
      file('b/y.ts', './z.js'),
      file('b/z.ts', '../a/x.js', './free.js'),
    ];
    expect(circles([...round, file('b/free.ts')])).toEqual(['a/x.ts → b/y.ts → b/z.ts']);
    expect(circles([file('own.ts', './own.js')])).toEqual(['own.ts']);
    expect(circles([file('a.ts', './b.js', './c.js'), file('b.ts', './c.js'), file('c.ts')])).toEqual([]);
  });

  test('a permission that nobody uses is told, for parts and packages', () => {
    const table: readonly Part[] = [
      { folder: 'a', parts: ['b', 'c'], packages: ['used', 'kept/*', 'unused', 'lost/*'], why: '' },
      { folder: 'b', parts: [], packages: [], why: '' },
      { folder: 'c', parts: [], packages: [], why: '' },
    ];
    expect(
      unusedPermissions([file('a/x.ts', '../b/y.js', 'used', 'kept/deep'), file('b/y.ts')], table),
    ).toEqual([
      'a may import c and does not',
      'a may import unused and does not',
      'a may import lost/* and does not',
    ]);
  });

  test('a name that two files export is told with both', () => {
    expect(
      sharedTypeNames([
        { file: 'a.ts', text: 'export interface Piece {}\nexport type Other = 1;' },
        { file: 'b.ts', text: 'export type Piece = 1;\ninterface Other {}' },
      ]),
    ).toEqual(['Piece: a.ts, b.ts']);
  });
});

describe('bad imports are caught', () => {
  const cases: [string, string, string, RegExp][] = [
    [
      'a domain part importing the language',
      'domain/wear/fit.ts',
      "import { x } from '../../language/lower.js';",
      /may not import language/,
    ],
    [
      'a type-only import',
      'domain/units/parse.ts',
      "import type { Estate } from '../model/estate.js';",
      /may not import domain\/model/,
    ],
    [
      'a dynamic import',
      'validation/catalogue.ts',
      "const x = await import('../analysis/analyse.js');",
      /may not import analysis/,
    ],
    [
      'a re-export',
      'protocol/messages.ts',
      "export * from '../domain/model/estate.js';",
      /may not import domain\/model/,
    ],
    [
      'a deep file of another part',
      'analysis/analyse.ts',
      "import { r } from '../validation/rules/x.js';",
      /past the door/,
    ],
    [
      'a package that is not its own',
      'domain/model/estate.ts',
      "import fs from 'node:fs';",
      /package node:fs/,
    ],
    ['an unknown folder', 'misc/things.ts', '', /no part of the table/],
  ];
  test.each(cases)('%s', (_, file, text, expected) => {
    expect(judge({ file, text }, parts).join('\n')).toMatch(expected);
  });

  test('and a right one is left alone', () => {
    expect(
      judge(
        {
          file: 'validation/catalogue.ts',
          text: "import { a } from './rules/x.js'; import type { E } from '../domain/model/estate.js';",
        },
        parts,
      ),
    ).toEqual([]);
  });
});
