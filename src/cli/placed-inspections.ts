// Where do new inspections go? One file a conveyor and day below the folder of the mapping; into the block that is there, where the
// day is recorded already. The estate is then read as it would be, and a new line that cannot be read, or cannot be true beside the
// records (a meter that runs back), is taken out again with the rule's words as the reason. That a liner is at its limit, or that
// steel shows, is no reason: such readings are what the records are for, and are written like all others.

import path from 'node:path';
import { analyse } from '../analysis/analyse.js';
import type { Analysis } from '../analysis/analysis.js';
import type { Mapping } from '../exchange/mapping.js';
import { nameFor, printInspection, readingLine } from '../exchange/print-inspections.js';
import type { FreshInspection, FreshReading } from '../exchange/settle-readings.js';
import type { Passed } from '../exchange/take-readings.js';
import { blocksOf } from '../language/blocks.js';
import { formatText } from '../language/format.js';
import { formatDay } from '../domain/units/calendar.js';
import type { Origin } from '../domain/model/origin.js';
import type { Finding, Severity } from '../validation/finding.js';
import type { EstateText } from './read-estate.js';
import { fileName } from './write-files.js';

export interface PlacedFile {
  readonly full: string;
  readonly path: string;
  readonly text: string;
  /** The whole text where it is new, else the lines that come in. */
  readonly shown: readonly string[];
  readonly isNew: boolean;
}

export interface PlacedReadings {
  readonly files: readonly PlacedFile[];
  readonly readings: number;
  readonly skipped: readonly Passed[];
  /** What `check` says of the new lines, and what it newly says elsewhere. */
  readonly remarks: readonly NewFinding[];
}

export interface NewFinding {
  readonly path: string;
  readonly line: number;
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
}

export interface PlacedInput {
  readonly analysis: Analysis;
  readonly texts: readonly EstateText[];
  readonly mapping: Mapping;
  /** Full path, and as it is shown. */
  readonly folder: { readonly full: string; readonly path: string };
}

export function placeInspections(given: readonly FreshInspection[], input: PlacedInput): PlacedReadings {
  const before = new Set(input.analysis.findings.map((finding) => keyOf(finding, input.analysis)));
  const skipped: Passed[] = [];
  let inspections = given;
  for (;;) {
    const drafts = draftsOf(inspections, input, skipped);
    const after = analyse([
      ...input.texts.filter((text) => !drafts.some((draft) => draft.path === text.path)).map(sourceOf),
      ...drafts.map(sourceOf),
    ]);
    const fresh = after.findings.filter((finding) => !before.has(keyOf(finding, after)));
    const wrong = wrongReadings(fresh, drafts, after);
    if (wrong.size === 0) {
      const readings = inspections.reduce((sum, one) => sum + one.readings.length, 0);
      return { files: drafts, readings, skipped, remarks: fresh.map((finding) => remark(finding, after)) };
    }
    for (const [{ where }, why] of wrong) skipped.push({ where, why });
    inspections = without(inspections, new Set(wrong.keys()));
  }
}

function sourceOf({ path: uri, text }: { readonly path: string; readonly text: string }): {
  uri: string;
  text: string;
} {
  return { uri, text };
}

/** A finding whatever its line is: lines move when others come in. */
function keyOf({ code, message, origin }: Finding, analysis: Analysis): string {
  return JSON.stringify([code, message, analysis.uriOf(origin.source)]);
}

function remark({ code, severity, message, origin }: Finding, analysis: Analysis): NewFinding {
  const { uri, line } = analysis.locate(origin);
  return { path: uri, line, code, severity, message };
}

interface Draft extends PlacedFile {
  /** Lines from 1 with the readings that an error there speaks against. */
  readonly answers: ReadonlyMap<number, readonly FreshReading[]>;
}

/** Errors that speak against a record and not of the machine: what cannot be read (TL1..), and records that cannot be true. */
function isAgainstTheRecord(code: string): boolean {
  return (
    code.startsWith('TL1') ||
    ['TL301', 'TL302', 'TL303', 'TL304', 'TL305', 'TL326', 'TL327', 'TL378'].includes(code)
  );
}

/** The new lines that such an error speaks of, on either side: which of two that contradict each other is right, nobody here knows. */
function wrongReadings(
  findings: readonly Finding[],
  drafts: readonly Draft[],
  analysis: Analysis,
): ReadonlyMap<FreshReading, string> {
  const wrong = new Map<FreshReading, string>();
  for (const { severity, code, message, origin, related = [] } of findings) {
    if (severity !== 'error' || !isAgainstTheRecord(code)) continue;
    const at = (place: Origin): readonly FreshReading[] => {
      const { uri, line } = analysis.locate(place);
      return drafts.find((draft) => draft.path === uri)?.answers.get(line) ?? [];
    };
    for (const place of [origin, ...related.map((other) => other.origin)])
      for (const reading of at(place)) wrong.set(reading, `${code}: ${message}`);
  }
  return wrong;
}

function without(
  inspections: readonly FreshInspection[],
  wrong: ReadonlySet<FreshReading>,
): readonly FreshInspection[] {
  return inspections
    .map((one) => ({ ...one, readings: one.readings.filter((reading) => !wrong.has(reading)) }))
    .filter(({ readings }) => readings.length > 0);
}

function draftsOf(
  inspections: readonly FreshInspection[],
  { analysis, texts, mapping, folder }: PlacedInput,
  skipped: Passed[],
): readonly Draft[] {
  const drafts = new Map<string, Draft>();
  for (const inspection of inspections) {
    if (inspection.into) {
      const uri = analysis.uriOf(inspection.into.origin.source);
      const old = texts.find((text) => text.path === uri);
      // Rows that came in before move the block, and not its place among the others.
      const index = blocksOf(old?.text ?? '')?.findIndex(
        ({ start }) => start === inspection.into?.origin.start,
      );
      const draft = old && (drafts.get(uri) ?? { ...old, full: old.full ?? '' });
      const made = draft && addedTo(draft, index ?? -1, inspection, mapping);
      if (made) drafts.set(uri, made);
      else
        for (const { where } of inspection.readings)
          skipped.push({ where, why: `${uri} cannot take it: the text does not read as a whole` });
      continue;
    }
    const name = nameFor(inspection.conveyor, analysis.estate.conveyors);
    const file = path.join(fileName(name), `${formatDay(inspection.day)}.trough`);
    const shown = path.posix.join(folder.path, file.split(path.sep).join('/'));
    drafts.set(shown, newFile(path.join(folder.full, file), shown, inspection, name, mapping, texts));
  }
  return [...drafts.values()];
}

function newFile(
  full: string,
  shown: string,
  inspection: FreshInspection,
  name: string,
  mapping: Mapping,
  texts: readonly EstateText[],
): Draft {
  const lines = printInspection(inspection, name, mapping);
  const own = lines.map(({ text }) => text);
  // A file of that name with something else in it keeps what it has.
  const old = texts.find((text) => text.full === full || text.path === shown)?.text;
  const front = old === undefined || old.trim() === '' ? '' : `${old.trimEnd()}\n\n`;
  const first = front.split('\n').length;
  const answers = new Map<number, readonly FreshReading[]>();
  for (const [i, { reading }] of lines.entries())
    answers.set(first + i, reading ? [reading] : inspection.readings);
  return {
    full,
    path: shown,
    text: front + formatText(`${own.join('\n')}\n`),
    shown: own,
    isNew: front === '',
    answers,
  };
}

/** The rows before the closing brace of the block of that conveyor and day; nothing else of the text is touched. */
function addedTo(
  old: {
    readonly full: string;
    readonly path: string;
    readonly text: string;
    readonly shown?: readonly string[];
    readonly answers?: Draft['answers'];
  },
  index: number,
  { into, readings }: FreshInspection,
  mapping: Mapping,
): Draft | undefined {
  const block = blocksOf(old.text)?.[index];
  if (!block || !into) return undefined;
  const eol = old.text.includes('\r\n') ? '\r\n' : '\n';
  const front = old.text.slice(0, block.close).replace(/[ \t]+$/, '');
  const start = front.endsWith('\n') ? front : front + eol;
  const rows = readings.map((reading) =>
    readingLine(reading, into.view.direction, otherError(mapping, into)),
  );
  const first = start.split('\n').length;
  const answers = new Map(
    [...(old.answers ?? [])].map(([line, of]) => [line >= first ? line + rows.length : line, of]),
  );
  for (const [i, reading] of readings.entries()) answers.set(first + i, [reading]);
  return {
    full: old.full,
    path: old.path,
    text: start + rows.map((row) => row + eol).join('') + old.text.slice(block.close),
    shown: [...(old.shown ?? []), `// into ${block.identity}`, ...rows],
    isNew: false,
    answers,
  };
}

/** The error of the mapping's gauge, where the block in which the reading goes was measured with another. */
function otherError(
  { gauge }: Mapping,
  { gauge: own }: NonNullable<FreshInspection['into']>,
): string | undefined {
  const stated = /(?:±|\+\/-)\s*(.+)$/.exec(gauge ?? '')?.[1];
  return stated === undefined || own?.error?.text === stated ? undefined : stated;
}
