import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { rules, ruleOf, runRules } from '../../src/validation/catalogue.js';
import { caseOf, exampleOf } from '../../src/validation/example.js';
import type { Finding } from '../../src/validation/finding.js';
import type { Rule } from '../../src/validation/rule.js';
import { applied } from './edits.js';
import type { Analysis } from '../../src/analysis/analysis.js';

const all = rules.map((rule) => [`${rule.code} ${rule.title}`, rule] as const);

describe('codes', () => {
  test('are unique, and found in any letter case', () => {
    expect(new Set(rules.map((rule) => rule.code)).size).toBe(rules.length);
    expect(ruleOf('tl201')?.code).toBe('TL201');
    expect(ruleOf('TL999')).toBeUndefined();
  });

  test('are the ones once given out: each stays with its title, and none is taken away or used again', () => {
    // One line a code, in order: add a line for a new rule; a rule that is retired keeps its line with "(retired)".
    const given = readFileSync(new URL('./codes.txt', import.meta.url), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'));
    const codes = given.map((line) => line.slice(0, 5));
    expect(codes).toEqual([...new Set(codes)].sort());
    expect(given.filter((line) => !line.endsWith('(retired)'))).toEqual(
      rules.map((rule) => `${rule.code} ${rule.title}`).sort(),
    );
  });

  test('begin with the digit of their group', () => {
    expect(rules.filter((rule) => !/^TL[1-5]\d\d$/.test(rule.code))).toEqual([]);
  });
});

describe('every rule', () => {
  test.each(all)('%s: says why it matters and what to do', (_, rule) => {
    expect(rule.why.length).toBeGreaterThan(40);
    expect(rule.todo.length).toBeGreaterThan(20);
    expect(rule.title).toMatch(/^[A-Z]/);
    expect(rule.title).not.toMatch(/\.$/);
    for (const sentence of [rule.why, rule.todo]) expect(sentence).toMatch(/[.]$/);
  });

  test.each(all)('%s: its bad example gives exactly its own finding, at its marker', (_, rule) => {
    const { text, marker } = exampleOf(rule, 'bad');
    const { findings } = read(text, rule);
    expect(
      findings.map((finding) => `${finding.code} at ${finding.origin.start}–${finding.origin.end}`),
    ).toEqual([`${rule.code} at ${marker?.start}–${marker?.end}`]);
  });

  test.each(all)('%s: its good example is silent', (_, rule) => {
    expect(told(read(exampleOf(rule, 'good').text, rule))).toEqual([]);
  });

  const cases = rules.flatMap((rule) =>
    (rule.cases ?? []).map((one) => [`${rule.code} ${one.name}`, rule, one] as const),
  );
  test.each(cases)('%s', (_, rule, one) => {
    const { text, marker } = caseOf(rule, one);
    const own = read(text, rule).findings.filter(({ code }) => code === rule.code);
    const found = own.map(({ code, origin }) => `${code} at ${origin.start}–${origin.end}`);
    expect(found).toEqual(marker ? [`${rule.code} at ${marker.start}–${marker.end}`] : []);
  });

  test('the borders of several are shown from both sides', () => {
    const bordered = rules.filter(({ cases: of = [] }) => of.some(({ text }) => text.includes('«')));
    expect(bordered.length).toBeGreaterThan(15);
  });

  test.each(all)('%s: its message is a sentence with nothing left blank', (_, rule) => {
    const [finding] = read(exampleOf(rule, 'bad').text, rule).findings;
    for (const said of [
      finding?.message,
      finding?.todo,
      ...(finding?.related ?? []).map((one) => one.message),
    ]) {
      expect(said).toBeTruthy();
      expect(said).not.toMatch(/NaN|undefined|null|Infinity|\[object|\s{2}|\.\.$/);
    }
    expect(finding?.message).toMatch(/[.?]$/);
  });
});

describe('quick fixes', () => {
  const fixable = all.filter(([, rule]) => (fixesOf(rule)?.length ?? 0) > 0);

  test('there are plenty', () => {
    expect(fixable.length).toBeGreaterThan(40);
  });

  test.each(fixable)('%s: each takes its finding away', (_, rule) => {
    const { text } = exampleOf(rule, 'bad');
    for (const fix of fixesOf(rule) ?? []) {
      expect(
        read(applied(text, fix), rule).findings.filter((finding) => finding.code === rule.code),
        fix.title,
      ).toEqual([]);
    }
  });

  test.each(fixable)(
    '%s: the first leaves nothing else wrong, and at most one is marked as the one to take',
    (_, rule) => {
      const { text } = exampleOf(rule, 'bad');
      const fixes = fixesOf(rule) ?? [];
      // There is at least one: see above. A fix that demands measures leaves the question whether they are there.
      const left = told(read(applied(text, fixes[0]!), rule));
      expect(left.filter((each) => rule.code !== 'TL416' || !each.startsWith('TL472'))).toEqual([]);
      expect(fixes.filter((fix) => fix.preferred).length).toBeLessThanOrEqual(1);
    },
  );

  test.each(fixable)('%s: titles are commands, all different', (_, rule) => {
    const titles = (fixesOf(rule) ?? []).map((fix) => fix.title);
    expect(new Set(titles).size).toBe(titles.length);
    for (const title of titles) expect(title).toMatch(/^[A-Z]/);
  });
});

test('the same input gives the same findings, in the order of the text', () => {
  const texts = [
    { uri: 'b.trough', text: exampleOf(rules[1]!, 'bad').text },
    { uri: 'a.trough', text: 'liner X {' },
  ]; // there are more than two rules
  const once = analyse(texts);
  const again = analyse([...texts].reverse());
  expect(told(again)).toEqual(told(once));
  const findings = runRules({ estate: once.estate, problems: [] });
  expect(findings).toEqual(
    [...findings].sort((a, b) => a.origin.source - b.origin.source || a.origin.start - b.origin.start),
  );
});

function read(text: string, rule?: Rule): Analysis {
  const photos = rule?.photos;
  return analyse(
    [{ uri: 'example.trough', text }],
    photos && { photos: (_, path) => photos[path] ?? 'missing' },
  );
}

function told({ findings, textOf }: Analysis): string[] {
  return findings.map((finding: Finding) => `${finding.code} ${finding.message} [${textOf(finding.origin)}]`);
}

function fixesOf(rule: Rule): Finding['fixes'] {
  return read(exampleOf(rule, 'bad').text, rule).findings[0]?.fixes;
}
