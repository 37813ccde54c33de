// The server in a web worker: the client reads the files, everything else is the same. The script starts a second worker of
// itself for pages and forecasts; a first word tells that one what it is.

import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { makeAnalyser } from './analyser.js';
import {
  backgroundHere,
  backgroundThere,
  serveBackground,
  type Background,
  type Port,
  type SolverBytes,
} from './background.js';
import type { ProgrammeSolver } from '../domain/decision/integer-programme.js';
import { readSolver, type ReadSolverAnswer } from '../protocol/messages.js';
import { clientFiles } from './files.js';
import { startServer } from './server.js';

// In a worker the global object is a port to whoever made it; the DOM library types it as a window.
const own = globalThis as unknown as MessagePort & { readonly name: string; readonly location: Location };
const backgroundName = 'troughline-background';

if (own.name === backgroundName) {
  serveBackground(portOf(own), makeAnalyser, loadSolver);
} else {
  const connection = createConnection(new BrowserMessageReader(own), new BrowserMessageWriter(own));
  startServer(connection, {
    makeAnalyser,
    background: startBackground(() => connection.sendRequest<ReadSolverAnswer>(readSolver)),
    files: () => clientFiles(connection),
  });
}

/** Its binary comes from the client, since a worker made of a blob has no folder of its own. */
async function loadSolver(bytes: SolverBytes | undefined): Promise<ProgrammeSolver> {
  if (!bytes) throw new Error('the client gave no solver');
  const { highsSolver } = await import('../solver/highs.js');
  return highsSolver(bytes);
}

function startBackground(readBytes: () => Promise<SolverBytes>): Background {
  try {
    const worker = new Worker(own.location.href, { name: backgroundName });
    return backgroundThere({ ...portOf(worker), end: () => worker.terminate() }, readBytes);
  } catch {
    return backgroundHere(loadSolver, readBytes); // a browser that allows no worker within a worker
  }
}

function portOf(end: Pick<MessagePort, 'postMessage' | 'addEventListener'>): Port {
  return {
    send: (message) => end.postMessage(message),
    listen: (receive) => end.addEventListener('message', (event) => receive(event.data)),
    end: () => undefined,
  };
}
