// Builds the tokens that a regular expression alone would get wrong.
//  - A keyword of several words ('hold-downs off') is one token whose words may stand apart by any blanks on one line.
//  - A quantity is a number and the word after it, unless that word is a keyword: so `speed 18 power 5.5 kW` is a
//    missing unit, and `length 22.4 metres` a wrong one, and both can be told in plain words.
//  - `h per week` and `h a week` are units as `h/week` is.
//  - Dates and clock times also accept the forms people type by habit (14/03/2026, 7.30), for the rules to mend.

import {
  createToken,
  type CustomPatternMatcherFunc,
  type TokenPattern,
  type TokenType,
  type TokenVocabulary,
} from 'chevrotain';
import { DefaultTokenBuilder, type Grammar, type TokenBuilderOptions } from 'langium';
import { isOwnToken } from './row-starts.js';

const number = String.raw`[+-]?\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?`;
const fraction = String.raw`\d+[ \t]+\d+\/\d+|\d+\/\d+`;
const numberAt = new RegExp(`(?:${fraction}|${number})`, 'y');
const unitAt =
  /[ \t]*([A-Za-z%°µμ£$€][A-Za-z0-9%°µμ²³·$€]*(?:\/[A-Za-z0-9°µμ²³%]+)*(?:[ \t]+per[ \t]+[A-Za-z][A-Za-z0-9²³]*|[ \t]+an?[ \t]+(?:week|day|hour|metre|meter)\b)?|"(?=\s|$)|1?\/[A-Za-z°]+)/y;
const dateAt = /\d{4}-\d{1,2}-\d{1,2}(?![\d-])|\d{1,2}[./]\d{1,2}[./]\d{2,4}(?![\d./])/y;
const clockAt = /\d{1,2}:\d{2}(?!\d)/y;

/**
 * What begins no token, last in line. Without it the lexer would try every token at every such character; with it a page of
 * noise costs no more than a page of text.
 */
export const foreign = createToken({
  name: 'FOREIGN',
  pattern: sticky(/[^A-Za-z0-9_\s"{},:./+\-±]+|[\s\S]/y),
  group: 'foreign',
  line_breaks: true,
  // Every character there is may begin one; the lexer keeps those above 255 in groups of 255.
  start_chars_hint: Array.from({ length: 256 + 656 }, (_, i) => (i < 256 ? i : (i - 256) * 100)),
});

export class TroughlineTokenBuilder extends DefaultTokenBuilder {
  private readonly keywords = new Set<string>();

  override buildTokens(grammar: Grammar, options?: TokenBuilderOptions): TokenVocabulary {
    const tokens = super.buildTokens(grammar, options);
    // The base class returns the flat list of token types; a multi-mode vocabulary is never built for this grammar.
    const list = tokens as TokenType[];
    for (const token of list) {
      if (token.name === 'DATE') use(token, sticky(dateAt));
      if (token.name === 'CLOCK') use(token, sticky(clockAt));
      if (token.name === 'NUMBER') use(token, sticky(numberAt));
      // Never matched: row-starts.ts gives them to words that begin a row.
      if (isOwnToken(token)) use(token, () => null);
      if (token.name === 'QUANTITY') use(token, (text, at) => this.matchQuantity(text, at));
    }
    return [...list, foreign];
  }

  protected override buildKeywordPattern(keyword: { value: string }, caseInsensitive: boolean): TokenPattern {
    this.keywords.add(keyword.value.split(' ')[0]!);
    if (!keyword.value.includes(' ')) return super.buildKeywordPattern(keyword as never, caseInsensitive);
    const words = keyword.value
      .split(' ')
      .map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`));
    // Before its time it is part of a step of hot work, and a token of its own.
    const end = keyword.value === 'fire watch' ? '(?![A-Za-z0-9_-]|[ \\t]+\\d)' : '(?![A-Za-z0-9_-])';
    return new RegExp(words.join('[ \\t]+') + end);
  }

  private matchQuantity(text: string, at: number): [string] | null {
    numberAt.lastIndex = at;
    const digits = numberAt.exec(text);
    if (!digits) return null;
    unitAt.lastIndex = at + digits[0].length;
    const unit = unitAt.exec(text);
    if (!unit || this.keywords.has(unit[1]!)) return null;
    // `2 hold-downs` is a number and a word.
    if (text[unitAt.lastIndex] === '-' && /[a-z]/i.test(text[unitAt.lastIndex + 1] ?? '')) return null;
    return [text.slice(at, unitAt.lastIndex)];
  }
}

function sticky(pattern: RegExp): CustomPatternMatcherFunc {
  return (text, at) => {
    pattern.lastIndex = at;
    return pattern.exec(text) as RegExpExecArray | null;
  };
}

function use(token: TokenType, pattern: CustomPatternMatcherFunc): void {
  token.PATTERN = pattern;
  token.LINE_BREAKS = false;
  // Lets the lexer skip this matcher unless the next character can start it.
  token.START_CHARS_HINT = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '+', '-'];
}
