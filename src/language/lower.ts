// One parsed text → its sheet. Reading never stops at a slip: what can be read is kept, what cannot is left out and said.

import type { Problem } from '../domain/model/problem.js';
import type * as ast from './generated/ast.js';
import { docBefore } from './comments.js';
import { openBlock } from './lowering/block.js';
import { lowerCorrection } from './lowering/correction.js';
import { lowerConveyor } from './lowering/conveyor.js';
import { lowerInspection, type UncountedInspection } from './lowering/inspection.js';
import { lowerJob } from './lowering/job.js';
import { lowerLiner } from './lowering/liner.js';
import { lowerPlant } from './lowering/plant.js';
import { createReader, keywordOf } from './lowering/reader.js';
import {
  lowerDutyChange,
  lowerMeterChange,
  lowerPatch,
  lowerReline,
  lowerScrewChange,
} from './lowering/records.js';
import { lowerScrew } from './lowering/screw.js';
import type { ParsedText } from './parse.js';
import { createReadingRows, type ReadingRows, type TextSpan } from './reading-rows.js';
import type { Sheet } from './sheet.js';

/** `source` numbers the text in every origin of the sheet. */
export function lower(parsed: ParsedText, source: number, uri: string): Sheet {
  const problems: Problem[] = parsed.slips.map(({ start, end, ...told }) => ({
    kind: 'syntax',
    ...told,
    origin: { source, start, end },
  }));
  const reader = createReader(source, problems);
  const { rows } = parsed;
  const found = {
    plants: list<Sheet['plants']>(),
    liners: list<Sheet['liners']>(),
    screws: list<Sheet['screws']>(),
    conveyors: list<Sheet['conveyors']>(),
    corrections: list<Sheet['corrections']>(),
    relines: list<Sheet['relines']>(),
    screwChanges: list<Sheet['screwChanges']>(),
    meterChanges: list<Sheet['meterChanges']>(),
    dutyChanges: list<Sheet['dutyChanges']>(),
    patches: list<Sheet['patches']>(),
    jobs: list<Sheet['jobs']>(),
  };
  const inspections: { readonly draft: UncountedInspection; readonly span: TextSpan }[] = [];
  const blocks = parsed.root.blocks;
  let lost = 0;
  for (const [index, node] of blocks.entries()) {
    const start = node.$cstNode?.offset ?? 0;
    const next = blocks[index + 1]?.$cstNode?.offset ?? Infinity;
    while ((parsed.lost[lost] ?? Infinity) < start) lost++;
    // What is closed is over; what is not reaches to the next block.
    const end = keywordOf(node, '}')?.end ?? next;
    const block = openBlock(reader, node, words[node.$type], (parsed.lost[lost] ?? Infinity) < end);
    if (!isOpened(node)) {
      const unfinished = { name: block.name, origin: block.nameOrigin, unfinished: true };
      if (block.name && node.$type === 'Plant') found.plants.push(unfinished);
      else if (block.name && node.$type === 'Conveyor') found.conveyors.push({ ...unfinished, unplaced: [] });
      else if (block.name && node.$type === 'Liner') found.liners.push(unfinished);
      else if (block.name && node.$type === 'Screw') found.screws.push(unfinished);
      continue;
    }
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
        }
        break;
      case 'Correction':
        keep(found.corrections, block.garbled ? undefined : lowerCorrection(reader, node));
        break;
      case 'Reline':
        keep(found.relines, block.garbled ? undefined : lowerReline(reader, block, node));
        break;
      case 'ScrewChange':
        keep(found.screwChanges, block.garbled ? undefined : lowerScrewChange(reader, block, node));
        break;
      case 'MeterChange':
        keep(found.meterChanges, block.garbled ? undefined : lowerMeterChange(reader, node));
        break;
      case 'DutyChange':
        keep(found.dutyChanges, block.garbled ? undefined : lowerDutyChange(reader, node));
        break;
      case 'Patch':
        keep(found.patches, block.garbled ? undefined : lowerPatch(reader, node));
        break;
      case 'Job':
        if (block.name) found.jobs.push(lowerJob(reader, block, node, doc));
        break;
    }
  }
  return { source, uri, ...found, ...countRows(rows, inspections), comments: parsed.comments, problems };
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
    relines: [],
    screwChanges: [],
    meterChanges: [],
    dutyChanges: [],
    patches: [],
    jobs: [],
    rows: createReadingRows().finish([]).rows,
    comments: [],
    problems,
  };
}

const words: Readonly<Record<ast.Block['$type'], string>> = {
  Plant: 'plant',
  Liner: 'liner',
  Screw: 'screw',
  Conveyor: 'conveyor',
  Inspection: 'inspection',
  Correction: 'correction',
  Reline: 'reline',
  ScrewChange: 'screw change',
  MeterChange: 'meter change',
  DutyChange: 'duty',
  Patch: 'patch',
  Job: 'job',
};

const inOneLine: ReadonlySet<ast.Block['$type']> = new Set([
  'MeterChange',
  'DutyChange',
  'Patch',
  'Correction',
]);

/** A block that never came to its opening brace says nothing yet; the one-line records have none. */
function isOpened(node: ast.Block): boolean {
  return inOneLine.has(node.$type) || keywordOf(node, '{') !== undefined;
}

function list<T extends readonly unknown[]>(): T[number][] {
  return [];
}

function keep<T>(items: T[], item: T | undefined): void {
  if (item !== undefined) items.push(item);
}
