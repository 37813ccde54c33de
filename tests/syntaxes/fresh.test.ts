// The colouring grammar is made from the language's grammar and must be as fresh as it; the language configuration must
// take a name with a hyphen as one word.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { textMateGrammar } from '../../syntaxes/generate.mjs';

const read = (name: string): string =>
  readFileSync(new URL(`../../syntaxes/${name}`, import.meta.url), 'utf8');

describe('syntaxes', () => {
  it('has a grammar as fresh as the language', () => {
    expect(read('troughline.tmLanguage.json')).toBe(textMateGrammar());
  });

  it('takes a name with hyphens, a date and a clock position as one word', () => {
    const { wordPattern } = JSON.parse(read('language-configuration.json')) as { wordPattern: string };
    const words = 'P-1a hold-down 2026-03-14 7:30 8.4'.match(new RegExp(wordPattern, 'g'));
    expect(words).toEqual(['P-1a', 'hold-down', '2026-03-14', '7:30', '8.4']);
  });
});
