// Every threshold can be set: its usual value written out changes nothing, and some other value takes away what the rule's own
// example reports. What `explain` says of it is what can be written.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { rules } from '../../src/validation/catalogue.js';
import { exampleOf } from '../../src/validation/example.js';
import { explain, explainInMarkdown } from '../../src/validation/explain.js';
import type { Rule } from '../../src/validation/rule.js';
import { valueOf } from '../../src/validation/threshold.js';

const settable = rules.filter(({ threshold }) => threshold !== undefined);

/** Findings of the rule in its bad example, with this line in the plant. */
function findings(rule: Rule, line?: string): readonly string[] {
  const { text } = exampleOf(rule, 'bad');
  const set = line === undefined ? text : text.replace(/(plant \w+ "[^"]*" \{\n)/, `$1  ${line}\n`);
  if (line !== undefined) expect(set).not.toBe(text);
  return analyse([{ uri: 'estate.trough', text: set }])
    .findings.filter(({ code }) => code === rule.code)
    .map(({ message }) => message);
}

/** `8 m` by another factor: `0.8 m`, `80 m`. */
const scaled = (usual: string, by: number): string =>
  usual.replace(/^[\d.]+/, (number) => String(Number((Number(number) * by).toPrecision(6))));

describe('a threshold', () => {
  test('is there for more than twenty rules', () => {
    expect(settable.length).toBeGreaterThan(20);
  });

  test.each(settable.map((rule) => [rule.code, rule] as const))('of %s moves its finding', (code, rule) => {
    const { usual } = rule.threshold!; // settable
    expect(typeof valueOf(usual, rule.threshold!)).toBe('number');
    const before = findings(rule);
    expect(before.length).toBeGreaterThan(0);
    expect(findings(rule, `threshold ${code} ${usual}`)).toEqual(before);
    const quiet = [1.5, 4, 200, 0.5, 0.1, 0].filter(
      (by) => findings(rule, `threshold ${code} ${scaled(usual, by)} "agreed with the maker"`).length === 0,
    );
    expect(quiet.length).toBeGreaterThan(0);
    expect(quiet.length).toBeLessThan(6);
  });

  test('is told by explain, with its basis and how to set it', () => {
    for (const rule of settable) {
      const { usual, basis, what } = rule.threshold!; // settable
      for (const text of [explain(rule.code)?.replace(/\s+/g, ' '), explainInMarkdown(rule.code)]) {
        expect(text).toContain(`Threshold: ${usual}. ${what}`);
        expect(text).toContain(basis);
        expect(text).toContain(`\`threshold ${rule.code} ${usual} "why"\``);
      }
    }
    expect(explain('TL302')).not.toContain('Threshold:');
  });

  test('holds for the machines of its own plant only', () => {
    const rule = settable.find(({ code }) => code === 'TL261')!; // it is there, by the test above
    const { text } = exampleOf(rule, 'bad');
    const other = `${text}\nplant Elsewhere "another works" {\n  duty 80 h/week\n  threshold TL261 20 m\n}\n`;
    const codes = analyse([{ uri: 'estate.trough', text: other }]).findings.map(({ code }) => code);
    expect(codes).toContain('TL261');
  });
});
