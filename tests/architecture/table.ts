// Who may import whom, as data. A part is a folder; a file directly in it is its door, deeper files are private to it.
// A new arrow is a decision: write the choice and its reason in DEVELOPERS.md first.

export interface Part {
  /** Folder under src. */
  readonly folder: string;
  /** Other parts it may import. */
  readonly parts: readonly string[];
  /** Packages it may import: a name, or a prefix ending in *. */
  readonly packages: readonly string[];
  /** Files in deeper folders that others may import all the same: what a tool generates there. */
  readonly deepDoors?: readonly string[];
  readonly why: string;
}

export const parts: readonly Part[] = [
  { folder: 'domain/units', parts: [], packages: [], why: 'dimensions, quantities, dates, clock positions' },
  {
    folder: 'domain/geometry',
    parts: [],
    packages: [],
    why: 'formulas of trough, helix, liner, drive',
  },
  {
    folder: 'domain/wear',
    parts: ['domain/units'],
    packages: ['@stdlib/*'],
    why: 'rates, lives and intervals from columns',
  },
  {
    folder: 'domain/model',
    parts: ['domain/units', 'domain/geometry'],
    packages: [],
    why: 'the estate and its history',
  },
  {
    folder: 'domain/conditions',
    parts: ['domain/units', 'domain/wear', 'domain/model'],
    packages: [],
    why: 'what is wrong where, since when, and whether it was put right',
  },
  {
    folder: 'domain/order',
    parts: ['domain/units', 'domain/geometry', 'domain/model'],
    packages: [],
    why: 'which orders of work can be built',
  },
  {
    folder: 'domain/plan',
    parts: ['domain/units', 'domain/geometry', 'domain/model', 'domain/conditions', 'domain/order'],
    packages: [],
    why: 'who does what when, cuts, lifts, materials',
  },
  {
    folder: 'domain/decision',
    parts: ['domain/units', 'domain/model', 'domain/order', 'domain/plan'],
    packages: ['@stdlib/math-base-special-erfc'],
    why: 'what to do about each conveyor, and what it costs',
  },
  {
    folder: 'solver',
    parts: ['domain/decision'],
    packages: ['highs', 'node:*'],
    why: 'the kept solver behind the programme over all outages',
  },

  {
    folder: 'language',
    parts: ['domain/units', 'domain/model', 'domain/conditions'],
    packages: ['langium', 'chevrotain'],
    deepDoors: ['generated/ast.js'],
    why: 'text to model and back',
  },
  {
    folder: 'validation',
    parts: [
      'domain/units',
      'domain/geometry',
      'domain/wear',
      'domain/model',
      'domain/conditions',
      'domain/order',
      'domain/plan',
      'domain/decision',
    ],
    packages: [],
    why: 'rules: model to findings',
  },
  {
    folder: 'analysis',
    parts: ['domain/units', 'domain/model', 'language', 'validation'],
    packages: [],
    why: 'texts in, model and findings out',
  },

  {
    folder: 'exchange',
    parts: ['domain/units', 'domain/model', 'language'],
    packages: ['papaparse', 'js-yaml', 'hucre'],
    why: "tables of other people's making, and what they say",
  },

  {
    folder: 'generators/page',
    parts: ['domain/units'],
    packages: ['ical-generator'],
    deepDoors: ['generated/phone-sheet.js', 'generated/as-fitted.js'],
    why: 'what every printed page shares',
  },
  { folder: 'generators/appendix', parts: [], packages: [], why: 'formulas and sources, said once' },
  {
    folder: 'generators/drawing',
    parts: ['domain/geometry', 'domain/units', 'domain/model', 'generators/page'],
    packages: [],
    why: 'drawings of a conveyor',
  },
  {
    folder: 'generators/remaining-life',
    parts: [
      'domain/units',
      'domain/wear',
      'domain/model',
      'domain/conditions',
      'domain/decision',
      'generators/page',
      'generators/appendix',
    ],
    packages: ['d3-scale'],
    why: 'the report',
  },
  {
    folder: 'generators/work-pack',
    parts: [
      'domain/units',
      'domain/geometry',
      'domain/model',
      'domain/conditions',
      'domain/order',
      'domain/plan',
      'domain/decision',
      'generators/page',
      'generators/drawing',
      'protocol',
    ],
    packages: ['hucre'],
    why: 'the pack',
  },
  {
    folder: 'generators/inspection-sheet',
    parts: [
      'domain/units',
      'domain/model',
      'domain/conditions',
      'generators/remaining-life',
      'generators/page',
      'generators/drawing',
      'protocol',
    ],
    packages: [],
    why: 'what to look at and write down',
  },

  {
    folder: 'generators/change-summary',
    parts: [
      'domain/units',
      'domain/model',
      'domain/plan',
      'domain/decision',
      'generators/page',
      'generators/remaining-life',
    ],
    packages: [],
    why: 'what a change of an estate means',
  },

  {
    folder: 'generators/month',
    parts: [
      'domain/units',
      'domain/decision',
      'generators/page',
      'generators/remaining-life',
      'generators/change-summary',
    ],
    packages: [],
    why: 'the index of months and what a month adds to its reports',
  },

  {
    folder: 'generators/tables',
    parts: [
      'domain/units',
      'domain/model',
      'domain/order',
      'domain/plan',
      'domain/decision',
      'generators/remaining-life',
      'generators/month',
    ],
    packages: ['hyparquet', 'hyparquet-writer'],
    why: 'what the estate says, as tables for other programs',
  },

  { folder: 'protocol', parts: [], packages: [], why: 'plain messages between server, client and views' },
  {
    folder: 'lsp',
    parts: [
      'domain/decision',
      'solver',
      'cli/git',
      'generators/change-summary',
      'domain/units',
      'domain/geometry',
      'domain/model',
      'domain/conditions',
      'analysis',
      'language',
      'validation',
      'generators/remaining-life',
      'generators/work-pack',
      'generators/inspection-sheet',
      'generators/page',
      'generators/drawing',
      'protocol',
    ],
    packages: [
      'langium',
      'langium/*',
      'vscode-languageserver',
      'vscode-languageserver/*',
      'vscode-languageserver-*',
      'vscode-uri',
      'node:*',
    ],
    why: 'one file an editor feature',
  },
  {
    folder: 'extension',
    parts: ['protocol'],
    packages: ['vscode', 'vscode-languageclient', 'vscode-languageclient/*'],
    why: 'the VS Code side',
  },
  { folder: 'views', parts: ['protocol'], packages: [], why: 'webviews' },
  { folder: 'cli/git', parts: [], packages: ['node:*'], why: 'reading revisions through the git command' },
  {
    folder: 'cli',
    parts: [
      'cli/git',
      'exchange',
      'generators/appendix',
      'generators/change-summary',
      'generators/month',
      'generators/tables',
      'domain/decision',
      'solver',
      'domain/units',
      'domain/model',
      'domain/plan',
      'analysis',
      'language',
      'validation',
      'generators/remaining-life',
      'generators/work-pack',
      'generators/inspection-sheet',
      'lsp',
    ],
    packages: ['commander', 'node:*'],
    why: 'the command line',
  },
];
