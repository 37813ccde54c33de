// Steel that lies bare: since when, how fast it wears, how long it lasts. Numbers of the inspection arithmetic are those that
// circulate as worked examples of API 570, 7.2 (remaining life): (7.8 − 3.24) / 15 = 0.304 and (3.24 − 0.37) / 0.34 = 8.441, here
// with a thousand hours for a year.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sizesOf } from '../../../src/generators/remaining-life/sizes.js';
import { plateCells } from '../../../src/generators/remaining-life/trough-words.js';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { closedConditionRows, openConditionRows } from '../../../src/domain/conditions/rows.js';
import { troughState, type TroughState } from '../../../src/domain/conditions/trough.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { lastLineText } from '../../../src/generators/remaining-life/trough-words.js';
import { metric } from '../../../src/generators/remaining-life/sizes.js';
import { inspectionSheetHtml } from '../../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const thick =
  'trough inside radius 226 mm side height 260 mm plate 7.8 mm\n  minimum plate 0.37 mm\n  clearance 1 mm to 60 mm';

function read(...blocks: readonly string[]): Analysis {
  const text = inSoundEstate('estate', blocks.join('\n'), { conveyor: thick });
  return analyse([{ uri: 'estate.trough', text }]);
}

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  ${rows.join('\n  ')}\n}`;

const stateOf = ({ estate }: Analysis): TroughState => troughState(estate, estate.conveyors[0]!);

const lost = look('2024-02-05', 500, 'panel missing at 4.2 m');
const first = look('2025-09-01', 13_500, 'panel missing at 4.2 m', 'plate at 4.2 m thickness 3.92 mm');
const second = look('2025-12-15', 15_500, 'panel missing at 4.2 m', 'plate at 4.25 m thickness 3.24 mm');

describe('the arithmetic over bare hours', () => {
  test('long-term 0.304 mm, short-term 0.34 mm, and 8441 h to the minimum', () => {
    const [place] = stateOf(read(lost, first, second)).places;
    expect(place?.readings.map(({ bareLeast, bareMost }) => [bareLeast, bareMost])).toEqual([
      [13_000, 13_500],
      [15_000, 15_500],
    ]);
    if (place?.hand.kind !== 'rate') throw new Error('no rate');
    expect(place.hand.longTerm * 1000).toBeCloseTo(0.304, 9);
    expect(place.hand.ruling * 1000).toBeCloseTo(0.34, 9);
    expect(place.hand.remaining / 1000).toBeCloseTo((3.24 - 0.37) / 0.34, 9);
    expect(place.bare).toBe(true);
  });

  test('read on the day the panel was found missing and again: the newest counts, over the hours that passed between', () => {
    const seen = look('2024-02-05', 500, 'panel missing at 4.2 m', 'plate at 4.2 m thickness 7.4 mm');
    const later = look('2024-06-03', 2780, 'panel missing at 4.2 m', 'plate at 4.2 m thickness 6.7 mm');
    const [place] = stateOf(read(seen, later)).places;
    // Bare for none to 500 h at the first, 2280 to 2780 h at the second: 0.7 mm in 2280 h, whenever it was lost.
    if (place?.hand.kind !== 'rate') throw new Error('no rate');
    expect(place.hand.last.thickness).toBe(6.7);
    expect(place.hand.ruling).toBeCloseTo(Math.max(0.7 / 2280, 1.1 / 2780), 12);
    expect(place.hand.remaining).toBeCloseTo((6.7 - 0.37) / (1.1 / 2780), 6);
    expect(place.rateIsLeast).toBe(true);
  });

  test('whatever the readings and hours, the life is reckoned from the newest', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 12 })), {
          minLength: 1,
          maxLength: 5,
        }),
        (steps) => {
          let [meter, thickness] = [500, 7.8];
          const looks = steps.map(([hours, tenths], k) => {
            if (k > 0) meter += hours;
            thickness = Math.round(10 * thickness - tenths) / 10;
            const rows = [
              'panel missing at 4.2 m',
              `plate at 4.2 m thickness ${Math.max(0.5, thickness)} mm`,
            ];
            return look(`2024-0${k + 2}-05`, meter, ...rows);
          });
          const [place] = stateOf(read(...looks)).places;
          const last = place?.readings.at(-1)?.thickness;
          if (place?.hand.kind === 'no reading') throw new Error('every place has a reading with hours');
          expect(place?.hand.last.thickness).toBe(last);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('only hours without a liner count: a reline stops the clock, and the steel is told as lined', () => {
    const reline = 'reline DG1 2024-09-02 meter 4500 h {\n  liner TwoLayer12\n}';
    const { places, spans } = stateOf(
      read(lost, reline, look('2025-12-15', 15_500, 'plate at 4.2 m thickness 7.4 mm')),
    );
    expect(spans.map(({ until }) => until?.hours)).toEqual([4500]);
    expect(places[0]?.readings[0]).toMatchObject({ bareLeast: 4000, bareMost: 4500 });
    if (places[0]?.hand.kind !== 'rate') throw new Error('no rate');
    expect(places[0].hand.longTerm).toBeCloseTo(0.4 / 4000, 12);
    expect(places[0].bare).toBe(false);
  });

  test('a closed condition stops it too, and steel that was never bare has no rate', () => {
    const closed = look('2024-09-02', 4500, 'closed panel missing at 4.2 m "put back"');
    const { places } = stateOf(
      read(
        lost,
        closed,
        look('2025-12-15', 15_500, 'plate at 4.2 m thickness 7.4 mm', 'plate at 9 m thickness 7.8 mm'),
      ),
    );
    expect(places.map(({ readings }) => readings[0]?.bareLeast)).toEqual([4000, 0]);
    expect(places[1]?.hand.kind).toBe('no reading');
  });

  test('a patch starts anew: its own thickness, and the hours since it was welded', () => {
    const patch = 'patch DG1 2025-09-08 at 4 m to 4.6 m thickness 6 mm welded by "coded welder"';
    const [place] = stateOf(read(lost, first, patch, second)).places;
    expect(place?.plate).toBe(6);
    expect(place?.readings).toHaveLength(1);
    const since = place?.readings[0]?.bareLeast ?? 0;
    // Between the two looks the meter ran 2000 h in 105 days; the patch is 7 days after the first.
    expect(since).toBeCloseTo(2000 * (98 / 105), 6);
    if (place?.hand.kind !== 'rate') throw new Error('no rate');
    expect(place.hand.longTerm).toBeCloseTo((6 - 3.24) / since, 12);
  });

  test('a patch ends what leaks or is cracked under it, and what was read of the steel under it stands as patched over', () => {
    const seen = (...rows: readonly string[]): string => look('2025-09-01', 13_500, ...rows);
    const patch =
      'patch DG1 2025-09-08 at 4 m to 4.6 m clock 5:00 to 7:00 thickness 6 mm welded by "coded welder"';
    const open = (row: string): readonly string[] => {
      const { estate } = read(seen(row), patch);
      return openConditionRows(estate, estate.conveyors[0]!).map(({ what }) => what);
    };
    expect(open('trough leaking at 4.3 m serious')).toEqual([]);
    expect(open('trough cracked from 4.1 m to 4.5 m clock 6:00')).toEqual([]);
    expect(open('trough leaking at 4.7 m')).toHaveLength(1);
    expect(open('trough cracked from 4.1 m to 4.7 m')).toHaveLength(1);
    expect(open('trough leaking at 4.3 m clock 9:00')).toHaveLength(1);
    expect(open('trough dented at 4.3 m')).toHaveLength(1);
    const { estate } = read(seen('trough leaking at 4.3 m'), patch);
    expect(closedConditionRows(estate, estate.conveyors[0]!)[0]?.how).toBe('patched over on 2025-09-08');
    const steel = (clock: string): readonly (readonly number[])[] => {
      const { places, covered } = stateOf(read(seen(`plate at 4.2 m ${clock}thickness 3.1 mm`), patch));
      return [places.map(({ at }) => at), covered.map(({ at }) => at)];
    };
    expect(steel('')).toEqual([[], [4200]]);
    expect(steel('clock 5:30 ')).toEqual([[], [4200]]);
    expect(steel('clock 9:00 ')).toEqual([[4200], []]);
    // A reading without a clock is of the bottom, and a patch at the side lies beside it.
    const beside = 'patch DG1 2025-09-08 at 4 m to 4.6 m clock 7:00 to 10:00 thickness 6 mm';
    const { places } = stateOf(read(seen('plate at 4.2 m thickness 3.1 mm'), beside));
    expect(places.map(({ at }) => at)).toEqual([4200]);
  });

  describe('read on the day of the patch', () => {
    const seen = (row: string): string =>
      look('2025-09-08', 13_500, 'panel missing at 4.2 m closed on 2025-09-08', row);
    const off = (row: string): string =>
      `reline DG1 2025-09-08 meter 13500 h {\n  liner TwoLayer12\n  ${row}\n}`;
    const patch = (day = '2025-09-08', thickness = 6): string =>
      `patch DG1 ${day} at 4 m to 4.6 m clock 5:00 to 7:00 thickness ${thickness} mm`;
    const what = (...blocks: readonly string[]): readonly string[] => {
      const analysis = read(lost, ...blocks);
      const { places, covered } = stateOf(analysis);
      const words = (place: TroughState['places'][number]): string =>
        `${place.readings.map(({ thickness }) => thickness).join(' ')} of ${place.plate}`;
      return [
        ...places.map(words),
        ...covered.map((place) => `${words(place)}, patched over`),
        ...analysis.findings.map(({ code }) => code).filter((code) => ['TL354', 'TL356'].includes(code)),
      ];
    };

    test.each([
      ['in a look', seen('plate at 4.2 m thickness 0.3 mm')],
      ['in a look, with a clock', seen('plate at 4.2 m clock 6:00 thickness 0.3 mm')],
      ['while the liner was off', off('plate at 4.2 m thickness 0.3 mm')],
      ['in words', seen('plate at 4.2 m thickness 0.3 mm "before it was patched"')],
    ])('it is of what was welded over: %s', (_, block) => {
      expect(what(block, patch())).toEqual(['0.3 of 7.8, patched over']);
      expect(what(patch(), block)).toEqual(['0.3 of 7.8, patched over']);
    });

    test('the rate of bare steel keeps it, and nothing asks to stop', () => {
      const { estate } = read(lost, seen('plate at 4.2 m thickness 0.3 mm'), patch());
      const [life] = remainingLife(estate, { depth: 'hand' }).conveyors;
      expect(life?.attention.level).not.toBe('worn through');
      // (7.8 - 0.3) mm in 13,000 h.
      expect(life && lastLineText(life.trough, metric)).toContain('0.58 mm/1000 h at 4.20 m');
    });

    test('in the stop of a reline that was finished days later too', () => {
      const thin = off('plate at 4.2 m thickness 0.3 mm');
      expect(what(thin, patch('2025-09-05'))).toEqual(['0.3 of 7.8, patched over']);
      expect(what(thin, patch('2025-08-05'))).toEqual(['0.3 of 6', 'TL354']);
    });

    test('as thick as the patch, or said to be of it, it is of the patch', () => {
      expect(what(seen('plate at 4.2 m thickness 5.8 mm'), patch())).toEqual(['5.8 of 6']);
      expect(what(seen('plate at 4.2 m thickness 5.2 mm "on the new patch"'), patch())).toEqual(['5.2 of 6']);
      expect(what(seen('plate at 4.2 m thickness 5.8 mm "old plate"'), patch())).toEqual([
        '5.8 of 7.8, patched over',
      ]);
    });

    test('read before and after the weld, in either order, each is of its own steel', () => {
      const both = (first: number, second: number): string =>
        seen(`plate at 4.2 m thickness ${first} mm\n  plate at 4.25 m thickness ${second} mm`);
      const told = ['5.9 of 6', '3.1 of 7.8, patched over'];
      expect(what(both(3.1, 5.9), patch())).toEqual(told);
      expect(what(both(5.9, 3.1), patch())).toEqual(told);
    });
  });

  test('welded in the outage of the reline over it, a patch counts from its next bare hour', () => {
    const welded = 'patch DG1 2024-03-04 at 4 m to 4.6 m thickness 6 mm';
    const reline = 'reline DG1 2024-03-08 meter 1100 h {\n  liner TwoLayer12\n}';
    const again = look('2025-09-01', 12_500, 'panel missing at 4.2 m', 'plate at 4.2 m thickness 5.4 mm');
    const [place] = stateOf(
      read(lost, welded, reline, look('2025-03-03', 9000, 'P1 thickness 11 mm'), again),
    ).places;
    expect([place?.readings[0]?.bareLeast, place?.readings[0]?.bareMost]).toEqual([0, 3500]);
    expect(place?.rateIsLeast).toBe(true);
  });

  test('steel that shows is bare from between the two looks', () => {
    const { spans, unread } = stateOf(
      read(look('2024-09-09', 3600, 'P1 colour ivory'), look('2025-03-10', 6000, 'P1 trough showing')),
    );
    expect(spans).toHaveLength(1);
    expect([spans[0]?.lined?.hours, spans[0]?.found.hours]).toEqual([3600, 6000]);
    expect(unread).toEqual(spans);
  });
});

describe('where no liner lies', () => {
  // The sound estate has its gate at 7 m to 7.5 m: steel there is bare from the first hour on.
  test('a plate in a break is bare whenever the machine runs, and is never called lined', () => {
    const gate = [
      look('2024-06-03', 2780, 'plate at 7.2 m thickness 7.6 mm'),
      look('2025-09-01', 9500, 'plate at 7.2 m thickness 6.8 mm'),
    ];
    const analysis = read(...gate);
    const [place] = stateOf(analysis).places;
    expect(place?.noLiner).toBe('Gate');
    expect(place?.readings.map(({ bareLeast, bareMost }) => [bareLeast, bareMost])).toEqual([
      [2780, 2780],
      [9500, 9500],
    ]);
    // API 570: the larger of (fitted − 6.8)/9500 and 0.8/6720 mm an hour.
    const fitted = place?.plate ?? NaN;
    const rate = Math.max((fitted - 6.8) / 9500, 0.8 / 6720);
    expect(place?.hand.kind === 'rate' && place.hand.ruling).toBeCloseTo(rate, 9);
    const [conveyor] = analysis.estate.conveyors;
    const cells = place && conveyor ? plateCells(place, sizesOf(conveyor)) : [];
    expect(cells[2]).toContain('always, no liner at Gate');
    expect(cells.join(' ')).not.toContain('lined');
    expect(cells[4]).toMatch(/of running, look at half of it$/);
  });

  test('a plate under a liner is lined as before', () => {
    const analysis = read(look('2024-06-03', 2780, 'plate at 4.2 m thickness 7.6 mm'));
    const [place] = stateOf(analysis).places;
    const [conveyor] = analysis.estate.conveyors;
    const left = place && conveyor && plateCells(place, sizesOf(conveyor))[4];
    expect([place?.noLiner, left]).toEqual([undefined, 'lined']);
  });
});

describe('on the pages', () => {
  test('the last line of defence stands on every conveyor’s page, with and without a rate', () => {
    const unknown = remainingLife(read(lost).estate, { depth: 'hand' });
    expect(lastLineText(unknown.conveyors[0]!.trough, metric)).toContain('was never measured here');
    const known = remainingLife(read(lost, first, second).estate, { depth: 'hand' });
    // (7.8 − 0.37) / 0.34 per 1000 h = 21,853 h, rounded as lives are.
    expect(lastLineText(known.conveyors[0]!.trough, metric)).toMatch(
      /0\.34 mm\/1000 h at 4\.20 m, a new plate lasts 21[  ,]?9?8?\d+ h bare/,
    );
    for (const page of [remainingLifeHtml(known), remainingLifeMarkdown(known)]) {
      expect(page).toContain('The plate is 7.8 mm');
      expect(page).toContain('bare (panel missing) since');
    }
  });

  test('a plate at its minimum comes first, before any liner', () => {
    const thin = look('2025-12-15', 15_500, 'panel missing at 4.2 m', 'plate at 4.2 m thickness 0.3 mm');
    const [life] = remainingLife(read(lost, thin).estate, { depth: 'hand' }).conveyors;
    expect(life?.attention.level).toBe('worn through');
    expect(life?.attention.todo).toBe('Stop, and patch the trough: its plate is at the minimum');
  });

  test('the next sheet asks for the plate where the steel is bare', () => {
    const { estate } = read(lost, first);
    const page = inspectionSheetHtml(inspectionSheet(estate, estate.conveyors[0]!));
    expect(page).toMatch(/Plate, mm, bare from 3\.\d+ m to 4\.\d+ m/);
    expect(page).toContain('>3.9 mm on 2025-09-01</td>');
  });
});

describe('words', () => {
  const codes = (text: string): readonly string[] =>
    read(text).findings.map(({ code, message }) => `${code} ${message}`);

  test('reasons for not seen are words, and stand in the report', () => {
    const { estate, findings } = read(
      look('2024-09-09', 3600, 'P1 not seen blocked', 'P2 not seen no access "ladder gone"'),
    );
    expect(findings).toEqual([]);
    expect([...estate.readings.notes.values()]).toEqual(['blocked', 'no access: ladder gone']);
  });

  test('a finding of the drive may have a place', () => {
    const { estate, findings } = read(
      look('2024-09-09', 3600, 'finding drive at 11.2 m "leaks"', 'P1 colour ivory'),
    );
    expect(findings).toEqual([]);
    expect(estate.inspections[0]?.remarks[0]).toMatchObject({ part: 'drive', text: 'leaks' });
    expect(estate.inspections[0]?.remarks[0]?.at?.value).toBe(11_200);
  });

  test('`screw change` in a job says what to write', () => {
    expect(codes('job J2 {\n  conveyor DG1\n  screw change\n}')).toContainEqual(
      expect.stringContaining('A job says `change screw`'),
    );
  });
});

describe('a panel that the bench showed to be worn through', () => {
  const before = look('2024-09-09', 3600, 'P1 thickness 9 mm');
  const out =
    'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n  old panel at 4.2 m worn through\n}';
  const read4 = look('2024-10-07', 3900, 'plate at 4.2 m thickness 7.4 mm');

  test('left its steel bare since the last look at the most, and until it came out', () => {
    const { spans, places } = stateOf(read(before, out, read4));
    expect(
      spans.map(({ because, lined, found, until }) => [because, lined?.hours, found.hours, until?.hours]),
    ).toEqual([['worn through', 3600, 3900, 3900]]);
    expect(places.map(({ readings }) => readings.map((each) => [each.bareLeast, each.bareMost]))).toEqual([
      [[0, 300]],
    ]);
    expect(places[0]?.bare).toBe(false);
  });

  test('never says never', () => {
    const [place] = stateOf(read(before, out, read4)).places;
    expect(place && plateCells(place, metric)).toContain('0 to 300');
  });

  test('where a look had shown it through already it is one length, bare since then', () => {
    const seen = look('2024-08-05', 3000, 'P1 thickness 9 mm', 'panel torn at 4.2 m worn through');
    const { spans } = stateOf(read(seen, out));
    expect(spans.map(({ found, until }) => [found.hours, until?.hours])).toEqual([[3000, 3900]]);
  });
});

describe('steel that no liner covers, past its minimum by its rate since it was read', () => {
  // 7.8 mm, 0.37 mm at least; 1.2 m lies in the inlet.
  const thin = (meter: number): Analysis =>
    read(
      look('2024-09-09', 3600, 'plate at 1.2 m thickness 3.24 mm', 'plate at 4.2 m thickness 7.6 mm'),
      look('2025-03-10', meter, 'P1 thickness 9 mm'),
    );
  const passed = (analysis: Analysis): readonly (number | undefined)[] =>
    stateOf(analysis).places.map(({ passedFor }) => passedFor && Math.round(passedFor));

  test('is told, in the report and first on the sheet', () => {
    // 4.56 mm in 3600 h: 2.87 mm more in 2266 h.
    expect(passed(thin(5800))).toEqual([undefined, undefined]);
    const gone = thin(6000);
    expect(passed(gone)).toEqual([6000 - 3600 - 2266, undefined]);
    expect(gone.findings.map(({ code }) => code)).toContain('TL565');
    const page = remainingLifeMarkdown(remainingLife(gone.estate));
    expect(page).toContain('by its rate the plate is past its minimum at 1.20 m: measure it now');
    expect(page).toContain('passed 134 h of running ago by its rate');
    const sheet = inspectionSheetHtml(inspectionSheet(gone.estate, gone.estate.conveyors[0]!));
    const [inlet, lined] = [sheet.indexOf('Plate at 1.20'), sheet.indexOf('Plate at 4.20')];
    expect([inlet > 0, lined > inlet]).toEqual([true, true]);
    expect(sheet).toContain('past its minimum by its rate');
  });
});

describe('a plate that was read without a clock position', () => {
  const rows = (a: string, b: string, ...more: readonly string[]): Analysis =>
    read(
      lost,
      look('2025-09-01', 13_500, 'panel missing at 4.2 m', `plate at 4.2 m ${a}thickness 3.92 mm`),
      look('2025-12-15', 15_500, 'panel missing at 4.2 m', `plate at 4.3 m ${b}thickness 3.24 mm`),
      ...more,
    );
  const bottom = 'clock 6:00 ';
  const asked = ({ estate }: Analysis): number =>
    inspectionSheetHtml(inspectionSheet(estate, estate.conveyors[0]!)).match(/4\.[23]0? m/g)?.length ?? 0;

  test.each([
    ['', bottom],
    [bottom, ''],
    [bottom, bottom],
  ])('is of the bottom, as one at 6:00 is: %j, then %j', (a, b) => {
    const alike = rows('', '');
    const [place, ...more] = stateOf(rows(a, b)).places;
    expect(more).toEqual([]);
    expect(place?.clock).toBe('6:00');
    expect(place?.hand).toEqual(stateOf(alike).places[0]?.hand);
    expect(asked(rows(a, b))).toBe(asked(alike));
  });

  test.each(['clock 5:30 ', 'clock 7:00 '])('is of another place than one at %s', (beside) => {
    expect(stateOf(rows('', beside)).places.map(({ readings }) => readings.length)).toEqual([1, 1]);
    expect(stateOf(rows(beside, '')).places.map(({ readings }) => readings.length)).toEqual([1, 1]);
  });

  test('is not told to have one, and nor is the plate under a patch', () => {
    expect(stateOf(rows('', '')).places[0]?.clock).toBeUndefined();
    const patch = (sector: string): string => `patch DG1 2025-11-03 at 4 m to 4.6 m ${sector}thickness 6 mm`;
    const { places, covered } = stateOf(rows('', bottom, patch('clock 5:00 to 7:00 ')));
    expect(places.map(({ plate, readings }) => [plate, readings.length])).toEqual([[6, 1]]);
    expect(covered.map(({ plate, readings }) => [plate, readings.length])).toEqual([[7.8, 1]]);
    const beside = stateOf(rows(bottom, '', patch('clock 7:00 to 9:00 ')));
    expect(beside.places.map(({ plate, readings }) => [plate, readings.length])).toEqual([[7.8, 2]]);
    expect(beside.covered).toEqual([]);
  });

  test('is put right by a correction that says 6:00', () => {
    const right = `correction DG1 2025-12-20 plate at 4.3 m ${bottom}read on 2025-12-15 thickness 3.4 mm`;
    const [place] = stateOf(rows(bottom, '', right)).places;
    expect(place?.readings.map(({ thickness }) => thickness)).toEqual([3.92, 3.4]);
  });
});
