import { describe, expect, test } from 'vitest';
import { codesIn, findingsIn, messageOf } from './findings-in.js';

const round = (
  date: string,
  meter: number,
  rows: string,
  head = 'view downstream\n  gauge ultrasonic ± 0.2 mm',
): string => `\ninspection DG1 ${date} meter ${meter} h {\n  ${head}\n  ${rows}\n}`;
const reline = (date: string, meter: number, more = ''): string =>
  `\nreline DG1 ${date} meter ${meter} h {\n  liner TwoLayer12${more}\n}`;

describe('the meter', () => {
  test('one wrong reading is told once, at that reading, not at its neighbours', () => {
    const wrong =
      round('2024-09-09', 3600, 'P1 thickness 10.9 mm') +
      round('2024-12-09', 490, 'P1 thickness 10.4 mm') +
      round('2025-03-10', 6300, 'P1 thickness 9.8 mm');
    expect(codesIn('estate', wrong)).toEqual(['TL301']);
    expect(messageOf('TL301', 'estate', wrong)).toContain('490 h');
  });

  test('a declared meter change explains a drop', () => {
    const changed =
      round('2024-09-09', 3600, 'P1 thickness 10.9 mm') +
      '\nmeter change DG1 2024-09-16 from 3710 h to 0 h' +
      round('2025-03-10', 2700, 'P1 thickness 9.8 mm');
    expect(codesIn('estate', changed)).toEqual([]);
  });

  test('around the clock is possible, more is not', () => {
    // 2024-01-08 to 2024-02-07 is 30 days: 720 h, and a day on top because records are dated to the day.
    expect(codesIn('estate', round('2024-02-07', 744, 'P1 thickness 11.9 mm'))).toEqual([]);
    expect(codesIn('estate', round('2024-02-07', 745, 'P1 thickness 11.9 mm'))).toEqual(['TL302']);
  });
});

describe('dates', () => {
  const looks =
    round('2024-09-09', 3600, 'P1 thickness 10.9 mm') + round('2025-03-10', 6200, 'P1 thickness 9.8 mm');

  test('work dated decades ahead is told, and is no day that anything is counted from', () => {
    expect(codesIn('estate', `${looks}\nserviced DG1 2052-03-11 gearbox oil changed`)).toEqual(['TL545']);
  });

  test('a commissioning that many records contradict is told once, one record before it at that record', () => {
    const late = (day: string): readonly string[] =>
      findingsIn('estate', `${looks}${round('2025-09-08', 9000, 'P1 thickness 8.7 mm')}`, {
        conveyor: `commissioned ${day} meter 0 h`,
      }).flatMap(({ code, message }) => (code === 'TL303' ? [message] : []));
    expect(late('2025-10-08')).toEqual([
      'DG1 is said to be commissioned on 2025-10-08, and 3 of its records are older: the first is of 2024-09-09.',
    ]);
    expect(late('2025-04-08')).toHaveLength(2);
    expect(late('2024-01-08')).toEqual([]);
  });

  test('two looks of one day with two meters are told as of one day', () => {
    const two =
      round('2024-09-09', 3600, 'P1 thickness 10.9 mm') + round('2024-09-09', 4471, 'P2 thickness 10.9 mm');
    expect(messageOf('TL302', 'estate', two)).toMatch(/: 871 h apart on one day\.$/);
  });
});

describe('readings against one another', () => {
  test('what grew is told with its panel, and with the line above where that says the same of another spot', () => {
    const looks = (first: string): string =>
      round('2024-09-09', 3600, 'P1 thickness 9.9 mm\n  P2 thickness 8.1 mm') +
      round('2025-03-10', 6200, `P1 thickness ${first} mm\n  P2 thickness 9.4 mm`);
    expect(messageOf('TL306', 'estate', looks('9.4'))).toMatch(
      /1\.3 mm more of the same liner, where about .* expected, on panel 2 of run 3.*; the line above, P1, says the same figure\.$/,
    );
    expect(messageOf('TL306', 'estate', looks('9.3'))).not.toContain('the line above');
  });

  test('a colour against a later thickness counts what the spot should have lost since', () => {
    // Teal means 6 mm at the most, ± 0.3 mm. 6.8 mm is 2.2 errors more, and 3 mm should be gone by then.
    const looks = (later: string, meter: number): string =>
      round('2024-09-09', 2400, 'P1 thickness 8.0 mm') +
      round('2024-12-09', 4000, 'P1 colour teal') +
      round('2025-09-08', meter, `P1 thickness ${later} mm`);
    expect(codesIn('estate', looks('6.8', 8000))).toContain('TL307');
    expect(codesIn('estate', looks('6.7', 8000))).not.toContain('TL307');
    expect(codesIn('estate', looks('6.8', 4020))).not.toContain('TL307');
  });

  test('thicker than before within 3σ√2 is error, beyond it is told', () => {
    // 3·0.2·√2 = 0.849 mm; in 40 h nothing is lost that a gauge sees, which TL313 says.
    const pair = (later: string): string =>
      round('2024-09-09', 3600, 'P1 thickness 10.0 mm') +
      round('2024-10-01', 3640, `P1 thickness ${later} mm`);
    expect(codesIn('estate', pair('10.8'))).toEqual(['TL313']);
    expect(codesIn('estate', pair('10.9'))).toEqual(['TL313', 'TL306']);
  });
  test('where it should have lost, two of them are enough once it lies four above the least loss', () => {
    // σ√2 = 0.283; 2 mm lost in 3600 h are 1.44 mm in 2600 h, and half of that is the least: 0.6 + 0.72 > 1.13, 0.5 is below 2σ√2.
    const pair = (later: string, meter = 6200): string =>
      round('2024-09-09', 3600, 'P1 thickness 10.0 mm') +
      round('2025-03-10', meter, `P1 thickness ${later} mm`);
    expect(codesIn('estate', pair('10.6'))).toEqual(['TL306']);
    expect(codesIn('estate', pair('10.5'))).toEqual([]);
    // 1700 h: 0.47 mm at the least, and 0.6 + 0.47 is below 1.13.
    expect(codesIn('estate', pair('10.6', 5300))).toEqual([]);
  });

  test('after a reline the new liner is no growth of the old one; a reline elsewhere explains nothing', () => {
    const pair = (between: string): string =>
      round('2024-09-09', 3600, 'P1 thickness 6.0 mm') +
      between +
      round('2025-03-10', 6200, 'P1 thickness 10.9 mm');
    expect(codesIn('estate', pair(reline('2024-10-07', 4050)))).toEqual([]);
    expect(codesIn('estate', pair(reline('2024-10-07', 4050, '\n  scope run 2')))).toEqual([]);
    expect(codesIn('estate', pair(reline('2024-10-07', 4050, '\n  scope run 3')))).toEqual(['TL306']);
  });

  test('a colour is an interval: only beyond its ends does it contradict a thickness', () => {
    // Second layer: nothing to 6 mm left; 5 % of 6 mm and 0.2 mm of reading make 3·0.36 = 1.08 mm of doubt at its upper end.
    const pair = (thickness: string): string =>
      round('2024-09-09', 3600, 'P1 colour teal') + round('2025-03-10', 6200, `P1 thickness ${thickness} mm`);
    expect(codesIn('estate', pair('7.0'))).toEqual([]);
    expect(codesIn('estate', pair('7.2'))).toEqual(['TL307']);
  });

  test('bare steel, and later a colour, is a contradiction too', () => {
    expect(
      codesIn(
        'estate',
        round('2024-09-09', 3600, 'P1 trough showing') + round('2025-03-10', 6200, 'P1 colour teal'),
      ),
    ).toEqual(['TL308']);
  });

  test('a coarse gauge is given more room than a fine one', () => {
    const with12 = (head: string): string =>
      round('2025-03-10', 6200, 'P1 thickness 13.2 mm', `view downstream\n  ${head}`);
    expect(codesIn('estate', with12('gauge ultrasonic ± 0.1 mm'))).toEqual(['TL305']);
    expect(codesIn('estate', with12('gauge depth gauge ± 0.5 mm'))).toEqual([]);
  });
});

describe('what calls for action', () => {
  test('steel that showed is told until a reline is recorded, and only where nothing newer says otherwise', () => {
    const bare = round('2025-03-10', 6200, 'P1 trough showing');
    expect(codesIn('estate', bare)).toEqual(['TL309']);
    expect(codesIn('estate', bare + reline('2025-03-17', 6300))).toEqual([]);
    expect(codesIn('estate', bare + reline('2025-03-17', 6300, '\n  scope run above Gate'))).toEqual([
      'TL309',
    ]);
  });

  test('steel is bare since the first look that found it so, not since the last', () => {
    const looks =
      round('2024-09-09', 3600, 'P1 trough showing') +
      round('2025-03-10', 6200, 'P1 colour teal') +
      round('2025-06-09', 8000, 'P1 trough showing') +
      round('2025-09-08', 9000, 'P1 trough showing');
    expect(messageOf('TL309', 'estate', looks)).toContain('since 2025-06-09,');
    expect(messageOf('TL309', 'estate', looks.replace('colour teal', 'trough showing'))).toContain(
      'since 2024-09-09,',
    );
    const relined = round('2024-09-09', 3600, 'P1 trough showing') + reline('2024-10-07', 4050);
    expect(messageOf('TL309', 'estate', relined + round('2025-09-08', 9000, 'P1 trough showing'))).toContain(
      'since 2025-09-08,',
    );
  });

  test('a motor current is held against the middle of two before, not against the lower', () => {
    const before =
      round('2024-09-09', 3600, 'current empty 4.0 A') + round('2025-03-10', 6200, 'current empty 5.1 A');
    expect(codesIn('estate', before + round('2025-09-08', 9000, 'current empty 5.6 A'))).toEqual([]);
    expect(messageOf('TL323', 'estate', before + round('2025-09-08', 9000, 'current empty 5.9 A'))).toContain(
      'drew 4.55 A before (median of 2)',
    );
  });

  test('at the condemn limit is told, above it is not; a liner that came out since is history', () => {
    expect(codesIn('estate', round('2025-03-10', 6200, 'P1 thickness 3.0 mm'))).toEqual(['TL310']);
    expect(
      codesIn('estate', round('2025-03-10', 6200, 'P1 thickness 3.0 mm') + reline('2025-03-17', 6300)),
    ).toEqual([]);
  });

  test('an old reading below the limit is not repeated when a newer one contradicts it', () => {
    const pair =
      round('2024-09-09', 3600, 'P1 thickness 2.4 mm') + round('2025-03-10', 6200, 'P1 thickness 9.9 mm');
    expect(codesIn('estate', pair)).toEqual(['TL306']);
  });

  test('flight wear counts from the newest screw', () => {
    const worn = round('2025-03-10', 6200, 'flight at 6 m depth 48 mm');
    expect(codesIn('estate', worn)).toEqual(['TL322']);
    expect(
      codesIn('estate', `${worn}\nscrew change DG1 2025-03-17 meter 6300 h { screw Spiral400 }`),
    ).toEqual([]);
  });
});

describe('inspections as a whole', () => {
  test('two rounds on one day with different readings are two rounds', () => {
    expect(
      codesIn(
        'estate',
        round('2025-03-10', 6200, 'P1 thickness 9.8 mm') + round('2025-03-10', 6200, 'P2 thickness 9.8 mm'),
      ),
    ).toEqual([]);
  });

  test('colours that stay the same are no copy, three equal thicknesses are', () => {
    const colours = 'P1 colour ivory\n  P2 colour ivory\n  at 5 m clock 7:30 colour ivory';
    const thicknesses = 'P1 thickness 9.8 mm\n  P2 thickness 9.9 mm\n  at 5 m clock 7:30 thickness 10.0 mm';
    expect(
      codesIn('estate', round('2025-03-10', 6200, colours) + round('2025-09-08', 9000, colours)),
    ).toEqual([]);
    expect(
      codesIn('estate', round('2025-03-10', 6200, thicknesses) + round('2025-09-08', 9000, thicknesses)),
    ).toContain('TL304');
  });

  test('the same inspection in two files is told once', () => {
    expect(codesIn('estate', round('2025-03-10', 6200, 'P1 thickness 9.8 mm').repeat(2))).toEqual(['TL304']);
  });

  test('named points need no view, clock positions of its own do', () => {
    const head = 'gauge ultrasonic ± 0.2 mm';
    expect(codesIn('estate', round('2025-03-10', 6200, 'P1 thickness 9.8 mm', head))).toEqual([]);
    expect(codesIn('estate', round('2025-03-10', 6200, 'at 5 m clock 6:00 thickness 9.8 mm', head))).toEqual(
      [],
    ); // six is six from either end
    expect(codesIn('estate', round('2025-03-10', 6200, 'at 5 m clock 7:00 thickness 9.8 mm', head))).toEqual([
      'TL311',
    ]);
  });

  test('what was not seen is an observation', () => {
    expect(codesIn('estate', round('2025-03-10', 6200, 'P1 not seen "cover seized"'))).toEqual([]);
  });

  test('an inspection on the day of a reline is clear when the meter tells them apart', () => {
    const day = (meter: number): string =>
      round('2025-03-10', 6200, 'P1 thickness 4.1 mm') + reline('2025-03-10', meter);
    expect(codesIn('estate', day(6200))).toEqual(['TL314']);
    expect(codesIn('estate', day(6204))).toEqual([]);
  });
});

test('a record of panels that do not exist says what the run has', () => {
  expect(messageOf('TL315', 'estate', reline('2025-03-10', 6200, '\n  scope panels 2 to 9 of run 2'))).toBe(
    'Run 2 of DG1 (1.50 m to 7.00 m) has 5 panels, and this names panel 9.',
  );
});

test('every finding about a reading points at its row', () => {
  const [finding] = findingsIn('estate', round('2025-03-10', 6200, 'P1 thickness 2.6 mm'));
  expect(finding?.related?.map((one) => one.message)).toEqual(['condemn limit of TwoLayer12']);
});

describe('panels fitted in a part of a run', () => {
  // The run is laid out from its head in panels of 1200 mm, the closing piece at its tail.
  const fitted = (scope: string, lengths: string): string =>
    reline('2025-03-10', 6200, `\n  scope ${scope}\n  fitted run 2 panels ${lengths}`);

  test('are held against that part and not against the whole run', () => {
    expect(codesIn('estate', fitted('panels 2 to 3 of run 2', '1195 mm, 1203 mm'))).not.toContain('TL338');
    expect(codesIn('estate', fitted('panels 2 and 3 of run 2', '1195 mm, 1203 mm'))).not.toContain('TL338');
    expect(codesIn('estate', fitted('panels 2 and 3 of run 2', '1195 mm, 803 mm'))).toContain('TL338');
    expect(codesIn('estate', fitted('run 2', '1195 mm, 1203 mm'))).toContain('TL338');
  });

  test('a panel too few or a part that they do not fill is told', () => {
    const few = fitted('panels 2 to 4 of run 2', '1195 mm, 1203 mm');
    expect(messageOf('TL338', 'estate', few)).toContain('the scope names 3 panels');
    const short = fitted('panels 2 to 3 of run 2', '1195 mm, 803 mm');
    expect(messageOf('TL338', 'estate', short)).toContain('too short');
  });
});
