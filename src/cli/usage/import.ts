// How `import` is written and what its help says. What it does stands in commands/import.ts, loaded only when it is called.

import type { Command } from 'commander';
import type { ImportOptions } from '../commands/import.js';
import type { Invocation } from './invocation.js';

export function addImport(program: Command, { console, finish }: Invocation): void {
  program
    .command('import')
    .summary('readings of a spreadsheet become inspections, a list of conveyors their blocks')
    .description(
      'Read inspections out of a spreadsheet (.xlsx or CSV) by a small mapping that is kept beside the estate. Without a ' +
        'mapping: guess one and say why. With one: show what would be written, and every row that is skipped with its ' +
        'reason. Run again it adds what is new; what contradicts the records is told and not written.',
    )
    .argument('<file>', 'the spreadsheet')
    .argument('[paths...]', 'files or folders of the estate (default: this folder)')
    .option('--map <file>', 'the mapping: what the columns mean, and which folder takes the inspections')
    .option('--write-map <file>', 'write the guessed mapping there')
    .option('--write', 'write the inspections, all or none', false)
    .addHelpText('after', help)
    .action(async (file: string, given: string[], options: ImportOptions) => {
      const { importReadings } = await import('../commands/import.js');
      finish(await importReadings(file, given, options, console));
    });
}

const help = `
Examples:
  troughline import wall.csv                                   how it would be read, and what is not known
  troughline import wall.csv --write-map readings.map.yaml     keep that mapping; answer its questions
  troughline import wall.csv --map readings.map.yaml           what would be written
  troughline import wall.csv --map readings.map.yaml --write   write it

A mapping is YAML, one fact a line:
  writes into: inspections      folder beside the mapping; one file a conveyor and day
  heads: 1 to 2                 rows that say what the columns are
  sheets: [Readings]            of a workbook; left out, all that are not hidden
  conveyor: DG1                 where no column says it; or: name of the sheet
  date: 2024-11-03              where no column says it; and for a single day
  meter: 4710 h                 its hours, where the sheet has none, as the list of a gauge
  dates: day-month-year         or month-day-year, year-month-day; never guessed where a date can be two
  century: 2000                 for years of two digits
  date numbers: 1900            numbers that count days, from 1900 or 1904
  decimal: ","                  or "."
  view: downstream              which way the inspectors looked
  gauge: ultrasonic ± 0.2 mm    what it was measured with
  across: date                  wide sheets: a date (or a point) over each further column,
  across row: 1                   in this row of the heads,
  reading: thickness in mm        and what stands below it
  meter row: 2 in h             meter readings in a row of their own, over one conveyor
  columns:                      by their heads: conveyor, date, point, chainage in m, clock, thickness in mm,
    "Wall [mm]": thickness in mm  colour, unit, meter in h, tonnes in t, error in mm, gauge,
                                  plant, by, note, not read;
                                  clock in hours, clock in degrees from 12, clock in degrees from 6
  as above: [Date]              columns whose empty cells mean what stands above
  conveyors: {Screw 3: DG1}     names of the sheet that the estate has otherwise; points: likewise,
                                  and rows that are no points: {Hours: meter in h, Mean: not read}
  words: {blue: colour teal, 2nd colour: layer 2, buried: not seen buried, n/a: no reading}

A list of conveyors has "rows: conveyors" and columns that say name, title, plant, length in m, incline in deg,
inside radius in mm (or inside diameter), side height in mm, plate in mm, screw, liner, drive end, power in kW,
speed in rpm, duty in h/week, conveys, commissioned, meter in h. What it does not say is left out and named.

Exit codes: 0 all taken, 1 something is open, skipped or contradicts the records, 2 usage or files.`;
