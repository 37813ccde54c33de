// A text is half typed most of the time. Cut anywhere, with a word dropped or a stray sign put in, every feature still
// answers: it may know less, it never fails.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatText } from '../../src/language/format.js';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { makeDesk, type Desk } from '../../src/lsp/desk.js';
import { codeActions } from '../../src/lsp/features/code-actions.js';
import { codeLenses } from '../../src/lsp/features/code-lens.js';
import { completion } from '../../src/lsp/features/completion.js';
import { definition } from '../../src/lsp/features/definition.js';
import { diagnosticsOf } from '../../src/lsp/features/diagnostics.js';
import { foldingRanges } from '../../src/lsp/features/folding.js';
import { formatting } from '../../src/lsp/features/formatting.js';
import { highlights } from '../../src/lsp/features/highlights.js';
import { hover } from '../../src/lsp/features/hover.js';
import { inlayHints } from '../../src/lsp/features/inlay-hints.js';
import { documentLinks } from '../../src/lsp/features/links.js';
import { outline } from '../../src/lsp/features/outline.js';
import { references } from '../../src/lsp/features/references.js';
import { selectionRanges } from '../../src/lsp/features/selection.js';
import { semanticTokens } from '../../src/lsp/features/tokens.js';
import { workspaceSymbols } from '../../src/lsp/features/workspace-symbols.js';
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

function deskWith(text: string): Desk {
  const desk = makeDesk(makeAnalyser());
  for (const [name, each] of Object.entries(files)) desk.put(`file:///estate/${name}`, each);
  desk.open('file:///estate/half.trough', text, 1);
  return desk;
}

describe('a half-typed text', () => {
  it('gets an answer from every feature, wherever the cursor stands', () => {
    const place = fc.nat({ max: whole.length });
    fc.assert(
      fc.property(place, place, fc.constantFrom(...strays), place, (start, length, stray, at) => {
        const text =
          whole.slice(start, start + length) + stray + whole.slice(start + length + 7, start + length + 200);
        const desk = deskWith(text);
        const half = desk.text('file:///estate/half.trough');
        if (!half) throw new Error('the desk lost its text');
        const position = half.positionAt(at % (text.length + 1));
        const range = half.range(0, text.length);
        hover(desk, half, position);
        completion(desk, half, position);
        definition(desk, half, position);
        references(desk, half, position, true);
        highlights(desk, half, position);
        outline(half);
        foldingRanges(half);
        selectionRanges(half, [position]);
        semanticTokens(desk, half);
        codeLenses(desk, half);
        inlayHints(desk, half, range);
        documentLinks(half);
        workspaceSymbols(desk, 'dg');
        diagnosticsOf(desk, half.uri);
        codeActions(desk, half, { textDocument: { uri: half.uri }, range, context: { diagnostics: [] } });
        const tidy = applied(text, formatting(half));
        expect(tidy).toBe(formatText(text));
      }),
      { numRuns: 120 },
    );
  });
});
