// The real analysis behind the session: the workspace of src/analysis, which re-reads only the text that changed.

import type { PhotoLook } from '../analysis/analysis.js';
import { createWorkspace } from '../analysis/workspace.js';
import type { Analyser } from './session.js';

export function makeAnalyser(photos?: PhotoLook): Analyser {
  const workspace = createWorkspace(photos);
  return {
    set: (uri, text) => workspace.set(uri, { text }),
    delete: (uri) => workspace.delete(uri),
    analyse: () => workspace.analyse(),
  };
}
