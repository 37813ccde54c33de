// `run between Inlet and Gate` is the run that lies there, whichever break is named first; breaks that are not neighbours have none.

import { expect, test } from 'vitest';
import { findRun, runsOf, runUseText } from '../../src/domain/model/runs.js';
import { analyse } from '../../src/analysis/analyse.js';
import { inSoundEstate } from '../../src/validation/example.js';

const scope = (run: string) =>
  analyse([
    {
      uri: 'e.trough',
      text: inSoundEstate(
        'estate',
        `reline DG1 2025-03-10 meter 6200 h {\n  liner TwoLayer12\n  scope run ${run}\n}`,
        {},
      ),
    },
  ]);

test('by both breaks, in either order', () => {
  const [conveyor] = scope('1').estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  for (const run of runsOf(conveyor)) {
    const [tail, head] = [run.tailBreak.name, run.headBreak.name];
    for (const [one, other] of [
      [tail, head],
      [head, tail],
    ]) {
      const { estate, findings } = scope(`between ${one} and ${other}`);
      const [stretch] = estate.relines[0]?.scope ?? [];
      if (stretch?.kind !== 'run') throw new Error('no run');
      const of = estate.conveyors[0];
      expect(of && findRun(of, stretch.run)?.number).toBe(run.number);
      expect(runUseText(stretch.run)).toBe(`between ${one} and ${other}`);
      expect(findings.map(({ code }) => code)).not.toContain('TL101');
    }
  }
});

test('breaks with another between them, one named twice and one that is not there are told', () => {
  const [conveyor] = scope('1').estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  const runs = runsOf(conveyor);
  const [tail, head] = [runs[0]?.tailBreak.name ?? '', runs.at(-1)?.headBreak.name ?? ''];
  expect(runs.length).toBeGreaterThan(1);
  const told = (run: string): readonly string[] => scope(run).findings.map(({ message }) => message);
  expect(told(`between ${tail} and ${head}`).join()).toContain(
    `has no run between ${tail} and ${head}; it has run 1`,
  );
  expect(told(`between ${tail} and ${tail}`).join()).toContain(`has no run between ${tail} and ${tail}`);
  expect(told(`between ${tail} and Nowhere`).join()).toContain('Nowhere');
});
