// A limit that is shorter than a chain of work: nothing is that short, which is an answer and no fault.

import { expect, test } from 'vitest';
import { bestSchedule } from '../../../src/domain/plan/scheduling/improve.js';
import { searchExactly } from '../../../src/domain/plan/scheduling/learning/exact.js';
import { modelOf } from '../../../src/domain/plan/scheduling/model.js';

test('is answered: nothing shorter exists', () => {
  const activities = Array.from({ length: 6 }, (_, i) => ({
    name: `step ${i}`,
    after: i === 0 ? [] : [i - 1],
    modes: [{ duration: 100, uses: [] }],
  }));
  const model = modelOf({ activities, resources: [], exclusions: [] });
  if (!model) throw new Error('no circle');
  const hint = bestSchedule(model, 1, 600, () => 0);
  expect(hint.makespan).toBe(600);
  const most = { conflicts: 100, raises: 10_000 };
  for (const limit of [599, 300, 5])
    expect(searchExactly(model, hint, limit, 0, most)).toMatchObject({ best: undefined, complete: true });
});
