// What the demo estate gives, in every form: report, work packs, inspection sheets, findings. Read before it was accepted; a
// change shows in review as a change of words and numbers. `npm run baselines` takes the present output as the new baselines.
// Pages are kept as the text a person reads (outline.ts), workbooks as cells, numbers in data to six digits.

import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import readWorkbook from 'read-excel-file/node';
import { afterAll, expect, test } from 'vitest';
import { troughline } from '../cli/console.js';
import { dataLines, outlineOf } from './outline.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const estate = 'examples/4-tarnholt';
const asOf = ['--as-of', '2026-10-31'];
const out = mkdtempSync(path.join(tmpdir(), 'trough-baselines-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const formats = (...names: readonly string[]): string[] => names.flatMap((name) => ['--format', name]);

async function make(folder: string, ...args: readonly string[]): Promise<readonly string[]> {
  const target = path.join(out, folder);
  const ran = await troughline([...args, ...asOf, '--out', target], { cwd: root });
  expect(ran.exit, ran.err).toBeLessThanOrEqual(1);
  return readdirSync(target).sort();
}

const kept = (folder: string, name: string): string => `demo/${folder}/${name}`;
const text = (folder: string, name: string): string =>
  readFileSync(path.join(out, folder, name), 'utf8').replaceAll('\r\n', '\n');

async function holds(folder: string, name: string): Promise<void> {
  const extension = path.extname(name);
  if (extension === '.html')
    await expect(outlineOf(text(folder, name))).toMatchFileSnapshot(kept(folder, `${name}.txt`));
  else if (extension === '.json')
    await expect(`${dataLines(JSON.parse(text(folder, name)))}\n`).toMatchFileSnapshot(kept(folder, name));
  else if (extension === '.xlsx')
    await expect(await cellsOf(path.join(out, folder, name))).toMatchFileSnapshot(
      kept(folder, `${name}.txt`),
    );
  else await expect(text(folder, name)).toMatchFileSnapshot(kept(folder, name));
}

/** A workbook as its sheets, a row a line. */
async function cellsOf(file: string): Promise<string> {
  const sheets = await readWorkbook(file);
  return sheets
    .map(
      ({ sheet, data }) =>
        `# ${sheet}\n${data.map((row) => row.map((cell) => (cell instanceof Date ? new Date(Math.round(cell.getTime() / 1000) * 1000).toISOString() : (cell ?? ''))).join(' | ')).join('\n')}\n`,
    )
    .join('\n');
}

test('findings', async () => {
  const { out: said } = await troughline(['check', estate, ...asOf], { cwd: root });
  await expect(said).toMatchFileSnapshot(kept('check', 'findings.txt'));
});

test('report', async () => {
  const made = await make(
    'report',
    ...['report', estate, '--since', '2026-07-31'],
    ...formats('html', 'markdown', 'json', 'conveyors-csv', 'points-csv'),
  );
  expect(made.map((name) => path.extname(name)).sort()).toEqual(['.csv', '.csv', '.html', '.json', '.md']);
  for (const name of made) await holds('report', name);
}, 300_000);

test('work packs', async () => {
  const made = await make(
    'packs',
    ...['pack', 'all', estate],
    ...formats('html', 'markdown', 'xlsx', 'ics', 'form', 'crew', 'order'),
  );
  expect(made.length % 7).toBe(0);
  for (const name of made) await holds('packs', name);
}, 300_000);

test('inspection sheet, on paper and for a phone', async () => {
  const made = await make('sheets', 'sheet', 'DG1', estate, ...formats('html', 'phone'));
  expect(made).toEqual(['DG1-phone.html', 'DG1.html']);
  for (const name of made) await holds('sheets', name);
});
