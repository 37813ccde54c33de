// How the liner stands at the window stands on page 1 of a pack, with the numbers of the report of the same day.

import { expect, test } from 'vitest';
import { percent } from '../../../src/domain/decision/option-setting.js';
import type { Job } from '../../../src/domain/model/job.js';
import { riskText } from '../../../src/generators/remaining-life/decision-words.js';
import { remainingLife, type ConveyorLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, tarnholt } from '../estate.js';

const estate = tarnholt();
const asOf = day('2026-10-31');
const report = remainingLife(estate, { asOf, track: false });

function packed(
  name: string,
  change: (job: Job) => Job = (job) => job,
): { life: ConveyorLife; pack: WorkPack } {
  const job = estate.jobs.find((each) => each.name === name);
  const life = report.conveyors.find(({ conveyor }) => conveyor === job?.conveyor);
  if (!job || !life?.decision) throw new Error(`no decision for ${name}`);
  return { life, pack: workPack(estate, change(job), { asOf, decision: life.decision }) };
}

test.each(['DG1_Winter27', 'SL4_Spring27'])('%s says what the report’s row of its outage says', (name) => {
  const { life, pack } = packed(name);
  const row = life.decision?.outages.find((outage) => outage.name === pack.window?.name);
  if (!row) throw new Error('no such outage');
  expect(pack.standing).toMatchObject({
    day: pack.window?.from,
    condemn: row.condemn,
    contact: row.contact,
    condemnSeen: row.condemnSeen,
    contactSeen: row.contactSeen,
  });
  const html = workPackHtml(pack);
  const page1 = html.slice(0, html.indexOf('<h2'));
  for (const chance of [row.condemn, row.contact])
    expect(page1).toContain(percent(chance).replace('<', '&lt;'));
  expect(page1).toContain(life.decision?.governing?.place);
});

test('DG1’s words stand in the report too', () => {
  const { life, pack } = packed('DG1_Winter27');
  const { condemn, contact } = pack.standing ?? { condemn: NaN, contact: NaN };
  expect(life.decision?.outages[0]?.name).toBe('Winter27');
  expect(riskText(life)).toContain(`${percent(condemn)} by `);
  expect(riskText(life)).toContain(`steel ${percent(contact)}`);
});

test('a job that leaves out what governs says so, and one that renews it says that', () => {
  const whole = packed('DG1_Winter27').pack;
  const part = packed('SL4_Spring27').pack;
  expect(whole.standing?.governing?.covered).toBe(true);
  expect(workPackHtml(whole)).toContain('This job renews it.');
  expect(part.standing?.governing).toMatchObject({ run: 1, covered: false });
  expect(workPackHtml(part)).toContain('THIS JOB DOES NOT RENEW IT.');
});

test('a window that is no outage takes the chances of its own first day', () => {
  const { life, pack } = packed('DG1_Winter27', (job) => {
    if (!job.window) throw new Error('no window');
    const { from, to, origin } = job.window;
    return { ...job, window: { from: { ...from, day: day('2027-01-11') }, to, origin } };
  });
  expect(pack.standing?.day).toBe('2027-01-11');
  expect(pack.standing?.condemn).toBe(life.decision?.chancesOn(day('2027-01-11')).condemn);
  // Before the outage, so no likelier than on its first day.
  expect(pack.standing?.condemn).toBeLessThan(packed('DG1_Winter27').pack.standing?.condemn ?? 0);
});

test('without a forecast nothing is said', () => {
  const job = estate.jobs[0];
  if (!job) throw new Error('no job');
  const made = workPack(estate, job, { asOf });
  expect(made.standing).toBeUndefined();
  expect(workPackHtml(made)).not.toContain('chance of the condemn limit');
});
