// TL101 sends its reader to the hover of the line's words: they answer on a line that cannot be read as on any other, and where the
// line breaks stands why that matters.

import { expect, test } from 'vitest';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { hover } from '../../src/lsp/providers/hover-provider.js';
import { createSession } from '../../src/lsp/session.js';
import { keywordDocOf } from '../../src/language/keyword-docs.js';
import { inSoundEstate } from '../../src/validation/example.js';

function hovered(line: string, words: string): string {
  const session = createSession(makeAnalyser());
  const text = inSoundEstate('inspection', `  ${line}`, {});
  session.put('file:///a.trough', text);
  const document = session.document('file:///a.trough');
  if (!document) throw new Error('the session lost its text');
  const answer = hover(session, document, document.positionAt(text.indexOf(line) + line.indexOf(words) + 1));
  return JSON.stringify(answer?.contents ?? '');
}

test.each([
  ['P1 thickness 8.4 mm wet serious', 'thickness', 'Reading'],
  ['gauge ultrasonic 0.2 mm', 'gauge', 'Gauge'],
  ['current loaded amps 5 A', 'loaded', 'MotorCurrent'],
  ['panel torn on 14 m', 'panel torn', 'ConditionKind'],
  ['flight at 3 m diameter 390 mm', 'flight', 'FlightReading'],
])('%s: %s says what it means', (line, word, rule) => {
  const meaning = keywordDocOf(rule, word)?.meaning;
  expect(meaning).toBeDefined();
  expect(hovered(line, word)).toContain(meaning);
});

test.each([
  ['P1 thickness 8.4 mm wet serious', 'wet'],
  ['panel torn on 14 m', 'on'],
  ['roof leaking', 'roof'],
])('%s: at %s stands why it matters', (line, word) =>
  expect(hovered(line, word)).toContain('What cannot be read is left out of every check'),
);
