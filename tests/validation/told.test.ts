// How rules are told to people and to machines.

import { describe, expect, test } from 'vitest';
import { codesLike, explain, explainInMarkdown, listRules } from '../../src/validation/explain.js';
import { rules } from '../../src/validation/catalogue.js';
import { levelOf, ruleDescriptors } from '../../src/validation/descriptors.js';
import { summarise } from '../../src/validation/summary.js';

describe('explain', () => {
  test.each(rules.map((rule) => [rule.code, rule] as const))(
    '%s in plain text: title, reason, advice, both examples, no marks, no long lines',
    (code, rule) => {
      const text = explain(code) ?? '';
      expect(text.startsWith(`${code} ${rule.title} (${rule.severity})\n`)).toBe(true);
      expect(text).toContain('Why it matters: ');
      expect(text).toContain('What to do: ');
      expect(text).not.toMatch(/[«»]|\n\n\n/);
      const prose = text.slice(0, text.indexOf('\nReported:')).split('\n');
      for (const line of prose) expect(line.length).toBeLessThanOrEqual(88);
    },
  );

  test('takes a code in any letter case, and knows when there is none', () => {
    expect(explain('tl402')).toBe(explain('TL402'));
    expect(explain('TL999')).toBeUndefined();
    expect(explainInMarkdown('nonsense')).toBeUndefined();
    expect(codesLike('tl40')).toContain('TL402');
  });

  test('in Markdown fences its examples and closes every fence', () => {
    for (const rule of rules)
      expect((explainInMarkdown(rule.code)?.match(/```/g) ?? []).length, rule.code).toBe(4);
  });

  test('lists every rule on a line', () => {
    expect(listRules().trimEnd().split('\n')).toHaveLength(rules.length);
  });
});

describe('descriptors', () => {
  test('name every rule in PascalCase, with help and the level of SARIF 2.1.0', () => {
    const descriptors = ruleDescriptors();
    expect(descriptors.map((one) => one.id)).toEqual(rules.map((rule) => rule.code));
    for (const { name, shortDescription, help, defaultLevel } of descriptors) {
      expect(name).toMatch(/^[A-Z][A-Za-z0-9]+$/);
      expect(shortDescription).toMatch(/\.$/);
      expect(help.text.length).toBeGreaterThan(80);
      expect(['error', 'warning', 'note']).toContain(defaultLevel);
    }
    expect(new Set(descriptors.map((one) => one.name)).size).toBe(descriptors.length);
    expect(levelOf('information')).toBe('note');
  });
});

describe('summary', () => {
  test('counts and says', () => {
    expect(summarise([]).text).toBe('no findings');
    expect(summarise([{ severity: 'error' }, { severity: 'error' }, { severity: 'information' }])).toEqual({
      error: 2,
      warning: 0,
      information: 1,
      total: 3,
      text: '2 errors, 1 note',
    });
    expect(summarise([{ severity: 'warning' }]).text).toBe('1 warning');
  });
});
