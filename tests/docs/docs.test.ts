// The documents are true: their examples are the files, their links lead somewhere, their commands and codes exist.

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { conditionKinds } from '../../src/domain/conditions/kinds.js';
import { parseText } from '../../src/language/parse.js';
import { ruleOf } from '../../src/validation/catalogue.js';
import { troughline } from '../cli/console.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const documents = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md'].map((name) => ({
  name,
  text: readFileSync(path.join(root, name), 'utf8'),
}));
const readme = documents[0]!.text; // the list above begins with it

describe.each(documents)('$name', ({ text }) => {
  test('every link and picture leads to a file of the project', () => {
    const targets = [...text.matchAll(/\]\(([^)\s]+)\)/g)]
      .map((match) => match[1]!.split('#')[0]!)
      .filter((target) => target !== '' && !/^[a-z]+:/.test(target));
    expect(targets.filter((target) => !existsSync(path.join(root, target)))).toEqual([]);
  });

  test('every rule it names exists', () => {
    const codes = [...text.matchAll(/\bTL\d{3}\b/g)].map((match) => match[0]);
    expect(codes.filter((code) => !ruleOf(code))).toEqual([]);
  });

  test('every file of the source it names exists', () => {
    const named = [...text.matchAll(/`((?:src|tests|examples|syntaxes|\.ci)\/[\w./-]+)`/g)].map(
      (match) => match[1]!,
    );
    expect(named.filter((name) => !existsSync(path.join(root, name)))).toEqual([]);
  });

  test('every npm script it names exists', () => {
    const { scripts } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const named = [...text.matchAll(/npm run ([\w:-]+)/g)].map((match) => match[1]!);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});

/** Of the tables of what to write: words that are named beside a line, and are none. */
const wordsBeside = ['blocked', 'buried', 'no light', 'cover on', 'hatch', 'loose', 'drive at'];

function inBlock(block: string | undefined, line: string): string {
  if (block === undefined) return `${line}\n`;
  const head = block === 'inspection' ? 'inspection DG1 2026-03-14 meter 8120 h' : `${block} X1`;
  return `${head} {\n  ${line}\n}\n`;
}

describe('README.md', () => {
  test('the conveyor it shows is the file it names, to the letter', () => {
    const shown = [...readme.matchAll(/<!-- example (\S+) -->\n```troughline\n([\s\S]*?)```/g)];
    expect(shown.length).toBeGreaterThan(0);
    for (const [, file, block] of shown) expect(block).toBe(readFileSync(path.join(root, file!), 'utf8'));
  });

  test('every line of its tables of what to write reads as it stands there', () => {
    const tables = [...readme.matchAll(/<!-- lines( \w+)? -->\n((?:\|.*\n)+)/g)];
    expect(tables).toHaveLength(11);
    const lines = tables.flatMap(([, block, rows]) =>
      // The second cell of each row; its head and the rule below it hold no line.
      [...rows!.matchAll(/^\|[^|]*\|(.*)\|$/gm)].flatMap(([, cell]) =>
        [...cell!.matchAll(/`([a-z][^`]*)`/gi)].map(([, line]) => ({ line: line!, block: block?.trim() })),
      ),
    );
    expect(lines.length).toBeGreaterThan(170);
    const refused = lines
      .filter(({ line }) => !wordsBeside.includes(line))
      .filter(({ line, block }) => parseText(inBlock(block, line)).slips.length > 0);
    expect(refused).toEqual([]);
  });

  test('the records that it shows whole read as they stand', () => {
    const shown = [...readme.matchAll(/^```\n([a-z][^`]*\{\n[^`]*)```$/gm)].map(([, text]) => text!);
    expect(shown).toHaveLength(1);
    for (const text of shown) expect(parseText(text).slips).toEqual([]);
  });

  test('every condition of the language stands in it', () => {
    const missing = conditionKinds.filter(
      (kind) => !readme.includes(`\`${kind}`) && !kind.startsWith('hatch '),
    );
    expect(missing).toEqual([]);
  });

  test('every command and option it shows is one the program has', async () => {
    const lines = [...readme.matchAll(/^(?:- run: npx )?troughline ([^#\n]*)/gm)].map((match) =>
      match[1]!
        .trim()
        .replace(/'[^']*'/g, 'x')
        .split(/\s+/),
    );
    expect(lines.length).toBeGreaterThan(5);
    for (const [command, ...rest] of lines) {
      if (command!.startsWith('-') || command === 'COMMAND') continue;
      const help = await troughline([command!, '--help']);
      expect(help.exit, command).toBe(0);
      for (const option of rest.filter((word) => word.startsWith('--')))
        expect(help.out).toContain(option.split('=')[0]);
    }
  });

  test('every block of the language stands in its table', () => {
    const grammar = readFileSync(path.join(root, 'src/language/troughline.langium'), 'utf8');
    const blocks = /Block:\s*([^;]+);/
      .exec(grammar)![1]!
      .split('|')
      .map((name) => name.trim()); // the grammar has this rule
    const keywords = blocks.map((block) => new RegExp(`\\n${block}:\\s*'([^']+)'`).exec(grammar)?.[1]);
    expect(keywords).not.toContain(undefined);
    expect(keywords.filter((keyword) => !readme.includes(`\`${keyword}\``))).toEqual([]);
  });
});
