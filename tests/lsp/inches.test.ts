// In the editor a machine in inches is told about in inches and feet: every word of an estate is hovered over, and every hint and
// lens is read.

import { readFileSync } from 'node:fs';
import { afterEach, expect, it } from 'vitest';
import type { CodeLens, Hover, InlayHint } from 'vscode-languageserver-protocol';
import { metricLengths } from '../kit/to-inches.js';
import { startSession, type Session } from './session.js';

let session: Session;
afterEach(async () => session.end());

const example = readFileSync(new URL('../../examples/2-inches/inches.trough', import.meta.url), 'utf8');
const more = `
inspection SC7 2026-10-20 meter 12400 h {
  view downstream
  gauge ultrasonic ± 0.008 in
  P1 thickness 0.26 in
  at 20 ft clock 5:00 thickness 0.31 in
  at 22 ft clock 5:00 colour teal
  worn at 10 ft clock 5:00 to 7:00
  panel missing at 20 ft serious
  plate at 20 ft thickness 0.17 in
  flight at 6 ft depth 2.5 in
}
reline SC7 2026-11-02 meter 12700 h {
  liner TwoLayerHalf
  scope run 1
}
job Winter {
  conveyor SC7
  outage Spring27
  reline all
  crews Alpha
}
`;

/** What a manual shows in code, and a number in other units, is no size of the machine. */
const spoken = (text: string): string =>
  text
    .replace(/`[^`]*`/g, '')
    .split('\n')
    .filter((line) => !/\d \S+ = \d/.test(line))
    .join('\n');

it('a machine in inches has hovers, hints and lenses in inches', async () => {
  const text = example + more;
  session = await startSession({ 'inches.trough': text });
  await session.settled();
  const ask = async <T>(method: string, params: object = {}): Promise<T> =>
    session.client.sendRequest(method, { textDocument: { uri: session.uri('inches.trough') }, ...params });
  const told = new Set<string>();
  for (const [line, words] of text.split('\n').entries())
    for (const { index } of words.matchAll(/[\w.]+/g)) {
      const answer = await ask<Hover | null>('textDocument/hover', { position: { line, character: index } });
      const { value } = (answer?.contents ?? { value: '' }) as { value: string };
      for (const each of metricLengths(spoken(value))) told.add(`${line + 1}: ${each}`);
    }
  const whole = { start: { line: 0, character: 0 }, end: { line: text.split('\n').length, character: 0 } };
  const hints = await ask<InlayHint[]>('textDocument/inlayHint', { range: whole });
  for (const { label, tooltip } of hints)
    for (const each of metricLengths(`${JSON.stringify(label)} ${JSON.stringify(tooltip ?? '')}`))
      told.add(each);
  const lenses = await ask<CodeLens[]>('textDocument/codeLens');
  for (const { command } of lenses) for (const each of metricLengths(command?.title ?? '')) told.add(each);
  expect(hints.length).toBeGreaterThan(3);
  expect(lenses.length).toBeGreaterThan(1);
  expect([...told]).toEqual([]);
});
