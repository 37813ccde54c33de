// Panels turned end for end or exchanged: from what was measured on them then, or at the first look that measures them, their
// wear counts anew where they lie now; what lay there before keeps its own readings, and nothing is invented in between.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { openConditions } from '../../../src/domain/conditions/follow-up.js';
import { exposedReadings } from '../../../src/domain/model/exposure.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { newSince } from '../../../src/domain/model/liner-sets.js';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  ${rows.join('\n  ')}\n}`;
const before = look('2024-06-03', 2400, 'P1 thickness 7.6 mm', 'P2 thickness 9.8 mm');
const moved = (...facts: readonly string[]): string =>
  `panels moved DG1 2024-10-07 meter 3900 h {\n  ${facts.join('\n  ')}\n}`;
const turn = 'panel 3 of run 2 turned end for end';

function read(...blocks: readonly string[]): Analysis {
  return analyse([
    {
      uri: 'estate.trough',
      text: inSoundEstate('estate', blocks.join('\n'), { liner: 'may be turned end for end' }),
    },
  ]);
}

const life = ({ estate }: Analysis, depth: 'hand' | 'model' = 'hand'): RemainingLife =>
  remainingLife(estate, { track: false, depth, asOf: parseDay('2025-06-02')! }); // a day of the test's own
const seen = ({ estate }: Analysis): unknown =>
  [...exposedReadings(estate)].flatMap(([place, rows]) =>
    place.name === 'P1'
      ? rows.map(({ row, exposure }) => [
          estate.readings.value[row],
          exposure.known ? exposure.value : exposure.reason.split(',')[0],
        ])
      : [],
  );
const hand = (of: RemainingLife): unknown => {
  const point = of.conveyors[0]?.points[0];
  return point?.hand.kind === 'rate'
    ? { from: point.fitted.value, ruling: Number(point.hand.ruling.toFixed(6)) }
    : point?.hand.kind;
};

test('P1 of the sound estate lies on the third panel of run 2', () => {
  const [conveyor] = read(before).estate.conveyors;
  const panel = life(read(before)).conveyors[0]?.runs[1]?.panels[2];
  const at = conveyor?.points[0]?.at.value ?? NaN;
  expect([panel?.from, panel?.to].map((end) => Math.sign((end ?? NaN) - at))).toEqual([-1, 1]);
});

describe('a panel that was turned', () => {
  const after = look('2025-03-10', 6000, 'P1 thickness 10.1 mm');

  test('counts its wear from what was measured on it at the move', () => {
    const found = read(before, moved(turn, 'P1 thickness 11.4 mm'), after);
    expect(seen(found)).toEqual([
      [7.6, 2400],
      [10.1, 2100],
    ]);
    // 1.3 mm in 2100 h, by hand.
    expect(hand(life(found))).toEqual({ from: 11.4, ruling: Number((1.3 / 2100).toFixed(6)) });
  });

  test('without that, from the first thickness read on it', () => {
    const next = look('2025-05-05', 6700, 'P1 thickness 9.7 mm');
    const found = read(before, moved(turn), after, next);
    expect(seen(found)).toEqual([
      [7.6, 2400],
      [10.1, 0],
      [9.7, 700],
    ]);
    expect(hand(life(found))).toEqual({ from: 10.1, ruling: Number((0.4 / 700).toFixed(6)) });
  });

  test('until then is forecast as if it lay as before, and says so; what is seen on it takes no part', () => {
    const found = read(before, moved(turn), look('2025-03-10', 6000, 'P1 colour ivory'));
    expect(hand(life(found))).toEqual(hand(life(read(before))));
    expect(seen(found)).toEqual([
      [7.6, 2400],
      [0, 'the panel was moved on 2024-10-07'],
    ]);
    expect(found.findings.map(({ code }) => code)).toContain('TL372');
  });

  test('gives no false finding of a liner that grew', () => {
    const codes = (of: Analysis): readonly string[] => of.findings.map(({ code }) => code);
    expect(codes(read(before, after))).toContain('TL306');
    expect(codes(read(before, moved(turn, 'P1 thickness 11.4 mm'), after))).toEqual([]);
  });

  test('has a forecast by the model with an interval, of the thickness that is there', () => {
    const point = life(read(before, moved(turn, 'P1 thickness 11.4 mm'), after), 'model').conveyors[0]
      ?.points[0];
    const condemn = point?.model?.condemn;
    expect(condemn?.kind).toBe('life');
    // 8.4 mm to the limit at 1.3 mm in 2100 h: 13,600 h; the model borrows, so about that.
    if (condemn?.kind === 'life') {
      expect(condemn.exposure.q10).toBeLessThan(condemn.exposure.q50);
      expect(condemn.exposure.q50).toBeGreaterThan(6000);
      expect(condemn.exposure.q50).toBeLessThan(20000);
    }
    expect(point?.depths).toEqual([0, 11.4]);
  });

  test('worn through is worn through from where it started', () => {
    const found = read(
      before,
      moved(turn, 'P1 thickness 11.4 mm'),
      look('2025-03-10', 6000, 'P1 trough showing'),
    );
    expect(life(found, 'model').conveyors[0]?.points[0]?.pastLimit).toBe('trough shows');
  });

  test('is no former liner, and takes its conditions along until a reline takes it out', () => {
    const torn = look('2024-06-10', 2450, 'panel torn at P1 serious');
    const found = read(before, torn, moved(turn, 'P1 thickness 11.4 mm'));
    expect(life(found).conveyors[0]?.former).toEqual([]);
    expect(openConditions(found.estate, found.estate.conveyors[0]!)).toHaveLength(1);
    const out = read(
      before,
      torn,
      moved(turn, 'P1 thickness 11.4 mm'),
      'reline DG1 2025-01-06 meter 4800 h {\n}',
    );
    expect(openConditions(out.estate, out.estate.conveyors[0]!)).toEqual([]);
    expect(life(out).conveyors[0]?.former.length).toBeGreaterThan(0);
  });

  test('stands in the page, the comment and JSON', () => {
    const report = life(read(before, moved(turn, 'P1 thickness 11.4 mm', 'by "fitters"')));
    const cells = ['2024-10-07', turn, 'P1 11.4 mm, from 2024-10-07', 'fitters'];
    expect(remainingLifeMarkdown(report)).toContain(`| ${cells.join(' | ')} |`);
    expect(remainingLifeHtml(report)).toContain('Panels turned or exchanged');
    const json = JSON.parse(remainingLifeJson(report)) as { conveyors: { panelsMoved: object[] }[] };
    expect(json.conveyors[0]?.panelsMoved.map((row) => Object.values(row).slice(0, 4))).toEqual([cells]);
  });
});

describe('two panels that changed places', () => {
  const swap = 'panel 3 of run 2 exchanged with panel 4 of run 2';
  const spans = (...blocks: readonly string[]): unknown =>
    life(read(before, ...blocks))
      .conveyors[0]?.lying.filter(({ reline }) => reline?.moved)
      .map(({ from, to, reline }) => [Math.round(from), Math.round(to), reline?.date.day]);

  test('each count anew from what was measured on themselves, never from what was read on the other', () => {
    const own = moved(swap, 'P1 thickness 10.9 mm');
    expect(spans(own)).toEqual([[3400, 4600, parseDay('2024-10-07')]]);
    const later = look('2025-03-10', 6000, 'at 5 m clock 6:00 thickness 8.8 mm');
    expect(spans(own, later)).toEqual([
      [3400, 4600, parseDay('2024-10-07')],
      [4600, 5800, parseDay('2025-03-10')],
    ]);
    expect(life(read(before, own)).conveyors[0]?.beside.moved.map(({ counts }) => counts)).toEqual([
      'panel 3 of run 2: P1 10.9 mm, from 2024-10-07; panel 4 of run 2: nothing measured since, forecast as if it lay as before',
    ]);
    const spot = life(read(before, own, later)).conveyors[0]?.points.find(({ place }) => !place.declared);
    expect([spot?.fitted.value, spot?.readings.map(({ exposure }) => exposure)]).toEqual([8.8, [0]]);
  });

  test('leave the points beside them, and panels that nobody has seen, as they were', () => {
    const plain = read(before);
    const swapped = read(before, moved('panel 1 of run 2 exchanged with panel 2 of run 2'));
    const limits = (of: Analysis): unknown =>
      life(of, 'model').conveyors[0]?.model?.unseen.map(({ run, condemn }) => [
        run,
        condemn.kind === 'life' && condemn.exposure,
      ]);
    // In hours: the meter read at the move moves dates, as any meter reading does.
    expect(limits(swapped)).toEqual(limits(plain));
    const own = life(read(before, moved(swap, 'P1 thickness 10.9 mm'))).conveyors[0]?.points;
    expect(own?.map(({ readings }) => readings.length)).toEqual([0, 1]);
  });

  test('are of the liner that each of them was, and as old', () => {
    const set = life(read(before, moved(swap, 'P1 thickness 10.9 mm'))).conveyors[0]?.lying.find(
      ({ reline }) => reline?.moved,
    );
    expect(set && newSince(set)?.day).toBe(read(before).estate.conveyors[0]?.commissioned?.date.day);
  });
});

test('the unseen panels of a run stand by one that was not moved, where only its middle one was', () => {
  const plain = life(read(before), 'model').conveyors[0]?.model?.unseen.find(({ run }) => run === 2);
  const middle = read(before, moved(turn, 'P1 thickness 6.2 mm'));
  const found = life(middle, 'model').conveyors[0]?.model?.unseen.find(({ run }) => run === 2);
  const day = (of: typeof plain): number => (of?.condemn.kind === 'life' ? of.condemn.exposure.q50 : NaN);
  // One more record of the same trough moves the pool a little, and no further: it is still 12 mm that wear.
  expect(day(found) / day(plain)).toBeGreaterThan(0.8);
  expect(day(found) / day(plain)).toBeLessThan(1.25);
});

test('what was read of a panel where it lay before stands by itself, apart from liners that came out', () => {
  const report = life(
    read(
      before,
      'reline DG1 2024-09-02 meter 3500 h {\n}',
      look('2024-09-16', 3600, 'P1 thickness 11.6 mm'),
      moved(turn, 'P1 thickness 11.4 mm'),
    ),
  );
  const text = remainingLifeMarkdown(report);
  expect(text).toContain('| P1 | TwoLayer12, out 2024-09-02 | 7.6 mm (2024-06-03) |');
  expect(text).toContain('| P1 | TwoLayer12, moved 2024-10-07 | 11.6 mm (2024-09-16) |');
});

test('the sheet shows what was read last on a moved panel, and the colour that is left of it', () => {
  const { estate } = read(
    before,
    moved(turn, 'P1 thickness 6.2 mm'),
    look('2025-03-10', 6000, 'P1 thickness 5.0 mm', 'at 4.4 m clock 6:00 thickness 4.8 mm'),
  );
  const sheet = inspectionSheet(estate, estate.conveyors[0]!);
  const rows = sheet.points.map(({ name, last, expect: expected }) => [
    name,
    last?.words,
    expected.kind === 'range' ? expected.layers : expected.kind,
  ]);
  expect(rows[0]).toEqual(['P1', '5 mm', ['teal']]);
  expect(rows[1]).toEqual([undefined, '4.8 mm', ['teal']]);
});

test('a meter read at a move counts like any other', () => {
  const { estate } = read(before, moved(turn, 'P1 thickness 11.4 mm').replace('3900', '1900'));
  expect(analyse([{ uri: 'a.trough', text: '' }]).findings).toEqual([]);
  expect(remainingLife(estate, { depth: 'hand' }).conveyors[0]?.history.hours.setAside.length).toBe(1);
});
