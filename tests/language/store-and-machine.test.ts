// What stands at the machine and on the shelf, as people write it down: each line counts for what it says.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { troughState } from '../../src/domain/conditions/trough.js';
import { runsOf } from '../../src/domain/model/runs.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { workPackMarkdown } from '../../src/generators/work-pack/markdown.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { inSoundEstate } from '../../src/validation/example.js';
import type { Around } from '../../src/validation/rule.js';

const job = 'job J1 {\n  conveyor DG1\n  outage Spring27\n  reline all\n  crews Alpha\n}';

function read(block: string, around: Around = {}): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', block, around) }]);
}

function look(...rows: readonly string[]): string {
  return `inspection DG1 2026-11-09 meter 9000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  P1 thickness 9 mm\n  ${rows.join('\n  ')}\n}`;
}

function reportOf(block: string, plant: string): string {
  return remainingLifeMarkdown(remainingLife(read(block, { plant }).estate, { depth: 'hand' }));
}

test('a spare on its way stands beside what is open of that part, until the shelf was counted after it came', () => {
  const stuck = look('gate stuck at Gate serious');
  const wiper = 'ordered 1 gate "wiper" for DG1 on 2026-10-12 arrives 2026-12-04';
  const said = '1 gate (wiper) ordered on 2026-10-12, promised for 2026-12-04';
  expect(reportOf(stuck, wiper)).toContain(said);
  expect(reportOf(stuck, 'ordered 1 gate arrives 2026-12-04 "by courier"')).toContain(
    '1 gate ordered, promised for 2026-12-04 (“by courier”)',
  );
  expect(reportOf(look('gearbox noise serious'), wiper)).not.toContain('wiper');
  expect(reportOf(stuck, 'ordered 1 gate "wiper" on 2026-11-12 arrives 2026-12-04')).not.toContain('wiper');
  const come = 'ordered 1 gate "wiper" for DG1 on 2026-10-12 arrives 2026-10-30';
  const counted = 'on the shelf 1 gate "wiper" for DG1 counted 2026-11-02';
  expect(reportOf(stuck, come)).toContain('promised for 2026-10-30');
  expect(reportOf(stuck, `${come}\n${counted}`)).not.toContain('promised for 2026-10-30');
  expect(
    read('', { plant: 'ordered 1 gate for DG9 arrives 2026-12-04' }).findings.map(({ code }) => code),
  ).toContain('TL114');
});

test('an order of one thing is said in the singular', () => {
  const [one, many] = ['panel', 'panels'].map((word) =>
    read(job, { plant: `ordered TwoLayer12 1 ${word} length 1200 mm arrives 2026-11-30` }),
  );
  expect(one!.estate.plants[0]!.ordered).toHaveLength(1);
  const pack = ({ estate }: Analysis): string => workPackMarkdown(workPack(estate, estate.jobs[0]!));
  expect(pack(one!)).toBe(pack(many!));
});

test('an offcut on the shelf is stock of its own length, and no panel that nobody sells', () => {
  const offcut = read(`${look()}\n${job}`, {
    plant: 'on the shelf TwoLayer12 2 offcuts 620 mm counted 2026-10-20',
  });
  expect(offcut.findings.filter(({ code }) => code === 'TL540')).toEqual([]);
  const pack = workPackMarkdown(workPack(offcut.estate, offcut.estate.jobs[0]!));
  expect(pack).toMatch(/On the shelf: 2 offcuts of 620 mm, counted 2026-10-20/);
});

test('a stretch that is never lined divides the runs, and its steel is always bare', () => {
  const { estate } = read(look('plate at 5.2 m thickness 3.4 mm'), {
    conveyor: 'break Screen at 5 m to 5.5 m no liner "slotted plate"',
  });
  const [conveyor] = estate.conveyors;
  expect(
    runsOf(conveyor!).map(({ tailBreak, headBreak }) => [tailBreak.name, headBreak.name]),
  ).toContainEqual(['Screen', 'Head']);
  const state = troughState(estate, conveyor!);
  expect(state.places.map(({ noLiner }) => noLiner)).toEqual(['Screen']);
});

test('one line for parts at several places is a line for each', () => {
  const parts = (...lines: readonly string[]): readonly unknown[] => {
    const { holdDowns, braces, points } = read('', { conveyor: lines.join('\n') }).estate.conveyors[0]!;
    const at = (all: readonly { readonly from: { readonly value: number } }[]): readonly number[] =>
      all.map(({ from }) => from.value);
    return [at(holdDowns), at(braces), points.map(({ name, at: there }) => [name, there.value])];
  };
  expect(parts('hold-down at 2 m, 5 m and 8 m both sides', 'brace at 3 m, 6 m')).toEqual(
    parts('hold-down at 2 m', 'hold-down at 5 m', 'hold-down at 8 m', 'brace at 3 m', 'brace at 6 m'),
  );
  expect(parts('point Q at 1 m, 1.5 m clock 6:00')).toEqual(
    parts('point Q1 at 1 m clock 6:00', 'point Q2 at 1.5 m clock 6:00'),
  );
});

test('a skill of two words and a steel by its number', () => {
  const { estate, findings } = read('', {
    plant: 'crew Hot 2 people skills welding, "hot work", isolation',
    conveyor: 'trough inside radius 226 mm side height 260 mm plate 4 mm material 1.4301',
  });
  expect(findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  expect(estate.plants[0]!.crews.at(-1)!.skills).toEqual(['welding', 'hot work', 'isolation']);
  expect(estate.conveyors[0]!.trough.material).toBe('1.4301');
});

test('a shorter pitch is what all that is carried passes, and the pack names it', () => {
  const carried = { conveyor: 'bulk density 900 kg/m3\nfill 40 %\ncapacity 6 t/h' };
  const plain = read(job, carried);
  const short = read(job, { ...carried, screw: 'pitch 350 mm\npitch 100 mm from 0 m to 2 m' });
  expect(plain.findings.map(({ code }) => code)).not.toContain('TL223');
  expect(short.findings.find(({ code }) => code === 'TL223')?.message).toContain(
    'through its shortest pitch',
  );
  expect(workPackMarkdown(workPack(short.estate, short.estate.jobs[0]!))).toContain(
    'pitch 350 mm (100 mm from 0.00 m to 2.00 m)',
  );
});
