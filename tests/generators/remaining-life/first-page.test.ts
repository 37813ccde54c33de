// What a manager must find on the first sheet of paper: the table, what can be done about the conveyor that no outage is early
// enough for, whether the wear has changed, and what is open. Printed in a real browser, as it is read.

import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { troughline } from '../../cli/console.js';
import { openBrowser, pagesOf } from '../browser.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));

test('the demo’s first page holds decision, options, change of wear and open conditions', async () => {
  const out = mkdtempSync(path.join(tmpdir(), 'trough-report-'));
  const browser = await openBrowser();
  try {
    const options = ['--as-of', '2026-10-31', '--out', out, '--format', 'html'];
    await troughline(['report', 'examples/4-tarnholt', ...options], { cwd: root });
    const html = readFileSync(path.join(out, 'report.html'), 'utf8');
    const first = html.slice(0, html.indexOf('<p><strong>Programme.'));
    for (const words of [
      'cannot be relined before 2027-01-09',
      'What can be done about DG1',
      'Do nothing until',
      'CP3 has worn faster since the look of 2026-01-19',
      'Open conditions.',
    ])
      expect(first).toContain(words);
    expect(await pagesOf(browser, `${first}</section></main></body></html>`)).toBe(1);
    // What is wider than the paper between its margins makes the browser shrink every page.
    const page = await browser.newPage({ viewport: { width: 695, height: 1000 } });
    await page.setContent(html);
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(695);
  } finally {
    await browser.close();
    rmSync(out, { recursive: true, force: true });
  }
}, 120_000);
