import { describe, expect, it } from 'vitest';
import { remainingLifeCsv } from '../../../src/generators/remaining-life/csv.js';
import { csvText } from '../../../src/generators/remaining-life/csv-cells.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import {
  commentLimit,
  markdownText,
  remainingLifeMarkdown,
} from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { estateOf, look, reportOf, works } from './story.js';

const records =
  look(3000, 'P1 thickness 10.5 mm; P2 colour ivory') +
  look(6000, 'P1 thickness 9 mm; P2 not seen "build-up"');

describe('HTML', () => {
  const html = remainingLifeHtml(reportOf(records));

  it('is the same bytes for the same text', () => {
    expect(remainingLifeHtml(reportOf(records))).toBe(html);
  });

  it('is self-contained: nothing runs, nothing is fetched', () => {
    expect(html).not.toMatch(/<script|<link|<iframe|@import|url\((?!#)|\ssrc=|\son[a-z]+=/i);
    expect(html).toContain("default-src 'none'");
  });

  it('every drawing has a title and a description of its own', () => {
    const drawings = html.match(/<svg[^>]* role="img"[^>]*>/g) ?? [];
    expect(drawings.length).toBeGreaterThan(2);
    for (const drawing of drawings) {
      const ids = /aria-labelledby="([^"]+)"/.exec(drawing)?.[1]?.split(' ') ?? [];
      expect(ids).toHaveLength(2);
      for (const id of ids) expect(html.split(`id="${id}"`)).toHaveLength(2);
    }
  });

  it('every element that is opened is closed, in order', () => {
    const open: string[] = [];
    for (const [, slash, name = '', rest = ''] of html
      .replace(/<!DOCTYPE html>|<style>[\s\S]*?<\/style>/g, '')
      .matchAll(/<(\/?)([A-Za-z][A-Za-z0-9]*)((?:[^>"]|"[^"]*")*)>/g)) {
      if (slash) expect(open.pop()).toBe(name);
      else if (!['meta', 'br', 'hr', 'col'].includes(name) && !rest.endsWith('/')) open.push(name);
    }
    expect(open).toEqual([]);
  });

  it('text from a file stays text', () => {
    const nasty = remainingLifeHtml(
      remainingLife(
        estateOf(works.replace('Digestate cake to bay 2', '<img src=x onerror=alert(1)> & co'), records),
        { track: false },
      ),
    );
    expect(nasty).not.toContain('<img');
    expect(nasty).toContain('&lt;img src=x onerror=alert(1)&gt; &amp; co');
  });

  it('prints on Letter where asked', () => {
    expect(remainingLifeHtml(reportOf(records), { paper: 'Letter' })).toContain(
      '@page { size: Letter portrait',
    );
    expect(html).toContain('@page { size: A4 portrait');
  });

  it('says what was read, what was not seen, and that it only advises', () => {
    expect(html).toContain('2 thicknesses, 1 colour, 0 with steel showing, 1 not seen');
    expect(html).toContain('P2 looked for and not seen: 2025-09-08 (build-up)');
    expect(html).toContain('This report advises; a competent person decides.');
  });

  it('refers to no hatch or drawing that is not there', () => {
    for (const [, id] of html.matchAll(/url\(#([^)]+)\)/g)) expect(html).toContain(`id="${id ?? ''}"`);
    for (const [, id] of html.matchAll(/href="#([^"]+)"/g)) expect(html).toContain(`id="${id ?? ''}"`);
  });
});

describe('Markdown', () => {
  it('escapes what Markdown would take for its own', () => {
    expect(markdownText('a|b <i> *c* `d` [e](f) @g')).toBe(
      'a\\|b &lt;i&gt; \\*c\\* \\`d\\` \\[e\\](f) @\u200bg',
    );
  });

  it('fits a comment, whatever the size of the estate, and says what did not fit', () => {
    const conveyor = works.slice(works.indexOf('conveyor DG1'));
    const many = Array.from(
      { length: 200 },
      (_, i) => conveyor.replace('DG1', `C${i}`) + look(3000, 'P1 thickness 10.5 mm', `C${i}`),
    ).join('');
    const text = remainingLifeMarkdown(remainingLife(estateOf(works, many), { depth: 'hand' }));
    expect(text.length).toBeLessThanOrEqual(commentLimit);
    expect(text).toMatch(/\d+ more conveyors did not fit/);
  });

  it('has as many cells in every row as in its head', () => {
    const tables = remainingLifeMarkdown(reportOf(records))
      .split('\n\n')
      .filter((part) => part.startsWith('|'));
    expect(tables.length).toBeGreaterThan(1);
    for (const table of tables) {
      const widths = table
        .split('\n')
        .filter((l) => l.startsWith('|'))
        .map((l) => l.replace(/\\\|/g, '').split('|').length);
      expect(new Set(widths).size).toBe(1);
    }
  });
});

describe('JSON', () => {
  it('carries a format version, units and the day', () => {
    expect(JSON.parse(remainingLifeJson(reportOf(records)))).toMatchObject({
      formatVersion: 2,
      asOf: '2025-09-08',
      units: { length: 'mm', hours: 'h' },
      conveyors: [
        {
          conveyor: 'DG1',
          points: [
            { point: 'P1', state: 'thickness' },
            { point: 'P2', state: 'colour' },
          ],
        },
      ],
    });
  });
});

describe('CSV', () => {
  it('makes a text harmless that a spreadsheet would take for a formula', () => {
    expect(csvText('=1+1')).toBe("'=1+1");
    expect(csvText('+49')).toBe("'+49");
    expect(csvText('-x')).toBe("'-x");
    expect(csvText('@a')).toBe("'@a");
    expect(csvText('\tx')).toBe("'\tx");
  });
  it('quotes by RFC 4180', () => {
    expect(csvText('a "b", c')).toBe('"a ""b"", c"');
  });
  it('is read back with every row as long as the head', () => {
    const rows = readCsv(remainingLifeCsv(reportOf(records)));
    expect(rows).toHaveLength(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows[1]?.slice(0, 4)).toEqual(['2025-09-08', 'Tarnholt', 'DG1', 'P1']);
  });
});

/** RFC 4180, section 2, read letter by letter. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i] ?? '';
    if (quoted && c === '"' && text[i + 1] === '"') cell += text[i++] ?? '';
    else if (c === '"') quoted = !quoted;
    else if (!quoted && (c === ',' || c === '\r')) {
      rows.at(-1)?.push(cell);
      cell = '';
      if (c === '\r') {
        i += 1; // the line feed of CRLF
        rows.push([]);
      }
    } else cell += c;
  }
  return rows.slice(0, -1);
}
