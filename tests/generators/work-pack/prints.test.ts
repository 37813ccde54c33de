// The pack as HTML, Markdown, workbook and calendar: the same bytes for the same pack, nothing an author typed becomes markup,
// and other readers than ours can read them.

import { readSheet } from 'read-excel-file/node';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { workPackCalendar } from '../../../src/generators/work-pack/calendar.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { workPackXlsx } from '../../../src/generators/work-pack/xlsx.js';
import { openBrowser } from '../browser.js';
import { day, liftConveyor, read, theJob, type EstateFacts } from '../estate.js';

function pack(facts: EstateFacts = {}): WorkPack {
  const analysis = read(liftConveyor(facts));
  return workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });
}

const nasty = `<script>alert(1)</script> & 'quotes' | pipe *stars* \`ticks\` =1+1 ]]> <!-- -->`;

describe('the same pack gives the same bytes', () => {
  const zone = process.env['TZ'];
  afterEach(() => {
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
  });

  test('in any time zone and however often', async () => {
    const prints = async (): Promise<readonly string[]> => {
      const made = pack({ job: 'change screw' });
      return [
        workPackHtml(made),
        workPackMarkdown(made),
        workPackCalendar(made),
        Buffer.from(await workPackXlsx(made)).toString('base64'),
        JSON.stringify(made),
      ];
    };
    process.env['TZ'] = 'UTC';
    const first = await prints();
    for (const place of ['Pacific/Auckland', 'America/Los_Angeles', 'Asia/Kolkata']) {
      process.env['TZ'] = place;
      expect(await prints()).toEqual(first);
    }
  });
});

describe('HTML', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser.close();
  });

  test('takes nothing an author typed for markup', () => {
    const html = workPackHtml(
      pack({ jobTitle: nasty, plantTitle: nasty, job: `order {\n isolate "${nasty}"\n}` }),
    );
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<!--');
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &#39;quotes&#39;');
  });

  test('loads and runs nothing', () => {
    const html = workPackHtml(pack());
    expect(html).not.toMatch(/<(script|link|iframe|object|img)\b/i);
    expect(html).not.toMatch(/url\((?!#)/);
    expect(html).not.toMatch(/https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
  });

  test('has no number that went wrong', () => {
    for (const facts of [{}, { job: 'change screw' }])
      expect(workPackHtml(pack(facts)) + workPackMarkdown(pack(facts))).not.toMatch(
        /NaN|undefined|Infinity|\[object/,
      );
  });

  for (const [paper, width, liner] of [
    ['A4', 210, 'mm'],
    ['Letter', 215.9, 'mm'],
    ['Letter', 215.9, 'in'],
  ] as const) {
    test(`stays within the margins of ${paper} in ${liner}, and its drawings print at full size`, async () => {
      // 12 mm of margin on either side; drawings to scale have sheets of their own.
      const page = await browser.newPage({
        viewport: { width: Math.floor(((width - 24) / 25.4) * 96), height: 1000 },
      });
      await page.emulateMedia({ media: 'print' });
      const text = liftConveyor({ job: 'change screw' });
      const analysis = read(
        liner === 'in' ? text.replaceAll(/layer (ivory|teal) 6 mm/g, 'layer $1 1/4 in') : text,
      );
      await page.setContent(workPackHtml(workPack(analysis.estate, theJob(analysis)), { paper }));
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll('body > *:not(.sheet), td, th, pre')]
          .filter((node) => node.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
          .map((node) => node.textContent),
      );
      expect(wide).toEqual([]);
      const drawn = await page.evaluate(() =>
        [...document.querySelectorAll('.sheet svg.drawing-sheet')].map(
          (node) => node.getBoundingClientRect().width,
        ),
      );
      for (const px of drawn) expect((px / 96) * 25.4).toBeCloseTo(257, 0);
      await page.close();
    });
  }

  test('is stamped on its first page where the job cannot be done', () => {
    const html = workPackHtml(pack({ job: 'order {\n  strip run above Gate\n}' }));
    expect(html.indexOf('NOT BUILDABLE AS IT STANDS')).toBeGreaterThan(0);
    expect(html.indexOf('NOT BUILDABLE AS IT STANDS')).toBeLessThan(html.indexOf('<h2'));
    expect(workPackHtml(pack())).not.toContain('NOT BUILDABLE');
  });

  test('says on its first page that it clears nothing', () => {
    const html = workPackHtml(pack());
    expect(html.slice(0, html.indexOf('<h2'))).toContain(
      'It does not clear a machine for work and is no permit',
    );
  });
});

describe('Markdown', () => {
  test('keeps every row of a table in one line with as many cells as its head', () => {
    const lines = workPackMarkdown(pack({ jobTitle: nasty, job: 'change screw' })).split('\n');
    let cells: number | undefined;
    for (const line of lines) {
      if (!line.startsWith('|')) {
        cells = undefined;
        continue;
      }
      const found = line.replace(/\\\|/g, '').split('|').length;
      cells ??= found;
      expect(found, line).toBe(cells);
    }
  });

  test('takes nothing an author typed for markup', () => {
    const text = workPackMarkdown(pack({ jobTitle: nasty }));
    expect(text).not.toContain('<script');
    expect(text).not.toMatch(/(?<!\\)\*stars/);
  });
});

describe('the workbook', () => {
  test('is read by another reader: sheets, heads, figures as figures, text that looks like a formula as text', async () => {
    const made = pack({ jobTitle: '=HYPERLINK("x")'.replaceAll('"', "'"), job: 'change screw' });
    const file = Buffer.from(await workPackXlsx(made));
    const panels = await readSheet(file, 'Panels');
    expect(panels[0]).toEqual([
      'Run',
      'Panel',
      'Turn',
      'From, m',
      'To, m',
      'Length, mm',
      'Mass, kg',
      'Closing',
      'New',
      'Bolts',
    ]);
    expect(panels.length - 2).toBe(made.panels.length);
    expect(panels.at(-1)?.[0]).toBe('Total');
    const closing = panels.find((row) => row[7] === 'closing');
    expect(closing?.slice(0, 6)).toEqual([2, 1, 5, 7.5, 8, 500]);
    const job = await readSheet(file, 'Job');
    expect(job.find((row) => row[0] === 'Job')?.[1]).toBe("=HYPERLINK('x')");
    const lifts = await readSheet(file, 'Lifts');
    const masses = lifts
      .slice(1)
      .filter((row) => String(row[0]).startsWith('spiral'))
      .map((row) => Number(row[4]));
    expect(masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(306.1, 0); // 12 m at 25.51 kg/m
  });
});

test('the workbook of a machine in inches is in feet and inches', async () => {
  const text = liftConveyor({ job: 'change screw' }).replaceAll(
    /layer (ivory|teal) 6 mm/g,
    'layer $1 1/4 in',
  );
  const analysis = read(text);
  const made = workPack(analysis.estate, theJob(analysis));
  const panels = await readSheet(Buffer.from(await workPackXlsx(made)), 'Panels');
  expect(panels[0]?.slice(3, 6)).toEqual(['From, ft', 'To, ft', 'Length, in']);
  // The closing panel of 500 mm from 7.5 m.
  expect(panels.find((row) => row[7] === 'closing')?.slice(3, 6)).toEqual([24.606, 26.247, 19.69]);
  // The sawyer's list has the same length under the same unit: 500 mm / 25.4.
  const cuts = await readSheet(Buffer.from(await workPackXlsx(made)), 'Cut list');
  expect([3, 6, 8].map((k) => cuts[0]?.[k])).toEqual(['Stock length, in', 'Cut to, in', 'Rest of stock, in']);
  expect(cuts.find((row) => row[7] === 'closing')?.[6]).toBe(19.69);
  // Two pieces of 6 m of spiral: 6000 / 304.8 ft.
  const lifts = made.drawings.find((each) => each.title.includes('cuts and lifts'));
  expect(lifts?.description).toContain('1, 19.69 ft');
  expect(lifts?.svg).toContain('>19.69 ft<');
  expect(lifts?.svg).not.toMatch(/\d m</);
});

describe('the calendar, line by line against RFC 5545', () => {
  const text = workPackCalendar(
    pack({
      jobTitle:
        'Reline; new liner, above the gate \\ and more words so that the line must be folded somewhere — é',
    }),
  );
  const unfolded = text.replace(/\r\n[ \t]/g, '').split('\r\n');

  test('lines end in CR LF and hold at most 75 octets (3.1)', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  test('one calendar with version and product, events opened and closed (3.4, 3.6, 3.7)', () => {
    expect(unfolded[0]).toBe('BEGIN:VCALENDAR');
    expect(unfolded.filter((line) => line !== '').at(-1)).toBe('END:VCALENDAR');
    expect(unfolded.filter((line) => line === 'VERSION:2.0')).toHaveLength(1);
    expect(unfolded.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
    expect(unfolded.filter((line) => line === 'BEGIN:VEVENT').length).toBe(
      unfolded.filter((line) => line === 'END:VEVENT').length,
    );
    for (const line of unfolded.filter((each) => each !== ''))
      expect(line).toMatch(/^[A-Z-]+(;[A-Z-]+=[^:;]+)*:/);
  });

  test('each event has an id, a stamp in UTC and whole days whose end is exclusive (3.6.1)', () => {
    const events = text
      .replace(/\r\n[ \t]/g, '')
      .split('BEGIN:VEVENT')
      .slice(1);
    const value = (event: string, name: string): readonly string[] =>
      [...event.matchAll(new RegExp(`^${name}(?:;[^:]*)?:(.*)$`, 'gm'))].map((match) =>
        (match[1] ?? '').trim(),
      );
    for (const event of events) {
      for (const name of ['UID', 'DTSTAMP', 'DTSTART', 'DTEND', 'SUMMARY'])
        expect(value(event, name), name).toHaveLength(1);
      expect(value(event, 'DTSTAMP')[0]).toBe('20261031T000000Z');
      expect(event).toMatch(/DTSTART;VALUE=DATE:\d{8}/);
    }
    const ids = events.map((event) => value(event, 'UID')[0]);
    expect(new Set(ids).size).toBe(events.length);
    expect([value(events[0] ?? '', 'DTSTART')[0], value(events[0] ?? '', 'DTEND')[0]]).toEqual([
      '20270412',
      '20270417',
    ]);
    expect([value(events[1] ?? '', 'DTSTART')[0], value(events[1] ?? '', 'DTEND')[0]]).toEqual([
      '20270201',
      '20270202',
    ]);
  });

  test('commas, semicolons and backslashes are escaped (3.3.11)', () => {
    expect(
      unfolded.some((line) => line.includes('Reline\\; new liner\\, above the gate \\\\ and more')),
    ).toBe(true);
  });

  test('a job without a window gives a calendar without events', () => {
    const analysis = read(liftConveyor().replace('  outage Spring27\n  reline', '  reline'));
    const empty = workPackCalendar(workPack(analysis.estate, theJob(analysis)));
    expect(empty).toContain('BEGIN:VCALENDAR');
    expect(empty).not.toContain('VEVENT');
  });
});
