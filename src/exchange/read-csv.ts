// A text file of separated values (RFC 4180 and its relatives) as a table. Papa Parse knows the quoting; which separator it is,
// is judged here, by which one gives the most rows of one width, and said.

import Papa from 'papaparse';
import { decodeText } from './decode-text.js';
import {
  mostColumns,
  mostRows,
  separators,
  type SheetCell,
  type Encoding,
  type ReadBook,
  type SheetRow,
  type Separator,
} from './table.js';

export interface CsvStated {
  readonly separator?: Separator | undefined;
  readonly encoding?: Encoding | undefined;
}

export function readCsv(bytes: Uint8Array, stated: CsvStated = {}): ReadBook {
  const decoded = decodeText(bytes, stated.encoding);
  if (!decoded.ok) return decoded;
  const separator = stated.separator ?? likelySeparator(decoded.text);
  const { data, errors } = parse(decoded.text, separator, mostRows + 1);
  const [wrong] = errors.filter(({ type }) => type === 'Quotes');
  if (wrong)
    return {
      ok: false,
      message: `row ${(wrong.row ?? 0) + 1}: a quotation mark is opened and not closed as it should be`,
    };
  if (data.length > mostRows)
    return { ok: false, message: `holds more than ${mostRows} rows; split it, a plant or a year a file` };
  if (data.some((row) => row.length > mostColumns))
    return { ok: false, message: `holds rows of more than ${mostColumns} columns` };
  const rows = data.map((row): SheetRow => row.map(cellOf));
  while (rows.length > 0 && rows.at(-1)?.every((cell) => cell === undefined)) rows.pop();
  if (rows.length === 0) return { ok: false, message: 'holds nothing' };
  const how = `${decoded.encoding}${decoded.marked ? '' : stated.encoding ? ' as the mapping says' : ' by its bytes'}`;
  return {
    ok: true,
    book: {
      tables: [{ rows, dateSystem: 1900 }],
      said: [`read as ${how}, separated by ${separator === 'tab' ? 'tabs' : `"${separator}"`}`],
      separator,
      encoding: decoded.encoding,
    },
  };
}

function cellOf(text: string): SheetCell | undefined {
  const trimmed = text.trim();
  return trimmed === '' ? undefined : { kind: 'text', text: trimmed };
}

function parse(text: string, separator: Separator, preview: number): Papa.ParseResult<string[]> {
  return Papa.parse<string[]>(text, { delimiter: separator === 'tab' ? '\t' : separator, preview });
}

/** Most rows of one width above one; of two alike the wider, then the one further ahead in `separators`. */
function likelySeparator(text: string): Separator {
  const scored = separators.map((separator) => {
    const widths = new Map<number, number>();
    for (const { length } of parse(text, separator, 60).data)
      if (length > 1) widths.set(length, (widths.get(length) ?? 0) + 1);
    const [width, rows] = [...widths].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [1, 0];
    return { separator, rows, width };
  });
  scored.sort((a, b) => b.rows - a.rows || b.width - a.width);
  return scored[0]?.separator ?? ',';
}
