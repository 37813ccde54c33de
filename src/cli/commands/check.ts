// `troughline check`: what is wrong in an estate, why it matters and what to do, in the forms that people and CI read.

import { analyse } from '../../analysis/analyse.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import type { Finding, Severity } from '../../validation/finding.js';
import { Exit, wantsColour, Trouble, type ColourChoice, type Console } from '../console.js';
import { readEstate, tellAgain, type TextsOnDisk } from '../read-estate.js';
import { photosBeside } from '../photos.js';
import { rewriteText } from '../rewrite-text.js';
import { writeFile } from '../write-files.js';
import { applyPreferredFixes } from '../fixes.js';
import type { CheckResult, LocatedFinding } from '../formats/located.js';
import { toGithub } from '../formats/github.js';
import { toJson } from '../formats/json.js';
import { toJunit } from '../formats/junit.js';
import { toMarkdown } from '../formats/markdown.js';
import { toSarif } from '../formats/sarif.js';
import { toText } from '../formats/text.js';
import path from 'node:path';
import type { Analysis } from '../../analysis/analysis.js';

export const checkFormats = ['text', 'json', 'sarif', 'junit', 'github', 'markdown'] as const;
export type CheckFormat = (typeof checkFormats)[number];

export interface CheckOptions {
  /** NAME or NAME=FILE. */
  readonly format: readonly string[];
  readonly asOf: CalendarDay | undefined;
  readonly color: ColourChoice;
  readonly quiet: boolean;
  readonly fix: boolean;
  readonly failOn: Severity;
  readonly stdinFilename: string;
  readonly version: string;
}

const rank = { error: 2, warning: 1, information: 0 } as const;

export async function check(
  paths: readonly string[],
  options: CheckOptions,
  console: Console,
): Promise<number> {
  const formats = options.format.map(parseFormat);
  let read = await readEstate(paths, console, options.stdinFilename);
  let analysis = analyseRead(read, options.asOf);
  if (options.fix) {
    if (paths.includes('-')) throw new Trouble('--fix needs files, not standard input');
    const fixed = applyPreferredFixes(analysis, read.texts);
    for (const { path: file, full } of read.texts) {
      const text = fixed.texts.get(file);
      if (text !== undefined && full !== undefined) rewriteText(full, text);
    }
    if (fixed.count > 0) {
      console.err(
        `${fixed.count} ${fixed.count === 1 ? 'finding' : 'findings'} mended in ${fixed.texts.size} ${fixed.texts.size === 1 ? 'file' : 'files'}\n`,
      );
      read = await readEstate(paths, console, options.stdinFilename);
      analysis = analyseRead(read, options.asOf);
    }
  }
  const result = locate(analysis, read);
  for (const { name, file } of formats) {
    const text = render(
      name,
      result,
      read,
      file === undefined && wantsColour(options.color, console),
      options,
    );
    if (file === undefined) console.out(text);
    else writeFile(path.resolve(console.cwd, file), text);
  }
  tellAgain(read, console);
  for (const line of read.unread) console.err(`troughline: ${line}\n`);
  if (read.unread.length > 0) return Exit.trouble;
  return result.findings.some(({ finding }) => rank[finding.severity] >= rank[options.failOn])
    ? Exit.findings
    : Exit.clean;
}

export function analyseRead(read: TextsOnDisk, asOf: CalendarDay | undefined): Analysis {
  return analyse(
    read.texts.map(({ path: uri, text }) => ({ uri, text })),
    { photos: photosBeside(read), ...(asOf === undefined ? {} : { asOf }) },
  );
}

/** Findings with their places, in the order of files, lines and columns. */
export function locate(analysis: Analysis, read: TextsOnDisk): CheckResult {
  const lines = new Map(read.texts.map(({ path: file, text }) => [file, text.split(/\r\n|\r|\n/)]));
  return {
    findings: analysis.findings.map((finding) => locateOne(finding)),
    files: read.texts.length,
    suppressed: analysis.suppressed.length,
  };

  function locateOne(finding: Finding): LocatedFinding {
    const place = analysis.locate(finding.origin);
    return {
      finding,
      file: place.uri,
      line: place.line,
      column: place.column,
      endLine: place.endLine,
      endColumn: place.endColumn,
      sourceLine: lines.get(place.uri)?.[place.line - 1] ?? '',
      related: (finding.related ?? []).map(({ origin, message }) => {
        const other = analysis.locate(origin);
        return { file: other.uri, line: other.line, column: other.column, message };
      }),
    };
  }
}

function parseFormat(text: string): { name: CheckFormat; file: string | undefined } {
  const at = text.indexOf('=');
  const name = at < 0 ? text : text.slice(0, at);
  const known = checkFormats.find((format) => format === name);
  if (!known) throw new Trouble(`--format ${name}: not one of ${checkFormats.join(', ')}`);
  return { name: known, file: at < 0 ? undefined : text.slice(at + 1) };
}

function render(
  name: CheckFormat,
  result: CheckResult,
  read: TextsOnDisk,
  colour: boolean,
  options: CheckOptions,
): string {
  switch (name) {
    case 'text':
      return options.quiet && result.findings.length === 0 ? '' : toText(result, colour);
    case 'json':
      return toJson(result);
    case 'sarif':
      return toSarif(result, options.version);
    case 'junit':
      return toJunit(
        result,
        read.texts.map((text) => text.path),
      );
    case 'github':
      return toGithub(result);
    case 'markdown':
      return toMarkdown(result);
  }
}
