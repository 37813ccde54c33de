import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';

/** The text after the first fix of the first finding with this code. */
function mended(text: string, code: string): string {
  const fix = analyse([{ uri: 'a.trough', text }]).findings.find((finding) => finding.code === code)
    ?.fixes?.[0];
  expect(fix).toBeDefined();
  return [...(fix?.edits ?? [])]
    .sort((a, b) => b.origin.start - a.origin.start)
    .reduce((t, edit) => t.slice(0, edit.origin.start) + edit.text + t.slice(edit.origin.end), text);
}

describe('a mend that takes a fact out', () => {
  test('takes its line out with it', () => {
    expect(mended('plant A {\n  risk 5 %\n  risk 5 %\n}\n', 'TL112')).toBe('plant A {\n  risk 5 %\n}\n');
  });

  test('also where lines end as on Windows, and at the end of the file', () => {
    expect(mended('plant A {\r\n  risk 5 %\r\n  risk 5 %\r\n}\r\n', 'TL112')).toBe(
      'plant A {\r\n  risk 5 %\r\n}\r\n',
    );
  });

  test('leaves the rest of the line where there is one', () => {
    expect(mended('plant A {\n  risk 5 % risk 5 % // as agreed\n}\n', 'TL112')).toMatch(
      /^plant A \{\n {2}risk 5 % +\/\/ as agreed\n\}\n$/,
    );
  });
});
