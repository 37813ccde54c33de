// A workbook put together from its parts by hand (ECMA-376), so that a test can write what no library would: a formula without a
// value, a date system of 1904, sizes that lie.

import { strToU8, zipSync } from 'fflate';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packaged = 'http://schemas.openxmlformats.org/package/2006';
const xml = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

export interface HandMadeSheet {
  readonly name: string;
  /** `<row>` elements. */
  readonly rows: string;
  readonly state?: 'hidden' | 'veryHidden';
  /** Before the rows, such as `<cols>`. */
  readonly before?: string;
  /** Behind them, such as `<mergeCells>`. */
  readonly after?: string;
}

/** Cell styles by `s`: 0 plain, 1 a day, 2 a time of day. */
export function handMade(
  sheets: readonly HandMadeSheet[],
  { from1904 = false, more = {} }: { from1904?: boolean; more?: Readonly<Record<string, Uint8Array>> } = {},
): Record<string, Uint8Array> {
  const parts: Record<string, string> = {
    '[Content_Types].xml': `${xml}<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>`,
    '_rels/.rels': `${xml}<Relationships xmlns="${packaged}/relationships"><Relationship Id="r1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${xml}<workbook xmlns="${main}" xmlns:r="${office}">${from1904 ? '<workbookPr date1904="1"/>' : ''}<sheets>${sheets
      .map(
        ({ name, state }, i) =>
          `<sheet name="${name}" sheetId="${i + 1}"${state ? ` state="${state}"` : ''} r:id="s${i + 1}"/>`,
      )
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${xml}<Relationships xmlns="${packaged}/relationships">${sheets
      .map(
        (_, i) =>
          `<Relationship Id="s${i + 1}" Type="${office}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
      )
      .join('')}<Relationship Id="st" Type="${office}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `${xml}<styleSheet xmlns="${main}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="20" applyNumberFormat="1"/></cellXfs></styleSheet>`,
  };
  for (const [i, { rows, before = '', after = '' }] of sheets.entries())
    parts[`xl/worksheets/sheet${i + 1}.xml`] =
      `${xml}<worksheet xmlns="${main}">${before}<sheetData>${rows}</sheetData>${after}</worksheet>`;
  return {
    ...Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])),
    ...more,
  };
}

export function zipped(parts: Record<string, Uint8Array>): Uint8Array {
  return zipSync(parts, { mtime: '2026-01-01T00:00:00Z' });
}

/** `<row>` of cells: a text, a number, or the inside of a `<c>` with its attributes. */
export function row(
  number: number,
  cells: readonly (string | number | null | { attributes?: string; inside: string })[],
  more = '',
): string {
  const made = cells.map((cell, i) => {
    const at = `r="${String.fromCharCode(65 + i)}${number}"`;
    if (cell === null) return '';
    if (typeof cell === 'number') return `<c ${at}><v>${cell}</v></c>`;
    if (typeof cell === 'string')
      return `<c ${at} t="inlineStr"><is><t>${cell.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</t></is></c>`;
    return `<c ${at} ${cell.attributes ?? ''}>${cell.inside}</c>`;
  });
  return `<row r="${number}"${more}>${made.join('')}</row>`;
}

/** Days from 1899-12-30. */
export function serial(day: string): number {
  return Math.round((Date.parse(`${day}T00:00:00Z`) - Date.parse('1899-12-30T00:00:00Z')) / 86_400_000);
}
