// Plans of jobs drawn at random, looked at from outside: by the checker, by the clock, and read again from their own text.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { writeOrder } from '../../../src/domain/plan/write-order.js';
import { mm, origin, screw, stated } from '../../kit/estate.js';
import {
  brace,
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  line,
  platform,
  step,
  worldOf,
} from '../order/stories.js';

const plan = (of: Job, effort = {}): JobPlan => planJob(of, worldOf(of), effort);

/** The order of a plan as a job of its own. */
function written(found: JobPlan): Job {
  return { ...found.job, order: { steps: found.steps.map((each) => each.step), origin: origin() } };
}

/** Conveyors of one to three runs with what lies over them, jobs of all or some of it, one to three crews. */
const jobs = fc
  .record({
    panels: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 }),
    allowances: fc.array(fc.constantFrom(0, 10, 20), { minLength: 4, maxLength: 4 }),
    incline: fc.constantFrom(0, 6, 20, -20),
    covers: fc.constantFrom(0, 700, 1500),
    braces: fc.constantFrom(0, 900, 2000),
    holdDowns: fc.constantFrom(0, 500, 1500),
    enclosed: fc.boolean(),
    crews: fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 1, maxLength: 3 }),
    mobile: fc.integer({ min: 0, max: 2 }),
    gate: fc.constantFrom('slide gate' as const, 'inlet' as const),
    screw: fc.boolean(),
  })
  .map((each) => {
    const base = line(each.panels, each.allowances, {
      incline: stated('angle', each.incline),
      confinedSpace: each.enclosed,
    });
    const length = base.length.value;
    const places = (pitch: number): number[] =>
      pitch === 0
        ? []
        : Array.from({ length: Math.floor(length / pitch) }, (_, k) => (k + 1) * pitch).filter(
            (at) => at < length,
          );
    const of: Conveyor = {
      ...base,
      breaks: base.breaks.map((place) =>
        place.kind === 'slide gate' ? { ...place, kind: each.gate } : place,
      ),
      covers:
        each.covers === 0
          ? []
          : Array.from({ length: Math.ceil(length / each.covers) }, (_, k) =>
              cover(k * each.covers, Math.min(length, (k + 1) * each.covers)),
            ),
      braces: places(each.braces).map(brace),
      holdDowns: places(each.holdDowns).map(holdDown),
      access:
        each.mobile > 0
          ? [
              { ...everywhere, to: mm(1500) },
              { ...everywhere, from: mm(1500), kind: 'mobile platform' },
            ]
          : base.access,
    };
    const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
    return job(of, ['all'], {
      crews: each.crews.map((size, k) => crew(['Alpha', 'Bravo', 'Charlie'][k] ?? '', size)),
      accessUnits: Array.from({ length: each.mobile }, (_, k) =>
        // The second takes two people and what they handle.
        k === 0 ? platform('MP1') : platform(`MP${k + 1}`, 20_000, 230),
      ),
      ...(each.screw
        ? { screwChange: { screw: spiral, origin: origin() }, liftLimit: stated('mass', 300) }
        : {}),
    });
  });

describe('any job', () => {
  test('the checker has nothing against a proposed order but what no order could mend', () => {
    fc.assert(
      fc.property(jobs, (of) => {
        const found = plan(of, { quick: true, shakes: 6, nodes: 100 });
        expect(found.violations.map((each) => each.message)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test('every step starts after all it waits for, no team is in two places, and the bound holds', () => {
    fc.assert(
      fc.property(jobs, (of) => {
        const found = plan(of, { quick: true, shakes: 6, nodes: 100 });
        expect(found.lowerBound).toBeLessThanOrEqual(found.duration + 1e-9);
        found.steps.forEach((each, p) => {
          for (const q of each.after)
            expect(found.steps[q]?.finish ?? 0).toBeLessThanOrEqual(each.start + 1e-9);
          for (const other of found.steps.slice(p + 1)) {
            if (each.start >= other.finish - 1e-9 || other.start >= each.finish - 1e-9) continue;
            // Work stands still while the air is tested again; air-tests.test.ts looks at who tests.
            if (each.repeat !== undefined || other.repeat !== undefined) continue;
            expect(each.crews.filter((name) => other.crews.includes(name))).toEqual([]);
            if (each.unit !== undefined) expect(other.unit).not.toBe(each.unit);
          }
        });
      }),
      { numRuns: 100 },
    );
  });

  test('its text, read again and timed as written, takes no longer', () => {
    fc.assert(
      fc.property(jobs, (of) => {
        const found = plan(of, { quick: true, shakes: 6, nodes: 100 });
        const again = plan(
          {
            ...written(found),
            order: {
              steps: writeOrder(found)
                .slice(1, -1)
                .map((text) => step(text, of)),
              origin: origin(),
            },
          },
          { quick: true },
        );
        expect(again.duration).toBeLessThanOrEqual(found.duration + 1e-9);
      }),
      { numRuns: 60 },
    );
  });
});
