import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import { parseDay } from '../../../src/domain/units/calendar.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';

const folder = fileURLToPath(new URL('../../../examples/4-tarnholt/', import.meta.url));
const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.trough'))
  .map((uri) => ({ uri, text: readFileSync(folder + uri, 'utf8') }));
const asOf = parseDay('2026-10-31')!; // a date that exists

function reportWith(repair: string): ReturnType<typeof remainingLife> {
  const changed = texts.map(({ uri, text }) => ({
    uri,
    text: text.replace('cost trough repair 18500 EUR', repair),
  }));
  return remainingLife(analyse(changed).estate, { asOf, track: false });
}

describe('the cheapest age to reline', () => {
  const base = reportWith('cost trough repair 18500 EUR');

  // Age replacement (Barlow & Proschan 1965, chapter 4): the dearer a failure, the earlier the replacement, never dearer than to failure.
  test('comes earlier where cutting the trough costs more', () => {
    const dearer = reportWith('cost trough repair 185000 EUR');
    for (const life of base.conveyors) {
      const after = dearer.conveyors.find((other) => other.conveyor.name === life.conveyor.name)?.model
        ?.cheapest;
      expect(after?.exposure).toBeLessThan(life.model?.cheapest?.exposure ?? 0);
      expect(life.model?.cheapest?.costRate).toBeLessThan(life.model?.cheapest?.toFailure ?? 0);
    }
  });

  test('is told beside the accepted risk, which rules', () => {
    expect(remainingLifeHtml(base)).toMatch(
      /DG1 at [\d ]+ h since fitting, about \d{4}-\d\d-\d\d: \d\.\d\d EUR\/h \(\d\.\d\d EUR\/h if run until steel is touched\); the accepted risk is passed before, on \d{4}-\d\d-\d\d, and that rules\./,
    );
  });

  test('is not told where no costs are declared', () => {
    expect(reportWith('cost trough repair 18500 USD').conveyors.map((life) => life.model?.cheapest)).toEqual(
      base.conveyors.map(() => undefined),
    );
  });
});
