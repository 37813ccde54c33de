// Is the whole length within somebody's reach? Told once a conveyor that declares access at all, or has none.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const stretchWithoutAccess: Rule = {
  code: 'TL230',
  title: 'Length that nobody can reach',
  severity: 'information',
  restsOn: ['block', 'jobs'],
  why: 'A stretch without declared access cannot be inspected or worked on; planning finds that out when the crew stands below it.',
  todo: 'Write an access line for it: ground, platform, mobile platform or scaffold.',
  given: 'conveyor',
  example: `
  «access A1 at 0 m to 8 m platform»‹|
  access A2 at 8 m to 12 m mobile platform height 6 m›`,
  *check({ estate }) {
    // Where an order of work is written, the order's own finding says it, with the step.
    const planned = new Set(estate.jobs.filter((job) => job.order).map((job) => job.conveyor));
    for (const conveyor of estate.conveyors) {
      const gaps = planned.has(conveyor) ? [] : gapsOf(conveyor);
      if (gaps.length === 0) continue;
      yield {
        origin: conveyor.access[0]?.origin ?? conveyor.nameOrigin,
        message:
          conveyor.access.length === 0
            ? `${conveyor.name} declares no access to any of its ${conveyor.length.text}.`
            : `${conveyor.name} declares no access from ${list(gaps)}.`,
      };
    }
  },
};

function gapsOf(conveyor: Conveyor): readonly string[] {
  const { access, length } = conveyor;
  if (access.some((zone) => zone.from.value > zone.to.value)) return []; // a range that runs backwards has its own finding
  const gaps: string[] = [];
  let reached = 0;
  for (const zone of [...access].sort((a, b) => a.from.value - b.from.value)) {
    if (zone.from.value > reached + 1)
      gaps.push(`${chainageOn(conveyor, reached)} to ${chainageOn(conveyor, zone.from.value)}`);
    reached = Math.max(reached, zone.to.value);
  }
  if (length.value > reached + 1)
    gaps.push(`${chainageOn(conveyor, reached)} to ${chainageOn(conveyor, length.value)}`);
  return gaps;
}
