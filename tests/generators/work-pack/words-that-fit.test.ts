// Words of a pack that have to fit the machine they are printed for: how the pieces of a spiral and the panels are joined, how fast it
// turns now, and what there is to lift with.

import { expect, test } from 'vitest';
import { workPackMarkdown } from '../../../src/generators/work-pack/markdown.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { day, liftConveyor, read, theJob, type EstateFacts } from '../estate.js';

function pack(
  facts: EstateFacts,
  change: (text: string) => string = (text) => text,
  asOf = '2026-10-31',
): WorkPack {
  const analysis = read(change(liftConveyor(facts)));
  return workPack(analysis.estate, theJob(analysis), { asOf: day(asOf) });
}
const check = ({ steps }: WorkPack, action: string): string | undefined =>
  steps.find((step) => step.action === action)?.check;
const work = ({ steps }: WorkPack, action: string): string =>
  steps.find((step) => step.action === action)?.work ?? '';
const fact = ({ conveyor }: WorkPack, name: string): string | undefined =>
  conveyor.facts.find((each) => each.name === name)?.value;

test('bolted joints of a spiral have no welds to inspect, even where something else is hot', () => {
  const bolted = pack({ job: 'change screw bolted joints' });
  expect(check(bolted, 'insert screw')).toBe(
    'Joints in line, bolts of the joints tight as the maker says, spiral held.',
  );
  expect(workPackMarkdown(bolted)).not.toContain('welds inspected');
  expect(check(pack({ job: 'change screw' }), 'insert screw')).toContain('welds inspected');
});

test('what an order renews beyond its job is said where the scope is', () => {
  const order =
    'order {\n strip run above Gate\n clean run above Gate\n fit run above Gate starting at head\n }';
  const said = (job: string): string =>
    pack({ job: order }, (text) => text.replace('reline run above Gate', job)).scope.join(' ');
  expect(said('reline panels 2 to 3 of run above Gate')).toContain('The order works on panels 1 and 4 to ');
  expect(said('reline run above Gate')).not.toContain('The order works on');
});

test('panels with a gap are not tapped tight', () => {
  const gap = (text: string): string => text.replace('joint butted', 'joint gap 8 mm');
  expect(work(pack({}), 'fit')).toContain('each panel tapped tight to the one before');
  expect(work(pack({}, gap), 'fit')).toContain(
    'each panel set with the gap of 8 mm to the one before, then drilled',
  );
  expect(workPackMarkdown(pack({}, gap))).not.toContain('tapped tight');
});

test('the speed is that of the newest record of the duty, on the day of the pack', () => {
  const more = 'duty DG1 from 2026-03-04 84 h/week speed 14 rpm\nduty DG1 from 2026-05-01 60 h/week';
  expect(fact(pack({}), 'Drive')).toContain('18 rpm');
  expect(fact(pack({}), 'Drive')).not.toContain('declared');
  expect(fact(pack({ more }), 'Drive')).toBe(
    'at the head, 4 kW, 14 rpm since 2026-03-04 (18 rpm as declared)',
  );
  expect(fact(pack({ more }, undefined, '2026-03-03'), 'Drive')).toBe('at the head, 4 kW, 18 rpm');
});

test('what lifts is named, and where nothing is declared it is an open point', () => {
  const heavy = (text: string): string => text.replace('panel length 1000 mm', 'panel length 3000 mm');
  const bare = (text: string): string =>
    heavy(text)
      .replace(/ *lifting point.*\n/, '')
      .replace(/ *crane C1 at .*\n/, '');
  const lifting = ({ permits }: WorkPack): string =>
    permits.find(({ name }) => name === 'Lifting')?.why ?? '';
  const named = pack({}, heavy);
  expect(fact(named, 'To lift with')).toMatch(/^LP1 at 9\.00 m, at most 400 kg; crane C1/);
  const told = (each: WorkPack): readonly string[] =>
    each.warnings.flatMap(({ message }) => (message.includes('that lifts') ? [message] : []));
  expect(told(named)).toEqual([]);
  expect(told(pack({}, bare))).toEqual([
    expect.stringMatching(/^A panel of about 2\d(\.\d)? kg is more than one person should lift/) as unknown,
  ]);
  expect(lifting(pack({}, bare))).toContain('What lifts there is not written: name it before the job.');
  // Light panels ask for no gear.
  expect(told(pack({}, (text) => bare(text).replace('3000 mm', '1000 mm')))).toEqual([]);
  // A point far from the stretch is none.
  expect(
    lifting(
      pack({}, (text) =>
        heavy(text)
          .replace('lifting point LP1 at 9 m', 'lifting point LP1 at 1 m')
          .replace(/ *crane C1 at .*\n/, ''),
      ),
    ),
  ).toContain('not written');
});
