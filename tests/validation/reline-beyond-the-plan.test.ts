// A reline of the stop that a job was planned for is held against that job; one of another time is not.

import { describe, expect, test } from 'vitest';
import { inSoundEstate } from '../../src/validation/example.js';
import { analyse } from '../../src/analysis/analyse.js';

/** The job of the sound estate relines run 3, above the gate, from 2027-04-12 to 2027-04-23. */
function told(reline: string): readonly string[] {
  const text = inSoundEstate('estate', reline, { job: '' });
  return analyse([{ uri: 'memory:/a.trough', text }])
    .findings.filter(({ code }) => code === 'TL530')
    .map(({ message }) => message);
}

const reline = (date: string, scope: string): string =>
  `reline DG1 ${date} meter 18000 h {\n  liner TwoLayer12\n${scope}}`;

describe('a reline beside its job', () => {
  test('may do less, and tells what it says beyond', () => {
    expect(told(reline('2027-04-15', '  scope run 3\n'))).toEqual([]);
    expect(told(reline('2027-04-15', '  scope panels 1 to 2 of run 3\n'))).toEqual([]);
    expect(told(reline('2027-04-15', '  scope run 2\n  scope run 3\n'))).toEqual([
      'This reline of DG1 takes in 1.50 m to 7.00 m of run 2, which J1 for the same stop did not plan.',
    ]);
    expect(told(reline('2027-04-30', ''))).toHaveLength(1);
  });

  test('of another time is a job of its own', () => {
    expect(told(reline('2027-03-01', '  scope run 2\n'))).toEqual([]);
    expect(told(reline('2027-05-08', '  scope run 2\n'))).toEqual([]);
  });
});
