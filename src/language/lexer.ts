// Text → tokens. What is no token is told in plain words; comments stay out of the tree: comments.ts finds them in one pass,
// whatever their number.

import type { ILexingError, IToken, TokenType } from 'chevrotain';
import {
  DefaultLexer,
  DefaultValueConverter,
  type CstNode,
  type GrammarAST,
  type LangiumCoreServices,
  type LexerResult,
  type ValueType,
} from 'langium';
import { visibleText } from '../domain/units/visible-text.js';
import { withoutBareColours } from './bare-colour.js';
import { markRowStarts, ownTokensAmong, type OwnTokens, type RowStarts } from './row-starts.js';
import { patternsOf } from './recovery/pattern.js';

export class TroughlineLexer extends DefaultLexer {
  private own: OwnTokens | undefined;
  private starts: RowStarts | undefined;

  constructor(private readonly services: LangiumCoreServices) {
    super(services);
  }

  override tokenize(text: string): LexerResult {
    const { tokens, errors, groups } = this.chevrotainLexer.tokenize(text);
    const strays = (groups['foreign'] ?? []).map((token) => this.stray(text, token));
    this.own ??= ownTokensAmong(Object.values(this.tokenTypes));
    markRowStarts(tokens, this.own, () => (this.starts ??= this.startsOfRows()), text);
    // `gearbox bolts loose 2`: they are no bolts of the liner, and a gearbox with nothing said of it is no condition.
    for (const [i, token] of tokens.entries())
      if (isOfAnotherPart(tokens[i - 1], token)) asName(token, this.tokenTypes['ID']);
    const whole = withoutBareColours(tokens);
    return { tokens: whole.tokens, errors: [...errors, ...strays, ...whole.errors], hidden: [] };
  }

  private startsOfRows(): RowStarts {
    const patternOf = patternsOf(this.services.Grammar);
    const records = ['Reline', 'PanelsMoved', 'ScrewChange', undefined];
    return {
      look: patternOf.inside('Inspection').first,
      record: new Set(records.flatMap((block) => [...patternOf.inside(block).first])),
    };
  }

  private stray(
    text: string,
    { startOffset: offset, startLine: line, startColumn: column, image }: IToken,
  ): ILexingError {
    const message = this.errorMessageProvider.buildUnexpectedCharactersMessage(
      text,
      offset,
      image.length,
      line,
      column,
    );
    return { offset, line, column, length: image.length, message };
  }
}

function isOfAnotherPart(part: IToken | undefined, { tokenType, startLine }: IToken): boolean {
  return (
    part?.startLine === startLine &&
    (tokenType.name === 'bolts loose' || tokenType.name === 'bolts missing') &&
    boltedTogether.has(part?.tokenType.name ?? '')
  );
}

/** Parts of the drive, whose bolts have no words of their own. */
const boltedTogether: ReadonlySet<string> = new Set([
  'gearbox',
  'motor',
  'coupling',
  'tail bearing',
  'thrust bearing',
]);

function asName(token: IToken, name: TokenType | undefined): void {
  if (!name) return;
  token.tokenType = name;
  token.tokenTypeIdx = name.tokenTypeIdx ?? token.tokenTypeIdx;
}

/** A quoted text is taken as it stands, but for hidden characters: a backslash is a backslash (`photos\\north.jpg`). */
export class TroughlineValues extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, node: CstNode): ValueType {
    return rule.name === 'STRING' ? visibleText(input.slice(1, -1)) : super.runConverter(rule, input, node);
  }
}
