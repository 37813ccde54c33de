// The tables as Parquet in a folder that several estates may share: one file a table, plant and month. Nothing of another works is
// written over: a plant of that name whose conveyors are all others is told and stops the run.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Estate } from '../domain/model/estate.js';
import type { CalendarDay } from '../domain/units/calendar.js';
import { monthOf } from '../generators/month/months.js';
import { conveyorsOfFile, partitionFolder, tableParquet } from '../generators/tables/parquet.js';
import type { EstateTable } from '../generators/tables/table.js';
import { list } from '../domain/units/wording.js';
import { Trouble } from './console.js';
import { told } from './foreign-text.js';
import { reasonOf } from './reason.js';
import type { OutputFile } from './write-files.js';

/** Names lead through folders: `points/plant=P/month=2026-10/points.parquet`. */
export function parquetFiles(
  tables: readonly EstateTable[],
  estate: Estate,
  asOf: CalendarDay,
): readonly OutputFile[] {
  const month = monthOf(asOf);
  return estate.plants.flatMap(({ name: plant }) =>
    tables.map((table) => ({
      name: `${partitionFolder(table.name, { plant, month })}/${table.name}.parquet`,
      content: tableParquet(table, plant, asOf),
    })),
  );
}

/**
 * @param folder holds the tables of this estate, of others, or nothing yet
 * @param shown the folder as it was asked for
 */
export function refuseOtherWorks(folder: string, shown: string, estate: Estate): void {
  const taken = new Map<string, string>();
  for (const { name } of estate.plants) {
    const other = taken.get(name.toLowerCase());
    if (other !== undefined)
      throw new Trouble(
        `plants ${other} and ${name} are one folder on some disks: give them names that differ by more than capitals`,
      );
    taken.set(name.toLowerCase(), name);
    const own = estate.conveyors.filter(({ plant }) => plant.name === name).map((conveyor) => conveyor.name);
    const there = conveyorsThere(folder, name);
    if (own.length > 0 && there.length > 0 && !own.some((conveyor) => there.includes(conveyor)))
      throw new Trouble(
        `${told(shown)} holds another works of the name ${name}, with ${list(there)}: ` +
          `here it has ${list(own)}. Two plants of one name would be written over each other; rename one`,
      );
  }
}

/** Conveyors of a plant in the tables of all months that lie there. */
function conveyorsThere(folder: string, plant: string): readonly string[] {
  const months = path.dirname(path.join(folder, partitionFolder('conveyors', { plant, month: '-' })));
  if (!existsSync(months)) return [];
  const names = readdirSync(months).flatMap((month) => {
    const file = path.join(months, month, 'conveyors.parquet');
    return existsSync(file) ? namesIn(file) : [];
  });
  return [...new Set(names)].sort();
}

function namesIn(file: string): readonly string[] {
  let names: readonly string[] | undefined;
  try {
    names = conveyorsOfFile(readFileSync(file));
  } catch (error) {
    throw new Trouble(`${told(file)}: ${reasonOf(error)}`);
  }
  if (!names)
    throw new Trouble(`${told(file)}: is no table of this program; take it away or write elsewhere`);
  return names;
}
