import { describe, expect, it } from 'vitest';
import { remainingLife, type RemainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeJson } from '../../../src/generators/remaining-life/json.js';
import { remainingLifeMarkdown } from '../../../src/generators/remaining-life/markdown.js';
import { readPublished, type PublishedReport } from '../../../src/generators/remaining-life/published.js';
import { publishedSentences } from '../../../src/generators/remaining-life/print/track-record.js';
import { estateOf, look, works } from './story.js';

const six = works.replace(
  'point P1 at 1.8 m clock 5:00',
  [1, 3, 4, 5, 6].map((k) => `point P${k} at ${k * 0.8} m clock 5:00`).join('\n  '),
);
/** Six points worn by `rate` mm/1000 h until `upTo` hours and by `since` from then on. */
function looks(upTo: number, hours: readonly number[], since = 0.6, rate = 0.6): string {
  return hours
    .map((x) =>
      look(
        x,
        [1, 2, 3, 4, 5, 6]
          .map((k) => {
            const own = 0.85 + 0.05 * k;
            const wear = own * (rate * Math.min(x, upTo) + since * Math.max(0, x - upTo)) * 1e-3;
            return `P${k} thickness ${(12 - wear + 0.1 * (((k * x) / 1000) % 2)).toFixed(1)} mm`;
          })
          .join('; '),
      ).replace('view downstream', 'view downstream\n  gauge ultrasonic ± 0.2 mm'),
    )
    .join('');
}

function published(records: string): PublishedReport {
  const read = readPublished(remainingLifeJson(remainingLife(estateOf(six, records), { track: false })));
  if (!read.ok) throw new Error(read.message);
  return read.report;
}
const judged = (then: PublishedReport, records: string): RemainingLife =>
  remainingLife(estateOf(six, records), { track: false, previous: [then] });

describe('a published report is held against what was read since', () => {
  const then = published(looks(4000, [2000, 4000]));

  it('finds that wear has doubled, though a report made now would know it', () => {
    const report = judged(then, looks(4000, [2000, 4000, 6000], 1.2));
    const [sentence] = publishedSentences(report);
    expect(sentence).toMatch(
      /^The report of 2025-06-17, as it was published: wear of DG1 since was (8|9|10|11|12)\d? % \(\d+ to \d+\) more than foretold, at 6 of 6 points\.$/,
    );
    expect(remainingLifeMarkdown(report)).toContain(sentence?.slice(0, 40));
  });

  it('says what would have stayed hidden where nothing is found', () => {
    const [sentence] = publishedSentences(judged(then, looks(4000, [2000, 4000, 6000])));
    expect(sentence).toMatch(
      /no miss found at 6 points read since; a change below \d+ % would have stayed hidden\.$/,
    );
  });

  it('counts limits that were reached since by where they fell in the published interval', () => {
    // 8 mm may wear: at 0.6 mm/1000 h in 13,000 h; at six times the rate from 4,000 h on, before 7,000 h.
    const fast = judged(then, looks(4000, [2000, 4000, 6000, 8000], 3.6)).judged[0]?.reached;
    expect(fast?.of).toBeGreaterThan(3);
    expect(fast?.early).toBe(fast?.of);
    const steady = judged(then, looks(4000, [2000, 4000, 8000, 12_000, 16_000])).judged[0]?.reached;
    expect(steady?.of).toBeGreaterThan(3);
    expect(steady?.early).toBe(0);
  });

  it('leaves a liner fitted since out of it, and says when nothing was read', () => {
    const relined = judged(
      then,
      `${looks(4000, [2000, 4000])}reline DG1 2025-06-24 meter 4100 h {\n  liner TwoLayer12\n}\n${looks(0, [9600], 0.2)}`,
    );
    expect(relined.judged[0]).toMatchObject({ conveyors: [], notReadSince: 6 });
    expect(publishedSentences(relined)[0]).toContain('no thickness of the same liners was read since');
  });

  it('reads reports of format 1, without the wear as the model saw it', () => {
    const data = JSON.parse(
      remainingLifeJson(remainingLife(estateOf(six, looks(4000, [2000, 4000])), { track: false })),
    ) as {
      formatVersion: number;
      conveyors: { points: { model: { path?: unknown } }[] }[];
    };
    data.formatVersion = 1;
    for (const conveyor of data.conveyors) for (const point of conveyor.points) delete point.model.path;
    const read = readPublished(JSON.stringify(data));
    expect(
      read.ok && judged(read.report, looks(4000, [2000, 4000, 6000], 1.2)).judged[0]?.conveyors[0]?.told,
    ).toBe(true);
  });

  it.each([
    ['{', 'is no JSON'],
    ['[]', 'is no remaining-life report'],
    ['{"kind":"remaining life","formatVersion":9}', 'has format 9'],
    ['{"kind":"remaining life","formatVersion":2,"asOf":"soon"}', 'names no day'],
  ])('refuses %s in words', (text, message) => {
    const read = readPublished(text);
    expect(read.ok ? '' : read.message).toContain(message);
  });

  it('takes nothing from a field of the wrong kind', () => {
    const read = readPublished(
      '{"kind":"remaining life","formatVersion":2,"asOf":"2026-01-01","conveyors":[{"conveyor":"DG1","points":[{"point":"P1","fitted":"12","condemn":4},null,7,{"point":3}]},null,"x"]}',
    );
    expect(read).toEqual({ ok: true, report: { asOf: expect.any(Number) as number, points: [] } });
  });
});
