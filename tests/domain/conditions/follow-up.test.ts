// Conditions as small stories: what is found, answered, closed, or taken away by work stands so in every output.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { followUp, openConditions } from '../../../src/domain/conditions/follow-up.js';
import { conditionWords } from '../../../src/domain/conditions/kinds.js';
import {
  closedConditionRows,
  openConditionRows,
  openConditionsText,
  sinceWords,
} from '../../../src/domain/conditions/rows.js';
import { photoTrouble } from '../../../src/domain/conditions/photo-path.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionPhonePage } from '../../../src/generators/inspection-sheet/phone.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { workPackHtml } from '../../../src/generators/work-pack/html.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${rows.join('\n  ')}\n}`;

function read(...blocks: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', blocks.join('\n')) }]);
}

function states({ estate }: Analysis): readonly string[] {
  return estate.conveyors.flatMap((conveyor) =>
    followUp(estate, conveyor).conditions.map(
      ({ last, closed, unanswered }) =>
        `${conditionWords(last.line)}: ${closed ? `closed by ${closed.by}` : unanswered ? 'unanswered' : 'open'}`,
    ),
  );
}

describe('an answer without its measure ends what carried one', () => {
  const seen = look(
    '2024-09-09',
    3600,
    'motor temperature 92 degC serious',
    'motor noise',
    'joint open 9 mm at 6 m',
    'bolts loose 3 at 4.2 m',
    'tail bearing temperature 84 degC urgent',
    'panel lifted 8 mm at 9 m',
  );
  const closed = [
    'motor temperature',
    'joint open at 6 m',
    'bolts loose at 4.2 m',
    'tail bearing temperature',
    'panel lifted',
  ];
  const ended = (by: string): readonly string[] => [
    `motor at 92 °C: closed by ${by}`,
    by === 'look' ? 'motor noise: unanswered' : 'motor noise: open',
    `joint open 9 mm at 6.00 m: closed by ${by}`,
    `3 bolts loose at 4.20 m: closed by ${by}`,
    `tail bearing at 84 °C: closed by ${by}`,
    `panel lifted 8 mm at 9.00 m: closed by ${by}`,
  ];
  test('in a look', () => {
    const answers = closed.map((line) => `closed ${line} by "fitter"`);
    expect(states(read(seen, look('2025-03-10', 6000, ...answers)))).toEqual(ended('look'));
  });
  test('by work of a day', () => {
    const works = closed.map((line) => `serviced DG1 2024-10-07 closed ${line} "done" by "fitter"`);
    const found = read(seen, ...works);
    expect(states(found)).toEqual(ended('service'));
    expect(found.findings.filter(({ code }) => code === 'TL351')).toEqual([]);
  });
  test('of a part of the drive with nothing said, where one thing stands open there, and of two of none', () => {
    const one = look('2024-09-09', 3600, 'gearbox oil leak serious');
    expect(states(read(one, 'serviced DG1 2024-10-07 closed gearbox "new seal"'))).toEqual([
      'gearbox oil leak: closed by service',
    ]);
    expect(states(read(one, look('2025-03-10', 6000, 'closed gearbox')))).toEqual([
      'gearbox oil leak: closed by look',
    ]);
    const two = look('2024-09-09', 3600, 'gearbox oil leak serious', 'gearbox noise');
    expect(states(read(two, look('2025-03-10', 6000, 'closed gearbox')))).toEqual([
      'gearbox oil leak: unanswered',
      'gearbox noise: unanswered',
    ]);
    expect(states(read(two, 'serviced DG1 2024-10-07 closed gearbox "new seal"'))).toEqual([
      'gearbox oil leak: open',
      'gearbox noise: open',
    ]);
  });
});

describe('what becomes of a condition', () => {
  const torn = look('2024-09-09', 3600, 'panel torn at 4.2 m serious', 'bolts missing 2 at P2');

  test('a look that is silent leaves it open and unanswered', () => {
    expect(states(read(torn, look('2025-03-10', 6000, 'P1 colour ivory')))).toEqual([
      'panel torn at 4.20 m: unanswered',
      '2 bolts missing at P2: unanswered',
    ]);
  });

  test('the same kind within 300 mm is the same, beyond it another', () => {
    const near = states(
      read(torn, look('2025-03-10', 6000, 'panel torn at 4.5 m', 'closed bolts missing at 9 m')),
    );
    expect(near).toEqual(['panel torn at 4.50 m: open', '2 bolts missing at P2: closed by look']);
    const far = states(
      read(torn, look('2025-03-10', 6000, 'panel torn at 4.51 m', 'closed bolts missing at P2')),
    );
    expect(far).toEqual([
      'panel torn at 4.20 m: unanswered',
      '2 bolts missing at P2: closed by look',
      'panel torn at 4.51 m: open',
    ]);
  });

  test('not seen is an answer, and leaves it open', () => {
    const seen = read(
      torn,
      look('2025-03-10', 6000, 'not seen panel torn at 4.2 m "covers on"', 'not seen bolts missing at P2'),
    );
    expect(states(seen)).toEqual(['panel torn at 4.20 m: open', '2 bolts missing at P2: open']);
    const [row] = openConditionRows(seen.estate, seen.estate.conveyors[0]!);
    expect(row?.notes).toEqual(['not seen on 2025-03-10: covers on']);
  });

  test('a reline of its place ends it, one of another place does not', () => {
    const reline = (scope: string): string =>
      `reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope ${scope}\n}`;
    expect(states(read(torn, reline('run 1')))).toEqual([
      'panel torn at 4.20 m: open',
      '2 bolts missing at P2: open',
    ]);
    expect(states(read(torn, reline('run 2')))).toEqual([
      'panel torn at 4.20 m: closed by reline',
      '2 bolts missing at P2: open',
    ]);
    // What tears after that is new, and does not wake the old one.
    expect(states(read(torn, reline('run 2'), look('2025-03-10', 6000, 'panel torn at 4.2 m')))).toEqual([
      'panel torn at 4.20 m: closed by reline',
      '2 bolts missing at P2: unanswered',
      'panel torn at 4.20 m: open',
    ]);
  });

  test('a finding of a panel goes with the panel, one of the spiral with the spiral, one of a cover with neither', () => {
    const found = look(
      '2024-09-09',
      3600,
      'finding panel at 4.2 m serious "worn to limit"',
      'finding spiral at 4.2 m slight "scored"',
      'finding cover at 4.2 m slight "rattles"',
    );
    const reline = 'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope run 2\n}';
    expect(states(read(found, reline))).toEqual([
      'panel at 4.20 m: worn to limit: closed by reline',
      'spiral at 4.20 m: scored: open',
      'cover at 4.20 m: rattles: open',
    ]);
    expect(states(read(found, 'screw change DG1 2024-10-07 meter 3900 h {\n  screw Spiral400\n}'))).toEqual([
      'panel at 4.20 m: worn to limit: open',
      'spiral at 4.20 m: scored: closed by screw change',
      'cover at 4.20 m: rattles: open',
    ]);
  });

  test('a side that was said stands until another is said', () => {
    const bent = look('2024-09-09', 3600, 'hold-down bent at 4 m left side');
    const again = look('2025-03-10', 6000, 'hold-down bent at 4 m serious');
    expect(states(read(bent, again))).toEqual(['hold-down bent at 4.00 m left side: open']);
    expect(states(read(bent, again, look('2025-06-09', 7000, 'hold-down bent at 4 m right side')))).toEqual(
      expect.arrayContaining([expect.stringContaining('right side: open')]),
    );
  });

  test('panels side by side are two, and each is at its own liner', () => {
    const beside = look(
      '2024-09-09',
      3600,
      'panel torn at panel 3 of run 2',
      'panel torn at panel 4 of run 2',
    );
    expect(states(read(beside))).toHaveLength(2);
    const reline = 'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope panel 4 of run 2\n}';
    expect(states(read(beside, reline))).toEqual([
      expect.stringMatching(/^panel torn at panel 3 of run 2.*: open$/),
      expect.stringMatching(/^panel torn at panel 4 of run 2.*: closed by reline$/),
    ]);
  });

  describe('on a panel that is moved', () => {
    // Run 2 lies from 1.5 m to 7 m, laid from the gate: panel 3 from 3.4 m to 4.6 m, panel 4 from 4.6 m to 5.8 m.
    const moved = (date: string, meter: number, ...moves: readonly string[]): string =>
      `panels moved DG1 ${date} meter ${meter} h {\n  ${moves.join('\n  ')}\n  P1 thickness 9.1 mm\n}`;
    const tear = look('2024-09-09', 3600, 'panel torn at 4.4 m clock 7:00 serious', 'panel lifted at 4.4 m');
    const turned = moved('2024-10-07', 3900, 'panel 3 of run 2 turned end for end');
    const exchanged = moved('2024-10-07', 3900, 'panel 3 of run 2 exchanged with panel 4 of run 2');
    const seen = 'seen as panel torn at 4.40 m; its panel was moved on 2024-10-07';

    test('a tear goes with the sheet, to its other end and side; what holds it down stays', () => {
      const analysis = read(tear, turned);
      expect(states(analysis)).toEqual([
        `panel torn at 3.60 m (${seen}): open`,
        'panel lifted at 4.40 m: open',
      ]);
      const [torn] = followUp(analysis.estate, analysis.estate.conveyors[0]!).conditions;
      expect([torn?.last.line.clock?.text, torn?.last.line.at?.value]).toEqual(['5:00', 3600]);
      expect(remainingLifeHtml(remainingLife(analysis.estate))).toContain('panel torn at 3.60 m');
    });
    test('exchanged, it lies as far from the tail end of the other place, and twice it is back', () => {
      expect(states(read(tear, exchanged))[0]).toBe(`panel torn at 5.60 m (${seen}): open`);
      const again = exchanged.replace('2024-10-07', '2024-12-02').replace('3900', '4400');
      expect(states(read(tear, exchanged, again))[0]).toBe(
        `panel torn at 4.40 m (${seen.replace('2024-10-07', '2024-12-02')}): open`,
      );
    });
    test('the next look answers it where it lies now, not where it lay', () => {
      const next = (row: string): readonly string[] =>
        states(read(tear, turned, look('2025-03-10', 6000, row)));
      expect(next('closed panel torn at 3.6 m')[0]).toContain('closed by look');
      expect(next('panel torn at 3.6 m')[0]).toBe('panel torn at 3.60 m: open');
      expect(next('panel torn at 4.4 m').filter((each) => each.includes('torn'))).toEqual([
        `panel torn at 3.60 m (${seen}): unanswered`,
        'panel torn at 4.40 m: open',
      ]);
    });
    test('a look on the day before it counts as of the old place, and one after it as of the new', () => {
      const after = look('2024-11-04', 4100, 'panel torn at 4.4 m');
      expect(states(read(turned, after))).toEqual(['panel torn at 4.40 m: open']);
    });
    test('a reline of the place it left does not end it, one of the place it came to does, and what ended stays ended', () => {
      const reline = (date: string, meter: number, stretch: string): string =>
        `reline DG1 ${date} meter ${meter} h {\n  liner TwoLayer12\n  scope ${stretch}\n}`;
      const of = (...records: readonly string[]): string => states(read(tear, ...records))[0] ?? '';
      expect(of(exchanged, reline('2024-12-02', 4400, 'from 3.4 m to 4.6 m'))).toContain(': open');
      expect(of(exchanged, reline('2024-12-02', 4400, 'from 4.6 m to 5.8 m'))).toContain('closed by reline');
      expect(of(reline('2024-09-16', 3700, 'from 3.4 m to 4.6 m'), exchanged)).toBe(
        'panel torn at 4.40 m: closed by reline',
      );
      expect(of(reline('2024-09-16', 3700, 'from 4.6 m to 5.8 m'), exchanged)).toContain('5.60 m');
      expect(of(reline('2024-09-16', 3700, 'from 4.6 m to 5.8 m'), exchanged)).toContain(': open');
    });
  });

  test('a new spiral ends what was wrong with the old one', () => {
    const change = 'screw change DG1 2024-10-07 meter 3900 h {\n  screw Spiral400\n}';
    expect(states(read(look('2024-09-09', 3600, 'spiral bent at 4 m', 'gearbox noise'), change))).toEqual([
      'spiral bent at 4.00 m: closed by screw change',
      'gearbox noise: open',
    ]);
  });

  test('a day written afterwards closes it from that day on', () => {
    const { estate } = read(look('2024-09-09', 3600, 'gearbox oil low closed on 2024-09-20'));
    const [conveyor] = estate.conveyors;
    const on = (day: string): number => openConditions(estate, conveyor!, parseDay(day)).length;
    expect([on('2024-09-09'), on('2024-09-19'), on('2024-09-20')]).toEqual([1, 1, 0]);
  });

  test('the line to answer it with is read again as the same, complete', () => {
    const first = look(
      '2024-09-09',
      3600,
      'joint open 9 mm at 4.2 m',
      'bolts loose 3 at P2',
      'gearbox oil low',
    );
    const { estate } = read(
      first,
      look('2025-03-10', 6000, 'joint open 11 mm at 4.3 m', 'bolts loose 3 at P2'),
    );
    const answers = openConditionRows(estate, estate.conveyors[0]!).map(({ writes }) => writes);
    expect(answers).toEqual(['joint open 11 mm at 4.2 m', 'bolts loose 3 at P2', 'gearbox oil low']);
    const answered = read(first, look('2025-09-08', 9000, ...answers));
    expect(answered.findings.map(({ code }) => code)).toEqual([]);
    expect(states(answered)).toHaveLength(3);
  });

  test('a temperature is a measurement until it is called bad', () => {
    expect(states(read(look('2024-09-09', 3600, 'gearbox temperature 62 degC')))).toEqual([]);
    expect(states(read(look('2024-09-09', 3600, 'gearbox temperature 96 degC serious')))).toHaveLength(1);
  });
});

describe('told in words', () => {
  const rowOf = (again: string): readonly (readonly string[])[] => {
    const analysis = read(
      look('2024-09-09', 3600, 'finding liner at 3.2 m slight "scored by a bolt"'),
      look('2025-03-10', 6000, again),
    );
    const [conveyor] = analysis.estate.conveyors;
    return openConditionRows(analysis.estate, conveyor!).map(({ what, notes }) => [what, ...notes]);
  };

  test('and told again as it was keeps what it is as its heading', () => {
    const [plain] = rowOf('finding liner at 3.2 m slight "scored by a bolt"');
    for (const words of ['as before', 'unchanged', 'no change', 'still the same'])
      expect(rowOf(`finding liner at 3.2 m slight "${words}"`)).toEqual([
        [plain?.[0], `2025-03-10: ${words}`],
      ]);
    expect(rowOf('finding liner at 3.2 m slight "scored deeper, as before by a bolt"')[0]?.[0]).toContain(
      'deeper',
    );
  });

  test('and not seen keeps its reason', () => {
    expect(rowOf('not seen finding liner at 3.2 m "too far down"')[0]?.slice(1)).toEqual([
      'not seen on 2025-03-10: too far down',
    ]);
    expect(rowOf('not seen finding liner at 3.2 m')[0]?.slice(1)).toEqual(['not seen on 2025-03-10']);
  });

  const cracked = look(
    '2024-09-09',
    3600,
    'spiral weld cracked at 9.5 m slight',
    'panel torn at 4.2 m serious',
  );
  const next = (...rows: readonly string[]): Analysis => read(cracked, look('2025-03-10', 6000, ...rows));
  const crack = (analysis: Analysis): string | undefined =>
    states(analysis).find((each) => each.startsWith('spiral weld'));

  test.each([
    'finding spiral at 9.5 m "hair crack not longer"',
    'finding spiral at 9.4 m "crack as before"',
    'finding spiral at 9.5 m slight "crack no longer than a finger"',
    'finding flight at 9.5 m "the weld holds"',
    'finding spiral from 9 m to 10 m "cracked weld looked at"',
  ])('an open condition is answered by a finding that names it: %s', (row) => {
    const analysis = next(row, 'panel torn at 4.2 m');
    expect(crack(analysis)).toBe('spiral weld cracked at 9.50 m: open');
    expect(analysis.findings.map(({ code }) => code)).not.toContain('TL350');
    const rows = openConditionRows(analysis.estate, analysis.estate.conveyors[0]!);
    const text = /"(.*)"/.exec(row)?.[1] ?? '';
    expect(rows.find(({ what }) => what.startsWith('spiral weld'))?.notes).toContain(`2025-03-10: ${text}`);
  });

  test.each([
    'finding spiral at 9.5 m "flange holes reamed"',
    'finding spiral at 3 m "hair crack"',
    'finding cover at 9.5 m "crack in the paint"',
    'finding spiral "cracked somewhere"',
  ])('not by another place, part, or thing: %s', (row) => {
    expect(crack(next(row, 'panel torn at 4.2 m'))).toBe('spiral weld cracked at 9.50 m: unanswered');
  });

  test('what is said of the part and place without naming it is quoted where the look is asked', () => {
    const found = next('finding spiral at 9.5 m "flange holes reamed"', 'panel torn at 4.2 m').findings;
    expect(found.find(({ code }) => code === 'TL350')?.message).toContain(
      '“flange holes reamed” of that part',
    );
  });

  test('a motor at the drive is the motor, and a seat said at the drive ends it', () => {
    const wet = look('2024-09-09', 3600, 'finding motor serious "insulation 0.8 Mohm, wet"');
    const closed = look('2025-03-10', 6000, 'closed finding motor at drive "120 Mohm"');
    expect(states(read(wet, closed))).toEqual([expect.stringContaining('closed by look')]);
    expect(read(wet, closed).findings.map(({ code }) => code)).not.toContain('TL351');
  });

  test('a temperature measured again answers the one that was called bad, and stands beside it', () => {
    const hot = look('2024-09-09', 3600, 'motor temperature 92 degC serious', 'panel torn at 4.2 m');
    const analysis = read(hot, look('2025-03-10', 6000, 'motor temperature 61 degC', 'panel torn at 4.2 m'));
    expect(states(analysis)).toContain('motor at 92 °C: open');
    const rows = openConditionRows(analysis.estate, analysis.estate.conveyors[0]!);
    expect(rows.find(({ what }) => what.startsWith('motor'))?.notes).toEqual(['2025-03-10: 61 degC']);
    expect(states(read(hot, look('2025-03-10', 6000, 'gearbox temperature 61 degC')))).toContain(
      'motor at 92 °C: unanswered',
    );
  });

  test('where nobody could look along a stretch, what lies in it is answered as not seen', () => {
    const blind = read(cracked, look('2025-03-10', 6000, 'not seen from 8 m to 10 m "covers stayed on"'));
    expect(states(blind)).toEqual([
      'spiral weld cracked at 9.50 m: open',
      'panel torn at 4.20 m: unanswered',
    ]);
    const rows = openConditionRows(blind.estate, blind.estate.conveyors[0]!);
    expect(rows.find(({ what }) => what.startsWith('spiral'))?.notes).toEqual([
      'not seen on 2025-03-10: covers stayed on',
    ]);
  });

  test('a finding at one place and one along a stretch are two, but where their words are of one thing', () => {
    const strips = look(
      '2024-09-09',
      3600,
      'finding spiral from 8 m to 12 m slight "plastic strips wound on"',
    );
    const both = (row: string): readonly string[] => states(read(strips, look('2025-03-10', 6000, row)));
    expect(both('finding spiral at 12 m slight "knocks once a turn"')).toHaveLength(2);
    expect(both('finding spiral from 11 m to 12 m slight "knocks once a turn"')).toHaveLength(1);
    expect(both('finding spiral at 11 m slight "strips again"')).toHaveLength(1);
    const knocks = look('2024-09-09', 3600, 'finding spiral at 12 m slight "knocks once a turn"');
    expect(
      states(read(knocks, look('2025-03-10', 6000, 'finding spiral from 8 m to 12 m slight "strips"'))),
    ).toHaveLength(2);
  });
});

describe('a length of the spiral that is changed', () => {
  const seen = (...rows: readonly string[]): string => look('2024-09-09', 3600, ...rows);
  const change = (scope: string): string =>
    `screw change DG1 2024-10-07 meter 3900 h {\n  screw Spiral400\n  scope ${scope}\n}`;

  test.each([
    ['spiral bolts loose 2 at 9.5 m', 'from 0 m to 9.5 m', 'closed by screw change'],
    ['spiral weld cracked at 9.5 m', 'from 0 m to 9.5 m', 'closed by screw change'],
    ['spiral weld cracked at 9.7 m', 'from 0 m to 9.5 m', 'closed by screw change'],
    ['spiral weld cracked at 9.5 m', 'from 9.5 m to 12 m', 'closed by screw change'],
    ['spiral weld cracked at 9.9 m', 'from 0 m to 9.5 m', 'open'],
    ['spiral bent at 9.7 m', 'from 0 m to 9.5 m', 'open'],
    ['spiral bent at 9 m', 'from 0 m to 9.5 m', 'closed by screw change'],
    ['cover bent at 9.5 m', 'from 0 m to 9.5 m', 'open'],
  ])('%s, changed %s: %s', (row, scope, state) => {
    expect(states(read(seen(row), change(scope)))[0]).toMatch(new RegExp(`: ${state}$`));
  });

  test('does not end what is seen of the joint afterwards, or while it was made', () => {
    const joint = 'spiral bolts loose 2 at 9.5 m';
    const after = look('2025-03-10', 6000, joint);
    expect(states(read(change('from 0 m to 9.5 m'), after))).toEqual([
      `2 ${joint.replace(' 2', '').replace('9.5', '9.50')}: open`,
    ]);
  });
});

describe('the rate of wear', () => {
  const readings = [
    look('2024-09-09', 3600, 'P1 thickness 10.8 mm', 'P2 thickness 10.6 mm'),
    look('2025-03-10', 6000, 'P1 thickness 10.0 mm', 'P2 thickness 9.7 mm'),
  ];
  const json = (...more: readonly string[]): unknown => {
    const { estate } = read(...readings, ...more);
    const report = JSON.parse(
      remainingLifeJson(remainingLife(estate, { track: false, asOf: parseDay('2025-09-08') })),
    );
    return report.conveyors[0].forecast;
  };

  test('is not touched by a missing panel, and is by one that wore through', () => {
    const silent = json(look('2025-09-08', 9000, 'not seen panel torn at 2 m'));
    expect(json(look('2025-09-08', 9000, 'panel missing at 2 m'))).toEqual(silent);
    expect(json(look('2025-09-08', 9000, 'panel missing at 2 m worn through'))).not.toEqual(silent);
  });

  test('worn through counts once, at its point or at the bottom, mirrored with the look', () => {
    const places = (row: string, view = 'downstream'): readonly string[] => {
      const { estate } = read(`inspection DG1 2025-09-08 meter 9000 h {\n  view ${view}\n  ${row}\n}`);
      return Array.from(estate.readings.place, (place) => estate.places[place]?.name ?? '');
    };
    expect(places('panel torn at P1 worn through')).toEqual(['P1']);
    expect(places('panel torn at 2 m worn through')).toEqual(['2.00 m 6:00']);
    expect(places('panel torn at 2 m clock 7:00 worn through', 'upstream')).toEqual(['2.00 m 5:00']);
    expect(places('closed panel torn at P1 worn through')).toEqual([]);
  });
});

describe('one value behind all pages', () => {
  const { estate } = read(
    look(
      '2024-09-09',
      3600,
      'panel torn at 9.2 m urgent photo "photos/tear.png" "a flap stands up"',
      'gearbox oil leak',
    ),
    look('2025-03-10', 6000, 'P1 colour ivory', 'panel torn at 9.2 m "longer now"'),
    'job J1 "Reline above the gate" {\n  conveyor DG1\n  outage Spring27\n  reline run above Gate\n  crews Alpha, Bravo\n  access units MP1\n}',
  );
  const [conveyor] = estate.conveyors;
  const rows = openConditionRows(estate, conveyor!);

  test('report, sheet, phone and pack carry the same', () => {
    const report = remainingLife(estate, { depth: 'hand' });
    const sheet = inspectionSheet(estate, conveyor!);
    const pack = workPack(estate, estate.jobs[0]!);
    expect(rows.map(({ what }) => what)).toEqual(['panel torn at 9.20 m', 'gearbox oil leak']);
    expect(report.conveyors[0]?.conditions).toEqual(rows);
    expect(sheet.openConditions.map(({ what }) => what)).toEqual(rows.map(({ what }) => what));
    expect(pack.conditions.map(({ what }) => what)).toEqual(rows.map(({ what }) => what));
    expect(pack.conditions.map(({ ends }) => ends)).toEqual([true, false]);
    for (const row of rows) {
      for (const page of [
        remainingLifeHtml(report),
        remainingLifeMarkdown(report),
        remainingLifeJson(report),
        inspectionSheetHtml(sheet),
        inspectionPhonePage(sheet),
        workPackHtml(pack),
      ])
        expect(page).toContain(row.what);
      for (const page of [remainingLifeHtml(report), inspectionSheetHtml(sheet), workPackHtml(pack)])
        expect(page).toContain(sinceWords(row));
    }
    expect(rows[1]?.unanswered).toBe(parseDay('2025-03-10'));
    expect(openConditionsText(rows)).toBe('2 open conditions, 1 urgent');
  });

  test('page 1 counts them, and an urgent one comes to the top', () => {
    const report = remainingLife(estate, { depth: 'hand' });
    expect(remainingLifeHtml(report)).toContain('DG1: 2 open conditions, 1 urgent (panel torn at 9.20 m)');
  });

  test('a photo is carried in the page where it can be had, else named', () => {
    const report = remainingLife(estate, { depth: 'hand' });
    expect(remainingLifeHtml(report)).toContain('Photo photos/tear.png');
    expect(remainingLifeHtml(report, { photo: () => 'data:image/png;base64,AAAA' })).toContain(
      '<img src="data:image/png;base64,AAAA" alt="Photo: panel torn at 9.20 m">',
    );
  });
});

test('no path that leaves its folder names a photo', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('..', 'a', '.', 'photos', 'C:', '~', ''), { minLength: 1, maxLength: 5 }),
      (parts) => {
        const path = `${parts.join('/')}/x.png`;
        const leaves = parts.includes('..') || parts[0] === '' || parts[0] === 'C:' || parts[0] === '~';
        expect(photoTrouble(path) === undefined).toBe(!leaves);
      },
    ),
  );
});

describe('said or done there, and not that it is over', () => {
  const rowsOf = ({ estate }: Analysis): ReturnType<typeof openConditionRows> =>
    openConditionRows(estate, estate.conveyors[0]!);

  test('work of another kind and words of a look stand beside what is open', () => {
    const analysis = read(
      look('2024-09-09', 3600, 'pull cord dead left side urgent', 'serviced pull cord tightened left side'),
      look('2025-03-10', 6000, 'P1 colour ivory'),
      look('2025-04-14', 6400, 'finding pull cord "ok"', 'P1 colour ivory'),
    );
    const [row] = rowsOf(analysis);
    expect(row?.notes).toEqual([
      '2024-09-09, done there: pull cord tightened left side',
      '2025-04-14, said there: “ok”',
    ]);
    expect(row && sinceWords(row)).toBe('open since 2024-09-09; the look of 2025-03-10 says nothing of it');
    const told = (code: string): readonly string[] =>
      analysis.findings.flatMap((each) => (each.code === code ? [each.message] : []));
    expect(told('TL268')).toEqual([
      'DG1: pull cord dead left side, open since 2024-09-09. Once it is put right, write `closed pull cord dead left side`. ' +
        'What was said or done there since closes nothing: pull cord tightened left side (2024-09-09) and “ok” (2025-04-14).',
    ]);
    expect(told('TL562')).toEqual([
      '“pull cord tightened left side” ends nothing, and pull cord dead left side (2024-09-09) stands open there.',
      '“ok” is a note and ends nothing, and pull cord dead left side (2024-09-09) stands open there.',
    ]);
  });

  test('a note of the part and place of an open finding is quoted, and one that shares a word with it answers it', () => {
    const after = (row: string): Analysis =>
      read(
        look('2024-09-09', 3600, 'finding spiral at tail serious "stretched 140 mm"'),
        look('2025-03-10', 6000, row),
      );
    const quoted = after('finding spiral at tail "end gap 34 mm"');
    const [found] = quoted.findings.filter(({ code }) => code === 'TL350');
    expect(found?.message).toMatch(/It says “end gap 34 mm” of that part, and not whether that is meant\.$/);
    expect(found?.todo).toContain('`closed finding spiral at tail serious "stretched 140 mm"`');
    const [row] = rowsOf(quoted);
    expect(row && sinceWords(row)).toBe(
      'open since 2024-09-09; the look of 2025-03-10 does not say whether it is over',
    );
    expect(row?.notes).toContain('2025-03-10, said there: “end gap 34 mm”');
    const answered = after('finding spiral at tail "stretched no further"');
    expect(answered.findings.map(({ code }) => code)).not.toContain('TL350');
    expect(rowsOf(answered)[0]?.notes).toEqual(['2025-03-10: stretched no further']);
  });

  test('of several that a look leaves out each has what was said of it beside it', () => {
    const { findings } = read(
      look('2024-09-09', 3600, 'tail bearing noise slight', 'panel torn at 4.2 m serious'),
      look('2025-03-10', 6000, 'finding tail bearing "quiet"', 'P1 colour ivory'),
    );
    expect(findings.find(({ code }) => code === 'TL350')?.message).toBe(
      'This look does not say what became of tail bearing noise, found on 2024-09-09 (it says “quiet” there, and not whether ' +
        'that is meant) and panel torn at 4.20 m, found on 2024-09-09.',
    );
  });
});

describe('a look that could not see it is not asked', () => {
  const torn = look('2024-09-09', 3600, 'panel torn at 4.2 m serious', 'gearbox oil leak slight');
  const asked = (...blocks: readonly string[]): readonly string[] =>
    read(...blocks).findings.flatMap(({ code, message }) => (code === 'TL350' ? [message] : []));

  test.each([
    'current empty 4.1 A loaded 9.8 A',
    'speed 16.4 rpm',
    'finding motor "insulation 2 Mohm"',
    'motor noise slight',
  ])('of the liner, where it tells of the drive alone: %s', (row) => {
    expect(asked(torn, look('2025-03-10', 6000, row))).toEqual([
      'This look does not say what became of gearbox oil leak, found on 2024-09-09.',
    ]);
  });

  test.each([
    'P1 colour ivory',
    'cover bent at 8.4 m slight',
    'finding "all well"',
    'flight at 3 m depth 71 mm',
  ])('but where it tells of anything else it is: %s', (row) => {
    expect(asked(torn, look('2025-03-10', 6000, 'current loaded 9.8 A', row)).join()).toContain('panel torn');
  });

  test('of a dent under the liner, which only the next reline lays bare', () => {
    const laid = (row: string): string =>
      `reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  scope run 2\n  ${row}\n}`;
    const after = look('2025-03-10', 6000, 'P1 colour ivory');
    expect(asked(laid('trough dented at 4.2 m slight'), after)).toEqual([]);
    expect(asked(laid('hold-down bent at 5.25 m slight'), after)).toHaveLength(1);
    expect(asked(laid('finding trough at 3.5 m slight "scored, bright"'), after)).toEqual([]);
    expect(asked(laid('trough leaking at 3.5 m slight'), after)).toHaveLength(1);
    const { estate } = read(laid('trough dented at 4.2 m slight'), after);
    const [conveyor] = estate.conveyors;
    expect(conveyor && inspectionSheet(estate, conveyor).openConditions).toEqual([]);
    expect(conveyor && openConditionRows(estate, conveyor)).toHaveLength(1);
    expect(asked(look('2024-10-07', 3900, 'trough dented at 4.2 m slight'), after)).toHaveLength(1);
  });
});

test('new bearings end that a bearing is hot, and what a later value answered stands behind what nothing did', () => {
  const hot = look(
    '2024-09-09',
    3600,
    'tail bearing temperature 82 degC serious',
    'tail bearing noise slight',
  );
  const after = (line: string): readonly string[] => states(read(hot, line));
  expect(after('serviced DG1 2024-10-07 tail bearing bearings renewed')).toEqual([
    expect.stringContaining('closed by service'),
    expect.stringContaining('closed by service'),
  ]);
  const motor = look('2024-09-09', 3600, 'motor temperature 95 degC serious');
  expect(states(read(motor, 'serviced DG1 2024-10-07 motor bearings renewed'))).toEqual([
    expect.stringContaining('open'),
  ]);
  const { estate } = read(
    motor,
    look('2024-09-11', 3640, 'motor temperature 64 degC'),
    look('2024-10-07', 3900, 'panel torn at 4.2 m serious', 'motor temperature 61 degC'),
  );
  expect(openConditionRows(estate, estate.conveyors[0]!).map(({ called }) => called)).toEqual([
    'panel torn',
    'motor temperature',
  ]);
});

describe('where a condition lies, in words', () => {
  // Panels of 1200 mm, fitted from the head at 12 m: joints at 10.8, 9.6 and 8.4 m, and what is left ends at the gate.
  test.each([
    ['gate stuck at Gate', 'slide gate at 7.00 m to 7.50 m'],
    ['gate leaking at 7.1 m', 'slide gate at 7.00 m to 7.50 m'],
    ['finding gate at Gate slight "creeps"', 'slide gate at 7.00 m to 7.50 m'],
    ['panel torn at 7.5 m', 'run 3, panel 1'],
    ['panel torn from 8.2 m to 9.8 m', 'run 3, panels 1 to 3'],
    ['panel torn from 8.5 m to 9.5 m', 'run 3, panel 2'],
    ['panel torn at panel 2 of run 3', 'run 3, panel 2'],
    ['finding at 7.2 m slight "drips"', 'slide gate at 7.00 m to 7.50 m'],
    ['finding at head slight "drips"', 'run 3, panel 4'],
    ['joint open 9 mm at 9.7 m', 'run 3, joint of panels 2 and 3'],
    ['joint open 9 mm at 9.5 m', 'run 3, joint of panels 2 and 3'],
    ['joint open 9 mm at 10.2 m', 'run 3, panel 3'],
    ['joint open 9 mm at 12 m', 'run 3, joint of panel 4 at Head'],
    ['joint open 9 mm at 1.52 m', 'run 2, joint of panel 1 at Inlet'],
  ])('%s: %s', (line, words) => {
    const { estate } = read(look('2024-09-09', 3600, line));
    const [row] = openConditionRows(estate, estate.conveyors[0]!);
    expect(row?.place).toBe(words);
  });
});

describe('what was seen while work was done', () => {
  const work = (...rows: readonly string[]): string =>
    `reline DG1 2025-03-10 meter 6000 h {\n  liner TwoLayer12\n  ${rows.join('\n  ')}\n}`;
  const asReline = (...rows: readonly string[]): Analysis => read(work(...rows));

  test('stands open as what a look finds does, with severity and photo, on every page', () => {
    const analysis = asReline(
      'finding gate at Gate serious photo "photos/gate.png" "stem bent"',
      'spiral bent at 4.2 m urgent',
      'gearbox oil leak slight',
    );
    expect(analysis.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(states(analysis)).toEqual([
      'gate at Gate: stem bent: open',
      'spiral bent at 4.20 m: open',
      'gearbox oil leak: open',
    ]);
    const { estate } = analysis;
    const [conveyor] = estate.conveyors;
    if (!conveyor) throw new Error('no conveyor');
    const page = remainingLifeMarkdown(remainingLife(estate));
    for (const text of ['stem bent', 'photos/gate.png', 'spiral bent at 4.20 m'])
      expect(page).toContain(text);
    expect(inspectionSheetHtml(inspectionSheet(estate, conveyor))).toContain('stem bent');
  });

  test('a note keeps its photo, and a photo on its own is of the work', () => {
    const { estate } = asReline(
      'finding trough at 4 m photo "photos/dent.png" "an old dent"',
      'photo "photos/trough.png" "all clean"',
    );
    const page = remainingLifeMarkdown(remainingLife(estate));
    expect(page).toContain('photos/dent.png: the reline of 2025-03-10: an old dent');
    expect(page).toContain('photos/trough.png: the reline of 2025-03-10: all clean');
  });

  test('what was torn or lost came out with its panel; a gap or a bolt is of the new liner', () => {
    expect(
      states(
        asReline(
          'panel torn at 4.2 m',
          'panel missing at panel 2 of run 2',
          'joint open 6 mm at 9 m',
          'bolts missing 2 at 6 m',
        ),
      ),
    ).toEqual([
      'panel torn at 4.20 m: closed by reline',
      'panel missing at panel 2 of run 2: closed by reline',
      'joint open 6 mm at 9.00 m: open',
      '2 bolts missing at 6.00 m: open',
    ]);
  });

  test('worn through says of the old panel what `old panel` does', () => {
    const before = look('2024-09-09', 3600, 'P1 thickness 9 mm');
    const bench = (row: string): readonly (readonly [number, number])[] => {
      const { readings } = read(before, work(row)).estate;
      return [...readings.bench.keys()].map((at) => [readings.kind[at] ?? -1, readings.place[at] ?? -1]);
    };
    const told = bench('panel torn at P1 worn through');
    expect(told).toHaveLength(1);
    expect(told).toEqual(bench('old panel at P1 worn through'));
  });

  test('answers what stood open, and is silent of nothing', () => {
    const found = look('2024-09-09', 3600, 'gate stuck at Gate serious', 'cover loose at 4 m');
    expect(states(read(found, work('closed gate stuck at Gate "new cylinder"')))).toEqual([
      'gate stuck at Gate: closed by look',
      'cover loose at 4.00 m: open',
    ]);
    const told = remainingLifeMarkdown(remainingLife(read(found, work('closed gate stuck at Gate')).estate));
    expect(told).toContain('closed by the reline of 2025-03-10');
  });

  test('a screw change and a move of panels tell as well', () => {
    const analysis = read(
      'screw change DG1 2025-03-10 meter 6000 h {\n  finding drive plate serious "two threads stripped"\n  trough dented at 3 m\n}',
      'panels moved DG1 2025-04-10 meter 6100 h {\n  panel 2 of run 1 turned end for end\n  bolts loose 2 at 6 m\n}',
    );
    expect(states(analysis)).toEqual([
      'drive plate: two threads stripped: open',
      'trough dented at 3.00 m: open',
      '2 bolts loose at 6.00 m: open',
    ]);
  });
});

describe('of what there is once nobody has to say where', () => {
  const cord = look('2024-09-09', 3600, 'pull cord broken at 6 m');
  const serviced = (what: string): string => `serviced DG1 2024-10-07 ${what}`;

  test.each([
    ['pull cord renewed', true],
    ['closed pull cord broken "new cord"', true],
    ['pull cord renewed left side', true],
    ['pull cord renewed at 6.2 m', true],
    ['pull cord renewed at 9 m', false],
    ['pull cord tightened', false],
  ])('%s ends the cord that was broken at 6 m: %s', (what, over) => {
    expect(states(read(cord, serviced(what)))).toEqual([
      `pull cord broken at 6.00 m: ${over ? 'closed by service' : 'open'}`,
    ]);
  });

  test('of two that stood open on that day it ends neither, and the one that is left', () => {
    const both = look('2024-09-09', 3600, 'bolts loose 3 at 4.2 m', 'bolts loose 2 at 9 m');
    expect(states(read(both, serviced('bolts tightened')))).toEqual([
      '3 bolts loose at 4.20 m: open',
      '2 bolts loose at 9.00 m: open',
    ]);
    const one = 'serviced DG1 2024-09-16 bolts tightened at 9 m';
    expect(states(read(both, one, serviced('bolts tightened')))).toEqual([
      '3 bolts loose at 4.20 m: closed by service',
      '2 bolts loose at 9.00 m: closed by service',
    ]);
  });

  test('an answer without a place is of the only one open, and a cord that is seen again is that cord', () => {
    const later = look(
      '2025-03-10',
      6000,
      'closed hold-down loose',
      'pull cord broken',
      'not seen bolts loose',
    );
    const first = look(
      '2024-09-09',
      3600,
      'hold-down loose at 3.75 m',
      'pull cord broken at 6 m left side',
      'bolts loose 2 at 9 m',
    );
    expect(states(read(first, later))).toEqual([
      'hold-down loose at 3.75 m: closed by look',
      'pull cord broken at 6.00 m left side: open',
      '2 bolts loose at 9.00 m: open',
    ]);
  });

  test('a gate of a machine with one gate lies at it', () => {
    const { estate } = read(look('2024-09-09', 3600, 'gate stuck', 'finding gate serious "stem bent"'));
    const [conveyor] = estate.conveyors;
    expect(conveyor && openConditionRows(estate, conveyor).map(({ what, at }) => [what, at])).toEqual([
      ['gate at Gate: stem bent', 7000],
      ['gate stuck at Gate', 7000],
    ]);
  });
});

describe('a finding of a part at a place', () => {
  const worn = look('2024-09-09', 3600, 'finding cover from 4 m to 5.2 m slight "worn: rubbed from inside"');
  const open = ({ estate }: Analysis) => openConditionRows(estate, estate.conveyors[0]!);
  const codes = ({ findings }: Analysis): readonly string[] =>
    findings.filter(({ severity }) => severity !== 'information').map(({ code }) => code);
  const next = (...rows: readonly string[]) => read(worn, look('2025-03-10', 6000, ...rows));

  test.each([
    'finding cover from 4 m to 5.2 m serious "a hole as wide as a finger"',
    'finding cover at 4.5 m serious "hole"',
    'finding cover from 4 m to 5.2 m serious "rubbed through"',
  ])('is the same in other words: %s', (row) => {
    const analysis = next(row);
    const rows = open(analysis);
    expect(rows).toHaveLength(1);
    const words = /"(.*)"/.exec(row)?.[1] ?? '?';
    expect(rows[0]).toMatchObject({
      severity: 'serious',
      since: parseDay('2024-09-09'),
      unanswered: undefined,
    });
    expect(rows[0]?.what).toContain(words);
    expect(rows[0]?.notes).toEqual(['2024-09-09: worn: rubbed from inside']);
    expect(rows[0]?.writes).toContain(`"${words}"`);
    expect(codes(analysis)).toEqual([]);
  });

  test('nothing of what was written is lost on report, sheet and pack', () => {
    const { estate } = next('finding cover at 4.5 m serious "hole"');
    const report = remainingLife(estate, { depth: 'hand' });
    const sheet = inspectionSheet(estate, estate.conveyors[0]!, { asOf: parseDay('2025-03-11')! });
    for (const page of [remainingLifeHtml(report), inspectionSheetHtml(sheet)]) {
      expect(page).toContain('cover at 4.50 m: hole');
      expect(page).toContain('2024-09-09: worn: rubbed from inside');
    }
  });

  test('without words it is still there, and nobody asks what was found', () => {
    const analysis = next('finding cover at 4.5 m serious');
    expect(open(analysis).map(({ what, severity }) => [what, severity])).toEqual([
      ['cover at 4.50 m: worn: rubbed from inside', 'serious'],
    ]);
    expect(codes(analysis)).toEqual([]);
    expect(codes(read(look('2024-09-09', 3600, 'finding cover at 4.5 m serious')))).toEqual(['TL352']);
  });

  test('two of one look are two, each carried on by its own words; at another place or part it is another', () => {
    const both = ['finding gate at Gate slight "stem bent"', 'finding gate at Gate slight "plate rusty"'];
    const again = [
      'finding gate at Gate serious "the stem is more bent than before"',
      'finding gate at Gate slight "rust on plate"',
    ];
    const analysis = read(look('2024-09-09', 3600, ...both), look('2025-03-10', 6000, ...again));
    expect(states(analysis)).toEqual([
      'gate at Gate: the stem is more bent than before: open',
      'gate at Gate: rust on plate: open',
    ]);
    expect(
      states(next('finding cover at 9 m slight "worn"', 'finding brace at 4.5 m slight "worn"')),
    ).toEqual([
      'cover from 4.00 m to 5.20 m: worn: rubbed from inside: unanswered',
      'cover at 9.00 m: worn: open',
      'brace at 4.50 m: worn: open',
    ]);
  });

  test('of several that stand open nobody can tell which other words are of: it is another', () => {
    const both = ['finding gate at Gate slight "stem bent"', 'finding gate at Gate slight "plate rusty"'];
    const analysis = read(
      look('2024-09-09', 3600, ...both),
      look('2025-03-10', 6000, 'finding gate at Gate slight "drips"'),
    );
    expect(states(analysis)).toEqual([
      'gate at Gate: stem bent: unanswered',
      'gate at Gate: plate rusty: unanswered',
      'gate at Gate: drips: open',
    ]);
  });

  test('a part that has many things is no place: without one, words that share nothing are another finding', () => {
    const key = look('2024-09-09', 3600, 'finding drive slight "key for reverse is lost"');
    const later = (row: string): readonly string[] => states(read(key, look('2025-03-10', 6000, row)));
    expect(later('finding drive slight "glass of the hour meter fogged"')).toEqual([
      'drive: key for reverse is lost: unanswered',
      'drive: glass of the hour meter fogged: open',
    ]);
    expect(later('finding drive serious "no key"')).toEqual(['drive: no key: open']);
    const cable = look('2024-09-09', 3600, 'finding motor slight "cable chafed"');
    expect(states(read(cable, look('2025-03-10', 6000, 'finding motor serious "supply lead bare"')))).toEqual(
      ['motor: supply lead bare: open'],
    );
  });

  test.each([
    ['serviced DG1 2025-04-07 closed finding drive "new key" by "electrician"', ['key']],
    ['serviced DG1 2025-04-07 closed finding drive "fogged glass changed"', ['glass']],
    ['serviced DG1 2025-04-07 closed finding drive by "electrician"', ['glass', 'key']],
    [look('2025-09-08', 9000, 'closed finding drive "the key was found"'), ['key']],
    [look('2025-09-08', 9000, 'closed finding drive "key for reverse is lost"'), ['key']],
    [look('2025-09-08', 9000, 'closed finding drive'), ['glass', 'key']],
    [look('2025-09-08', 9000, 'not seen finding drive "no key for the room"'), []],
  ])('a closing ends the one that its words are of, else all: %s', (line, ends) => {
    const lines = [
      'finding drive slight "glass of the hour meter fogged"',
      'finding drive slight "key for reverse is lost"',
    ];
    const closed = states(read(look('2025-03-10', 6000, ...lines), line)).filter((each) =>
      each.includes('closed'),
    );
    expect(closed.map((each) => /glass|key/.exec(each)?.[0])).toEqual(ends);
  });

  test('work of the next day ends what stood open then, and no later finding', () => {
    const later = look('2025-09-08', 9000, 'finding drive slight "glass of the hour meter fogged"');
    expect(
      states(
        read(
          look('2025-03-10', 6000, 'finding drive slight "key for reverse is lost"'),
          'serviced DG1 2025-03-11 closed finding drive "by the electrician"',
          later,
        ),
      ),
    ).toEqual([
      'drive: key for reverse is lost: closed by service',
      'drive: glass of the hour meter fogged: open',
    ]);
  });

  test('what is found at an end of the machine is not of the gate that lies there', () => {
    const text = inSoundEstate('estate', look('2024-09-09', 3600, 'finding at head slight "drips"'), {
      conveyor:
        'break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm\nbreak Gate at 11.5 m to 12 m slide gate allowance 20 mm',
    });
    const { estate } = analyse([{ uri: 'estate.trough', text }]);
    const [row] = openConditionRows(estate, estate.conveyors[0]!);
    expect([row?.gate, row?.place]).toEqual([undefined, 'at a break']);
  });
});

describe('stretches side by side, and what happens again', () => {
  test.each([
    ['one ends where the other begins', 'from 4 m to 7 m', 'from 7 m to 7.6 m', 2],
    ['the other way round', 'from 7 m to 7.6 m', 'from 4 m to 7 m', 2],
    ['a hand breadth into each other', 'from 4 m to 7.1 m', 'from 7 m to 9 m', 2],
    ['they lie in each other', 'from 4 m to 7 m', 'from 6.4 m to 9 m', 1],
    ['one in the other', 'from 4 m to 7 m', 'from 5.2 m to 5.4 m', 1],
    ['two short ones measured twice', 'from 5.2 m to 5.4 m', 'from 5.4 m to 5.6 m', 1],
    ['a place at the end of a stretch', 'from 4 m to 7 m', 'at 7.2 m', 1],
  ])('%s', (_, first, then, count) => {
    const [one, two] = [first, then].map((place) => `panel torn ${place}`);
    const found = read(look('2024-09-09', 3600, one!), look('2025-03-10', 6000, two!));
    expect(states(found)).toHaveLength(count);
  });

  const blocked = look('2024-09-09', 3600, 'product blocked from 4 m to 5 m slight "bunker overfilled"');
  const again = look('2025-09-08', 9000, 'product blocked from 4 m to 5 m serious "frozen in"');
  const emptied = 'serviced DG1 2025-09-09 closed product blocked from 4 m to 5 m "thawed"';

  test('a blockage at a place that was read in between is another one, and its end is its own', () => {
    const between = look('2025-03-10', 6000, 'at 4.6 m clock 6:00 thickness 9.4 mm');
    const { estate } = read(blocked, between, again, emptied);
    expect(
      closedConditionRows(estate, estate.conveyors[0]!).map(({ what, since, how }) => [what, since, how]),
    ).toEqual([
      [
        'product blocked from 4.00 m to 5.00 m, serious',
        parseDay('2025-09-08'),
        'put right on 2025-09-09: thawed',
      ],
      [
        'product blocked from 4.00 m to 5.00 m, slight',
        parseDay('2024-09-09'),
        'over when the look of 2025-03-10 read there',
      ],
    ]);
  });

  test.each([
    ['read beside it', '2025-03-10', 'at 8 m clock 6:00 thickness 9.4 mm'],
    ['not seen there', '2025-03-10', 'at 4.6 m clock 6:00 not seen no access'],
    ['read and told of', '2025-03-10', 'at 4.6 m clock 6:00 thickness 9.4 mm\n  product blocked at 4.8 m'],
  ])('%s it is the same one', (_, date, row) => {
    expect(states(read(blocked, look(date, 6000, row), again, emptied))).toHaveLength(1);
  });

  test('silence alone ends none, whatever was read', () => {
    const between = look('2025-03-10', 6000, 'at 4.6 m clock 6:00 thickness 9.4 mm');
    expect(states(read(blocked, between))).toEqual(['product blocked from 4.00 m to 5.00 m: unanswered']);
  });
});
