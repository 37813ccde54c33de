// Readings of a spreadsheet through the command: what is asked, shown, written, there already and refused.

import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { parseDay } from '../../src/domain/units/calendar.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { tableCsv } from '../../src/generators/tables/csv.js';
import { readingsTable } from '../../src/generators/tables/readings.js';
import { estateText, partsText } from '../exchange/truth.js';
import { folderWith, troughline, type Ran } from './console.js';

const example = fileURLToPath(new URL('../../examples/8-spreadsheet', import.meta.url));

const map = `heads: 1
dates: day-month-year
decimal: ","
gauge: ultrasonic ± 0.2 mm
columns:
  Screw: conveyor
  Date: date
  Point: point
  Wall: thickness in mm
  Hours: meter in h
  Note: note
`;
const head = 'Screw;Date;Point;Wall;Hours;Note\n';

/** An estate of two conveyors, a sheet with these rows, and its mapping. */
function works(rows: string, more: Readonly<Record<string, string>> = {}): string {
  return folderWith({ 'plant.trough': estateText, 'wall.csv': head + rows, 'wall.map.yaml': map, ...more });
}

function imported(cwd: string, ...more: readonly string[]): Promise<Ran> {
  return troughline(['import', 'wall.csv', '--map', 'wall.map.yaml', ...more], { cwd });
}

const firstLine = ({ out }: Ran): string => out.split('\n')[0] ?? '';

function troughFiles(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.trough'))
    .map((name) => name.split(path.sep).join('/'))
    .sort();
}

function textsIn(folder: string): readonly { uri: string; text: string }[] {
  return troughFiles(folder).map((uri) => ({ uri, text: readFileSync(path.join(folder, uri), 'utf8') }));
}

describe('five years of readings', () => {
  test('of the example become inspections that check clean, and are what the sheet says', async () => {
    const cwd = folderWith({});
    cpSync(example, cwd, { recursive: true });
    const command = ['import', 'wall.csv', '--map', 'wall.map.yaml'];
    const dry = await troughline(command, { cwd });
    expect(dry.exit).toBe(0);
    expect(firstLine(dry)).toBe(
      'wall.csv: 510 rows read: 500 new, 0 there already, 0 skipped, 10 without a reading (a dry run, nothing is written)',
    );
    expect(existsSync(path.join(cwd, 'inspections'))).toBe(false);

    const written = await troughline([...command, '--write'], { cwd });
    expect([written.exit, firstLine(written)]).toEqual([0, expect.stringContaining('500 new')]);
    expect(await troughline(['check', '.'], { cwd })).toMatchObject({
      exit: 0,
      out: '51 files: no findings\n',
    });
    expect((await troughline(['format', '--check', '.'], { cwd })).exit).toBe(0);
    expect(saidByRecords(cwd)).toEqual(saidBySheet());
    expect(firstLine(await troughline(command, { cwd }))).toContain('0 new, 500 there already');
    // The same readings in a workbook of another program: a sheet a conveyor, a column a date.
    const book = await troughline(['import', 'wall.xlsx', '--map', 'workbook.map.yaml'], { cwd });
    expect([book.exit, firstLine(book)]).toEqual([
      0,
      'wall.xlsx: 500 rows read: 0 new, 500 there already, 0 skipped (a dry run, nothing is written)',
    ]);
    expect(book.out).toContain('Bark 1: 25 cells with a formula that has no saved value');
  });

  test('of the workbook alone become the same', async () => {
    const cwd = folderWith({});
    cpSync(example, cwd, { recursive: true });
    await troughline(['import', 'wall.xlsx', '--map', 'workbook.map.yaml', '--write'], { cwd });
    expect(saidByRecords(cwd)).toEqual(saidBySheet());
    expect(await troughline(['check', '.'], { cwd })).toMatchObject({
      exit: 0,
      out: '51 files: no findings\n',
    });
  });

  test('the mappings of the example are what is guessed, with its questions answered', async () => {
    for (const [file, map] of [
      ['wall.csv', 'wall.map.yaml'],
      ['wall.xlsx', 'workbook.map.yaml'],
    ] as const) {
      const { out } = await troughline(['import', file], { cwd: example });
      const facts = (text: string): string[] =>
        text
          .split('\n')
          .map((line) => line.replace(/ +#.*/, ''))
          .filter(
            (line) =>
              /^ *[^ #].*:/.test(line) && !/^ +Bark \d:|^gauge/.test(line) && !line.includes(': a mapping'),
          );
      const kept = readFileSync(path.join(example, map), 'utf8');
      const guessed = facts(out).filter((line) => !/formula|read as/.test(line));
      expect(guessed).toEqual(facts(kept));
      expect(out.match(/which conveyor is it\?/g)).toHaveLength(2);
    }
  });
});

/** The sheet read by hand: separators, commas and blanks as they stand, nothing of the import. */
function saidBySheet(): readonly string[] {
  const text = new TextDecoder('windows-1252').decode(readFileSync(path.join(example, 'wall.csv')));
  let [conveyor, day] = ['', ''];
  return text
    .split(/\r?\n/)
    .slice(3)
    .flatMap((line) => {
      const [screw = '', date = '', point = '', said = ''] = line.split(';');
      if (screw !== '') conveyor = screw.replace('Bark ', 'BR');
      if (date !== '') day = date.split('.').reverse().join('-');
      if (said === '' || said === 'n/a') return [];
      const what = /^\d/.test(said) && said !== '2nd colour' ? Number(said.replace(',', '.')) : said;
      return [`${conveyor} ${day} P${point} ${what}`];
    })
    .sort();
}

function saidByRecords(folder: string): readonly string[] {
  const texts = textsIn(folder);
  const { inspections, readings, places } = analyse(texts).estate;
  return inspections
    .flatMap(({ conveyor, date, firstRow, endRow }) =>
      Array.from({ length: endRow - firstRow }, (_, i) => firstRow + i).map((row) => {
        const day = new Date(date.day * 86_400_000).toISOString().slice(0, 10);
        const [kind, value] = [readings.kind[row], readings.value[row]];
        const seen = readings.notes.get(row) === 'buried' ? 'under material' : 'not seen: no light';
        const what = kind === 0 ? value : kind === 1 && value === 1 ? '2nd colour' : seen;
        return `${conveyor.name} ${day} ${places[readings.place[row] ?? -1]?.name} ${what}`;
      }),
    )
    .sort();
}

test('the table of readings goes back into an estate that has none: all of the demo, equal in every fact', async () => {
  // Without its jobs, whose plans take their time and have no readings.
  const cwd = folderWith({});
  const demo = folderWith({});
  cpSync(fileURLToPath(new URL('../../examples/4-tarnholt', import.meta.url)), demo, { recursive: true });
  rmSync(path.join(demo, 'jobs'), { recursive: true });
  const report = remainingLife(analyse(textsIn(demo)).estate, { asOf: parseDay('2026-10-31') });
  writeFileSync(path.join(cwd, 'readings.csv'), tableCsv(readingsTable(report)));
  cpSync(path.join(example, 'tables.map.yaml'), path.join(cwd, 'tables.map.yaml'));
  for (const part of ['conveyors', 'history', 'liners.trough', 'plant.trough', 'screws.trough'])
    cpSync(path.join(demo, part), path.join(cwd, part), { recursive: true });
  const ran = await troughline(['import', 'readings.csv', '--map', 'tables.map.yaml', '--write'], { cwd });
  expect([ran.exit, firstLine(ran)]).toEqual([
    0,
    expect.stringMatching(/ 0 there already, 0 skipped \(\d+ files written\)/),
  ]);
  const before = everyFact(demo);
  expect(before.length).toBeGreaterThan(200);
  expect(everyFact(cwd)).toEqual(before);
});

/** Each reading with all that its record says of it; places as seen in the direction of flow, as the table has them. */
function everyFact(folder: string): readonly string[] {
  const texts = textsIn(folder);
  const { inspections, readings, places } = analyse(texts).estate;
  return inspections
    .flatMap(({ conveyor, date, meter, by, gauge, firstRow, endRow }) =>
      Array.from({ length: endRow - firstRow }, (_, i) => firstRow + i).map((row) => {
        const place = places[readings.place[row] ?? -1];
        const [value, error] = [
          readings.value[row]?.toFixed(6),
          readings.kind[row] === 0 ? readings.error[row]?.toFixed(6) : '',
        ];
        const head = `${conveyor.plant.name}.${conveyor.name} ${date.day} ${meter.hours?.value} ${meter.tonnes?.value} ${by} ${gauge?.kind}`;
        return `${head} ${place?.name} ${place?.at} ${place?.clock} ${readings.kind[row]} ${value} ${error} ${readings.notes.get(row) ?? ''}`;
      }),
    )
    .sort();
}

describe('without a mapping', () => {
  test('one is guessed with its reasons, asks what it cannot know, and is written only where it is told to', async () => {
    const cwd = folderWith({
      'plant.trough': estateText,
      'wall.csv':
        'Screw,Inspected,Point,Wall,Running hours\nAB1,3/11/2024,P1,"11,2",1200\nAB1,4/12/2024,P2,rust,1500\n',
    });
    const shown = await troughline(['import', 'wall.csv'], { cwd });
    expect(shown.exit).toBe(1);
    expect(firstLine(shown)).toBe(
      'wall.csv: a mapping is guessed, 3 questions to answer; nothing is taken with it yet',
    );
    expect(shown.out).toMatch(/dates: "\?" +# OPEN: 3\/11\/2024 can be day-month-year or month-day-year/);
    expect(shown.out).toMatch(/Wall: "thickness in \?" +# OPEN/);
    expect(shown.out).toMatch(/rust: "\?" +# OPEN/);
    expect(shown.out).toMatch(/Screw: conveyor +# most of its cells are conveyors of the estate/);
    expect(shown.out).toMatch(/decimal: "," +# 11,2 can be nothing else/);
    expect(readdirSync(cwd)).toEqual(['plant.trough', 'wall.csv']);

    const kept = await troughline(['import', 'wall.csv', '--write-map', 'wall.map.yaml'], { cwd });
    expect(kept.exit).toBe(1);
    const open = await imported(cwd);
    expect(open.exit).toBe(2);
    expect(open.err).toContain('wall.map.yaml:6: dates: is still a question; answer it');
    expect(open.err).toContain('Wall: is still a question; answer it');

    const text = readFileSync(path.join(cwd, 'wall.map.yaml'), 'utf8');
    const answered = text
      .replace('dates: "?"', 'dates: month-day-year')
      .replace('"thickness in ?"', 'thickness in mm')
      .replace('rust: "?"', 'rust: trough showing');
    writeFileSync(path.join(cwd, 'wall.map.yaml'), answered);
    const taken = await imported(cwd);
    expect(taken.out).toContain('inspection AB1 2024-03-11 meter 1200 h {\n  P1 thickness 11.2 mm\n}');
    expect(taken.out).toContain('P2 trough showing');

    const again = await troughline(['import', 'wall.csv', '--write-map', 'wall.map.yaml'], { cwd });
    expect(again).toMatchObject({
      exit: 2,
      err: expect.stringContaining('is there already, and stays as it is'),
    });
    expect(readFileSync(path.join(cwd, 'wall.map.yaml'), 'utf8')).toBe(answered);
  });

  test('nothing can be written', async () => {
    const cwd = works('');
    expect(await troughline(['import', 'wall.csv', '--write'], { cwd })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('--write needs --map FILE'),
    });
  });
});

describe('what is not taken', () => {
  test('is listed row by row with its reason, and nothing of it is made up', async () => {
    const cwd = works(
      [
        'AB1;03.11.2024;P1;11,4;1200;',
        'AB1;03.11.2024;P7;11,4;1200;',
        'AB9;03.11.2024;P1;11,4;1200;',
        'AB1;31.02.2024;P2;11,4;1200;',
        'AB1;03.11.2024;P2;11.4;1200;',
        'AB1;03.11.2024;P3;violet;1200;',
        'AB1;03.11.2024;P4;-3;1200;',
        'AB1;03.11.2024;;11,4;1200;',
        'AB1;03.11.2024;P5;;1200;',
        'AB2;05.11.2024;P1;11,4;;',
        'AB1;03.11.2024;P1;11,40;1200;',
      ].join('\n'),
    );
    const ran = await imported(cwd);
    expect(ran.exit).toBe(1);
    expect(firstLine(ran)).toContain('11 rows read: 1 new, 0 there already, 10 skipped');
    for (const reason of [
      'D3: AB1 has no point "P7"; nearest: P1, P2 and P3',
      'D4: no conveyor "AB9" in the estate; nearest: AB1 and AB2',
      'D5: 31.02.2024 is not a day of the calendar',
      'D6: 11.4 does not fit the decimal mark ","',
      'D7: "violet" is no number, no layer of the liner there (grey and orange), and no word of the mapping',
      'D8: -3 is below zero',
      'D9: no point',
      'row 10: holds no reading',
      'D11: no meter reading of AB2 on 2024-11-05: without its hours an inspection cannot be written, and none are made up',
      'D12: says again what D2 says',
    ])
      expect(ran.out).toContain(`  ${reason}\n`);
    expect(ran.out).toContain(
      'inspection AB1 2024-11-03 meter 1200 h {\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 11.4 mm\n}\n',
    );
  });

  test('two values of one point and day, or two meter readings, are neither of them written', async () => {
    const cwd = works(
      'AB1;03.11.2024;P1;11,4;1200;\nAB1;03.11.2024;P1;10,4;;\nAB2;03.11.2024;P1;11,4;1200;\nAB2;03.11.2024;P2;11,4;1300;\n',
    );
    const ran = await imported(cwd, '--write');
    expect(firstLine(ran)).toContain('0 new, 0 there already, 4 against the records');
    expect(ran.out).toContain(
      'P1 of AB1 on 2024-11-03 is thickness 11.4 mm here and thickness 10.4 mm in D3',
    );
    expect(ran.out).toContain('two meter readings of AB2 on 2024-11-03: 1200 h (row 4) and 1300 h (row 5)');
    expect([ran.exit, troughFiles(cwd)]).toEqual([1, ['plant.trough']]);
  });

  test('a reading against the record is a conflict, an equal one is there, a new one goes into the block of its day', async () => {
    const record =
      '// looked at twice\ninspection AB1 2024-11-03 meter 1200 h {\r\n  gauge depth gauge ± 0.5 mm\r\n  P1 thickness 0.44 in // by hand\r\n  P2 thickness 11.0 mm\r\n}\r\n';
    const cwd = works(
      'AB1;03.11.2024;P1;11,176;1200;\nAB1;03.11.2024;P2;10,9;;\nAB1;03.11.2024;P3;11,2;;late\n',
      {
        'own.trough': record,
      },
    );
    const ran = await imported(cwd, '--write');
    expect(firstLine(ran)).toContain('1 new, 1 there already, 1 against the records');
    expect(ran.out).toContain(
      'P2 of AB1 on 2024-11-03 is recorded as 11 mm, and the sheet says thickness 10.9 mm',
    );
    expect(readFileSync(path.join(cwd, 'own.trough'), 'utf8')).toBe(
      record.replace('11.0 mm\r\n', '11.0 mm\r\n  P3 thickness 11.2 mm ± 0.2 mm "late"\r\n'),
    );
    expect(firstLine(await imported(cwd))).toContain('0 new, 2 there already, 1 against the records');
  });

  test('of two blocks of one file the line that cannot be is left out, and no other', async () => {
    const block = (day: string, meter: number): string =>
      `inspection AB1 ${day} meter ${meter} h {\n  P1 thickness 11 mm\n}\n`;
    const cwd = works(
      'AB1;03.12.2024;P3;14;1300;\nAB1;03.12.2024;P4;10,9;;\nAB1;03.11.2024;P3;11,2;1200;\n',
      {
        'own.trough': block('2024-11-03', 1200) + block('2024-12-03', 1300).replace('11 mm', '10.8 mm'),
      },
    );
    const ran = await imported(cwd, '--write');
    expect(firstLine(ran)).toContain('2 new, 0 there already, 1 skipped');
    expect(ran.out).toMatch(/ D2: TL305: /);
    expect(readFileSync(path.join(cwd, 'own.trough'), 'utf8').match(/P\d thickness \S+/g)).toEqual([
      'P1 thickness 11',
      'P3 thickness 11.2',
      'P1 thickness 10.8',
      'P4 thickness 10.9',
    ]);
  });

  test('a meter that contradicts the record keeps its day out', async () => {
    const cwd = works('AB1;03.11.2024;P3;11,2;1250;\n', {
      'own.trough': 'inspection AB1 2024-11-03 meter 1200 h {\n  P1 thickness 11 mm\n}\n',
    });
    const ran = await imported(cwd);
    expect(ran.out).toContain('the record of AB1 on 2024-11-03 has meter 1200 h, and the sheet 1250 h');
    expect(firstLine(ran)).toContain('0 new, 0 there already, 1 against the records');
  });

  test('bad news of the machine is written like all other: steel that shows, a liner below its limit', async () => {
    const cwd = works('AB1;03.11.2024;P1;steel;9000;\nAB1;03.11.2024;P2;1,4;;\n', {
      'wall.map.yaml': `${map}words:\n  steel: trough showing\n`,
    });
    const ran = await imported(cwd, '--write');
    expect([ran.exit, firstLine(ran)]).toEqual([
      0,
      expect.stringContaining('2 new, 0 there already, 0 skipped'),
    ]);
    expect(ran.out).toContain('error TL309');
    expect(ran.out).toContain('error TL310');
  });

  test('what would be an error of the estate is left out with the words of its rule', async () => {
    const cwd = works(
      'AB1;03.11.2024;P1;11,4;1200;\nAB1;03.12.2024;P1;11,2;900;\nAB1;03.01.2025;P1;11,1;1400;\n',
    );
    const ran = await imported(cwd, '--write');
    for (const cell of ['D2', 'D3'])
      expect(ran.out).toContain(
        `${cell}: TL301: The meter of AB1 shows 1200 h on 2024-11-03, and 900 h after`,
      );
    expect(firstLine(ran)).toContain('1 new, 0 there already, 2 skipped');
    expect((await troughline(['check', '.'], { cwd })).out).not.toContain(' error ');
  });
});

describe('places by chainage and clock', () => {
  const placed = `heads: 1
decimal: "."
columns: {Screw: conveyor, Date: date, At: chainage in m, Clock: clock, Wall: thickness in mm, Hours: meter in h, Point: point}
`;
  const sheet = (rows: string): string => `Screw;Date;At;Clock;Wall;Hours;Point\n${rows}`;

  test('seen against the flow are written as they were seen, and known again', async () => {
    const cwd = folderWith({
      'plant.trough': estateText,
      'wall.csv': sheet('AB1;2024-11-03;4.5;4:30;11.4;9000;\nAB1;2024-11-03;4.5;7:30;11.2;;\n'),
      'wall.map.yaml': `view: upstream\n${placed}`,
    });
    const ran = await imported(cwd, '--write');
    expect(firstLine(ran)).toContain('2 new');
    expect(readFileSync(path.join(cwd, 'inspections/AB1/2024-11-03.trough'), 'utf8')).toBe(
      'inspection AB1 2024-11-03 meter 9000 h {\n  view upstream\n  at 4.5 m clock 4:30 thickness 11.4 mm\n  at 4.5 m clock 7:30 thickness 11.2 mm\n}\n',
    );
    const { readings, places } = analyse(textsIn(cwd)).estate;
    const seen = [0, 1].map((at) => [readings.value[at], places[readings.place[at] ?? -1]?.clock]);
    expect(seen).toEqual([
      [11.4, 7.5],
      [11.2, 4.5],
    ]);
    expect(firstLine(await imported(cwd))).toContain('0 new, 2 there already, 0 skipped');
  });

  test('go into a block that looked the other way as it would have seen them', async () => {
    const cwd = folderWith({
      'plant.trough': estateText,
      'own.trough':
        'inspection AB1 2024-11-03 meter 9000 h {\n  view downstream\n  at 4.5 m clock 7:30 thickness 11.4 mm\n}\n',
      'wall.csv': sheet('AB1;2024-11-03;4.5;4:30;11.4;9000;\nAB1;2024-11-03;4.5;7:30;11.2;;\n'),
      'wall.map.yaml': `view: upstream\n${placed}`,
    });
    expect(firstLine(await imported(cwd, '--write'))).toContain('1 new, 1 there already');
    expect(readFileSync(path.join(cwd, 'own.trough'), 'utf8')).toContain(
      '  at 4.5 m clock 4:30 thickness 11.2 mm\n}',
    );
  });

  test('beside a point that lies elsewhere are told, and beyond the conveyor too', async () => {
    const rows = ['4.04;6:10;P2', '5.2;6:00;P2', '4;3:00;P2', '13;6:00;', '4;;'].map((row) => {
      const [at, clock, point] = row.split(';');
      return `AB1;2024-11-03;${at};${clock};11.4;9000;${point}`;
    });
    const cwd = folderWith({
      'plant.trough': estateText,
      'wall.csv': sheet(rows.join('\n')),
      'wall.map.yaml': placed,
    });
    const ran = await imported(cwd);
    expect(firstLine(ran)).toContain('1 new, 0 there already, 4 skipped');
    for (const why of [
      'P2 lies at 4.00 m, and the sheet says 5.2 m',
      'P2 lies at 6:00, and the sheet says 3:00',
      '13 m lies beyond AB1, which is 12 m long',
      'no point, and of chainage and clock only one',
    ])
      expect(ran.out).toContain(why);
  });
});

describe('the list of a gauge', () => {
  const files = {
    'plant.trough': estateText,
    'gauge.csv':
      'id;value;unit;time\nP1;11.42;mm;2024-11-03 10:12\nP2;11.05;mm;2024-11-03 10:14\nP3;---;mm;2024-11-03 10:15\n',
  };
  const stated =
    'conveyor: AB1\ndecimal: "."\nwords: {"---": no reading}\ncolumns: {id: point, value: thickness, unit: unit, time: date}\n';

  test('is taken with the hours that the mapping states for its one day, and never for more', async () => {
    const cwd = folderWith({ ...files, 'gauge.map.yaml': `${stated}meter: 1200 h\n` });
    const ran = await troughline(['import', 'gauge.csv', '--map', 'gauge.map.yaml'], { cwd });
    expect(ran.out).toContain(
      'inspection AB1 2024-11-03 meter 1200 h {\n  P1 thickness 11.42 mm\n  P2 thickness 11.05 mm\n}',
    );
    writeFileSync(path.join(cwd, 'gauge.csv'), `${files['gauge.csv']}P1;11.3;mm;2024-12-03 10:12\n`);
    const two = await troughline(['import', 'gauge.csv', '--map', 'gauge.map.yaml'], { cwd });
    expect(firstLine(two)).toContain('0 new, 0 there already, 3 skipped');
    expect(two.out).toContain('no meter reading of AB1 on 2024-12-03');
  });

  test('is guessed: which column is what, but neither the conveyor nor the hours', async () => {
    const { out } = await troughline(['import', 'gauge.csv'], { cwd: folderWith(files) });
    for (const line of [
      '  id: point',
      '  value: thickness ',
      '  unit: unit',
      '  time: date',
      'conveyor: "?"',
      '  "---": no reading',
    ])
      expect(out).toContain(line);
  });
});

describe('a list of conveyors', () => {
  const sheet = [
    'Plant register;;;;;;;;;;;',
    'Tag;Description;Works;Length (m);Incline (deg);Trough diameter (mm);Side height (mm);Plate (mm);Spiral type;Liner;Motor (kW);Installed',
    'AB1;"Bark ""A""";tarnholt;12,4;20;440;230;4;Spiral400;TwoLayer12;5,5;03.02.2021',
    'AB2;Bark to bay;Tarnholt;10,2;n/a;440;;4;Spiral630;12 mm;;14.02.2021',
    'AB 3;;Tarnholt;9;15;440;230;4;;;;',
    'plant;;Tarnholt;9;15;440;230;4;;;;',
    'AB1;again;Tarnholt;12;20;440;230;4;;;;',
    'AB5;;Tarnholt;long;15;440;230;4;;;;',
  ].join('\n');

  test('becomes the beginnings of their blocks: what it says in full, and by name what it does not', async () => {
    const cwd = folderWith({ 'plant.trough': partsText, 'list.csv': sheet });
    const guess = await troughline(['import', 'list.csv', '--write-map', 'list.map.yaml'], { cwd });
    expect(guess).toMatchObject({ exit: 0, out: expect.stringContaining('nothing is left open') });
    const kept = readFileSync(path.join(cwd, 'list.map.yaml'), 'utf8');
    writeFileSync(path.join(cwd, 'list.map.yaml'), `${kept}words: {n/a: blank}\n`);

    const dry = await troughline(['import', 'list.csv', '--map', 'list.map.yaml'], { cwd });
    expect(firstLine(dry)).toBe(
      'list.csv: 3 new conveyors, 0 there already, 4 skipped (a dry run, nothing is written)',
    );
    expect(dry.exit).toBe(1);
    for (const line of [
      'row 5: "AB 3" cannot be a name',
      'row 6: "plant" cannot be the name of a conveyor: the language uses it itself',
      'row 7: names AB1, as row 3 does',
      'D8: length: long is not a number',
      'AB2: incline; trough side height; screw ("Spiral630" is not declared); liner ("12 mm" is not declared)',
      'AB5: length; screw; liner',
    ])
      expect(dry.out).toContain(`  ${line}`);
    expect(dry.out).toContain(`conveyor AB1 "Bark 'A'" {
  plant Tarnholt
  length 12.4 m
  incline 20 deg
  trough inside radius 220 mm side height 230 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  // the list says: drive power 5.5 kW, at which end is not said
  // the list says: commissioned 2021-02-03
}
`);
    expect(troughFiles(cwd)).toEqual(['plant.trough']);

    await troughline(['import', 'list.csv', '--map', 'list.map.yaml', '--write'], { cwd });
    expect(troughFiles(cwd)).toEqual([
      'conveyors/AB1.trough',
      'conveyors/AB2.trough',
      'conveyors/AB5.trough',
      'plant.trough',
    ]);
    expect((await troughline(['format', '--check', 'conveyors'], { cwd })).exit).toBe(0);
    const { estate } = analyse(textsIn(cwd));
    // Only the one of which everything is known is a conveyor that is reckoned with.
    expect(estate.conveyors.map(({ name, length, incline }) => [name, length.value, incline.value])).toEqual([
      ['AB1', 12_400, 20],
    ]);
    expect(firstLine(await troughline(['import', 'list.csv', '--map', 'list.map.yaml'], { cwd }))).toContain(
      '0 new conveyors, 4 there already',
    );
  });

  test('of the example says what is missing of two', async () => {
    const ran = await troughline(['import', 'list.csv', '--map', 'list.map.yaml'], { cwd: example });
    expect([ran.exit, firstLine(ran)]).toEqual([
      0,
      'list.csv: 2 new conveyors, 2 there already, 0 skipped (a dry run, nothing is written)',
    ]);
    expect(ran.out).toContain(
      'BR3: trough side height; liner\n  BR4: screw ("Spiral500" is not declared); liner\n',
    );
  });

  test('columns it does not have, and meanings that are none, stop it', async () => {
    const cwd = folderWith({ 'plant.trough': partsText, 'list.csv': sheet });
    const tryMap = async (text: string): Promise<string> => {
      writeFileSync(path.join(cwd, 'list.map.yaml'), `rows: conveyors\nheads: 2\ncolumns:\n${text}`);
      return (await troughline(['import', 'list.csv', '--map', 'list.map.yaml', '--write'], { cwd })).err;
    };
    expect(await tryMap('  Name: name\n')).toContain(
      'has no column "Name"; its heads are "Tag", "Description"',
    );
    expect(await tryMap('  Tag: length in kW\n')).toContain(
      'list.map.yaml:4: Tag: "length in kW" is not known',
    );
    expect(troughFiles(cwd)).toEqual(['plant.trough']);
  });
});

test('words of the sheet never get out of their quotation', async () => {
  const evil = [
    '"; } conveyor X {',
    '"" // allow TL304 because ""x""',
    'line one\nline two',
    '\u202Etfel',
    'a \\" b',
    '* / /*',
  ];
  const rows = evil.map(
    (text, i) => `AB1;0${i + 1}.11.2024;P1;1${1},${9 - i};${1200 + i * 10};"${text.replaceAll('"', '""')}"`,
  );
  const cwd = works(
    `${rows.join('\n')}\nAB1;09.11.2024;"P1 thickness 3 mm } inspection";11,1;1400;\n"AB1 {";10.11.2024;P1;11,1;1500;\n`,
  );
  const ran = await imported(cwd, '--write');
  expect(firstLine(ran)).toContain('6 new, 0 there already, 2 skipped');
  const texts = textsIn(cwd);
  const { estate, findings } = analyse(texts);
  expect([estate.conveyors.length, estate.inspections.length, estate.readings.count]).toEqual([2, 6, 6]);
  expect(findings.filter(({ code }) => code.startsWith('TL1'))).toEqual([]);
  expect([...estate.readings.notes.values()]).toContain("'; } conveyor X {");
  expect([...estate.readings.notes.values()]).toContain('[U+202E]tfel');
});

describe('files that cannot be read', () => {
  test.each<[string, string | Uint8Array, string]>([
    ['nothing in it', '', 'holds nothing'],
    ['a quotation that never ends', 'a;b\n"open;1\n2;3', 'a quotation mark is opened and not closed'],
    ['zeros that are no UTF-16', new Uint8Array([65, 0, 0, 0, 66, 7, 0]), 'is no text in utf-8'],
    ['UTF-16 cut in half', new Uint8Array([0xff, 0xfe, 0x41, 0x00, 0x3b]), 'does not read as utf-16le'],
    ['bytes of no letters', new Uint8Array([0x41, 0x81, 0x8d, 0x0a]), 'is no text in utf-8'],
    [
      'an old workbook',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3]),
      'old binary form (.xls); save it as .xlsx or CSV',
    ],
    [
      'a workbook with a password',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, ...Buffer.from('EncryptedPackage', 'utf16le')]),
      'protected by a password',
    ],
    ['a million rows', 'a;b\n'.repeat(200_001), 'holds more than 200000 rows'],
    ['thousands of columns', `a${';b'.repeat(2_100)}`, 'holds rows of more than 2000 columns'],
  ])('%s', async (_, content, message) => {
    const cwd = folderWith({ 'plant.trough': estateText, 'book.csv': content });
    const ran = await troughline(['import', 'book.csv'], { cwd });
    expect(ran).toMatchObject({ exit: 2, out: '', err: expect.stringContaining(message) });
    expect(ran.err).toContain('book.csv: ');
    expect(readdirSync(cwd).sort()).toEqual(['book.csv', 'plant.trough']);
  });

  test('a file that is not there, or a folder', async () => {
    const cwd = works('');
    expect(await troughline(['import', 'none.csv'], { cwd })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('none.csv: no such file'),
    });
    expect(await troughline(['import', '.'], { cwd })).toMatchObject({
      exit: 2,
      err: expect.stringContaining('is a folder'),
    });
  });
});

describe('mappings that cannot be', () => {
  test.each([
    ['heads: [1', ':', 'wall.map.yaml'],
    ['head: 1\ncolumns:\n  Wall: thickness', 'is not known here; is "heads" meant?', 'wall.map.yaml:1: head'],
    ['dates: dmy\ncolumns:\n  Wall: thickness', 'is not one of "day-month-year"', 'wall.map.yaml:1: dates'],
    [
      'columns:\n  Wall: thickness in hours',
      'is not known as a meaning under columns',
      'wall.map.yaml:2: Wall',
    ],
    [
      'columns:\n  Wall: thickness in mm\nwords:\n  blue: color blau',
      'is not known as a meaning under words',
      'wall.map.yaml:4: blue',
    ],
    ['gauge: my thumb\ncolumns:\n  Wall: thickness', 'is no gauge', 'wall.map.yaml:1: gauge'],
    [
      'columns:\n  Hours: meter in h\nas above: [Hours]',
      'what was not written down is not copied',
      'wall.map.yaml:3: as above',
    ],
    ['[]', 'holds no mapping', 'wall.map.yaml'],
    ['', 'is empty', 'wall.map.yaml'],
    ['- a', 'holds no mapping', 'wall.map.yaml'],
  ])('%j', async (text, message, place) => {
    const cwd = works('', { 'wall.map.yaml': text });
    const ran = await imported(cwd, '--write');
    expect(ran).toMatchObject({ exit: 2, out: '' });
    expect(ran.err).toContain(message);
    expect(ran.err).toContain(place);
  });

  test('columns that the sheet does not have stop everything', async () => {
    const cwd = works('AB1;03.11.2024;P1;11,4;1200;\n', { 'wall.map.yaml': map.replace('Wall:', 'Dicke:') });
    expect((await imported(cwd, '--write')).err).toContain(
      'wall.csv: has no column "Dicke"; its heads are "Screw", "Date", "Point", "Wall", "Hours", "Note"',
    );
  });
});

describe('where it is written', () => {
  const row = 'AB1;03.11.2024;P1;11,4;1200;\nAB2;03.11.2024;P1;11,4;1200;\n';

  test('not into a file, and not outside of the estate that is read', async () => {
    const cwd = works(row, { inspections: 'a file' });
    expect(await imported(cwd, '--write')).toMatchObject({
      exit: 2,
      out: '',
      err: expect.stringContaining('inspections: is a file'),
    });
    const other = folderWith({
      'plant/plant.trough': estateText,
      'wall.csv': head + row,
      'wall.map.yaml': map,
    });
    const ran = await troughline(['import', 'wall.csv', 'plant', '--map', 'wall.map.yaml', '--write'], {
      cwd: other,
    });
    expect(ran).toMatchObject({
      exit: 2,
      err: expect.stringContaining('outside of the estate that was read'),
    });
    expect(troughFiles(other)).toEqual(['plant/plant.trough']);
  });

  test('not into a folder that is passed over when the estate is read', async () => {
    const cwd = works(row, { 'wall.map.yaml': `writes into: out/new\n${map}` });
    expect(await imported(cwd, '--write')).toMatchObject({
      exit: 2,
      err: expect.stringContaining('are passed over when an estate is read'),
    });
  });

  test('all or nothing: where the second folder takes nothing, the first has nothing either', async () => {
    const cwd = works(row);
    mkdirSync(path.join(cwd, 'inspections'));
    writeFileSync(path.join(cwd, 'inspections', 'AB2'), 'a file where a folder is needed');
    const ran = await imported(cwd, '--write');
    expect(ran).toMatchObject({ exit: 2, out: '', err: expect.stringContaining('could not write') });
    expect(readdirSync(path.join(cwd, 'inspections'))).toEqual(['AB2']);
  });

  test.skipIf(process.getuid?.() === 0)('a folder that may not be written', async () => {
    const cwd = works(row);
    mkdirSync(path.join(cwd, 'inspections'), { mode: 0o555 });
    expect((await imported(cwd, '--write')).exit).toBe(2);
    chmodSync(path.join(cwd, 'inspections'), 0o755);
    expect(readdirSync(path.join(cwd, 'inspections'))).toEqual([]);
  });
});
