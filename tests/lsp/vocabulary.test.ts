// Every keyword of the grammar has its words for hovers and completion, by the rule it stands in.

import { AstUtils, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import { languageServices } from '../../src/lsp/document.js';
import { signs, keywordDocOf } from '../../src/language/keyword-docs.js';

describe('vocabulary', () => {
  it('explains every keyword of the language', () => {
    const missing: string[] = [];
    for (const rule of languageServices().Grammar.rules) {
      if (!GrammarAST.isParserRule(rule)) continue;
      for (const keyword of AstUtils.streamAllContents(rule).filter(GrammarAST.isKeyword)) {
        if (!signs.has(keyword.value) && !keywordDocOf(rule.name, keyword.value))
          missing.push(`${rule.name}: ${keyword.value}`);
      }
    }
    expect(missing).toEqual([]);
  });
});
