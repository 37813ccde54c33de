// A hopper over the screw holds material above whoever works below it, and a drain lets out what stands in the trough: sheet, pack and
// drawing name both where somebody has to act on them, and nothing is said of them on a machine that has neither.

import { expect, test } from 'vitest';
import type { Estate } from '../../src/domain/model/estate.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { workPackMarkdown } from '../../src/generators/work-pack/markdown.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { estateOf, works } from './remaining-life/story.js';

const order = ['empty', 'isolate', 'prove dead', 'covers off', 'covers on', 'remove isolation', 'run empty'];
const job = `job Reline1 { conveyor DG1 outage Spring26 reline all order {\n${order.join('\n')}\n} }\n`;

function pagesOf(...facts: readonly string[]): { readonly sheet: string; readonly pack: string } {
  const estate: Estate = estateOf(works.replace(/}\n$/, `${facts.join('\n')}\n}\n`), job);
  const [conveyor] = estate.conveyors;
  const [reline] = estate.jobs;
  if (!conveyor || !reline) throw new Error('no conveyor and job');
  return {
    sheet: inspectionSheetHtml(inspectionSheet(estate, conveyor)),
    pack: workPackMarkdown(workPack(estate, reline)),
  };
}

/** The row of a step. */
function stepOf(pack: string, action: string): string {
  return pack.split('\n').find((line) => new RegExp(`^\\|[^|]*\\|[^|]*\\b${action}\\b`).test(line)) ?? '';
}

test('a hopper is emptied and signed for, and is a caution of its own', () => {
  const { sheet, pack } = pagesOf(
    'bulk density 520 kg/m3',
    'hopper Feed at 0.4 m to 2.2 m volume 2.4 m3 "open top"',
  );
  const words = 'hopper Feed over 0.40 m to 2.20 m (2.4 m3, about 1248 kg when full; open top)';
  expect(pack).toContain(`Over the screw: ${words}.`);
  expect(pack).toMatch(
    /\| Feed \| emptied, or held off; 2\.4 m3, about 1248 kg when full; open top \| material above/,
  );
  expect(stepOf(pack, 'empty')).toContain(`Run out too: ${words}.`);
  expect(stepOf(pack, 'isolate')).toContain(`Emptied, or held off, before this is signed: ${words}.`);
  expect(sheet).toContain(`${words}: emptied, or held off, before anybody opens or leans in below.`);
});

test('two hoppers, one of them without a name and without its volume', () => {
  const { pack } = pagesOf('hopper at 0.4 m to 1.2 m', 'hopper Big at 2 m to 3 m volume 500 l');
  expect(pack).toContain(
    'Over the screw: hopper over 0.40 m to 1.20 m; hopper Big over 2.00 m to 3.00 m (500 l).',
  );
});

test('a drain is opened once the machine is dead, and shut before it runs', () => {
  const { sheet, pack } = pagesOf('drain at 0.1 m "bung, two inch"');
  expect(stepOf(pack, 'prove dead')).toContain(
    'let run out what stands in the trough: drain at 0.10 m (bung, two inch).',
  );
  expect(stepOf(pack, 'remove isolation')).toContain(
    'Shut again, and tight: drain at 0.10 m (bung, two inch).',
  );
  expect(sheet).toContain('drain at 0.10 m (bung, two inch): free and tight?');
  expect(pagesOf('drain Screen at 0.2 m to 0.6 m').sheet).toContain('drain Screen at 0.20 m to 0.60 m: free');
});

test('without either nothing is said', () => {
  const { sheet, pack } = pagesOf();
  for (const page of [sheet, pack]) expect(page).not.toMatch(/hopper|drain at|\| material above/i);
});
