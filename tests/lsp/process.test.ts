// The server as another editor would start it: a process that speaks on standard input and output and ends when told.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it, vi } from 'vitest';
import {
  createProtocolConnection,
  ExitNotification,
  InitializedNotification,
  InitializeRequest,
  PublishDiagnosticsNotification,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';

it('reads a folder from the disk, tells its findings and what it could not read, and leaves with exit code 0', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'troughline-serve-'));
  writeFileSync(path.join(folder, 'b.trough'), Buffer.from([0xff, 0xfe, 0x00, 0x80]));
  writeFileSync(path.join(folder, 'a.trough'), 'plant Tarnholt {\n  duty 110 h/week\n  risk 5,5 %\n}\n');
  const server = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', 'serve', '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const left = new Promise<number | null>((resolve) => server.once('exit', resolve));
  try {
    const client = createProtocolConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    const told: string[] = [];
    client.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics: [first] }) => {
      told.push(`${path.basename(uri)}: ${String(first?.code ?? first?.message)}`);
    });
    client.listen();
    await client.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      capabilities: {},
      workspaceFolders: [{ uri: pathToFileURL(folder).toString(), name: 'estate' }],
    });
    await client.sendNotification(InitializedNotification.type, {});
    await vi.waitFor(
      () =>
        expect(told.sort()).toEqual([
          'a.trough: TL105',
          'b.trough: This file is not UTF-8 text. It is left out of the estate.',
        ]),
      { timeout: 50_000 },
    );
    await client.sendRequest(ShutdownRequest.type);
    await client.sendNotification(ExitNotification.type);
    expect(await left).toBe(0);
    client.dispose();
  } finally {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
});
