// The inspection sheet for paper: landscape, the way to look in large letters, a table to fill in by hand with the last reading
// and the expected one beside each blank, the clock face and the layout, and the block as it will be typed in. Black and white.

import { formatHours } from '../../domain/units/format.js';
import type { LengthUnit } from '../../domain/units/length-words.js';
import { chainageWords, lengthWords } from '../../domain/units/length-words.js';
import { capital } from '../../domain/units/wording.js';
import { knownOfSafeguard, safeguardsAsk } from '../../domain/conditions/safeguards-declared.js';
import type { Markup } from '../page/markup.js';
import { element, group, trusted } from '../page/markup.js';
import type { Paper } from '../page/page.js';
import { htmlPage, type PageOptions } from '../page/page.js';
import { placeInText } from '../page/place-in-text.js';
import { expectReason, expectWords } from './print/words.js';
import type { InspectionSheet, SheetPoint } from './sheet.js';

export interface SheetHtmlOptions {
  readonly paper?: Paper;
}

export function inspectionSheetHtml(sheet: InspectionSheet, options: SheetHtmlOptions = {}): string {
  return htmlPage(inspectionSheetPage(sheet, options));
}

export function inspectionSheetPage(sheet: InspectionSheet, options: SheetHtmlOptions = {}): PageOptions {
  const title = `Inspection sheet ${sheet.conveyor.name}`;
  return {
    title: `${title}, as of ${sheet.asOf}`,
    footer: `${sheet.conveyor.qualified} · inspection · expectations as of ${sheet.asOf} · look ${sheet.look} · advice only, not a permit`,
    paper: options.paper ?? 'A4',
    orientation: 'landscape',
    width: 297,
    styles,
    body: group(
      head(sheet, title),
      blanks(sheet),
      cautions(sheet),
      safeguardTable(sheet),
      pointTable(sheet),
      conditionTable(sheet),
      otherTables(sheet),
      sheet.drawings.map((drawing) => element('section', { class: 'sheet' }, trusted(drawing.svg))),
      template(sheet),
    ),
  };
}

function head(sheet: InspectionSheet, title: string): Markup {
  const look =
    sheet.look === 'downstream'
      ? 'with the flow: the material moves away from you, 3 o’clock is on your right'
      : 'against the flow: the material comes towards you, 3 o’clock is on your right';
  return element(
    'header',
    { class: 'sheet-head' },
    element(
      'div',
      {},
      element('p', { class: 'kicker' }, `${sheet.plant} · ${sheet.conveyor.qualified}`),
      element('h1', placeInText(sheet.conveyor.origin), title),
      element('p', {}, sheet.conveyor.title ?? ''),
    ),
    element(
      'div',
      { class: 'look' },
      element('strong', {}, `LOOK ${sheet.look.toUpperCase()}`),
      element('span', {}, look),
      element(
        'span',
        { class: 'small' },
        `Clock positions on this sheet are as you see them that way (${sheet.lookBecause}).`,
      ),
    ),
  );
}

function blanks(sheet: InspectionSheet): Markup {
  const { last, about } = sheet.meter;
  const meter = last
    ? `last ${formatHours(last.value)} on ${last.date}${about === undefined ? '' : `, about ${formatHours(about)} on ${sheet.asOf}`}`
    : sheet.meter.basis;
  const blank = (name: string, hint = ''): Markup =>
    element('div', { class: 'blank' }, element('span', {}, name), element('small', {}, hint));
  return element(
    'div',
    { class: 'blanks' },
    blank('Date'),
    blank('Hour meter, h', meter),
    sheet.tonnes
      ? blank(
          'Tonnes counter, t',
          sheet.tonnes.last === undefined
            ? ''
            : `last ${Math.round(sheet.tonnes.last)} t on ${sheet.tonnes.date ?? ''}`,
        )
      : group(),
    blank('Who looks'),
    blank(
      `Gauge, ± ${sheet.unit}`,
      [
        sheet.lastRead.gauge === undefined ? '' : `last ${sheet.lastRead.gauge}`,
        'checked on an offcut at site temperature',
      ]
        .filter(Boolean)
        .join('; '),
    ),
    blank('Permit no.'),
  );
}

function isolationWords(
  { name, title, kind, at }: InspectionSheet['isolations'][number],
  unit: InspectionSheet['unit'],
): string {
  const where = at === undefined ? '' : `, at ${chainageWords(at, unit)}`;
  return `${name}${title ? ` ${title}` : ''} (${kind}${where})`;
}

function cautions(sheet: InspectionSheet): Markup {
  const points =
    sheet.isolations.length > 0
      ? `Isolation points declared: ${sheet.isolations.map((item) => isolationWords(item, sheet.unit)).join('; ')}.`
      : 'No isolation point is declared for this conveyor: find and lock them all before opening.';
  return element(
    'section',
    { class: 'caution' },
    sheet.cautions.map((caution) =>
      element('p', {}, element('strong', {}, caution.heading), ` ${caution.text}`),
    ),
    element('p', {}, element('strong', {}, points)),
  );
}

/** Declared ones only: what else there is nobody has written down. */
function safeguardTable({ safeguards }: InspectionSheet): Markup {
  if (safeguards.length === 0) return group();
  return element(
    'div',
    { class: 'keep' },
    element('h2', {}, 'Safeguards declared'),
    element(
      'table',
      { class: 'form' },
      headings(['Safeguard', 'Known of it', 'There and whole', 'Tried, by whom', 'What was found']),
      element(
        'tbody',
        {},
        safeguards.map((each) =>
          element(
            'tr',
            placeInText(each.origin),
            element('td', {}, element('strong', {}, each.what)),
            element('td', {}, element('small', {}, knownOfSafeguard(each))),
            element('td', { class: 'ticks' }, '☐'),
            element('td', { class: 'write' }),
            element('td', { class: 'write wide' }),
          ),
        ),
      ),
    ),
    element('p', { class: 'small' }, safeguardsAsk),
  );
}

function pointTable(sheet: InspectionSheet): Markup {
  if (sheet.points.length === 0)
    return element(
      'p',
      { class: 'caution' },
      'No inspection point is declared, and none was ever read. Choose places on the worn side and write down chainage and clock.',
    );
  // Where liners of several colours lie, only those of the liner at the place can show there.
  const layersAt = ({ liner }: SheetPoint): readonly string[] =>
    (sheet.liners.find(({ name }) => name === liner)?.layers ?? []).map(({ name }) => name);
  const headings = [
    'Point',
    'Where',
    'Clock',
    'Last',
    'Expect',
    `Thickness, ${sheet.unit}`,
    'Colour showing',
    'Trough',
    'Not seen, why',
  ];
  return group(
    element('h2', {}, 'Points, from the tail end up'),
    element(
      'table',
      { class: 'points' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          headings.map((heading) => element('th', { scope: 'col' }, heading)),
        ),
      ),
      element(
        'tbody',
        {},
        sheet.points.map((point) => pointRow(point, layersAt(point), sheet.unit)),
      ),
    ),
    element(
      'p',
      { class: 'small' },
      'Write what you see and nothing else. Not seen is an answer. A reading outside what is expected: ' +
        'clean the place, look again, check point, side and gauge; then write it down as it is.',
    ),
  );
}

function pointRow(point: SheetPoint, layers: readonly string[], unit: LengthUnit): Markup {
  const where = [
    `${chainageWords(point.fromHead, unit)} from the head`,
    point.cover && `cover ${point.cover}`,
    `${point.run}${point.panel === undefined ? '' : `, panel ${point.panel}`}`,
    point.access,
    point.note,
  ]
    .filter(Boolean)
    .join(', ');
  return element(
    'tr',
    placeInText(point.origin),
    element('td', { class: 'name' }, point.name ?? 'place'),
    element(
      'td',
      {},
      element('strong', {}, chainageWords(point.at, unit)),
      element('br'),
      element('small', {}, where),
    ),
    element('td', { class: 'clock' }, point.clockText),
    element(
      'td',
      {},
      point.last
        ? group(
            element('strong', {}, unbroken(point.last.words)),
            element('br'),
            element('small', { class: 'day' }, point.last.date),
          )
        : 'none',
    ),
    element(
      'td',
      {},
      element('strong', {}, expectWords(point.expect, unit)),
      element('br'),
      element('small', {}, expectReason(point.expect)),
    ),
    element('td', { class: 'write' }),
    element(
      'td',
      { class: 'ticks' },
      layers.map((name) => element('span', {}, `☐ ${name}`)),
    ),
    element('td', { class: 'ticks' }, '☐'),
    element('td', { class: 'write' }),
  );
}

/** Each needs an answer: a silent sheet leaves it open, and the next report says so. */
function conditionTable(sheet: InspectionSheet): Markup {
  if (sheet.openConditions.length === 0) return group();
  return group(
    element('h2', {}, 'Still open: answer every line'),
    element(
      'table',
      { class: 'form conditions' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ['What', 'Where', 'Known of it', 'Still there', 'Closed', 'Not seen', 'How bad, and why'].map(
            (heading) => element('th', { scope: 'col' }, heading),
          ),
        ),
      ),
      element(
        'tbody',
        {},
        sheet.openConditions.map((row) =>
          element(
            'tr',
            {},
            element(
              'td',
              {},
              element('strong', {}, row.what),
              row.severity === '' ? '' : `, ${row.severity}`,
            ),
            element('td', {}, row.place),
            element('td', {}, element('small', {}, [row.since, row.notes].filter(Boolean).join('; '))),
            element('td', { class: 'ticks' }, '☐'),
            element('td', { class: 'ticks' }, '☐'),
            element('td', { class: 'ticks' }, '☐'),
            element('td', { class: 'write wide' }),
          ),
        ),
      ),
    ),
  );
}

function otherTables(sheet: InspectionSheet): Markup {
  const { holdDowns, openRemarks } = sheet;
  const rows = runningRows(sheet);
  const findings = element(
    'div',
    { class: 'keep' },
    element('h2', {}, 'Findings'),
    openRemarks.length > 0 && element('p', {}, lookAgain(sheet)),
    findingsTable(),
  );
  // Beside the longer column, so that the table of findings is not cut by the end of the page.
  const left = holdDowns.length * gapRow < rows.length * formRow;
  return element(
    'div',
    { class: 'others' },
    element('section', {}, holdDowns.length > 0 && gapsTable(sheet), left && findings),
    element('section', {}, element('h2', {}, 'Running'), runningTable(rows), !left && findings),
  );
}

/** Heights of a row to be filled in, mm: of a gap, and of what is measured. */
const [gapRow, formRow] = [6.3, 9];

function gapsTable({ unit, holdDowns }: InspectionSheet): Markup {
  return group(
    element('h2', {}, 'Hold-down gaps'),
    element(
      'table',
      {},
      headings(['Block', 'Chainage', 'Last', `Gap now, ${unit}`]),
      element(
        'tbody',
        {},
        holdDowns.map(({ name, at, lastGap, lastDate }) =>
          element(
            'tr',
            {},
            element('td', {}, name),
            element('td', {}, chainageWords(at, unit)),
            element(
              'td',
              {},
              lastGap === undefined ? '' : `${lengthWords(lastGap, unit)}, ${lastDate ?? ''}`,
            ),
            element('td', { class: 'write' }),
          ),
        ),
      ),
    ),
  );
}

function runningTable(rows: ReturnType<typeof runningRows>): Markup {
  return element(
    'table',
    { class: 'form' },
    headings(['What', 'Last', 'Now']),
    element(
      'tbody',
      {},
      rows.map(([name, last]) =>
        element(
          'tr',
          {},
          element('td', {}, name),
          element('td', { class: 'day' }, last),
          element('td', { class: 'write wide' }),
        ),
      ),
    ),
  );
}

/** What is measured beside the points, with its last value; the last rows of a kind are for a place that was never read. */
function runningRows({ unit, lastRead, bare }: InspectionSheet): readonly (readonly [string, string])[] {
  const { empty, loaded, speed, drive, flights, wornWidths, plates } = lastRead;
  const at = (mm: number): string => chainageWords(mm, unit);
  return [
    ['Current empty, A', empty ?? ''],
    ['Current loaded, A', loaded ?? ''],
    ['Speed of the screw, rpm', speed ?? ''],
    ...drive.map(({ what, words }) => [capital(what), words] as const),
    ...(drive.length === 0 ? [['Bearings, gearbox: temperature, noise', ''] as const] : []),
    ...flights.flatMap(({ at: where, depth, diameter }) => [
      ...(depth === undefined ? [] : [[`Flight depth at ${at(where)}, ${unit}`, depth] as const]),
      ...(diameter === undefined ? [] : [[`Outside diameter at ${at(where)}, ${unit}`, diameter] as const]),
    ]),
    [`Flight depth or outside diameter, ${unit}, at`, ''],
    ...wornWidths.map(({ at: where, words }) => [`Worn from … to … o’clock at ${at(where)}`, words] as const),
    ...(wornWidths.length === 0 ? [['Worn from … to … o’clock, at', ''] as const] : []),
    ...plates.map(
      ({ at: where, clock, words }) =>
        [`Plate at ${[at(where), clock, unit].filter(Boolean).join(', ')}`, words] as const,
    ),
    ...bare.map(
      ({ from, to, last }) => [`Plate, ${unit}, bare from ${at(from)} to ${at(to)}`, last] as const,
    ),
  ];
}

/** What earlier looks found and nobody has said is mended. */
function lookAgain({ unit, openRemarks }: InspectionSheet): string {
  const said = openRemarks.map(({ part, at, text, date }) => {
    const where = [part, at === undefined ? undefined : `at ${chainageWords(at, unit)}`];
    return [...where.filter(Boolean), `“${text}” (${date})`].join(' ');
  });
  return `Look again at: ${said.join('; ')}.`;
}

function findingsTable(): Markup {
  const row = element(
    'tr',
    {},
    element('td', { class: 'write' }),
    element('td', { class: 'write' }),
    element('td', { class: 'write wide' }),
    element('td', { class: 'write' }),
  );
  return element(
    'table',
    { class: 'form' },
    headings(['Part', 'Chainage', 'What', 'Photo no.']),
    element(
      'tbody',
      {},
      Array.from({ length: 5 }, () => row),
    ),
  );
}

function headings(names: readonly string[]): Markup {
  return element(
    'thead',
    {},
    element(
      'tr',
      {},
      names.map((name) => element('th', { scope: 'col' }, name)),
    ),
  );
}

/** The block with a blank for each reading, as it is typed into the estate afterwards. */
function template(sheet: InspectionSheet): Markup {
  const lines = [
    `inspection ${sheet.conveyor.qualified} ____-__-__ meter ______ h${sheet.tonnes ? ' tonnes ______ t' : ''} {`,
    '  by "________"',
    `  view ${sheet.look}`,
    '  gauge __________ ± ___ ' + sheet.unit,
    ...sheet.points.map((point) => `  ${point.writes} thickness ____ ${sheet.unit}`),
    ...sheet.openConditions.map((row) => `  ${row.asks}`),
    '}',
  ];
  return group(
    element('h2', { class: 'page' }, 'How it goes into the records'),
    element(
      'p',
      {},
      `One line a point: thickness … ${sheet.unit}, or colour …, or trough showing, or not seen "why". ` +
        'Leave out lines nobody looked ' +
        'at.' +
        (sheet.openConditions.length > 0
          ? ' An open condition stands as it is while it is there, with what it measures now; ' +
            'write closed before it once it is put right, not seen where nobody could look.'
          : ''),
    ),
    element('pre', {}, lines.join('\n')),
  );
}

const styles = `
@page sheet { margin: 10mm; @bottom-left { content: none; } @bottom-right { content: none; } }
.sheet-head { display: flex; justify-content: space-between; gap: 8mm; border-bottom: 2pt solid #000; margin-bottom: 3mm; }
.sheet-head .kicker { margin: 0; }
.look { border: 2.5pt solid #000; padding: 2mm 4mm; margin-bottom: 2mm; max-width: 150mm; }
.look strong { display: block; font-size: 24pt; line-height: 1.1; letter-spacing: 0.03em; }
.look span { display: block; font-size: 11pt; }
.day { white-space: nowrap; }
.look .small { font-size: 8.8pt; }
.blanks { display: grid; grid-auto-flow: column; grid-auto-columns: 1fr; gap: 3mm; margin: 3mm 0; }
.blank { border: 0.8pt solid #000; min-height: 17mm; padding: 1mm 2mm; display: flex; flex-direction: column; justify-content: space-between; }
.blank span { font-weight: bold; }
.caution p { margin: 0 0 1mm; }
table.points td { height: 12mm; vertical-align: middle; }
table.points .name { font-size: 14pt; font-weight: bold; }
table.points .clock { font-size: 14pt; font-weight: bold; white-space: nowrap; }
td.write { border: 0.8pt solid #000; min-width: 24mm; }
td.write.wide { min-width: 46mm; }
td.ticks { border: 0.8pt solid #000; white-space: nowrap; font-size: 11pt; }
td.ticks span { display: block; }
table.form td { height: ${formRow}mm; }
.others { display: grid; grid-template-columns: 1.1fr 1.3fr; gap: 8mm; align-items: start; }
.others section > :last-child, .others .keep > :last-child { margin-bottom: 0; }
.sheet { page: sheet; break-before: page; }
svg.drawing-sheet { display: block; margin: 0 auto; max-width: 100%; height: auto; }
@media print { svg.drawing-sheet { max-width: none; } }
pre { font: 11pt/1.5 "Liberation Mono", "DejaVu Sans Mono", monospace; }
`;

/** `0.27 in (6.9 mm)` breaks before the bracket and nowhere else. */
function unbroken(words: string): string {
  return words.replace(/\(([\d.]+) mm\)/, '($1\u00a0mm)');
}
