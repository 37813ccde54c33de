// A pack laid out for reading: page 1 (scope, window, how the liner stands, what speaks against it), safety, the steps to sign,
// the panels with their check sheets, supplies, records, time; drawings to scale last, on sheets of their own.

import type { Drawing } from '../../drawing/drawing-sheet.js';
import type { WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';
import { coverBlocks } from './cover-blocks.js';
import { checkBlocks, panelBlocks } from './panel-blocks.js';
import { recordBlocks } from './record-blocks.js';
import { accessBlocks, safetyBlocks, takingBlocks } from './safety-blocks.js';
import { scheduleBlocks, stepBlocks } from './step-blocks.js';
import { cutBlocks, liftBlocks, materialBlocks } from './supply-blocks.js';

export function packBlocks(pack: WorkPack): readonly PrintBlock[] {
  return [
    ...coverBlocks(pack),
    ...safetyBlocks(pack),
    ...accessBlocks(pack),
    ...takingBlocks(pack),
    ...stepBlocks(pack),
    ...panelBlocks(pack),
    ...chartBlocks(pack, (drawing) => !isBars(drawing)),
    ...checkBlocks(pack),
    ...materialBlocks(pack),
    ...cutBlocks(pack),
    ...liftBlocks(pack),
    ...recordBlocks(pack),
    ...scheduleBlocks(pack),
    ...chartBlocks(pack, isBars),
    ...pack.drawings.filter(({ chart }) => !chart).map(drawingBlock),
  ];
}

export function packTitle(pack: WorkPack): string {
  return `Work pack ${pack.number}: ${pack.job.title ?? pack.job.name}`;
}

/** Charts stand among the words they belong to; what is to scale has a sheet of its own. */
function chartBlocks({ drawings }: WorkPack, which: (drawing: Drawing) => boolean): PrintBlock[] {
  return drawings.filter((drawing) => drawing.chart && which(drawing)).map(drawingBlock);
}

function isBars({ documentType }: Drawing): boolean {
  return documentType === 'Bar chart';
}

function drawingBlock(drawing: Drawing): PrintBlock {
  return { kind: 'drawing', drawing };
}
