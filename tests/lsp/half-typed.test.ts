// A text is half typed most of the time. Cut anywhere, with a word dropped or a stray sign put in, every feature still
// answers: it may know less, it never fails.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../src/language/format.js';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { createSession, type Session } from '../../src/lsp/session.js';
import { codeActions } from '../../src/lsp/providers/code-action-provider.js';
import { codeLenses } from '../../src/lsp/providers/code-lens-provider.js';
import { completion } from '../../src/lsp/providers/completion-provider.js';
import { definition } from '../../src/lsp/providers/definition-provider.js';
import { diagnosticsOf } from '../../src/lsp/providers/diagnostic-provider.js';
import { foldingRanges } from '../../src/lsp/providers/folding-range-provider.js';
import { formatting } from '../../src/lsp/providers/formatting-provider.js';
import { highlights } from '../../src/lsp/providers/document-highlight-provider.js';
import { hover } from '../../src/lsp/providers/hover-provider.js';
import { inlayHints } from '../../src/lsp/providers/inlay-hint-provider.js';
import { documentLinks } from '../../src/lsp/providers/document-link-provider.js';
import { outline } from '../../src/lsp/providers/document-symbol-provider.js';
import { references } from '../../src/lsp/providers/references-provider.js';
import { selectionRanges } from '../../src/lsp/providers/selection-range-provider.js';
import { semanticTokens } from '../../src/lsp/providers/semantic-token-provider.js';
import { workspaceSymbols } from '../../src/lsp/providers/workspace-symbol-provider.js';
import { conveyor, files, inspection, job, plant } from './estate.js';
import { applied } from './session.js';

const whole = [plant, conveyor, inspection, job].join('\n');
const strays = [
  '',
  '{',
  '}',
  '"',
  '/*',
  '//',
  '±',
  '12',
  'mm',
  'at',
  'point ',
  '\u00e9\ud83d\ude00',
  '\r\n',
  '\0',
];

function sessionWith(text: string): Session {
  const session = createSession(makeAnalyser());
  for (const [name, each] of Object.entries(files)) session.put(`file:///estate/${name}`, each);
  session.open('file:///estate/half.trough', text, 1);
  return session;
}

describe('a half-typed text', () => {
  it('gets an answer from every feature, wherever the cursor stands', () => {
    const place = fc.nat({ max: whole.length });
    fc.assert(
      fc.property(place, place, fc.constantFrom(...strays), place, (start, length, stray, at) => {
        const text =
          whole.slice(start, start + length) + stray + whole.slice(start + length + 7, start + length + 200);
        const session = sessionWith(text);
        const half = session.document('file:///estate/half.trough');
        if (!half) throw new Error('the session lost its text');
        const position = half.positionAt(at % (text.length + 1));
        const range = half.range(0, text.length);
        hover(session, half, position);
        completion(session, half, position);
        definition(session, half, position);
        references(session, half, position, true);
        highlights(session, half, position);
        outline(half);
        foldingRanges(half);
        selectionRanges(half, [position]);
        semanticTokens(session, half);
        codeLenses(session, half);
        inlayHints(session, half, range);
        documentLinks(half);
        workspaceSymbols(session, 'dg');
        diagnosticsOf(session, half.uri);
        codeActions(session, half, { textDocument: { uri: half.uri }, range, context: { diagnostics: [] } });
        const tidy = applied(text, formatting(half));
        expect(tidy).toBe(formatText(text));
      }),
      { numRuns: 120 },
    );
  });
});
