// The findings of an analysis with their places in words, as tables hold them.

import { findingKeys } from '../analysis/finding-keys.js';
import type { Analysis } from '../analysis/analysis.js';
import type { ToldFinding } from '../generators/tables/findings.js';
import { repositoryName } from './build-server.js';
import type { Console } from './console.js';
import { fingerprintOf } from './fingerprint.js';

export function toldFindings(analysis: Analysis, console: Console): readonly ToldFinding[] {
  const keys = findingKeys(analysis, analysis.findings);
  return analysis.findings.map((finding, i) => {
    const { uri, line } = analysis.locate(finding.origin);
    return {
      ...finding,
      file: repositoryName(uri, console),
      line,
      fingerprint: fingerprintOf(keys[i] ?? ''),
    };
  });
}
