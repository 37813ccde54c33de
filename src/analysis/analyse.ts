// Texts in, estate and findings out: the one way in for the command line, and for everything that needs the whole answer once.
// Same texts, same answer, in whatever order they come. An editor keeps a workspace (workspace.ts) instead.

import { createWorkspace } from './workspace.js';
import type { SourceText, Analysis, AnalyseOptions } from './analysis.js';

/** Two texts of one name count as one: the later. */
export function analyse(texts: readonly SourceText[], options: AnalyseOptions = {}): Analysis {
  const workspace = createWorkspace(options.photos);
  for (const { uri, text } of texts) workspace.set(uri, { text });
  return workspace.analyse(options);
}
