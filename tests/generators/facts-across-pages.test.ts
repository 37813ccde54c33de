// Each fact of an inspection, changed by itself: the report in all its forms, the next sheet, what `diff` tells and the hover on the
// fact change with it, or a reason is written down here. The list of facts is read off the grammar, so that none is forgotten.

import { AstUtils, GrammarAST } from 'langium';
import { expect, test } from 'vitest';
import { ledgerChanges } from '../../src/generators/change-summary/parts/ledger-changes.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { TroughlineGrammar } from '../../src/language/generated/grammar.js';
import { ledgerOf } from '../../src/language/ledger.js';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { hover } from '../../src/lsp/providers/hover-provider.js';
import { createSession } from '../../src/lsp/session.js';
import { works } from './remaining-life/story.js';

const pages = ['html', 'md', 'json', 'sheet', 'diff', 'hover'] as const;
type Page = (typeof pages)[number];

interface Case {
  /** The line, and the same with this fact changed. */
  readonly lines: readonly [string, string];
  readonly but?: Partial<Record<Page, string>>;
}

const pictures = 'a printed sheet carries no pictures';
const remark = 'a remark stands under the cursor as it is; nothing follows from it';
const value =
  'the sheet asks for the value and shows the last; what was noted beside it stands in the report';
const names = 'who looked changes no number, and pages are read by people who need no names';
const done = 'the sheet asks for what is open; work that was done stands in the report';
const doubt = 'it widens what the fitted model says; the report here is reckoned by hand';
const hours = 'wear goes by hours here; tonnes are held against them where the model is fitted';

const facts: Readonly<Record<string, Case>> = {
  'Reading.thickness': { lines: ['P1 thickness 9 mm', 'P1 thickness 8 mm'] },
  'Reading.error': {
    lines: ['P1 thickness 9 mm ± 0.1 mm', 'P1 thickness 9 mm ± 0.4 mm'],
    but: { md: 'the gauge of each look stands there; of one reading it is in the data' },
  },
  'Reading.colour': { lines: ['P1 colour ivory', 'P1 colour teal'] },
  'Reading.second': { lines: ['P1 colour ivory', 'P1 second colour showing'] },
  'Reading.trough': { lines: ['P1 colour teal', 'P1 trough showing'] },
  'Reading.notSeen': { lines: ['P1 colour teal', 'P1 not seen'] },
  'Reading.reason': { lines: ['P1 not seen blocked', 'P1 not seen no light'] },
  'Reading.photo': {
    lines: ['P1 thickness 9 mm photo "a.png"', 'P1 thickness 9 mm photo "b.png"'],
    but: { sheet: pictures },
  },
  'Reading.notes': {
    lines: ['P1 thickness 9 mm "smooth"', 'P1 thickness 9 mm "rough"'],
    but: { hover: remark },
  },
  'Reading.clockEnd': {
    lines: [
      'from 1 m to 3 m clock 1:00 to 2:00 colour teal',
      'from 1 m to 3 m clock 1:00 to 4:00 colour teal',
    ],
  },
  'Reading.point': { lines: ['P1 thickness 9 mm', 'P3 thickness 9 mm'] },
  'Reading.chainage': { lines: ['at 1 m clock 5:00 thickness 9 mm', 'at 2 m clock 5:00 thickness 9 mm'] },
  'Reading.clock': { lines: ['at 1 m clock 5:00 thickness 9 mm', 'at 1 m clock 6:00 thickness 9 mm'] },
  'Reading.panel': {
    lines: ['panel 1 of run 1 colour teal', 'panel 2 of run 1 colour teal'],
  },
  'Reading.from': {
    lines: ['from 1 m to 3 m clock 5:00 colour teal', 'from 2 m to 3 m clock 5:00 colour teal'],
  },
  'Reading.to': {
    lines: ['from 1 m to 3 m clock 5:00 colour teal', 'from 1 m to 2 m clock 5:00 colour teal'],
  },
  'Condition.answer': { lines: ['panel torn at 3 m slight', 'closed panel torn at 3 m slight'] },
  'Condition.kind': { lines: ['brace bent at 2 m', 'brace missing at 2 m'] },
  'Condition.size': { lines: ['joint open 4 mm at 2 m', 'joint open 8 mm at 2 m'] },
  'Condition.aspect': { lines: ['gearbox oil low', 'gearbox oil leak'] },
  'Condition.temperature': { lines: ['gearbox temperature 60 degC', 'gearbox temperature 70 degC'] },
  'Condition.point': { lines: ['bolts loose 2 at P1', 'bolts loose 2 at P3'] },
  'Condition.at': { lines: ['bolts loose 2 at 1 m', 'bolts loose 2 at 4 m'] },
  'Condition.clock': { lines: ['panel torn at 2 m clock 5:00', 'panel torn at 2 m clock 7:00'] },
  'Condition.to': { lines: ['bolts loose 2 at 1 m to 3 m', 'bolts loose 2 at 1 m to 4 m'] },
  'Condition.panel': {
    lines: ['panel torn at panel 1 of run 1', 'panel torn at panel 2 of run 1'],
  },
  'Condition.end': { lines: ['guard loose at head', 'guard loose at tail'] },
  'Condition.side': { lines: ['hold-down loose at 2 m left side', 'hold-down loose at 2 m right side'] },
  'Condition.wornThrough': {
    lines: ['panel torn at 2 m clock 5:00', 'panel torn at 2 m clock 5:00 worn through'],
  },
  'Condition.severity': { lines: ['panel lifted at 2 m slight', 'panel lifted at 2 m urgent'] },
  'Condition.photo': {
    lines: ['panel lifted at 2 m photo "a.png"', 'panel lifted at 2 m photo "b.png"'],
    but: { sheet: pictures },
  },
  'Condition.closed': { lines: ['panel lifted at 2 m', 'panel lifted at 2 m closed on 2025-09-08'] },
  'Condition.notes': {
    lines: ['panel lifted at 2 m "left"', 'panel lifted at 2 m "right"'],
    but: { hover: remark },
  },
  'Condition.clockEnd': {
    lines: ['panel torn at 2 m clock 5:00 to 6:00', 'panel torn at 2 m clock 5:00 to 8:00'],
  },
  'NotLooked.point': { lines: ['not seen at P1 blocked', 'not seen at P3 blocked'] },
  'NotLooked.end': { lines: ['not seen at head blocked', 'not seen at tail blocked'] },
  'NotLooked.panel': {
    lines: ['not seen at panel 1 of run 1 blocked', 'not seen at panel 2 of run 1 blocked'],
    but: { hover: remark },
  },
  'NotLooked.at': { lines: ['not seen at 2 m blocked', 'not seen at 4 m blocked'] },
  'NotLooked.to': { lines: ['not seen from 1 m to 4 m', 'not seen from 1 m to 3 m'] },
  'NotLooked.reason': { lines: ['not seen at 2 m blocked', 'not seen at 2 m no light'] },
  'NotLooked.notes': {
    lines: ['not seen at 2 m "wet"', 'not seen at 2 m "dark"'],
    but: { hover: remark },
  },
  'PlateReading.point': { lines: ['plate at P1 thickness 3.6 mm', 'plate at P3 thickness 3.6 mm'] },
  'PlateReading.end': { lines: ['plate at head thickness 3.6 mm', 'plate at tail thickness 3.6 mm'] },
  'PlateReading.panel': {
    lines: ['plate at panel 1 of run 1 thickness 3.6 mm', 'plate at panel 2 of run 1 thickness 3.6 mm'],
    but: { hover: remark },
  },
  'PlateReading.at': { lines: ['plate at 2 m thickness 3.6 mm', 'plate at 4 m thickness 3.6 mm'] },
  'PlateReading.to': {
    lines: ['plate from 2 m to 3 m thickness 3.6 mm', 'plate from 2 m to 5 m thickness 3.6 mm'],
  },
  'PlateReading.clock': {
    lines: ['plate at 2 m clock 5:00 thickness 3.6 mm', 'plate at 2 m clock 7:00 thickness 3.6 mm'],
  },
  'PlateReading.clockEnd': {
    lines: [
      'plate at 2 m clock 5:00 to 6:00 thickness 3.6 mm',
      'plate at 2 m clock 5:00 to 8:00 thickness 3.6 mm',
    ],
    but: { sheet: value },
  },
  'PlateReading.thickness': { lines: ['plate at 2 m thickness 3.6 mm', 'plate at 2 m thickness 3.2 mm'] },
  'PlateReading.error': {
    lines: ['plate at 2 m thickness 3.6 mm ± 0.1 mm', 'plate at 2 m thickness 3.6 mm ± 0.3 mm'],
    but: { sheet: value },
  },
  'PlateReading.photo': {
    lines: ['plate at 2 m thickness 3.6 mm photo "a.png"', 'plate at 2 m thickness 3.6 mm photo "b.png"'],
    but: { sheet: pictures },
  },
  'PlateReading.notes': {
    lines: ['plate at 2 m thickness 3.6 mm "rust"', 'plate at 2 m thickness 3.6 mm "bright"'],
    but: { hover: remark, sheet: value },
  },
  'By.who': {
    lines: ['by "day shift"', 'by "night shift"'],
    but: { hover: remark, html: names, md: names, json: names, sheet: names },
  },
  'View.direction': {
    lines: [
      'view downstream\n  at 1 m clock 5:00 thickness 9 mm',
      'view upstream\n  at 1 m clock 5:00 thickness 9 mm',
    ],
  },
  'MeasuredFrom.end': {
    lines: [
      'measured from tail\n  at 1 m clock 5:00 thickness 9 mm',
      'measured from head\n  at 1 m clock 5:00 thickness 9 mm',
    ],
  },
  'Gauge.kind': {
    lines: ['gauge ultrasonic\n  P1 thickness 9 mm', 'gauge calliper\n  P1 thickness 9 mm'],
  },
  'Gauge.error': {
    lines: [
      'gauge ultrasonic ± 0.1 mm\n  P1 thickness 9 mm',
      'gauge ultrasonic ± 0.6 mm\n  P1 thickness 9 mm',
    ],
  },
  'HoldDownGap.point': {
    lines: ['hold-down at P1 gap 9 mm', 'hold-down at P3 gap 9 mm'],
    but: { sheet: 'the sheet asks for the gap of each block that is declared' },
  },
  'HoldDownGap.end': {
    lines: ['hold-down at head gap 9 mm', 'hold-down at tail gap 9 mm'],
    but: { sheet: 'the sheet asks for the gap of each block that is declared' },
  },
  'HoldDownGap.panel': {
    lines: ['hold-down at panel 1 of run 1 gap 9 mm', 'hold-down at panel 2 of run 1 gap 9 mm'],
    but: { sheet: 'the sheet asks for the gap of each block that is declared', hover: remark },
  },
  'HoldDownGap.to': {
    lines: ['hold-down from 2 m to 3 m gap 9 mm', 'hold-down from 2 m to 5 m gap 9 mm'],
    but: { sheet: 'the sheet asks for the gap of each block that is declared' },
  },
  'HoldDownGap.at': { lines: ['hold-down at 2 m gap 9 mm', 'hold-down at 4 m gap 9 mm'] },
  'HoldDownGap.gap': { lines: ['hold-down at 2 m gap 9 mm', 'hold-down at 2 m gap 12 mm'] },
  'HoldDownGap.notes': {
    lines: ['hold-down at 2 m gap 9 mm "a"', 'hold-down at 2 m gap 9 mm "b"'],
    but: { sheet: value, hover: remark },
  },
  'HoldDownGap.photo': {
    lines: ['hold-down at 2 m gap 9 mm photo "a.png"', 'hold-down at 2 m gap 9 mm photo "b.png"'],
    but: { sheet: pictures },
  },
  'FlightReading.point': { lines: ['flight at P1 depth 50 mm', 'flight at P3 depth 50 mm'] },
  'FlightReading.end': { lines: ['flight at head depth 50 mm', 'flight at tail depth 50 mm'] },
  'FlightReading.panel': {
    lines: ['flight at panel 1 of run 1 depth 50 mm', 'flight at panel 2 of run 1 depth 50 mm'],
    but: { hover: remark },
  },
  'FlightReading.at': { lines: ['flight at 2 m depth 50 mm', 'flight at 4 m depth 50 mm'] },
  'FlightReading.to': { lines: ['flight from 2 m to 3 m depth 50 mm', 'flight from 2 m to 5 m depth 50 mm'] },
  'FlightReading.depth': { lines: ['flight at 2 m depth 50 mm', 'flight at 2 m depth 45 mm'] },
  'FlightReading.diameter': {
    lines: ['flight at 2 m outside diameter 390 mm', 'flight at 2 m outside diameter 380 mm'],
  },
  'FlightReading.notes': {
    lines: ['flight at 2 m depth 50 mm "a"', 'flight at 2 m depth 50 mm "b"'],
    but: { sheet: value, hover: remark },
  },
  'FlightReading.photo': {
    lines: ['flight at 2 m depth 50 mm photo "a.png"', 'flight at 2 m depth 50 mm photo "b.png"'],
    but: { sheet: pictures },
  },
  'WornWidth.point': { lines: ['worn at P1 clock 5:00 to 7:00', 'worn at P3 clock 5:00 to 7:00'] },
  'WornWidth.end': { lines: ['worn at head clock 5:00 to 7:00', 'worn at tail clock 5:00 to 7:00'] },
  'WornWidth.panel': {
    lines: ['worn at panel 1 of run 1 clock 5:00 to 7:00', 'worn at panel 2 of run 1 clock 5:00 to 7:00'],
  },
  'WornWidth.to': {
    lines: ['worn from 2 m to 3 m clock 5:00 to 7:00', 'worn from 2 m to 5 m clock 5:00 to 7:00'],
  },
  'WornWidth.at': { lines: ['worn at 2 m clock 5:00 to 7:00', 'worn at 4 m clock 5:00 to 7:00'] },
  'WornWidth.clock': { lines: ['worn at 2 m clock 5:00 to 7:00', 'worn at 2 m clock 4:30 to 7:00'] },
  'WornWidth.clockEnd': { lines: ['worn at 2 m clock 5:00 to 7:00', 'worn at 2 m clock 5:00 to 7:30'] },
  'WornWidth.notes': {
    lines: ['worn at 2 m clock 5:00 to 7:00 "a"', 'worn at 2 m clock 5:00 to 7:00 "b"'],
    but: { sheet: value, hover: remark },
  },
  'WornWidth.photo': {
    lines: ['worn at 2 m clock 5:00 to 7:00 photo "a.png"', 'worn at 2 m clock 5:00 to 7:00 photo "b.png"'],
    but: { sheet: pictures },
  },
  'MotorCurrent.empty': { lines: ['current empty 4 A', 'current empty 5 A'] },
  'MotorCurrent.loaded': { lines: ['current loaded 6 A', 'current loaded 8 A'] },
  'MotorCurrent.notes': {
    lines: ['current empty 4 A "a"', 'current empty 4 A "b"'],
    but: { sheet: value, hover: remark },
  },
  'MotorCurrent.photo': {
    lines: ['current empty 4 A photo "a.png"', 'current empty 4 A photo "b.png"'],
    but: { sheet: pictures },
  },
  'MeasuredSpeed.speed': { lines: ['speed 17 rpm', 'speed 16 rpm'] },
  'MeasuredSpeed.notes': {
    lines: ['speed 17 rpm "a"', 'speed 17 rpm "b"'],
    but: { sheet: value, hover: remark },
  },
  'MeasuredSpeed.photo': {
    lines: ['speed 17 rpm photo "a.png"', 'speed 17 rpm photo "b.png"'],
    but: { sheet: pictures },
  },
  'Finding.part': { lines: ['finding brace "rattles"', 'finding cover "rattles"'] },
  'Finding.at': { lines: ['finding at 2 m "rattles"', 'finding at 4 m "rattles"'] },
  'Finding.to': { lines: ['finding at 1 m to 2 m "rattles"', 'finding at 1 m to 4 m "rattles"'] },
  'Finding.point': { lines: ['finding at P1 "rattles"', 'finding at P3 "rattles"'] },
  'Finding.end': { lines: ['finding at head "rattles"', 'finding at tail "rattles"'] },
  'Finding.panel': {
    lines: ['finding at panel 1 of run 1 "rattles"', 'finding at panel 2 of run 1 "rattles"'],
    but: { hover: remark },
  },
  'Finding.clock': { lines: ['finding at 2 m clock 5:00 "rattles"', 'finding at 2 m clock 7:00 "rattles"'] },
  'Finding.clockEnd': {
    lines: ['finding at 2 m clock 5:00 to 6:00 "rattles"', 'finding at 2 m clock 5:00 to 8:00 "rattles"'],
  },
  'Finding.side': { lines: ['finding at 2 m left side "rattles"', 'finding at 2 m right side "rattles"'] },
  'Finding.answer': { lines: ['finding brace at 2 m slight "x"', 'closed finding brace at 2 m "x"'] },
  'Finding.severity': { lines: ['finding brace slight "rattles"', 'finding brace urgent "rattles"'] },
  'Finding.photo': {
    lines: ['finding brace slight photo "a.png" "x"', 'finding brace slight photo "b.png" "x"'],
    but: { sheet: pictures },
  },
  'Finding.notes': {
    lines: ['finding "rattles"', 'finding "hums"'],
    but: { hover: remark },
  },
  'WorkRow.clockEnd': {
    lines: [
      'serviced gate renewed at 2 m clock 5:00 to 6:00',
      'serviced gate renewed at 2 m clock 5:00 to 8:00',
    ],
    but: { sheet: done },
  },
  'WorkRow.ended': {
    lines: ['serviced closed panel torn at 3 m', 'serviced closed brace bent at 2 m'],
  },
  'WorkRow.part': { lines: ['serviced gearbox renewed', 'serviced coupling renewed'], but: { sheet: done } },
  'WorkRow.work': {
    lines: ['serviced gearbox renewed', 'serviced gearbox oil changed'],
    but: { sheet: done },
  },
  'WorkRow.notes': {
    lines: ['serviced gearbox renewed "a"', 'serviced gearbox renewed "b"'],
    but: { sheet: done, hover: remark },
  },
  'WorkRow.by': {
    lines: ['serviced gearbox renewed by "a"', 'serviced gearbox renewed by "b"'],
    but: { sheet: done, hover: remark },
  },
  'WorkRow.photo': {
    lines: ['serviced gearbox renewed photo "a.png"', 'serviced gearbox renewed photo "b.png"'],
    but: { sheet: pictures },
  },
  'WorkRow.at': {
    lines: ['serviced brace renewed at 2 m', 'serviced brace renewed at 4 m'],
    but: { sheet: done },
  },
  'WorkRow.to': {
    lines: ['serviced cover renewed at 1 m to 2 m', 'serviced cover renewed at 1 m to 4 m'],
    but: { sheet: done },
  },
  'WorkRow.point': {
    lines: ['serviced liner at P1 "cleaned"', 'serviced liner at P3 "cleaned"'],
    but: { sheet: done },
  },
  'WorkRow.end': {
    lines: ['serviced guard renewed at head', 'serviced guard renewed at tail'],
    but: { sheet: done },
  },
  'WorkRow.panel': {
    lines: ['serviced liner at panel 1 of run 1 "cleaned"', 'serviced liner at panel 2 of run 1 "cleaned"'],
    but: { sheet: done, hover: remark },
  },
  'WorkRow.clock': {
    lines: ['serviced liner at 2 m clock 5:00 "cleaned"', 'serviced liner at 2 m clock 7:00 "cleaned"'],
    but: { sheet: done },
  },
  'WorkRow.side': {
    lines: ['serviced hold-down renewed at 2 m left side', 'serviced hold-down renewed at 2 m right side'],
    but: { sheet: done },
  },
  'Condition.by': {
    lines: ['panel lifted at 2 m by "a"', 'panel lifted at 2 m by "b"'],
    but: { hover: remark },
  },
  'Finding.by': {
    lines: ['finding brace slight "rattles" by "a"', 'finding brace slight "rattles" by "b"'],
    but: { hover: remark },
  },
  'FlightReading.by': {
    lines: ['flight at 2 m depth 50 mm by "a"', 'flight at 2 m depth 50 mm by "b"'],
    but: { sheet: value, hover: remark },
  },
  'HoldDownGap.by': {
    lines: ['hold-down at 2 m gap 9 mm by "a"', 'hold-down at 2 m gap 9 mm by "b"'],
    but: { sheet: value, hover: remark },
  },
  'MeasuredSpeed.by': {
    lines: ['speed 17 rpm by "a"', 'speed 17 rpm by "b"'],
    but: { sheet: value, hover: remark },
  },
  'MotorCurrent.by': {
    lines: ['current empty 4 A by "a"', 'current empty 4 A by "b"'],
    but: { sheet: value, hover: remark },
  },
  'NotLooked.by': {
    lines: ['not seen at 2 m by "a"', 'not seen at 2 m by "b"'],
    but: { hover: remark },
  },
  'PlateReading.by': {
    lines: ['plate at 2 m thickness 3.6 mm by "a"', 'plate at 2 m thickness 3.6 mm by "b"'],
    but: { sheet: value, hover: remark },
  },
  'Reading.by': {
    lines: ['P1 thickness 9 mm by "a"', 'P1 thickness 9 mm by "b"'],
    but: { hover: remark },
  },
  'WornWidth.by': {
    lines: ['worn at 2 m clock 5:00 to 7:00 by "a"', 'worn at 2 m clock 5:00 to 7:00 by "b"'],
    but: { sheet: value, hover: remark },
  },
  'NotLooked.photo': {
    lines: ['not seen at 2 m photo "a.png"', 'not seen at 2 m photo "b.png"'],
    but: { sheet: pictures },
  },
  'NextLook.after': {
    lines: ['next look after 100 h', 'next look after 300 h'],
    but: { hover: 'when that is stands in report, sheet and calendar' },
  },
  'NextLook.due': { lines: ['next look by 2025-10-01', 'next look by 2025-11-01'] },
  'NextLook.notes': {
    lines: ['next look by 2025-10-01 "bolts"', 'next look by 2025-10-01 "joints"'],
    but: { hover: remark },
  },
  'NextLook.by': {
    lines: ['next look by 2025-10-01 by "fitter"', 'next look by 2025-10-01 by "inspector"'],
    but: { hover: remark },
  },
  'Photo.path': {
    lines: ['photo "a.png"', 'photo "b.png"'],
    but: { sheet: pictures },
  },
  'Photo.note': {
    lines: ['photo "a.png" "left"', 'photo "a.png" "right"'],
    but: { hover: remark, sheet: pictures },
  },
  'Inspection.date': { lines: ['2025-09-08', '2025-09-10'] },
  'Inspection.meter': { lines: ['meter 6000 h', 'meter 6100 h'] },
  'Inspection.meterError': {
    lines: ['meter 6000 h ± 20 h', 'meter 6000 h ± 90 h'],
    but: { html: doubt, md: doubt, json: doubt, sheet: 'the sheet asks for the next reading of the meter' },
  },
  'Inspection.tonnes': {
    lines: ['tonnes 900 t', 'tonnes 950 t'],
    but: { html: hours, md: hours },
  },
};

const machine = works
  .replace(
    'point P2',
    'point P3 at 3.6 m clock 6:00\n  hold-down at 2 m\n  hold-down at 4 m\n  brace at 2 m\n  point P2',
  )
  .replace('shaftless', 'shaftless flight 60 mm by 20 mm condemn flight at 40 mm')
  .replace('meter 0 h', 'meter 0 h tonnes 0 t');

function textWith(fact: string, line: string): string {
  const head = fact.startsWith('Inspection.') ? line : '';
  const date = /^\d/.test(head) ? head : '2025-09-08';
  const meter = head.startsWith('meter') ? head : 'meter 6000 h';
  const tonnes = head.startsWith('tonnes') ? head : 'tonnes 900 t';
  return `${machine}
inspection DG1 2025-03-03 meter 1500 h {
  view downstream
  panel torn at 3 m serious
}
inspection DG1 ${date} ${meter} ${tonnes} {
  ${head === '' ? `${line}\n  ` : ''}P2 thickness 10.4 mm
}
`;
}

const uri = 'file:///estate/a.trough';
const session = createSession(makeAnalyser());

type Printed = Readonly<Record<'html' | 'md' | 'json' | 'sheet', string>>;
const printed = new Map<string, Printed>();

function lookAt(text: string): Printed {
  const known = printed.get(text) ?? print(text);
  printed.set(text, known);
  return known;
}

function print(text: string): Printed {
  session.put(uri, text);
  const estate = session.estate();
  const report = remainingLife(estate, { depth: 'hand' });
  const [conveyor] = estate.conveyors;
  return {
    html: words(remainingLifeHtml(report)),
    md: remainingLifeMarkdown(report),
    json: remainingLifeJson(report),
    sheet: conveyor ? words(inspectionSheetHtml(inspectionSheet(estate, conveyor))) : '',
  };
}

/** Without the places in the text that elements carry, which move with every letter. */
function words(page: string): string {
  return page.replace(/<[^>]*>/g, ' ');
}

/** What is shown on the line, word by word. */
function hovers(text: string, at: number): string {
  if (session.document(uri)?.text !== text) session.put(uri, text);
  const document = session.document(uri);
  if (!document) return '';
  const end = text.indexOf('\n', at);
  const shown: string[] = [];
  for (const word of text.slice(at, end).matchAll(/"[^"]*"|[^\s"]+/g)) {
    const found = hover(
      session,
      document,
      document.positionAt(at + word.index + (word[0].startsWith('"') ? 1 : 0)),
    );
    shown.push(JSON.stringify(found?.contents ?? ''));
  }
  return shown.join('\n');
}

/** Pages that say the same before and after. */
function silent(fact: string, { lines: [line, other] }: Case): readonly Page[] {
  const [before, after] = [textWith(fact, line), textWith(fact, other)];
  const [ledger, fresh] = [ledgerOf(before, 'a') ?? [], ledgerOf(after, 'a') ?? []];
  const told = ledgerChanges(ledger, fresh);
  const at = [...before].findIndex((sign, i) => sign !== after[i]);
  const place = before.lastIndexOf('\n', at) + 1;
  const [old, shown] = [lookAt(before), hovers(before, place)];
  const [now, shownNow] = [lookAt(after), hovers(after, place)];
  return [
    ...(['html', 'md', 'json', 'sheet'] as const).filter((page) => old[page] === now[page]),
    ...(told.changed.length + told.added.length === 0 ? (['diff'] as const) : []),
    ...(shown === shownNow ? (['hover'] as const) : []),
  ];
}

test('every fact of an inspection changes every page, or it is said why not', () => {
  const found = Object.fromEntries(
    Object.entries(facts).flatMap(([fact, each]) => {
      const quiet = silent(fact, each);
      return quiet.length === 0 ? [] : [[fact, quiet]];
    }),
  );
  const expected = Object.fromEntries(
    Object.entries(facts).flatMap(([fact, { but }]) =>
      but ? [[fact, pages.filter((page) => but[page] !== undefined)]] : [],
    ),
  );
  expect(found).toEqual(expected);
});

test('no fact of the grammar is left out', () => {
  const rules = TroughlineGrammar().rules.filter(GrammarAST.isParserRule);
  const named = (name: string): GrammarAST.ParserRule | undefined => rules.find((rule) => rule.name === name);
  const rows = AstUtils.streamAllContents(named('InspectionRow')!)
    .filter(GrammarAST.isRuleCall)
    .map(({ rule }) => rule.$refText)
    .toArray();
  /** Those of the fragments that a row is put together from count as its own. */
  const features = (name: string): readonly string[] =>
    AstUtils.streamAllContents(named(name)!)
      .toArray()
      .flatMap((node) => {
        if (GrammarAST.isAssignment(node)) return [node.feature];
        const part = GrammarAST.isRuleCall(node) ? named(node.rule.$refText) : undefined;
        return part?.fragment ? features(part.name) : [];
      });
  const all = ['Inspection', ...rows].flatMap((name) => features(name).map((each) => `${name}.${each}`));
  // That a meter was not read is what leaving it out says too.
  const others = new Set(['Inspection.conveyor', 'Inspection.rows', 'MeterNotRead.unread']);
  expect(new Set(all.filter((fact) => !others.has(fact)))).toEqual(new Set(Object.keys(facts)));
});
