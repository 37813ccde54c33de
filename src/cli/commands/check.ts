// `troughline check`: what is wrong in an estate, why it matters and what to do, in the forms that people and CI read.

import { analyse } from '../../analysis/analyse.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { counted } from '../../domain/units/wording.js';
import type { Finding, Severity } from '../../validation/finding.js';
import { Exit, wantsColour, Trouble, type ColourChoice, type Console } from '../console.js';
import { readEstate, tellAgain, type TextsOnDisk } from '../read-estate.js';
import { photosBeside } from '../photos.js';
import { rewriteText } from '../rewrite-text.js';
import { writeFile } from '../write-files.js';
import { applyCertainFixes, takeOffers } from '../fixes.js';
import type { CheckResult, LocatedFinding } from '../formats/located.js';
import { toGithub } from '../formats/github.js';
import { toGitlab } from '../formats/gitlab.js';
import { toJson } from '../formats/json.js';
import { toJunit } from '../formats/junit.js';
import { toMarkdown } from '../formats/markdown.js';
import { toSarif } from '../formats/sarif.js';
import { toText } from '../formats/text.js';
import path from 'node:path';
import { findingKeys } from '../../analysis/finding-keys.js';
import { addToJobSummary, repositoryName } from '../build-server.js';
import { fingerprintOf } from '../fingerprint.js';
import { shownLine, told } from '../foreign-text.js';
import { readKnownFindings, sortOutKnown, writeKnownFindings } from '../known-findings.js';
import { namedFormats } from '../named-formats.js';
import { olderFindings } from '../older-findings.js';
import type { Analysis } from '../../analysis/analysis.js';

export const checkFormats = ['text', 'json', 'sarif', 'junit', 'gitlab', 'github', 'markdown'] as const;
export type CheckFormat = (typeof checkFormats)[number];

export interface CheckOptions {
  /** NAME or NAME=FILE. */
  readonly format: readonly string[];
  readonly asOf: CalendarDay | undefined;
  readonly color: ColourChoice;
  readonly quiet: boolean;
  readonly fix: boolean;
  /** Lines that cannot be read are written as they are offered. */
  readonly asOffered: boolean;
  readonly failOn: Severity;
  readonly stdinFilename: string;
  readonly version: string;
  /** File of known findings, to be read or to be written. */
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly because?: string;
  readonly until?: CalendarDay;
  /** A revision whose findings do not count. */
  readonly newSince?: string;
}

const rank = { error: 2, warning: 1, information: 0 } as const;

export async function check(
  paths: readonly string[],
  options: CheckOptions,
  console: Console,
): Promise<number> {
  const formats = namedFormats(options.format, checkFormats, 'text');
  const list = options.baseline === undefined ? [] : readKnownFindings(options.baseline, console);
  let read = await readEstate(paths, console, options.stdinFilename);
  let analysis = analyseRead(read, options.asOf);
  if (options.fix || options.asOffered) {
    if (paths.includes('-'))
      throw new Trouble(`${options.fix ? '--fix' : '--as-offered'} needs files, not standard input`);
    const again = async (): Promise<void> => {
      read = await readEstate(paths, console, options.stdinFilename);
      analysis = analyseRead(read, options.asOf);
    };
    if (options.fix && writeCertainFixes(analysis, read, console)) await again();
    // What was over is offered by what stands open, which the lines written first may say.
    for (const later of options.asOffered ? [false, true] : [])
      if (writeOffers(analysis, read, later, console)) await again();
  }
  const all = locate(analysis, read, console);
  if (options.writeBaseline !== undefined) {
    const { findings } = all;
    writeKnownFindings(options.writeBaseline, findings, options.because, options.until, console);
    console.err(`${findings.length} findings are known from now on, in ${told(options.writeBaseline)}\n`);
  }
  const sorted = sortOutKnown(all.findings, list, analysis.asOf);
  const older =
    options.newSince === undefined
      ? undefined
      : olderFindings(options.newSince, paths, options.asOf ?? analysis.asOf, console);
  const findings = sorted.findings.filter(({ fingerprint }) => !older?.has(fingerprint));
  const result: CheckResult = {
    ...all,
    findings,
    known: sorted.known,
    older: sorted.findings.length - findings.length,
  };
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
  if (formats.some(({ name }) => name === 'github')) addToJobSummary(toMarkdown(result), console);
  tellAgain(read, console);
  for (const line of sorted.told) console.err(`troughline: ${shownLine(line)}\n`);
  for (const line of read.unread) console.err(`troughline: ${line}\n`);
  if (read.unread.length > 0) return Exit.trouble;
  if (options.writeBaseline !== undefined) return Exit.clean;
  return result.findings.some((found) => fails(found, options)) ? Exit.findings : Exit.clean;
}

/** False where there is nothing to mend. */
function writeCertainFixes(analysis: Analysis, read: TextsOnDisk, console: Console): boolean {
  const { texts, count } = applyCertainFixes(analysis, read.texts);
  writeMended(texts, read);
  if (count > 0) console.err(`${counted(count, 'finding')} mended in ${counted(texts.size, 'file')}\n`);
  return count > 0;
}

/** Tells every line that was written: nobody else has read them yet. False where nothing was offered. */
function writeOffers(analysis: Analysis, read: TextsOnDisk, later: boolean, console: Console): boolean {
  const { texts, count, taken } = takeOffers(analysis, read.texts, later);
  writeMended(texts, read);
  for (const { file, line, was, is } of taken)
    console.err(
      `${told(file)}:${line}: ${shownLine(was)}\n  now: ${is
        .split(/\s*\n\s*/)
        .map(shownLine)
        .join('\n       ')}\n`,
    );
  if (count > 0)
    console.err(
      `${counted(count, 'line')} written as offered in ${counted(texts.size, 'file')}; read each of them\n`,
    );
  return count > 0;
}

function writeMended(mended: ReadonlyMap<string, string>, read: TextsOnDisk): void {
  for (const { path: file, full } of read.texts) {
    const text = mended.get(file);
    if (text !== undefined && full !== undefined) rewriteText(full, text);
  }
}

function fails({ finding }: LocatedFinding, { failOn }: CheckOptions): boolean {
  return rank[finding.severity] >= rank[failOn];
}

export function analyseRead(read: TextsOnDisk, asOf: CalendarDay | undefined): Analysis {
  return analyse(
    read.texts.map(({ path: uri, text }) => ({ uri, text })),
    { photos: photosBeside(read), ...(asOf === undefined ? {} : { asOf }) },
  );
}

/** Findings with their places, in the order of files, lines and columns. */
function locate(analysis: Analysis, read: TextsOnDisk, console: Console): CheckResult {
  const lines = new Map(read.texts.map(({ path: file, text }) => [file, text.split(/\r\n|\r|\n/)]));
  const keys = findingKeys(analysis, analysis.findings);
  return {
    findings: analysis.findings.map((finding, i) => locateOne(finding, keys[i] ?? '')),
    files: read.texts.length,
    suppressed: analysis.suppressed.length,
    known: 0,
    older: 0,
    heldBack: analysis.heldBack,
    unread: read.unread,
  };

  function locateOne(finding: Finding, key: string): LocatedFinding {
    const place = analysis.locate(finding.origin);
    return {
      finding,
      file: place.uri,
      repositoryFile: repositoryName(place.uri, console),
      fingerprint: fingerprintOf(key),
      line: place.line,
      column: place.column,
      endLine: place.endLine,
      endColumn: place.endColumn,
      sourceLine: lines.get(place.uri)?.[place.line - 1] ?? '',
      related: (finding.related ?? []).map(({ origin, message }) => {
        const other = analysis.locate(origin);
        return {
          file: other.uri,
          repositoryFile: repositoryName(other.uri, console),
          line: other.line,
          column: other.column,
          message,
        };
      }),
    };
  }
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
      return options.quiet && result.findings.length + result.unread.length === 0
        ? ''
        : toText(result, colour);
    case 'json':
      return toJson(result);
    case 'sarif':
      return toSarif(result, options.version);
    case 'junit':
      return toJunit(
        result,
        read.texts.map((text) => text.path),
        (found) => fails(found, options),
      );
    case 'gitlab':
      return toGitlab(result);
    case 'github':
      return toGithub(result);
    case 'markdown':
      return toMarkdown(result);
  }
}
