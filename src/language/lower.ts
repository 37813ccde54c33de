// One parsed text → its sheet. Reading never stops at a slip: what can be read is kept, what cannot is left out and said.

import type { Origin } from '../domain/model/origin.js';
import type { Lacking, Problem } from '../domain/model/problem.js';
import type { NameUse } from '../domain/model/stated.js';
import type * as ast from './generated/ast.js';
import { docBefore } from './comments.js';
import { openBlock, type FactAccount } from './lowering/block.js';
import { lowerCorrection } from './lowering/correction.js';
import { lowerConveyor } from './lowering/conveyor.js';
import { lowerInspection, type UncountedInspection } from './lowering/inspection.js';
import { lowerJob } from './lowering/job.js';
import { lowerLiner } from './lowering/liner.js';
import { lowerPlant } from './lowering/plant.js';
import { createReader, keywordOf, type Reader } from './lowering/reader.js';
import { isAmendment, lowerAmendment } from './lowering/amendment.js';
import { lowerDriveChange } from './lowering/drive-change.js';
import {
  lowerDutyChange,
  lowerMeterChange,
  lowerPanelsMoved,
  lowerPatch,
  lowerReline,
  lowerScrewChange,
  lowerService,
  lowerWorkIn,
} from './lowering/records.js';
import { lowerScrew } from './lowering/screw.js';
import type { ParsedText } from './parse.js';
import type { HalfName, LeftLine, Slip } from './recover.js';
import { createReadingRows, type ReadingRows, type TextSpan } from './reading-rows.js';
import type { Sheet, UnsoundBlock } from './sheet.js';

/** `source` numbers the text in every origin of the sheet. */
export function lower(parsed: ParsedText, source: number, uri: string): Sheet {
  const lacking = (at: number): Lacking =>
    parsed.left.find(({ start, end }) => start <= at && at < end)?.lacks ?? 'facts';
  const problems: Problem[] = parsed.slips.map(({ start, end, message, mend, over, unnamed }) => ({
    kind: 'syntax',
    message,
    origin: { source, start, end },
    lacks: lacking(start),
    ...(mend ? { mend: placedIn(source, mend) } : {}),
    ...(over ? { over: placedIn(source, over) } : {}),
    ...(unnamed ? { unnamed: unnamedIn(source, unnamed) } : {}),
  }));
  const reader = createReader(source, problems);
  const { rows } = parsed;
  const found = nothingFound();
  const inspections: { readonly draft: UncountedInspection; readonly span: TextSpan }[] = [];
  const blocks = parsed.root.blocks;
  const doubted: NameUse[] = [];
  const unsound: UnsoundBlock[] = [];
  const doubt = ({ name, nameOrigin }: FactAccount): void =>
    void (name !== '' && doubted.push({ name, origin: nameOrigin }));
  const record = <T>(records: T[], block: FactAccount, draft: T | undefined): void => {
    const stands = draft !== undefined && block.stands;
    if (stands) records.push(draft);
    if (!stands || block.standing === 'in doubt') doubt(block);
  };
  let left = 0;
  for (const [index, node] of blocks.entries()) {
    const start = node.$cstNode?.offset ?? 0;
    const next = blocks[index + 1]?.$cstNode?.offset ?? Infinity;
    while ((parsed.left[left]?.start ?? Infinity) < start) left++;
    // What is closed is over; what is not reaches to the next block.
    const end = keywordOf(node, '}')?.end ?? next;
    const lines: LeftLine[] = [];
    for (let line = parsed.left[left]; line && line.start < end; line = parsed.left[++left]) lines.push(line);
    const facts = lines.filter(({ lacks }) => lacks !== 'words');
    const block = openBlock(reader, node, words[node.$type], facts);
    const before = problems.length;
    const doc = docBefore(parsed.text, parsed.comments, start);
    switch (node.$type) {
      case 'Plant':
        if (block.name) found.plants.push(lowerPlant(reader, block, node, doc));
        break;
      case 'Liner':
        if (block.name) found.liners.push(lowerLiner(reader, block, node, doc));
        break;
      case 'Screw':
        if (block.name) found.screws.push(lowerScrew(reader, block, node, doc));
        break;
      case 'Conveyor':
        if (block.name) found.conveyors.push(lowerConveyor(reader, block, node, doc));
        break;
      case 'Inspection':
        {
          const span = { start, end };
          const draft = lowerInspection(reader, block, node, rows, span);
          if (draft) inspections.push({ draft, span });
          else doubt(block);
        }
        break;
      case 'Correction':
      case 'MeterChange':
      case 'DutyChange':
      case 'DriveChange':
      case 'Patch':
      case 'Serviced':
        addOneLine(reader, node, found, (records, draft) => record(records, block, draft));
        break;
      case 'Reline':
        record(found.relines, block, lowerReline(reader, block, node));
        break;
      case 'PanelsMoved':
        record(found.panelsMoved, block, lowerPanelsMoved(reader, block, node));
        break;
      case 'ScrewChange':
        record(found.screwChanges, block, lowerScrewChange(reader, block, node));
        break;
      case 'Job':
        if (block.name) found.jobs.push(lowerJob(reader, block, node, doc));
        break;
    }
    found.services.push(...lowerWorkIn(reader, node));
    if (lines.length > 0 || problems.length > before)
      unsound.push({ ...reader.origin(node), lacks: problems.length > before ? 'facts' : worst(lines) });
  }
  takeHalfNames(parsed.names, source, found, doubted);
  // A line outside any block may be a record of whatever it names.
  for (const { block, lacks, names, start, end } of parsed.left)
    if (block === 'Block' && lacks !== 'words')
      for (const name of names) doubted.push({ name, origin: { source, start, end } });
  return {
    source,
    uri,
    ...found,
    doubted,
    unsound,
    ...countRows(rows, inspections),
    comments: parsed.comments,
    problems,
  };
}

/** Of lines that are lost together. */
function worst(lines: readonly LeftLine[]): Lacking {
  const has = (lacking: Lacking): boolean => lines.some(({ lacks }) => lacks === lacking);
  return has('facts') ? 'facts' : has('conditions') ? 'conditions' : 'words';
}

type Found = {
  readonly [K in 'plants' | 'conveyors' | 'liners' | 'screws' | 'jobs']: Sheet[K][number][];
};

/** Names of headings that cannot be read: known, so that what refers to them is not told that they do not exist. */
function takeHalfNames(names: readonly HalfName[], source: number, found: Found, doubted: NameUse[]): void {
  for (const { block, name, ...place } of names) {
    const unfinished = { name, origin: { source, ...place }, unfinished: true };
    const mayBe = (kind: string): boolean => block === kind || block === undefined;
    if (mayBe('Plant')) found.plants.push(unfinished);
    if (mayBe('Conveyor'))
      found.conveyors.push({ ...unfinished, unplaced: [], perhaps: block === undefined });
    if (mayBe('Liner')) found.liners.push(unfinished);
    if (mayBe('Screw')) found.screws.push(unfinished);
    if (mayBe('Job')) found.jobs.push(unfinished);
    if (block !== undefined && !isNoRecord.has(block)) doubted.push({ name, origin: unfinished.origin });
  }
}

function countRows(
  rows: ReadingRows,
  inspections: readonly { readonly draft: UncountedInspection; readonly span: TextSpan }[],
): Pick<Sheet, 'inspections' | 'rows'> {
  const finished = rows.finish(inspections.map(({ span }) => span));
  return {
    rows: finished.rows,
    inspections: inspections.map(({ draft }, index) => ({
      ...draft,
      ...(finished.ranges[index] ?? { firstRow: 0, endRow: 0 }),
    })),
  };
}

/** A sheet that says only that its text could not be taken. */
export function emptySheet(source: number, uri: string, problems: readonly Problem[]): Sheet {
  return {
    source,
    uri,
    plants: [],
    liners: [],
    screws: [],
    conveyors: [],
    inspections: [],
    corrections: [],
    amendments: [],
    relines: [],
    panelsMoved: [],
    screwChanges: [],
    meterChanges: [],
    dutyChanges: [],
    driveChanges: [],
    patches: [],
    services: [],
    jobs: [],
    doubted: [],
    unsound: [],
    rows: createReadingRows().finish([]).rows,
    comments: [],
    problems,
  };
}

function unnamedIn(
  source: number,
  { conveyor, names, told: { message, mend } }: NonNullable<Slip['unnamed']>,
): NonNullable<Extract<Problem, { kind: 'syntax' }>['unnamed']> {
  return { conveyor, names, message, ...(mend ? { mend: placedIn(source, mend) } : {}) };
}

/** What a slip says of a stretch of the text, with where it comes from. */
function placedIn<T extends { readonly start: number; readonly end: number }>(
  source: number,
  { start, end, ...said }: T,
): Omit<T, 'start' | 'end'> & { readonly origin: Origin } {
  return { ...said, origin: { source, start, end } };
}

/** All other blocks are records of a conveyor. */
const isNoRecord = new Set(['Plant', 'Conveyor', 'Liner', 'Screw', 'Job']);

const words: Readonly<Record<ast.Block['$type'], string>> = {
  Plant: 'plant',
  Liner: 'liner',
  Screw: 'screw',
  Conveyor: 'conveyor',
  Inspection: 'inspection',
  Correction: 'correction',
  Reline: 'reline',
  PanelsMoved: 'panels moved',
  ScrewChange: 'screw change',
  MeterChange: 'meter change',
  DutyChange: 'duty',
  DriveChange: 'drive change',
  Patch: 'patch',
  Serviced: 'serviced',
  Job: 'job',
};

type OneLine = ast.Correction | ast.MeterChange | ast.DutyChange | ast.DriveChange | ast.Patch | ast.Serviced;

/** Records without a block of their own. A drive change is the work that it was too, and its speed one of the duty. */
function addOneLine(
  reader: Reader,
  node: OneLine,
  found: ReturnType<typeof nothingFound>,
  record: <T>(records: T[], draft: T | undefined) => void,
): void {
  switch (node.$type) {
    case 'Correction':
      return isAmendment(node)
        ? record(found.amendments, lowerAmendment(reader, node))
        : record(found.corrections, lowerCorrection(reader, node));
    case 'MeterChange':
      return record(found.meterChanges, lowerMeterChange(reader, node));
    case 'DutyChange':
      return record(found.dutyChanges, lowerDutyChange(reader, node));
    case 'DriveChange': {
      const drafts = lowerDriveChange(reader, node);
      record(found.driveChanges, drafts?.change);
      record(found.services, drafts?.work);
      if (drafts?.speed) record(found.dutyChanges, drafts.speed);
      return;
    }
    case 'Patch':
      return record(found.patches, lowerPatch(reader, node));
    case 'Serviced':
      return record(found.services, lowerService(reader, node));
  }
}

/** What a text may hold beside its inspections, each list empty yet. */
function nothingFound() {
  return {
    plants: list<Sheet['plants']>(),
    liners: list<Sheet['liners']>(),
    screws: list<Sheet['screws']>(),
    conveyors: list<Sheet['conveyors']>(),
    corrections: list<Sheet['corrections']>(),
    amendments: list<Sheet['amendments']>(),
    relines: list<Sheet['relines']>(),
    panelsMoved: list<Sheet['panelsMoved']>(),
    screwChanges: list<Sheet['screwChanges']>(),
    meterChanges: list<Sheet['meterChanges']>(),
    dutyChanges: list<Sheet['dutyChanges']>(),
    driveChanges: list<Sheet['driveChanges']>(),
    patches: list<Sheet['patches']>(),
    services: list<Sheet['services']>(),
    jobs: list<Sheet['jobs']>(),
  };
}

function list<T extends readonly unknown[]>(): T[number][] {
  return [];
}
