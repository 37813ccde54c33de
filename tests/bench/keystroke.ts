// From a changed text to findings, in an estate of a thousand inspection files: one key in an inspection, and one in the
// plant file that all of them depend on. Prints times as shares of the first build. Run: npm run bench

import { createWorkspace } from '../../src/analysis/workspace.js';
import { syntheticEstate } from './synthetic-estate.js';

const estate = syntheticEstate({ conveyors: 20, inspectionsEach: 50, pointsEach: 10 });
const workspace = createWorkspace();

const first = timed(() => {
  for (const { uri, text } of estate.texts) workspace.set(uri, { text });
  workspace.analyse();
});
console.log(`${estate.texts.length} files, ${estate.readings} readings; first build ${first.toFixed(0)} ms`);
show(
  'a key in one inspection',
  edits('inspections/C7/00025.trough', (text, i) =>
    text.replace('gauge ultrasonic ± 0.2', `gauge ultrasonic ± 0.${2 + (i % 7)}`),
  ),
);
show(
  'a key in the plant file',
  edits('plant.trough', (text, i) => text.replace('condemn at 3 mm', `condemn at 3.${i % 10} mm`)),
);
show(
  'a key in one conveyor',
  edits('conveyors/C7.trough', (text, i) => text.replace('incline 20 deg', `incline 20.${i % 10} deg`)),
);

/** The middle of 31 edits, ms. */
function edits(uri: string, change: (text: string, i: number) => string): number {
  const text = estate.texts.find((candidate) => candidate.uri === uri)?.text;
  if (text === undefined) throw new Error(`no ${uri} in the synthetic estate`);
  const times = Array.from({ length: 31 }, (_, i) =>
    timed(() => {
      workspace.set(uri, { text: change(text, i + 1) });
      workspace.analyse();
    }),
  );
  return times.sort((a, b) => a - b)[15] ?? NaN;
}

function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

function show(name: string, milliseconds: number): void {
  console.log(
    `${name.padEnd(28)} ${milliseconds.toFixed(1).padStart(7)} ms  ${((100 * milliseconds) / first).toFixed(1).padStart(5)} % of the first build`,
  );
}
