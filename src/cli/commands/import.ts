// `troughline import`: readings of a spreadsheet become inspections. Without a mapping it says how it would read the sheet; with
// one it shows what it would write; only `--write` writes. Run again it adds what is new, and what contradicts the records is told.

import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Analysis } from '../../analysis/analysis.js';
import { counted } from '../../domain/units/wording.js';
import { guessAssets } from '../../exchange/guess-assets.js';
import { guessMapping } from '../../exchange/guess-mapping.js';
import type { Mapping } from '../../exchange/mapping.js';
import { readMapping } from '../../exchange/read-mapping.js';
import { settleReadings, type Settled } from '../../exchange/settle-readings.js';
import type { Book, Table } from '../../exchange/table.js';
import { takeReadings, type Passed, type Taken } from '../../exchange/take-readings.js';
import { Exit, Trouble, type Console } from '../console.js';
import { isPassedOver } from '../find-files.js';
import { shownLine, slashes, told } from '../foreign-text.js';
import { importAssets } from '../import-assets.js';
import { openBook } from '../open-book.js';
import { placeInspections, type PlacedReadings } from '../placed-inspections.js';
import { allRead, readEstate, tellAgain, type EstateText } from '../read-estate.js';
import { reasonOf } from '../reason.js';
import { writeAcross } from '../write-across.js';
import { writeFile } from '../write-files.js';
import { analyseRead } from './check.js';

export interface ImportOptions {
  readonly map?: string;
  readonly writeMap?: string;
  readonly write: boolean;
}

export async function importReadings(
  file: string,
  paths: readonly string[],
  options: ImportOptions,
  console: Console,
): Promise<number> {
  if (options.map !== undefined && options.writeMap !== undefined)
    throw new Trouble('--write-map writes a first mapping, and --map reads one; take one of them');
  if (options.map === undefined && options.write)
    throw new Trouble(
      '--write needs --map FILE; without it the mapping is only guessed (--write-map FILE writes the guess)',
    );
  const mapping = options.map === undefined ? undefined : mappingIn(options.map, console);
  const book = await openBook(file, mapping ?? {}, console);
  const { analysis, texts } = await estateFor(paths, console);
  if (!mapping) return showGuess(file, book, analysis, options, console);
  const folder = folderFor(options.map ?? '', mapping, paths, console);
  const tables = tablesOf(book, mapping, file);
  if (mapping.assets)
    return importAssets({ file, tables, mapping, analysis, texts, folder, write: options.write }, console);
  if (analysis.estate.conveyors.length === 0)
    throw new Trouble('this estate has no conveyor that can be read; readings need one');
  const taken = tables.map((table) => takenFrom(table, mapping, file));
  console.progress('holding the readings against the records');
  const settled = settleReadings(analysis.estate, mapping, taken);
  const placement = placeInspections(settled.inspections, { analysis, texts, mapping, folder });
  if (options.write) writeAcross(placement.files);
  return report(file, book, taken, settled, placement, options, console);
}

function mappingIn(given: string, console: Console): Mapping {
  let text: string;
  try {
    text = readFileSync(path.resolve(console.cwd, given), 'utf8');
  } catch (error) {
    throw new Trouble(`${told(given)}: ${reasonOf(error)}`);
  }
  const read = readMapping(text);
  if (!read.ok)
    throw new Trouble(
      read.problems
        .map(
          ({ line, message }) =>
            `${told(given)}${line === undefined ? '' : `:${line}`}: ${shownLine(message)}`,
        )
        .join('\n'),
    );
  return read.mapping;
}

async function estateFor(
  paths: readonly string[],
  console: Console,
): Promise<{ readonly analysis: Analysis; readonly texts: readonly EstateText[] }> {
  if (paths.includes('-'))
    throw new Trouble('the estate has to lie in files, so that inspections can be written beside them');
  const read = await readEstate(paths, console);
  const texts = allRead(read);
  tellAgain(read, console);
  const analysis = analyseRead(read, undefined);
  if (analysis.inConflict.length > 0)
    throw new Trouble(
      `${analysis.inConflict.map(told).join(', ')}: holds a merge conflict that is not settled; nothing is taken`,
    );
  return { analysis, texts };
}

function showGuess(
  file: string,
  book: Book,
  { estate }: Analysis,
  { writeMap }: ImportOptions,
  console: Console,
): number {
  const list = guessAssets(book, path.basename(file));
  const made = list ? { ok: true as const, guess: list } : guessMapping(book, estate, path.basename(file));
  if (!made.ok) throw new Trouble(`${told(file)}: ${made.message}`);
  const { text, open } = made.guess;
  const questions =
    open.length === 0 ? 'nothing is left open' : `${counted(open.length, 'question')} to answer`;
  console.out(`${told(file)}: a mapping is guessed, ${questions}; nothing is taken with it yet\n`);
  for (const said of book.said) console.out(`  ${shownLine(said)}\n`);
  console.out(`\n${text.split('\n').map(shownLine).join('\n')}`);
  if (writeMap === undefined) {
    console.err(
      'Nothing was written: --write-map readings.map.yaml writes this mapping, to be judged and kept in git.\n',
    );
    return open.length === 0 ? Exit.clean : Exit.findings;
  }
  const full = path.resolve(console.cwd, writeMap);
  if (existsSync(full))
    throw new Trouble(`${told(writeMap)}: is there already, and stays as it is; name another file`);
  writeFile(full, text);
  console.err(
    `Written to ${told(writeMap)}. Judge it, then: troughline import ${told(file)} --map ${told(writeMap)}\n`,
  );
  return open.length === 0 ? Exit.clean : Exit.findings;
}

/** The folder of the mapping, which has to be read with the estate: what is written elsewhere would be written again next time. */
function folderFor(
  map: string,
  { writesInto }: Mapping,
  paths: readonly string[],
  console: Console,
): { readonly full: string; readonly path: string } {
  const full = path.resolve(console.cwd, path.dirname(map), writesInto);
  const there = statSync(full, { throwIfNoEntry: false });
  if (there && !there.isDirectory())
    throw new Trouble(`${told(writesInto)}: is a file; the mapping has to name a folder (writes into)`);
  const real = realPath(full);
  const roots = (paths.length === 0 ? ['.'] : paths).map((given) =>
    realPath(path.resolve(console.cwd, given)),
  );
  const home = roots.find((root) => real === root || real.startsWith(root + path.sep));
  if (home !== undefined && path.relative(home, real).split(path.sep).some(isPassedOver))
    throw new Trouble(
      `${told(writesInto)} (writes into): folders of that name are passed over when an estate is read; name another`,
    );
  if (home === undefined)
    throw new Trouble(
      `${told(writesInto)} (writes into) lies at ${told(full)}, outside of the estate that was read; name the estate's folder: troughline import … ESTATE`,
    );
  const relative = path.relative(console.cwd, full);
  return { full, path: slashes(relative.startsWith('..') ? full : relative) };
}

/** Through links, as far as the path is there. */
function realPath(full: string): string {
  if (existsSync(full)) return realpathSync(full);
  const above = path.dirname(full);
  return above === full ? full : path.join(realPath(above), path.basename(full));
}

function tablesOf(book: Book, { sheets }: Mapping, file: string): readonly Table[] {
  if (!sheets) return book.tables;
  const names = book.tables.flatMap(({ sheet }) => sheet ?? []);
  const lost = sheets.filter((sheet) => !names.includes(sheet));
  if (lost.length > 0)
    throw new Trouble(
      `${told(file)}: has no sheet ${lost.map((sheet) => `"${shownLine(sheet)}"`).join(', ')}${names.length > 0 ? `; it has ${names.map((name) => `"${shownLine(name)}"`).join(', ')}` : ''}`,
    );
  return book.tables.filter(({ sheet = '' }) => sheets.includes(sheet));
}

function takenFrom(table: Table, mapping: Mapping, file: string): Taken {
  const made = takeReadings(table, mapping);
  if (!made.ok) throw new Trouble(`${told(file)}: ${shownLine(made.message)}`);
  return made.taken;
}

function report(
  file: string,
  book: Book,
  taken: readonly Taken[],
  settled: Settled,
  placement: PlacedReadings,
  { write }: ImportOptions,
  console: Console,
): number {
  const skipped = [...settled.skipped, ...placement.skipped];
  const empty = skipped.filter(({ intended }) => intended);
  const refused = skipped.filter(({ intended }) => !intended);
  const { readings, files, remarks } = placement;
  const all = readings + settled.there + settled.conflicts.length + skipped.length;
  const counts = [
    `${readings} new`,
    `${settled.there} there already`,
    ...(settled.conflicts.length > 0 ? [`${settled.conflicts.length} against the records`] : []),
    `${refused.length} skipped`,
    ...(empty.length > 0 ? [`${empty.length} without a reading`] : []),
  ];
  const how = write ? `${counted(files.length, 'file')} written` : 'a dry run, nothing is written';
  console.out(`${told(file)}: ${counted(all, 'row')} read: ${counts.join(', ')} (${how})\n`);
  for (const said of [...book.said, ...taken.flatMap((one) => one.said)])
    console.out(`  ${shownLine(said)}\n`);
  tellPassed('Against the records, not written', settled.conflicts, console);
  tellPassed('Skipped', refused, console);
  tellPassed('Without a reading', empty, console);
  tellRemarks(remarks, console);
  if (files.length > 0) console.out(write ? '\nWritten:\n' : '\nWould be written:\n');
  for (const one of files) {
    console.out(`${write ? '  ' : '\n// '}${told(one.path)}${one.isNew ? '' : ' (added to)'}\n`);
    if (!write) for (const line of one.shown) console.out(`${line}\n`);
  }
  if (!write && files.length > 0) console.err('Nothing was written; --write writes it.\n');
  return settled.conflicts.length + refused.length > 0 ? Exit.findings : Exit.clean;
}

/** A rule that speaks of many new lines is told once, with its first place. */
function tellRemarks(remarks: PlacedReadings['remarks'], console: Console): void {
  if (remarks.length > 0) console.out('\nWhat check says of what is new:\n');
  for (const code of new Set(remarks.map((remark) => remark.code))) {
    const [first, ...more] = remarks.filter((remark) => remark.code === code);
    if (!first) continue;
    const times = more.length > 0 ? ` (and ${counted(more.length, 'more of these', 'more of these')})` : '';
    console.out(
      `  ${told(first.path)}:${first.line}: ${first.severity} ${code}: ${shownLine(first.message)}${times}\n`,
    );
  }
}

function tellPassed(title: string, passed: readonly Passed[], console: Console): void {
  if (passed.length === 0) return;
  console.out(`\n${title}:\n`);
  for (const { where, why } of passed) console.out(`  ${shownLine(where)}: ${shownLine(why)}\n`);
}
