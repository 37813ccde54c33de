// What stands open on the conveyor of a job, in own words too: what the job does there is told, and what its steps take off or rely on
// is never said to be untouched. The run above the gate is relined: 7.5 m to 12 m.

import { expect, test } from 'vitest';
import { crewSheetHtml } from '../../../src/generators/work-pack/crew-sheet.js';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { estateOf, works } from '../remaining-life/story.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, theJob } from '../estate.js';

function pack(
  found: string,
  reline = 'run above Gate',
  more: Parameters<typeof liftConveyor>[0] = {},
): WorkPack {
  const looked = `inspection DG1 2026-10-01 meter 9000 h {\n${found}\n}`;
  const text = liftConveyor({ ...more, more: looked }).replace('reline run above Gate', `reline ${reline}`);
  const analysis = read(text);
  expect(analysis.findings.filter(({ severity, code }) => severity === 'error' && code < 'TL2')).toEqual([]);
  return workPack(analysis.estate, theJob(analysis), { asOf: day('2026-10-31') });
}
const said = (line: string, reline?: string): string | undefined => {
  const printed = workPackMarkdown(pack(line, reline)).split('\n');
  const row = printed.findIndex((each) => each.includes('Found and still open'));
  return printed[row + 4]?.split(' | ')[3];
};

test.each([
  ['hold-down worn at 9.5 m', 'comes off: a new one goes back, see the materials'],
  ['finding hold-down at 9.5 m slight "shoe split"', 'comes off: a new one goes back, see the materials'],
  ['hold-down worn at 3.5 m', 'does not touch it: settle who does'],
  ['finding cover at 9 m slight "seal gone"', 'comes off: look at it before it goes back'],
  ['hatch stuck at 9 m', 'comes off: look at it before it goes back'],
  ['hatch stuck at 3 m', 'does not touch it: settle who does'],
  ['trough dented at 9 m', 'is laid bare: look at it again while nothing lies over it'],
  ['finding trough at 9 m slight "bulged"', 'is laid bare: look at it again while nothing lies over it'],
  ['finding trough at 3 m slight "bulged"', 'does not touch it: settle who does'],
  ['finding liner from 6 m to 9 m slight "rattles"', 'its place is relined: look at it again'],
  ['finding spiral at 9 m slight "scored"', 'its place is relined: look at it again'],
  ['finding from 6 m to 9 m slight "cable tray lid"', 'lies where the trough is opened: look at it again'],
  ['finding from 2 m to 3 m slight "cable tray lid"', 'does not touch it: settle who does'],
  ['panel torn at 9 m', 'takes it away'],
])('%s: the job %s', (line, words) => expect(said(line)).toBe(words));

test('of a gate that is to hold back, whatever is open is confirmed by a competent person, at its step too', () => {
  const creeps = 'finding gate at Gate serious "creeps open under load"';
  expect(said(creeps, 'run below Gate')).toBe(
    'relies on it as a barrier: a competent person confirms first that it holds',
  );
  expect(said('gate leaking at Gate', 'run below Gate')).toContain('relies on it as a barrier');
  const made = pack(creeps, 'run below Gate');
  const shut = made.steps.find(({ action }) => action === 'gate shut');
  expect(shut?.measures.join(' ')).toContain(
    'creeps open under load (open since 2026-10-01). A competent person',
  );
  expect(crewSheetHtml(made)).toContain('A competent person confirms that it holds');
  // Relined above the gate, nobody is below it, shut or not.
  expect(said(creeps)).not.toContain('relies on it');
});

test('a block that is bent, worn or missing is on the list of materials, and no other; a later job finds it new', () => {
  const blocks = ({ materials }: WorkPack): number | undefined =>
    materials.find(({ what }) => what.startsWith('hold-down'))?.needed;
  expect(blocks(pack('hold-down worn at 9.5 m left side'))).toBe(1);
  expect(blocks(pack('hold-down loose at 9.5 m'))).toBeUndefined();
  expect(blocks(pack('hold-down worn at 3.5 m'))).toBeUndefined();
  const later =
    '}\njob J0 {\nconveyor DG1\nwindow 2027-01-11 to 2027-01-15\nreline run above Gate\ncrews Alpha\n';
  const second = pack(`hold-down worn at 9.5 m left side\n${later}`);
  expect(blocks(second)).toBeUndefined();
  expect(second.conditions[0]?.before).toBe('J0');
});

test('the gas that is warned of is that of the product, and of both kinds where it is not declared', () => {
  const air = (conveyor: string): string =>
    pack('gearbox noise slight', undefined, { conveyor })
      .cautions.flatMap(({ text }) => text)
      .join(' ');
  for (const [product, wet, heaps] of [
    ['conveys "dewatered digestate"', true, false],
    ['conveys "compost fines"', false, true],
    ['conveys "digestate compost"', true, true],
    ['conveys "screenings"', true, true],
    ['', true, true],
  ] as const) {
    expect(air(product).includes('hydrogen sulphide numbs'), product).toBe(wet);
    expect(air(product).includes('Composting material'), product).toBe(heaps);
    expect(air(product), product).toContain('heavier than air and lies in the low end');
  }
});

test('wood and bark are warned of by what they do, and not as sludge', () => {
  const said = (conveyor: string): string =>
    pack('gearbox noise slight', undefined, { conveyor })
      .cautions.flatMap(({ text }) => text)
      .join(' ');
  for (const product of ['wood and bark rejects', 'sawdust']) {
    const text = said(`conveys "${product}"`);
    expect(text).toContain('carbon monoxide');
    expect(text).toContain('Damp wood and bark carry mould');
    expect(text).not.toMatch(/sludge|digestate/i);
  }
  expect(said('conveys "digestate with bark"')).toMatch(/hydrogen sulphide numbs.*carbon monoxide/s);
  expect(said('conveys "dewatered digestate"')).not.toContain('carbon monoxide');
});

test('what lifts over other work of the order is named, too', () => {
  const machine = works
    .replace(
      '  point P1',
      '  lifting point L1 at 1 m limit 500 kg\n  lifting point L2 at 5 m limit 500 kg\n  point P1',
    )
    .concat('job J1 { conveyor DG1 outage Spring26 reline panels 1 to 1 of run 1 order {\n');
  const gear = (steps: string): string => {
    const estate = estateOf(`${machine}${steps}} }`);
    const facts = workPack(estate, estate.jobs[0]!).conveyor.facts;
    return facts.find(({ name }) => name === 'To lift with')?.value ?? '';
  };
  const fit = 'isolate\nfit panels 1 to 1 of run 1\n';
  expect(gear(fit)).not.toContain('L2');
  expect(gear(`${fit}other work from 4.5 m to 5.2 m takes 1 h "spiral hung up"\n`)).toMatch(/L1 .*L2 /);
});

test('a crane of the plant that the job does not name is an open point where something heavy is lifted', () => {
  const gear = (job: string): string =>
    pack('gearbox noise slight', undefined, { job }).conveyor.facts.find(
      ({ name }) => name === 'To lift with',
    )?.value ?? '';
  expect(gear('change screw')).not.toContain('not named by this job');
  const without = read(liftConveyor({ job: 'change screw' }).replace(/ *crane C1 at .*\n/, ''));
  const facts = workPack(without.estate, theJob(without), { asOf: day('2026-10-31') }).conveyor.facts;
  expect(facts.find(({ name }) => name === 'To lift with')?.value).toContain(
    'crane C1, mobile crane, of the plant: not named by this job, settle whether it lifts here',
  );
});

test('the serious ones stand in front', () => {
  const order = pack(
    'finding hold-down at 9.5 m slight "a"\nfinding liner at 9 m serious "b"\nfinding trough at 8.5 m urgent "c"\nfinding brace at 10 m serious "d"',
  );
  expect(order.conditions.map(({ what }) => what.slice(-1))).toEqual(['c', 'b', 'd', 'a']);
});
