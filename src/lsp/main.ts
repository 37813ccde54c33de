// The server as a process of its own: standard input and output for any editor, IPC for VS Code.

import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { createConnection, ProposedFeatures, type Connection } from 'vscode-languageserver/node';
import { makeAnalyser } from './analyser.js';
import { backgroundHere, type Background } from './background.js';
import { clientFiles } from './files.js';
import { nodeFiles, pagePhotosOnDisk, photosOnDisk } from './node-files.js';
import { nodeSolver } from '../solver/node-solver.js';
import { gitRevisions } from './node-revisions.js';
import { startServer } from './server.js';

/** Serves one editor on standard input and output; the exit code once the editor has said goodbye. */
export function serveStdio(): Promise<number> {
  const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
  return serve(
    connection,
    backgroundHere(nodeSolver, undefined, pagePhotosOnDisk),
    rulePagesBeside(process.argv[1]),
  );
}

/** Serves over whatever the editor named on the command line: --node-ipc, --stdio, --socket. */
export function serveAsAsked(background: Background): Promise<number> {
  return serve(createConnection(ProposedFeatures.all), background);
}

/** The build puts the pages into `rules` beside the program; without a build there are none. */
function rulePagesBeside(program: string | undefined): string | undefined {
  if (program === undefined || !existsSync(program)) return undefined;
  const folder = path.join(path.dirname(realpathSync(program)), 'rules');
  return existsSync(folder) ? pathToFileURL(folder).href : undefined;
}

function serve(connection: Connection, background: Background, rulePages?: string): Promise<number> {
  return new Promise((resolve) => {
    const server = startServer(connection, {
      makeAnalyser: () => makeAnalyser(photosOnDisk),
      background,
      revisions: gitRevisions,
      ...(rulePages === undefined ? {} : { rulePages }),
      files: ({ reads }) => nodeFiles(reads ? clientFiles(connection) : undefined),
    });
    connection.onExit(() => resolve(server.askedToStop() ? 0 : 1));
  });
}
