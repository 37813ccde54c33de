// A reading that was found wrong later, as small stories: what counts, what every output says of it, what stays as it was
// before that was known, and what a correction that cannot be meant does (nothing, and it is told).

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { readingHover } from '../../../src/lsp/hover/records.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const looks = (second: string): string => `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.4 mm
  P2 thickness 10.5 mm
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 ${second}
  P2 thickness 9.6 mm
}`;
const correction = (says: string, on = '2025-03-20'): string =>
  `correction DG1 ${on} P1 read on 2025-03-10 ${says} by "day shift" "gauge set for steel"`;

function read(...blocks: readonly string[]): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', blocks.join('\n')) }]);
}

const day = (text: string) => parseDay(text)!; // a date of the test's own

/** Days of the limit by hand and by the model of each point, on one day. */
function limits({ estate }: Analysis, asOf = '2025-06-02', depth: 'hand' | 'model' = 'hand'): unknown {
  const shown = remainingLife(estate, { asOf: day(asOf), depth, track: false }).conveyors.map(({ points }) =>
    points.map(({ place, limitByHand, model, readings }) => [
      place.name,
      limitByHand,
      model?.condemn,
      readings.map(({ exposure, seen }) => [exposure, seen]),
    ]),
  );
  return JSON.parse(JSON.stringify(shown)); // without the functions that a forecast carries
}

describe('a reading corrected later', () => {
  test('counts in every forecast as if it had been read so', () => {
    const wrong = read(looks('thickness 6.4 mm'));
    const corrected = read(looks('thickness 6.4 mm'), correction('thickness 9.4 mm'));
    const model = (of: Analysis): unknown => limits(of, '2025-06-02', 'model');
    expect(model(corrected)).toEqual(model(read(looks('thickness 9.4 mm'))));
    expect(model(corrected)).not.toEqual(model(wrong));
  });

  test.each([
    ['panel 2 of run 2', '', 'panel 2 of run 2 colour ivory', 'colour ivory', 'colour teal'],
    [
      'panel 2 of run 2 clock 5:00',
      '',
      'panel 2 of run 2 clock 5:00 colour ivory',
      'colour ivory',
      'colour teal',
    ],
    ['from 3 m to 4.6 m', '', 'from 3 m to 4.6 m colour ivory', 'colour ivory', 'colour teal'],
    [
      'from 3 m to 4.6 m clock 5:00',
      '',
      'from 3 m to 4.6 m clock 5:00 thickness 8 mm',
      'thickness 8 mm',
      'thickness 9 mm',
    ],
    [
      'at 3 m clock 5:00 to 7:00',
      '',
      'at 3 m clock 5:00 to 7:00 thickness 8 mm',
      'thickness 8 mm',
      'thickness 9 mm',
    ],
    ['P1', ' written as 6 mm', 'P1 thickness 6 mm', 'thickness 6 mm', 'thickness 9.1 mm'],
    ['P1', ' written as teal', 'P1 colour teal', 'colour teal', 'colour ivory'],
  ])('is named as the look has it: %s%s', (spot, as, line, was, now) => {
    const first = looks(`thickness 9.3 mm\n  ${line}`);
    const said = read(
      first,
      `correction DG1 2025-03-20 ${spot} read on 2025-03-10${as} ${now} by "shift" "slip"`,
    );
    expect(said.findings.map(({ code }) => code).filter((code) => /^TL(10|36)/.test(code))).toEqual([]);
    expect(limits(said)).toEqual(limits(read(first.replace(line, line.replace(was, now)))));
    expect(limits(said)).not.toEqual(limits(read(first)));
  });

  test('of a whole look may say that none of it counts, whatever was read', () => {
    const first = looks('colour teal\n  at 3 m clock 5:00 thickness 8 mm');
    const none = read(
      first,
      'correction DG1 2025-03-20 all read on 2025-03-10 does not count by "shift" "from the head end"',
    );
    expect(none.findings.map(({ code }) => code).filter((code) => /^TL(10|36)/.test(code))).toEqual([]);
    const [life] = remainingLife(none.estate, { track: false }).conveyors;
    const counted = life?.points.flatMap(({ place, readings }) =>
      readings.map(({ day: on }) => [place.name, on]),
    );
    expect(counted).toEqual([
      ['P1', day('2024-09-09')],
      ['P2', day('2024-09-09')],
    ]);
  });

  test('that does not count is as good as not read, and is listed among what was left out', () => {
    const withdrawn = read(looks('thickness 6.4 mm'), correction('does not count'));
    expect(limits(withdrawn)).toEqual(limits(read(looks('not seen').replace('  P1 not seen\n', ''))));
    const [life] = remainingLife(withdrawn.estate, { track: false }).conveyors;
    expect(life?.points[0]?.leftOut.map(({ reason }) => reason)).toEqual([
      '6.4 mm read; said on 2025-03-20 not to count by day shift: gauge set for steel',
    ]);
  });

  test('leaves no spot behind that nobody else ever read', () => {
    const spot = looks('thickness 9.4 mm\n  at 3 m clock 6:30 thickness 11 mm');
    const back = correction('does not count').replace('P1 read', 'at 3 m clock 6:30 read');
    const without = read(looks('thickness 9.4 mm'));
    const taken = read(spot, back);
    const places = ({ estate }: Analysis): readonly string[] =>
      remainingLife(estate, { track: false }).conveyors[0]?.points.map(({ place }) => place.name) ?? [];
    expect(places(read(spot))).toHaveLength(3);
    expect(places(taken)).toEqual(places(without));
    expect(limits(taken)).toEqual(limits(without));
    const asked = ({ estate }: Analysis): readonly string[] =>
      inspectionSheet(estate, estate.conveyors[0]!).points.map(({ writes }) => writes);
    expect(asked(taken)).toEqual(asked(without));
  });

  test('may turn out to have been a colour, bare steel, or nothing at all', () => {
    for (const says of ['colour teal', 'trough showing', 'not seen'])
      expect(limits(read(looks('thickness 6.4 mm'), correction(says))), says).toEqual(
        limits(read(looks(says))),
      );
  });

  test('is told in every form of the report, with who and why, and what was first written', () => {
    const { estate } = read(looks('thickness 6.4 mm'), correction('thickness 9.4 mm'));
    const report = remainingLife(estate, { track: false });
    const cells = ['P1', '2025-03-10', '6.4 mm', '9.4 mm', '2025-03-20', 'day shift', 'gauge set for steel'];
    expect(remainingLifeMarkdown(report)).toContain(`| ${cells.join(' | ')} |`);
    const html = remainingLifeHtml(report);
    expect(html).toContain('Readings corrected later');
    const json = JSON.parse(remainingLifeJson(report)) as {
      conveyors: { corrections: Record<string, string>[] }[];
    };
    expect(json.conveyors[0]?.corrections.map((row) => Object.values(row))).toEqual([cells]);
    const sheet = inspectionSheet(estate, estate.conveyors[0]!);
    expect(sheet.points.find(({ name }) => name === 'P1')?.last?.words).toContain(
      'corrected on 2025-03-20 from 6.4 mm by day shift',
    );
    const row = [...estate.readings.corrected.keys()][0] ?? -1;
    expect(readingHover(estate, row)).toContain('corrected');
  });

  test('is not yet known to a report of a day before it', () => {
    const wrong = read(looks('thickness 6.4 mm'));
    const corrected = read(looks('thickness 6.4 mm'), correction('thickness 9.4 mm'));
    expect(limits(corrected, '2025-03-15')).toEqual(limits(wrong, '2025-03-15'));
    const then = knownOn(corrected.estate, day('2025-03-15'));
    expect([...then.readings.value]).toEqual([...wrong.estate.readings.value]);
    expect(then.corrections).toEqual([]);
    expect(then.readings.corrected.size).toBe(0);
  });

  test('may itself be corrected on a later day, and the history keeps all three', () => {
    const { estate } = read(
      looks('thickness 6.4 mm'),
      correction('thickness 9.4 mm'),
      correction('does not count', '2025-04-01'),
    );
    expect(estate.corrections.map(({ outcome }) => outcome)).toEqual(['replaced', 'counts']);
    expect(
      [...estate.readings.corrected.values()].map(({ versions }) => versions.map((v) => v.words)),
    ).toEqual([['6.4 mm', '9.4 mm', 'does not count']]);
  });

  test('takes away the findings that the wrong number gave', () => {
    const codes = ({ findings }: Analysis): readonly string[] => findings.map(({ code }) => code);
    const grown = looks('thickness 11.9 mm');
    expect(codes(read(grown))).toContain('TL306');
    expect(codes(read(grown, correction('thickness 9.4 mm')))).not.toContain('TL306');
    expect(codes(read(grown, correction('does not count')))).not.toContain('TL306');
  });

  test('moves no number where it cannot be meant', () => {
    const plain = limits(read(looks('thickness 6.4 mm')));
    const pointless = [
      correction('thickness 9.4 mm').replace('2025-03-10', '2025-03-11'),
      correction('thickness 9.4 mm').replace('P1', 'P9'),
      correction('thickness 9.4 mm', '2025-03-01'),
      correction('colour puce'),
      correction('thickness 94'),
      correction('thickness -1 mm'),
    ];
    for (const text of pointless) {
      const found = read(looks('thickness 6.4 mm'), text);
      expect(limits(found), text).toEqual(plain);
      expect(found.findings.filter(({ severity }) => severity === 'error').length, text).toBeGreaterThan(0);
    }
  });

  test.each([
    ['taken back, then read anew', ['does not count', 'thickness 9.4 mm'], 'thickness 9.4 mm'],
    ['read anew, then taken back', ['thickness 9.4 mm', 'does not count'], 'not seen'],
    ['two numbers', ['thickness 9.1 mm', 'thickness 9.4 mm'], 'thickness 9.4 mm'],
    ['three, the first again', ['thickness 9.4 mm', 'colour teal', 'thickness 9.4 mm'], 'thickness 9.4 mm'],
  ])('twice on one day, the later line holds, and it is said: %s', (_, says, holds) => {
    const found = read(looks('thickness 6.4 mm'), ...says.map((each) => correction(each)));
    expect(limits(found)).toEqual(limits(read(looks(holds).replace('  P1 not seen\n', ''))));
    expect(found.findings.filter(({ code }) => code === 'TL367')).toHaveLength(1);
    expect(found.estate.corrections.map(({ outcome }) => outcome)).not.toContain('replaced');
  });

  test('twice on one day in two files, the reading that both call wrong counts for nothing', () => {
    const texts = [looks('thickness 6.4 mm') + correction('does not count'), correction('thickness 9.4 mm')];
    const { estate, findings } = analyse(
      texts.map((text, i) => ({ uri: `${i}.trough`, text: i === 0 ? inSoundEstate('estate', text) : text })),
    );
    const nothing = read(looks('not seen').replace('  P1 not seen\n', ''));
    expect(limits({ ...nothing, estate })).toEqual(limits(nothing));
    expect(findings.filter(({ code }) => code === 'TL367')).toHaveLength(2);
  });

  test('and the whole look on the same day: what is said of the point itself holds there', () => {
    const all = correction('thickness 0.4 mm less').replace('P1', 'all');
    for (const lines of [
      [all, correction('thickness 9.4 mm')],
      [correction('thickness 9.4 mm'), all],
    ]) {
      const { estate, findings } = read(looks('thickness 6.4 mm'), ...lines);
      expect([...estate.readings.value].slice(-2)).toEqual([9.4, 9.2]);
      expect(findings.map(({ code }) => code)).not.toContain('TL367');
    }
  });

  test('whatever it says, taking it back on the next day gives the first reading again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 119 }), (tenths) => {
        fc.pre(tenths !== 64);
        const back = read(
          looks('thickness 6.4 mm'),
          correction(`thickness ${tenths / 10} mm`),
          correction('thickness 6.4 mm', '2025-03-21'),
        );
        expect([...back.estate.readings.value]).toEqual([
          ...read(looks('thickness 6.4 mm')).estate.readings.value,
        ]);
      }),
      { numRuns: 25 },
    );
  });
});

describe('all readings of a look, by as much', () => {
  const all = (says: string, on = '2025-03-20'): string =>
    `correction DG1 ${on} all read on 2025-03-10 ${says} by "day shift" "gauge 0.4 mm high"`;
  const right = read(looks('thickness 9.4 mm').replace('P2 thickness 9.6', 'P2 thickness 9.2'));

  test.each(['thickness 0.4 mm less', '0.4 mm less', 'thickness -0.4 mm', 'thickness 0.04 cm less'])(
    '%s counts as if each had been read so',
    (says) => {
      const corrected = read(looks('thickness 9.8 mm'), all(says));
      expect(corrected.findings.filter(({ severity }) => severity !== 'information')).toEqual(
        right.findings.filter(({ severity }) => severity !== 'information'),
      );
      expect(limits(corrected)).toEqual(limits(right));
      const page = remainingLifeMarkdown(remainingLife(corrected.estate));
      expect(page.split('gauge 0.4 mm high').length - 1).toBeGreaterThanOrEqual(2);
      expect(limits(corrected, '2025-03-15')).toEqual(limits(read(looks('thickness 9.8 mm')), '2025-03-15'));
    },
  );

  test('more is thicker, and a colour is left alone', () => {
    const { estate } = read(looks('colour ivory'), all('0.4 mm more'));
    const values = [...estate.readings.value].slice(2);
    expect(values).toEqual([0, 10]);
  });

  test('one that is corrected by itself later goes by that', () => {
    const { estate } = read(
      looks('thickness 9.8 mm'),
      all('0.4 mm less'),
      correction('thickness 9 mm', '2025-03-22'),
    );
    expect([...estate.readings.value].slice(2)).toEqual([9, 9.2]);
    expect(estate.corrections.map(({ outcome }) => outcome)).toEqual(['counts', 'counts']);
  });

  test.each(['does not count', 'colour ivory', 'not seen', 'trough showing'])(
    'what was corrected to %s before is none of them, and the others are',
    (says) => {
      const earlier = correction(says, '2025-03-15');
      const { estate, findings } = read(looks('thickness 9.8 mm'), earlier, all('0.4 mm less'));
      expect([...estate.readings.value].slice(2)).toEqual([
        [...read(looks('thickness 9.8 mm'), earlier).estate.readings.value][2],
        9.2,
      ]);
      expect(estate.corrections.map(({ outcome }) => outcome)).toEqual(['counts', 'counts']);
      expect(findings.map(({ code }) => code)).not.toContain('TL367');
      expect(remainingLifeMarkdown(remainingLife(estate))).not.toContain('NaN');
    },
  );

  test.each([
    [all('thickness 0.4 mm'), 'does not say which way'],
    [all('0.4 mm less').replace('2025-03-10', '2025-03-11'), 'of a day without a look'],
    [all('80 mm less'), 'more than any gauge is off'],
  ])('%s moves nothing and is told: %s', (line) => {
    const bad = read(looks('thickness 9.8 mm'), line);
    expect(bad.findings.some(({ severity }) => severity !== 'information')).toBe(true);
    expect([...bad.estate.readings.value].slice(2)).toEqual([9.8, 9.6]);
  });
});
