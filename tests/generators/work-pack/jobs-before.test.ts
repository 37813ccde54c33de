// A pack of a later job knows what an earlier one takes from the shelf and renews, says that it is planned and not done, and is as it
// was where the earlier job is over or on record.

import { expect, test } from 'vitest';
import type { Estate } from '../../../src/domain/model/estate.js';
import { jobsBefore } from '../../../src/domain/plan/jobs-before.js';
import { jobEffects } from '../../../src/generators/change-summary/parts/machine.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, theJob } from '../estate.js';

const shelf = `
  outage Autumn27 2027-09-13 to 2027-09-17
  on the shelf TwoLayer12 6 panels counted 2026-08-31
  on the shelf TwoLayer12 60 fixings counted 2026-08-31
  on the shelf Spiral300 1 spirals counted 2026-08-31`;
const found = `
inspection DG1 2026-10-01 meter 9000 h {
  panel torn at 9 m clock 5:00 serious
  spiral bent at 9 m
  P3 thickness 8 mm
}`;

function estate(first: string, later: string, more = ''): ReturnType<typeof read> {
  const text = liftConveyor({ conveyor: 'break Discharge at 11.4 m to 12 m discharge allowance 20 mm' })
    .replace('  lead time liner 10 week', `  lead time liner 10 week${shelf}`)
    .replace('  reline run above Gate', first);
  const second = `
job J2 {
  conveyor DG1
  outage Autumn27
  ${later}
  crews Alpha
  access units MP1
  lift limit 250 kg
}`;
  const analysis = read(text + found + second + more);
  const told = analysis.findings.filter(
    ({ code, severity }) => severity === 'error' && /TL00|TL01/.test(code),
  );
  expect(told.map(({ message }) => message)).toEqual([]);
  return analysis;
}

function packs(
  first: string,
  later: string,
  more = '',
): { readonly alone: WorkPack; readonly after: WorkPack } {
  const both = estate(first, later, more);
  // The same estate without the earlier job.
  const alone = { ...both.estate, jobs: both.estate.jobs.filter(({ name }) => name !== 'J1') };
  const asOf = day('2026-10-31');
  return {
    alone: workPack(alone, theJob(both, 'J2'), { asOf }),
    after: workPack(both.estate, theJob(both, 'J2'), { asOf }),
  };
}

const onShelf = ({ materials }: WorkPack, kind: string): readonly (number | undefined)[] =>
  materials.flatMap((row) => (row.kind === kind && row.onShelf !== undefined ? [row.onShelf] : []));
const toOrder = ({ materials }: WorkPack, kind: string): number =>
  materials.reduce((sum, row) => sum + (row.kind === kind ? row.toOrder : 0), 0);

test('what the earlier job takes from the shelf is not there, spares too', () => {
  const { alone, after } = packs('reline panels 1 to 2 of run 2', 'reline run 1');
  // Two panels of six and one spare; of panels of 0.9 and 1 m in 2 rows at most 300 mm apart 6 and 8 bolts, and a tenth more.
  expect(onShelf(alone, 'liner')).toEqual([6]);
  expect(onShelf(after, 'liner')).toEqual([3]);
  const fixings = 60 - (onShelf(after, 'fixings')[0] ?? 0);
  expect(fixings).toBe(6 + 8 + 2);
  expect(toOrder(after, 'liner')).toBe(toOrder(alone, 'liner') + 3);
  expect(after.cutLists[0]?.shelf.map(({ count }) => count)).toEqual([3]);
  expect(after.cutLists[0]?.toBuy.reduce((sum, { count }) => sum + count, 0)).toBe(
    (alone.cutLists[0]?.toBuy.reduce((sum, { count }) => sum + count, 0) ?? 0) + 3,
  );
  expect(alone.restsOn).toBeUndefined();
  expect(after.restsOn?.map(({ job, window, changes }) => [job, window, changes.join('; ')])).toEqual([
    [
      'J1',
      '2027-04-12 to 2027-04-16',
      `renews panels 1 to 2 of run 2 with TwoLayer12; takes 3 pieces of TwoLayer12, 1.00 m and ${fixings} fixings of TwoLayer12 from the shelf`,
    ],
  ]);
  const text = workPackMarkdown(after);
  expect(text).toContain('This pack rests on earlier jobs that are planned and not done');
  expect(text).toContain('| J1 on DG1 | 2027-04-12 to 2027-04-16 |');
});

test('the spare spiral goes to the earlier change, and the later one orders its own', () => {
  const { alone, after } = packs('change screw', 'change screw');
  expect(onShelf(alone, 'screw')).toEqual([12]);
  expect(onShelf(after, 'screw')).toEqual([0]);
  expect([toOrder(alone, 'screw'), toOrder(after, 'screw')]).toEqual([0, 12]);
  expect(after.restsOn?.[0]?.changes).toEqual([
    'puts in the screw Spiral300',
    'takes the spare spiral Spiral300 from the shelf',
  ]);
});

test('what the earlier job renews lies there new: panels, liner, conditions', () => {
  const { alone, after } = packs(
    'reline run above Gate with Other',
    'reline panels 2 to 3 of run 2',
    `
liner Other { layer ivory 8 mm layer teal 6 mm panel length 1300 mm condemn at 4 mm }`,
  );
  const lying = (pack: WorkPack): string | undefined =>
    pack.conveyor.facts.find(({ name }) => name === 'Liner, comes out')?.value;
  expect(lying(alone)).toMatch(/^TwoLayer12: .*in since 2023-01-02$/);
  expect(lying(after)).toMatch(/^Other: ivory 8 mm .*, to be put in by job J1 \(planned, not done\)$/);
  const panels = (pack: WorkPack): readonly number[] =>
    pack.panels.filter(({ run, renewed }) => run === 2 && renewed).map(({ length }) => Math.round(length));
  expect(Math.max(...panels(alone))).toBe(1000);
  expect(Math.max(...panels(after))).toBeGreaterThan(1200);
  expect(after.scope[0]).toContain('with Other');
  const torn = (pack: WorkPack) => pack.conditions.find(({ what }) => what.startsWith('panel torn'));
  expect(torn(alone)).toMatchObject({ ends: true });
  expect(torn(alone)?.before).toBeUndefined();
  expect(torn(after)).toMatchObject({ before: 'J1' });
  expect(after.conditions.find(({ what }) => what.startsWith('spiral bent'))?.before).toBeUndefined();
  expect(workPackMarkdown(after)).toContain('job J1 before it takes it away (planned, not done)');
  // The crew writes the meter down beside its last reading, not beside one that nobody has read.
  expect(after.asFitted.meter).toEqual({ value: 9000, date: '2026-10-01' });
});

test('a job that is over, on record, or later changes nothing', () => {
  const both = estate('reline panels 1 to 2 of run 2', 'reline run 1');
  const alone: Estate = { ...both.estate, jobs: both.estate.jobs.filter(({ name }) => name !== 'J1') };
  const at = (text: string, of: Estate): WorkPack => workPack(of, theJob(both, 'J2'), { asOf: day(text) });
  expect(at('2027-04-16', both.estate).restsOn).toHaveLength(1);
  expect(at('2027-04-17', both.estate)).toEqual(at('2027-04-17', alone));
  // The earlier job's own pack knows nothing of the later.
  const first = workPack(both.estate, theJob(both, 'J1'), { asOf: day('2026-10-31') });
  expect(first.restsOn).toBeUndefined();
  const done = estate(
    'reline panels 1 to 2 of run 2',
    'reline run 1',
    `
reline DG1 2027-04-13 meter 12000 h {
  liner TwoLayer12
  scope panels 1 to 2 of run 2
  fitting temperature 12 degC
  by "Alpha"
}`,
  );
  expect(workPack(done.estate, theJob(done, 'J2'), { asOf: day('2027-04-14') }).restsOn).toBeUndefined();
});

test('whichever job is asked for first, each finds what those before it leave; what an earlier one plans is known to the order and to a comparison', () => {
  const third = `
job J3 {
  conveyor DG1
  window 2027-11-01 to 2027-11-12
  reline run 2
  crews Alpha
  access units MP1
  lift limit 250 kg
}`;
  const made = (first: string): ReturnType<typeof read> =>
    estate(first, 'reline panels 1 to 2 of run 1', third);
  const there = (analysis: ReturnType<typeof read>, name: string): readonly (number | undefined)[] => {
    const job = theJob(analysis, name);
    const { stock } = jobsBefore(job, analysis.estate, day('2026-10-31')).store;
    return stock(job.conveyor.liner).map(({ count }) => count);
  };
  const [one, other] = [made('reline panel 1 of run 2'), made('reline panel 1 of run 2')];
  const names = ['J1', 'J2', 'J3'];
  const forward = names.map((name) => there(one, name));
  expect([...names].reverse().map((name) => there(other, name))).toEqual([...forward].reverse());
  expect(new Set(forward.map((each) => each.join())).size).toBe(3);
  // J1 takes two of the six, or all; J2 three of what is left.
  const [before, after] = [made('reline panel 1 of run 2'), made('reline run 1')];
  const bought = jobEffects(before.estate, after.estate, ({ name }) => name === 'J2', day('2026-10-31'));
  const own = (analysis: ReturnType<typeof read>): string =>
    workPack(analysis.estate, theJob(analysis, 'J2'), { asOf: day('2026-10-31') })
      .cutLists[0]?.toBuy.map(({ length, count }) => `${count} × ${(length / 1000).toFixed(2)} m`)
      .join(', ') ?? '';
  expect(own(after)).not.toBe(own(before));
  expect(bought).toContainEqual({
    on: 'job J2, to buy of TwoLayer12',
    before: own(before) || 'nothing',
    after: own(after) || 'nothing',
  });
});
