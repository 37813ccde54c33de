// The pictures of the README drawn with letters. On the page of an extension the editor shows no file of that extension and
// no picture that stands in the text, only what a public address serves; letters it does show (it takes their colours away). Both figures are
// what the command line of this build says of the demo estate, so they cannot be stale.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const demo = path.join(root, 'examples', '4-tarnholt');
const asOf = '2026-10-31';
const columns = 48;
const months = 30;

/** The figures by the file of the picture that each stands for. */
export function figures() {
  const out = mkdtempSync(path.join(tmpdir(), 'troughline-figures-'));
  try {
    troughline('report', '.', '--as-of', asOf, '--format', 'json', '--out', out);
    troughline('check', '.', '--format', `json=${path.join(out, 'check.json')}`);
    const report = JSON.parse(readFileSync(path.join(out, 'report.json'), 'utf8'));
    const { findings } = JSON.parse(readFileSync(path.join(out, 'check.json'), 'utf8'));
    return { 'report.png': livesFigure(report), 'editor.png': orderFigure(findings) };
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}

/** Runs the command line that was just built; findings (exit code 1) are no failure. */
function troughline(...words) {
  try {
    execFileSync(process.execPath, [path.join(root, 'dist', 'cli.js'), ...words], {
      cwd: demo,
      stdio: 'pipe',
    });
  } catch (error) {
    if (error.status !== 1) throw error;
  }
}

/** One line a conveyor: the interval in which its first panel reaches the condemn limit, on an axis with the outages. */
export function livesFigure(report) {
  const start = Date.parse(report.asOf);
  const span = (months / 12) * 365.25 * 86_400_000;
  const column = (day) => Math.round(((Date.parse(day) - start) / span) * (columns - 1));
  const outages = report.conveyors[0].decision.outages;
  const marks = new Set(outages.map((outage) => column(outage.from)));
  const lines = report.conveyors.map((conveyor) => {
    const days = conveyor.forecast.days;
    const [from, middle, to] = [days.q10, days.q50, days.q90].map(column);
    const bar = Array.from({ length: columns }, (_, at) =>
      at === middle ? '●' : at >= from && at <= to ? '━' : marks.has(at) ? '┊' : ' ',
    ).join('');
    const when = `${days.q50}  (${days.q10} to ${days.q90})`;
    return `<b>${escaped(conveyor.conveyor.padEnd(5))}</b>${bar}  ${when}`;
  });
  const axis =
    ' '.repeat(5) + Array.from({ length: columns }, (_, at) => (marks.has(at) ? '┊' : ' ')).join('');
  const names = outages.map((outage) => `${outage.outage} ${outage.from}`).join(', ');
  return figure([
    'When the first panel of each conveyor reaches its condemn limit: ● middle, ━ 80 % between',
    '',
    ...lines,
    axis,
    ...fold(`┊ outages: ${names}`, 84).map((line) => `     ${escaped(line)}`),
  ]);
}

/** The order of work that cannot be built, as the editor shows it: the lines, what is wrong, and what to do instead. */
export function orderFigure(findings) {
  const found = findings.find((finding) => finding.code === 'TL402');
  if (!found) throw new Error('The demo estate has no impossible order any more: choose another figure.');
  const text = readFileSync(path.join(demo, found.file), 'utf8').split('\n');
  const shown = text.slice(found.line - 3, found.line + 2).map((line, at) => {
    const number = String(found.line - 2 + at).padStart(4);
    const wrong = found.line - 2 + at === found.line;
    return `${number}  ${wrong ? `<mark>${escaped(line)}</mark>` : escaped(line)}`;
  });
  return figure([
    ...shown,
    '',
    ...fold(`${found.severity} ${found.code}: ${found.message}`).map((line) => `<b>${escaped(line)}</b>`),
    ...[found.why, found.todo].flatMap((words) => ['', ...fold(words).map(escaped)]),
  ]);
}

/** A block of letters of one width. No line of it is blank, because a blank line would end it. */
function figure(lines) {
  return `<pre>\n${lines.map((line) => (line === '' ? '&nbsp;' : line)).join('\n')}\n</pre>`;
}

/** Words broken into lines of at most `most` letters. */
function fold(words, most = 100) {
  const lines = [''];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== '' && last.length + 1 + word.length > most) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines;
}

function escaped(words) {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
