// What a manual says of a command beside what its options say themselves: how it ends, which files it reads and writes.

export interface ManualFacts {
  /** What 0 and 1 mean; 2 and 70 mean the same everywhere. 1 is left out where a command never ends with it. */
  readonly clean: string;
  readonly findings?: string;
  readonly files: readonly (readonly [name: string, what: string])[];
}

const texts = ['*.trough', 'the texts of the estate, read; every one below a folder that is named'] as const;
const output = ['--out', 'made where it is missing; its files are replaced as a set or not at all'] as const;

/** By the name of the command, with what it is part of: `git setup`. */
export const manualFacts: Readonly<Record<string, ManualFacts>> = {
  check: {
    clean: 'nothing was found of the severity of --fail-on or above',
    findings: 'something was',
    files: [texts, ['--baseline', 'JSON, read: findings that are lived with']],
  },
  report: {
    clean: 'the report is written',
    findings: 'it is, and what --fail-on names is so; left out, errors in the estate',
    files: [texts, ['--previous', 'a report.json that was published, read'], output],
  },
  diff: {
    clean: 'nothing differs, or nothing that --fail-on names',
    findings: 'something does',
    files: [texts, ['report.json', 'a report that was saved may stand in the place of a revision']],
  },
  month: {
    clean: 'the set is written',
    files: [
      texts,
      ['--out/YYYY-MM/', 'the set of a month; sets of other months are read and held against the records'],
      ['--out/YYYY-MM/message.txt', 'for git commit --file'],
      ['--out/tables/', 'Parquet by table, plant and month'],
      ['--out/index.html, README.md', 'all months side by side'],
    ],
  },
  pack: {
    clean: 'the pack is written',
    findings: 'it is, and says on its first page that the job cannot be done as it stands',
    files: [texts, output],
  },
  sheet: { clean: 'the sheets are written', files: [texts, output] },
  format: {
    clean: 'the texts are laid out',
    findings: 'with --check: a text would change',
    files: [['*.trough', 'read, and rewritten where white space changes']],
  },
  git: {
    clean: 'done',
    files: [
      ['.gitattributes', 'names the drivers'],
      ['.git/config', 'says what they run'],
    ],
  },
  'git setup': {
    clean: 'the drivers are set up',
    files: [
      ['.gitattributes', 'written'],
      ['.git/config', 'written'],
    ],
  },
  'git undo': {
    clean: 'they are taken out',
    files: [
      ['.gitattributes', 'written'],
      ['.git/config', 'written'],
    ],
  },
  'git textconv': { clean: 'the text is printed', files: [['FILE', 'a .trough file, read']] },
  'git merge': {
    clean: 'merged',
    findings: 'merged with conflicts, which stand between markers',
    files: [['three .trough files', 'read; the second is written']],
  },
  import: {
    clean: 'all rows are taken',
    findings: 'something is open, skipped or contradicts the records',
    files: [
      texts,
      ['FILE', 'a spreadsheet, .xlsx or CSV, read'],
      ['--map', 'the mapping, read'],
      ['--write-map', 'the guessed mapping, written'],
      ['inspections', 'with --write, all or none; the mapping names their folder'],
    ],
  },
  init: {
    clean: 'the first estate is written',
    files: [['FOLDER', 'nothing that is there is written over']],
  },
  programme: { clean: 'the programme is printed', files: [texts, output] },
  tables: {
    clean: 'the tables are written',
    findings: 'they are, and there are errors in the estate; see --fail-on',
    files: [
      texts,
      ['--out/TABLE/plant=NAME/month=YYYY-MM/TABLE.parquet', 'Parquet; other plants and months stay'],
      ['--out/TABLE.csv, TABLE.json', 'with --format csv and json'],
    ],
  },
  schema: { clean: 'the schema is printed', files: [] },
  explain: { clean: 'the rule is printed', files: [] },
  serve: { clean: 'the editor ended it', files: [texts] },
  completion: { clean: 'the script is printed', files: [] },
  help: { clean: 'the manual is printed', files: [] },
};

export const environment: readonly (readonly [name: string, what: string])[] = [
  ['SOURCE_DATE_EPOCH', 'seconds since 1970-01-01: the day to count from where --as-of is left out'],
  ['CI', 'set by build servers: then the day must be given, because a late record would move it'],
  ['NO_COLOR', 'set to anything: no colour'],
  ['GITHUB_STEP_SUMMARY', 'file that takes the summary of the job, with check --format github'],
  ['GITHUB_WORKSPACE, CI_PROJECT_DIR', 'top of the repository that files are named from'],
  ['CHROMIUM', 'the browser that prints PDF'],
  ['TROUGHLINE_DEBUG', 'set to 1: a fault of the program shows where it happened'],
];

/** Of every command. */
export const trouble = [
  ['2', 'usage, configuration or files: nothing is half written'],
  ['70', 'a fault of the program'],
] as const;
