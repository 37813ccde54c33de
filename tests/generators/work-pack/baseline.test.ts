// One whole pack as it prints, read before it was accepted. A change of it shows as a change of words in review.

import { expect, test } from 'vitest';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, theJob } from '../estate.js';

test('the pack of a reline with a screw change', async () => {
  const analysis = read(liftConveyor({ job: 'change screw' }));
  const text = workPackMarkdown(workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') }));
  await expect(text).toMatchFileSnapshot('baselines/reline-and-screw.md');
});
