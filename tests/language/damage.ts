// Lines of sound texts, damaged in ten ways a hurried author damages them, and what the checker says of each: whether it is
// told once, on its own line, with nothing said of other lines. Drawn from a seed; tests take a sample, the bench takes all.

import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Finding } from '../../src/validation/finding.js';
import { createWorkspace, type Workspace } from '../../src/analysis/workspace.js';

export const ways = [
  'word dropped',
  'word doubled',
  'unit dropped',
  'words swapped',
  'word misspelt',
  'cut short',
  'word too much',
  'quote missing',
  'brace missing',
  'line of another block',
] as const;
export type Way = (typeof ways)[number];

export interface SoundText {
  readonly uri: string;
  readonly text: string;
}

/** Texts that are one estate together. */
export type SoundEstate = readonly SoundText[];

export interface Damaged {
  readonly way: Way;
  readonly uri: string;
  /** From 1: where the damage is. */
  readonly line: number;
  readonly before: string;
  readonly after: string;
  readonly text: string;
}

export interface Judged {
  readonly damage: Damaged;
  /** Findings that the sound text has not: on the line itself, and elsewhere. */
  readonly here: readonly string[];
  readonly elsewhere: readonly string[];
  readonly isError: boolean;
  /** One of the fixes offered, or a line in the message, is the sound line again. */
  readonly namesRepair: boolean;
}

/** Draws whole numbers below `count`. */
export type Draw = (count: number) => number;

export function drawer(seed: number): Draw {
  let state = seed >>> 0;
  return (count) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 4294967296) * count);
  };
}

export function estateOf(files: readonly string[]): SoundEstate {
  return files.map((uri) => ({ uri, text: readFileSync(uri, 'utf8') }));
}

/** By folder of the examples, each an estate. */
export function byFolder(files: readonly string[], depth: number): readonly SoundEstate[] {
  const folders = new Map<string, string[]>();
  for (const file of files) {
    const key = dirname(file).split('/').slice(0, depth).join('/');
    folders.set(key, [...(folders.get(key) ?? []), file]);
  }
  return [...folders.values()].map(estateOf);
}

const words = /"[^"\n]*"|[^\s"]+/g;

/** The line damaged in one way; undefined where that way has nothing to take hold of. */
export function damageLine(
  line: string,
  way: Way,
  draw: Draw,
  others: readonly string[],
): string | undefined {
  const indent = /^\s*/.exec(line)?.[0] ?? '';
  const parts = [...line.matchAll(words)].map(([word]) => word);
  const at = draw(parts.length);
  const joined = (changed: readonly string[]): string => indent + changed.join(' ');
  switch (way) {
    case 'word dropped':
      return parts.length > 1 ? joined(parts.filter((_, i) => i !== at)) : undefined;
    case 'word doubled':
      return joined(parts.flatMap((part, i) => (i === at ? [part, part] : [part])));
    case 'unit dropped': {
      const units = [...line.matchAll(/(?<=\d) ?(?:mm|m|kg|h|deg|in|kW|rpm|t|min|h\/week)\b/g)];
      const unit = units[draw(units.length)];
      return unit && line.slice(0, unit.index) + line.slice(unit.index + unit[0].length);
    }
    case 'words swapped': {
      if (parts.length < 3) return undefined;
      const i = draw(parts.length - 1);
      const changed = [...parts];
      [changed[i], changed[i + 1]] = [parts[i + 1] ?? '', parts[i] ?? ''];
      return joined(changed);
    }
    case 'word misspelt': {
      const long = parts.flatMap((part, i) => (/^[a-z-]{4,}$/.test(part) ? [i] : []));
      const i = long[draw(long.length)];
      const word = parts[i ?? -1];
      if (i === undefined || word === undefined) return undefined;
      const cut = 1 + draw(word.length - 2);
      return joined(parts.map((part, k) => (k === i ? word.slice(0, cut) + word.slice(cut + 1) : part)));
    }
    case 'cut short':
      return parts.length > 1 ? joined(parts.slice(0, 1 + draw(parts.length - 1))) : undefined;
    case 'word too much':
      return `${line} ${['again', 'about', 'ok', 'left'][draw(4)] ?? ''}`;
    case 'quote missing': {
      const quotes = [...line.matchAll(/"/g)].map(({ index }) => index);
      const quote = quotes[draw(quotes.length)];
      return quote === undefined ? undefined : line.slice(0, quote) + line.slice(quote + 1);
    }
    case 'brace missing':
      return line.includes('{')
        ? line.replace(/ *\{/, '')
        : line.includes('}')
          ? line.replace('}', '')
          : undefined;
    case 'line of another block':
      return others.length === 0
        ? undefined
        : `${line}\n${indent}${others[draw(others.length)]?.trim() ?? ''}`;
  }
}

/** Lines that say something, by number from 0. */
export function linesOf(text: string): readonly number[] {
  return text
    .split('\n')
    .flatMap((line, i) => (/[^\s/]/.test(line) && !/^\s*(\/\/|\/?\*)/.test(line) ? [i] : []))
    .filter((i) => !inComment(text, i));
}

function inComment(text: string, line: number): boolean {
  const before = text.split('\n').slice(0, line).join('\n');
  return before.lastIndexOf('/*') > before.lastIndexOf('*/');
}

export class Bench {
  private readonly workspace: Workspace = createWorkspace();
  private readonly sound: ReadonlyMap<string, number>;

  constructor(readonly estate: SoundEstate) {
    for (const { uri, text } of estate) this.workspace.set(uri, { text });
    this.sound = this.counted();
  }

  judge(damage: Damaged): Judged {
    const { uri, text, line, way } = damage;
    this.workspace.set(uri, { text });
    const analysis = this.workspace.analyse();
    const left = new Map(this.counted());
    for (const [key, count] of this.sound) left.set(key, Math.max(0, (left.get(key) ?? 0) - count));
    const fresh = analysis.findings.filter((finding) => {
      const key = this.keyOf(finding);
      const count = left.get(key) ?? 0;
      left.set(key, count - 1);
      return count > 0;
    });
    // A brace that is missing is told where the block should have ended, on the line above.
    const own =
      way === 'line of another block' ? [line + 1] : way === 'brace missing' ? [line, line - 1] : [line];
    const isHere = (finding: Finding): boolean => {
      const at = analysis.locate(finding.origin);
      return at.uri === uri && own.includes(at.line);
    };
    const here = fresh.filter(isHere);
    const original = this.estate.find((one) => one.uri === uri)?.text ?? '';
    const told = (finding: Finding): string => {
      const at = analysis.locate(finding.origin);
      return `${at.uri.split('/').at(-1) ?? ''}:${at.line} ${finding.code} ${finding.message}`;
    };
    const judged: Judged = {
      damage,
      here: here.map(told),
      elsewhere: fresh.filter((finding) => !isHere(finding)).map(told),
      isError: fresh.some(({ severity }) => severity === 'error'),
      namesRepair: fresh.some((finding) => mends(finding, text, original, damage)),
    };
    this.workspace.set(uri, { text: original });
    return judged;
  }

  private counted(): ReadonlyMap<string, number> {
    const counts = new Map<string, number>();
    for (const finding of this.workspace.analyse().findings) {
      const key = this.keyOf(finding);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return counts;
  }

  private keyOf(finding: Finding): string {
    // A finding that stood there before and now has another number in it is no new one.
    return `${this.workspace.analyse().uriOf(finding.origin.source)} ${finding.code}`;
  }
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

function mends(finding: Finding, text: string, original: string, damage: Damaged): boolean {
  for (const { edits } of finding.fixes ?? []) {
    const sorted = [...edits].sort((a, b) => b.origin.start - a.origin.start);
    const mended = sorted.reduce(
      (now, { origin, text: put }) => now.slice(0, origin.start) + put + now.slice(origin.end),
      text,
    );
    if (plain(mended) === plain(original)) return true;
  }
  if (damage.way === 'brace missing') return /[{}]` (?:of the [a-z ]+ )?is missing/.test(finding.message);
  if (damage.way === 'quote missing') return finding.message.includes('no closing quote');
  return plain(finding.message).includes(`\`${plain(damage.before)}\``);
}

/** The damages of a text, as many a line and way as asked. */
export function* damagesOf(
  { uri, text }: SoundText,
  draw: Draw,
  others: readonly string[],
  chosen: (line: number, way: Way) => boolean = () => true,
): Generator<Damaged> {
  const lines = text.split('\n');
  for (const i of linesOf(text)) {
    for (const way of ways) {
      if (!chosen(i, way)) continue;
      const before = lines[i] ?? '';
      const after = damageLine(before, way, draw, others);
      if (after === undefined || plain(after) === plain(before)) continue;
      const damaged = [...lines.slice(0, i), ...after.split('\n'), ...lines.slice(i + 1)].join('\n');
      yield { way, uri, line: i + 1, before, after, text: damaged };
    }
  }
}
