// Findings that stand open, work on a day without a look, places by name, stretch and panel, and a change of speed alone: what a
// line says reaches the model, and what it ends is over.

import { describe, expect, test } from 'vitest';
import { followUp, openConditions } from '../../src/domain/conditions/follow-up.js';
import { conditionWords } from '../../src/domain/conditions/kinds.js';
import { closingWords } from '../../src/domain/conditions/rows.js';
import { historyOf, recordedSpeed } from '../../src/domain/model/history.js';
import { dutyOn } from '../../src/domain/model/duty.js';
import { conveyor, read, specifications } from './read.js';

const machine =
  specifications +
  conveyor(
    'DG1',
    'break Tail at 0 m end plate\n  break Gate at 12.4 m to 12.9 m slide gate allowance 12 mm\n  break Head at 22.4 m end plate\n' +
      '  drive at head power 5.5 kW speed 18 rpm\n  hatch H2 at 5 m width 300 mm\n  isolation Q42 "local isolator" electrical\n  isolation V1 hydraulic at 12 m\n  lifting point L1 at 11 m limit 500 kg\n  hold-down every 1 m from 0.5 m to 21.5 m both sides\n  point P1 at 6.2 m clock 7:30',
  );

const look = (day: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${day} meter ${meter} h {\n  ${rows.join('\n  ')}\n}\n`;

function state(...records: readonly string[]): {
  readonly open: readonly string[];
  readonly over: readonly string[];
  readonly problems: readonly unknown[];
} {
  const { estate, problems } = read(machine + records.join(''));
  const [dg1] = estate.conveyors;
  if (!dg1) throw new Error('no conveyor');
  return {
    problems,
    open: openConditions(estate, dg1).map(({ last }) => conditionWords(last.line)),
    over: followUp(estate, dg1).conditions.flatMap(({ first, closed }) =>
      closed ? [`${conditionWords(first.line)} | ${closingWords(closed)}`] : [],
    ),
  };
}

describe('a finding', () => {
  test('is at any part by its name, an isolation without a chainage too', () => {
    const rows = ['Q42', 'V1', 'L1'].map((name) => `finding at ${name} serious "bent"`);
    const first = look('2026-01-05', 10, ...rows);
    expect(state(first)).toEqual({
      problems: [],
      open: ['finding at Q42: bent', 'finding at V1: bent', 'finding at L1: bent'],
      over: [],
    });
    expect(state(first, look('2026-02-02', 90, 'closed finding at Q42')).open).toEqual([
      'finding at V1: bent',
      'finding at L1: bent',
    ]);
    expect(state(look('2026-01-05', 10, 'finding at Q9 serious "bent"')).problems).toHaveLength(1);
  });

  test('without a severity is a note, with one it stands open until it is closed', () => {
    const first = look('2026-01-05', 10, 'finding gate at Gate serious "bent"', 'finding "all swept"');
    expect(state(first)).toEqual({ problems: [], open: ['gate at Gate: bent'], over: [] });
    expect(state(first, look('2026-02-02', 90, 'closed finding gate at Gate "straightened"'))).toEqual({
      problems: [],
      open: [],
      over: ['gate at Gate: bent | closed by the look of 2026-02-02'],
    });
  });

  test('of one part and place with other words is another one, and closed in other words both are', () => {
    const two = look(
      '2026-01-05',
      10,
      'finding hatch at H2 serious "hinge"',
      'finding hatch at H2 slight "lock"',
    );
    expect(state(two).open).toEqual(['hatch at H2: hinge', 'hatch at H2: lock']);
    expect(state(two, look('2026-02-02', 90, 'closed finding hatch at H2 "lock"')).open).toEqual([
      'hatch at H2: hinge',
    ]);
    expect(state(two, look('2026-02-02', 90, 'closed finding hatch at H2 "new lid"')).open).toEqual([]);
    expect(state(two, look('2026-02-02', 90, 'finding hatch at H2 urgent "hinge"')).open).toHaveLength(2);
  });

  test('of a later look in other words is the same one where it names a part, else another', () => {
    const worn = look('2026-01-05', 10, 'finding gate at Gate serious "wiper worn"');
    const creeps = look('2026-02-02', 90, 'finding gate at Gate serious "creeps open under load"');
    expect(state(worn, creeps).open).toEqual(['gate at Gate: creeps open under load']);
    expect(state(worn, look('2026-02-02', 90, 'finding gate at Gate urgent')).open).toHaveLength(1);
    const limit = look('2026-01-05', 10, 'finding at Gate serious "limit switch dead"');
    const lock = look('2026-02-02', 90, 'finding at Gate urgent "isolation dead"');
    expect(state(limit, lock).open.toSorted()).toEqual([
      'finding at Gate: isolation dead',
      'finding at Gate: limit switch dead',
    ]);
  });

  test('without part and place goes by its words', () => {
    const one = look('2026-01-05', 10, 'finding slight "it hums"');
    expect(state(one, look('2026-02-02', 90, 'closed finding "something else"')).open).toEqual([
      'finding: it hums',
    ]);
    expect(state(one, look('2026-02-02', 90, 'closed finding "it hums"')).open).toEqual([]);
  });

  test('names a part that is declared, and one that is not there is told', () => {
    const { estate, problems } = read(machine + look('2026-01-05', 10, 'finding hatch at H2 "stiff"'));
    expect([problems, estate.inspections[0]?.remarks[0]?.at?.value]).toEqual([[], 5000]);
    expect(state(look('2026-01-05', 10, 'finding hatch at H9 "stiff"')).problems).toHaveLength(1);
  });
});

describe('work on a day', () => {
  test.each([
    ['hold-down loose at 9.5 m', 'hold-down tightened at 9.5 m', true],
    ['hold-down bent at 9.5 m', 'hold-down tightened at 9.5 m', false],
    ['hold-down bent at 9.5 m', 'hold-down renewed at 9.5 m', true],
    ['hold-down bent at 9.5 m', 'hold-down renewed at 15.5 m', false],
    ['gate leaking at Gate', 'gate seal renewed at Gate', true],
    ['gate stuck at Gate', 'gate seal renewed at Gate', false],
    ['gate stuck at Gate', 'closed gate stuck at Gate "cylinder renewed"', true],
    ['spiral weld cracked at 9 m', 'closed spiral weld cracked at 9.1 m by "coded welder"', true],
    ['spiral weld cracked at 9 m', 'spiral at 9 m "welded" by "coded welder"', false],
    ['guard loose at drive', 'guard tightened at head', true],
    ['guard missing at drive', 'guard renewed at tail', false],
    ['pull cord slack', 'pull cord tightened', true],
    ['pull cord dead', 'pull cord tightened', false],
    ['emergency stop dead at tail', 'emergency stop renewed at 0.2 m', true],
    ['interlock dead at H2', 'interlock switch renewed at H2', true],
    ['interlock bypassed at H2 urgent', 'closed interlock bypassed at H2 "bridge out, tried"', true],
    ['finding guard at drive serious "two screws out"', 'closed finding guard at drive', true],
    ['cable damaged at 9 m', 'cable renewed at 9 m', true],
    ['walkway damaged from 3 m to 6 m', 'closed walkway damaged at 4 m', true],
    ['sign missing at tail', 'sign renewed at tail', true],
    ['coupling noise', 'coupling aligned', false],
    ['coupling noise', 'coupling renewed', true],
    ['motor noise', 'motor bearings renewed', true],
    ['finding gate at Gate serious "bent"', 'gate renewed at Gate', true],
    ['finding gate at Gate serious "bent"', 'closed finding gate at Gate', true],
  ])('%s, then %s: %s', (seen, done, isOver) => {
    const before = look('2026-01-05', 10, seen);
    for (const work of [
      `serviced DG1 2026-02-02 ${done}\n`,
      look('2026-02-02', 90, `serviced ${done}`),
      `reline DG1 2026-02-02 meter 90 h {\n  scope from 20 m to 21 m\n  serviced ${done}\n}\n`,
    ]) {
      const { open, over, problems } = state(before, work);
      expect([problems, open.length, over.length]).toEqual([[], isOver ? 0 : 1, isOver ? 1 : 0]);
      if (isOver) expect(over[0]).toContain('put right on 2026-02-02');
    }
  });
});

test('work that only says what it ends is told by its note, and nothing is said where there is none', () => {
  const seen = look('2026-01-05', 10, 'gate stuck at Gate');
  const done = (note: string): readonly string[] =>
    state(seen, `serviced DG1 2026-02-02 closed gate stuck at Gate${note}\n`).over;
  expect(done(' "cylinder renewed"')).toEqual([
    'gate stuck at Gate | put right on 2026-02-02: cylinder renewed',
  ]);
  expect(done('')).toEqual(['gate stuck at Gate | put right on 2026-02-02']);
});

describe('a place', () => {
  const at = (row: string): readonly (number | undefined)[] => {
    const { estate, problems } = read(machine + look('2026-01-05', 10, row));
    expect(problems).toEqual([]);
    const [line] = estate.inspections[0]?.conditions ?? [];
    return [line?.at?.value, line?.to?.value];
  };
  test('is a stretch, the lower end first, whichever way it is written', () => {
    expect(at('bolts missing 3 from 16 m to 17 m')).toEqual([16000, 17000]);
    expect(at('bolts missing 3 at 17 m to 16 m')).toEqual([16000, 17000]);
  });
  test('is a panel, as it lay on that day', () => {
    // Run 1 is laid in panels of 1200 mm from the tail, since only the gate above takes up an error.
    expect(at('bolts loose 3 at panel 2 of run 1')).toEqual([1200, 2400]);
  });
  test('is a side', () => {
    const text = look(
      '2026-01-05',
      10,
      'hold-down missing at 9.5 m left side',
      'hold-down missing at 9.5 m right side',
    );
    expect(state(text).open).toEqual([
      'hold-down missing at 9.50 m left side',
      'hold-down missing at 9.50 m right side',
    ]);
    expect(state(text, look('2026-02-02', 90, 'closed hold-down missing at 9.5 m left side')).open).toEqual([
      'hold-down missing at 9.50 m right side',
    ]);
    const against = look('2026-01-05', 10, 'view upstream', 'hold-down missing at 9.5 m left side');
    expect(state(against).open).toEqual(['hold-down missing at 9.50 m right side']);
  });
  test('along which a colour shows is one reading at its middle', () => {
    const { estate, problems } = read(
      machine +
        look('2026-01-05', 10, 'gearbox noise', 'from 18 m to 19.5 m clock 5:00 second colour showing "wet"'),
    );
    expect(problems).toEqual([]);
    expect([estate.readings.count, estate.places.at(-1)?.at, estate.readings.notes.get(0)]).toEqual([
      1,
      18750,
      'from 18 m to 19.5 m: wet',
    ]);
  });
});

test('a duty record of a speed alone keeps the hours of before', () => {
  const { estate, problems } = read(
    machine +
      'duty DG1 from 2025-01-01 90 h/week\nduty DG1 from 2026-01-01 speed 14 rpm\n' +
      look('2026-02-02', 90, 'by "x"'),
  );
  const [dg1] = estate.conveyors;
  if (!dg1) throw new Error('no conveyor');
  const history = historyOf(estate, dg1);
  expect(problems).toEqual([]);
  expect(recordedSpeed(history)?.value).toBe(14);
  const day = history.inspections[0]?.inspection.date.day;
  if (day === undefined) throw new Error('no look');
  expect(dutyOn(history.duties, day)?.perDay).toBeCloseTo(90 / 7, 9);
});
