import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { inSoundEstate } from '../../src/validation/example.js';
import type { Finding } from '../../src/validation/finding.js';
import { but, soundOrder, soundRunBelow } from '../../src/validation/telling/sound-order.js';
import { codesIn, findingsIn } from './findings-in.js';

describe('orders of work', () => {
  test('an order that can be built is silent, and so is a job without one', () => {
    expect(codesIn('job', soundOrder)).toEqual([]);
    expect(codesIn('job', '')).toEqual([]);
  });

  test('two fronts: the reason with its numbers, the other front, and one fix to take', () => {
    const [finding] = findingsIn(
      'job',
      but(soundOrder, [
        '  fit run above Gate starting at head by Alpha attended by Bravo',
        '  fit panels 3 to 4 of run above Gate starting at head by Alpha attended by Bravo\n  fit panels 1 to 2 of run above Gate starting at tail by Bravo attended by Alpha',
      ]),
    );
    expect(finding?.code).toBe('TL402');
    expect(finding?.severity).toBe('error');
    // Four panels of ± 1 mm and ± 2 mm of measuring: 6 mm at worst, √(4·1² + 2²) = 2.8 mm root-sum-square.
    expect(finding?.why).toContain('6 mm at worst, 2.8 mm root-sum-square');
    expect(finding?.related).toHaveLength(1);
    expect(finding?.fixes?.filter((fix) => fix.preferred)).toHaveLength(1);
  });

  test('`clean all` is of what the job renews and strips, and not of sound liner beside it', () => {
    const clean = '  clean run above Gate by Alpha attended by Bravo\n';
    const all = but(soundOrder, [clean, '  clean all by Alpha attended by Bravo\n']);
    expect(codesIn('job', all)).toEqual([]);
    const strip = '  strip run above Gate by Alpha attended by Bravo\n';
    expect(codesIn('job', but(all, [strip, '']))).toContain('TL409');
  });

  test('independent mistakes are all told', () => {
    const codes = codesIn(
      'job',
      but(soundOrder, ['  clean run above Gate by Alpha attended by Bravo\n', ''], ['  run loaded\n', '']),
    );
    expect([...codes].sort()).toEqual(['TL410', 'TL425']);
  });
});

describe('jobs and their surroundings', () => {
  test('a window within an outage is as good as naming it', () => {
    expect(codesIn('job', '  outage Spring26')).toEqual([]);
  });

  test('a crew that is short of hands for the window: a day is not enough, a fortnight is', () => {
    expect(
      codesIn(
        'estate',
        '\njob J1 {\n  conveyor DG1\n  window 2027-04-12 to 2027-04-12\n  reline all\n  crews Alpha\n}',
      ),
    ).toEqual(['TL464']);
    expect(
      codesIn(
        'estate',
        '\njob J1 {\n  conveyor DG1\n  window 2027-04-12 to 2027-04-23\n  reline all\n  crews Alpha\n}',
      ),
    ).toEqual([]);
  });

  test('sling angles: 45 degrees is allowed, more is told', () => {
    expect(codesIn('job', '  sling angle 45 deg')).toEqual([]);
    expect(codesIn('job', '  sling angle 46 deg')).toEqual(['TL438']);
  });

  test('a job done before the newest record is settled by the reline that was written down', () => {
    const job =
      '\ninspection DG1 2025-03-10 meter 6200 h { P1 colour ivory }\njob J1 {\n  conveyor DG1\n  window 2024-09-09 to 2024-09-13\n  reline run above Gate\n  crews Alpha\n}';
    expect(codesIn('estate', job)).toEqual(['TL436']);
    expect(
      codesIn(
        'estate',
        `${job}\nreline DG1 2024-09-11 meter 3600 h {\n  liner TwoLayer12\n  scope run above Gate\n}`,
      ),
    ).toEqual([]);
  });
});

describe('what the team may lift', () => {
  test('doing what one finding says does not bring the other', () => {
    const found = (lift: string, length: number): readonly Finding[] =>
      analyse([
        {
          uri: 'estate.trough',
          text: inSoundEstate('job', `  team lift ${lift}`).replace(
            /panel length [^\n]*/,
            `panel length ${length} mm ± 1 mm`,
          ),
        },
      ]).findings.filter(({ code }) => code === 'TL445' || code === 'TL449');
    const [first] = found('45 kg', 6000);
    expect(first?.code).toBe('TL445');
    const [, length] =
      /Cut panels of \w+ to ([\d.]+) (?:mm|m) at most and let the team lift 37\.5 kg/.exec(
        first?.todo ?? '',
      ) ?? [];
    const mm = Number(length) < 100 ? Number(length) * 1000 : Number(length);
    expect(mm).toBeGreaterThan(500);
    expect(found('37.5 kg', Math.floor(mm))).toEqual([]);
    expect(found('37.5 kg', Math.ceil(mm * 1.02)).map(({ code }) => code)).toEqual(['TL449']);
    expect(found('37.5 kg', 6000)[0]?.todo).toBe(first?.todo);
  });
});

test('a barrier with a finding that was told in other words since is quoted in all of them, from its first day', () => {
  const looks = [
    'inspection DG1 2025-04-07 meter 6500 h {',
    '  view downstream',
    '  finding gate at Gate serious "hose on order, pinned"',
    '}',
  ].join('\n');
  const [told] = findingsIn('job', soundRunBelow, {
    inspection: 'finding gate at Gate serious "creeps open under load"',
  }).filter(({ code }) => code === 'TL538');
  expect(told?.message).toMatch(/open of it since 2025-03-10: gate at Gate: creeps open under load/);
  const text = inSoundEstate('job', soundRunBelow, {
    inspection: 'finding gate at Gate serious "creeps open under load"',
  });
  const [since] = analyse([{ uri: 'a.trough', text: `${text}\n${looks}\n` }]).findings.filter(
    ({ code }) => code === 'TL538',
  );
  expect(since?.message).toMatch(
    /since 2025-03-10: gate at Gate: hose on order, pinned.* \(before: "creeps open under load"\)\.$/,
  );
  expect(since?.related).toHaveLength(2);
});

test('who stands by on a platform is counted with the reason why they are up there', () => {
  const [told] = findingsIn(
    'job',
    but(
      soundOrder,
      ['\norder {', '\naccess units MP1, Small\norder {'],
      [
        '  strip run above Gate by Alpha attended by Bravo',
        '  strip run above Gate by Alpha attended by Bravo using Small',
      ],
    ),
  ).filter(({ code }) => code === 'TL478');
  expect(told?.message).toContain('(1 standing by)');
  expect(told?.why).toContain('has to see the opening, and that is up there; `with 2 people` says how many');
});
