// A correction of what is not a reading of the liner says what the look should have said: as if it had been written so, from the day of
// the correction on; before it the look says what it said. Each is listed beside what it was.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { knownOn } from '../../../src/domain/model/known-on.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { besideLiner } from '../../../src/generators/remaining-life/parts/beside-liner.js';
import { historyOf } from '../../../src/domain/model/history.js';
import type { Inspection } from '../../../src/domain/model/records.js';
import { look, works } from '../../generators/remaining-life/story.js';

const rows = [
  'plate at 2 m thickness 3.2 mm',
  'flight at 2 m depth 50 mm outside diameter 390 mm',
  'current empty 4 A loaded 6 A',
  'plate at 3 m clock 5:00 thickness 3.4 mm',
  'hold-down at 4 m gap 9 mm',
  'worn at 2 m clock 5:00 to 7:00',
  'speed 17 rpm',
  'panel torn at 3 m serious',
  'finding hatch at 2 m serious "hinge"',
  'gearbox noise slight; P1 thickness 11 mm',
].join('; ');

function said(correction: string) {
  const text = works + look(2400, rows) + correction;
  const { estate, findings } = analyse([{ uri: 'a.trough', text }]);
  const [conveyor] = estate.conveyors;
  if (!conveyor) throw new Error('no conveyor');
  return { estate, conveyor, codes: findings.map(({ code }) => code) };
}

/** Values only, and without what was written before. */
const measures = ({
  plates,
  flights,
  flightDiameters,
  holdDownGaps,
  wornWidths,
  speeds,
  currents,
  meter,
  conditions,
}: Inspection) => ({
  plates: plates.map(({ at, clock, thickness }) => [at.value, clock?.hours, thickness.value]),
  gaps: holdDownGaps.map(({ at, gap }) => [at.value, gap.value]),
  worn: wornWidths.map(({ at, from, to }) => [at.value, from.hours, to.hours]),
  speeds: speeds.map(({ speed }) => speed.value),
  flights: flights.map(({ at, depth }) => [at.value, depth.value]),
  diameters: flightDiameters.map(({ at, diameter }) => [at.value, diameter.value]),
  currents: currents.map(({ empty, loaded }) => [empty?.value, loaded?.value]),
  meter: meter.hours?.value,
  conditions: conditions.map(({ kind }) => kind),
});

describe('a correction', () => {
  test.each([
    ['plate at 2 m', 'thickness 3.6 mm', 'plate at 2 m thickness 3.2 mm', 'plate at 2 m thickness 3.6 mm'],
    ['plate at 2 m', 'does not count', 'plate at 2 m thickness 3.2 mm; ', ''],
    ['flight at 2 m', 'depth 60 mm', 'depth 50 mm', 'depth 60 mm'],
    ['flight at 2 m', 'outside diameter 380 mm', 'diameter 390 mm', 'diameter 380 mm'],
    ['flight at 2 m', 'does not count', 'flight at 2 m depth 50 mm outside diameter 390 mm; ', ''],
    ['current', 'loaded 7 A', 'loaded 6 A', 'loaded 7 A'],
    ['current', 'empty 3 A loaded 7 A', 'empty 4 A loaded 6 A', 'empty 3 A loaded 7 A'],
    ['current loaded', '7 A', 'loaded 6 A', 'loaded 7 A'],
    ['current empty', 'does not count', 'empty 4 A ', ''],
    ['current', 'does not count', 'current empty 4 A loaded 6 A; ', ''],
    ['plate at 3 m clock 5:00', 'thickness 3.6 mm', 'thickness 3.4 mm', 'thickness 3.6 mm'],
    ['plate at 3 m', 'does not count', 'plate at 3 m clock 5:00 thickness 3.4 mm; ', ''],
    ['hold-down at 4 m', 'gap 12 mm', 'gap 9 mm', 'gap 12 mm'],
    ['hold-down at 4 m', 'does not count', 'hold-down at 4 m gap 9 mm; ', ''],
    ['worn at 2 m', 'clock 4:30 to 7:30', 'clock 5:00 to 7:00', 'clock 4:30 to 7:30'],
    ['worn at 2 m', 'does not count', 'worn at 2 m clock 5:00 to 7:00; ', ''],
    ['speed', '17.4 rpm', 'speed 17 rpm', 'speed 17.4 rpm'],
    ['speed', 'does not count', 'speed 17 rpm; ', ''],
    ['panel torn at 3 m', 'does not count', 'panel torn at 3 m serious; ', ''],
    ['finding hatch at 2 m', 'does not count', 'finding hatch at 2 m serious "hinge"; ', ''],
    ['gearbox noise', 'does not count', 'gearbox noise slight; ', ''],
  ])('of %s: %s', (what, says, was, now) => {
    const line = `correction DG1 2025-05-01 ${what} read on 2025-04-11 ${says} by "shift" "slip"\n`;
    const { estate, conveyor, codes } = said(line);
    expect(codes.filter((code) => /TL(10|36)/.test(code))).toEqual([]);
    const other = analyse([{ uri: 'a.trough', text: works + look(2400, rows.replace(was, now)) }]).estate;
    const [seen, wanted, before] = [estate, other, knownOn(estate, day('2025-04-30'))].map(
      ({ inspections }) => inspections[0],
    );
    if (!seen || !wanted || !before) throw new Error('no look');
    expect(measures(seen)).toEqual(measures(wanted));
    expect(measures(before)).toEqual(measures(said('').estate.inspections[0] ?? before));
    expect(besideLiner(estate, historyOf(estate, conveyor)).corrections).toMatchObject([
      { by: 'shift', why: 'slip' },
    ]);
  });

  test.each([
    [
      'plate at 2 m',
      'plate at 2 m thickness 3.2 mm',
      'plate at 2 m clock 5:00 thickness 3.8 mm',
      'does not count',
    ],
    ['hold-down at 2 m', 'hold-down at 2 m gap 9 mm', 'hold-down at 2 m gap 11 mm', 'gap 12 mm'],
    ['speed', 'speed 17 rpm', 'speed 15 rpm', 'does not count'],
    ['current loaded', 'current loaded 6 A', 'current loaded 9 A', '7 A'],
  ])('of one of two, %s, asks which; what the wrong line says tells it', (what, good, wrong, says) => {
    const both = works + look(2400, `${good}; ${wrong}; P1 thickness 11 mm`);
    const written = wrong.split(' ').slice(-2).join(' ');
    const judged = (read: string) => {
      const text = `${both}correction DG1 2025-05-01 ${what} read on 2025-04-11${read} ${says} by "shift" "slip"\n`;
      const { estate, findings } = analyse([{ uri: 'a.trough', text }]);
      const asked = findings.filter(({ code }) => code === 'TL366').map(({ message }) => message);
      return { asked, look: estate.inspections[0] };
    };
    const open = judged('');
    expect(open.asked).toHaveLength(1);
    expect(open.asked[0]).toContain(`written as ${written}`);
    const as = judged(` written as ${written}`);
    expect(as.asked).toEqual([]);
    const left =
      says === 'does not count' ? `${good}` : `${good}; ${wrong.replace(written, says.replace('gap ', ''))}`;
    const other = analyse([
      { uri: 'a.trough', text: works + look(2400, `${left}; P1 thickness 11 mm`) },
    ]).estate;
    const [wanted] = other.inspections;
    if (!as.look || !wanted) throw new Error('no look');
    expect(open.look?.written).toBeUndefined();
    expect(measures(as.look)).toEqual(measures(wanted));
  });

  test('of the meter counts the hours anew; a later one replaces it', () => {
    const first = 'correction DG1 2025-05-01 meter read on 2025-04-11 2300 h by "shift" "digits swapped"\n';
    const later = 'correction DG1 2025-06-01 meter read on 2025-04-11 2200 h by "shift" "and again"\n';
    const { estate, conveyor } = said(later + first);
    expect(historyOf(estate, conveyor).hours.knots.at(-1)?.total).toBe(2200);
    expect(besideLiner(estate, historyOf(estate, conveyor)).corrections).toMatchObject([
      { was: '2300 h', now: '2200 h' },
      { was: '2400 h', now: '2300 h' },
    ]);
  });

  test.each([
    ['plate at 2 m', 'does not count', 'thickness 3.6 mm'],
    ['plate at 2 m', 'thickness 3.4 mm', 'thickness 3.6 mm'],
    ['plate at 2 m', 'thickness 3.4 mm', 'does not count'],
    ['flight at 2 m', 'depth 60 mm', 'depth 61 mm'],
    ['current', 'loaded 7 A', 'loaded 8 A'],
    ['meter', '2500 h', '2450 h'],
  ])('twice on one day, the later line holds: %s %s, %s', (what, first, second) => {
    const line = (says: string): string =>
      `correction DG1 2025-05-01 ${what} read on 2025-04-11 ${says} by "shift" "slip"\n`;
    const [both, later] = [said(line(first) + line(second)), said(line(second))];
    expect(both.estate.inspections.map(measures)).toEqual(later.estate.inspections.map(measures));
    expect(both.codes.filter((code) => /TL36/.test(code))).toEqual(['TL367']);
  });

  test('twice on one day in two files: the measure counts for nothing', () => {
    const line = (says: string): string =>
      `correction DG1 2025-05-01 plate at 2 m read on 2025-04-11 ${says} by "shift" "slip"\n`;
    const { estate, findings } = analyse([
      { uri: 'a.trough', text: works + look(2400, rows) + line('thickness 3.4 mm') },
      { uri: 'b.trough', text: line('thickness 3.6 mm') },
    ]);
    const left = estate.inspections.flatMap(({ plates }) => plates.map(({ at }) => at.text));
    expect(left).toEqual(['3 m']);
    expect(findings.map(({ code }) => code).filter((code) => code === 'TL367')).toHaveLength(2);
  });
});

function day(text: string) {
  const read = parseDay(text);
  if (read === undefined) throw new Error(text);
  return read;
}
