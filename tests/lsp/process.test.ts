// The server as another editor would start it: a process that speaks on standard input and output and ends when told.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { createProtocolConnection, ExitNotification, InitializedNotification, InitializeRequest, PublishDiagnosticsNotification, ShutdownRequest, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node';

it('reads a folder from the disk, tells its findings, and leaves with exit code 0', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'troughline-serve-'));
  writeFileSync(path.join(folder, 'a.trough'), 'plant Tarnholt {\n  duty 110 h/week\n  risk 5,5 %\n}\n');
  const server = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', 'serve', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const left = new Promise<number | null>((resolve) => server.once('exit', resolve));
  try {
    const client = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
    const told = new Promise<string>((resolve) => {
      client.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => resolve(`${path.basename(uri)} ${String(diagnostics[0]?.code)}`));
    });
    client.listen();
    await client.sendRequest(InitializeRequest.type, { processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ uri: pathToFileURL(folder).toString(), name: 'estate' }] });
    await client.sendNotification(InitializedNotification.type, {});
    expect(await told).toBe('a.trough TL105');
    await client.sendRequest(ShutdownRequest.type);
    await client.sendNotification(ExitNotification.type);
    expect(await left).toBe(0);
    client.dispose();
  } finally {
    server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
});
