// What is said of characters that are no word of the language.

import { dayInDoubt } from './recovery/uncertain-day.js';
import type { ILexerErrorMessageProvider, IParserErrorMessageProvider } from 'chevrotain';

/** The parser only says that it has stumbled; what to tell of it is worked out line by line (recovery/telling.ts). */
export class TroughlineParserMessages implements IParserErrorMessageProvider {
  /** Told how often the parser has stumbled in the text at hand. */
  onMessage: (count: number) => void = () => undefined;
  private count = 0;

  startText(): void {
    this.count = 0;
  }

  buildMismatchTokenMessage(): string {
    return this.counted();
  }

  buildNotAllInputParsedMessage(): string {
    return this.counted();
  }

  buildNoViableAltMessage(): string {
    return this.counted();
  }

  buildEarlyExitMessage(): string {
    return this.counted();
  }

  private counted(): string {
    this.onMessage(++this.count);
    return 'This cannot be read.';
  }
}

export class TroughlineLexerMessages implements ILexerErrorMessageProvider {
  buildUnexpectedCharactersMessage(fullText: string, startOffset: number, length: number): string {
    const wrong = fullText.slice(startOffset, startOffset + Math.min(length, 20));
    if (wrong.startsWith('"')) return unclosed;
    if (fullText.startsWith('/*', startOffset)) return 'This comment has no end: a closing `*/` is missing.';
    if (/^[“”„«»]/.test(wrong))
      return `Text stands between straight quotes: write " instead of ${wrong.charAt(0)}.`;
    if (/^\p{L}/u.test(wrong))
      return `\`${wrong}\` cannot stand here: names are made of the letters A to Z, digits, _ and -, everything else stands in quotes.`;
    if (/[\p{Cc}\p{Cn}\p{Cs}]/u.test(wrong))
      return 'Characters that cannot be printed have no meaning here; delete them.';
    const day = dayBeside(fullText, startOffset);
    if (day !== undefined) return dayInDoubt(day === '' ? undefined : day);
    return `\`${wrong}\` has no meaning here.`;
  }

  buildUnableToPopLexerModeMessage(): string {
    return 'This has no meaning here.';
  }
}

/** The day that a sign of doubt stands at, empty where it is none whole; undefined where it stands at none. */
function dayBeside(text: string, start: number): string | undefined {
  const behind = /^[~≈]\s*(\d{4}(?:-\d{2}(?:-\d{2})?)?)(?!\d)/.exec(text.slice(start, start + 14))?.[1];
  const ahead = /(?<![\d.])(\d{4}-(?:\d{2}(?:-\d{2})?)?)-?\s?$/.exec(
    text.slice(Math.max(0, start - 14), start),
  )?.[1];
  const day = behind ?? (/^-?\?/.test(text.slice(start)) ? ahead : undefined);
  return day === undefined || /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : '';
}

const unclosed = 'This text has no closing quote on its line: write `"` where it ends.';
