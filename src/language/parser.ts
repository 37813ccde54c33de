// The parser that langium makes of the grammar, but one that gives up on a text after so many slips: recovery nests, so a file
// of ten thousand slips would run out of stack, and nobody mends more than the first hundreds before looking again.

import {
  createParser,
  LangiumParser,
  type AstNode,
  type LangiumCoreServices,
  type ParseResult,
  type ParserOptions,
} from 'langium';
import { TroughlineParserMessages } from './messages.js';

export const mostSlips = 300;

export interface SlipOptions extends ParserOptions {
  /** Give up after so many; 1 where it is enough to know that there is one. */
  readonly slips?: number;
}

export class TroughlineParser extends LangiumParser {
  private readonly messages: TroughlineParserMessages | undefined;
  private most = mostSlips;

  constructor(services: LangiumCoreServices) {
    super(services);
    const messages = services.parser.ParserErrorMessageProvider;
    if (!(messages instanceof TroughlineParserMessages)) return;
    this.messages = messages;
    messages.onMessage = (count) => {
      // The wrapped parser has this method; its public type leaves it out. It makes the rest of the text count as read.
      if (count >= this.most)
        (this.wrapper as unknown as { moveToTerminatedState(): void }).moveToTerminatedState();
    };
  }

  override parse<T extends AstNode = AstNode>(input: string, options?: SlipOptions): ParseResult<T> {
    this.messages?.startText();
    this.most = options?.slips ?? mostSlips;
    return super.parse(input, options);
  }
}

export function createTroughlineParser(services: LangiumCoreServices): LangiumParser {
  const parser = createParser(
    services.Grammar,
    new TroughlineParser(services),
    services.parser.Lexer.definition,
  );
  parser.finalize();
  return parser;
}
