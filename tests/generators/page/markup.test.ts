import { describe, expect, it } from 'vitest';
import { element, escapeHtml, group, plainNumber } from '../../../src/generators/page/markup.js';
import { htmlPage, table } from '../../../src/generators/page/page.js';
import { drawing, letters, mark } from '../../../src/generators/page/svg.js';

describe('markup', () => {
  it('escapes text and attributes, not markup', () => {
    expect(element('p', { title: 'a"b' }, '<i>', element('b', {}, 'x & y')).html).toBe(
      '<p title="a&quot;b">&lt;i&gt;<b>x &amp; y</b></p>',
    );
  });
  it('leaves out what is undefined or false, and nests lists', () => {
    expect(group(undefined, false, ['a', ['b']]).html).toBe('ab');
    expect(element('td', { class: undefined, hidden: false, open: true }).html).toBe('<td open></td>');
  });
  it('makes control characters visible instead of passing them on', () => {
    expect(escapeHtml('a\u0000b\u202Ec')).toBe('a[U+0000]b[U+202E]c');
  });
  it('refuses names that are not names', () => {
    expect(() => element('p onclick')).toThrow();
    expect(() => element('p', { 'a b': 'c' })).toThrow();
  });
  it('never writes NaN', () => {
    expect(() => plainNumber(NaN)).toThrow();
    expect(() => letters([Infinity, 0], 'x')).toThrow();
    expect(plainNumber(-0.0001)).toBe('0');
    expect(plainNumber(1.23456)).toBe('1.235');
  });
});

describe('a page', () => {
  const page = htmlPage({ title: 'A <title>', body: element('p', {}, 'x'), footer: 'foot "er"\n</style>' });
  it('is whole, closed to scripts and fetching, and its footer cannot break out', () => {
    expect(page.startsWith('<!DOCTYPE html>\n<html lang="en-GB">')).toBe(true);
    expect(page.endsWith('</html>\n')).toBe(true);
    expect(page).toContain('<title>A &lt;title&gt;</title>');
    expect(page.split('</style>')).toHaveLength(2);
    expect(page).toContain('content: "foot \\"er\\"');
  });
  it('a table repeats its head and says nothing with a dash', () => {
    const { html } = table({ columns: [{ head: 'mm', number: true }], rows: [[undefined]] });
    expect(html).toContain('<thead><tr><th scope="col" class="number">mm</th></tr></thead>');
    expect(html).toContain('<td class="number">–</td>');
  });
  it('a drawing is named by its title and description', () => {
    const { html } = drawing(
      { id: 'd', title: 'T', description: 'D', width: 10, height: 5 },
      mark('disc', [1, 2], 3),
    );
    expect(html).toContain('aria-labelledby="d-title d-desc"');
    expect(html).toContain('<title id="d-title">T</title><desc id="d-desc">D</desc>');
  });
});
