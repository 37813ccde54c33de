// Every rule's own right example, with one of its lines unreadable: the line is told, and nothing else is that was not told before.
// So a rule that speaks of what is not written says in `restsOn` what it would have to know.

import { expect, it } from 'vitest';
import { createWorkspace } from '../../src/analysis/workspace.js';
import { rules } from '../../src/validation/catalogue.js';
import { exampleOf, inSoundEstate } from '../../src/validation/example.js';

/** A stray word behind it, its first word misspelt, its last word lost; two of them a line. */
const damages: readonly ((line: string) => string)[] = [
  (line) => `${line} about`,
  (line) => line.replace(/[a-z-]{4,}/, (word) => word.slice(0, 2) + word.slice(3)),
  (line) => line.replace(/(\S\s+\S.*)\s+\S+$/, '$1'),
];

/** Lines of the sound estate, taken with the first rule; and of steps, which many examples share, once. */
const usual = new Set(
  inSoundEstate('estate', '')
    .split('\n')
    .map((line) => line.trim()),
);
it('one line that cannot be read is told alone', () => {
  const told: string[] = [];
  let judged = 0;
  for (const rule of rules) {
    const { text } = exampleOf(rule, 'good');
    const workspace = createWorkspace();
    const analysed = (of: string): ReturnType<typeof workspace.analyse> => {
      workspace.set('a.trough', { text: of });
      return workspace.analyse();
    };
    const before = analysed(text).findings.map(({ code }) => code);
    const lines = text.split('\n');
    for (const [at, line] of lines.entries()) {
      const plain = line.trim();
      if (!/^\w/.test(plain) || (rule !== rules[0] && usual.has(plain))) continue;
      if (/^TL(4|55)/.test(rule.code)) usual.add(plain);
      for (const damage of damages.filter((_, way) => way !== at % damages.length)) {
        const damaged = damage(line);
        if (damaged === line || (line.endsWith('{') && damage !== damages[1])) continue;
        const analysis = analysed(lines.with(at, damaged).join('\n'));
        const lineOf = (finding: (typeof analysis.findings)[number]): number =>
          analysis.locate(finding.origin).line - 1;
        const isError = analysis.findings.some(
          (finding) =>
            finding.code.startsWith('TL1') && finding.severity === 'error' && lineOf(finding) === at,
        );
        if (!isError) continue;
        judged++;
        const left = [...before];
        for (const finding of analysis.findings) {
          const known = left.indexOf(finding.code);
          if (known >= 0) left.splice(known, 1);
          else if (lineOf(finding) !== at)
            told.push(`${rule.code}, ${damaged.trim()}: ${finding.code} ${finding.message}`);
        }
      }
    }
  }
  expect(told).toEqual([]);
  expect(judged).toBeGreaterThan(700);
});
