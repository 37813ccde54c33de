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

/** What the wrapped parser has and its public type leaves out. */
interface RuleStack {
  readonly RULE_STACK: number[];
  readonly RULE_STACK_IDX: number;
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
      // Which parts of a line have stood is otherwise kept for the next one.
      this.unorderedGroups.clear();
      // The wrapped parser has this method; its public type leaves it out. It makes the rest of the text count as read.
      if (count >= this.most)
        (this.wrapper as unknown as { moveToTerminatedState(): void }).moveToTerminatedState();
    };
  }

  /**
   * The rules that are being read, by which a group of parts in any order keeps which of them have stood. The wrapped parser leaves
   * rules behind that are over.
   */
  override getRuleStack(): number[] {
    const { RULE_STACK, RULE_STACK_IDX } = this.wrapper as unknown as RuleStack;
    return RULE_STACK.slice(0, RULE_STACK_IDX + 1);
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
