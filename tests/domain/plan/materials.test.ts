// What has to be on site, counted by hand: sheets, bolts, blocks, braces, the screw, consumables; spares, and the day to order.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { LeadItem } from '../../../src/domain/model/plant.js';
import type { Bolt, LinerSpecification } from '../../../src/domain/model/specifications.js';
import { groundOf, type Area } from '../../../src/domain/order/ground.js';
import type { PartToRenew } from '../../../src/domain/conditions/to-renew.js';
import { cutLists } from '../../../src/domain/plan/cut-list.js';
import { boltsOf, materialsOf, type Material } from '../../../src/domain/plan/materials.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { estate, gap, hours, liner, mm, on, origin, plant, screw } from '../../kit/estate.js';
import { brace, crew, holdDown, job, line, step } from '../order/stories.js';

const bolted = (facts: Partial<Bolt> = {}): Bolt => ({
  size: 'M10',
  rows: { count: 4, origin: origin() },
  pitch: mm(300),
  origin: origin(),
  ...facts,
});
/** Panels of 1 m out of sheets of 3 m. */
const spec = (facts: Partial<LinerSpecification> = {}): LinerSpecification =>
  liner({ panelLengths: [mm(1000)], panelTolerance: mm(1), stockLengths: [mm(3000)], ...facts });

/** All of them; what is on the list else is held by the tests below. */
const worn: readonly PartToRenew[] = (['hold-down', 'brace'] as const).map((part) => ({
  part,
  from: 0,
  to: 1e6,
  side: undefined,
  what: `${part} worn`,
  place: {},
  origin: origin(),
}));

function materials(
  of: Job,
  only?: readonly Area[],
  lines: readonly string[] = [],
  toRenew = worn,
): readonly Material[] {
  const world = estate({ conveyors: [of.conveyor] });
  const ground = groundOf(
    of,
    lines.map((text) => step(text)),
    world,
  );
  return materialsOf(of, ground, cutLists(of, world, ground, only), only, undefined, toRenew);
}
/** Two runs, of 4 and of 6 panels. */
const made = (facts: Partial<Conveyor> = {}): Conveyor =>
  line([4, 6], [10, 10, 0], { liner: spec(), ...facts });
const row = (of: Job, word: string): Material | undefined =>
  materials(of).find(({ what }) => what.includes(word));
const spares = (item: 'panels' | 'fixings', count: number): NonNullable<Job['spares']>[number] => ({
  item,
  count: { count, origin: origin() },
  origin: origin(),
});

describe('sheets', () => {
  it('as many as the cut list buys, and a twentieth more', () => {
    // Two panels and the saw's 3 mm from a sheet of 3 m, ten panels: five sheets, 0.25 more is one.
    expect(row(job(made(), ['all']), 'sheet')).toEqual({
      what: 'TwoLayer12 sheet, 3.00 m',
      for: 'liner',
      needed: 5,
      spares: 1,
      onShelf: undefined,
      shelf: expect.objectContaining({ kind: 'liner', length: 3000 }) as unknown,
      toOrder: 6,
      unit: 'pieces',
      basis: 'cut list: 10 panels; 5 % spares',
      orderBy: undefined,
    });
    expect(row(job(made(), ['run 1']), 'sheet')).toMatchObject({
      needed: 2,
      basis: 'cut list: 4 panels; 5 % spares',
    });
  });

  test.each([
    // Three panels of 1 m out of a sheet of 3 m: five spare panels are two sheets.
    [5, 2],
    [6, 2],
    [7, 3],
    [1, 1],
  ])('the job asks for %d spare panels: %d sheets', (asked, sheets) => {
    expect(row(job(made(), ['all'], { spares: [spares('panels', asked)] }), 'sheet')).toMatchObject({
      needed: 5,
      spares: sheets,
      basis: `cut list: 10 panels; the job asks for ${asked} spare panels`,
    });
  });

  it('counted by the longest panel, and a sheet shorter than that is one', () => {
    const two = spec({ panelLengths: [mm(500), mm(1600)], stockLengths: [mm(3000)] });
    const of = (liner: LinerSpecification): Job =>
      job(made({ liner }), ['all'], { spares: [spares('panels', 3)] });
    expect(row(of(two), 'sheet')?.spares).toBe(3);
    expect(row(of(spec({ panelLengths: [mm(1000)], stockLengths: [mm(1000)] })), 'sheet')?.spares).toBe(3);
  });

  it('of two lengths the spares that are asked for come in the longest, of the other the usual share', () => {
    // Two of 2003 mm are in hand, each for two panels; the other six panels come from 1010 mm.
    const stock = (length: number, count?: number): Job['stock'][number] => ({
      length: mm(length),
      offcut: false,
      origin: origin(),
      ...(count === undefined ? {} : { count: { count, origin: origin() } }),
    });
    const of = job(made(), ['all'], {
      spares: [spares('panels', 4)],
      stock: [stock(1010), stock(2003, 2)],
    });
    const rows = materials(of).filter(({ for: kind }) => kind === 'liner');
    expect(rows.map(({ what, needed, spares: more }) => [what, needed, more])).toEqual([
      ['TwoLayer12 sheet, 2.003 m', 2, 2],
      ['TwoLayer12 sheet, 1.01 m', 6, 1],
    ]);
  });

  it('offcuts that are used are on the list and not ordered', () => {
    const stock = [
      { length: mm(1000), count: { count: 2, origin: origin() }, offcut: true, origin: origin() },
    ];
    const of = job(made(), ['all'], { stock });
    expect(row(of, 'offcuts')).toMatchObject({
      what: 'TwoLayer12 offcuts in hand',
      for: 'consumable',
      needed: 2,
      spares: 0,
      basis: 'cut list',
    });
    expect(row(of, 'sheet')?.needed).toBe(4);
    expect(row(job(made(), ['all']), 'offcuts')).toBeUndefined();
  });
});

describe('bolts', () => {
  test.each([
    // One near either end and none further apart than the pitch: ceil((length − pitch)/pitch) gaps and one more.
    [1200, 300, 4, 16],
    [1000, 300, 4, 16],
    [900, 300, 4, 12],
    [901, 300, 4, 16],
    [600, 300, 2, 4],
    [601, 300, 2, 6],
    [300, 300, 1, 2],
    [100, 300, 1, 2],
  ])('a panel of %d mm at %d mm pitch in %d rows: %d', (length, pitch, rows, count) => {
    expect(boltsOf(length, pitch, rows)).toBe(count);
  });

  it('of all panels of a liner, in all its runs, with a tenth more', () => {
    // Ten panels of 1 m: 4 rows of 4. 160, and 16.
    const of = job(made({ liner: spec({ bolt: bolted() }) }), ['all']);
    expect(row(of, 'bolt')).toEqual({
      what: 'M10 countersunk bolt with nut and washer',
      for: 'fixings',
      needed: 160,
      spares: 16,
      onShelf: undefined,
      shelf: expect.objectContaining({ kind: 'fixings' }) as unknown,
      toOrder: 176,
      unit: 'pieces',
      basis: '4 rows at 300 mm pitch; 10 % spares',
      orderBy: undefined,
    });
  });

  it('with their length where the liner says it, in four rows where it does not say how many', () => {
    const one = spec({ bolt: bolted({ rows: undefined as never }), boltLength: mm(40) }); // left out
    expect(row(job(made({ liner: one }), ['run 1']), 'bolt')).toMatchObject({
      what: 'M10 × 40 mm countersunk bolt with nut and washer',
      needed: 64,
      basis: '4 rows (usual) at 300 mm pitch; 10 % spares',
    });
    expect(
      row(
        job(made({ liner: spec({ bolt: bolted({ rows: { count: 2, origin: origin() } }) }) }), ['run 1']),
        'bolt',
      ),
    ).toMatchObject({
      needed: 32,
      basis: '2 rows at 300 mm pitch; 10 % spares',
    });
  });

  it('as many spares as the job asks for', () => {
    const of = job(made({ liner: spec({ bolt: bolted() }) }), ['all'], { spares: [spares('fixings', 25)] });
    expect(row(of, 'bolt')).toMatchObject({
      spares: 25,
      basis: '4 rows at 300 mm pitch; the job asks for 25 spare fixings',
    });
    expect(row(of, 'sheet')?.basis).toBe('cut list: 10 panels; 5 % spares');
  });

  it('none where the liner has none, or no pitch', () => {
    for (const bolt of [undefined, bolted({ pitch: undefined as never }), bolted({ pitch: mm(0) })])
      expect(
        row(job(made({ liner: spec(bolt ? { bolt } : {}) }), ['all']), 'countersunk bolt'),
      ).toBeUndefined();
  });
});

describe('what comes off on the way', () => {
  const parts = { holdDowns: [500, 2500, 5000, 9000].map(holdDown), braces: [1500, 8000].map(brace) };
  test.each<[string, readonly string[], number, number]>([
    ['all along', ['all'], 4, 2],
    ['only in the first run', ['run 1'], 2, 1],
    ['only in the second', ['run 2'], 2, 1],
  ])('%s', (_, relines, places, braces) => {
    const of = job(made(parts), relines);
    expect(row(of, 'hold-down block')).toMatchObject({
      for: 'fixings',
      needed: 2 * places,
      spares: 1,
      unit: 'pieces',
      basis: `${2 * places} blocks at ${places} places: hold-down worn; 5 % spares`,
    });
    expect(row(of, 'brace')).toMatchObject({
      what: 'brace with its fixings',
      needed: braces,
      unit: 'pieces',
      basis: `${braces} brace${braces === 1 ? '' : 's'}: brace worn; 5 % spares`,
    });
  });
  it('as the order says, where it takes off more than is relined', () => {
    const found = materials(job(made(parts), ['run 1']), undefined, [
      'hold-downs off all',
      'braces off run 1',
    ]);
    const needed = (word: string): number | undefined =>
      found.find(({ what }) => what.includes(word))?.needed;
    expect([needed('hold-down block'), needed('brace')]).toEqual([8, 1]);
  });
  it('a pair counts two, a block on one side one', () => {
    const one = parts.holdDowns.map((part) => ({ ...part, side: 'left side' as const }));
    expect(row(job(made({ holdDowns: one }), ['all']), 'hold-down')).toMatchObject({
      needed: 4,
      basis: '4 blocks at 4 places: hold-down worn; 5 % spares',
    });
    const mixed = [...one.slice(1), ...parts.holdDowns.slice(0, 1)];
    expect(row(job(made({ holdDowns: mixed }), ['all']), 'hold-down')?.needed).toBe(5);
  });
  it('only what is to be renewed, of a pair the side that was found', () => {
    const one = (facts: Partial<PartToRenew>): PartToRenew => ({
      ...worn[0]!,
      from: 4700,
      to: 5300,
      ...facts,
    }); // two are listed
    const needed = (...toRenew: readonly PartToRenew[]): number | undefined =>
      materials(job(made(parts), ['all']), undefined, [], toRenew).find(({ what }) =>
        what.startsWith('hold-down'),
      )?.needed;
    expect(needed()).toBeUndefined();
    expect(needed(one({}))).toBe(2);
    expect(needed(one({ side: 'left side' }))).toBe(1);
    expect(needed(one({ side: 'left side' }), one({ side: 'right side' }))).toBe(2);
    expect(needed(one({ from: 6000, to: 6500 }))).toBeUndefined();
    expect(needed(one({ part: 'brace' }))).toBeUndefined();
  });
  it('nothing where nothing is there, though the order speaks of it', () => {
    const spoken = materials(job(made(), ['all']), undefined, ['hold-downs off all', 'braces off all']);
    for (const word of ['hold-down', 'brace'])
      expect(spoken.filter(({ what }) => what.includes(word))).toEqual([]);
  });
  it('for a screw change all along, whatever is relined', () => {
    const change = { screwChange: { screw: screw(), origin: origin() } };
    const of = job(made(parts), ['run 1'], change);
    expect([row(of, 'hold-down')?.needed, row(of, 'brace')?.needed]).toEqual([8, 2]);
  });
});

describe('a new screw', () => {
  const plate = { bolts: { count: 8, origin: origin() }, size: 'M20', origin: origin() };
  const of = (drivePlate?: typeof plate): Job =>
    job(made({ length: mm(10_200) }), [], {
      screwChange: { screw: screw(drivePlate ? { drivePlate } : {}), origin: origin() },
    });
  it('by the metre, without spares', () => {
    expect(row(of(), 'screw')).toEqual({
      what: 'screw Spiral400',
      for: 'screw',
      needed: 10.2,
      spares: 0,
      onShelf: undefined,
      shelf: expect.objectContaining({ kind: 'spiral' }) as unknown,
      toOrder: 10.2,
      unit: 'm',
      basis: 'length of the conveyor',
      orderBy: undefined,
    });
  });
  it('with the bolts of its drive plate, where they are known', () => {
    expect(row(of(plate), 'drive-plate')).toMatchObject({
      what: 'M20 drive-plate bolt with nut and washer',
      needed: 8,
      spares: 1,
      basis: 'drive plate; 10 % spares',
    });
    expect(row(of(), 'drive-plate')).toBeUndefined();
  });
  it('none where none is changed', () => expect(row(job(made(), ['all']), 'screw')).toBeUndefined());
});

describe('consumables, by rules of thumb', () => {
  test.each([
    // Panels; a drill bit for ten, a countersink for twenty, a blade for thirty.
    [10, 1, 1, 1],
    [11, 2, 1, 1],
    [20, 2, 1, 1],
    [21, 3, 2, 1],
    [30, 3, 2, 1],
    [31, 4, 2, 2],
  ])('for %d panels: %d drill bits, %d countersinks, %d blades', (panels, drills, sinks, blades) => {
    const found = materials(job(line([panels], [10, 0], { liner: spec() }), ['all'])).filter(
      (each) => each.for === 'consumable',
    );
    expect(found.map(({ what, needed, spares: more, basis }) => [what, needed, more, basis])).toEqual([
      ['drill bit for trough holes', drills, 0, 'one for ten panels, a rule of thumb'],
      ['countersink bit with depth stop', sinks, 0, 'one for twenty panels, a rule of thumb'],
      ['saw blade for PE', blades, 0, 'one for thirty cuts, a rule of thumb'],
    ]);
  });
  it('of the panels that are renewed only', () => {
    expect(row(job(line([6, 6], [10, 10, 0]), ['run 2']), 'drill')?.needed).toBe(1);
    expect(row(job(line([6, 6], [10, 10, 0]), ['all']), 'drill')?.needed).toBe(2);
  });
  it('with the sizes that the liners say, each once, of what is renewed', () => {
    const drill = (size: number): LinerSpecification =>
      spec({ drill: { size: mm(size), origin: origin() } as never }); // its size is all that is read
    const [a, b] = [drill(11), drill(13)];
    const two = made();
    const of = (...liners: readonly LinerSpecification[]): Job => ({
      ...job(two, ['run 1', 'run 2']),
      relines: job(two, ['run 1', 'run 2']).relines.map((each, i) => ({ ...each, liner: liners[i] ?? a })),
    });
    expect(row(of(a, a), 'drill')?.what).toBe('drill bit 11 mm for trough holes');
    expect(row(of(a, b), 'drill')?.what).toBe('drill bit 11 mm, 13 mm for trough holes');
    expect(row(of(a, spec()), 'drill')?.what).toBe('drill bit 11 mm for trough holes');
  });
  it('for a part of the job, what lies in it', () => {
    const drill = (size: number): LinerSpecification =>
      spec({ bolt: bolted(), drill: { size: mm(size), origin: origin() } as never }); // its size is all that is read
    const base = job(made(), ['run 1', 'run 2']);
    const of: Job = {
      ...base,
      relines: base.relines.map((each, i) => ({
        ...each,
        liner: { ...drill(11 + 2 * i), name: `L${i + 1}` },
      })),
    };
    const rows = materials(of, [{ from: 0, to: 4000 }]);
    expect(rows.map(({ what, needed, unit }) => [what, needed, unit])).toEqual([
      ['L1 sheet, 3.00 m', 2, 'pieces'],
      ['M10 countersunk bolt with nut and washer', 64, 'pieces'],
      ['drill bit 11 mm for trough holes', 1, 'pieces'],
      ['countersink bit with depth stop', 1, 'pieces'],
      ['saw blade for PE', 1, 'pieces'],
    ]);
  });
  it('none for a job that fits no panel', () => {
    const of = job(made(), [], { screwChange: { screw: screw(), origin: origin() } });
    expect(materials(of).map(({ what }) => what)).toEqual(['screw Spiral400']);
  });
});

describe('two liners', () => {
  it('have their own sheets and their own bolts', () => {
    const two = made();
    const thin = spec({ name: 'Thin', bolt: bolted({ size: 'M8' }) });
    const thick = spec({ name: 'Thick', bolt: bolted({ size: 'M12' }) });
    const base = job(two, ['run 1', 'run 2']);
    const of: Job = {
      ...base,
      relines: base.relines.map((each, i) => ({ ...each, liner: i === 0 ? thin : thick })),
    };
    expect(
      materials(of)
        .filter(({ for: kind }) => kind !== 'consumable')
        .map(({ what, needed }) => [what, needed]),
    ).toEqual([
      ['Thin sheet, 3.00 m', 2],
      ['Thick sheet, 3.00 m', 3],
      ['M8 countersunk bolt with nut and washer', 64],
      ['M12 countersunk bolt with nut and washer', 96],
    ]);
  });
});

describe('by when to order', () => {
  const window = { from: on('2027-04-12'), to: on('2027-04-16'), origin: origin() };
  const lead = (item: LeadItem, time: number) => ({ item, time: hours(time), origin: origin() });
  const of = (
    times: readonly ReturnType<typeof lead>[],
    facts: Partial<Job> = { window },
  ): readonly Material[] =>
    materials(
      job(made({ plant: plant({ leadTimes: times }), liner: spec({ bolt: bolted() }) }), ['all'], {
        crews: [crew('Alpha')],
        ...facts,
      }),
    );
  const days = (rows: readonly Material[], word: string): string | undefined => {
    const day = rows.find(({ what }) => what.includes(word))?.orderBy;
    return day === undefined ? undefined : formatDay(day);
  };
  test.each([
    // Before Monday 2027-04-12.
    [24, '2027-04-11'],
    [25, '2027-04-10'],
    [48, '2027-04-10'],
    [10 * 168, '2027-02-01'],
  ])('%d hours before the first day of the window, in whole days: %s', (time, day) => {
    expect(days(of([lead('fixings', 999), lead('liner', time)]), 'sheet')).toBe(day);
  });
  it('each item by its own lead time, and consumables never', () => {
    const rows = of([lead('liner', 240), lead('fixings', 48)]);
    expect([days(rows, 'sheet'), days(rows, 'bolt'), days(rows, 'drill')]).toEqual([
      '2027-04-02',
      '2027-04-10',
      undefined,
    ]);
  });
  it('not without a lead time, nor without a window', () => {
    expect(days(of([lead('fixings', 48)]), 'sheet')).toBeUndefined();
    expect(days(of([lead('liner', 240)], {}), 'sheet')).toBeUndefined();
  });
});

test('what is needed nowhere is on no list', () => {
  const empty = line([4], [10, 0], { breaks: [gap('Tail', 'end plate', 0), gap('Head', 'end plate', 4000)] });
  for (const each of materials(job(empty, []))) expect(each.needed).toBeGreaterThan(0);
});
