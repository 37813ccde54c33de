// Entry of the bundled server that the VS Code extension starts as a process.

import { serveAsAsked } from './main.js';

void serveAsAsked().then((code) => {
  process.exitCode = code;
});
