// On the day of a screw change, which screw did a look see? The old one until the meter stands higher, for flights, findings,
// conditions and hovers alike.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { openConditions } from '../../../src/domain/conditions/follow-up.js';
import { flightSpots } from '../../../src/domain/model/flight-readings.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { screwSeen } from '../../../src/domain/model/lying-screw.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { wornWidthHover } from '../../../src/lsp/hover/records.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const slim =
  'screw Spiral360 {\n  shaftless\n  outside diameter 360 mm\n  pitch 320 mm\n  flight 60 mm by 15 mm\n  condemn flight at 40 mm\n}';
const change = 'screw change DG1 2024-10-07 meter 3900 h {\n  screw Spiral360\n}';

function read(meter: number, day = '2024-10-07', more = '', depth = 64): Analysis {
  const look = [
    `inspection DG1 ${day} meter ${meter} h {`,
    '  view downstream',
    `  flight at 5 m depth ${depth} mm`,
    '  flight at 5 m outside diameter 380 mm',
    '  worn at 5 m clock 5:00 to 7:00',
    '  spiral weld cracked at 6 m serious',
    '}',
  ];
  return analyse([
    { uri: 'estate.trough', text: inSoundEstate('estate', [slim, change, more, ...look].join('\n')) },
  ]);
}

/** What each of those who ask makes of the look. */
function saw({ estate, findings }: Analysis): Record<string, unknown> {
  const [conveyor] = estate.conveyors;
  const look = estate.inspections.find(({ flights }) => flights.length > 0);
  if (!conveyor || !look) throw new Error('both are there');
  const history = historyOf(estate, conveyor);
  return {
    screw: screwSeen(estate, look, 5000).name,
    ofTheNewFlight: flightSpots(history).length > 0,
    deeperThanNew: findings.some(({ code }) => code === 'TL328'),
    widerThanNew: findings.some(({ code, message }) => code === 'TL364' && message.includes('Spiral360')),
    crackStillOpen: openConditions(estate, conveyor).some(
      ({ last }) => last.line.kind === 'spiral weld cracked',
    ),
    strip: look.wornWidths.map(
      (each) => /by its width.*?([\d.]+ mm)/.exec(wornWidthHover(estate, look, each))?.[1],
    ),
  };
}

const old = {
  screw: 'Spiral400',
  ofTheNewFlight: false,
  deeperThanNew: false,
  widerThanNew: false,
  crackStillOpen: false,
};
const fresh = {
  screw: 'Spiral360',
  ofTheNewFlight: true,
  deeperThanNew: true,
  widerThanNew: true,
  crackStillOpen: true,
};

describe('a look on the day of a screw change', () => {
  test.each([
    ['before it, by the meter', 3890, old],
    ['at the same meter', 3900, old],
    ['after it, by the meter', 3905, fresh],
  ])('%s', (_, meter, expected) => {
    expect(saw(read(meter))).toMatchObject(expected);
  });

  test('counts by the hours run, not by the dial, where a new meter was fitted with the screw', () => {
    const dial = 'meter change DG1 2024-10-07 from 3900 h to 0 h';
    expect(saw(read(5, '2024-10-08', dial))).toMatchObject(fresh);
  });

  test('and on the days beside it, whatever the meter', () => {
    expect(saw(read(3880, '2024-10-06'))).toMatchObject(old);
    expect(saw(read(3900, '2024-10-08'))).toMatchObject(fresh);
  });

  test('the strip is reckoned with the screw that was seen', () => {
    const [before, after] = [3890, 3905].map((meter) => saw(read(meter))['strip']);
    expect(before).not.toEqual([undefined]);
    expect(before).not.toEqual(after);
  });

  test('a thin flight that came out is no finding about the new screw', () => {
    const codes = (meter: number): readonly string[] =>
      read(meter, '2024-10-07', '', 38).findings.map(({ code }) => code);
    expect(codes(3890)).not.toContain('TL322');
    expect(codes(3905)).toContain('TL322');
  });

  test('a crack in the new spiral is another than that in the old', () => {
    const first = [
      'inspection DG1 2024-09-09 meter 3600 h {',
      '  view downstream',
      '  spiral weld cracked at 6 m slight',
      '}',
    ].join('\n');
    const since = (meter: number): readonly number[] => {
      const { estate } = read(meter, '2024-10-07', first);
      const [conveyor] = estate.conveyors;
      return conveyor ? openConditions(estate, conveyor).map(({ first: line }) => line.record.date.day) : [];
    };
    expect(since(3890)).toEqual([]);
    expect(since(3905)).toEqual([parseDay('2024-10-07')]);
  });
});
