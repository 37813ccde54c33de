// Workbooks: what they hold is read as it is saved, what a reader of the sheet would not see is said, and what could do harm is
// refused before it is unpacked. The workbooks are written by another library than the one that reads, and by hand.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import writeXlsxFile, { type Cell } from 'write-excel-file/node';
import { strToU8 } from 'fflate';
import { readWorkbook } from '../../src/exchange/read-workbook.js';
import type { Book } from '../../src/exchange/table.js';
import { handMade, row, serial, zipped } from './hand-made-workbook.js';
import { expectTruth, mappingOf } from './imported.js';
import { days, truths, type TrueReading } from './truth.js';

async function bookOf(bytes: Uint8Array, sheets?: readonly string[]): Promise<Book> {
  const read = await readWorkbook(bytes, { sheets });
  if (!read.ok) throw new Error(read.message);
  return read.book;
}

async function refusal(bytes: Uint8Array): Promise<string> {
  const read = await readWorkbook(bytes);
  return read.ok ? 'read' : read.message;
}

const shared = `gauge: ultrasonic ± 0.2 mm
view: downstream
words:
  the light one: layer 1
  under material: not seen buried
  n/a: no reading
`;

function saidCell({ said }: TrueReading): Cell {
  if ('colour' in said) return { value: said.colour === 'grey' ? 'the light one' : 'Orange' };
  if ('notSeen' in said) return { value: 'under material' };
  return { value: said.digits / 100, format: '0.00' };
}

const dayCell = (day: string): Cell => ({
  value: new Date(`${day}T00:00:00Z`),
  type: Date,
  format: 'dd.mm.yyyy',
});

/** A row a reading; the place by chainage in feet and a clock that the spreadsheet took for a time of day. */
async function longBook(truth: readonly TrueReading[]): Promise<Uint8Array> {
  const heads: Cell[] = ['Screw', 'Inspected', 'From tail (ft)', 'Clock', 'Wall, mm', 'Run h'].map(
    (value) => ({ value }),
  );
  const rows = truth.map((one): Cell[] => [
    { value: one.conveyor },
    dayCell(one.day),
    { value: (Number(one.point.slice(1)) * 2000) / 304.8 },
    { value: 0.25, format: 'h:mm' },
    saidCell(one),
    { value: one.meter },
  ]);
  return bytesOf([{ data: [heads, ...rows], sheet: 'Readings' }]);
}

const longMap = `${shared}heads: 1
sheets: [Readings]
columns:
  Screw: conveyor
  Inspected: date
  From tail (ft): chainage in ft
  Clock: clock
  "Wall, mm": thickness in mm
  Run h: meter in h
`;

/** A sheet a conveyor; each date merged over a column of thicknesses and one of words, the meter in a row above. */
async function wideBook(truth: readonly TrueReading[]): Promise<Uint8Array> {
  const sheets = ['AB1', 'AB2'].map((conveyor) => {
    const own = truth.filter((one) => one.conveyor === conveyor);
    const meter = (day: string): number | undefined => own.find((one) => one.day === day)?.meter;
    const pair = (cell: Cell | null): (Cell | null)[] => [
      cell === null ? null : ({ ...(cell as object), columnSpan: 2 } as Cell),
      null,
    ];
    const point = (n: number): (Cell | null)[] => [
      { value: `p ${n}` },
      ...days.flatMap((day): (Cell | null)[] => {
        const one = own.find((each) => each.day === day && each.point === `P${n}`);
        if (!one) return [null, { value: 'n/a' }];
        return 'digits' in one.said ? [saidCell(one), null] : [null, saidCell(one)];
      }),
    ];
    return {
      sheet: conveyor,
      data: [
        [{ value: `Wear of ${conveyor}` }],
        [
          { value: 'Hours' },
          ...days.flatMap((day) => pair(meter(day) === undefined ? null : { value: meter(day) ?? 0 })),
        ],
        [{ value: 'Point' }, ...days.flatMap((day) => pair(dayCell(day)))],
        [null, ...days.flatMap((): Cell[] => [{ value: 'Wall [mm]' }, { value: 'Seen' }])],
        ...[1, 2, 3, 4, 5].map(point),
      ],
    };
  });
  return bytesOf(sheets as Parameters<typeof bytesOf>[0]);
}

const wideMap = `${shared}heads: 3 to 4
conveyor: name of the sheet
across: date
across row: 3
meter row: 2 in h
columns:
  Point: point
  "Wall [mm]": thickness in mm
  Seen: colour
points: {p 1: P1, p 2: P2, p 3: P3, p 4: P4, p 5: P5}
`;

async function bytesOf(
  sheets: readonly { data: readonly (readonly (Cell | null)[])[]; sheet: string }[],
): Promise<Uint8Array> {
  const made = writeXlsxFile(
    sheets.map(({ data, sheet }) => ({ data: data.map((cells) => [...cells]), sheet })),
  );
  return new Uint8Array(await made.toBuffer());
}

describe('readings in a workbook of another library', () => {
  test.each([
    ['a row a reading, places by chainage and clock', longBook, longMap],
    ['a sheet a conveyor, dates merged over two columns', wideBook, wideMap],
  ])('%s', async (_, write, map) => {
    const mapping = mappingOf(map);
    await fc.assert(
      fc.asyncProperty(truths('mm'), async (truth) => {
        const { tables } = await bookOf(await write(truth));
        expectTruth(tables, mapping, truth, 'mm');
      }),
      { numRuns: 4 },
    );
  });
});

const head = row(1, ['Point', 'Date', 'Wall mm', 'Hours', 'Clock']);
const cells = (book: Book, sheet = 0): (string | undefined)[][] =>
  (book.tables[sheet]?.rows ?? []).map((cellsOfRow) =>
    cellsOfRow.map((cell) => cell && `${cell.kind} ${cell.text}`),
  );

describe('what a workbook holds', () => {
  test('formulas by their saved value, errors and formulas without one as such, dates and times by their serial', async () => {
    const rows =
      head +
      row(2, [
        'P1',
        { attributes: 's="1"', inside: `<v>${serial('2024-11-03')}</v>` },
        { inside: '<f>4+4.4</f><v>8.4000000000000004</v>' },
        { inside: '<f>A1*2</f>' },
        { attributes: 's="2"', inside: '<v>0.20833333333333334</v>' },
      ]) +
      row(3, [
        'P2',
        { attributes: 't="d"', inside: '<v>2024-11-03</v>' },
        { attributes: 't="e"', inside: '<v>#N/A</v>' },
        1200,
        { attributes: 't="b"', inside: '<v>1</v>' },
      ]);
    const book = await bookOf(zipped(handMade([{ name: 'One', rows }])));
    expect(cells(book).slice(1)).toEqual([
      ['text P1', 'date 2024-11-03', 'number 8.4', 'error a formula without a saved value', 'date 05:00'],
      ['text P2', 'text 2024-11-03', 'error #N/A', 'number 1200', 'text true'],
    ]);
    expect(book.said).toEqual([
      'One: 1 cell with a formula, of which the saved value is taken; 1 cell with a formula that has no saved value',
    ]);
  });

  test('dates from 1904 are the days they show', async () => {
    const rows =
      head + row(2, ['P1', { attributes: 's="1"', inside: `<v>${serial('2024-11-03') - 1462}</v>` }]);
    const book = await bookOf(zipped(handMade([{ name: 'One', rows }], { from1904: true })));
    expect(cells(book)[1]).toEqual(['text P1', 'date 2024-11-03', undefined, undefined, undefined]);
    expect(book.tables[0]?.dateSystem).toBe(1904);
    expect(book.said).toEqual(['its dates count from 1904']);
  });

  test('hidden rows, columns and sheets are told; a hidden sheet is read where the mapping names it', async () => {
    const rows = head + row(2, ['P1', 'x', 8.4], ' hidden="1"');
    const bytes = zipped(
      handMade([
        { name: 'Seen', rows, before: '<cols><col min="2" max="2" width="9" hidden="1"/></cols>' },
        { name: 'Old', rows: head, state: 'veryHidden' },
        { name: 'Nothing', rows: '' },
      ]),
    );
    const book = await bookOf(bytes);
    expect(book.tables.map(({ sheet }) => sheet)).toEqual(['Seen']);
    expect(book.said).toEqual([
      'Seen: hidden rows are read like all others: 2',
      'Seen: hidden columns are read like all others: B',
      'sheet Old is hidden and passed over (sheets: in the mapping can name it)',
      'sheet Nothing is empty',
    ]);
    expect((await bookOf(bytes, ['Old'])).tables.map(({ sheet }) => sheet)).toEqual(['Seen', 'Old']);
  });

  test('what is merged shows in each cell, and is written in one', async () => {
    const book = await bookOf(
      zipped(
        handMade([
          {
            name: 'One',
            rows: head + row(2, ['P1', null, 8.4]) + row(3, ['P2']),
            after: '<mergeCells><mergeCell ref="C2:C3"/><mergeCell ref="A1:XFD1"/></mergeCells>',
          },
        ]),
      ),
    );
    expect(book.tables[0]?.rows[2]?.[2]).toEqual({
      kind: 'number',
      text: '8.4',
      number: 8.4,
      mergedWith: 'C2',
    });
    expect(book.tables[0]?.rows[0]?.[1]).toEqual({ kind: 'text', text: 'Date' });
  });

  test('macros are ignored, and that is said', async () => {
    const book = await bookOf(
      zipped(
        handMade([{ name: 'One', rows: head }], {
          more: { 'xl/vbaProject.bin': strToU8('Sub Auto_Open()') },
        }),
      ),
    );
    expect(book.said).toEqual(['its macros are ignored; only values are read']);
  });
});

describe('what is refused', () => {
  const sound = handMade([{ name: 'One', rows: head }]);

  test('a part that is packed hundreds of times, before it is unpacked', async () => {
    const bomb = zipped({ ...sound, 'xl/worksheets/sheet1.xml': new Uint8Array(12_000_000) });
    expect(bomb.length).toBeLessThan(30_000);
    expect(await refusal(bomb)).toContain('xl/worksheets/sheet1.xml is packed more than 200 times');
  });

  test('more than a workbook of readings can be, by what is declared', async () => {
    const noise = new Uint8Array(3_000_000).map((_, i) => (i * 2_654_435_761) >>> 24);
    const read = await readWorkbook(
      zipped({ ...sound, 'xl/media/a.bin': noise }),
      {},
      { bytes: 2_000_000, ratio: 200, parts: 100 },
    );
    expect(read).toMatchObject({ ok: false, message: expect.stringContaining('unpacks to 3 MB') });
  });

  test('a directory that lies about the size', async () => {
    const bytes = zipped({ ...sound, 'xl/worksheets/sheet1.xml': new Uint8Array(8_000_000) });
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 0; at < bytes.length - 46; at++)
      if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === 8_000_000)
        view.setUint32(at + 24, 900_000, true);
    expect(await refusal(bytes)).toContain('unpacks to another size than the file declares');
  });

  test.each<[string, (bytes: Uint8Array) => Uint8Array, string]>([
    [
      'a file cut short',
      (bytes) => bytes.slice(0, bytes.length / 2),
      'the directory of the archive is missing',
    ],
    [
      'a directory that points nowhere',
      (bytes) => directoryMoved(bytes, 7),
      'the directory of the archive does not fit',
    ],
    [
      'a part with a password',
      (bytes) => inDirectory(bytes, (view, at) => view.setUint16(at + 8, 1, true)),
      'protected by a password',
    ],
    [
      'a part packed in another way',
      (bytes) => inDirectory(bytes, (view, at) => view.setUint16(at + 10, 14, true)),
      'packed in a way that workbooks are not',
    ],
    [
      'a part that lies outside',
      (bytes) => inDirectory(bytes, (view, at) => view.setUint32(at + 42, 0x00ffffff, true)),
      'lies outside of the file',
    ],
  ])('%s', async (_, spoil, message) => {
    expect(await refusal(spoil(zipped(sound)))).toContain(message);
  });

  test.each<[string, Record<string, Uint8Array>, string]>([
    ['an archive of something else', { 'readme.txt': strToU8('hello') }, 'is an archive and no workbook'],
    [
      'an OpenDocument sheet',
      { mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'), 'content.xml': strToU8('<a/>') },
      'save it as .xlsx or CSV',
    ],
    ['a binary workbook', { 'xl/workbook.bin': strToU8('x') }, '(.xlsb); save it as .xlsx or CSV'],
    [
      'sheets with nothing in them',
      handMade([{ name: 'One', rows: '' }]),
      'holds nothing to read: sheet One is empty',
    ],
    [
      'a sheet of broken XML',
      { ...sound, 'xl/worksheets/sheet1.xml': strToU8('<worksheet><sheetData><row r="1"><c r=') },
      '',
    ],
    [
      'cells at the far corners',
      handMade([
        { name: 'One', rows: row(1, [1]) + '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>' },
      ]),
      '',
    ],
    [
      'more rows than are read',
      handMade([
        {
          name: 'One',
          rows: `${head}<row r="200002"><c r="A200002"><v>7919</v></c></row>`,
        },
      ]),
      'One: holds more than 200000 rows',
    ],
    [
      'entities that multiply',
      {
        ...sound,
        'xl/worksheets/sheet1.xml': strToU8(
          `<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa">${'bcdefgh'
            .split('')
            .map((name, i) => `<!ENTITY ${name} "${`&${'abcdefg'[i] ?? 'a'};`.repeat(20)}">`)
            .join(
              '',
            )}]><worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&h;</t></is></c></row></sheetData></worksheet>`,
        ),
      },
      '',
    ],
  ])('%s', async (_, parts, message) => {
    const said = await refusal(zipped(parts));
    if (message === '') expect(said.length).toBeLessThan(500);
    else expect(said).toContain(message);
  });
});

function inDirectory(bytes: Uint8Array, change: (view: DataView, at: number) => void): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at < copy.length - 46; at++) if (view.getUint32(at, true) === 0x02014b50) change(view, at);
  return copy;
}

function directoryMoved(bytes: Uint8Array, by: number): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  const end = copy.length - 22;
  view.setUint32(end + 16, view.getUint32(end + 16, true) + by, true);
  return copy;
}
