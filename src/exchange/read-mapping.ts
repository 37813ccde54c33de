// The text of a mapping → the mapping. YAML in which every scalar is text (the failsafe schema), so that 7:30 stays 7:30 and no
// stays no. A key that is not known, a value that cannot be, and a question left open are each told with their line.

import { FAILSAFE_SCHEMA, YAMLException, load } from 'js-yaml';
import { parseQuantity } from '../domain/units/parse.js';
import { list } from '../domain/units/wording.js';
import { nearest } from '../language/nearest.js';
import { wordKey, type Across, type Mapping, type Role } from './mapping.js';
import { readAssetRole } from './mapping/asset-roles.js';
import { readMeaning, readPointMeaning, readRole } from './mapping/meanings.js';
import { encodings, separators } from './table.js';
import { dayOrders } from './values/day.js';
import { readMeasure, unitOf, type Measure } from './values/measure.js';

export type ReadMapping =
  | { readonly ok: true; readonly mapping: Mapping }
  /** `line` from 1, where it is known. */
  | {
      readonly ok: false;
      readonly problems: readonly { readonly line?: number; readonly message: string }[];
    };

const keys = [
  'rows',
  'writes into',
  'separator',
  'encoding',
  'sheets',
  'heads',
  'conveyor',
  'date',
  'meter',
  'dates',
  'date numbers',
  'century',
  'decimal',
  'view',
  'gauge',
  'across',
  'across row',
  'reading',
  'meter row',
  'columns',
  'as above',
  'conveyors',
  'points',
  'words',
] as const;
type Key = (typeof keys)[number];

export function readMapping(text: string): ReadMapping {
  let root: unknown;
  try {
    root = load(text, { schema: FAILSAFE_SCHEMA });
  } catch (error) {
    if (!(error instanceof YAMLException)) throw error;
    const line = error.mark === undefined ? {} : { line: error.mark.line + 1 };
    return { ok: false, problems: [{ ...line, message: error.reason }] };
  }
  const reader = new MappingReader(text);
  const mapping = reader.mapping(root);
  return mapping && reader.problems.length === 0
    ? { ok: true, mapping }
    : { ok: false, problems: reader.problems };
}

/** Collects what is wrong while it reads. */
class MappingReader {
  readonly problems: { readonly line?: number; readonly message: string }[] = [];
  private readonly lines: readonly string[];
  private root: ReadonlyMap<string, unknown> = new Map();

  constructor(text: string) {
    this.lines = text.split(/\r\n|\n|\r/);
  }

  mapping(root: unknown): Mapping | undefined {
    const entries = entriesOf(root);
    if (!entries) {
      this.problems.push({ message: 'holds no mapping: lines such as "heads: 1" are expected' });
      return undefined;
    }
    this.root = entries;
    for (const key of entries.keys()) this.checkKey(key);
    const isList = this.oneOf('rows', ['readings', 'conveyors']) === 'conveyors';
    const asIs = (head: string): string => head;
    const assets = isList ? this.table('columns', readAssetRole, asIs) : undefined;
    const columns = isList ? new Map<string, Role>() : this.table('columns', readRole, asIs);
    if ((assets ?? columns).size === 0) this.tell('columns', 'names no column');
    const across = this.across();
    const above = this.names('as above');
    for (const head of above) {
      const role = columns.get(head)?.is;
      if (role === 'meter' || role === 'tonnes' || role === 'thickness' || role === 'colour')
        this.tell(
          'as above',
          `"${head}" is measured: what was not written down is not copied from the row above`,
        );
    }
    return {
      writesInto: this.text('writes into') ?? (isList ? 'conveyors' : 'inspections'),
      heads: this.rows('heads') ?? { from: 0, to: 0 },
      columns,
      asAbove: new Set(above),
      conveyors: this.table('conveyors', (text) => text),
      points: this.table('points', readPointMeaning),
      words: this.table('words', readMeaning),
      ...optional({
        assets,
        separator: this.oneOf('separator', separators),
        encoding: this.oneOf('encoding', encodings),
        sheets: this.root.has('sheets') ? this.names('sheets') : undefined,
        conveyor: this.conveyor(),
        date: this.text('date'),
        meter: this.meter(),
        dates: this.oneOf('dates', dayOrders),
        dateNumbers: this.number('date numbers', [1900, 1904]) as 1900 | 1904 | undefined, // one of the two given
        century: this.number('century', [1900, 2000]),
        decimal: this.oneOf('decimal', ['.', ',']),
        view: this.oneOf('view', ['upstream', 'downstream']),
        gauge: this.gauge(),
        across,
        meterRow: this.meterRow(),
      }),
    };
  }

  private checkKey(key: string): void {
    if (keys.some((known) => known === key)) return;
    const [near] = nearest(key, keys, 3);
    this.tell(key, `is not known here${near ? `; is "${near}" meant?` : `; known are ${list(keys)}`}`);
  }

  private tell(key: string, message: string): void {
    this.problems.push({ ...optional({ line: this.lineOf(key) }), message: `${key}: ${message}` });
  }

  /** The first line that begins with the key, quoted or not. */
  private lineOf(key: string): number | undefined {
    const at = this.lines.findIndex((line) => {
      const trimmed = line.replace(/^[\s{-]*/, '');
      return [key, JSON.stringify(key), `'${key}'`].some((form) => trimmed.startsWith(`${form}:`));
    });
    return at < 0 ? undefined : at + 1;
  }

  private text(key: Key): string | undefined {
    const value = this.root.get(key);
    if (value === undefined) return undefined;
    if (typeof value !== 'string' || value.trim() === '') this.tell(key, 'says nothing');
    else if (isOpen(value)) this.tell(key, 'is still a question; answer it');
    else return value.trim();
    return undefined;
  }

  private oneOf<T extends string>(key: Key, allowed: readonly T[]): T | undefined {
    const text = this.text(key);
    const found = allowed.find((one) => one === text);
    if (text !== undefined && found === undefined)
      this.tell(
        key,
        `"${text}" is not one of ${list(
          allowed.map((one) => `"${one}"`),
          'or',
        )}`,
      );
    return found;
  }

  private number(key: Key, allowed: readonly number[]): number | undefined {
    const text = this.oneOf(key, allowed.map(String));
    return text === undefined ? undefined : Number(text);
  }

  /** `2`, or `1 to 3`; from 1 in the text, from 0 here. */
  private rows(key: Key): { from: number; to: number } | undefined {
    const text = this.text(key);
    if (text === undefined) return undefined;
    const parts = /^(\d+)(?:\s*to\s*(\d+))?$/.exec(text);
    const [from, to] = [Number(parts?.[1] ?? 0), Number(parts?.[2] ?? parts?.[1] ?? 0)];
    if (from >= 1 && to >= from && to <= 100) return { from: from - 1, to: to - 1 };
    this.tell(key, `"${text}" is no row or rows, such as 1 or 1 to 3`);
    return undefined;
  }

  private names(key: Key): readonly string[] {
    const value = this.root.get(key);
    if (value === undefined) return [];
    const all: readonly unknown[] = Array.isArray(value) ? value : [value];
    const names = all.filter((one): one is string => typeof one === 'string' && one.trim() !== '');
    if (names.length !== all.length || names.length === 0) this.tell(key, 'is no list of names');
    return names;
  }

  /** Sub-keys with what each says; `keyed` is what they are found by later. */
  private table<T>(key: Key, read: (text: string) => T | undefined, keyed = wordKey): ReadonlyMap<string, T> {
    const found = new Map<string, T>();
    const value = this.root.get(key);
    if (value === undefined || value === '') return found;
    const entries = entriesOf(value);
    if (!entries) this.tell(key, 'lines such as "Name: meaning" are expected below it');
    for (const [name, said] of entries ?? []) {
      const meaning = typeof said === 'string' && !isOpen(said) ? read(said.trim()) : undefined;
      if (meaning !== undefined) found.set(keyed(name), meaning);
      else if (typeof said === 'string' && isOpen(said)) this.tell(name, 'is still a question; answer it');
      else
        this.tell(
          name,
          `${typeof said === 'string' ? `"${said}"` : 'this'} is not known as a meaning under ${key}`,
        );
    }
    return found;
  }

  private conveyor(): Mapping['conveyor'] {
    const text = this.text('conveyor');
    if (text === undefined) return undefined;
    return text === 'name of the sheet' ? text : { name: text };
  }

  private across(): Across | undefined {
    const what = this.oneOf('across', ['date', 'point']);
    const row = this.rows('across row') ?? this.rows('heads');
    const said = this.text('reading');
    const reading = said === undefined ? undefined : readRole(said);
    if (said !== undefined && reading?.is !== 'thickness' && reading?.is !== 'colour')
      this.tell('reading', `"${said}" is neither thickness nor colour`);
    if (what === undefined) return undefined;
    return { what, row: row?.from ?? 0, reading: reading ?? { is: 'not read' } };
  }

  private meterRow(): Mapping['meterRow'] {
    const text = this.text('meter row');
    if (text === undefined) return undefined;
    const parts = /^(\d+) in (\S+)$/.exec(text);
    const unit = unitOf(parts?.[2] ?? '', 'duration');
    if (parts && unit) return { row: Number(parts[1]) - 1, unit };
    this.tell('meter row', `"${text}" is no row with its unit, such as "2 in h"`);
    return undefined;
  }

  private meter(): Measure | undefined {
    const text = this.text('meter');
    if (text === undefined) return undefined;
    const read = readMeasure(
      { kind: 'text', text },
      { dimension: 'duration', unit: undefined, decimal: '.' },
    );
    if (read.ok) return read.measure;
    this.tell('meter', `${read.why}; write it as 4710 h`);
    return undefined;
  }

  private gauge(): string | undefined {
    const text = this.text('gauge');
    if (text === undefined) return undefined;
    const parts = /^(?:ultrasonic|depth gauge|calliper|by eye)(?:\s*(?:±|\+\/-)\s*(.+))?$/.exec(text);
    if (parts && (parts[1] === undefined || parseQuantity(parts[1], 'length').ok)) return text;
    this.tell(
      'gauge',
      `"${text}" is no gauge, such as "ultrasonic ± 0.2 mm" (ultrasonic, depth gauge, calliper, by eye)`,
    );
    return undefined;
  }
}

function isOpen(text: string): boolean {
  return text.trim() === '?' || text.trim().endsWith(' ?');
}

function entriesOf(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return new Map(Object.entries(value));
}

function optional<T extends object>(facts: T): { [K in keyof T]?: NonNullable<T[K]> } {
  // Only what is there is left, so that the type says no more than is true.
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
}
