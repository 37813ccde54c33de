// The programme over all outages in the editor: as a page of its own and in the report, with the solver loaded when it is first
// asked for, from the disk or from bytes that the client hands over (in a browser).

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterEach, describe, expect, it } from 'vitest';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { backgroundHere, backgroundThere, serveBackground, type Port } from '../../src/lsp/background.js';
import { createSession, type Session as Texts } from '../../src/lsp/session.js';
import { makePreview, type MakePreviewAnswer } from '../../src/protocol/messages.js';
import { highsSolver } from '../../src/solver/highs.js';
import { startSession, type Session } from './session.js';

const sample = readFileSync(new URL('../language/every-fact.trough', import.meta.url), 'utf8');
const estate = { 'estate.trough': sample.slice(0, sample.indexOf('\njob ')) };
const never = { isCancellationRequested: false, onCancellationRequested: () => undefined };

let session: Session | undefined;
afterEach(async () => {
  await session?.end();
  session = undefined;
});

function texts(): Texts {
  const made = createSession(makeAnalyser());
  for (const [name, text] of Object.entries(estate)) made.put(`file:///estate/${name}`, text);
  return made;
}

function shown(answer: MakePreviewAnswer | undefined): string {
  if (!answer?.ok) throw new Error(answer?.reason ?? 'cancelled');
  return answer.html;
}

describe('the programme', () => {
  it('is a page of its own: lines, bars, months and what more would save', async () => {
    session = await startSession(estate);
    const answer = await session.client.sendRequest<MakePreviewAnswer>(makePreview, { kind: 'programme' });
    const html = shown(answer);
    expect(answer).toMatchObject({ title: 'Programme over all outages' });
    for (const words of [
      'Programme of Tarnholt over all outages',
      'DG1',
      'CP3',
      'By month',
      'What more would save',
    ])
      expect(html).toContain(words);
    expect(html).toMatch(/<svg[^>]*>[^]*Crew hours by outage/);
    expect(html).not.toMatch(/<script/i);
  });

  it('says why there is none where no outage is declared', async () => {
    session = await startSession({
      'estate.trough': estate['estate.trough'].replace(/^  outage .*\n/gm, ''),
    });
    expect(await session.client.sendRequest(makePreview, { kind: 'programme' })).toEqual({
      ok: false,
      reason: 'No conveyor is due before the last outage, or no outage is declared.',
    });
  });

  it('comes from a worker to which the client’s bytes are handed once, and stands in the report too', async () => {
    const [near, far] = ports();
    const binary = readFileSync(createRequire(import.meta.url).resolve('highs/runtime'));
    let read = 0;
    serveBackground(far, makeAnalyser, async (bytes) => {
      if (!bytes) throw new Error('no bytes');
      return highsSolver(bytes);
    });
    const background = backgroundThere(near, async () => {
      read += 1;
      return new Uint8Array(binary);
    });
    const of = texts();
    const programme = shown(await background.preview(of, { kind: 'programme' }, never));
    const report = shown(await background.preview(of, { kind: 'report' }, never));
    expect(read).toBe(1);
    const lead = /<p class="lead">(Reline[^<]*|No outage[^<]*)<\/p>/.exec(programme)?.[1];
    expect(lead).toBeDefined();
    expect(report).toContain(lead);
  });

  it('is refused, and the report goes without it, where the solver cannot be loaded', async () => {
    const background = backgroundHere(async () => Promise.reject(new Error('no such file')));
    const of = texts();
    expect(await background.preview(of, { kind: 'programme' }, never)).toMatchObject({ ok: false });
    expect(shown(await background.preview(of, { kind: 'report' }, never))).toContain(
      'this page is made without it',
    );
  });
});

/** Two ends of a line, a turn apart. */
function ports(): readonly [Port, Port] {
  const heard: ((message: unknown) => void)[][] = [[], []];
  const end = (own: 0 | 1): Port => ({
    send: (message) => void setTimeout(() => heard[1 - own]?.forEach((listen) => listen(message)), 0),
    listen: (receive) => void heard[own]?.push(receive),
    end: () => undefined,
  });
  return [end(0), end(1)];
}
