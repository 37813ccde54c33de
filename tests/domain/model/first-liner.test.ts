// Liners that differ along a trough from the day it was commissioned, without a reline that never happened.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../../src/analysis/analyse.js';
import type { Analysis } from '../../../src/analysis/analysis.js';
import { historyOf } from '../../../src/domain/model/history.js';
import { installedPanels } from '../../../src/domain/model/panels.js';
import { runsOf } from '../../../src/domain/model/runs.js';
import { remainingLife } from '../../../src/generators/remaining-life/remaining-life.js';
import { remainingLifeHtml } from '../../../src/generators/remaining-life/html.js';
import { inSoundEstate } from '../../../src/validation/example.js';

const eight =
  'liner TwoLayer10 {\n  layer grey 5 mm\n  layer orange 5 mm\n  panel length 1000 mm ± 1 mm\n  condemn at 2 mm\n  bolt M8 rows 2 pitch 200 mm\n  joint butted\n}';

function read(along: string, ...blocks: readonly string[]): Analysis {
  const text = inSoundEstate('estate', [eight, ...blocks].join('\n')).replace(
    /^ *liner TwoLayer12$/m,
    (line) => `${line}\n${along}`,
  );
  return analyse([{ uri: 'estate.trough', text }]);
}

const sets = ({ estate }: Analysis): readonly string[] =>
  historyOf(estate, estate.conveyors[0]!).linerSets.map(
    ({ liner, from, to, reline }) => `${liner.name} ${from}–${to}${reline ? ' relined' : ''}`,
  );

describe('a liner of its own from the beginning', () => {
  test('in a run, and from a chainage to another; the later line where both speak', () => {
    expect(sets(read('liner TwoLayer10 run above Gate'))).toEqual([
      'TwoLayer12 0–7500',
      'TwoLayer10 7500–12000',
    ]);
    expect(sets(read('liner TwoLayer10 from 2 m to 4 m'))).toEqual([
      'TwoLayer12 0–2000',
      'TwoLayer10 2000–4000',
      'TwoLayer12 4000–12000',
    ]);
    expect(sets(read('liner TwoLayer10 from 2 m to 9 m\nliner TwoLayer12 from 4 m to 5 m'))).toEqual([
      'TwoLayer12 0–2000',
      'TwoLayer10 2000–4000',
      'TwoLayer12 4000–5000',
      'TwoLayer10 5000–9000',
      'TwoLayer12 9000–12000',
    ]);
  });

  test('has its own panels, colours and condemn limit, and its hours count from commissioning', () => {
    const analysis = read(
      'liner TwoLayer10 run above Gate',
      'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  P1 colour teal\n  P2 colour orange\n}',
    );
    expect(analysis.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const { estate } = analysis;
    const [conveyor] = estate.conveyors;
    const upper = runsOf(conveyor!).find(({ from }) => from === 7500);
    expect(installedPanels(estate, upper!).liner.name).toBe('TwoLayer10');
    expect(
      installedPanels(estate, upper!).layout.panels.some(({ from, to }) => Math.abs(to - from - 1000) < 1),
    ).toBe(true);
    const [life] = remainingLife(estate, { depth: 'hand' }).conveyors;
    const p2 = life?.points.find(({ place }) => place.name === 'P2');
    expect(p2?.condemn).toBe(2);
    expect(p2?.readings[0]?.exposure).toBe(6000);
  });

  test('within a run: each stretch is laid of its own lengths, and panels are numbered through', () => {
    // Run 2 lies from 1.5 m to 7 m; TwoLayer10 is bought in 1000 mm, TwoLayer12 in 1200 mm, fitting starts at the head.
    const { estate } = read('liner TwoLayer10 from 4.6 m to 7 m');
    const run = runsOf(estate.conveyors[0]!)[1]!;
    expect([run.from, run.to]).toEqual([1500, 7000]);
    const { layout, recorded } = installedPanels(estate, run);
    expect(recorded).toBe(false);
    expect(layout.joints).toEqual([1500, 2200, 3400, 4600, 5000, 6000, 7000]);
  });

  test('lies as the conveyor says where it gives the lengths, and a reline of a panel by its number is of that panel', () => {
    const records = 'reline DG1 2025-01-13 meter 5200 h {\n  liner TwoLayer12\n  scope panel 2 of run 2\n}';
    const lengths = '  fitted run 2 panels 500 mm, 1000 mm, 1200 mm, 1200 mm, 800 mm, 800 mm';
    const { estate, findings } = read(lengths, records);
    expect(findings.filter(({ severity }) => severity !== 'information')).toEqual([]);
    const run = runsOf(estate.conveyors[0]!)[1]!;
    expect(installedPanels(estate, run)).toMatchObject({
      recorded: true,
      layout: { joints: [1500, 2000, 3000, 4200, 5400, 6200, 7000] },
    });
    expect(sets(read(lengths, records))).toContain('TwoLayer12 2000–3000 relined');
    expect(sets(read('', records))).toContain('TwoLayer12 2200–3400 relined');
  });

  test('panels that do not fill their run are told, as those of a reline', () => {
    const told = (line: string): readonly string[] =>
      read(line).findings.flatMap(({ code, message }) => (code === 'TL338' ? [message] : []));
    expect(told('  fitted run 2 panels 1200 mm, 1200 mm, 1200 mm')).toEqual([
      expect.stringContaining('1.90 m too short'),
    ]);
    expect(told('  fitted run 2 panels 1200 mm, 1200 mm, 1200 mm, 1200 mm, 700 mm')).toEqual([]);
  });

  test('another liner fitted from one chainage to another lies in its own lengths, and what it left is cut back', () => {
    const { estate } = read(
      '',
      'reline DG1 2025-01-13 meter 5200 h {\n  liner TwoLayer10\n  scope from 3.4 m to 6 m\n}',
    );
    const run = runsOf(estate.conveyors[0]!)[1]!;
    expect(installedPanels(estate, run).layout.joints).toEqual([1500, 2200, 3400, 4000, 5000, 6000, 7000]);
  });

  test('a liner that is not there, or a run that is not, is told', () => {
    const codes = (along: string): readonly string[] => read(along).findings.map(({ code }) => code);
    expect(codes('liner TwoLayer9 run above Gate')).toContain('TL114');
    expect(codes('liner TwoLayer10 run above Gat')).toContain('TL114');
  });
});

test('how worn a former set was is told with the place and the day', () => {
  const { estate } = read(
    '',
    'inspection DG1 2024-09-09 meter 3600 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 8.4 mm\n  P2 thickness 9.0 mm\n}',
    'inspection DG1 2024-12-09 meter 5000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 4.2 mm\n  P2 thickness 5.0 mm\n}',
    'reline DG1 2025-01-13 meter 5200 h {\n  liner TwoLayer12\n}',
    'inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 1.5 mm\n  P2 thickness 11.5 mm\n}',
  );
  const report = remainingLife(estate, { depth: 'hand' });
  expect(report.conveyors[0]?.former[0]?.least).toMatchObject({ place: 'P1', thickness: 4.2 });
  expect(remainingLifeHtml(report)).toContain('4.2 mm of 12.0 mm at P1 on 2024-12-09');
});
