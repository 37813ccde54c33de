// One number of hours behind the pages: what options and programme say a reline takes is what the pack of that job prints, for the
// same scope, crews and days. The job is written down in the language as the option has it, and its pack is asked.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  workOf,
  type LinerAt,
  type RunPart,
  type StretchWork,
} from '../../../src/domain/decision/trial-work.js';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Estate } from '../../../src/domain/model/estate.js';
import type { Outage } from '../../../src/domain/model/plant.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { formatNumber } from '../../../src/domain/units/format.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, tarnholt, tarnholtTexts, theJob } from '../estate.js';

/** The job of an option, with the values that a job has which says nothing of them. */
function written(name: string, conveyor: Conveyor, work: StretchWork, outage: Outage, crews: string): string {
  const scope = work.whole
    ? ['reline all']
    : work.parts.map(({ run, first, last }) => `reline panels ${first} to ${last} of run ${run}`);
  const units = conveyor.plant.accessUnits.map((unit) => unit.name).join(', ');
  return [
    `job ${name} {`,
    `conveyor ${conveyor.name}`,
    `outage ${outage.name}`,
    ...scope,
    `crews ${crews}`,
    ...(units === '' ? [] : [`access units ${units}`]),
    '}',
  ].join('\n');
}

interface Asked {
  readonly name: string;
  readonly text: string;
  readonly hours: number;
}

function askedOf(
  estate: Estate,
  conveyor: Conveyor,
  scopes: readonly (readonly RunPart[] | 'whole')[],
): readonly Asked[] {
  const asIs: LinerAt = () => conveyor.liner;
  return scopes.flatMap((scope, s) => {
    const work = workOf(conveyor, asIs, scope, estate);
    return conveyor.plant.outages.flatMap((outage) => {
      const begun = work.at(outage.from.day);
      return [begun.together, ...begun.others()].flatMap((team, t): readonly Asked[] => {
        const name = `${conveyor.name}_${outage.name}_${s}_${t}`;
        const text = written(name, conveyor, work, outage, team.crews.join(', '));
        return team.job === undefined ? [{ name, text, hours: team.duration }] : [];
      });
    });
  });
}

function compare(texts: readonly string[], asked: readonly Asked[]): void {
  const analysis = read(...texts, asked.map(({ text }) => text).join('\n'));
  asked.forEach(({ name, hours }, i) => {
    const job = theJob(analysis, name);
    expect(job.order).toBeUndefined();
    // Pictures and prices take their time: the pack itself of every fourth, the pack's plan of all.
    const printed =
      i % 4 === 0
        ? workPack(analysis.estate, job, { asOf: day('2026-10-31') }).schedule
        : planJob(job, analysis.estate, { quick: true });
    expect([name, printed.duration]).toEqual([name, hours]);
  });
}

test('in the demo: the whole and a part, all crews and each alone', () => {
  const estate = tarnholt();
  const parts = (first: number, last: number): readonly RunPart[] => [{ run: 1, first, last }];
  const asked = estate.conveyors
    .filter(({ name }) => name === 'DG1' || name === 'GT5')
    .flatMap((conveyor) => askedOf(estate, conveyor, ['whole', parts(2, 4), parts(1, 2)]))
    .filter(({ name }) => /Winter27/.test(name));
  expect(asked.length).toBeGreaterThan(10);
  compare(
    tarnholtTexts().map(({ text }) => text),
    asked,
  );
}, 60_000);

test('a job that is written for it counts as it is written: its crews, and the one platform it names', () => {
  const estate = tarnholt();
  const job = estate.jobs.find(({ name }) => name === 'DG1_Winter27');
  const { conveyor } = job ?? {};
  if (!job?.window || !conveyor) throw new Error('the demo has no such job');
  const whole = workOf(conveyor, () => conveyor.liner, 'whole', estate);
  const begun = whole.at(job.window.from.day);
  const pack = workPack(estate, job);
  expect(begun.together).toEqual({
    job: 'DG1_Winter27',
    crews: ['Alpha', 'Bravo'],
    units: ['MP1'],
    duration: pack.schedule.duration,
    personHours: expect.closeTo(whole.together.personHours, 9) as number,
  });
  // Two platforms take less; another day, or a part, is another job.
  expect(whole.together.duration).toBeLessThan(begun.together.duration);
  expect(whole.at(day('2027-04-12')).together).toEqual(whole.together);
  const part = workOf(conveyor, () => conveyor.liner, [{ run: 1, first: 2, last: 4 }], estate);
  expect(part.at(job.window.from.day).together.job).toBeUndefined();
  // Of a job that leaves a crew out, without it.
  const alone = tarnholt((text) =>
    text.replace('  crews Alpha, Bravo\n  access units MP1', '  crews Bravo\n  access units MP1'),
  );
  const its = workOf(conveyorOf(alone), () => conveyorOf(alone).liner, 'whole', alone).at(
    job.window.from.day,
  );
  const ways = [its.together, ...its.others()];
  expect(ways.map(({ crews, job: as }) => [crews.join(), as])).toEqual([['Bravo', 'DG1_Winter27']]);
  // And its page says so, with the hours that the programme has of it.
  const life = remainingLife(alone, { asOf: day('2026-10-31') }).conveyors.find(
    (each) => each.conveyor.name === 'DG1',
  );
  const row = life?.decision?.options.find(
    ({ scope, outage }) => scope === 'the whole conveyor' && outage === 'Winter27',
  );
  expect(row?.needs.join()).toContain(
    `${formatNumber(its.together.duration, 1)} h of Bravo with MP1, as job DG1_Winter27 is written`,
  );
  // One that cannot be done as it is written counts for nothing: there is no crew that could.
  const nobody = tarnholt((text) =>
    text.replace(
      '  crews Alpha, Bravo\n  access units MP1',
      '  crews Alpha\n  window 2027-01-18 to 2027-01-18',
    ),
  );
  const not = workOf(conveyorOf(nobody), () => conveyorOf(nobody).liner, 'whole', nobody).at(
    job.window.from.day,
  );
  expect([not.together, ...not.others()].flatMap(({ job: as }) => as ?? [])).toEqual([]);
}, 60_000);

function conveyorOf({ conveyors }: Estate): Conveyor {
  const found = conveyors.find(({ name }) => name === 'DG1');
  if (!found) throw new Error('the demo has no DG1');
  return found;
}

test('at drawn machines, with outages that begin on any day of the week', () => {
  fc.assert(
    fc.property(
      fc.record({
        length: fc.integer({ min: 10, max: 15 }),
        incline: fc.constantFrom(0, 12, 25),
        panel: fc.constantFrom(1000, 1200, 1500),
        people: fc.integer({ min: 2, max: 5 }),
        starts: fc.integer({ min: 12, max: 18 }),
        second: fc.constantFrom('', 'crew Bravo 3 people skills fitting', 'crew Bravo 2 people'),
        shift: fc.constantFrom(
          'shift 07:00 to 17:00',
          'shift 07:00 to 17:00 on mon, tue, wed, thu, fri',
          'shift 06:00 to 13:00 on mon, wed, sat',
        ),
        first: fc.integer({ min: 1, max: 3 }),
      }),
      ({ length, incline, panel, people, starts, second, shift, first }) => {
        const text = liftConveyor({
          conveyor: `break Discharge at ${length - 0.5} m to ${length} m discharge allowance 20 mm`,
        })
          .replace(/\njob J1 [\s\S]*?\n}/, '')
          .replace('length 12 m', `length ${length} m`)
          .replace('incline 25 deg', `incline ${incline} deg`)
          .replace('panel length 1000 mm', `panel length ${panel} mm`)
          .replace('crew Alpha 4 people', `${second}\n  crew Alpha ${people} people`)
          .replace('shift 07:00 to 17:00', shift)
          .replace('2027-04-12', `2027-04-${starts}`)
          .replace('2027-04-16', '2027-04-30');
        const { estate } = read(text);
        const conveyor = conveyorOf(estate);
        const asked = askedOf(estate, conveyor, ['whole', [{ run: 1, first, last: first + 1 }]]);
        expect(asked).toHaveLength(second === '' ? 2 : 6);
        compare([text], asked);
      },
    ),
    { numRuns: 3 },
  );
}, 60_000);
