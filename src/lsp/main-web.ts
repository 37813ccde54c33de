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
} from './background.js';
import { clientFiles } from './files.js';
import { startServer } from './server.js';

// In a worker the global object is a port to whoever made it; the DOM library types it as a window.
const own = globalThis as unknown as MessagePort & { readonly name: string; readonly location: Location };
const backgroundName = 'troughline-background';

if (own.name === backgroundName) {
  serveBackground(portOf(own), makeAnalyser);
} else {
  const connection = createConnection(new BrowserMessageReader(own), new BrowserMessageWriter(own));
  startServer(connection, {
    makeAnalyser,
    background: startBackground(),
    files: () => clientFiles(connection),
  });
}

function startBackground(): Background {
  try {
    const worker = new Worker(own.location.href, { name: backgroundName });
    return backgroundThere({ ...portOf(worker), end: () => worker.terminate() });
  } catch {
    return backgroundHere(); // a browser that allows no worker within a worker
  }
}

function portOf(end: Pick<MessagePort, 'postMessage' | 'addEventListener'>): Port {
  return {
    send: (message) => end.postMessage(message),
    listen: (receive) => end.addEventListener('message', (event) => receive(event.data)),
    end: () => undefined,
  };
}
