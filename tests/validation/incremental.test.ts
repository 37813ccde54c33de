// What rules keep between keystrokes never goes stale: an estate edited from one example to the other, a block a file, gives
// what a fresh look at it gives.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { createWorkspace } from '../../src/analysis/workspace.js';
import { rules } from '../../src/validation/catalogue.js';
import { exampleOf } from '../../src/validation/example.js';
import type { SourceText } from '../../src/analysis/analysis.js';

/** Each top-level block in a file of its own, the same blocks always under the same names. */
function files(text: string): readonly SourceText[] {
  const seen = new Map<string, number>();
  return text
    .split(/\n(?=[a-z])/)
    .filter((block) => block.trim() !== '')
    .map((block) => {
      const head = /^\s*(\S+(?: change)? \S+)/.exec(block)?.[1] ?? 'block';
      const number = (seen.get(head) ?? 0) + 1;
      seen.set(head, number);
      return { uri: `${head.replaceAll(' ', '-')}-${number}.trough`, text: block };
    });
}

test.each(rules.map((rule) => [rule.code, rule] as const))(
  '%s: edited from right to wrong and back',
  (_, rule) => {
    const [good, bad] = [files(exampleOf(rule, 'good').text), files(exampleOf(rule, 'bad').text)];
    const workspace = createWorkspace();
    let before: readonly SourceText[] = [];
    for (const now of [good, bad, good, bad]) {
      for (const { uri } of before) if (!now.some((file) => file.uri === uri)) workspace.delete(uri);
      for (const { uri, text } of now) workspace.set(uri, { text });
      before = now;
      const edited = workspace.analyse();
      const fresh = analyse(now);
      const said = (analysis: typeof fresh): string[] =>
        analysis.findings.map((finding) => {
          const { uri, line, column } = analysis.locate(finding.origin);
          return `${uri}:${line}:${column} ${finding.code} ${finding.message}`;
        });
      expect(said(edited)).toEqual(said(fresh));
    }
  },
);
