import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { importsOf, judge, sourceFiles } from './imports.js';
import { parts } from './table.js';

const files = sourceFiles(fileURLToPath(new URL('../../src', import.meta.url)));

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
