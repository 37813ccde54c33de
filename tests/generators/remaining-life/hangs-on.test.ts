// One reading that all else contradicts decides at the governing point: page 1 says which, and what the rest would say without it.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const look = (date: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${date} meter ${meter} h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  ${rows.join('\n  ')}\n}`;

function reported(...looks: readonly string[]): RemainingLife {
  const points = [4, 9, 5.2, 10, 2].map((at, i) => `point P${i + 1} at ${at} m clock 7:30`).join('\n');
  const text = inSoundEstate('estate', looks.join('\n'), { conveyor: points });
  const { estate } = analyse([{ uri: 'estate.trough', text }]);
  return remainingLife(estate, { asOf: parseDay('2026-03-10')! });
}

const read = (...left: readonly (number | undefined)[]): readonly string[] =>
  left.flatMap((mm, i) => (mm === undefined ? [] : `P${i + 1} thickness ${mm} mm`));
const steady = [
  look('2024-09-09', 3600, ...read(11.2, 11.3, undefined, 11.2, 11.2)),
  look('2025-03-10', 6400, ...read(10.6, 10.8, undefined, 10.6, 10.7)),
  look('2025-09-08', 9000, ...read(10.0, 10.3, 8.6, 10.1, 10.1)),
];
const others = read(9.7, 10.0, undefined, 9.8, 9.8);
const hangs = /P3, which governs DG1, hangs on one reading: with 8\.6 mm of 2025-09-08/;

describe('a thickness and a colour that do not go together', () => {
  const report = reported(...steady, look('2025-12-08', 10400, ...others, 'P3 colour teal'));
  const [life] = report.conveyors;

  test('is told on page 1 and the conveyor’s page, with both chances', () => {
    expect(life?.hangsOn).toMatchObject({ point: 'P3', day: parseDay('2025-09-08'), thickness: 8.6 });
    expect(life!.hangsOn!.without).toBeGreaterThan(5 * life!.hangsOn!.chance);
    for (const page of [remainingLifeMarkdown(report), remainingLifeHtml(report)])
      expect(page.match(new RegExp(hangs, 'g'))).toHaveLength(2);
    const json = JSON.parse(remainingLifeJson(report)) as { conveyors: { hangsOn: unknown }[] };
    expect(json.conveyors[0]?.hangsOn).toEqual({
      point: 'P3',
      day: '2025-09-08',
      thickness: 8.6,
      chance: expect.closeTo(life!.hangsOn!.chance, 6) as unknown,
      without: expect.closeTo(life!.hangsOn!.without, 6) as unknown,
    });
  });
});

test.each(['P3 colour ivory', 'P3 thickness 7.9 mm'])(
  '%s, which agrees, leaves it hang on nothing',
  (last) => {
    const report = reported(...steady, look('2025-12-08', 10400, ...others, last));
    expect(report.conveyors[0]?.hangsOn).toBeUndefined();
    expect(remainingLifeMarkdown(report)).not.toMatch(hangs);
  },
);
