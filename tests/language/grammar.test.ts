// The grammar itself: two words ahead tell everything apart, which the services then take for granted.

import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  createLangiumParser,
  EmptyFileSystem,
  inject,
} from 'langium';
import { expect, it } from 'vitest';
import {
  TroughlineGeneratedModule,
  TroughlineGeneratedSharedModule,
} from '../../src/language/generated/module.js';
import { TroughlineModule } from '../../src/language/module.js';

it('is told apart by two words ahead, without one alternative hiding another', () => {
  const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), TroughlineGeneratedSharedModule);
  // The generated metadata stands last, so that the parser checks itself while it is built.
  const { LanguageMetaData } = TroughlineGeneratedModule;
  const services = inject(createDefaultCoreModule({ shared }), TroughlineGeneratedModule, TroughlineModule, {
    LanguageMetaData,
  });
  expect(services.LanguageMetaData.mode).toBe('development');
  expect(services.parser.ParserConfig?.maxLookahead).toBe(2);
  expect(() => createLangiumParser(services)).not.toThrow();
});
