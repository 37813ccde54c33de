import { describe, expect, test } from 'vitest';
import { codesIn, findingsIn, messageOf } from './findings-in.js';

const round = (date: string, meter: number, rows: string): string =>
  `\ninspection DG1 ${date} meter ${meter} h {\n  gauge ultrasonic ± 0.2 mm\n  ${rows}\n}`;

describe('remaining life by hand', () => {
  test('counts at the larger of the two rates, with the numbers an inspector gets', () => {
    // New 12 mm; 9.6 mm at 6000 h, 7.6 mm at 8500 h: LT = 4.4/8500 = 0.518, ST = 2.0/2500 = 0.80 mm/1000 h. Limit 3 mm:
    // (7.6 − 3)/0.80 = 5750 h. Spring26 is 2026-04-13, 231 days from 2025-08-25 at 110 h/week: 3630 h. So nothing to say.
    const twice = (last: string): string =>
      round('2025-03-03', 6000, 'P1 thickness 9.6 mm') + round('2025-08-25', 8500, `P1 thickness ${last} mm`);
    expect(codesIn('estate', twice('7.6'))).toEqual([]);
    // 5.6 mm: ST = 4.0/2500 = 1.60, (5.6 − 3)/1.60 = 1625 h; Autumn25 is 2025-09-15, 330 h away.
    expect(codesIn('estate', twice('5.6'))).toEqual(['TL505']);
  });

  test('says how long and which outage, when the limit comes first', () => {
    // 10 mm gone... 12 − 4.0 = 8.0 mm in 9300 h is 0.860 mm/1000 h; 1.0 mm left is 1163 h. Spring26 comes 2970 h later.
    expect(messageOf('TL501', 'estate', round('2025-10-06', 9300, 'P1 thickness 4.0 mm'))).toBe(
      'P1 of DG1 has 4 mm left and loses 0.86 mm/1000 h (long-term): 1163 h to its condemn limit, and Spring26 (2026-04-13) is 2970 h away.',
    );
  });

  test('a look that is due counts from what was seen last, in hours as the meter has them', () => {
    const seen = (change: string): string =>
      round('2024-09-09', 3600, 'P1 thickness 9.0 mm') +
      round('2025-03-10', 6000, 'P1 thickness 8.6 mm') +
      `${change}` +
      round('2025-06-09', 7400, 'P1 colour teal') +
      '\nserviced DG1 2026-03-02 gearbox oil changed';
    // 266 days at 110 h/week are 4180 h, whatever the speed: the wear of an hour at 9 rpm is half of one at 18 rpm.
    for (const change of ['', '\nduty DG1 from 2025-04-07 speed 9 rpm'])
      expect(messageOf('TL502', 'estate', seen(change))).toMatch(
        /^DG1 has run about 4180 h since P1 was seen by its colour on 2025-06-09, more than /,
      );
  });

  test('counts from today where the reading is older', () => {
    // The same reading; a month later, 31 days at 110 h/week have run: 487 h of the 1163 h, and Spring26 is 2483 h away.
    const old = round('2025-10-06', 9300, 'P1 thickness 4.0 mm');
    const silent = (on: string, meter: number): string => old + round(on, meter, 'P1 not seen "covers on"');
    expect(messageOf('TL501', 'estate', silent('2025-11-06', 9787))).toMatch(
      /^P1 of DG1 was read on 2025-10-06 to have 4 mm left and loses 0\.86 mm\/1000 h \(long-term\): 676 h to its condemn limit, and Spring26 \(2026-04-13\) is 24\d\d h away\.$/,
    );
    expect(messageOf('TL501', 'estate', silent('2026-01-20', 10963))).toMatch(
      /its condemn limit was passed 50[01] h ago/,
    );
  });

  test('a slip of the unit, or a reading told as grown, starts no rate', () => {
    const three = (middle: string): string =>
      round('2024-09-09', 3600, 'P1 thickness 10.9 mm') +
      round('2025-03-03', 6000, `P1 thickness ${middle}`) +
      round('2025-08-25', 8500, 'P1 thickness 9.1 mm');
    expect(codesIn('estate', three('10.1 mm'))).toEqual([]);
    expect(codesIn('estate', three('9.4 cm'))).toEqual(['TL335']);
    expect(codesIn('estate', three('14.5 mm'))).toEqual(['TL305']);
    expect(codesIn('estate', three('12.2 mm'))).toEqual(['TL306']);
  });

  test('a spot read once goes by its neighbours that were read since, unless it was worse than they', () => {
    // 12 mm new; 10.0 mm at 3600 h is 3 mm at 16 200 h. 1200 h from 15 000 h on; Spring27 (2027-04-12) is 34 weeks of 110 h away.
    const records = (spot: string): string =>
      round('2024-09-09', 3600, `P1 thickness 10.1 mm\n  at 5 m clock 7:30 thickness ${spot} mm`) +
      round('2026-08-17', 15_000, 'P1 thickness 8.0 mm');
    expect(codesIn('estate', records('10.0'))).not.toContain('TL501');
    expect(codesIn('estate', records('9.4'))).toContain('TL501');
    const alone =
      round('2024-09-09', 3600, 'at 5 m clock 7:30 thickness 10.0 mm') +
      round('2026-08-17', 15_000, 'P1 thickness 8.0 mm');
    expect(codesIn('estate', alone)).toContain('TL501');
  });

  test('what was seen after the last thickness overrules it', () => {
    // 9.0 mm at 8500 h: 0.353 mm/1000 h, 17 000 h left, nothing to say. Teal at 9300 h: at most 6 mm left, 3 mm in 800 h is
    // 3.75 mm/1000 h: 800 h, and Spring26 is 2970 h away.
    const before = round('2025-08-25', 8500, 'P1 thickness 9.0 mm');
    expect(codesIn('estate', before)).not.toContain('TL501');
    expect(messageOf('TL501', 'estate', before + round('2025-10-06', 9300, 'P1 colour teal'))).toContain(
      'P1 of DG1 has at most 6 mm left',
    );
    // In one round with the thickness, whatever stands first; and a thickness read later counts again.
    const near = 'P1 thickness 4.0 mm';
    expect(codesIn('estate', round('2025-10-06', 9300, near))).toContain('TL501');
    for (const rows of [`P1 trough showing\n  ${near}`, `${near}\n  P1 trough showing`])
      expect(codesIn('estate', round('2025-10-06', 9300, rows))).not.toContain('TL501');
    const later = round('2025-08-25', 8500, 'P1 colour teal') + round('2025-10-06', 9300, near);
    expect(codesIn('estate', later)).toContain('TL501');
    // Steel is told by its own rule; nothing is reckoned forward from a liner that is not there.
    const worn = codesIn('estate', before + round('2025-10-06', 9300, 'P1 trough showing'));
    expect(worn.filter((code) => ['TL501', 'TL502', 'TL503'].includes(code))).toEqual([]);
  });

  test('a difference within the error of two readings raises no alarm', () => {
    // 0.5 mm in 220 h would be 2.3 mm/1000 h, but two readings of ± 0.2 mm differ by as much from error alone.
    expect(
      codesIn(
        'estate',
        round('2025-03-03', 6000, 'P1 thickness 9.6 mm') + round('2025-03-17', 6220, 'P1 thickness 9.1 mm'),
      ),
    ).toEqual(['TL313']);
  });

  test('one reading that shows hardly any wear is no rate', () => {
    expect(codesIn('estate', round('2024-01-15', 90, 'P1 thickness 11.7 mm'))).toEqual([]);
  });

  test('a liner that is planned to come out is not asked to be ordered for', () => {
    const late = round('2027-03-08', 17000, 'P1 thickness 3.4 mm');
    expect(codesIn('estate', late)).toEqual(['TL503']);
    expect(
      codesIn(
        'estate',
        `${late}\njob J1 {\n  conveyor DG1\n  window 2027-05-24 to 2027-05-28\n  reline all\n  crews Alpha\n}`,
      ),
    ).not.toContain('TL503');
  });
});

describe('colours', () => {
  test('bound the rate: the limit is out of reach while they keep it away, and not longer', () => {
    // Ivory at 3600 h: at most 6/3600; nine of twelve mm are gone at 1.5 × 3600 = 5400 h at the earliest.
    const seen = (date: string, meter: number): string =>
      round('2024-09-09', 3600, 'P1 colour ivory') + round(date, meter, 'P1 colour teal');
    expect(codesIn('estate', seen('2025-01-06', 5390))).toEqual([]);
    expect(codesIn('estate', seen('2025-01-06', 5410))).toEqual(['TL504']);
  });

  test('a thickness on the same liner is better than a colour', () => {
    expect(
      codesIn(
        'estate',
        round('2024-09-09', 3600, 'P1 thickness 9.6 mm') + round('2025-03-10', 6200, 'P1 colour teal'),
      ),
    ).toEqual([]);
  });
});

describe('wear that speeds up', () => {
  const looks = (...rows: readonly (readonly [string, number, string])[]): string =>
    rows.map(([date, meter, text]) => round(date, meter, text)).join('');
  const steady = looks(
    ['2024-09-09', 3600, 'P1 thickness 10.5 mm\n  P2 thickness 10.9 mm'],
    ['2025-03-10', 6200, 'P1 thickness 9.4 mm\n  P2 thickness 10.1 mm'],
  );

  test('a doubling in the last interval is seen, though the average since fitting has not doubled', () => {
    // 0.42 mm/1000 h until 6200 h, then 0.85: the average since fitting is 4.8/8800 = 0.55, and 0.85 is not twice that.
    const doubled = looks(['2025-09-08', 8800, 'P1 thickness 7.2 mm']);
    expect(messageOf('TL505', 'estate', steady + doubled)).toBe(
      'P1 of DG1 lost 0.85 mm/1000 h since 2025-03-10, and 0.42 mm/1000 h until then.',
    );
  });

  test('several spots together are told once, for the conveyor', () => {
    const both = looks(['2025-09-08', 8800, 'P1 thickness 7.2 mm\n  P2 thickness 8.5 mm']);
    expect(codesIn('estate', steady + both)).toEqual(['TL510']);
    expect(messageOf('TL510', 'estate', steady + both)).toMatch(
      /^DG1 has worn about 2\.0 times as fast \(90 %: 1\.\d to 2\.\d\) from 2025-03-10 to 2025-09-08 as until then, at 2 of 2 spots\.$/,
    );
  });

  test('a spot that goes beyond the others is still told', () => {
    const far = looks(['2025-09-08', 8800, 'P1 thickness 4.8 mm\n  P2 thickness 8.5 mm']);
    expect(
      codesIn('estate', steady + far)
        .filter((code) => code === 'TL505' || code === 'TL510')
        .sort(),
    ).toEqual(['TL505', 'TL510']);
  });

  test('one spot by itself is told as one spot', () => {
    const one = looks(['2025-09-08', 8800, 'P1 thickness 6.0 mm\n  P2 thickness 9.2 mm']);
    expect(codesIn('estate', steady + one)).toEqual(['TL505']);
  });

  test('steady wear, and a whole look that reads a little off, stay silent', () => {
    expect(
      codesIn('estate', steady + looks(['2025-09-08', 8800, 'P1 thickness 8.1 mm\n  P2 thickness 9.1 mm'])),
    ).toEqual([]);
  });

  test('a liner fitted since starts afresh', () => {
    const relined =
      '\nreline DG1 2025-03-17 meter 6300 h {\n  liner TwoLayer12\n}' +
      looks(['2025-09-08', 8800, 'P1 thickness 9.0 mm\n  P2 thickness 9.2 mm']);
    expect(codesIn('estate', steady + relined)).not.toContain('TL510');
  });
});

describe('an expected life', () => {
  test.each(['± 30 %', '± 5 %', '± 4000 h', ''])('of 14000 h %s says something', (bounds) => {
    expect(codesIn('liner', `expected life 14000 h ${bounds}`)).toEqual([]);
  });

  test.each(['± 0 %', '± 0 h', '± 100 %', '± 1000 %', '± 20000 h'])('of 14000 h %s does not', (bounds) => {
    expect(codesIn('liner', `expected life 14000 h ${bounds}`)).toEqual(['TL511']);
  });
});

test('spots on two liners that show their last colour are told each with its own colour and limit', () => {
  const lines = [
    '',
    'liner Other8 {',
    '  layer amber 4 mm',
    '  layer coal 4 mm',
    '  panel length 1200 mm',
    '  condemn at 2 mm',
    '}',
    'inspection DG1 2024-09-09 meter 3600 h {',
    '  P1 colour ivory',
    '  P2 colour amber',
    '}',
    'inspection DG1 2025-03-10 meter 6200 h {',
    '  P1 colour teal',
    '  P2 colour coal',
    '}',
  ].join('\n');
  const told = findingsIn('estate', lines, {
    conveyor: 'liner TwoLayer12\nliner Other8 run above Gate',
  }).filter(({ code }) => code === 'TL504');
  expect(told.map(({ message }) => message)).toEqual([
    expect.stringMatching(/^P1 of DG1 shows teal; .* limit of 3 mm /),
    expect.stringMatching(/^P2 of DG1 shows coal; .* limit of 2 mm /),
  ]);
});
