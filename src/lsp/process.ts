// Entry of the bundled server that the VS Code extension starts as a process; the same bundle is its own worker.

import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { makeAnalyser } from './analyser.js';
import { backgroundThere, serveBackground, type Port } from './background.js';
import { nodeSolver } from '../solver/node-solver.js';
import { serveAsAsked } from './main.js';
import { pagePhotosOnDisk } from './node-files.js';

if (isMainThread) {
  const worker = new Worker(__filename);
  worker.unref();
  const port: Port = {
    send: (message) => worker.postMessage(message),
    listen: (receive) => worker.on('message', receive),
    end: () => void worker.terminate(),
  };
  void serveAsAsked(backgroundThere(port)).then((code) => {
    process.exitCode = code;
  });
} else if (parentPort) {
  const parent = parentPort;
  serveBackground(
    {
      send: (message) => parent.postMessage(message),
      listen: (receive) => parent.on('message', receive),
      end: () => parent.close(),
    },
    makeAnalyser,
    nodeSolver,
    pagePhotosOnDisk,
  );
}
