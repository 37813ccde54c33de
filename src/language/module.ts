// The language's services without an editor: the command line and the analysis use these, the server adds its own on top.

import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  EmptyFileSystem,
  inject,
  type DefaultSharedCoreModuleContext,
  type LangiumCoreServices,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
} from 'langium';
import {
  TroughlineGeneratedModule,
  TroughlineGeneratedSharedModule,
  TroughlineLanguageMetaData,
} from './generated/module.js';
import { TroughlineLexerMessages, TroughlineParserMessages } from './messages.js';
import { TroughlineLexer, TroughlineValues } from './lexer.js';
import { createTroughlineParser } from './parser.js';
import { TroughlineTokenBuilder } from './tokens.js';

export type TroughlineServices = LangiumCoreServices;

export const TroughlineModule: Module<TroughlineServices, PartialLangiumCoreServices> = {
  // Checked when the grammar changes (tests/language/grammar.test.ts), so every start is spared the check.
  LanguageMetaData: () => ({ ...TroughlineLanguageMetaData, mode: 'production' }),
  parser: {
    // Two words ahead tell everything apart in this grammar, which is quicker than langium's unlimited look ahead.
    ParserConfig: () => ({ maxLookahead: 2 }),
    TokenBuilder: () => new TroughlineTokenBuilder(),
    LangiumParser: (services) => createTroughlineParser(services),
    Lexer: (services) => new TroughlineLexer(services),
    ValueConverter: () => new TroughlineValues(),
    ParserErrorMessageProvider: () => new TroughlineParserMessages(),
    LexerErrorMessageProvider: () => new TroughlineLexerMessages(),
  },
};

/** Services for texts given in memory; pass a context with a file system to read from disk. */
export function createTroughlineServices(context: DefaultSharedCoreModuleContext = EmptyFileSystem): {
  shared: LangiumSharedCoreServices;
  troughline: TroughlineServices;
} {
  const shared = inject(createDefaultSharedCoreModule(context), TroughlineGeneratedSharedModule);
  const troughline = inject(createDefaultCoreModule({ shared }), TroughlineGeneratedModule, TroughlineModule);
  shared.ServiceRegistry.register(troughline);
  return { shared, troughline };
}
