// What lies on the shelf need not be ordered: 4 panels and their bolts above the gate by the layout worked out by hand
// (5.2 to 9.6 m in panels of 1.2 m: 3 whole and one of 0.8 m), counted in time, too few, or too late.

import { expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { exampleOf } from '../../src/validation/example.js';
import { orderComesTooLate } from '../../src/validation/rules/jobs/order-comes-too-late.js';

const told = (shelf: string): string | undefined =>
  analyse([
    {
      uri: 'a.trough',
      text: `
plant Tarnholt {
  duty 112 h/week
  outage Spring27 2027-04-12 to 2027-04-23
  crew Alpha 4 people
  lead time liner 10 week
${shelf}
}
liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm
  condemn at 3 mm
  joint butted
}
screw Spiral300 {
  shaftless
  outside diameter 300 mm
  pitch 300 mm
}
conveyor DG1 {
  plant Tarnholt
  length 9.6 m
  incline 5 deg
  trough inside radius 175 mm side height 150 mm plate 4 mm
  screw Spiral300
  liner TwoLayer12
  drive at head power 4 kW speed 18 rpm
  break Gate at 4.8 m to 5.2 m slide gate allowance 60 mm
  access Floor at 0 m to 9.6 m ground
  point P1 at 6 m clock 5:00
}
inspection DG1 2027-03-01 meter 8000 h {
  P1 colour ivory
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
}
`,
    },
  ]).findings.find(({ code }) => code === 'TL446')?.message;

it('is silent where the shelf has every panel, and says what is short where it has not', () => {
  expect(told('')).toMatch(/had to be ordered by 2027-02-01/);
  expect(told('  on the shelf TwoLayer12 4 panels counted 2027-02-20')).toBeUndefined();
  expect(told('  on the shelf TwoLayer12 3 panels counted 2027-02-20')).toMatch(
    /on the shelf: 3 panels counted 2027-02-20; 4 panels needed, 1 short\.$/,
  );
  // A count of a day to come is not known today.
  expect(told('  on the shelf TwoLayer12 4 panels counted 2027-03-20')).toMatch(/no TwoLayer12 on the shelf/);
});

it('where the bolts come last, the reason names them and not the liner that is there', () => {
  const sound = exampleOf(orderComesTooLate, 'good').text;
  const told = (more: string): readonly string[] =>
    analyse([
      { uri: 'a.trough', text: sound.replace('  ordered TwoLayer12', `  ${more}\n  ordered TwoLayer12`) },
    ]).findings.flatMap(({ code, message }) => (code === 'TL528' ? [message] : []));
  expect(told('lead time fixings 4 weeks')).toEqual([]);
  const late = 'lead time fixings 6 weeks';
  expect(told(late)).toEqual([
    'Job J9 starts on 2025-04-07, and its bolts are there on 2025-04-14 (fixings 6 weeks from an order on 2025-03-03; liner ' +
      'ordered already: 20 panels of TwoLayer12, ordered on 2025-02-03 and promised for 2025-04-07).',
  ]);
  expect(told(`${late}\n  on the shelf TwoLayer12 400 fixings counted 2025-03-01`)).toEqual([]);
});

it('a job that is written waits for its own panels, not for those of the whole conveyor', () => {
  const text = exampleOf(orderComesTooLate, 'good')
    .text.replace('20 panels', '2 panels')
    .replace('reline run above Gate', 'reline panels 1 to 2 of run above Gate')
    .replace(
      'crew Alpha 4 people\n  outage Spring25 2025-04-07',
      'crew Alpha 4 people\n  lead time liner 12 weeks\n  outage Spring25 2025-04-07',
    );
  const { estate } = analyse([{ uri: 'a.trough', text }]);
  const life = remainingLife(estate, { track: false }).conveyors.find(
    ({ conveyor }) => conveyor.name === 'DG9',
  );
  expect(life?.decision?.jobs.map(({ arrives, words }) => [arrives?.inTime, words])).toEqual([
    [true, expect.stringMatching(/; its liner can be there by 2025-04-07$/)],
  ]);
});
