// What is written as cold work asks for no flame anywhere in the pack; what is hot, or not written as cold, asks for all of it.

import { describe, expect, test } from 'vitest';
import { crewSheetHtml } from '../../../src/generators/work-pack/crew-sheet.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { liftConveyor, read, theJob } from '../estate.js';

const facts = 'minimum plate 2 mm\n  confined space';

function pack(...patches: readonly string[]): WorkPack {
  const job = `order {\n    strip run 2\n    ${patches.join('\n    ')}\n    fit run 2\n  }`;
  const analysis = read(liftConveyor({ conveyor: facts, job }));
  return workPack(analysis.estate, theJob(analysis));
}

/** All that is printed, and the data behind it; that a crew can weld as well is no part of the work. */
function printed(made: WorkPack): readonly string[] {
  return [workPackHtml(made), workPackMarkdown(made), crewSheetHtml(made), JSON.stringify(made)].map((text) =>
    text.replaceAll(/fitting, welding|"welding"/g, ''),
  );
}

const ofFlames = /weld|hot.work|fire.watch|grind flush|PE melts/i;

describe('a patch', () => {
  const cold = pack('patch from 2 m to 2.4 m cold work');
  test('done cold: nothing speaks of welding, hot work or a fire watch', () => {
    for (const text of printed(cold)) expect(ofFlames.exec(text)).toBeNull();
    expect(cold.permits.map(({ name }) => name)).not.toContain('Hot work');
    expect(cold.cautions.map(({ heading }) => heading)).toContain('Cold work');
    expect(cold.steel?.rows.map(({ known }) => known)).toContain(
      'to be patched cold, and no reading of the plate on record: read it before anything is fixed to it',
    );
  });
  test.each(['hot work shielded wet fire watch 60 min', ''])('hot, or not said to be cold: %j', (words) => {
    const hot = pack(`patch from 2 m to 2.4 m ${words}`);
    const step = hot.steps.find(({ action }) => action === 'patch');
    expect(step?.work).toMatch(/^Weld only under a hot-work permit/);
    expect(step?.check).toContain('Fire watch');
    expect(hot.permits.find(({ name }) => name === 'Hot work')?.need).toBe('needed');
    expect(hot.cautions.map(({ heading }) => heading)).toContain('Hot work');
    expect(hot.steel?.rows[0]?.known).toMatch(/^to be welded/);
  });
  test('cold beside a hot one: each has its own words, and the permit is asked for', () => {
    const both = pack('patch from 2 m to 2.4 m cold work', 'patch from 3 m to 3.4 m');
    const [first, second] = both.steps.filter(({ action }) => action === 'patch');
    expect(first?.work).not.toMatch(ofFlames);
    expect(second?.work).toContain('Weld only');
    expect(both.permits.find(({ name }) => name === 'Hot work')?.need).toBe('needed');
    expect(workPackMarkdown(both)).toContain('Weld only under a hot-work permit');
  });
});

describe('a change of the screw', () => {
  const change = (words: string): WorkPack => {
    const analysis = read(liftConveyor({ job: `change screw to Spiral300 ${words}` }));
    return workPack(analysis.estate, theJob(analysis));
  };
  test('cut cold and bolted asks for no flame; any other does', () => {
    const need = (words: string): string | undefined =>
      change(words).permits.find(({ name }) => name === 'Hot work')?.need;
    expect(need('bolted joints cut cold')).toBeUndefined();
    expect(need('bolted joints cut hot')).toBe('needed');
    expect(need('welded joints cut cold')).toBe('needed');
    expect(need('')).toBe('needed');
  });
});
