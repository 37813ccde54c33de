// The crew sheet for paper: at most two pages of the pack, legible at arm's length and in black and white. Everything on it
// stands in the pack too; what does not fit is said to stand there.

import { element, group, trusted, type Markup } from '../page/markup.js';
import { htmlPage, type Paper } from '../page/page.js';
import { placeInText } from '../page/place-in-text.js';
import type { WorkPack } from './pack.js';
import { standingCaution } from './parts/cautions.js';
import { stamp, stampStyles } from './print/stamp.js';
import { sheetSize } from '../drawing/drawing-sheet.js';
import { crewSheet, type CrewSheet, type CrewStep } from './crew/facts.js';
import {
  columns,
  fitted,
  measuresText,
  pictureHeight,
  runOnWords,
  stopWords,
  type Fitted,
} from './crew/fit.js';

export interface CrewSheetOptions {
  readonly paper?: Paper;
}

export function crewSheetHtml(pack: WorkPack, options: CrewSheetOptions = {}): string {
  const paper = options.paper ?? 'A4';
  const sheet = crewSheet(pack);
  const fit = fitted(pack, sheet, paper);
  return htmlPage({
    title: `Crew sheet ${pack.number}: ${pack.job.title ?? pack.job.name}`,
    footer: `${pack.number} crew sheet · as of ${pack.asOf} · advice only, not a permit`,
    paper,
    styles: styles(fit),
    body: element(
      'main',
      {},
      head(pack, sheet),
      stamp(pack.obstacles, { obstacles: fit.obstacles, repairs: fit.repairs }),
      stops(sheet),
      carry(sheet),
      everyPanel(sheet),
      stepTable(pack, sheet, fit),
      picture(pack),
    ),
  });
}

function head(pack: WorkPack, sheet: CrewSheet): Markup {
  return group(
    element(
      'header',
      { class: 'cover' },
      element(
        'p',
        { class: 'kicker' },
        `${pack.plant} · crew sheet of pack ${pack.number} · as of ${pack.asOf}`,
      ),
      element('h1', placeInText(pack.job.origin), pack.job.title ?? pack.job.name),
    ),
    element(
      'table',
      { class: 'facts' },
      element(
        'tbody',
        {},
        sheet.head.map(({ name, value }) =>
          element('tr', {}, element('th', { scope: 'row' }, name), element('td', {}, value)),
        ),
      ),
    ),
  );
}

function stops(sheet: CrewSheet): Markup {
  return element(
    'section',
    { class: 'caution' },
    element('p', {}, standingCaution),
    element('p', { class: 'stops' }, element('strong', {}, '■ Stop: '), stopWords(sheet)),
  );
}

function carry(sheet: CrewSheet): Markup | false {
  return (
    sheet.carry.length > 0 &&
    group(
      element('h2', {}, 'What to carry'),
      element(
        'div',
        { class: 'carry' },
        sheet.carry.map(({ heading, items }) =>
          element(
            'section',
            {},
            element('h3', {}, heading),
            element(
              'ul',
              {},
              items.map((item) => element('li', {}, item)),
            ),
          ),
        ),
      ),
      element('p', { class: 'small' }, 'Masses are calculated. A competent person plans each lift.'),
    )
  );
}

function everyPanel({ everyPanel: lines }: CrewSheet): Markup | false {
  return (
    lines.length > 0 &&
    element('p', { class: 'every-panel' }, element('strong', {}, 'For every panel: '), lines.join(' '))
  );
}

function stepTable(pack: WorkPack, sheet: CrewSheet, fit: Fitted): Markup {
  const heads = fit.runOn
    ? ['No.', 'Start', 'Step, who, with what', 'Signed, time']
    : ['No.', 'Start', 'Step, where', 'Who, with what', 'Mind', 'Signed, time'];
  const next = sheet.steps[fit.steps];
  return group(
    element(
      'h2',
      {},
      pack.order === 'as written' ? 'Steps, in the order written' : 'Steps, in the order proposed',
    ),
    element(
      'table',
      { class: 'steps' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          heads.map((text, index) =>
            element('th', { scope: 'col', class: widthClass(index, heads.length) }, text),
          ),
        ),
      ),
      element(
        'tbody',
        {},
        sheet.steps.slice(0, fit.steps).map((step, index) => {
          const origin = pack.steps[index]?.origin;
          return element('tr', origin ? placeInText(origin) : {}, cells(step, fit));
        }),
      ),
    ),
    next !== undefined &&
      element(
        'p',
        { class: 'more' },
        element('strong', {}, `More steps in the pack, from number ${next.number}.`),
      ),
  );
}

function cells(step: CrewStep, fit: Fitted): readonly Markup[] {
  const measures = measuresText(step, fit);
  const what = element('strong', {}, step.what);
  return [
    element('td', { class: 'step-number' }, `${step.hold ? '■ ' : ''}${step.number}`),
    element('td', { class: 'start' }, step.day, step.day !== undefined && element('br'), step.time),
    ...(fit.runOn
      ? [element('td', {}, what, runOnWords(step, fit).slice(step.what.length))]
      : [
          element('td', {}, what, element('br'), step.where),
          element('td', {}, step.who),
          element('td', {}, measures),
        ]),
    element('td', {}, element('div', { class: step.hold ? 'sign' : 'tick' })),
  ];
}

function widthClass(index: number, count: number): string | undefined {
  if (index === count - 1) return 'w-sign';
  const names = ['w-number', 'w-start', ...(count === 6 ? ['w-what', 'w-who'] : [])];
  return names[index];
}

/** The elevation: the whole stretch on one sheet. */
function picture(pack: WorkPack): Markup | false {
  const drawing = pack.drawings[0];
  return (
    drawing !== undefined &&
    element(
      'figure',
      {},
      trusted(withoutTitleBlock(drawing.svg)),
      element(
        'figcaption',
        {},
        'Smaller than its scale says: measure by the bar, or take the sheet in the pack.',
      ),
    )
  );
}

/** The title block stands on the sheet in the pack; here its room goes to the picture. */
function withoutTitleBlock(svg: string): string {
  const { width, height } = sheetSize;
  return svg
    .replace(`height="${height}mm"`, `height="${pictureHeight}mm"`)
    .replace(`viewBox="0 0 ${width} ${height}"`, `viewBox="0 0 ${width} ${pictureHeight}"`);
}

function styles(fit: Fitted): string {
  // Half a millimetre of a row's height is its line and what the browser rounds up.
  const rowEdge = Number(((fit.rowPadding - 0.5) / 2).toFixed(2));
  return `
.cover .kicker { font-size: 10.5pt; margin: 0 0 1mm; }
.cover { border-bottom: 2pt solid #000; margin-bottom: 2mm; padding-bottom: 1.5mm; }
.cover h1 { font-size: 18pt; }
h2 { font-size: 13pt; margin: 3mm 0 1mm; }
${stampStyles}.facts { margin: 0 0 1mm; font-size: 10.5pt; }
.facts th { width: 26mm; border: 0; padding: 0.3mm 1.6mm 0.3mm 0; vertical-align: top; }
.facts td { border: 0; padding: 0.3mm 0; }
.caution { margin: 2mm 0; padding: 1.5mm 3mm; }
.caution p { margin: 0 0 0.8mm; font-size: 9.4pt; line-height: 1.25; }
.caution .stops { font-size: 10.5pt; }
.carry { display: grid; grid-template-columns: ${fit.carry.map((mm) => `minmax(0, ${mm}fr)`).join(' ')}; gap: 4mm; }
.carry h3 { font-size: 10pt; margin: 0 0 0.5mm; }
.carry ul { padding-left: 4mm; margin: 0 0 1mm; }
.carry li { font-size: 9.6pt; line-height: 1.25; margin: 0 0 0.5mm; overflow-wrap: anywhere; }
.every-panel { font-size: 10.5pt; line-height: 1.25; margin: 1.5mm 0 0; }
.steps { table-layout: fixed; font-size: ${fit.type}pt; line-height: 1.25; }
.steps td { border-bottom: 0.7pt solid #000; overflow-wrap: anywhere; padding-top: ${rowEdge}mm; padding-bottom: ${rowEdge}mm; }
.steps th { font-size: 10pt; }
.w-number { width: ${columns.number}mm; }
.w-start { width: ${columns.start}mm; }
.w-what { width: ${columns.what}mm; }
.w-who { width: ${columns.who}mm; }
.w-sign { width: ${columns.sign}mm; }
.step-number { font-weight: bold; white-space: nowrap; }
.start { white-space: nowrap; }
.sign { border: 1.5pt solid #000; height: ${fit.signHeight}mm; }
.tick { border: 0.7pt solid #000; width: 4mm; height: 4mm; }
.more { font-size: 11pt; }
figure { margin: 2mm 0 0; }
svg.drawing-sheet { display: block; width: ${fit.drawingWidth}mm; max-width: 100%; height: auto; margin: 0 auto; }
@media screen and (max-width: 190mm) { .carry { grid-template-columns: 1fr; } }
`;
}
