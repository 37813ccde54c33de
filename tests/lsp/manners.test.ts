// The manners of the protocol: what was cancelled is not worked out, nothing is answered after shutdown, edits name the version
// of the text they were made for, and a file that was renamed under an open tab is one file.

import { describe, expect, it } from 'vitest';
import {
  CancellationTokenSource,
  DidRenameFilesNotification,
  FileChangeType,
  HoverRequest,
  LSPErrorCodes,
  RenameRequest,
  ShutdownRequest,
} from 'vscode-languageserver-protocol/node';
import { backgroundThere, serveBackground, type Port } from '../../src/lsp/background.js';
import { createSession, type Analyser } from '../../src/lsp/session.js';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { listSubjects, makePreview, type ListSubjectsAnswer } from '../../src/protocol/messages.js';
import { at, root, startSession } from './session.js';

const plant = 'plant Tarnholt {\n  duty 110 h/week\n}\n';
const screw = 'screw Spiral400 {\n  shaftless\n  outside diameter 400 mm\n  pitch 400 mm\n}\n';
const codeOf = async (answer: Promise<unknown>): Promise<unknown> =>
  answer.then(
    () => 'answered',
    (fault: { code?: number }) => fault.code,
  );

describe('a request that is cancelled', () => {
  it('is answered as cancelled', async () => {
    const session = await startSession({ 'a.trough': plant });
    session.open('a.trough');
    await session.settled();
    const source = new CancellationTokenSource();
    const hover = session.client.sendRequest(
      HoverRequest.type,
      { textDocument: { uri: session.uri('a.trough') }, position: at(plant, 'duty') },
      source.token,
    );
    source.cancel();
    expect(await codeOf(hover)).toBe(LSPErrorCodes.RequestCancelled);
    await session.end();
  });

  it('is not worked out in the worker, when it was still waiting there', async () => {
    let analysed = 0;
    const counting = (): Analyser => {
      const analyser = makeAnalyser();
      return { ...analyser, analyse: () => (analysed++, analyser.analyse()) };
    };
    const [here, there] = linkedPorts();
    serveBackground(there, counting);
    const background = backgroundThere(here);
    const session = createSession(makeAnalyser());
    session.put('file:///estate/a.trough', plant);
    const never = { isCancellationRequested: false, onCancellationRequested: () => undefined };
    const source = new CancellationTokenSource();
    const wanted = { kind: 'drawing', subject: 'DG1' } as const;
    const first = background.preview(session, wanted, never);
    const second = background.preview(session, wanted, source.token);
    source.cancel();
    expect(await first).toMatchObject({ ok: false });
    const before = analysed;
    expect(await second).toBeUndefined();
    expect(analysed).toBe(before);
  });
});

it('nothing is answered and nothing told after shutdown', async () => {
  const session = await startSession({ 'a.trough': plant });
  await session.settled();
  await session.client.sendRequest(ShutdownRequest.type);
  expect(await codeOf(session.client.sendRequest(listSubjects))).toBe(-32600);
  expect(await codeOf(session.client.sendRequest(makePreview, { kind: 'report' }))).toBe(-32600);
  session.client.end();
  session.client.dispose();
});

it('a rename names the version of every text, and none of a text that is not open', async () => {
  const conveyor = 'conveyor DG1 {\n  plant Tarnholt\n}\n';
  const session = await startSession(
    { 'a.trough': plant, 'b.trough': conveyor },
    { capabilities: { workspace: { workspaceEdit: { documentChanges: true } } } },
  );
  session.open('a.trough');
  session.change('a.trough', `\n${plant}`);
  await session.settled();
  const edit = await session.client.sendRequest(RenameRequest.type, {
    textDocument: { uri: session.uri('a.trough') },
    position: at(`\n${plant}`, 'Tarnholt'),
    newName: 'Ulm',
  });
  expect(edit?.changes).toBeUndefined();
  expect(edit?.documentChanges).toEqual([
    {
      textDocument: { uri: `${root}/a.trough`, version: 2 },
      edits: [expect.objectContaining({ newText: 'Ulm' })],
    },
    {
      textDocument: { uri: `${root}/b.trough`, version: null },
      edits: [expect.objectContaining({ newText: 'Ulm' })],
    },
  ]);
  await session.end();
});

describe('a file renamed under an open tab is no second file', () => {
  const codes = async (session: Awaited<ReturnType<typeof startSession>>, name: string): Promise<unknown[]> =>
    (await session.findings(name)).map(({ code }) => code).filter((code) => code === 'TL113');

  it('by the editor', async () => {
    const session = await startSession({ 'a.trough': screw });
    session.open('a.trough');
    await session.settled();
    session.disk.delete('a.trough');
    session.disk.set('b.trough', screw);
    session.open('b.trough');
    await session.client.sendNotification(DidRenameFilesNotification.type, {
      files: [{ oldUri: session.uri('a.trough'), newUri: session.uri('b.trough') }],
    });
    await session.settled();
    expect(await codes(session, 'b.trough')).toEqual([]);
    expect(await codes(session, 'a.trough')).toEqual([]);
    await session.end();
  });

  it('by another program, while the tab stays open; a key in the tab brings its text back', async () => {
    const session = await startSession({ 'a.trough': screw });
    session.open('a.trough');
    await session.settled();
    session.write('a.trough', undefined, FileChangeType.Deleted);
    session.write('b.trough', screw, FileChangeType.Created);
    await session.settled();
    expect(await codes(session, 'b.trough')).toEqual([]);
    session.change('a.trough', `${screw}\n`);
    await session.settled();
    expect(await codes(session, 'b.trough')).toEqual(['TL113']);
    await session.end();
  });

  it('and one that is written anew in place of the old keeps what is open in the editor', async () => {
    const session = await startSession({ 'a.trough': screw });
    session.open('a.trough', plant);
    await session.settled();
    session.write('a.trough', undefined, FileChangeType.Deleted);
    session.write('a.trough', screw, FileChangeType.Created);
    await session.settled();
    const { plants } = await session.client.sendRequest<ListSubjectsAnswer>(listSubjects);
    expect(plants.map(({ name }) => name)).toEqual(['Tarnholt']);
    await session.end();
  });
});

it('a merge conflict: the page says so, and names the file', async () => {
  const session = await startSession({
    'records/a.trough': `<<<<<<< HEAD\n${plant}=======\n>>>>>>> b\n`,
    'b.trough': screw,
  });
  await session.settled();
  expect(await session.client.sendRequest(makePreview, { kind: 'report' })).toEqual(
    expect.objectContaining({
      ok: false,
      reason: expect.stringContaining('a.trough holds a merge conflict'),
    }),
  );
  await session.end();
});

function linkedPorts(): [Port, Port] {
  const ears: ((message: unknown) => void)[][] = [[], []];
  const port = (own: number): Port => ({
    send: (message) => queueMicrotask(() => ears[1 - own]?.forEach((hear) => hear(structuredClone(message)))),
    listen: (hear) => void ears[own]?.push(hear),
    end: () => undefined,
  });
  return [port(0), port(1)];
}
