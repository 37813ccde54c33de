// The server in a web worker: the client reads the files, everything else is the same.

import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { makeAnalyser } from './analyser.js';
import { clientFiles } from './files.js';
import { startServer } from './server.js';

// In a worker the global object is a port to the page; the DOM library types it as a window.
const port = globalThis as unknown as MessagePort;

const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port));
startServer(connection, { makeAnalyser, files: () => clientFiles(connection) });
