// A list of conveyors → the beginnings of their blocks, a file each, for what is not in the estate yet. What the list does not say is
// left out and named; the blocks are there to be completed by hand.

import path from 'node:path';
import type { Analysis } from '../analysis/analysis.js';
import { counted } from '../domain/units/wording.js';
import type { Mapping } from '../exchange/mapping.js';
import { printConveyor } from '../exchange/print-conveyors.js';
import type { Table } from '../exchange/table.js';
import { takeAssets, type SheetAsset } from '../exchange/take-assets.js';
import type { Passed } from '../exchange/take-readings.js';
import { blocksOf } from '../language/blocks.js';
import { formatText } from '../language/format.js';
import { Exit, Trouble, type Console } from './console.js';
import { shownLine, told } from './foreign-text.js';
import { writeFiles } from './write-files.js';
import type { EstateText } from './read-estate.js';

interface NewConveyor {
  readonly asset: SheetAsset;
  readonly text: string;
  readonly missing: readonly string[];
}

export interface AssetInput {
  readonly file: string;
  readonly tables: readonly Table[];
  readonly mapping: Mapping;
  readonly analysis: Analysis;
  readonly texts: readonly EstateText[];
  readonly folder: { readonly full: string; readonly path: string };
  readonly write: boolean;
}

export function importAssets(input: AssetInput, console: Console): number {
  const { file, tables, mapping, analysis, write, folder, texts } = input;
  const taken = tables.map((table) => {
    const made = takeAssets(table, mapping);
    if (!made.ok) throw new Trouble(`${told(file)}: ${shownLine(made.message)}`);
    return made;
  });
  const skipped: Passed[] = taken.flatMap((one) => one.skipped);
  const known = new Set(namesIn(texts));
  let there = 0;
  const fresh: NewConveyor[] = [];
  for (const asset of taken.flatMap(({ assets }) => assets)) {
    const again = fresh.find((one) => one.asset.name.toLowerCase() === asset.name.toLowerCase());
    if (known.has(asset.name.toLowerCase())) there++;
    else if (again)
      skipped.push({ where: asset.where, why: `names ${asset.name}, as ${again.asset.where} does` });
    else {
      const { lines, missing } = printConveyor(asset, analysis.estate);
      const text = formatText(`${lines.join('\n')}\n`);
      // A keyword is no name, whatever its letters are.
      if (blocksOf(text)?.[0]?.name === asset.name) fresh.push({ asset, text, missing });
      else
        skipped.push({
          where: asset.where,
          why: `"${asset.name}" cannot be the name of a conveyor: the language uses it itself`,
        });
    }
  }
  if (write && fresh.length > 0)
    writeFiles(
      folder.full,
      fresh.map(({ asset, text }) => ({ name: `${asset.name}.trough`, content: text })),
    );
  tell(input, fresh, there, skipped, console);
  return skipped.length > 0 ? Exit.findings : Exit.clean;
}

/** Every conveyor of the texts, also those that are not complete yet. */
function namesIn(texts: readonly EstateText[]): readonly string[] {
  return texts.flatMap(({ text }) =>
    (blocksOf(text) ?? []).flatMap(({ kind, name }) => (kind === 'conveyor' ? [name.toLowerCase()] : [])),
  );
}

function tell(
  { file, folder, write }: AssetInput,
  fresh: readonly NewConveyor[],
  there: number,
  skipped: readonly Passed[],
  console: Console,
): void {
  const how = write ? `${counted(fresh.length, 'file')} written` : 'a dry run, nothing is written';
  console.out(
    `${told(file)}: ${fresh.length} new conveyors, ${there} there already, ${skipped.length} skipped (${how})\n`,
  );
  if (skipped.length > 0) console.out('\nSkipped:\n');
  for (const { where, why } of skipped) console.out(`  ${shownLine(where)}: ${shownLine(why)}\n`);
  const lacking = fresh.filter(({ missing }) => missing.length > 0);
  if (lacking.length > 0) console.out('\nNot in the list, and needed before anything is reckoned:\n');
  for (const { asset, missing } of lacking)
    console.out(`  ${asset.name}: ${shownLine(missing.join('; '))}\n`);
  if (fresh.length > 0) console.out(write ? '\nWritten:\n' : '\nWould be written:\n');
  for (const { asset, text } of fresh)
    console.out(
      write
        ? `  ${told(path.posix.join(folder.path, `${asset.name}.trough`))}\n`
        : `\n// ${told(path.posix.join(folder.path, `${asset.name}.trough`))}\n${text}`,
    );
}
