// Steps that may go on at the same time, steps that lead nowhere, and people too few or too many: what is told of each, and what
// is offered. What is left open at the end of these short orders is left out here.

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { stepText } from '../../../src/domain/order/words.js';
import { gap, mm, origin, screw, stated, use } from '../../kit/estate.js';
import { before, check, cover, crew, everywhere, holdDown, job, line, platform } from './stories.js';

const atTheEnd = ['not put back', 'screw still restrained', 'scope not done', 'no trial run'];
function told(of: Job, lines: readonly string[]): string[] {
  return check(of, lines)
    .filter(({ kind }) => !atTheEnd.includes(kind))
    .flatMap(({ kind, grade, step, message, conflicts, repairs }) => [
      `${kind} (${grade})${step ? ` at ${stepText(step)}` : ''}: ${message}`,
      ...conflicts.map((other) => `  ${stepText(other.step)}: ${other.words}`),
      ...repairs.map(({ title, changes }) => `  ${changes.length > 0 ? '→' : '…'} ${title}`),
    ]);
}

type Case = readonly [string, Job, readonly string[], readonly string[]];

const crews = [crew('Alpha'), crew('Bravo')];
const flat = line([2, 2], [10, 10, 10], {
  covers: [cover(0, 2100), cover(2100, 4200)],
  holdDowns: [holdDown(1000)],
});
const of = job(flat, ['all'], { crews });
const start = ['isolate by Alpha', 'd: prove dead by Alpha'];
const open = [...start, 'c: covers off by Alpha', 'h: hold-downs off by Alpha'];
const stripped = [...open, 's: strip by Alpha'];
/** The gate is shut while the liner comes out, and open after it. */
const shutFor = ['gate shut Gate1 by Alpha', ...open, 'strip by Alpha', 's: gate open Gate1 by Alpha'];
const steep = { ...flat, incline: stated('angle', 20) };
const inlet = {
  ...steep,
  breaks: steep.breaks.map((each) =>
    each.name === 'Gate1' ? gap('Gate1', 'inlet', each.from.value, each.to.value, 10) : each,
  ),
};
const units = { accessUnits: [platform('MP1'), platform('MP2')] };
const change = { screw: screw(), cut: 'cold', joints: 'bolted', origin: origin() } as const;
/** A crane that lifts a tonne anywhere along the trough, or up to a radius. */
const crane = (name: string, at: number, radius: number): NonNullable<Job['cranes']>[number] => ({
  use: use(name),
  crane: {
    name,
    chart: [{ radius: mm(radius), load: stated('mass', 1000) }],
    origin: origin(),
    nameOrigin: origin(),
  },
  at: mm(at),
  offset: mm(0),
  origin: origin(),
});
const pieces = (a: string, b: string): string[] => [
  ...open,
  'r: restrain screw by Alpha after h',
  'u: unbolt drive by Alpha after r',
  `a: ${a} by Alpha after u`,
  `b: ${b} by Bravo after u`,
];
const high = { ...flat, access: [{ ...everywhere, kind: 'mobile platform' as const, height: mm(3000) }] };
const plate = (limit: number | undefined, people?: number): Job['accessUnits'] => [
  {
    use: use('MP1'),
    unit: {
      name: 'MP1',
      origin: origin(),
      nameOrigin: origin(),
      ...(limit === undefined ? {} : { limit: stated('mass', limit, `${limit} kg`) }),
      ...(people === undefined ? {} : { people: { count: people, origin: origin() } }),
    },
  },
];

const cases: Readonly<Record<string, readonly Case[]>> = {
  'only one order of the two works': [
    [
      'strip and clean',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: clean run 1 by Bravo after h'],
      [
        'liner not stripped (cannot be built) at b: clean run 1 by Bravo after h: "clean run 1" and "strip run 1" may go on at the same time, but both concern panels 1 to 2 of run 1, and only one order of the two works.',
        '  a: strip run 1 by Alpha after h: may go on at the same time',
        '  → Let "clean run 1" wait for "strip run 1"',
      ],
    ],
    [
      'of a chain, the nearest is told',
      of,
      [
        ...open,
        'a: strip run 1 by Alpha after h',
        'b: clean run 1 by Alpha after a',
        'f: fit run 1 starting at tail by Alpha after b',
        'k: hold-downs on by Bravo after h',
      ],
      [
        'not opened up (cannot be built) at k: hold-downs on by Bravo after h: "hold-downs on" and "fit run 1 from the tail" may go on at the same time, but both concern the hold-down at 1.00 m, and only one order of the two works.',
        '  f: fit run 1 starting at tail by Alpha after b: may go on at the same time',
        '  → Let "hold-downs on" wait for "fit run 1 from the tail"',
      ],
    ],
    [
      'of a chain written last, too',
      of,
      [
        ...open,
        'k: clean run 1 by Bravo after h',
        'a: strip run 2 by Alpha after h',
        'b: clean run 2 by Alpha after a',
        'f: fit run 2 starting at head by Alpha after b',
        'o: covers on run 2 by Bravo after h',
      ],
      [
        'liner not stripped (cannot be built) at k: clean run 1 by Bravo after h: "clean run 1" needs the trough bare, but the old liner is in at panels 1 to 2 of run 1.',
        '  → Add "strip run 1" before "clean run 1"',
        'not opened up (cannot be built) at o: covers on run 2 by Bravo after h: "covers on run 2" and "fit run 2 from the head" may go on at the same time, but both concern the cover 2.10 m to 4.20 m, and only one order of the two works.',
        '  f: fit run 2 starting at head by Alpha after b: may go on at the same time',
        '  → Let "covers on run 2" wait for "fit run 2 from the head"',
        'crew in two places (cannot be built) at o: covers on run 2 by Bravo after h: "covers on run 2" and "clean run 1" may go on at the same time, and both need Bravo.',
        '  k: clean run 1 by Bravo after h: may go on at the same time',
        '  → Let "covers on run 2" wait for "clean run 1"',
        '  → Move "covers on run 2" before "clean run 1"',
      ],
    ],
    [
      'both runs, in one complaint',
      of,
      [...open, 'a: strip all by Alpha after h', 'b: clean all by Bravo after h'],
      [
        'liner not stripped (cannot be built) at b: clean all by Bravo after h: "clean all" and "strip all" may go on at the same time, but both concern panels 1 to 2 of run 1 and panels 1 to 2 of run 2, and only one order of the two works.',
        '  a: strip all by Alpha after h: may go on at the same time',
        '  → Let "clean all" wait for "strip all"',
      ],
    ],
    [
      'closing up beside opening up',
      of,
      [...start, 'a: covers off run 1 by Alpha after d', 'b: covers on run 1 by Bravo after d'],
      [
        'closed up too early (incomplete) at b: covers on run 1 by Bravo after d: "covers on run 1" and "covers off run 1" may go on at the same time, but both concern the cover 0.00 m to 2.10 m, and only one order of the two works.',
        '  a: covers off run 1 by Alpha after d: may go on at the same time',
        '  → Let "covers on run 1" wait for "covers off run 1"',
      ],
    ],
    [
      'isolation beside the first work',
      of,
      [
        'isolate by Alpha',
        'd: prove dead by Alpha',
        'a: covers off by Bravo after x',
        'x: gate shut Gate1 by Alpha after d',
      ],
      [],
    ],
    [
      'a test and a pause',
      job({ ...flat, confinedSpace: true }, ['all'], { crews }),
      [...start, 'g: gas test all by Alpha after d', 'c: covers off by Bravo after g', 'p: pause after g'],
      [
        'gas test missing (unsafe) at p: pause after g: "pause" and "covers off" may go on at the same time, but both concern the air 0.00 m to 4.20 m, and only one order of the two works.',
        '  c: covers off by Bravo after g: may go on at the same time',
        '  → Let "pause" wait for "covers off"',
      ],
    ],
    [
      'the same twice',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: strip run 1 by Bravo after h'],
      [
        'done twice (incomplete) at b: strip run 1 by Bravo after h: "strip run 1" is already done for panels 1 to 2 of run 1. "strip run 1" did it.',
        '  a: strip run 1 by Alpha after h: done here already',
        '  → Leave out the second "strip run 1"',
      ],
    ],
    [
      'a test beside a pause, whoever breathes it',
      job({ ...flat, confinedSpace: true }, ['all'], { crews }),
      [...start, 'g: gas test all by Alpha after d', 'p: pause after d'],
      [
        'gas test missing (unsafe) at p: pause after d: "pause" and "gas test all" may go on at the same time, but both concern the air 0.00 m to 4.20 m, and only one order of the two works.',
        '  g: gas test all by Alpha after d: may go on at the same time',
        '  → Let "pause" wait for "gas test all"',
        '  → Move "pause" before "gas test all"',
      ],
    ],
    [
      'clearing up beside what litters',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: clear up run 1 by Bravo after h'],
      [
        'not cleared up (incomplete) at b: clear up run 1 by Bravo after h: "clear up run 1" and "strip run 1" may go on at the same time, but both concern the tools and litter 0.00 m to 2.00 m, and only one order of the two works.',
        '  a: strip run 1 by Alpha after h: may go on at the same time',
        '  → Let "clear up run 1" wait for "strip run 1"',
        '  → Move "clear up run 1" before "strip run 1"',
      ],
    ],
    [
      'fitting beside patching leaves dirt both ways',
      of,
      [
        ...stripped,
        'k: clean all by Alpha',
        'a: fit run 1 starting at tail by Alpha after k',
        'b: patch run 1 by Bravo after k cold work',
      ],
      [],
    ],
    [
      'a gate opened beside its being shut',
      of,
      [...start, 'a: gate shut Gate1 by Alpha after d', 'b: gate off Gate1 by Bravo after d'],
      [
        'closed up too early (incomplete) at b: gate off Gate1 by Bravo after d: "gate off Gate1" and "gate shut Gate1" may go on at the same time, but both concern the gate Gate1, and only one order of the two works.',
        '  a: gate shut Gate1 by Alpha after d: may go on at the same time',
        '  → Let "gate off Gate1" wait for "gate shut Gate1"',
      ],
    ],
    [
      'what comes too late is not told as open as well',
      of,
      [...open, 'b: clean run 1 by Bravo after h', 'a: strip run 1 by Alpha after h'],
      [
        'liner not stripped (cannot be built) at b: clean run 1 by Bravo after h: "clean run 1" needs the trough bare, but the old liner is in at panels 1 to 2 of run 1. "strip run 1" comes only later.',
        '  a: strip run 1 by Alpha after h: what is missing is done only here',
        '  → Move "strip run 1" before "clean run 1"',
        '  → Add "strip run 1" before "clean run 1"',
      ],
    ],
    [
      'a spiral let go beside its being held',
      job(flat, ['all'], { crews, screwChange: change }),
      [...open, 'a: restrain screw by Alpha after h', 'b: release screw by Bravo after h'],
      [
        'screw not restrained (unsafe) at b: release screw by Bravo after h: "release screw" and "restrain screw" may go on at the same time, but both concern the restraint of the spiral, and only one order of the two works.',
        '  a: restrain screw by Alpha after h: may go on at the same time',
        '  → Let "release screw" wait for "restrain screw"',
        '  → Move "release screw" before "restrain screw"',
      ],
    ],
    [
      'braces',
      of,
      [
        ...start,
        'a: hold-downs off run 1 by Alpha after d',
        'b: covers off run 1 by Alpha after a',
        'e: hold-downs on run 1 by Bravo after d',
      ],
      [
        'not opened up (cannot be built) at a: hold-downs off run 1 by Alpha after d: "hold-downs off run 1" cannot be reached: the cover 0.00 m to 2.10 m is still on. "covers off run 1" comes only later.',
        '  b: covers off run 1 by Alpha after a: what is missing is done only here',
        '  → Move "covers off run 1" before "hold-downs off run 1"',
        'closed up too early (incomplete) at e: hold-downs on run 1 by Bravo after d: "hold-downs on run 1" and "hold-downs off run 1" may go on at the same time, but both concern the hold-down at 1.00 m, and only one order of the two works.',
        '  a: hold-downs off run 1 by Alpha after d: may go on at the same time',
        '  → Let "hold-downs on run 1" wait for "hold-downs off run 1"',
        '  → Move "hold-downs on run 1" before "hold-downs off run 1"',
      ],
    ],
    [
      'two tests of one air: either will do',
      job({ ...flat, confinedSpace: true }, ['all'], { crews }),
      [
        ...start,
        'g: gas test all by Alpha after d',
        'k: gas test all by Bravo after d',
        'c: covers off by Alpha after g',
      ],
      [],
    ],
    [
      'a panel fitted beside its neighbour being stripped',
      job(line([2], [10, 10]), ['all'], { crews }),
      [
        ...start,
        'x: strip panel 1 of run 1 by Alpha after d',
        'k: clean panel 1 of run 1 by Alpha after x',
        'b: strip panel 2 of run 1 by Bravo after d',
        'a: fit panel 1 of run 1 starting at tail by Alpha after k',
      ],
      [
        'closes inside the run (cannot be built) at a: fit panel 1 of run 1 starting at tail by Alpha after k: "fit panel 1 of run 1 from the tail" and "strip panel 2 of run 1" may go on at the same time, but both concern panel 2 of run 1, and only one order of the two works.',
        '  b: strip panel 2 of run 1 by Bravo after d: may go on at the same time',
        '  → Let "fit panel 1 of run 1 from the tail" wait for "strip panel 2 of run 1"',
      ],
    ],
    [
      'two that do not meet',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: strip run 2 by Bravo after h'],
      [],
    ],
  ],
  'both need the same': [
    [
      'a crew',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: strip run 2 by Alpha after h'],
      [
        'crew in two places (cannot be built) at b: strip run 2 by Alpha after h: "strip run 2" and "strip run 1" may go on at the same time, and both need Alpha.',
        '  a: strip run 1 by Alpha after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    [
      'the crew that nobody named',
      job(flat, ['all']),
      [
        'isolate',
        'prove dead',
        'covers off',
        'h: hold-downs off',
        'a: strip run 1 after h',
        'b: strip run 2 after h',
      ],
      [
        'crew in two places (cannot be built) at b: strip run 2 after h: "strip run 2" and "strip run 1" may go on at the same time, and both need the crew.',
        '  a: strip run 1 after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    [
      "the job's only crew",
      job(flat, ['all'], { crews: [crew('Alpha')] }),
      [
        'isolate',
        'prove dead',
        'covers off',
        'h: hold-downs off',
        'a: strip run 1 after h',
        'b: strip run 2 by Alpha after h',
      ],
      [
        'crew in two places (cannot be built) at b: strip run 2 by Alpha after h: "strip run 2" and "strip run 1" may go on at the same time, and both need Alpha.',
        '  a: strip run 1 after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    ['any of several crews', of, [...open, 'a: strip run 1 after h', 'b: strip run 2 after h'], []],
    [
      'who stands by',
      of,
      [...open, 'a: strip run 1 by Alpha after h', 'b: strip run 2 by Bravo attended by Alpha after h'],
      [
        'crew in two places (cannot be built) at b: strip run 2 by Bravo attended by Alpha after h: "strip run 2" and "strip run 1" may go on at the same time, and both need Alpha.',
        '  a: strip run 1 by Alpha after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    [
      'a platform',
      job(flat, ['all'], { crews, ...units }),
      [...open, 'a: strip run 1 by Alpha using MP1 after h', 'b: strip run 2 by Bravo using MP1 after h'],
      [
        'access unit in two places (cannot be built) at b: strip run 2 by Bravo using MP1 after h: "strip run 2" and "strip run 1" may go on at the same time, and both need MP1.',
        '  a: strip run 1 by Alpha using MP1 after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    [
      'a platform each',
      job(flat, ['all'], { crews, ...units }),
      [...open, 'a: strip run 1 by Alpha using MP1 after h', 'b: strip run 2 by Bravo using MP2 after h'],
      [],
    ],
    [
      'a crew and a platform, told once',
      job(flat, ['all'], { crews, ...units }),
      [...open, 'a: strip run 1 by Alpha using MP1 after h', 'b: strip run 2 by Alpha using MP1 after h'],
      [
        'crew in two places (cannot be built) at b: strip run 2 by Alpha using MP1 after h: "strip run 2" and "strip run 1" may go on at the same time, and both need Alpha.',
        '  a: strip run 1 by Alpha using MP1 after h: may go on at the same time',
        '  → Let "strip run 2" wait for "strip run 1"',
        '  → Move "strip run 2" before "strip run 1"',
      ],
    ],
    [
      'a crane',
      job(flat, ['all'], { crews, cranes: [crane('C1', 2000, 20_000)], screwChange: change }),
      pieces('remove screw from 0 mm to 2000 mm', 'remove screw from 2000 mm to 4200 mm'),
      [
        'crane in two places (cannot be built) at b: remove screw from 2000 mm to 4200 mm by Bravo after u: "remove screw from 2000 mm to 4200 mm" and "remove screw from 0 mm to 2000 mm" may go on at the same time, and both need C1.',
        '  a: remove screw from 0 mm to 2000 mm by Alpha after u: may go on at the same time',
        '  → Let "remove screw from 2000 mm to 4200 mm" wait for "remove screw from 0 mm to 2000 mm"',
        '  → Move "remove screw from 2000 mm to 4200 mm" before "remove screw from 0 mm to 2000 mm"',
      ],
    ],
    [
      'a crane each',
      job(flat, ['all'], {
        crews,
        cranes: [crane('C1', 0, 2000), crane('C2', 4200, 2100)],
        screwChange: change,
      }),
      pieces('remove screw from 0 mm to 2000 mm', 'remove screw from 2100 mm to 4200 mm'),
      [],
    ],
    [
      'a crane, for a piece and for nothing',
      job(flat, ['all'], { crews, cranes: [crane('C1', 2000, 20_000)], screwChange: change }),
      pieces('remove screw from 0 mm to 2000 mm', 'strip run 2'),
      [],
    ],
    [
      'a crane, for nothing and for a piece',
      job(flat, ['all'], { crews, cranes: [crane('C1', 2000, 20_000)], screwChange: change }),
      pieces('strip run 1', 'remove screw from 2200 mm to 4200 mm'),
      [],
    ],
  ],
  'a place that is left alone for a while': [
    [
      'dries',
      of,
      [...stripped, 'a: clean run 1 by Alpha after s dries 2 h', 'b: patch run 1 by Bravo after s cold work'],
      [
        'still drying (incomplete) at b: patch run 1 by Bravo after s cold work: "patch run 1" and "clean run 1" may go on at the same time in one place, which dries for 2 h once the one is done.',
        '  a: clean run 1 by Alpha after s dries 2 h: may go on at the same time',
        '  → Let "patch run 1" wait for "clean run 1"',
        '  → Move "patch run 1" before "clean run 1"',
      ],
    ],
    [
      'dries, written the other way round',
      of,
      [...stripped, 'b: patch run 1 by Bravo after s cold work', 'a: clean run 1 by Alpha after s dries 2 h'],
      [
        'still drying (incomplete) at a: clean run 1 by Alpha after s dries 2 h: "clean run 1" and "patch run 1" may go on at the same time in one place, which dries for 2 h once the one is done.',
        '  b: patch run 1 by Bravo after s cold work: may go on at the same time',
        '  → Let "clean run 1" wait for "patch run 1"',
        '  → Move "clean run 1" before "patch run 1"',
      ],
    ],
    [
      'cools without being told to',
      of,
      [...stripped, 'a: patch panel 1 of run 1 by Alpha after s', 'b: clean run 1 by Bravo after s'],
      [
        'still drying (incomplete) at b: clean run 1 by Bravo after s: "clean run 1" and "patch panel 1 of run 1" may go on at the same time in one place, which cools for 0.5 h once the one is done.',
        '  a: patch panel 1 of run 1 by Alpha after s: may go on at the same time',
        '  → Let "clean run 1" wait for "patch panel 1 of run 1"',
        '  → Move "clean run 1" before "patch panel 1 of run 1"',
      ],
    ],
    [
      'elsewhere',
      of,
      [...stripped, 'a: clean run 1 by Alpha after s dries 2 h', 'b: patch run 2 by Bravo after s cold work'],
      [],
    ],
    [
      'afterwards',
      of,
      [...stripped, 'a: clean run 1 by Alpha after s dries 2 h', 'b: patch run 1 by Bravo after a cold work'],
      [],
    ],
    [
      'before',
      of,
      [...stripped, 'b: patch run 1 by Bravo after s cold work', 'a: clean run 1 by Alpha after b dries 2 h'],
      [],
    ],
    [
      'watched meanwhile',
      of,
      [...stripped, 'a: patch run 1 by Alpha after s', 'b: fire watch run 1 by Bravo after s takes 1 h'],
      [
        'fire watch missing (unsafe) at b: fire watch run 1 by Bravo after s takes 1 h: "fire watch run 1" and "patch run 1" may go on at the same time, but both concern the place of hot work 0.00 m to 2.00 m, and only one order of the two works.',
        '  a: patch run 1 by Alpha after s: may go on at the same time',
        '  → Let "fire watch run 1" wait for "patch run 1"',
        '  → Move "fire watch run 1" before "patch run 1"',
      ],
    ],
    [
      'both rest: told once',
      of,
      [...stripped, 'a: clean run 1 by Alpha after s dries 2 h', 'b: patch run 1 by Bravo after s'],
      [
        'still drying (incomplete) at b: patch run 1 by Bravo after s: "patch run 1" and "clean run 1" may go on at the same time in one place, which dries for 2 h once the one is done.',
        '  a: clean run 1 by Alpha after s dries 2 h: may go on at the same time',
        '  → Let "patch run 1" wait for "clean run 1"',
        '  → Move "patch run 1" before "clean run 1"',
      ],
    ],
    [
      'both, by one crew: told once',
      of,
      [...stripped, 'a: clean run 1 by Alpha after s dries 2 h', 'b: patch run 1 by Alpha after s cold work'],
      [
        'crew in two places (cannot be built) at b: patch run 1 by Alpha after s cold work: "patch run 1" and "clean run 1" may go on at the same time, and both need Alpha.',
        '  a: clean run 1 by Alpha after s dries 2 h: may go on at the same time',
        '  → Let "patch run 1" wait for "clean run 1"',
        '  → Move "patch run 1" before "clean run 1"',
      ],
    ],
  ],
  'below what may get away': [
    [
      'with a gate between that nobody shuts',
      job(steep, ['all'], { crews }),
      [...shutFor, 'a: patch run 2 by Alpha after s cold work', 'b: hold-downs on run 1 by Bravo after s'],
      [
        'gate open between (incomplete) at b: hold-downs on run 1 by Bravo after s: "hold-downs on run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 by Alpha after s cold work: may go on at the same time',
        '  → Shut Gate1 as a barrier first',
        '  → Let "hold-downs on run 1" wait for "patch run 2"',
        '  → Move "hold-downs on run 1" before "patch run 2"',
      ],
    ],
    [
      'one gate is one matter',
      job(steep, ['all'], { crews }),
      [
        ...shutFor,
        'a: patch run 2 by Alpha after s cold work',
        'k: hold-downs on run 1 by Bravo after s',
        'm: covers on run 1 by Bravo after k',
      ],
      [
        'gate open between (incomplete) at k: hold-downs on run 1 by Bravo after s: "hold-downs on run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 by Alpha after s cold work: may go on at the same time',
        '  → Shut Gate1 as a barrier first',
        '  → Let "hold-downs on run 1" wait for "patch run 2"',
      ],
    ],
    [
      'with one platform for both: told once',
      job(inlet, ['all'], { crews, ...units }),
      [
        ...stripped,
        'a: patch run 2 by Alpha using MP1 after s cold work',
        'b: clean run 1 by Bravo using MP1 after s',
      ],
      [
        'access unit in two places (cannot be built) at b: clean run 1 by Bravo using MP1 after s: "clean run 1" and "patch run 2" may go on at the same time, and both need MP1.',
        '  a: patch run 2 by Alpha using MP1 after s cold work: may go on at the same time',
        '  → Let "clean run 1" wait for "patch run 2"',
        '  → Move "clean run 1" before "patch run 2"',
      ],
    ],
    [
      'with nothing between',
      job(inlet, ['all'], { crews }),
      [...stripped, 'a: patch run 2 by Alpha after s cold work', 'b: clean run 1 by Bravo after s'],
      [
        'work below loose parts (unsafe) at b: clean run 1 by Bravo after s: "clean run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 by Alpha after s cold work: may go on at the same time',
        '  → Let "clean run 1" wait for "patch run 2"',
        '  → Move "clean run 1" before "patch run 2"',
      ],
    ],
    [
      'each step for itself where nothing is between',
      job(inlet, ['all'], { crews }),
      [
        ...stripped,
        'a: patch run 2 by Alpha after s cold work',
        'k: clean panel 1 of run 1 by Bravo after s',
        'm: clean panel 2 of run 1 by Bravo after k',
      ],
      [
        'work below loose parts (unsafe) at k: clean panel 1 of run 1 by Bravo after s: "clean panel 1 of run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 by Alpha after s cold work: may go on at the same time',
        '  → Let "clean panel 1 of run 1" wait for "patch run 2"',
        '  → Move "clean panel 1 of run 1" before "patch run 2"',
        'work below loose parts (unsafe) at m: clean panel 2 of run 1 by Bravo after k: "clean panel 2 of run 1" is at 1.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 by Alpha after s cold work: may go on at the same time',
        '  → Move "clean panel 2 of run 1" before "patch run 2"',
        '  → Let "clean panel 2 of run 1" wait for "patch run 2"',
      ],
    ],
    [
      'written the other way round',
      job(inlet, ['all'], { crews }),
      [...stripped, 'b: clean run 1 by Bravo after s', 'a: patch run 2 by Alpha after s cold work'],
      [
        'work below loose parts (unsafe) at a: patch run 2 by Alpha after s cold work: "clean run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  b: clean run 1 by Bravo after s: may go on at the same time',
        '  → Let "patch run 2" wait for "clean run 1"',
        '  → Move "patch run 2" before "clean run 1"',
      ],
    ],
    [
      'any of several crews may be two',
      job(inlet, ['all'], { crews }),
      [...stripped, 'a: patch run 2 after s cold work', 'b: clean run 1 after s'],
      [
        'work below loose parts (unsafe) at b: clean run 1 after s: "clean run 1" is at 0.00 m, below "patch run 2" at up to 4.20 m, and both may go on at the same time.',
        '  a: patch run 2 after s cold work: may go on at the same time',
        '  → Let "clean run 1" wait for "patch run 2"',
        '  → Move "clean run 1" before "patch run 2"',
      ],
    ],
    [
      'one of two crews is on both',
      job(inlet, ['all'], { crews: [...crews, crew('Charly')] }),
      [
        ...stripped,
        'a: patch run 2 by Alpha, Charly after s cold work',
        'b: clean run 1 by Bravo, Charly after s',
      ],
      [
        'crew in two places (cannot be built) at b: clean run 1 by Bravo, Charly after s: "clean run 1" and "patch run 2" may go on at the same time, and both need Charly.',
        '  a: patch run 2 by Alpha, Charly after s cold work: may go on at the same time',
        '  → Let "clean run 1" wait for "patch run 2"',
        '  → Move "clean run 1" before "patch run 2"',
      ],
    ],
    [
      'power is cut elsewhere',
      job(inlet, ['all'], { crews }),
      [...start, 'a: covers off run 2 by Alpha after d', 'p: pause after d'],
      [],
    ],
  ],
  'steps that wait for one another': [
    [
      'for itself',
      of,
      ['a: isolate by Alpha after a', 'prove dead by Alpha'],
      [
        'circular order (cannot be built) at a: isolate by Alpha after a: "isolate" waits for itself.',
        '  → Do not let "isolate" wait for "a"',
      ],
    ],
    [
      'two',
      of,
      [...start, 'a: covers off run 1 by Alpha after d, b', 'b: covers off run 2 by Alpha after d, a'],
      [
        'circular order (cannot be built) at a: covers off run 1 by Alpha after d, b: "covers off run 1" and "covers off run 2" wait for one another, so none can start.',
        '  b: covers off run 2 by Alpha after d, a: part of the circle',
        '  → Do not let "covers off run 1" wait for "b"',
      ],
    ],
    [
      'five',
      of,
      [
        ...start,
        'a: covers off run 1 by Alpha after d, e',
        'b: covers off run 2 by Alpha after a',
        'c: gate shut Gate1 by Alpha after b',
        'x: gate open Gate1 by Alpha after c',
        'e: hold-downs off by Alpha after x',
      ],
      [
        'circular order (cannot be built) at a: covers off run 1 by Alpha after d, e: "covers off run 1", "covers off run 2", "gate shut Gate1" and 2 more wait for one another, so none can start.',
        '  b: covers off run 2 by Alpha after a: part of the circle',
        '  c: gate shut Gate1 by Alpha after b: part of the circle',
        '  x: gate open Gate1 by Alpha after c: part of the circle',
        '  e: hold-downs off by Alpha after x: part of the circle',
        '  → Do not let "covers off run 1" wait for "e"',
      ],
    ],
  ],
  nowhere: [
    [
      'runs and panels that are not there',
      of,
      [
        ...open,
        'strip run 7 by Alpha',
        'strip panels 2 to 9 of run 1 by Alpha',
        'clean run above Nix by Alpha',
      ],
      [
        'no such stretch (cannot be built) at strip run 7 by Alpha: L1 has no run 7.',
        'no such stretch (cannot be built) at strip panels 2 to 9 of run 1 by Alpha: L1 has no panels 2 to 9 of run 1.',
        'no such stretch (cannot be built) at clean run above Nix by Alpha: L1 has no run above Nix.',
      ],
    ],
    [
      'a single panel',
      job(line([1, 2], [10, 10, 10]), []),
      [...before, 'strip panel 2 of run 1'],
      ['no such stretch (cannot be built) at strip panel 2 of run 1: L1 has no panel 2 of run 1.'],
    ],
    [
      'where no liner is',
      of,
      [
        ...open,
        'strip from 2010 mm to 2190 mm by Alpha',
        'clean from 2010 mm to 2190 mm by Alpha',
        'fit from 2010 mm to 2190 mm by Alpha',
        'patch from 2010 mm to 2190 mm by Alpha cold work',
        'covers on from 2010 mm to 2190 mm by Alpha',
      ],
      [
        'no such stretch (cannot be built) at strip from 2010 mm to 2190 mm by Alpha: No liner lies from 2010 mm to 2190 mm, so there is nothing to strip.',
        'no such stretch (cannot be built) at clean from 2010 mm to 2190 mm by Alpha: No liner lies from 2010 mm to 2190 mm, so there is nothing to clean.',
        'no such stretch (cannot be built) at fit from 2010 mm to 2190 mm by Alpha: No liner lies from 2010 mm to 2190 mm, so there is nothing to fit.',
      ],
    ],
    [
      'panels belong to a stretch that holds their middle',
      of,
      [...open, 'strip from 500 mm to 1500 mm by Alpha', 'strip from 499 mm to 501 mm by Alpha'],
      [
        'no such stretch (cannot be built) at strip from 500 mm to 1500 mm by Alpha: No panel has its middle from 500 mm to 1500 mm (panel 1 of run 1 from 0.00 m to 1.00 m and panel 2 of run 1 from 1.00 m to 2.00 m), so there is nothing to strip.',
      ],
    ],
    [
      'one of two stretches has liner',
      job(flat, ['from 2010 mm to 2190 mm', 'run 1'], { crews }),
      [...open, 'strip by Alpha'],
      [],
    ],
    [
      'a job that relines no liner',
      job(flat, ['from 2010 mm to 2190 mm'], { crews }),
      [...open, 'strip by Alpha'],
      [
        'no such stretch (cannot be built) at strip by Alpha: No liner lies in the scope of the job, so there is nothing to strip.',
      ],
    ],
  ],
  'nowhere to stand': [
    [
      'no access',
      job({ ...flat, access: [{ ...everywhere, to: mm(1500) }] }, ['all']),
      [...before, 'covers off'],
      [
        'no access (unsafe) at covers off: "covers off" works where no access is declared: 1.50 m to 4.20 m.',
        '  … Declare the access there on the conveyor (ground, platform, mobile platform, scaffold)',
      ],
    ],
    [
      'no platform',
      job(high, ['all']),
      [...before, 'covers off'],
      [
        'no access unit (unsafe) at covers off: "covers off" works from Floor (mobile platform, 0.00 m to 100.00 m), and the job has no access unit.',
        '  … Add an access unit to the job that reaches, or a scaffold to the conveyor',
      ],
    ],
    [
      'a platform that does not reach',
      job(high, ['all'], { accessUnits: [platform('Low', 2999)] }),
      [...before, 'covers off'],
      [
        'no access unit (unsafe) at covers off: "covers off" works from Floor at 3.00 m, and Low reaches 2.999 m.',
        '  … Add an access unit to the job that reaches, or a scaffold to the conveyor',
      ],
    ],
  ],
  'people too few or too many': [
    [
      'alone inside',
      job({ ...flat, confinedSpace: true }, ['all'], { crews: [crew('Solo', 1)] }),
      [...before, 'gas test all', 'covers off'],
      [
        'lone worker (unsafe) at covers off: "covers off" has one person inside an enclosed trough, and nobody stands by.',
        '  … Add a crew to the job that can stand by',
      ],
    ],
    [
      'alone inside, with others in the job',
      job({ ...flat, confinedSpace: true }, ['all'], { crews: [crew('Solo', 1), crew('Two', 2)] }),
      [...before, 'gas test all by Two', 'covers off by Solo'],
      [
        'lone worker (unsafe) at covers off by Solo: "covers off" has one person inside an enclosed trough, and nobody stands by.',
        '  → Let Two stand by',
        '  … Add a crew to the job that can stand by',
      ],
    ],
    [
      'alone inside, whoever of several comes',
      job({ ...flat, confinedSpace: true }, ['all'], { crews: [crew('Solo', 1), crew('Sola', 1)] }),
      [...before, 'gas test all', 'covers off'],
      [
        'lone worker (unsafe) at covers off: "covers off" has one person inside an enclosed trough, and nobody stands by.',
        '  → Let Sola stand by',
        '  … Add a crew to the job that can stand by',
      ],
    ],
    [
      'too heavy, with a panel',
      job(high, ['all'], { crews: [crew('Alpha', 4)], accessUnits: plate(300) }),
      [...before, 'covers off with 3 people', 'hold-downs off with 3 people', 'strip run 1'],
      [
        'platform overloaded (unsafe) at strip run 1: "strip run 1" puts 4 people with tools and a part of 13.6 kg on MP1, which is rated for 300 kg.',
        '  → Let 3 people be on the platform at a time',
      ],
    ],
    [
      'too heavy for anybody',
      job(high, ['all'], { crews: [crew('Alpha', 1)], accessUnits: plate(119) }),
      [...before, 'covers off'],
      [
        'platform overloaded (unsafe) at covers off: "covers off" puts 1 person with tools on MP1, which is rated for 119 kg.',
        '  … Take a platform that is rated for it',
      ],
    ],
    [
      'too heavy for anybody beside a panel',
      job(high, ['all'], { crews: [crew('Alpha', 1)], accessUnits: plate(130) }),
      [...before, 'covers off', 'hold-downs off', 'strip run 1'],
      [
        'platform overloaded (unsafe) at strip run 1: "strip run 1" puts 1 person with tools and a part of 13.6 kg on MP1, which is rated for 130 kg.',
        '  … Take a platform that is rated for it',
      ],
    ],
    [
      'too many by the plate',
      job(high, ['all'], { crews: [crew('Alpha', 4)], accessUnits: plate(500, 1) }),
      [...before, 'covers off'],
      [
        'platform overloaded (unsafe) at covers off: "covers off" puts 4 people with tools on MP1, which is rated for 500 kg and 1 person.',
        '  → Let 1 person be on the platform at a time',
      ],
    ],
    [
      'too many by a plate that states no weight',
      job(high, ['all'], { crews: [crew('Alpha', 4)], accessUnits: plate(undefined, 3) }),
      [...before, 'covers off'],
      [
        'platform overloaded (unsafe) at covers off: "covers off" puts 4 people with tools on MP1, which is rated for 3 people.',
        '  → Let 3 people be on the platform at a time',
      ],
    ],
  ],
};

for (const [title, some] of Object.entries(cases))
  describe(title, () => {
    test.each(some)('%s', (_, made, lines, expected) => expect(told(made, lines)).toEqual(expected));
  });

test('and why', () => {
  const found = Object.values(cases).flatMap((some) =>
    some.flatMap(([, made, lines]) => check(made, lines).map(({ kind, reason }) => `${kind}: ${reason}`)),
  );
  expect([...new Set(found)]).toEqual([
    'liner not stripped: Old and new panels cannot lie in the same place, and a trough can be cleaned and looked at only when it is bare.',
    'not put back: The spiral would run on steel.',
    'not put back: Every part that comes off is counted back on before the machine is handed over.',
    'scope not done: The records would say that this was renewed when it was not.',
    'not put back: Whoever starts it next would take off isolation that nobody has handed back.',
    'not opened up: Hold-downs and braces lie across the spiral and the liner and are in the way of panels and spiral alike.',
    'not opened up: Covers close the trough, so nobody gets at what lies under them.',
    'crew in two places: The same people cannot do both at once.',
    'closed up too early: What lies below goes in first; it would all have to come off again.',
    'gas test missing: Material in the trough gives off gas when it is disturbed, smell is no warning, and people reach into the trough from here on.',
    'done twice: What is counted twice hides what is not done at all, and the sign-off list then shows work nobody did.',
    'not cleared up: A spanner or an offcut under the covers is dragged along by the spiral: it scores the new liner, and jams where it is hardest to reach.',
    'not put back: The machine cannot run.',
    'screw not restrained: The spiral is a spring that lies on a slope: unbolted, it springs back and slides down, and its whole weight is loose.',
    'closes inside the run: A gap with a fixed panel on both sides matches no panel. The last panel of a front has to end at a break, or be cut to the gap as measured (`cut to fit`).',
    'access unit in two places: The platform can stand at only one of them.',
    'crane in two places: One hook holds one load; the other piece would be cut free with nothing to hang from.',
    'screw still restrained: Started while it is held, the spiral winds itself up until the restraint tears off or the drive stalls, and what tears off is thrown.',
    'still drying: What is wet under a panel stays wet: sealant does not hold, and rust starts behind the new liner.',
    'still drying: Polyethylene on hot steel softens and creeps, and hands are burnt.',
    'fire watch missing: Polyethylene and dust smoulder out of sight and break into fire when everybody has gone; somebody stays, watches, and does nothing else.',
    'gate open between: On 20° what gets away up there slides down the trough onto whoever works below. Nothing keeps Gate1 shut meanwhile.',
    'work below loose parts: On 20° what gets away up there slides down the trough onto whoever works below. No end plate and no slide gate lies between.',
    'circular order: A step without `after` waits for every step written above it, a step with `after` for those it names; here that leads back to where it began.',
    'no such stretch: L1 has run 1 (Tail to Gate1) with 2 panels and run 2 (Gate1 to Head) with 2 panels.',
    'no such stretch: L1 has run 1 (Tail to Gate1) with 1 panel and run 2 (Gate1 to Head) with 2 panels.',
    'no access: Nobody can work on a stretch that nobody can stand beside; say how it is reached, or hire what reaches it.',
    'no access unit: Nobody can work on a stretch that nobody can stand beside; say how it is reached, or hire what reaches it.',
    'lone worker: Whoever is overcome by gas cannot call; somebody outside keeps in touch, calls for rescue and never goes in after them.',
    'platform overloaded: 4 × 80 kg and 40 kg of tools and 13.6 kg make 374 kg; it takes 3 at a time. An overloaded platform tips or fails under all of them.',
    'platform overloaded: 1 × 80 kg and 40 kg of tools make 120 kg; it takes nobody. An overloaded platform tips or fails under all of them.',
    'platform overloaded: 1 × 80 kg and 40 kg of tools and 13.6 kg make 134 kg; it takes nobody beside that part. An overloaded platform tips or fails under all of them.',
    'platform overloaded: 4 × 80 kg and 40 kg of tools make 360 kg; it takes 1 at a time. An overloaded platform tips or fails under all of them.',
    'platform overloaded: 4 × 80 kg and 40 kg of tools make 360 kg; it takes 3 at a time. An overloaded platform tips or fails under all of them.',
  ]);
});
