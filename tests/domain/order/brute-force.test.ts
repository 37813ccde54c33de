// Every order of small jobs, judged twice: by the checker, and by a simulator of panels on a line that shares nothing with
// it (simulator.ts). The two must accept exactly the same orders.

import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { canBeBuilt, checkOrder } from '../../../src/domain/order/check-order.js';
import { panelMass } from '../../../src/domain/geometry/trough.js';
import { mm } from '../../kit/estate.js';
import {
  brace,
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  line,
  platform,
  step,
  withOrder,
  worldOf,
} from './stories.js';
import { after, canDo, hits, survives, type Deed, type Machine } from './simulator.js';

/** What is made of each text for each job: some hundred texts stand in some hundred thousand lines. */
function remembered<T>(make: (text: string, of: Job) => T): (text: string, of: Job, key?: string) => T {
  const known = new WeakMap<Job, Map<string, T>>();
  return (text, of, key = text) => {
    const ofJob = known.get(of) ?? new Map<string, T>();
    known.set(of, ofJob);
    const made = ofJob.get(key) ?? make(text, of);
    ofJob.set(key, made);
    return made;
  };
}

const stepOf = remembered(step);

/** The job with an order; a line that stands there twice is two steps. */
function ordered(of: Job, lines: readonly string[]): Job {
  const seen = new Map<string, number>();
  const steps = lines.map((text) => {
    const before = seen.get(text) ?? 0;
    seen.set(text, before + 1);
    return stepOf(text, of, `${before} ${text}`);
  });
  return { ...of, order: { steps, origin: of.origin } };
}

/** The deeds of a line of the order on these small conveyors; hot and cold, gates and times as the line says. */
const deed = remembered((text: string, of: Job): Deed => {
  const read = stepOf(text, of);
  const bare = place(text.replace(/ (cut to fit|hot work|cold work|takes \d|every \d).*$/, ''), of);
  const hot = read.heat?.kind === 'hot' || (read.action === 'patch' && read.heat === undefined);
  return {
    ...bare,
    ...(read.gate ? { gate: read.gate.name, ...gatePlace(read.gate.name, of) } : {}),
    action: read.action,
    ...(read.cutToFit ? { sawn: true } : {}),
    ...(read.takes ? { hours: read.takes.value } : {}),
    ...(hot
      ? {
          flame: {
            covered: read.heat?.kind === 'hot' && read.heat.shielded && read.heat.wet,
            watch: read.heat?.kind === 'hot' ? (read.heat.fireWatch?.value ?? 1) : 1,
          },
        }
      : {}),
  };
});

function gatePlace(name: string, of: Job): { readonly from: number; readonly to: number } {
  const found = of.conveyor.breaks.find((each) => each.name === name);
  return { from: found?.from.value ?? 0, to: found?.to.value ?? 0 };
}

function place(text: string, of: Job): Deed {
  const metres = /^(.*?) from (\d+) mm to (\d+) mm/.exec(text);
  if (metres) return { action: metres[1] ?? '', from: Number(metres[2]), to: Number(metres[3]) };
  const panels = /^(.*?) panels? (\d+)(?: to (\d+))? of run 1(?: starting at (head|tail))?/.exec(text);
  if (panels) {
    const first = Number(panels[2]);
    const last = Number(panels[3] ?? panels[2]);
    return {
      action: panels[1] ?? '',
      from: (first - 1) * 1000,
      to: last * 1000,
      ...(panels[4] === 'head' || panels[4] === 'tail' ? { start: panels[4] } : {}),
    };
  }
  const run = / run (\d)\b/.exec(text)?.[1];
  const bounds = of.conveyor.breaks.slice(Number(run ?? 1) - 1);
  if (run && of.conveyor.breaks.length > 2)
    return {
      action: text.replace(/ run \d.*$/, ''),
      from: bounds[0]?.to.value ?? 0,
      to: bounds[1]?.from.value ?? 0,
    };
  const action = text.replace(/ (run 1|all)\b.*$/, '').replace(/ starting at .*$/, '');
  const start = / starting at (head|tail)/.exec(text)?.[1];
  return {
    action,
    from: 0,
    to: of.conveyor.length.value,
    ...(start === 'head' || start === 'tail' ? { start } : {}),
  };
}

function machineOf(of: Job, scope: [number, number][], more: Partial<Machine> = {}): Machine {
  const { conveyor } = of;
  const [tail, head] = [conveyor.breaks[0], conveyor.breaks.at(-1)];
  return {
    runs: [
      {
        from: 0,
        to: conveyor.length.value,
        tailSlack: tail?.allowance.value ?? 0,
        headSlack: head?.allowance.value ?? 0,
        holdsAtTail: tail?.kind === 'end plate',
        holdsAtHead: true,
      },
    ],
    covers: conveyor.covers.map((each) => [each.from.value, each.to.value]),
    braces: conveyor.braces.map((each) => each.from.value),
    holdDowns: conveyor.holdDowns.map((each) => each.from.value),
    enclosed: conveyor.confinedSpace,
    slippery: conveyor.incline.value > 10,
    tolerance: 1,
    measuring: 2,
    scope,
    newScrew: of.screwChange !== undefined,
    rests: conveyor.rests.map((each) => each.from.value),
    drive: conveyor.drive?.end === 'tail' ? 0 : conveyor.length.value,
    up: conveyor.incline.value > 0 ? 1 : conveyor.incline.value < 0 ? -1 : 0,
    gates: conveyor.breaks
      .filter((each) => each.kind === 'slide gate')
      .map((each) => ({ name: each.name, at: (each.from.value + each.to.value) / 2 })),
    ...more,
  };
}

/** Counts of agreement; the first disagreement is shown whole. An order that comes again is counted again and judged once. */
function compare(
  of: Job,
  orders: Iterable<readonly string[]>,
  machine: Machine,
): { readonly tried: number; readonly accepted: number } {
  const world = worldOf(of);
  let tried = 0;
  let accepted = 0;
  const known = new Map<string, boolean>();
  for (const lines of orders) {
    tried++;
    const before = known.get(lines.join('\n'));
    if (before) accepted++;
    if (before !== undefined) continue;
    const checker = canBeBuilt(ordered(of, lines), world);
    known.set(lines.join('\n'), checker);
    const simulator = canDo(
      machine,
      lines.map((text) => deed(text, of)),
    );
    if (checker !== simulator) expect({ lines, checker }).toEqual({ lines, checker: simulator });
    if (checker) accepted++;
  }
  return { tried, accepted };
}

function* permutations<T>(items: readonly T[]): Generator<T[]> {
  if (items.length <= 1) yield [...items];
  else
    for (const [i, item] of items.entries())
      for (const rest of permutations([...items.slice(0, i), ...items.slice(i + 1)])) yield [item, ...rest];
}

function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) yield [];
  else
    for (let i = from; i <= items.length - size; i++)
      for (const rest of subsets(items, size - 1, i + 1)) yield [items[i] as T, ...rest]; // i is below the length
}

/** Every way of putting back the items at some positions in another order. */
function* shuffles(lines: readonly string[], size: number): Generator<string[]> {
  for (const places of subsets(
    lines.map((_, i) => i),
    size,
  )) {
    for (const order of permutations(places)) {
      const shuffled = [...lines];
      places.forEach((place, k) => {
        shuffled[place] = lines[order[k] ?? 0] ?? '';
      });
      yield shuffled;
    }
  }
}

const prologue = ['isolate', 'prove dead'];
const epilogue = ['remove isolation', 'run empty', 'run loaded'];

describe('panel by panel, every sequence and every direction', () => {
  const cases: [string, number, [number, number], number][] = [
    ['a break at the tail, firm at the head', 4, [10, 0], 0],
    ['a break at the head, firm at the tail', 4, [0, 10], 0],
    ['a break at both ends', 4, [10, 10], 0],
    ['an allowance that is just enough for four panels', 4, [6, 0], 0],
    ['allowances that would do for three panels', 4, [5, 5], 0],
    ['firm ends', 3, [0, 0], 0],
    ['a slope', 3, [10, 10], 20],
    ['a single panel', 1, [3, 0], 0],
  ];
  test.each(cases)('%s', (_, count, allowances, incline) => {
    const conveyor = line([count], allowances);
    const of = job({ ...conveyor, incline: { ...conveyor.incline, value: incline } }, ['all']);
    function* orders(): Generator<string[]> {
      for (const sequence of permutations(Array.from({ length: count }, (__, k) => k + 1))) {
        for (let bits = 0; bits < 2 ** count; bits++) {
          yield [
            ...prologue,
            'strip run 1',
            'clean run 1',
            ...sequence.map(
              (n, k) => `fit panel ${n} of run 1 starting at ${(bits >> k) & 1 ? 'tail' : 'head'}`,
            ),
            ...epilogue,
          ];
        }
      }
    }
    const { tried, accepted } = compare(of, orders(), machineOf(of, [[0, count * 1000]]));
    expect(tried).toBeGreaterThan(1);
    // Four panels of ± 1 mm and 2 mm of measuring need 6 mm.
    if (Math.max(...allowances) >= count + 2) expect(accepted).toBeGreaterThan(0);
    else expect(accepted).toBe(0);
  });
});

test('some panels only: every subset stripped, in every sequence and direction', () => {
  const of = job(line([4], [10, 10]), []);
  let accepted = 0;
  for (let mask = 1; mask < 16; mask++) {
    const panels = [1, 2, 3, 4].filter((n) => (mask >> (n - 1)) & 1);
    function* orders(): Generator<string[]> {
      for (const sequence of permutations(panels)) {
        for (let bits = 0; bits < 2 ** panels.length; bits++) {
          yield [
            ...prologue,
            ...panels.map((n) => `strip panel ${n} of run 1`),
            ...panels.map((n) => `clean panel ${n} of run 1`),
            ...sequence.map(
              (n, k) => `fit panel ${n} of run 1 starting at ${(bits >> k) & 1 ? 'tail' : 'head'}`,
            ),
            ...epilogue,
          ];
        }
      }
    }
    accepted += compare(of, orders(), machineOf(of, [])).accepted;
  }
  expect(accepted).toBeGreaterThan(10);
});

test('strip, clean and fit of two halves, in every sequence', () => {
  const of = job(line([4], [10, 10]), ['all']);
  for (const [a, b] of [
    ['tail', 'tail'],
    ['head', 'head'],
    ['tail', 'head'],
    ['head', 'tail'],
  ]) {
    const work = [
      'strip panels 1 to 2 of run 1',
      'clean panels 1 to 2 of run 1',
      `fit panels 1 to 2 of run 1 starting at ${a}`,
      'strip panels 3 to 4 of run 1',
      'clean panels 3 to 4 of run 1',
      `fit panels 3 to 4 of run 1 starting at ${b}`,
    ];
    function* orders(): Generator<string[]> {
      for (const sequence of permutations(work)) yield [...prologue, ...sequence, ...epilogue];
    }
    compare(of, orders(), machineOf(of, [[0, 4000]]));
  }
});

describe('kinds of work over one stretch', () => {
  const whole = (screw: boolean): string[] => [
    ...prologue,
    'gas test all',
    'covers off all',
    'braces off all',
    'hold-downs off all',
    ...(screw ? ['restrain screw', 'unbolt drive', 'remove screw'] : []),
    'strip run 1',
    'clean run 1',
    'fit run 1 starting at head',
    ...(screw ? ['insert screw', 'bolt drive', 'release screw'] : []),
    'hold-downs on all',
    'braces on all',
    'covers on all',
    ...epilogue,
  ];
  const conveyor = line([2], [10, 10], {
    covers: [cover(0, 1000), cover(1000, 2000)],
    braces: [brace(500)],
    holdDowns: [holdDown(1500)],
    confinedSpace: true,
  });

  test('a reline: any four steps in any order', () => {
    const of = job(conveyor, ['all']);
    const { tried, accepted } = compare(of, shuffles(whole(false), 4), machineOf(of, [[0, 2000]]));
    expect(tried).toBe(1365 * 24);
    expect(accepted).toBeGreaterThan(1365);
  });

  test('a reline with a new screw: any three steps in any order', () => {
    const of = job(conveyor, ['all'], {
      screwChange: { screw: conveyor.screw, cut: 'cold', joints: 'bolted', origin: conveyor.origin },
    });
    const { accepted } = compare(of, shuffles(whole(true), 3), machineOf(of, [[0, 2000]]));
    expect(accepted).toBeGreaterThan(1140);
  });

  test('a spiral that stays in, restrained and released at every two places, or only one of them', () => {
    const of = job(conveyor, ['all']);
    const lines = whole(false);
    const at = (order: readonly string[], place: number, line: string): string[] => [
      ...order.slice(0, place),
      line,
      ...order.slice(place),
    ];
    function* orders(): Generator<string[]> {
      for (let held = 0; held <= lines.length; held++) {
        const order = at(lines, held, 'restrain screw');
        yield order;
        yield at(lines, held, 'release screw');
        for (let freed = 0; freed <= order.length; freed++) yield at(order, freed, 'release screw');
      }
    }
    const { tried, accepted } = compare(of, orders(), machineOf(of, [[0, 2000]]));
    const n = lines.length + 1;
    expect(tried).toBe(n * (n + 3));
    // Behind the test of the air and before isolation comes off there are ten places, the second never before the first.
    expect(accepted).toBe((10 * 11) / 2);
  });

  test('any one or two steps left out', () => {
    const of = job(conveyor, ['all'], {
      screwChange: { screw: conveyor.screw, cut: 'cold', joints: 'bolted', origin: conveyor.origin },
    });
    const lines = whole(true);
    function* orders(): Generator<string[]> {
      for (const size of [1, 2])
        for (const gone of subsets(
          lines.map((_, i) => i),
          size,
        ))
          yield lines.filter((_, i) => !gone.includes(i));
    }
    expect(compare(of, orders(), machineOf(of, [[0, 2000]])).accepted).toBe(0);
  });

  test('any step done once more, at any place', () => {
    const of = job(conveyor, ['all']);
    const lines = whole(false);
    function* orders(): Generator<string[]> {
      for (const again of lines)
        for (let at = 0; at <= lines.length; at++) yield [...lines.slice(0, at), again, ...lines.slice(at)];
    }
    compare(of, orders(), machineOf(of, [[0, 2000]]));
  });
});

test('covers one by one and all at once, on and off, some of them left out', () => {
  const conveyor = line([2], [10, 10], { covers: [cover(0, 1000), cover(1000, 2000)] });
  const of = job(conveyor, []);
  const lines = [
    'covers off from 0 mm to 1000 mm',
    'covers off from 1000 mm to 2000 mm',
    'covers on from 0 mm to 1000 mm',
    'covers on all',
    'covers off all',
  ];
  function* orders(): Generator<string[]> {
    for (let size = 0; size <= lines.length; size++)
      for (const some of subsets(lines, size))
        for (const order of permutations(some)) yield [...prologue, ...order, ...epilogue];
  }
  const { tried, accepted } = compare(of, orders(), machineOf(of, []));
  expect(tried).toBe(326);
  expect(accepted).toBeGreaterThan(10);
});

describe('fire, air and gates', () => {
  const measures = 'hot work shielded wet';
  const slopes = [0, 20, -20].map((incline) => {
    const level = line([2], [10, 10], { covers: [cover(0, 2000)], confinedSpace: true });
    return job({ ...level, incline: { ...level.incline, value: incline } }, ['all']);
  });

  test.each([
    ['nothing said', 'patch panel 1 of run 1'],
    ['measures said', `patch panel 1 of run 1 ${measures}`],
    ['shields only', 'patch panel 2 of run 1 hot work shielded'],
    ['cold', 'patch panel 2 of run 1 cold work'],
    ['a long watch asked for', `patch panel 2 of run 1 ${measures} fire watch 90 min`],
  ])('a patch with %s, any three steps in any order, on every slope', (_, patch) => {
    for (const of of slopes) {
      const lines = [
        'empty',
        ...prologue,
        'gas test all',
        'covers off all',
        'strip run 1',
        patch,
        'fire watch all takes 1 h',
        'pause',
        'gas test all',
        'clean run 1',
        `fit run 1 starting at ${of.conveyor.incline.value < 0 ? 'tail' : 'head'}`,
        'covers on all',
        ...epilogue,
      ];
      const { tried, accepted } = compare(of, shuffles(lines, 3), machineOf(of, [[0, 2000]]));
      expect(tried).toBe(560 * 6);
      if (!patch.includes('90 min')) expect(accepted).toBeGreaterThan(100);
    }
  });

  test('any one or two steps left out', () => {
    const [of] = slopes;
    if (!of) return;
    const lines = [
      'empty',
      ...prologue,
      'gas test all',
      'covers off all',
      'strip run 1',
      'patch run 1',
      'fire watch all takes 1 h',
      'clean run 1',
      'fit run 1 starting at head',
      'covers on all',
      ...epilogue,
    ];
    function* orders(): Generator<string[]> {
      for (const size of [0, 1, 2])
        for (const gone of subsets(
          lines.map((_, i) => i),
          size,
        ))
          yield lines.filter((_, i) => !gone.includes(i));
    }
    expect(compare(of, orders(), machineOf(of, [[0, 2000]])).accepted).toBeGreaterThan(1);
  });

  test('several welds and their watches in every order: one watch for those that follow one another, and as long as each asks', () => {
    const of = job(line([2], [10, 10]), ['all']);
    const lines = [
      'patch panel 1 of run 1 hot work fire watch 90 min',
      'patch panel 1 of run 1 hot work fire watch 30 min',
      'patch panel 2 of run 1 hot work fire watch 60 min',
      'fire watch all takes 60 min',
      'fire watch panel 1 of run 1 takes 90 min',
      'clean run 1',
    ];
    function* orders(): Generator<string[]> {
      for (const some of [lines, lines.slice(1), lines.filter((_, i) => i !== 4)])
        for (const order of permutations(some))
          yield [...prologue, 'strip run 1', ...order, 'fit run 1 starting at head', ...epilogue];
    }
    const { tried, accepted } = compare(of, orders(), machineOf(of, [[0, 2000]]));
    expect(tried).toBe(960);
    expect(accepted).toBeGreaterThan(10);
    expect(accepted).toBeLessThan(tried / 4);
  });

  test('gates shut, opened, stripped and refitted in every order', () => {
    const of = job(line([1, 1], [10, 10, 10]), []);
    const gates = ['gate shut Gate1', 'gate open Gate1', 'gate off Gate1', 'gate on Gate1'];
    const machine = machineOf(of, [], {
      runs: [
        { from: 0, to: 1000, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
        { from: 1200, to: 2200, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
      ],
    });
    function* orders(): Generator<string[]> {
      for (const size of [0, 1, 2, 3, 4])
        for (const some of subsets(gates, size))
          for (const order of permutations(some)) yield [...prologue, ...order, ...epilogue];
    }
    const { tried, accepted } = compare(of, orders(), machine);
    expect(tried).toBe(65);
    // None; shut and open; off and on; the two pairs, either first or one within the other where that can be.
    expect(accepted).toBeGreaterThan(4);
  });
});

describe('spiral in pieces, joints, stops, sawn panels and litter', () => {
  const conveyor = line([3], [10, 10], { covers: [cover(0, 3000)] });
  const change = (joints: 'welded' | 'bolted'): Job =>
    job(conveyor, ['all'], {
      screwChange: { screw: conveyor.screw, cut: 'cold', joints, origin: conveyor.origin },
    });

  test('taken out in three pieces in every order, and put back in two', () => {
    const of = change('bolted');
    const out = [0, 1, 2].map((k) => `remove screw from ${k * 1000} mm to ${(k + 1) * 1000} mm`);
    const back = ['insert screw from 0 mm to 1500 mm', 'insert screw from 1500 mm to 3000 mm'];
    const lines = ['covers off all', 'restrain screw', 'unbolt drive', ...out];
    const rest = ['strip run 1', 'clean run 1', 'fit run 1 starting at head'];
    function* orders(): Generator<string[]> {
      for (const order of permutations(lines))
        for (const later of permutations(back))
          yield [
            ...prologue,
            ...order,
            ...rest,
            ...later,
            'bolt drive',
            'release screw',
            'covers on all',
            ...epilogue,
          ];
    }
    const { tried, accepted } = compare(of, orders(), machineOf(of, [[0, 3000]]));
    expect(tried).toBe(720 * 2);
    // Four of six orders of the pieces do not begin in the middle; covers come off before, between or after what is let go.
    expect(accepted).toBe(4 * 3 * 2);
  });

  test('joints after the pieces are laid, each once, before anything closes over them', () => {
    const of = change('bolted');
    const lines = [
      'covers off all',
      'restrain screw',
      'unbolt drive',
      'remove screw',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      'insert screw',
      'join screw from 0 mm to 1500 mm',
      'join screw from 1500 mm to 3000 mm',
      'bolt drive',
      'release screw',
      'covers on all',
    ];
    function* orders(): Generator<string[]> {
      for (const some of shuffles(lines, 3)) yield [...prologue, ...some, ...epilogue];
      for (const gone of lines) yield [...prologue, ...lines.filter((each) => each !== gone), ...epilogue];
    }
    const { accepted } = compare(of, orders(), machineOf(of, [[0, 3000]], { joins: true }));
    expect(accepted).toBeGreaterThan(200);
  });

  test('a stop to rest on makes the lower end a place to start from', () => {
    for (const at of [[], [0], [40], [900]]) {
      const made = line([3], [10, 10], {
        incline: { ...conveyor.incline, value: 20 },
        rests: at.map((each) => ({ from: mm(each), to: mm(each), origin: conveyor.origin })),
      });
      const loose = {
        ...made,
        breaks: made.breaks.map((each, k) => (k === 0 ? { ...each, kind: 'discharge' as const } : each)),
      };
      const of = job(loose, ['all']);
      const orders = ['head', 'tail'].map((start) => [
        ...prologue,
        'strip run 1',
        'clean run 1',
        `fit run 1 starting at ${start}`,
        ...epilogue,
      ]);
      const { accepted } = compare(of, orders, machineOf(of, [[0, 3000]]));
      expect(accepted).toBe(at.some((each) => each < 100) ? 2 : 1);
    }
  });

  test('a closing panel that is sawn to its gap fits between firm ends; a stretch in the middle it does not open', () => {
    const of = job(line([3], [0, 0]), ['all']);
    let accepted = 0;
    for (const sequence of permutations([1, 2, 3]))
      for (let bits = 0; bits < 64; bits++) {
        const lines = sequence.map((n, k) => {
          const start = (bits >> k) & 1 ? 'tail' : 'head';
          return `fit panel ${n} of run 1 starting at ${start}${(bits >> (3 + k)) & 1 ? ' cut to fit' : ''}`;
        });
        const order = [...prologue, 'strip run 1', 'clean run 1', ...lines, ...epilogue];
        accepted += compare(of, [order], machineOf(of, [[0, 3000]])).accepted;
      }
    expect(accepted).toBeGreaterThan(1);
  });

  test('covers go on over a trough that was cleared up last, where an order clears up at all', () => {
    const of = job(line([3], [10, 10], { covers: [cover(0, 3000)], holdDowns: [holdDown(500)] }), ['all']);
    const lines = [
      'covers off all',
      'hold-downs off all',
      'strip run 1',
      'clean run 1',
      'fit run 1 starting at head',
      'hold-downs on all',
      'clear up all',
      'covers on all',
    ];
    function* orders(): Generator<string[]> {
      for (const some of shuffles(lines, 4)) yield [...prologue, ...some, ...epilogue];
    }
    const { accepted } = compare(of, orders(), machineOf(of, [[0, 3000]], { clears: true }));
    expect(accepted).toBeGreaterThan(20);
  });
});

test('platforms and people alone: told exactly where somebody falls, or falls unseen', () => {
  let fallen = 0;
  for (const people of [1, 2, 3])
    for (const bears of [150, 200, 230, 280, 320])
      for (const attended of [false, true])
        for (const aboard of [undefined, 1, 2])
          for (const action of [
            'strip run 1',
            'clean run 1',
            'braces off run 1',
            'gas test run 1',
            'fire watch run 1',
          ]) {
            if ((aboard ?? 0) > people) continue;
            const crews = [crew('Alpha', people), crew('Bravo', 2)];
            const base = line([1], [10, 10], { confinedSpace: true });
            const conveyor = { ...base, access: [{ ...everywhere, kind: 'mobile platform' as const }] };
            const of = job(conveyor, [], { crews, accessUnits: [platform('MP1', 20_000, bears)] });
            const text = `${action} by Alpha${attended ? ' attended by Bravo' : ''} using MP1${aboard === undefined ? '' : ` with ${aboard} people`}`;
            const kinds = checkOrder(
              withOrder(of, ['isolate', 'prove dead', 'gas test', text]),
              worldOf(of),
            ).map(({ kind }) => kind);
            const told =
              kinds.includes('platform overloaded') ||
              kinds.includes('lone worker') ||
              kinds.includes('nobody outside');
            const trough = conveyor.trough;
            const section = {
              insideRadius: trough.insideRadius.value,
              sideHeight: trough.sideHeight.value,
              thickness: 12,
            };
            // Up there: whoever may be aboard, or all of the crew and one who stands by; inside: the whole crew.
            const up = Math.max(1, aboard ?? people);
            const load = action.startsWith('strip')
              ? panelMass(section, 1000, conveyor.liner.density.value)
              : 0;
            const one = { action: action.replace(' run 1', ''), from: 0, to: 1000 };
            const falls = !survives(machineOf(of, []), {
              ...one,
              hands: Array.from({ length: up }, () => ({ mass: 80 })),
              lookouts: people - up + (attended ? 1 : 0),
              deck: { bears, places: Infinity, load, watching: attended && aboard === undefined ? 1 : 0 },
            });
            if (told !== falls) expect({ text, people, bears, kinds }).toEqual({ falls });
            if (falls) fallen++;
          }
  expect(fallen).toBeGreaterThan(50);
});

test('people: an order is accepted only where nothing that gets away can hit anybody, gates and slopes as they are', () => {
  const crews = [crew('Alpha'), crew('Bravo')];
  const made = line([2, 2], [10, 10, 10], { covers: [cover(0, 2100), cover(2100, 4200)] });
  const works = [
    'strip run 1',
    'strip run 2',
    'covers on run 2',
    'clean run 1',
    'patch run 2 cold work',
    'fit run 2 starting at head',
    'gas test run 1',
  ];
  let unsafe = 0;
  let told = 0;
  for (const incline of [20, -20, 0]) {
    const of = job({ ...made, incline: { ...made.incline, value: incline } }, [], { crews });
    const machine = machineOf(of, [], {
      runs: [
        { from: 0, to: 2000, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
        { from: 2200, to: 4200, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
      ],
    });
    for (const a of works) {
      for (const b of works) {
        for (const shut of [[], ['gate shut Gate1'], ['gate shut Gate1', 'gate open Gate1']]) {
          const text = (work: string, label: string, who: string): string =>
            `${label}: ${work.replace(' cold work', '')} by ${who} after q${work.includes(' cold') ? ' cold work' : ''}`;
          const lines = [
            'isolate by Alpha',
            'prove dead by Alpha',
            ...shut.map((each) => `${each} by Alpha`),
            'q: gas test by Alpha',
            text(a, 'a', 'Alpha'),
            text(b, 'b', 'Bravo'),
          ];
          const world = after(
            machine,
            [...prologue, ...shut, 'gas test all'].map((each) => deed(each, of)),
          );
          const [one, other] = [deed(a, of), deed(b, of)];
          // Two in one place get in each other's way, and are told as that.
          if (one.from < other.to && other.from < one.to) continue;
          const hurt = world !== undefined && (hits(world, one, other) || hits(world, other, one));
          const found = checkOrder(withOrder(of, lines), worldOf(of));
          const kinds = found.map(({ kind }) => kind);
          const said = kinds.includes('work below loose parts') || kinds.includes('gate open between');
          // Whoever is inside below an open gate is told of that, and not of the two crews as well.
          const open = kinds.includes('gate above open') || kinds.includes('gate opened above people');
          if (hurt && !said && !open)
            expect({ lines, incline, kinds }).toEqual({ lines, incline, kinds: 'told' });
          if (!hurt && said) expect({ lines, incline, kinds }).toEqual({ lines, incline, kinds: 'silent' });
          if (hurt) unsafe++;
          if (said || (hurt && open)) told++;
        }
      }
    }
  }
  expect(unsafe).toBeGreaterThan(20);
  expect(told).toBeGreaterThan(20);
});

describe('what gates hold back above people', () => {
  const made = line([1, 1, 1], [10, 10, 10, 10]);
  const runs = [0, 1200, 2400].map((from) => ({
    from,
    to: from + 1000,
    tailSlack: 10,
    headSlack: 10,
    holdsAtTail: true,
    holdsAtHead: true,
  }));
  const isDriven = (name: string, driven: readonly string[]): boolean => driven.includes(name);
  /** A reline of one run, and for each gate where it is shut and where it is opened. */
  function reline(run: number, up: number, gates: readonly (readonly [string, number, number])[]): string[] {
    const plain = [
      ...prologue,
      `strip run ${run}`,
      `clean run ${run}`,
      `fit run ${run} starting at ${up < 0 ? 'tail' : 'head'}`,
      ...epilogue,
    ];
    return [...plain, ''].flatMap((each, at) => [
      ...gates.flatMap(([name, shut, open]) => [
        ...(shut === at ? [`gate shut ${name}`] : []),
        ...(open === at ? [`gate open ${name}`] : []),
      ]),
      ...(each === '' ? [] : [each]),
    ]);
  }

  test.each([20, -20, 0])('one gate shut and opened in every two places, and two: on %d°', (incline) => {
    let tried = 0;
    let accepted = 0;
    for (const driven of [[], ['Gate1'], ['Gate1', 'Gate2']]) {
      const conveyor = {
        ...made,
        incline: { ...made.incline, value: incline },
        breaks: made.breaks.map((each) =>
          isDriven(each.name, driven) ? { ...each, drive: 'hydraulics' as const } : each,
        ),
      };
      const of = job(conveyor, []);
      const machine = machineOf(of, [], {
        runs,
        gates: [
          { name: 'Gate1', at: 1100, powered: isDriven('Gate1', driven) },
          { name: 'Gate2', at: 2300, powered: isDriven('Gate2', driven) },
        ],
      });
      for (const run of [1, 2, 3]) {
        const last = reline(run, incline, []).length;
        const places = Array.from({ length: last + 1 }, (_, at) => at);
        const pairs = places.flatMap((shut) => places.slice(shut).map((open) => [shut, open] as const));
        const orders = [
          reline(run, incline, []),
          ...['Gate1', 'Gate2'].flatMap((name) =>
            pairs.map(([shut, open]) => reline(run, incline, [[name, shut, open]])),
          ),
          ...pairs.map(([shut, open]) =>
            reline(run, incline, [
              ['Gate1', 0, shut],
              ['Gate2', 0, open],
            ]),
          ),
        ];
        const found = compare(of, orders, machine);
        tried += found.tried;
        accepted += found.accepted;
      }
    }
    expect(tried).toBeGreaterThan(1000);
    // On the level a gate is only to be moved in turn; on a slope it has to be shut besides.
    expect(accepted / tried).toBeGreaterThan(0.02);
    expect(accepted / tried).toBeLessThan(incline === 0 ? 1 : 0.5);
  });
});

describe('work side by side', () => {
  /** Every order in which steps can be finished, one at a time, given who waits for whom. */
  function* extensions(
    waits: readonly ReadonlySet<number>[],
    done: readonly number[] = [],
  ): Generator<number[]> {
    if (done.length === waits.length) yield [...done];
    for (const [i, wait] of waits.entries())
      if (!done.includes(i) && [...wait].every((j) => done.includes(j)))
        yield* extensions(waits, [...done, i]);
  }

  /** One crew takes a cover off while another puts the same one on. */
  function atOdds(machine: Machine, a: Deed, b: Deed): boolean {
    const lids = (each: Deed): string[] =>
      machine.covers.filter(([from, to]) => from < each.to && to > each.from).map(String);
    return (
      [a.action, b.action].sort().join() === 'covers off,covers on' &&
      lids(a).some((lid) => lids(b).includes(lid))
    );
  }

  interface Story {
    readonly of: Job;
    readonly machine: Machine;
    readonly work: readonly string[];
  }

  /** Random waits and crews for the steps; each order judged by the checker, and by running it in every way it can run. */
  function compareAll(
    stories: readonly Story[],
    rounds: number,
    seed: number,
    crewOf: (i: number, next: (below: number) => number) => string,
  ): { readonly tried: number; readonly accepted: number } {
    let tried = 0;
    let accepted = 0;
    let random = seed;
    const next = (below: number): number => {
      random = (Math.imul(random, 1_664_525) + 1_013_904_223) >>> 0;
      return Math.floor((random / 4_294_967_296) * below);
    };
    const letters = 'abcdefghij';
    for (let k = 0; k < rounds; k++) {
      const story = stories[k % stories.length];
      if (!story) break;
      const { of, machine, work: steps } = story;
      const crews = steps.map((_, i) => crewOf(i, next));
      // Each step waits for everything above, or for some steps written before it.
      const after = steps.map((_, i) =>
        i === 0 || next(3) === 0
          ? undefined
          : [...new Set(Array.from({ length: 1 + next(3) }, () => next(i + 1)))],
      );
      const lines = [
        'isolate',
        'p: prove dead',
        ...steps.map(
          (text, i) =>
            `${letters[i]}: ${text} by ${crews[i]}${after[i] ? ` after ${after[i].map((j) => `p${letters}`[j]).join(', ')}` : ''}`,
        ),
        ...epilogue,
      ];
      const waits = steps.map(
        (_, i) =>
          new Set(
            after[i]
              ? after[i].filter((j) => j > 0).map((j) => j - 1)
              : Array.from({ length: i }, (__, j) => j),
          ),
      );
      const closed = waits.map((wait) => {
        const all = new Set(wait);
        for (let size = -1; size !== all.size;) {
          size = all.size;
          for (const j of [...all]) for (const h of waits[j] ?? []) all.add(h);
        }
        return all;
      });
      const clash = steps.some((_, j) =>
        steps.some(
          (__, i) =>
            i < j &&
            !closed[j]?.has(i) &&
            !closed[i]?.has(j) &&
            (crews[i] === crews[j] || atOdds(machine, deed(steps[i] ?? '', of), deed(steps[j] ?? '', of))),
        ),
      );
      const always = [...extensions(waits)].every((order) =>
        canDo(
          machine,
          [...prologue, ...order.map((i) => steps[i] ?? ''), ...epilogue].map((text) => deed(text, of)),
        ),
      );
      const checker = canBeBuilt(ordered(of, lines), worldOf(of));
      if (checker !== (always && !clash))
        expect({ lines, checker }).toEqual({ lines, checker: always && !clash });
      tried++;
      if (checker) accepted++;
    }
    return { tried, accepted };
  }

  test('an order is accepted exactly where every way it can run is, and no crew is needed twice at once', () => {
    const of = job(line([4], [10, 10]), ['all'], { crews: [crew('Alpha'), crew('Bravo')] });
    const machine = machineOf(of, [[0, 4000]]);
    const { tried, accepted } = compareAll(
      [
        {
          of,
          machine,
          work: [
            'strip panels 1 to 2 of run 1',
            'strip panels 3 to 4 of run 1',
            'clean run 1',
            'fit panels 1 to 2 of run 1 starting at tail',
            'fit panels 3 to 4 of run 1 starting at tail',
          ],
        },
        {
          of,
          machine,
          work: [
            'strip panels 1 to 2 of run 1',
            'clean panels 1 to 2 of run 1',
            'strip panels 3 to 4 of run 1',
            'clean panels 3 to 4 of run 1',
            'fit run 1 starting at head',
          ],
        },
      ],
      1500,
      12_345,
      (_, next) => (next(2) ? 'Alpha' : 'Bravo'),
    );
    expect(tried).toBe(1500);
    expect(accepted).toBeGreaterThan(20);
    expect(accepted).toBeLessThan(1400);
  });

  test('also where two runs share a cover', () => {
    const names = ['Alpha', 'Bravo', 'Charlie', 'Delta', 'Echo', 'Foxtrot'];
    const conveyor = line([2, 2], [10, 10, 10], {
      covers: [cover(0, 1000), cover(1000, 3000), cover(3000, 4200)],
      holdDowns: [holdDown(1500), holdDown(2700)],
    });
    const of = job(conveyor, ['all'], { relines: [], crews: names.map((name) => crew(name)) });
    const machine = machineOf(of, [], {
      runs: [
        { from: 0, to: 2000, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
        { from: 2200, to: 4200, tailSlack: 10, headSlack: 10, holdsAtTail: true, holdsAtHead: true },
      ],
    });
    const work = [
      'covers off run 1',
      'covers off run 2',
      'hold-downs off run 2',
      'hold-downs on run 2',
      'covers on run 1',
      'covers on run 2',
    ];
    const { accepted } = compareAll([{ of, machine, work }], 1500, 99, (i) => names[i] ?? '');
    expect(accepted).toBeGreaterThan(20);
    expect(accepted).toBeLessThan(1400);
  });
});
