// A table and its mapping → what the sheet says, row by row: readings, meter readings, and what could not be taken with the
// reason. Nothing is known here of the estate; whether a point exists or a colour is a layer's is settled in settle-readings.ts.

import type { CalendarDay } from '../domain/units/calendar.js';
import { labelsOf, withoutLetter } from './heads.js';
import { wordKey, type Mapping, type WordMeaning, type Role } from './mapping.js';
import { placeName, type SheetCell, type SheetRow, type Table } from './table.js';
import { readClock, type Clock } from './values/clock.js';
import { ordersOf, readDay, type DayStated } from './values/day.js';
import { readMeasure, unitOf, type Measure } from './values/measure.js';

export type CellSays =
  | { readonly kind: 'thickness'; readonly measure: Measure }
  | { readonly kind: 'meaning'; readonly meaning: WordMeaning; readonly word: string }
  /** A word that the mapping does not speak of: a layer's name, or nothing. */
  | { readonly kind: 'word'; readonly word: string };

export interface SheetReading {
  /** Sheet and cell. */
  readonly where: string;
  readonly conveyor: string;
  readonly day: CalendarDay;
  /** A named point, or a place of its own; a place beside a name is there to be compared. */
  readonly point?: string;
  readonly at?: Measure;
  readonly clock?: Clock;
  readonly said: CellSays;
  /** Of a thickness. */
  readonly error?: Measure;
  readonly gauge?: string;
  readonly note?: string;
  readonly by?: string;
}

export interface SheetMeter {
  readonly where: string;
  readonly conveyor: string;
  readonly day: CalendarDay;
  readonly hours?: Measure;
  readonly tonnes?: Measure;
}

export interface Passed {
  readonly where: string;
  readonly why: string;
  /** The mapping itself says that such a cell holds no reading. */
  readonly intended?: true;
}

export interface Taken {
  readonly readings: readonly SheetReading[];
  readonly meters: readonly SheetMeter[];
  readonly skipped: readonly Passed[];
  readonly said: readonly string[];
}

/** A mapping that does not fit the sheet stops everything: half of the columns would be half of the truth. */
export type TakenOrNot =
  { readonly ok: true; readonly taken: Taken } | { readonly ok: false; readonly message: string };

export function takeReadings(table: Table, mapping: Mapping): TakenOrNot {
  const across = mapping.across && { row: mapping.across.row, columns: columnsAcross(table, mapping) };
  const labels = labelsOf(table, mapping.heads, across);
  const name = table.sheet === undefined ? '' : `${table.sheet}: `;
  // Under dates the same few words stand again and again, so that a label there carries the letter of its column.
  const known = new Set([...labels, ...(across ? labels.map(withoutLetter) : [])]);
  const missing = [...mapping.columns.keys(), ...mapping.asAbove].filter((head) => !known.has(head));
  if (missing.length > 0)
    return {
      ok: false,
      message: `${name}has no column ${quoted(missing)}; its heads are ${quoted(labels)}`,
    };
  const taker = new Taker(table, mapping, labels, across?.columns ?? new Set());
  for (let row = 0; row < table.rows.length; row++) taker.take(row);
  return { ok: true, taken: taker.taken() };
}

/** Which columns stand under a date, or under a point that is no column with a name in the mapping. */
function columnsAcross(table: Table, mapping: Mapping): ReadonlySet<number> {
  const { across } = mapping;
  const heads = table.rows[across?.row ?? -1] ?? [];
  const full = labelsOf(table, mapping.heads);
  const stated = dayStatedOf(table, mapping);
  const found = new Set<number>();
  for (const [column, head] of heads.entries()) {
    if (!head || mapping.columns.has(full[column] ?? '')) continue;
    if (across?.what === 'point' || readDay(head, stated).ok || looksLikeADay(head)) found.add(column);
  }
  return found;
}

/** One that cannot be read is told with each reading under it. */
function looksLikeADay({ kind, text }: SheetCell): boolean {
  return kind === 'date' || ordersOf(text).length > 0 || /^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}/.test(text);
}

function dayStatedOf({ dateSystem }: Table, { dates, dateNumbers, century }: Mapping): DayStated {
  return { order: dates, numbersFrom: dateNumbers, century, dateSystem };
}

interface ReadingColumn {
  readonly column: number;
  readonly role: Role;
  readonly head?: SheetCell;
}

/** What a row says besides its readings. */
interface RowFacts {
  readonly row: number;
  readonly conveyor: string | undefined;
  readonly day: CalendarDay | undefined;
  /** Why it has no day, where it ought to have one. */
  readonly noDay: string | undefined;
}

class Taker {
  private readonly readings: SheetReading[] = [];
  private readonly meters: SheetMeter[] = [];
  private readonly skipped: Passed[] = [];
  private readonly byRole = new Map<Role['is'], number>();
  private readonly roles = new Map<number, Role>();
  private readonly readingColumns: readonly ReadingColumn[];
  private readonly above = new Map<number, SheetCell>();
  private readonly dayStated: DayStated;
  private emptyCells = 0;
  private repeatedHeads = 0;
  private passedOver = 0;
  private readonly unread: readonly string[];

  constructor(
    private readonly table: Table,
    private readonly mapping: Mapping,
    private readonly labels: readonly string[],
    private readonly acrossColumns: ReadonlySet<number>,
  ) {
    this.dayStated = dayStatedOf(table, mapping);
    for (const [column, label] of labels.entries()) {
      const role = mapping.columns.get(label);
      if (!role) continue;
      this.roles.set(column, role);
      if (!this.byRole.has(role.is)) this.byRole.set(role.is, column);
    }
    this.readingColumns = this.columnsOfReadings();
    const known = new Set([...this.roles.keys(), ...this.readingColumns.map(({ column }) => column)]);
    this.unread = labels.filter(
      (_, column) => !known.has(column) && table.rows.some((row, at) => at > mapping.heads.to && row[column]),
    );
  }

  taken(): Taken {
    const said = [
      ...(this.unread.length > 0
        ? [`not read, because the mapping does not name them: ${quoted(this.unread)}`]
        : []),
      ...this.counts(this.emptyCells, ['empty cell says nothing', 'empty cells say nothing']),
      ...this.counts(this.passedOver, [
        'row is no point, as the mapping says',
        'rows are no points, as the mapping says',
      ]),
      ...this.counts(this.repeatedHeads, ['row repeats the heads', 'rows repeat the heads']),
    ];
    return { readings: this.readings, meters: this.meters, skipped: this.skipped, said };
  }

  /** Of a workbook with the sheet: each of its sheets has counts of its own. */
  private counts(count: number, [one, more]: readonly [string, string]): string[] {
    if (count === 0) return [];
    const { sheet } = this.table;
    return [`${sheet === undefined ? '' : `${sheet}: `}${count} ${count === 1 ? one : more}`];
  }

  take(row: number): void {
    const { heads, across, meterRow } = this.mapping;
    if (row === meterRow?.row) return this.takeMeterRow(row, meterRow.unit);
    if (row <= heads.to || row === across?.row) return;
    const cells = this.table.rows[row] ?? [];
    if (!cells.some((cell) => cell)) return;
    if (this.repeatsHeads(cells)) {
      this.repeatedHeads++;
      return;
    }
    for (const [column, cell] of cells.entries()) if (cell) this.above.set(column, cell);
    const facts: RowFacts = { row, conveyor: this.conveyorOf(row), ...this.dayOf(row) };
    const point = this.text(row, 'point');
    const meant = point === undefined ? undefined : this.mapping.points.get(wordKey(point));
    if (typeof meant === 'object') {
      if (meant.row === 'meter') this.takeMeters(facts, meant.unit);
      else this.passedOver++;
    } else {
      this.takeMeter(facts);
      this.takeReadings(facts, meant ?? point);
    }
  }

  private columnsOfReadings(): readonly ReadingColumn[] {
    const { across } = this.mapping;
    const own = [...this.roles].flatMap(([column, role]) =>
      role.is === 'thickness' || role.is === 'colour' ? [{ column, role }] : [],
    );
    if (!across) return own;
    const heads = this.table.rows[across.row] ?? [];
    return [...this.acrossColumns].flatMap((column) => {
      const head = heads[column];
      const label = this.labels[column] ?? '';
      const role =
        this.mapping.columns.get(label) ?? this.mapping.columns.get(withoutLetter(label)) ?? across.reading;
      return head && (role.is === 'thickness' || role.is === 'colour') ? [{ column, role, head }] : [];
    });
  }

  private cell(row: number, is: Role['is']): SheetCell | undefined {
    const column = this.byRole.get(is);
    if (column === undefined) return undefined;
    const own = this.table.rows[row]?.[column];
    return own ?? (this.mapping.asAbove.has(this.labels[column] ?? '') ? this.above.get(column) : undefined);
  }

  private text(row: number, is: Role['is']): string | undefined {
    const cell = this.cell(row, is);
    return cell && cell.kind !== 'error' ? cell.text : undefined;
  }

  private conveyorOf(row: number): string | undefined {
    const { conveyor } = this.mapping;
    if (this.byRole.has('conveyor')) {
      const [plant, name] = [this.text(row, 'plant'), this.text(row, 'conveyor')];
      return plant === undefined || name === undefined ? name : `${plant}.${name}`;
    }
    return conveyor === 'name of the sheet' ? this.table.sheet : conveyor?.name;
  }

  private dayOf(row: number): Pick<RowFacts, 'day' | 'noDay'> {
    const stated: SheetCell | undefined =
      this.cell(row, 'date') ??
      (this.mapping.date === undefined ? undefined : { kind: 'text', text: this.mapping.date });
    if (!stated) return { day: undefined, noDay: 'no date' };
    const read = readDay(stated, this.dayStated);
    return read.ok ? { day: read.day, noDay: undefined } : { day: undefined, noDay: read.why };
  }

  /** A row of meter readings among the points of a wide sheet. */
  private takeMeters(facts: RowFacts, unit: string): void {
    for (const { column, head } of this.readingColumns) this.takeMeterCell(facts, column, head, unit);
  }

  /** It holds for the whole sheet, which then is of one conveyor. */
  private takeMeterRow(row: number, unit: string): void {
    if (this.byRole.has('conveyor')) {
      const why = 'a row of meter readings holds for one conveyor, and this sheet has a column of conveyors';
      this.skipped.push({ where: placeName(this.table, row), why });
      return;
    }
    this.takeMeters({ row, conveyor: this.conveyorOf(row), day: undefined, noDay: undefined }, unit);
  }

  private takeMeterCell(facts: RowFacts, column: number, head: SheetCell | undefined, unit: string): void {
    const cell = this.table.rows[facts.row]?.[column];
    if (!cell || !head || this.isNoReading(cell)) return;
    const where = placeName(this.table, facts.row, column);
    const day = readDay(head, this.dayStated);
    const read = readMeasure(cell, { dimension: 'duration', unit, decimal: this.mapping.decimal });
    if (!read.ok) this.skipped.push({ where, why: `meter: ${read.why}` });
    else if (day.ok && facts.conveyor !== undefined)
      this.meters.push({ where, conveyor: facts.conveyor, day: day.day, hours: read.measure });
  }

  private takeMeter(facts: RowFacts): void {
    const [hours, tonnes] = [this.counter(facts.row, 'meter'), this.counter(facts.row, 'tonnes')];
    if ((!hours && !tonnes) || facts.conveyor === undefined || facts.day === undefined) return;
    this.meters.push({
      where: placeName(this.table, facts.row),
      conveyor: facts.conveyor,
      day: facts.day,
      ...(hours ? { hours } : {}),
      ...(tonnes ? { tonnes } : {}),
    });
  }

  private counter(row: number, is: 'meter' | 'tonnes'): Measure | undefined {
    const cell = this.cell(row, is);
    const role = this.roles.get(this.byRole.get(is) ?? -1);
    if (!cell || this.isNoReading(cell) || role?.is !== is) return undefined;
    const dimension = is === 'meter' ? 'duration' : 'mass';
    const read = readMeasure(cell, { dimension, unit: role.unit, decimal: this.mapping.decimal });
    if (read.ok) return read.measure;
    this.skipped.push({ where: placeName(this.table, row, this.byRole.get(is)), why: `${is}: ${read.why}` });
    return undefined;
  }

  private takeReadings(facts: RowFacts, point: string | undefined): void {
    const cells = this.readingColumns.flatMap((reading) => {
      const cell = this.table.rows[facts.row]?.[reading.column];
      return cell && !this.means(cell, 'blank') ? [{ ...reading, cell }] : [];
    });
    if (this.mapping.across) this.emptyCells += this.readingColumns.length - cells.length;
    else if (cells.length === 0)
      this.skipped.push({ where: placeName(this.table, facts.row), why: 'holds no reading' });
    for (const { column, role, head, cell } of cells) {
      const where = placeName(this.table, facts.row, column);
      if (this.isNoReading(cell)) {
        this.skipped.push({ where, why: `${cell.text}: no reading`, intended: true });
        continue;
      }
      const made = this.reading(facts, point, { column, role, ...(head ? { head } : {}) }, cell);
      if (typeof made === 'string') this.skipped.push({ where, why: made });
      else this.readings.push({ where, ...made });
    }
  }

  /** The reading, or why there is none. */
  private reading(
    facts: RowFacts,
    point: string | undefined,
    { role, head }: ReadingColumn,
    cell: SheetCell,
  ): Omit<SheetReading, 'where'> | string {
    if (cell.mergedWith !== undefined) return `is merged with ${cell.mergedWith}, which is one reading`;
    const said = this.saidIn(facts.row, cell, role);
    if (typeof said === 'string') return said;
    const what = this.mapping.across?.what;
    const day = what === 'date' && head ? readDay(head, this.dayStated) : undefined;
    if (day && !day.ok) return day.why;
    const on = day?.day ?? facts.day;
    if (on === undefined) return facts.noDay ?? 'no date';
    if (facts.conveyor === undefined) return 'no conveyor';
    const spot = this.spot(facts.row, what === 'point' && head ? this.pointOf(head.text) : point);
    if (typeof spot === 'string') return spot;
    const error = said.kind === 'thickness' ? this.errorIn(facts.row) : undefined;
    if (typeof error === 'string') return error;
    const words = (['note', 'by', 'gauge'] as const).flatMap((is) => {
      const text = this.text(facts.row, is);
      return text === undefined ? [] : [[is, text] as const];
    });
    return {
      conveyor: facts.conveyor,
      day: on,
      ...spot,
      said,
      ...(error ? { error } : {}),
      ...Object.fromEntries(words),
    };
  }

  private errorIn(row: number): Measure | string | undefined {
    const cell = this.cell(row, 'error');
    const role = this.roles.get(this.byRole.get('error') ?? -1);
    if (!cell || this.isNoReading(cell) || role?.is !== 'error') return undefined;
    const read = readMeasure(cell, { dimension: 'length', unit: role.unit, decimal: this.mapping.decimal });
    return read.ok ? read.measure : `error: ${read.why}`;
  }

  private pointOf(text: string): string {
    const meant = this.mapping.points.get(wordKey(text));
    return typeof meant === 'string' ? meant : text;
  }

  private spot(
    row: number,
    point: string | undefined,
  ): Pick<SheetReading, 'point' | 'at' | 'clock'> | string {
    const [atCell, clockCell] = [this.cell(row, 'chainage'), this.cell(row, 'clock')];
    const [atRole, clockRole] = [
      this.roles.get(this.byRole.get('chainage') ?? -1),
      this.roles.get(this.byRole.get('clock') ?? -1),
    ];
    const at =
      atCell && atRole?.is === 'chainage'
        ? readMeasure(atCell, { dimension: 'length', unit: atRole.unit, decimal: this.mapping.decimal })
        : undefined;
    const clock =
      clockCell && clockRole?.is === 'clock'
        ? readClock(clockCell, clockRole.form, this.mapping.decimal)
        : undefined;
    if (at && !at.ok) return `chainage: ${at.why}`;
    if (clock && !clock.ok) return `clock: ${clock.why}`;
    const place = { ...(at ? { at: at.measure } : {}), ...(clock ? { clock: clock.clock } : {}) };
    if (point !== undefined) return { point, ...place };
    if (at && clock) return place;
    return at || clock ? 'no point, and of chainage and clock only one' : 'no point';
  }

  private saidIn(row: number, cell: SheetCell, role: Role): CellSays | string {
    const meaning = this.mapping.words.get(wordKey(cell.text));
    if (meaning) return { kind: 'meaning', meaning, word: cell.text };
    if (cell.kind === 'error') return `holds ${cell.text}`;
    if (role.is !== 'thickness') return { kind: 'word', word: cell.text };
    const unit = role.unit ?? this.unitIn(row);
    const read = readMeasure(cell, { dimension: 'length', unit, decimal: this.mapping.decimal });
    if (read.ok) return { kind: 'thickness', measure: read.measure };
    return read.number ? read.why : { kind: 'word', word: cell.text };
  }

  private unitIn(row: number): string | undefined {
    const text = this.text(row, 'unit');
    return text === undefined ? undefined : (unitOf(text, 'length') ?? text);
  }

  private isNoReading(cell: SheetCell): boolean {
    return this.means(cell, 'no reading') || this.means(cell, 'blank');
  }

  private means(cell: SheetCell, meaning: WordMeaning['is']): boolean {
    return this.mapping.words.get(wordKey(cell.text))?.is === meaning;
  }

  /** A printed list has its heads on every page. */
  private repeatsHeads(cells: SheetRow): boolean {
    const last = this.table.rows[this.mapping.heads.to] ?? [];
    const said = cells.filter((cell) => cell).length;
    return said > 1 && cells.every((cell, column) => !cell || cell.text === last[column]?.text);
  }
}

function quoted(names: readonly string[]): string {
  return names.map((name) => `"${name}"`).join(', ');
}
