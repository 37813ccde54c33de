// A pack laid out for reading: page 1 (scope, window, how the liner stands, what speaks against it), safety, the steps to sign,
// the panels with their check sheets, supplies, records, time; drawings to scale last, on sheets of their own.

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
    ...checkBlocks(pack),
    ...materialBlocks(pack),
    ...cutBlocks(pack),
    ...liftBlocks(pack),
    ...recordBlocks(pack),
    ...scheduleBlocks(pack),
    ...drawingBlocks(pack, true),
    ...drawingBlocks(pack, false),
  ];
}

export function packTitle(pack: WorkPack): string {
  return `Work pack ${pack.number}: ${pack.job.title ?? pack.job.name}`;
}

/** Charts stand among the words; what is to scale has a sheet of its own. */
function drawingBlocks(pack: WorkPack, charts: boolean): PrintBlock[] {
  return pack.drawings
    .filter(({ chart }) => chart === charts)
    .map((drawing) => ({ kind: 'drawing', drawing }));
}
