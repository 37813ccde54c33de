// What a job works on, cut into pieces: which piece belongs to which stretch, what lies over what, and where a step without a
// stretch works.

import { describe, expect, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import { stepActions, type Job, type StepAction } from '../../../src/domain/model/job.js';
import { runsOf } from '../../../src/domain/model/runs.js';
import { closingError } from '../../../src/domain/order/closing-error.js';
import { piecesUnder } from '../../../src/domain/order/contact.js';
import {
  areasOf,
  overlaps,
  sayPiece,
  touches,
  within,
  type Area,
  type Ground,
  type Piece,
  type PieceKind,
} from '../../../src/domain/order/ground.js';
import { concerns, layoutOf } from '../../../src/domain/order/layout.js';
import { gap, liner, mm, origin, screw, stated } from '../../kit/estate.js';
import { brace, cover, holdDown, job, line, stretch, walked, worldOf } from './stories.js';

const area = (from: number, to: number): Area => ({ from, to });
const piece = (kind: PieceKind, from: number, to: number): Piece => ({ number: 0, kind, from, to });

describe('a piece and a stretch', () => {
  test.each([
    [0, 1000, 500, 2000, true],
    [0, 1000, 999, 2000, false],
    [0, 1000, 998, 2000, true],
    [0, 1000, 1000, 2000, false],
    [500, 2000, 0, 501, false],
    [500, 2000, 0, 502, true],
    [700, 700, 0, 1000, true],
    [0, 0, 0, 1000, true],
    [1000, 1000, 0, 1000, true],
    [1001, 1001, 0, 1000, false],
    [-1, -1, 0, 1000, false],
    [0, 1000, 500, 500, false],
  ])('%s to %s and %s to %s overlap: %s', (from, to, low, high, expected) => {
    expect(overlaps(area(from, to), area(low, high))).toBe(expected);
    expect(touches(piece('cover', from, to), area(low, high))).toBe(expected);
  });

  test.each([
    [0, 1000, 400, 600, true],
    [0, 1000, 500, 2000, false],
    [0, 1000, 499, 2000, true],
    [0, 1000, 0, 500, false],
    [0, 1000, 0, 501, true],
  ])('a panel %s to %s belongs to %s to %s by its middle: %s', (from, to, low, high, expected) => {
    expect(touches(piece('panel', from, to), area(low, high))).toBe(expected);
  });

  test('of several stretches, one is enough', () => {
    const some = [piece('cover', 0, 1000), piece('cover', 1000, 2000), piece('cover', 2000, 3000)];
    expect(within(some, [area(0, 500), area(2500, 4000)])).toEqual([some[0], some[2]]);
    expect(within(some, [])).toEqual([]);
  });
});

describe('what lies under what', () => {
  test.each<readonly [string, Piece, Piece, boolean]>([
    ['two spans that share more than a millimetre', piece('panel', 0, 1000), piece('cover', 998, 2000), true],
    ['two spans that share one', piece('panel', 0, 1000), piece('cover', 999, 2000), false],
    ['two at one place', piece('brace', 500, 500), piece('hold-down', 500, 500), true],
    ['two at two places', piece('brace', 500, 500), piece('hold-down', 501, 501), false],
    ['one inside a span', piece('brace', 500, 500), piece('cover', 0, 1000), true],
    ['a span around one', piece('panel', 0, 1000), piece('brace', 500, 500), true],
    ['one at its edge', piece('brace', 1000, 1000), piece('cover', 0, 1000), true],
    ['a millimetre beyond its edge', piece('brace', 1001, 1001), piece('cover', 0, 1000), true],
    ['two millimetres beyond its edge', piece('brace', 1002, 1002), piece('cover', 0, 1000), false],
    ['a millimetre before it', piece('brace', 499, 499), piece('cover', 500, 1000), true],
    ['two millimetres before it', piece('brace', 498, 498), piece('cover', 500, 1000), false],
  ])('%s: %#', (_, under, over, expected) => {
    expect(piecesUnder([under], [over])).toEqual(expected ? [under] : []);
  });

  // Just where two covers meet, a part counts with the cover whose step it is.
  test.each([
    [1000, [area(0, 1000)], true],
    [1000, [area(2000, 3000)], false],
    [1000, [], false],
    [1000, [area(2000, 3000), area(900, 1100)], true],
    [1001, [area(0, 1000)], false],
    [998, [area(2000, 3000)], true],
    [999, [area(2000, 3000)], false],
    [2, [area(2000, 3000)], true],
    [1, [area(2000, 3000)], false],
  ])('a brace at %s mm under a cover of 0 to 1000 mm, in a step over %j: %s', (at, areas, expected) => {
    const under = piece('brace', at, at);
    expect(piecesUnder([under], [piece('cover', 0, 1000)], areas)).toEqual(expected ? [under] : []);
  });
});

const made = line([2, 2], [10, 10, 10], {
  covers: [cover(0, 2100), cover(2100, 4200)],
  braces: [brace(500)],
  holdDowns: [holdDown(1000)],
});
const groundOf = (of: Job, ...lines: readonly string[]): Ground => walked(of, lines).ground;
const spans = (pieces: readonly Area[] | undefined): string | undefined =>
  pieces?.map(({ from, to }) => `${from}-${to}`).join(' ');

describe('the ground', () => {
  test('is cut where steps begin and end, inside the conveyor', () => {
    const {
      air,
      heat,
      screw: spiral,
      litter,
    } = groundOf(job(made, ['all']), 'strip from 1000 mm to 9000 mm', 'clean run 1', 'clear up');
    expect([air, heat, spiral, litter].map(spans)).toEqual(Array(4).fill('0-1000 1000-2000 2000-4200'));
  });
  test('without a step that clears up, nothing has to be cleared', () => {
    expect(groundOf(job(made, ['all']), 'strip').litter).toEqual([]);
  });
  test('has what the conveyor declares, and one of a kind a cell where it declares none and a step speaks of it', () => {
    const bare: Conveyor = { ...made, covers: [], braces: [], holdDowns: [] };
    const parts = (conveyor: Conveyor, ...lines: readonly string[]): (string | undefined)[] => {
      const { covers, braces, holdDowns } = groundOf(job(conveyor, ['all']), ...lines);
      return [covers, braces, holdDowns].map(spans);
    };
    expect(parts(made, 'strip run 1')).toEqual(['0-2100 2100-4200', '500-500', '1000-1000']);
    expect(parts(bare, 'strip run 1')).toEqual(['', '', '']);
    for (const [k, [off, on]] of [
      ['covers off', 'covers on'],
      ['braces off', 'braces on'],
      ['hold-downs off', 'hold-downs on'],
    ].entries())
      for (const action of [off, on]) {
        const expected = ['', '', ''];
        expected[k] = '0-2000 2000-4200';
        expect(parts(bare, 'strip run 1', `${action} all`)).toEqual(expected);
      }
  });
  test('has slide gates only, by name', () => {
    const mixed: Conveyor = { ...made, breaks: [...made.breaks, gap('Inlet', 'inlet', 4000, 4100)] };
    expect(groundOf(job(mixed, ['all'])).gates.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['Gate1', 2000, 2200],
    ]);
  });
  test('has panels that know their run and number', () => {
    const { runs, pieces } = groundOf(job(made, ['all']));
    expect(
      runs.map(({ panels }) => panels.map(({ run, panel, from, to }) => [run.run.number, panel, from, to])),
    ).toEqual([
      [
        [1, 1, 0, 1000],
        [1, 2, 1000, 2000],
      ],
      [
        [2, 1, 2200, 3200],
        [2, 2, 3200, 4200],
      ],
    ]);
    expect(pieces.map(({ number }) => number)).toEqual(pieces.map((_, i) => i));
    expect(runs.flatMap(({ panels }) => panels).every((panel) => pieces[panel.number] === panel)).toBe(true);
  });
  test('knows where each step works, and what is nowhere', () => {
    const ground = groundOf(
      job(made, ['all']),
      'strip run 2',
      'strip run 7',
      'strip panel 2 of run 1',
      'strip from 300 mm to 300 mm',
      'strip from 400 mm to 300 mm',
    );
    expect(ground.areas.map(spans)).toEqual(['2200-4200', undefined, '1000-2000', undefined, undefined]);
    expect(ground.areas.map((_, i) => areasOf(ground, i).length)).toEqual([1, 0, 1, 0, 0]);
  });
  test('has the scope of the job, without what is nowhere', () => {
    expect(spans(groundOf(job(made, ['panel 2 of run 1', 'run 7', 'run 2'])).scope)).toBe(
      '1000-2000 2200-4200',
    );
  });
});

describe('a step without a stretch', () => {
  const where = (of: Job): Readonly<Record<string, string>> => {
    const found: Record<string, string[]> = {};
    for (const action of stepActions.filter((each) => !each.startsWith('gate '))) {
      const at = spans(groundOf(of, action).areas[0]) ?? 'nowhere';
      (found[at] ??= []).push(action);
    }
    return Object.fromEntries(Object.entries(found).map(([at, actions]) => [at, actions.join(', ')]));
  };
  const liners: readonly StepAction[] = ['strip', 'clean', 'patch', 'fit'];
  const whole =
    'empty, isolate, prove dead, pause, remove screw, insert screw, join screw, remove isolation, run empty, run loaded';
  const change = { screwChange: { screw: screw(), origin: origin() } };
  test('means what is relined', () => {
    expect(where(job(made, ['run 1']))).toEqual({
      '0-4200': whole,
      '0-2000':
        'gas test, covers off, braces off, hold-downs off, strip, clean, patch, fit, fire watch, hold-downs on, braces on, clear up, covers on',
      '4200-4200': 'restrain screw, unbolt drive, bolt drive, release screw',
      '': 'other work',
    });
  });
  test('means all of it where the screw changes, but for the liner', () => {
    const { '0-2000': some } = where(job(made, ['run 1'], change));
    expect(some).toBe(liners.join(', '));
  });
  test('means all of it where nothing is relined', () => {
    const { '4200-4200': drive, ...rest } = where(job(made, [], change));
    expect([drive, Object.keys(rest)]).toEqual([
      'restrain screw, unbolt drive, bolt drive, release screw',
      ['0-4200', ''],
    ]);
    expect(Object.keys(where(job(made, [])))).toEqual(['0-4200', '4200-4200', '']);
  });
  test('is at the drive, wherever that is', () => {
    const tail = job({ ...made, drive: { end: 'tail', origin: origin() } }, ['run 1']);
    expect(where(tail)['0-0']).toBe('restrain screw, unbolt drive, bolt drive, release screw');
  });
  test.each(['gate off', 'gate on', 'gate shut', 'gate open'])('%s is at its gate', (action) => {
    expect(groundOf(job(made, ['run 1']), `${action} Gate1`, `${action} Nix`).areas.map(spans)).toEqual([
      '2000-2200',
      '',
    ]);
  });
});

test.each<readonly [Partial<Piece> & { readonly kind: PieceKind }, string]>([
  [{ kind: 'isolation' }, 'isolation'],
  [{ kind: 'running' }, 'trial runs'],
  [{ kind: 'restraint' }, 'restraint of the spiral'],
  [{ kind: 'drive' }, 'drive plate'],
  [{ kind: 'content' }, 'material in the trough'],
  [{ kind: 'gate', name: 'Gate1' }, 'gate Gate1'],
  [{ kind: 'gate', name: 'gate 3' }, 'gate 3'],
  [{ kind: 'gate', name: 'SG4' }, 'gate SG4'],
  [{ kind: 'gate', name: 'Agate' }, 'gate Agate'],
  [{ kind: 'heat' }, 'place of hot work 1.00 m to 2.00 m'],
  [{ kind: 'litter' }, 'tools and litter 1.00 m to 2.00 m'],
  [{ kind: 'air' }, 'air 1.00 m to 2.00 m'],
  [{ kind: 'screw' }, 'spiral 1.00 m to 2.00 m'],
  [{ kind: 'cover' }, 'cover 1.00 m to 2.00 m'],
  [{ kind: 'brace', to: 1000 }, 'brace at 1.00 m'],
  [{ kind: 'hold-down', to: 1000 }, 'hold-down at 1.00 m'],
])('%j is called %s', (facts, expected) => {
  expect(sayPiece({ number: 0, from: 1000, to: 2000, ...facts }, 'mm')).toBe(expected);
});

describe('where the joints will lie', () => {
  // 2.5 m in panels of 1 m: the short one goes in last.
  const odd = { ...line([1], [10, 10], { liner: liner({ panelLengths: [mm(1000)] }) }), length: mm(2500) };
  const short: Conveyor = {
    ...odd,
    breaks: [gap('Tail', 'end plate', 0, 0, 10), gap('Head', 'end plate', 2500, 2500, 10)],
  };
  const fromTail = '0-1000 1000-2000 2000-2500';
  const fromHead = '0-500 500-1500 1500-2500';
  const panels = (of: Job, ...lines: readonly string[]): string | undefined =>
    spans(groundOf(of, ...lines).runs[0]?.panels);
  test.each<readonly [string, readonly string[], string]>([
    ['by custom from the head', [], fromHead],
    ['as the fit says', ['fit all starting at tail'], fromTail],
    ['as the fit of the whole scope says', ['fit starting at tail'], fromTail],
    [
      'the first fit that speaks of the run decides',
      ['fit starting at head', 'fit run 1 starting at tail'],
      fromTail,
    ],
    ['not one of another run', ['fit run 2 starting at tail'], fromHead],
    ['the first of several', ['fit run 1 starting at tail', 'fit run 1 starting at head'], fromTail],
    ['a fit that does not say', ['fit run 1'], fromHead],
    ['other steps do not count', ['strip run 1', 'fit run 1 starting at tail'], fromTail],
  ])('%s', (_, lines, expected) => expect(panels(job(short, ['all']), ...lines)).toBe(expected));

  test.each<readonly [string, readonly string[], boolean, string]>([
    ['all of it', ['all'], false, 'New'],
    ['the run', ['run 1'], false, 'New'],
    ['from end to end', ['from 0 mm to 2500 mm'], false, 'New'],
    ['beyond both ends', ['from 0 mm to 9000 mm'], false, 'New'],
    ['not from its very beginning', ['from 1 mm to 2500 mm'], true, 'New'],
    ['not to its very end', ['from 0 mm to 2499 mm'], true, 'New'],
    ['some panels', ['panels 1 to 2 of run 1'], true, 'New'],
    ['some panels, and then all', ['panels 1 to 2 of run 1', 'all'], false, 'New'],
    ['another run', ['run 2'], true, 'TwoLayer12'],
    ['nothing', [], true, 'TwoLayer12'],
  ])('%s: what is there keeps its joints: %s', (_, relines, kept, name) => {
    const of = job(short, relines);
    const named = {
      ...of,
      relines: of.relines.map((each) => ({ ...each, liner: { ...each.liner, name: 'New' } })),
    };
    const [run] = runsOf(short);
    const found = run && layoutOf(named, run, 'tail', worldOf(named));
    expect([found?.kept, found?.liner.name, found?.start]).toEqual([kept, name, 'tail']);
  });

  test('a hold-down is kept clear of', () => {
    const near = job({ ...short, holdDowns: [holdDown(1000)] }, ['all'], { jointClearance: mm(100) });
    expect(panels(near, 'fit starting at tail')).not.toBe(fromTail);
  });
  test('the shortest piece is as the job says', () => {
    expect(panels(job(short, ['all'], { minimumClosingPiece: mm(600) }), 'fit starting at tail')).not.toBe(
      fromTail,
    );
  });

  test('which stretches touch a run', () => {
    const [first, second] = runsOf(made);
    const of = job(made, []);
    const on = (text: string): readonly boolean[] =>
      [first, second].map((run) => run !== undefined && concerns(of, stretch(text), run));
    expect(on('all')).toEqual([true, true]);
    expect(on('run 2')).toEqual([false, true]);
    expect(on('run above Gate1')).toEqual([false, true]);
    expect(on('panel 1 of run 1')).toEqual([true, false]);
    expect(on('from 0 mm to 2200 mm')).toEqual([true, false]);
    expect(on('from 1999 mm to 2201 mm')).toEqual([true, true]);
    expect(on('from 2000 mm to 2200 mm')).toEqual([false, false]);
  });

  test('one layout serves every look at the same job, and each end has its own', () => {
    const of = job(short, ['all']);
    const estate = worldOf(of);
    const [run] = runsOf(short);
    if (!run) throw new Error('The story has a run.');
    expect(layoutOf(of, run, 'tail', estate)).toBe(layoutOf(of, run, 'tail', estate));
    expect(layoutOf(of, run, 'head', estate)).not.toBe(layoutOf(of, run, 'tail', estate));
    expect(layoutOf({ ...of, relines: [...of.relines] }, run, 'tail', estate)).not.toBe(
      layoutOf(of, run, 'tail', estate),
    );
    expect(layoutOf(of, run, 'tail', worldOf(of))).not.toBe(layoutOf(of, run, 'tail', estate));
  });
});

describe('how far out the last panel can be', () => {
  const range = (from: number, to: number) => ({
    from: stated('temperature', from),
    to: stated('temperature', to),
  });
  const gapped = liner({
    expansion: stated('expansion', 200e-6),
    joint: { policy: 'gap', gap: mm(0), origin: origin() },
    panelTolerance: mm(2),
  });
  const error = (facts: Partial<Job>, on: Partial<Conveyor> = {}, of = gapped) => {
    const conveyor = line([4], [10, 10], on);
    const [run] = runsOf(conveyor);
    if (!run) throw new Error('The story has a run.');
    return closingError(job(conveyor, [], facts), run, of, 4, 3, 3000, { allowance: 10, name: 'Head' });
  };
  test('adds tolerances at worst, and their squares by chance', () => {
    const butted = error({}, {}, liner({ panelTolerance: mm(2) }));
    // 3 × 2 + 2, and √(3 × 2² + 2²)
    expect(butted).toMatchObject({
      panel: 4,
      panels: 3,
      growth: 0,
      worst: 8,
      rootSumSquare: 4,
      allowance: 10,
      breakName: 'Head',
    });
  });
  test.each<readonly [string, Partial<Job>, Partial<Conveyor>, number | undefined]>([
    // 3 m × (200 − 12)e-6 × 30 K = 16.92 mm against steel of 12e-6 1/K.
    [
      'from the coldest fitting to the warmest service',
      { fittingTemperature: range(10, 20) },
      { serviceTemperature: range(0, 40) },
      16.92,
    ],
    [
      'the conveyor may say both',
      {},
      { fittingTemperature: range(10, 20), serviceTemperature: range(0, 40) },
      16.92,
    ],
    [
      'the job goes first',
      { fittingTemperature: range(20, 20) },
      { fittingTemperature: range(10, 20), serviceTemperature: range(0, 40) },
      11.28,
    ],
    [
      'it never shrinks the error',
      { fittingTemperature: range(50, 60) },
      { serviceTemperature: range(0, 40) },
      0,
    ],
    ['no service temperature', { fittingTemperature: range(10, 20) }, {}, undefined],
    ['no fitting temperature', {}, { serviceTemperature: range(0, 40) }, undefined],
  ])('growth: %s', (_, facts, on, expected) => {
    const found = error(facts, on);
    if (expected === undefined) expect(found.growth).toBeUndefined();
    else expect(found.growth).toBeCloseTo(expected, 9);
    expect(found.worst).toBeCloseTo(8 + (expected ?? 0), 9);
    expect(found.rootSumSquare).toBeCloseTo(4 + (expected ?? 0), 9);
  });
  test.each([
    [5, 6.92],
    [8.46, 0],
    [9, 0],
  ])('two gaps of %s mm between three panels take up some of it: %s mm are left', (open, expected) => {
    const spaced = { ...gapped, joint: { policy: 'gap' as const, gap: mm(open), origin: origin() } };
    const warm = { serviceTemperature: range(0, 40), fittingTemperature: range(10, 20) };
    expect(error({}, warm, spaced).growth).toBeCloseTo(expected, 9);
  });
  test('the plant may say both', () => {
    const base = line([4], [10, 10]);
    const on = {
      plant: { ...base.plant, fittingTemperature: range(10, 10), serviceTemperature: range(0, 40) },
    };
    expect(error({}, on).growth).toBeCloseTo(16.92, 9);
  });
});
