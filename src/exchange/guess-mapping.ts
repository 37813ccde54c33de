// A first mapping for a sheet that has none: what can be told from its heads and cells, each line with its reason, and what only a
// person knows as an open question. It is text to be read and kept; nothing is taken with it before its questions are answered.

import type { Estate } from '../domain/model/estate.js';
import { list } from '../domain/units/wording.js';
import { guessColumn, isDay, unitOfHead, type GuessedColumn, type KnownNames } from './guess/columns.js';
import { guessHeads, type GuessedHeads } from './guess/heads.js';
import { guessDecimal, guessMeaning, guessOrder, type Guess } from './guess/values.js';
import { labelsOf, withoutLetter } from './heads.js';
import { wordKey } from './mapping.js';
import { meaningText, roleText } from './mapping/meanings.js';
import { plainKey, yamlText, type MappingLine } from './mapping/print.js';
import type { Book, SheetCell, SheetRow, Table } from './table.js';
import { hasShortYear } from './values/day.js';

export interface GuessedMapping {
  readonly text: string;
  /** Questions that are open in it. */
  readonly open: readonly string[];
}

export type MadeMapping =
  { readonly ok: true; readonly guess: GuessedMapping } | { readonly ok: false; readonly message: string };

export function guessMapping(book: Book, estate: Estate, file: string): MadeMapping {
  const names = knownNames(estate);
  const found = book.tables
    .map((table) => ({ table, heads: guessHeads(table, names) }))
    .find((one): one is { table: Table; heads: GuessedHeads } => one.heads !== undefined);
  if (!found)
    return {
      ok: false,
      message: 'no row looks like the heads of readings; write a mapping by hand (see --help)',
    };
  return { ok: true, guess: new Guesser(book, estate, names, found.table, found.heads).guess(file) };
}

function knownNames({ conveyors }: Estate): KnownNames {
  return {
    conveyors: new Set(
      conveyors.flatMap(({ name, plant }) => [wordKey(name), wordKey(`${plant.name}.${name}`)]),
    ),
    points: new Set(conveyors.flatMap(({ points }) => points.map(({ name }) => wordKey(name)))),
  };
}

class Guesser {
  private readonly lines: MappingLine[] = [];
  private readonly open: string[] = [];
  /** Second heads under the dates or points. */
  private under: readonly GuessedColumn[] = [];
  private readonly data: readonly SheetRow[];
  private readonly labels: readonly string[];
  private readonly columns: readonly GuessedColumn[];
  private readonly acrossColumns: readonly number[];

  constructor(
    private readonly book: Book,
    private readonly estate: Estate,
    private readonly names: KnownNames,
    private readonly table: Table,
    private readonly heads: GuessedHeads,
  ) {
    this.data = table.rows.slice(heads.to + 1);
    this.acrossColumns = this.acrossIn(table);
    this.labels = this.labelsIn(table);
    const named = this.labels
      .map((label, column) => ({ label, column }))
      .filter(({ column }) => !this.acrossColumns.includes(column));
    const hasUnits = named.some(({ label }) => /\bunits?\b|einheit/i.test(label));
    this.columns = named
      .filter(({ column }) => this.data.some((row) => row[column]))
      .map(({ label, column }) => guessColumn(table, this.data, column, label, names, hasUnits));
  }

  /** Columns under a date or a point. */
  private acrossIn(table: Table): readonly number[] {
    const { across } = this.heads;
    return [...(table.rows[across?.row ?? -1] ?? []).entries()].flatMap(([column, cell]) => {
      if (!cell || !across) return [];
      const is = across.what === 'date' ? isDay(cell, table) : this.names.points.has(wordKey(cell.text));
      return is ? [column] : [];
    });
  }

  private labelsIn(table: Table): readonly string[] {
    const { from, to, across } = this.heads;
    const row = across && { row: across.row, columns: new Set(this.acrossIn(table)) };
    return labelsOf(table, { from, to }, row);
  }

  guess(file: string): GuessedMapping {
    this.add('writes into', 'inspections', 'the folder beside this file that takes the inspections');
    if (this.book.separator) this.add('separator', this.book.separator, 'gives the most rows of one width');
    if (this.book.encoding) this.add('encoding', this.book.encoding);
    if (this.table.sheet !== undefined) this.sheets();
    const { from, to, across } = this.heads;
    this.add(
      'heads',
      from === to ? `${from + 1}` : `${from + 1} to ${to + 1}`,
      'the rows that say what the columns are',
    );
    this.conveyor();
    this.dates();
    this.answer('decimal', guessDecimal(this.cellsOf('thickness', 'chainage', 'meter', 'tonnes')));
    this.lines.push({
      comment: 'view: downstream',
      why: 'which way the inspectors looked; needed for clock positions that are not points',
    });
    this.lines.push({
      comment: 'gauge: ultrasonic ± 0.2 mm',
      why: 'what it was measured with; left out, a coarse one is assumed',
    });
    if (across) this.across(across);
    this.lines.push({ key: 'columns' });
    for (const column of [...this.columns, ...this.under]) this.column(column);
    const above = this.sparse();
    if (above.length > 0) {
      this.lines.push({
        key: 'as above',
        value: `[${above.map(plainKey).join(', ')}]`,
        raw: true,
        why: 'DOUBTFUL: an empty cell there is read as the one above; take out what is not meant so',
      });
    }
    this.conveyors();
    this.points();
    this.words();
    return { text: yamlText(file, this.lines), open: this.open };
  }

  private add(key: string, value: string, why?: string): void {
    this.lines.push({ key, value, ...(why === undefined ? {} : { why }) });
  }

  private answer(key: string, guess: Guess<string> | undefined): void {
    if (!guess) return;
    if ('is' in guess) this.add(key, guess.is, guess.why);
    else this.ask(key, '?', guess.open);
  }

  private ask(key: string, value: string, why: string, indent = false): void {
    this.open.push(`${key}: ${why}`);
    this.lines.push({ key, value, why: `OPEN: ${why}`, ...(indent ? { indent } : {}) });
  }

  private sheets(): void {
    const value = `[${this.sheetNames().map(plainKey).join(', ')}]`;
    this.lines.push({ key: 'sheets', value, raw: true, why: 'those with the same heads' });
  }

  private sheetNames(): readonly string[] {
    return this.alike().flatMap(({ sheet }) => sheet ?? []);
  }

  /** Sheets with the same heads as the one that was looked at. */
  private alike(): readonly Table[] {
    return this.book.tables.filter((table) => {
      const labels = this.labelsIn(table);
      return this.columns.every(({ label }) => labels.includes(label));
    });
  }

  private isBySheet(): boolean {
    const sheets = this.sheetNames();
    const known = sheets.every((sheet) => this.names.conveyors.has(wordKey(sheet)));
    const isSaid = this.columns.some(({ role }) => role.is === 'conveyor');
    return !isSaid && (sheets.length > 1 || (sheets.length > 0 && known));
  }

  private conveyor(): void {
    if (this.columns.some(({ role }) => role.is === 'conveyor')) return;
    const [only, another] = this.estate.conveyors;
    if (this.isBySheet())
      this.add('conveyor', 'name of the sheet', 'no column says it, and each sheet has a name');
    else if (only && !another)
      this.add('conveyor', only.name, 'DOUBTFUL: no column says it, and the estate has no other');
    else this.ask('conveyor', '?', 'no column says which conveyor it is');
  }

  private dates(): void {
    const cells = [...this.cellsOf('date'), ...this.headsAcross('date')];
    if (cells.length === 0 && !this.columns.some(({ role }) => role.is === 'date'))
      this.ask('date', '?', 'no column says the day; write it as year-month-day');
    this.answer('dates', guessOrder(cells));
    if (cells.some(({ kind, text }) => kind === 'text' && hasShortYear(text)))
      this.add('century', '2000', 'DOUBTFUL: years have two digits; 24 is read as 2024');
    const numbers = cells.filter(({ kind, text }) => kind === 'number' || /^\d{5}(\.\d+)?$/.test(text));
    if (numbers.length > 0)
      this.ask(
        'date numbers',
        '?',
        `${numbers[0]?.text ?? ''} is a count of days: from ${this.table.dateSystem}? (1900 or 1904)`,
      );
  }

  private across({ what, row }: NonNullable<GuessedHeads['across']>): void {
    this.add(
      'across',
      what,
      `row ${row + 1} has a ${what} over each of ${this.acrossColumns.length} columns`,
    );
    if (this.heads.from !== this.heads.to) this.add('across row', `${row + 1}`);
    const under = [...new Set(this.acrossColumns.map((column) => withoutLetter(this.labels[column] ?? '')))];
    this.under = under
      .filter((label) => label !== '' && !label.startsWith('column'))
      .map((label) => guessColumn(this.table, [], -1, label, this.names, false));
    if (this.under.length > 0) return;
    const heads = this.table.rows.slice(0, this.heads.to + 1);
    const unit = heads
      .flatMap((cells) =>
        cells.flatMap((cell) => (cell ? unitOfHead(cell.text, 'thickness') : undefined) ?? []),
      )
      .at(0);
    if (unit) this.add('reading', `thickness in ${unit}`, 'the unit stands in the heads');
    else this.ask('reading', 'thickness in ?', 'no head says the unit');
  }

  private column({ label, role, why, open }: GuessedColumn): void {
    if (open !== undefined) this.ask(label, open, `${why}; the unit or the form is not said`, true);
    else this.lines.push({ key: label, value: roleText(role), why, indent: true });
  }

  private headsAcross(what: 'date' | 'point'): readonly SheetCell[] {
    const { across } = this.heads;
    if (across?.what !== what) return [];
    return this.alike().flatMap((table) =>
      this.acrossIn(table).flatMap((column) => table.rows[across.row]?.[column] ?? []),
    );
  }

  /** Cells of all sheets that are alike. */
  private cellsOf(...roles: readonly GuessedColumn['role']['is'][]): readonly SheetCell[] {
    const wanted = this.columns.filter(({ role }) => roles.includes(role.is)).map(({ label }) => label);
    return this.alike().flatMap((table) => {
      const own = [...this.labelsIn(table).entries()].flatMap(([column, label]) =>
        wanted.includes(label) ? [column] : [],
      );
      const all = roles.includes('thickness') ? [...own, ...this.acrossIn(table)] : own;
      return table.rows.slice(this.heads.to + 1).flatMap((row) => all.flatMap((column) => row[column] ?? []));
    });
  }

  /** Columns of facts with a gap beside a reading. */
  private sparse(): readonly string[] {
    const readings = [
      ...this.columns
        .filter(({ role }) => role.is === 'thickness' || role.is === 'colour')
        .map(({ column }) => column),
      ...this.acrossColumns,
    ];
    const facts = this.columns.filter(({ role }) => ['conveyor', 'date', 'point'].includes(role.is));
    return facts
      .filter(({ column }) => {
        const filled = this.data.findIndex((row) => row[column]);
        return (
          filled >= 0 &&
          this.data.slice(filled).some((row) => !row[column] && readings.some((reading) => row[reading]))
        );
      })
      .map(({ label }) => label);
  }

  /** Names that the estate does not have are a question, with the titles that are alike as a hint. */
  private conveyors(): void {
    const { conveyors } = this.estate;
    const sheets = this.isBySheet() ? this.sheetNames() : [];
    const texts = new Set([...this.cellsOf('conveyor').map(({ text }) => text), ...sheets]);
    const lines: MappingLine[] = [];
    for (const text of [...texts].slice(0, 60)) {
      if (this.names.conveyors.has(wordKey(text))) continue;
      const [near, other] = conveyors.filter(
        ({ name, title = '' }) => bare(name) === bare(text) || wordKey(title) === wordKey(text),
      );
      if (near && !other)
        lines.push({ key: text, value: near.name, why: 'DOUBTFUL: nearly the same name', indent: true });
      else {
        const why = `which conveyor is it? ${list(
          conveyors.map(({ name }) => name),
          'or',
          6,
        )}`;
        lines.push({ key: text, value: '?', why: `OPEN: ${why}`, indent: true });
        this.open.push(`${text}: ${why}`);
      }
    }
    if (lines.length > 0) this.lines.push({ key: 'conveyors' }, ...lines);
  }

  private points(): void {
    const known = this.estate.conveyors.flatMap(({ points }) => points.map(({ name }) => name));
    const texts = new Set([...this.cellsOf('point'), ...this.headsAcross('point')].map(({ text }) => text));
    const lines: MappingLine[] = [];
    for (const text of texts) {
      if (this.names.points.has(wordKey(text))) continue;
      const unit = this.heads.across ? unitOfHead(text, 'meter') : undefined;
      const [near, other] = known.filter((name, i) => isNearly(name, text) && known.indexOf(name) === i);
      if (unit && /hour|meter|stunden|zähler/i.test(text))
        lines.push({ key: text, value: `meter in ${unit}`, why: 'a row of meter readings', indent: true });
      else if (/^(mean|average|min|max|minimum|maximum|sum|total|mittel|mittelwert|summe)\b/i.test(text))
        lines.push({ key: text, value: 'not read', why: 'reckoned, and no point', indent: true });
      else if (near && !other)
        lines.push({ key: text, value: near, why: 'DOUBTFUL: nearly the same name', indent: true });
    }
    if (lines.length > 0) this.lines.push({ key: 'points' }, ...lines);
  }

  private words(): void {
    const liners = this.estate.liners;
    const texts = new Set(
      this.cellsOf('thickness', 'colour')
        .filter(({ kind, text }) => kind === 'text' && !/^[-+]?[.,]?\d/.test(text))
        .map(({ text }) => text),
    );
    const ordinal = this.cellsOf('thickness', 'colour')
      .filter(({ text }) => /^\d(?:st|nd|rd|\.)\s/i.test(text))
      .map(({ text }) => text);
    const layers = new Set(liners.flatMap((liner) => liner.layers.map(({ name }) => wordKey(name))));
    const lines: MappingLine[] = [];
    const seen = new Set<string>();
    for (const word of [...texts, ...ordinal]) {
      const key = wordKey(word);
      if (layers.has(key) || seen.has(key) || seen.size >= 60) continue;
      seen.add(key);
      const meaning = guessMeaning(word, liners);
      if (meaning) lines.push({ key: word, value: meaningText(meaning), indent: true });
      else
        lines.push({
          key: word,
          value: '?',
          why: `OPEN: a colour (colour ${[...layers][0] ?? 'grey'}, layer 2), not seen, trough showing, or no reading`,
          indent: true,
        });
      if (!meaning) this.open.push(`${word}: what does it say?`);
    }
    if (lines.length > 0) this.lines.push({ key: 'words' }, ...lines);
  }
}

/** `P7` where the sheet has `p-07` or only the number. */
function isNearly(name: string, text: string): boolean {
  return (
    bare(name) === bare(text) ||
    (/^\d+$/.test(bare(text)) && bare(name).replace(/^\p{L}+/u, '') === bare(text))
  );
}

/** Letters and digits, without zeros in front: `P-01` is `p1`, and so is `P 1`. */
function bare(name: string): string {
  return wordKey(name)
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .replace(/0+(?=\d)/g, '');
}
