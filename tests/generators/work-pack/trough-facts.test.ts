// What the trough is of, and where its liner ends, in pack and drawing: masses by the width of the flat sheet worked out here.

import { describe, expect, test } from 'vitest';
import { inspectionSheet } from '../../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import { liftConveyor, read, theConveyor, theJob } from '../estate.js';

const packOf = (text: string): WorkPack => {
  const analysis = read(text);
  return workPack(analysis.estate, theJob(analysis));
};
const trough = 'side height 150 mm plate 4 mm';
const fact = (pack: WorkPack, name: string): string | undefined =>
  pack.conveyor.facts.find((each) => each.name === name)?.value;

describe('a liner that ends 40 mm below the top of the trough', () => {
  const low = liftConveyor({ conveyor: 'liner side height 110 mm' });

  test('is lighter by two strips of 40 mm: 12 mm × 935 kg/m³', () => {
    const heaviest = (text: string) => packOf(text).lifts.byHand[0]?.mass ?? NaN;
    // π(175 − 6) + 2 × 150 = 830.9 mm and 750.9 mm wide; a metre of it.
    expect(heaviest(liftConveyor())).toBeCloseTo(0.8309292 * 0.012 * 935, 4);
    expect(heaviest(low)).toBeCloseTo(0.7509292 * 0.012 * 935, 4);
  });

  test('shows in the facts of the pack, in the cross-section and in the report', () => {
    expect(fact(packOf(low), 'Liner, goes in')).toContain(
      'straight side 110 mm, 40 mm below the top of the trough',
    );
    expect(fact(packOf(liftConveyor()), 'Liner, goes in')).not.toContain('below the top');
    const analysis = read(low);
    const drawn = inspectionSheet(analysis.estate, theConveyor(analysis))
      .drawings.map(({ svg }) => svg)
      .join('');
    expect(drawn).toContain('Steel bare above it, each side');
    expect(drawn).toContain('40 mm');
    const looked = read(`${low}inspection DG1 2025-02-03 meter 900 h {\n  P1 thickness 11 mm\n}\n`);
    expect(remainingLifeHtml(remainingLife(looked.estate, { depth: 'hand' }))).toContain(
      'The liner ends 40 mm below the top of the trough',
    );
  });
});

describe('the steel of the trough', () => {
  const of = (material: string): string => liftConveyor().replace(trough, `${trough} material ${material}`);
  const hotWork = (text: string): string =>
    packOf(text).permits.find(({ name }) => name === 'Hot work')?.ask ?? '';

  test('stands in the pack and tells the welder what to mind', () => {
    expect(fact(packOf(of('S235')), 'Trough')).toContain('plate 4 mm of S235');
    expect(hotWork(of('S235'))).toContain('Trough of S235: plate and filler to suit');
    expect(hotWork(of('"1.4301"'))).toContain('chromium(VI)');
    expect(hotWork(of('galvanised'))).toContain('zinc');
    expect(hotWork(liftConveyor())).toContain('not known here: find out before welding');
  });

  test('rusts where it lies bare, unless it is stainless', () => {
    const bare = (material: string): string =>
      remainingLifeHtml(
        remainingLife(
          read(
            `${of(material)}inspection DG1 2025-02-03 meter 900 h {\n  view downstream\n  panel missing at 2.5 m\n}\n`,
          ).estate,
          { depth: 'hand' },
        ),
      );
    expect(bare('S235')).toContain('also rusts');
    expect(bare('"316L"')).not.toContain('also rusts');
    expect(bare('"316L"')).toContain('of 316L');
  });
});
