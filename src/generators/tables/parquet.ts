// A table as Apache Parquet, cut into the folders that query engines know as Hive partitions: `points/plant=P/month=2026-10/`.
// Plant and month stand in the path and not in the file, as those engines expect; every file carries the day it counts from.
// The one place that knows the library which writes the bytes.

import { parquetMetadata } from 'hyparquet';
import { parquetWriteBuffer, type SchemaElement } from 'hyparquet-writer';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { ColumnType } from '../remaining-life/columns.js';
import { tablesFormatVersion } from './json.js';
import type { EstateTable, TableColumn, Value } from './table.js';

export interface Partition {
  readonly plant: string;
  /** `2026-10`. */
  readonly month: string;
}

/** Folder of a table's file, with forward slashes. */
export function partitionFolder(table: string, { plant, month }: Partition): string {
  return `${table}/plant=${partitionValue(plant)}/month=${partitionValue(month)}`;
}

/**
 * A value as it may stand in a path: all of ASCII but letters, digits, hyphen and underscore is written %XX, which Hive's kind of
 * engines read back. Other letters stay, because those engines read %XX a byte at a time; what they call missing is no name.
 */
export function partitionValue(value: string): string {
  const safe = value.normalize('NFC').replace(/[^\w\u0080-\u{10ffff}-]/gu, percent);
  return safe === '' || safe === '__HIVE_DEFAULT_PARTITION__' ? `%5F${safe.slice(1)}` : safe;
}

function percent(sign: string): string {
  return `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}`;
}

/** The rows of one plant as a file. Written even without rows, so that what an earlier run said there does not stay. */
export function tableParquet(table: EstateTable, plant: string, asOf: CalendarDay): Uint8Array {
  const place = table.columns.findIndex(({ name }) => name === 'plant');
  const rows = table.rows.filter((row) => row[place] === plant);
  const columns: readonly TableColumn[] = [asOfColumn, ...table.columns.filter(({ name }) => !inPath(name))];
  const placeOf = new Map(table.columns.map(({ name }, i) => [name, i]));
  const buffer = parquetWriteBuffer({
    schema: [{ name: 'root', num_children: columns.length }, ...columns.map(elementOf)],
    columnData: columns.map(({ name }) => ({
      name,
      data: rows.map((row) => parquetValue(name === 'as_of' ? asOf : row[placeOf.get(name) ?? -1])),
    })),
    kvMetadata: [
      { key: 'troughline.table', value: table.name },
      { key: 'troughline.formatVersion', value: String(tablesFormatVersion) },
      { key: 'troughline.asOf', value: formatDay(asOf) },
      { key: 'troughline.plant', value: plant },
      ...(table.name === 'conveyors'
        ? [{ key: conveyorsKey, value: conveyorsIn(table, rows).join(' ') }]
        : []),
    ],
    createdBy: 'troughline',
  });
  return new Uint8Array(buffer);
}

/** A name holds no blank. */
const conveyorsKey = 'troughline.conveyors';

function conveyorsIn({ columns }: EstateTable, rows: EstateTable['rows']): readonly string[] {
  const place = columns.findIndex(({ name }) => name === 'conveyor');
  return rows.map((row) => String(row[place])).sort();
}

/** Conveyors in a file of the table of conveyors, by its footer; undefined for any other file. */
export function conveyorsOfFile(bytes: Uint8Array): readonly string[] | undefined {
  try {
    const { buffer, byteOffset, byteLength } = Uint8Array.from(bytes);
    const { key_value_metadata: facts = [] } = parquetMetadata(
      buffer.slice(byteOffset, byteOffset + byteLength),
    );
    return facts
      .find(({ key }) => key === conveyorsKey)
      ?.value?.split(' ')
      .filter(Boolean);
  } catch {
    return undefined; // no Parquet
  }
}

const asOfColumn: TableColumn = {
  name: 'as_of',
  type: 'day',
  about: 'the day that all of it counts from',
  always: true,
};

function inPath(name: string): boolean {
  return name === 'plant' || name === 'as_of';
}

function parquetValue(value: Value): string | number | boolean | null {
  return value ?? null;
}

function elementOf({ name, type, always }: TableColumn): SchemaElement {
  return { name, repetition_type: always ? 'REQUIRED' : 'OPTIONAL', ...kinds[type] };
}

const kinds: Readonly<Record<ColumnType, Pick<SchemaElement, 'type' | 'converted_type'>>> = {
  text: { type: 'BYTE_ARRAY', converted_type: 'UTF8' },
  day: { type: 'INT32', converted_type: 'DATE' },
  number: { type: 'DOUBLE' },
  whole: { type: 'INT32' },
  'yes or no': { type: 'BOOLEAN' },
};
