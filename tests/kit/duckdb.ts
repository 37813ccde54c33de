// DuckDB, to ask what was written as a stranger would: in memory, without a network, a row an object. Days and times come as text in
// ISO 8601, whole numbers as numbers.

import { DuckDBInstance } from '@duckdb/node-api';

export type Row = Readonly<Record<string, unknown>>;

export interface Asking {
  ask(sql: string): Promise<readonly Row[]>;
  /** By name of the column, its type. */
  types(from: string): Promise<Readonly<Record<string, string>>>;
}

export async function duckdb(): Promise<Asking> {
  const instance = await DuckDBInstance.create(':memory:', {
    autoinstall_known_extensions: 'false',
    autoload_known_extensions: 'false',
    threads: '1',
  });
  const connection = await instance.connect();
  const ask = async (sql: string): Promise<readonly Row[]> => {
    const reader = await connection.runAndReadAll(sql);
    const types = reader.columnTypes().map((type) => type.toString());
    const names = reader.columnNames();
    return reader
      .getRowsJson()
      .map((row) =>
        Object.fromEntries(
          row.map((value, i) => [
            names[i] ?? '',
            typeof value === 'string' && /^(BIGINT|HUGEINT|DECIMAL)/.test(types[i] ?? '')
              ? Number(value)
              : value,
          ]),
        ),
      );
  };
  return {
    ask,
    types: async (from) =>
      Object.fromEntries(
        (await ask(`DESCRIBE SELECT * FROM ${from}`)).map(({ column_name: name, column_type: type }) => [
          String(name),
          String(type),
        ]),
      ),
  };
}
