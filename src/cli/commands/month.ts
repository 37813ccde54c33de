// `troughline month`: one month's set in a folder of its own, and the index over all months beside it. What was published
// before is read back from the sets that lie there, so that a month is compared with what was said and not with what would be
// said today. Same records, same day, same earlier sets: same bytes.

import { existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { isRecord, type LedgerBlock } from '../../domain/model/ledger.js';
import { presentDay } from '../../domain/model/newest.js';
import type { Estate } from '../../domain/model/estate.js';
import { addDays, formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import {
  changeSummary,
  type ChangeSummary,
  type ComparedReport,
} from '../../generators/change-summary/change-summary.js';
import { changeSummaryHtml } from '../../generators/change-summary/html.js';
import { changeSummaryMarkdown } from '../../generators/change-summary/markdown.js';
import { readSavedReport } from '../../generators/change-summary/saved-report.js';
import { headline } from '../../generators/change-summary/words.js';
import { inspectionSheetHtml } from '../../generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../generators/inspection-sheet/phone.js';
import { monthsHtml, monthsMarkdown } from '../../generators/month/index-page.js';
import { monthOf, monthsOf, type SavedMonth } from '../../generators/month/months.js';
import { orderListCsv } from '../../generators/month/order-list.js';
import { leadSentence } from '../../generators/remaining-life/decision-words.js';
import { estateCalendar } from '../../generators/remaining-life/estate-calendar.js';
import { remainingLifeHtml } from '../../generators/remaining-life/html.js';
import { remainingLifeJson } from '../../generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../generators/remaining-life/markdown.js';
import { readPublished, type PublishedReport } from '../../generators/remaining-life/published.js';
import { remainingLife, type RemainingLife } from '../../generators/remaining-life/remaining-life.js';
import { tableCsv } from '../../generators/tables/csv.js';
import { jobsAhead } from '../../generators/tables/plans.js';
import { withColumns, type EstateTable } from '../../generators/tables/table.js';
import { tablesOf } from '../../generators/tables/tables.js';
import { crewSheetHtml } from '../../generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../generators/work-pack/html.js';
import { workPack } from '../../generators/work-pack/work-pack.js';
import { valueOfWords } from '../../language/blocks.js';
import { estateOfAnalysis } from '../compared-sides.js';
import { Exit, Trouble, type Console } from '../console.js';
import { estateLedger } from '../../analysis/estate-ledger.js';
import { told } from '../foreign-text.js';
import { nodeSolver } from '../../solver/node-solver.js';
import { reasonOf } from '../reason.js';
import { parquetFiles } from '../parquet-files.js';
import { soundEstate, type SoundEstate } from '../sound-estate.js';
import { toldFindings } from '../told-findings.js';
import { fileName, staysBelow, writeFiles, type OutputFile } from '../write-files.js';

export interface MonthOptions {
  readonly asOf: CalendarDay | undefined;
  readonly out: string;
  /** Sheets are printed for looks that are due within so many days of the day of the report. */
  readonly sheetsWithin: number;
  readonly paper: 'A4' | 'Letter';
}

/** A set that was published: its report, read both ways. */
interface EarlierSet extends SavedMonth {
  readonly side: ComparedReport;
  readonly published: PublishedReport;
}

const contents = 'contents.json';

export async function month(
  paths: readonly string[],
  options: MonthOptions,
  console: Console,
): Promise<number> {
  if (options.asOf === undefined && console.env['CI'])
    throw new Trouble('in CI, say which day to count from: --as-of YYYY-MM-DD (or SOURCE_DATE_EPOCH)');
  const folder = path.resolve(console.cwd, options.out);
  if (existsSync(folder) && !statSync(folder).isDirectory())
    throw new Trouble(`--out ${told(options.out)}: is a file; name the folder that holds the months`);
  const sound = await soundEstate(paths, options.asOf, console);
  const asOf = presentDay(sound.estate, options.asOf);
  if (asOf === undefined) throw new Trouble('no record is dated: name the day of the month with --as-of');
  const name = monthOf(asOf);
  const sets = savedSets(folder);
  const earlier = sets.filter((set) => set.month < name);
  const made = remainingLife(sound.estate, {
    asOf,
    previous: earlier.map(({ published }) => published),
    solver: await nodeSolver(),
  });
  const ledger = estateLedger(sound).blocks.filter((block) => isKnown(block, asOf));
  const changes = changesSince(earlier.at(-1), sound, ledger, asOf);
  const report = remainingLifeJson(made, ledger);
  const tables = tablesOf(made, toldFindings(sound, console));
  const files = [
    ...reportFiles(made, sound, report, options),
    ...tableFiles(tables),
    ...changeFiles(changes, options),
    ...packFiles(sound, asOf, options),
    ...sheetFiles(made, asOf, options),
    { name: 'orders.csv', content: orderListCsv(made) },
    { name: 'month.ics', content: estateCalendar(made) },
    { name: 'message.txt', content: messageOf(name, made, changes) },
  ];
  writeSet(folder, name, { files, tables: parquetFiles(tables, sound.estate, asOf) }, console);
  const current = { ...savedIn(path.join(folder, name, 'report.json'), report), month: name };
  const index = monthsOf([...sets.filter((set) => set.month !== name), current], made.judged);
  for (const written of writeFiles(folder, [
    { name: 'index.html', content: monthsHtml(index, { paper: options.paper }) },
    { name: 'README.md', content: monthsMarkdown(index) },
  ]))
    console.out(`${told(path.relative(console.cwd, written))}\n`);
  return Exit.clean;
}

/** The sets that lie in the folder, oldest first. One that cannot be read stops the run: nothing is compared with half a past. */
function savedSets(folder: string): readonly EarlierSet[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => /^\d{4}-\d{2}$/.test(name) && existsSync(path.join(folder, name, 'report.json')))
    .sort()
    .map((name) => {
      const file = path.join(folder, name, 'report.json');
      let text: string;
      try {
        text = readFileSync(file, 'utf8');
      } catch (error) {
        throw new Trouble(`${told(file)}: ${reasonOf(error)}`);
      }
      return { ...savedIn(file, text), month: name };
    });
}

function savedIn(file: string, text: string): Omit<EarlierSet, 'month'> {
  const read = readSavedReport(text, valueOfWords);
  if (!read.ok) throw new Trouble(`${told(file)} ${read.message}`);
  const published = readPublished(text);
  if (!published.ok) throw new Trouble(`${told(file)} ${published.message}`);
  const { asOf, rows } = read.saved;
  return {
    asOf,
    rows,
    side: { kind: 'saved report', name: `the report of ${formatDay(asOf)}`, saved: read.saved },
    published: published.report,
  };
}

/** A set that is made later holds what its month knew. A duty dated ahead is a plan, and known. */
function isKnown({ kind, day }: LedgerBlock, asOf: CalendarDay): boolean {
  return !isRecord(kind) || kind === 'duty' || day === undefined || day <= asOf;
}

function changesSince(
  last: EarlierSet | undefined,
  sound: SoundEstate,
  ledger: readonly LedgerBlock[],
  asOf: CalendarDay,
): ChangeSummary | undefined {
  if (!last) return undefined;
  const now = { ...estateOfAnalysis('the records now', sound), ledger };
  const made = changeSummary(last.side, now, { asOf });
  if (!made.ok) throw new Trouble(made.message);
  return made.summary;
}

function reportFiles(
  made: RemainingLife,
  { photoAddress, photoMissing }: SoundEstate,
  json: string,
  { paper }: MonthOptions,
): readonly OutputFile[] {
  return [
    { name: 'report.html', content: remainingLifeHtml(made, { paper, photo: photoAddress }) },
    { name: 'report.md', content: remainingLifeMarkdown(made, { photoMissing }) },
    { name: 'report.json', content: json },
  ];
}

/**
 * As text only what lasts, so that beside last month's a row differs where a look or a text changed it; what the passing of days
 * moves stands in a table of its own. The Parquet of the month holds all of it.
 */
function tableFiles(tables: readonly EstateTable[]): readonly OutputFile[] {
  const names: readonly string[] = ['conveyors', 'points', 'readings'];
  const today = tables.find(({ name }) => name === 'conveyors');
  return [
    ...tables
      .filter(({ name }) => names.includes(name))
      .map((table) => ({
        name: `${table.name}.csv`,
        content: tableCsv(withColumns(table, ({ moves }) => !moves)),
      })),
    ...(today
      ? [
          {
            name: 'today.csv',
            content: tableCsv(
              withColumns(
                today,
                ({ name, moves }) => moves === true || name === 'plant' || name === 'conveyor',
              ),
            ),
          },
        ]
      : []),
  ];
}

function changeFiles(changes: ChangeSummary | undefined, { paper }: MonthOptions): readonly OutputFile[] {
  if (!changes) return [];
  return [
    { name: 'changes.md', content: changeSummaryMarkdown(changes) },
    { name: 'changes.html', content: changeSummaryHtml(changes, { paper }) },
  ];
}

/** Jobs whose window has not ended, or that have none yet. */
function packFiles(
  { estate, locate }: SoundEstate,
  asOf: CalendarDay,
  { paper }: MonthOptions,
): readonly OutputFile[] {
  return jobsAhead(estate, asOf).flatMap((job) => {
    const made = workPack(estate, job, {
      asOf,
      drawnFrom: path.posix.basename(locate(job.origin).uri),
    });
    const name = fileName(job.name);
    return [
      { name: `pack-${name}.html`, content: workPackHtml(made, { paper }) },
      { name: `pack-${name}-crew.html`, content: crewSheetHtml(made, { paper }) },
    ];
  });
}

function sheetFiles(
  { estate, conveyors }: RemainingLife,
  asOf: CalendarDay,
  { paper, sheetsWithin }: MonthOptions,
): readonly OutputFile[] {
  const last = addDays(asOf, sheetsWithin);
  const due = conveyors.filter(
    ({ model, points }) =>
      model?.look.kind === 'now' ||
      (model?.look.kind === 'by' && model.look.day <= last) ||
      (model?.look === undefined && points.some(({ nextLook }) => nextLook && nextLook.day <= last)),
  );
  return due.flatMap(({ conveyor }) => sheetsOf(estate, conveyor, asOf, paper));
}

function sheetsOf(
  estate: Estate,
  conveyor: Estate['conveyors'][number],
  asOf: CalendarDay,
  paper: MonthOptions['paper'],
): readonly OutputFile[] {
  const made = inspectionSheet(estate, conveyor, { asOf });
  const name = fileName(conveyor.name);
  return [
    { name: `sheet-${name}.html`, content: inspectionSheetHtml(made, { paper }) },
    { name: `sheet-${name}-phone.html`, content: inspectionPhonePage(made) },
  ];
}

/** What a commit of the month says: a log of such messages reads like a logbook. */
function messageOf(name: string, made: RemainingLife, changes: ChangeSummary | undefined): string {
  const since = changes ? `Since ${changes.before}: ${headline(changes)}.` : 'The first month.';
  return `${name}: ${leadSentence(made.conveyors)}\n\n${since}\n`;
}

/** Places in the text are for the editor; they differ with the line ends of the sources, and a month does not. */
function withoutPlaces(html: string): string {
  return html.replace(/ data-origin="[\d:]+"/g, '');
}

interface MonthSet {
  readonly files: readonly OutputFile[];
  /** As Parquet, in the folder that holds the tables of all months. */
  readonly tables: readonly OutputFile[];
}

/** Files of an earlier run that the month has no more are taken away; what others put there stays. */
function writeSet(months: string, month: string, { files, tables }: MonthSet, console: Console): void {
  const folder = path.join(months, month);
  const names = files.map(({ name }) => name).sort();
  const old = listedIn(path.join(folder, contents));
  const kept = files.map(({ name, content }) => ({
    name,
    content: typeof content === 'string' && name.endsWith('.html') ? withoutPlaces(content) : content,
  }));
  const list = {
    name: contents,
    content: `${JSON.stringify({ kind: 'month', files: names, tables: tables.map(({ name }) => name) }, undefined, 1)}\n`,
  };
  const tablesFolder = path.join(months, 'tables');
  for (const written of [...writeFiles(folder, [...kept, list]), ...writeFiles(tablesFolder, tables)])
    console.out(`${told(path.relative(console.cwd, written))}\n`);
  for (const gone of old.files.filter((name) => !names.includes(name)))
    rmSync(path.join(folder, gone), { force: true });
  for (const gone of old.tables.filter((name) => !tables.some((table) => table.name === name)))
    rmSync(path.join(tablesFolder, ...gone.split('/')), { force: true });
}

interface Listed {
  readonly files: readonly string[];
  readonly tables: readonly string[];
}

function listedIn(file: string): Listed {
  const nothing = { files: [], tables: [] };
  if (!existsSync(file)) return nothing;
  let data: unknown;
  try {
    data = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return nothing; // not ours: nothing is taken away
  }
  if (typeof data !== 'object' || data === null) return nothing;
  const files = namesIn('files' in data ? data.files : undefined);
  return {
    files: files.filter((name) => path.basename(name) === name),
    tables: namesIn('tables' in data ? data.tables : undefined),
  };
}

/** Names that lead nowhere but below. */
function namesIn(list: unknown): readonly string[] {
  return Array.isArray(list)
    ? list.filter((name: unknown): name is string => typeof name === 'string' && staysBelow(name))
    : [];
}
