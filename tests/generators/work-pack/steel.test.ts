// What a pack tells of the trough's steel and of the liner that is met, from the records; the readings written here by hand.

import { describe, expect, test } from 'vitest';
import { workPack } from '../../../src/generators/work-pack/work-pack.js';
import type { WorkPack } from '../../../src/generators/work-pack/pack.js';
import { packBlocks } from '../../../src/generators/work-pack/print/pack-blocks.js';
import { day, liftConveyor, read, theJob, type EstateFacts } from '../estate.js';

function pack(facts: EstateFacts, asOf = '2026-10-31', change = (text: string): string => text): WorkPack {
  const analysis = read(change(liftConveyor(facts)));
  return workPack(analysis.estate, theJob(analysis), { asOf: day(asOf) });
}

const look = (date: string, hours: number, ...rows: string[]): string =>
  `inspection DG1 ${date} meter ${hours} h {\n  ${rows.join('\n  ')}\n}`;
const conveyor = 'minimum plate 2 mm';
const records = [
  look('2023-06-01', 2000, 'plate at 9.2 m clock 6:00 thickness 3.6 mm', 'plate at 3 m thickness 3.9 mm'),
  'patch DG1 2024-02-01 at 9 m to 9.5 m thickness 5 mm welded by "Weld team" "lap all round"',
  look('2025-03-01', 8000, 'plate at 9.2 m clock 6:00 thickness 4.7 mm', 'plate at 11 m thickness 2.0 mm'),
].join('\n');
const rows = ({ steel }: WorkPack): readonly string[] | undefined =>
  steel?.rows.map(({ where, known }) => `${where}: ${known}`);

describe('the steel that a job comes to', () => {
  test('readings and patches at the place, as they stood on the day; others are left out', () => {
    expect(rows(pack({ conveyor, more: records }))).toEqual([
      '9.00 m to 9.50 m, all round: patch of 5 mm welded in 2024-02-01 by Weld team; lap all round',
      '9.20 m at 6:00: on the patch of 2024-02-01, 5 mm when new; plate read 4.7 mm (2025-03-01)',
      '11.00 m: plate read 2 mm (2025-03-01); AT OR BELOW THE MINIMUM',
    ]);
    expect(rows(pack({ conveyor, more: records }, '2024-06-01'))).toEqual([
      '9.00 m to 9.50 m, all round: patch of 5 mm welded in 2024-02-01 by Weld team; lap all round',
      '9.20 m at 6:00: plate read 3.6 mm (2023-06-01); patched since, 2024-02-01',
    ]);
    expect(rows(pack({ conveyor, more: records }, '2023-12-31'))).toEqual([
      '9.20 m at 6:00: plate read 3.6 mm (2023-06-01)',
    ]);
  });
  test('half a metre beside the work still counts', () => {
    const at = (place: string): readonly string[] | undefined =>
      rows(pack({ more: look('2025-03-01', 8000, `plate at ${place} thickness 3.5 mm`) }));
    expect(at('7.0 m')).toEqual(['7.00 m: plate read 3.5 mm (2025-03-01)']);
    expect(at('6.99 m')).toBeUndefined();
  });
  test('what is to be welded and was never read is said', () => {
    const order = 'order {\n    patch from 2 m to 2.4 m hot work shielded wet\n    fit run 2\n  }';
    expect(rows(pack({ job: order }))).toEqual([
      '2.00 m to 2.40 m: to be welded, and no reading of the plate on record: read it before anything is welded',
    ]);
    expect(rows(pack({ job: order, more: records }))?.[0]).toMatch(/^2.00 m to 2.40 m: to be welded/);
    expect(
      rows(pack({ job: order, more: look('2025-03-01', 8000, 'plate at 2.9 m thickness 3 mm') })),
    ).toEqual(['2.90 m: plate read 3 mm (2025-03-01)']);
  });
  test('nothing on record and nothing to weld: nothing is printed', () => {
    expect(pack({}).steel).toBeUndefined();
    expect(JSON.stringify(packBlocks(pack({})))).not.toContain('Steel of the trough');
    expect(JSON.stringify(packBlocks(pack({ conveyor, more: records })))).toContain(
      'Steel of the trough where this job comes to it: 4 mm when new, at least 2 mm must be left',
    );
  });
});

describe('the liner that is met, and the one that goes in', () => {
  const thin = 'liner Thin6 {\n  layer red 6 mm\n  panel length 1000 mm ± 1 mm\n  condemn at 2 mm\n}\n';
  const liners = ({ conveyor: { facts } }: WorkPack): readonly string[] =>
    facts.filter(({ name }) => name.startsWith('Liner')).map(({ name, value }) => `${name}: ${value}`);
  const twoLayer = 'TwoLayer12: ivory 6 mm + teal 6 mm, bolts M10, joints butted';

  test('both, also where they are the same', () => {
    expect(liners(pack({}))).toEqual([
      `Liner, comes out: ${twoLayer}, in since 2023-01-02`,
      `Liner, goes in: ${twoLayer}`,
    ]);
  });
  test('the old one by the records, piece by piece, and not beyond the work', () => {
    const more = `${thin}reline DG1 2024-05-01 meter 5000 h {\n  liner Thin6\n  scope from 9.5 m to 12 m\n}`;
    const found = liners(pack({ more }));
    expect(found[0]).toBe(
      `Liner, comes out: 7.50 m to 9.50 m: ${twoLayer}, in since 2023-01-02; ` +
        '9.50 m to 12.00 m: Thin6: red 6 mm, joints butted, in since 2024-05-01',
    );
    expect(liners(pack({ more }, '2024-01-01'))[0]).toBe(
      `Liner, comes out: ${twoLayer}, in since 2023-01-02`,
    );
  });
  test('none at a break: a reline of all with another on one side of the gate begins and ends in the runs', () => {
    const more = `${thin}reline DG1 2024-05-01 meter 5000 h {\n  liner Thin6\n  scope from 0 m to 7.3 m\n}`;
    const change = (text: string): string => text.replace('reline run above Gate', 'change screw');
    expect(liners(pack({ more }, '2026-10-31', change))).toEqual([
      'Liner: 0.00 m to 7.00 m: Thin6: red 6 mm, joints butted, in since 2024-05-01; ' +
        `7.50 m to 12.00 m: ${twoLayer}, in since 2023-01-02`,
    ]);
  });
  test('another goes in', () => {
    const change = (text: string): string =>
      text.replace('reline run above Gate', 'reline run above Gate with Thin6');
    expect(liners(pack({ more: thin }, '2026-10-31', change))).toEqual([
      `Liner, comes out: ${twoLayer}, in since 2023-01-02`,
      'Liner, goes in: Thin6: red 6 mm, joints butted',
    ]);
  });
  test('a new spiral alone: what lies there', () => {
    const change = (text: string): string => text.replace('reline run above Gate', 'change screw');
    expect(liners(pack({}, '2026-10-31', change))).toEqual([`Liner: ${twoLayer}, in since 2023-01-02`]);
  });
});
