// `troughline tables`: what the estate says, as tables for other programs: CSV, JSON, and Parquet in folders by plant and month.

import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { presentDay } from '../../domain/model/newest.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { counted } from '../../domain/units/wording.js';
import { remainingLife } from '../../generators/remaining-life/remaining-life.js';
import { tableCsv } from '../../generators/tables/csv.js';
import { tableJson } from '../../generators/tables/json.js';
import type { EstateTable } from '../../generators/tables/table.js';
import { tablesOf } from '../../generators/tables/tables.js';
import { nodeSolver } from '../../solver/node-solver.js';
import { summarise } from '../../validation/summary.js';
import { Exit, Trouble, type Console } from '../console.js';
import { chosen, deliver } from '../deliver.js';
import { told } from '../foreign-text.js';
import { parquetFiles, refuseOtherWorks } from '../parquet-files.js';
import { soundEstate, type SoundEstate } from '../sound-estate.js';
import { toldFindings } from '../told-findings.js';
import type { OutputFile } from '../write-files.js';

const formats = ['parquet', 'csv', 'json'] as const;

export interface TablesOptions {
  readonly asOf: CalendarDay | undefined;
  readonly out: string;
  readonly format: readonly string[];
  readonly failOn: 'error' | 'never';
}

export async function tables(
  paths: readonly string[],
  options: TablesOptions,
  console: Console,
): Promise<number> {
  const wanted = chosen(options.format, formats, ['parquet']);
  if (options.asOf === undefined && console.env['CI'])
    throw new Trouble('in CI, say which day to count from: --as-of YYYY-MM-DD (or SOURCE_DATE_EPOCH)');
  const folder = path.resolve(console.cwd, options.out);
  if (existsSync(folder) && !statSync(folder).isDirectory())
    throw new Trouble(`--out ${told(options.out)}: is a file; name the folder that holds the tables`);
  const sound = await soundEstate(paths, options.asOf, console);
  const asOf = presentDay(sound.estate, options.asOf);
  if (asOf === undefined) throw new Trouble('no record is dated: name the day of the tables with --as-of');
  if (wanted.includes('parquet')) refuseOtherWorks(folder, options.out, sound.estate);
  console.progress(`forecasting ${counted(sound.estate.conveyors.length, 'conveyor')}`);
  const report = remainingLife(sound.estate, { asOf, track: false, solver: await nodeSolver() });
  const made = tablesOf(report, toldFindings(sound, console));
  deliver(
    wanted.flatMap((format) => print(format, made, sound, asOf)),
    options.out,
    console,
  );
  if (wanted.includes('parquet') && sound.estate.plants.length === 0)
    console.err('troughline: no plant is described, so there is no Parquet file: files lie by plant\n');
  return exitOf(sound, options, console);
}

function print(
  format: (typeof formats)[number],
  made: readonly EstateTable[],
  { estate }: SoundEstate,
  asOf: CalendarDay,
): readonly OutputFile[] {
  switch (format) {
    case 'parquet':
      return parquetFiles(made, estate, asOf);
    case 'csv':
      return made.map((table) => ({ name: `${table.name}.csv`, content: tableCsv(table) }));
    case 'json':
      return made.map((table) => ({ name: `${table.name}.json`, content: tableJson(table, asOf) }));
  }
}

/** As the report ends: with 1 on errors in the estate, because what they touch may be missing. */
function exitOf({ findings }: SoundEstate, { failOn }: TablesOptions, console: Console): number {
  const { error } = summarise(findings);
  if (failOn === 'never' || error === 0) return Exit.clean;
  console.err(`troughline: ${error} findings of severity error in the estate (--fail-on error)\n`);
  return Exit.findings;
}
