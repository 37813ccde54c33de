// The colouring grammar is made from the language's grammar and must be as fresh as it; the language configuration must
// take a name with a hyphen as one word.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { AstUtils, GrammarAST } from 'langium';
import { textMateGrammar } from '../../syntaxes/generate.mjs';
import { languageServices } from '../../src/lsp/texts.js';
import { signs, wordOf } from '../../src/lsp/vocabulary.js';

const read = (name: string): string => readFileSync(new URL(`../../syntaxes/${name}`, import.meta.url), 'utf8');

describe('syntaxes', () => {
  it('has a grammar as fresh as the language', () => {
    expect(read('troughline.tmLanguage.json')).toBe(textMateGrammar());
  });

  it('takes a name with hyphens, a date and a clock position as one word', () => {
    const { wordPattern } = JSON.parse(read('language-configuration.json')) as { wordPattern: string };
    const words = 'P-1a hold-down 2026-03-14 7:30 8.4'.match(new RegExp(wordPattern, 'g'));
    expect(words).toEqual(['P-1a', 'hold-down', '2026-03-14', '7:30', '8.4']);
  });

  it('explains every keyword of the language', () => {
    const missing: string[] = [];
    for (const rule of languageServices().Grammar.rules) {
      if (!GrammarAST.isParserRule(rule)) continue;
      for (const keyword of AstUtils.streamAllContents(rule).filter(GrammarAST.isKeyword)) {
        if (!signs.has(keyword.value) && !wordOf(rule.name, keyword.value)) missing.push(`${rule.name}: ${keyword.value}`);
      }
    }
    expect(missing).toEqual([]);
  });
});
