// A changed drive is told once: its speed counts the wear from that day, its power is what the rules and the pack go by, a motor of
// another power ends what was wrong with the old one, and before its day nothing of it is known.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { openConditions } from '../../../src/domain/conditions/follow-up.js';
import { besideLiner } from '../../../src/generators/remaining-life/parts/beside-liner.js';
import { historyOf, recordedSpeed } from '../../../src/domain/model/history.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { asDriven, presentDrive } from '../../../src/domain/model/present-drive.js';
import { byTurns } from '../../../src/domain/model/turns.js';
import { conveyorHover } from '../../../src/lsp/hover/conveyor.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { look, works } from '../../generators/remaining-life/story.js';

const built = works.replace('drive at head speed 18 rpm', 'drive at head power 5.5 kW speed 18 rpm');
const job = 'job Reline1 { conveyor DG1 outage Spring26 reline all }\n';

function told(...records: readonly string[]) {
  const { estate, findings } = analyse([{ uri: 'a.trough', text: built + job + records.join('') }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  return { estate, conveyor, codes: findings.map(({ code }) => code) };
}

/** Of 2025-07-20, 4800 h after the start by the story's 24 h a day. */
const day = '2025-07-20';
const dayNumber = (text: string) => {
  const read = parseDay(text);
  if (read === undefined) throw new Error(text);
  return read;
};

describe('a drive change', () => {
  test('is the drive from its day on, in hover and pack, and not before it', () => {
    const { estate, conveyor } = told(
      look(2400, 'P1 thickness 11 mm'),
      `drive change DG1 ${day} power 7.5 kW speed 22 rpm by "fitter" "gear 1:63"\n`,
      look(7200, 'P1 thickness 9 mm'),
    );
    const texts = ({ power, speed }: NonNullable<ReturnType<typeof presentDrive>>) => [
      power?.text,
      speed?.text,
    ];
    const now = presentDrive(estate, conveyor);
    const before = presentDrive(estate, conveyor, dayNumber('2025-07-19'));
    expect([now && texts(now), before && texts(before)]).toEqual([
      ['7.5 kW', '22 rpm'],
      ['5.5 kW', '18 rpm'],
    ]);
    expect(conveyorHover(estate, conveyor)).toContain(`7.5 kW, 22 rpm, changed on ${day}`);
    const [reline] = estate.jobs;
    if (!reline) throw new Error('no job');
    expect(workPack(estate, reline).conveyor.facts).toContainEqual({
      name: 'Drive',
      value: `at the head, 7.5 kW, 22 rpm since ${day} (18 rpm as declared)`,
    });
    const then = knownOn(estate, dayNumber('2025-07-01'));
    expect([then.driveChanges, then.dutyChanges, then.services]).toEqual([[], [], []]);
  });

  test('counts hours by the turns of the new speed: 22/18 of an hour each, by hand', () => {
    const { estate, conveyor } = told(
      look(2400, 'P1 thickness 11 mm'),
      `drive change DG1 ${day} speed 22 rpm\n`,
      look(7200, 'P1 thickness 9 mm'),
    );
    const history = historyOf(estate, conveyor);
    expect(recordedSpeed(history)?.text).toBe('22 rpm');
    expect(byTurns(history.speeds, 7200)).toBeCloseTo(4800 + 2400 * (22 / 18), 6);
  });

  test('of the power alone moves no wear, and is listed as work', () => {
    const { estate, conveyor } = told(
      look(2400, 'P1 thickness 11 mm'),
      `drive change DG1 ${day} power 7.5 kW "new"\n`,
    );
    const history = historyOf(estate, conveyor);
    expect(byTurns(history.speeds, 7200)).toBe(7200);
    expect(JSON.stringify(besideLiner(estate, history))).toContain('7.5 kW; new');
  });

  test('of the power ends what was wrong with the motor, of the speed nothing', () => {
    const open = (change: string) => {
      const { estate, conveyor } = told(look(2400, 'motor noise serious; gearbox noise serious'), change);
      return openConditions(estate, conveyor).map(({ last }) => last.line.kind);
    };
    expect(open(`drive change DG1 ${day} power 7.5 kW\n`)).toEqual(['gearbox']);
    expect(open(`drive change DG1 ${day} speed 22 rpm\n`)).toEqual(['motor', 'gearbox']);
  });

  test.each([
    ['', true],
    [`drive change DG1 ${day} speed 22 rpm\n`, true],
    [`drive change DG1 ${day} power 7.5 kW\n`, false],
  ])('currents of another motor are not held against each other: %s', (change, isTold) => {
    const { codes } = told(
      look(2400, 'current loaded 6 A'),
      look(3600, 'current loaded 6.1 A'),
      change,
      look(7200, 'current loaded 9 A'),
    );
    expect(codes.includes('TL323')).toBe(isTold);
  });

  test.each([
    ['speed 22 rpm', `drive change DG1 ${day} speed 22 rpm\n`, false],
    ['speed 22 rpm', `drive change DG1 ${day} power 7.5 kW\n`, true],
    ['speed 18 rpm', `drive change DG1 ${day} speed 22 rpm\n`, true],
  ])('%s counted after %s', (counted, change, isTold) => {
    const { codes } = told(look(2400, 'P1 thickness 11 mm'), change, look(7200, counted));
    expect(codes.includes('TL365')).toBe(isTold);
  });

  test('put right, it is the drive from then on, though a later one stays as it was', () => {
    const { estate, conveyor } = told(
      `drive change DG1 2025-07-20 power 7.5 kW\n`,
      `drive change DG1 2025-07-21 speed 22 rpm\n`,
    );
    const [first, last] = estate.driveChanges;
    const power = told(`drive change DG1 2025-07-20 power 11 kW\n`).estate.driveChanges[0]?.power;
    if (!first || !last || !power) throw new Error('no drive change');
    const before = asDriven(estate, conveyor);
    expect(asDriven(estate, conveyor)).toBe(before);
    expect(before.drive?.power?.text).toBe('7.5 kW');
    const mended = asDriven({ driveChanges: [{ ...first, power }, last] }, conveyor);
    expect([mended.drive?.power?.text, mended.drive?.speed?.text]).toEqual(['11 kW', '22 rpm']);
  });

  test('the rules of the drive go by the one that is there', () => {
    const heavy = built.replace(
      '  screw Spiral400',
      '  resistance factor 3\n  capacity 200 t/h\n  screw Spiral400',
    );
    const codes = (change: string) =>
      analyse([{ uri: 'a.trough', text: heavy + change }]).findings.map(({ code }) => code);
    expect(codes('')).toContain('TL222');
    expect(codes(`drive change DG1 ${day} power 30 kW\n`)).not.toContain('TL222');
    expect(codes(`drive change DG1 ${day} speed 40 rpm\n`)).toContain('TL224');
  });
});
