// What lies on the shelf need not be ordered: 4 panels and their bolts above the gate by the layout worked out by hand
// (5.2 to 9.6 m in panels of 1.2 m: 3 whole and one of 0.8 m), counted in time, too few, or too late.

import { expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';

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
